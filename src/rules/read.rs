//! Owns the reading of rules files, with the shipped ones inside the program.

use super::compare::milder;
use super::read_arterial::{read_arterial, read_assessment};
use super::read_item::{read_finding, read_group, read_item};
use super::read_number::read_number;
use super::read_plausible::{read_band, read_nearness, read_ratio};
use super::read_tables::{read_cutoff, read_material, read_observed, read_raised, read_set};
use super::read_tape_sd::read_tape_sd;
use super::{ArterialRule, AssessmentRule, Basis, Group, Limbs, Lowered, NumberId, Rules, TapeSdRule};
use crate::anatomy::Limb;
use crate::input::{Fields, Item, Problem, Reader, Source, Spot};

/// The sets inside the program: id and table, as JSON. The first is the default and complete.
pub const SHIPPED_RULES: [(&str, &str); 2] = [
    ("default", include_str!(concat!(env!("OUT_DIR"), "/default.json"))),
    ("awmf-037-005", include_str!(concat!(env!("OUT_DIR"), "/awmf-037-005.json"))),
];

/// Reads a set of rules: `source` if given (it `extends` a shipped one), else the default.
///
/// # Errors
/// Every problem of the file.
pub fn read_rules(source: Option<Source>) -> Result<Rules, Vec<Problem>> {
    match source {
        Some(source) => read_with(Reader::new(source)),
        None => read_shipped_rules("default"),
    }
}

fn read_with(reader: Result<Reader, Problem>) -> Result<Rules, Vec<Problem>> {
    let reader = reader.map_err(|problem| vec![problem])?;
    let rules = read_one(&reader);
    let problems = reader.problems();
    match rules {
        Some(rules) if problems.is_empty() => Ok(rules),
        _ => Err(problems),
    }
}

/// Reads a set inside the program by its id; an id that is not there gives the problems of an empty file.
///
/// # Errors
/// Every problem of the set; a test keeps the shipped ones free of them.
pub fn read_shipped_rules(id: &str) -> Result<Rules, Vec<Problem>> {
    let text = SHIPPED_RULES.iter().find(|(name, _)| *name == id).map_or("", |(_, text)| *text);
    let source = Source::of_text(format!("shipped rules {id}"), text);
    read_with(Reader::shipped(source))
}

/// Where a file states something, and the reason it gives, for what becomes milder.
struct Stated {
    id: String,
    spot: Spot,
    why: Option<String>,
}

fn read_one(reader: &Reader) -> Option<Rules> {
    let fields = reader.fields("rules/1")?;
    let id = fields.required("id", "a short name, as `id: our-clinic`")?.label()?.to_string();
    let base = match fields.optional("extends") {
        Some(item) => {
            let shipped: Vec<(&str, &str)> = SHIPPED_RULES.iter().map(|(id, _)| (*id, *id)).collect();
            Some(read_shipped_rules(item.word(&shipped)?).ok()?)
        }
        None => None,
    };
    let extends = base.is_some();
    let mut rules = base.unwrap_or_else(empty);
    rules.id = id;
    rules.label = fields.required("label", "how it is printed")?.label()?.to_string();
    rules.source = fields.required("source", "where it comes from")?.text()?;
    let (mut stated, mut stated_tape) = (Vec::new(), Vec::new());
    read_screening(&fields, &mut rules, &mut stated);
    each(&fields, "numbers", |one| {
        replace(&mut rules.numbers, read_number(one)?, |a, b| a.id == b.id);
        Some(())
    });
    each(&fields, "tape_sd", |one| {
        let same = |a: &TapeSdRule, b: &TapeSdRule| a.landmark == b.landmark && a.limbs == b.limbs;
        let rule = read_tape_sd(one)?;
        if stated_tape.iter().any(|old| same(old, &rule)) {
            one.refuse(format!("`{}` is stated twice; keep one", rule.id()));
        }
        stated_tape.push(rule.clone());
        replace(&mut rules.tape_sds, rule, same);
        Some(())
    });
    read_bands(&fields, &mut rules);
    fields.finish();
    if extends {
        hold_against_default(reader, &mut rules, &stated);
    } else {
        check_whole(reader, &fields, &rules);
    }
    Some(rules)
}

fn empty() -> Rules {
    Rules {
        id: String::new(),
        label: String::new(),
        source: String::new(),
        groups: Vec::new(),
        items: Vec::new(),
        findings: Vec::new(),
        arterial: Vec::new(),
        assessment: AssessmentRule {
            by: Vec::new(),
            cleared_by: Vec::new(),
            basis: Basis::HouseRule,
            source: String::new(),
        },
        observed: Vec::new(),
        materials: Vec::new(),
        numbers: Vec::new(),
        tape_sds: Vec::new(),
        plausible: Vec::new(),
        ratios: Vec::new(),
        nearness: Vec::new(),
        severity_sets: Vec::new(),
        cutoffs: Vec::new(),
        raised: Vec::new(),
        lowered: Vec::new(),
    }
}

