//! Owns what a record says twice and not alike: sides, lengths, positions, indices, the client's label.
//!
//! Source: house rules of plausibility; the rule on exchanged sides found 65 % at 10 % excess and 99.5 % at
//! 20 % in simulation.

use super::mark::tenths_of;
use super::{Affected, Confirmable, Index, LimbRecord, Mark, MarkPlace, Question, QuestionKind, Record};
use crate::anatomy::Landmark;
use crate::rules::{NumberId, Rules};

/// Mean of ln(affected / other) over the marks that both limbs share, and how many they are; none where one
/// side alone is not affected, or nothing is shared.
pub fn mean_log_excess(
    record: &Record,
    limb: &LimbRecord,
    is_skipped: impl Fn(MarkPlace) -> bool,
) -> Option<(f64, usize)> {
    let Affected::One(affected) = record.affected else { return None };
    let other = record.other_marks(limb)?;
    let sign = if affected == limb.side { 1.0 } else { -1.0 };
    let logs: Vec<f64> = limb
        .marks
        .iter()
        .filter(|mark| !is_skipped(MarkPlace::of(mark)))
        .filter_map(|mark| {
            let same = |one: &&Mark| MarkPlace::of(one).is_same(MarkPlace::of(mark));
            let other = other.iter().find(same)?;
            Some(sign * (mark.girth().cm() / other.girth().cm()).ln())
        })
        .collect();
    let count = f64::from(u32::try_from(logs.len()).unwrap_or(u32::MAX));
    (!logs.is_empty()).then(|| (logs.iter().sum::<f64>() / count, logs.len()))
}

/// Is the affected limb the thinner one? Under `limb: both` it is asked once, of the affected limb.
pub(super) fn thinner_question(
    record: &Record,
    limb: &LimbRecord,
    rules: &Rules,
    is_asked: impl Fn(MarkPlace) -> bool,
) -> Option<Question> {
    if record.is_confirmed(limb, Confirmable::Thinner)
        || (record.is_both() && !record.affected.includes(limb.side))
    {
        return None;
    }
    let (mean_log, shared) = mean_log_excess(record, limb, is_asked)?;
    (mean_log < -rules.number(NumberId::ThinnerSide))
        .then(|| of(limb, QuestionKind::Thinner { mean_log, shared }))
}

/// Is the limb that is fitted not affected?
pub(super) fn affected_question(record: &Record, limb: &LimbRecord) -> Option<Question> {
    let (fitted, affected) = (limb.side, record.affected);
    let asks = !affected.includes(fitted) && !record.is_confirmed(limb, Confirmable::Affected);
    asks.then(|| of(limb, QuestionKind::NotAffected { fitted, affected }))
}

/// Stated lengths against the positions.
pub(super) fn length_questions(record: &Record, limb: &LimbRecord, rules: &Rules) -> Vec<Question> {
    if record.is_confirmed(limb, Confirmable::Lengths) {
        return Vec::new();
    }
    let differing = limb.lengths.iter().filter_map(|(name, (stated, _))| {
        let by_positions = limb.length_by_positions(*name, record.positions_from)?;
        let apart = (stated.tenths() - by_positions.tenths()).abs();
        (apart > tenths_of(rules.number(NumberId::LengthGap)))
            .then(|| of(limb, QuestionKind::Length { name: *name, stated: *stated, by_positions }))
    });
    differing.collect()
}

/// Positions of one landmark on both limbs. Under `limb: both` it is asked once, of the record.
pub(super) fn position_question(record: &Record, limb: &LimbRecord, rules: &Rules) -> Option<Question> {
    let is_second = record.limbs.first().is_some_and(|first| first.side != limb.side);
    if is_second || record.limbs.iter().any(|one| record.is_confirmed(one, Confirmable::Positions)) {
        return None;
    }
    let other = record.other_marks(limb)?;
    let apart: Vec<_> = limb
        .marks
        .iter()
        .filter_map(|mark| {
            let landmark: Landmark = mark.landmark?;
            let other = other.iter().find(|one| one.landmark == Some(landmark))?;
            let gap = (mark.at.tenths() - other.at.tenths()).abs();
            (gap > tenths_of(rules.number(NumberId::PositionGap))).then_some((landmark, mark.at, other.at))
        })
        .collect();
    let side = (!record.is_both()).then_some(limb.side);
    if apart.is_empty() {
        return None;
    }
    Some(Question { side, of_other: false, kind: QuestionKind::Positions { apart } })
}

/// A stated index against the quotient of its pressures.
pub(super) fn arterial_question(record: &Record, limb: &LimbRecord, rules: &Rules) -> Option<Question> {
    let arterial = limb.arterial.as_ref()?;
    let Some(Index::Value(stated)) = arterial.abpi else { return None };
    let quotient = arterial.quotient()?;
    let differs = (stated - quotient).abs() > rules.number(NumberId::IndexGap) + 1e-9;
    let asks = differs && !record.is_confirmed(limb, Confirmable::Arterial);
    asks.then(|| of(limb, QuestionKind::Arterial { stated, quotient }))
}

/// Does the client's label look like a name?
pub(super) fn client_question(record: &Record) -> Option<Question> {
    let confirmed = record.limbs.iter().any(|limb| record.is_confirmed(limb, Confirmable::Client));
    let asks = looks_like_a_name(&record.client) && !confirmed;
    asks.then_some(Question { side: None, of_other: false, kind: QuestionKind::ClientLabel })
}

/// A label looks like a name when a blank or a comma stands in it, or when it is one word of letters that
/// begins with a capital and goes on small, as names do (house rule; a reference code has a digit or capitals).
pub fn looks_like_a_name(label: &str) -> bool {
    let mut letters = label.chars();
    let is_capital = letters.next().is_some_and(char::is_uppercase);
    let rest: Vec<char> = letters.collect();
    let is_word = is_capital && rest.len() >= 2 && rest.iter().all(|c| c.is_lowercase());
    label.contains(|c: char| c.is_whitespace() || c == ',') || is_word
}

fn of(limb: &LimbRecord, kind: QuestionKind) -> Question {
    Question { side: Some(limb.side), of_other: false, kind }
}
