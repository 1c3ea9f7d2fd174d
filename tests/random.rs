//! Random records and charts from a seed, for laws that have to hold whatever is asked. Every figure is
//! invented; one seed always gives the same scene.

use std::sync::LazyLock;

use crate::scene::{ARM_GROUPS, DEFAULT, HAND_PIECE, LEG_GROUPS, SLEEVE, STOCKING, Scene};

/// Numbers from a seed (`SplitMix64`: Steele, Lea, Flood 2014, published).
pub struct Dice(u64);

impl Dice {
    pub fn of(seed: u64) -> Self {
        Self(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^ (mixed >> 31)
    }

    /// From 0 to below 1.
    pub fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// True with a chance.
    pub fn luck(&mut self, chance: f64) -> bool {
        self.share() < chance
    }

    /// From `low` to below `high`.
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + self.share() * (high - low)
    }

    /// From 0 to below `count`.
    pub fn below(&mut self, count: usize) -> usize {
        (self.next() % count as u64) as usize
    }

    /// One of a list.
    pub fn one<'a, T: ?Sized>(&mut self, list: &[&'a T]) -> &'a T {
        list[self.below(list.len())]
    }
}

/// Marks of a limb with usual girths, cm.
const ARM: [(&str, f64, f64); 4] =
    [("wrist", 0.0, 17.0), ("forearm", 14.0, 26.0), ("elbow", 22.0, 27.0), ("upper-arm", 33.0, 31.0)];
const LEG: [(&str, f64, f64); 4] =
    [("ankle", 11.0, 23.0), ("calf", 31.0, 38.0), ("knee", 44.0, 40.0), ("mid-thigh", 59.0, 51.0)];

/// The fabrics that charts may name, written once.
static FABRICS: LazyLock<(tempfile::TempDir, Vec<String>)> = LazyLock::new(|| {
    let folder = tempfile::tempdir().unwrap();
    let mut names = Vec::new();
    for (at, (tension, last)) in [(60, 40), (110, 40), (250, 60), (420, 60)].into_iter().enumerate() {
        let path = folder.path().join(format!("knit-{at}.yaml"));
        let text = format!(
            "tapeline: fabric/1\nlabel: knit {at} (invented)\nbasis: invented\ncurve: [{{stretch: 0 %, tension: 0 N/m}}, {{stretch: {last} %, tension: {tension} N/m}}]\n"
        );
        std::fs::write(&path, text).unwrap();
        names.push(path.display().to_string());
    }
    (folder, names)
});

/// A scene of a seed.
pub fn scene(seed: u64) -> Scene {
    let mut dice = Dice::of(seed);
    let arm = dice.luck(0.5);
    // Many small parts that may be out of order: most scenes keep most of them in order.
    let trouble = dice.one(&[&0.02, &0.1, &0.3]).to_owned();
    let mut scene = if arm { Scene::arm() } else { Scene::leg() };
    let marks = if arm { ARM } else { LEG };
    let scale = dice.between(0.85, 1.35);
    let unusual = trouble / 2.0;
    scene = scene.girths(&girths(&mut dice, &marks, scale, unusual, arm));
    if arm && dice.luck(0.1) {
        // In the gap between two sizes, where charts have one.
        scene = scene.girths(&format!(
            "wrist@0={:.1} forearm@14={:.1} upper-arm@33={:.1}",
            dice.between(20.0, 20.8),
            dice.between(30.0, 31.0),
            dice.between(36.0, 37.0)
        ));
    }
    if dice.luck(0.5) {
        let other = scale * dice.between(0.9, 1.02);
        scene = scene.other(&girths(&mut dice, &marks, other, 0.0, arm));
    }
    scene = charts(&mut dice, scene, arm, trouble);
    scene = screening(&mut dice, scene, arm, trouble);
    for key in ["folds", "distortion", "swelling_beyond", if arm { "hand_swelling" } else { "foot_swelling" }]
    {
        if dice.luck(trouble) {
            let answer = dice.one(&["yes", "unknown"]).to_owned();
            scene = scene.seen(key, &answer);
        }
    }
    if dice.luck(trouble) {
        let answer = dice.one(&["minor", "strong", "unknown"]).to_owned();
        scene = scene.seen("pitting", &answer);
    }
    if !arm && dice.luck(3.0 * trouble) {
        scene = arterial(&mut dice, scene);
    }
    let scene = rest(&mut dice, scene, arm, &marks, scale, trouble);
    worn(&mut dice, scene, arm, trouble)
}

