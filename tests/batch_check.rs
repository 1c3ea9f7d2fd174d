//! A row of `batch` against the report of `check`, on random limbs and charts.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;
use tapeline::anatomy::Limb;
use tapeline::caseload::{Batch, BatchForm, LimbColumns, Prepared, nominal_cm, run_batch};
use tapeline::garment::{Chart, printed_labels};
use tapeline::input::RowBlocks;
use tapeline::sizing::LengthFit;

use crate::caseload::fabric_file;
use crate::random::Dice;
use crate::scene::{DEFAULT, Scene};

/// Marks of a limb: word, usual girth and step between sizes, cm.
type Marks = &'static [(&'static str, f64, f64)];
const ARM: Marks = &[
    ("wrist", 17.0, 1.6),
    ("forearm", 26.0, 2.6),
    ("elbow", 27.0, 2.6),
    ("upper-arm", 31.0, 3.2),
    ("axilla", 34.0, 3.4),
];
const LEG: Marks = &[
    ("ankle", 23.0, 2.0),
    ("calf", 38.0, 3.2),
    ("below-knee", 36.0, 3.0),
    ("knee", 40.0, 3.2),
    ("mid-thigh", 52.0, 4.0),
];

/// A chart whose measures are among `marks`; what it states of fabric, class, step, lengths and open ends is drawn.
fn chart(dice: &mut Dice, arm: bool, measures: &[usize], label: &str, fabric: &str) -> String {
    let marks = if arm { ARM } else { LEG };
    let (limb, to, scheme) =
        if arm { ("arm", "axilla", "ral-gz-387-2") } else { ("leg", "mid-thigh", "ral-gz-387-1") };
    let mut text =
        format!("tapeline: chart/1\nlabel: {label}\nlimb: {limb}\nfrom: {}\nto: {to}\n", marks[0].0);
    if dice.luck(0.7) {
        text.push_str(&format!("scheme: {scheme}\nclass: \"{}\"\n", dice.one(&["1", "2", "3"])));
    }
    if dice.luck(0.7) {
        text.push_str(&format!("fabric: {fabric}\n"));
    }
    text.push_str(dice.one(&[
        "",
        "",
        "printed_step: 0.1 cm\n",
        "printed_step: 0.5 cm\n",
        "printed_step: 0.25 in\n",
    ]));
    text.push_str(&format!("between_sizes: {}\n", dice.one(&["smaller", "larger", "fitter"])));
    text.push_str("materials: [polyamide]\nunits: {length: cm}\nsizes:\n");
    let spread = *dice.one(&[&-0.3, &-0.1, &0.0, &0.4, &1.0]);
    let (count, bare, open) = (1 + dice.below(6), dice.luck(0.2), dice.luck(0.3));
    let lengths = dice.luck(0.4);
    let tight = dice.between(0.62, 0.92);
    for size in 0..count {
        let (mut girths, mut relaxed) = (Vec::new(), Vec::new());
        for at in measures {
            let (mark, mean, grow) = marks[*at];
            let middle = mean + (size as f64 - (count - 1) as f64 / 2.0) * grow;
            let (low, high) = (middle - grow * (1.0 + spread) / 2.0, middle + grow * (1.0 + spread) / 2.0);
            girths.push(match (open && size == 0, open && size + 1 == count) {
                (true, _) => format!("{mark}: under {high:.1}"),
                (_, true) => format!("{mark}: over {low:.1}"),
                _ => format!("{mark}: {low:.1}-{high:.1}"),
            });
            if !bare && !dice.luck(0.05) {
                relaxed.push(format!("{mark}: {:.1}", middle * tight * dice.between(0.92, 1.08)));
            }
        }
        text.push_str(&format!("  - size: \"{size}\"\n    girths: {{{}}}\n", girths.join(", ")));
        if relaxed.len() > 1 {
            text.push_str(&format!("    relaxed: {{{}}}\n", relaxed.join(", ")));
        }
        if lengths {
            text.push_str(if arm {
                "    lengths: [{variant: short, wrist to axilla: 36-40}, {variant: regular, wrist to axilla: 40-44}]\n"
            } else if label == "chart b" {
                "    lengths: [{variant: short, floor to mid-thigh: 50-60}, {variant: long, floor to mid-thigh: over 60}]\n"
            } else {
                "    lengths: [{ankle to mid-thigh: 44-52}]\n"
            });
        }
    }
    text
}

/// A limb as a record and as a row of a table.
struct Drawn {
    scene: Scene,
    table: String,
}

