//! Owns the block that a blank record needs: every question that applies and is open, ready to paste.

use crate::assessment::OpenRecord;
use crate::input::YesNo;
use crate::rules::{Group, ItemRule, Rules};
use crate::screening::ALLERGY_ITEM;

/// The block, as lines of YAML for the record; none once anything has been answered, since a second
/// `screening` key would be a fault. Pasted as it stands it answers nothing.
pub(super) fn template(open: &OpenRecord, rules: &Rules) -> Option<String> {
    let screened = &open.screened;
    if screened.asked || screened.open.is_empty() {
        return None;
    }
    let is_open = |id: &str| screened.open.iter().any(|one| one == id);
    let mut lines = vec![
        "# Ask each question and move its name to `yes` or `no`; what stays under `unknown` stays open."
            .to_owned(),
        "# Put these blocks in place of any of the same name.".to_owned(),
        "# Where every question of a group is no, the group may stand under `none_of` instead.".to_owned(),
        "screening:".to_owned(),
        "  asked_on:    # date, as 2026-03-14".to_owned(),
        "  by:          # who asked".to_owned(),
        "  none_of: []".to_owned(),
        "  yes: []".to_owned(),
        "  no: []".to_owned(),
    ];
    let asked: Vec<&ItemRule> =
        rules.items.iter().filter(|item| is_open(&item.id) && item.id != ALLERGY_ITEM).collect();
    let width = asked.iter().map(|item| item.id.len()).max().unwrap_or_default();
    lines.push(if asked.is_empty() { "  unknown: []".to_owned() } else { "  unknown:".to_owned() });
    let groups =
        Group::WORDS.iter().map(|(word, group)| (*word, Some(*group))).chain([("in no group", None)]);
    for (word, group) in groups {
        let own: Vec<&&ItemRule> = asked.iter().filter(|item| item.group == group).collect();
        if !own.is_empty() {
            lines.push(format!("    # {word}"));
        }
        for item in own {
            commented(&mut lines, &format!("    - {:width$}  ", item.id), &item.question);
        }
    }
    if let Some(item) = rules.item(ALLERGY_ITEM).filter(|_| is_open(ALLERGY_ITEM)) {
        let comment = format!("{} `[]` = asked, none; else as `[latex]`", item.question);
        commented(&mut lines, "allergies:  ", &comment);
    }
    let applies: Vec<_> = rules.observed.iter().filter(|rule| rule.limbs.include(open.record.limb)).collect();
    if applies.iter().any(|rule| is_open(&rule.key)) {
        lines.push("observed:  # yes, no or unknown".to_owned());
        // Only what is answered with yes or no stands here; the rest is blank.
        let answers: Vec<String> = applies
            .iter()
            .map(|rule| match open.record.observed.get(&rule.key) {
                Some(YesNo::Yes) => format!("{}: yes", rule.key),
                Some(YesNo::No) => format!("{}: no", rule.key),
                Some(YesNo::Unknown) | None => format!("{}:", rule.key),
            })
            .collect();
        let width = answers.iter().map(String::len).max().unwrap_or_default();
        for (answer, rule) in answers.iter().zip(&applies) {
            commented(&mut lines, &format!("  {answer:width$}  "), &rule.question);
        }
    }
    Some(lines.join("\n"))
}

/// Columns of the block (house rule: what a terminal shows without breaking lines).
const WIDTH: usize = 100;

/// Adds a line with a comment behind it, continued below its own beginning.
fn commented(lines: &mut Vec<String>, lead: &str, comment: &str) {
    let mut line = format!("{lead}#");
    for word in comment.split(' ') {
        if line.chars().count() + 1 + word.chars().count() > WIDTH {
            lines.push(line);
            line = format!("{}#", " ".repeat(lead.chars().count()));
        }
        line.push(' ');
        line.push_str(word);
    }
    lines.push(line);
}
