//! Owns the estimate of what is worn together on one limb, mark by mark.

use super::worn::{MarkEstimate, PieceAt, WornEstimate, compare};
use crate::anatomy::Landmark;
use crate::garment::{Fabric, Outfit, Piece};
use crate::graduation::{GraduationBasis, Point, Share, Shares, Value};
use crate::pressure::{Estimate, Spread, Stacked, WrapPull, estimate_cm, estimate_wrap, stack, stretch};
use crate::quantity::{Girth, mmhg};
use crate::record::{Mark, Record};
use crate::rules::{NumberId, Rules};

/// One piece at one place, as the physics needs it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Lying<'g> {
    /// Its place among the pieces.
    pub piece: usize,
    /// Its fabric's or wrap's number.
    pub number: usize,
    /// What presses.
    pub kind: LyingKind<'g>,
}

/// A garment or a wrap at one place.
#[derive(Clone, Copy, Debug)]
pub(super) enum LyingKind<'g> {
    /// A garment of a known fabric.
    Knit {
        /// Its fabric.
        fabric: &'g Fabric,
        /// Layers of it.
        layers: u32,
        /// Relaxed girth, cm.
        relaxed_cm: f64,
    },
    /// A wrap.
    Wrap {
        /// Its pull.
        pull: WrapPull,
        /// SD of the pull, a fraction; none = the rules' number.
        sd: Option<f64>,
    },
}

impl Lying<'_> {
    /// SD of its tension, a fraction.
    pub(super) fn tension_sd(&self, rules: &Rules) -> f64 {
        let own = match self.kind {
            LyingKind::Knit { fabric, .. } => fabric.tension_sd,
            LyingKind::Wrap { sd, .. } => sd,
        };
        own.unwrap_or_else(|| rules.number(NumberId::TensionSd))
    }

    /// Its own estimate on a girth in cm.
    pub(super) fn on(&self, girth_cm: f64, girth_sd: f64, rules: &Rules) -> Estimate {
        let tension = self.tension_sd(rules);
        match self.kind {
            LyingKind::Knit { fabric, layers, relaxed_cm } => {
                let relaxed = fabric.relaxed_sd_cm.unwrap_or_else(|| rules.number(NumberId::RelaxedSd));
                let spread = Spread { girth_cm: girth_sd, relaxed_cm: relaxed, tension };
                estimate_cm(fabric, layers, girth_cm, relaxed_cm, spread)
            }
            LyingKind::Wrap { pull, .. } => estimate_wrap(pull, girth_cm, girth_sd, tension),
        }
    }
}

/// All of them on a girth in cm: the plain sum.
pub(super) fn all_on(all: &[Lying<'_>], girth_cm: f64, girth_sd: f64, rules: &Rules) -> Estimate {
    let stacked: Vec<Stacked> = all
        .iter()
        .map(|one| Stacked { estimate: one.on(girth_cm, girth_sd, rules), fabric: one.number })
        .collect();
    stack(&stacked, girth_sd)
}

/// What lies at a landmark: the pieces, and whether every one that covers it is known there.
pub(super) struct LyingAt<'g> {
    pub known: Vec<Lying<'g>>,
    pub relaxed: Vec<(usize, Option<Girth>)>,
    pub complete: bool,
}

/// What lies at a landmark; none where nothing is stated there.
pub(super) fn lying_at(outfit: &Outfit, landmark: Landmark) -> Option<LyingAt<'_>> {
    let fabrics = outfit.fabrics();
    let mut at = LyingAt { known: Vec::new(), relaxed: Vec::new(), complete: true };
    let mut stated = false;
    for (piece, worn) in outfit.pieces.iter().enumerate().filter(|(_, worn)| worn.covers(landmark)) {
        match &worn.piece {
            Piece::Garment(garment) => {
                let relaxed = garment.relaxed_at(landmark);
                at.relaxed.push((piece, relaxed));
                stated |= relaxed.is_some();
                match (relaxed, garment.fabric_at(landmark)) {
                    (Some(relaxed), Some(fabric)) => {
                        let number = fabrics.iter().position(|one| one.is_same(fabric)).unwrap_or_default();
                        let (layers, relaxed_cm) = (garment.layers, relaxed.cm());
                        let kind = LyingKind::Knit { fabric, layers, relaxed_cm };
                        at.known.push(Lying { piece, number, kind });
                    }
                    _ => at.complete = false,
                }
            }
            Piece::Wrap(_) => {
                stated = true;
                at.relaxed.push((piece, None));
                at.known.extend(wrap_at(outfit, piece, fabrics.len()));
            }
        }
    }
    stated.then_some(at)
}

