//! Of several limbs and charts the headline says which one it is about, and what both give together is said once.
//!
//! Source: each rule as the decision states it.

use crate::scene::{SLEEVE, Scene};
use tapeline::render::terminal_report;
use tapeline::report::build;

fn both() -> Scene {
    Scene::arm().both("both arms")
}

fn reason(scene: &Scene) -> String {
    scene.check().0.decision.reason.clone()
}

fn lines(scene: &Scene) -> Vec<String> {
    let report = build(&scene.check().0);
    report.limbs.iter().flat_map(|limb| limb.charts.iter().map(|one| one.line.clone())).collect()
}

#[test]
fn a_matter_of_one_limb_of_two_names_it() {
    // The right hand is swollen; the sleeves have no part for it.
    let swollen = both().change("right", "hand_swelling: no", "hand_swelling: yes");
    assert!(reason(&swollen).contains("Right arm: The hand is swollen"), "{}", reason(&swollen));
    let alone = Scene::arm().seen("hand_swelling", "yes");
    assert!(!reason(&alone).to_lowercase().contains("left arm"), "{}", reason(&alone));
    // The healthy left arm is not left without a reason.
    let said = lines(&swollen);
    assert!(said[0].ends_with("what stands against a fitting concerns the right arm."), "{said:?}");
    assert!(!said[1].contains("concerns"), "{said:?}");
    // Where nothing stands against either, nothing is said to.
    assert!(lines(&both()).iter().all(|one| !one.contains("concerns")));
}

#[test]
fn no_stock_size_names_the_limb_it_is_missing_for() {
    let wide = both().change("right", "girth: 17", "girth: 21.5");
    assert_eq!(reason(&wide), "Right arm: no stock size of the charts given takes every girth.");
    let alone = Scene::arm().change("marks", "girth: 17", "girth: 21.5");
    assert_eq!(reason(&alone), "No stock size of the charts given takes every girth.");
}

#[test]
fn a_matter_of_one_chart_of_two_names_it() {
    let other = SLEEVE.replace("label: sleeves", "label: finer sleeves").replace("hand_part: no\n", "");
    let two = Scene::arm().chart(&other).seen("hand_swelling", "yes");
    assert!(reason(&two).contains("leeves: The hand is swollen"), "{}", reason(&two));
}

#[test]
fn a_size_that_must_not_be_worn_is_not_said_to_be_missing() {
    // The first chart takes every girth and holds the allergen; the second takes no girth.
    let small = SLEEVE
        .replace("label: sleeves", "label: small sleeves")
        .replace("14-20", "8-9")
        .replace("20-26", "9-10")
        .replace("26-32", "10-11")
        .replace("wrist: 12.5", "wrist: 6")
        .replace("wrist: 16.5", "wrist: 7")
        .replace("wrist: 20.5", "wrist: 8");
    let both_charts = |materials: &str| {
        Scene::arm()
            .only_chart(&SLEEVE.replace("[polyamide]", materials))
            .chart(&small)
            .set("allergies", "[latex]")
    };
    let barred = both_charts("[latex]");
    assert_eq!(barred.check().outcome(), "made-to-measure");
    assert_eq!(reason(&barred), "No stock size of the charts given that may be worn takes every girth.");
    assert_eq!(both_charts("[polyamide]").check().outcome(), "trial-fitting");
}

#[test]
fn what_both_limbs_give_together_is_said_once() {
    let left = both()
        .set("affected", "left")
        .change("left", "girth: 26", "girth: 29")
        .set("confirmed", "[affected]");
    let checked = left.check();
    let places: Vec<_> = checked.of("excess").map(|one| one.place.limb).collect();
    assert_eq!(places, [Some(0)], "{:?}", checked.ids());
    let right = both()
        .set("affected", "right")
        .change("right", "girth: 26", "girth: 29")
        .set("confirmed", "[affected]");
    let places: Vec<_> = right.check().of("excess").map(|one| one.place.limb).collect();
    assert_eq!(places, [Some(1)]);
}

