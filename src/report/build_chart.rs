//! Owns a chart's block, and the chart's one line, derived from the decision.

use super::{ChartBlock, ClassBlock, Figure, MeasureBlock, OwnWidths, SizeBlock, WantedBlock};
use crate::assessment::{Assessment, ChartAssessment, Outcome, claimed_band, class_printed, misses};
use crate::garment::{Claim, garment_to_measure};
use crate::sizing::{ChartVerdict, Direction, SizeFit, SizeVerdict};
use crate::words;

/// A nearest size is named in text up to this miss, tenths of a millimetre: 2 cm (house rule).
const NEAR_TENTHS: i64 = 200;

/// A chart's block.
pub(super) fn chart(found: &Assessment, limb: usize, one: &ChartAssessment) -> ChartBlock {
    let chart = &one.chart;
    let again = one.again;
    ChartBlock {
        label: chart.label.to_string(),
        printed: one.printed.clone(),
        file: file_name(found, limb, one),
        part: one.part,
        counted: one.counted,
        style: chart.style.as_ref().map(ToString::to_string),
        claim: chart.claim.as_ref().map(class_block),
        materials: chart.materials.as_ref().map(|list| list.iter().map(ToString::to_string).collect()),
        hand_part: chart.hand_part,
        outcome: one.outcome(),
        also: one
            .outcomes
            .holds
            .iter()
            .copied()
            .filter(|outcome| *outcome != one.outcome() && *outcome != Outcome::TrialFitting)
            .collect(),
        verdict: one.choice.verdict.word(),
        size: one.choice.size,
        variant: one.variant.clone(),
        length_note: one.length_note.clone(),
        nearest: one.choice.nearest,
        between: one.choice.between.clone(),
        picked: one.choice.size.filter(|_| one.choice.verdict == ChartVerdict::Between),
        runner_up: again.and_then(|again| again.runner_up),
        same_again_chance: again.and_then(|again| Figure::chance(again.chance)),
        sizes: one.sizing.sizes.iter().enumerate().map(|(at, fit)| size(one, at, fit)).collect(),
        wanted: one
            .sizing
            .wanted
            .iter()
            .map(|wanted| WantedBlock { measure: wanted.landmark.name(), sizes: wanted.sizes.clone() })
            .collect(),
        line: line(found, limb, one),
        measured: one
            .chart
            .measured
            .iter()
            .map(|own| OwnWidths { size: own.size, file: own.file.clone() })
            .collect(),
        paste: to_measure(found, limb, one),
    }
}

/// The size to obtain, as a file to fill in, where a finding says that its flat widths are the next step.
fn to_measure(found: &Assessment, limb: usize, one: &ChartAssessment) -> Option<String> {
    let charts = &found.limbs.get(limb)?.charts;
    let at = charts.iter().position(|other| std::ptr::eq(other, one))?;
    let size = one.size()?;
    let asks = found.findings.iter().find(|finding| {
        finding.place.limb == Some(limb)
            && finding.place.chart == Some(at)
            && finding.place.size.is_none_or(|of| of == size)
            && !finding.to_measure.is_empty()
    })?;
    garment_to_measure(&one.chart, &one.printed, size, &asks.to_measure)
}

/// The file's own name; the path as given where two charts of the run have files of one name.
fn file_name(found: &Assessment, limb: usize, one: &ChartAssessment) -> String {
    let base = |path: &str| path.rsplit(['/', '\\']).next().unwrap_or(path).to_owned();
    let own = base(&one.chart.file);
    let charts = found.limbs.get(limb).map(|limb| limb.charts.as_slice()).unwrap_or_default();
    let alike = charts.iter().filter(|other| base(&other.chart.file) == own).count();
    if alike > 1 { one.chart.file.clone() } else { own }
}

/// A class as printed and in figures.
pub(super) fn class_block(claim: &Claim) -> ClassBlock {
    let band = claimed_band(Some(claim));
    ClassBlock {
        scheme: claim.scheme.id.clone(),
        scheme_name: claim.scheme.label.clone(),
        class: claim.class.clone(),
        printed: band.map_or_else(
            || format!("class {} of {}", claim.class, claim.scheme.label),
            |band| class_printed(&claim.scheme.label, band),
        ),
        low: band.and_then(|band| band.low),
        high: band.and_then(|band| band.high),
    }
}

fn size(one: &ChartAssessment, at: usize, fit: &SizeFit) -> SizeBlock {
    SizeBlock {
        size: one.size_label(at).to_owned(),
        verdict: fit.verdict.word(),
        reversed: one.reversed.get(at).copied().unwrap_or(false),
        inside_chance: fit.inside_chance.and_then(Figure::chance),
        measures: fit
            .measures
            .iter()
            .map(|measure| MeasureBlock {
                measure: measure.landmark.name(),
                girth_cm: measure.girth.map(|girth| Figure::cm(girth.tenths())),
                low_cm: measure.range.low.map(Figure::cm),
                high_cm: measure.range.high.map(Figure::cm),
                margin_cm: measure.margin.map(Figure::cm),
                verdict: measure.verdict.word(),
                direction: measure.direction.map(Direction::word),
            })
            .collect(),
    }
}