fn read_screening(fields: &Fields<'_>, rules: &mut Rules, stated: &mut Vec<Stated>) {
    each(fields, "groups", |one| {
        let (group, why) = read_group(one)?;
        stated.push(state(one, group.id.word(), why));
        replace(&mut rules.groups, group, |a, b| a.id == b.id);
        Some(())
    });
    each(fields, "items", |one| {
        let (item, why) = read_item(one)?;
        stated.push(state(one, &item.id, why));
        replace(&mut rules.items, item, |a, b| a.id == b.id);
        Some(())
    });
    each(fields, "findings", |one| {
        let (finding, why) = read_finding(one)?;
        stated.push(state(one, &finding.finding, why));
        replace(&mut rules.findings, finding, |a, b| a.finding == b.finding);
        Some(())
    });
    let mut arterial = Vec::new();
    each(fields, "arterial", |one| {
        let (line, why) = read_arterial(one)?;
        stated.push(state(one, line.value.word(), why));
        arterial.push(line);
        Some(())
    });
    // The lines of one value stand together: new ones take the place of all old ones.
    rules.arterial.retain(|old| !arterial.iter().any(|new: &ArterialRule| new.value == old.value));
    rules.arterial.extend(arterial);
    if let Some(item) = fields.optional("assessment")
        && let Some((assessment, why)) = read_assessment(&item)
    {
        stated.push(state(&item, "clinical", why));
        rules.assessment = assessment;
    }
    each(fields, "observed", |one| {
        replace(&mut rules.observed, read_observed(one)?, |a, b| a.key == b.key);
        Some(())
    });
    each(fields, "materials", |one| {
        replace(&mut rules.materials, read_material(one)?, |a, b| a.word == b.word);
        Some(())
    });
}

fn read_bands(fields: &Fields<'_>, rules: &mut Rules) {
    each(fields, "plausible", |one| {
        replace(&mut rules.plausible, read_band(one)?, |a, b| a.landmark == b.landmark);
        Some(())
    });
    each(fields, "ratios", |one| {
        replace(&mut rules.ratios, read_ratio(one)?, |a, b| a.of == b.of && a.to == b.to);
        Some(())
    });
    each(fields, "nearness", |one| {
        replace(&mut rules.nearness, read_nearness(one)?, |a, b| a.limb == b.limb);
        Some(())
    });
    each(fields, "severity_sets", |one| {
        replace(&mut rules.severity_sets, read_set(one)?, |a, b| a.set == b.set);
        Some(())
    });
    each(fields, "cutoffs", |one| {
        replace(&mut rules.cutoffs, read_cutoff(one)?, |a, b| a.limb == b.limb && a.dominant == b.dominant);
        Some(())
    });
    each(fields, "raised", |one| {
        replace(&mut rules.raised, read_raised(one)?, |a, b| a.finding == b.finding);
        Some(())
    });
}

/// Where something stands in the file, with the reason it gives.
fn state(item: &Item<'_>, id: &str, why: Option<String>) -> Stated {
    Stated { id: id.to_owned(), spot: item.spot(), why }
}

/// What is milder than the default needs a reason, and is kept for the top of every report.
fn hold_against_default(reader: &Reader, rules: &mut Rules, stated: &[Stated]) {
    let Ok(shipped) = read_shipped_rules("default") else { return };
    let mut lowered: Vec<Lowered> = milder(&shipped, rules);
    let before = std::mem::take(&mut rules.lowered);
    for one in &mut lowered {
        let here = stated.iter().filter(|stated| stated.id == one.id);
        let why = here.clone().find_map(|stated| stated.why.clone());
        if let Some(why) = why {
            one.why = why;
        } else if one.why.is_empty() {
            if let Some(old) = before.iter().find(|old| old.what == one.what && old.id == one.id) {
                one.why.clone_from(&old.why);
            } else if let Some(stated) = here.clone().next() {
                reader.raise(
                    stated.spot,
                    one.id.as_str(),
                    format!(
                        "is milder than the shipped rule (`{}`, now `{}`); add the reason, as `why: \"agreed on 2026-01-10\"`",
                        one.was, one.now
                    ),
                );
            }
        }
    }
    rules.lowered = lowered;
}

/// A set that extends nothing has to hold everything.
fn check_whole(reader: &Reader, fields: &Fields<'_>, rules: &Rules) {
    let number = NumberId::ALL.iter().find(|id| !rules.numbers.iter().any(|number| number.id == **id));
    let group = Group::WORDS.iter().find(|(_, group)| rules.group_rule(*group).is_none());
    let first = number.map(|id| id.id()).or(group.map(|(word, _)| *word)).or_else(|| {
        let empty = rules.items.is_empty() || rules.arterial.is_empty() || rules.observed.is_empty();
        empty.then_some("items, arterial, observed")
    });
    if let Some(first) = first {
        let what = format!(
            "is no whole set: `{first}` is missing; start from a shipped set with `extends: default`"
        );
        reader.raise(fields.spot(), "", what);
    }
    // The default itself is the only whole set; any other is held against it.
    if rules.id != "default" && first.is_none() {
        reader.raise(
            fields.spot(),
            "",
            "extends no shipped set; start with `extends: default` and name only what differs",
        );
    }
}

pub(super) const LOW_ABOVE_HIGH: &str = "`low` is above `high`; write the smaller first";

fn each(fields: &Fields<'_>, key: &'static str, mut take: impl FnMut(&Item<'_>) -> Option<()>) {
    for one in fields.optional(key).and_then(|item| item.list()).unwrap_or_default() {
        let _ = take(&one);
    }
}

fn replace<T>(list: &mut Vec<T>, new: T, same: impl Fn(&T, &T) -> bool) {
    match list.iter_mut().find(|old| same(old, &new)) {
        Some(old) => *old = new,
        None => list.push(new),
    }
}

pub(super) fn limbs(item: &Item<'_>) -> Option<Limbs> {
    item.word(&[("arm", Limbs::Only(Limb::Arm)), ("leg", Limbs::Only(Limb::Leg)), ("both", Limbs::Both)])
}

pub(super) fn basis(fields: &Fields<'_>) -> Option<Basis> {
    fields.required("basis", "what it rests on, as `basis: house rule`")?.word(&Basis::WORDS)
}

pub(super) fn text(fields: &Fields<'_>, key: &'static str) -> Option<String> {
    fields.required(key, "a sentence")?.text()
}
