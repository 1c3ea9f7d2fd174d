//! A caseload against the rules it stands on.

use proptest::prelude::*;
use tapeline::anatomy::Landmark;
use tapeline::caseload::{Case, Prepared, Scratch};
use tapeline::estimate::EstimateRules;
use tapeline::garment::Chart;
use tapeline::quantity::{Girth, phi, phi_quick};
use tapeline::sizing::Limits;

use crate::sizing::{Dice, arm, chart};

const MARKS: [Landmark; 5] =
    [Landmark::Wrist, Landmark::Forearm, Landmark::Elbow, Landmark::UpperArm, Landmark::Axilla];

/// A random chart on the five marks with a fabric of six points: contiguous, gapped or overlapping sizes.
pub fn random_chart(dice: &mut Dice, fabric: &str) -> Chart {
    let step = if dice.share() < 0.5 { "printed_step: 0.1 cm\n" } else { "" };
    let between = ["smaller", "larger", "fitter"][(dice.share() * 3.0) as usize];
    let spread = [-0.3, 0.0, 0.0, 0.4, 1.0][(dice.share() * 5.0) as usize];
    let tight = 0.70 + 0.2 * dice.share();
    let open = dice.share() < 0.1;
    let mut text = format!(
        "tapeline: chart/1\nlabel: random\nlimb: arm\nfrom: wrist\nto: axilla\nscheme: ral-gz-387-2\nclass: \"2\"\nfabric: {fabric}\n{step}between_sizes: {between}\nunits: {{length: cm}}\nsizes:\n"
    );
    let (mean, grow) = ([16.0, 25.8, 26.5, 31.0, 34.0], [1.4, 2.4, 2.4, 3.0, 3.4]);
    for size in 0..8 {
        let (mut girths, mut relaxed) = (Vec::new(), Vec::new());
        for ((mark, mean), grow) in MARKS.iter().zip(mean).zip(grow) {
            let low = mean + (f64::from(size) - 4.0) * grow - spread * grow / 2.0;
            let high = low + grow * (1.0 + spread);
            let range =
                if open && size == 7 { format!("over {low:.1}") } else { format!("{low:.1}-{high:.1}") };
            girths.push(format!("{}: {range}", mark.name()));
            let wide = tight * (0.9 + 0.2 * dice.share());
            relaxed.push(format!("{}: {:.1}", mark.name(), low * wide));
        }
        text.push_str(&format!(
            "  - {{size: \"{size}\", girths: {{{}}}, relaxed: {{{}}}}}\n",
            girths.join(", "),
            relaxed.join(", ")
        ));
    }
    chart(&text)
}

/// A random arm on the five marks, to the millimetre or finer.
pub fn random_case(dice: &mut Dice) -> Case {
    let [wrist, forearm, upper] = arm(dice);
    let all = [wrist, forearm, 1.02 * forearm, upper, 1.1 * upper];
    let raster = [1.0, 10.0, 50.0][(dice.share() * 3.0) as usize];
    let missing = dice.share() < 0.03;
    let girths: Vec<(Landmark, Girth)> = MARKS
        .into_iter()
        .zip(all)
        .skip(usize::from(missing))
        .map(|(mark, cm)| {
            let tenths = ((cm + 0.35 * dice.normal()) * 100.0 / raster).round() * raster;
            (mark, Girth::from_tenths(tenths as i64).unwrap())
        })
        .collect();
    Case::of(&girths)
}

pub fn fabric_file(folder: &std::path::Path) -> String {
    let path = folder.join("knit.yaml");
    std::fs::write(
        &path,
        "tapeline: fabric/1\nlabel: k\nbasis: invented\ncurve:\n  - {stretch: 0 %, tension: 0 N/m}\n  - {stretch: 15 %, tension: 33 N/m}\n  - {stretch: 30 %, tension: 67 N/m}\n  - {stretch: 50 %, tension: 116 N/m}\n  - {stretch: 80 %, tension: 195 N/m}\n  - {stretch: 130 %, tension: 340 N/m}\n",
    )
    .unwrap();
    path.display().to_string()
}

// The compact form of a caseload says what the rules of `check` say (derived: one implementation of the rules).
#[test]
fn the_compact_form_is_the_rules() {
    let folder = tempfile::tempdir().unwrap();
    let fabric = fabric_file(folder.path());
    let mut dice = Dice(7);
    let mut scratch = Scratch::default();
    let mut verdicts = std::collections::BTreeMap::new();
    for _ in 0..60 {
        let chart = random_chart(&mut dice, &fabric);
        let prepared = Prepared::of(&chart, EstimateRules::default(), Limits::default());
        for _ in 0..60 {
            let case = random_case(&mut dice);
            let (quick, ruled) = (prepared.size(&case, &mut scratch), prepared.size_by_rules(&case));
            *verdicts.entry(ruled.verdict.word()).or_insert(0) += 1;
            assert_eq!(quick.verdict, ruled.verdict, "{case:?}");
            assert_eq!((quick.size, quick.nearest), (ruled.size, ruled.nearest), "{case:?}");
            assert_eq!((quick.between, quick.margin), (ruled.between, ruled.margin), "{case:?}");
            let near = |a: Option<f64>, b: Option<f64>| match (a, b) {
                (Some(a), Some(b)) => (a - b).abs() < 1e-9,
                (None, None) => true,
                _ => false,
            };
            assert!(near(quick.inside_chance, ruled.inside_chance), "{quick:?} {ruled:?}");
            if let Some(size) = quick.size {
                let whole = prepared.estimate(size, &case).unwrap();
                let own: Vec<_> = prepared.pressures(size, &case).collect();
                assert_eq!(own.len(), whole.marks.len());
                for (own, mark) in own.iter().zip(&whole.marks) {
                    assert_eq!(own.landmark, mark.landmark);
                    let near = |a: Option<f64>, b: Option<f64>| match (a, b) {
                        (Some(a), Some(b)) => (a - b).abs() <= 1e-10 * b.abs(),
                        (None, None) => true,
                        _ => false,
                    };
                    assert!(near(own.mmhg, mark.mmhg()), "{own:?} {:?}", mark.mmhg());
                    assert!(near(own.sd, mark.sd_mmhg()) && near(own.bound, mark.bound_mmhg()), "{own:?}");
                }
            }
        }
    }
    println!("{verdicts:?}");
    assert!(verdicts.len() >= 4, "{verdicts:?}");
}

proptest! {
    // Source: Φ by erfc (libm); the table's promise is 1e-10.
    #[test]
    fn the_table_of_phi_is_phi(z in -10.0_f64..10.0) {
        prop_assert!((phi_quick(z) - phi(z)).abs() < 1e-10);
    }
}
