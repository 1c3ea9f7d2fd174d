//! Owns the reading of questions about the limb, materials, grades and raised findings.

use super::read::{LOW_ABOVE_HIGH, basis, limbs, text};
use super::read_item::list;
use super::{
    AllergyKind, Cutoff, ExcessMeasure, Grade, Material, ObservedRule, RAISABLE, Raised, Severity,
    SeveritySet,
};
use crate::anatomy::Limb;
use crate::input::Item;
use crate::quantity::Dimension;

/// What a record can answer under `observed`.
const OBSERVED: [(&str, &str); 6] = [
    ("pitting", "pitting"),
    ("folds", "folds"),
    ("distortion", "distortion"),
    ("hand_swelling", "hand_swelling"),
    ("foot_swelling", "foot_swelling"),
    ("swelling_beyond", "swelling_beyond"),
];

pub(super) fn read_observed(item: &Item<'_>) -> Option<ObservedRule> {
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

pub(super) fn read_material(item: &Item<'_>) -> Option<Material> {
    let fields = item.fields()?;
    let small = |one: &Item<'_>| one.label().map(|text| text.to_lowercase());
    let material = Material {
        word: small(&fields.required("word", "the material's name")?)?,
        kind: fields.required("kind", "what it is")?.word(&AllergyKind::WORDS)?,
        synonyms: list(&fields, "synonyms", small),
        covers: list(&fields, "covers", small),
    };
    fields.finish();
    Some(material)
}

pub(super) fn read_raised(item: &Item<'_>) -> Option<Raised> {
    let fields = item.fields()?;
    let words: Vec<(&str, &'static str)> = RAISABLE.iter().map(|id| (*id, *id)).collect();
    let raised = Raised {
        finding: fields.required("finding", "which house rule")?.word(&words)?,
        severity: fields
            .required("severity", "caution or clear-first")?
            .word(&[("caution", Severity::Caution), ("clear-first", Severity::ClearFirst)])?,
        basis: basis(&fields)?,
        why: text(&fields, "why")?,
    };
    fields.finish();
    Some(raised)
}

pub(super) fn read_set(item: &Item<'_>) -> Option<SeveritySet> {
    let fields = item.fields()?;
    let set = SeveritySet {
        set: fields.required("set", "its name")?.label()?.to_string(),
        limbs: limbs(&fields.required("limb", "arm, leg or both")?)?,
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
        grade: fields.required("grade", "its name")?.label()?.to_string(),
        at_least: limit("at_least"),
        above: limit("above"),
        at_most: limit("at_most"),
        below: limit("below"),
        basis: basis(&fields)?,
    };
    fields.finish();
    Some(grade)
}

pub(super) fn read_cutoff(item: &Item<'_>) -> Option<Cutoff> {
    let fields = item.fields()?;
    let share = |key| Some(fields.required(key, "a share, as `6 %`")?.quantity(Dimension::Ratio)?.si());
    let cutoff = Cutoff {
        limb: fields.required("limb", "arm or leg")?.word(&[("arm", Limb::Arm), ("leg", Limb::Leg)])?,
        dominant: match fields.optional("dominant") {
            Some(one) => Some(one.yes_no()?),
            None => None,
        },
        moderate: share("moderate")?,
        severe: share("severe")?,
        basis: basis(&fields)?,
        source: text(&fields, "source")?,
    };
    fields.finish();
    if cutoff.moderate > cutoff.severe {
        item.refuse(LOW_ABOVE_HIGH);
    }
    Some(cutoff)
}
