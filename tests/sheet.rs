//! The fitting sheet: what stands on it, what may not, where it goes.

use std::fmt::Write as _;
use std::path::Path;

use serde_json::Value;

use crate::support::{Ran, folder, root, run, run_in};

const TODAY: &str = "2026-03-14";

/// Every kind of demo sheet: record, charts, exit status.
const DEMO: [(&str, &[&str], i32); 8] = [
    (
        "first-visit",
        &["sleeve-chart-a", "sleeve-chart-b", "sleeve-chart-c", "sleeve-chart-d", "sleeve-chart-e"],
        0,
    ),
    ("first-visit", &["sleeve-chart-a"], 1),
    ("first-visit", &["sleeve-chart-e"], 1),
    ("first-visit", &[], 0),
    ("leg", &["stocking-chart-a", "stocking-chart-b"], 0),
    ("narrow-ankle", &["stocking-chart-a", "stocking-chart-b"], 1),
    ("stop", &["stocking-chart-a", "stocking-chart-b"], 3),
    ("blank-screening", &["sleeve-chart-a"], 1),
];

fn arguments(command: &str, record: &str, charts: &[&str]) -> Vec<String> {
    let mut args = vec![command.to_owned(), format!("demo/{record}.yaml")];
    for chart in charts {
        args.extend(["--chart".to_owned(), format!("demo/{chart}.yaml")]);
    }
    args.extend(["--today".to_owned(), TODAY.to_owned()]);
    args
}

fn run_with(args: &[String], more: &[&str]) -> Ran {
    let args: Vec<&str> = args.iter().map(String::as_str).chain(more.iter().copied()).collect();
    run(&args)
}

/// The sheet on standard output.
fn sheet(record: &str, charts: &[&str], format: &str, status: i32) -> String {
    run_with(&arguments("sheet", record, charts), &["--format", format, "-o", "-"])
        .expect_status(status)
        .stdout
}

/// The JSON report of the same.
fn report(record: &str, charts: &[&str], status: i32) -> Value {
    run_with(&arguments("check", record, charts), &["--format", "json"]).expect_status(status).json()
}

/// Words with single spaces between them.
fn squeezed(text: &str) -> String {
    text.replace('\u{a0}', " ").split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The words of an HTML file, without its head.
fn words_of_html(html: &str) -> String {
    let body = &html[html.find("<body>").unwrap()..];
    let mut text = String::new();
    let mut inside = false;
    for letter in body.chars() {
        match letter {
            '<' => {
                inside = true;
                text.push(' ');
            }
            '>' => inside = false,
            other if !inside => text.push(other),
            _ => {}
        }
    }
    let text = text.replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"").replace("&#39;", "'");
    squeezed(&text.replace("&amp;", "&"))
}

/// The words of a text sheet, without the heads of its pages.
fn words_of_text(text: &str) -> String {
    let pages: Vec<String> =
        text.split('\u{c}').map(|page| page.lines().skip(3).collect::<Vec<_>>().join("\n")).collect();
    squeezed(&pages.join("\n"))
}

/// A length as printed, from the JSON number.
fn cm(value: &Value) -> String {
    format!("{:.1}", value.as_f64().unwrap())
}

#[test]
fn every_finding_and_measure_of_the_json_stands_on_the_sheet() {
    for (record, charts, status) in DEMO {
        let json = report(record, charts, status);
        let forms = [
            words_of_html(&sheet(record, charts, "html", status)),
            words_of_text(&sheet(record, charts, "text", status)),
        ];
        for words in &forms {
            let has = |text: &str| {
                let text = squeezed(text);
                assert!(words.contains(&text), "{record} {charts:?} lacks `{text}` in\n{words}");
            };
            for finding in json["findings"].as_array().unwrap() {
                has(finding["message"].as_str().unwrap().trim_end_matches('.'));
                has(finding["next"].as_str().unwrap().trim_end_matches('.'));
                has(&format!(
                    "({}; basis: {})",
                    finding["id"].as_str().unwrap(),
                    finding["basis"].as_str().unwrap()
                ));
            }
            for question in json["screening"]["questions"].as_array().unwrap() {
                has(question["question"].as_str().unwrap());
            }
            let marks = json["record"]["marks"].as_array().unwrap();
            for mark in marks.iter().chain(json["record"]["other_limb"].as_array().into_iter().flatten()) {
                has(&cm(&mark["girth_cm"]));
                has(&cm(&mark["at_cm"]));
                for reading in mark["readings_cm"].as_array().unwrap() {
                    has(&cm(reading));
                }
            }
            for length in json["record"]["lengths"].as_array().unwrap() {
                has(&format!("{} cm", cm(&length["length_cm"])));
            }
            for limit in json["limits"].as_array().unwrap() {
                has(limit.as_str().unwrap());
            }
            for chart in json["charts"].as_array().unwrap() {
                // Columns of the text sheet break the label before its last word.
                has(chart["label"].as_str().unwrap().trim_end_matches(" (invented)"));
            }
            has(json["summary"]["sentence"].as_str().unwrap());
            has(json["summary"]["next"].as_str().unwrap());
        }
    }
}

