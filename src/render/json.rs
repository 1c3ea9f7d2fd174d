//! Owns the report as JSON.

use crate::report::Report;

/// The report as indented JSON with a final line end.
pub fn json(report: &Report) -> String {
    // The model holds finite numbers and texts only, so that this cannot fail.
    let mut text = serde_json::to_string_pretty(report).unwrap_or_default();
    text.push('\n');
    text
}
