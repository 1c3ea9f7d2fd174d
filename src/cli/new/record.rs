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
use tapeline::record::looks_like_a_name;
use tapeline::rules::Rules;

use super::engine::{self, Doubt};
use super::step::Step;
use super::{answer, arteries, claimed, marks, questions, seen};

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
const UNITS: [&str; 3] = ["cm", "mm", "in"];
const ROLES: [&str; 5] = ["physician", "vascular", "oncology", "surgery", "therapist"];
/// Whether the cause is known; who found it says that it is.
const KNOWN: [&str; 8] =
    ["no", "unknown", "physician", "vascular", "oncology", "surgery", "therapist", "yes"];
/// What one key takes as it usually is.
const USUAL: [&str; 4] = ["measured_on", "age_band", "units.length", "positions_from"];

impl Script {
    /// What is mostly so, taken by one key; `no` asks for each.
    fn usual(&self, draft: &Draft, limb: Limb) -> Step<'_> {
        let zero = marks::usual_zero(limb);
        let day = self.today.to_string();
        let prompt = format!(
            "Adult, measured on {day}, tape in cm, distances from the {zero} (yes, or no to be asked each):"
        );
        Step::new(draft, "usual", prompt, move |text, draft| {
            if answer::word(text, &["yes", "no"])? == "no" {
                draft.leave_out("usual");
                return Ok(());
            }
            for (path, value) in USUAL.iter().zip([day.as_str(), "adult", "cm", zero]) {
                draft.set(path, value);
            }
            Ok(())
        })
        .offer("yes")
        .done_if(USUAL.iter().any(|path| draft.has(path)))
    }
}

/// Words with their numbers, which are typed in their place: `1 left arm, 2 right arm`.
fn numbered(words: &[&str]) -> String {
    let each = words.iter().enumerate().map(|(at, word)| format!("{} {word}", at + 1));
    each.collect::<Vec<_>>().join(", ")
}

/// The cause of the swelling, and who found it.
fn cause<'s>(draft: &Draft) -> Vec<Step<'s>> {
    let prompt = format!("Is the cause of the swelling known, and who found it ({}):", KNOWN.join(", "));
    let mut steps = vec![
        Step::new(draft, "cause.known", prompt, |text, draft| {
            match answer::word(text, &KNOWN)? {
                role if ROLES.contains(&role) => {
                    draft.set("cause.known", "yes");
                    draft.set("cause.by", role);
                }
                known => draft.set("cause.known", known),
            }
            Ok(())
        })
        .help("A cause that somebody has found and written down: name the role, as physician. `no` and `unknown` mean that it has to be found before a fitting."),
    ];
    if draft.text("cause.known").as_deref() == Some("yes") {
        steps.push(Step::word(draft, "cause.by", "Who found it", &ROLES).or_skip());
    }
    steps
}

impl engine::Script for Script {
    fn steps(&self, draft: &Draft) -> Vec<Step<'_>> {
        let mut steps = vec![
            Step::text(draft, "client", "Client's reference, never a name:").help(
                "The clinic's code for the client, as L-0417. It stands on every sheet.",
            ),
            Step::new(draft, "limb", format!("Which limb ({}):", numbered(&LIMBS)), |text, draft| {
                draft.set("limb", answer::word(text, &LIMBS)?);
                Ok(())
            })
                .help("The limb to be fitted. Take `both` where both are to be fitted; a second limb that is only measured beside it comes later."),
        ];
        let Some((limb, both)) = limb_of(draft) else { return steps };
        let side = draft.text("limb").unwrap_or_default().split(' ').next().unwrap_or_default().to_owned();
        steps.push(
            Step::word(draft, "affected", "Which side is affected by the swelling", &AFFECTED).offer(side),
        );
        steps.push(self.usual(draft, limb));
        steps.push(
            Step::new(draft, "measured_on", "Measured on:", |text, draft| {
                draft.set("measured_on", &answer::day(text)?);
                Ok(())
            })
            .offer(self.today.to_string()),
        );
        steps.push(Step::word(draft, "age_band", "Age", &AGES).offer("adult"));
        steps.push(
            Step::word(draft, "units.length", "The tape is in", &UNITS)
                .offer("cm")
                .help("Asked once. A number with its own unit, as 256 mm, is taken anywhere."),
        );
        steps.push(marks::zero(draft, limb));
        steps.push(Step::text(draft, "measured_by", "Measured by (initials or a code):").or_skip());
        steps.extend(cause(draft));
        steps.push(
            Step::text(draft, "posture", "Posture while measuring, as `seated, arm supported`:").or_skip(),
        );
        steps.extend(marks::steps(draft, limb, both));
        steps.extend(seen::seen(draft, limb, both));
        steps.extend(questions::screening(draft, limb, both, &self.rules));
        if limb == Limb::Leg {
            steps.extend(arteries::arterial(draft, both));
        }
        steps.extend(claimed::prescribed(draft, limb, &self.schemes));
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

    fn doubt(&self, draft: &Draft, name: &str) -> Option<Doubt> {
        let asks = |question: String, words: Vec<String>, again: &'static str| {
            let open = words.iter().any(|word| !draft.list("confirmed").contains(word));
            open.then_some(Doubt { question, words, again })
        };
        if name == "client" {
            let looks = looks_like_a_name(&draft.text("client")?);
            let question = "That looks like a name; a record holds a reference code only.".to_owned();
            return looks.then(|| {
                asks(question, vec!["client".to_owned()], "Type the reference, or Enter if it is one:")
            })?;
        }
        let (word, again) = match marks::landmark_of_girth(draft, name) {
            Some(landmark) => (landmark.name(), "Measure again and type the girth, or Enter if it holds:"),
            None if name.starts_with("lengths.") => {
                ("lengths", "Measure again and type it, or Enter if both hold:")
            }
            None => return None,
        };
        let setting = Setting { today: self.today, rules: self.rules.clone(), schemes: self.schemes.clone() };
        let opened = open_files(vec![source(&draft.to_text(true), "record")?], &setting).ok()?;
        let found = assess(&opened, &setting)?;
        let asked = found.findings.iter().filter(|one| one.is_open).find_map(|one| {
            let words: Vec<String> = one.question.as_ref()?.split(", ").map(str::to_owned).collect();
            words.iter().any(|one| one == word).then(|| (one.message.clone(), words))
        })?;
        asks(asked.0, asked.1, again)
    }

    fn opened_again(&self, draft: &mut Draft, name: &str) {
        if name == "usual" {
            for path in USUAL {
                draft.remove(path);
            }
        } else if name == "cause.known" {
            draft.remove("cause");
        } else if !marks::open_again(draft, name)
            && !questions::open_again(draft, name, &self.rules)
            && !seen::open_again(draft, name)
        {
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
