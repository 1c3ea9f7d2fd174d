//! What reports once said wrongly because two places decided it; each test is named after the matter.

use std::fmt::Write as _;
use std::fs::File;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use tapeline::garment::{Schemes, open_chart};
use tapeline::input::Source;
use tapeline::render::{Language, Paper, plain, sheet, terminal_report};
use tapeline::report::{Report, build};

use crate::scene::{SLEEVE, Scene};
use crate::support::{folder, run_in};

fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn report(scene: &Scene) -> Report {
    build(&scene.check().0)
}

fn on_paper(report: &Report) -> String {
    flat(&plain(&sheet(report, Language::English), Paper::A4))
}

// 1. The sheet printed another chart's class, materials and size where two charts bear one label.
#[test]
fn two_charts_of_one_label_keep_their_own_class_and_size() {
    let other = SLEEVE
        .replace("class: \"2\"", "class: \"1\"")
        .replace("materials: [polyamide]", "materials: [elastane]")
        .replace("size: \"1\"", "size: \"L\"");
    // The first chart is too small everywhere; the second one takes the arm.
    let small = SLEEVE
        .replace("wrist: 14-20", "wrist: 8-9")
        .replace("wrist: 20-26", "wrist: 9-10")
        .replace("wrist: 26-32", "wrist: 10-11");
    let scene = Scene::arm().only_chart(&small).chart(&other);
    let report = report(&scene);
    let charts = &report.limbs[0].charts;
    assert_ne!(charts[0].printed, charts[1].printed, "told apart by their file");
    assert!(charts[1].printed.contains("chart-2.yaml"), "{}", charts[1].printed);
    assert!(charts[1].counted && !charts[0].counted);
    let order = on_paper(&report);
    let page = order.split("Annex").next().unwrap();
    // The band of class 1, 15 to 21 mmHg, and nothing of class 2, 23 to 32 mmHg.
    assert!(page.contains("15 to 21"), "{page}");
    assert!(!page.contains("23 to 32") && !page.contains("polyamide"), "{page}");
    assert!(page.contains(" L "), "{page}");
}

// 2. `check` refused what `gradient` passed: a relaxed girth beyond the end of the garment.
#[test]
fn a_relaxed_girth_beyond_the_end_is_a_problem_in_charts_and_garments_alike() {
    let chart = Scene::arm().chart_with("to: upper-arm", "to: forearm").problems();
    assert!(chart.iter().any(|one| one.contains("upper-arm")), "{chart:?}");
    let garment = "tapeline: garment/1\nlabel: sleeve\nlimb: arm\nfrom: wrist\nto: forearm\nunits: {length: cm}\nrelaxed: {wrist: 12.5, forearm: 20.8, upper-arm: 27}\n";
    let garment = Scene::arm().no_chart().garment(garment).problems();
    assert!(garment.iter().any(|one| one.contains("upper-arm")), "{garment:?}");
}

// 3. "Size 2 holds by girth" while every girth was 0.3 cm outside.
#[test]
fn a_size_picked_between_two_does_not_take_the_girths() {
    let gaps = SLEEVE
        .replace("wrist: 20-26", "wrist: 20.6-26")
        .replace("forearm: 30-38", "forearm: 30.6-38")
        .replace("upper-arm: 36-46", "upper-arm: 36.6-46")
        .replace("units:", "between_sizes: larger\nunits:");
    let scene = Scene::arm().only_chart(&gaps).girths("wrist@0=20.3 forearm@14=30.3 upper-arm@33=36.3");
    let report = report(&scene);
    let chart = &report.limbs[0].charts[0];
    assert_eq!(chart.verdict, "between");
    assert!(!chart.line.contains("takes"), "{}", chart.line);
    assert!(!on_paper(&report).contains("takes every girth"));
}

