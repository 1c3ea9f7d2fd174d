//! What has to hold of every report and every problem, whatever came in.

use serde_json::Value;
use tapeline::assessment::Assessment;
use tapeline::document::Sheet;
use tapeline::input::Problem;
use tapeline::render::{Language, Paper, html, sheet};
use tapeline::report::Report;

use super::shape;
use crate::contradictions::{LAWS, Seen};
use crate::random::Dice;

/// Laws about the decision over sizes; a report about one garment has none.
const OF_SIZES: [&str; 2] = ["headline", "fall"];

/// A word that is broken wherever it stands.
const LONG: &str = "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx";

/// Whether the client's own reference holds what is told to stand on the client's page.
fn is_named(report: &Report, what: &str) -> bool {
    what.split('`').nth(1).is_some_and(|word| report.record.client.contains(word))
}

/// Every law on one report.
pub fn of_report(report: &Report, of_one_garment: bool, dice: &mut Dice, wrong: &mut Vec<String>) {
    let seen = Seen::of_report(report);
    for (name, law) in LAWS {
        if of_one_garment && OF_SIZES.contains(&name) {
            continue;
        }
        let mut own = Vec::new();
        law(&seen, &mut own);
        // A client, a size or a material that bears the name of a figure, or one that no line is long enough for.
        own.retain(|what| {
            !(what.contains(LONG) || what.contains("for the client under") && is_named(report, what))
        });
        wrong.extend(own.into_iter().map(|what| format!("{name}: {what}")));
    }
    shape::check(&seen.report, wrong);
    if dice.luck(0.2) {
        same_again(report, &seen.report, wrong);
    }
    for text in [&seen.fitter, &seen.client, &seen.terminal] {
        if let Some(c) = text.chars().find(|c| obeyed(*c)) {
            wrong.push(format!("obeyed: U+{:04X} is printed", u32::from(c)));
        }
    }
    if dice.luck(0.2) {
        let language = if dice.luck(0.5) { Language::German } else { Language::English };
        let words = squeezed(&of_page(&sheet(report, language), wrong));
        for one in &report.findings {
            if !words.contains(&squeezed(&one.message)) {
                wrong.push(format!("finding: the sheet lacks {}: {}", one.id, one.message));
            }
        }
    }
}

/// The text is what the value is: parsed again, it is the same.
fn same_again(report: &Report, value: &Value, wrong: &mut Vec<String>) {
    let text = tapeline::render::json(report).unwrap();
    match serde_json::from_str::<Value>(&text) {
        Ok(again) if same(value, &again) => {}
        Ok(_) => wrong.push("json: not the same when read again".to_owned()),
        Err(fault) => wrong.push(format!("json: {fault}")),
    }
}

/// The page for a browser: each tag that opens closes, nothing of the input is a tag. Its words.
pub fn of_page(pages: &Sheet, wrong: &mut Vec<String>) -> String {
    const EMPTY: [&str; 12] =
        ["meta", "br", "hr", "img", "link", "input", "path", "line", "rect", "circle", "col", "!doctype"];
    let page = html(pages, Paper::A4);
    let page = page.split("<style").next().unwrap_or_default().to_owned()
        + page.split_once("</style>").map_or("", |(_, rest)| rest);
    let mut open: Vec<&str> = Vec::new();
    let mut words = String::new();
    for piece in page.split('<').skip(1) {
        let Some((tag, text)) = piece.split_once('>') else {
            wrong.push(format!("html: a tag without end: {}", piece.chars().take(40).collect::<String>()));
            return words;
        };
        words.push_str(text);
        let name = tag.split([' ', '/', '\n']).find(|part| !part.is_empty()).unwrap_or_default();
        if tag.starts_with('/') {
            if open.pop() != Some(name) {
                wrong.push(format!("html: </{name}> closes nothing"));
                return words;
            }
        } else if !tag.ends_with('/') && !EMPTY.contains(&name.to_lowercase().as_str()) {
            open.push(name);
        }
    }
    if !open.is_empty() {
        wrong.push(format!("html: not closed: {open:?}"));
    }
    if let Some(c) = page.chars().find(|c| obeyed(*c) && !matches!(c, '\n')) {
        wrong.push(format!("html: U+{:04X} is printed", u32::from(c)));
    }
    words
        .replace("&quot;", "\"")
        .replace("&#39;", "'")
        .replace("&lt;", "<")
        .replace("&gt;", ">")
        .replace("&amp;", "&")
}

