//! Several charts of one run, ranked in one table, and what is said where two serve alike.

use serde_json::Value;
use tapeline::render::{Language, json, sheet, terminal_report};
use tapeline::report::{RankedBlock, Report, build};

use crate::scene::{HAND_PIECE, SLEEVE, STOCKING, Scene};

/// The sleeves under another label, with parts of the text changed.
fn other(label: &str, changes: &[(&str, &str)]) -> String {
    let text = SLEEVE.replace("label: sleeves", &format!("label: {label}"));
    changes.iter().fold(text, |text, (from, to)| {
        assert!(text.contains(from), "{from}");
        text.replace(from, to)
    })
}

/// Wider at the wrist by as much on both sides: the girth of 17 has more room.
const WIDER: (&str, &str) =
    ("wrist: 14-20, forearm: 22-30, upper-arm: 26-36", "wrist: 13-21, forearm: 21-31, upper-arm: 25-37");
/// One size, and the arm far above it.
fn far() -> String {
    let text = other("far", &[]);
    let head = text.split("  - size: \"1\"").next().unwrap().to_owned();
    head + "  - {size: \"1\", girths: {wrist: 8-9, forearm: 12-13, upper-arm: 16-17}}\n"
}

fn report(scene: &Scene) -> Report {
    build(&scene.check().0)
}

fn order(report: &Report, limb: usize) -> Vec<(usize, usize, &str)> {
    let charts = &report.limbs[limb].charts;
    let one = |one: &'_ RankedBlock| (one.part, one.rank, one.chart);
    report.limbs[limb]
        .ranking
        .iter()
        .map(one)
        .map(|(part, rank, chart)| (part, rank, charts[chart].printed.as_str()))
        .collect()
}

// Design, section 6: by the outcome, then the greater margin, then as given.
#[test]
fn three_charts_are_ranked_best_first() {
    let scene = Scene::arm().only_chart(&far()).chart(SLEEVE).chart(&other("wider", &[WIDER]));
    let report = report(&scene);
    assert_eq!(order(&report, 0), [(0, 1, "wider"), (0, 2, "sleeves"), (0, 3, "far")]);
    let counted: Vec<bool> = report.limbs[0].charts.iter().map(|chart| chart.counted).collect();
    assert_eq!(counted, [false, false, true]);
    let ties: Vec<Option<&str>> = report.limbs[0].ranking.iter().map(|one| one.tie.as_deref()).collect();
    assert_eq!(
        ties,
        [
            None,
            Some(
                "wider and sleeves serve alike by the result; wider has the greater least margin, 4.0 cm against 3.0 cm."
            ),
            None
        ]
    );
}

// Source: derived; two charts of the same figures can only be told apart by their order.
#[test]
fn a_tie_is_explained_by_what_differs() {
    let alike = [
        ("class: \"2\"", "class: \"1\""),
        ("materials: [polyamide]", "materials: [elastane]"),
        ("style: sleeve", "style: sleeve with a top band"),
        (
            "relaxed: {wrist: 12.5, forearm: 20.8, upper-arm: 27}",
            "relaxed: {wrist: 12.5, forearm: 20.8, upper-arm: 27}\n    lengths: [{variant: long, wrist to upper-arm: 30-36}]",
        ),
    ];
    let scene = Scene::arm().chart(&other("second", &alike));
    let tie = report(&scene).limbs[0].ranking[1].tie.clone().unwrap();
    for part in [
        "the least margin is the same too, 3.0 cm, so the one given first is first.",
        "length (not asked against long)",
        "class (2 of RAL-GZ 387/2:2008 against 1 of RAL-GZ 387/2:2008)",
        "materials (polyamide against elastane)",
        "style (sleeve against sleeve with a top band)",
    ] {
        assert!(tie.contains(part), "{part}: {tie}");
    }
    // What is the same is not named.
    assert!(!tie.contains("fall (") && !tie.contains("pressure ("), "{tie}");
    let same = report(&Scene::arm().chart(&other("second", &[])));
    assert!(!same.limbs[0].ranking[1].tie.as_ref().unwrap().contains("differ"));
}