/// Whole mmHg, ties away from zero, as the design prints them.
fn whole(value: &Value) -> String {
    format!("{:.0}", value.as_f64().unwrap().round())
}

#[test]
fn pressures_and_margins_of_the_size_shown_stand_on_the_sheet() {
    let charts = ["sleeve-chart-a", "sleeve-chart-b"];
    let json = report("first-visit", &charts, 0);
    let words = words_of_html(&sheet("first-visit", &charts, "html", 0));
    let pressure = json["pressure"].as_array().unwrap().iter().find(|one| one["size"] == "3 wide").unwrap();
    let mut seen = 0;
    for mark in pressure["marks"].as_array().unwrap() {
        let cell = format!(
            "{} ({}\u{2013}{})",
            whole(&mark["pressure_mmhg"]),
            whole(&mark["low_mmhg"]),
            whole(&mark["high_mmhg"])
        );
        assert!(words.contains(&cell), "{cell}");
        seen += 1;
    }
    assert_eq!(seen, 5);
    let chart = json["charts"].as_array().unwrap().iter().find(|one| one["size"] == "3 wide").unwrap();
    let size = chart["sizes"].as_array().unwrap().iter().find(|one| one["size"] == "3 wide").unwrap();
    for measure in size["measures"].as_array().unwrap() {
        let room = format!(
            "{}\u{2013}{} {} cm room",
            cm(&measure["low_cm"]),
            cm(&measure["high_cm"]),
            cm(&measure["margin_cm"])
        );
        assert!(words.contains(&room), "{room}");
    }
}

#[test]
fn same_input_same_bytes_in_every_form() {
    let folder = folder(&[]);
    for (record, charts, status) in DEMO {
        for ending in ["html", "txt", "pdf"].iter().filter(|one| **one != "pdf" || cfg!(feature = "pdf")) {
            let path = folder.path().join(format!("one.{ending}"));
            let write = || {
                let path = path.to_str().unwrap();
                run_with(&arguments("sheet", record, charts), &["-o", path, "--force"]).expect_status(status);
                std::fs::read(path).unwrap()
            };
            assert_eq!(write(), write(), "{record} {ending}");
        }
    }
}

/// A folder with a record and a chart, for names and overwriting.
fn visit(client: &str) -> tempfile::TempDir {
    let record = std::fs::read_to_string(root().join("demo/first-visit.yaml")).unwrap();
    folder(&[("visit.yaml", &record.replace("K-0417", client))])
}

fn run_there(there: &Path, more: &[&str]) -> Ran {
    let args: Vec<&str> = ["sheet", "visit.yaml", "--today", TODAY].iter().chain(more).copied().collect();
    run_in(there, &args, None)
}

#[test]
fn the_name_is_made_of_client_side_limb_and_date() {
    let there = visit("K-0417");
    let ran = run_there(there.path(), &["--format", "html"]).expect_status(0);
    assert_eq!(ran.stderr, "the sheet is K-0417-left-arm-2026-03-14.html\n");
    assert!(ran.stdout.is_empty());
    assert!(there.path().join("K-0417-left-arm-2026-03-14.html").exists());
    run_there(there.path(), &["--format", "text"]).expect_status(0);
    assert!(there.path().join("K-0417-left-arm-2026-03-14.txt").exists());
    let odd = visit("../..//a b\u{142}");
    run_there(odd.path(), &["--format", "text"]).expect_status(0);
    assert!(odd.path().join("a-b\u{142}-left-arm-2026-03-14.txt").exists());
}

