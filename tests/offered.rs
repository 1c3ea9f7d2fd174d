//! Sizes that are offered, or not, where none takes the limb: measured again, nearest.

use tapeline::anatomy::Landmark;
use tapeline::caseload::{Case, Prepared, Scratch};
use tapeline::quantity::Girth;
use tapeline::render::terminal_report;
use tapeline::report::build;
use tapeline::sizing::ChartVerdict;

use crate::scene::{Checked, DEFAULT, Scene};
use crate::sizing::chart;

/// A chart of these sizes.
fn of(sizes: &[&str]) -> String {
    format!(
        "tapeline: chart/1\nlabel: c\nlimb: arm\nstyle: sleeve\nfrom: wrist\nto: upper-arm\nmaterials: [polyamide]\nhand_part: no\nunits: {{length: cm}}\nsizes: [{}]\n",
        sizes.join(", ")
    )
}

/// A size, relaxed so that it falls, or with a forearm so tight above a loose wrist that it rises for certain.
fn size(label: &str, wrist: &str, rises: bool) -> String {
    let relaxed = if rises {
        "wrist: 15.5, forearm: 15, upper-arm: 26"
    } else {
        "wrist: 11, forearm: 20.5, upper-arm: 28"
    };
    format!(
        "{{size: \"{label}\", girths: {{wrist: {wrist}, forearm: 24-27, upper-arm: 29-33}}, relaxed: {{{relaxed}}}}}"
    )
}

const LIMB: &str = "wrist@0=15.8 forearm@14=25.5 upper-arm@33=31";

fn check(text: &str, girths: &str) -> Checked {
    Scene::arm().girths(girths).only_chart(text).check()
}

/// Verdict, nearest size and sizes to be measured again for by `check`.
fn checked(text: &str, girths: &str) -> (&'static str, Option<usize>, Vec<Option<usize>>) {
    let checked = check(text, girths);
    let choice = &checked.0.limbs[0].charts[0].choice;
    let again = checked.of("measure-again").map(|one| one.place.size).collect();
    (choice.verdict.word(), choice.nearest, again)
}

/// Verdict and nearest size by `batch`.
fn batched(text: &str) -> (&'static str, Option<usize>) {
    let prepared = Prepared::of(&chart(text), &DEFAULT);
    let girth = |mark, tenths| (mark, Girth::from_tenths(tenths).unwrap());
    let case = Case::of(&[
        girth(Landmark::Wrist, 1580),
        girth(Landmark::Forearm, 2550),
        girth(Landmark::UpperArm, 3100),
    ]);
    let sized = prepared.size(&case, &mut Scratch::default());
    let by_rules = prepared.size_by_rules(&case);
    assert_eq!((sized.verdict, sized.nearest), (by_rules.verdict, by_rules.nearest));
    (sized.verdict.word(), sized.nearest)
}

// House rule: of two sizes that miss by little, girths are measured again for the one that falls; where each rises, that
// is said with it, for a second tape value alone would not serve.
#[test]
fn what_is_measured_again_for_rather_falls_and_a_rise_is_said() {
    let again = ChartVerdict::MeasureAgain.word();
    let falls = of(&[&size("1", "16-18", false)]);
    assert_eq!(checked(&falls, LIMB), (again, Some(0), vec![Some(0)]));
    assert_eq!(batched(&falls), (again, Some(0)));
    let rises = of(&[&size("1", "16-18", true)]);
    assert_eq!(checked(&rises, LIMB), (again, Some(0), vec![Some(0)]));
    assert_eq!(batched(&rises), (again, Some(0)));
    let other = of(&[&size("1", "16-18", true), &size("1 slim", "16.2-18.2", false)]);
    assert_eq!(checked(&other, LIMB), (again, Some(0), vec![Some(1)]));
    assert_eq!(batched(&other), (again, Some(0)));
    let said = |text: &str| check(text, LIMB).of("measure-again").next().unwrap().message.clone();
    assert!(said(&rises).contains("its pressure rises for certain as well"), "{}", said(&rises));
    assert!(!said(&falls).contains("rises") && !said(&other).contains("rises"));
}

// Source: design, sizing: misses up to 0.5 cm; 0.51 cm is no longer one tape value's error. Repeated girths are settled.
#[test]
fn measured_again_up_to_half_a_centimetre() {
    let chart = of(&[&size("1", "16-18", false)]);
    let verdict = |wrist: &str| checked(&chart, &LIMB.replace("15.8", wrist)).0;
    assert_eq!((verdict("15.5"), verdict("15.49")), ("measure-again", "made-to-measure"));
}

// Source: derived: without a girth that the chart asks for no size is nearer than another.
#[test]
fn without_any_girth_nothing_is_near() {
    let text = of(&[&size("1", "16-18", false), &size("2", "18-20", false)]);
    let prepared = Prepared::of(&chart(&text), &DEFAULT);
    let elbow = Case::of(&[(Landmark::Elbow, Girth::from_tenths(2600).unwrap())]);
    let sized = prepared.size(&elbow, &mut Scratch::default());
    assert_eq!((sized.verdict, sized.nearest), (ChartVerdict::NotJudged, None));
    // One girth that is known makes a size the nearest.
    let wrist = Case::of(&[(Landmark::Wrist, Girth::from_tenths(1900).unwrap())]);
    assert_eq!(prepared.size(&wrist, &mut Scratch::default()).nearest, Some(1));
    let checked = check(&text, "elbow@20=26");
    let shown = &checked.0.limbs[0].charts[0];
    assert_eq!((shown.choice.verdict, shown.choice.nearest), (ChartVerdict::NotJudged, None));
    let text = terminal_report(&build(&checked.0), 100);
    assert!(!text.contains("nearest"), "{text}");
}
