//! Owns the reading of arterial limits and of whose assessment counts.

use super::read::{basis, text};
use super::read_item::{list, read_cleared_by};
use super::{ArterialRule, ArterialValue, ArterialWhen, AssessmentRule, Role, Severity};
use crate::input::Item;
use crate::quantity::{Dimension, PASCAL_PER_MMHG};

pub(super) fn read_arterial(item: &Item<'_>) -> Option<(ArterialRule, Option<String>)> {
    let fields = item.fields()?;
    let words: Vec<(&str, ArterialValue)> = ArterialValue::WORDS
        .into_iter()
        .filter(|(_, value)| value.is_index() || value.is_pressure())
        .collect();
    let value = fields.required("id", "which value")?.word(&words)?;
    let limit = |key| {
        fields.optional(key).and_then(|one| {
            if value.is_pressure() {
                one.quantity(Dimension::Pressure).map(|written| written.si() / PASCAL_PER_MMHG)
            } else {
                one.number()
            }
        })
    };
    let (at_least, above, at_most, below) =
        (limit("at_least"), limit("above"), limit("at_most"), limit("below"));
    if !["at_least", "above", "at_most", "below"].into_iter().any(|key| fields.has(key)) {
        item.refuse("states no limit; give `below`, `at_least`, `at_most` or `above`");
    }
    let rule = ArterialRule {
        value,
        at_least,
        above,
        at_most,
        below,
        when: match fields.optional("when") {
            Some(one) => one.word(&ArterialWhen::WORDS)?,
            None => ArterialWhen::Always,
        },
        severity: fields
            .required("severity", "stop, clear-first, caution or note")?
            .word(&Severity::WORDS)?,
        cleared_by: read_cleared_by(&fields),
        finding: text(&fields, "finding")?,
        next: text(&fields, "next")?,
        basis: basis(&fields)?,
        source: text(&fields, "source")?,
    };
    let why = fields.optional("why").and_then(|one| one.text());
    fields.finish();
    Some((rule, why))
}

pub(super) fn read_assessment(item: &Item<'_>) -> Option<(AssessmentRule, Option<String>)> {
    let fields = item.fields()?;
    let rule = AssessmentRule {
        by: list(&fields, "by", |one| one.word(&Role::WORDS)),
        cleared_by: read_cleared_by(&fields),
        basis: basis(&fields)?,
        source: text(&fields, "source")?,
    };
    let why = fields.optional("why").and_then(|one| one.text());
    fields.finish();
    Some((rule, why))
}
