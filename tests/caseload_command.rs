//! `cover` and `inspect` as they are run.

use std::fs;

use serde_json::Value;

use crate::support::{Ran, run_in};

const CHART: &str = "tapeline: chart/1\nlabel: plain\nlimb: arm\nunits: {length: cm}\nsizes: [{size: \"1\", girths: {wrist: 14-16, forearm: 22-25}}, {size: \"2\", girths: {wrist: 16-18, forearm: 25-28}}, {size: \"3\", girths: {wrist: 18.5-20, forearm: 28-31}}]\n";
const LIMBS: &str = "id,wrist_cm,forearm_cm\na,15,23\nb,16,25\nc,17,26\nd,17,30\ne,13,23\nf,x,23\n";

fn folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("chart.yaml"), CHART).unwrap();
    fs::write(folder.path().join("limbs.csv"), LIMBS).unwrap();
    folder
}

fn ran(folder: &tempfile::TempDir, args: &[&str]) -> Ran {
    run_in(folder.path(), args, None)
}

/// The keys of an object.
fn keys(value: &Value) -> Vec<&str> {
    value.as_object().unwrap().keys().map(String::as_str).collect()
}

// Source: derived by hand: five limbs and a bad row, three sizes; b stands on the edges of two.
#[test]
fn cover_as_json() {
    let folder = folder();
    let made = ran(&folder, &["cover", "limbs.csv", "chart.yaml", "--format", "json"]).json();
    assert_eq!(made["schema"], "tapeline.cover/1");
    assert_eq!((made["limbs"].as_u64(), made["problems"].as_u64()), (Some(5), Some(1)));
    assert_eq!(made["rows"][0]["row"], 7);
    assert_eq!(made["served"]["limbs"], 3);
    assert_eq!(made["served"]["percent"], 60.0);
    let chart = &made["charts"][0];
    assert_eq!(
        (&chart["served"]["limbs"], &chart["alike"]["limbs"], &chart["only"]["limbs"]),
        (&3.into(), &1.into(), &3.into())
    );
    assert!(chart["falls"].is_null() && made["design"].is_null());
    let all: Vec<_> = chart["sizes"]
        .as_array()
        .unwrap()
        .iter()
        .map(|size| size["only"]["limbs"].as_u64().unwrap())
        .collect();
    assert_eq!(all, [1, 1, 0]);
    // d misses size 3 by 1.5 cm at the wrist and size 2 by 2 cm; e misses size 1 by 1 cm at the wrist.
    assert_eq!(chart["missed"][0]["share"]["limbs"], 2);
    assert_eq!((&made["stock"][0]["size"], &made["stock"][1]["so_far"]["limbs"]), (&0.into(), &3.into()));
    // Every key is always there.
    let design =
        ran(&folder, &["cover", "limbs.csv", "chart.yaml", "--format", "json", "--design", "1"]).json();
    assert_eq!(keys(&made), keys(&design));
    let block = &design["design"];
    assert_eq!(
        (&block["served"]["limbs"], &block["bound"]["limbs"], &block["is_best"]),
        (&3.into(), &3.into(), &true.into())
    );
    assert!(block["no_relaxed"].as_str().unwrap().contains("fabric"));
    assert!(block["sizes"][0]["girths"][0]["relaxed_cm"].is_null());
}

// Source: the pattern of each size is held by the laws of `pattern`; here that each pressed mark has a relaxed girth below its range.
#[test]
fn designed_sizes_have_relaxed_girths() {
    let demo = crate::source::root().join("demo");
    let args = ["cover", "caseload.csv", "sleeve-chart-b.yaml", "--design", "3", "--format", "json"];
    let made = run_in(&demo, &args, None).expect_status(0).json();
    let block = &made["design"];
    assert!(block["relaxed_for"].as_str().unwrap().contains("class 2"), "{block}");
    let whole = |cm: f64| (10.0 * cm - (10.0 * cm).round()).abs() < 1e-9;
    for size in block["sizes"].as_array().unwrap() {
        for range in size["girths"].as_array().unwrap() {
            let (low, relaxed) = (range["low_cm"].as_f64().unwrap(), range["relaxed_cm"].as_f64());
            assert!(relaxed.is_none_or(whole), "{range}");
            assert!(range["landmark"] == "elbow" || relaxed.is_some_and(|relaxed| relaxed < low), "{range}");
        }
    }
    assert!(
        block["bound"]["limbs"].as_u64().unwrap() <= block["served"]["limbs"].as_u64().unwrap() + 1,
        "{block}"
    );
}

