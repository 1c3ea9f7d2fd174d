//! Owns what someone named has decided on the findings of a limb.

use jiff::civil::Date;

use crate::finding::{ClearedBy, Decided, Finding, roles};
use crate::record::Cleared;
use crate::rules::Severity;
use crate::screening::{Case, Clearing, finding_clearing};

/// The clearings that a limb's findings are held against.
#[derive(Clone, Copy)]
pub struct Clearings<'a> {
    /// The limb on that day.
    pub case: Case<'a>,
}

impl Clearings<'_> {
    /// A finding with what was decided on it, and with the roles that may clear it.
    pub fn decide(&self, mut finding: Finding) -> Finding {
        if finding.severity != Severity::ClearFirst || finding.is_open {
            return finding;
        }
        let id = finding.id.text().to_owned();
        if let Some(may) = self.case.rules.cleared_by(&id) {
            let mut list: Vec<_> = may.iter().map(|one| one.role).collect();
            list.dedup();
            finding.who = roles(&list);
        }
        let decided = decided(&finding_clearing(&self.case, &id));
        finding.decided(decided)
    }
}

/// What a clearing comes to.
pub(super) fn decided(clearing: &Clearing) -> Decided {
    match clearing {
        Clearing::Cleared(entry, until, _) => Decided::Cleared(by(entry, *until)),
        Clearing::Refused(entry) => Decided::Refused(by(entry, None)),
        Clearing::Open | Clearing::Vain(_) => Decided::No,
    }
}

fn by(entry: &Cleared, until: Option<Date>) -> ClearedBy {
    ClearedBy {
        role: entry.role,
        reason: entry.reason.to_string(),
        on: entry.cleared_on,
        until,
        protocol: entry.by_protocol.as_ref().map(crate::record::ByProtocol::spoken),
    }
}
