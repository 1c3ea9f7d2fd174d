//! Owns the report as JSON, straight from the model.

use crate::report::Report;

/// The report as JSON, one document with a line end behind it.
///
/// # Errors
/// Only of a broken model; figures are finite and keys are texts.
pub fn json(report: &Report) -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(report)?;
    text.push('\n');
    Ok(text)
}
