//! Owns which findings hold for a chart: whatever its size, and for the size that counts.

use super::LimbContext;
use super::chart_assessment::ChartAssessment;
use super::size_findings::{Garments, fall_words, of_estimate};
use super::wanted::{WantedPressure, claim_printed, claimed_band, is_as_prescribed};
use crate::estimate::OnLimb;
use crate::finding::{self, Finding, Place};
use crate::quantity::mmhg;
use crate::rules::{NumberId, Severity};
use crate::sizing::{
    ChartVerdict, Direction, LengthFit, MeasureVerdict, Reason, SizeVerdict, Weakness, weaknesses,
};
use crate::words;

/// A chart that is asked about.
pub(super) struct ChartAsked<'a> {
    /// What was worked out.
    pub assessed: &'a ChartAssessment,
    /// Its place.
    pub place: Place,
    /// Whether another part of the set has the hand or foot part.
    pub part_elsewhere: bool,
}

/// Every finding of a chart, with what was decided on each.
pub(super) fn chart_findings(context: &LimbContext<'_>, asked: &ChartAsked<'_>) -> Vec<Finding> {
    let mut found = of_offer(context, asked);
    found.extend(of_sizes(context, asked));
    found.extend(read_elsewhere(context, asked));
    if let Some(size) = asked.assessed.size() {
        found.extend(of_size(context, asked, size));
    }
    found.into_iter().map(|one| context.clearings.decide(one)).collect()
}

/// Readings of sizes that are not shown: never silent.
fn read_elsewhere(context: &LimbContext<'_>, asked: &ChartAsked<'_>) -> Vec<Finding> {
    let (assessed, chart) = (asked.assessed, &asked.assessed.chart);
    let unshown = (0..chart.sizes.len()).filter(|size| assessed.shown(*size).is_none());
    unshown
        .filter_map(|size| {
            let label = assessed.size_label(size);
            let readings = context.readings_of(&assessed.printed, &chart.label, label);
            let read: Vec<String> = readings
                .iter()
                .filter(|one| one.garment.is_some())
                .map(|one| format!("{} {}", words::mmhg(mmhg(one.pressure)), words::at(one.landmark)))
                .collect();
            let found = finding::readings_elsewhere::readings_elsewhere(asked.place, label, &read);
            (!read.is_empty()).then_some(found)
        })
        .collect()
}

/// What holds of the offer whatever its girths: materials, hand part, prescription, cap.
fn of_offer(context: &LimbContext<'_>, asked: &ChartAsked<'_>) -> Vec<Finding> {
    let (chart, place) = (&asked.assessed.chart, asked.place);
    let mut found = super::materials::of_materials(context, chart.materials.as_deref(), place);
    let has_part = super::set_findings::has_part(chart) || asked.part_elsewhere;
    if context.extremity_swollen && !has_part {
        let part = context.record.limb.extremity();
        found.push(finding::hand_part::hand_part(place, part, chart.hand_part.is_some()));
    }
    if let Some(wanted) = &context.wanted {
        match (&chart.claim, is_as_prescribed(chart.claim.as_ref(), wanted)) {
            (Some(claim), Some(false)) => found.push(finding::prescription_differs::prescription_differs(
                place,
                Severity::ClearFirst,
                &claim_printed(claim),
                &wanted.printed,
            )),
            (Some(_), _) => {}
            (None, _) => found.push(finding::prescription_differs::class_not_stated(
                place,
                &wanted.printed,
                estimate_held(asked.assessed, wanted).as_deref(),
            )),
        }
    }
    let style = context.record.prescribed_for(context.limb).and_then(|one| one.style.as_ref());
    if let (Some(wanted), Some(offered)) = (style, &chart.style)
        && !wanted.eq_ignore_ascii_case(offered)
    {
        found.push(finding::style_differs::style_differs(place, offered, wanted));
    }
    found.extend(of_cap(context, asked));
    found
}

/// Where the estimate of the size lies against what was prescribed, in words; none without an estimate.
fn estimate_held(assessed: &ChartAssessment, wanted: &WantedPressure) -> Option<String> {
    let reference = &assessed.shown(assessed.size()?)?.estimated.reference;
    let mmhg = reference.mmhg?;
    // As printed, in whole mmHg: a figure that reads as the end of the range is inside it.
    let printed = mmhg.round();
    let above = wanted.low.is_none_or(|low| printed >= low);
    let below = wanted.high.is_none_or(|high| printed <= high);
    let lies = if above && below { "inside it" } else { "outside it" };
    Some(format!("The estimate, {} {}, lies {lies}", words::mmhg(mmhg), words::at(reference.landmark)))
}

