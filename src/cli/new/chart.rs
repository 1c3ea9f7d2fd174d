//! Owns the guided chart: what it says of itself, its marks, then a row for each size.

use tapeline::anatomy::{Landmark, Limb};
use tapeline::garment::{Schemes, open_chart};
use tapeline::input::{Draft, Problem, Source, landmark_fault};
use tapeline::words;

use super::engine;
use super::step::Step;
use super::{answer, claimed};

/// The guided chart.
pub(super) struct Script {
    /// The schemes.
    pub(super) schemes: Schemes,
}

const LIMBS: [&str; 2] = ["arm", "leg"];
const UNITS: [&str; 3] = ["cm", "mm", "in"];
const YES_NO: [&str; 3] = ["yes", "no", "unknown"];
const RELAXED: [&str; 3] = ["flat_width", "relaxed", "none"];

/// What a chart and a garment say of themselves.
pub(super) fn about<'s>(draft: &Draft, schemes: &Schemes) -> Vec<Step<'s>> {
    let mut steps = vec![
        Step::text(draft, "label", "Label, as it is printed:"),
        Step::word(draft, "limb", "Limb", &LIMBS),
        Step::text(draft, "style", "Style, as sleeve or stocking:").or_skip(),
    ];
    let Some(limb) = draft.text("limb").and_then(|word| Limb::parse(&word)) else { return steps };
    steps.push(claimed::claimed(draft, limb, schemes));
    steps.push(
        Step::new(draft, "materials", "Materials, with commas between:", |text, draft| {
            let words = text.split(',').map(str::trim).filter(|one| !one.is_empty());
            draft.set_list("materials", &words.map(answer::label).collect::<Result<Vec<_>, _>>()?);
            Ok(())
        })
        .or_skip(),
    );
    steps.push(Step::word(draft, "hand_part", "Does it cover the hand or foot", &YES_NO).or_skip());
    steps.push(Step::text(draft, "fabric", "Fabric file beside this one, as knit.yaml:").or_skip());
    steps.push(Step::word(draft, "units.length", "Lengths are in", &UNITS).offer("cm"));
    steps
}

/// The landmarks of a chart's first size.
fn marks(draft: &Draft, limb: Limb) -> Vec<Landmark> {
    Landmark::of(limb)
        .iter()
        .copied()
        .filter(|one| draft.has(&format!("sizes.0.girths.{}", one.name())))
        .collect()
}

impl engine::Script for Script {
    fn steps(&self, draft: &Draft) -> Vec<Step<'_>> {
        let mut steps = about(draft, &self.schemes);
        let Some(limb) = draft.text("limb").and_then(|word| Limb::parse(&word)) else { return steps };
        let lines: Vec<String> = Landmark::of(limb)
            .iter()
            .enumerate()
            .map(|(at, one)| format!("  {} {}", at + 1, words::label(*one)))
            .collect();
        steps.push(
            Step::new(
                draft,
                "marks",
                "Which marks does the chart have, by number, letter or word:",
                move |text, draft| {
                    for part in text.split([' ', ',']).filter(|part| !part.is_empty()) {
                        let by_number = part
                            .parse::<usize>()
                            .ok()
                            .and_then(|at| Landmark::of(limb).get(at.checked_sub(1)?).copied());
                        let found = by_number.or_else(|| Landmark::parse(limb, part));
                        let found = found.ok_or_else(|| landmark_fault(limb, part))?;
                        draft.set(&format!("sizes.0.girths.{}", found.name()), "");
                    }
                    Ok(())
                },
            )
            .above(lines)
            .done_if(!marks(draft, limb).is_empty()),
        );
        if marks(draft, limb).is_empty() {
            return steps;
        }
        for row in 0..draft.count("sizes") {
            steps.extend(size(draft, limb, row));
        }
        let next = draft.count("sizes");
        if draft.text(&format!("sizes.{}.size", next.saturating_sub(1))).is_some() {
            steps.push(
                Step::new(
                    draft,
                    format!("sizes.{next}.size"),
                    "Next size's label; Enter when there is none:",
                    move |text, draft| {
                        draft.set(&format!("sizes.{next}.size"), &answer::label(text)?);
                        Ok(())
                    },
                )
                .or_skip(),
            );
        }
        steps
    }

    fn opened_again(&self, draft: &mut Draft, name: &str) {
        if !claimed::open_again(draft, name) {
            draft.remove(name);
        }
    }

    fn problems(&self, text: &str, file: &str) -> Vec<Problem> {
        match Source::from_bytes(file.to_owned(), text.as_bytes().to_vec()) {
            Ok(source) => open_chart(source, &self.schemes).err().unwrap_or_default(),
            Err(problem) => vec![problem],
        }
    }

    fn afterwards(&self, file: &str) -> String {
        format!("Next: tapeline inspect {file}")
    }
}

fn size<'s>(draft: &Draft, limb: Limb, row: usize) -> Vec<Step<'s>> {
    let label = format!("sizes.{row}.size");
    let mut steps = vec![Step::text(draft, label.clone(), "Size's label, smallest first:")];
    let Some(name) = draft.text(&label) else { return steps };
    for mark in marks(draft, limb) {
        let path = format!("sizes.{row}.girths.{}", mark.name());
        let target = path.clone();
        let done = draft.text(&path).is_some_and(|text| !text.is_empty());
        steps.push(
            Step::new(
                draft,
                path,
                format!("Size {name}, {}, as 16-18:", words::label(mark)),
                move |text, draft| {
                    draft.set(&target, &answer::range(draft, text)?);
                    Ok(())
                },
            )
            .done_if(done),
        );
    }
    if row == 0 {
        let known = draft.has("sizes.0.flat_width") || draft.has("sizes.0.relaxed");
        steps.push(
            Step::new(
                draft,
                "widths",
                "Are the garments' own measures known: flat widths, relaxed girths (flat_width, relaxed, none):",
                |text, draft| {
                    match answer::word(text, &RELAXED)? {
                        "none" => draft.leave_out("widths"),
                        key => draft.set(&format!("sizes.0.{key}"), ""),
                    }
                    Ok(())
                },
            )
            .or_skip()
            .done_if(known),
        );
    }
    for (key, said) in [("flat_width", "flat width"), ("relaxed", "relaxed girth")] {
        if !draft.has(&format!("sizes.0.{key}")) {
            continue;
        }
        for mark in marks(draft, limb) {
            let path = format!("sizes.{row}.{key}.{}", mark.name());
            let target = path.clone();
            steps.push(
                Step::new(
                    draft,
                    path,
                    format!("Size {name}, {}, {said}:", words::label(mark)),
                    move |text, draft| {
                        let all = answer::numbers(draft, text)?;
                        match all.as_slice() {
                            [one] => draft.set(&target, one),
                            several => draft.set_list(&target, several),
                        }
                        Ok(())
                    },
                )
                .or_skip(),
            );
        }
    }
    steps
}
