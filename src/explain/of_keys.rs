//! Owns the entries of the keys of files: the room `input` holds them as data.

use super::of_numbers::sentence;
use super::{Entry, Kind};
use crate::input::keys::{self, Block, Key, Need};

/// The files and their keys.
fn files() -> [(&'static str, &'static Block); 8] {
    [
        ("record", &keys::RECORD),
        ("visits", &keys::VISITS),
        ("chart", &keys::CHART),
        ("garment", &keys::GARMENT),
        ("wrap", &keys::WRAP),
        ("fabric", &keys::FABRIC),
        ("scheme", &keys::SCHEME),
        ("rules", &keys::RULES),
    ]
}

pub(super) fn entries() -> Vec<Entry> {
    let mut all = Vec::new();
    for (file, block) in files() {
        gather(file, block, 0, &mut all);
    }
    all
}

/// Blocks lie at most this deep in one another; the guard against a block within itself.
const MOST_DEEP: usize = 4;

fn gather(file: &str, block: &Block, deep: usize, all: &mut Vec<Entry>) {
    for key in block.keys {
        let word = if deep == 0 {
            format!("{file}: {}", key.name)
        } else {
            format!("{file}, {}: {}", block.name, key.name)
        };
        if all.iter().any(|entry| entry.word == word) {
            continue;
        }
        all.push(of(word, key));
        if let Some(inner) = key.block().filter(|_| deep < MOST_DEEP) {
            gather(file, inner, deep + 1, all);
        }
    }
}

fn of(word: String, key: &Key) -> Entry {
    let need = if key.need == Need::Required { "It has to be there." } else { "It may be absent." };
    let mut typed = vec![key.name.to_owned()];
    typed.extend(key.also.iter().map(|word| (*word).to_owned()));
    Entry::new(Kind::Key, word, sentence(key.about))
        .rules([format!("One correct line: `{}`. {need}", key.example)])
        .typed(typed)
}
