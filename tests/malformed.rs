//! One fault per file: each is told once, at its place, with what would be accepted, and no report
//! comes out.
//!
//! The first line of a file in `tests/malformed/` holds the place that its fault has to be told at, as
//! `# 10:37 a girth of zero` (counted by hand when the file was written); the messages themselves are
//! snapshots, read one by one before they were taken.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use crate::support::{Ran, folder, root, run_in};

const TODAY: [&str; 2] = ["--today", "2026-03-14"];

fn corpus() -> PathBuf {
    root().join("tests/malformed")
}

fn check(folder: &Path, args: &[&str], input: Option<&str>) -> Ran {
    run_in(folder, &[&["check"], args, &TODAY].concat(), input)
}

/// A chart that names the fabric file `name` of the corpus.
fn chart_of_fabric(name: &str) -> String {
    format!(
        "tapeline: chart/1\nlabel: a chart\nlimb: arm\nfrom: wrist\nto: axilla\nfabric: fabric/{name}\n\
         units: {{length: cm}}\nsizes:\n  - size: \"1\"\n    girths: {{wrist: 14-16, forearm: 21-24}}\n    \
         relaxed: {{wrist: 11, forearm: 16}}\n"
    )
}

fn run_case(kind: &str, name: &str) -> Ran {
    let demo = "../../demo/first-visit.yaml";
    let file = format!("{kind}/{name}");
    let folder = corpus();
    match kind {
        "record" => check(&folder, &[&file], None),
        "chart" => check(&folder, &[demo, "--chart", &file], None),
        "fabric" => check(&folder, &[demo, "--chart", "-"], Some(&chart_of_fabric(name))),
        "scheme" => check(&folder, &[demo, "--schemes", &file], None),
        "thresholds" => check(&folder, &[demo, "--thresholds", &file], None),
        other => panic!("no such kind of case: {other}"),
    }
}

/// The places that the first line names, and what it says of the fault.
fn wanted(text: &str) -> (Vec<String>, String) {
    let head = text.lines().next().unwrap().strip_prefix("# ").expect("a first line with the place");
    let is_place = |word: &&str| *word == "whole" || word.split(':').all(|part| part.parse::<u32>().is_ok());
    let places: Vec<String> = head.split(' ').take_while(is_place).map(str::to_owned).collect();
    assert!(!places.is_empty(), "no place in `{head}`");
    (places, head.to_owned())
}

/// The places that problems were told at, in order: `line:column`, or `whole` for a file as a whole.
fn told(stderr: &str, file: &str) -> Vec<String> {
    stderr
        .lines()
        .filter_map(|line| line.strip_prefix(file))
        .map(|rest| {
            if rest.starts_with(": ") {
                return "whole".to_owned();
            }
            let mut parts = rest.split(':').skip(1);
            format!("{}:{}", parts.next().unwrap(), parts.next().unwrap())
        })
        .collect()
}

/// Every case of one kind; what is wrong with any of them is told together, the messages snapshotted.
fn every_case(kind: &str, least: usize) {
    let mut names: Vec<String> = std::fs::read_dir(corpus().join(kind))
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    assert!(names.len() >= least, "only {} cases", names.len());
    let mut messages = String::new();
    let mut wrong = Vec::new();
    for name in &names {
        let file = format!("{kind}/{name}");
        let text = std::fs::read_to_string(corpus().join(&file)).unwrap();
        let (places, head) = wanted(&text);
        let ran = run_case(kind, name);
        let summary =
            if places.len() == 1 { "1 problem".to_owned() } else { format!("{} problems", places.len()) };
        if ran.status != 2 || !ran.stdout.is_empty() {
            wrong.push(format!("{file}: status {} and {} bytes of report", ran.status, ran.stdout.len()));
        } else if told(&ran.stderr, &file) != places {
            wrong.push(format!("{file}: wanted {places:?}, told\n{}", ran.stderr));
        } else if !ran.stderr.ends_with(&format!("{summary}; no report. Mend the input and run again.\n")) {
            wrong.push(format!("{file}: the count is not {summary}\n{}", ran.stderr));
        }
        for word in ["panicked", "serde", "invalid type", "src/", "Some(", "NaN", "  ;", "``"] {
            if ran.stderr.contains(word) {
                wrong.push(format!("{file}: `{word}` in\n{}", ran.stderr));
            }
        }
        writeln!(messages, "{head}\n{}", ran.stderr).unwrap();
    }
    assert!(wrong.is_empty(), "{} of {} cases:\n{}", wrong.len(), names.len(), wrong.join("\n"));
    insta::with_settings!({
        snapshot_path => "malformed/messages",
        prepend_module_to_snapshot => false,
        omit_expression => true,
    }, {
        insta::assert_snapshot!(kind, messages);
    });
}

