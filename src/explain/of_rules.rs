//! Owns the entries that come from the rules: groups, items, questions about the limb, arterial values,
//! materials, and the sets of rules themselves.

use super::of_numbers::sentence;
use super::{Entry, Kind};
use crate::anatomy::Limb;
use crate::finding;
use crate::rules::{
    AllergyKind, AnsweredBy, ArterialRule, ArterialValue, ArterialWhen, ClearRule, GroupRule, ItemRule,
    Limbs, Material, ObservedRule, Rules, WeighWhen,
};
use crate::words;

pub(super) fn entries(rules: &Rules) -> Vec<Entry> {
    let mut all: Vec<Entry> = rules.groups.iter().map(|group| of_group(group, rules)).collect();
    all.extend(rules.items.iter().map(of_item));
    all.extend(rules.observed.iter().map(of_observed));
    let values = ArterialValue::WORDS.iter().filter(|(_, value)| *value != ArterialValue::Unknown);
    all.extend(values.map(|(_, value)| of_arterial(*value, rules)));
    all.extend(rules.materials.iter().filter(|one| is_material(one)).map(of_material));
    all
}

fn is_material(material: &Material) -> bool {
    material.kind == AllergyKind::Material
}

/// `arms`, `legs`, `arms and legs`.
pub(super) fn limbs(limbs: Limbs) -> &'static str {
    match limbs {
        Limbs::Only(Limb::Arm) => "arms",
        Limbs::Only(Limb::Leg) => "legs",
        Limbs::Both => "arms and legs",
    }
}

fn clearers(by: &[ClearRule]) -> String {
    let roles: Vec<String> = by.iter().copied().map(ClearRule::spoken).collect();
    words::list_or(&roles)
}

fn of_group(group: &GroupRule, rules: &Rules) -> Entry {
    let ids: Vec<&str> = rules.group(group.id).map(|item| item.id.as_str()).collect();
    let mut rule = vec![format!("Items: {}.", ids.join(", "))];
    rule.push(format!("An answer holds for {}.", group.valid.spoken()));
    if let Some(caution) = group.caution {
        rule.push(format!("Older than {} it is a caution.", caution.spoken()));
    }
    if group.per_side {
        rule.push("Where both limbs are fitted it is answered for each side.".to_owned());
    }
    if group.id.is_of_re_order() {
        rule.push("Asked only when a garment is ordered again with nothing changed.".to_owned());
    }
    Entry::new(Kind::Group, group.id.word(), format!("Asked as one question: {}", group.question))
        .rules(rule)
        .rests_on(group.basis.word(), &group.source)
}

fn of_item(item: &ItemRule) -> Entry {
    let asked = match (item.group, item.answered_by) {
        (_, AnsweredBy::Cause) => "Answered by the record's `cause`".to_owned(),
        (_, AnsweredBy::AgeBand) => "Answered by the record's `age_band`".to_owned(),
        (Some(group), AnsweredBy::Screening) => format!("Asked in the group {}", group.word()),
        (None, AnsweredBy::Screening) => "Asked by itself".to_owned(),
    };
    let mut rule = vec![format!("{asked}, of {}: {}.", limbs(item.limbs), item.condition)];
    rule.extend(item.help.clone());
    let mut weighs = vec![item.severity.word().to_owned()];
    weighs.extend(item.otherwise.iter().map(|other| {
        let limb =
            if other.limbs == Limbs::Both { String::new() } else { format!(" on {}", limbs(other.limbs)) };
        format!("{}{limb}{}", other.severity.word(), when(other.when))
    }));
    rule.push(format!("Weighs: {}. Urgency: {}.", weighs.join("; "), item.urgency.word()));
    if item.postpone {
        rule.push("Girths taken now are not used for sizing.".to_owned());
    }
    if let Some(family) = &item.family {
        rule.push(format!("One grade of the family {family}: a record names one."));
    }
    if !item.cleared_by.is_empty() {
        rule.push(format!("Cleared by: {}.", clearers(&item.cleared_by)));
    }
    Entry::new(Kind::Item, &item.id, item.finding.clone())
        .rules(rule)
        .rests_on(item.basis.word(), &item.source)
        .then(&item.next)
}

fn when(when: WeighWhen) -> &'static str {
    match when {
        WeighWhen::Always => "",
        WeighWhen::CauseKnown => " where the cause of the swelling is known",
        WeighWhen::ToeSoundNoFootWound => " where a valid toe pressure passes and the foot has no wound",
    }
}

