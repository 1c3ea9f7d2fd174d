//! Owns how long something holds, in whole days or calendar months.

use jiff::ToSpan as _;
use jiff::civil::Date;

/// A length of time on the calendar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Validity {
    /// Days.
    Days(u16),
    /// Calendar months; the day is clipped to the month's end.
    Months(u16),
}

impl Validity {
    /// `7 days`, `3 months`.
    pub fn parse(text: &str) -> Option<Self> {
        let (number, unit) = text.trim().split_once(' ')?;
        let number: u16 = number.parse().ok()?;
        match unit.trim() {
            "day" | "days" => Some(Self::Days(number)),
            "month" | "months" => Some(Self::Months(number)),
            "week" | "weeks" => Some(Self::Days(number.checked_mul(7)?)),
            _ => None,
        }
    }

    /// `7 days`, `1 month`.
    pub fn spoken(self) -> String {
        let (number, unit) = match self {
            Self::Days(number) => (number, "day"),
            Self::Months(number) => (number, "month"),
        };
        let plural = if number == 1 { "" } else { "s" };
        format!("{number} {unit}{plural}")
    }

    /// The last day on which something of `then` still holds; none beyond the calendar.
    pub fn last_day(self, then: Date) -> Option<Date> {
        match self {
            Self::Days(number) => then.checked_add(i64::from(number).days()).ok(),
            Self::Months(number) => then.checked_add(i64::from(number).months()).ok(),
        }
    }

    /// Whether `then` lies more than this before `today`.
    pub fn is_over(self, then: Date, today: Date) -> bool {
        self.last_day(then).is_some_and(|last| today > last)
    }
}