#[test]
fn an_estimate_inside_what_was_prescribed_is_said_to_be() {
    // Stretch 36 % of 17 cm is 76.8 N/m on the knit's curve, so 4.71278 * 76.8 / 17 = 21.3 mmHg (derived).
    let chart = SLEEVE
        .replace("scheme: ral-gz-387-2\nclass: \"2\"\n", "")
        .replace("hand_part: no", "hand_part: no\nfabric: ../fabrics/knit-r2.yaml");
    let of = |range: &str| {
        let wanted = format!("{{range: {range}, by: consultant}}");
        let checked = Scene::arm().only_chart(&chart).set("prescribed", &wanted).check();
        let told = checked.of("prescription-differs");
        told.map(|one| (one.severity.word(), one.message.clone())).collect::<Vec<_>>()
    };
    let first = "The garment offered states no class; prescribed is 18 to 25 mmHg. The estimate, 21 mmHg at the wrist, lies inside it.";
    assert_eq!(of("18-25 mmHg"), [("caution", first.to_owned())]);
    assert!(of("18-20 mmHg")[0].1.ends_with("21 mmHg at the wrist, lies outside it."));
    assert!(of("22-30 mmHg")[0].1.ends_with("21 mmHg at the wrist, lies outside it."));
    assert!(of("18-21 mmHg")[0].1.ends_with("lies inside it."));
}

#[test]
fn an_excess_that_did_not_change_is_not_smaller_by_nothing() {
    let before =
        Scene::arm().other("wrist@0=16 forearm@14=24 upper-arm@33=29").set("measured_on", "2026-03-07");
    let now = Scene::arm().other("wrist@0=16 forearm@14=24 upper-arm@33=29").earlier(&before);
    let report = build(&now.check().0);
    let course = report.course.unwrap();
    let said =
        format!("{:?}", (&course.notes, course.changes.iter().map(|one| &one.words).collect::<Vec<_>>()));
    assert!(said.contains("the same as on 2026-03-07") && !said.contains("0 %"), "{said}");
    let less = now.change("marks", "girth: 31", "girth: 30.5");
    let said = format!("{:?}", build(&less.check().0).course.unwrap().notes);
    assert!(said.contains("is smaller by"), "{said}");
}

#[test]
fn another_limb_that_was_never_measured_is_no_lost_comparison() {
    let lost = |then: bool, now: bool| {
        let other = |scene: Scene, has: bool| {
            if has { scene.other("wrist@0=16 forearm@14=24 upper-arm@33=29") } else { scene }
        };
        let before = other(Scene::arm().set("measured_on", "2026-03-01"), then);
        let scene = other(Scene::arm(), now).earlier(&before);
        format!("{:?}", build(&scene.check().0).course.unwrap().notes)
    };
    assert!(!lost(false, false).contains("cannot be compared"), "{}", lost(false, false));
    assert!(lost(false, true).contains("was not measured then"), "{}", lost(false, true));
    assert!(lost(true, false).contains("was not measured this time"), "{}", lost(true, false));
}

#[test]
fn a_size_that_takes_every_girth_and_rises_is_not_said_to_be_missing() {
    // The first chart's size rises for certain and is taken out; the second takes no girth.
    let rising = SLEEVE.replace(
        "relaxed: {wrist: 12.5, forearm: 20.8, upper-arm: 27}",
        "relaxed: {wrist: 15.9, forearm: 20.8, upper-arm: 22}",
    );
    let small = SLEEVE
        .replace("label: sleeves", "label: small sleeves")
        .replace("14-20", "8-9")
        .replace("20-26", "9-10")
        .replace("26-32", "10-11");
    for charts in [[&rising, &small], [&small, &rising]] {
        let scene = Scene::arm().only_chart(charts[0]).chart(charts[1]);
        let said = reason(&scene);
        assert!(!said.ends_with("takes every girth."), "{said}");
        assert!(said.contains("certain rise") || said.contains("taken out"), "{said}");
    }
    let none = Scene::arm().only_chart(&small);
    assert_eq!(reason(&none), "No stock size of the charts given takes every girth.");
}