/// The cap, held against the class's upper end on every chart and the estimate on the chosen size.
fn of_cap(context: &LimbContext<'_>, asked: &ChartAsked<'_>) -> Option<Finding> {
    let cap = context.cap_mmhg?;
    let chart = &asked.assessed.chart;
    let estimate = asked.assessed.size().and_then(|size| asked.assessed.shown(size)).and_then(|shown| {
        let reference = &shown.estimated.reference;
        reference.mmhg.or(reference.bound_mmhg)
    });
    let over = |mmhg: f64| mmhg > cap * (1.0 + 1e-12);
    let what = match (claimed_band(chart.claim.as_ref()), estimate) {
        (Some(band), _) if band.high.is_none_or(over) => match band.high {
            Some(high) => format!("its class reaches {}", words::mmhg(high)),
            None => "its class has no upper end".to_owned(),
        },
        (_, Some(mmhg)) if over(mmhg) => format!("the estimate is {}", words::mmhg(mmhg)),
        (None, None) => return Some(finding::cap_exceeded::not_known(asked.place, context.record.limb, cap)),
        _ => return None,
    };
    Some(finding::cap_exceeded::cap_exceeded(asked.place, context.record.limb, &what, cap))
}

fn percent_free_list(list: &[String]) -> String {
    words::list(list)
}

/// What a size needs that was not measured.
fn missing(assessed: &ChartAssessment, size: usize) -> Vec<String> {
    let measures = assessed.sizing.sizes.get(size).map(|fit| fit.measures.as_slice()).unwrap_or_default();
    let missing = measures.iter().filter(|one| one.verdict == MeasureVerdict::Missing);
    missing.map(|one| words::the(one.landmark)).collect()
}

/// What the sizes themselves ask: between, measured again, missing, taken out, weak chart, distant sizes.
fn of_sizes(context: &LimbContext<'_>, asked: &ChartAsked<'_>) -> Vec<Finding> {
    let (assessed, place) = (asked.assessed, asked.place);
    let setting = context.setting;
    let mut found = Vec::new();
    match &assessed.choice.reason {
        Reason::Missing(girths) => {
            let names: Vec<String> = girths.iter().map(|one| words::the(*one)).collect();
            let open: Vec<String> = assessed
                .sizing
                .places(SizeVerdict::Open)
                .into_iter()
                .map(|size| assessed.size_label(size).to_owned())
                .collect();
            found.push(finding::not_judged::not_judged(place, &names, &open));
        }
        Reason::Again { size, .. } => {
            let misses = misses(assessed, *size);
            found.push(finding::measure_again::measure_again(
                place.size(*size),
                &misses,
                assessed.size_label(*size),
                &missing(assessed, *size),
                assessed.reversed.get(*size).copied().unwrap_or(false),
            ));
        }
        Reason::AllReversed(sizes) => {
            for size in sizes {
                let Some(shown) = assessed.shown(*size) else { continue };
                let sentence = fall_words(&shown.outfit, &shown.estimated, &[]).unwrap_or_default();
                let label = assessed.size_label(*size);
                found.push(finding::size_taken_out::size_taken_out(place.size(*size), label, &sentence));
            }
        }
        _ => {}
    }
    if assessed.choice.verdict == ChartVerdict::Between
        && let [small, .., large] = assessed.choice.between.as_slice()
    {
        let picked = assessed.size().map(|size| assessed.size_label(size));
        found.push(finding::between::between(
            place,
            &with_pressure(assessed, *small),
            &with_pressure(assessed, *large),
            picked,
        ));
    }
    for weakness in weaknesses(&assessed.chart) {
        let why = match weakness {
            Weakness::OneGirth(landmark) => {
                format!("its sizes state one girth only, {}", words::the(landmark))
            }
            Weakness::WideRange { size, landmark } => {
                format!("size {} takes a very wide range {}", assessed.size_label(size), words::at(landmark))
            }
        };
        let only_one = found.iter().any(|one| one.id.is(&finding::weak_chart::ENTRY));
        let of_size = matches!(weakness, Weakness::WideRange { size, .. } if Some(size) != assessed.size());
        if !only_one && !of_size {
            found.push(finding::weak_chart::weak_chart(place, &why));
        }
    }
    found.extend(sizes_apart(asked, setting.number(NumberId::SizesApart)));
    found
}

