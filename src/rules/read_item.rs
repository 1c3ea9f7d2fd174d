//! Owns the reading of groups, items and who may clear them.

use super::read::{basis, limbs, text};
use super::{
    AnsweredBy, ClearRule, ClearWhen, FindingRule, Group, GroupRule, ItemRule, Limbs, Role, Severity,
    Urgency, Validity, WeighWhen, WeighsElse,
};
use crate::input::{Fields, Item};

pub(super) fn read_group(item: &Item<'_>) -> Option<(GroupRule, Option<String>)> {
    let fields = item.fields()?;
    let rule = GroupRule {
        id: fields.required("id", "one of the groups")?.word(&Group::WORDS)?,
        question: text(&fields, "question")?,
        per_side: fields.required("per_side", "yes or no")?.yes_no()?,
        valid: read_validity(&fields.required("valid", "how long an answer holds, as `3 months`")?)?,
        caution: fields.optional("caution").and_then(|one| read_validity(&one)),
        basis: basis(&fields)?,
        source: text(&fields, "source")?,
    };
    let why = fields.optional("why").and_then(|one| one.text());
    fields.finish();
    Some((rule, why))
}

fn read_validity(item: &Item<'_>) -> Option<Validity> {
    let text = item.text()?;
    let read = Validity::parse(&text);
    if read.is_none() {
        item.refuse(format!("`{text}` is no length of time; write `7 days` or `3 months`"));
    }
    read
}

pub(super) fn read_item(item: &Item<'_>) -> Option<(ItemRule, Option<String>)> {
    let fields = item.fields()?;
    let group = match fields.optional("group") {
        Some(group) => Some(group.word(&Group::WORDS)?),
        None => None,
    };
    let rule = ItemRule {
        id: fields.required("id", "a short name")?.label()?.to_string(),
        limbs: limbs(&fields.required("limb", "arm, leg or both")?)?,
        group,
        answered_by: match fields.optional("answered_by") {
            Some(one) => one.word(&[
                ("screening", AnsweredBy::Screening),
                ("cause", AnsweredBy::Cause),
                ("age-band", AnsweredBy::AgeBand),
            ])?,
            None => AnsweredBy::Screening,
        },
        condition: text(&fields, "condition")?,
        help: fields.optional("help").and_then(|one| one.text()),
        severity: read_severity(&fields)?,
        otherwise: list(&fields, "otherwise", read_otherwise),
        urgency: match fields.optional("urgency") {
            Some(one) => one.word(&Urgency::WORDS)?,
            None => Urgency::Routine,
        },
        postpone: fields.optional("postpone").is_some_and(|one| one.yes_no() == Some(true)),
        family: fields.optional("family").and_then(|one| one.label()).map(|one| one.to_string()),
        cleared_by: read_cleared_by(&fields),
        finding: text(&fields, "finding")?,
        next: text(&fields, "next")?,
        basis: basis(&fields)?,
        source: text(&fields, "source")?,
    };
    let why = fields.optional("why").and_then(|one| one.text());
    fields.finish();
    if group.is_none() && rule.answered_by == AnsweredBy::Screening {
        item.refuse("an item that is asked stands in a group; add `group`");
    }
    Some((rule, why))
}

fn read_severity(fields: &Fields<'_>) -> Option<Severity> {
    fields.required("severity", "stop, clear-first, caution or note")?.word(&Severity::WORDS)
}

fn read_otherwise(item: &Item<'_>) -> Option<WeighsElse> {
    let fields = item.fields()?;
    let other = WeighsElse {
        limbs: match fields.optional("limb") {
            Some(one) => limbs(&one)?,
            None => Limbs::Both,
        },
        when: match fields.optional("when") {
            Some(one) => one.word(&WeighWhen::WORDS)?,
            None => WeighWhen::Always,
        },
        severity: read_severity(&fields)?,
    };
    fields.finish();
    Some(other)
}

/// `[physician, therapist by protocol]`; absent: nobody.
pub(super) fn read_cleared_by(fields: &Fields<'_>) -> Vec<ClearRule> {
    list(fields, "cleared_by", |one| {
        let text = one.text()?;
        let read = ClearRule::parse(&text);
        if read.is_none() {
            let roles: Vec<&str> = Role::WORDS.iter().map(|(word, _)| *word).collect();
            let conditions: Vec<&str> =
                ClearWhen::WORDS.iter().map(|(word, _)| *word).filter(|word| !word.is_empty()).collect();
            one.refuse(format!(
                "`{text}` is no role with a condition; roles: {}; conditions: {}",
                roles.join(", "),
                conditions.join(", ")
            ));
        }
        read
    })
}

pub(super) fn read_finding(item: &Item<'_>) -> Option<(FindingRule, Option<String>)> {
    let fields = item.fields()?;
    let rule = FindingRule {
        finding: fields.required("finding", "the finding's id")?.label()?.to_string(),
        cleared_by: read_cleared_by(&fields),
    };
    let why = fields.optional("why").and_then(|one| one.text());
    fields.finish();
    Some((rule, why))
}

/// The values of a list that may be absent; what cannot be read has raised its problem.
pub(super) fn list<T>(
    fields: &Fields<'_>,
    key: &'static str,
    read: impl Fn(&Item<'_>) -> Option<T>,
) -> Vec<T> {
    let items = fields.optional(key).and_then(|item| item.list()).unwrap_or_default();
    items.iter().filter_map(read).collect()
}
