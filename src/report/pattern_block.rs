//! Owns the report of a garment that was worked out for a wanted pressure.

use serde::Serialize;

use super::build::{Inputs, around};
use super::garment_summary::pattern_summary;
use super::{Figure, Report, pressure_block};
use crate::assessment::{OpenRecord, Outcome, PatternAssessment, PatternMark, WornEstimate};
use crate::rules::Rules;

/// The garment worked out.
#[derive(Clone, Debug, Serialize)]
pub struct PatternBlock {
    /// Its label.
    pub label: String,
    /// `figures only, do not fit` under a stop.
    pub caution: Option<&'static str>,
    /// The fabric's label.
    pub fabric: String,
    /// What the fabric's curve rests on.
    pub fabric_basis: &'static str,
    /// The fabric's last tested stretch.
    pub tested_percent: Option<Figure>,
    /// Layers.
    pub layers: u32,
    /// The scheme's id.
    pub scheme: Option<String>,
    /// The class that it is to claim.
    pub class: Option<String>,
    /// The marks, distal to proximal.
    pub marks: Vec<PatternRow>,
    /// Whether every mark can be had, so that there is a garment.
    pub complete: bool,
    /// Sentences that go with a pattern.
    pub notes: Vec<&'static str>,
}

/// One mark of it.
#[derive(Clone, Debug, Serialize)]
pub struct PatternRow {
    /// The landmark.
    pub landmark: &'static str,
    /// Where.
    pub at_cm: Option<Figure>,
    /// Limb girth.
    pub girth_cm: Option<Figure>,
    /// The wanted pressure.
    pub wanted_mmhg: Option<Figure>,
    /// Wanted, of the reference.
    pub wanted_percent: Option<Figure>,
    /// The relaxed girth, on the raster of 0.1 mm.
    pub relaxed_cm: Option<Figure>,
    /// Half of it.
    pub flat_width_cm: Option<Figure>,
    /// The exact solution.
    pub relaxed_exact_cm: Option<Figure>,
    /// Stretch of the garment, (C − C0)/C0.
    pub stretch_percent: Option<Figure>,
    /// Reduction of the limb's girth, (C − C0)/C.
    pub reduction_percent: Option<Figure>,
    /// The pressure of the garment read back.
    pub read_back_mmhg: Option<Figure>,
    /// What one SD of the tape would change.
    pub tape_error_mmhg: Option<Figure>,
    /// What one SD of the sewn girth would change.
    pub sewing_error_mmhg: Option<Figure>,
    /// The most that the fabric gives there.
    pub most_mmhg: Option<Figure>,
    /// As printed: `ankle (B)`.
    #[serde(skip)]
    pub label: String,
}

/// Sentences that go with a pattern.
const NOTES: [&str; 3] = [
    "A made-to-measure order is made and checked by a certified fitter.",
    "Stretch is of the garment, (C \u{2212} C0)/C0; reduced is of the limb's girth, (C \u{2212} C0)/C.",
    "Between the marks the garment is shaped straight; seams, edges and closures are not worked out.",
];

/// Makes the report of a pattern: the same model, the read-back as its pressure.
pub fn build_pattern(open: &OpenRecord, found: &PatternAssessment, rules: &Rules) -> Report {
    let label = &found.wanted.label;
    let read_back = found.read_back.as_ref();
    let claim = found.wanted.claim.as_ref();
    let pressure =
        read_back.map(|worn| pressure_block::pressure(label, None, worn, claim)).into_iter().collect();
    let graduation =
        read_back.map(|worn| pressure_block::graduation(label, None, worn)).into_iter().collect();
    let stop = found.base.outcome == Some(Outcome::Stop);
    let block = PatternBlock {
        label: label.clone(),
        caution: stop.then_some("figures only, do not fit"),
        fabric: found.wanted.fabric.label.clone(),
        fabric_basis: found.wanted.fabric.basis.word(),
        tested_percent: Figure::percent(found.wanted.fabric.last_stretch() * 100.0),
        layers: found.wanted.layers,
        scheme: claim.map(|claim| claim.scheme.id.clone()),
        class: claim.map(|claim| claim.class.clone()),
        marks: found.marks.iter().map(|mark| row(mark, read_back)).collect(),
        complete: found.garment.is_some(),
        notes: NOTES.to_vec(),
    };
    let inputs = Inputs { open, found: &found.base, rules };
    Report { pattern: Some(block), ..around(inputs, pattern_summary(&found.base), pressure, graduation) }
}

fn row(mark: &PatternMark, read_back: Option<&WornEstimate>) -> PatternRow {
    let back = read_back.and_then(|worn| worn.marks.iter().find(|one| one.landmark == mark.landmark));
    PatternRow {
        landmark: mark.landmark.name(),
        at_cm: Figure::cm(mark.at.cm()),
        girth_cm: Figure::cm(mark.girth.cm()),
        wanted_mmhg: Figure::mmhg(mark.wanted),
        wanted_percent: Figure::percent(mark.percent),
        relaxed_cm: mark.relaxed.and_then(|one| Figure::cm(one.cm())),
        flat_width_cm: mark.relaxed.and_then(|one| Figure::new(one.cm() / 2.0, 2)),
        relaxed_exact_cm: mark.solved.and_then(|one| Figure::new(one.relaxed_cm, 2)),
        stretch_percent: mark.solved.and_then(|one| Figure::percent(one.stretch * 100.0)),
        reduction_percent: mark.reduction.and_then(|one| Figure::percent(one * 100.0)),
        read_back_mmhg: back.and_then(crate::assessment::MarkEstimate::mmhg).and_then(Figure::mmhg),
        tape_error_mmhg: mark.by_tape.and_then(|one| Figure::new(one, 1)),
        sewing_error_mmhg: mark.by_sewing.and_then(|one| Figure::new(one, 1)),
        most_mmhg: Figure::mmhg(mark.most),
        label: mark.landmark.label(),
    }
}
