//! Owns which findings hold for the client: screening answers and arterial values.

use jiff::civil::Date;

use super::OpenRecord;
use super::chart::{ChartAssessment, prescribed_band};
use super::limb_findings::older_than;
use crate::anatomy::Limb;
use crate::finding::Finding;
use crate::record::Clinical;
use crate::rules::{NumberId, Rules, Severity};
use crate::screening::{ArterialHit, NoAbpi, arterial_hits, no_abpi};

/// Findings about the client; `asked` holds the highest pressures of garments other than the charts',
/// none where one is open at its upper end.
pub(super) fn of_client(
    open: &OpenRecord,
    charts: &[ChartAssessment],
    asked: &[Option<f64>],
    today: Date,
    rules: &Rules,
) -> Vec<Finding> {
    let mut found: Vec<Finding> = open
        .screened
        .yes
        .iter()
        .filter_map(|id| rules.item(id))
        .map(|item| Finding::item(item, open.screened.cleared_by(&item.id)))
        .collect();
    for cleared in &open.screened.cleared_in_vain {
        if let Some(item) = rules.item(&cleared.item.text).filter(|item| open.screened.yes.contains(&item.id))
        {
            found.push(Finding::cleared_in_vain(cleared, item));
        }
    }
    if open.record.limb == Limb::Leg {
        found.extend(of_arteries(open, charts, asked, today, rules));
    }
    let months = rules.number(NumberId::ScreeningAgeCare);
    let basis = rules.number_basis(NumberId::ScreeningAgeCare);
    match open.record.screening.asked_on {
        Some(on) if older_than(on, months, today) => {
            found.push(Finding::screening_old(Some(&on.to_string()), months, basis));
        }
        None if open.screened.asked => found.push(Finding::screening_old(None, months, basis)),
        _ => {}
    }
    if !open.screened.open.is_empty() {
        found.push(Finding::not_answered(&open.screened.open, open.screened.asked));
    }
    found
}

fn of_arteries(
    open: &OpenRecord,
    charts: &[ChartAssessment],
    asked: &[Option<f64>],
    today: Date,
    rules: &Rules,
) -> Vec<Finding> {
    let arterial = open.record.arterial.as_ref();
    let cleared = |id: &str| open.screened.cleared_by(id);
    let mut found: Vec<Finding> = arterial_hits(arterial, rules)
        .iter()
        .map(|hit: &ArterialHit| Finding::arterial(hit, cleared(hit.rule.value.word())))
        .collect();
    if arterial.is_some_and(|arterial| arterial.clinical == Some(Clinical::Inadequate)) {
        found.push(Finding::clinical_inadequate(cleared("clinical")));
    }
    let target = target(open, charts, asked);
    let limit = rules.number(NumberId::NoAbpiTarget);
    match no_abpi(arterial, &open.screened, target, rules) {
        NoAbpi::Covered => {}
        NoAbpi::Care => found.push(Finding::no_abpi(Severity::Care, target, limit, None)),
        NoAbpi::Review => found.push(Finding::no_abpi(Severity::Review, target, limit, cleared("no-abpi"))),
    }
    if let Some(arterial) = arterial {
        let months = rules.number(NumberId::ArterialAgeCare);
        let basis = rules.number_basis(NumberId::ArterialAgeCare);
        match arterial.on {
            None => found.push(Finding::arterial_old(None, months, basis)),
            Some(on) if older_than(on, months, today) => {
                found.push(Finding::arterial_old(Some(&on.to_string()), months, basis));
            }
            Some(_) => {}
        }
    }
    found
}

/// The highest pressure in question: prescribed upper end, claimed upper ends and estimates of the
/// sizes chosen. None where one of them is open or nothing is known.
fn target(open: &OpenRecord, charts: &[ChartAssessment], asked: &[Option<f64>]) -> Option<f64> {
    let mut ends: Vec<Option<f64>> = asked.to_vec();
    if open.record.prescribed.as_ref().is_some_and(|one| one.wanted.is_some()) {
        ends.push(prescribed_band(open).and_then(|band| band.high));
    }
    for chart in charts {
        let claimed = chart
            .chart
            .claim
            .as_ref()
            .map(|claim| claim.scheme.class(&claim.class).and_then(|band| band.high));
        let Some(size) = chart.choice.size else { continue };
        let estimate = chart.estimate_of(size).and_then(super::WornEstimate::highest);
        match (claimed, estimate) {
            (None, None) => ends.push(None),
            (claimed, estimate) => {
                ends.extend(claimed);
                ends.extend(estimate.map(Some));
            }
        }
    }
    if ends.is_empty() {
        return None;
    }
    ends.into_iter().try_fold(f64::NEG_INFINITY, |highest, end| end.map(|end| highest.max(end)))
}
