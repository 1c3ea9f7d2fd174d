//! Owns the answers to `explain`: a word, the list of words, everything.

use super::normal::normal;
use super::{Catalogue, Entry, Kind, Topic};
use crate::document::Block;
use crate::garment::Schemes;
use crate::rules::Rules;
use crate::words;

/// What is known of a word.
#[derive(Clone, Debug, PartialEq)]
pub enum Answer {
    /// Its pages.
    Found(Vec<Block>),
    /// Nothing; the words nearest to it, best first.
    Near(Vec<String>),
}

/// What a word means under the rules and schemes in use.
pub fn lookup(word: &str, rules: &Rules, schemes: &Schemes) -> Answer {
    let catalogue = Catalogue::of(rules, schemes);
    let mut entries = catalogue.find(word);
    let topic = Topic::parse(word);
    // A page goes before what its word would otherwise lead to.
    if topic.is_some() {
        entries.retain(|entry| is_own_name(entry, word));
    }
    if entries.is_empty() && topic.is_none() {
        return Answer::Near(catalogue.near(word));
    }
    let mut blocks = Vec::new();
    if !entries.is_empty() && !entries.iter().any(|entry| is_own_name(entry, word)) {
        blocks.push(Block::text(format!("`{}` leads to {} here.", word.trim(), leads(&entries))));
    }
    for entry in entries {
        blocks.extend(entry.blocks());
    }
    blocks.extend(topic.map(|topic| topic.blocks(rules)).unwrap_or_default());
    Answer::Found(blocks)
}

/// Whether a word is the entry's own, as it stands in text, files or on paper.
fn is_own_name(entry: &Entry, word: &str) -> bool {
    let wanted = normal(word);
    let mut own = entry.printed.iter().chain(&entry.file).chain(std::iter::once(&entry.word));
    own.any(|name| normal(name) == wanted) || entry.kind == Kind::Key
}

fn leads(entries: &[&Entry]) -> String {
    let mut names: Vec<String> = entries.iter().map(|entry| format!("`{}`", entry.word)).collect();
    names.dedup();
    words::list(&names)
}

/// The words, kind by kind.
pub fn index(rules: &Rules, schemes: &Schemes) -> Vec<Block> {
    let catalogue = Catalogue::of(rules, schemes);
    let mut blocks =
        vec![Block::text("tapeline explain WORD, one of these or what you would call it yourself:")];
    for kind in Kind::ALL.into_iter().filter(|kind| !matches!(kind, Kind::Key | Kind::ReportKey)) {
        let words: Vec<&str> = catalogue.of_kind(kind).map(|entry| entry.word.as_str()).collect();
        if !words.is_empty() {
            blocks.push(Block::heading(kind.heading()));
            blocks.push(Block::text(words.join(" · ")));
        }
    }
    blocks.push(Block::heading("Pages"));
    blocks.push(Block::text(Topic::ALL.map(Topic::word).join(" · ")));
    blocks
}

/// Everything, kind by kind, then the pages.
pub fn all(rules: &Rules, schemes: &Schemes) -> Vec<Block> {
    let catalogue = Catalogue::of(rules, schemes);
    let mut blocks = Vec::new();
    for kind in Kind::ALL {
        blocks.push(Block::heading(kind.heading()));
        blocks.extend(catalogue.of_kind(kind).flat_map(Entry::blocks));
    }
    blocks.extend(Topic::ALL.into_iter().flat_map(|topic| topic.blocks(rules)));
    blocks
}
