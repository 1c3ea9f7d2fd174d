//! Owns the comparison of a rules file with the shipped default: what it makes milder, and whether it says why.

use super::{
    ArterialRule, ArterialValue, ClearRule, GroupRule, ItemRule, Lowered, LoweredWhat, Number, NumberId,
    Rules, Severity, TapeError, TapeSdRule, Validity,
};
use crate::anatomy::Limb;

/// Everything that `now` makes milder than `shipped`; `why` is still empty.
pub(super) fn milder(shipped: &Rules, now: &Rules) -> Vec<Lowered> {
    let mut all = Vec::new();
    for was in &shipped.items {
        if let Some(now) = now.item(&was.id) {
            items(was, now, &mut all);
        }
    }
    for was in &shipped.groups {
        if let Some(now) = now.group_rule(was.id) {
            all.extend(groups(was, now));
        }
    }
    for was in &shipped.findings {
        if let Some(now) = now.findings.iter().find(|one| one.finding == was.finding) {
            all.extend(roles(&was.finding, &was.cleared_by, &now.cleared_by));
        }
    }
    for (word, value) in ArterialValue::WORDS {
        let (was, is) = (lines(shipped, value), lines(now, value));
        if let Some((was, is)) = arterial(&was, &is) {
            all.push(lowered(LoweredWhat::Arterial, word, was, is));
        }
        let who = |rules: &Rules| rules.cleared_by(word).unwrap_or_default();
        all.extend(roles(word, &who(shipped), &who(now)));
    }
    all.extend(now.numbers.iter().filter_map(|number| numbers(shipped, number)));
    all.extend(now.tape_sds.iter().filter_map(|rule| tape(shipped, rule)));
    all
}

fn lowered(what: LoweredWhat, id: &str, was: String, now: String) -> Lowered {
    Lowered { what, id: id.to_owned(), was, now, why: String::new() }
}

fn items(was: &ItemRule, now: &ItemRule, all: &mut Vec<Lowered>) {
    for limb in [Limb::Arm, Limb::Leg].into_iter().filter(|limb| was.limbs.include(*limb)) {
        if !now.limbs.include(limb) {
            let said = (was.limbs.word().to_owned(), now.limbs.word().to_owned());
            all.push(lowered(LoweredWhat::Limbs, &was.id, said.0, said.1));
            break;
        }
        // What holds without a condition, and the mildest that any condition allows.
        let plain = |rule: &ItemRule| rule.weight(limb, |_| false);
        let found = [(plain(was), plain(now)), (was.mildest(limb), now.mildest(limb))]
            .into_iter()
            .find(|(was, now)| now > was);
        if let Some((before, after)) = found {
            let said = (before.word().to_owned(), after.word().to_owned());
            all.push(lowered(LoweredWhat::Severity, &was.id, said.0, said.1));
            break;
        }
    }
    if now.urgency > was.urgency {
        let said = (was.urgency.word().to_owned(), now.urgency.word().to_owned());
        all.push(lowered(LoweredWhat::Urgency, &was.id, said.0, said.1));
    }
    let stays_stop = now.severity == Severity::Stop && now.otherwise.is_empty();
    if was.severity != Severity::Stop && !stays_stop {
        all.extend(roles(&was.id, &was.cleared_by, &now.cleared_by));
    }
}

fn roles(id: &str, was: &[ClearRule], now: &[ClearRule]) -> Option<Lowered> {
    let covered = |one: &ClearRule| {
        was.iter().any(|old| old == one || (old.role == one.role && old.when == super::ClearWhen::Always))
    };
    let more: Vec<String> = now.iter().filter(|one| !covered(one)).map(|one| one.spoken()).collect();
    let list = |all: &[ClearRule]| {
        let words: Vec<String> = all.iter().map(|one| one.spoken()).collect();
        if words.is_empty() { "nobody".to_owned() } else { words.join(", ") }
    };
    (!more.is_empty()).then(|| lowered(LoweredWhat::Roles, id, list(was), list(now)))
}

/// Days of a length of time, a month as its shortest.
fn days(time: Validity) -> u32 {
    match time {
        Validity::Days(days) => u32::from(days),
        Validity::Months(months) => u32::from(months) * 28,
    }
}

fn groups(was: &GroupRule, now: &GroupRule) -> Option<Lowered> {
    let longer = days(now.valid) > days(was.valid);
    let side = was.per_side && !now.per_side;
    let said = |rule: &GroupRule| {
        let side = if rule.per_side { ", each side" } else { "" };
        format!("{}{side}", rule.valid.spoken())
    };
    (longer || side).then(|| lowered(LoweredWhat::Validity, was.id.word(), said(was), said(now)))
}

fn lines(rules: &Rules, value: ArterialValue) -> Vec<&ArterialRule> {
    rules.arterial.iter().filter(|rule| rule.value == value).collect()
}

/// The first value at which the new lines weigh less: what they said and say there.
fn arterial(was: &[&ArterialRule], now: &[&ArterialRule]) -> Option<(String, String)> {
    let mut points: Vec<f64> = was.iter().chain(now).flat_map(|rule| rule.ends()).collect();
    points.sort_by(f64::total_cmp);
    let between: Vec<f64> = points
        .windows(2)
        .filter_map(|pair| Some(pair.first()?.midpoint(*pair.get(1)?)))
        .chain(points.first().map(|first| first / 2.0))
        .chain(points.last().map(|last| last * 2.0))
        .collect();
    points.extend(between);
    points.sort_by(f64::total_cmp);
    let worst = |lines: &[&ArterialRule], at: f64| {
        lines.iter().filter(|rule| rule.holds(at)).map(|rule| rule.severity).min()
    };
    let word = |found: Option<Severity>, at: f64| format!("{} at {at}", found.map_or("pass", Severity::word));
    let weight = |found: Option<Severity>| found.map_or(4, |severity| severity as usize);
    points.into_iter().find_map(|at| {
        let (before, after) = (worst(was, at), worst(now, at));
        (weight(after) > weight(before)).then(|| (word(before, at), word(after, at)))
    })
}

fn numbers(shipped: &Rules, now: &Number) -> Option<Lowered> {
    let (low, high) = now.id.sane();
    let outside = now.value < low - 1e-9 || now.value > high + 1e-9;
    let was = shipped.numbers.iter().find(|one| one.id == now.id)?;
    let mut said = lowered(LoweredWhat::Number, now.id.id(), was.text.clone(), now.text.clone());
    said.why.clone_from(&now.why);
    outside.then_some(said)
}

/// An error of the tape whose ends lie outside the sane range of the one number.
fn tape(shipped: &Rules, rule: &TapeSdRule) -> Option<Lowered> {
    let (low, high) = NumberId::TapeSd.sane();
    let outside = rule.error.least_cm < low - 1e-9 || rule.error.most_cm > high + 1e-9;
    let was = TapeError::fixed(shipped.number(NumberId::TapeSd)).said();
    let id = format!("the tape error {}", rule.place());
    let mut said = lowered(LoweredWhat::Number, &id, was, rule.error.said());
    said.why.clone_from(&rule.why);
    outside.then_some(said)
}
