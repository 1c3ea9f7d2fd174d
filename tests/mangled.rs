//! Files of the demo with random damage: whatever comes in, problems or a report come out, and never a panic.

use std::path::Path;

use tapeline::assessment::{Setting, assess, open_files};
use tapeline::garment::Schemes;
use tapeline::input::Source;
use tapeline::report::build;

use crate::chance::Chance;
use crate::made;
use crate::source::root;

/// What a keyboard, a spreadsheet or a broken disk leaves where something stood.
const LEFT: [&str; 24] = [
    "",
    "0",
    "-1",
    "9999999999",
    "1e9",
    ".nan",
    "16,9",
    "16.9 cm",
    "169 mm",
    "200000 in",
    "yes",
    "unknown",
    "[]",
    "{}",
    "[1, 2]",
    "{a: 1}",
    "left",
    "2026-02-30",
    "2031-01-01",
    "1901-01-01",
    "wrist",
    "ankle",
    "é\u{202e}",
    "~",
];

fn damaged(text: &str, chance: &mut Chance) -> String {
    let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
    for _ in 0..=chance.below(3) {
        if lines.len() < 3 {
            break;
        }
        let (at, other) = (chance.below(lines.len()), chance.below(lines.len()));
        match chance.below(6) {
            0 => {
                lines.remove(at);
            }
            1 => lines.swap(at, other),
            2 => {
                let line = lines[other].clone();
                lines.insert(at, line);
            }
            3 => lines.truncate(at.max(2)),
            _ => {
                // One word of the line becomes another one.
                let words: Vec<&str> = lines[at].split(' ').collect();
                let place = chance.below(words.len());
                let left = LEFT[chance.below(LEFT.len())];
                let tail = words[place].trim_start_matches(|c: char| !matches!(c, ',' | '}' | ']'));
                let new: Vec<String> = words
                    .iter()
                    .enumerate()
                    .map(
                        |(number, word)| {
                            if number == place { format!("{left}{tail}") } else { (*word).to_owned() }
                        },
                    )
                    .collect();
                lines[at] = new.join(" ");
            }
        }
    }
    lines.join("\n")
}

fn source(folder: &Path, name: &str, text: &str) -> Option<Source> {
    Source::from_bytes(folder.join(name).display().to_string(), text.as_bytes().to_vec()).ok()
}

#[test]
fn damaged_files_are_told_or_read() {
    let rounds: usize =
        std::env::var("TAPELINE_ROUNDS").ok().and_then(|text| text.parse().ok()).unwrap_or(250);
    let folder = root().join("demo");
    let setting =
        Setting { today: made::day("2026-03-14"), rules: made::rules(), schemes: Schemes::default() };
    let runs: [&[&str]; 9] = [
        &["first-visit.yaml", "sleeve-chart-b.yaml"],
        &["leg.yaml", "stocking-chart-b.yaml"],
        &["both-legs.yaml", "stocking-chart-a.yaml"],
        &["hand-swelling.yaml", "sleeve-chart-b.yaml", "hand-piece-chart-a.yaml"],
        &["with-readings.yaml", "sleeve-one.yaml"],
        &["first-visit.yaml", "sleeve-chart-d.yaml"],
        &["followed/visit-7.yaml", "followed/history.csv"],
        &["followed/visit-6.yaml", "followed/visit-7.yaml", "sleeve-chart-b.yaml"],
        &["leg.yaml", "calf-wrap.yaml"],
    ];
    let texts: Vec<Vec<(String, String)>> = runs
        .iter()
        .map(|files| {
            files
                .iter()
                .map(|file| ((*file).to_owned(), std::fs::read_to_string(folder.join(file)).unwrap()))
                .collect()
        })
        .collect();
    let mut chance = Chance::of(17);
    let (mut read, mut refused) = (0, 0);
    for round in 0..rounds {
        let files = &texts[round % texts.len()];
        let hurt = chance.below(files.len());
        let sources: Vec<Source> = files
            .iter()
            .enumerate()
            .filter_map(|(at, (name, text))| {
                let text = if at == hurt { damaged(text, &mut chance) } else { text.clone() };
                source(&folder, name, &text)
            })
            .collect();
        match open_files(sources, &setting) {
            Ok(opened) => {
                read += 1;
                // Down to the JSON: a record alone, or none at all, is a report or nothing.
                let report = assess(&opened, &setting).map(|found| build(&found));
                assert!(report.is_none_or(|report| serde_json::to_string(&report).is_ok()));
            }
            Err(problems) => {
                refused += 1;
                assert!(!problems.is_empty());
                for problem in problems {
                    let said = problem.to_string();
                    let inner = ["Some(", "serde", "src/", "NaN`"];
                    assert!(!inner.iter().any(|word| said.contains(word)), "{said}");
                }
            }
        }
    }
    assert!(read > rounds / 10 && refused > rounds / 10, "{read} read, {refused} refused");
}
