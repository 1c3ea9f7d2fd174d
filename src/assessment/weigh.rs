//! Owns which outcomes hold for client, limb and charts, and the one decision made of them.
//!
//! Source: the order of the outcomes and what brings them are house rules.

use super::chart_outcomes::{ChartOutcomes, LimbOutcomes, counted};
use super::{Act, Decision, Outcome, Subject};
use crate::finding::{Decided, Finding, Who};
use crate::rules::{Role, Severity, Urgency};
use crate::words;

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
pub(super) fn decide(findings: &[Finding], limbs: &[LimbOutcomes]) -> Decision {
    let mut all = client_outcomes(findings, None);
    all.extend(garment_outcomes(findings, None));
    for limb in limbs {
        all.extend(limb.counted().flat_map(|chart| chart.holds.clone()));
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
fn subject(findings: &[Finding], limbs: &[LimbOutcomes], outcome: Option<Outcome>) -> Subject {
    let Some(outcome) = outcome else { return Subject::Client { limb: None } };
    if client_outcomes(findings, None).contains(&outcome) {
        let both = limbs.len() > 1;
        let own = findings.iter().find(|one| one.place.is_client() && brings(one, outcome));
        return Subject::Client { limb: own.and_then(|one| one.place.limb).filter(|_| both) };
    }
    if garment_outcomes(findings, None).contains(&outcome) {
        return Subject::Garment;
    }
    for (limb, own) in limbs.iter().enumerate() {
        let own = counted(&own.charts)
            .into_iter()
            .find(|at| own.charts.get(*at).is_some_and(|one| one.holds.contains(&outcome)));
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

/// Every stop and clear-first finding that stands for client, garment files and counted charts, and every caution that
/// cannot wait, most urgent first.
fn standing<'f>(findings: &'f [Finding], limbs: &[LimbOutcomes]) -> Vec<&'f Finding> {
    let concerns = |finding: &Finding| match (finding.place.limb, finding.place.chart) {
        (Some(limb), Some(chart)) => limbs.get(limb).is_some_and(|own| counted(&own.charts).contains(&chart)),
        _ => true,
    };
    let stands = |one: &&Finding| {
        one.severity == Severity::Stop
            || one.must_be_cleared()
            || (one.severity == Severity::Caution && one.urgency <= Urgency::SameDay)
    };
    let mut found: Vec<&Finding> = findings.iter().filter(stands).filter(|one| concerns(one)).collect();
    found.sort_by_key(|one| (one.urgency, one.severity));
    found
}

/// Who acts on these matters: roles that several share are named once.
fn acts(matters: &[&Finding], all: &mut Vec<Act>) {
    for one in matters.iter().filter(|one| !one.who.is_empty()) {
        let known = all.iter().any(|act| {
            act.urgency == one.urgency
                && act.who.len() == one.who.len()
                && one.who.iter().all(|who| act.who.contains(who))
        });
        if !known {
            all.push(Act { who: one.who.clone(), urgency: one.urgency });
        }
    }
}

/// The words of the decision, from what decided it.
fn said(
    findings: &[Finding],
    limbs: &[LimbOutcomes],
    outcome: Option<Outcome>,
    also: Vec<Outcome>,
    subject: Subject,
    deciding: Vec<usize>,
) -> Decision {
    let own: Vec<&Finding> = deciding.iter().filter_map(|at| findings.get(*at)).collect();
    let first = own.first().copied();
    let own_urgency = first.map_or(Urgency::Routine, |one| one.urgency);
    // What is more urgent than what brought the outcome is never left below it.
    let mut pressing = standing(findings, limbs);
    pressing.retain(|one| one.urgency < own_urgency);
    let urgency = pressing.first().map_or(own_urgency, |one| one.urgency);
    let pressing: Vec<&Finding> = pressing.into_iter().filter(|one| one.urgency == urgency).collect();
    let decisive: Vec<&Finding> = own.iter().copied().filter(|one| one.urgency == own_urgency).collect();
    let beside = match own.len().saturating_sub(1) {
        0 => String::new(),
        1 => " One more matter stands beside it.".to_owned(),
        many => format!(" {many} more matters stand beside it."),
    };
    let message = first.map_or_else(String::new, |one| told(one, limbs));
    let mut all = Vec::new();
    acts(&pressing, &mut all);
    let (reason, next): (String, String) = match outcome {
        None => {
            all.push(Act { who: vec![Who::Recorder], urgency: own_urgency });
            (
                "Nothing stands against a fitting by what is recorded; no chart was given.".to_owned(),
                "Give a size chart to choose from.".to_owned(),
            )
        }
        Some(Outcome::Stop | Outcome::Refer) => {
            acts(&decisive, &mut all);
            let lead = if outcome == Some(Outcome::Stop) { "Do not fit." } else { first.map_or("", lead) };
            (format!("{lead} {message}{beside}"), first.map(|one| one.next.clone()).unwrap_or_default())
        }
        Some(Outcome::Incomplete | Outcome::FallUnknown) => {
            acts(&decisive, &mut all);
            (format!("{message}{beside}"), first.map(|one| one.next.clone()).unwrap_or_default())
        }
        Some(Outcome::MadeToMeasure) => {
            all.push(Act { who: vec![Who::Role(Role::Fitter)], urgency: own_urgency });
            (
                made_to_measure_reason(first, findings, limbs, subject),
                "A certified fitter takes and checks a made-to-measure order.".to_owned(),
            )
        }
        Some(Outcome::TrialFitting) => {
            all.push(Act { who: vec![Who::Role(Role::Fitter)], urgency: own_urgency });
            (
                trial_reason(limbs),
                "Go on to a trial fitting with a certified fitter; the estimate is no measurement."
                    .to_owned(),
            )
        }
    };
    let (reason, next) = match pressing.first() {
        Some(one) => (format!("{reason} {}, beside it: {}", when_words(one.urgency), told(one, limbs)), {
            let all = pressing.iter().map(|one| one.next.as_str()).chain([next.as_str()]);
            all.filter(|one| !one.is_empty()).collect::<Vec<_>>().join(" ")
        }),
        None => (reason, next),
    };
    let mut who: Vec<Who> = Vec::new();
    for one in all.iter().flat_map(|act| &act.who) {
        if !who.contains(one) {
            who.push(*one);
        }
    }
    // A more urgent matter counts among those that decided, behind what brought the outcome.
    let mut deciding = deciding;
    let places = findings.iter().enumerate();
    let more = places.filter(|(_, one)| pressing.iter().any(|other| std::ptr::eq(*other, *one)));
    deciding.extend(more.map(|(at, _)| at));
    Decision { outcome, also, urgency, subject, reason, next, who, acts: all, findings: deciding }
}

fn when_words(urgency: Urgency) -> &'static str {
    match urgency {
        Urgency::Emergency => "At once",
        Urgency::SameDay => "Today",
        Urgency::Soon | Urgency::Routine => "Soon",
    }
}

/// How a refer begins, by what ends it.
fn lead(first: &Finding) -> &'static str {
    if matches!(first.decided, Decided::Refused(_)) {
        "A fitting was refused."
    } else if first.id.is(&crate::finding::arterial_unknown::ENTRY) {
        "A value or an assessment is needed before a fitting."
    } else if first.who.is_empty() {
        "This garment cannot be fitted."
    } else {
        "Something must be cleared before a fitting."
    }
}

