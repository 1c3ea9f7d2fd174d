//! Owns the pieces as they lie at one place.

use super::knits::{Knits, has_curve, relaxed_sd};
use super::on_limb::tapes;
use super::{EstimateRules, OnLimb};
use crate::anatomy::Landmark;
use crate::garment::{Fabric, Outfit, Piece, Relaxed, Wrap};
use crate::gradient::{FallMark, KnitPart, MarkKind, Part, WrapPart};
use crate::pressure::{Estimate, Spread, Stacked, WrapPull, estimate_cm, estimate_wrap, stack};
use crate::quantity::mmhg;
use crate::record::Mark;

/// One piece at one place.
#[derive(Clone, Copy, Debug)]
pub(super) enum Lying<'o> {
    /// A garment with a stated relaxed girth.
    Knit {
        /// Its place among the pieces.
        piece: usize,
        /// Its knit's number.
        number: usize,
        /// Its fabric.
        fabric: Option<&'o Fabric>,
        /// Layers of it.
        layers: u32,
        /// Relaxed girth, cm.
        relaxed_cm: f64,
        /// How often that was measured.
        repeats: u32,
    },
    /// A wrap.
    Wrap {
        /// Its place among the pieces.
        piece: usize,
        /// The wrap.
        wrap: &'o Wrap,
    },
}

/// What lies at a landmark.
#[derive(Clone, Debug, Default)]
pub(super) struct LyingAt<'o> {
    /// The pieces that are known there.
    pub known: Vec<Lying<'o>>,
    /// Whether every piece that covers it is known there.
    pub complete: bool,
}

/// The pieces of `which` that cover a landmark, as far as they are known there.
pub(super) fn lying_at<'o>(
    outfit: &'o Outfit,
    knits: &Knits<'o>,
    which: impl Iterator<Item = usize>,
    landmark: Landmark,
) -> LyingAt<'o> {
    let mut found = LyingAt { known: Vec::new(), complete: true };
    for piece in which {
        let Some(worn) = outfit.pieces.get(piece).filter(|worn| worn.covers(landmark)) else { continue };
        match &worn.piece {
            Piece::Wrap(wrap) => found.known.push(Lying::Wrap { piece, wrap }),
            Piece::Garment(garment) => match garment.relaxed_at(landmark) {
                Some(relaxed) => {
                    let fabric = garment.fabric_at(landmark);
                    found.known.push(Lying::Knit {
                        piece,
                        number: knits.number(fabric, piece),
                        fabric,
                        layers: garment.layers.max(1),
                        relaxed_cm: relaxed.girth.cm(),
                        repeats: relaxed.repeats,
                    });
                }
                None => found.complete = false,
            },
        }
    }
    found
}

