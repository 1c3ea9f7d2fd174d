//! Owns the infections of a limb.
//!
//! Source: two or more in a year, medical review (published: British Lymphology Society).

use jiff::civil::Date;

use super::VolumeNumbers;
use super::due::months_after;

/// The infections of a limb, up to today.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Infections {
    /// Their dates, oldest first, each once.
    pub dates: Vec<Date>,
    /// How many in the last twelve months.
    pub in_a_year: usize,
    /// The last one, where it came after the day of measuring: measure again.
    pub after_measuring: Option<Date>,
    /// Whether so many in a year ask for a medical review.
    pub ask_for_review: bool,
    /// The last one, where it came after the visit before the newest.
    pub since_last_visit: Option<Date>,
}

impl Infections {
    /// Of the dates of every record; a date ahead of today does not count.
    pub(super) fn of(
        mut dates: Vec<Date>,
        measured: Date,
        before: Option<Date>,
        today: Date,
        numbers: &VolumeNumbers,
    ) -> Self {
        dates.retain(|one| *one <= today);
        dates.sort();
        dates.dedup();
        let year_ago = months_after(today, -12);
        let last = dates.last().copied();
        let in_a_year = dates.iter().filter(|one| **one > year_ago).count();
        let count = u32::try_from(in_a_year).unwrap_or(u32::MAX);
        Self {
            in_a_year,
            ask_for_review: f64::from(count) >= numbers.infections_a_year,
            after_measuring: last.filter(|one| *one > measured),
            since_last_visit: last.filter(|one| before.is_some_and(|before| *one > before)),
            dates,
        }
    }
}
