//! Changes of a file: of its tree, so that most of it stays what it was, and of its bytes.

use serde_yaml::{Mapping, Number, Value};

use super::corpus::CORPUS;
use crate::random::Dice;

/// What a keyboard, another program or somebody hostile leaves.
const PIECES: [&str; 42] = [
    "\u{0}",
    "\u{1b}]0;x\u{7}",
    "\u{202e}",
    "\u{feff}",
    "\u{2028}",
    "\t",
    "\r\n",
    "\n",
    " ",
    "&a ",
    "*a",
    "!!int ",
    "!x ",
    "[",
    "]",
    "{",
    "}",
    ",",
    ": ",
    "- ",
    "#",
    "\"",
    "'",
    "|",
    ">",
    "---\n",
    "%YAML 1.1\n",
    "<<: *a",
    "? ",
    "~",
    "null",
    "yes",
    "-0",
    "1e9",
    ".nan",
    "0,5",
    "99999999999999999999",
    "16½",
    "é",
    "\u{fffd}",
    "tapeline: record/1\n",
    "🦵",
];

/// Scalars that stand nowhere by right.
const ODD: [&str; 26] = [
    "",
    "0",
    "-1",
    "0.05",
    "2000",
    "1e9",
    ".inf",
    "16,9",
    "16.9 cm",
    "169 mm",
    "6.65 in",
    "27mmHg",
    "3.6 kPa",
    "yes",
    "unknown",
    "none",
    "left",
    "both legs",
    "2026-02-29",
    "2031-01-01",
    "1901-01-01",
    "wrist",
    "ankle",
    "calf",
    "under 20",
    "over 36 cm",
];

/// Numbers are multiplied by one of these.
const TIMES: [f64; 16] =
    [0.0, -1.0, 0.1, 10.0, 0.9, 1.1, 0.97, 1.03, 2.54, 0.3937, 0.5, 2.0, 1.001, 100.0, 1e6, 1e-4];

/// A tree with one place changed.
pub fn tree(root: &mut Value, dice: &mut Dice) {
    // The kind stays, most of the time.
    let mut key = String::new();
    let mut at = root;
    loop {
        let deeper = match &*at {
            Value::Mapping(all) if !all.is_empty() => dice.luck(0.8),
            Value::Sequence(all) if !all.is_empty() => dice.luck(0.7),
            _ => false,
        };
        if !deeper {
            break;
        }
        match at {
            Value::Mapping(all) => {
                let place = dice.below(all.len());
                let (name, value) = all.iter_mut().nth(place).unwrap();
                name.as_str().unwrap_or_default().clone_into(&mut key);
                at = value;
            }
            Value::Sequence(all) => {
                let place = dice.below(all.len());
                at = &mut all[place];
            }
            _ => unreachable!(),
        }
    }
    if key == "tapeline" && dice.luck(0.95) {
        return;
    }
    match at {
        Value::Mapping(all) => block(all, &key, dice),
        Value::Sequence(all) => list(all, &key, dice),
        other => scalar(other, &key, dice),
    }
}

fn block(all: &mut Mapping, name: &str, dice: &mut Dice) {
    let place = if all.is_empty() { 0 } else { dice.below(all.len()) };
    let key = all.keys().nth(place).cloned();
    match (dice.below(6), key) {
        (0, Some(key)) => {
            all.shift_remove(&key);
        }
        (1, Some(key)) => {
            let had = all.shift_remove(&key).unwrap();
            let name = key.as_str().unwrap_or_default();
            let typo = match dice.below(3) {
                0 => name.chars().skip(1).collect(),
                1 => format!("{name}s"),
                _ => name.replace('_', "-"),
            };
            all.insert(Value::String(typo), had);
        }
        (2, Some(key)) => {
            if let Some(value) = known(key.as_str().unwrap_or_default(), dice) {
                all.insert(key, value);
            }
        }
        _ => {
            if let Some(near) = CORPUS.inside.get(name) {
                let (key, value) = near[dice.below(near.len())].clone();
                all.insert(key, value);
            }
        }
    }
}

fn list(all: &mut Vec<Value>, key: &str, dice: &mut Dice) {
    if all.is_empty() {
        all.extend(known(key, dice));
        return;
    }
    let (one, other) = (dice.below(all.len()), dice.below(all.len()));
    match dice.below(6) {
        0 => {
            all.remove(one);
        }
        1 => all.swap(one, other),
        2 => all.insert(one, all[other].clone()),
        3 => all.truncate(one),
        4 => match known(key, dice) {
            Some(Value::Sequence(more)) if !more.is_empty() => {
                all.insert(one, more[dice.below(more.len())].clone());
            }
            _ => all.reverse(),
        },
        _ => all[one] = odd(dice),
    }
}