#[test]
fn records() {
    every_case("record", 190);
}

#[test]
fn charts() {
    every_case("chart", 74);
}

#[test]
fn fabrics() {
    every_case("fabric", 25);
}

#[test]
fn schemes() {
    every_case("scheme", 12);
}

#[test]
fn thresholds() {
    every_case("thresholds", 14);
}

const RECORD: &str = "tapeline: record/1
client: K-0001
measured: 2026-03-14
units: {length: cm}
limb: left arm
affected: left
positions_from: wrist
marks:
  - {landmark: wrist, at: 0, girth: 16.9}
  - {landmark: forearm, at: 14, girth: 25.6}
";

/// Runs `check` on a file of these bytes and gives what it says, after the path.
fn said_of(bytes: &[u8], status: i32) -> String {
    let folder = folder(&[]);
    std::fs::write(folder.path().join("r.yaml"), bytes).unwrap();
    let ran = check(folder.path(), &["r.yaml"], None).expect_status(status);
    assert_eq!(ran.stdout.is_empty(), status == 2, "a report comes out unless there are problems");
    ran.stderr
}

#[test]
fn a_byte_order_mark_and_crlf_pass_with_right_lines() {
    let crlf = RECORD.replace('\n', "\r\n");
    // Screening is blank in this record, so the outcome is `incomplete`: status 1.
    said_of(format!("\u{feff}{crlf}").as_bytes(), 1);
    said_of(crlf.as_bytes(), 1);
    said_of(format!("\u{feff}{RECORD}").as_bytes(), 1);
    let faulty = crlf.replace("25.6", "-25.6");
    for text in [faulty.clone(), format!("\u{feff}{faulty}")] {
        let said = said_of(text.as_bytes(), 2);
        assert!(said.starts_with("r.yaml:10:40: marks, item 2, girth: a girth of `-25.6 cm`"), "{said}");
        assert!(said.contains("\n  10 |   - {landmark: forearm, at: 14, girth: -25.6}\n"), "{said:?}");
    }
    // The mark is no column of the first line.
    let said = said_of("\u{feff}tapeline: record/2\n".as_bytes(), 2);
    assert!(said.starts_with("r.yaml:1:11: tapeline: version `2`"), "{said}");
}

#[test]
fn old_line_ends_and_none_at_the_end_pass() {
    said_of(RECORD.trim_end().as_bytes(), 1);
    said_of(format!("{RECORD}\n\n# a remark\n").as_bytes(), 1);
}

#[test]
fn columns_count_characters() {
    let said = said_of(RECORD.replace("client: K-0001", "client: \"Ä–é\" # ü\nposture: [é]").as_bytes(), 2);
    assert!(said.starts_with("r.yaml:3:10: posture: holds a list"), "{said}");
    let said = said_of(RECORD.replace("{landmark: wrist", "{girth: \"é\", landmark: wrist").as_bytes(), 2);
    assert!(said.contains("r.yaml:9:42: marks, item 1: the key `girth` stands twice"), "{said}");
}

#[test]
fn text_that_is_not_utf8_has_its_place() {
    // 0xE9 is an e with acute accent in Latin-1.
    let mut bytes = RECORD.replace("K-0001", "K-").into_bytes();
    let at = bytes.windows(2).position(|two| two == b"K-").unwrap() + 2;
    bytes.insert(at, 0xe9);
    let said = said_of(&bytes, 2);
    assert!(said.starts_with("r.yaml:2:11: a character that is not UTF-8; save the file as UTF-8"), "{said}");
    let utf16: Vec<u8> =
        [0xff, 0xfe].into_iter().chain(RECORD.encode_utf16().flat_map(u16::to_le_bytes)).collect();
    let said = said_of(&utf16, 2);
    assert!(said.starts_with("r.yaml: is UTF-16 text; save it as UTF-8"), "{said}");
}

