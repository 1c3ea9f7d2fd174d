//! Owns the search for probable misreadings behind a girth that is asked about: which single changes of the
//! limb as written raise no question, nearest to the usual limb first.
//!
//! Applies none.
//!
//! Source: bands and the usual limb of the rules, fitted to 507 adults (Heinz et al. 2003, J Stat Educ 11(2));
//! the list of misreadings is a house rule.

use std::f64::consts::PI;

use super::MarkPlace;
use super::girths::Girths;
use super::misreading::{Misreading, MisreadingKind};
use super::since_visit::{Last, farthest};
use super::unusual::unusual;
use super::usual::distance;
use crate::anatomy::{Landmark, Limb};
use crate::quantity::Girth;
use crate::rules::{NumberId, Rules};

/// Most misreadings that are named (house rule: a longer list is not read).
pub const MOST_MISREADINGS: usize = 4;

/// Of lost first digits, of which nine are tried, the nearest that are named (house rule).
const MOST_LOST: usize = 3;

/// Most marks of a limb that is searched (house rule: the search tries every change against every mark).
const MOST_SEARCHED: usize = 60;

/// Centimetres in an inch. Basis: derived (unit definition).
const CM_PER_INCH: f64 = 2.54;

/// What a limb is held against.
pub(super) struct Held<'a> {
    /// Arm or leg.
    pub(super) limb: Limb,
    /// Marks measured again.
    pub(super) confirmed: &'a [Landmark],
    /// Whether adult bands hold.
    pub(super) is_adult: bool,
    /// The limb at the last visit.
    pub(super) last: Option<&'a Last>,
    /// Bands and the usual limb.
    pub(super) rules: &'a Rules,
}

impl Held<'_> {
    pub(super) fn is_confirmed(&self, place: MarkPlace) -> bool {
        place.landmark.is_some_and(|landmark| self.confirmed.contains(&landmark))
    }

    fn away_from_last(&self, girths: &Girths) -> f64 {
        self.last.map_or(0.0, |last| farthest(girths, last, self.rules, |place| self.is_confirmed(place)))
    }

    fn passes(&self, girths: &Girths) -> bool {
        unusual(girths, self.confirmed, self.is_adult, self.rules).is_empty()
            && self.away_from_last(girths) <= self.rules.number(NumberId::VisitChangeSd)
    }

    fn distance(&self, girths: &Girths) -> f64 {
        distance(girths, self.rules).hypot(self.away_from_last(girths))
    }
}

/// The misreadings that would explain the limb, nearest to the usual limb first, at most
/// [`MOST_MISREADINGS`]. Confirmed marks stand as they are. `moved` marks are those that moved otherwise
/// than the rest since the last visit.
pub(super) fn misreadings(girths: &Girths, held: &Held<'_>, moved: &[MarkPlace]) -> Vec<Misreading> {
    if girths.0.len() > MOST_SEARCHED {
        return Vec::new();
    }
    let mut found: Vec<(Misreading, Girths)> = Vec::new();
    for (kind, whole_limb, mended) in changes(girths, held, moved) {
        let known = found.iter().any(|(_, earlier)| *earlier == mended);
        if known || mended == *girths || !held.passes(&mended) {
            continue;
        }
        let instead = mended.0.iter().zip(&girths.0).filter(|(new, old)| new.tenths != old.tenths);
        let instead = instead.filter_map(|(new, _)| Some((new.place, Girth::from_tenths(new.tenths)?)));
        let distance = held.distance(&mended);
        found.push((Misreading { kind, whole_limb, instead: instead.collect(), distance }, mended));
    }
    found.sort_by(|(one, _), (other, _)| one.distance.total_cmp(&other.distance));
    let mut lost = 0;
    let found = found.into_iter().map(|(misreading, _)| misreading).filter(|one| {
        lost += usize::from(one.kind == MisreadingKind::LostDigit);
        one.kind != MisreadingKind::LostDigit || lost <= MOST_LOST
    });
    found.take(MOST_MISREADINGS).collect()
}

type Change = (MisreadingKind, bool, Girths);

