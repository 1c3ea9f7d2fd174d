//! How often the rule of the fall is right and wrong, on the limbs of an open dataset. `.ci/rates` fetches
//! it and names its folder in `TAPELINE_LIMBS`; without it these tests are ignored, and said to be.

// Source of every test here: 507 adults, openintro `bdims` (Heinz et al. 2003, J Stat Educ 11(2)); the
// arm near the axilla is assumed to be as wide as the upper arm. Not kept in this project.

use std::fmt::Write as _;
use std::path::PathBuf;

use tapeline::anatomy::{Landmark, Limb};
use tapeline::gradient::{Band, FallMark, FallSetting, Grade, TensionCurve, judge_grade};

use crate::chance::Chance;
use crate::fall_support::{RELAXED_SD, TAPE_SD, setting, worn};

use Landmark::{
    Ankle, Axilla, BelowKnee, Calf, Forearm, LowerCalf, LowerForearm, MidThigh, UpperArm, UpperThigh, Wrist,
};

const DRAWS: usize = 800;
const STRETCH: f64 = 0.35;
const PATHS: [&str; 3] = ["fabric", "ruler", "strip"];

/// Tension of a knit as a power of its stretch.
struct Power(f64);

impl TensionCurve for Power {
    fn tension(&self, stretch: f64) -> Option<(f64, f64)> {
        (stretch <= 6.0).then(|| (stretch.powf(self.0), self.0 * stretch.powf(self.0 - 1.0)))
    }

    fn last_tension(&self) -> f64 {
        6.0_f64.powf(self.0)
    }
}

/// A set of marks: its name, and where each lies.
type Set = (&'static str, &'static [(Landmark, f64)]);

const SETS: [Set; 10] = [
    ("A3", &[(Wrist, 0.0), (Forearm, 14.0), (UpperArm, 33.0)]),
    ("A4", &[(Wrist, 0.0), (Forearm, 14.0), (UpperArm, 33.0), (Axilla, 42.0)]),
    ("A5", &[(Wrist, 0.0), (LowerForearm, 7.0), (Forearm, 14.0), (UpperArm, 33.0), (Axilla, 42.0)]),
    (
        "A6",
        &[
            (Wrist, 0.0),
            (LowerForearm, 7.0),
            (Forearm, 14.0),
            (Forearm, 20.0),
            (UpperArm, 33.0),
            (Axilla, 42.0),
        ],
    ),
    (
        "A7",
        &[
            (Wrist, 0.0),
            (LowerForearm, 6.0),
            (Forearm, 12.0),
            (Forearm, 18.0),
            (UpperArm, 28.0),
            (UpperArm, 35.0),
            (Axilla, 42.0),
        ],
    ),
    ("L3", &[(Ankle, 11.0), (Calf, 31.0), (MidThigh, 59.0)]),
    ("L4", &[(Ankle, 11.0), (LowerCalf, 20.0), (Calf, 31.0), (BelowKnee, 40.0)]),
    ("L5", &[(Ankle, 11.0), (LowerCalf, 20.0), (Calf, 31.0), (MidThigh, 59.0), (UpperThigh, 72.0)]),
    (
        "L6",
        &[
            (Ankle, 11.0),
            (LowerCalf, 20.0),
            (Calf, 31.0),
            (BelowKnee, 40.0),
            (MidThigh, 59.0),
            (UpperThigh, 72.0),
        ],
    ),
    (
        "L7",
        &[
            (Ankle, 11.0),
            (LowerCalf, 16.0),
            (LowerCalf, 22.0),
            (Calf, 31.0),
            (BelowKnee, 40.0),
            (MidThigh, 59.0),
            (UpperThigh, 72.0),
        ],
    ),
];

/// What the pressure truly does.
#[derive(Clone, Copy)]
enum Truth {
    /// Even to a share at the top.
    Even(f64),
    /// An even fall to 55 %, with one mark above the mark below it by a share.
    OneMark(f64),
}

impl Truth {
    fn shares(self, places: &[(Landmark, f64)]) -> Vec<f64> {
        let length = places[places.len() - 1].1 - places[0].1;
        let even = |end: f64| {
            places.iter().map(|(_, at)| 1.0 + (end - 1.0) * (at - places[0].1) / length).collect::<Vec<_>>()
        };
        match self {
            Self::Even(end) => even(end),
            Self::OneMark(above) => {
                let mut shares = even(0.55);
                let mark = if places.len() == 3 { 1 } else { 2 };
                shares[mark] = shares[mark - 1] * (1.0 + above);
                shares
            }
        }
    }
}

