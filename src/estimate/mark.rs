//! Owns the estimate at one mark.

use super::knits::Knits;
use super::lying::{LyingAt, all_on, lying_at};
use super::{EstimateRules, OnLimb, ReadAt};
use crate::anatomy::Landmark;
use crate::garment::Outfit;
use crate::pressure::Estimate;
use crate::quantity::{Girth, Position, mmhg, newton_per_metre};

/// The 95 % range is so many SDs to either side (derived).
pub(super) const RANGE_SDS: f64 = 1.96;

/// A range of 95 %, mmHg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// Low end, at least 0.
    pub low: f64,
    /// High end.
    pub high: f64,
}

impl Range {
    /// Around a pressure.
    fn around(mmhg: f64, sd: f64) -> Self {
        Self { low: (mmhg - RANGE_SDS * sd).max(0.0), high: mmhg + RANGE_SDS * sd }
    }
}

/// One piece of several at a mark.
#[derive(Clone, Copy, Debug)]
pub struct PieceAt {
    /// Its place among the pieces worn.
    pub piece: usize,
    /// Its relaxed girth there, cm; none for a wrap.
    pub relaxed_cm: Option<f64>,
    /// Its own estimate; none without a curve.
    pub estimate: Option<Estimate>,
}

/// The estimate at one mark: of several pieces the plain sum, an upper estimate.
#[derive(Clone, Debug)]
pub struct MarkEstimate {
    /// Where.
    pub landmark: Landmark,
    /// Where along the limb.
    pub at: Position,
    /// Limb girth.
    pub girth: Girth,
    /// Relaxed girth, cm; none for wraps and several pieces.
    pub relaxed_cm: Option<f64>,
    /// Stretch, a fraction; negative where the garment is wider than the limb.
    pub stretch: Option<f64>,
    /// The estimate; none without a curve.
    pub estimate: Option<Estimate>,
    /// SD between wearers and against a sensor, mmHg.
    pub worn_sd: f64,
    /// Each piece there, inner first.
    pub pieces: Vec<PieceAt>,
    /// Whether every piece that covers the mark is known there.
    pub complete: bool,
    /// What a sensor read there.
    pub reading: Option<ReadAt>,
    /// Whether it is judged in the fall.
    pub judged: bool,
}

impl MarkEstimate {
    /// Pressure, mmHg: 0 without contact; none beyond the curve or without one.
    pub fn mmhg(&self) -> Option<f64> {
        self.estimate.and_then(|one| one.pressure()).map(mmhg)
    }

    /// The least pressure beyond the curve's end, mmHg.
    pub fn bound_mmhg(&self) -> Option<f64> {
        self.estimate.and_then(|one| one.bound()).map(mmhg)
    }

    /// Pressure, or the least that it can be, mmHg.
    pub fn at_least_mmhg(&self) -> Option<f64> {
        self.mmhg().or_else(|| self.bound_mmhg())
    }

    /// Tension of all layers, N/m: 0 without contact.
    pub fn tension(&self) -> Option<f64> {
        match self.estimate? {
            Estimate::Slack => Some(0.0),
            Estimate::Beyond { .. } => None,
            Estimate::Pressed(pressed) => Some(newton_per_metre(pressed.tension)),
        }
    }

    /// SD by tape, ruler and fabric, mmHg; none without contact.
    pub fn sd_mmhg(&self) -> Option<f64> {
        match self.estimate? {
            Estimate::Pressed(pressed) => Some(pressed.sd()),
            Estimate::Slack | Estimate::Beyond { .. } => None,
        }
    }

    /// SD with the spread between wearers and against a sensor, mmHg.
    pub fn sd_worn_mmhg(&self) -> Option<f64> {
        self.sd_mmhg().map(|sd| sd.hypot(self.worn_sd))
    }

    /// 95 % by tape, ruler and fabric.
    pub fn range(&self) -> Option<Range> {
        Some(Range::around(self.mmhg()?, self.sd_mmhg()?))
    }

    /// 95 % as worn.
    pub fn range_worn(&self) -> Option<Range> {
        Some(Range::around(self.mmhg()?, self.sd_worn_mmhg()?))
    }

    /// Change of pressure with girth, mmHg per cm: the slow, resting one.
    pub fn stiffness(&self) -> Option<f64> {
        match self.estimate? {
            Estimate::Pressed(pressed) => Some(pressed.per_girth),
            Estimate::Slack | Estimate::Beyond { .. } => None,
        }
    }

    /// Whether the garment is as wide as the limb or wider.
    pub fn is_slack(&self) -> bool {
        !self.pieces.is_empty()
            && self
                .pieces
                .iter()
                .all(|piece| piece.relaxed_cm.is_some_and(|relaxed| self.girth.cm() <= relaxed))
    }

    /// SD of the logarithm by tape and ruler.
    pub(super) fn own_ln_sd(&self) -> Option<f64> {
        match self.estimate? {
            Estimate::Pressed(pressed) => Some(pressed.sd_own / mmhg(pressed.pressure)),
            Estimate::Slack | Estimate::Beyond { .. } => None,
        }
    }
}

/// Every measured mark where a piece is known, distal to proximal.
pub(super) fn marks(
    on: &OnLimb<'_>,
    outfit: &Outfit,
    knits: &Knits<'_>,
    rules: &EstimateRules,
) -> Vec<MarkEstimate> {
    on.named()
        .filter_map(|(landmark, mark)| {
            let LyingAt { known, complete } = lying_at(outfit, knits, 0..outfit.pieces.len(), landmark);
            if known.is_empty() {
                return None;
            }
            let (girth, sd) = (mark.girth(), mark.sd_cm(on.limb, &rules.tape));
            let alone = match known.as_slice() {
                [one] if complete => one.relaxed_cm(),
                _ => None,
            };
            let pieces = known
                .iter()
                .map(|one| PieceAt {
                    piece: one.piece(),
                    relaxed_cm: one.relaxed_cm(),
                    estimate: one.on(girth.cm(), sd, rules),
                })
                .collect();
            Some(MarkEstimate {
                landmark,
                at: mark.at,
                girth,
                relaxed_cm: alone,
                stretch: alone.map(|relaxed| girth.cm() / relaxed - 1.0),
                estimate: if complete { all_on(&known, girth.cm(), sd, rules) } else { None },
                worn_sd: rules.worn_sd_mmhg,
                pieces,
                complete,
                reading: None,
                judged: !landmark.on_extremity() && !landmark.is_joint(),
            })
        })
        .collect()
}
