//! Size charts as tables of comma-separated values.

use crate::support::{folder, run_in};

const RECORD: &str = "tapeline: record/1
client: K-0417
measured: 2026-03-14
limb: left arm
affected: left
positions_from: wrist
units: {length: cm}
marks:
  - {landmark: wrist, at: 0, girth: 16.9}
  - {landmark: forearm, at: 14, girth: 25.7}
  - {landmark: axilla, at: 42, girth: 37.2}
lengths: {wrist to axilla: 42}
";

const YAML: &str = "tapeline: chart/1
label: sleeves
limb: arm
units: {length: cm}
sizes:
  - size: \"2\"
    girths: {wrist: 14-16, forearm: 21-24, axilla: 27-31}
    relaxed: {wrist: 10.6, forearm: 15.4, axilla: 23.2}
    lengths: [{wrist to axilla: 40-44}]
  - size: \"3\"
    girths: {wrist: 16-18, forearm: 24-27, axilla: over 31}
    relaxed: {wrist: 11.6, forearm: 17.8, axilla: 27.2}
    lengths: [{wrist to axilla: 40-44}]
";

const TABLE: &str = "size,measure,low_cm,high_cm,relaxed_cm
2,wrist,14,16,10.6
2,forearm,21,24,15.4
2,axilla,27,31,23.2
2,wrist to axilla,40,44,
3,wrist,16,18,11.6
3,forearm,24,27,17.8
3,axilla,31,,27.2
3,wrist to axilla,40,44,
";

fn check(files: &[(&str, &str)], chart: &str) -> crate::support::Ran {
    let folder = folder(files);
    run_in(
        folder.path(),
        &["check", "record.yaml", "--chart", chart, "--today", "2026-03-14", "--format", "json"],
        None,
    )
}

#[test]
fn a_table_reads_like_the_chart_it_stands_for() {
    let beside = YAML.split("sizes:").next().unwrap().to_owned() + "sizes_from: sizes.csv\n";
    let yaml = check(&[("record.yaml", RECORD), ("chart.yaml", YAML)], "chart.yaml").json();
    let table =
        check(&[("record.yaml", RECORD), ("chart.yaml", &beside), ("sizes.csv", TABLE)], "chart.yaml").json();
    assert_eq!(yaml, table);
    assert_eq!(yaml["charts"][0]["size"], "3");
}

#[test]
fn a_table_alone_finds_its_limb_and_has_no_class() {
    let crlf = format!("\u{feff}{}", TABLE.replace('\n', "\r\n"));
    let found = check(&[("record.yaml", RECORD), ("sleeves.csv", &crlf)], "sleeves.csv").json();
    assert_eq!(found["charts"][0]["label"], "sleeves");
    assert_eq!(found["charts"][0]["size"], "3");
    assert!(found["pressure"][0]["reference"]["scheme"].is_null());
}

#[test]
fn millimetres_and_inches_stand_in_the_header() {
    let mm = "size,measure,low_mm,high_mm\n3,wrist,160,180\n3,forearm,240,270\n3,axilla,310,380\n";
    let found = check(&[("record.yaml", RECORD), ("sleeves.csv", mm)], "sleeves.csv").json();
    assert_eq!(found["charts"][0]["sizes"][0]["measures"][0]["low_cm"], 16.0);
}

#[track_caller]
fn refused(table: &str, wanted: &str) {
    let ran = check(&[("record.yaml", RECORD), ("sleeves.csv", table)], "sleeves.csv").expect_status(2);
    assert!(ran.stdout.is_empty());
    assert!(ran.stderr.starts_with(wanted), "wanted: {wanted}\ngot: {}", ran.stderr);
}

#[test]
fn faults_of_a_table_name_line_column_and_remedy() {
    refused("", "sleeves.csv: is empty; a table starts with its header");
    refused(
        "size;measure;low_cm\n",
        "sleeves.csv:1:1: separates its columns by semicolons; save it with commas and decimal points",
    );
    refused("size,measure,low,high\n", "sleeves.csv:1:1: has no column `low_cm`; the header is");
    refused("size,measure,low_cm,high_mm\n", "sleeves.csv:1:1: has no column `high_cm`; the header is");
    refused(
        "size,measure,low_cm,high_cm,colour\n",
        "sleeves.csv:1:1: has the column `colour`, which is not known",
    );
    refused("size,measure,low_cm,high_cm\n", "sleeves.csv:1:1: names no measure of an arm or a leg");
    refused(
        "size,measure,low_cm,high_cm\n3,wrist,16,5,18\n",
        "sleeves.csv:2:1: has 5 cells under 4 columns; a decimal comma splits a number",
    );
    refused(
        "size,measure,low_cm,high_cm\r\n3,wrist,16,18\r\n3,forearm,24,x7\r\n",
        "sleeves.csv:3:14: high_cm: `x7` is not a number",
    );
    refused(
        "size,measure,low_cm,high_cm\n3,wrist,18,16\n",
        "sleeves.csv:2:9: low_cm: the low end is above the high end",
    );
    refused(
        "size,measure,low_cm,high_cm\n3,wrist,,\n",
        "sleeves.csv:2:9: low_cm: low and high are both empty",
    );
    refused(
        "size,measure,low_cm,high_cm\n3,wrist,16,18\n3,wrist,16,18\n",
        "sleeves.csv:3:3: measure: size `3` states `wrist` twice",
    );
    refused(
        "size,measure,low_cm,high_cm\n3,wrist,16,18\n3,wrst,24,27\n",
        "sleeves.csv:3:3: measure: `wrst` is no landmark of the arm; did you mean `wrist`?",
    );
    refused(
        "size,measure,low_cm,high_cm\n3,wrist,16,18\n2,wrist,14,16\n",
        "sleeves.csv:3:1: size `2` is smaller than size `3` before it",
    );
    refused(
        "size,measure,low_cm,high_cm\n3,wrist,16,18\n4,forearm,24,27\n",
        "sleeves.csv:3:1: size `4` states forearm, size `3` states wrist",
    );
    refused(
        "size,measure,low_cm,high_cm\n3,ankle,20,22\n",
        "sleeves.csv: this chart is for the leg, but the record measures an arm",
    );
    refused(
        "size,measure,low_cm,high_cm\n\"3,wrist,16,18\n",
        "sleeves.csv:2:1: a quote is opened and not closed",
    );
}