/// Every single change of the limb.
fn changes(girths: &Girths, held: &Held<'_>, moved: &[MarkPlace]) -> Vec<Change> {
    let mut found: Vec<Change> = Vec::new();
    for (at, one) in girths.0.iter().enumerate() {
        if held.is_confirmed(one.place) {
            continue;
        }
        let mut instead = of_one(one.tenths);
        if moved.contains(&one.place) {
            instead.extend(other_digits(one.tenths).into_iter().map(|new| (MisreadingKind::OtherDigit, new)));
        }
        found.extend(instead.into_iter().filter_map(|(kind, new)| {
            Some((kind, false, girths.with(|place, old| if place == at { new } else { old })?))
        }));
    }
    found.extend(exchanges(girths, held));
    let factors = [
        (MisreadingKind::Point, 10.0),
        (MisreadingKind::Point, 0.1),
        (MisreadingKind::Point, 0.01),
        (MisreadingKind::Inches, CM_PER_INCH),
        (MisreadingKind::NotInches, 1.0 / CM_PER_INCH),
        (MisreadingKind::Diameters, PI),
    ];
    found.extend(
        factors.into_iter().filter_map(|(kind, factor)| {
            Some((kind, true, girths.with(|_, tenths| scaled(tenths, factor))?))
        }),
    );
    let backwards: Vec<i64> = girths.0.iter().rev().map(|one| one.tenths).collect();
    let reversed = girths.with(|at, tenths| backwards.get(at).copied().unwrap_or(tenths));
    found.extend(reversed.map(|mended| (MisreadingKind::Reversed, true, mended)));
    found
}

fn scaled(tenths: i64, factor: f64) -> i64 {
    // Girths stay below 2,000 cm, 200 000 tenths of a millimetre.
    #[expect(clippy::cast_possible_truncation, clippy::cast_precision_loss, reason = "below 2^53 by far")]
    let scaled = (tenths as f64 * factor).round() as i64;
    scaled
}

/// What one girth might have been.
fn of_one(tenths: i64) -> Vec<(MisreadingKind, i64)> {
    let mut all = vec![
        (MisreadingKind::Point, tenths * 10),
        (MisreadingKind::Point, scaled(tenths, 0.1)),
        (MisreadingKind::Point, scaled(tenths, 0.01)),
        (MisreadingKind::Inches, scaled(tenths, CM_PER_INCH)),
        (MisreadingKind::NotInches, scaled(tenths, 1.0 / CM_PER_INCH)),
    ];
    // A digit lost before the number as written: tens of a girth below 10 cm, the hundred of any.
    if tenths < 1_000 {
        all.extend((1..=9).map(|tens| (MisreadingKind::LostDigit, tenths + tens * 1_000)));
    }
    if tenths < 10_000 {
        all.push((MisreadingKind::LostDigit, tenths + 10_000));
    }
    all.extend(swapped_digits(tenths).into_iter().map(|instead| (MisreadingKind::Digits, instead)));
    all.retain(|(_, instead)| *instead != tenths);
    all
}

/// Two neighbouring digits of the centimetres as written (to the millimetre) swapped.
fn swapped_digits(tenths: i64) -> Vec<i64> {
    if tenths % 10 != 0 {
        return Vec::new();
    }
    let digits = (tenths / 10).to_string().into_bytes();
    // `40.2` with its first two digits swapped is typed as `4.2`: the nought is lost with it.
    let lost_nought = (tenths < 1_000).then_some(tenths / 100 * 1_000 + tenths % 100);
    let swap = |at: usize| {
        let mut swapped = digits.clone();
        swapped.swap(at - 1, at);
        let number: i64 = String::from_utf8(swapped).ok()?.parse().ok()?;
        Some(number * 10)
    };
    (1..digits.len()).filter_map(swap).chain(lost_nought).collect()
}

/// One digit of the centimetres, tens or units, another one.
fn other_digits(tenths: i64) -> Vec<i64> {
    let of_place = |place: i64| {
        let digit = tenths / place % 10;
        (0..10).filter(move |other| *other != digit).map(move |other| tenths + (other - digit) * place)
    };
    of_place(100).chain(of_place(1_000)).collect()
}

/// Each two neighbours exchanged, whether or not a serial mark lies between two landmarks.
fn exchanges(girths: &Girths, held: &Held<'_>) -> Vec<Change> {
    let open = || girths.0.iter().enumerate().filter(|(_, one)| !held.is_confirmed(one.place));
    let all: Vec<(usize, i64)> = open().map(|(at, one)| (at, one.tenths)).collect();
    let named = open().filter(|(_, one)| one.place.landmark.is_some());
    let named: Vec<(usize, i64)> = named.map(|(at, one)| (at, one.tenths)).collect();
    let mut found = Vec::new();
    for pair in named.windows(2).chain(all.windows(2)) {
        let [(one, first), (other, second)] = pair else { continue };
        let exchanged = girths.with(|at, tenths| match at {
            at if at == *one => *second,
            at if at == *other => *first,
            _ => tenths,
        });
        found.extend(exchanged.map(|mended| (MisreadingKind::Exchanged, false, mended)));
    }
    found
}
