//! Every finding: a record that brings it, and one that stays just short of it.

use std::sync::LazyLock;

use tapeline::finding::FindingId;

use crate::scene::{GROUPS, SLEEVE, STOCKING, Scene};
use crate::support::{folder, has_test};

/// A finding, its severity, a scene that brings it, a scene just short of it.
struct Case {
    id: &'static str,
    severity: &'static str,
    brings: Scene,
    short: Scene,
}

/// Findings that stand in tests of their own: those that only `gradient` and `pattern` bring.
const ELSEWHERE: [(&str, &str); 9] = [
    ("ring", "gradient::a_ring_is_a_mark_above_both_neighbours"),
    ("top-edge", "gradient::a_top_edge_against_the_garment_below_it"),
    ("garments-overlap", "gradient::garments_over_one_another_are_an_upper_estimate"),
    ("between-classes", "gradient::classes_between_and_beside_the_claimed_one"),
    ("class-off", "gradient::classes_between_and_beside_the_claimed_one"),
    ("calipers-differ", "gradient::a_section_that_is_not_round"),
    ("readings-mixed", "gradient::readings_give_the_verdict"),
    ("target-rises", "gradient::targets_that_cannot_be_had"),
    ("target-beyond", "gradient::targets_that_cannot_be_had"),
];

fn case(id: &'static str, severity: &'static str, brings: Scene, short: Scene) -> Case {
    Case { id, severity, brings, short }
}

/// Fabrics of straight curves: slope in N/m per unit stretch, last tested stretch in %.
fn fabric(slope: f64, last: f64) -> String {
    static FOLDER: LazyLock<tempfile::TempDir> = LazyLock::new(|| folder(&[]));
    let path = FOLDER.path().join(format!("knit-{slope}-{last}.yaml"));
    let text = format!(
        "tapeline: fabric/1\nlabel: straight\nbasis: invented\ncurve:\n  - {{stretch: 0 %, tension: 0 N/m}}\n  - {{stretch: {last} %, tension: {:.6} N/m}}\n",
        slope * last / 100.0
    );
    std::fs::write(&path, text).unwrap();
    path.display().to_string()
}

fn with_fabric(chart: &str, slope: f64, last: f64) -> String {
    format!("{chart}fabric: {}\n", fabric(slope, last))
}

/// Pressure of a straight fabric, mmHg: P = 2πk(1/C0 − 1/C), and its slopes by girth and relaxed girth.
// Source: Laplace with T = k·e, derived; 1 mmHg = 133.322387415 Pa by definition. Lengths in cm.
fn pressed(k: f64, girth: f64, relaxed: f64) -> (f64, f64, f64) {
    let unit = std::f64::consts::TAU * k * 100.0 / 133.322_387_415;
    (unit * (1.0 / relaxed - 1.0 / girth), unit / (girth * girth), -unit / (relaxed * relaxed))
}

/// SD of one pressure by tape 0.35 cm and relaxed girth 0.3 cm.
fn own_sd((_, by_girth, by_relaxed): (f64, f64, f64)) -> f64 {
    (0.35 * by_girth).hypot(0.3 * by_relaxed)
}

/// Φ by its series, independent of the program's (Abramowitz & Stegun 26.2.10).
fn phi(z: f64) -> f64 {
    let mut term = z;
    let mut sum = z;
    for n in 1..200 {
        term *= -z * z / 2.0 / f64::from(n);
        sum += term / f64::from(2 * n + 1);
    }
    0.5 + sum / std::f64::consts::TAU.sqrt()
}

/// The relaxed forearm at which the chance of a rise from wrist to forearm passes 0.2: just above, just below.
fn possible_rise() -> (f64, f64) {
    let wrist = pressed(400.0, 17.0, 12.5);
    let chance = |relaxed: f64| {
        let forearm = pressed(400.0, 26.0, relaxed);
        phi((forearm.0 - wrist.0) / own_sd(wrist).hypot(own_sd(forearm)))
    };
    let tenths = (1700..2600).find(|tenths| chance(f64::from(*tenths) / 100.0) < 0.2).unwrap();
    (f64::from(tenths - 1) / 100.0, f64::from(tenths) / 100.0)
}

