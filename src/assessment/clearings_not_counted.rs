//! Owns what is said of clearings that do not count.

use super::client_findings::{ClientAsked, question_name};
use crate::finding::{self, Finding, Place, Who};
use crate::record::{ClearDecision, Cleared};
use crate::rules::{Role, Severity};
use crate::screening::{Case, Clearing, WhyVain, finding_clearing};
use crate::words;

/// Clearings that do not count, and items of the other limb.
pub(super) fn not_counted(asked: &ClientAsked<'_>) -> Vec<Finding> {
    let place = Place::limb(asked.index);
    let mut found = Vec::new();
    let of_items = asked.screened.present.iter().map(|one| &one.clearing);
    let values = asked.screened.arterial.iter().flat_map(|one| &one.values).map(|one| &one.clearing);
    for clearing in of_items.chain(values) {
        found.extend(said(place, clearing));
    }
    for (entry, why) in &asked.screened.not_there {
        found.push(finding::clearing_not_counted::clearing_not_counted(
            place,
            &format!("clearing of {}", question_name(&entry.item.text)),
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
                &format!("clearing of {}", question_name(id)),
                &why_words(&WhyVain::NotThere),
                Severity::Note,
            ));
        }
        if !waiting.is_empty() {
            found.extend(said(place, &finding_clearing(&case, id)));
        }
    }
    found
}

/// The entries of one matter that do not count; a note where another one counts.
fn said(place: Place, clearing: &Clearing) -> Vec<Finding> {
    let weight = if clearing.is_cleared() { Severity::Note } else { Severity::Caution };
    let one = |(entry, why): &(Cleared, WhyVain)| {
        let what = match entry.decision {
            ClearDecision::Cleared => "clearing",
            ClearDecision::Refused => "refusal",
        };
        finding::clearing_not_counted::clearing_not_counted(
            place,
            &format!("{what} of {} by {}", question_name(&entry.item.text), spoken_role(entry.role)),
            &why_words(why),
            weight,
        )
    };
    clearing.vain().iter().map(one).collect()
}

fn spoken_role(role: Role) -> &'static str {
    Who::Role(role).spoken()
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
        WhyVain::ProtocolNotNamed => {
            "that role may clear it only by a protocol, and `by` does not name it".to_owned()
        }
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
