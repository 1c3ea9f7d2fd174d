//! Owns the templates: every key of a kind with its meaning, the needed ones to fill in, the others as
//! remarks to uncover. Values are left blank, so that no invented one stays behind.

use std::fmt::Write as _;

use tapeline::input::FileKind;
use tapeline::input::keys::{Key, Need};

/// The template of a kind.
pub(super) fn of(kind: FileKind) -> String {
    let mut out = format!(
        "# A {} for tapeline: fill in what has no value yet, uncover what you need (take the # away).\n# `tapeline inspect FILE` shows what was read. For completion in an editor:\n# `tapeline print schema {0} -o {0}.schema.json`, and one # off the next line.\n## yaml-language-server: $schema={0}.schema.json\n",
        kind.word()
    );
    for key in kind.keys().keys {
        write_key(&mut out, kind, key);
    }
    out
}

fn write_key(out: &mut String, kind: FileKind, key: &Key) {
    if key.name == "tapeline" {
        let _ = writeln!(out, "tapeline: {}", kind.tag());
        return;
    }
    match (kind, key.name) {
        (_, "units") => {
            let unit = if kind == FileKind::Record { "{length: cm, pressure: mmHg}" } else { "{length: cm}" };
            let _ = writeln!(out, "units: {unit}");
        }
        (FileKind::Record, "marks") => out.push_str(
            "marks:                      # landmarks: words or letters; at: distance from the zero; girth: tape value or [two, of them]\n  - {landmark: , at: , girth: }\n  - {landmark: , at: , girth: }\n  - {landmark: , at: , girth: }\n",
        ),
        (FileKind::Record, "left" | "right") => {}
        (FileKind::Chart, "sizes") => out.push_str(
            "sizes:                      # small to large; a range as 16-18, under 14 or over 36\n  - size: \n    girths: {wrist: , forearm: , axilla: }\n    # flat_width: {wrist: , forearm: , axilla: }   # laid flat, half the relaxed girth\n",
        ),
        (FileKind::Garment, "flat_width") => {
            out.push_str("flat_width:                 # laid flat without a pull; only the marks that were measured\n  wrist: \n  forearm: \n  axilla: \n");
        }
        (FileKind::Fabric, "curve") => out.push_str(
            "curve:                      # from 0 % up; one layer, per unit worn width\n  - {stretch: 0 %, tension: 0 N/m}\n  - {stretch: , tension: }\n",
        ),
        _ if key.need == Need::Required => {
            let line = format!("{}: ", key.name);
            let _ = writeln!(out, "{line:<27} # {}, as `{}`", key.about, value_of(key));
        }
        _ => {
            let _ = writeln!(out, "# {}   # {}", key.example, key.about);
        }
    }
}

/// The value of a key's example.
fn value_of(key: &Key) -> &'static str {
    key.example.split_once(": ").map_or(key.example, |(_, value)| value)
}
