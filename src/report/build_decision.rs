//! Owns the decision's block.

use super::{ActBlock, DecisionBlock, SubjectBlock};
use crate::assessment::{Assessment, Subject};
use crate::rules::{NumberId, Urgency};

/// The decision's block.
pub(super) fn decision(found: &Assessment) -> DecisionBlock {
    let decision = &found.decision;
    let record = &found.record;
    let limb_name = |limb: usize| {
        record
            .limbs
            .get(limb)
            .map_or_else(String::new, |one| format!("{} {}", one.side.name(), record.limb.name()))
    };
    let subject = match decision.subject {
        Subject::Client { limb: None } => {
            SubjectBlock { kind: "client", limb: None, chart: None, name: "the client".to_owned() }
        }
        Subject::Client { limb: Some(limb) } => {
            SubjectBlock { kind: "client", limb: Some(limb), chart: None, name: limb_name(limb) }
        }
        Subject::Chart { limb, chart } => SubjectBlock {
            kind: "chart",
            limb: Some(limb),
            chart: Some(chart),
            name: found
                .limbs
                .get(limb)
                .and_then(|one| one.charts.get(chart))
                .map_or_else(String::new, |one| one.printed.clone()),
        },
        Subject::Garment => {
            let name = found.garments.first().map_or_else(String::new, |one| one.printed.clone());
            SubjectBlock { kind: "garment", limb: None, chart: None, name }
        }
    };
    // The client's pages print the day of every matter that is due soon, not only of the one that decided.
    let soon = decision.urgency == Urgency::Soon
        || found.findings.iter().any(|one| one.urgency == Urgency::Soon && !one.is_cleared());
    let by = found.setting.rules.time(NumberId::SoonDays).last_day(found.setting.today);
    DecisionBlock {
        outcome: decision.outcome,
        also: decision.also.clone(),
        urgency: decision.urgency,
        subject,
        reason: decision.reason.clone(),
        next: decision.next.clone(),
        who: decision.who.clone(),
        acts: decision
            .acts
            .iter()
            .map(|act| ActBlock { who: act.who.clone(), urgency: act.urgency })
            .collect(),
        by: by.filter(|_| soon).map(|date| date.to_string()),
        findings: decision.findings.clone(),
    }
}
