//! Owns closed and half-open ranges of whole tenths of a millimetre, and their reader.

use std::fmt;

use super::written::split_unit;
use super::{Decimal, Dimension, QuantityFault, Unit, Units, Written};

/// A closed range; an absent end does not limit (`under 14 cm`, `over 36 cm`). At least one end is
/// there and `low` is never above `high`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Range {
    /// Lowest value inside, tenths of a millimetre.
    pub low: Option<i64>,
    /// Highest value inside, tenths of a millimetre.
    pub high: Option<i64>,
}

impl Range {
    /// Whether `value` (tenths of a millimetre) lies in the closed range.
    pub fn holds(self, value: i64) -> bool {
        self.low.is_none_or(|low| low <= value) && self.high.is_none_or(|high| value <= high)
    }

    /// Distance to the nearer end, negative outside, tenths of a millimetre.
    pub fn margin(self, value: i64) -> i64 {
        let below = self.low.map(|low| value - low);
        let above = self.high.map(|high| high - value);
        match (below, above) {
            (Some(below), Some(above)) => below.min(above),
            (Some(one), None) | (None, Some(one)) => one,
            (None, None) => 0,
        }
    }

    /// The width of a range with both ends, tenths of a millimetre.
    pub fn width(self) -> Option<i64> {
        Some(self.high? - self.low?)
    }
}

/// Why a text is not a range.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RangeFault {
    /// Not of the form `14-16 cm`, `under 14 cm` or `over 36 cm`.
    Form,
    /// The first end is above the second.
    Upside(String, String),
    /// One end is wrong.
    End(String, QuantityFault),
    /// An end is zero, negative or too large.
    Bounds(String),
}

impl fmt::Display for RangeFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Form => out
                .write_str("is not a range; write `14-16 cm`, `14 to 16 cm`, `under 14 cm` or `over 36 cm`"),
            Self::Upside(low, high) => {
                write!(out, "has its low end `{low}` above its high end `{high}`; write the smaller first")
            }
            Self::End(text, fault) => write!(out, "has an end `{text}` that {fault}"),
            Self::Bounds(text) => write!(out, "has an end `{text}` outside 0 to 200 cm; check the unit"),
        }
    }
}

/// Largest length that a range end may have: 200 cm in tenths of a millimetre (house rule, as for girths).
const MOST: i64 = 20_000;

/// Words before the one end of a range that is open downward, as leaflets print it.
const DOWNWARD: [&str; 5] = ["under ", "up to ", "at most ", "\u{2264}", "<="];

/// Words before the one end of a range that is open upward.
const UPWARD: [&str; 5] = ["over ", "from ", "at least ", "\u{2265}", ">="];

/// Reads a range of lengths; a unit behind the last end holds for both.
///
/// # Errors
/// A [`RangeFault`] that names the wrong end or shows the accepted forms.
pub fn read_range(text: &str, units: Units) -> Result<Range, RangeFault> {
    let text = text.trim();
    let one = |rest: &str| read_end(rest, units);
    let behind = |words: [&str; 5]| words.iter().find_map(|word| without(text, word));
    if let Some(rest) = behind(DOWNWARD) {
        return Ok(Range { low: None, high: Some(one(rest)?) });
    }
    // `from 16 to 18` has both ends.
    let both = without(text, "from ").filter(|rest| range_ends(rest).is_some());
    if let Some(rest) = behind(UPWARD).filter(|_| both.is_none()) {
        return Ok(Range { low: Some(one(rest)?), high: None });
    }
    let (low, high) = range_ends(both.unwrap_or(text)).ok_or(RangeFault::Form)?;
    let shared = Unit::parse(split_unit(high).1).map_or(units, |unit| units.with(unit));
    let (low_end, high_end) = (read_end(low, shared)?, read_end(high, units)?);
    if low_end > high_end {
        return Err(RangeFault::Upside(low.to_owned(), high.to_owned()));
    }
    Ok(Range { low: Some(low_end), high: Some(high_end) })
}

/// What stands behind a word at the beginning, whatever its case.
fn without<'t>(text: &'t str, word: &str) -> Option<&'t str> {
    let (begin, rest) = text.split_at_checked(word.len())?;
    begin.eq_ignore_ascii_case(word).then_some(rest)
}

/// The two ends of `14-16 cm`, `14–16 cm` or `14 to 16 cm`, as written; none where there are not two.
pub fn range_ends(text: &str) -> Option<(&str, &str)> {
    let parts = text.split_once(" to ").or_else(|| {
        text.char_indices().skip(1).find(|(_, c)| matches!(c, '-' | '\u{2013}' | '\u{2014}')).map(
            |(at, c)| (text.get(..at).unwrap_or_default(), text.get(at + c.len_utf8()..).unwrap_or_default()),
        )
    })?;
    let (low, high) = (parts.0.trim(), parts.1.trim());
    (!low.is_empty() && !high.is_empty()).then_some((low, high))
}

fn read_end(text: &str, units: Units) -> Result<i64, RangeFault> {
    let text = text.trim();
    let written: Written = super::read_quantity(text, Dimension::Length, units).map_err(|fault| {
        if Decimal::parse(split_unit(text).0).is_err() && !text.contains(',') {
            RangeFault::Form
        } else {
            RangeFault::End(text.to_owned(), fault)
        }
    })?;
    written
        .tenth_millimetres()
        .filter(|tenths| (1..=MOST).contains(tenths))
        .ok_or_else(|| RangeFault::Bounds(text.to_owned()))
}
