//! Owns the report as JSON.

use serde::Serialize;

use crate::report::{FabricReport, Report};

/// A fabric as indented JSON with a final line end.
pub fn fabric_json(fabric: &FabricReport) -> String {
    indented(fabric)
}

/// The report as indented JSON with a final line end.
pub fn json(report: &Report) -> String {
    indented(report)
}

fn indented(model: &impl Serialize) -> String {
    // The model holds finite numbers and texts only, so that this cannot fail.
    let mut text = serde_json::to_string_pretty(model).unwrap_or_default();
    text.push('\n');
    text
}
