//! The house: rooms import only rooms above them, however the import is spelt, and keep off what is not
//! theirs.

use crate::source::{SourceFile, files_of, rooms, root};

/// What is wrong with the imports of a file: every path that leads to a room below its own, and every
/// way of hiding one.
fn wrong_imports(file: &SourceFile, rooms: &[String]) -> Vec<String> {
    let own = rooms.iter().position(|room| Some(room) == file.module.first());
    let mut wrong = Vec::new();
    for path in file.paths() {
        let parts: Vec<&str> = path.iter().map(String::as_str).collect();
        match parts.as_slice() {
            ["crate", "*"] => wrong.push("a glob of the crate hides what is used".to_owned()),
            ["crate"] => wrong.push("the crate itself under a name hides what is used".to_owned()),
            ["crate", room, ..] => {
                let place = rooms.iter().position(|known| known == room);
                if place.is_some() && place > own {
                    wrong.push(format!("`{}` stands below", path.join("::")));
                }
            }
            _ => {}
        }
    }
    if file.macros().contains(&"include") {
        wrong.push("`include!` hides what is used".to_owned());
    }
    wrong
}

/// What a library file may not hold: `why` for each.
fn not_theirs(file: &SourceFile) -> Vec<String> {
    let room = file.module.first().map(String::as_str);
    let mut wrong = Vec::new();
    for name in file.macros() {
        if ["println", "eprintln", "print", "eprint", "dbg", "todo", "unimplemented"].contains(&name) {
            wrong.push(format!("`{name}!` does not belong in the library"));
        }
    }
    for path in file.paths() {
        let parts: Vec<&str> = path.iter().map(String::as_str).collect();
        let first = parts.first().copied().unwrap_or_default();
        let second = parts.get(1).copied().unwrap_or_default();
        let said = path.join("::");
        let std = first == "std";
        if matches!(first, "clap" | "anyhow" | "terminal_size" | "tempfile") && parts.len() > 1
            || std && matches!(second, "env" | "process" | "net" | "thread" | "time")
            || matches!(parts.as_slice(), [.., "Zoned" | "Timestamp" | "SystemTime" | "Instant", "now"])
        {
            // Threads serve many limbs at once; their results do not hang on their count.
            if !(second == "thread" && room == Some("caseload")) {
                wrong.push(format!("`{said}` does not belong in the library"));
            }
        }
        let of_input = std && second == "fs"
            || matches!(first, "serde_yaml" | "calamine" | "csv" | "zip") && parts.len() > 1;
        let writes_a_table = room == Some("render") && first == "csv" && second.starts_with("Writer");
        if of_input && room != Some("input") && !writes_a_table {
            wrong.push(format!("`{said}` belongs in `input` only"));
        }
    }
    wrong
}

/// Places of formats where a number is given its decimals or its exponent.
fn floats_formatted(file: &SourceFile) -> Vec<String> {
    let mut wrong = Vec::new();
    for format in file.formats() {
        let mut rest = format.replace("{{", "").replace("}}", "");
        while let Some((_, behind)) = rest.split_once('{') {
            let Some((inside, after)) = behind.split_once('}') else { break };
            if let Some((_, spec)) = inside.split_once(':')
                && (spec.contains('.') || spec.ends_with('e'))
            {
                wrong.push(format!("`{{{inside}}}` in \"{format}\""));
            }
            rest = after.to_owned();
        }
    }
    wrong
}

#[test]
fn a_room_imports_only_rooms_above_it() {
    let rooms = rooms();
    assert!(rooms.len() >= 14, "rooms: {rooms:?}");
    for room in &rooms {
        let files = files_of(room);
        assert!(!files.is_empty(), "`{room}` is a folder");
        for file in files {
            let wrong = wrong_imports(&file, &rooms);
            assert!(wrong.is_empty(), "{}: {wrong:?}", file.path.display());
        }
    }
}

// Issue: a planted `use crate::render;` passed.
#[test]
fn every_spelling_of_an_import_is_seen() {
    let rooms = ["quantity", "garment", "report", "render"].map(str::to_owned);
    let planted = [
        "use crate::render;",
        "use crate::render as r;",
        "use crate::render::html;",
        "use crate::{quantity, render};",
        "use crate::{quantity::Girth, render::{html, pdf}};",
        "use crate::{quantity::{self, Girth}, report::{self, Report}};",
        "use super::super::render;",
        "use super::super::{quantity, render};",
        "use super::super::super::render::html;",
        "use self::super::super::render;",
        "pub use crate::render::html;",
        "pub(crate) use crate::render::html;",
        "use ::tapeline::render;",
        "use tapeline::render::html;",
        "use crate::\n    render;",
        "use crate /* aside */ :: render ;",
        "use crate::r#render;",
        "use crate::*;",
        "use super::super::*;",
        "use crate as house;",
        "use crate::{self as house};",
        "extern crate self as house; use crate::render;",
        "fn f() { crate::render::html(); }",
        "fn f() { super::super::render::html(); }",
        "fn f(of: &crate::render::Paper) {}",
        "fn f() { let a = '\"'; crate::render::html(); }",
        "fn f() { let a = r#\"\"\"#; crate::render::html(); }",
        "fn f<'a>(a: &'a str) { crate::render::html(); }",
        "impl crate::render::Draw for Thing {}",
        "macro_rules! m { () => { $crate::render::html() } }",
        "#[serde(with = \"crate::render::dates\")] struct S;",
        "fn f() { use crate::render; }",
        "include!(\"../render/mod.rs\");",
    ];
    for text in planted {
        let file = SourceFile::planted(&["garment", "chart"], text);
        assert!(!wrong_imports(&file, &rooms).is_empty(), "not seen: {text}");
    }
    let innocent = [
        "use crate::quantity;",
        "use crate::garment::Size;",
        "use super::Size;",
        "use super::super::quantity::Girth;",
        "use super::{Size, size};",
        "// use crate::render;",
        "/* use crate::render; /* nested */ */",
        "/// Drawn by [`crate::render`].",
        "fn render() {} fn f() { render(); }",
        "mod render; use self::render::draw;",
        "use jiff::civil::Date; pub(super) struct S;",
        "fn f() -> impl Iterator<Item = u8> + use<'_> { todo() }",
        "const TEXT: &str = \"render\";",
    ];
    for text in innocent {
        let file = SourceFile::planted(&["garment", "chart"], text);
        assert!(
            wrong_imports(&file, &rooms).is_empty(),
            "wrongly seen: {text}: {:?}",
            wrong_imports(&file, &rooms)
        );
    }
}

