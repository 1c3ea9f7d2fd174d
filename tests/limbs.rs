//! Slips, questions and findings over the limbs of two open datasets. `.ci/limbs` fetches them and
//! names their folder in `TAPELINE_LIMBS`; without it these tests are ignored, and said to be.

// Source of every test here: 507 adults, openintro `bdims` (Heinz et al. 2003, J Stat Educ 11(2));
// 252 men, `fat` of the package faraway (Penrose et al. 1985). Neither is kept in this project.

use std::collections::BTreeMap;
use std::path::PathBuf;

use tapeline::anatomy::Landmark;
use tapeline::finding::SHOWN_SLIPS;
use tapeline::quantity::Girth;
use tapeline::record::{Record, questions};

use crate::chance::Chance;
use crate::scene::{CONSENSUS, Scene};
use crate::support::folder;

const ARM: [Landmark; 3] = [Landmark::Wrist, Landmark::Forearm, Landmark::UpperArm];
const LEG: [Landmark; 4] = [Landmark::Ankle, Landmark::Calf, Landmark::Knee, Landmark::MidThigh];

/// Girths of one limb, cm, by landmark.
type Limb = Vec<(Landmark, f64)>;

fn rows(file: &str) -> Vec<BTreeMap<String, f64>> {
    let folder = std::env::var_os("TAPELINE_LIMBS").expect("TAPELINE_LIMBS names the folder; run .ci/limbs");
    let text = std::fs::read_to_string(PathBuf::from(folder).join(file)).unwrap();
    let mut lines = text.lines();
    let names: Vec<&str> = lines.next().unwrap().split(',').collect();
    lines
        .map(|line| {
            let values = line.split(',').map(|value| value.parse::<f64>().unwrap());
            names.iter().map(|name| (*name).to_owned()).zip(values).collect()
        })
        .collect()
}

fn adults() -> Vec<(Limb, Limb)> {
    let limb = |row: &BTreeMap<String, f64>, marks: &[Landmark]| {
        marks.iter().map(|mark| (*mark, row[mark.name()])).collect::<Limb>()
    };
    let all: Vec<(Limb, Limb)> =
        rows("adults.csv").iter().map(|row| (limb(row, &ARM), limb(row, &LEG))).collect();
    assert_eq!(all.len(), 507);
    all
}

fn bare_arm() -> Record {
    Scene::arm().open().record
}

fn bare_leg() -> Record {
    Scene::leg().girths("ankle@11=23 calf@31=38 knee@46=37 mid-thigh@62=51").open().record
}

/// The record with other girths; none where one of them is no girth at all and would be refused.
fn with_girths(record: &Record, limb: &Limb) -> Option<Record> {
    let mut record = record.clone();
    for (landmark, girth) in limb {
        let mark = record.marks.iter_mut().find(|mark| mark.landmark == Some(*landmark)).unwrap();
        mark.first = Girth::from_tenths((girth * 100.0).round() as i64)?;
    }
    Some(record)
}

fn is_asked(record: &Record, limb: &Limb) -> bool {
    with_girths(record, limb).is_none_or(|record| !questions(&record, &CONSENSUS).is_empty())
}

/// How a slip changes a limb at a mark; none where it does not apply.
type Change = fn(&Limb, usize, &mut Chance) -> Option<Limb>;

fn at(limb: &Limb, place: usize, change: impl Fn(f64) -> f64) -> Option<Limb> {
    let mut changed = limb.clone();
    changed[place].1 = change(changed[place].1);
    (changed[place].1 > 0.0).then_some(changed)
}

fn all(limb: &Limb, factor: f64) -> Limb {
    limb.iter().map(|(mark, girth)| (*mark, (girth * factor * 10.0).round() / 10.0)).collect()
}

fn exchange(limb: &Limb, one: Landmark, other: Landmark) -> Option<Limb> {
    let place = |mark| limb.iter().position(|(own, _)| *own == mark);
    let (one, other) = (place(one)?, place(other)?);
    let mut changed = limb.clone();
    (changed[one].1, changed[other].1) = (limb[other].1, limb[one].1);
    (limb[one].1 != limb[other].1).then_some(changed)
}

/// Replaces the digit that stands for `unit` cm by another one.
fn other_digit(limb: &Limb, place: usize, unit: f64, chance: &mut Chance) -> Option<Limb> {
    let digit = (limb[place].1 / unit + 1e-9).floor() % 10.0;
    let other = (digit + 1.0 + chance.below(9) as f64) % 10.0;
    at(limb, place, |girth| girth + (other - digit) * unit)
}

