//! Owns which findings the screening brings: items, open questions, ages of answers, allergies.

use super::Setting;
use super::arterial_findings::arteries;
use super::clearings::{Clearings, decided};
use super::clearings_not_counted::not_counted;
use super::consistency_findings::consistency;
use crate::anatomy::Limb;
use crate::finding::{self, Finding, Place, Who, roles};
use crate::rules::{ClearRule, Group, ItemRule, Role, Severity, Urgency, WeighWhen};
use crate::screening::{Case, Present, Screened, Unanswered, WhyNoReOrder, WhyOpen, allergy_words};
use crate::words;

/// A limb's screening with all that it is said with.
pub(super) struct ClientAsked<'a> {
    /// The limb on that day.
    pub case: Case<'a>,
    /// Its screening, settled.
    pub screened: &'a Screened,
    /// The limb's place in the report.
    pub index: usize,
    /// The highest pressure in question, mmHg; none = unknown or open.
    pub held: Option<f64>,
    /// Under what the check is made.
    pub setting: &'a Setting,
}

/// Everything that the screening of a limb brings. What is the client's stands with the first limb only.
pub(super) fn of_client(asked: &ClientAsked<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    let first = asked.index == 0;
    for present in &asked.screened.present {
        let place = place_of(asked, present.side.is_some());
        if present.side.is_none() && !first {
            continue;
        }
        found.extend(item(asked, present, place));
    }
    if asked.case.record.limb == Limb::Leg {
        found.extend(arteries(asked));
    }
    found.extend(consistency(asked));
    found.extend(open_questions(asked));
    found.extend(stale(asked));
    found.extend(re_order(asked));
    found.extend(allergies(asked).into_iter().filter(|_| first));
    found.extend(not_counted(asked));
    found
}

/// The place of something about a limb (only where there are two), or about the client.
fn place_of(asked: &ClientAsked<'_>, sided: bool) -> Place {
    if sided || !asked.case.record.is_both() { Place::limb(asked.index) } else { Place::CLIENT }
}

fn item(asked: &ClientAsked<'_>, present: &Present, place: Place) -> Option<Finding> {
    let rules = &asked.setting.rules;
    let rule = rules.item(&present.item)?;
    let list = may_clear(&rule.cleared_by);
    let who = match present.severity {
        Severity::Stop => who_of_stop(present.urgency, &list),
        Severity::Note => Vec::new(),
        _ if list.is_empty() => vec![Who::Role(Role::Therapist)],
        _ => list,
    };
    let one = Finding::of_item(&rule.id, present.severity, place)
        .say(format!("{}{}", rule.finding, why_stop(asked, present, rule)))
        .next(rule.next.clone(), &who)
        .basis(rule.basis, rule.source.clone())
        .urgency(present.urgency)
        .decided(decided(&present.clearing));
    Some(one)
}