/// Girths of adults along a limb: position and cm.
fn limbs(limb: Limb) -> Vec<Vec<(f64, f64)>> {
    let folder = std::env::var_os("TAPELINE_LIMBS").expect("TAPELINE_LIMBS names the folder; run .ci/rates");
    let text = std::fs::read_to_string(PathBuf::from(folder).join("adults.csv")).unwrap();
    let mut lines = text.lines();
    let names: Vec<&str> = lines.next().unwrap().split(',').collect();
    let all: Vec<Vec<(f64, f64)>> = lines
        .map(|line| {
            let values: Vec<f64> = line.split(',').map(|value| value.parse().unwrap()).collect();
            let of = |name: &str| values[names.iter().position(|one| *one == name).unwrap()];
            match limb {
                Limb::Arm => {
                    vec![
                        (0.0, of("wrist")),
                        (14.0, of("forearm")),
                        (33.0, of("upper-arm")),
                        (42.0, of("upper-arm")),
                    ]
                }
                Limb::Leg => {
                    vec![(11.0, of("ankle")), (31.0, of("calf")), (46.0, of("knee")), (72.0, of("mid-thigh"))]
                }
            }
        })
        .collect();
    assert_eq!(all.len(), 507);
    all
}

fn girth(knots: &[(f64, f64)], at: f64) -> f64 {
    let pair = knots.windows(2).find(|pair| at <= pair[1].0).unwrap_or(&knots[knots.len() - 2..]);
    pair[0].1 + (pair[1].1 - pair[0].1) * (at - pair[0].0) / (pair[1].0 - pair[0].0)
}

/// Percent called a rise, undecided, a fall, and of these: remarked, of the rises certain.
type Rates = [f64; 5];

fn rates(set: Set, all: &[Vec<(f64, f64)>], truth: Truth, exponent: f64, path: &str) -> Rates {
    let (_, places) = set;
    let limb = places[0].0.limb();
    let to = places[places.len() - 1].0;
    let shares = truth.shares(places);
    let curve = Power(exponent);
    let base = setting(limb, to, None);
    let setting = match path {
        "fabric" => FallSetting {
            basis: tapeline::gradient::GradientBasis::Fabric,
            knits: vec![tapeline::gradient::Knit { curve: Some(&curve), tension_sd: 0.05 }],
            ..base
        },
        "strip" => FallSetting { band: Band::around(exponent, 0.1), ..base },
        _ => base,
    };
    // The same limbs and errors in every cell of a set.
    let mut chance = Chance::of(20_260_314 + places.len() as u64 + if limb == Limb::Arm { 0 } else { 100 });
    let mut counts = [0_usize; 5];
    for _ in 0..DRAWS {
        let knots = &all[chance.below(all.len())];
        let swollen = (1.0 + 0.3 * chance.uniform()).sqrt();
        let first = girth(knots, places[0].1) * swollen;
        let marks: Vec<FallMark> = places
            .iter()
            .zip(&shares)
            .map(|((landmark, at), share)| {
                let cm = girth(knots, *at) * swollen;
                let stretch = STRETCH * (share * cm / first).powf(1.0 / exponent);
                let relaxed = cm / (1.0 + stretch);
                worn(*landmark, *at, cm + TAPE_SD * chance.normal(), relaxed + RELAXED_SD * chance.normal())
            })
            .collect();
        // A strip pull misses the exponent by up to 0.1.
        let missed = 0.1 * (2.0 * chance.uniform() - 1.0);
        let setting = match path {
            "strip" => FallSetting { band: Band::around(exponent + missed, 0.1), ..setting.clone() },
            _ => setting.clone(),
        };
        match judge_grade(&marks, &setting) {
            Grade::Certain => {
                counts[0] += 1;
                counts[4] += 1;
            }
            Grade::Likely => counts[0] += 1,
            Grade::Undecided => counts[1] += 1,
            Grade::Possible => {
                counts[2] += 1;
                counts[3] += 1;
            }
            Grade::None => counts[2] += 1,
        }
    }
    counts.map(|count| 100.0 * count as f64 / DRAWS as f64)
}

fn set_of(name: &str) -> Set {
    *SETS.iter().find(|set| set.0 == name).unwrap()
}

