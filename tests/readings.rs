//! Sensor readings: each is held against what an estimate is held against, and none is dropped in silence.
//!
//! Source: the limits as the rules state them (60 mmHg; 0.8 and 1.2 times the band; RAL-GZ 387/2 class 2 is 23
//! to 32 mmHg); a reading must never give a milder verdict than its absence.

use tapeline::render::terminal_report;
use tapeline::report::build;

use crate::findings::knitted;
use crate::scene::Scene;

/// The base arm in size 1, with these readings at wrist, forearm and upper arm.
fn read(mmhg: [&str; 3]) -> Scene {
    let [wrist, forearm, upper] = mmhg;
    let one = |landmark: &str, mmhg: &str| {
        format!("{{landmark: {landmark}, pressure: {mmhg}, garment: \"sleeves, size 1\"}}")
    };
    let all = [one("wrist", wrist), one("forearm", forearm), one("upper-arm", upper)].join(", ");
    Scene::arm().set("readings", &format!("[{all}]"))
}

#[test]
fn a_reading_above_sixty_is_cleared_first() {
    let wide = |scene: Scene| scene.chart_with("scheme: ral-gz-387-2\nclass: \"2\"\n", "");
    let above = wide(read(["60.1", "40", "20"])).check();
    assert_eq!(above.severities("pressure-high"), ["clear-first"]);
    assert_eq!(above.outcome(), "refer");
    // What is read is worn: it comes off. What is estimated is not on the limb yet.
    let next = |checked: &crate::scene::Checked| checked.of("pressure-high").next().unwrap().next.clone();
    assert!(next(&above).starts_with("Take the garment off"));
    assert!(!next(&knitted("700", "100").check()).contains("off"));
    assert!(wide(read(["60", "40", "20"])).check().severities("pressure-high").is_empty());
}

#[test]
fn a_reading_far_off_the_band_is_cleared_first() {
    // 1.2 times 32 is 38.4, 0.8 times 23 is 18.4.
    for (wrist, severities) in [("38.5", 1), ("38.4", 0), ("18.4", 0), ("18.3", 1)] {
        let report = read([wrist, "14", "9"]).check();
        assert_eq!(report.severities("off-band").len(), severities, "{wrist}");
        assert_eq!(report.outcome(), if severities == 1 { "refer" } else { "trial-fitting" }, "{wrist}");
    }
}

#[test]
fn a_reading_that_contradicts_is_told_once() {
    // 27.7 mmHg are estimated: 45 contradicts that, 38.5 does not and is above 1.2 times 32.
    let ids = |wrist: &str| {
        let readings = read([wrist, "20", "13"]);
        knitted("100", "36").set("readings", readings.value("readings")).check().above_note()
    };
    assert_eq!(ids("45"), ["rise clear-first"]);
    assert_eq!(ids("38.5"), ["off-band clear-first"]);
    assert!(ids("38.4").is_empty());
}

#[test]
fn a_reading_is_held_against_something() {
    // Without a prescription and a class, above 20 mmHg.
    let free =
        |wrist: &str| read([wrist, "14", "9"]).chart_with("scheme: ral-gz-387-2\nclass: \"2\"\n", "").check();
    assert_eq!(free("20.1").severities("nothing-to-hold"), ["clear-first"]);
    assert_eq!(free("20").severities("nothing-to-hold"), ["caution"]);
    // Below 5 mmHg hardly anything is compressed, whatever is wanted.
    assert_eq!(free("4.9").severities("off-band"), ["clear-first"]);
    assert!(free("5").severities("off-band").is_empty());
}

