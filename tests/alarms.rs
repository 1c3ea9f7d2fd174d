//! How often a fall or a rise of pressure is told rightly, by simulated measurements.

use tapeline::anatomy::Landmark;
use tapeline::assessment::{Worn, estimate_worn};
use tapeline::explain::MEASURED_RATES;
use tapeline::garment::Fabric;
use tapeline::graduation::Grade;
use tapeline::quantity::Girth;
use tapeline::record::Record;

use crate::chance::Chance;
use crate::scene::{CONSENSUS, Scene};
use crate::support::{folder, run};

/// Simulated measurements of one garment, half on an arm, half on a leg.
const DRAWS: usize = 6000;

/// SD of one tape girth and of a relaxed girth, cm.
// Source: tape derived from Tánori-Tapia 2020, Healthcare 8:285; relaxed girth house rule.
const TAPE_SD: f64 = 0.35;
const RELAXED_SD: f64 = 0.3;

struct Limb {
    record: Record,
    marks: [(Landmark, f64); 3],
    to: Landmark,
}

/// Three marks at least 8 cm apart, girths near the means of 507 adults (Heinz et al. 2003).
fn limbs() -> [Limb; 2] {
    use Landmark::{Ankle, Calf, Forearm, MidThigh, UpperArm, Wrist};
    [
        Limb {
            record: Scene::arm().open().record,
            marks: [(Wrist, 17.0), (Forearm, 26.0), (UpperArm, 31.0)],
            to: UpperArm,
        },
        Limb {
            record: Scene::leg().open().record,
            marks: [(Ankle, 23.0), (Calf, 38.0), (MidThigh, 51.0)],
            to: MidThigh,
        },
    ]
}

fn tenths(cm: f64) -> Girth {
    Girth::from_tenths((cm * 100.0).round() as i64).unwrap()
}

/// The worst grade of one simulated measurement of a garment whose pressures, against the
/// reference's, are `profile`.
fn measured(
    limb: &Limb,
    fabric: Option<&Fabric>,
    stretch: f64,
    profile: [f64; 3],
    chance: &mut Chance,
) -> Grade {
    // A linear knit: T = k·e, so that P ∝ e / C, and e at a mark is e of the reference × share × C / C of
    // the reference (derived).
    let first = limb.marks[0].1;
    let mut record = limb.record.clone();
    let mut relaxed = Vec::new();
    for ((landmark, girth), share) in limb.marks.iter().zip(profile) {
        let worn = stretch * share * girth / first;
        relaxed.push((*landmark, tenths(girth / (1.0 + worn) + RELAXED_SD * chance.normal())));
        let mark = record.marks.iter_mut().find(|mark| mark.landmark == Some(*landmark)).unwrap();
        mark.first = tenths(girth + TAPE_SD * chance.normal());
    }
    let worn = Worn { relaxed: &relaxed, fabric, layers: 1, claim: None, to: limb.to };
    let graduation = estimate_worn(&record, worn, &CONSENSUS).graduation.unwrap();
    // A pair left undecided leaves the garment undecided, whatever the other pairs say.
    let open = graduation.all().any(|pair| pair.grade == Some(Grade::Undecided));
    match graduation.verdict.unwrap() {
        Grade::None | Grade::Possible if open => Grade::Undecided,
        verdict => verdict,
    }
}

/// Share of measurements graded as one of `grades`, in %.
fn rate(seed: u64, fabric: Option<&Fabric>, stretch: f64, profile: [f64; 3], grades: &[Grade]) -> f64 {
    let limbs = limbs();
    let mut chance = Chance::of(seed);
    let hits = (0..DRAWS)
        .filter(|draw| grades.contains(&measured(&limbs[draw % 2], fabric, stretch, profile, &mut chance)))
        .count();
    hits as f64 / DRAWS as f64 * 100.0
}

fn linear_knit() -> Fabric {
    let folder = folder(&[(
        "knit.yaml",
        "tapeline: fabric/1\nlabel: linear knit\nbasis: invented\ncurve:\n  - {stretch: 0 %, tension: 0 N/m}\n  - {stretch: 300 %, tension: 1200 N/m}\n",
    )]);
    let chart = format!("{}fabric: {}\n", crate::scene::SLEEVE, folder.path().join("knit.yaml").display());
    Scene::arm().only_chart(&chart).opened_charts()[0].fabric.clone().unwrap()
}

const FALLING: [f64; 3] = [1.0, 0.7, 0.49];
const RISING: [f64; 3] = [1.0, 1.2, 1.2];
const FLAT: [f64; 3] = [1.0, 1.0, 1.0];
const CALLED_RISE: [Grade; 2] = [Grade::Certain, Grade::Likely];
const CALLED_FALL: [Grade; 2] = [Grade::None, Grade::Possible];

/// The four rates at one stretch; `rise_missed` is the worse of the flat and the rising garment.
fn rates(stretch: f64) -> [f64; 4] {
    let knit = linear_knit();
    let knit = Some(&knit);
    let flat = rate(4, None, stretch, FLAT, &CALLED_FALL);
    let rising = rate(5, None, stretch, RISING, &CALLED_FALL);
    [
        rate(1, knit, stretch, FALLING, &CALLED_RISE),
        rate(2, knit, stretch, RISING, &CALLED_RISE),
        rate(3, None, stretch, FALLING, &CALLED_FALL),
        flat.max(rising),
    ]
}

// Control: alarms-measured
#[test]
fn at_35_percent_the_grades_are_as_right_as_wanted() {
    let [false_alarm, found, decided, missed] = rates(0.35);
    assert!(false_alarm < 2.0, "falling, called a rise: {false_alarm} %");
    assert!(found > 95.0, "rising, called a rise: {found} %");
    assert!(decided >= 90.0, "falling, decided by stretch: {decided} %");
    assert!(missed < 1.0, "flat or rising, called a fall by stretch: {missed} %");
}

#[test]
fn the_rates_explained_are_the_rates_measured() {
    let printed = run(&["explain", "alarms"]).expect_status(0).stdout;
    let mut wrong = Vec::new();
    for rate in MEASURED_RATES {
        let found = rates(f64::from(rate.stretch_percent) / 100.0).map(|one| (one * 10.0).round() / 10.0);
        let said = [
            rate.fabric_false_alarm,
            rate.fabric_rise_found,
            rate.stretch_fall_decided,
            rate.stretch_rise_missed,
        ];
        if found != said {
            wrong.push(format!("stretch {} %: measured {found:?}, said {said:?}", rate.stretch_percent));
        }
        let start = format!("{} %", rate.stretch_percent);
        let line = printed.lines().find(|line| line.trim_start().starts_with(&start));
        let figures: Vec<f64> =
            line.unwrap().split_whitespace().skip(2).map(|figure| figure.parse().unwrap()).collect();
        assert_eq!(figures, said, "{line:?}");
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}