fn limb(dice: &mut Dice, arm: bool) -> Drawn {
    let marks = if arm { ARM } else { LEG };
    let scale = dice.between(-2.2, 2.2);
    let places = dice.luck(0.5);
    let (mut head, mut row) = (vec!["id".to_owned()], vec!["x".to_owned()]);
    let mut written = Vec::new();
    let missing = dice.luck(0.15).then(|| dice.below(marks.len()));
    for (at, (mark, mean, grow)) in marks.iter().enumerate() {
        let landmark = tapeline::anatomy::Landmark::parse_word(mark).unwrap();
        if missing == Some(at) {
            continue;
        }
        let digits = *dice.one(&[&0_usize, &1, &1, &2]);
        let girth = format!("{:.digits$}", mean + grow * scale + 0.5 * grow * (dice.share() - 0.5));
        let place = f64::from(nominal_cm(landmark)) + if places { dice.between(-1.0, 1.0) } else { 0.0 };
        let place = format!("{place:.1}");
        head.push(format!("{mark}_cm"));
        row.push(girth.clone());
        if places {
            head.push(format!("{mark}_at_cm"));
            row.push(place.clone());
        }
        written.push(format!("{mark}@{place}={girth}"));
    }
    let mut lengths = Vec::new();
    let mut state = |name: &str, cm: f64, dice: &mut Dice, always: bool| {
        if always || dice.luck(0.4) {
            lengths.push(format!("{name}: {cm:.1}"));
            head.push(format!("{name}_cm"));
            row.push(format!("{cm:.1}"));
        }
    };
    // Without places in the table nothing but a stated length is known of them.
    let between = (if arm { "wrist to axilla" } else { "ankle to mid-thigh" }, if arm { 40.0 } else { 49.0 });
    state(between.0, between.1 + dice.between(-6.0, 6.0), dice, !places);
    if !arm {
        state("floor to mid-thigh", dice.between(48.0, 70.0), dice, false);
    }
    let mut scene = if arm { Scene::arm() } else { Scene::leg().set("positions_from", "heel") };
    scene = scene.no_chart().girths(&written.join(" "));
    if !lengths.is_empty() {
        scene = scene.set("lengths", &format!("{{{}}}", lengths.join(", ")));
    }
    Drawn {
        scene: scene.set("units", "{length: cm}").set("allergies", "none"),
        table: format!("{}\n{}\n", head.join(","), row.join(",")),
    }
}

/// The one row that `batch` writes, every column.
fn row(charts: &[&Chart], table: &str, arm: bool, columns: Option<&[String]>) -> Value {
    let blocks = RowBlocks::from_text("limbs.csv", table).unwrap();
    let limb = if arm { Limb::Arm } else { Limb::Leg };
    let held = LimbColumns::of(&blocks, limb, false).unwrap();
    let labels = printed_labels(charts);
    let prepared = labels.into_iter().zip(charts.iter().map(|chart| Prepared::of(chart, &DEFAULT))).collect();
    let batch = Batch::of(prepared, held, columns, BatchForm::Jsonl, &DEFAULT).unwrap();
    let mut out = Vec::new();
    let end = run_batch(&batch, blocks, 1, &mut out, &mut |_, _| {});
    assert_eq!((end.rows, end.problems), (1, 0), "{}", String::from_utf8_lossy(&out));
    serde_json::from_slice(&out).unwrap()
}

/// What a record's report says and a row of girths cannot: findings of the chart that a row leaves to `inspect`.
const OF_THE_CHART: [&str; 3] = ["weak-chart", "sizes-apart", "size-taken-out"];