// House rule: knowing more never ranks a chart higher.
#[test]
fn what_stands_against_a_chart_never_lifts_it() {
    // No size, and nothing else, against no length and no contact to clear.
    let long = [(
        "relaxed: {wrist: 12.5, forearm: 20.8, upper-arm: 27}",
        "relaxed: {wrist: 12.5, forearm: 20.8, upper-arm: 31.5}\n    lengths: [{variant: long, wrist to upper-arm: 50-60}]",
    )];
    let scene = Scene::arm().only_chart(&other("worse", &long)).chart(&far());
    let report = report(&scene);
    let [first, second] = report.limbs[0].ranking.as_slice() else { panic!() };
    assert_eq!(
        (first.result.as_str(), second.result.as_str()),
        ("made to measure", "to be cleared first, no length")
    );
}

#[test]
fn two_charts_of_one_name_are_told_apart_by_their_files() {
    let scene = Scene::arm().chart(&other("sleeves", &[WIDER]));
    let report = report(&scene);
    let printed: Vec<&str> = order(&report, 0).iter().map(|(_, _, printed)| *printed).collect();
    assert!(printed.iter().all(|one| one.starts_with("sleeves [") && one.ends_with("yaml]")), "{printed:?}");
    assert_ne!(printed[0], printed[1]);
    assert!(report.limbs[0].ranking[1].tie.as_ref().unwrap().contains(printed[0]));
}

// A set: each part ranked for itself; a part with one chart has nothing to rank.
#[test]
fn parts_of_a_set_are_ranked_part_by_part() {
    let scene = Scene::arm()
        .girths("hand@-7=19 wrist@0=17 forearm@14=26 upper-arm@33=31")
        .chart(HAND_PIECE)
        .chart(&other("wider", &[WIDER]));
    let report = report(&scene);
    assert_eq!(order(&report, 0), [(0, 1, "wider"), (0, 2, "sleeves"), (1, 1, "hand pieces")]);
    let text = terminal_report(&report, 100);
    let table = table_of(&text);
    assert!(table.contains("Part") && table.contains("wider") && !table.contains("hand pieces"), "{table}");
}

fn table_of(text: &str) -> String {
    let from = text.find("Charts compared").unwrap_or_else(|| panic!("no table: {text}"));
    let rest = &text[from..];
    let to = rest.find("Ranked by what stands").unwrap();
    rest[..to].to_owned()
}

#[test]
fn both_limbs_stand_in_one_table() {
    let scene = Scene::leg().both("both legs").chart(&STOCKING.replace("label: stockings", "label: others"));
    let report = report(&scene);
    let text = terminal_report(&report, 100);
    let table = table_of(&text);
    assert_eq!(text.matches("Charts compared").count(), 1);
    assert!(table.contains("left leg") && table.contains("right leg") && table.contains("Limb"), "{table}");
}

// One chart: nothing to rank, no table.
#[test]
fn one_chart_is_not_compared() {
    let report = report(&Scene::arm());
    assert!(!terminal_report(&report, 80).contains("Charts compared"));
    assert_eq!(report.limbs[0].ranking.len(), 1);
}

// Every form of the report has the order: text, pages, JSON.
#[test]
fn every_form_has_the_order() {
    let report = report(&Scene::arm().chart(&other("wider", &[WIDER])));
    let value: Value = serde_json::from_str(&json(&report).unwrap()).unwrap();
    let ranking = value["limbs"][0]["ranking"].as_array().unwrap();
    assert_eq!(ranking.len(), 2);
    assert_eq!(
        (&ranking[0]["chart"], &ranking[0]["rank"], &ranking[0]["margin_cm"]),
        (&1.into(), &1.into(), &4.0.into())
    );
    assert_eq!(ranking[0]["tie"], Value::Null);
    let pages = sheet(&report, Language::English);
    let html = tapeline::render::html(&pages, tapeline::render::Paper::A4);
    let place = |what: &str| html.find(what).unwrap_or_else(|| panic!("{what}"));
    assert!(html.contains("Charts compared"));
    let own = &html[place("Charts compared")..];
    assert!(own.find("wider").unwrap() < own.find("sleeves").unwrap());
}