/// The slope at which the chance of class 2 (23 to 32 mmHg) at the wrist falls below 0.05: just above, just below.
fn missed_class() -> (f64, f64) {
    let chance = |k: f64| {
        let wrist = pressed(k, 17.0, 12.5);
        let sd = own_sd(wrist).hypot(0.05 * wrist.0);
        phi((32.0 - wrist.0) / sd) - phi((23.0 - wrist.0) / sd)
    };
    let k = (300..600).find(|k| chance(f64::from(*k)) < 0.05).unwrap();
    (f64::from(k), f64::from(k - 1))
}

fn leg_chart(calf: &str) -> String {
    STOCKING.replace("calf: 31, mid-thigh: 45", &format!("calf: {calf}, mid-thigh: 40.4"))
}

fn no_claim() -> String {
    SLEEVE.replace("scheme: ral-gz-387-2\nclass: \"2\"\n", "")
}

fn of_record() -> Vec<Case> {
    let arm = Scene::arm;
    let earlier = |key: &str, value: &str| arm().set(key, value).set("measured", "2026-02-14");
    let observed = |key: &str| {
        arm().set(
            "observed",
            &"{hand_swelling: no, pitting: no, folds: no, distortion: no}"
                .replace(&format!("{key}: no"), &format!("{key}: yes")),
        )
    };
    vec![
        case(
            "readings-differ",
            "care",
            arm().set("marks", "[{landmark: wrist, at: 0, girth: 17, again: 17.51}, {landmark: forearm, at: 14, girth: 26}, {landmark: upper-arm, at: 33, girth: 31}]"),
            arm().set("marks", "[{landmark: wrist, at: 0, girth: 17, again: 17.5}, {landmark: forearm, at: 14, girth: 26}, {landmark: upper-arm, at: 33, girth: 31}]"),
        ),
        case("unusual-girth", "care", arm().girths("wrist@0=30.01 forearm@14=40 upper-arm@33=45"), arm().girths("wrist@0=30 forearm@14=40 upper-arm@33=45")),
        // Ratio 1.05 of forearm to wrist: 20.9 / 20 = 1.045, 21 / 20 = 1.05.
        case("unusual-proportion", "care", arm().girths("wrist@0=20 forearm@14=20.9 upper-arm@33=30"), arm().girths("wrist@0=20 forearm@14=21 upper-arm@33=30")),
        // 17 cm now; a tenth of 18.9 is 1.89, of 18.8 1.88.
        case("girth-changed", "care", arm().previous(&earlier("marks", "[{landmark: wrist, at: 0, girth: 18.9}]")), arm().previous(&earlier("marks", "[{landmark: wrist, at: 0, girth: 18.8}]"))),
        case("weight-changed", "care", arm().set("weight", "76 kg").previous(&earlier("weight", "80 kg")), arm().set("weight", "76.1 kg").previous(&earlier("weight", "80 kg"))),
        case("side-thinner", "care", arm().other("wrist@0=20 forearm@14=26 upper-arm@33=31"), arm().other("wrist@0=19.9 forearm@14=26 upper-arm@33=31")),
        case("both-affected", "note", arm().set("affected", "both"), arm().set("affected", "both").answer("new-two-sided-swelling", "yes")),
        case("girths-old", "care", arm().set("measured", "2025-12-13"), arm().set("measured", "2025-12-14")),
        case("girths-old", "review", arm().set("measured", "2025-09-13"), arm().set("measured", "2025-09-14")),
        case("dated-ahead", "review", arm().set("measured", "2026-03-15"), arm()),
        case("child", "review", arm().set("age_band", "child"), arm().set("age_band", "adult")),
        case("pitting", "care", observed("pitting"), observed("pitting").answer("still-reducing", "yes")),
        case("shape-irregular", "care", observed("folds"), observed("folds").answer("deep-folds", "yes")),
        case("shape-irregular", "care", observed("distortion"), arm()),
        case("girth-falls", "care", arm().girths("wrist@0=17 forearm@14=26 upper-arm@33=25.49"), arm().girths("wrist@0=17 forearm@14=26 upper-arm@33=25.5")),
        // 1.5 cm per cm over 5 cm is 7.5 cm.
        case("slope-steep", "care", arm().girths("wrist@0=17 forearm@5=24.51 upper-arm@33=31"), arm().girths("wrist@0=17 forearm@5=24.5 upper-arm@33=31")),
        case("not-answered", "care", arm().answer("tingling", "unknown"), arm()),
        case("screening-old", "care", arm().set("screening", &format!("{{asked_on: 2025-12-13, none_of: [{GROUPS}]}}")), arm().set("screening", &format!("{{asked_on: 2025-12-14, none_of: [{GROUPS}]}}"))),
        case("cleared-in-vain", "care", arm().answer("dialysis-access", "yes").cleared("dialysis-access", "consultant"), arm().answer("dialysis-access", "yes").cleared("dialysis-access", "renal consultant")),
        case("volume-not-compared", "care", arm().other("wrist@0=17 forearm@13=26 upper-arm@33=31"), arm().other("wrist@0=17 forearm@14=26 upper-arm@33=31")),
    ]
}