#[test]
fn control_characters_are_told_and_not_printed() {
    for control in ['\0', '\u{1b}', '\u{7}'] {
        let said = said_of(RECORD.replace("K-0001", &format!("K{control}0001")).as_bytes(), 2);
        assert!(said.starts_with("r.yaml:2:"), "{said}");
        assert!(!said.contains(control), "{said:?}");
        // Written as an escape, the character is a value that reaches the message only made harmless.
        let escaped = format!("\"\\x{:02x}[31m\"", u32::from(control));
        let said = said_of(RECORD.replace("left arm", &escaped).as_bytes(), 2);
        assert!(said.starts_with("r.yaml:5:7: limb: "), "{said}");
        assert!(!said.contains(control), "{said:?}");
    }
}

#[test]
fn nothing_to_read_is_told() {
    let said = said_of(b"", 2);
    assert!(said.starts_with("r.yaml: is empty; a file starts with its kind"), "{said}");
    let said = said_of("\u{feff}".as_bytes(), 2);
    assert!(said.starts_with("r.yaml: is empty"), "{said}");
    let said = said_of(b"\n\n   \n", 2);
    assert!(said.starts_with("r.yaml: is empty"), "{said}");
    let folder = folder(&[]);
    let said = check(folder.path(), &["no-such.yaml"], None).expect_status(2).stderr;
    assert!(said.starts_with("no-such.yaml: there is no such file; check the path"), "{said}");
    let said = check(folder.path(), &["."], None).expect_status(2).stderr;
    assert!(said.starts_with(".: is a directory; name a file in it"), "{said}");
    let said = check(folder.path(), &["-"], Some("")).expect_status(2).stderr;
    assert!(said.starts_with("-: is empty"), "{said}");
}

#[test]
fn files_of_the_wrong_size_or_depth_are_told_in_good_time() {
    let start = std::time::Instant::now();
    let huge = format!("{RECORD}posture: {}\n", "x".repeat(9 * 1024 * 1024));
    let said = said_of(huge.as_bytes(), 2);
    assert!(said.starts_with("r.yaml: is larger than 8 MiB"), "{said}");
    let indented = (1..2_000).fold(String::new(), |text, at| format!("{text}{}a:\n", " ".repeat(at)));
    for deep in [
        "[".repeat(100_000) + &"]".repeat(100_000),
        "{a: ".repeat(100_000),
        "\n".to_owned() + &"- ".repeat(50_000),
        "\n".to_owned() + &"? ".repeat(50_000),
        "\n".to_owned() + &indented,
    ] {
        let said = said_of(format!("{RECORD}posture: {deep}\n").as_bytes(), 2);
        assert!(said.contains("nested too deeply"), "{}", said.get(..500).unwrap_or(&said));
    }
    let keys = (0..2_000).fold(RECORD.to_owned(), |text, at| text + &format!("k{at}: 1\n"));
    let said = said_of(keys.as_bytes(), 2);
    assert!(said.contains("1950 more problems"), "{}", said.get(..500).unwrap_or(&said));
    let marks = (0..2_000).fold(RECORD.to_owned(), |text, _| text + "  - {at: 15, girth: 20}\n");
    let said = said_of(marks.as_bytes(), 2);
    assert!(said.contains("marks: holds 2002 marks; at most 500"), "{}", said.get(..500).unwrap_or(&said));
    // Each line names the one above it twice: 2^30 values if it were written out.
    let mut laughs = RECORD.to_owned();
    laughs.push_str("a0: &a0 [x, x]\n");
    for n in 1..30 {
        writeln!(laughs, "a{n}: &a{n} [*a{}, *a{}]", n - 1, n - 1).unwrap();
    }
    let said = said_of(laughs.as_bytes(), 2);
    assert!(said.contains("nested too deeply or repeats itself"), "{}", said.get(..500).unwrap_or(&said));
    let long = RECORD.replace("K-0001", &"x".repeat(1_000_000)).replace("left arm", &"y".repeat(100_000));
    let said = said_of(long.as_bytes(), 2);
    assert!(said.starts_with("r.yaml:5:7: limb: `yyy"), "{}", said.get(..200).unwrap_or(&said));
    assert!(said.len() < 2_000, "a message of {} bytes", said.len());
    assert!(start.elapsed().as_secs() < 20, "{:?}", start.elapsed());
}

