//! Owns which findings the screening brings: items, arterial values, open questions, ages, clearings that do not count.

use super::Setting;
use super::clearings::{Clearings, decided};
use crate::anatomy::Limb;
use crate::finding::{self, Finding, FindingId, Place, Who, roles};
use crate::rules::{ArterialValue, ClearRule, Group, NumberId, Role, Severity, Urgency};
use crate::screening::{
    Age, ArterialDecision, ArterialFigure, Case, Clearing, DateOf, Inconsistent, JudgedValue, Present,
    Screened, WhyNoReOrder, WhyVain, allergy_words, finding_clearing, inconsistencies,
};
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
    let entry_like = if rule.id == "child" { Some(&finding::child::ENTRY) } else { None };
    let mut one = Finding::of(entry_like.unwrap_or(&finding::not_answered::ENTRY), present.severity, place)
        .say(rule.finding.clone())
        .next(rule.next.clone(), &who)
        .basis(rule.basis, rule.source.clone())
        .urgency(present.urgency)
        .decided(decided(&present.clearing));
    one.id = FindingId::Item(rule.id.clone());
    one.title = capital(&rule.id.replace('-', " "));
    Some(one)
}

fn who_of_stop(urgency: Urgency, list: &[Who]) -> Vec<Who> {
    match urgency {
        Urgency::Emergency => vec![Who::Client, Who::Role(Role::Physician)],
        _ if list.is_empty() => vec![Who::Role(Role::Physician)],
        _ => list.to_vec(),
    }
}

fn may_clear(list: &[ClearRule]) -> Vec<Who> {
    let mut all: Vec<Role> = list.iter().map(|one| one.role).collect();
    all.dedup();
    roles(&all)
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// `ABPI 0.65 (2026-03-10)`.
pub fn value_words(value: &JudgedValue, age: Option<Age>) -> String {
    let name = match value.value {
        ArterialValue::Abpi => "Ankle-brachial pressure index",
        ArterialValue::AnklePressure => "Ankle systolic pressure",
        ArterialValue::ToePressure => "Toe pressure",
        ArterialValue::ToeBrachial => "Toe-brachial index",
        ArterialValue::Tcpo2 => "Oxygen pressure of the skin",
        ArterialValue::Clinical => "Clinical vascular assessment",
        ArterialValue::Unknown => "Arteries",
    };
    let figure = match value.figure {
        ArterialFigure::Index(index) => words::trimmed(index, 3),
        ArterialFigure::Quotient(index) => {
            format!("{} (ankle over brachial pressure)", words::trimmed(index, 3))
        }
        ArterialFigure::NotCompressible => "not compressible".to_owned(),
        ArterialFigure::Mmhg(mmhg) => format!("{} mmHg", words::trimmed(mmhg, 1)),
        ArterialFigure::Assessed(clinical) => clinical.word().to_owned(),
    };
    let on = age.and_then(Age::date).map_or_else(|| "undated".to_owned(), words::date_short);
    format!("{name} {figure}, {on}")
}

fn arteries(asked: &ClientAsked<'_>) -> Vec<Finding> {
    let Some(decision) = &asked.screened.arterial else { return Vec::new() };
    let place = Place::limb(asked.index);
    let mut found: Vec<Finding> =
        decision.values.iter().filter_map(|value| arterial_value(asked, decision, value, place)).collect();
    // One value judged twice (index and quotient) is one finding: the worse.
    found.sort_by_key(|one| one.severity);
    let mut seen: Vec<String> = Vec::new();
    found.retain(|one| {
        let new = !seen.iter().any(|id| id == one.id.text());
        seen.push(one.id.text().to_owned());
        new
    });
    if let Some(severity) = decision.unknown(asked.held, &asked.setting.rules) {
        found.push(unknown(asked, decision, severity, place));
    }
    found
}

fn arterial_value(
    asked: &ClientAsked<'_>,
    decision: &ArterialDecision,
    value: &JudgedValue,
    place: Place,
) -> Option<Finding> {
    let severity = value.severity?;
    let rules = &asked.setting.rules;
    let rule = value.rule.and_then(|at| rules.arterial.get(at));
    let said = value_words(value, decision.age);
    let (why, next, basis) = if let Some(rule) = rule {
        (rule.finding.clone(), rule.next.clone(), Some((rule.basis, rule.source.clone())))
    } else if severity == Severity::Stop {
        let next = "No fitting; opinion of the vascular team first.";
        ("The blood supply was judged inadequate".to_owned(), next.to_owned(), None)
    } else {
        let next = "The vascular team gives its opinion and writes a cap.";
        ("The blood supply was judged doubtful".to_owned(), next.to_owned(), None)
    };
    let entry = match value.value {
        ArterialValue::Abpi => &finding::abpi::ENTRY,
        ArterialValue::AnklePressure => &finding::ankle_pressure::ENTRY,
        ArterialValue::ToePressure => &finding::toe_pressure::ENTRY,
        ArterialValue::ToeBrachial => &finding::toe_brachial::ENTRY,
        ArterialValue::Tcpo2 => &finding::tcpo2::ENTRY,
        ArterialValue::Clinical => &finding::clinical::ENTRY,
        ArterialValue::Unknown => &finding::arterial_unknown::ENTRY,
    };
    let list = rules.cleared_by(value.value.word()).map(|list| may_clear(&list)).unwrap_or_default();
    let who = match severity {
        Severity::Stop => vec![Who::Role(Role::Vascular)],
        Severity::Note => Vec::new(),
        _ if list.is_empty() => vec![Who::Role(Role::Vascular)],
        _ => list,
    };
    let urgency = if severity == Severity::Stop { decision.stop_urgency } else { Urgency::Routine };
    let why = why.trim_end_matches('.');
    let one = Finding::of(entry, severity, place)
        .say(format!("{said}. {why}."))
        .next(next, &who)
        .urgency(urgency)
        .decided(decided(&value.clearing));
    Some(match basis {
        Some((basis, source)) => one.basis(basis, source),
        None => one,
    })
}

fn unknown(
    asked: &ClientAsked<'_>,
    decision: &ArterialDecision,
    severity: Severity,
    place: Place,
) -> Finding {
    let limit = asked.setting.number(NumberId::NoValueLimit);
    let given = !decision.values.is_empty();
    let lead = if given {
        "The arterial values given are no route to a garment"
    } else {
        "No arterial value and no assessment of this leg is recorded"
    };
    let why = match (severity, asked.held) {
        (Severity::Caution, Some(held)) => format!("{lead}; up to {} are in question", words::mmhg(held)),
        (_, Some(held)) if held > limit => format!("{lead}, and up to {} are in question", words::mmhg(held)),
        (_, None) => format!("{lead}, and the pressure in question has no known upper end"),
        _ => format!("{lead}, and an item of circulation, diabetes or kidney failure is present or open"),
    };
    let next =
        "Take an ankle-brachial index or a toe pressure, or have the arteries assessed, and write it down.";
    Finding::of(&finding::arterial_unknown::ENTRY, severity, place).say(format!("{why}.")).next(
        next,
        &[
            Who::Role(Role::Therapist),
            Who::Role(Role::Podiatry),
            Who::Role(Role::Physician),
            Who::Role(Role::Vascular),
        ],
    )
}

fn date_name(of: DateOf) -> &'static str {
    match of {
        DateOf::Measured => "girths measured",
        DateOf::Asked => "screening asked",
        DateOf::Taken => "arterial values taken",
        DateOf::Given => "a garment given",
        DateOf::Infection => "an infection",
    }
}

