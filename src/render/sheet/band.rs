//! Owns the status band: outcome, the one sentence, next step and who acts; the same on every sheet.

use super::wording::sentence;
use crate::assessment::Outcome;
use crate::document::{Block, Entry, Weight};
use crate::report::Report;

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
    let acts = decision.who_acts();
    if !acts.is_empty() {
        let name = if decision.who.is_empty() { "How soon" } else { "Who acts" };
        entries.push(Entry::new(name, acts));
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
