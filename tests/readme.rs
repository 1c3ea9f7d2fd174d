//! The README: every command in it runs and prints what it shows, every file in it is read.

use crate::source::root;
use crate::support::{folder, run_in};

/// One fenced block: what stands behind the fence, and its lines.
struct Block {
    info: String,
    lines: Vec<String>,
    line: usize,
}

fn blocks() -> Vec<Block> {
    let text = std::fs::read_to_string(root().join("README.md")).unwrap();
    let mut found: Vec<Block> = Vec::new();
    let mut open = false;
    for (number, line) in text.lines().enumerate() {
        match (line.strip_prefix("```"), open) {
            (Some(info), false) => {
                found.push(Block { info: info.to_owned(), lines: Vec::new(), line: number + 1 });
                open = true;
            }
            (Some(_), true) => open = false,
            (None, true) => found.last_mut().unwrap().lines.push(line.to_owned()),
            (None, false) => {}
        }
    }
    found
}

/// The words of a command line; single and double quotes hold words together.
fn words(command: &str) -> Vec<String> {
    let mut all = Vec::new();
    let mut word = String::new();
    let mut quote = None;
    for letter in command.chars() {
        match (quote, letter) {
            (Some(open), close) if open == close => quote = None,
            (Some(_), inside) => word.push(inside),
            (None, '"' | '\'') => quote = Some(letter),
            (None, ' ') => all.extend((!word.is_empty()).then(|| std::mem::take(&mut word))),
            (None, outside) => word.push(outside),
        }
    }
    all.extend((!word.is_empty()).then_some(word));
    all
}

/// Whether `shown` is `printed`, where a line `…` stands for any lines.
fn matches(shown: &[String], printed: &[&str]) -> bool {
    match shown.split_first() {
        None => printed.is_empty(),
        Some((first, rest)) if first == "…" => {
            (0..=printed.len()).any(|skip| matches(rest, &printed[skip..]))
        }
        Some((first, rest)) => {
            printed.split_first().is_some_and(|(line, after)| line == first && matches(rest, after))
        }
    }
}

/// What is typed in a block that shows prompts with their answers: each stands behind the last `: ` of its
/// line, or behind what is offered there.
fn answers(shown: &[String]) -> String {
    let is_prompt = |line: &&String| {
        line.contains(": [")
            || line.ends_with(':')
            || line.starts_with("Client")
            || line.starts_with("Which limb")
            || line.starts_with("Is the cause")
            || line.starts_with("  Measure again")
    };
    let answer = |line: &String| {
        let behind = line.rsplit_once(": ").map_or("", |(_, behind)| behind);
        let behind = if behind.starts_with('[') {
            behind.split_once(']').map_or("", |(_, rest)| rest)
        } else {
            behind
        };
        format!("{}\n", behind.trim())
    };
    shown.iter().filter(is_prompt).map(answer).collect()
}

#[test]
fn every_command_prints_what_the_readme_shows() {
    let work = tempfile::tempdir().unwrap();
    for kept in ["demo", "garment-tables"] {
        copy(&root().join(kept), &work.path().join(kept));
    }
    // Files shown are there for the commands, as a reader would have typed them.
    for block in blocks() {
        if let Some(name) = block.info.strip_prefix("yaml ") {
            std::fs::write(work.path().join(name), block.lines.join("\n")).unwrap();
        }
    }
    let mut ran = 0;
    for block in blocks().iter().filter(|block| block.info.starts_with("console")) {
        let mut at = 0;
        while at < block.lines.len() {
            let command = block.lines[at]
                .strip_prefix("$ ")
                .unwrap_or_else(|| panic!("line {}: no command", block.line + at));
            let shown: Vec<String> =
                block.lines[at + 1..].iter().take_while(|line| !line.starts_with("$ ")).cloned().collect();
            at += 1 + shown.len();
            let words = words(command);
            let args = match words.iter().map(String::as_str).collect::<Vec<_>>().as_slice() {
                ["cargo", "run", "--release", "--", args @ ..] | ["tapeline", args @ ..] => {
                    args.iter().map(|one| (*one).to_owned()).collect::<Vec<_>>()
                }
                ["cargo", "test"] => continue,
                other => panic!("line {}: the test does not know the command {other:?}", block.line),
            };
            let args: Vec<&str> = args.iter().map(String::as_str).collect();
            let typed = (block.info == "console typed").then(|| answers(&shown));
            let got = run_in(work.path(), &args, typed.as_deref());
            if typed.is_some() {
                // Every key is shown: no prompt is left that nobody has answered.
                assert_eq!(got.status, 0, "README line {}: {}", block.line, got.stderr);
            }
            let printed: Vec<&str> =
                got.stdout.lines().chain(got.stderr.lines()).map(str::trim_end).collect();
            assert!(
                matches(&shown, &printed),
                "README line {}: `{command}` does not print what is shown; it prints\n{}{}",
                block.line,
                got.stdout,
                got.stderr
            );
            ran += 1;
        }
    }
    assert!(ran >= 7, "only {ran} commands found");
}

