//! Owns the reading of thresholds files, with the shipped ones inside the program.

use super::number::Written;
use super::{
    ArterialRule, ArterialValue, Basis, ExcessMeasure, Grade, Group, ItemRule, Limbs, Nearness, Number,
    NumberId, ObservedRule, PlausibleBand, PlausibleRatio, RAISABLE, Raised, Rules, Severity, SeveritySet,
};
use crate::anatomy::{Landmark, Limb};
use crate::input::{Fields, Item, Problem, Reader, Source};
use crate::quantity::{Dimension, PASCAL_PER_MMHG};

/// The sets inside the program: id and table, as JSON. The first is the default and complete.
pub const SHIPPED_RULES: [(&str, &str); 2] = [
    ("default", include_str!(concat!(env!("OUT_DIR"), "/default.json"))),
    ("awmf-037-005", include_str!(concat!(env!("OUT_DIR"), "/awmf-037-005.json"))),
];

/// Reads a set of rules: `source` if given (a whole set, or one that `extends` a shipped one), else
/// the default.
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
    let source = Source { name: format!("shipped rules {id}"), text: text.to_owned() };
    read_with(Reader::shipped(source))
}

fn read_one(reader: &Reader) -> Option<Rules> {
    let fields = reader.fields("rules/1")?;
    let id = fields.required("id", "a short name, as `id: our-clinic`")?.text()?;
    let mut rules = match fields.optional("extends") {
        Some(item) => {
            let shipped: Vec<(&str, &str)> = SHIPPED_RULES.iter().map(|(id, _)| (*id, *id)).collect();
            read_shipped_rules(item.word(&shipped)?).ok()?
        }
        None => Rules {
            id: String::new(),
            label: String::new(),
            source: String::new(),
            items: Vec::new(),
            arterial: Vec::new(),
            observed: Vec::new(),
            numbers: Vec::new(),
            plausible: Vec::new(),
            ratios: Vec::new(),
            nearness: Vec::new(),
            severity_sets: Vec::new(),
            raised: Vec::new(),
        },
    };
    rules.id = id;
    rules.label = fields.required("label", "how it is printed")?.text()?;
    rules.source = fields.required("source", "where it comes from")?.text()?;
    each(&fields, "items", |one| {
        replace(&mut rules.items, read_item(one)?, |a, b| a.id == b.id);
        Some(())
    });
    let mut arterial = Vec::new();
    each(&fields, "arterial", |one| {
        arterial.push(read_arterial(one)?);
        Some(())
    });
    // The lines of one value stand together: new ones take the place of all old ones.
    rules.arterial.retain(|old| !arterial.iter().any(|new: &ArterialRule| new.value == old.value));
    rules.arterial.extend(arterial);
    each(&fields, "observed", |one| {
        replace(&mut rules.observed, read_observed(one)?, |a, b| a.key == b.key);
        Some(())
    });
    each(&fields, "numbers", |one| {
        replace(&mut rules.numbers, read_number(one)?, |a, b| a.id == b.id);
        Some(())
    });
    each(&fields, "plausible", |one| {
        replace(&mut rules.plausible, read_band(one)?, |a, b| a.landmark == b.landmark);
        Some(())
    });
    each(&fields, "ratios", |one| {
        replace(&mut rules.ratios, read_ratio(one)?, |a, b| a.of == b.of && a.to == b.to);
        Some(())
    });
    each(&fields, "nearness", |one| {
        replace(&mut rules.nearness, read_nearness(one)?, |a, b| a.limb == b.limb);
        Some(())
    });
    each(&fields, "severity_sets", |one| {
        replace(&mut rules.severity_sets, read_set(one)?, |a, b| a.set == b.set);
        Some(())
    });
    each(&fields, "raised", |one| {
        replace(&mut rules.raised, read_raised(one)?, |a, b| a.finding == b.finding);
        Some(())
    });
    // Kept for whoever follows volumes over time; read, not used here.
    let _ = fields.optional("dominance");
    fields.finish();
    let missing = |id: &&NumberId| !rules.numbers.iter().any(|number| number.id == **id);
    if let Some(first) = NumberId::ALL.iter().find(missing) {
        let what = format!(
            "numbers are missing, the first of them `{}`; start from a shipped set with `extends: default`",
            first.id()
        );
        reader.raise(fields.spot(), "numbers", what);
    }
    Some(rules)
}

const LOW_ABOVE_HIGH: &str = "`low` is above `high`; write the smaller first";

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

