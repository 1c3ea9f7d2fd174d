//! Owns the whole check of one record.

use jiff::civil::Date;

use super::chart::assess_chart;
use super::client_findings::of_client;
use super::limb_findings::of_limb;
use super::raise::raise;
use super::{ChartAssessment, OpenRecord, Outcome};
use crate::finding::Finding;
use crate::garment::Chart;
use crate::rules::{Rules, Severity};
use crate::volume::{Comparison, compare};

/// Everything worked out for one record, unrounded.
#[derive(Clone, Debug)]
pub struct Assessment {
    /// The day of the check.
    pub today: Date,
    /// The outcome; none when no chart was given and nothing stands against a fitting.
    pub outcome: Option<Outcome>,
    /// Other outcomes of the client and the best chart, worst first, never `try-on`.
    pub also: Vec<Outcome>,
    /// The best chart, by its place.
    pub best_chart: Option<usize>,
    /// What was found about the client, then about each chart's chosen size.
    pub findings: Vec<Finding>,
    /// The charts in the order given.
    pub charts: Vec<ChartAssessment>,
    /// Both limbs compared.
    pub volume: Option<Comparison>,
}

/// Checks a record against charts, as of `today`.
pub fn assess(open: &OpenRecord, charts: Vec<Chart>, today: Date, rules: &Rules) -> Assessment {
    let charts: Vec<ChartAssessment> =
        charts.into_iter().map(|chart| assess_chart(open, chart, rules)).collect();
    let Client { mut findings, outcomes: client, volume } = of_the_client(open, &charts, &[], today, rules);
    findings.extend(charts.iter().flat_map(|chart| chart.findings.clone()));
    let best_chart =
        (0..charts.len()).min_by_key(|at| charts.get(*at).map(|chart| chart.outcome().rank_of_chart()));
    let best = best_chart.and_then(|at| charts.get(at));
    let mut all: Vec<Outcome> = client;
    all.extend(best.iter().flat_map(|chart| chart.outcomes.iter().copied()));
    let (outcome, also) = worst_first(all);
    Assessment { today, outcome, also, best_chart, findings, charts, volume }
}

/// What stands about the client, whatever the garment.
pub(super) struct Client {
    /// The findings, worst first.
    pub findings: Vec<Finding>,
    /// The outcomes, worst first.
    pub outcomes: Vec<Outcome>,
    /// Both limbs compared.
    pub volume: Option<Comparison>,
}

/// Looks at the client; `asked` holds the highest pressures of garments other than the charts'.
pub(super) fn of_the_client(
    open: &OpenRecord,
    charts: &[ChartAssessment],
    asked: &[Option<f64>],
    today: Date,
    rules: &Rules,
) -> Client {
    let volume = compare(&open.record, rules);
    let mut findings = of_client(open, charts, asked, today, rules);
    findings.extend(of_limb(open, volume.as_ref(), today, rules));
    raise(&mut findings, rules);
    let outcomes = client_outcomes(&findings);
    // A question holds the report up, so it goes before what is only to be borne in mind.
    findings.sort_by_key(|finding| (finding.severity, finding.cleared.is_some(), !finding.is_question));
    Client { findings, outcomes, volume }
}

/// The worst outcome, and the others that hold, never `try-on`.
pub(super) fn worst_first(mut all: Vec<Outcome>) -> (Option<Outcome>, Vec<Outcome>) {
    all.sort_unstable();
    all.dedup();
    let worst = all.first().copied();
    (worst, all.into_iter().skip(1).filter(|one| *one != Outcome::TryOn).collect())
}

/// Every outcome that the client's findings bring, worst first.
fn client_outcomes(findings: &[Finding]) -> Vec<Outcome> {
    let mut all = Vec::new();
    let client = || findings.iter().filter(|finding| finding.place.is_client());
    if client().any(|finding| finding.severity == Severity::Stop) {
        all.push(Outcome::Stop);
    }
    if client().any(Finding::is_open_review) {
        all.push(Outcome::Refer);
    }
    if client().any(|finding| finding.is_question) {
        all.push(Outcome::Incomplete);
    }
    all
}