// 3. "The estimate", "tape and ruler" stood over sensor readings.
#[test]
fn readings_are_said_as_readings() {
    let read = "[{landmark: wrist, pressure: 28, garment: \"sleeves, size 1\"}, {landmark: forearm, pressure: 20, garment: \"sleeves, size 1\"}, {landmark: upper-arm, pressure: 12, garment: \"sleeves, size 1\"}]";
    let report = report(&Scene::arm().set("readings", read));
    let fall = &report.limbs[0].gradient[0];
    assert!(fall.sentence.starts_with("By the readings"), "{}", fall.sentence);
    assert!(!fall.sentence.contains("ruler"), "{}", fall.sentence);
}

// 3. "To the mark below" stood beside a row that is above.
#[test]
fn a_row_is_compared_with_the_row_above_it() {
    for text in [on_paper(&report(&Scene::arm())), terminal_report(&report(&Scene::arm()), 100)] {
        assert!(!text.to_lowercase().contains("mark below"), "{text}");
        assert!(text.to_lowercase().contains("above"), "{text}");
    }
}

// 4. `check` asked about a changed girth; `sheet` could not be told and printed a trial fitting.
#[test]
fn check_and_sheet_take_earlier_visits_alike() {
    let earlier =
        Scene::arm().set("measured_on", "2026-02-14").girths("wrist@0=20 forearm@14=26 upper-arm@33=31");
    let names: Vec<(String, String)> = Scene::arm().earlier(&earlier).files();
    let files: Vec<(&str, &str)> = names.iter().map(|(name, text)| (name.as_str(), text.as_str())).collect();
    let place = folder(&files);
    let mut args = vec!["check", "--today", "2026-03-14"];
    args.extend(files.iter().map(|(name, _)| *name));
    let check = run_in(place.path(), &args, None).expect_status(1);
    args[0] = "sheet";
    args.extend(["-o", "sheet.txt"]);
    run_in(place.path(), &args, None).expect_status(1);
    let sheet = flat(&std::fs::read_to_string(place.path().join("sheet.txt")).unwrap());
    for text in [flat(&check.stdout), sheet] {
        assert!(text.to_lowercase().contains("incomplete"), "{text}");
        assert!(!text.contains("TRIAL FITTING"), "{text}");
    }
}

// 5. `range: 20.5-24.5 mmHg` printed as 20 to 24; a class in kPa printed 14 decimals.
#[test]
fn a_band_is_printed_as_it_was_stated() {
    let report = report(&Scene::arm().set("prescribed", "{range: 20.5-24.5 mmHg}"));
    assert!(
        report.prescribed.as_deref().is_some_and(|said| said.contains("20.5 to 24.5 mmHg")),
        "{:?}",
        report.prescribed
    );
    assert!(on_paper(&report).contains("20.5 to 24.5 mmHg"));
    let scheme = "tapeline: scheme/1\nid: ours\nlimb: arm\nsource: invented\nclasses: [{class: \"1\", low: 2.4 kPa, high: 3.1 kPa, basis: invented}]\n";
    let source = Source::of_text("ours.yaml", scheme);
    let schemes = Schemes::with_files(vec![source]).unwrap();
    // 2.4 kPa = 18.0015 mmHg, 3.1 kPa = 23.2519 mmHg: 1 mmHg = 133.322387415 Pa by definition.
    assert_eq!(schemes.find("ours").unwrap().class("1").unwrap().spoken(), "18 to 23.3 mmHg");
}

