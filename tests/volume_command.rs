//! The `volume` command as it is run.

use std::fmt::Write as _;
use std::fs;

use serde_json::Value;

use crate::made::near;
use crate::support::{Ran, run, run_in};
use crate::worked_volume::{A1, A2, U1, U2};

fn list(girths: &[f64], indent: &str) -> String {
    let mut lines = String::new();
    for (at, girth) in girths.iter().enumerate() {
        let named = match at {
            0 => "landmark: wrist, ",
            6 => "landmark: elbow, ",
            _ => "",
        };
        let _ = writeln!(lines, "{indent}- {{{named}at: {}, girth: {girth}}}", 4 * at);
    }
    lines
}

fn record(on: &str, affected: &[f64], other: &[f64], more: &str) -> String {
    format!(
        "tapeline: record/1\nclient: L-0417\nmeasured_on: {on}\nlimb: left arm\naffected: left\n\
         positions_from: wrist\nunits: {{length: cm}}\n{more}marks:\n{}other_limb:\n  marks:\n{}",
        list(affected, "  "),
        list(other, "    ")
    )
}

/// A folder with two visits, the arm of the worked cases.
fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("one.yaml"), record("2026-02-14", &A1, &U1, "baseline: yes\n")).unwrap();
    fs::write(folder.path().join("two.yaml"), record("2026-03-14", &A2, &U2, "")).unwrap();
    folder
}

fn volume(folder: &tempfile::TempDir, args: &[&str]) -> Ran {
    let mut all = vec!["volume"];
    all.extend(args);
    all.extend(["--today", "2026-03-14"]);
    run_in(folder.path(), &all, None)
}

fn figure(made: &Value, pointer: &str) -> f64 {
    made.pointer(pointer).and_then(Value::as_f64).unwrap_or_else(|| panic!("no figure at {pointer}"))
}

#[test]
fn json_carries_the_worked_figures() {
    // Invented arm at two visits (derived): see the worked cases.
    let folder = folder();
    let made = volume(&folder, &["one.yaml", "two.yaml", "--format", "json"]).expect_status(0).json();
    near(figure(&made, "/limbs/0/volume/measured_ml"), 1_834.174_775, 3e-10);
    near(figure(&made, "/limbs/0/volume/excess_percent"), 11.660_160, 5e-8);
    assert_eq!(made["course"]["visits"].as_array().unwrap().len(), 2);
    near(figure(&made, "/course/visits/0/excess_ml"), 384.435_582, 5e-9);
    let wanted = 100.0 * (1_834.174_775 / 2_039.798_718 - 1.0);
    near(figure(&made, "/course/changes/0/change_percent"), wanted, 1e-8);
    near(figure(&made, "/course/changes/0/detectable_percent"), 1.96 * 2.0_f64.sqrt() * 1.2, 1e-12);
    assert_eq!(made["course"]["changes"][0]["beyond"], true);
    let notes = made["course"]["notes"].to_string();
    assert!(notes.contains("smaller by 50.2 %") && notes.contains("−9.4 %"), "{notes}");
    // Ten segments of frusta add up to the limb (derived).
    let segments = made["limbs"][0]["detail"]["segments"].as_array().unwrap();
    let sum: f64 = segments.iter().map(|one| one["measured_ml"].as_f64().unwrap()).sum();
    assert_eq!(segments.len(), 10);
    near(sum, 1_834.174_775, 3e-10);
}

#[test]
fn the_order_of_files_changes_nothing() {
    let folder = folder();
    let one = volume(&folder, &["one.yaml", "two.yaml", "--format", "json"]).expect_status(0);
    let other = volume(&folder, &["two.yaml", "one.yaml", "--format", "json"]).expect_status(0);
    assert_eq!(one.stdout, other.stdout);
}

#[test]
fn one_visit_has_no_course() {
    let folder = folder();
    let made = volume(&folder, &["one.yaml", "--format", "json"]).expect_status(0).json();
    assert!(made["course"].is_null());
    let text = volume(&folder, &["one.yaml"]).expect_status(0).stdout;
    assert!(text.contains("2040 mL; right arm 1655 mL; affected minus other 384 mL, 23.2 %."), "{text}");
    assert!(!text.contains("Course"), "{text}");
    volume(&folder, &["one.yaml", "--format", "svg"]).expect_status(2);
}

#[test]
fn a_page_and_a_drawing() {
    let folder = folder();
    let ran = volume(&folder, &["one.yaml", "two.yaml", "-o", "course.html"]).expect_status(0);
    assert!(ran.stdout.is_empty() && ran.stderr.contains("wrote course.html"), "{}", ran.stderr);
    let page = fs::read_to_string(folder.path().join("course.html")).unwrap();
    assert!(page.contains("<svg") && page.contains("Volume of the left arm over the visits"));
    volume(&folder, &["one.yaml", "two.yaml", "-o", "course.svg"]).expect_status(0);
    let drawing = fs::read_to_string(folder.path().join("course.svg")).unwrap();
    assert!(drawing.starts_with("<?xml") && drawing.contains("<title") && drawing.ends_with("</svg>\n"));
    // An existing file is kept; an ending that is no form is told before anything is read.
    volume(&folder, &["one.yaml", "two.yaml", "-o", "course.svg"]).expect_status(2);
    let ran = volume(&folder, &["missing.yaml", "-o", "course.doc"]).expect_status(2);
    assert!(ran.stderr.contains("`.doc` is no form of this page"), "{}", ran.stderr);
}

#[test]
fn a_worsening_stands_first() {
    // The excess of the second visit first: it grows by 192.9 mL, 10.5 % of the limb (derived), beyond twice
    // 3.326 % (house rule).
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("one.yaml"), record("2026-02-14", &A2, &U2, "")).unwrap();
    fs::write(folder.path().join("two.yaml"), record("2026-03-14", &A1, &U1, "")).unwrap();
    let made = volume(&folder, &["one.yaml", "two.yaml", "--format", "json"]).expect_status(0).json();
    assert_eq!(made["findings"][0]["id"], "worsening");
    assert_eq!(made["findings"][0]["severity"], "clear-first");
}

#[test]
fn a_spreadsheet_as_history() {
    // Six visits of a table with five marks each, the seventh a record with more (demo, invented): every volume
    // of the course is by the five that all share, as if the record had no others.
    let made = |files: &[&str]| {
        let mut args = vec!["volume"];
        args.extend(files);
        args.extend(["--today", "2026-03-14", "--format", "json"]);
        run(&args).expect_status(0).json()
    };
    let table = made(&["demo/followed/history.csv", "demo/followed/visit-7.yaml"]);
    let visits = table["course"]["visits"].as_array().unwrap();
    assert_eq!(visits.len(), 7);
    let ml = |one: &Value, key: &str| one[key].as_f64().unwrap();
    for one in &visits[..6] {
        near(ml(one, "compared_ml"), ml(one, "volume_ml"), 1e-12);
    }
    let last = &visits[6];
    assert!((ml(last, "compared_ml") - ml(last, "volume_ml")).abs() > 1.0, "{last}");
    let wanted = 100.0 * (ml(last, "compared_ml") / ml(&visits[5], "compared_ml") - 1.0);
    let changes = table["course"]["changes"].as_array().unwrap();
    let since_last = changes.iter().find(|one| one["from"] == "2026-02-16").unwrap();
    near(ml(since_last, "change_percent"), wanted, 1e-12);
    assert!(table["course"]["notes"].to_string().contains("by the 5 marks that they share"));
}
