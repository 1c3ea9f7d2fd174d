//! Owns the report of a pattern.

use super::{Figure, PatternBlock, PatternMark, Report, build_with};
use crate::assessment::{PatternAssessment, fall_words};

/// Makes the report of a pattern: the check of its garment, and the pattern itself.
pub fn build_pattern(found: &PatternAssessment) -> Report {
    let garment = found.assessment.garments.first();
    let confirmed = garment
        .and_then(|one| fall_words(&one.outfit, &one.estimated, &one.decide))
        .unwrap_or_else(|| "No garment can be made of this fabric for this pressure.".to_owned());
    let block = PatternBlock {
        label: found.label.clone(),
        fabric: found.fabric.clone(),
        layers: found.layers,
        target: found.target.clone(),
        marks: found
            .pattern
            .marks
            .iter()
            .filter_map(|mark| {
                let tenths = mark.relaxed.map(crate::quantity::Girth::tenths);
                Some(PatternMark {
                    landmark: mark.landmark,
                    girth_cm: Figure::cm(mark.girth.tenths()),
                    wanted_mmhg: Figure::mmhg(mark.wanted)?,
                    residual_percent: Figure::percent(mark.percent),
                    relaxed_cm: tenths.map(Figure::cm),
                    flat_width_cm: tenths
                        .and_then(|tenths| Figure::new(crate::words::cm_of_tenths(tenths) / 2.0, 2)),
                    stretch_percent: mark.stretch.and_then(|stretch| Figure::percent(stretch * 100.0)),
                    reduction_percent: mark.reduction.and_then(|share| Figure::percent(share * 100.0)),
                    tape_mmhg: mark.by_tape.and_then(|mmhg| Figure::new(mmhg, 1)),
                    sewing_mmhg: mark.by_sewing.and_then(|mmhg| Figure::new(mmhg, 1)),
                })
            })
            .collect(),
        confirmed,
    };
    build_with(&found.assessment, Some(block))
}