fn copy(from: &std::path::Path, to: &std::path::Path) {
    std::fs::create_dir_all(to).unwrap();
    for entry in std::fs::read_dir(from).unwrap() {
        let path = entry.unwrap().path();
        let target = to.join(path.file_name().unwrap());
        if path.is_dir() { copy(&path, &target) } else { std::fs::copy(&path, target).map(|_| ()).unwrap() }
    }
}

#[test]
fn every_file_in_the_readme_is_read_without_a_problem() {
    let files: Vec<(String, String)> = blocks()
        .iter()
        .filter_map(|block| Some((block.info.strip_prefix("yaml ")?.to_owned(), block.lines.join("\n"))))
        .collect();
    let named: Vec<(&str, &str)> = files.iter().map(|(name, text)| (name.as_str(), text.as_str())).collect();
    let folder = folder(&named);
    let today = ["--today", "2026-03-14", "--format", "json"];
    let ran =
        run_in(folder.path(), &[&["check", "record.yaml", "chart.yaml"][..], &today[..]].concat(), None);
    assert!(ran.status != 2, "{}", ran.stderr);
    let report = ran.json();
    let chart = &report["limbs"][0]["charts"][0];
    // Wrist 16.9, forearm 25.7, upper arm 32.4 and axilla 37.2 cm lie in size 3 alone, the second of the chart.
    assert_eq!(chart["size"], 1, "{chart}");
    let garment = [&["gradient", "record.yaml", "garment.yaml"][..], &today[..]].concat();
    let ran = run_in(folder.path(), &garment, None);
    assert!(ran.status != 2, "{}", ran.stderr);
}

#[test]
fn no_command_or_option_is_named_that_does_not_exist() {
    let text = std::fs::read_to_string(root().join("README.md")).unwrap();
    let help = |args: &[&str]| run_in(root(), args, None).stdout;
    let commands = [
        "new", "check", "sheet", "volume", "gradient", "pattern", "inspect", "fabric", "cover", "batch",
        "explain", "print",
    ];
    let mut known: String = commands.iter().map(|one| help(&[one, "--help"])).collect();
    known.push_str(&help(&["--help"]));
    // Options of cargo stand in the README as well.
    known.push_str("--release --no-default-features --path");
    for option in text.split(|c: char| !(c.is_ascii_alphanumeric() || c == '-')) {
        if option.starts_with("--") && option.len() > 2 && option.chars().any(|c| c.is_ascii_alphabetic()) {
            assert!(known.contains(option), "the README names `{option}`");
        }
    }
    for line in text.lines().filter_map(|line| line.strip_prefix("| `")) {
        let word = line.split([' ', '`']).next().unwrap();
        let is_command = line.contains("FILE")
            || line.contains("RECORD")
            || line.contains("KIND")
            || line.contains("WORD");
        assert!(!is_command || commands.contains(&word), "the README names the command `{word}`");
    }
}

#[test]
fn the_first_two_commands_are_the_main_job_and_the_tests() {
    let first: Vec<String> = blocks()
        .iter()
        .filter(|block| block.info == "console")
        .take(2)
        .map(|block| block.lines[0].clone())
        .collect();
    assert!(first[0].starts_with("$ cargo run --release -- check demo/"));
    assert_eq!(first[1], "$ cargo test");
    let ci = std::fs::read_to_string(root().join(".ci/run")).unwrap_or_default();
    assert!(ci.is_empty() || ci.contains("cargo test"), ".ci/run calls the README's test command");
}

#[test]
fn the_map_of_rooms_is_that_of_the_house() {
    let text = std::fs::read_to_string(root().join("DEVELOPERS.md")).unwrap();
    let rows = text.lines().filter_map(|line| line.strip_prefix("| `")?.split('`').next());
    let told: Vec<&str> = rows.take_while(|room| *room != "cli").collect();
    assert_eq!(told, crate::source::rooms());
}
