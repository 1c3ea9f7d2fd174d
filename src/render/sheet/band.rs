//! Owns the status band: outcome, the one sentence, next step and who acts; the same on every sheet.

use super::wording::sentence;
use crate::assessment::Outcome;
use crate::document::{Block, Entry, Weight};
use crate::finding::spoken_list;
use crate::report::Report;
use crate::rules::Urgency;

/// The words in the head of each page.
pub(super) fn state(outcome: Option<Outcome>) -> &'static str {
    match outcome {
        Some(Outcome::Stop) => "STOP: DO NOT FIT",
        Some(Outcome::TrialFitting) => "TRIAL FITTING",
        Some(Outcome::MadeToMeasure) => "MADE TO MEASURE",
        Some(_) => "NO FITTING YET",
        None => "NO CHART CHOSEN",
    }
}

/// The band.
pub(super) fn band(report: &Report) -> Block {
    let decision = &report.decision;
    let (weight, title) = match decision.outcome {
        Some(Outcome::Stop) => (Weight::Black, "STOP: no garment is fitted from this sheet"),
        Some(Outcome::Refer) => (Weight::Thick, "REFER: no garment is fitted yet"),
        Some(Outcome::Incomplete) => (Weight::Thick, "INCOMPLETE: no garment is fitted yet"),
        Some(Outcome::MadeToMeasure) => (Weight::Thin, "MADE TO MEASURE: no stock size serves"),
        Some(Outcome::FallUnknown) => {
            (Weight::Thick, "FALL UNKNOWN: a size is found, its fall is not judged")
        }
        Some(Outcome::TrialFitting) => (Weight::Thin, "TRIAL FITTING: go on to a trial fitting"),
        None => (Weight::Thin, "NO OUTCOME"),
    };
    let mut entries = Vec::new();
    if !decision.next.is_empty() {
        entries.push(Entry::new("Next", decision.next.clone()));
    }
    let when = when(report);
    let who = spoken_list(&decision.who);
    if !who.is_empty() {
        entries.push(Entry::new("Who acts", format!("{who}{when}")));
    } else if !when.is_empty() {
        entries.push(Entry::new("How soon", when.trim_start_matches(", ").to_owned()));
    }
    if !decision.also.is_empty() {
        let also: Vec<String> = decision.also.iter().map(|one| one.spoken().to_lowercase()).collect();
        entries.push(Entry::new("Also holds", also.join(", ")));
    }
    // The first sentence says what; the rest says why.
    let reason = sentence(&decision.reason);
    let (lead, rest) = reason.split_once(". ").map_or((reason.as_str(), ""), |(lead, rest)| (lead, rest));
    let mut inside = vec![Block::lead(sentence(lead))];
    if !rest.is_empty() {
        inside.push(Block::text(rest.to_owned()));
    }
    inside.push(Block::Entries(entries));
    Block::frame(weight, title, inside)
}

fn when(report: &Report) -> String {
    match (report.decision.urgency, &report.decision.by) {
        (Urgency::Emergency, _) => ", at once".to_owned(),
        (Urgency::SameDay, _) => ", today".to_owned(),
        (Urgency::Soon, Some(day)) => format!(", by {day}"),
        (Urgency::Soon, None) => ", soon".to_owned(),
        (Urgency::Routine, _) => String::new(),
    }
}
