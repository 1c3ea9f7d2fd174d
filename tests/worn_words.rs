//! What is said of several pieces, of a set, and of a bandage: whose rise it is, what lies over what, and
//! nothing that the thing does not have.
//!
//! Source: each piece is judged alone and the whole with the sum (0.83 to 1 of it: Ann Vasc Dis 2012;5:435); a
//! hand part ends the need for one; a bandage has a pull and no relaxed girth.

use tapeline::render::terminal_report;
use tapeline::report::build;

use crate::scene::{HAND_PIECE, Scene};

fn said(scene: &Scene, id: &str) -> Vec<String> {
    scene.check().of(id).map(|one| one.message.clone()).collect()
}

/// The base arm with a hand that is swollen or not, and a hand piece as the other part of the set.
fn with_hand_piece(swollen: &str) -> Scene {
    Scene::arm()
        .chart(HAND_PIECE)
        .girths("hand@-7=19 wrist@0=17 forearm@14=26 upper-arm@33=31")
        .seen("hand_swelling", swollen)
}

#[test]
fn a_hand_part_in_the_set_ends_the_need_for_one() {
    assert!(said(&with_hand_piece("yes"), "hand-part-needed").is_empty());
    let alone = Scene::arm().seen("hand_swelling", "yes");
    assert_eq!(said(&alone, "hand-part-needed").len(), 1);
    // A hand piece that takes no size is none.
    let none = Scene::arm()
        .chart(HAND_PIECE)
        .girths("hand@-7=35 wrist@0=17 forearm@14=26 upper-arm@33=31")
        .seen("hand_swelling", "yes");
    assert_eq!(said(&none, "hand-part-needed").len(), 1);
}

#[test]
fn two_parts_over_one_another_are_told_below_the_limit_too() {
    let knit = |tension: &str| crate::findings::set(tension);
    let below = knit("100");
    assert_eq!(below.check().severities("set-high").len(), 0);
    let told = said(&below, "layers");
    // 4.71277587 T/C: the sleeve's 120 N/m are 33.3 mmHg on 17 cm, the hand piece's 58.0 (23.2 % of the 40 % at
    // which it has 100) are 16.1: 49.3 together, 40.9 at 0.83 of it.
    assert!(told[0].contains("about 41 to 49 mmHg"), "{told:?}");
    assert!(said(&knit("216"), "layers").is_empty());
    assert_eq!(knit("216").check().severities("set-high"), ["clear-first"]);
}

#[test]
fn a_bandage_is_not_laid_flat() {
    let wrap = "tapeline: wrap/1\nlabel: wrap\nlimb: arm\ntension: 0.5 kgf\nwidth: 10 cm\noverlap: 50 %\nfrom: wrist\nto: axilla\n";
    let scene = Scene::arm().no_chart().garment(wrap);
    let checked = scene.check();
    let unknown: Vec<_> = checked.of("fall-unknown").collect();
    assert_eq!(unknown.len(), 1);
    assert!(unknown[0].message.contains("the limb's girth is not known at the axilla"), "{unknown:?}");
    assert_eq!(unknown[0].next, "Tape the limb at the axilla.");
    let text = terminal_report(&build(&checked.0), 200);
    for word in ["flat", "fabric curve", "relaxed girths", "folded edge"] {
        assert!(!text.contains(word), "{word}: {text}");
    }
    assert!(text.contains("by the pull of the bandage"), "{text}");
}

#[test]
fn what_begins_above_the_reference_is_not_asked_for_its_width_there() {
    let upper = Scene::arm()
        .chart_with("from: wrist", "from: forearm")
        .chart_with("wrist: 14-20, ", "")
        .chart_with("wrist: 12.5, ", "")
        .chart_with("wrist: 20-26, ", "")
        .chart_with("wrist: 16.5, ", "")
        .chart_with("wrist: 26-32, ", "")
        .chart_with("wrist: 20.5, ", "");
    let told = said(&upper, "fall-unknown");
    assert!(told.iter().all(|one| one.contains("it begins at the forearm, above the wrist")), "{told:?}");
    assert_eq!(told.len(), 1);
}

