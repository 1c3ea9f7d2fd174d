//! Owns the questions for the arteries of a leg: what was measured, or judged where nothing was, and when.

use tapeline::input::Draft;
use tapeline::quantity::Dimension;

use super::answer;
use super::questions::sides;
use super::step::Step;

const CLINICAL: [&str; 3] = ["adequate", "doubtful", "inadequate"];
const ROLES: [&str; 4] = ["therapist", "podiatry", "physician", "vascular"];

/// What is known of the arteries of a leg, of each leg where both are fitted.
pub(super) fn arterial<'s>(draft: &Draft, both: bool) -> Vec<Step<'s>> {
    sides(both).iter().flat_map(|(prefix, side)| of_leg(draft, prefix, side)).collect()
}

fn of_leg<'s>(draft: &Draft, prefix: &str, side: &str) -> Vec<Step<'s>> {
    let path = |key: &str| format!("{prefix}arterial.{key}");
    let target = path("abpi");
    let index = Step::new(
        draft,
        path("abpi"),
        format!("{side}Ankle-brachial pressure index, as 1.04, or `not-compressible`:"),
        move |text, draft| {
            let text = answer::pointed(text);
            let index = text.parse::<f64>().ok().filter(|index| (0.0..=2.5).contains(index));
            if text == "0" {
                return Err("0 is no blood at all at the ankle. Enter passes over where none was taken; where it is so, type 0.0.".to_owned());
            }
            if index.is_none() && text != "not-compressible" {
                return Err(format!("`{text}` is no index from 0 to 2.5."));
            }
            draft.set(&target, &text);
            Ok(())
        },
    );
    let mut steps = vec![index.or_skip().help(
        "Enter passes over where none was taken; a leg then needs a toe pressure or a clinical judgement.",
    )];
    let target = path("toe");
    steps.push(
        Step::new(draft, path("toe"), format!("{side}Toe pressure, as 80 mmHg:"), move |text, draft| {
            if text.trim() == "0" {
                return Err("Enter passes over where none was taken; where it is so, type 0 mmHg.".to_owned());
            }
            let text = with_unit(text, "mmHg");
            draft.set(&target, &answer::number(draft, &text, Dimension::Pressure)?);
            Ok(())
        })
        .or_skip(),
    );
    // A judgement by hand and eye is the route where nothing was measured.
    if !draft.has(&path("abpi")) && !draft.has(&path("toe")) {
        let asked = format!("{side}Blood supply as judged by hand and eye");
        steps.push(Step::word(draft, path("clinical"), &asked, &CLINICAL).or_skip());
    }
    if draft.has(&path("clinical")) {
        steps.push(Step::word(draft, path("clinical_by"), &format!("{side}Judged by"), &ROLES));
        steps.push(Step::text(
            draft,
            path("clinical_found"),
            format!(
                "{side}What was found, as `both foot pulses, warm, no rest or walking pain, no foot wound`:"
            ),
        ));
    }
    if draft.has(&format!("{prefix}arterial")) {
        let target = path("taken_on");
        // No day is offered: a value of last year would become one of today by a key pressed too soon.
        let asked = format!("{side}On which day was that taken (year-month-day, or `today`):");
        steps.push(Step::new(draft, path("taken_on"), asked, move |text, draft| {
            let measured = draft.text("measured_on").unwrap_or_default();
            let day = match text.trim().to_lowercase().as_str() {
                "today" => measured.get(..10).unwrap_or(&measured).to_owned(),
                _ => answer::day(text)?,
            };
            draft.set(&target, &day);
            Ok(())
        }));
    }
    steps
}

/// A bare number with a unit behind it.
fn with_unit(text: &str, unit: &str) -> String {
    let text = answer::pointed(text);
    if text.chars().all(|c| c.is_ascii_digit() || c == '.') { format!("{text} {unit}") } else { text }
}
