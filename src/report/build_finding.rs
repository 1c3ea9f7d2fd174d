//! Owns a finding's row.

use super::{DecidedBy, FindingRow};
use crate::assessment::Assessment;
use crate::finding::{ClearedBy, Decided, Finding, Place, Who};

/// A finding's row.
pub(super) fn finding(found: &Assessment, one: &Finding) -> FindingRow {
    let decided_by = match &one.decided {
        Decided::No => None,
        Decided::Cleared(by) | Decided::Refused(by) => Some(decided(by)),
    };
    FindingRow {
        id: one.id.text().to_owned(),
        severity: one.severity,
        urgency: one.urgency,
        place: place(found, one.place),
        limb: one.place.limb,
        chart: one.place.chart,
        size: one.place.size,
        landmark: one.place.landmark,
        title: one.title.clone(),
        message: one.message.clone(),
        next: one.next.clone(),
        who: one.who.clone(),
        basis: one.basis,
        source: one.source.clone(),
        cleared: one.is_cleared(),
        refused: matches!(one.decided, Decided::Refused(_)),
        decided_by,
        confirm: one.question.clone(),
        open: one.is_open,
    }
}

fn decided(by: &ClearedBy) -> DecidedBy {
    DecidedBy {
        role: Who::Role(by.role),
        reason: by.reason.clone(),
        on: by.on.to_string(),
        until: by.until.map(|date| date.to_string()),
        protocol: by.protocol.clone(),
    }
}

/// What it is about: a chart by its printed label, a limb, the client.
fn place(found: &Assessment, place: Place) -> String {
    let limb = place.limb.and_then(|limb| found.limbs.get(limb));
    if let (Some(limb), Some(chart)) = (limb, place.chart) {
        return limb.charts.get(chart).map_or_else(String::new, |one| one.printed.clone());
    }
    if place.garment {
        return found.garments.first().map_or_else(String::new, |one| one.printed.clone());
    }
    limb.map_or_else(
        || "client".to_owned(),
        |one| format!("{} {}", one.side.name(), found.record.limb.name()),
    )
}