/// How much of the swelling a mark has, by its place along the limb, 0 to 1.
type Profile = fn(f64) -> f64;

/// Which marks a slip is tried at.
enum Where {
    EachMark,
    Whole,
}

struct Tally {
    slip: &'static str,
    tried: usize,
    detected: usize,
    refused: usize,
    listed: usize,
    first: usize,
    shown: usize,
    longest: usize,
}

fn try_slip(slip: &'static str, places: &Where, slipped: Change, limbs: &[(Limb, Limb)]) -> Tally {
    let mut tally =
        Tally { slip, tried: 0, detected: 0, refused: 0, listed: 0, first: 0, shown: 0, longest: 0 };
    let (arm, leg) = (bare_arm(), bare_leg());
    let mut chance = Chance::of(11);
    for (record, limb) in limbs.iter().flat_map(|(one, other)| [(&arm, one), (&leg, other)]) {
        let marks = match places {
            Where::EachMark => 0..limb.len(),
            Where::Whole => 0..1,
        };
        for place in marks {
            let Some(typed) = slipped(limb, place, &mut chance) else { continue };
            tally.tried += 1;
            let Some(typed) = with_girths(record, &typed) else {
                tally.detected += 1;
                tally.refused += 1;
                continue;
            };
            let asked = questions(&typed, &CONSENSUS);
            tally.detected += usize::from(!asked.is_empty());
            let is_true = |(landmark, girth): &(Landmark, Girth)| {
                let (_, truth) = limb.iter().find(|(mark, _)| mark == landmark).unwrap();
                // Inches are typed to a tenth, 0.25 cm; a tenth of a diameter is 0.3 cm of girth.
                (girth.cm() - truth).abs() <= 0.17
            };
            let differs = |landmark: Landmark| {
                let (_, truth) = limb.iter().find(|(mark, _)| *mark == landmark).unwrap();
                (typed.mark(landmark).unwrap().girth().cm() - truth).abs() > 0.17
            };
            let ranks = asked.iter().filter_map(|question| {
                question.slips.iter().position(|slip| {
                    slip.instead.iter().all(is_true)
                        && limb.iter().all(|(mark, _)| {
                            !differs(*mark) || slip.instead.iter().any(|(own, _)| own == mark)
                        })
                })
            });
            let rank = ranks.min();
            tally.listed += usize::from(rank.is_some());
            tally.first += usize::from(rank == Some(0));
            tally.shown += usize::from(rank.is_some_and(|rank| rank < SHOWN_SLIPS));
            let length = asked.iter().map(|question| question.slips.len()).max().unwrap_or_default();
            tally.longest = tally.longest.max(length);
        }
    }
    tally
}

/// Slips that have to be found and named every time.
const SURE: [(&str, Where, Change); 12] = [
    ("one girth x 10", Where::EachMark, |limb, place, _| at(limb, place, |girth| girth * 10.0)),
    ("one girth / 10", Where::EachMark, |limb, place, _| at(limb, place, |girth| girth / 10.0)),
    ("leading digit lost", Where::EachMark, |limb, place, _| at(limb, place, |girth| girth % 10.0)),
    ("one girth in inches", Where::EachMark, |limb, place, _| {
        at(limb, place, |girth| (girth / 2.54 * 10.0).round() / 10.0)
    }),
    ("one girth x 2.54", Where::EachMark, |limb, place, _| at(limb, place, |girth| girth * 2.54)),
    ("all girths in inches", Where::Whole, |limb, _, _| Some(all(limb, 1.0 / 2.54))),
    ("all girths x 2.54", Where::Whole, |limb, _, _| Some(all(limb, 2.54))),
    ("wrist, forearm exchanged", Where::Whole, |limb, _, _| {
        exchange(limb, Landmark::Wrist, Landmark::Forearm)
    }),
    ("ankle, calf exchanged", Where::Whole, |limb, _, _| exchange(limb, Landmark::Ankle, Landmark::Calf)),
    ("knee, thigh exchanged", Where::Whole, |limb, _, _| exchange(limb, Landmark::Knee, Landmark::MidThigh)),
    ("list reversed", Where::Whole, |limb, _, _| {
        Some(limb.iter().zip(limb.iter().rev()).map(|((mark, _), (_, girth))| (*mark, *girth)).collect())
    }),
    ("all girths x 10", Where::Whole, |limb, _, _| Some(all(limb, 10.0))),
];

