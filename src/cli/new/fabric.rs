//! Owns the guided fabric: a bench test, points of a curve, or two pulls on a strip.

use tapeline::garment::open_fabric;
use tapeline::input::{Draft, Problem, Source};
use tapeline::quantity::Dimension;

use super::answer;
use super::engine;
use super::step::Step;

/// The guided fabric.
pub(super) struct Script;

const HOW: [&str; 3] = ["bench", "curve", "strip"];
const KINDS: [&str; 2] = ["strip", "loop"];

impl engine::Script for Script {
    fn steps(&self, draft: &Draft) -> Vec<Step<'_>> {
        let mut steps = vec![
            Step::text(draft, "label", "Label, as it is printed:"),
            Step::new(draft, "how", "What is known of it (bench, curve, strip):", |text, draft| {
                match answer::word(text, &HOW)? {
                    "curve" => {
                        draft.set("curve.0.stretch", "0 %");
                        draft.set("curve.0.tension", "0 N/m");
                    }
                    how => draft.set(how, ""),
                }
                Ok(())
            })
            .above([
                "  1 bench: weights hung from a piece, with its length under each; the heaviest first, read as they come off".to_owned(),
                "  2 curve: points of stretch and tension".to_owned(),
                "  3 strip: two weights on a strip of any width, the heaviest first; they give the exponent alone".to_owned(),
            ])
            .done_if(HOW.iter().any(|how| draft.has(how))),
        ];
        if draft.has("bench") {
            steps.push(Step::word(draft, "bench.kind", "How the piece hung", &KINDS));
            steps.push(length(draft, "bench.width", "The piece's width, as 5 cm:"));
            steps.push(length(draft, "bench.relaxed", "Its length without a weight, as 20 cm:"));
            steps.extend(pulls(draft, "bench.pulls", 20));
        } else if draft.has("strip") {
            steps.push(length(draft, "strip.relaxed", "Its length without a weight, as 20 cm:"));
            steps.extend(pulls(draft, "strip.pulls", 2));
        } else if draft.has("curve") {
            let next = draft.count("curve");
            steps.push(
                Step::new(
                    draft,
                    format!("curve.{next}"),
                    "Next point, stretch and tension, as 20 62 (%, N/m); Enter at the end:",
                    move |text, draft| {
                        let (stretch, tension) = two(text, "%", "N/m")?;
                        let (stretch, tension) = (
                            answer::number(draft, &stretch, Dimension::Ratio)?,
                            answer::number(draft, &tension, Dimension::Tension)?,
                        );
                        draft.set(&format!("curve.{next}.stretch"), &stretch);
                        draft.set(&format!("curve.{next}.tension"), &tension);
                        Ok(())
                    },
                )
                .or_skip(),
            );
        }
        steps
    }

    fn problems(&self, text: &str, file: &str) -> Vec<Problem> {
        match Source::from_bytes(file.to_owned(), text.as_bytes().to_vec()) {
            Ok(source) => open_fabric(source).err().unwrap_or_default(),
            Err(problem) => vec![problem],
        }
    }

    fn afterwards(&self, file: &str) -> String {
        format!("Next: tapeline fabric {file}")
    }
}

fn length<'s>(draft: &Draft, path: &str, prompt: &str) -> Step<'s> {
    let target = path.to_owned();
    Step::new(draft, path, prompt, move |text, draft| {
        let text = answer::pointed(text);
        let text =
            if text.chars().all(|c| c.is_ascii_digit() || c == '.') { format!("{text} cm") } else { text };
        draft.set(&target, &answer::number(draft, &text, Dimension::Length)?);
        Ok(())
    })
}

/// Two numbers, each with its unit where it has none.
fn two(text: &str, first: &str, second: &str) -> Result<(String, String), String> {
    let text = answer::pointed(text);
    let parts: Vec<&str> =
        text.split_whitespace().filter(|part| part.starts_with(|c: char| c.is_ascii_digit())).collect();
    match parts.as_slice() {
        [one, other] => {
            let bare = |part: &str| part.chars().all(|c| c.is_ascii_digit() || c == '.');
            let with =
                |part: &str, unit: &str| if bare(part) { format!("{part} {unit}") } else { part.to_owned() };
            Ok((with(one, first), with(other, second)))
        }
        _ => Err("Type two numbers with a blank between.".to_owned()),
    }
}

fn pulls<'s>(draft: &Draft, list: &str, most: usize) -> Vec<Step<'s>> {
    let next = draft.count(list);
    if next >= most {
        return Vec::new();
    }
    let target = list.to_owned();
    let step = Step::new(
        draft,
        format!("{list}.{next}"),
        "Next weight and length under it, as 200 23.1 (g, cm); Enter at the end:",
        move |text, draft| {
            let (weight, length) = two(text, "g", "cm")?;
            let (weight, length) = (
                answer::number(draft, &weight, Dimension::Mass)?,
                answer::number(draft, &length, Dimension::Length)?,
            );
            draft.set(&format!("{target}.{next}.weight"), &weight);
            draft.set(&format!("{target}.{next}.length"), &length);
            Ok(())
        },
    );
    vec![if next < 2 { step } else { step.or_skip() }]
}