#[test]
fn inspect_draws_a_page() {
    let folder = folder();
    let done = ran(&folder, &["inspect", "chart.yaml", "-o", "chart.html"]).expect_status(1);
    assert!(done.stderr.contains("wrote chart.html"), "{}", done.stderr);
    let page = fs::read_to_string(folder.path().join("chart.html")).unwrap();
    assert_eq!(page.matches("<svg ").count(), 2);
    assert!(page.contains("A gap of 0.5 cm between size 2 and size 3 at the wrist."), "{page}");
    // The bars stand in order: each begins where its low end is.
    let refused = ran(&folder, &["inspect", "chart.yaml", "-o", "chart.pdf"]).expect_status(2);
    assert!(refused.stderr.contains("`.pdf` is no form of this page"), "{}", refused.stderr);
}

// Source: derived by hand. In steps of 0.5 cm 17.3 is 17.5 and 18.9 is 19.0: one range of 1.5 cm takes both, and
// as typed none would. What is designed is compared as its chart will compare it.
#[test]
fn a_design_is_counted_as_its_chart_will_count() {
    let folder = folder();
    let chart = |low: f64, high: f64| {
        format!(
            "tapeline: chart/1\nlabel: stepped\nlimb: arm\nunits: {{length: cm}}\nprinted_step: 5 mm\nsizes: [{{size: \"1\", girths: {{wrist: {low}-{high}}}}}]\n"
        )
    };
    fs::write(folder.path().join("limbs.csv"), "id,wrist_cm\na,17.3\nb,18.9\nc,24.1\n").unwrap();
    fs::write(folder.path().join("chart.yaml"), chart(10.0, 11.5)).unwrap();
    let made =
        ran(&folder, &["cover", "limbs.csv", "chart.yaml", "--format", "json", "--design", "1"]).json();
    let block = &made["design"];
    assert_eq!((&block["served"]["limbs"], &block["bound"]["limbs"]), (&2.into(), &2.into()), "{block}");
    let range = &block["sizes"][0]["girths"][0];
    let end = |key: &str| range[key].as_f64().unwrap();
    assert_eq!((end("low_cm"), end("high_cm")), (17.5, 19.0));
    // Read back, the chart serves what was said.
    fs::write(folder.path().join("chart.yaml"), chart(end("low_cm"), end("high_cm"))).unwrap();
    let back = ran(&folder, &["cover", "limbs.csv", "chart.yaml", "--format", "json"]).json();
    assert_eq!(back["served"]["limbs"], 2);
}

// Source: the bands of usual girths that `check` asks by; a wrist of 179 cm is one of 17.9 cm in millimetres.
#[test]
fn a_girth_that_adults_rarely_have_is_told_in_a_caseload() {
    let folder = folder();
    fs::write(folder.path().join("limbs.csv"), "id,wrist_cm,forearm_cm\na,15,23\n,,\nb,179,23\nc,16.5,26\n")
        .unwrap();
    let done = ran(&folder, &["batch", "limbs.csv", "chart.yaml", "--columns", "id,verdict,findings"]);
    let rows: Vec<&str> = done.stdout.lines().collect();
    // The row of separators alone is no limb.
    assert_eq!(rows.len(), 4, "{}", done.stdout);
    assert!(rows[2].starts_with("b,") && rows[2].contains("unusual-girth"), "{}", rows[2]);
    assert!(!rows[1].contains("unusual") && !rows[3].contains("unusual"), "{}", done.stdout);
    assert!(done.stderr.contains("1 row of 3 with a girth that adults rarely have"), "{}", done.stderr);
}

