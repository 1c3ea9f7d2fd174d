//! Records written for screening, and what `screening` makes of them.

use std::sync::OnceLock;

use jiff::civil::Date;
use tapeline::garment::Schemes;
use tapeline::input::{Reader, Source};
use tapeline::record::{Record, read_record};
use tapeline::rules::{Rules, read_shipped_rules};
use tapeline::screening::{Case, Screened, check_answers, settle};

/// The day of all scripted records.
pub const TODAY: &str = "2026-03-14";

pub const ARM_GROUPS: &str =
    "today, skin, feeling, cause, operations, heart-kidneys, circulation, devices, daily-life";
pub const LEG_GROUPS: &str =
    "today, skin, feeling, cause, operations, heart-kidneys, circulation, daily-life";

/// A healthy arm: every question answered, nothing there.
pub fn arm() -> String {
    format!(
        "tapeline: record/1
client: K-0001
measured_on: {TODAY}
measured_by: R2
units: {{length: cm, pressure: mmHg}}
limb: left arm
affected: left
cause: {{known: yes, by: physician}}
positions_from: wrist
marks:
  - {{landmark: wrist, at: 0, girth: 16.9}}
  - {{landmark: forearm, at: 14, girth: 25.7}}
  - {{landmark: upper-arm, at: 31, girth: 29.8}}
observed: {{pitting: none, folds: no, distortion: no, hand_swelling: no, swelling_beyond: no}}
screening: {{asked_on: {TODAY}, absent: [{ARM_GROUPS}]}}
allergies: none
"
    )
}

/// A healthy leg with an index that passes.
pub fn leg() -> String {
    format!(
        "tapeline: record/1
client: K-0001
measured_on: {TODAY}
measured_by: R2
units: {{length: cm, pressure: mmHg}}
limb: left leg
affected: left
cause: {{known: yes, by: physician}}
positions_from: floor
marks:
  - {{landmark: ankle, at: 11, girth: 22.9}}
  - {{landmark: calf, at: 31, girth: 36.8}}
  - {{landmark: upper-thigh, at: 71, girth: 56.2}}
observed: {{pitting: none, folds: no, distortion: no, foot_swelling: no, swelling_beyond: no}}
screening: {{asked_on: {TODAY}, absent: [{LEG_GROUPS}]}}
arterial: {{taken_on: 2026-03-10, abpi: 1.0}}
allergies: none
"
    )
}

/// The same leg with another block of arterial values; an empty one takes it out.
pub fn leg_with(arterial: &str) -> String {
    let block = if arterial.is_empty() {
        String::new()
    } else {
        format!("arterial: {{taken_on: 2026-03-10, {arterial}}}\n")
    };
    leg().replace("arterial: {taken_on: 2026-03-10, abpi: 1.0}\n", &block)
}

/// The same limb with items present.
pub fn present(record: &str, items: &str) -> String {
    record
        .replace("]}\narterial", &format!("], present: [{items}]}}\narterial"))
        .replace("]}\nallergies", &format!("], present: [{items}]}}\nallergies"))
}

pub fn rules() -> &'static Rules {
    static RULES: OnceLock<Rules> = OnceLock::new();
    RULES.get_or_init(|| read_shipped_rules("default").unwrap())
}

pub fn read(text: &str) -> Record {
    let reader = Reader::new(Source::of_text("record.yaml", text)).unwrap();
    let record = read_record(&reader);
    let problems = reader.problems();
    assert!(problems.is_empty(), "{problems:#?}\n{text}");
    record.unwrap()
}

pub fn day(text: &str) -> Date {
    text.parse().unwrap()
}

/// The first limb's screening.
pub fn screen(text: &str) -> Screened {
    screen_with(text, &[], 0, TODAY)
}

pub fn screen_with(text: &str, earlier: &[&str], limb: usize, today: &str) -> Screened {
    let record = read(text);
    let earlier: Vec<Record> = earlier.iter().map(|one| read(one)).collect();
    let (rules, schemes) = (rules(), Schemes::default());
    let case = Case {
        record: &record,
        limb: &record.limbs[limb],
        earlier: &earlier,
        rules,
        schemes: &schemes,
        today: day(today),
        worsening: false,
        grown: false,
    };
    settle(&case)
}

/// The problems of the answers, as printed.
pub fn problems(text: &str) -> String {
    let reader = Reader::new(Source::of_text("record.yaml", text)).unwrap();
    let record = read_record(&reader);
    let mut all: Vec<String> = reader.problems().iter().map(ToString::to_string).collect();
    if let Some(record) = record {
        let found = check_answers(&reader, &record, rules(), &Schemes::default(), day(TODAY));
        all.extend(found.iter().map(ToString::to_string));
    }
    all.join("\n")
}

/// Both legs, each side answered by itself.
pub fn both_legs(left: &str, right: &str) -> String {
    let arterial = |values: &str| {
        if values.is_empty() {
            String::new()
        } else {
            format!("\n  arterial: {{taken_on: 2026-03-10, {values}}}")
        }
    };
    let side = |name: &str, values: &str| {
        format!(
            "{name}:
  marks:
    - {{landmark: ankle, at: 11, girth: 22.9}}
    - {{landmark: calf, at: 31, girth: 36.8}}
    - {{landmark: upper-thigh, at: 71, girth: 56.2}}
  observed: {{pitting: none, folds: no, distortion: no, foot_swelling: no, swelling_beyond: no}}
  screening: {{absent: [skin, feeling, cause, operations, circulation]}}{}
",
            arterial(values)
        )
    };
    format!(
        "tapeline: record/1
client: K-0001
measured_on: {TODAY}
measured_by: R2
units: {{length: cm, pressure: mmHg}}
limb: both legs
affected: both
cause: {{known: yes, by: physician}}
positions_from: floor
{}{}screening: {{asked_on: {TODAY}, absent: [today, heart-kidneys, daily-life]}}
allergies: none
",
        side("left", left),
        side("right", right)
    )
}