/// What a finding says, and of which limb and chart where the run holds several.
fn told(one: &Finding, limbs: &[LimbOutcomes]) -> String {
    let Some(limb) = one.place.limb else { return one.message.clone() };
    let whose = whose(limbs, limb, one.place.chart);
    let named =
        limbs.get(limb).is_some_and(|own| one.message.contains(&own.name)) && one.place.chart.is_none();
    if whose.is_empty() || named { one.message.clone() } else { format!("{whose}: {}", one.message) }
}

/// `Right arm, sleeve chart A`: as much of it as tells the place from the others of the run.
fn whose(limbs: &[LimbOutcomes], limb: usize, chart: Option<usize>) -> String {
    let Some(own) = limbs.get(limb) else { return String::new() };
    let chart = chart.and_then(|at| own.charts.get(at)).filter(|_| own.charts.len() > 1);
    let parts = [own.name.as_str(), chart.map_or("", |one| one.printed.as_str())];
    let all: Vec<&str> = parts.into_iter().filter(|one| !one.is_empty()).collect();
    words::capital(&all.join(", "))
}

fn made_to_measure_reason(
    first: Option<&Finding>,
    findings: &[Finding],
    limbs: &[LimbOutcomes],
    subject: Subject,
) -> String {
    if let Some(finding) = first {
        return told(finding, limbs);
    }
    let Subject::Chart { limb, chart } = subject else {
        return "No stock size of the charts given takes every girth.".to_owned();
    };
    let charts = limbs.get(limb).map(|own| own.charts.as_slice()).unwrap_or_default();
    let part = charts.get(chart).map(|one| one.part);
    let of_part = || charts.iter().filter(|one| Some(one.part) == part);
    // A size that takes every girth and must not be worn, or rises, is passed over; the reason says so.
    let barred = of_part().any(|one| one.outcome() == Outcome::Stop && !one.offer.is_empty());
    let may = if barred { " that may be worn" } else { "" };
    let in_part = |at: Option<usize>| at.and_then(|at| charts.get(at)).map(|one| one.part) == part;
    let rises = findings.iter().any(|one| {
        one.id.is(&crate::finding::size_taken_out::ENTRY)
            && one.place.limb == Some(limb)
            && in_part(one.place.chart)
    });
    let falls = if rises { " without a certain rise" } else { "" };
    let given = if of_part().count() == charts.len() {
        "the charts given".to_owned()
    } else {
        words::list(&of_part().map(|one| one.printed.clone()).collect::<Vec<_>>())
    };
    let size = format!("o stock size of {given}{may} takes every girth{falls}.");
    match limbs.get(limb).filter(|own| !own.name.is_empty()) {
        Some(own) => format!("{}: n{size}", words::capital(&own.name)),
        None => format!("N{size}"),
    }
}

fn trial_reason(limbs: &[LimbOutcomes]) -> String {
    let offers: Vec<String> =
        limbs.iter().flat_map(|limb| limb.counted().map(|one| one.offer.clone())).collect();
    format!("{}: go on to a trial fitting.", words::list(&offers))
}

/// Under a stop and under refer nothing invites to order: such a next step waits.
pub(super) fn hold_orders(findings: &mut [Finding], outcome: Option<Outcome>) {
    if !outcome.is_some_and(Outcome::forbids_fitting) {
        return;
    }
    for one in findings.iter_mut().filter(|one| one.orders()) {
        let mut letters = one.next.chars();
        if let Some(first) = letters.next() {
            let rest: String = first.to_lowercase().chain(letters).collect();
            one.next = format!("When this is settled: {rest}");
        }
    }
}