#[test]
fn a_least_is_never_printed_as_about() {
    // The knit is tested to 20 % and worn at 36 % at the wrist: every figure that rests on it is a least.
    let fabric = |end: &str| {
        format!(
            "fabric: {{label: k, basis: invented, curve: [{{stretch: 0 %, tension: 0 N/m}}, {{stretch: 10 %, tension: 40 N/m}}, {{stretch: {end} %, tension: 300 N/m}}]}}"
        )
    };
    let garment = |end: &str| {
        format!(
            "tapeline: garment/1\nlabel: one\nlimb: arm\nfrom: wrist\nto: upper-arm\nscheme: ral-gz-387-2\nclass: \"2\"\nmaterials: [polyamide]\nhand_part: no\n{}\nunits: {{length: cm}}\nrelaxed: {{wrist: 12.5, forearm: 20, upper-arm: 23}}\ntop_edge: 22\n",
            fabric(end)
        )
    };
    let text = |end: &str| {
        let checked = Scene::arm().no_chart().garment(&garment(end)).try_check();
        checked.map(|one| terminal_report(&build(&one.0), 200)).map_err(|_| ())
    };
    if let (Ok(short), Ok(long)) = (text("12"), text("200")) {
        assert!(short.contains("Would press at least"), "{short}");
        assert!(long.contains("Would press about"), "{long}");
        assert!(long.contains("class 2 of RAL") || !long.contains("mmHg at the wrist, class"), "{long}");
    }
}

// Both arms, one of them affected: the other may have been measured only to compare, which has its own place.
#[test]
fn a_limb_measured_only_to_compare_is_told_its_place() {
    let next = |scene: Scene| scene.check().of("affected").next().unwrap().next.clone();
    let both = next(Scene::arm().both("both arms").set("affected", "left"));
    assert!(both.contains("only to compare stands under `other_limb` in a record of the left arm"), "{both}");
    let one = next(Scene::arm().set("affected", "right"));
    assert!(!one.contains("other_limb"), "{one}");
}

// Two limbs over two visits: every sentence of the course names its limb, and what holds of both is said once.
#[test]
fn the_course_of_two_limbs_names_the_limb() {
    let garments = "garments: [{label: sleeves, size: \"1\", given_on: 2026-02-20}], marks: ";
    let worn = |scene: Scene| scene.change("left", "marks: ", garments).change("right", "marks: ", garments);
    let before = Scene::arm().both("both arms").set("measured_on", "2026-02-14");
    let grown =
        worn(Scene::arm().both("both arms")).change("right", "girth: 31", "girth: 32.5").earlier(&before);
    let said = build(&grown.check().0).course.unwrap().said();
    // Both were given the same garment on one day: what is due is said once.
    let due = |one: &str| one.ends_with("(published)") || one.ends_with("(house rule)");
    let of_both =
        |one: &str| due(one) || one.starts_with("Before a garment") || one.contains("is not worked out");
    for one in &said {
        let named = one.starts_with("Left arm: ") || one.starts_with("Right arm: ");
        assert!(named != of_both(one), "{one}: {said:#?}");
        assert_eq!(said.iter().filter(|other| *other == one).count(), 1, "{one}");
    }
    // The arm that has grown is not called unchanged, nor is its growth called error.
    for one in said.iter().filter(|one| one.starts_with("Right arm: ")) {
        assert!(
            !one.contains("not changed") && !one.contains("Nothing has changed") && !one.contains("error"),
            "{one}"
        );
    }
    assert!(said.iter().any(|one| one.starts_with("Right arm: The limb changed by")), "{said:#?}");
    assert_eq!(said.iter().filter(|one| one.contains("Before a garment is ordered again")).count(), 1);
    // One limb: no name before its sentences.
    let one = Scene::arm().earlier(&Scene::arm().set("measured_on", "2026-02-14"));
    let said = build(&one.check().0).course.unwrap().said();
    assert!(said.iter().all(|one| !one.contains("arm: ")), "{said:#?}");
}
