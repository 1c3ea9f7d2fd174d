//! Owns what is said where parts of a record do not go together: dates, ages, an assessment that does not count.

use super::client_findings::ClientAsked;
use crate::finding::{self, Finding, Place};
use crate::rules::NumberId;
use crate::screening::{ArterialDecision, DateOf, Inconsistent, inconsistencies};
use crate::words;

fn date_name(of: DateOf) -> &'static str {
    match of {
        DateOf::Measured => "girths measured",
        DateOf::Asked => "screening asked",
        DateOf::Taken => "arterial values taken",
        DateOf::Given => "a garment given",
        DateOf::Infection => "an infection",
    }
}

/// Everything in the record that does not go together.
pub(super) fn consistency(asked: &ClientAsked<'_>) -> Vec<Finding> {
    let place = Place::limb(asked.index);
    let setting = asked.setting;
    let months = |id: NumberId| setting.number(id);
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
                found.push(finding::clinical::not_counted(place, &missing));
            }
            Inconsistent::ArterialOld { on, beyond } => {
                let against = asked.screened.arterial.as_ref().and_then(ArterialDecision::worst);
                let id = if beyond { NumberId::ArterialAgeLimit } else { NumberId::ArterialAgeCaution };
                found.push(finding::arterial_old::arterial_old(place, on, months(id), beyond, against));
            }
            Inconsistent::ArterialUndated => {
                found.push(finding::undated::undated(
                    place,
                    "The block of arterial values",
                    "they are no route",
                ));
            }
            Inconsistent::ArterialOnArm => {
                found.push(finding::other_limb_item::arterial_on_arm(place));
            }
        }
    }
    if !ahead.is_empty() {
        found.push(finding::dated_ahead::dated_ahead(place, &ahead, setting.today));
    }
    found
}
