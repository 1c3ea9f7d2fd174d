//! The exponents at which a grade by ruler would turn agree with the grade that is printed once a pull gave one.

use tapeline::anatomy::Landmark;
use tapeline::finding::after_strip_pull;
use tapeline::gradient::{Band, FallMark, FallSetting, Grade, Turn, judge, turns};

use crate::chance::Chance;
use crate::fall_support::{ARM, setting, worn};
use crate::support::{folder, run_in};

use Landmark::{Ankle, BelowKnee, Calf, MidThigh};

const LEG: [(Landmark, f64, f64); 4] =
    [(Ankle, 11.0, 23.0), (Calf, 31.0, 37.5), (BelowKnee, 40.0, 35.0), (MidThigh, 59.0, 50.0)];

/// A garment whose stretch falls or rises evenly along the limb, more or less, with a mark that is off.
fn garment(chance: &mut Chance) -> Vec<FallMark> {
    let places: &[(Landmark, f64, f64)] = if chance.uniform() < 0.5 { &ARM } else { &LEG };
    let (first, last) = (places[0].1, places[places.len() - 1].1);
    let (start, end) = (0.2 + 0.4 * chance.uniform(), 0.5 + 1.2 * chance.uniform());
    places
        .iter()
        .map(|(at, cm, girth)| {
            let share = 1.0 + (end - 1.0) * (cm - first) / (last - first);
            let stretch = start * share * (1.0 + 0.08 * chance.normal());
            worn(*at, *cm, *girth, girth / (1.0 + stretch))
        })
        .collect()
}

/// A fall with or without a remark is a fall.
fn class(grade: Grade) -> Grade {
    if grade == Grade::None { Grade::Possible } else { grade }
}

fn after(marks: &[FallMark], setting: &FallSetting<'_>, exponent: f64) -> Grade {
    let band = Band::around(exponent, setting.rules.strip_band);
    class(judge(marks, &FallSetting { band, ..setting.clone() }).grade)
}

/// Source: a law: with any exponent of a printed range the grade is the one promised; where nothing is printed
/// the grade is the same at every exponent.
#[test]
fn a_pulled_exponent_gives_the_grade_that_was_promised() {
    let mut chance = Chance::of(31);
    let (mut turned, mut promised, mut plain, mut kinds) = (0, 0, 0, std::collections::BTreeSet::new());
    for _ in 0..220 {
        let marks = garment(&mut chance);
        let (limb, to) = (marks[0].landmark.limb(), marks[marks.len() - 1].landmark);
        let setting = setting(limb, to, None);
        let all = turns(&marks, &setting);
        if all.is_empty() {
            plain += 1;
            let one = after(&marks, &setting, setting.band.low);
            let x = setting.band.low + setting.band.width() * chance.uniform();
            assert_eq!(after(&marks, &setting, x), one, "at {x}: {marks:?}");
            continue;
        }
        turned += 1;
        assert_eq!((all[0].low, all[all.len() - 1].high), (setting.band.low, setting.band.high));
        for pair in all.windows(2) {
            assert!(pair[0].grade != pair[1].grade && (pair[1].low - pair[0].high - 0.05).abs() < 1e-9);
        }
        for one in &all {
            kinds.insert(one.grade);
            for x in [one.low, one.high, one.low + (one.high - one.low) * chance.uniform()] {
                assert_eq!(after(&marks, &setting, x), one.grade, "at {x} of {all:?}: {marks:?}");
                promised += 1;
            }
        }
        // Whether a strip pull may change a likely rise is said by the same.
        let now = judge(&marks, &setting);
        let escapes = all.iter().any(|one| one.grade > Grade::Likely);
        assert_eq!(now.pull_may_change, now.grade == Grade::Likely && escapes);
    }
    assert!(turned > 60 && plain > 30 && promised > 300, "{turned} {plain} {promised}");
    assert_eq!(kinds.len(), 4, "{kinds:?}");
}

/// Source: gradient.md section 1: after a pull, by a curve or by readings nothing is open, so nothing turns.
#[test]
fn nothing_turns_where_the_exponent_is_known() {
    let mut chance = Chance::of(32);
    let mut turned = 0;
    for _ in 0..60 {
        let marks = garment(&mut chance);
        let open = setting(marks[0].landmark.limb(), marks[marks.len() - 1].landmark, None);
        turned += usize::from(!turns(&marks, &open).is_empty());
        let pulled = FallSetting { band: Band::around(1.1, 0.1), ..open.clone() };
        assert!(turns(&marks, &pulled).is_empty() && !judge(&marks, &pulled).pull_may_change);
    }
    assert!(turned > 15, "{turned}");
}

