//! Owns the raising of house-rule findings where a thresholds file asks for it.

use crate::finding::Finding;
use crate::rules::{Basis, Rules};

/// Gives the findings that the rules raise their new severity; the basis is then the user's.
pub(super) fn raise(findings: &mut [Finding], rules: &Rules) {
    for finding in findings {
        if let Some(severity) =
            rules.raised(finding.id.text()).filter(|severity| *severity < finding.severity)
        {
            finding.severity = severity;
            finding.basis = Basis::UserSupplied;
        }
    }
}