/// Which condition makes a stop of what could be cleared otherwise.
fn why_stop(asked: &ClientAsked<'_>, present: &Present, rule: &ItemRule) -> &'static str {
    let toe = rule.otherwise.iter().any(|one| one.when == WeighWhen::ToeSoundNoFootWound);
    if !toe || present.severity != Severity::Stop {
        ""
    } else if asked.screened.present("foot-wound").is_some() {
        " The wound on the foot makes it a stop."
    } else if asked.screened.is_open("foot-wound") {
        " It is a stop while it is not answered whether there is a wound on the foot."
    } else {
        ""
    }
}

fn who_of_stop(urgency: Urgency, list: &[Who]) -> Vec<Who> {
    match urgency {
        Urgency::Emergency => vec![Who::Client, Who::Role(Role::Physician)],
        _ if list.is_empty() => vec![Who::Role(Role::Physician)],
        _ => list.to_vec(),
    }
}

/// The roles that may clear it.
pub(super) fn may_clear(list: &[ClearRule]) -> Vec<Who> {
    let mut all: Vec<Role> = list.iter().map(|one| one.role).collect();
    all.dedup();
    roles(&all)
}

/// The words of a question's id: `suspected-clot` → `suspected clot`.
pub fn question_name(id: &str) -> String {
    id.replace(['-', '_'], " ")
}

fn open_questions(asked: &ClientAsked<'_>) -> Option<Finding> {
    let open = &asked.screened.unanswered;
    if open.is_empty() {
        return None;
    }
    let mut names: Vec<String> = Vec::new();
    let mut groups: Vec<Group> = Vec::new();
    for one in open {
        let Some(group) = one.group else {
            names.push(question_name(&one.id));
            continue;
        };
        if groups.contains(&group) {
            continue;
        }
        let own = asked
            .setting
            .rules
            .group(group)
            .filter(|item| item.limbs.include(asked.case.record.limb))
            .count();
        let count = open.iter().filter(|other| other.group == Some(group)).count();
        if count > 1 && count == own {
            groups.push(group);
            names.push(format!("the whole group {}", question_name(group.word())));
        } else {
            names.push(question_name(&one.id));
        }
    }
    Some(finding::not_answered::not_answered(
        Place::limb(asked.index),
        open.len(),
        asked.screened.asked,
        &names,
        &why_open(open),
    ))
}

/// Of the open questions that have an answer, why it does not count.
fn why_open(open: &[Unanswered]) -> Vec<String> {
    let ahead = |one: &Unanswered| one.why == WhyOpen::Ahead;
    let undated = |one: &Unanswered| one.why == WhyOpen::Undated;
    let no_side = |one: &Unanswered| one.why == WhyOpen::NoSide;
    let count = |holds: &dyn Fn(&Unanswered) -> bool| open.iter().filter(|one| holds(one)).count();
    let are = |many: usize| words::counted(many, "of them was", "of them were");
    let mut all = Vec::new();
    let run_out: Vec<_> = open
        .iter()
        .filter_map(|one| match one.why {
            WhyOpen::RunOut(on) => Some(on),
            _ => None,
        })
        .collect();
    if let Some(oldest) = run_out.iter().min() {
        let since = if run_out.iter().all(|on| on == oldest) { "on" } else { "since" };
        all.push(format!(
            "{} answered too long ago, {since} {}: asked again",
            words::capital(&are(run_out.len())),
            words::date_short(*oldest)
        ));
    }
    if count(&undated) > 0 {
        all.push(format!("{} answered without a date", words::capital(&are(count(&undated)))));
    }
    if count(&ahead) > 0 {
        all.push(format!("{} answered with a date after today", words::capital(&are(count(&ahead)))));
    }
    if count(&no_side) > 0 {
        all.push(format!(
            "{} answered without a side; write each side's own",
            words::capital(&are(count(&no_side)))
        ));
    }
    let grown = open.iter().filter(|one| matches!(one.why, WhyOpen::BeforeWorsening(_))).count();
    if grown > 0 {
        all.push(format!("{} answered before the swelling grew", words::capital(&are(grown))));
    }
    all
}

fn stale(asked: &ClientAsked<'_>) -> Option<Finding> {
    let rules = &asked.setting.rules;
    let groups: Vec<String> = asked
        .screened
        .stale
        .iter()
        .map(|one| format!("{} ({})", question_name(one.group.word()), words::date_short(one.on)))
        .collect();
    let first = asked.screened.stale.first()?;
    let months = match rules.group_rule(first.group).and_then(|rule| rule.caution) {
        Some(crate::rules::Validity::Months(months)) => f64::from(months),
        Some(crate::rules::Validity::Days(days)) => f64::from(days) / 30.0,
        None => return None,
    };
    Some(finding::screening_old::screening_old(Place::limb(asked.index), &groups, months))
}

/// Why the answers of an earlier record do not count.
fn re_order(asked: &ClientAsked<'_>) -> Option<Finding> {
    let stated = asked.screened.re_order?;
    let why = match stated.why_not? {
        WhyNoReOrder::NoRecord => "no record of that day and limb is in this run",
        WhyNoReOrder::TooOld => "they are too old",
        WhyNoReOrder::NotFull => "not every question was answered then",
        WhyNoReOrder::Child => "a child is asked everything anew",
        WhyNoReOrder::Changed => "something has changed, or it is not answered whether",
        WhyNoReOrder::Infection => "there was an infection since",
        WhyNoReOrder::Worsening => "the swelling has grown since",
        WhyNoReOrder::Grown => {
            "the limb is larger than measuring explains, and the other one was not measured at both visits"
        }
        WhyNoReOrder::ArterialOld => "the arterial values have run out",
    };
    let place = Place::limb(asked.index);
    Some(finding::re_order_not_held::re_order_not_held(place, stated.since, why))
}

fn allergies(asked: &ClientAsked<'_>) -> Vec<Finding> {
    let found = allergy_words(&asked.case.record.allergies, &asked.setting.rules);
    let mut all = Vec::new();
    let names = |list: &[crate::input::Named]| list.iter().map(|one| one.text.clone()).collect::<Vec<_>>();
    if !found.unknown.is_empty() {
        let one = finding::allergy_unknown::allergy_unknown(Place::CLIENT, &names(&found.unknown));
        all.push(Clearings { case: asked.case }.decide(one));
    }
    if !found.other_things.is_empty() {
        all.push(finding::allergy_note::allergy_note(Place::CLIENT, &names(&found.other_things)));
    }
    all
}