#[test]
fn a_reading_in_the_hollow_is_neither_decisive_nor_silent() {
    let hollow = |side: &str, ankle: &str| {
        Scene::leg()
            .set(
                "readings",
                &format!("[{{landmark: ankle, pressure: {ankle}, sensor_side: {side}}}, {{landmark: calf, pressure: 30}}, {{landmark: mid-thigh, pressure: 10}}]"),
            )
            .check()
    };
    let low = hollow("ankle-hollow", "8");
    assert_eq!(low.outcome(), "fall-unknown");
    let said: Vec<_> = low.of("reading-in-hollow").map(|one| one.message.clone()).collect();
    assert!(said[0].ends_with("The garment's own figures do not show it."), "{said:?}");
    assert_eq!(low.severities("reading-in-hollow"), ["caution"]);
    assert!(low.severities("off-band").is_empty());
    assert_eq!(hollow("front", "8").outcome(), "made-to-measure");
    assert!(hollow("ankle-hollow", "38").severities("reading-in-hollow").is_empty());
}

#[test]
fn readings_of_another_size_are_not_silent() {
    let other = Scene::arm()
        .set("readings", "[{landmark: wrist, pressure: 26, garment: \"sleeves, size 2\"}]")
        .check();
    let said: Vec<String> = other.of("readings-elsewhere").map(|one| one.message.clone()).collect();
    assert_eq!(said.len(), 1);
    assert!(said[0].contains("26 mmHg at the wrist") && said[0].contains("size 2"), "{said:?}");
}

#[test]
fn readings_without_an_estimate_are_shown() {
    let bare =
        read(["30", "20", "14"]).chart_with("    relaxed: {wrist: 12.5, forearm: 20.8, upper-arm: 27}\n", "");
    let text = terminal_report(&build(&bare.check().0), 200);
    assert!(
        text.contains("30 mmHg at the wrist, 20 mmHg at the forearm and 14 mmHg at the upper arm"),
        "{text}"
    );
}

#[test]
fn a_milder_fall_is_never_quoted_as_the_worse() {
    // 100 N/m at 36 % is 27.7 mmHg at a wrist of 17 cm; 45 were read, and both fall.
    let readings = read(["45", "30", "20"]);
    let report = knitted("100", "36").set("readings", readings.value("readings")).check();
    let said: Vec<String> = report.of("rise").map(|one| one.message.clone()).collect();
    assert!(said[0].contains("45 mmHg read, 28 estimated"), "{said:?}");
    assert!(!said[0].contains("worse") && !said[0].contains("falls"), "{said:?}");
    // Where the readings rise and the estimate falls, the rise is what counts and is told.
    let rising = read(["20", "25", "14"]);
    let report = knitted("100", "36").set("readings", rising.value("readings")).check();
    let told = |id: &str| report.of(id).map(|one| one.message.clone()).collect::<Vec<_>>().join(" ");
    assert_eq!(report.severities("rise"), ["clear-first"]);
    assert!(told("rise").contains("The worse of the two counts. By the readings it"), "{}", told("rise"));
}

#[test]
fn a_reading_of_a_size_that_two_charts_have_is_a_problem() {
    // A girth that was measured says which chart it is of by its file; a reading has to say it too.
    let other = crate::scene::SLEEVE;
    let with = |garment: &str| {
        let readings = format!("[{{landmark: wrist, pressure: 27, garment: \"{garment}\"}}]");
        Scene::arm().chart(other).set("readings", &readings)
    };
    let said = with("sleeves, size 1").problems().join(" ");
    assert!(
        said.contains("`sleeves, size 1` is a size of several charts of this run; write `sleeves ["),
        "{said}"
    );
    // What is told to write is taken.
    let remedy = said.split("write `").nth(1).unwrap().split('`').next().unwrap().to_owned();
    assert!(with(&remedy).try_check().is_ok(), "{remedy}");
    // One chart alone: the plain name will do.
    assert!(
        Scene::arm()
            .set("readings", "[{landmark: wrist, pressure: 27, garment: \"sleeves, size 1\"}]")
            .try_check()
            .is_ok()
    );
}

