//! Damaged files: whatever stands in a file, the program answers with a report or with problems.
//!
//! The damage is drawn from a fixed seed, so a failure can be run again. `TAPELINE_MUTATIONS=100000`
//! runs more of them than the usual few thousand.

use std::panic::{AssertUnwindSafe, catch_unwind};

use tapeline::garment::{Chart, Schemes, open_chart, open_fabric};
use tapeline::input::{Problem, Source};
use tapeline::rules::{Rules, read_rules};

use crate::direct::{both, rules};
use crate::support::{root, run};

/// A small generator (xorshift64*, derived: Marsaglia 2003, J Stat Softw 8(14)); tests need the same draws
/// on every machine.
struct Draw(u64);

impl Draw {
    fn next(&mut self) -> u64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        self.0.wrapping_mul(0x2545_f491_4f6c_dd1d) >> 16
    }

    fn below(&mut self, end: usize) -> usize {
        usize::try_from(self.next()).unwrap() % end.max(1)
    }

    fn one_of<'t>(&mut self, list: &[&'t str]) -> &'t str {
        list[self.below(list.len())]
    }
}

const NUMBERS: [&str; 24] = [
    "0",
    "-1",
    "0.001",
    "0.01",
    "0.005",
    "1",
    "8",
    "16",
    "16.9",
    "25.65",
    "37.2",
    "42",
    "99.99",
    "120",
    "199.99",
    "200",
    "200.01",
    "999999999999999999",
    "1e5",
    ".nan",
    "-0",
    "16,9",
    "0.1",
    "60",
];

const WORDS: [&str; 36] = [
    "wrist",
    "axilla",
    "knee",
    "ankle",
    "calf",
    "elbow",
    "hand",
    "upper-thigh",
    "left leg",
    "right arm",
    "none",
    "both",
    "yes",
    "no",
    "unknown",
    "smaller",
    "larger",
    "refer",
    "under 14",
    "over 20",
    "14-14",
    "kPa",
    "mmHg",
    "in",
    "mm",
    "%",
    "ral-gz-387-1",
    "us-customary",
    "20-30",
    "suspected-dvt",
    "reduced-feeling",
    "child",
    "disc",
    "[]",
    "{}",
    "~",
];

const BYTES: [&[u8]; 20] = [
    b":",
    b"-",
    b"[",
    b"]",
    b"{",
    b"}",
    b",",
    b"\n",
    b"\t",
    b" ",
    b"'",
    b"\"",
    b"#",
    b"&a",
    b"*a",
    b"\0",
    b"\xc3",
    b"!x",
    b"\xef\xbb\xbf",
    b"|",
];

/// The places of tokens: runs of letters, digits, points and inner dashes.
fn tokens(bytes: &[u8]) -> Vec<(usize, usize)> {
    let inside = |byte: u8| byte.is_ascii_alphanumeric() || byte == b'.' || byte == b'-' || byte == b'_';
    let mut found = Vec::new();
    let mut start = None;
    for (at, byte) in bytes.iter().copied().chain([b' ']).enumerate() {
        match (start, inside(byte)) {
            (None, true) => start = Some(at),
            (Some(from), false) => {
                found.push((from, at));
                start = None;
            }
            _ => {}
        }
    }
    found
}

