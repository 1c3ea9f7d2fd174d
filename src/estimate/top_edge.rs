//! Owns the band at a garment's upper end: what it presses against the garment just below it.

use super::falls::{Asked, FallOf, setting};
use super::knits::Knits;
use super::lying::{edge_lying, fall_mark, lying_at};
use super::{EstimateRules, OnLimb};
use crate::anatomy::Landmark;
use crate::garment::{Garment, Outfit, Piece};
use crate::gradient::{GradientBasis, held_against};
use crate::pressure::Estimate;
use crate::quantity::mmhg;

/// The band at a garment's upper end.
#[derive(Clone, Copy, Debug)]
pub struct TopEdgeEstimate {
    /// The garment's place among the pieces.
    pub piece: usize,
    /// The mark that it lies on.
    pub landmark: Landmark,
    /// The band; none without a curve.
    pub edge: Option<Estimate>,
    /// The garment there; none without a curve.
    pub garment: Option<Estimate>,
    /// The chance that the band presses more by a rise that counts.
    pub chance: Option<f64>,
}

impl TopEdgeEstimate {
    /// The band's pressure, or the least that it can be, mmHg.
    pub fn edge_mmhg(&self) -> Option<f64> {
        self.edge.map(|one| mmhg(one.at_least()))
    }

    /// The garment's, mmHg.
    pub fn garment_mmhg(&self) -> Option<f64> {
        self.garment.map(|one| mmhg(one.at_least()))
    }
}

/// Every band that is stated, each on its garment's most proximal measured mark.
pub(super) fn top_edges(
    on: &OnLimb<'_>,
    outfit: &Outfit,
    knits: &Knits<'_>,
    rules: &EstimateRules,
) -> Vec<TopEdgeEstimate> {
    let garments = outfit.pieces.iter().enumerate().filter_map(|(piece, worn)| match &worn.piece {
        Piece::Garment(garment) => Some((piece, garment.as_ref())),
        Piece::Wrap(_) => None,
    });
    garments.filter_map(|(piece, garment)| top_edge(on, outfit, (piece, garment), knits, rules)).collect()
}

fn top_edge(
    on: &OnLimb<'_>,
    outfit: &Outfit,
    (piece, garment): (usize, &Garment),
    knits: &Knits<'_>,
    rules: &EstimateRules,
) -> Option<TopEdgeEstimate> {
    let band = garment.top_edge.as_ref()?;
    let (landmark, _) = garment.relaxed.iter().rfind(|(landmark, _)| on.mark(*landmark).is_some())?;
    let mark = on.mark(*landmark)?;
    let fabric = band.fabric.as_ref().or(garment.fabric_at(*landmark));
    let edge = edge_lying(piece, knits.number(fabric, piece), fabric, band.layers, band.relaxed);
    let body = lying_at(outfit, knits, std::iter::once(piece), *landmark).known;
    let body = body.first()?;
    let (girth, sd) = (mark.girth().cm(), mark.sd_cm(on.limb, &rules.tape));
    let basis = match (edge.is_estimable(), body.is_estimable()) {
        (true, true) => Some(GradientBasis::Fabric),
        _ if edge.number() == body.number() => Some(GradientBasis::Stretch),
        _ => None,
    };
    let chance = basis.and_then(|basis| {
        let band = knits.band(edge.number().unwrap_or_default(), rules);
        let asked = Asked {
            of: FallOf::Piece(piece),
            marks: Vec::new(),
            basis,
            band,
            knit: None,
            to: *landmark,
            unheld: None,
        };
        let under = fall_mark(*landmark, mark, &[*body], 1.0, rules);
        let over = fall_mark(*landmark, mark, &[edge], 1.0, rules);
        held_against(&under, &over, &setting(on, &asked, knits, true, rules))
    });
    Some(TopEdgeEstimate {
        piece,
        landmark: *landmark,
        edge: edge.on(girth, sd, rules),
        garment: body.on(girth, sd, rules),
        chance,
    })
}
