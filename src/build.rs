//! Runs before the build: turns the shipped tables (YAML, written for people) into JSON of the same
//! shape, which the program reads some twenty times faster at every start. A test holds the two
//! against each other.

use std::fmt::Write as _;
use std::path::Path;

use serde_yaml::Value;

/// The folders whose tables become JSON; no two tables bear one name.
const FOLDERS: [&str; 6] = [
    "garment-tables/schemes",
    "garment-tables/rules",
    "src/explain",
    "src/explain/alarms",
    "src/render/sheet/language",
    "tests/hazards",
];

fn main() {
    let out = std::env::var_os("OUT_DIR").unwrap_or_default();
    for folder in FOLDERS {
        let folder = Path::new(folder);
        println!("cargo::rerun-if-changed={}", folder.display());
        let Ok(entries) = std::fs::read_dir(folder) else {
            println!("cargo::error=the folder {} is missing", folder.display());
            return;
        };
        let tables = entries.flatten().map(|entry| entry.path());
        for path in tables.filter(|path| path.extension().is_some_and(|end| end == "yaml")) {
            println!("cargo::rerun-if-changed={}", path.display());
            let text = std::fs::read_to_string(&path).unwrap_or_default();
            let mut json = String::new();
            match serde_yaml::from_str::<Value>(&text) {
                Ok(value) => write_json(&value, &mut json),
                Err(fault) => {
                    println!("cargo::error={}: {fault}", path.display());
                    return;
                }
            }
            let name = path.with_extension("json");
            let target = Path::new(&out).join(name.file_name().unwrap_or_default());
            if let Err(fault) = std::fs::write(&target, json) {
                println!("cargo::error={}: {fault}", target.display());
            }
        }
    }
}

/// Every scalar becomes a text, as the reader of the program wants it.
fn write_json(value: &Value, out: &mut String) {
    match value {
        Value::Null => out.push_str("null"),
        Value::Bool(truth) => quote(&truth.to_string(), out),
        Value::Number(number) => quote(&number.to_string(), out),
        Value::String(text) => quote(text, out),
        Value::Sequence(list) => {
            out.push('[');
            for (at, one) in list.iter().enumerate() {
                if at > 0 {
                    out.push(',');
                }
                write_json(one, out);
            }
            out.push(']');
        }
        Value::Mapping(map) => {
            out.push('{');
            for (at, (key, one)) in map.iter().enumerate() {
                if at > 0 {
                    out.push(',');
                }
                write_json(key, out);
                out.push(':');
                write_json(one, out);
            }
            out.push('}');
        }
        Value::Tagged(tagged) => write_json(&tagged.value, out),
    }
}

fn quote(text: &str, out: &mut String) {
    out.push('"');
    for letter in text.chars() {
        match letter {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            control if control.is_control() => {
                let _ = write!(out, "\\u{:04x}", u32::from(control));
            }
            other => out.push(other),
        }
    }
    out.push('"');
}
