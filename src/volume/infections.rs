//! Owns the infections of a limb.
//!
//! Source: two or more in a year, medical review (published: British Lymphology Society).

use jiff::civil::Date;

use super::due::months_after;

/// Infections that ask for medical review within twelve months: 2. Basis: published (British
/// Lymphology Society).
pub const REVIEW_FROM: usize = 2;

/// The infections of a limb, up to today.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Infections {
    /// Their dates, oldest first, each once.
    pub dates: Vec<Date>,
    /// How many in the last twelve months.
    pub in_a_year: usize,
    /// The last one, where it came on or after the day of measuring: measure again.
    pub after_measuring: Option<Date>,
    /// The last one, where it came after the visit before the newest.
    pub since_last_visit: Option<Date>,
}

impl Infections {
    /// Of the dates of every record; a date ahead of today does not count.
    pub(super) fn of(mut dates: Vec<Date>, measured: Date, before: Option<Date>, today: Date) -> Self {
        dates.retain(|one| *one <= today);
        dates.sort();
        dates.dedup();
        let year_ago = months_after(today, -12);
        let last = dates.last().copied();
        Self {
            in_a_year: dates.iter().filter(|one| **one > year_ago).count(),
            after_measuring: last.filter(|one| *one >= measured),
            since_last_visit: last.filter(|one| before.is_some_and(|before| *one > before)),
            dates,
        }
    }

    /// Whether a doctor should review them.
    pub fn ask_for_review(&self) -> bool {
        self.in_a_year >= REVIEW_FROM
    }
}
