//! A case given to the built program: what stands around the rooms (the command line, its streams, its pages).

use std::path::Path;
use std::process::{Command as Process, Stdio};

use super::case::{Case, Command};
use crate::random::Dice;
use crate::source::root;

/// Runs the program on a case: an exit status of its own, no panic, a report or the reason why not.
pub fn run(case: &Case, folder: &Path, dice: &mut Dice, wrong: &mut Vec<String>) {
    let mut names = Vec::new();
    for (name, bytes) in &case.files {
        // Files that are named in files lie in the same place.
        let path = folder.join(Path::new(name).file_name().unwrap());
        if std::fs::write(&path, bytes).is_err() {
            return;
        }
        names.push(path);
    }
    for knit in ["knit-r2.yaml", "knit-r3.yaml"] {
        let to = folder.join(knit);
        if !names.contains(&to) {
            let _ = std::fs::copy(root().join("demo").join(knit), to);
        }
    }
    let program = std::env::var_os("TAPELINE_FUZZ_PROGRAM")
        .unwrap_or_else(|| std::ffi::OsString::from(env!("CARGO_BIN_EXE_tapeline")));
    let mut process = Process::new(program);
    let command = match case.command {
        Command::Check if dice.luck(0.5) => "sheet",
        Command::Inspect if case.files[0].0.contains("knit") => "fabric",
        other => other.word(),
    };
    match command {
        "new" => {
            let kind = ["record", "chart", "garment", "fabric"][dice.below(4)];
            process.args(["new", kind]).arg(&names[0]);
        }
        other => {
            process.arg(other).args(&names);
        }
    }
    match command {
        "check" | "gradient" | "pattern" if dice.luck(0.3) => {
            process.args(["--format", "json"]);
        }
        "sheet" => {
            let form = ["html", "text", "pdf"][if dice.luck(0.1) { 2 } else { dice.below(2) }];
            process.args(["--format", form, "-o", "-"]);
        }
        _ => {}
    }
    if matches!(command, "gradient") && dice.luck(0.5) {
        process.args([["--readings"].as_slice(), &["--size", "2"]][dice.below(2)]);
    }
    if !matches!(command, "batch" | "cover" | "inspect" | "fabric") {
        process.args(["--today", "2026-03-14"]);
    }
    let mut child = process
        .current_dir(folder)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // Somebody answers a guided entry with what stands in files.
    let typed: Vec<u8> = case.files.iter().flat_map(|(_, bytes)| bytes.clone()).take(3_000).collect();
    let mut stdin = child.stdin.take().unwrap();
    let writer = std::thread::spawn(move || {
        let _ = std::io::Write::write_all(&mut stdin, &typed);
    });
    let out = child.wait_with_output().unwrap();
    let _ = writer.join();
    let (status, said) = (out.status.code().unwrap_or(-1), String::from_utf8_lossy(&out.stderr).into_owned());
    if !(0..=3).contains(&status) || said.contains("panicked") {
        wrong.push(format!("program: {command} ends with {status}: {said}"));
    }
    if status == 2 && said.trim().is_empty() {
        wrong.push(format!("program: {command} ends with 2 without a word"));
    }
    if status != 2 && out.stdout.is_empty() && command != "new" {
        wrong.push(format!("program: {command} ends with {status} and prints nothing"));
    }
    if status == 2 && !out.stdout.is_empty() && command != "new" {
        wrong.push(format!("program: {command} ends with 2 and prints"));
    }
    let obeyed = |c: &char| super::laws::obeyed(*c) && !matches!(c, '\n' | '\u{c}');
    if let Some(c) = said.chars().find(obeyed) {
        wrong.push(format!("program: U+{:04X} on standard error: {said:?}", u32::from(c)));
    }
    for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
        let name = entry.file_name().to_string_lossy().into_owned();
        if name.contains("tapeline-part") {
            wrong.push(format!("program: {name} is left"));
        }
        let _ = std::fs::remove_file(entry.path());
    }
}
