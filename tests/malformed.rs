//! One fault per file: each is told once, at its place, with what would be accepted, and nothing is opened.
//!
//! The first line of a file in `tests/malformed/` holds the place that its fault has to be told at, as
//! `# 10:37 a girth of zero` (counted by hand when the file was written); the messages themselves are snapshots,
//! read one by one before they were taken.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use tapeline::assessment::{Setting, open_files};
use tapeline::garment::{Schemes, open_chart, open_fabric};
use tapeline::input::{Problem, Reader, Source};
use tapeline::record::{Record, read_record};
use tapeline::rules::read_rules;

use crate::made;

fn setting() -> Setting {
    Setting { today: made::day("2026-03-14"), rules: made::rules(), schemes: Schemes::default() }
}

fn corpus() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/malformed")
}

/// The places that the first line names, and what it says of the fault.
fn wanted(text: &str) -> (Vec<String>, String) {
    let head = text.lines().next().unwrap().strip_prefix("# ").expect("a first line with the place");
    let is_place = |word: &&str| *word == "whole" || word.split(':').all(|part| part.parse::<u32>().is_ok());
    let places: Vec<String> = head.split(' ').take_while(is_place).map(str::to_owned).collect();
    assert!(!places.is_empty(), "no place in `{head}`");
    (places, head.to_owned())
}

fn place(problem: &Problem) -> String {
    problem
        .place
        .as_ref()
        .map_or_else(|| "whole".to_owned(), |place| format!("{}:{}", place.line, place.column))
}

