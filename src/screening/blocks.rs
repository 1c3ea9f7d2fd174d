//! Owns the answers of one record's screening blocks: groups resolved, sides told apart, dates held
//! against the time that an answer counts.

use jiff::civil::Date;

use super::{Answer, Case, WhyOpen};
use crate::input::{Named, YesNo};
use crate::record::{AgeBand, Record, Screening};
use crate::rules::{AnsweredBy, Group, ItemRule};

/// What a block states of an item.
enum Stated {
    Present,
    Absent,
    Unknown,
}

/// The answer to an item by the record of `case` alone, as of its day.
pub(super) fn answer(case: &Case<'_>, item: &ItemRule) -> Answer {
    match item.answered_by {
        AnsweredBy::Screening => {}
        AnsweredBy::Cause => return cause(case.record),
        AnsweredBy::AgeBand => {
            return match case.record.age_band {
                AgeBand::Child => Answer::Present { on: Some(case.record.measured_on), of_side: false },
                AgeBand::Adult => Answer::Absent { on: case.record.measured_on },
            };
        }
    }
    let Some(group) = item.group else { return Answer::Open(WhyOpen::NotAnswered) };
    let client = &case.record.screening;
    let side = case.is_both().then_some(&case.limb.screening);
    let on = |block: &Screening| date_of(item, group, block, client);
    let by_side = side.and_then(|block| Some((stated(case, block, item, group)?, on(block))));
    let by_client = stated(case, client, item, group).map(|stated| (stated, on(client)));
    // What stands for both without a side is unknown for each, unless the side itself names the item.
    if case.is_sided(group) {
        return match by_side {
            Some((Stated::Present, on)) => Answer::Present { on, of_side: true },
            Some((Stated::Unknown, _)) => Answer::Open(WhyOpen::Unknown),
            Some((Stated::Absent, _)) if is_left_to_a_side(case, client, item) => {
                Answer::Open(WhyOpen::NoSide)
            }
            Some((Stated::Absent, on)) => absent(case, group, on),
            None if by_client.is_some() => Answer::Open(WhyOpen::NoSide),
            None => Answer::Open(WhyOpen::NotAnswered),
        };
    }
    match (&by_side, &by_client) {
        (Some((Stated::Present, on)), _) => return Answer::Present { on: *on, of_side: true },
        (_, Some((Stated::Present, on))) => {
            let of_side = !case.is_both() && case.rules.group_rule(group).is_some_and(|rule| rule.per_side);
            return Answer::Present { on: *on, of_side };
        }
        (Some((Stated::Unknown, _)), _) | (_, Some((Stated::Unknown, _))) => {
            return Answer::Open(WhyOpen::Unknown);
        }
        _ => {}
    }
    match (by_side, by_client) {
        (Some((_, on)), _) | (None, Some((_, on))) => absent(case, group, on),
        (None, None) => Answer::Open(WhyOpen::NotAnswered),
    }
}

/// Whether the client's block names the item as there or unknown, and the side only answers its group.
fn is_left_to_a_side(case: &Case<'_>, client: &Screening, item: &ItemRule) -> bool {
    let names = |list: &[Named]| list.iter().any(|one| one.text == item.id);
    (names(&client.present) || names(&client.unknown)) && !names(&case.limb.screening.absent)
}

/// The cause counts as known when it is written who found it.
fn cause(record: &Record) -> Answer {
    match (record.cause.known, record.cause.by) {
        (Some(YesNo::Yes), Some(_)) => Answer::Absent { on: record.measured_on },
        (Some(YesNo::No), _) => Answer::Present { on: Some(record.measured_on), of_side: false },
        (Some(YesNo::Unknown), _) => Answer::Open(WhyOpen::Unknown),
        (Some(YesNo::Yes) | None, _) => Answer::Open(WhyOpen::NotAnswered),
    }
}

/// An absent answer counts with a date, from that day on, for as long as its group says.
fn absent(case: &Case<'_>, group: Group, on: Option<Date>) -> Answer {
    let Some(on) = on else { return Answer::Open(WhyOpen::Undated) };
    if on > case.today {
        return Answer::Open(WhyOpen::Ahead);
    }
    if case.rules.group_rule(group).is_none_or(|rule| rule.valid.is_over(on, case.today)) {
        return Answer::Open(WhyOpen::RunOut(on));
    }
    if case.worsening && group == Group::Cause && on < case.record.measured_on {
        return Answer::Open(WhyOpen::BeforeWorsening(on));
    }
    Answer::Absent { on }
}

/// A named item goes before its group; one grade answers its family.
fn stated(case: &Case<'_>, block: &Screening, item: &ItemRule, group: Group) -> Option<Stated> {
    let names = |list: &[Named], id: &str| list.iter().any(|one| one.text == id);
    if names(&block.present, &item.id) {
        return Some(Stated::Present);
    }
    let graded = item.family.as_ref().is_some_and(|family| {
        let others = case.rules.items.iter().filter(|one| one.id != item.id);
        others.filter(|one| one.family.as_ref() == Some(family)).any(|one| names(&block.present, &one.id))
    });
    if graded || names(&block.absent, &item.id) {
        return Some(Stated::Absent);
    }
    if names(&block.unknown, &item.id) || names(&block.unknown, group.word()) {
        return Some(Stated::Unknown);
    }
    names(&block.absent, group.word()).then_some(Stated::Absent)
}

/// The date of an answer: the item's own, its group's, its block's, the client's.
fn date_of(item: &ItemRule, group: Group, block: &Screening, client: &Screening) -> Option<Date> {
    let own = |block: &Screening, id: &str| {
        block.asked.iter().find(|(name, _)| name.text == id).map(|(_, date)| *date)
    };
    own(block, &item.id)
        .or_else(|| own(block, group.word()))
        .or_else(|| own(client, &item.id))
        .or_else(|| own(client, group.word()))
        .or(block.asked_on)
        .or(client.asked_on)
}