fn limbs(item: &Item<'_>) -> Option<Limbs> {
    item.word(&[("arm", Limbs::Only(Limb::Arm)), ("leg", Limbs::Only(Limb::Leg)), ("both", Limbs::Both)])
}

fn basis(fields: &Fields<'_>) -> Option<Basis> {
    fields.required("basis", "what it rests on, as `basis: house rule`")?.word(&Basis::WORDS)
}

fn text(fields: &Fields<'_>, key: &'static str) -> Option<String> {
    fields.required(key, "a sentence")?.text()
}

fn read_item(item: &Item<'_>) -> Option<ItemRule> {
    let fields = item.fields()?;
    let id = fields.required("id", "a short name")?.text()?;
    let limbs = limbs(&fields.required("limb", "arm, leg or both")?)?;
    let group = fields.required("group", "one of the groups, or none")?;
    let mut words: Vec<(&str, Option<Group>)> =
        Group::WORDS.iter().map(|(word, group)| (*word, Some(*group))).collect();
    words.push(("none", None));
    let group = group.word(&words)?;
    let rule = ItemRule {
        id,
        limbs,
        group,
        severity: fields.required("severity", "stop, review, care or note")?.word(&Severity::WORDS)?,
        emergency: fields.optional("emergency").is_some_and(|one| one.yes_no() == Some(true)),
        postpone: fields.optional("postpone").is_some_and(|one| one.yes_no() == Some(true)),
        cleared_by: fields
            .optional("cleared_by")
            .and_then(|one| one.names())
            .unwrap_or_default()
            .into_iter()
            .map(|one| one.text)
            .collect(),
        question: text(&fields, "question")?,
        finding: text(&fields, "finding")?,
        next: text(&fields, "next")?,
        basis: basis(&fields)?,
        source: text(&fields, "source")?,
    };
    fields.finish();
    Some(rule)
}

fn read_arterial(item: &Item<'_>) -> Option<ArterialRule> {
    let fields = item.fields()?;
    let value = fields.required("id", "which value")?.word(&ArterialValue::WORDS)?;
    let limit = |key| {
        fields.optional(key).and_then(|one| match value {
            ArterialValue::Abpi => one.number(),
            _ => one.quantity(Dimension::Pressure).map(|written| written.si() / PASCAL_PER_MMHG),
        })
    };
    let (at_least, above, below) = (limit("at_least"), limit("above"), limit("below"));
    if !["at_least", "above", "below"].into_iter().any(|key| fields.has(key)) {
        item.refuse("states no limit; give `below`, `at_least` or `above`");
    }
    let rule = ArterialRule {
        value,
        at_least,
        above,
        below,
        severity: fields.required("severity", "stop, review, care or note")?.word(&Severity::WORDS)?,
        finding: text(&fields, "finding")?,
        next: text(&fields, "next")?,
        basis: basis(&fields)?,
        source: text(&fields, "source")?,
    };
    fields.finish();
    Some(rule)
}

/// What a record can answer under `observed`.
const OBSERVED: [(&str, &str); 4] = [
    ("hand_swelling", "hand_swelling"),
    ("pitting", "pitting"),
    ("folds", "folds"),
    ("distortion", "distortion"),
];

fn read_observed(item: &Item<'_>) -> Option<ObservedRule> {
    let fields = item.fields()?;
    let rule = ObservedRule {
        key: fields.required("key", "the record's key")?.word(&OBSERVED)?.to_owned(),
        limbs: limbs(&fields.required("limb", "arm, leg or both")?)?,
        question: text(&fields, "question")?,
        basis: basis(&fields)?,
        source: text(&fields, "source")?,
    };
    fields.finish();
    Some(rule)
}

fn read_number(item: &Item<'_>) -> Option<Number> {
    let fields = item.fields()?;
    let words: Vec<(&str, NumberId)> = NumberId::ALL.iter().map(|id| (id.id(), *id)).collect();
    let id = fields.required("id", "the number's name")?.word(&words)?;
    let value = fields.required("value", "its value")?;
    let written = value.text()?;
    let number = match id.written() {
        Written::Length => value.quantity(Dimension::Length)?.si() * 100.0,
        Written::Pressure => value.quantity(Dimension::Pressure)?.si() / PASCAL_PER_MMHG,
        Written::Share => value.quantity(Dimension::Ratio)?.si(),
        Written::Plain => value.number()?,
        Written::Months => {
            let Some(Ok(months)) = written.strip_suffix("months").map(|number| number.trim().parse::<u8>())
            else {
                value.refuse(format!("`{written}` is no age; write `3 months`"));
                return None;
            };
            f64::from(months)
        }
    };
    if number < 0.0 && !id.may_be_negative() {
        value.refuse(format!("`{written}` is below zero"));
    }
    if number > 1.0 && id.is_chance() {
        value.refuse(format!("`{written}` is no chance; write it from 0 to 1, as `0.95`"));
    }
    let rule =
        Number { id, value: number, text: written, basis: basis(&fields)?, why: text(&fields, "why")? };
    fields.finish();
    Some(rule)
}

