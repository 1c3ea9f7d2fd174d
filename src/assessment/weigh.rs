//! Owns which outcomes hold for client, limb and charts, and the one decision made of them.
//!
//! Source: the order of the outcomes and what brings them are house rules.

use super::{Decision, Outcome, Subject};
use crate::finding::{Finding, Who};
use crate::rules::{Role, Severity, Urgency};

/// What a chart brings to the decision.
#[derive(Clone, Debug)]
pub struct ChartOutcomes {
    /// Which part of a set.
    pub part: usize,
    /// Every outcome that holds, worst first; never empty.
    pub holds: Vec<Outcome>,
    /// Whether a girth only has to be taped again, or a length is unknown, with a size at hand.
    pub nearly: bool,
    /// What to say of a trial fitting: `size 3 wide, regular, sleeve chart B`.
    pub offer: String,
}

impl ChartOutcomes {
    /// The worst.
    pub fn outcome(&self) -> Outcome {
        self.holds.first().copied().unwrap_or(Outcome::TrialFitting)
    }

    /// How it ranks among the charts of its part, best first.
    fn rank(&self) -> u8 {
        match self.outcome() {
            Outcome::TrialFitting => 0,
            Outcome::FallUnknown => 1,
            Outcome::Refer => 2,
            Outcome::Incomplete if self.nearly => 3,
            Outcome::MadeToMeasure => 4,
            Outcome::Incomplete => 5,
            Outcome::Stop => 6,
        }
    }
}

/// For each part of a set, in order, the chart that counts: the best, of equals the first given.
pub fn counted(charts: &[ChartOutcomes]) -> Vec<usize> {
    let mut parts: Vec<usize> = charts.iter().map(|chart| chart.part).collect();
    parts.sort_unstable();
    parts.dedup();
    let best = |part: usize| {
        let own = charts.iter().enumerate().filter(|(_, chart)| chart.part == part);
        own.min_by_key(|(place, chart)| (chart.rank(), *place)).map(|(place, _)| place)
    };
    parts.into_iter().filter_map(best).collect()
}

/// Every outcome that the client's findings bring on a limb (none: on any), worst first.
pub(super) fn client_outcomes(findings: &[Finding], limb: Option<usize>) -> Vec<Outcome> {
    let own = || {
        findings.iter().filter(|finding| {
            finding.place.is_client()
                && (limb.is_none() || finding.place.limb.is_none() || finding.place.limb == limb)
        })
    };
    let mut all = Vec::new();
    if own().any(|finding| finding.severity == Severity::Stop) {
        all.push(Outcome::Stop);
    }
    if own().any(Finding::must_be_cleared) {
        all.push(Outcome::Refer);
    }
    if own().any(|finding| finding.is_open) {
        all.push(Outcome::Incomplete);
    }
    all
}

/// What garment files bring: no outcome of their own, but what stands against them is never passed over.
pub(super) fn garment_outcomes(findings: &[Finding], limb: Option<usize>) -> Vec<Outcome> {
    let own = || {
        findings
            .iter()
            .filter(|finding| finding.place.garment && (limb.is_none() || finding.place.limb == limb))
    };
    let mut all = Vec::new();
    if own().any(|finding| finding.severity == Severity::Stop) {
        all.push(Outcome::Stop);
    }
    if own().any(Finding::must_be_cleared) {
        all.push(Outcome::Refer);
    }
    all
}

/// The outcome of a limb: the worst of the client's and, for each part, its counted chart's.
pub fn limb_outcome(findings: &[Finding], limb: usize, charts: &[ChartOutcomes]) -> Option<Outcome> {
    let client = client_outcomes(findings, Some(limb)).into_iter();
    let worn = garment_outcomes(findings, Some(limb)).into_iter();
    let counted =
        counted(charts).into_iter().filter_map(|place| charts.get(place)).map(ChartOutcomes::outcome);
    client.chain(worn).chain(counted).min()
}

/// The one decision, from the findings and the charts of every limb. A garment file adds its findings.
pub(super) fn decide(findings: &[Finding], limbs: &[Vec<ChartOutcomes>]) -> Decision {
    let mut all = client_outcomes(findings, None);
    all.extend(garment_outcomes(findings, None));
    for charts in limbs {
        all.extend(
            counted(charts).into_iter().filter_map(|at| charts.get(at)).flat_map(|chart| chart.holds.clone()),
        );
    }
    all.sort_unstable();
    all.dedup();
    let outcome = all.first().copied();
    let also = all.into_iter().skip(1).filter(|one| *one != Outcome::TrialFitting).collect();
    let subject = subject(findings, limbs, outcome);
    let deciding = outcome.map(|outcome| deciding(findings, outcome, subject)).unwrap_or_default();
    said(findings, limbs, outcome, also, subject, deciding)
}