#[test]
fn far_off_in_the_hollow_alone_refers_nobody() {
    // The estimate at the ankle is compared with a reading far below it, taken in the hollow or beside it.
    let leg = |side: &str| {
        let at = |landmark: &str, mmhg: f64, side: &str| {
            format!("{{landmark: {landmark}, pressure: {mmhg}{side}, garment: \"stockings, size 1\"}}")
        };
        let side = format!(", sensor_side: {side}");
        crate::findings::leg_knitted(31.0).set("readings", &format!("[{}]", at("ankle", 3.0, &side)))
    };
    let hollow = leg("ankle-hollow").check();
    assert!(hollow.severities("rise").is_empty());
    assert_eq!(hollow.severities("reading-in-hollow"), ["caution"]);
    let said: Vec<String> = hollow.of("reading-in-hollow").map(|one| one.message.clone()).collect();
    assert!(said[0].contains("is 3 mmHg") && said[0].contains("are estimated"), "{said:?}");
    let beside = leg("front").check();
    assert_eq!(beside.severities("rise"), ["clear-first"]);
}

#[test]
fn readings_that_fall_as_far_as_read_are_told_once() {
    let folder = crate::support::folder(&[("arm.yaml", &{
        let one = |at: &str, mmhg: u32| format!("{{landmark: {at}, pressure: {mmhg}, garment: s}}");
        Scene::arm()
            .girths("wrist@0=17 lower-forearm@7=21 upper-arm@33=31")
            .set("prescribed", "{scheme: ral-gz-387-2, class: \"2\", by: consultant}")
            .set("readings", &format!("[{}, {}]", one("wrist", 30), one("upper-arm", 14)))
            .record()
    })]);
    let ran = crate::support::run_in(
        folder.path(),
        &["gradient", "arm.yaml", "--readings", "--today", "2026-03-14"],
        None,
    );
    let text = ran.stdout.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.contains("As far as it is known, by the readings it falls"), "{text}");
    assert!(text.contains("nothing was read at the lower forearm"), "{text}");
    assert!(text.contains("Next: Read the pressure at the lower forearm too."), "{text}");
    assert!(!text.contains("relaxed girth is not known"), "{text}");
}

/// Source: derived. Eight readings of 26 and 14 against an estimate of 20 would give √(36 − …); here eight of one
/// arm, each of SD 2.5, against 27.7 mmHg, by the command.
#[test]
fn a_clinic_collects_its_own_spread_with_fabric() {
    let folder = crate::support::folder(&[]);
    let path = folder.path();
    let scene = knitted("100", "36").set(
        "readings",
        "[{landmark: wrist, pressure: 33, garment: \"sleeves, size 1\"}, {landmark: forearm, pressure: 10, garment: \"sleeves, size 1\"}]",
    );
    let mut names = Vec::new();
    for record in 1..=4 {
        for (name, text) in scene.files() {
            let kind = if text.contains("record/1") { format!("arm-{record}.yaml") } else { name.clone() };
            std::fs::write(path.join(&kind), text).unwrap();
            if !names.contains(&kind) {
                names.push(kind);
            }
        }
    }
    let mut all = vec!["fabric".to_owned()];
    all.extend(names.clone());
    all.extend(["--today".to_owned(), "2026-03-14".to_owned()]);
    let run = |args: &[String]| {
        let args: Vec<&str> = args.iter().map(String::as_str).collect();
        crate::support::run_in(path, &args, None)
    };
    let eight = run(&all);
    assert_eq!(eight.status, 0, "{}", eight.stderr);
    assert!(
        eight.stdout.contains("8 readings have an estimate beside them in 4 records"),
        "{}",
        eight.stdout
    );
    assert!(eight.stdout.contains("- {id: worn-sd, value: "), "{}", eight.stdout);
    // Six are too few.
    let fewer: Vec<String> = all.iter().filter(|one| *one != "arm-4.yaml").cloned().collect();
    let six = run(&fewer);
    assert!(six.stdout.contains("takes 8 or more") && !six.stdout.contains("worn-sd"), "{}", six.stdout);
}