fn read_band(item: &Item<'_>) -> Option<PlausibleBand> {
    let fields = item.fields()?;
    let cm = |key| Some(fields.required(key, "a girth")?.girth()?.cm());
    let band = PlausibleBand {
        landmark: fields.required("landmark", "where")?.landmark()?,
        low_cm: cm("low")?,
        high_cm: cm("high")?,
        basis: basis(&fields)?,
        source: text(&fields, "source")?,
    };
    fields.finish();
    if band.low_cm > band.high_cm {
        item.refuse(LOW_ABOVE_HIGH);
    }
    Some(band)
}

fn read_ratio(item: &Item<'_>) -> Option<PlausibleRatio> {
    let fields = item.fields()?;
    let ratio = PlausibleRatio {
        of: fields.required("of", "the girth above the line")?.landmark()?,
        to: fields.required("to", "the girth below the line")?.landmark()?,
        low: fields.required("low", "a ratio")?.number()?,
        high: fields.required("high", "a ratio")?.number()?,
        basis: basis(&fields)?,
        source: text(&fields, "source")?,
    };
    fields.finish();
    if ratio.low > ratio.high {
        item.refuse(LOW_ABOVE_HIGH);
    }
    Some(ratio)
}

fn numbers(item: &Item<'_>) -> Option<Vec<f64>> {
    item.list()?.iter().map(Item::number).collect()
}

fn read_nearness(item: &Item<'_>) -> Option<Nearness> {
    let fields = item.fields()?;
    let limb = fields.required("limb", "arm or leg")?.word(&[("arm", Limb::Arm), ("leg", Limb::Leg)])?;
    let landmarks: Vec<Landmark> =
        fields.required("landmarks", "a list")?.list()?.iter().map(Item::landmark).collect::<Option<_>>()?;
    let mean = numbers(&fields.required("mean", "a list")?)?;
    let cov: Vec<Vec<f64>> =
        fields.required("cov", "a square")?.list()?.iter().map(numbers).collect::<Option<_>>()?;
    if mean.len() != landmarks.len()
        || cov.len() != landmarks.len()
        || cov.iter().any(|row| row.len() != landmarks.len())
    {
        item.refuse("`mean` and `cov` do not have as many rows as there are landmarks");
        return None;
    }
    let nearness =
        Nearness { limb, landmarks, mean, cov, basis: basis(&fields)?, source: text(&fields, "source")? };
    fields.finish();
    Some(nearness)
}

fn read_raised(item: &Item<'_>) -> Option<Raised> {
    let fields = item.fields()?;
    let words: Vec<(&str, &'static str)> = RAISABLE.iter().map(|id| (*id, *id)).collect();
    let raised = Raised {
        finding: fields.required("finding", "which house rule")?.word(&words)?,
        severity: fields
            .required("severity", "care or review")?
            .word(&[("care", Severity::Caution), ("review", Severity::ClearFirst)])?,
        basis: basis(&fields)?,
        why: text(&fields, "why")?,
    };
    fields.finish();
    Some(raised)
}

fn read_set(item: &Item<'_>) -> Option<SeveritySet> {
    let fields = item.fields()?;
    let set = SeveritySet {
        set: fields.required("set", "its name")?.text()?,
        of: fields.required("of", "what it grades")?.word(&[
            ("excess-percent", ExcessMeasure::Percent),
            ("excess-ml", ExcessMeasure::Millilitres),
            ("girth-difference-cm", ExcessMeasure::GirthDifference),
        ])?,
        source: text(&fields, "source")?,
        grades: fields.required("grades", "a list")?.list()?.iter().map(read_grade).collect::<Option<_>>()?,
    };
    fields.finish();
    Some(set)
}

fn read_grade(item: &Item<'_>) -> Option<Grade> {
    let fields = item.fields()?;
    let limit = |key| fields.optional(key).and_then(|one| one.number());
    let grade = Grade {
        grade: fields.required("grade", "its name")?.text()?,
        at_least: limit("at_least"),
        above: limit("above"),
        at_most: limit("at_most"),
        below: limit("below"),
        basis: basis(&fields)?,
    };
    fields.finish();
    Some(grade)
}