// 6. 20,000 sizes took 8.7 s, and 100 charts of one label wrote 20 MB.
#[test]
fn many_sizes_and_many_charts_stay_linear() {
    let mut text = String::from(
        "tapeline: chart/1\nlabel: many\nlimb: arm\nfrom: wrist\nto: upper-arm\nunits: {length: cm}\nsizes_from: many.csv\n",
    );
    let mut table = String::from("size,wrist_low_cm,wrist_high_cm\n");
    for size in 0..20_000 {
        let low = 10.0 + f64::from(size) / 1000.0;
        let _ = writeln!(table, "{size},{low:.3},{:.3}", low + 0.5);
    }
    let place = folder(&[("many.csv", &table)]);
    let name = place.path().join("chart.yaml").display().to_string();
    let started = Instant::now();
    let chart =
        open_chart(Source::of_text(name, std::mem::take(&mut text)), &Schemes::default()).unwrap().chart;
    assert_eq!(chart.sizes.len(), 20_000);
    // A debug build on a busy machine; the release build has its own measure in `tests/bench`.
    assert!(started.elapsed() < Duration::from_secs(6), "{:?}", started.elapsed());

    let one = Scene::arm();
    let hundred = (0..99).fold(Scene::arm(), |scene, _| scene.chart(SLEEVE));
    let size = |scene: &Scene| serde_json::to_string(&build(&scene.check().0)).unwrap().len();
    assert!(size(&hundred) < 110 * size(&one), "{} against {}", size(&hundred), size(&one));
}

// 7. Names of garments in `readings` that match nothing were dropped in silence.
#[test]
fn a_reading_of_an_unknown_garment_is_told() {
    let scene =
        Scene::arm().set("readings", "[{landmark: wrist, pressure: 24, garment: \"slevees, size 1\"}]");
    let names = scene.files();
    let files: Vec<(&str, &str)> = names.iter().map(|(name, text)| (name.as_str(), text.as_str())).collect();
    let place = folder(&files);
    let ran = run_in(place.path(), &["check", "--today", "2026-03-14", "record.yaml", "chart-1.yaml"], None)
        .expect_status(2);
    assert!(ran.stderr.contains("slevees"), "{}", ran.stderr);
}

// 8. "Next: a certified fitter looks at it" where the finding said to ask the prescriber.
#[test]
fn the_headline_asks_whom_the_finding_asks() {
    let scene = Scene::arm().set("prescribed", "{scheme: ral-gz-387-2, class: \"1\"}");
    let report = report(&scene);
    let who: Vec<&str> = report.decision.who.iter().map(|one| one.word()).collect();
    assert_eq!(who, ["prescriber"]);
    let found = &report.findings[report.decision.findings[0]];
    assert_eq!((found.id.as_str(), &found.next), ("prescription-differs", &report.decision.next));
}

// 9. `gradient` and `check` worded one thing differently.
#[test]
fn a_chart_and_a_garment_are_worded_alike() {
    let garment = "tapeline: garment/1\nlabel: sleeve\nlimb: arm\nfrom: wrist\nto: upper-arm\nscheme: ral-gz-387-2\nclass: \"3\"\nmaterials: [polyamide]\nfabric: ../fabrics/knit-r2.yaml\nunits: {length: cm}\nrelaxed: {wrist: 12.5, forearm: 20.8, upper-arm: 27}\n";
    let scene = Scene::arm()
        .chart_with("units:", "fabric: ../fabrics/knit-r2.yaml\nunits:")
        .chart_with("class: \"2\"", "class: \"3\"")
        .garment(garment);
    let checked = scene.check();
    let said: Vec<&str> = checked.of("off-band").map(|one| one.message.as_str()).collect();
    assert_eq!(said.len(), 2, "{:?}", checked.ids());
    assert_eq!(said[0], said[1]);
    assert!(said[0].contains("class 3 of RAL-GZ 387/2"), "{}", said[0]);
}

// 10. `--help >/dev/full` ended with 0; `check missing.yaml 2>/dev/full` with 101.
#[test]
fn a_full_output_is_an_output_problem() {
    let Ok(full) = File::options().write(true).open("/dev/full") else { return };
    let program = || Command::new(env!("CARGO_BIN_EXE_tapeline"));
    let help =
        program().arg("--help").stdout(full.try_clone().unwrap()).stderr(Stdio::null()).status().unwrap();
    assert_eq!(help.code(), Some(2));
    let missing =
        program().args(["check", "missing.yaml"]).stdout(Stdio::null()).stderr(full).status().unwrap();
    assert_eq!(missing.code(), Some(2));
}