/// Garment files, readings, and both limbs in place of one.
fn worn(dice: &mut Dice, scene: Scene, arm: bool, trouble: f64) -> Scene {
    let mut scene = scene;
    if dice.luck(0.15) {
        let (limb, from, to, relaxed) = if arm {
            ("arm", "wrist", "upper-arm", "wrist: 12.5, forearm: 20.8, upper-arm: 27")
        } else {
            ("leg", "ankle", "mid-thigh", "ankle: 16.5, calf: 31, mid-thigh: 45")
        };
        let scheme = if arm { "ral-gz-387-2" } else { "ral-gz-387-1" };
        scene = scene.garment(&format!(
            "tapeline: garment/1\nlabel: worn one\nlimb: {limb}\nfrom: {from}\nto: {to}\nscheme: {scheme}\nclass: \"2\"\nmaterials: [polyamide]\nunits: {{length: cm}}\nrelaxed: {{{relaxed}}}\n"
        ));
        if dice.luck(0.5) {
            let read: Vec<String> =
                (if arm { ["wrist", "forearm", "upper-arm"] } else { ["ankle", "calf", "mid-thigh"] })
                    .iter()
                    .map(|mark| {
                        format!(
                            "{{landmark: {mark}, pressure: {:.0}, garment: worn one}}",
                            dice.between(8.0, 45.0)
                        )
                    })
                    .collect();
            scene = scene.set("readings", &format!("[{}]", read.join(", ")));
        }
    }
    if dice.luck(0.12) {
        scene = scene.both(if arm { "both arms" } else { "both legs" });
        if dice.luck(3.0 * trouble) {
            let left = scene.value("left").replace("skin, feeling, cause", "skin, cause");
            scene = scene.set("left", &left);
        }
        if dice.luck(3.0 * trouble) {
            let right = scene.value("right").replace("folds: no", "folds: yes");
            scene = scene.set("right", &right);
        }
    }
    scene
}

fn girths(dice: &mut Dice, marks: &[(&str, f64, f64)], scale: f64, unusual: f64, arm: bool) -> String {
    let mut all: Vec<String> = Vec::new();
    if arm && dice.luck(0.3) {
        all.push(format!("hand@-7={:.1}", 19.0 * scale * dice.between(0.95, 1.05)));
    }
    for (landmark, at, girth) in marks {
        let joint = matches!(*landmark, "elbow" | "knee");
        if dice.luck(if joint { 0.5 } else { unusual }) {
            continue;
        }
        let mut value = girth * scale * dice.between(0.95, 1.05);
        if dice.luck(unusual / 2.0) {
            value *= dice.between(0.5, 1.9);
        }
        let repeat = if dice.luck(0.2) {
            format!("/{:.1}", value + dice.between(-0.4, 0.4) * dice.one(&[&1.0, &1.0, &4.0]))
        } else {
            String::new()
        };
        all.push(format!("{landmark}@{at}={value:.1}{repeat}"));
    }
    if all.is_empty() {
        let (landmark, at, girth) = marks[0];
        all.push(format!("{landmark}@{at}={:.1}", girth * scale));
    }
    all.join(" ")
}

