//! Owns the entries of the numbers of the rules.

use super::{Entry, Kind};
use crate::rules::{Number, Rules};

pub(super) fn entries(rules: &Rules) -> Vec<Entry> {
    rules.numbers.iter().map(of).collect()
}

fn of(number: &Number) -> Entry {
    let id = number.id.id();
    Entry::new(Kind::Number, id, number.id.meaning().replace(['`'], ""))
        .rules([format!("{id} = {}", number.text), sentence(&number.why)])
        .rests_on(number.basis.word(), "")
        .then(&format!("A rules file replaces it: `numbers: [{{id: {id}, value: …, basis: …, why: …}}]`."))
}

/// A capital first, a full stop last.
pub(super) fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|first| first.to_uppercase().chain(letters).collect::<String>());
    let mut sentence = first.unwrap_or_default();
    if !sentence.is_empty() && !sentence.ends_with(['.', '?', '!']) {
        sentence.push('.');
    }
    sentence
}