fn consistency(asked: &ClientAsked<'_>) -> Vec<Finding> {
    let place = Place::limb(asked.index);
    let setting = asked.setting;
    let months = |id| setting.number(id);
    let mut ahead = Vec::new();
    let mut found = Vec::new();
    for one in inconsistencies(&asked.case) {
        match one {
            // Asked by the record's own questions.
            Inconsistent::NotAffected { .. } | Inconsistent::IndexApart { .. } => {}
            Inconsistent::Ahead { of, on } => {
                ahead.push(format!("{} on {}", date_name(of), words::date_short(on)));
            }
            Inconsistent::GirthsOld { on, beyond } => {
                let id = if beyond { NumberId::GirthAgeLimit } else { NumberId::GirthAgeCaution };
                if asked.index == 0 {
                    found.push(finding::girths_old::girths_old(Place::CLIENT, on, months(id), beyond));
                }
            }
            Inconsistent::SoonAfterInfection { on } => {
                found.push(finding::infection_recent::infection_recent(place, on));
            }
            Inconsistent::AssessmentNotCounted { role, date, found: seen } => {
                let mut missing = Vec::new();
                if role {
                    missing.push("a role that may assess");
                }
                if date {
                    missing.push("a date");
                }
                if seen {
                    missing.push("what was found");
                }
                let text = format!(
                    "The clinical vascular assessment does not count: it lacks {}.",
                    words::list(&missing)
                );
                found.push(
                    Finding::of(&finding::clinical::ENTRY, Severity::Caution, place)
                        .say(text)
                        .next("Write down what is missing.", &[Who::Recorder]),
                );
            }
            Inconsistent::ArterialOld { on, beyond } => {
                let (months, so) = if beyond {
                    (months(NumberId::ArterialAgeLimit), "they pass no more")
                } else {
                    (months(NumberId::ArterialAgeCaution), "they may no longer hold")
                };
                let text = format!(
                    "The arterial values are of {}, more than {} months old: {so}.",
                    words::date_short(on),
                    words::whole(months)
                );
                found.push(
                    Finding::of(&finding::arterial_old::ENTRY, Severity::Caution, place)
                        .say(text)
                        .next("Take them again.", &[Who::Role(Role::Therapist), Who::Role(Role::Vascular)]),
                );
            }
            Inconsistent::ArterialUndated => {
                found.push(finding::undated::undated(
                    place,
                    "The block of arterial values",
                    "they are no route",
                ));
            }
            Inconsistent::ArterialOnArm => {
                let text = "Arterial values are recorded for an arm; they are not used.";
                found.push(Finding::of(&finding::other_limb_item::ENTRY, Severity::Note, place).say(text));
            }
        }
    }
    if !ahead.is_empty() {
        found.push(finding::dated_ahead::dated_ahead(place, &ahead, setting.today));
    }
    found
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
    ))
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