fn of_arteries() -> Vec<Case> {
    let leg = Scene::leg;
    let arterial = |text: &str| leg().set("arterial", text);
    vec![
        case(
            "arterial-old",
            "care",
            arterial("{on: 2025-09-13, abpi: 1}"),
            arterial("{on: 2025-09-14, abpi: 1}"),
        ),
        case("no-abpi", "review", leg().without("arterial"), leg()),
        case(
            "clinical",
            "review",
            arterial("{on: 2026-03-10, abpi: 1, clinical: inadequate}"),
            arterial("{on: 2026-03-10, abpi: 1, clinical: adequate}"),
        ),
    ]
}

#[expect(clippy::too_many_lines, reason = "one case a line")]
fn of_garments() -> Vec<Case> {
    let arm = Scene::arm;
    let chart = |from: &str, to: &str| {
        assert!(SLEEVE.contains(from), "{from}");
        arm().only_chart(&SLEEVE.replace(from, to))
    };
    let prescribed = |text: &str| arm().set("prescribed", text);
    let swollen = "{hand_swelling: yes, pitting: no, folds: no, distortion: no}";
    let (possible, not_possible) = possible_rise();
    let (missed, not_missed) = missed_class();
    let rising = |relaxed: f64| {
        let chart =
            SLEEVE.replace("forearm: 20.8, upper-arm: 27}", &format!("forearm: {relaxed}, upper-arm: 29}}"));
        arm().only_chart(&with_fabric(&chart, 400.0, 100.0))
    };
    let leg = |calf: &str| Scene::leg().only_chart(&with_fabric(&leg_chart(calf), 400.0, 100.0));
    vec![
        case("allergen", "stop", arm().set("allergies", "[polyamide]"), arm().set("allergies", "[latex]")),
        case(
            "materials-unknown",
            "review",
            chart("contains: [polyamide]\n", "").set("allergies", "[latex]"),
            chart("contains: [polyamide]\n", ""),
        ),
        case(
            "hand-part",
            "review",
            arm().set("observed", swollen),
            chart("hand_part: no", "hand_part: yes").set("observed", swollen),
        ),
        case(
            "hand-part",
            "review",
            chart("hand_part: no\n", "").set("observed", swollen),
            chart("hand_part: no\n", ""),
        ),
        case(
            "prescription-differs",
            "review",
            prescribed("{scheme: ral-gz-387-2, class: \"1\"}"),
            prescribed("{scheme: ral-gz-387-2, class: \"2\"}"),
        ),
        // Class 2 of RAL-GZ 387/2 is 23 to 32 mmHg.
        case(
            "prescription-differs",
            "review",
            prescribed("{range: 23-31 mmHg}"),
            prescribed("{range: 23-32 mmHg}"),
        ),
        case(
            "prescription-differs",
            "care",
            prescribed("{range: 23-32 mmHg}").only_chart(&no_claim()),
            arm().only_chart(&no_claim()),
        ),
        case("style-differs", "care", prescribed("{style: glove}"), prescribed("{style: sleeve}")),
        // A girth on the edge lies inside with a chance of half, one 0.1 mm off it with more.
        case(
            "inside-unsure",
            "care",
            chart("wrist: 15-19,", "wrist: 17-19,"),
            chart("wrist: 15-19,", "wrist: 16.99-19,"),
        ),
        case(
            "sizes-apart",
            "care",
            arm().girths("wrist@0=17 forearm@14=33 upper-arm@33=50"),
            arm().girths("wrist@0=17 forearm@14=33 upper-arm@33=40"),
        ),
        case("pressure-rises", "care", rising(possible), rising(not_possible)),
        case(
            "gradient-not-judged",
            "note",
            chart("    relaxed: {wrist: 12.5, forearm: 20.8, upper-arm: 27}\n", ""),
            arm(),
        ),
        case(
            "slack",
            "review",
            chart("forearm: 20.8, upper-arm: 27}", "forearm: 20.8, upper-arm: 31}"),
            chart("forearm: 20.8, upper-arm: 27}", "forearm: 20.8, upper-arm: 30.99}"),
        ),
        // Stretch at the wrist: 17 / 12.5 − 1 = 36 %.
        case(
            "beyond-tested",
            "care",
            arm().only_chart(&with_fabric(SLEEVE, 250.0, 35.99)),
            arm().only_chart(&with_fabric(SLEEVE, 250.0, 36.0)),
        ),
        // 2πk(1/0.125 − 1/0.17) = 60 mmHg at k = 601.2 N/m.
        case(
            "pressure-high",
            "review",
            arm().only_chart(&with_fabric(SLEEVE, 602.0, 100.0)),
            arm().only_chart(&with_fabric(SLEEVE, 601.0, 100.0)),
        ),
        case(
            "class-missed",
            "care",
            arm().only_chart(&with_fabric(SLEEVE, missed, 100.0)),
            arm().only_chart(&with_fabric(SLEEVE, not_missed, 100.0)),
        ),
        // 20 % above 25 mmHg is 30 mmHg: k = 300.6 N/m.
        case(
            "band-missed",
            "care",
            prescribed("{range: 20-25 mmHg}").only_chart(&with_fabric(&no_claim(), 301.0, 100.0)),
            prescribed("{range: 20-25 mmHg}").only_chart(&with_fabric(&no_claim(), 300.0, 100.0)),
        ),
        // Class 2, calf 50 to 80 % of the ankle: (1/C0 − 1/38) / (1/16.5 − 1/23) is 80.1 % at 24.98 cm,
        // 79.9 % at 25 cm.
        case("ratio-outside", "note", leg("24.98"), leg("25")),
    ]
}