/// The chart's one line. It invites to a fitting only where the report does.
fn line(found: &Assessment, limb: usize, one: &ChartAssessment) -> String {
    let decision = found.decision.outcome;
    let variant = one.variant.as_ref().map_or_else(String::new, |variant| format!(", {variant}"));
    let body = match one.choice.verdict {
        ChartVerdict::Size => {
            let size = one.choice.size.unwrap_or_default();
            let label = one.size_label(size);
            let said = format!("size {label}{variant} takes every girth");
            let note = one
                .length_note
                .as_ref()
                .map_or_else(String::new, |note| format!(", but: {}", words::lower_first(note)));
            match one.outcome() {
                Outcome::TrialFitting if decision == Some(Outcome::TrialFitting) => {
                    format!("size {label}{variant}: go on to a trial fitting")
                }
                Outcome::TrialFitting => match stands_elsewhere(found, limb) {
                    Some(other) => format!("{said}; what stands against a fitting concerns the {other}"),
                    None => said,
                },
                Outcome::FallUnknown => format!("{said}; its fall is not known"),
                Outcome::Refer => {
                    let made = one.outcomes.holds.contains(&Outcome::MadeToMeasure);
                    let shape =
                        if made && note.is_empty() { "; the shape asks for made to measure" } else { "" };
                    format!("{said}{note}{shape}; {}", to_clear(found, limb, one))
                }
                Outcome::Stop => format!("{said}, and it must not be worn"),
                Outcome::MadeToMeasure if one.length_note.is_none() => {
                    format!("{said}; the shape asks for made to measure")
                }
                Outcome::MadeToMeasure | Outcome::Incomplete => format!("{said}{note}"),
            }
        }
        ChartVerdict::Between => between(one),
        ChartVerdict::MeasureAgain => {
            let nearest = one.choice.nearest.unwrap_or_default();
            format!(
                "size {} misses by {}; measure again",
                one.size_label(nearest),
                words::list(&misses(one, nearest))
            )
        }
        ChartVerdict::NotJudged => {
            let open: Vec<&str> =
                one.sizing.places(SizeVerdict::Open).into_iter().map(|size| one.size_label(size)).collect();
            if open.is_empty() {
                "not judged: girths taken now are not used".to_owned()
            } else {
                format!(
                    "not judged: measures are missing ({} open)",
                    words::counted(open.len(), "size", "sizes")
                )
            }
        }
        ChartVerdict::MadeToMeasure => made_to_measure(one),
    };
    let mut text = format!("{body}.");
    if let Some(first) = text.get(..1).map(str::to_uppercase) {
        text.replace_range(..1, &first);
    }
    text
}

/// The other limb, where nothing stands against this one and the decision is about that.
fn stands_elsewhere(found: &Assessment, limb: usize) -> Option<String> {
    let free = |one: &crate::assessment::LimbAssessment| one.outcome == Some(Outcome::TrialFitting);
    let other = found.limbs.iter().find(|one| !free(one))?;
    let own = found.limbs.get(limb).filter(|own| free(own))?;
    (own.side != other.side).then(|| format!("{} {}", other.side.name(), found.record.limb.name()))
}

/// What ends a refer of the chart.
fn to_clear(found: &Assessment, limb: usize, one: &ChartAssessment) -> &'static str {
    let charts = found.limbs.get(limb).map(|limb| limb.charts.as_slice()).unwrap_or_default();
    let place = charts.iter().position(|other| std::ptr::eq(other, one));
    let own = found.findings.iter().filter(|one| one.place.limb == Some(limb) && one.place.chart == place);
    let mut waiting = own.filter(|one| one.must_be_cleared()).peekable();
    let capped =
        waiting.peek().is_some() && waiting.all(|one| one.id.is(&crate::finding::cap_exceeded::ENTRY));
    let told = claimed_band(one.chart.claim.as_ref()).is_some()
        || one.size().and_then(|size| one.shown(size)).is_some_and(|shown| {
            shown.estimated.reference.mmhg.or(shown.estimated.reference.bound_mmhg).is_some()
        });
    match (capped, told) {
        (true, true) => "another class is needed",
        (true, false) => "its class is missing, or its fabric",
        (false, _) => "something must be cleared first",
    }
}

fn between(one: &ChartAssessment) -> String {
    let labels: Vec<&str> = one.choice.between.iter().map(|size| one.size_label(*size)).collect();
    match one.choice.size {
        Some(size) => format!(
            "between sizes {}; the chart's own rule picks {}, a fitter decides",
            words::list(&labels),
            one.size_label(size)
        ),
        None => format!("between sizes {}; a fitter decides", words::list(&labels)),
    }
}

fn made_to_measure(one: &ChartAssessment) -> String {
    let Some(nearest) = one.choice.nearest else {
        return "the sizes that take every girth rise toward the trunk; made to measure".to_owned();
    };
    let worst = one
        .sizing
        .sizes
        .get(nearest)
        .map_or(0, |fit| fit.measures.iter().map(crate::sizing::MeasureFit::miss).max().unwrap_or(0));
    if worst > NEAR_TENTHS {
        return "no size takes every girth, and none is near; made to measure".to_owned();
    }
    format!(
        "no size takes every girth; nearest is size {}: {}",
        one.size_label(nearest),
        words::list(&misses(one, nearest))
    )
}
