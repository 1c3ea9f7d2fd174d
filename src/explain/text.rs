//! Owns the catalogue as text for a terminal and as Markdown.

use std::fmt::Write as _;

use super::{Catalogue, Entry, Kind, MEASURED_RATES, Matrix, TOPICS};
use crate::anatomy::Limb;
use crate::rules::{Group, ItemRule, Limbs, Rules};

/// Columns of a terminal page (house rule: what reads well).
const WIDTH: usize = 100;

/// One entry for the terminal.
pub fn entry_text(entry: &Entry) -> String {
    let mut out = format!("{} ({})\n", entry.id, entry.kind.word());
    wrap(&mut out, "  ", &entry.meaning);
    let lines = [("severity", &entry.severity), ("basis", &entry.basis), ("source", &entry.source)];
    for (number, rule) in entry.rule.iter().enumerate() {
        labelled(&mut out, if number == 0 { "rule" } else { "" }, rule);
    }
    for (label, text) in lines {
        labelled(&mut out, label, text);
    }
    if !entry.next.is_empty() {
        labelled(&mut out, "next", &entry.next);
    }
    out
}

/// One entry as Markdown.
pub fn entry_markdown(entry: &Entry) -> String {
    let mut out = format!("### `{}`\n\n{}\n\n", entry.id, entry.meaning);
    let rule = match entry.rule.as_slice() {
        [one] => format!("- Rule: {one}\n"),
        many => {
            let lines: Vec<String> = many.iter().map(|one| format!("  - {one}\n")).collect();
            format!("- Rule:\n{}", lines.concat())
        }
    };
    out.push_str(&rule);
    let _ =
        writeln!(out, "- Severity: {}\n- Basis: {}\n- Source: {}", entry.severity, entry.basis, entry.source);
    if !entry.next.is_empty() {
        let _ = writeln!(out, "- Next: {}", entry.next);
    }
    out
}

/// The whole catalogue as Markdown.
pub fn markdown(catalogue: &Catalogue, rules: &Rules) -> String {
    let mut out = format!(
        "# What tapeline can say\n\nRules: {}. Every figure is an estimate; a certified fitter and the treating clinician decide.\n",
        rules.label
    );
    for kind in Kind::ALL {
        let _ = write!(out, "\n## {}\n", kind.heading());
        for entry in catalogue.of_kind(kind) {
            let _ = write!(out, "\n{}", entry_markdown(entry));
        }
    }
    out
}

/// The ids, by kind.
pub fn index_text(catalogue: &Catalogue) -> String {
    let mut out = String::from("tapeline explain ID, one of:\n");
    for kind in Kind::ALL {
        let ids: Vec<&str> = catalogue.of_kind(kind).map(|entry| entry.id.as_str()).collect();
        let _ = writeln!(out, "\n{}", kind.heading());
        wrap(&mut out, "  ", &ids.join(", "));
    }
    let _ = writeln!(out, "\nLists and tables\n  {}", TOPICS.join(", "));
    out
}

/// Every screening question, by group.
pub fn screening_text(rules: &Rules) -> String {
    let mut out = format!("Screening questions: {}\n", rules.label);
    out.push_str("An open or unknown answer is never a pass. A stop cannot be cleared.\n");
    let groups = Group::WORDS.iter().map(|(word, group)| (*word, Some(*group)));
    for (word, group) in groups.chain([("answered by the record's allergies", None)]) {
        let items: Vec<&ItemRule> = rules.items.iter().filter(|item| item.group == group).collect();
        if items.is_empty() {
            continue;
        }
        let _ = writeln!(out, "\n{word}");
        for item in items {
            let _ = writeln!(out, "  {} ({}, {})", item.id, item.severity.word(), limb(item.limbs));
            wrap(&mut out, "      ", &item.question);
        }
    }
    let _ = writeln!(out, "\nanswered under observed");
    for rule in &rules.observed {
        let _ = writeln!(out, "  {} ({})", rule.key, limb(rule.limbs));
        wrap(&mut out, "      ", &rule.question);
    }
    out
}

fn limb(limbs: Limbs) -> &'static str {
    match limbs {
        Limbs::Only(Limb::Arm) => "arms",
        Limbs::Only(Limb::Leg) => "legs",
        Limbs::Both => "arms and legs",
    }
}

/// Hazards with their controls and the tests that hold them.
pub fn hazards_text(matrix: &Matrix) -> String {
    let mut tests: Vec<&String> = matrix.controls.iter().flat_map(|control| &control.tests).collect();
    tests.sort_unstable();
    tests.dedup();
    let tests = tests.len();
    let mut out = format!(
        "{} hazards, {} controls, held by {tests} tests. No conformity with any standard is claimed.\n",
        matrix.hazards.len(),
        matrix.controls.len()
    );
    out.push_str("\nHazards\n");
    for hazard in &matrix.hazards {
        let _ = writeln!(out, "  {}  {}", hazard.id, hazard.situation);
        wrap(&mut out, "         ", &format!("harm: {}", hazard.harm));
        wrap(&mut out, "         ", &format!("controls: {}", hazard.controls.join(", ")));
    }
    out.push_str("\nControls\n");
    for control in &matrix.controls {
        let _ = writeln!(out, "  {}", control.id);
        wrap(&mut out, "    ", &control.what);
        for test in &control.tests {
            let _ = writeln!(out, "      {test}");
        }
    }
    out
}

/// How often the grades of a rise are right and wrong.
pub fn alarms_text() -> String {
    let mut out = String::from(
        "How often the grades of a rise of pressure are right and wrong, simulated\n\
         tape SD 0.35 cm, relaxed SD 0.3 cm, three marks 8 cm or more apart, linear knit; in % of measurements\n\n\
         stretch at      basis fabric                      basis stretch\n\
         the reference   falls by 30 %   rises by 20 %     falls by 30 %   flat or rising\n\
         \x20               called a rise   called a rise     decided         called a fall\n",
    );
    for rate in MEASURED_RATES {
        let _ = writeln!(
            out,
            "{:>10} %  {:>14.1}  {:>14.1}  {:>16.1}  {:>15.1}",
            rate.stretch_percent,
            rate.fabric_false_alarm,
            rate.fabric_rise_found,
            rate.stretch_fall_decided,
            rate.stretch_rise_missed
        );
    }
    out.push_str(
        "\nCalled a rise: graded likely or certain. Decided, or called a fall: graded none or possible, no pair\nleft undecided; of the flat and the rising garment the worse.\n\
         Wanted at 35 %: fewer than 2, more than 95, at least 90, fewer than 1 (house rule).\n",
    );
    out
}

fn labelled(out: &mut String, label: &str, text: &str) {
    let mut body = String::new();
    wrap(&mut body, "            ", text);
    let _ = write!(out, "  {label:<8}  {}", body.trim_start());
}

/// Adds `text`, wrapped, each line after `indent`.
fn wrap(out: &mut String, indent: &str, text: &str) {
    let mut line = String::new();
    for word in text.split_whitespace() {
        if !line.is_empty() && indent.len() + line.chars().count() + 1 + word.chars().count() > WIDTH {
            let _ = writeln!(out, "{indent}{line}");
            line.clear();
        }
        if !line.is_empty() {
            line.push(' ');
        }
        line.push_str(word);
    }
    let _ = writeln!(out, "{indent}{line}");
}