/// Every case of one kind; what is wrong with any of them is told together, the messages snapshotted.
fn every_case(kind: &str, least: usize, problems_of: impl Fn(Source) -> Vec<Problem>) {
    let mut names: Vec<String> = std::fs::read_dir(corpus().join(kind))
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    assert!(names.len() >= least, "only {} cases", names.len());
    let mut messages = String::new();
    let mut wrong = Vec::new();
    for name in &names {
        let bytes = std::fs::read(corpus().join(kind).join(name)).unwrap();
        let (places, head) = wanted(&String::from_utf8_lossy(&bytes));
        let file = format!("{kind}/{name}");
        let problems = match Source::from_bytes(file.clone(), bytes) {
            Ok(source) => problems_of(source),
            Err(problem) => vec![problem],
        };
        let told: Vec<String> = problems.iter().map(place).collect();
        let text: String = problems.iter().fold(String::new(), |text, one| format!("{text}{one}\n"));
        if told != places {
            wrong.push(format!("{file}: wanted {places:?}, told\n{text}"));
        }
        for word in ["panicked", "serde", "invalid type", "src/", "Some(", "NaN", "  ;", "``"] {
            if text.contains(word) {
                wrong.push(format!("{file}: `{word}` in\n{text}"));
            }
        }
        writeln!(messages, "{head}\n{text}").unwrap();
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
    let setting = setting();
    every_case("record", 255, |source| open_files(vec![source], &setting).err().unwrap_or_default());
}

#[test]
fn charts() {
    let schemes = Schemes::default();
    every_case("chart", 70, |source| open_chart(source, &schemes).err().unwrap_or_default());
}

#[test]
fn fabrics() {
    every_case("fabric", 25, |source| open_fabric(source).err().unwrap_or_default());
}

#[test]
fn schemes() {
    every_case("scheme", 11, |source| Schemes::with_files(vec![source]).err().unwrap_or_default());
}

#[test]
fn rules() {
    every_case("rules", 14, |source| read_rules(Some(source)).err().unwrap_or_default());
}

const RECORD: &str = "tapeline: record/1
client: K-0001
measured_on: 2026-03-14
units: {length: cm}
limb: left arm
affected: left
positions_from: wrist
marks:
  - {landmark: wrist, at: 0, girth: 16.9}
  - {landmark: forearm, at: 14, girth: 25.6}
";

/// What is said of a record of these bytes: the record, where one comes out, and every problem.
fn said_of(bytes: &[u8]) -> (Option<Record>, String) {
    let source = Source::from_bytes("r.yaml".to_owned(), bytes.to_vec());
    let reader = match source.and_then(Reader::new) {
        Ok(reader) => reader,
        Err(problem) => return (None, problem.to_string()),
    };
    let record = read_record(&reader);
    let said: Vec<String> = reader.problems().iter().map(ToString::to_string).collect();
    (record.filter(|_| said.is_empty()), said.join("\n"))
}

#[track_caller]
fn reads(text: &str) -> Record {
    let (record, said) = said_of(text.as_bytes());
    record.unwrap_or_else(|| panic!("says\n{said}\nof\n{text}"))
}

#[track_caller]
fn refused(text: &str) -> String {
    let (record, said) = said_of(text.as_bytes());
    assert!(record.is_none() && !said.is_empty(), "{text}");
    said
}

#[test]
fn a_byte_order_mark_and_crlf_pass_with_right_lines() {
    let crlf = RECORD.replace('\n', "\r\n");
    for text in [format!("\u{feff}{crlf}"), crlf.clone(), format!("\u{feff}{RECORD}")] {
        reads(&text);
    }
    let faulty = crlf.replace("25.6", "-25.6");
    for text in [faulty.clone(), format!("\u{feff}{faulty}")] {
        let said = refused(&text);
        assert!(said.starts_with("r.yaml:10:40: marks, item 2, girth: a girth of `-25.6 cm`"), "{said}");
    }
}

#[test]
fn columns_count_characters() {
    let said = refused(&RECORD.replace("client: K-0001", "client: \"Ä–é\" # ü\nposture: [é]"));
    assert!(said.starts_with("r.yaml:3:10: posture: holds a list"), "{said}");
    let said = refused(&RECORD.replace("{landmark: wrist", "{girth: \"é\", landmark: wrist"));
    assert!(said.contains("r.yaml:9:42: marks, item 1: the key `girth` stands twice"), "{said}");
}

#[test]
fn control_characters_are_told_and_not_printed() {
    for control in ['\0', '\u{1b}', '\u{7}'] {
        let said = refused(&RECORD.replace("K-0001", &format!("K{control}0001")));
        assert!(said.starts_with("r.yaml:2:"), "{said}");
        assert!(!said.contains(control), "{said:?}");
        // Written as an escape, the character is a value that reaches the message only made harmless.
        let escaped = format!("\"\\x{:02x}[31m\"", u32::from(control));
        let said = refused(&RECORD.replace("left arm", &escaped));
        assert!(said.starts_with("r.yaml:5:7: limb: "), "{said}");
        assert!(!said.contains(control), "{said:?}");
    }
}

#[test]
fn reading_grows_with_the_marks_and_no_faster() {
    let head = RECORD.split("  - ").next().unwrap();
    let of = |count: u32| {
        let marks = (0..count).fold(head.to_owned(), |mut text, at| {
            writeln!(text, "  - {{at: {:.2}, girth: 20}}", f64::from(at) / 100.0 - 80.0).unwrap();
            text
        });
        let start = std::time::Instant::now();
        assert_eq!(reads(&marks).limbs[0].marks.len(), count as usize);
        start.elapsed().as_secs_f64()
    };
    // Source: design: reading grows linearly. Ten times the marks may take thirty times as long on a busy machine;
    // a quadratic reader takes a hundred times.
    let (few, many) = (of(2_000).min(of(2_000)), of(20_000).min(of(20_000)));
    assert!(many < 30.0 * few + 0.05, "{few} s, {many} s");
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
        ("girth: 16.9", "girth: [16.9, 17, 16.8]"),
        ("girth: 16.9", "girth: [9, 9]"),
        ("landmark: wrist", "landmark: C"),
        ("at: 14,", "at: '14 cm',"),
        ("measured_on: 2026-03-14", "measured_on: 2026-03-14T09:30"),
        // As a library that sorts its keys writes them.
        ("tapeline: record/1\nclient: K-0001\n", "client: K-0001\ntapeline: record/1\n"),
        // As a library of YAML 1.1 writes a moment that it has read.
        ("measured_on: 2026-03-14", "measured_on: 2026-03-14 09:30:00"),
        ("affected: left", "affected: both"),
        ("affected: left", "affected: none"),
        ("limb: left arm", "limb: left arm # the swollen one\nprescribed: {scheme: ral-gz-387-2, class: 2}"),
        ("limb: left arm", "limb: left arm\nprescribed: {range: 20-25 mmHg}"),
        ("limb: left arm", "limb: left arm\nprescribed: {range: 20 to 25 mmHg}"),
        ("limb: left arm", "limb: left arm\nobserved:\nscreening:\nallergies:\narterial:\nlengths:"),
        ("limb: left arm", "limb: left arm\nobserved: {pitting: , folds: false, distortion: true}"),
        ("limb: left arm", "limb: left arm\nobserved: {pitting: no, hand_swelling: unknown}"),
        ("limb: left arm", "limb: left arm\nobserved: {pitting: minor, swelling_beyond: no}"),
        ("limb: left arm", "limb: left arm\nallergies: none"),
        ("limb: left arm", "limb: left arm\nallergies: []"),
        ("limb: left arm", "limb: left arm\nallergies: [latex, nickel]"),
        ("limb: left arm", "limb: left arm\nconfirmed: [thinner, wrist, G]"),
        ("limb: left arm", "limb: left arm\ninfections: [2025-11-02]\nbaseline: yes\ndominance: right"),
        ("limb: left arm", "limb: left arm\nweight: 71 kg\nvolume_method: disc\nshown: [home routine]"),
        ("tapeline: record/1", "%YAML 1.2\n---\ntapeline: record/1"),
        ("tapeline: record/1", "---\ntapeline: record/1"),
    ] {
        let text = RECORD.replacen(from, to, 1);
        assert_ne!(text, RECORD);
        reads(&text);
    }
}

