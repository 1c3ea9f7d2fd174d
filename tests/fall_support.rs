//! What the tests of the fall share: a curve by points, and marks in few words.

use tapeline::anatomy::{Landmark, Limb};
use tapeline::gradient::{
    Band, FallMark, FallRules, FallSetting, GradientBasis, Knit, KnitPart, MarkKind, Part, TensionCurve,
};

/// SD of a tape value and of a relaxed girth, cm, of the tests.
pub(crate) const TAPE_SD: f64 = 0.35;
/// SD of a relaxed girth, cm.
pub(crate) const RELAXED_SD: f64 = 0.3;

/// An arm: landmarks, places and girths, cm (invented).
pub(crate) const ARM: [(Landmark, f64, f64); 5] = [
    (Landmark::Wrist, 0.0, 17.0),
    (Landmark::LowerForearm, 7.0, 21.0),
    (Landmark::Forearm, 14.0, 26.0),
    (Landmark::UpperArm, 33.0, 31.0),
    (Landmark::Axilla, 42.0, 34.0),
];

/// A curve, straight between its points.
#[derive(Clone, Debug)]
pub(crate) struct Points(pub(crate) Vec<(f64, f64)>);

impl TensionCurve for Points {
    fn tension(&self, stretch: f64) -> Option<(f64, f64)> {
        let last = self.0.last()?.0;
        if stretch > last + 1e-9 {
            return None;
        }
        let mut found = None;
        for pair in self.0.windows(2) {
            let slope = (pair[1].1 - pair[0].1) / (pair[1].0 - pair[0].0);
            if found.is_none() || stretch >= pair[0].0 - 1e-9 {
                found = Some((pair[0].1 + slope * (stretch - pair[0].0), slope));
            }
        }
        found
    }

    fn last_tension(&self) -> f64 {
        self.0.last().map_or(0.0, |(_, tension)| *tension)
    }
}

/// A curve of tension k·e^b at fine steps up to a stretch.
pub(crate) fn power(k: f64, b: f64, upto: f64) -> Points {
    let count = 400;
    Points((0..=count).map(|i| upto * f64::from(i) / f64::from(count)).map(|e| (e, k * e.powf(b))).collect())
}

/// A mark with one garment of knit 0.
pub(crate) fn worn(landmark: Landmark, at_cm: f64, girth_cm: f64, relaxed_cm: f64) -> FallMark {
    mark(landmark, at_cm, girth_cm, vec![knit(0, relaxed_cm)])
}

/// A mark with parts.
pub(crate) fn mark(landmark: Landmark, at_cm: f64, girth_cm: f64, parts: Vec<Part>) -> FallMark {
    FallMark {
        landmark,
        at_cm,
        girth_cm,
        girth_sd_cm: TAPE_SD,
        tapes: 1,
        share: 1.0,
        what: MarkKind::Worn(parts),
    }
}

/// One layer of a knit.
pub(crate) fn knit(knit: usize, relaxed_cm: f64) -> Part {
    Part::Knit(KnitPart {
        knit,
        piece: knit,
        relaxed_cm,
        relaxed_sd_cm: RELAXED_SD,
        flat_widths: 1,
        layers: 1.0,
    })
}

/// A setting for one knit, by its curve or by stretch.
pub(crate) fn setting(limb: Limb, to: Landmark, curve: Option<&Points>) -> FallSetting<'_> {
    FallSetting {
        limb,
        to,
        basis: if curve.is_some() { GradientBasis::Fabric } else { GradientBasis::Stretch },
        knits: vec![Knit { curve: curve.map(|curve| curve as &dyn TensionCurve), tension_sd: 0.05 }],
        band: Band::UNTESTED,
        together: false,
        rules: FallRules::default(),
    }
}
