//! Owns the questions of the screening, a group at a time with all its items on screen, and of what is
//! not borne.

use tapeline::anatomy::Limb;
use tapeline::input::Draft;
use tapeline::rules::{AllergyKind, AnsweredBy, Group, ItemRule, Rules};

use super::answer;
use super::step::Step;

/// The prefixes of what belongs to a side.
pub(super) fn sides(both: bool) -> &'static [(&'static str, &'static str)] {
    if both { &[("left.", "Left: "), ("right.", "Right: ")] } else { &[("", "")] }
}

/// The items of a group that are asked on a limb.
fn items(rules: &Rules, limb: Limb, group: Group) -> Vec<&ItemRule> {
    let asked = |one: &&ItemRule| {
        one.group == Some(group) && one.limbs.include(limb) && one.answered_by == AnsweredBy::Screening
    };
    rules.items.iter().filter(asked).collect()
}

const ANSWERS: [&str; 3] = ["absent", "present", "unknown"];

/// Whether a group is answered under a prefix.
fn is_answered(draft: &Draft, prefix: &str, words: &[String]) -> bool {
    ANSWERS
        .iter()
        .any(|list| draft.list(&format!("{prefix}screening.{list}")).iter().any(|one| words.contains(one)))
}

/// Takes every answer of a group out.
fn open_group(draft: &mut Draft, prefix: &str, words: &[String]) {
    for list in ANSWERS {
        let path = format!("{prefix}screening.{list}");
        let mut kept = draft.list(&path);
        let before = kept.len();
        kept.retain(|one| !words.contains(one));
        if kept.is_empty() {
            draft.remove(&path);
        } else if kept.len() != before {
            draft.set_list(&path, &kept);
        }
    }
}

fn add(draft: &mut Draft, path: &str, new: impl IntoIterator<Item = String>) {
    let mut all = draft.list(path);
    all.extend(new);
    if !all.is_empty() {
        draft.set_list(path, &all);
    }
}

/// The words of a group: its own and its items'.
fn words_of(group: Group, items: &[&ItemRule]) -> Vec<String> {
    std::iter::once(group.word().to_owned()).chain(items.iter().map(|one| one.id.clone())).collect()
}

/// One question for each group, all of its items on screen.
pub(super) fn screening<'s>(draft: &Draft, limb: Limb, both: bool, rules: &'s Rules) -> Vec<Step<'s>> {
    let mut steps = Vec::new();
    for group in &rules.groups {
        if group.id.is_of_re_order() {
            continue;
        }
        let asked = items(rules, limb, group.id);
        if asked.is_empty() {
            continue;
        }
        let prefixes: &[(&str, &str)] = if group.per_side { sides(both) } else { &[("", "")] };
        for (prefix, side) in prefixes {
            let words = words_of(group.id, &asked);
            let lines = asked.iter().enumerate().map(|(at, one)| format!("  {} {}", at + 1, one.condition));
            let above = std::iter::once(format!("{side}{}", group.question)).chain(lines);
            let helps: Vec<String> = asked
                .iter()
                .enumerate()
                .filter_map(|(at, one)| Some(format!("  {} {}", at + 1, one.help.as_ref()?)))
                .collect();
            let help = if helps.is_empty() {
                "0 when none of them is there; the numbers of those that are, as 1 3; u where it is not known.".to_owned()
            } else {
                helps.join("\n")
            };
            let done = is_answered(draft, prefix, &words);
            let ids: Vec<String> = asked.iter().map(|one| one.id.clone()).collect();
            let prefix_owned = (*prefix).to_owned();
            let word = group.id.word();
            steps.push(
                Step::new(
                    draft,
                    format!("{prefix}screening:{word}"),
                    "0 none · numbers of those present · u not known · ? what is meant:",
                    move |text, draft| {
                        let mut words = vec![word.to_owned()];
                        words.extend(ids.iter().cloned());
                        open_group(draft, &prefix_owned, &words);
                        answer_group(draft, &prefix_owned, word, &ids, text)
                    },
                )
                .above(above)
                .help(help)
                .or_skip()
                .done_if(done),
            );
        }
    }
    steps
}