fn charts(dice: &mut Dice, scene: Scene, arm: bool, trouble: f64) -> Scene {
    let mut scene = scene.no_chart();
    let base = if arm { SLEEVE } else { STOCKING };
    for place in 0..dice.below(4) {
        let mut text = base.to_owned();
        // Two charts of one label are told apart by their file.
        if dice.luck(0.7) {
            text = text.replace("label: s", &format!("label: chart {place} s"));
        }
        if arm && dice.luck(0.2) {
            HAND_PIECE.clone_into(&mut text);
        }
        if dice.luck(0.4) {
            // Gaps between sizes.
            for (from, to) in [
                ("wrist: 20-26", "wrist: 20.8-26"),
                ("forearm: 30-38", "forearm: 31-38"),
                ("upper-arm: 36-46", "upper-arm: 37-46"),
            ] {
                text = text.replace(from, to);
            }
        }
        if dice.luck(0.4) {
            let steep = dice.between(0.8, 1.1);
            for (key, value) in [("forearm", 20.8), ("forearm", 26.0), ("calf", 31.0)] {
                text = text.replace(&format!("{key}: {value},"), &format!("{key}: {:.1},", value * steep));
            }
        }
        if dice.luck(0.5) {
            let fabric = &FABRICS.1[dice.below(FABRICS.1.len())];
            text = text.replace("units:", &format!("fabric: {fabric}\nunits:"));
        }
        if dice.luck(0.2) {
            let lines: Vec<&str> = text.lines().filter(|line| !line.contains("relaxed:")).collect();
            text = lines.join("\n") + "\n";
        }
        if dice.luck(trouble) {
            text = text.replace("materials: [polyamide]\n", dice.one(&["", "materials: [latex]\n"]));
        }
        if dice.luck(trouble) {
            text = text
                .replace("scheme: ral-gz-387-2\nclass: \"2\"\n", "")
                .replace("scheme: ral-gz-387-1\nclass: \"2\"\n", "");
        }
        if dice.luck(0.2) {
            let rule = dice.one(&["smaller", "larger", "fitter"]).to_owned();
            text = text.replace("units:", &format!("between_sizes: {rule}\nunits:"));
        }
        if dice.luck(trouble) {
            let span = if arm { "wrist to upper-arm" } else { "ankle to mid-thigh" };
            text = text.replace(
                "relaxed: {",
                &format!("lengths: [{{variant: short, {span}: 20-30}}]\n    relaxed: {{"),
            );
        }
        scene = scene.chart(&text);
    }
    scene
}

fn screening(dice: &mut Dice, scene: Scene, arm: bool, trouble: f64) -> Scene {
    let groups = if arm { ARM_GROUPS } else { LEG_GROUPS };
    let mut absent: Vec<&str> = groups.split(", ").collect();
    if dice.luck(trouble) {
        absent.remove(dice.below(absent.len()));
    }
    let families = ["heart-failure-mild", "heart-failure-moderate", "heart-failure-severe"];
    let mut present: Vec<String> = Vec::new();
    let mut unknown: Vec<String> = Vec::new();
    for item in DEFAULT.items.iter().filter(|item| item.group.is_some_and(|group| !group.is_of_re_order())) {
        let here = item.limbs.word() == "both" || (item.limbs.word() == "arm") == arm;
        if !here || item.answered_by != tapeline::rules::AnsweredBy::Screening {
            continue;
        }
        if dice.luck(trouble / 15.0) {
            let graded = families.contains(&item.id.as_str());
            if !graded || !present.iter().any(|one| families.contains(&one.as_str())) {
                present.push(item.id.clone());
            }
        } else if dice.luck(trouble / 30.0) && !families.contains(&item.id.as_str()) {
            unknown.push(item.id.clone());
        }
    }
    let mut scene = scene;
    if let Some(first) = present.first().filter(|_| dice.luck(0.5)) {
        let role = DEFAULT.item(first).and_then(|item| item.cleared_by.first()).map(|by| by.role.word());
        if let Some(role) = role {
            scene = scene.cleared(&first.clone(), role);
        }
    }
    scene.set(
        "screening",
        &format!(
            "{{asked_on: {}, by: R2, absent: [{}], present: [{}], unknown: [{}]}}",
            if dice.luck(trouble) { "2025-11-20" } else { "2026-03-14" },
            absent.join(", "),
            present.join(", "),
            unknown.join(", ")
        ),
    )
}

