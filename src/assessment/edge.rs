//! Owns the band at a garment's upper end: what it presses against the garment just below it.

use super::outfit::{Lying, LyingKind, shares};
use crate::anatomy::Landmark;
use crate::garment::{Garment, Outfit};
use crate::graduation::{Grade, grade_rise, unlike_fabrics_sd};
use crate::pressure::Estimate;
use crate::quantity::{Girth, mmhg, phi};
use crate::record::Record;
use crate::rules::Rules;

/// The band at a garment's upper end.
#[derive(Clone, Debug)]
pub struct EdgeEstimate {
    /// The garment's label.
    pub garment: String,
    /// The mark that it lies on.
    pub landmark: Landmark,
    /// Limb girth there.
    pub girth: Girth,
    /// The band's relaxed girth.
    pub relaxed: Girth,
    /// The estimate; none without a fabric curve.
    pub estimate: Option<Estimate>,
    /// The band above the garment just below it, mmHg, with its SD and the chance that it is above.
    pub rise: Option<EdgeRise>,
}

/// How far the band lies above the garment below it.
#[derive(Clone, Copy, Debug)]
pub struct EdgeRise {
    /// mmHg.
    pub mmhg: f64,
    /// SD by ruler, tape and unlike fabrics, mmHg.
    pub sd: f64,
    /// Chance that the band presses more.
    pub chance: f64,
    /// How certain.
    pub grade: Grade,
}

/// The bands that are stated, each on the garment's most proximal measured mark.
pub fn edges(record: &Record, outfit: &Outfit, rules: &Rules) -> Vec<EdgeEstimate> {
    outfit.garments().filter_map(|garment| edge(record, outfit, garment, rules)).collect()
}

fn edge(record: &Record, outfit: &Outfit, garment: &Garment, rules: &Rules) -> Option<EdgeEstimate> {
    let band = garment.top_edge.as_ref()?;
    let (landmark, body_relaxed) =
        garment.relaxed.iter().rfind(|(landmark, _)| record.mark(*landmark).is_some())?;
    let mark = record.mark(*landmark)?;
    let fabrics = outfit.fabrics();
    let lying = |fabric, layers, relaxed: Girth| {
        let number = fabrics.iter().position(|one| one.is_same(fabric)).unwrap_or_default();
        let kind = LyingKind::Knit { fabric, layers, relaxed_cm: relaxed.cm() };
        Lying { piece: 0, number, kind }
    };
    let body_fabric = garment.fabric_at(*landmark);
    let edge = band.fabric.as_ref().or(body_fabric).map(|fabric| lying(fabric, band.layers, band.relaxed));
    let body = body_fabric.map(|fabric| lying(fabric, garment.layers, *body_relaxed));
    let (girth, sd) = (mark.girth(), mark.sd_cm());
    let estimate = edge.map(|one| one.on(girth.cm(), sd, rules));
    let rise = edge.zip(body).and_then(|(edge, body)| {
        let (high, low) = (edge.on(girth.cm(), sd, rules), body.on(girth.cm(), sd, rules));
        let rise = mmhg(high.pressure()?) - mmhg(low.pressure()?);
        // One girth lies under both: its error counts by the difference of the slopes.
        let slope = slope(&high).0 - slope(&low).0;
        let own = (slope * sd).hypot(slope_relaxed(&high)).hypot(slope_relaxed(&low));
        let unlike =
            unlike_fabrics_sd(&shares(&[edge], girth.cm(), rules), &shares(&[body], girth.cm(), rules), 1.0);
        let sd = own.hypot(unlike);
        let chance = if sd > 0.0 { phi(rise / sd) } else { f64::from(u8::from(rise > 0.0)) };
        Some(EdgeRise { mmhg: rise, sd, chance, grade: grade_rise(chance, rules) })
    });
    Some(EdgeEstimate {
        garment: garment.label.clone(),
        landmark: *landmark,
        girth,
        relaxed: band.relaxed,
        estimate,
        rise,
    })
}

fn slope(one: &Estimate) -> (f64, f64) {
    match one {
        Estimate::Pressed(pressed) => (pressed.per_girth, pressed.sd_relaxed),
        Estimate::Slack | Estimate::Beyond => (0.0, 0.0),
    }
}

fn slope_relaxed(one: &Estimate) -> f64 {
    slope(one).1
}