fn answer_group(
    draft: &mut Draft,
    prefix: &str,
    group: &str,
    ids: &[String],
    text: &str,
) -> Result<(), String> {
    let path = |list: &str| format!("{prefix}screening.{list}");
    match text.trim().to_lowercase().as_str() {
        "0" | "none" | "no" => add(draft, &path("absent"), [group.to_owned()]),
        "u" | "unknown" => add(draft, &path("unknown"), [group.to_owned()]),
        text => {
            let (mut present, mut unknown) = (Vec::new(), Vec::new());
            for part in text.split([' ', ',']).filter(|part| !part.is_empty()) {
                let (list, number) = match part.strip_prefix('u') {
                    Some(number) => (&mut unknown, number),
                    None => (&mut present, part),
                };
                list.extend(answer::picks(number, ids.len())?);
            }
            let named = |picks: &[usize]| -> Vec<String> {
                picks.iter().filter_map(|pick| ids.get(pick.checked_sub(1)?)).cloned().collect()
            };
            let (present, unknown) = (named(&present), named(&unknown));
            let rest: Vec<String> =
                ids.iter().filter(|id| !present.contains(id) && !unknown.contains(id)).cloned().collect();
            add(draft, &path("absent"), rest);
            add(draft, &path("present"), present);
            add(draft, &path("unknown"), unknown);
        }
    }
    if !draft.has("screening.asked_on") {
        let day = draft.text("measured_on").unwrap_or_default();
        draft.set("screening.asked_on", day.get(..10).unwrap_or(&day));
        if let Some(by) = draft.text("measured_by") {
            draft.set("screening.by", &by);
        }
    }
    Ok(())
}

/// Takes the answer of a question out again; whether the name was one of ours.
pub(super) fn open_again(draft: &mut Draft, name: &str, rules: &Rules) -> bool {
    let Some((before, word)) = name.split_once("screening:") else { return false };
    let (Some(group), Some((limb, _))) = (Group::parse(word), super::record::limb_of(draft)) else {
        return false;
    };
    let words = words_of(group, &items(rules, limb, group));
    open_group(draft, before, &words);
    true
}

/// Materials that are not borne, from the table of the rules.
pub(super) fn allergies<'s>(draft: &Draft, rules: &'s Rules) -> Step<'s> {
    let known: Vec<&str> = rules
        .materials
        .iter()
        .filter(|one| one.kind == AllergyKind::Material)
        .map(|one| one.word.as_str())
        .collect();
    let lines = known.chunks(6).enumerate().map(|(row, words)| {
        let words: Vec<String> =
            words.iter().enumerate().map(|(at, word)| format!("{} {word}", row * 6 + at + 1)).collect();
        format!("  {}", words.join(" · "))
    });
    let lines: Vec<String> = lines.collect();
    Step::new(draft, "allergies", "Allergies: 0 none · numbers or words of those there are:", move |text, draft| {
        if matches!(text.trim().to_lowercase().as_str(), "0" | "none" | "no") {
            draft.set("allergies", "none");
            return Ok(());
        }
        let words = text
            .split(',')
            .flat_map(|part| if part.chars().any(char::is_alphabetic) { vec![part] } else { part.split(' ').collect() })
            .map(str::trim)
            .filter(|part| !part.is_empty())
            .map(|part| match part.parse::<usize>() {
                Ok(number) => number
                    .checked_sub(1)
                    .and_then(|at| known.get(at))
                    .map(|word| (*word).to_owned())
                    .ok_or_else(|| format!("`{part}` is no number from 1 to {}.", known.len())),
                Err(_) => answer::label(part),
            })
            .collect::<Result<Vec<_>, _>>()?;
        draft.set_list("allergies", &words);
        Ok(())
    })
    .above(lines)
    .help("What the skin does not bear in a garment. Enter passes over where it was not asked; that is no `none`.")
    .or_skip()
}