fn arterial(dice: &mut Dice, scene: Scene) -> Scene {
    let mut values: Vec<String> = Vec::new();
    if dice.luck(0.7) {
        values.push(format!("abpi: {:.2}", dice.between(0.45, 1.5)));
    }
    if dice.luck(0.3) {
        values.push(format!("toe: {:.0} mmHg", dice.between(20.0, 90.0)));
    }
    if dice.luck(0.2) {
        values.push(format!("tcpo2: {:.0} mmHg", dice.between(10.0, 70.0)));
    }
    if dice.luck(0.2) {
        values.push("clinical: adequate, clinical_by: podiatry, clinical_found: both foot pulses".to_owned());
    }
    if dice.luck(0.3) {
        values.push(format!("cap: {:.0} mmHg", dice.between(12.0, 40.0)));
    }
    if values.is_empty() {
        return scene.without("arterial");
    }
    let taken = dice.one(&["2026-03-10", "2025-09-01", "2024-12-01"]).to_owned();
    scene.set("arterial", &format!("{{taken_on: {taken}, {}}}", values.join(", ")))
}

fn rest(
    dice: &mut Dice,
    scene: Scene,
    arm: bool,
    marks: &[(&str, f64, f64)],
    scale: f64,
    trouble: f64,
) -> Scene {
    let mut scene = scene;
    let maybe: [(&str, &[&str]); 6] = [
        ("allergies", &["[latex]", "[polyamide]", "[xylene]", "[penicillin]"]),
        ("measured_on", &["2025-12-01", "2025-08-01", "2026-03-20"]),
        ("age_band", &["child"]),
        ("cause", &["{known: no}", "{known: unknown}", "{known: yes, by: physician, note: after treatment}"]),
        ("affected", &["both", "left", "right"]),
        ("infections", &["[2026-02-25]", "[2025-05-01, 2025-11-02]"]),
    ];
    for (key, values) in maybe {
        if dice.luck(trouble) {
            let value = values[dice.below(values.len())];
            scene = scene.set(key, value);
        }
    }
    if dice.luck(2.0 * trouble) {
        let scheme = if arm == dice.luck(0.9) { "ral-gz-387-2" } else { "ral-gz-387-1" };
        let class = dice.one(&["1", "2", "3"]).to_owned();
        scene = scene.set("prescribed", &format!("{{scheme: {scheme}, class: \"{class}\"}}"));
    }
    if dice.luck(0.3) {
        let mut earlier = scene.clone().without("cleared").without("readings").no_chart();
        for days in ["2026-03-01", "2026-03-07", "2026-02-10"] {
            if dice.luck(0.6) {
                let grown = scale * dice.between(0.97, 1.08);
                let seen = girths(dice, marks, grown, 0.0, arm);
                earlier = earlier.set("measured_on", days).girths(&seen);
                scene = scene.earlier(&earlier);
            }
        }
    }
    scene
}

#[test]
fn a_seed_always_gives_the_same_scene() {
    assert_eq!(scene(7).files(), scene(7).files());
    assert_ne!(scene(7).files(), scene(8).files());
}

#[test]
fn most_random_scenes_are_read() {
    let read = (0..200).filter(|seed| scene(*seed).try_check().is_ok()).count();
    assert!(read > 160, "{read} of 200");
}

#[test]
fn random_scenes_reach_every_outcome() {
    let mut seen: Vec<&str> =
        (0..600).filter_map(|seed| Some(scene(seed).try_check().ok()?.outcome())).collect();
    seen.sort_unstable();
    seen.dedup();
    for outcome in tapeline::assessment::Outcome::ALL {
        assert!(seen.contains(&outcome.word()), "{} is never reached: {seen:?}", outcome.word());
    }
}

#[test]
fn random_scenes_have_both_limbs_garments_readings_and_visits() {
    let (mut both, mut garments, mut readings, mut visits) = (0, 0, 0, 0);
    for checked in (0..400).filter_map(|seed| scene(seed).try_check().ok()) {
        both += usize::from(checked.0.limbs.len() > 1);
        garments += usize::from(!checked.0.garments.is_empty());
        readings += usize::from(checked.0.record.limbs.iter().any(|limb| !limb.readings.is_empty()));
        visits += usize::from(!checked.0.earlier.is_empty());
    }
    assert!(
        both > 15 && garments > 25 && readings > 10 && visits > 40,
        "{both} {garments} {readings} {visits}"
    );
}