#[test]
fn rooms_keep_off_what_is_not_theirs() {
    for room in rooms() {
        for file in files_of(&room) {
            let wrong = not_theirs(&file);
            assert!(wrong.is_empty(), "{}: {wrong:?}", file.path.display());
        }
    }
}

#[test]
fn what_is_not_theirs_is_seen_however_it_is_spelt() {
    for text in [
        "fn f() { println!(\"a\"); }",
        "fn f() { std::println!(\"a\"); }",
        "use std::env;",
        "use std::{env, fmt};",
        "use std::fs::{self, File};",
        "use std::{fmt, fs as files};",
        "fn f() { ::std::fs::read(\"a\"); }",
        "use anyhow::Context as _;",
        "use clap::{Args, Parser};",
        "fn f() { serde_yaml::from_str(\"a\"); }",
        "fn f() { csv::ReaderBuilder::new(); }",
        "use calamine::Reader;",
        "fn f() { jiff::Zoned::now(); }",
        "fn f() { Instant::now(); }",
        "use std::time::Instant;",
    ] {
        assert!(
            !not_theirs(&SourceFile::planted(&["garment", "chart"], text)).is_empty(),
            "not seen: {text}"
        );
    }
    let writes = SourceFile::planted(&["render", "table"], "fn f() { csv::Writer::from_writer(a); }");
    assert!(not_theirs(&writes).is_empty(), "a table is written in `render`");
    let reads = SourceFile::planted(&["render", "table"], "fn f() { csv::Reader::from_reader(a); }");
    assert!(!not_theirs(&reads).is_empty(), "tables are read in `input` only");
}

// Design, section 7: all through one formatter.
#[test]
fn a_float_is_printed_by_the_words_alone() {
    let mut all = rooms();
    all.push("cli".to_owned());
    for room in all.iter().filter(|room| !matches!(room.as_str(), "words" | "quantity")) {
        for file in files_of(room) {
            let wrong = floats_formatted(&file);
            assert!(wrong.is_empty(), "{}: {wrong:?}", file.path.display());
        }
    }
}

#[test]
fn a_float_given_its_decimals_is_seen() {
    for text in [
        "fn f() { format!(\"{:.1} cm\", a); }",
        "fn f() { format!(\"{value:.0}\"); }",
        "fn f() { write!(out, \"{:>8.2}\", a); }",
        "fn f() { writeln!(out, \"{a} {b:.*}\", 1); }",
        "fn f() { format!(\"{a:e}\"); }",
    ] {
        assert!(!floats_formatted(&SourceFile::planted(&["render"], text)).is_empty(), "not seen: {text}");
    }
    for text in ["fn f() { format!(\"{{a: 1.5em}}\"); }", "fn f() { format!(\"{a:>8} 1.5 {b:?}\"); }"] {
        assert!(floats_formatted(&SourceFile::planted(&["render"], text)).is_empty(), "wrongly seen: {text}");
    }
}

#[test]
fn modules_stay_readable() {
    let mut all = rooms();
    all.push("cli".to_owned());
    let mut lengths: Vec<(usize, String)> = all
        .iter()
        .flat_map(|room| files_of(room))
        .map(|file| (file.lines, file.path.display().to_string()))
        .collect();
    lengths.sort();
    let (longest, path) = lengths.last().unwrap();
    assert!(*longest <= 600, "{path} has {longest} lines");
    let median = lengths[lengths.len() / 2].0;
    assert!(median <= 150, "the median module has {median} lines");
    let ninth = &lengths[lengths.len() * 9 / 10];
    assert!(ninth.0 < 400, "{} has {} lines; nine in ten stay under 400", ninth.1, ninth.0);
}

#[test]
fn every_module_opens_with_what_it_owns() {
    for room in rooms() {
        for file in files_of(&room) {
            let text = std::fs::read_to_string(&file.path).unwrap();
            assert!(text.starts_with("//! "), "{} does not say what it owns", file.path.display());
        }
    }
}

// The list of tests is whole: no file lies beside it unused.
#[test]
fn every_test_file_is_run() {
    let main = std::fs::read_to_string(root().join("tests/main.rs")).unwrap();
    for entry in std::fs::read_dir(root().join("tests")).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        if path.extension().is_some_and(|ext| ext == "rs") && name != "main" {
            assert!(main.lines().any(|line| line == format!("mod {name};")), "tests/{name}.rs is not run");
        }
    }
}