/// What brought the outcome: the client before a garment file before a chart.
fn subject(findings: &[Finding], limbs: &[Vec<ChartOutcomes>], outcome: Option<Outcome>) -> Subject {
    let Some(outcome) = outcome else { return Subject::Client { limb: None } };
    if client_outcomes(findings, None).contains(&outcome) {
        let both = limbs.len() > 1;
        let own = findings.iter().find(|one| one.place.is_client() && brings(one, outcome));
        return Subject::Client { limb: own.and_then(|one| one.place.limb).filter(|_| both) };
    }
    if garment_outcomes(findings, None).contains(&outcome) {
        return Subject::Garment;
    }
    for (limb, charts) in limbs.iter().enumerate() {
        let own = counted(charts)
            .into_iter()
            .find(|at| charts.get(*at).is_some_and(|one| one.holds.contains(&outcome)));
        if let Some(chart) = own {
            return Subject::Chart { limb, chart };
        }
    }
    Subject::Client { limb: None }
}

/// Whether a finding brings an outcome by itself.
fn brings(finding: &Finding, outcome: Outcome) -> bool {
    match outcome {
        Outcome::Stop => finding.severity == Severity::Stop,
        Outcome::Refer => finding.must_be_cleared(),
        Outcome::Incomplete => finding.is_open,
        Outcome::MadeToMeasure => {
            finding.id.is(&crate::finding::shape_irregular::ENTRY)
                || finding.id.is(&crate::finding::size_taken_out::ENTRY)
                || (finding.id.is(&crate::finding::no_length::ENTRY) && !finding.is_open)
        }
        Outcome::FallUnknown => finding.id.is(&crate::finding::fall_unknown::ENTRY),
        Outcome::TrialFitting => false,
    }
}

/// The findings that decided it, most urgent first.
fn deciding(findings: &[Finding], outcome: Outcome, subject: Subject) -> Vec<usize> {
    let about = |finding: &Finding| match subject {
        Subject::Client { .. } => finding.place.is_client(),
        Subject::Garment => finding.place.garment,
        Subject::Chart { limb, chart } => {
            (finding.place.limb == Some(limb) && finding.place.chart == Some(chart))
                || (outcome == Outcome::MadeToMeasure
                    && finding.place.is_client()
                    && finding.place.limb.is_none_or(|one| one == limb))
        }
    };
    let mut found: Vec<usize> = findings
        .iter()
        .enumerate()
        .filter(|(_, one)| about(one) && brings(one, outcome))
        .map(|(at, _)| at)
        .collect();
    found.sort_by_key(|at| findings.get(*at).map(|one| one.urgency));
    found
}

/// The words of the decision, from what decided it.
fn said(
    findings: &[Finding],
    limbs: &[Vec<ChartOutcomes>],
    outcome: Option<Outcome>,
    also: Vec<Outcome>,
    subject: Subject,
    deciding: Vec<usize>,
) -> Decision {
    let own: Vec<&Finding> = deciding.iter().filter_map(|at| findings.get(*at)).collect();
    let urgency = own.iter().map(|one| one.urgency).min().unwrap_or(Urgency::Routine);
    let more = own.len().saturating_sub(1);
    let beside = match more {
        0 => String::new(),
        1 => " One more matter stands beside it.".to_owned(),
        many => format!(" {many} more matters stand beside it."),
    };
    let first = own.first();
    let message = first.map_or("", |one| one.message.as_str());
    let (reason, next, who): (String, String, Vec<Who>) = match outcome {
        None => (
            "Nothing stands against a fitting by what is recorded; no chart was given.".to_owned(),
            "Give a size chart to choose from.".to_owned(),
            vec![Who::Recorder],
        ),
        Some(Outcome::Stop) => (format!("Do not fit. {message}{beside}"), String::new(), Vec::new()),
        Some(Outcome::Refer) => {
            let lead = if first.is_some_and(|one| one.who.is_empty()) {
                "This garment cannot be fitted."
            } else {
                "Something must be cleared before a fitting."
            };
            (format!("{lead} {message}{beside}"), String::new(), Vec::new())
        }
        Some(Outcome::Incomplete | Outcome::FallUnknown) => {
            (format!("{message}{beside}"), String::new(), Vec::new())
        }
        Some(Outcome::MadeToMeasure) => (
            made_to_measure_reason(first.copied(), subject),
            "A certified fitter takes and checks a made-to-measure order.".to_owned(),
            vec![Who::Role(Role::Fitter)],
        ),
        Some(Outcome::TrialFitting) => (
            trial_reason(limbs),
            "Go on to a trial fitting with a certified fitter; the estimate is no measurement.".to_owned(),
            vec![Who::Role(Role::Fitter)],
        ),
    };
    let next = if next.is_empty() { first.map(|one| one.next.clone()).unwrap_or_default() } else { next };
    let who = if who.is_empty() { first.map(|one| one.who.clone()).unwrap_or_default() } else { who };
    Decision { outcome, also, urgency, subject, reason, next, who, findings: deciding }
}

fn made_to_measure_reason(first: Option<&Finding>, _subject: Subject) -> String {
    match first {
        Some(finding) => finding.message.clone(),
        None => "No stock size of the charts given takes every girth.".to_owned(),
    }
}

fn trial_reason(limbs: &[Vec<ChartOutcomes>]) -> String {
    let offers: Vec<String> = limbs
        .iter()
        .flat_map(|charts| {
            counted(charts).into_iter().filter_map(|at| charts.get(at)).map(|one| one.offer.clone())
        })
        .collect();
    format!("{}: go on to a trial fitting.", crate::words::list(&offers))
}