/// `size 2 (27 mmHg at the wrist)`.
fn with_pressure(assessed: &ChartAssessment, size: usize) -> String {
    let label = assessed.size_label(size);
    let reference = assessed.shown(size).map(|shown| &shown.estimated.reference);
    let said = reference.and_then(|one| {
        let at = words::at(one.landmark);
        one.mmhg
            .map(|mmhg| format!("{} {at}", words::mmhg(mmhg)))
            .or_else(|| one.bound_mmhg.map(|mmhg| format!("at least {} {at}", words::mmhg(mmhg))))
    });
    let rises = assessed.reversed.get(size).copied().unwrap_or(false);
    match (said, rises) {
        (Some(said), true) => format!("size {label} ({said}, rises toward the trunk)"),
        (Some(said), false) => format!("size {label} ({said})"),
        (None, true) => format!("size {label} (rises toward the trunk)"),
        (None, false) => format!("size {label}"),
    }
}

/// `0.1 cm too tight at the wrist`.
pub fn misses(assessed: &ChartAssessment, size: usize) -> Vec<String> {
    let Some(fit) = assessed.sizing.sizes.get(size) else { return Vec::new() };
    fit.measures
        .iter()
        .filter(|one| one.verdict == MeasureVerdict::Outside)
        .map(|one| {
            let direction = one.direction.map_or("off", Direction::word);
            format!("{} too {direction} {}", words::cm(one.miss()), words::at(one.landmark))
        })
        .collect()
}

fn sizes_apart(asked: &ChartAsked<'_>, limit: f64) -> Option<Finding> {
    let assessed = asked.assessed;
    let spans: Vec<(usize, usize)> = assessed
        .sizing
        .wanted
        .iter()
        .filter_map(|one| Some((*one.sizes.iter().min()?, *one.sizes.iter().max()?)))
        .collect();
    let largest = spans.iter().map(|(low, _)| *low).max()?;
    let smallest = spans.iter().map(|(_, high)| *high).min()?;
    let apart = f64::from(u32::try_from(largest.saturating_sub(smallest)).unwrap_or_default());
    if apart < limit {
        return None;
    }
    let asks: Vec<String> = assessed
        .sizing
        .wanted
        .iter()
        .filter(|one| !one.sizes.is_empty())
        .map(|one| {
            let sizes: Vec<&str> = one.sizes.iter().map(|size| assessed.size_label(*size)).collect();
            format!("{} for {}", words::the(one.landmark), words::list_or(&sizes))
        })
        .collect();
    Some(finding::sizes_apart::sizes_apart(asked.place, &percent_free_list(&asks)))
}

/// What holds of the size that counts.
fn of_size(context: &LimbContext<'_>, asked: &ChartAsked<'_>, size: usize) -> Vec<Finding> {
    let assessed = asked.assessed;
    let place = asked.place.size(size);
    let setting = context.setting;
    let mut found = Vec::new();
    let fit = assessed.sizing.sizes.get(size);
    if let Some(note) = &assessed.length_note {
        let known = fit.is_some_and(|fit| matches!(fit.length, LengthFit::None { .. }));
        found.push(finding::no_length::no_length(place, note, known));
    }
    let chance = fit.and_then(|fit| fit.inside_chance);
    let least = assessed.sizing.least_margin(size).map(|(_, at)| at);
    let closest = fit.zip(least).and_then(|(fit, at)| fit.measures.get(at)).map(|one| one.landmark);
    if assessed.choice.verdict == ChartVerdict::Size
        && let Some(chance) = chance.filter(|chance| *chance < setting.number(NumberId::InsideChance))
        && let Some(closest) = closest
    {
        found.push(finding::inside_unsure::inside_unsure(place, chance, closest));
    }
    if let Some(again) = assessed.again.filter(|again| again.chance < setting.number(NumberId::SameAgain))
        && let Some(closest) = closest
    {
        let other = again.runner_up.map(|size| assessed.size_label(size));
        found.push(finding::same_size_unsure::same_size_unsure(place, again.chance, other, closest));
    }
    if let Some(shown) = assessed.shown(size) {
        let readings =
            context.readings_of(&assessed.printed, &assessed.chart.label, assessed.size_label(size));
        let name = format!("size {} of {}", assessed.size_label(size), assessed.printed);
        let what = Garments {
            on: OnLimb { limb: context.record.limb, marks: &context.limb.marks },
            outfit: &shown.outfit,
            estimated: &shown.estimated,
            decide: &shown.decide,
            readings: &readings,
            wanted: context.wanted.as_ref(),
            name: &name,
            to_obtain: true,
        };
        found.extend(of_estimate(&what, place, &setting.rules));
    }
    found
}