/// Slips that are found as often as they are.
const OTHER: [(&str, Where, Change); 5] = [
    ("all diameters", Where::Whole, |limb, _, _| Some(all(limb, std::f64::consts::FRAC_1_PI))),
    ("digits swapped", Where::EachMark, |limb, place, _| {
        at(limb, place, |girth| {
            let (tens, ones) = ((girth / 10.0).floor(), (girth + 1e-9).floor() % 10.0);
            ones * 10.0 + tens + (girth - girth.floor())
        })
    }),
    ("other tens digit", Where::EachMark, |limb, place, chance| other_digit(limb, place, 10.0, chance)),
    ("other units digit", Where::EachMark, |limb, place, chance| other_digit(limb, place, 1.0, chance)),
    ("forearm, upper arm exchanged", Where::Whole, |limb, _, _| {
        exchange(limb, Landmark::Forearm, Landmark::UpperArm)
    }),
];

fn print(tally: &Tally) {
    let share = |count: usize, of: usize| count as f64 / of.max(1) as f64 * 100.0;
    let read = tally.detected - tally.refused;
    println!(
        "{:<30} {:>5} tried  {:>5.1} % found ({} refused)  {:>5.1} % of those read named, {:>5.1} % first, {:>5.1} % in words; at most {}",
        tally.slip,
        tally.tried,
        share(tally.detected, tally.tried),
        tally.refused,
        share(tally.listed, read),
        share(tally.first, read),
        share(tally.shown, read),
        tally.longest,
    );
}

#[test]
#[ignore = "needs the datasets; .ci/limbs fetches them and runs this"]
fn the_data_are_the_ones_described() {
    // Source: facts of the dataset: knee above calf in 54 % of legs; wrist < forearm < upper arm and
    // ankle < calf < thigh in 507 of 507; means of log girth.
    let all = adults();
    let girth = |limb: &Limb, place: usize| limb[place].1;
    let above = all.iter().filter(|(_, leg)| girth(leg, 2) > girth(leg, 1)).count();
    assert_eq!((above as f64 / 5.07).round(), 54.0);
    let ordered = all.iter().filter(|(arm, leg)| {
        girth(arm, 0) < girth(arm, 1)
            && girth(arm, 1) < girth(arm, 2)
            && girth(leg, 0) < girth(leg, 1)
            && girth(leg, 1) < girth(leg, 3)
    });
    assert_eq!(ordered.count(), 507);
    for usual in &CONSENSUS.nearness {
        for (number, mean) in usual.mean.iter().enumerate() {
            let logs = all.iter().map(|(arm, leg)| {
                let limb = if usual.landmarks[0] == Landmark::Wrist { arm } else { leg };
                girth(limb, number).ln()
            });
            assert!((logs.sum::<f64>() / 507.0 - mean).abs() < 5e-5);
        }
    }
}

#[test]
#[ignore = "needs the datasets; .ci/limbs fetches them and runs this"]
fn sure_slips_are_always_found_and_named() {
    let limbs = adults();
    for (slip, places, change) in &SURE {
        let tally = try_slip(slip, places, *change, &limbs);
        print(&tally);
        assert_eq!(tally.detected, tally.tried, "{slip}");
        assert_eq!(tally.listed, tally.detected - tally.refused, "{slip}");
        assert_eq!(tally.shown, tally.listed, "{slip}: named among those that the sentence shows");
    }
}

#[test]
#[ignore = "needs the datasets; .ci/limbs fetches them and runs this"]
fn other_slips_are_found_as_often_as_said() {
    let limbs = adults();
    for (slip, places, change) in &OTHER {
        let tally = try_slip(slip, places, *change, &limbs);
        print(&tally);
        // Units digits hide inside the bands: 1 to 12 % (house simulation).
        if *slip == "other units digit" {
            assert!((0.0..0.12).contains(&(tally.detected as f64 / tally.tried as f64)));
        }
    }
}

#[test]
#[ignore = "needs the datasets; .ci/limbs fetches them and runs this"]
fn real_limbs_and_swollen_limbs_raise_no_question() {
    let limbs = adults();
    let (arm, leg) = (bare_arm(), bare_leg());
    // Girth grows with the root of the volume of a limb of the same length (derived).
    for added in [0.0, 20.0, 40.0, 60.0, 100.0] {
        let factor = f64::sqrt(1.0 + added / 100.0);
        let profiles: [(&str, Profile); 3] = [
            ("throughout", |_| 1.0),
            ("more at the end", |along| 1.0 - along),
            ("more at the trunk", |along| along),
        ];
        for (name, profile) in profiles {
            let swollen = |limb: &Limb| {
                let last = limb.len() - 1;
                limb.iter()
                    .enumerate()
                    .map(|(place, (mark, girth))| {
                        let along = place as f64 / last as f64;
                        (*mark, girth * (1.0 + (factor - 1.0) * profile(along)))
                    })
                    .collect::<Limb>()
            };
            let asked = limbs
                .iter()
                .flat_map(|(one, other)| [is_asked(&arm, &swollen(one)), is_asked(&leg, &swollen(other))])
                .filter(|asked| *asked)
                .count();
            println!("+{added} % volume, {name}: {asked} of 1014 limbs asked about");
            if name == "throughout" || added <= 60.0 {
                assert_eq!(asked, 0, "+{added} %, {name}");
            }
        }
    }
}

