//! Owns what holds of the parts of a set together: the sum where two lie over one another, the hand or foot part.

use super::open::Opened;
use super::{ChartAssessment, LimbContext, ShownSize};
use crate::anatomy::Landmark;
use crate::estimate::EstimateRules;
use crate::finding::{self, Finding, Place};
use crate::garment::Chart;
use crate::rules::NumberId;
use crate::words;

/// Whether a chart's garment has, or is, the hand or foot part.
pub(super) fn has_part(chart: &Chart) -> bool {
    chart.hand_part == Some(true) || chart.from.on_extremity()
}

/// Where a hand or foot part is chosen among what is offered, none is needed any more.
pub(super) fn end_need_of_part(
    limb: usize,
    charts: &[ChartAssessment],
    opened: &Opened,
    findings: &mut Vec<Finding>,
) {
    let chosen = |chart: &&ChartAssessment| chart.counted && chart.size().is_some();
    let is_there = charts.iter().filter(chosen).any(|chart| has_part(&chart.chart))
        || opened.outfits.iter().any(|outfit| outfit.hand_part() == Some(true));
    if is_there {
        let own = Place::limb(limb).limb;
        findings.retain(|one| !one.id.is(&finding::hand_part_needed::ENTRY) || one.place.limb != own);
    }
}

/// Two chosen parts that lie over one another: said, and above the limit cleared first.
pub(super) fn of_set(context: &LimbContext<'_>, charts: &[ChartAssessment]) -> Option<Finding> {
    let limit = context.setting.number(NumberId::PressureLimit);
    let chosen: Vec<(&ChartAssessment, &ShownSize)> = charts
        .iter()
        .filter(|chart| chart.counted)
        .filter_map(|chart| Some((chart, chart.shown(chart.size()?)?)))
        .collect();
    let mut highest: Option<(Landmark, f64, bool, Vec<String>)> = None;
    for landmark in context.limb.marks.iter().filter_map(|mark| mark.landmark) {
        let here: Vec<(String, f64, bool)> = chosen
            .iter()
            .filter_map(|(chart, shown)| {
                let mark = shown.estimated.marks.iter().find(|mark| mark.landmark == landmark)?;
                Some((chart.printed.clone(), mark.at_least_mmhg()?, mark.mmhg().is_none()))
            })
            .collect();
        let sum: f64 = here.iter().map(|(_, mmhg, _)| mmhg).sum();
        if here.len() > 1 && highest.as_ref().is_none_or(|(_, most, ..)| sum > *most) {
            let bound = here.iter().any(|(.., bound)| *bound);
            highest = Some((landmark, sum, bound, here.into_iter().map(|(name, ..)| name).collect()));
        }
    }
    let Some((landmark, sum, bound, pieces)) = highest else {
        return unknown_together(context, &chosen).map(|one| context.clearings.decide(one));
    };
    let place = Place::limb(context.index).at(landmark);
    let at = words::at(landmark);
    let one = if sum > limit {
        finding::set_high::set_high(place, &at, (sum, bound), &pieces, limit)
    } else {
        let least = EstimateRules::of(&context.setting.rules).share_low * sum;
        finding::layers::of_set(place, &pieces, &at, least, (!bound).then_some(sum))
    };
    Some(context.clearings.decide(one))
}

/// Two parts over one another where one of them has no curve: said, since nothing can be summed.
fn unknown_together(context: &LimbContext<'_>, chosen: &[(&ChartAssessment, &ShownSize)]) -> Option<Finding> {
    context.limb.marks.iter().filter_map(|mark| mark.landmark).find_map(|landmark| {
        let here: Vec<(String, bool)> = chosen
            .iter()
            .filter_map(|(chart, shown)| {
                let mark = shown.estimated.marks.iter().find(|mark| mark.landmark == landmark)?;
                Some((chart.printed.clone(), mark.estimate.is_some()))
            })
            .collect();
        let unknown: Vec<String> =
            here.iter().filter(|(_, known)| !known).map(|(name, _)| name.clone()).collect();
        let names: Vec<String> = here.into_iter().map(|(name, _)| name).collect();
        let place = Place::limb(context.index).at(landmark);
        let at = words::at(landmark);
        (names.len() > 1 && !unknown.is_empty())
            .then(|| finding::layers::of_set_unknown(place, &names, &at, &unknown))
    })
}
