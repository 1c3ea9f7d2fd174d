//! Owns whom and what the sheet is about, and the values that a fitting rests on.

use super::wording::sentence;
use crate::document::{Block, Entry};
use crate::report::{LegBlock, Report};

/// Client, measuring, prescription.
pub(super) fn about(report: &Report) -> Vec<Block> {
    let record = &report.record;
    let by = record.measured_by.as_deref().map(|by| format!(" by {by}")).unwrap_or_default();
    let posture = record.posture.as_deref().map(|one| format!("; {one}")).unwrap_or_default();
    let affected = match record.affected {
        "both" => "both sides are affected".to_owned(),
        "none" => "neither side is affected".to_owned(),
        side => format!("the {side} side is affected"),
    };
    vec![Block::Keys(vec![
        Entry::new("Client", format!("{}, {}", record.client, record.age_band)),
        Entry::new("Limb", format!("{}; {affected}", record.limb)),
        Entry::new("Measured", format!("{}{by}{posture}", record.measured_on)),
        Entry::new(
            "Prescribed",
            report.prescribed.clone().unwrap_or_else(|| "nothing is recorded".to_owned()),
        ),
    ])]
}

fn screening(report: &Report) -> String {
    let screening = &report.screening;
    let by = screening.by.as_deref().map(|by| format!(" by {by}")).unwrap_or_default();
    let asked =
        screening.asked_on.as_ref().map_or_else(|| "not dated".to_owned(), |on| format!("asked {on}{by}"));
    match screening.unanswered.len() {
        0 => format!("every question is answered; {asked}"),
        1 => format!("1 QUESTION IS OPEN; {asked}"),
        open => format!("{open} QUESTIONS ARE OPEN; {asked}"),
    }
}

/// Screening, arterial values, allergies, hand or foot.
pub(super) fn values(report: &Report) -> Vec<Block> {
    let mut entries = vec![Entry::new("Screening", screening(report))];
    for leg in &report.arterial.legs {
        let side = report.limbs.get(leg.limb).filter(|_| report.limbs.len() > 1);
        let side = side.map(|limb| format!(", {}", limb.printed)).unwrap_or_default();
        entries.push(Entry::new(format!("Arterial values{side}"), leg_words(leg)));
    }
    let leg = report.limbs.iter().any(|limb| limb.limb == crate::anatomy::Limb::Leg);
    if leg && report.arterial.legs.is_empty() {
        entries.push(Entry::new("Arterial values", "none recorded"));
    }
    let allergies = match &report.allergies {
        None => "NOT ASKED".to_owned(),
        Some(all) if all.is_empty() => "asked, none".to_owned(),
        Some(all) => all.join(", "),
    };
    entries.push(Entry::new("Skin allergies", allergies));
    for limb in &report.limbs {
        let side = if report.limbs.len() > 1 { format!(", {}", limb.printed) } else { String::new() };
        let end = limb.limb.extremity();
        let swollen = match limb.hand_or_foot_swollen {
            Some(true) => format!("the {end} is swollen"),
            Some(false) => format!("the {end} is not swollen"),
            None => "NOT ANSWERED".to_owned(),
        };
        let mut entry = Entry::new(format!("{}{side}", crate::words::capital(end)), swollen);
        for need in &limb.needs {
            entry = entry.and(sentence(need));
        }
        entries.push(entry);
    }
    vec![Block::Keys(entries)]
}

fn leg_words(leg: &LegBlock) -> String {
    // Each value carries its date.
    let mut said = leg.values.join("; ");
    if let Some(cap) = &leg.cap_mmhg {
        said = format!("{said}; at most {} mmHg", cap.text);
    }
    if leg.words.is_empty() { said } else { format!("{said}: {}", leg.words) }
}
