//! Owns one girth against one range.

use super::{KnownGirth, Limits};
use crate::anatomy::Landmark;
use crate::quantity::{Girth, Range, Step, phi};

/// How a girth lies in a range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeasureVerdict {
    /// Inside, with room.
    Inside,
    /// Inside, close to an end.
    Close,
    /// Outside.
    Outside,
    /// Not measured.
    Missing,
}

impl MeasureVerdict {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Inside => "inside",
            Self::Close => "close",
            Self::Outside => "outside",
            Self::Missing => "missing",
        }
    }

    /// Whether the range takes the girth.
    pub fn takes(self) -> bool {
        matches!(self, Self::Inside | Self::Close)
    }
}

/// What the garment would be on a girth outside its range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// The limb is thicker than the range.
    Tight,
    /// The limb is thinner than the range.
    Loose,
}

impl Direction {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Tight => "tight",
            Self::Loose => "loose",
        }
    }
}

/// One girth against one range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasureFit {
    /// Where.
    pub landmark: Landmark,
    /// The girth, rounded to the chart's step; none = not measured.
    pub girth: Option<Girth>,
    /// The range.
    pub range: Range,
    /// Margin to the nearer end, tenths of a millimetre, negative outside.
    pub margin: Option<i64>,
    /// Inside, close, outside or missing.
    pub verdict: MeasureVerdict,
    /// Tight or loose, outside only.
    pub direction: Option<Direction>,
    /// Chance that the true girth lies in the range, by tape error alone; none = not measured.
    pub inside_chance: Option<f64>,
    /// Tape values behind the girth; 0 = not measured.
    pub tapes: u32,
}

impl MeasureFit {
    /// Holds a girth against a range; the girth is first rounded to the chart's step.
    pub(super) fn of(
        landmark: Landmark,
        known: Option<&KnownGirth>,
        range: Range,
        step: Option<Step>,
        limits: Limits,
    ) -> Self {
        let Some(known) = known else {
            return Self {
                landmark,
                girth: None,
                range,
                margin: None,
                verdict: MeasureVerdict::Missing,
                direction: None,
                inside_chance: None,
                tapes: 0,
            };
        };
        let girth = known.girth.rounded_to(step);
        let margin = range.margin(girth.tenths());
        let direction = if range.high.is_some_and(|high| girth.tenths() > high) {
            Some(Direction::Tight)
        } else if range.low.is_some_and(|low| girth.tenths() < low) {
            Some(Direction::Loose)
        } else {
            None
        };
        let verdict = match direction {
            Some(_) => MeasureVerdict::Outside,
            None if margin < limits.close => MeasureVerdict::Close,
            None => MeasureVerdict::Inside,
        };
        Self {
            landmark,
            girth: Some(girth),
            range,
            margin: Some(margin),
            verdict,
            direction,
            inside_chance: Some(inside_chance(girth.tenths(), range, known.sd_cm)),
            tapes: known.tapes,
        }
    }

    /// By how much the girth misses the range, tenths of a millimetre; 0 inside or not measured.
    pub fn miss(&self) -> i64 {
        self.margin.map_or(0, |margin| (-margin).max(0))
    }
}

/// Chance that the true girth lies in the range, given the one measured: Φ((high − C)/s) − Φ((low − C)/s).
///
/// Source: normal tape error (derived); an absent end does not limit.
pub(super) fn inside_chance(tenths: i64, range: Range, sd_cm: f64) -> f64 {
    let z = |end: i64| cm(end - tenths) / sd_cm;
    range.high.map_or(1.0, |high| phi(z(high))) - range.low.map_or(0.0, |low| phi(z(low)))
}

/// Centimetres of tenths of a millimetre.
fn cm(tenths: i64) -> f64 {
    f64::from(i32::try_from(tenths).unwrap_or(i32::MAX)) / 100.0
}