#[test]
#[ignore = "needs the datasets; .ci/limbs fetches them and runs this"]
fn a_slip_in_the_units_is_caught_by_the_previous_visit() {
    let limbs = adults();
    let (arm, leg) = (bare_arm(), bare_leg());
    let mut chance = Chance::of(12);
    let (mut slipped, mut caught, mut false_questions) = (0, 0, 0);
    for (record, limb) in limbs.iter().flat_map(|(one, other)| [(&arm, one), (&leg, other)]) {
        let then = with_girths(record, limb).unwrap();
        for place in 0..limb.len() {
            // A month later the same limb, by another tape: SD 0.35 cm each time (derived from
            // Tánori-Tapia 2020).
            let mut again = limb.clone();
            for (_, girth) in &mut again {
                *girth = ((*girth + 0.35 * 2_f64.sqrt() * chance.normal()) * 10.0).round() / 10.0;
            }
            let changes = |typed: &Limb| {
                let now = with_girths(record, typed).unwrap();
                tapeline::record::girth_changes(&now, std::slice::from_ref(&then), &CONSENSUS).len()
            };
            false_questions += usize::from(changes(&again) > 0);
            let typed = other_digit(&again, place, 1.0, &mut chance).unwrap();
            slipped += 1;
            caught += usize::from(changes(&typed) > 0);
        }
    }
    println!(
        "units slips against the previous visit: {caught} of {slipped} caught; {false_questions} false questions"
    );
    assert!(caught as f64 / f64::from(slipped) > 0.3);
    assert!(false_questions * 200 < slipped as usize, "{false_questions}");
}

#[test]
#[ignore = "needs the datasets; .ci/limbs fetches them and runs this"]
fn the_known_oddities_of_the_second_set() {
    // Source: values of `fat` in the package faraway that stand out: ankles 33.9 and 33.7 cm, forearms
    // 34.9 cm (upper arm 27.0) and 21.0 cm (wrist 20.1).
    let men = rows("men.csv");
    assert_eq!(men.len(), 252);
    // Two arms of the 252 are asked about: a forearm thicker than the upper arm by a quarter, and one
    // hardly thicker than its wrist.
    let arm_of =
        |man: &BTreeMap<String, f64>| ARM.iter().map(|mark| (*mark, man[mark.name()])).collect::<Limb>();
    let asked: Vec<(f64, f64, f64)> = men
        .iter()
        .filter(|man| is_asked(&bare_arm(), &arm_of(man)))
        .map(|man| (man["wrist"], man["forearm"], man["upper-arm"]))
        .collect();
    assert_eq!(asked, [(16.9, 34.9, 27.0), (20.1, 21.0, 35.4)]);
    // The ankles lie inside the band, and the set has no calf to hold them against (the usual calf of
    // the knee stands in: means of log girth of the 507 adults, 3.5826 and 3.5866). They are caught
    // where an earlier visit has the ankle that was meant, a ten less.
    let leg_of = |man: &BTreeMap<String, f64>| {
        let calf = man["knee"] * f64::exp(3.5826 - 3.5866);
        LEG.iter()
            .map(|mark| (*mark, if *mark == Landmark::Calf { calf } else { man[mark.name()] }))
            .collect::<Limb>()
    };
    assert_eq!(men.iter().filter(|man| is_asked(&bare_leg(), &leg_of(man))).count(), 0);
    let odd: Vec<f64> = men.iter().map(|man| man["ankle"]).filter(|ankle| *ankle > 33.0).collect();
    assert_eq!(odd, [33.9, 33.7]);
    for ankle in odd {
        let then = with_girths(&bare_leg(), &vec![(Landmark::Ankle, ankle - 10.0)]).unwrap();
        let now = with_girths(&bare_leg(), &vec![(Landmark::Ankle, ankle)]).unwrap();
        assert_eq!(tapeline::record::girth_changes(&now, &[then], &CONSENSUS).len(), 1);
    }
    println!(
        "252 men: 2 arms asked about (forearms 34.9 and 21.0), ankles 33.9 and 33.7 by the previous visit"
    );
}