// Source: derived by hand. The other chart asks for the wrist alone and serves b, whose forearm is missing; c has
// neither a size there nor a forearm; d lacks what both ask for. A chart alone judges what it can.
#[test]
fn what_the_other_chart_serves_is_judged() {
    let folder = folder();
    fs::write(folder.path().join("limbs.csv"), "id,wrist_cm,forearm_cm\na,15,23\nb,15,\nc,20.5,\nd,,23\n")
        .unwrap();
    let wrist = "tapeline: chart/1\nlabel: wrist alone\nlimb: arm\nfrom: wrist\nto: forearm\nunits: {length: cm}\nsizes: [{size: \"1\", girths: {wrist: 14-16}}]\n";
    fs::write(folder.path().join("wrist.yaml"), wrist).unwrap();
    let cover = |files: &[&str]| {
        let args = [&["cover", "limbs.csv"], files, &["--format", "json"]].concat();
        ran(&folder, &args).expect_status(0).json()
    };
    let both = cover(&["chart.yaml", "wrist.yaml"]);
    assert_eq!((&both["served"]["limbs"], &both["not_judged"]["limbs"]), (&2.into(), &1.into()), "{both}");
    let lacking = |at: usize| both["charts"][at]["not_judged"]["limbs"].as_u64();
    assert_eq!((lacking(0), lacking(1)), (Some(2), Some(1)), "{both}");
    let one = cover(&["chart.yaml"]);
    assert_eq!((&one["served"]["limbs"], &one["not_judged"]["limbs"]), (&1.into(), &2.into()), "{one}");
    let page = ran(&folder, &["cover", "limbs.csv", "chart.yaml", "wrist.yaml"]).stdout;
    assert!(
        page.contains("Not served and not judged: 25 %, where a girth is missing that a chart asks for."),
        "{page}"
    );
    assert!(page.contains("Not judged, a girth missing: 50 %."), "{page}");
}

// Source: derived: one limb in centimetres, millimetres, inches (1 in = 2.54 cm) and metres is one limb; column by column.
#[test]
fn cover_and_batch_read_each_unit_alike() {
    let folder = folder();
    let run = |table: &str| {
        fs::write(folder.path().join("limbs.csv"), table).unwrap();
        let cover =
            ran(&folder, &["cover", "limbs.csv", "chart.yaml", "--format", "json"]).expect_status(0).json();
        let batch =
            ran(&folder, &["batch", "limbs.csv", "chart.yaml", "--columns", "id,verdict,size,margin_cm"]);
        (cover["served"]["limbs"].as_u64(), cover["charts"].to_string(), batch.expect_status(0).stdout)
    };
    let cm = run("id,wrist_cm,forearm_cm\na,15.24,22.86\nb,17.78,25.4\nc,13.9,25.4\n");
    assert_eq!(cm.0, Some(2));
    for other in [
        "id,wrist_mm,forearm_mm\na,152.4,228.6\nb,177.8,254\nc,139,254\n",
        "id,wrist_mm,forearm_cm\na,152.4,22.86\nb,177.8,25.4\nc,139,25.4\n",
        "id,wrist_cm,forearm_in\na,15.24,9\nb,17.78,10\nc,13.9,10\n",
        "id,wrist_m,forearm_mm\na,0.1524,228.6\nb,0.1778,254\nc,0.139,254\n",
    ] {
        assert_eq!(run(other), cm, "{other}");
    }
}

// Source: derived by hand: served, missed, rising and not judged are all limbs. On the one size the forearm is far
// tighter than the loose wrist: it rises on every limb that it takes (certain by stretch alone).
#[test]
fn what_rises_is_told_and_the_parts_are_the_whole() {
    let folder = folder();
    let sizes = "{size: \"1\", girths: {wrist: 14-16, forearm: 22-25, upper-arm: 26-30}, relaxed: {wrist: 13.8, forearm: 14, upper-arm: 24}}";
    let head = "tapeline: chart/1\nlabel: plain\nlimb: arm\nunits: {length: cm}\n";
    fs::write(folder.path().join("chart.yaml"), format!("{head}sizes: [{sizes}]\n")).unwrap();
    let table = "id,wrist_cm,forearm_cm,upper-arm_cm\na,15,23,28\nb,15.5,24,29\nc,19,23,28\nd,15,,28\n";
    fs::write(folder.path().join("limbs.csv"), table).unwrap();
    let made =
        ran(&folder, &["cover", "limbs.csv", "chart.yaml", "--format", "json"]).expect_status(0).json();
    let chart = &made["charts"][0];
    let counts = ["served", "rises", "not_judged"].map(|key| chart[key]["limbs"].as_u64().unwrap());
    assert_eq!(counts, [0, 2, 1], "{chart}");
    assert_eq!(chart["missed"].as_array().unwrap().len(), 1);
    assert_eq!(chart["missed"][0]["share"]["limbs"], 1);
    let page = ran(&folder, &["cover", "limbs.csv", "chart.yaml"]).stdout.replace('\n', " ");
    assert!(
        page.contains(
            "50 % not served, though a size takes every girth: on them its pressure certainly rises"
        ),
        "{page}"
    );
    // Where nothing rises nothing is said.
    fs::write(folder.path().join("chart.yaml"), CHART).unwrap();
    let page = ran(&folder, &["cover", "limbs.csv", "chart.yaml"]).stdout;
    assert!(!page.contains("certainly rises"), "{page}");
}