// Control: findings-tested
#[test]
fn every_finding_comes_when_it_should_and_not_just_short_of_it() {
    for Case { id, severity, brings, short } in
        of_record().into_iter().chain(of_arteries()).chain(of_garments())
    {
        let with = brings.report();
        assert!(with.severities(id).contains(&severity), "{id}: {:?}\n{}", with.ids(), brings.record());
        let without = short.report();
        assert!(!without.severities(id).contains(&severity), "{id}: {:?}\n{}", without.ids(), short.record());
    }
}

#[test]
fn no_finding_is_without_a_test() {
    let cases: Vec<Case> = of_record().into_iter().chain(of_arteries()).chain(of_garments()).collect();
    for id in FindingId::OWN {
        let elsewhere = ELSEWHERE.iter().find(|(own, _)| *own == id.text());
        assert!(
            elsewhere.is_some() || cases.iter().any(|case| case.id == id.text()),
            "the finding `{}` has no test: add a case here, or name its test in ELSEWHERE",
            id.text()
        );
        if let Some((id, test)) = elsewhere {
            let file = test.split("::").next().unwrap();
            let source = std::fs::read_to_string(crate::support::root().join(format!("tests/{file}.rs")));
            assert!(source.unwrap().contains(&format!("\"{id}\"")), "`{test}` does not name `{id}`");
            assert!(has_test(test), "there is no test `{test}`");
        }
    }
}

