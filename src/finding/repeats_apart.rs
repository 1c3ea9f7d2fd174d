//! Finding `repeats-apart`: several tape values of one girth lie far apart.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "repeats-apart",
    title: "Repeats far apart",
    meaning: "Several tape values of one girth lie far apart.",
    rule: "Above 0.5 cm a caution, above 2 cm a question answered by the landmark under `confirmed`.",
    basis: Basis::HouseRule,
    source: "",
};

/// Repeats of one mark lie `gap` tenths of a millimetre apart; `asked` above the wider limit.
pub fn repeats_apart(place: Place, mark: &str, values: &str, gap: i64, asked: Option<&str>) -> Finding {
    let found = Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!(
            "The tape values {mark} lie {} apart ({values} cm); their mean is used.",
            words::cm(gap)
        ))
        .next("Measure this mark once more.", &[Who::Recorder]);
    match asked {
        Some(word) => found.asks(word),
        None => found,
    }
}
