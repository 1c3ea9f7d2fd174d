//! Owns what is due for the garments in use.
//!
//! Source: re-check and regular visits, Lymphoedema Framework 2006 (published); service life about six
//! months of daily wear, RAL (published); the fewer garments share the wear, the earlier (published:
//! Veraart, Dermatol Surg 1997, of class 2 stockings of one kind); measured again before every re-order
//! (published: Framework 2006). The months by number and their share by hours are house rules.

use jiff::ToSpan as _;
use jiff::civil::Date;

use super::VolumeNumbers;
use crate::input::Text;
use crate::record::{AgeBand, GarmentInUse};
use crate::rules::Basis;

/// What is due.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum DueKind {
    /// A first look soon after it was given, where harm might go unnoticed.
    FirstLook,
    /// The re-check some weeks after it was given.
    Recheck,
    /// The next regular visit.
    Regular,
    /// Measuring again before a new one is ordered.
    Remeasure,
    /// A new one.
    Renewal,
}

impl DueKind {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::FirstLook => "first-look",
            Self::Recheck => "re-check",
            Self::Regular => "regular-visit",
            Self::Remeasure => "re-measure",
            Self::Renewal => "renewal",
        }
    }

    /// What the date rests on.
    pub fn basis(self) -> Basis {
        match self {
            Self::FirstLook | Self::Renewal => Basis::HouseRule,
            Self::Recheck | Self::Regular | Self::Remeasure => Basis::Published,
        }
    }
}

/// One thing due.
#[derive(Clone, Debug, PartialEq)]
pub struct Due {
    /// What.
    pub kind: DueKind,
    /// For which garment, by its label.
    pub garment: Text,
    /// From this day on.
    pub on: Date,
    /// By this day at the latest.
    pub by: Date,
    /// Whether its day has come.
    pub is_due: bool,
    /// Whether its last day has passed.
    pub is_late: bool,
    /// What a renewal rests on; none for the others.
    pub wear: Option<Wear>,
}

/// How a garment is worn, as far as the record says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wear {
    /// How many share the wear.
    pub quantity: u32,
    /// Hours a day; none = not recorded.
    pub hours_a_day: Option<f64>,
}

impl Due {
    fn of(kind: DueKind, garment: &Text, on: Date, by: Date, today: Date) -> Self {
        Self { kind, garment: garment.clone(), on, by, is_due: today >= on, is_late: today > by, wear: None }
    }
}

/// `date` and `months` calendar months, the day clipped to the month's end.
pub fn months_after(date: Date, months: i32) -> Date {
    date.saturating_add(months.months())
}

/// What is due for the `garments` of one limb, soonest first. `seen` is the newest visit; `closely`
/// where diabetes, lost feeling, a cap or cannot-report is recorded.
pub fn due(
    garments: &[GarmentInUse],
    seen: Date,
    age: AgeBand,
    closely: bool,
    today: Date,
    numbers: &VolumeNumbers,
) -> Vec<Due> {
    let mut all = Vec::new();
    for garment in current(garments) {
        let (label, given) = (&garment.label, garment.given_on);
        let mut push = |kind, on, by| all.push(Due::of(kind, label, on, by, today));
        let days = |count: i32| given.saturating_add(count.days());
        if closely && seen <= given {
            push(DueKind::FirstLook, given, days(numbers.first_look_days));
        }
        let (on, by) = numbers.recheck_days;
        if seen < days(on) {
            push(DueKind::Recheck, days(on), days(by));
        } else {
            let (on, by) = numbers.regular_months;
            push(DueKind::Regular, months_after(seen, on), months_after(seen, by));
        }
        // The same garment given twice on one day shares the wear.
        let of_the_day = garments.iter().filter(|one| one.label == *label && one.given_on == given);
        let quantity: u32 = of_the_day.map(|one| one.quantity).sum();
        let wear = Wear { quantity, hours_a_day: garment.hours_a_day };
        let renewal = renewal(given, age, wear, numbers);
        let measured_from = renewal.saturating_sub(VolumeNumbers::MAKING_DAYS.days()).max(given);
        if seen < measured_from {
            push(DueKind::Remeasure, measured_from, renewal);
        }
        all.push(Due { wear: Some(wear), ..Due::of(DueKind::Renewal, label, renewal, renewal, today) });
    }
    all.sort_by(|one, other| {
        (one.on, one.kind, one.garment.as_str()).cmp(&(other.on, other.kind, other.garment.as_str()))
    });
    all
}

/// When a garment is renewed: after the months by number, brought forward by longer days of wear than these
/// assume and put off by shorter ones, never beyond the months of two in turn (the service life). A child
/// grows whatever the hours: those only bring it forward.
fn renewal(given: Date, age: AgeBand, wear: Wear, numbers: &VolumeNumbers) -> Date {
    let (alone, in_turn, child) = numbers.renewal_months;
    let (months, longest) = match (age, wear.quantity) {
        (AgeBand::Child, _) => (child, child),
        (AgeBand::Adult, ..2) => (alone, alone.max(in_turn)),
        (AgeBand::Adult, 2..) => (in_turn, in_turn),
    };
    let by_number = months_after(given, months);
    let Some(hours) = wear.hours_a_day else { return by_number };
    let last = months_after(given, longest);
    let days = given.until(by_number).map_or(0, |span| span.get_days());
    // Not beyond the service life; hours of nothing would be endless.
    let room = f64::from(given.until(last).map_or(0, |span| span.get_days()));
    let worn = if hours > 0.0 { (f64::from(days) * numbers.wear_day_hours / hours).ceil() } else { room };
    #[expect(clippy::cast_possible_truncation, reason = "whole, at most some months of days")]
    let worn = worn.min(room) as i32;
    given.saturating_add(worn.days())
}

/// The garments that are worn now: of each label the last given.
pub fn current(garments: &[GarmentInUse]) -> Vec<&GarmentInUse> {
    garments
        .iter()
        .enumerate()
        .filter(|(at, one)| {
            !garments.iter().enumerate().any(|(later, other)| {
                other.label == one.label && (other.given_on, later) > (one.given_on, *at)
            })
        })
        .map(|(_, one)| one)
        .collect()
}
