//! Owns the entries of the findings: the room `finding` holds their texts.

use super::{Entry, Kind};
use crate::finding;
use crate::rules::Rules;

pub(super) fn entries(rules: &Rules) -> Vec<Entry> {
    finding::ALL.iter().map(|found| of(found, rules)).collect()
}

fn of(found: &finding::Entry, rules: &Rules) -> Entry {
    let mut entry = Entry::new(Kind::Finding, found.id, found.meaning)
        .rules([found.rule.to_owned()])
        .rests_on(found.basis.word(), found.source)
        .said([found.title.to_owned()]);
    if let Some(severity) = rules.raised(found.id) {
        entry.rule.push(format!("Raised to {} by the rules in use.", severity.word()));
    }
    if let Some(clearers) = rules.cleared_by(found.id).filter(|may| !may.is_empty()) {
        let named: Vec<String> = clearers.into_iter().map(crate::rules::ClearRule::spoken).collect();
        entry.rule.push(format!("Where it is to be cleared first, by: {}.", crate::words::list_or(&named)));
    }
    entry
}