#[test]
fn an_existing_file_is_kept_unless_forced() {
    let there = visit("K-0417");
    let path = there.path().join("s.html");
    std::fs::write(&path, "mine").unwrap();
    let ran = run_there(there.path(), &["-o", "s.html"]).expect_status(2);
    assert!(ran.stderr.contains("exists and is kept"), "{}", ran.stderr);
    assert_eq!(std::fs::read_to_string(&path).unwrap(), "mine");
    run_there(there.path(), &["-o", "s.html", "--force"]).expect_status(0);
    assert!(std::fs::read_to_string(&path).unwrap().starts_with("<!DOCTYPE html>"));
    let left: Vec<_> = std::fs::read_dir(there.path()).unwrap().collect();
    assert_eq!(left.len(), 2, "no part file is left: {left:?}");
}

#[test]
fn an_unknown_ending_is_told_before_anything_is_read() {
    for (name, says) in [("s.docx", "`.docx`"), ("s", "no ending")] {
        let ran = run(&["sheet", "nowhere.yaml", "-o", name]).expect_status(2);
        assert!(ran.stderr.contains(says) && ran.stderr.contains("`.html`"), "{}", ran.stderr);
        assert!(!ran.stderr.contains("nowhere"), "{}", ran.stderr);
    }
    let ran = run(&["sheet", "nowhere.yaml", "-o", "-"]).expect_status(2);
    assert!(ran.stderr.contains("--format"), "{}", ran.stderr);
}

#[cfg(not(feature = "pdf"))]
#[test]
fn a_build_without_pdf_says_so() {
    let ran = run(&["sheet", "nowhere.yaml", "-o", "s.pdf"]).expect_status(2);
    assert!(ran.stderr.contains("this build has no PDF"), "{}", ran.stderr);
}

/// The client's leaf of an HTML sheet.
fn client_leaf(html: &str) -> String {
    let at = html.find("class=\"leaf client\"").unwrap();
    words_of_html(&format!("<body>{}", &html[at - 9..]))
}

#[test]
fn only_try_on_gives_the_client_a_garment() {
    for (record, charts, status) in DEMO {
        let outcome = report(record, charts, status)["outcome"].clone();
        let html = sheet(record, charts, "html", status);
        let leaf = client_leaf(&html);
        let fits = outcome == "try-on";
        assert_eq!(leaf.contains("No garment to wear from this sheet yet"), !fits, "{record} {outcome}");
        assert_eq!(html.contains("Any \u{201c}no\u{201d}: take it off."), fits, "{record} {outcome}");
        for sign in ["numb", "hot, red", "get your breath", "call"] {
            assert!(leaf.contains(sign), "{record} lacks `{sign}`: {leaf}");
        }
        assert!(!leaf.contains("mmHg"), "pressures are not for the client's leaf: {leaf}");
        assert!(!html.contains("wear overnight") && !leaf.contains("guaranteed"));
    }
}

#[test]
fn a_stop_is_a_stop_on_every_page() {
    let charts = ["stocking-chart-a", "stocking-chart-b"];
    let html = sheet("stop", &charts, "html", 3);
    let words = words_of_html(&html);
    assert!(words.contains("STOP: DO NOT FIT ANY GARMENT FROM THIS SHEET"));
    assert!(!words.contains("go on to a trial fitting") && !words.contains("Try on"), "{words}");
    for table in html.split("<caption>").skip(1) {
        let caption = &table[..table.find("</caption>").unwrap()];
        let about_garment = caption.contains("chart") || caption.contains("looked at");
        assert!(!about_garment || caption.contains("Figures only, do not fit."), "{caption}");
    }
    for page in sheet("stop", &charts, "text", 3).split('\u{c}') {
        let head: Vec<&str> = page.lines().take(2).collect();
        assert!(head[0].starts_with("K-0561 \u{b7} LEFT LEG \u{b7} STOP: DO NOT FIT"), "{head:?}");
        assert_eq!(head[1], "measured 2026-03-14 \u{b7} printed 2026-03-14");
    }
}

