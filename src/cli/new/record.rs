//! Owns the guided record: who and when, which limb, the marks in measuring order, what is seen, the
//! questions, the arteries of a leg, what is prescribed, what is not borne.
//!
//! Source: the order of the marks follows the hand that measures; the questions are those of the rules.

use jiff::civil::Date;
use tapeline::anatomy::Limb;
use tapeline::assessment::{Setting, assess, open_files};
use tapeline::garment::Schemes;
use tapeline::input::{Draft, Problem, Source};
use tapeline::quantity::Dimension;
use tapeline::rules::Rules;

use super::engine;
use super::step::Step;
use super::{answer, marks, questions};

/// The guided record.
pub(super) struct Script {
    /// The rules.
    pub(super) rules: Rules,
    /// The schemes.
    pub(super) schemes: Schemes,
    /// The day.
    pub(super) today: Date,
}

/// The limb of a draft and whether both are measured; none before it is said.
pub(super) fn limb_of(draft: &Draft) -> Option<(Limb, bool)> {
    let text = draft.text("limb")?;
    let limb = if text.contains("arm") { Limb::Arm } else { Limb::Leg };
    Some((limb, text.starts_with("both")))
}

const LIMBS: [&str; 6] = ["left arm", "right arm", "both arms", "left leg", "right leg", "both legs"];
const AFFECTED: [&str; 4] = ["left", "right", "both", "none"];
const AGES: [&str; 2] = ["adult", "child"];
const KNOWN: [&str; 3] = ["yes", "no", "unknown"];
const UNITS: [&str; 3] = ["cm", "mm", "in"];
const ROLES: [&str; 5] = ["physician", "vascular", "oncology", "surgery", "therapist"];

impl engine::Script for Script {
    fn steps(&self, draft: &Draft) -> Vec<Step<'_>> {
        let mut steps = vec![
            Step::text(draft, "client", "Client's reference, never a name:").help(
                "The clinic's code for the client, as L-0417. It stands on every sheet.",
            ),
            Step::word(draft, "limb", "Which limb", &LIMBS)
                .help("The limb to be fitted. Take `both` where both are to be fitted; a second limb that is only measured beside it comes later."),
        ];
        let Some((limb, both)) = limb_of(draft) else { return steps };
        let side = draft.text("limb").unwrap_or_default().split(' ').next().unwrap_or_default().to_owned();
        steps.push(
            Step::word(draft, "affected", "Which side is affected by the swelling", &AFFECTED).offer(side),
        );
        steps.push(
            Step::new(draft, "measured_on", "Measured on:", |text, draft| {
                draft.set("measured_on", &answer::day(text)?);
                Ok(())
            })
            .offer(self.today.to_string()),
        );
        steps.push(Step::text(draft, "measured_by", "Measured by (initials or a code):").or_skip());
        steps.push(Step::word(draft, "age_band", "Age", &AGES).offer("adult"));
        steps.push(Step::word(draft, "cause.known", "Is the cause of the swelling known", &KNOWN));
        if draft.text("cause.known").as_deref() == Some("yes") {
            steps.push(Step::word(draft, "cause.by", "Who found it", &ROLES).or_skip());
        }
        steps.push(
            Step::text(draft, "posture", "Posture while measuring, as `seated, arm supported`:").or_skip(),
        );
        steps.push(
            Step::word(draft, "units.length", "The tape is in", &UNITS)
                .offer("cm")
                .help("Asked once. A number with its own unit, as 256 mm, is taken anywhere."),
        );
        steps.extend(marks::steps(draft, limb, both));
        steps.extend(questions::observed(draft, limb, both));
        steps.extend(questions::screening(draft, limb, both, &self.rules));
        if limb == Limb::Leg {
            steps.extend(questions::arterial(draft, both));
        }
        steps.extend(questions::prescribed(draft, limb, &self.schemes));
        steps.push(questions::allergies(draft, &self.rules));
        steps.push(
            Step::new(draft, "weight", "Body weight, as 71 kg:", |text, draft| {
                let text = answer::pointed(text);
                let text = if text.chars().all(|c| c.is_ascii_digit() || c == '.') {
                    format!("{text} kg")
                } else {
                    text
                };
                draft.set("weight", &answer::number(draft, &text, Dimension::Mass)?);
                Ok(())
            })
            .or_skip(),
        );
        steps
    }

    fn doubt(&self, draft: &Draft, name: &str) -> Option<(String, String)> {
        let landmark = marks::landmark_of_girth(draft, name)?;
        let setting = Setting { today: self.today, rules: self.rules.clone(), schemes: self.schemes.clone() };
        let opened = open_files(vec![source(&draft.to_text(true), "record")?], &setting).ok()?;
        let found = assess(&opened, &setting)?;
        let asked = found
            .findings
            .iter()
            .find(|one| one.place.landmark == Some(landmark) && one.is_open && one.question.is_some())?;
        Some((asked.message.clone(), asked.question.clone().unwrap_or_default()))
    }

    fn opened_again(&self, draft: &mut Draft, name: &str) {
        if !marks::open_again(draft, name) && !questions::open_again(draft, name, &self.rules) {
            draft.remove(name);
        }
    }

    fn problems(&self, text: &str, file: &str) -> Vec<Problem> {
        let setting = Setting { today: self.today, rules: self.rules.clone(), schemes: self.schemes.clone() };
        match source(text, file) {
            Some(source) => open_files(vec![source], &setting).err().unwrap_or_default(),
            None => Vec::new(),
        }
    }

    fn afterwards(&self, file: &str) -> String {
        format!("Next: tapeline check {file} CHART.yaml")
    }
}

fn source(text: &str, name: &str) -> Option<Source> {
    Source::from_bytes(name.to_owned(), text.as_bytes().to_vec()).ok()
}