fn damage(bytes: &mut Vec<u8>, draw: &mut Draw) {
    let kind = draw.below(12);
    if kind < 3 {
        let at = draw.below(bytes.len());
        match kind {
            0 => drop(bytes.drain(at..(at + 1 + draw.below(8)).min(bytes.len()))),
            1 => drop(bytes.splice(at..at, BYTES[draw.below(BYTES.len())].iter().copied())),
            _ => bytes[at] ^= 1 << draw.below(8),
        }
    } else if kind < 9 {
        let places = tokens(bytes);
        let numeric: Vec<_> = places
            .iter()
            .copied()
            .filter(|(from, to)| bytes[*from..*to].iter().any(u8::is_ascii_digit))
            .collect();
        let among = if kind < 6 && !numeric.is_empty() { &numeric } else { &places };
        if among.is_empty() {
            return;
        }
        let (from, to) = among[draw.below(among.len())];
        let new: Vec<u8> = match kind {
            3 | 4 => draw.one_of(&NUMBERS).as_bytes().to_vec(),
            5 | 6 => {
                let (other, end) = among[draw.below(among.len())];
                bytes[other..end].to_vec()
            }
            _ => draw.one_of(&WORDS).as_bytes().to_vec(),
        };
        bytes.splice(from..to, new);
    } else {
        let mut lines: Vec<Vec<u8>> = bytes.split(|byte| *byte == b'\n').map(<[u8]>::to_vec).collect();
        let (one, other) = (draw.below(lines.len()), draw.below(lines.len()));
        match kind {
            9 => drop(lines.remove(one)),
            10 => lines.insert(other, lines[one].clone()),
            _ => lines.swap(one, other),
        }
        *bytes = lines.join(&b'\n');
    }
}

/// What a damaged file came to.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Came {
    Report,
    Problems,
}

fn told(problems: &[Problem]) -> Came {
    for problem in problems {
        let text = problem.to_string();
        assert!(!text.chars().any(|c| c.is_control() && c != '\n'), "a control character in {text:?}");
        assert!(text.len() < 4_000, "a message of {} bytes: {text}", text.len());
    }
    assert!(!problems.is_empty(), "neither report nor problem");
    Came::Problems
}

fn reported(open: &tapeline::assessment::OpenRecord, charts: Vec<Chart>, rules: &Rules) -> Came {
    let (json, text) = both(open, charts, rules);
    let report: serde_json::Value = serde_json::from_str(&json).unwrap();
    assert!(report["findings"].is_array());
    for word in ["NaN", "inf ", "infinity"] {
        assert!(!text.contains(word), "`{word}` in\n{text}");
    }
    Came::Report
}

/// Reads the damaged file `name` together with sound ones.
fn run_one(name: &str, bytes: Vec<u8>, rules: &Rules) -> Came {
    let schemes = Schemes::default();
    let sound = |name: &str| Source::read(&root().join(name)).unwrap();
    let path = root().join(name).display().to_string();
    let damaged = match Source::from_bytes(path, bytes) {
        Ok(source) => source,
        Err(problem) => return told(&[problem]),
    };
    let charts = |leg: bool| -> Vec<Chart> {
        let names: &[&str] = if leg {
            &["demo/stocking-chart-a.yaml", "demo/stocking-chart-b.yaml"]
        } else {
            &["demo/sleeve-chart-a.yaml", "demo/sleeve-chart-b.yaml", "demo/sleeve-chart-d.yaml"]
        };
        names.iter().map(|name| open_chart(sound(name), &schemes).ok().unwrap().chart).collect()
    };
    let open = |name: &str| tapeline::assessment::open_record(sound(name), rules, &schemes).unwrap();
    if name.contains("chart") {
        match open_chart(damaged, &schemes) {
            Ok(opened) => {
                let leg = opened.chart.limb == tapeline::anatomy::Limb::Leg;
                let record = open(if leg { "demo/leg.yaml" } else { "demo/first-visit.yaml" });
                reported(&record, vec![opened.chart], rules)
            }
            Err(problems) => told(&problems),
        }
    } else if name.contains("knit") {
        match open_fabric(damaged) {
            Ok(fabric) => {
                let mut all = charts(false);
                for chart in &mut all {
                    chart.fabric = Some(fabric.clone());
                }
                reported(&open("demo/first-visit.yaml"), all, rules)
            }
            Err(problems) => told(&problems),
        }
    } else if name.contains("thresholds") {
        match read_rules(Some(damaged)) {
            Ok(rules) => {
                // Answers of the demo may not be questions of the damaged set; that is told as problems.
                match tapeline::assessment::open_record(sound("demo/leg.yaml"), &rules, &schemes) {
                    Ok(record) => reported(&record, charts(true), &rules),
                    Err(problems) => told(&problems),
                }
            }
            Err(problems) => told(&problems),
        }
    } else if name.contains("schemes") {
        match Schemes::with_files(vec![damaged]) {
            Ok(schemes) => match open_chart(sound("demo/stocking-chart-b.yaml"), &schemes) {
                Ok(opened) => reported(&open("demo/leg.yaml"), vec![opened.chart], rules),
                Err(problems) => told(&problems),
            },
            Err(problems) => told(&problems),
        }
    } else {
        match tapeline::assessment::open_record(damaged, rules, &schemes) {
            Ok(record) => {
                let leg = record.record.limb == tapeline::anatomy::Limb::Leg;
                reported(&record, charts(leg), rules)
            }
            Err(problems) => told(&problems),
        }
    }
}