fn turn(low: f64, high: f64, grade: Grade) -> Turn {
    Turn { low, high, grade }
}

/// Source: house rule: one plain sentence, all of the band in it.
#[test]
fn the_levels_are_one_plain_sentence() {
    let all = [
        turn(0.7, 1.1, Grade::Possible),
        turn(1.15, 1.15, Grade::Undecided),
        turn(1.2, 1.35, Grade::Likely),
        turn(1.4, 1.5, Grade::Certain),
    ];
    let said = "It would fall on the whole at an exponent of 0.7 to 1.1, not be decided at 1.15, probably rise at 1.2 to 1.35 and certainly rise at 1.4 to 1.5.";
    assert_eq!(after_strip_pull(&all).as_deref(), Some(said));
    let two = "It would not be decided at an exponent of 0.7 to 1 and fall on the whole at 1.05 to 1.5.";
    assert_eq!(
        after_strip_pull(&[turn(0.7, 1.0, Grade::Undecided), turn(1.05, 1.5, Grade::Possible)]).as_deref(),
        Some(two)
    );
    assert_eq!(after_strip_pull(&[]), None);
}

const RECORD: &str = "tapeline: record/1\nclient: K-1\nmeasured_on: 2026-03-14\nlimb: left arm\naffected: left\npositions_from: wrist\nunits: {length: cm}\nmarks:\n  - {landmark: wrist, at: 0, girth: 17}\n  - {landmark: forearm, at: 14, girth: 26}\n  - {landmark: upper-arm, at: 33, girth: 31}\n  - {landmark: axilla, at: 42, girth: 35}\n";

/// Source: the same law through the program: the file is run again with the exponent of each end.
#[test]
fn the_program_keeps_its_promise() {
    let mut chance = Chance::of(33);
    let (mut ran, mut words) = (0, 0);
    for _ in 0..14 {
        let slope = 2.6 * chance.uniform() - 2.2;
        let relaxed = [
            ("wrist", 17.0, 0.0),
            ("forearm", 26.0, 14.0),
            ("upper-arm", 31.0, 33.0),
            ("axilla", 35.0, 42.0),
        ]
        .map(|(name, girth, at)| format!("{name}: {:.1}", girth / (1.0 + 0.4 * (1.0 - slope * at / 42.0))));
        let garment = |fabric: &str| {
            format!(
                "tapeline: garment/1\nlabel: g\nlimb: arm\nfrom: wrist\nto: axilla\n{fabric}units: {{length: cm}}\nrelaxed: {{{}}}\n",
                relaxed.join(", ")
            )
        };
        let folder = folder(&[
            ("arm.yaml", RECORD),
            ("open.yaml", &garment("")),
            ("pulled.yaml", &garment("fabric: knit.yaml\n")),
        ]);
        let run = |file: &str, form: &str| {
            run_in(
                folder.path(),
                &["gradient", "arm.yaml", file, "--format", form, "--today", "2026-03-14"],
                None,
            )
        };
        let fall = |file: &str| run(file, "json").json()["limbs"][0]["gradient"][0].clone();
        let open = fall("open.yaml");
        let levels = open["after_strip_pull"].as_array().unwrap().clone();
        let text = run("open.yaml", "text").stdout;
        assert_eq!(!levels.is_empty(), text.contains("After a strip pull: It would"), "{text}");
        words += usize::from(!levels.is_empty());
        for level in levels {
            for end in ["low", "high"] {
                let exponent = level[end].as_f64().unwrap();
                // No level carries the last bits of a sum: at most two places.
                assert!(format!("{exponent}").len() <= 4, "{exponent}");
                let knit = format!("tapeline: fabric/1\nlabel: k\nexponent: {exponent}\n");
                std::fs::write(folder.path().join("knit.yaml"), knit).unwrap();
                let found = fall("pulled.yaml");
                let grade = found["grade"].as_str().unwrap();
                let grade = if grade == "none" { "possible" } else { grade };
                assert_eq!(grade, level["grade"].as_str().unwrap(), "{exponent}: {relaxed:?}");
                assert_eq!(found["after_strip_pull"].as_array().unwrap().len(), 0);
                ran += 1;
            }
        }
    }
    assert!(ran > 20 && words > 5 && words < 14, "{ran} {words}");
}