/// Source: `tests/conformance/fall-rates.csv`, a separate implementation on limbs of another survey. 800
/// draws a cell have a standard error of up to 1.8 points each; other limbs move the figures besides.
#[test]
#[ignore = "needs the limbs that .ci/rates fetches"]
fn the_rates_of_the_separate_implementation_are_reproduced() {
    let text = std::fs::read_to_string("tests/conformance/fall-rates.csv").unwrap();
    let mut lines = text.lines().filter(|line| !line.starts_with('#'));
    let names: Vec<&str> = lines.next().unwrap().split(',').skip(3).collect();
    let (arms, legs) = (limbs(Limb::Arm), limbs(Limb::Leg));
    let mut off = Vec::new();
    let mut cells = 0;
    for line in lines {
        let parts: Vec<&str> = line.split(',').collect();
        let (kind, size) = parts[0].split_once(' ').unwrap_or((parts[0], "100"));
        let size: f64 = size.parse().unwrap();
        let truth = match kind {
            "fall" => Truth::Even(size / 100.0),
            "rise" => Truth::Even(1.0 + size / 100.0),
            "net" => Truth::OneMark(size / 100.0),
            _ => Truth::Even(1.0),
        };
        let exponent: f64 = parts[1].parse().unwrap();
        for (name, cell) in names.iter().zip(&parts[3..]) {
            let expected: Vec<f64> = cell.split('/').map(|one| one.parse().unwrap()).collect();
            let all = if name.starts_with('A') { &arms } else { &legs };
            let found = rates(set_of(name), all, truth, exponent, parts[2]);
            let worst = (0..3).map(|at| (found[at] - expected[at]).abs()).fold(0.0, f64::max);
            cells += 1;
            if worst > 4.0 {
                off.push((
                    worst,
                    format!("{} {} {} {name}: {found:.0?}, elsewhere {cell}", parts[0], parts[1], parts[2]),
                ));
            }
        }
    }
    off.sort_by(|one, other| other.0.total_cmp(&one.0));
    println!("{} of {cells} cells differ by more than 4 points", off.len());
    for (worst, line) in &off {
        println!("{worst:.1}: {line}");
    }
    // Two surveys differ in shape: the wider a thigh or an upper arm is against ankle or wrist, the more the
    // exponent matters, so by ruler and on slight falls the figures move most; called a rise or not, less.
    let fabric = off.iter().filter(|(_, line)| line.contains("fabric"));
    assert!(fabric.clone().all(|(worst, _)| *worst <= 12.0) && fabric.count() <= 18);
    assert!(off.len() * 4 <= cells && off.iter().all(|(worst, _)| *worst <= 25.0));
}

/// Measures the table that `explain alarms` prints, and fails when a figure moved.
#[test]
#[ignore = "needs the limbs that .ci/rates fetches"]
fn alarms_of_the_fall() {
    let (arms, legs) = (limbs(Limb::Arm), limbs(Limb::Leg));
    let mut rows = String::new();
    for set in SETS {
        let all = if set.0.starts_with('A') { &arms } else { &legs };
        for path in PATHS {
            let at = |truth: Truth, exponent: f64| rates(set, all, truth, exponent, path);
            let fall = |exponent: f64| at(Truth::Even(0.6), exponent);
            let limb = if set.0.starts_with('A') { "arm" } else { "leg" };
            let falls = [fall(0.7), fall(1.0), fall(1.5)];
            let rise = |exponent: f64| at(Truth::Even(1.2), exponent)[2];
            let rises = [0.7, 1.0, 1.5].map(rise).into_iter().fold(0.0, f64::max);
            let one = at(Truth::OneMark(0.25), 1.0)[2];
            let cells = [
                format!("{limb}, {}", set.1.len()),
                path.to_owned(),
                format!("{:.0}", falls[0][0]),
                format!("{:.0}", falls[1][0]),
                format!("{:.0}", falls[2][0]),
                format!("{:.0}", falls[1][1]),
                format!("{rises:.0}"),
                format!("{one:.0}"),
                format!("{:.0}", at(Truth::OneMark(0.4), 1.0)[2]),
            ];
            let _ = writeln!(rows, "  - [{}]", cells.map(|cell| format!("\"{cell}\"")).join(", "));
        }
    }
    let table = std::fs::read_to_string("src/explain/alarms/alarms-fall.yaml").unwrap();
    let start = table.find("rows:\n").map_or(table.len(), |at| at + 6);
    let end = table[start..].find("remarks:").map_or(table.len(), |at| start + at);
    if std::env::var_os("TAPELINE_WRITE_RATES").is_some() {
        std::fs::write(
            "src/explain/alarms/alarms-fall.yaml",
            format!("{}{rows}{}", &table[..start], &table[end..]),
        )
        .unwrap();
        return;
    }
    assert_eq!(&table[start..end], rows, "the table no longer says what the rule does");
}
