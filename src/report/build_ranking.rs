//! Owns the charts of a limb in their order, part by part, and what differs where two serve alike.

use super::{Figure, RankedBlock};
use crate::assessment::{Assessment, ChartAssessment, ChartOutcomes, Outcome, ranking};
use crate::estimate::Estimated;
use crate::gradient::Grade;
use crate::sizing::{ChartVerdict, Direction, LengthFit, Reason};
use crate::words;

/// Every chart of a limb, part by part, the best first.
pub(super) fn ranked(found: &Assessment, limb: usize) -> Vec<RankedBlock> {
    let charts = found.limbs.get(limb).map(|one| one.charts.as_slice()).unwrap_or_default();
    let outcomes: Vec<ChartOutcomes> = charts.iter().map(|one| one.outcomes.clone()).collect();
    let mut all: Vec<RankedBlock> = Vec::new();
    let mut above: Option<(usize, &ChartAssessment)> = None;
    for place in ranking(&outcomes) {
        let Some(one) = charts.get(place) else { continue };
        let first = above.filter(|(_, other)| other.part == one.part);
        let rank = all.last().filter(|_| first.is_some()).map_or(1, |last| last.rank + 1);
        let margin = one.choice.shown().and_then(|size| one.sizing.least_margin(size));
        let measure = margin.and_then(|(_, at)| {
            let size = one.choice.shown().and_then(|size| one.sizing.sizes.get(size))?;
            size.measures.get(at)
        });
        all.push(RankedBlock {
            chart: place,
            part: one.part,
            rank,
            shown: shown(one),
            result: result(found, one),
            margin_cm: margin.map(|(tenths, _)| Figure::cm(tenths)),
            margin_at: measure.map(|measure| measure.landmark),
            direction: measure.and_then(|measure| measure.direction).map(Direction::word),
            fall: fall(one),
            tie: first.and_then(|(at, other)| tie((at, other), (place, one))),
        });
        above = Some((place, one));
    }
    all
}

fn estimated(one: &ChartAssessment) -> Option<&Estimated> {
    one.choice.shown().and_then(|size| one.shown(size)).map(|shown| &shown.estimated)
}

/// `3 wide, regular`, `2 and 3`, `nearest 3`.
fn shown(one: &ChartAssessment) -> String {
    let label = |size: usize| one.size_label(size).to_owned();
    let pair: Vec<String> = one.choice.between.iter().map(|size| label(*size)).collect();
    match (one.choice.size, one.choice.nearest) {
        (Some(size), _) if one.choice.verdict == ChartVerdict::Between => {
            format!("{}, picked of {}", label(size), words::list(&pair))
        }
        (Some(size), _) => {
            let variant = one.variant.as_ref().map_or_else(String::new, |variant| format!(", {variant}"));
            format!("{}{variant}", label(size))
        }
        (None, _) if !pair.is_empty() => words::list(&pair),
        (None, Some(size)) => format!("nearest {}", label(size)),
        (None, None) => "none".to_owned(),
    }
}

/// What stands against it, worst first. It invites to a fitting only where the report does.
fn result(found: &Assessment, one: &ChartAssessment) -> String {
    let invites = found.decision.outcome == Some(Outcome::TrialFitting);
    let length = one.size().and_then(|size| one.sizing.sizes.get(size)).map(|fit| &fit.length);
    let said: Vec<&str> = one
        .outcomes
        .holds
        .iter()
        .map(|outcome| match outcome {
            Outcome::TrialFitting if invites => "trial fitting",
            Outcome::TrialFitting => "takes every girth",
            Outcome::FallUnknown => "fall unknown",
            Outcome::Refer if one.choice.verdict == ChartVerdict::Between => "between sizes",
            Outcome::Refer => "to be cleared first",
            Outcome::Incomplete if one.choice.verdict == ChartVerdict::MeasureAgain => "measure again",
            Outcome::Incomplete if matches!(length, Some(LengthFit::Unknown(_))) => "length not known",
            Outcome::Incomplete => "not judged",
            Outcome::MadeToMeasure if matches!(length, Some(LengthFit::None { .. })) => "no length",
            Outcome::MadeToMeasure => "made to measure",
            Outcome::Stop => "must not be worn",
        })
        .collect();
    said.join(", ")
}