/// Clearings that do not count, and items of the other limb.
fn not_counted(asked: &ClientAsked<'_>) -> Vec<Finding> {
    let place = Place::limb(asked.index);
    let mut found = Vec::new();
    let vain = |clearing: &Clearing| match clearing {
        Clearing::Vain(all) => all.clone(),
        _ => Vec::new(),
    };
    let of_items = asked.screened.present.iter().flat_map(|one| vain(&one.clearing));
    let values =
        asked.screened.arterial.iter().flat_map(|one| &one.values).flat_map(|one| vain(&one.clearing));
    for (entry, why) in of_items.chain(values) {
        found.push(finding::clearing_not_counted::clearing_not_counted(
            place,
            &question_name(&entry.item.text),
            &why_words(&why),
            Severity::Caution,
        ));
    }
    for (entry, why) in &asked.screened.not_there {
        found.push(finding::clearing_not_counted::clearing_not_counted(
            place,
            &question_name(&entry.item.text),
            &why_words(why),
            Severity::Note,
        ));
    }
    if !asked.screened.of_other_limb.is_empty() && asked.index == 0 {
        let names: Vec<String> = asked.screened.of_other_limb.iter().map(|id| question_name(id)).collect();
        found.push(finding::other_limb_item::other_limb_item(Place::CLIENT, &names));
    }
    found
}

/// Clearings of findings (not of items or arterial values) that do not count, once all findings of the limb
/// are there.
pub(super) fn vain_clearings(case: Case<'_>, index: usize, findings: &[Finding]) -> Vec<Finding> {
    let place = Place::limb(index);
    let mut found = Vec::new();
    let mut told: Vec<&str> = Vec::new();
    let own = |id: &str| {
        let here = |one: &&Finding| one.place.limb.is_none_or(|limb| limb == index);
        findings.iter().filter(here).filter(|one| one.id.text() == id).collect::<Vec<_>>()
    };
    let sided = case.limb.cleared.iter().map(|entry| (entry, true));
    let client = case.record.cleared.iter().map(|entry| (entry, !case.record.is_both()));
    for (entry, names_side) in client.chain(sided) {
        let id = entry.item.text.as_str();
        if !case.rules.findings.iter().any(|one| one.finding == id) || told.contains(&id) {
            continue;
        }
        told.push(id);
        let waiting: Vec<&Finding> =
            own(id).into_iter().filter(|one| one.severity == Severity::ClearFirst).collect();
        // Without a side it may be about the other limb: the last one says whether it is on neither.
        let is_last = index + 1 == case.record.limbs.len();
        let anywhere =
            || findings.iter().any(|one| one.id.text() == id && one.severity == Severity::ClearFirst);
        if waiting.is_empty() && (names_side || (is_last && !anywhere())) {
            found.push(finding::clearing_not_counted::clearing_not_counted(
                place,
                &question_name(id),
                &why_words(&WhyVain::NotThere),
                Severity::Note,
            ));
        }
        if let (false, Clearing::Vain(all)) = (waiting.is_empty(), finding_clearing(&case, id)) {
            found.extend(all.iter().map(|(_, why)| {
                let words = why_words(why);
                finding::clearing_not_counted::clearing_not_counted(
                    place,
                    &question_name(id),
                    &words,
                    Severity::Caution,
                )
            }));
        }
    }
    found
}

/// Why a clearing does not count, as a clause.
pub(super) fn why_words(why: &WhyVain) -> String {
    match why {
        WhyVain::Nobody => "nobody can clear it; a value or an assessment is needed".to_owned(),
        WhyVain::Role(may) => {
            let names: Vec<String> = may.iter().map(|one| one.spoken()).collect();
            format!("that role may not clear it; {} may", words::list_or(&names))
        }
        WhyVain::Condition(when) => format!("that role may clear it only {}", when.words()),
        WhyVain::Ahead => "it is dated after today".to_owned(),
        WhyVain::BeforeAnswer(on) => format!("it is dated before the answer of {}", words::date_short(*on)),
        WhyVain::RunOut(last) => format!("it ran out on {}", words::date_short(*last)),
        WhyVain::NoCap => "it states no highest pressure".to_owned(),
        WhyVain::CapAboveProtocol(cap) => {
            format!("its {} are more than a protocol allows", words::mmhg(*cap))
        }
        WhyVain::NoReferral => "it names no day of referral".to_owned(),
        WhyVain::NoSide => "it names no side where both limbs are fitted".to_owned(),
        WhyVain::Stop => "a stop ends only with a changed answer".to_owned(),
        WhyVain::NotThere => "nothing of that name stands".to_owned(),
    }
}