// Source: derived (one implementation of the rules). Chart, size and every figure of a row are those of `check`.
#[test]
fn a_row_is_what_check_says() {
    let folder = tempfile::tempdir().unwrap();
    let fabric = fabric_file(folder.path());
    let mut verdicts: BTreeMap<String, u32> = BTreeMap::new();
    let mut beaten = 0;
    for seed in 0..400 {
        let mut dice = Dice::of(seed);
        let arm = dice.luck(0.5);
        let Drawn { mut scene, table } = limb(&mut dice, arm);
        let measures: Vec<usize> = (0..5).filter(|at| *at == 0 || dice.luck(0.7)).collect();
        let measures = if measures.len() < 2 { vec![0, 1] } else { measures };
        for label in ["chart a", "chart b", "chart a"].iter().take(1 + dice.below(3)) {
            let own: Vec<usize> = if dice.luck(0.8) { measures.clone() } else { (0..5).collect() };
            scene = scene.chart(&chart(&mut dice, arm, &own, label, &fabric));
        }
        let checked = scene.check();
        let limb = &checked.0.limbs[0];
        let charts: Vec<&Chart> = limb.charts.iter().map(|one| &one.chart).collect();
        let row = row(&charts, &table, arm, None);
        let what = || format!("seed {seed}\n{}\n{table}\n{row:#}", scene.record());
        let (at, best) = limb.charts.iter().enumerate().find(|(_, one)| one.counted).unwrap();
        beaten += u32::from(at > 0);
        let choice = &best.choice;
        *verdicts.entry(format!("{} {}", choice.verdict.word(), limb.charts.len())).or_default() += 1;
        let label = |size: Option<usize>| size.map(|size| best.size_label(size).to_owned());
        let text = |key: &str| row[key].as_str().map(str::to_owned);
        assert_eq!(text("chart").as_deref(), Some(best.printed.as_str()), "{}", what());
        assert_eq!(text("verdict").as_deref(), Some(choice.verdict.word()), "{}", what());
        assert_eq!(text("size"), label(choice.size), "{}", what());
        assert_eq!(text("nearest"), label(choice.nearest), "{}", what());
        let pair = match choice.between.as_slice() {
            [one, other, ..] => Some(format!("{} and {}", best.size_label(*one), best.size_label(*other))),
            _ => None,
        };
        assert_eq!(text("between"), pair, "{}", what());
        let length = choice.size.map(|size| &best.sizing.sizes[size].length);
        let variant = match length {
            Some(LengthFit::Takes { name, .. }) => name.as_ref().map(ToString::to_string),
            _ => None,
        };
        assert_eq!(text("variant"), variant, "{}", what());
        let margin = choice.shown().and_then(|size| best.sizing.least_margin(size));
        assert_eq!(row["margin_cm"].as_f64(), margin.map(|(tenths, _)| tenths as f64 / 100.0), "{}", what());
        let shown = choice.shown().map(|size| &best.sizing.sizes[size]);
        let measure = shown.zip(margin).map(|(size, (_, at))| size.measures[at].landmark.name());
        assert_eq!(text("measure").as_deref(), measure, "{}", what());
        let near = |key: &str, wanted: Option<f64>| {
            let found = row[key].as_f64();
            let equal = match (found, wanted) {
                (Some(found), Some(wanted)) => (found - wanted).abs() <= 1e-9 * wanted.abs().max(1.0),
                (found, wanted) => found.is_none() && wanted.is_none(),
            };
            assert!(equal, "{key}: {found:?}, check {wanted:?}\n{}", what());
        };
        near("inside_chance", shown.and_then(|size| size.inside_chance));
        near("same_again_chance", best.again.map(|again| again.chance));
        assert_eq!(text("runner_up"), label(best.again.and_then(|again| again.runner_up)), "{}", what());
        let estimated = choice.size.and_then(|size| best.shown(size)).map(|one| &one.estimated);
        let fall = estimated.and_then(|one| one.fall.as_ref());
        assert_eq!(text("grade").as_deref(), fall.map(|fall| fall.grade().word()), "{}", what());
        near("rise_chance", fall.and_then(|fall| fall.fall.chance));
        assert_eq!(
            text("rise_at").as_deref(),
            fall.and_then(|fall| fall.fall.place).map(tapeline::anatomy::Landmark::name)
        );
        assert_eq!(
            row["judged"].as_bool(),
            estimated.and_then(tapeline::estimate::Estimated::judged),
            "{}",
            what()
        );
        for mark in estimated.iter().flat_map(|one| &one.marks) {
            if row.get(format!("{}_mmhg", mark.landmark.name())).is_some() {
                near(&format!("{}_mmhg", mark.landmark.name()), mark.mmhg());
                near(&format!("{}_sd_mmhg", mark.landmark.name()), mark.sd_mmhg());
                near(&format!("{}_bound_mmhg", mark.landmark.name()), mark.bound_mmhg());
            }
        }
        let own: BTreeSet<&str> = checked
            .0
            .findings
            .iter()
            .filter(|one| one.place.chart == Some(at) && !OF_THE_CHART.contains(&one.id.text()))
            .map(|one| one.id.text())
            .collect();
        let told = text("findings").unwrap_or_default();
        let told = told.split_whitespace().filter(|id| *id != "unusual-girth").collect::<BTreeSet<_>>();
        assert_eq!(told, own, "{}", what());
        // The best is named by the whole fall whatever columns are asked for.
        let few = ["chart".to_owned(), "size".to_owned()];
        let short = self::row(&charts, &table, arm, Some(&few));
        assert_eq!((&short["chart"], &short["size"]), (&row["chart"], &row["size"]), "{}", what());
    }
    println!("{verdicts:?}, {beaten} where a later chart is best");
    let kinds: BTreeSet<&str> = verdicts.keys().filter_map(|key| key.split(' ').next()).collect();
    assert_eq!(kinds.len(), 5, "{verdicts:?}");
    assert!(beaten > 30);
}