/// No figure of a check is without value.
pub fn finite(found: &Assessment, wrong: &mut Vec<String>) {
    let all = format!("{found:?}");
    for bad in ["NaN", "inf"] {
        for (at, _) in all.match_indices(bad) {
            let before = all[..at].chars().next_back().unwrap_or(' ');
            let after = all[at + bad.len()..].chars().next().unwrap_or(' ');
            if matches!(before, ' ' | '(' | '[' | '-') && matches!(after, ',' | ')' | ']' | ' ' | '}') {
                let from =
                    (0..=at.saturating_sub(80)).rev().find(|at| all.is_char_boundary(*at)).unwrap_or(0);
                // A text in the input may hold the word.
                if all[from..at].contains("= ") || !all[from..at].contains('"') {
                    wrong.push(format!("finite: {}", &all[from..at + bad.len()]));
                    return;
                }
            }
        }
    }
}

/// What is told of a file that is refused.
pub fn of_problems(problems: &[Problem], files: &[(String, Vec<u8>)], wrong: &mut Vec<String>) {
    if problems.is_empty() {
        wrong.push("problems: refused without a word".to_owned());
    }
    for problem in problems {
        let said = problem.to_string();
        if said.chars().any(|c| obeyed(c) && c != '\n') {
            wrong.push(format!("problems: obeyed: {said:?}"));
        }
        let inner = ["Some(", "serde", "src/", "NaN`", "Err(", "{:?}"];
        if inner.iter().any(|word| said.contains(word) && !holds(files, word)) {
            wrong.push(format!("problems: inner words: {said}"));
        }
        if said.len() > 6_000 {
            wrong.push(format!("problems: {} bytes", said.len()));
        }
        let own = files.iter().find(|(name, _)| problem.file.ends_with(name.as_str()));
        if let (Some(place), Some((_, bytes))) = (&problem.place, own) {
            let lines = bytes.split(|byte| *byte == b'\n').count();
            if place.line < 1 || place.column < 1 || place.line > lines + 1 {
                wrong.push(format!("problems: line {} of {lines}: {said}", place.line));
            }
        }
    }
}

fn holds(files: &[(String, Vec<u8>)], word: &str) -> bool {
    files.iter().any(|(name, bytes)| name.contains(word) || String::from_utf8_lossy(bytes).contains(word))
}

/// What a terminal obeys, or what turns the direction of writing.
pub fn obeyed(c: char) -> bool {
    c.is_control() || matches!(c, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// Letters and figures alone: frames and line breaks stand between the words of a page.
fn squeezed(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).collect()
}

/// Whether two values are the same but for the last bit of a number.
fn same(one: &Value, other: &Value) -> bool {
    match (one, other) {
        (Value::Number(one), Value::Number(other)) => {
            let (one, other) = (one.as_f64().unwrap_or(0.0), other.as_f64().unwrap_or(0.0));
            (one - other).abs() <= 1e-12 * one.abs()
        }
        (Value::Array(one), Value::Array(other)) => {
            one.len() == other.len() && one.iter().zip(other).all(|(one, other)| same(one, other))
        }
        (Value::Object(one), Value::Object(other)) => {
            one.len() == other.len()
                && one.iter().zip(other).all(|((a, one), (b, other))| a == b && same(one, other))
        }
        _ => one == other,
    }
}
