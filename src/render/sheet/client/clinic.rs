//! Owns the line for the clinic on the client's pages.

use super::super::language::Texts;
use super::super::subject::{is_trial, parts};
use crate::document::Block;
use crate::report::{ClassBlock, Report};
use crate::words::{self, capital};

/// Whose page it is, and what was tried, for whoever is shown it; where nothing was, the head of the page says it all.
pub(super) fn clinic(report: &Report, texts: &Texts) -> Vec<Block> {
    if !is_trial(report) {
        return Vec::new();
    }
    let record = &report.record;
    let mut said = vec![texts.filled(
        "clinic",
        &[
            ("{client}", &record.client),
            ("{limb}", texts.limb(&record.limb)),
            ("{date}", &texts.day(&record.measured_on)),
        ],
    )];
    for part in parts(report) {
        let Some(chart) = part.chart else { continue };
        let class = chart.claim.as_ref().map(|claim| class(claim, texts)).unwrap_or_default();
        let one = texts.filled(
            "clinic-garment",
            &[
                ("{limb}", &capital(texts.limb(&part.limb.printed))),
                ("{garment}", &chart.printed),
                ("{size}", &part.size_words()),
                ("{class}", &class),
            ],
        );
        said.push(one.trim_end_matches([' ', ',']).to_owned());
    }
    vec![Block::small(format!("{}: {}.", texts.text("clinic-title"), said.join("; ")))]
}

/// The class with its band, by the language.
fn class(claim: &ClassBlock, texts: &Texts) -> String {
    let end = |value: f64| texts.figure(&words::trimmed(value, 1));
    let class = ("{class}", claim.class.as_str());
    match (claim.low, claim.high) {
        (Some(low), Some(high)) => {
            texts.filled("class-band", &[class, ("{low}", &end(low)), ("{high}", &end(high))])
        }
        _ => texts.filled("class", &[class]),
    }
}