fn scalar(value: &mut Value, key: &str, dice: &mut Dice) {
    *value = match (dice.below(8), &*value) {
        (0, _) => odd(dice),
        (1, had) => Value::Sequence(vec![had.clone()]),
        (2, had) if dice.luck(0.3) => Value::Mapping(Mapping::from_iter([(Value::from("a"), had.clone())])),
        (3..=5, _) => known(key, dice).unwrap_or_else(|| odd(dice)),
        (_, Value::Number(number)) => times(number.as_f64().unwrap_or_default(), dice),
        (_, Value::String(text)) => Value::String(inside(text, dice)),
        (_, Value::Bool(had)) => Value::Bool(!had),
        _ => odd(dice),
    };
}

/// A value that stands under this key elsewhere.
fn known(key: &str, dice: &mut Dice) -> Option<Value> {
    let all = CORPUS.values.get(key).filter(|all| !all.is_empty())?;
    Some(all[dice.below(all.len())].clone())
}

fn odd(dice: &mut Dice) -> Value {
    match dice.below(12) {
        0 => Value::Null,
        1 => Value::Sequence(Vec::new()),
        2 => Value::Mapping(Mapping::new()),
        3 => Value::String(PIECES[dice.below(PIECES.len())].to_owned()),
        4 => Value::String("x".repeat(1 + dice.below(130))),
        // Read again as what it looks like.
        _ => {
            let text = ODD[dice.below(ODD.len())];
            serde_yaml::from_str(text).unwrap_or_else(|_| Value::String(text.to_owned()))
        }
    }
}

fn times(number: f64, dice: &mut Dice) -> Value {
    let changed = match dice.below(4) {
        0 => number + dice.between(-1.0, 1.0),
        1 => ((number * 10.0).round() + dice.one(&[&-1.0, &1.0, &-0.5, &5.0])) / 10.0,
        _ => number * TIMES[dice.below(TIMES.len())],
    };
    let rounded = (changed * 100.0).round() / 100.0;
    let kept = if dice.luck(0.7) { rounded } else { changed };
    if kept.fract() == 0.0 && kept.abs() < 1e15 {
        Value::Number(Number::from(kept as i64))
    } else {
        Value::Number(Number::from(kept))
    }
}

/// A text with a number in it changed, or a piece put in.
fn inside(text: &str, dice: &mut Dice) -> String {
    let digits: Vec<usize> =
        text.char_indices().filter(|(_, c)| c.is_ascii_digit()).map(|(at, _)| at).collect();
    if !digits.is_empty() && dice.luck(0.75) {
        let at = digits[dice.below(digits.len())];
        let mut changed = text.to_owned();
        match dice.below(3) {
            0 => changed.replace_range(at..=at, &dice.below(10).to_string()),
            1 => changed.replace_range(at..=at, ""),
            _ => changed.insert(at, char::from(b'0' + dice.below(10) as u8)),
        }
        return changed;
    }
    let places: Vec<usize> = text.char_indices().map(|(at, _)| at).chain([text.len()]).collect();
    let at = places[dice.below(places.len())];
    format!("{}{}{}", &text[..at], PIECES[dice.below(PIECES.len())], &text[at..])
}

/// Bytes with one to three changes: bytes, pieces, lines, lines of another file.
pub fn bytes(mut bytes: Vec<u8>, dice: &mut Dice) -> Vec<u8> {
    for _ in 0..=dice.below(3) {
        let at = dice.below(bytes.len() + 1);
        match dice.below(8) {
            0 if at < bytes.len() => bytes[at] = dice.below(256) as u8,
            1 if at < bytes.len() => {
                bytes.remove(at);
            }
            2 => {
                let piece = PIECES[dice.below(PIECES.len())];
                bytes.splice(at..at, piece.bytes());
            }
            3 => bytes.truncate(at),
            kind => {
                let mut lines: Vec<Vec<u8>> =
                    bytes.split(|byte| *byte == b'\n').map(<[u8]>::to_vec).collect();
                let (one, other) = (dice.below(lines.len()), dice.below(lines.len()));
                match kind {
                    4 => {
                        lines.remove(one);
                    }
                    5 => lines.insert(one, lines[other].clone()),
                    6 => {
                        let seed = &CORPUS.seeds[dice.below(CORPUS.seeds.len())].text;
                        let theirs: Vec<&str> = seed.lines().collect();
                        if !theirs.is_empty() {
                            lines.insert(one, theirs[dice.below(theirs.len())].as_bytes().to_vec());
                        }
                    }
                    _ => lines.swap(one, other),
                }
                bytes = lines.join(&b'\n');
            }
        }
    }
    bytes
}