/// The wrap at a place among the pieces, numbered after the fabrics.
pub(super) fn wrap_at(outfit: &Outfit, piece: usize, fabrics: usize) -> Option<Lying<'_>> {
    let Piece::Wrap(wrap) = &outfit.pieces.get(piece)?.piece else { return None };
    let before = outfit.pieces.iter().take(piece).filter(|worn| matches!(worn.piece, Piece::Wrap(_))).count();
    let pull = WrapPull {
        pull_n: wrap.pull_n,
        width_cm: wrap.width_cm,
        layers: wrap.layers,
        thickness_cm: wrap.thickness_cm.unwrap_or(0.0),
    };
    Some(Lying { piece, number: fabrics + before, kind: LyingKind::Wrap { pull, sd: wrap.pull_sd } })
}

/// Estimates everything worn on the record's limb.
pub fn estimate_outfit(record: &Record, outfit: &Outfit, rules: &Rules) -> WornEstimate {
    let by_stretch = outfit.fabrics().is_empty()
        && matches!(outfit.pieces.as_slice(), [one] if matches!(one.piece, Piece::Garment(_)));
    let mut marks = Vec::new();
    let mut points = Vec::new();
    for mark in &record.marks {
        let Some(landmark) = mark.landmark else { continue };
        let Some(at) = lying_at(outfit, landmark) else { continue };
        let (estimate, point) = one_mark(mark, landmark, &at, by_stretch, rules);
        marks.push(estimate);
        points.push(point);
    }
    let basis = match (marks.is_empty(), by_stretch) {
        (true, _) => None,
        (false, true) => Some(GraduationBasis::Stretch),
        (false, false) => Some(GraduationBasis::Fabric),
    };
    compare(record.limb, basis, marks, points, outfit.claim.as_ref(), outfit.to(), rules)
}

fn one_mark(
    mark: &Mark,
    landmark: Landmark,
    at: &LyingAt<'_>,
    by_stretch: bool,
    rules: &Rules,
) -> (MarkEstimate, Point) {
    let (girth, sd) = (mark.girth(), mark.sd_cm());
    let estimate = at.complete.then(|| all_on(&at.known, girth.cm(), sd, rules));
    let pieces: Vec<PieceAt> = at
        .relaxed
        .iter()
        .map(|(piece, relaxed)| PieceAt {
            piece: *piece,
            relaxed: *relaxed,
            estimate: at
                .known
                .iter()
                .find(|one| one.piece == *piece)
                .map(|one| one.on(girth.cm(), sd, rules)),
        })
        .collect();
    let relaxed = match at.relaxed.as_slice() {
        [(_, relaxed)] => *relaxed,
        _ => None,
    };
    let value = match (by_stretch, relaxed, estimate.and_then(|one| one.pressure().map(|p| (one, p)))) {
        (true, Some(relaxed), _) => {
            Value::Stretch { girth, relaxed, sd_girth: sd, sd_relaxed: rules.number(NumberId::RelaxedSd) }
        }
        (_, _, Some((one, pressure))) => {
            let fabrics = shares(&at.known, girth.cm(), rules);
            Value::Pressure { mmhg: mmhg(pressure), sd: one.sd_own(), fabrics }
        }
        _ => Value::NotEstimated,
    };
    let found = MarkEstimate {
        landmark,
        at: mark.at,
        girth,
        relaxed,
        stretch: relaxed.map(|relaxed| stretch(girth, relaxed)),
        estimate,
        read: None,
        pieces,
    };
    (found, Point { landmark, at: mark.at, value })
}

/// What each fabric brings at a place.
pub(super) fn shares(all: &[Lying<'_>], girth_cm: f64, rules: &Rules) -> Shares {
    let mut shares = Shares::default();
    for one in all {
        let brought = one.on(girth_cm, 0.0, rules).pressure().map_or(0.0, mmhg);
        if let Some(Share { mmhg, sd }) = shares.get_mut(one.number) {
            *mmhg += brought;
            *sd = one.tension_sd(rules);
        }
    }
    shares
}