#[test]
fn only_what_is_missing_is_asked_for() {
    let bare = Scene::arm().chart_with("forearm: 20.8, ", "");
    let told = said(&bare, "fall-unknown");
    assert!(told[0].ends_with("the garment's relaxed girth is not known at the forearm."), "{told:?}");
    // A girth that was not taped is the limb's that is missing, and no width is asked for.
    let gap = Scene::arm()
        .chart_with("forearm: 22-30, ", "")
        .chart_with("forearm: 30-38, ", "")
        .chart_with("forearm: 38-46, ", "");
    let gap = gap.girths("wrist@0=17 upper-arm@33=31").check();
    let limb: Vec<_> = gap.of("fall-unknown").collect();
    assert_eq!(limb.len(), 1);
    assert!(
        limb[0].message.ends_with("the limb's girth is not known at the forearm."),
        "{:?}",
        limb[0].message
    );
    assert_eq!(limb[0].next, "Tape the limb at the forearm.");
}

#[test]
fn what_is_missing_is_measured_on_the_same_day() {
    // 0.3 cm over at the wrist, and the forearm was never measured: one visit, not two.
    let next = |girths: &str| {
        let checked = Scene::arm().girths(girths).check();
        checked.of("measure-again").map(|one| one.next.clone()).collect::<Vec<_>>()
    };
    let both = next("wrist@0=13.7 upper-arm@33=31");
    assert_eq!(
        both,
        ["Measure that girth again and write both values. Measure the forearm too; it is not in the record."]
    );
    let one = next("wrist@0=13.7 forearm@14=26 upper-arm@33=31");
    assert_eq!(one, ["Measure that girth again and write both values."]);
}

#[test]
fn stretch_is_girth_over_relaxed_girth_less_one() {
    // 17 over 12.5 is 1.36; 26 over 20.8 is 1.25; 31 over 27 is 1.148.
    let report = build(&Scene::arm().check().0);
    let stretches: Vec<f64> = report.limbs[0].pressure[0]
        .marks
        .iter()
        .filter_map(|mark| Some(mark.stretch_percent.as_ref()?.value))
        .collect();
    let wanted = [36.0, 25.0, 100.0 * (31.0 / 27.0 - 1.0)];
    assert_eq!(stretches.len(), 3);
    assert!(stretches.iter().zip(wanted).all(|(one, wanted)| (one - wanted).abs() < 1e-9), "{stretches:?}");
}

/// Two sleeves of one knit worn together, the outer one with these relaxed girths: the check of the base arm.
fn two_sleeves(outer: &str) -> crate::scene::Checked {
    let folder = tempfile::tempdir().unwrap();
    let knit = "tapeline: fabric/1\nlabel: knit\nbasis: invented\ncurve: [{stretch: 0 %, tension: 0 N/m}, {stretch: 60 %, tension: 150 N/m}]\n";
    std::fs::write(folder.path().join("knit.yaml"), knit).unwrap();
    let sleeve = |name: &str, relaxed: &str| {
        let text = format!(
            "tapeline: garment/1\nlabel: {name}\nlimb: arm\nfrom: wrist\nto: upper-arm\nmaterials: [polyamide]\nfabric: knit.yaml\nunits: {{length: cm}}\nrelaxed: {relaxed}\n"
        );
        let path = folder.path().join(format!("{name}.yaml"));
        std::fs::write(&path, text).unwrap();
        path.display().to_string()
    };
    let inner = sleeve("inner", "{wrist: 12.5, forearm: 20.8, upper-arm: 27}");
    let outer = sleeve("outer", outer);
    Scene::arm()
        .no_chart()
        .garment(&format!(
            "tapeline: garment/1\nlabel: both\nlimb: arm\nworn_together: [{{garment: {inner}}}, {{garment: {outer}}}]\n"
        ))
        .check()
}