impl Lying<'_> {
    /// Its place among the pieces.
    pub(super) fn piece(&self) -> usize {
        match self {
            Self::Knit { piece, .. } | Self::Wrap { piece, .. } => *piece,
        }
    }

    /// Its knit's number; none for a wrap.
    pub(super) fn number(&self) -> Option<usize> {
        match self {
            Self::Knit { number, .. } => Some(*number),
            Self::Wrap { .. } => None,
        }
    }

    /// Relaxed girth, cm; none for a wrap.
    pub(super) fn relaxed_cm(&self) -> Option<f64> {
        match self {
            Self::Knit { relaxed_cm, .. } => Some(*relaxed_cm),
            Self::Wrap { .. } => None,
        }
    }

    /// Whether it can be estimated: it has a curve, or is a wrap.
    pub(super) fn is_estimable(&self) -> bool {
        match self {
            Self::Knit { fabric, .. } => fabric.is_some_and(has_curve),
            Self::Wrap { .. } => true,
        }
    }

    /// Its own estimate on a girth in cm; none without a curve.
    pub(super) fn on(&self, girth_cm: f64, girth_sd_cm: f64, rules: &EstimateRules) -> Option<Estimate> {
        match self {
            Self::Knit { fabric, layers, relaxed_cm, repeats, .. } => {
                let fabric = fabric.filter(|fabric| has_curve(fabric))?;
                let spread = Spread {
                    girth_cm: girth_sd_cm,
                    relaxed_cm: mean_sd(relaxed_sd(Some(fabric), rules), *repeats),
                    tension: fabric.tension_sd.unwrap_or(rules.tension_sd),
                };
                Some(estimate_cm(fabric, *layers, girth_cm, *relaxed_cm, spread))
            }
            Self::Wrap { wrap, .. } => {
                Some(estimate_wrap(pull_of(wrap), girth_cm, girth_sd_cm, wrap.tension_sd))
            }
        }
    }

    /// As the rule of the fall takes it.
    fn part(&self, mark: &Mark, rules: &EstimateRules) -> Part {
        match self {
            Self::Knit { piece, number, fabric, layers, relaxed_cm, repeats } => Part::Knit(KnitPart {
                knit: *number,
                piece: *piece,
                relaxed_cm: *relaxed_cm,
                relaxed_sd_cm: mean_sd(relaxed_sd(*fabric, rules), *repeats),
                flat_widths: *repeats,
                layers: f64::from(*layers),
            }),
            Self::Wrap { wrap, .. } => {
                let (value, per_girth) = match estimate_wrap(pull_of(wrap), mark.girth().cm(), 0.0, 0.0) {
                    Estimate::Pressed(pressed) => (mmhg(pressed.pressure), pressed.per_girth),
                    Estimate::Slack | Estimate::Beyond { .. } => (0.0, 0.0),
                };
                Part::Wrap(WrapPart { mmhg: value, per_girth, pull_sd_mmhg: wrap.tension_sd * value })
            }
        }
    }
}

fn mean_sd(sd: f64, repeats: u32) -> f64 {
    sd / f64::from(repeats.max(1)).sqrt()
}

fn pull_of(wrap: &Wrap) -> WrapPull {
    WrapPull {
        pull_n: wrap.pull_n,
        width_cm: wrap.width_cm,
        layers: wrap.layers,
        thickness_cm: wrap.thickness_cm.unwrap_or(0.0),
    }
}

/// All of them on a girth in cm, the plain sum; none where one has no curve, or nothing lies there.
pub(super) fn all_on(
    lying: &[Lying<'_>],
    girth_cm: f64,
    girth_sd_cm: f64,
    rules: &EstimateRules,
) -> Option<Estimate> {
    let all: Option<Vec<Stacked>> = lying
        .iter()
        .map(|one| {
            let estimate = one.on(girth_cm, girth_sd_cm, rules)?;
            Some(Stacked { estimate, fabric: one.number().unwrap_or(usize::MAX) })
        })
        .collect();
    all.filter(|all| !all.is_empty()).map(|all| stack(&all, girth_sd_cm))
}

/// A mark for the rule of the fall.
pub(super) fn fall_mark(
    landmark: Landmark,
    mark: &Mark,
    lying: &[Lying<'_>],
    share: f64,
    rules: &EstimateRules,
) -> FallMark {
    FallMark {
        landmark,
        at_cm: mark.at.cm(),
        girth_cm: mark.girth().cm(),
        girth_sd_cm: mark.sd_cm(landmark.limb(), &rules.tape),
        tapes: tapes(mark),
        share: if lying.len() > 1 { share } else { 1.0 },
        what: MarkKind::Worn(lying.iter().map(|one| one.part(mark, rules)).collect()),
    }
}

/// A band of an edge, as it lies on a landmark.
pub(super) fn edge_lying(
    piece: usize,
    number: usize,
    fabric: Option<&Fabric>,
    layers: u32,
    relaxed: Relaxed,
) -> Lying<'_> {
    Lying::Knit {
        piece,
        number,
        fabric,
        layers: layers.max(1),
        relaxed_cm: relaxed.girth.cm(),
        repeats: relaxed.repeats,
    }
}

/// The landmarks that a piece covers and that are measured.
pub(super) fn covered(on: &OnLimb<'_>, outfit: &Outfit, piece: usize) -> Vec<Landmark> {
    let Some(worn) = outfit.pieces.get(piece) else { return Vec::new() };
    on.named().map(|(landmark, _)| landmark).filter(|landmark| worn.covers(*landmark)).collect()
}
