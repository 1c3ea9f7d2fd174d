//! Owns the findings about change: against an earlier record, and of one side against the other.

use super::words::{cm, list};
use super::{Finding, FindingId, FindingPlace};
use crate::anatomy::Landmark;
use crate::record::{GirthChange, WeightChange};
use crate::rules::{Basis, Severity};

impl Finding {
    /// Girths changed since an earlier record; the caller gives at least one.
    pub fn girth_changed(changes: &[GirthChange], basis: Basis) -> Self {
        let said: Vec<String> = changes
            .iter()
            .map(|one| {
                let place =
                    one.landmark.map_or_else(|| format!("mark at {} cm", one.at.cm()), Landmark::spoken);
                format!("{place} {} after {} on {}", cm(one.now), cm(one.was), one.on)
            })
            .collect();
        let names: Vec<&str> = changes.iter().filter_map(|one| one.landmark).map(Landmark::name).collect();
        let sentence = format!("The girth has changed much since the last record: {}.", list(&said));
        let mut place = FindingPlace::record("marks");
        if let Some(landmark) = changes.iter().find_map(|one| one.landmark) {
            place = place.at(landmark);
        }
        let finding = Self::new(FindingId::GirthChanged, Severity::Care, place, basis, sentence);
        let finding = match changes.first() {
            Some(first) => finding.with("was_cm", cm_of(first.was)).with("now_cm", cm_of(first.now)),
            None => finding,
        };
        if names.is_empty() {
            finding.next("Measure these marks again.")
        } else {
            finding
                .next(format!(
                    "Measure again; what holds goes into the record as `confirmed: [{}]`.",
                    names.join(", ")
                ))
                .question()
        }
    }

    /// The weight changed since an earlier record.
    pub fn weight_changed(change: &WeightChange, share: f64, basis: Basis) -> Self {
        let sentence = format!(
            "The weight is {:.1} kg after {:.1} kg on {}, a change of {:.0} % or more.",
            change.now,
            change.was,
            change.on,
            share * 100.0
        );
        Self::new(FindingId::WeightChanged, Severity::Care, FindingPlace::record("record"), basis, sentence)
            .with("was_kg", change.was)
            .with("now_kg", change.now)
            .next("Measure every mark again; a garment or an order from earlier girths no longer counts.")
    }

    /// The affected limb is thinner than the other one; the caller gives at least one mark.
    pub fn side_thinner(thinner: &[(Landmark, i64, i64)], basis: Basis) -> Self {
        let said: Vec<String> = thinner
            .iter()
            .map(|(mark, affected, other)| {
                format!("{} {} against {}", mark.spoken(), cm(*affected), cm(*other))
            })
            .collect();
        let names: Vec<&str> = thinner.iter().map(|(mark, _, _)| mark.name()).collect();
        let sentence = format!("The affected limb is much thinner than the other one: {}.", list(&said));
        let place = FindingPlace::record("marks");
        let place = thinner.first().map_or_else(|| place.clone(), |(mark, _, _)| place.clone().at(*mark));
        Self::new(FindingId::SideThinner, Severity::Care, place, basis, sentence)
            .next(format!(
                "Check whether the sides are exchanged, and the girths; if they hold, add `confirmed: [{}]` to the record.",
                names.join(", ")
            ))
            .question()
    }

    /// Both limbs are affected.
    pub fn both_affected() -> Self {
        let sentence =
            "Both limbs are affected: neither is a measure of the other, so no excess is stated.".to_owned();
        Self::new(
            FindingId::BothAffected,
            Severity::Note,
            FindingPlace::record("record"),
            Basis::HouseRule,
            sentence,
        )
        .next(
            "Follow each limb against its own earlier records; new two-sided swelling has its own question.",
        )
    }
}

fn cm_of(tenths: i64) -> f64 {
    f64::from(i32::try_from(tenths).unwrap_or_default()) / 100.0
}