// Under stop and refer nothing invites to a fitting.
#[test]
fn a_stop_leaves_figures_only() {
    let report = report(&Scene::arm().chart(&other("wider", &[WIDER])).present("acute-infection"));
    let table = table_of(&terminal_report(&report, 100));
    assert!(table.contains("Figures only, do not fit.") && !table.contains("trial fitting"), "{table}");
}

// Law: what is known of the limb alone ranks no chart. A distorted shape asks for made to measure of every chart alike;
// the chart that only waits for a tape stays first, so that the run is not told milder for it.
#[test]
fn the_shape_of_the_limb_ranks_no_chart() {
    // 35.8 at the upper arm: 0.2 below size 2, or 1.2 below it in the other chart.
    let loose = [("upper-arm: 36-46", "upper-arm: 37-46")];
    let limb = "wrist@0=20.3 forearm@14=32.4 upper-arm@33=35.8";
    let scene = || Scene::arm().girths(limb).chart(&other("looser", &loose));
    let plain = report(&scene());
    let shaped = report(&scene().seen("distortion", "yes"));
    for one in [&plain, &shaped] {
        assert_eq!(order(one, 0), [(0, 1, "sleeves"), (0, 2, "looser")]);
        assert_eq!(one.decision.outcome, Some(tapeline::assessment::Outcome::Incomplete));
    }
    let results = |one: &Report| -> Vec<String> {
        one.limbs[0].ranking.iter().map(|chart| chart.result.clone()).collect()
    };
    assert_eq!(results(&plain), ["measure again", "made to measure"]);
    assert_eq!(results(&shaped), ["measure again, made to measure", "made to measure"]);
}

// Source: what the report has of each chart (rank, label, size, result, least margin, fall) stands in the PDF's text, in
// the order of the ranks; the text is read by the rules of PDF, not by this program.
#[cfg(feature = "pdf")]
#[test]
fn the_order_stands_in_the_pdf() {
    let report = report(&Scene::arm().chart(&other("wider", &[WIDER])));
    let pages = sheet(&report, Language::English);
    let pdf = tapeline::render::pdf(&pages, tapeline::render::Paper::A4).unwrap();
    let text = crate::pdf_text::text(&pdf).split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(!text.contains('\u{fffd}'), "{text}");
    let from = text.find("Charts compared").unwrap_or_else(|| panic!("{text}"));
    let to = from + text[from..].find("Ranked by what stands").unwrap_or_else(|| panic!("{text}"));
    let table = &text[from..to];
    for head in ["Rank", "Chart", "Size", "Result", "Least margin", "Fall"] {
        assert!(table.contains(head), "{head}: {table}");
    }
    let mut begin = 0;
    for one in &report.limbs[0].ranking {
        let label = &report.limbs[0].charts[one.chart].label;
        let margin = one.margin_cm.as_ref().unwrap().text.clone();
        for said in [&one.rank.to_string(), label, &one.shown, &one.result, &margin] {
            let at =
                table[begin..].find(said.as_str()).unwrap_or_else(|| panic!("{said} from {begin}: {table}"));
            begin += at + said.len();
        }
    }
}

// One chart has nothing to rank, on paper too.
#[cfg(feature = "pdf")]
#[test]
fn one_chart_is_not_compared_in_the_pdf() {
    let pages = sheet(&report(&Scene::arm()), Language::English);
    let text = crate::pdf_text::text(&tapeline::render::pdf(&pages, tapeline::render::Paper::A4).unwrap());
    assert!(text.contains("sleeves") && !text.contains("Charts compared"), "{text}");
}