#[test]
fn fifty_problems_are_shown_and_the_rest_counted() {
    let marks = (0..60).fold(String::new(), |text, at| text + &format!("  - {{at: {at}, girth: -1}}\n"));
    let text = format!("{}{marks}", RECORD.split("  - ").next().unwrap());
    let said = said_of(text.as_bytes(), 2);
    assert_eq!(told(&said, "r.yaml").len(), 51, "{said}");
    assert!(said.contains("r.yaml: 10 more problems of this file are not shown\n"), "{said}");
    assert!(said.ends_with("60 problems; no report. Mend the input and run again.\n"), "{said}");
}

#[test]
fn faults_of_every_file_are_told_in_one_run() {
    let folder = folder(&[
        ("r.yaml", &RECORD.replace("16.9", "-16.9")),
        ("a.yaml", "tapeline: chart/1\nlabel: A\nlimb: arm\nsizes: []\n"),
        (
            "b.yaml",
            "tapeline: chart/1\nlabel: B\nlimb: arm\nfabric: f.yaml\nsizes:\n  - {size: \"1\", girths: {wrist: 16-14 cm}}\n",
        ),
        ("f.yaml", "tapeline: fabric/1\nlabel: F\ncurve: []\n"),
    ]);
    let args = ["r.yaml", "--chart", "a.yaml", "--chart", "b.yaml", "--chart", "c.yaml"];
    let said = check(folder.path(), &args, None).expect_status(2).stderr;
    for place in ["r.yaml:9:37: ", "a.yaml:4:8: ", "b.yaml:6:33: ", "f.yaml:3:8: ", "c.yaml: "] {
        assert_eq!(
            said.matches(&format!("\n{place}")).count() + usize::from(said.starts_with(place)),
            1,
            "{place} in\n{said}"
        );
    }
    assert!(said.ends_with("5 problems; no report. Mend the input and run again.\n"), "{said}");
}

#[test]
fn writings_that_have_to_pass_do() {
    // A trailing unit, blanks, tags of plain YAML, aliases, comments, a class without quotes, answers left blank.
    for (from, to) in [
        ("girth: 16.9", "girth: 16.9cm"),
        ("girth: 16.9", "girth: ' 16.9  cm '"),
        ("girth: 16.9", "girth: 169 mm"),
        ("girth: 16.9", "girth: 6.65 in"),
        ("girth: 16.9", "girth: 6.65 inches"),
        ("girth: 16.9", "girth: +16.9"),
        ("girth: 16.9", "girth: 16."),
        ("girth: 16.9", "girth: !!float 16.9"),
        ("girth: 16.9", "girth: &g 16.9, again: *g"),
        ("girth: 16.9", "girth: 16.9, again: [17, 16.8]"),
        ("landmark: wrist", "landmark: C"),
        ("at: 14,", "at: '14 cm',"),
        ("measured: 2026-03-14", "measured: 2026-03-14T09:30"),
        ("affected: left", "affected: both"),
        ("limb: left arm", "limb: left arm # the swollen one\nprescribed: {scheme: ral-gz-387-2, class: 2}"),
        ("limb: left arm", "limb: left arm\nprescribed: {range: 20-25 mmHg}"),
        ("limb: left arm", "limb: left arm\nprescribed: {range: 20 to 25 mmHg}"),
        ("limb: left arm", "limb: left arm\nobserved:\nscreening:\nallergies:"),
        ("limb: left arm", "limb: left arm\nobserved: {pitting: , folds: no}"),
        ("limb: left arm", "limb: left arm\nobserved: {hand_swelling: unknown}"),
        ("limb: left arm", "limb: left arm\narterial: {abpi: 1.0}"),
        ("limb: left arm", "limb: left arm\nscreening: {no: [severe-arterial-disease]}"),
        ("tapeline: record/1", "%YAML 1.2\n---\ntapeline: record/1"),
        ("tapeline: record/1", "---\ntapeline: record/1"),
    ] {
        let text = RECORD.replacen(from, to, 1);
        assert_ne!(text, RECORD);
        let said = said_of(text.as_bytes(), 1);
        assert!(said.is_empty(), "`{to}` says\n{said}");
    }
}