#[test]
fn the_base_scenes_have_no_finding_at_all() {
    for scene in [Scene::arm(), Scene::leg()] {
        assert!(scene.report().ids().is_empty(), "{:?}", scene.report().ids());
        assert_eq!(scene.report().outcome(), Some("try-on"));
    }
}

// Control: one-cause-one-finding
#[test]
fn one_cause_is_said_once() {
    let arm = Scene::arm;
    // A slip at the wrist makes the girth fall as well; it is asked about, and that is all.
    let slip = arm().girths("wrist@0=169 forearm@14=26 upper-arm@33=31").no_chart().report();
    assert_eq!(slip.ids(), ["unusual-girth care"]);
    // Two girths outside are one question, and two falls are one finding.
    let two = arm().girths("wrist@0=5 forearm@14=8 upper-arm@33=31").no_chart().report();
    assert_eq!(two.severities("unusual-girth").len(), 1);
    let falls =
        arm().girths("wrist@0=17 @5=20 @10=19 forearm@14=26 @20=25 upper-arm@33=31").no_chart().report();
    assert_eq!(falls.severities("girth-falls"), ["care"]);
    assert!(falls.message("girth-falls").contains("one more place"));
    // What the item says is not said again by the observation.
    let yes = "{hand_swelling: no, pitting: yes, folds: yes, distortion: yes}";
    let both = arm().set("observed", yes).answer("still-reducing, deep-folds", "yes").no_chart().report();
    assert_eq!(both.ids(), ["deep-folds review", "still-reducing care"]);
    // A change that is asked about as an unusual girth is not asked about twice.
    let changed = arm()
        .girths("wrist@0=31 forearm@14=40 upper-arm@33=45")
        .no_chart()
        .previous(&arm().girths("wrist@0=20 forearm@14=39 upper-arm@33=44").set("measured", "2026-02-14"))
        .report();
    assert!(changed.severities("girth-changed").is_empty(), "{:?}", changed.ids());
}

#[test]
fn folds_or_distortion_make_every_chart_made_to_measure() {
    // Source: Lymphoedema Framework 2006.
    for key in ["folds", "distortion"] {
        let observed = "{hand_swelling: no, pitting: no, folds: no, distortion: no}";
        let scene =
            Scene::arm().set("observed", &observed.replace(&format!("{key}: no"), &format!("{key}: yes")));
        let report = scene.chart(SLEEVE).report();
        assert_eq!(report.outcome(), Some("made-to-measure"));
        for chart in report.0["charts"].as_array().unwrap() {
            assert_eq!(chart["outcome"], "made-to-measure");
            assert_eq!(chart["verdict"], "size");
        }
    }
}

#[test]
fn exempt_falls_are_not_said() {
    // Hand to wrist, forefoot to ankle, calf to below the knee, and the joint.
    let arm = Scene::arm().girths("hand@-8=20 wrist@0=17 forearm@14=26 elbow@22=25 upper-arm@33=31").report();
    assert!(arm.severities("girth-falls").is_empty(), "{:?}", arm.ids());
    let leg = Scene::leg()
        .girths(
            "forefoot@0=25 instep@6=33 ankle@11=23 calf@31=38 below-knee@40=35 knee@46=37 mid-thigh@59=51",
        )
        .report();
    assert!(leg.severities("girth-falls").is_empty(), "{:?}", leg.ids());
}

#[test]
fn a_steep_slope_is_said_strongly() {
    // 2.5 cm per cm over 4 cm is 10 cm.
    let message = |forearm: &str| {
        let scene =
            Scene::arm().girths(&format!("wrist@0=15 forearm@4={forearm} upper-arm@33=31")).no_chart();
        scene.report().message("slope-steep").to_owned()
    };
    assert!(message("25.01").contains("very fast"));
    assert!(!message("25").contains("very fast"));
}
