//! Owns girths that fall toward the trunk where they rarely do, and whether an exchange of the two marks would
//! mend it.
//!
//! Source: wrist below forearm below upper arm and ankle below calf below thigh held for 507 of 507 adults
//! (Heinz et al. 2003, J Stat Educ 11(2)); the exemptions are house rules.

use super::girths::Girths;
use super::mark::tenths_of;
use super::unusual::unusual;
use super::{AgeBand, Confirmable, LimbRecord, Mark, MarkPlace, Record};
use crate::anatomy::Landmark;
use crate::rules::{NumberId, Rules};

/// A girth that falls toward the trunk.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fall {
    /// The mark nearer to hand or foot, and the larger one.
    pub distal: MarkPlace,
    /// The mark nearer to the trunk.
    pub proximal: MarkPlace,
    /// How much it falls, tenths of a millimetre; more than the repeats of one girth may differ.
    pub by_tenths: i64,
    /// Whether an exchange of the two marks would mend it; never in a part that is swollen.
    pub is_exchange: bool,
}

/// The falls of a limb, distal to proximal. Exempt: hand to wrist, everything distal to the ankle, calf to
/// below-knee, the joint; marks that are confirmed.
pub fn falls(record: &Record, limb: &LimbRecord, rules: &Rules) -> Vec<Fall> {
    let is_joint = |mark: &&&Mark| mark.landmark.is_some_and(Landmark::is_joint);
    let all = record.limb_marks(&limb.marks);
    let marks: Vec<&&Mark> = all.iter().filter(|mark| !is_joint(mark)).collect();
    let is_confirmed = |mark: &Mark| {
        mark.landmark.is_some_and(|landmark| record.is_confirmed(limb, Confirmable::Mark(landmark)))
    };
    let pairs = marks.windows(2).filter_map(|pair| match pair {
        [distal, proximal] => Some((**distal, **proximal)),
        _ => None,
    });
    pairs
        .filter(|(distal, proximal)| {
            let exempt =
                distal.landmark == Some(Landmark::Calf) && proximal.landmark == Some(Landmark::BelowKnee);
            !exempt && !is_confirmed(distal) && !is_confirmed(proximal)
        })
        .filter_map(|(distal, proximal)| {
            let by_tenths = distal.girth().tenths() - proximal.girth().tenths();
            (by_tenths > tenths_of(rules.number(NumberId::RepeatGap))).then(|| Fall {
                distal: MarkPlace::of(distal),
                proximal: MarkPlace::of(proximal),
                by_tenths,
                is_exchange: is_exchange(record, limb, distal, proximal, rules),
            })
        })
        .collect()
}

fn is_exchange(record: &Record, limb: &LimbRecord, distal: &Mark, proximal: &Mark, rules: &Rules) -> bool {
    let swollen = distal
        .landmark
        .zip(proximal.landmark)
        .is_some_and(|(below, above)| limb.is_swollen_between(record.other_marks(limb), below, above));
    let girths = Girths::of(&limb.marks, record.limb, rules);
    let (one, other) = (MarkPlace::of(distal), MarkPlace::of(proximal));
    let tenths = |place| girths.0.iter().find(|girth| girth.place == place).map(|girth| girth.tenths);
    let exchanged = girths.with(|at, old| match girths.0.get(at).map(|girth| girth.place) {
        Some(place) if place == one => tenths(other).unwrap_or(old),
        Some(place) if place == other => tenths(one).unwrap_or(old),
        _ => old,
    });
    let is_adult = record.age_band == AgeBand::Adult;
    let passes = |girths: &Girths| unusual(girths, &[], is_adult, rules).is_empty() && rises(girths, rules);
    !swollen && exchanged.is_some_and(|mended| passes(&mended))
}

/// Whether no girth falls by more than repeats may differ, over the marks of the list that may not.
fn rises(girths: &Girths, rules: &Rules) -> bool {
    let most = tenths_of(rules.number(NumberId::RepeatGap));
    let counted: Vec<_> = girths
        .0
        .iter()
        .filter(|one| {
            one.place.landmark.is_none_or(|landmark| !landmark.is_joint() && !landmark.on_extremity())
        })
        .collect();
    counted.windows(2).all(|pair| match pair {
        [distal, proximal] => {
            let exempt = distal.place.landmark == Some(Landmark::Calf)
                && proximal.place.landmark == Some(Landmark::BelowKnee);
            exempt || distal.tenths - proximal.tenths <= most
        }
        _ => true,
    })
}