#[test]
fn every_text_page_has_its_number_and_fits_the_paper() {
    for (record, charts, status) in DEMO {
        for (paper, most) in [("a4", 66), ("letter", 62)] {
            let ran = run_with(
                &arguments("sheet", record, charts),
                &["--format", "text", "-o", "-", "--paper", paper],
            );
            let text = ran.expect_status(status).stdout;
            let pages: Vec<&str> = text.split('\u{c}').collect();
            for (place, page) in pages.iter().enumerate() {
                assert!(page.lines().count() <= most, "{record}: {} lines", page.lines().count());
                let first = page.lines().next().unwrap();
                assert!(first.ends_with(&format!("page {} of {}", place + 1, pages.len())), "{first}");
                for line in page.lines() {
                    assert!(line.chars().count() <= 78, "{record}: {line}");
                }
            }
        }
    }
}

#[test]
fn the_home_routine_stands_only_where_it_was_taught() {
    let there = visit("K-0417");
    let chart = std::fs::read_to_string(root().join("demo/sleeve-chart-d.yaml")).unwrap();
    std::fs::write(there.path().join("chart.yaml"), chart).unwrap();
    let both = ["--chart", "chart.yaml", "--format", "html", "-o", "-"];
    let without = run_there(there.path(), &both).expect_status(0).stdout;
    assert!(!without.contains("What you were taught"));
    let path = there.path().join("visit.yaml");
    let record = std::fs::read_to_string(&path).unwrap();
    std::fs::write(&path, record + "taught: [home-routine]\n").unwrap();
    let with = run_there(there.path(), &both).expect_status(0).stdout;
    assert!(with.contains("What you were taught"));
}

#[test]
fn text_of_the_user_stays_text() {
    let evil = "</style><script>alert(1)</script>\\\"}'&";
    let there = visit(&format!("'{}'", evil.replace('\'', "''")));
    let html = run_there(there.path(), &["--format", "html", "-o", "-"]).expect_status(0).stdout;
    assert!(!html.contains("<script") && html.matches("</style>").count() == 1, "{html}");
    assert!(words_of_html(&html).contains(evil));
    for outside in ["http:", "https:", "url(", "@import", "<link", "src="] {
        let found = html.replace("http://www.w3.org/2000/svg", "").contains(outside);
        assert!(!found, "`{outside}`: nothing is fetched");
    }
}

/// A record with twenty marks, letters from several alphabets, and findings in number.
fn long_record() -> String {
    let mut text = String::from(
        "tapeline: record/1\nclient: K\u{153}\u{142}\u{151}\u{3b1}-0099\nmeasured: 2025-11-20\nmeasured_by: \u{141}ucja \u{150}ri \u{3b1}\u{3b2}\nunits: {length: cm}\nlimb: left arm\naffected: left\nposture: seated, the arm supported on a cushion at the height of the heart, palm down, after ten minutes of rest\npositions_from: wrist\nmarks:\n  - {landmark: wrist, at: 0, girth: 16.9, again: 18.1}\n  - {landmark: forearm, at: 14, girth: 25.6, again: 26.4}\n  - {landmark: elbow, at: 23, girth: 27.6}\n  - {landmark: upper-arm, at: 33, girth: 32.4, again: 33.6}\n  - {landmark: axilla, at: 42, girth: 37.2}\n",
    );
    for (at, girth) in [
        (2, 17.5),
        (4, 18.4),
        (5, 19.0),
        (6, 19.8),
        (7, 20.8),
        (8, 21.6),
        (9, 22.4),
        (10, 23.1),
        (12, 24.4),
        (16, 26.0),
        (18, 26.4),
        (20, 26.9),
        (26, 28.9),
        (29, 30.4),
        (37, 34.8),
    ] {
        writeln!(text, "  - {{at: {at}, girth: {girth:.1}}}").unwrap();
    }
    text.push_str("lengths: {wrist to axilla: 42}\nobserved: {hand_swelling: yes, pitting: yes, folds: no, distortion: no}\nscreening: {asked_on: 2025-11-20, by: R2, none_of: [circulation, infection], yes: [weak-hands, tingling, reduced-feeling, fragile-skin, open-wound, cannot-remove-alone, cannot-report, pregnancy-child-frail, new-two-sided-swelling, suspected-recurrence], no: [severe-heart-failure, moderate-heart-failure, suspected-skin-cancer, deep-folds, still-reducing, dialysis-access, line-or-device]}\nallergies: []\n");
    text
}

