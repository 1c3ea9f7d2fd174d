//! Owns the reading of a table's header and cells as leaflets print them: units in the header,
//! `16-18` in a cell, fractions of an inch.

use crate::quantity::{Dimension, range_ends};
use crate::quantity::{Girth, Range, RangeFault, Unit, Units, Written, read_quantity, read_range};

/// Part of a measure that a column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Part {
    /// `16-18` in one cell.
    Range,
    /// The low end.
    Low,
    /// The high end.
    High,
    /// The relaxed girth.
    Relaxed,
}

/// A column's heading: the words before the unit, which part they are, and the unit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Heading {
    /// The measure, as written; empty in the long form (`low_cm`).
    pub(super) measure: String,
    /// Which part of it.
    pub(super) part: Part,
    /// The unit.
    pub(super) unit: Unit,
}

impl Heading {
    /// Reads `wrist_cm`, `wrist (cm)`, `wrist_low_cm`, `relaxed_mm`; none where no unit of length ends it.
    pub(super) fn parse(text: &str) -> Option<Self> {
        let text = text.trim().trim_end_matches([')', ']']).trim_end();
        let at = text.rfind(['_', ' ', '(', '['])?;
        let unit = Unit::of_heading(text.get(at + 1..)?)?;
        let rest = text.get(..at)?.trim_end_matches(['_', ' ', '(', '[', ',']);
        let ends = |word: &str| {
            let (before, end) = rest.split_at_checked(rest.len().checked_sub(word.len())?)?;
            if !end.eq_ignore_ascii_case(word) {
                return None;
            }
            (before.is_empty() || before.ends_with(['_', ' '])).then(|| before.trim_end_matches(['_', ' ']))
        };
        let (measure, part) = if let Some(before) = ends("low") {
            (before, Part::Low)
        } else if let Some(before) = ends("high") {
            (before, Part::High)
        } else if let Some(before) = ends("relaxed") {
            (before, Part::Relaxed)
        } else {
            (rest, Part::Range)
        };
        Some(Self { measure: measure.trim().to_owned(), part, unit })
    }

    fn units(&self) -> Units {
        Units::default().with(self.unit)
    }

    /// Reads a range in one cell.
    ///
    /// # Errors
    /// What is wrong with it.
    pub(super) fn range(&self, text: &str) -> Result<Range, RangeFault> {
        read_range(&with_fractions(text), self.units())
    }

    /// Reads one length in a cell, tenths of a millimetre.
    ///
    /// # Errors
    /// What is wrong with it, as the end of a sentence about the cell.
    pub(super) fn length(&self, text: &str) -> Result<i64, String> {
        let plain = with_fractions(text);
        if range_ends(&plain).is_some() {
            return Err("is a range; one number is wanted here".to_owned());
        }
        let written: Written =
            read_quantity(&plain, Dimension::Length, self.units()).map_err(|fault| fault.to_string())?;
        written
            .tenth_millimetres()
            .filter(|tenths| (1..=Girth::MOST_TENTHS).contains(tenths))
            .ok_or_else(|| "is not above 0 and at most 200 cm".to_owned())
    }
}

/// Writes fractions as decimals: `6 1/2` as `6.5`; only halves, quarters, eighths and sixteenths, which
/// rulers have and decimals hold exactly.
fn with_fractions(text: &str) -> String {
    let mut out = text.trim().to_owned();
    while let Some(mended) = mend_first(&out) {
        out = mended;
    }
    out
}

fn mend_first(text: &str) -> Option<String> {
    let slash = text.find('/')?;
    let (head, tail) = (text.get(..slash)?, text.get(slash + 1..)?);
    let digits_at_end = |text: &str| text.len() - text.trim_end_matches(|c: char| c.is_ascii_digit()).len();
    let digits_at_start = tail.len() - tail.trim_start_matches(|c: char| c.is_ascii_digit()).len();
    let above: u32 = head.get(head.len() - digits_at_end(head)..)?.parse().ok()?;
    let below: u32 = tail.get(..digits_at_start)?.parse().ok()?;
    // Ten-thousandths, so that each of these is whole.
    let part = match below {
        2 | 4 | 8 | 16 if above < below => above * (10_000 / below),
        _ => return None,
    };
    let before = head.get(..head.len() - digits_at_end(head))?;
    let trimmed = before.trim_end_matches(' ');
    let whole_digits = if trimmed.len() < before.len() { digits_at_end(trimmed) } else { 0 };
    let whole: u32 =
        if whole_digits == 0 { 0 } else { trimmed.get(trimmed.len() - whole_digits..)?.parse().ok()? };
    let kept = if whole_digits == 0 { before } else { trimmed.get(..trimmed.len() - whole_digits)? };
    Some(format!("{kept}{whole}.{part:04}{}", tail.get(digits_at_start..)?))
}