#[test]
fn repeats_are_averaged_to_a_tenth_of_a_millimetre() {
    // Source: (16.9 + 17.0 + 17.0) / 3 = 16.9666…, to 0.01 cm 16.97; a half goes away from zero: 16.925 is 16.93.
    for (girths, mean) in [("[16.9, 17, 17]", 16.97), ("[16.92, 16.93]", 16.93), ("[169 mm, 6.65 in]", 16.9)]
    {
        let record = reads(&RECORD.replace("girth: 16.9", &format!("girth: {girths}")));
        assert_eq!(record.limbs[0].marks[0].girth().cm(), mean, "{girths}");
    }
}

#[test]
fn both_limbs_have_their_own_blocks() {
    let both = "tapeline: record/1
client: K-0003
measured_on: 2026-03-14
units: {length: cm, pressure: mmHg}
limb: both legs
affected: both
positions_from: floor
right:
  marks: [{landmark: calf, at: 31, girth: 38}, {landmark: ankle, at: 11, girth: 23.1}]
  arterial: {taken_on: 2026-03-10, abpi: not-compressible, toe: 75, cap: class 1 of ral-gz-387-1}
  screening: {present: [bony-prominence]}
  infections: [2025-11-02]
left:
  marks: [{landmark: ankle, at: 11, girth: 22.9}]
  lengths: {floor to below-knee: 38}
  observed: {pitting: strong, foot_swelling: yes}
screening: {asked_on: 2026-03-14, absent: [today]}
infections: [2025-12-02]
";
    let record = reads(both);
    assert!(record.is_both());
    let [left, right] = record.limbs.as_slice() else { panic!() };
    assert_eq!((left.side.name(), right.side.name()), ("left", "right"));
    // Marks in any order are put distal to proximal.
    assert_eq!(right.marks[0].landmark.unwrap().name(), "ankle");
    assert_eq!(left.lengths.len(), 1);
    assert_eq!(right.screening.present.len(), 1);
    assert_eq!(record.infections_of(right).len(), 2);
    assert_eq!(record.infections_of(left).len(), 1);
    assert_eq!(record.other_marks(left).unwrap().len(), 2);
}