#[test]
fn half_of_two_layers_is_no_pressure() {
    let at = |outer: &str| {
        let report = build(&two_sleeves(outer).0);
        let marks = &report.limbs[0].pressure[0].marks;
        marks.iter().map(|mark| mark.pressure_mmhg.as_ref().map(|one| one.value)).collect::<Vec<_>>()
    };
    // 26 cm on 20.8 is 25 %: 62.5 N/m, twice 4.71277587·62.5/26 with both layers.
    let whole = at("{wrist: 12.5, forearm: 20.8, upper-arm: 27}");
    assert!((whole[1].unwrap() - 2.0 * 4.712_775_87 * 62.5 / 26.0).abs() < 1e-6, "{whole:?}");
    assert_eq!(at("{wrist: 12.5, upper-arm: 27}")[1], None);
}

#[test]
fn more_limb_is_a_wider_stretch() {
    // 18 cm on 12.5 is 44 %: 110 N/m, 4.71277587·110/18; 16 cm is 28 %: 70 N/m over 16. Two layers of each.
    let checked = two_sleeves("{wrist: 12.5, forearm: 20.8, upper-arm: 27}");
    let wrist = checked.0.garments[0].swelling[0];
    assert!((wrist.swollen.unwrap() - 2.0 * 4.712_775_87 * 110.0 / 18.0).abs() < 1e-6, "{wrist:?}");
    assert!((wrist.shrunk.unwrap() - 2.0 * 4.712_775_87 * 70.0 / 16.0).abs() < 1e-6, "{wrist:?}");
}

#[test]
fn a_piece_far_off_its_own_class_is_told_by_name() {
    let folder = tempfile::tempdir().unwrap();
    // 100 N/m at 36 % on 17 cm is 27.7 mmHg: above 1.2 times 21 (class 1), inside class 2.
    let write = |name: &str, class: &str| {
        let text = format!(
            "tapeline: garment/1\nlabel: {name}\nlimb: arm\nfrom: wrist\nto: upper-arm\nscheme: ral-gz-387-2\nclass: \"{class}\"\nmaterials: [polyamide]\nfabric: knit.yaml\nunits: {{length: cm}}\nrelaxed: {{wrist: 12.5, forearm: 20.8, upper-arm: 27}}\n"
        );
        let path = folder.path().join(format!("{name}.yaml"));
        std::fs::write(&path, text).unwrap();
        path.display().to_string()
    };
    let knit = "tapeline: fabric/1\nlabel: knit\nbasis: invented\ncurve: [{stretch: 0 %, tension: 0 N/m}, {stretch: 36 %, tension: 100 N/m}]\n";
    std::fs::write(folder.path().join("knit.yaml"), knit).unwrap();
    let both = |class: &str| {
        let (inner, outer) = (write("inner", class), write("outer", "2"));
        let text = format!(
            "tapeline: garment/1\nlabel: both\nlimb: arm\nworn_together: [{{garment: {inner}}}, {{garment: {outer}, from: forearm, to: upper-arm}}]\n"
        );
        Scene::arm().no_chart().garment(&text)
    };
    let told = said(&both("1"), "off-band");
    assert!(told.iter().any(|one| one.starts_with("inner by itself: 28 mmHg at the wrist")), "{told:?}");
    assert!(said(&both("2"), "off-band").is_empty());
}

/// Source: the growth of the excess is held against what measuring a limb explains (3.3 %), the change of the excess
/// against the error of both limbs: a growth that is told as such is not called error beside it.
#[test]
fn a_growth_is_not_called_error_beside_it() {
    let base = Scene::arm().other("wrist@0=16 forearm@14=25 upper-arm@33=30");
    let then = base.clone().set("measured_on", "2026-02-14");
    let now = base.clone().girths("wrist@0=17.35 forearm@14=26.5 upper-arm@33=31.6").earlier(&then);
    let checked = now.check();
    assert_eq!(checked.severities("worsening"), ["caution"]);
    let text = terminal_report(&build(&checked.0), 200);
    let course = text.split("Course").nth(1).unwrap();
    assert!(course.contains("The excess went from"), "{course}");
    assert!(!course.contains("within measurement error"), "{course}");
    // Short of the limit it is error and is called so.
    let same = base.clone().girths("wrist@0=17.1 forearm@14=26.2 upper-arm@33=31.2").earlier(&then);
    let text = terminal_report(&build(&same.check().0), 200);
    assert!(text.contains("within measurement error"), "{text}");
}
