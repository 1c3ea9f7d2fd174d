//! Owns a re-order with nothing changed: whether an earlier record's answers may count.

use jiff::civil::Date;

use super::blocks::answer;
use super::{Answer, Case};
use crate::record::{AgeBand, Record};
use crate::rules::{Group, NumberId};

/// Why the answers of an earlier record do not count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WhyNoReOrder {
    /// No record of that day and limb is in the run.
    NoRecord,
    /// It is too old.
    TooOld,
    /// Not all its groups were answered.
    NotFull,
    /// The client is a child.
    Child,
    /// `changes` or `wear` is present, unknown or not answered.
    Changed,
    /// An infection since then.
    Infection,
    /// The swelling has grown.
    Worsening,
    /// The limb is larger, and nothing tells whether its swelling is.
    Grown,
    /// The arterial value has run out.
    ArterialOld,
}

/// A re-order as the record states it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ReOrder {
    /// The day of the record that it rests on.
    pub since: Date,
    /// Why that record's answers do not count; none = they do.
    pub why_not: Option<WhyNoReOrder>,
}

/// Whether the record of `case` rests on an earlier one, and on which.
pub(super) fn re_order<'a>(case: &Case<'a>) -> Option<(ReOrder, Option<Case<'a>>)> {
    let stated = case.limb.screening.unchanged_since.or(case.record.screening.unchanged_since);
    let (since, _) = stated?;
    match rests_on(case, since) {
        Ok(earlier) => Some((ReOrder { since, why_not: None }, Some(earlier))),
        Err(why) => Some((ReOrder { since, why_not: Some(why) }, None)),
    }
}

fn rests_on<'a>(case: &Case<'a>, since: Date) -> Result<Case<'a>, WhyNoReOrder> {
    let found = |record: &&'a Record| {
        record.measured_on == since && record.client == case.record.client && record.limb == case.record.limb
    };
    let record = case.earlier.iter().find(found).ok_or(WhyNoReOrder::NoRecord)?;
    let limb = record.limb_of(case.limb.side).ok_or(WhyNoReOrder::NoRecord)?;
    if case.record.age_band == AgeBand::Child {
        return Err(WhyNoReOrder::Child);
    }
    if since > case.today || case.rules.time(NumberId::ReOrderAge).is_over(since, case.today) {
        return Err(WhyNoReOrder::TooOld);
    }
    if case.worsening {
        return Err(WhyNoReOrder::Worsening);
    }
    if case.grown {
        return Err(WhyNoReOrder::Grown);
    }
    if case.record.infections_of(case.limb).iter().any(|day| *day >= since) {
        return Err(WhyNoReOrder::Infection);
    }
    let unchanged = case
        .rules
        .items
        .iter()
        .filter(|item| item.group.is_some_and(Group::is_of_re_order))
        .all(|item| answer(case, item).is_absent());
    if !unchanged {
        return Err(WhyNoReOrder::Changed);
    }
    let arterial = case.limb.arterial.as_ref().or(limb.arterial.as_ref());
    let limit = case.rules.time(NumberId::ArterialAgeLimit);
    if arterial.is_some_and(|one| one.taken_on.is_none_or(|on| limit.is_over(on, case.today))) {
        return Err(WhyNoReOrder::ArterialOld);
    }
    // Full on its own day.
    let then = Case { record, limb, earlier: &[], today: since, worsening: false, grown: false, ..*case };
    let full = case
        .rules
        .items
        .iter()
        .filter(|item| item.limbs.include(record.limb))
        .filter(|item| item.group.is_some_and(|group| !group.is_of_re_order()))
        .all(|item| !answer(&then, item).is_open());
    if !full {
        return Err(WhyNoReOrder::NotFull);
    }
    // Its answers count with their dates, held against today.
    Ok(Case { today: case.today, ..then })
}

/// The answer to an item, by the record itself, else by the one that it rests on.
pub(super) fn answer_with(
    case: &Case<'_>,
    earlier: Option<&Case<'_>>,
    item: &crate::rules::ItemRule,
) -> Answer {
    let own = answer(case, item);
    let Some(earlier) = earlier.filter(|_| own.is_open()) else { return own };
    // What the record itself leaves open by saying so stays open.
    if matches!(own, Answer::Open(why) if why != super::WhyOpen::NotAnswered) {
        return own;
    }
    answer(earlier, item)
}

/// The record with what a re-order carries over from the record that it rests on: what was seen (but hand
/// and foot), allergies, cause and arterial values, each where the record itself is silent. None where it
/// states no re-order, or one that does not hold.
pub fn carried_over(case: &Case<'_>) -> Option<crate::record::Record> {
    let (_, earlier) = re_order(case)?;
    let earlier = earlier?;
    let mut record = case.record.clone();
    if record.allergies == crate::record::Allergies::NotAsked {
        record.allergies = earlier.record.allergies.clone();
    }
    if record.cause.known.is_none() {
        record.cause = earlier.record.cause.clone();
    }
    let then = earlier.limb;
    for limb in record.limbs.iter_mut().filter(|limb| limb.side == then.side) {
        let seen = &mut limb.observed;
        seen.pitting = seen.pitting.or(then.observed.pitting);
        seen.folds = seen.folds.or(then.observed.folds);
        seen.distortion = seen.distortion.or(then.observed.distortion);
        seen.swelling_beyond = seen.swelling_beyond.or(then.observed.swelling_beyond);
        if limb.arterial.is_none() {
            limb.arterial.clone_from(&then.arterial);
        }
    }
    Some(record)
}