fn of_observed(rule: &ObservedRule) -> Entry {
    Entry::new(Kind::Observed, &rule.key, rule.question.clone())
        .rules([
            format!("Asked of {}, under `observed`.", limbs(rule.limbs)),
            "It has to be answered; not answered, or unknown, is never a pass.".to_owned(),
        ])
        .rests_on(rule.basis.word(), &rule.source)
}

fn of_arterial(value: ArterialValue, rules: &Rules) -> Entry {
    let known = finding::ALL.iter().find(|entry| entry.id == value.word());
    let mut rule: Vec<String> = rules.arterial.iter().filter(|rule| rule.value == value).map(limit).collect();
    let mut basis = "beside each limit";
    let mut source = "";
    if value == ArterialValue::Clinical {
        let by: Vec<&str> = rules.assessment.by.iter().map(|role| role.word()).collect();
        rule.push(format!("Counts by: {}; dated, with what was found.", words::list_or(&by)));
        rule.push(format!("Doubtful is cleared by: {}.", clearers(&rules.assessment.cleared_by)));
        basis = rules.assessment.basis.word();
        source = &rules.assessment.source;
    }
    rule.push("Legs only, each leg by itself; every value given is judged and the worst counts. What no line covers passes. A clearing carries a cap.".to_owned());
    let mut entry =
        Entry::new(Kind::Arterial, value.word(), meaning(value)).rules(rule).rests_on(basis, source);
    entry.printed.extend(known.map(|known| known.title.to_owned()));
    entry
}

fn meaning(value: ArterialValue) -> &'static str {
    match value {
        ArterialValue::Abpi => {
            "Ankle-brachial pressure index of a leg: ankle over the higher brachial systolic pressure, as stated or worked out."
        }
        ArterialValue::AnklePressure => "Systolic pressure at the ankle, mmHg; judged beside the index.",
        ArterialValue::ToePressure => "Pressure at the great toe, mmHg.",
        ArterialValue::ToeBrachial => "Toe pressure over brachial systolic pressure, only as given.",
        ArterialValue::Tcpo2 => "Oxygen pressure measured through the skin of the foot, mmHg.",
        ArterialValue::Clinical => {
            "A clinical assessment of the leg's arteries: adequate, doubtful or inadequate; a way where no value can be had."
        }
        ArterialValue::Unknown => "Nothing is known of the arteries of the leg.",
    }
}

fn limit(rule: &ArterialRule) -> String {
    let unit = if rule.value.is_pressure() { " mmHg" } else { "" };
    let ends =
        [("from", rule.at_least), ("above", rule.above), ("up to", rule.at_most), ("below", rule.below)];
    let ends: Vec<String> = ends
        .into_iter()
        .filter_map(|(word, limit)| limit.map(|limit| format!("{word} {}{unit}", words::plain(limit))))
        .collect();
    let when = match rule.when {
        ArterialWhen::Always => "",
        ArterialWhen::DiabetesOrKidneys => ", with diabetes or kidney failure",
        ArterialWhen::NotDecidedAtToe => ", where neither toe nor oxygen pressure decides",
    };
    let by = clearers(&rule.cleared_by);
    let by = if by.is_empty() { String::new() } else { format!("; cleared by {by}") };
    format!(
        "{}{when}: {}{by} ({}, {})",
        sentence(&ends.join(" and ")).trim_end_matches('.'),
        rule.severity.word(),
        rule.basis.word(),
        rule.source
    )
}

fn of_material(material: &Material) -> Entry {
    let mut rule = vec![
        "A match with a garment's materials is a stop for that garment; materials unknown are cleared first."
            .to_owned(),
    ];
    if !material.synonyms.is_empty() {
        rule.push(format!("Also written: {}.", material.synonyms.join(", ")));
    }
    if !material.covers.is_empty() {
        rule.push(format!("An allergy to it also takes out: {}.", material.covers.join(", ")));
    }
    Entry::new(Kind::Material, &material.word, "A material that touches the skin.")
        .rules(rule)
        .typed(material.synonyms.clone())
}

/// The entry of a set of rules.
pub(super) fn of_set(rules: &Rules) -> Entry {
    let counts: Vec<String> = rules
        .counts_by_basis()
        .into_iter()
        .map(|(basis, count)| format!("{count} {}", basis.word()))
        .collect();
    let mut rule = vec![format!("{} items: {}.", rules.items.len(), words::list(&counts))];
    rule.push("An item counts for what its own line rests on; `tapeline explain ITEM` says it.".to_owned());
    rule.extend(rules.lowered.iter().map(|one| {
        format!("Milder than the default: {}, {} where it was {}: {}.", one.id, one.now, one.was, one.why)
    }));
    Entry::new(Kind::RuleSet, &rules.id, sentence(&rules.label))
        .rules(rule)
        .rests_on("beside each value", &rules.source)
}