#[test]
fn a_long_case_keeps_its_order_and_its_letters() {
    let chart = std::fs::read_to_string(root().join("demo/sleeve-chart-d.yaml")).unwrap();
    let chart = chart.replacen("label: ", "label: a chart with a very long name that has to be broken over lines, \u{153}\u{142}\u{151}\u{3b1}, ", 1);
    let there = folder(&[("visit.yaml", &long_record()), ("chart.yaml", &chart)]);
    let run_form = |form: &str| {
        run_there(there.path(), &["--chart", "chart.yaml", "--format", form, "-o", "-"])
            .expect_status(1)
            .stdout
    };
    let json = run_in(
        there.path(),
        &["check", "visit.yaml", "--chart", "chart.yaml", "--today", TODAY, "--format", "json"],
        None,
    )
    .json();
    let findings = json["findings"].as_array().unwrap();
    assert!(findings.len() >= 12, "{} findings", findings.len());
    let html = run_form("html");
    for words in [words_of_html(&html), words_of_text(&run_form("text"))] {
        for finding in findings {
            let message = squeezed(finding["message"].as_str().unwrap().trim_end_matches('.'));
            assert!(words.contains(&message), "{message}");
        }
        for letters in ["K\u{153}\u{142}\u{151}\u{3b1}-0099", "\u{141}ucja \u{150}ri \u{3b1}\u{3b2}"] {
            assert!(words.contains(letters), "{letters}");
        }
        // Marks in order from the hand: twenty girths, each after the one before.
        let mut from = words.find("MARK BY MARK").or(words.find("Mark by mark")).unwrap();
        for mark in json["record"]["marks"].as_array().unwrap() {
            let girth = cm(&mark["girth_cm"]);
            from += words[from..].find(&girth).unwrap_or_else(|| panic!("{girth} out of order"));
        }
    }
    assert!(labels_apart(&html) >= 20);
    if cfg!(feature = "pdf") {
        run_there(there.path(), &["--chart", "chart.yaml", "-o", "long.pdf"]).expect_status(1);
        assert!(std::fs::read(there.path().join("long.pdf")).unwrap().starts_with(b"%PDF-1.7"));
    }
}

/// Labels that begin at the same place of the drawing stand at least a letter's height apart.
fn labels_apart(html: &str) -> usize {
    let number = |tag: &str, name: &str| -> f64 {
        let at = tag.find(&format!(" {name}=\"")).unwrap() + name.len() + 3;
        tag[at..at + tag[at..].find('"').unwrap()].parse().unwrap()
    };
    let mut labels: Vec<(i64, f64)> = html
        .split("<text")
        .skip(1)
        .map(|rest| &rest[..rest.find('>').unwrap()])
        .filter(|tag| tag.contains("\"start\""))
        .map(|tag| ((number(tag, "x") * 100.0) as i64, number(tag, "y")))
        .collect();
    labels.sort_by(|one, other| one.partial_cmp(other).unwrap());
    for pair in labels.windows(2) {
        assert!(pair[0].0 != pair[1].0 || pair[1].1 - pair[0].1 >= 8.0, "{pair:?}");
    }
    labels.len()
}

#[cfg(feature = "pdf")]
#[test]
fn a_letter_that_the_font_lacks_is_named_and_nothing_is_written() {
    // Han is not in the font; Hebrew is, but would be set in the wrong order; e with a mark of its own
    // is two characters.
    for (client, says) in
        [("K-\u{6f22}", "`\u{6f22}` (U+6F22)"), ("K-\u{5d0}", "U+05D0"), ("Ke\u{301}", "as one character")]
    {
        let there = visit(client);
        let ran = run_there(there.path(), &["-o", "s.pdf"]).expect_status(2);
        assert!(ran.stderr.contains(says), "{}", ran.stderr);
        assert!(!there.path().join("s.pdf").exists());
        run_there(there.path(), &["-o", "s.html"]).expect_status(0);
    }
}
