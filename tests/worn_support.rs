//! Garments, knits and limbs made in code, for the tests of the estimate.

use tapeline::anatomy::{Landmark, Limb};
use tapeline::estimate::{EstimateRules, Estimated, OnLimb, estimate};
use tapeline::garment::{Claim, Fabric, Garment, Outfit, Piece, Relaxed, Schemes, Worn, Wrap, open_fabric};
use tapeline::input::Source;
use tapeline::quantity::pressure_from_mmhg;
use tapeline::record::{Mark, Reading, SensorSide};

use crate::made;

/// A fabric of a file's text.
pub(crate) fn fabric(lines: &str) -> Fabric {
    let text = format!("tapeline: fabric/1\nbasis: invented\n{lines}\n");
    open_fabric(Source::of_text("knit.yaml", text)).unwrap_or_else(|problems| panic!("{problems:#?}"))
}

/// A knit of points in per cent and N/m.
pub(crate) fn knit(label: &str, points: &[(f64, f64)]) -> Fabric {
    let points: Vec<String> =
        points.iter().map(|(e, t)| format!("  - {{stretch: {e} %, tension: {t} N/m}}")).collect();
    fabric(&format!("label: {label}\ntension_sd: 5 %\ncurve:\n{}", points.join("\n")))
}

/// A knit that pulls in proportion to its stretch, tested up to `upto` per cent.
pub(crate) fn linear(label: &str, newton_per_metre: f64, upto: f64) -> Fabric {
    knit(label, &[(0.0, 0.0), (upto, newton_per_metre * upto / 100.0)])
}

pub(crate) fn garment(label: &str, fabric: Option<Fabric>, relaxed: &[(Landmark, f64)]) -> Garment {
    Garment {
        label: made::text(label),
        file: "garment.yaml".to_owned(),
        limb: relaxed[0].0.limb(),
        style: None,
        from: relaxed[0].0,
        to: relaxed[relaxed.len() - 1].0,
        claim: None,
        materials: None,
        hand_part: None,
        fabric,
        fabric_at: Vec::new(),
        layers: 1,
        relaxed: relaxed.iter().map(|(at, cm)| (*at, Relaxed::once(made::girth(*cm)))).collect(),
        top_edge: None,
    }
}

pub(crate) fn wrap(from: Landmark, to: Landmark, pull_n: f64, width_cm: f64, layers: f64) -> Wrap {
    Wrap {
        label: made::text("wrap"),
        file: "wrap.yaml".to_owned(),
        limb: from.limb(),
        pull_n,
        tension_sd: 0.2,
        width_cm,
        layers,
        overlap: None,
        thickness_cm: None,
        materials: None,
        from,
        to,
    }
}

pub(crate) fn claim(scheme: &str, class: &str) -> Claim {
    Claim { scheme: Schemes::default().find(scheme).unwrap(), class: class.to_owned() }
}

/// Pieces worn together, inner first.
pub(crate) fn together(pieces: Vec<Piece>) -> Outfit {
    let worn = |piece: Piece| {
        let (from, to) = match &piece {
            Piece::Garment(one) => (one.from, one.to),
            Piece::Wrap(one) => (one.from, one.to),
        };
        Worn { piece, from, to }
    };
    let first = Outfit::of(pieces[0].clone());
    Outfit { label: made::text("together"), pieces: pieces.into_iter().map(worn).collect(), ..first }
}

pub(crate) fn piece(garment: Garment) -> Piece {
    Piece::Garment(Box::new(garment))
}

pub(crate) fn marks(places: &[(Landmark, f64, f64)]) -> Vec<Mark> {
    places.iter().map(|(landmark, at, cm)| made::mark(Some(*landmark), *at, *cm)).collect()
}

/// The invented arm of the demo.
pub(crate) fn arm() -> Vec<Mark> {
    marks(&[
        (Landmark::Hand, -8.0, 19.5),
        (Landmark::Wrist, 0.0, 16.9),
        (Landmark::Forearm, 14.0, 25.7),
        (Landmark::Elbow, 23.0, 27.6),
        (Landmark::UpperArm, 33.0, 32.4),
        (Landmark::Axilla, 42.0, 37.2),
    ])
}

/// The invented leg of the demo.
pub(crate) fn leg() -> Vec<Mark> {
    marks(&[
        (Landmark::Ankle, 11.0, 22.9),
        (Landmark::LowerCalf, 20.0, 30.1),
        (Landmark::Calf, 31.0, 38.2),
        (Landmark::BelowKnee, 40.0, 36.0),
    ])
}

pub(crate) fn reading(landmark: Landmark, mmhg: f64, hollow: bool) -> Reading {
    Reading {
        landmark,
        pressure: pressure_from_mmhg(mmhg),
        sd: None,
        sensor_side: hollow.then_some(SensorSide::AnkleHollow),
        sensor_side_text: None,
        posture: None,
        minutes_worn: None,
        garment: None,
        spot: made::spot(),
    }
}

pub(crate) fn rules() -> EstimateRules {
    EstimateRules::of(&made::rules())
}

pub(crate) fn on(marks: &[Mark], outfit: &Outfit, readings: &[Reading]) -> Estimated {
    let limb: Limb = outfit.limb;
    let readings: Vec<&Reading> = readings.iter().collect();
    estimate(&OnLimb { limb, marks }, outfit, &readings, &rules())
}
