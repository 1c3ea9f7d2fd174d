//! Owns the text of a fabric file, for curves that were pooled or calibrated here.

use std::fmt::Write as _;

use super::{Branch, Fabric, MOST_PULL_SD};
use crate::rules::Basis;
use crate::words::trimmed;

/// A number without a tail of binary dust: at most 9 places, trailing zeros cut.
pub(super) fn plain(value: f64) -> String {
    trimmed(value, 9)
}

/// A text in quotes, as YAML takes it.
pub(super) fn quoted(text: &str) -> String {
    format!("\"{}\"", text.replace('\\', "\\\\").replace('"', "\\\"").replace(['\n', '\r', '\t'], " "))
}

/// The fabric as a `fabric/1` file.
pub fn fabric_file(fabric: &Fabric) -> String {
    let mut text = String::from("tapeline: fabric/1\n");
    let _ = writeln!(text, "label: {}", quoted(&fabric.label));
    if fabric.basis != Basis::UserSupplied {
        let _ = writeln!(text, "basis: {}", fabric.basis.word());
    }
    if let Some(note) = &fabric.note {
        let _ = writeln!(text, "note: {}", quoted(note));
    }
    if let Some(sd) = fabric.tension_sd {
        let _ = writeln!(text, "tension_sd: {} %", plain(sd * 100.0));
    }
    if let Some(sd) = fabric.relaxed_sd_cm {
        let _ = writeln!(text, "relaxed_sd: {} cm", plain(sd));
    }
    if let Some(exponent) = fabric.exponent {
        let value = plain(exponent.value);
        // A good pull has the usual band without a word; its SD, read back as stated, would make it narrower.
        let wide = exponent.pull_sd.filter(|sd| *sd > MOST_PULL_SD);
        let _ = match exponent.sd.or(wide) {
            Some(sd) => writeln!(text, "exponent: {{value: {value}, sd: {}}}", plain(sd)),
            None => writeln!(text, "exponent: {value}"),
        };
    }
    if fabric.branch == Branch::Loading {
        text.push_str("branch: loading\n");
    }
    if !fabric.has_curve() {
        return text;
    }
    let _ = writeln!(
        text,
        "curve:                          # one layer, {} branch, per unit worn width",
        fabric.branch.word()
    );
    for (stretch, tension) in &fabric.curve {
        let _ =
            writeln!(text, "  - {{stretch: {} %, tension: {} N/m}}", plain(stretch * 100.0), plain(*tension));
    }
    text
}