/// A chart of one size made for one limb: ranges 2 cm to each side, pressure falling by 30 % a mark
/// from 27 mmHg, linear knit of 400 N/m.
fn made_for(limb: &Limb, scheme: &str, with_fabric: bool) -> String {
    // Source: relaxed girth for a wanted pressure, C0 = C / (1 + P·C / (2πk)) (derived); 1 mmHg =
    // 133.322387415 Pa.
    let mut wanted = 27.0 * 133.322_387_415;
    let (mut girths, mut relaxed) = (Vec::new(), Vec::new());
    for (mark, girth) in limb.iter().filter(|(mark, _)| !mark.is_joint()) {
        girths.push(format!("{}: {:.1}-{:.1}", mark.name(), girth - 2.0, girth + 2.0));
        let metres = girth / 100.0;
        let slack = metres / (1.0 + wanted * metres / (std::f64::consts::TAU * 400.0));
        relaxed.push(format!("{}: {:.1}", mark.name(), slack * 100.0));
        wanted *= 0.7;
    }
    let (first, last) = (limb[0].0, limb[limb.len() - 1].0);
    format!(
        "tapeline: chart/1\nlabel: made to fit\nlimb: {}\nfrom: {}\nto: {}\nscheme: {scheme}\nclass: \"2\"\nunits: {{length: cm}}\n{}sizes:\n  - size: \"1\"\n    girths: {{{}}}\n    relaxed: {{{}}}\n",
        first.limb().name(),
        first.name(),
        last.name(),
        if with_fabric { "fabric: FABRIC\n" } else { "" },
        girths.join(", "),
        relaxed.join(", ")
    )
}

#[test]
#[ignore = "needs the datasets; .ci/limbs fetches them and runs this"]
fn a_fitting_chart_and_a_complete_record_raise_next_to_nothing() {
    let folder = folder(&[(
        "knit.yaml",
        "tapeline: fabric/1\nlabel: linear knit\nbasis: invented\ncurve:\n  - {stretch: 0 %, tension: 0 N/m}\n  - {stretch: 100 %, tension: 400 N/m}\n",
    )]);
    let fabric = folder.path().join("knit.yaml").display().to_string();
    let limbs = adults();
    for with_fabric in [true, false] {
        let mut counts = Vec::new();
        let mut fired: BTreeMap<String, usize> = BTreeMap::new();
        for (arm, leg) in &limbs {
            let marks = |limb: &Limb, at: &[u32]| {
                let marks =
                    limb.iter().zip(at).map(|((mark, girth), at)| format!("{}@{at}={girth}", mark.name()));
                marks.collect::<Vec<_>>().join(" ")
            };
            let arm_chart = made_for(arm, "ral-gz-387-2", with_fabric).replace("FABRIC", &fabric);
            let leg_chart = made_for(leg, "ral-gz-387-1", with_fabric).replace("FABRIC", &fabric);
            for scene in [
                Scene::arm().girths(&marks(arm, &[0, 14, 33])).only_chart(&arm_chart),
                // The set's thigh is taken below the gluteal fold: the upper thigh here.
                Scene::leg()
                    .girths(&marks(leg, &[11, 31, 46, 72]).replace("mid-thigh", "upper-thigh"))
                    .only_chart(&leg_chart.replace("mid-thigh", "upper-thigh")),
            ] {
                let report = scene.report();
                let above: Vec<String> =
                    report.ids().into_iter().filter(|one| !one.ends_with(" note")).collect();
                counts.push(above.len());
                for one in report.ids() {
                    *fired.entry(one).or_default() += 1;
                }
            }
        }
        counts.sort_unstable();
        let reports = counts.len();
        let mean = counts.iter().sum::<usize>() as f64 / reports as f64;
        println!(
            "basis {}: median {} findings above note in {reports} reports, mean {mean:.2}; fired: {fired:?}",
            if with_fabric { "fabric" } else { "stretch" },
            counts[reports / 2]
        );
        assert_eq!(counts[reports / 2], 0);
        for (finding, count) in fired {
            // Without a fabric curve the fall may be undecided: its cause is there.
            let caused = !with_fabric && finding.starts_with("gradient-not-judged");
            assert!(caused || count * 10 <= reports, "{finding}: {count} of {reports}");
        }
    }
}