/// The fall of the size shown in two words; none where it has none, or nothing is known of it.
fn fall(one: &ChartAssessment) -> Option<&'static str> {
    if matches!(one.choice.reason, Reason::AllReversed(_)) {
        return Some("rises");
    }
    let estimated = estimated(one)?;
    let judged = estimated.judged()?;
    Some(match estimated.grade() {
        Some(Grade::Certain) => "rises",
        Some(Grade::Likely) => "rise likely",
        Some(Grade::Possible) => "rise possible",
        Some(Grade::None) if judged => "falls",
        Some(Grade::None | Grade::Undecided) | None => "not judged",
    })
}

/// What decided between two charts that serve alike, and what else differs; none where the result decided.
fn tie((at, first): (usize, &ChartAssessment), (place, second): (usize, &ChartAssessment)) -> Option<String> {
    let ranks = (first.outcomes.rank(at), second.outcomes.rank(place));
    if !ranks.0.is_level_with(&ranks.1) {
        return None;
    }
    let decided = match (first.outcomes.margin, second.outcomes.margin) {
        (Some(one), Some(other)) if one == other => {
            format!(
                "the least margin is the same too, {}, so the one given first is first",
                margin_words(one)
            )
        }
        (Some(one), Some(other)) if one < 0 => {
            format!("{} misses by less, {} against {}", first.printed, words::cm(-one), words::cm(-other))
        }
        (Some(one), Some(other)) => format!(
            "{} has the greater least margin, {} against {}",
            first.printed,
            margin_words(one),
            margin_words(other)
        ),
        (Some(_), None) => format!("{} has no size to compare by its margin", second.printed),
        (None, _) => "there are no margins to compare, so the one given first is first".to_owned(),
    };
    let apart: Vec<String> = differences(first, second);
    let more =
        if apart.is_empty() { String::new() } else { format!(" They differ in {}.", words::list(&apart)) };
    Some(format!("{} and {} serve alike by the result; {decided}.{more}", first.printed, second.printed))
}

/// `0.9 cm`, `0.4 cm outside`.
fn margin_words(tenths: i64) -> String {
    let outside = if tenths < 0 { " outside" } else { "" };
    format!("{}{outside}", words::cm(tenths.abs()))
}

/// `length (regular against short)`, `class (2 against 1)`: what is not the same, in a fixed order.
fn differences(first: &ChartAssessment, second: &ChartAssessment) -> Vec<String> {
    let class = |one: &ChartAssessment| {
        one.chart.claim.as_ref().map_or_else(
            || "none stated".to_owned(),
            |claim| format!("{} of {}", claim.class, claim.scheme.label),
        )
    };
    let length = |one: &ChartAssessment| match one.size().and_then(|size| one.sizing.sizes.get(size)) {
        Some(fit) => match &fit.length {
            LengthFit::NotAsked => "not asked".to_owned(),
            LengthFit::Takes { name, .. } => {
                name.as_ref().map_or_else(|| "one".to_owned(), ToString::to_string)
            }
            LengthFit::Unknown(_) => "not known".to_owned(),
            LengthFit::None { .. } => "none".to_owned(),
        },
        None => "not asked".to_owned(),
    };
    let falls = |one: &ChartAssessment| fall(one).unwrap_or("not estimated").to_owned();
    let pressed = |one: &ChartAssessment| {
        let reference = estimated(one).map(|estimated| &estimated.reference);
        let known = reference.and_then(|one| Some((one.landmark, one.mmhg?)));
        known.map_or_else(
            || "not estimated".to_owned(),
            |(landmark, mmhg)| format!("{} {}", words::mmhg(mmhg), words::at(landmark)),
        )
    };
    let materials = |one: &ChartAssessment| match one.chart.materials.as_deref() {
        None => "not stated".to_owned(),
        Some([]) => "none".to_owned(),
        Some(all) => words::list(all),
    };
    let style = |one: &ChartAssessment| {
        one.chart.style.as_ref().map_or_else(|| "not stated".to_owned(), ToString::to_string)
    };
    let all = [
        ("length", length(first), length(second)),
        ("fall", falls(first), falls(second)),
        ("pressure", pressed(first), pressed(second)),
        ("class", class(first), class(second)),
        ("materials", materials(first), materials(second)),
        ("style", style(first), style(second)),
    ];
    let differ = all.into_iter().filter(|(_, one, other)| one != other);
    differ.map(|(name, one, other)| format!("{name} ({one} against {other})")).collect()
}
