//! Owns the block of a garment worked out for a wanted pressure.

use super::{Figure, PatternBlock, PatternMark};
use crate::estimate::{Pattern, Wanted};
use crate::quantity::Girth;
use crate::words;

/// The block of a pattern; `target` says in words what was aimed at.
pub fn pattern_block(found: &Pattern, wanted: &Wanted, target: &str) -> PatternBlock {
    let mark = |one: &crate::estimate::PatternMark| PatternMark {
        landmark: one.landmark,
        girth_cm: Figure::cm(one.girth.tenths()),
        wanted_mmhg: Figure::mmhg(one.wanted).unwrap_or_else(|| Figure::cm(0)),
        residual_percent: Figure::percent(one.percent),
        relaxed_cm: one.relaxed.map(|girth| Figure::cm(girth.tenths())),
        flat_width_cm: one.relaxed.and_then(half),
        stretch_percent: one.stretch.and_then(|share| Figure::percent(share * 100.0)),
        reduction_percent: one.reduction.and_then(|share| Figure::percent(share * 100.0)),
        tape_mmhg: one.by_tape.and_then(|value| Figure::new(value, 1)),
        sewing_mmhg: one.by_sewing.and_then(|value| Figure::new(value, 1)),
    };
    PatternBlock {
        label: wanted.label.to_string(),
        fabric: wanted.fabric.label.to_string(),
        layers: wanted.layers,
        target: target.to_owned(),
        marks: found.marks.iter().map(mark).collect(),
        confirmed: confirmed(found),
    }
}

/// Half of a relaxed girth, to 0.01 cm.
fn half(girth: Girth) -> Option<Figure> {
    Figure::new(words::cm_of_tenths(girth.tenths()) / 2.0, 2)
}

fn confirmed(found: &Pattern) -> String {
    let lacking: Vec<String> = found
        .marks
        .iter()
        .filter(|one| one.relaxed.is_none())
        .map(|one| format!("{} (at most {})", words::at(one.landmark), words::mmhg(one.most)))
        .collect();
    if !lacking.is_empty() {
        return format!(
            "This fabric does not give the wanted pressure within its tested stretch {}; there is no garment to make.",
            words::list(&lacking)
        );
    }
    let Some(estimated) = &found.estimated else {
        return "No garment could be worked out.".to_owned();
    };
    let outside = estimated.residual.iter().filter(|one| one.inside == Some(false)).count();
    let limits = match (outside, estimated.residual.iter().any(|one| one.inside.is_some())) {
        (_, false) => String::new(),
        (0, true) => ", and every residual pressure lies inside the scheme's limits".to_owned(),
        (_, true) => {
            format!(
                ", and {} outside the scheme's limits",
                words::counted(outside, "residual pressure lies", "residual pressures lie")
            )
        }
    };
    let grade = estimated.grade().map_or("not judged", crate::gradient::Grade::word);
    format!("Read back as any garment, its rise toward the trunk is graded {grade}{limits}.")
}