const FILES: [&str; 12] = [
    "demo/first-visit.yaml",
    "demo/leg.yaml",
    "demo/narrow-ankle.yaml",
    "demo/stop.yaml",
    "demo/blank-screening.yaml",
    "demo/sleeve-chart-a.yaml",
    "demo/sleeve-chart-b.yaml",
    "demo/sleeve-chart-d.yaml",
    "demo/stocking-chart-b.yaml",
    "demo/knit-r2.yaml",
    "garment-tables/schemes/ral-gz-387-1.yaml",
    "garment-tables/thresholds/s2k.yaml",
];

#[test]
fn damaged_files_end_in_a_report_or_in_problems() {
    let wanted: usize =
        std::env::var("TAPELINE_MUTATIONS").ok().and_then(|count| count.parse().ok()).unwrap_or(1_500);
    let seed: u64 =
        std::env::var("TAPELINE_SEED").ok().and_then(|seed| seed.parse().ok()).unwrap_or(20_260_314);
    let rules = rules();
    let texts: Vec<Vec<u8>> = FILES.iter().map(|name| std::fs::read(root().join(name)).unwrap()).collect();
    let (mut reports, mut problems) = (0, 0);
    let mut failed = Vec::new();
    for number in 0..wanted {
        let mut draw = Draw(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ (number as u64 + 1));
        draw.next();
        let which = draw.below(FILES.len());
        let mut bytes = texts[which].clone();
        for _ in 0..=draw.below(4) {
            if !bytes.is_empty() {
                damage(&mut bytes, &mut draw);
            }
        }
        let name = FILES[which];
        match catch_unwind(AssertUnwindSafe(|| run_one(name, bytes.clone(), &rules))) {
            Ok(Came::Report) => reports += 1,
            Ok(Came::Problems) => problems += 1,
            Err(cause) => {
                let cause = cause.downcast_ref::<String>().cloned().unwrap_or_default();
                failed.push(format!("{name}, draw {number}: {cause}\n{}", String::from_utf8_lossy(&bytes)));
            }
        }
    }
    assert!(failed.is_empty(), "{} of {wanted} failed; the first:\n{}", failed.len(), failed[0]);
    // The damage has to reach past the reader, or nothing is shown of what stands behind it.
    assert!(reports > wanted / 10 && problems > wanted / 4, "{reports} reports, {problems} with problems");
}

#[test]
fn the_program_ends_with_one_of_its_four_statuses() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("damaged.yaml");
    for number in 0..60_u64 {
        let mut draw = Draw(number + 77);
        draw.next();
        let mut bytes = std::fs::read(root().join("demo/first-visit.yaml")).unwrap();
        for _ in 0..=draw.below(3) {
            damage(&mut bytes, &mut draw);
        }
        std::fs::write(&path, &bytes).unwrap();
        let name = path.display().to_string();
        let ran = run(&["check", &name, "--chart", "demo/sleeve-chart-b.yaml", "--today", "2026-03-14"]);
        assert!((0..=3).contains(&ran.status), "status {}\n{}", ran.status, ran.stderr);
        assert_eq!(ran.stdout.is_empty(), ran.status == 2, "status {}\n{}", ran.status, ran.stderr);
        assert_eq!(ran.stderr.is_empty(), ran.status != 2, "{}", ran.stderr);
    }
}
