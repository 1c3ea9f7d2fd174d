//! Owns the questions about marks: in measuring order, each landmark with where it is, its girth, its
//! distance from the mark before.
//!
//! Source: measuring points of the published standards (leg: published; arm: common trade use, memory).

use tapeline::anatomy::{Landmark, Limb};
use tapeline::input::Draft;
use tapeline::quantity::Dimension;
use tapeline::render::{measuring_order, where_is};
use tapeline::words;

use super::answer;
use super::step::Step;

const ARM_ORIGINS: [&str; 3] = ["wrist", "styloid", "fingertip"];
const LEG_ORIGINS: [&str; 2] = ["floor", "heel"];
const YES_NO: [&str; 2] = ["yes", "no"];

/// Where a landmark's mark stands in a list of marks.
fn place_of(draft: &Draft, list: &str, limb: Limb, landmark: Landmark) -> Option<usize> {
    (0..draft.count(list)).find(|at| {
        let word = draft.text(&format!("{list}.{at}.landmark"));
        word.and_then(|word| Landmark::parse(limb, &word)) == Some(landmark)
    })
}

/// Every question about marks.
pub(super) fn steps<'s>(draft: &Draft, limb: Limb, both: bool) -> Vec<Step<'s>> {
    let mut steps = vec![match limb {
        Limb::Arm => {
            Step::word(draft, "positions_from", "Distances count from the", &ARM_ORIGINS).offer("wrist")
        }
        Limb::Leg => {
            Step::word(draft, "positions_from", "Distances count from the", &LEG_ORIGINS).offer("floor")
        }
    }];
    if !draft.has("positions_from") {
        return steps;
    }
    let lists: &[(&str, &str)] =
        if both { &[("left.marks", "Left"), ("right.marks", "Right")] } else { &[("marks", "")] };
    for (list, side) in lists {
        for landmark in measuring_order(limb) {
            steps.extend(of_landmark(draft, list, side, limb, landmark));
        }
    }
    if !both {
        steps.extend(length(draft, limb));
        steps.extend(other_limb(draft, limb));
    }
    steps
}

/// The length from the reference to the last mark, as the positions have it, to be confirmed or measured.
fn length<'s>(draft: &Draft, limb: Limb) -> Option<Step<'s>> {
    let at = |landmark: Landmark| {
        let place = place_of(draft, "marks", limb, landmark)?;
        answer::cm(draft, &draft.text(&format!("marks.{place}.at"))?)
    };
    let reference = limb.reference();
    let last = Landmark::of(limb).iter().copied().rev().find(|one| at(*one).is_some())?;
    let long = at(last)? - at(reference)?;
    if last <= reference {
        return None;
    }
    let name = format!("{} to {}", reference.name(), last.name());
    let path = format!("lengths.{name}");
    let target = path.clone();
    let prompt = format!(
        "Length {name}, {} cm by the positions; Enter keeps it, or type it as measured:",
        words::trimmed(long, 1)
    );
    Some(
        Step::new(draft, path, prompt, move |text, draft| {
            draft.set(&target, &answer::number(draft, text, Dimension::Length)?);
            Ok(())
        })
        .or_skip(),
    )
}

fn of_landmark<'s>(draft: &Draft, list: &str, side: &str, limb: Limb, landmark: Landmark) -> Vec<Step<'s>> {
    let place = place_of(draft, list, limb, landmark);
    let asked = format!("{side} {}", words::label(landmark)).trim().to_owned();
    let where_is = format!("{asked}: {}", where_is(landmark));
    let mut steps = Vec::new();
    let zero = is_zero(draft, landmark);
    if !zero {
        steps.push(distance(draft, list, limb, landmark, &asked).above([where_is.clone()]).or_skip());
        if place.is_none() {
            return steps;
        }
    }
    let list_owned = list.to_owned();
    let girth = Step::new(
        draft,
        format!("{list}:{}", landmark.name()),
        format!("{asked}, girth:"),
        move |text, draft| {
            let girths = answer::numbers(draft, text)?;
            let at = place_of(draft, &list_owned, limb, landmark).unwrap_or(draft.count(&list_owned));
            draft.set(&format!("{list_owned}.{at}.landmark"), landmark.name());
            if zero {
                draft.set(&format!("{list_owned}.{at}.at"), "0");
            }
            let path = format!("{list_owned}.{at}.girth");
            match girths.as_slice() {
                [one] => draft.set(&path, one),
                several => draft.set_list(&path, several),
            }
            Ok(())
        },
    )
    .help("A number, with or without unit; two tape values of one girth as 25.6 25.8.")
    .done_if(place.is_some_and(|at| draft.has(&format!("{list}.{at}.girth"))));
    steps.push(if zero { girth.above([where_is]).or_skip() } else { girth });
    steps
}

/// The question for the place of a mark.
fn distance<'s>(draft: &Draft, list: &str, limb: Limb, landmark: Landmark, asked: &str) -> Step<'s> {
    let outward = landmark.on_extremity() && limb == Limb::Arm;
    let (prompt, from) = match before(draft, list, limb, landmark) {
        _ if outward => (format!("{asked}, distance from the wrist toward the fingers:"), 0.0),
        Some((other, cm)) if !landmark.on_extremity() => {
            (format!("{asked}, distance from the {}:", words::noun(other)), cm)
        }
        _ => {
            let origin = draft.text("positions_from").unwrap_or_default();
            (format!("{asked}, distance from the {origin}:"), 0.0)
        }
    };
    let known = place_of(draft, list, limb, landmark);
    let list = list.to_owned();
    Step::new(draft, format!("{list}@{}", landmark.name()), prompt, move |text, draft| {
        let text = answer::number(draft, text, Dimension::Length)?;
        let own = answer::cm(draft, &text).unwrap_or_default();
        let place = place_of(draft, &list, limb, landmark).unwrap_or(draft.count(&list));
        draft.set(&format!("{list}.{place}.landmark"), landmark.name());
        let at = if outward { -own } else { from + own };
        draft.set(&format!("{list}.{place}.at"), &in_unit(draft, at));
        Ok(())
    })
    .help("How far along the limb, with the same tape; Enter passes over a mark that is not measured. Distances are added up: the file holds each from the zero.")
    .done_if(known.is_some())
}

/// Whether a landmark is the zero of the distances.
fn is_zero(draft: &Draft, landmark: Landmark) -> bool {
    landmark == Landmark::Wrist && draft.text("positions_from").as_deref() == Some("wrist")
}

/// The measured landmark just before one in measuring order, with its distance from the zero, cm.
fn before(draft: &Draft, list: &str, limb: Limb, landmark: Landmark) -> Option<(Landmark, f64)> {
    let mut known =
        Landmark::of(limb).iter().copied().filter(|one| *one < landmark && !one.on_extremity()).filter_map(
            |one| {
                let place = place_of(draft, list, limb, one)?;
                Some((one, answer::cm(draft, &draft.text(&format!("{list}.{place}.at"))?)?))
            },
        );
    known.next_back()
}

/// A distance of `cm` as a bare number in the declared unit of length.
fn in_unit(draft: &Draft, cm: f64) -> String {
    let text = match draft.text("units.length").as_deref() {
        Some("mm") => words::trimmed(cm * 10.0, 1),
        Some("in") => words::trimmed(cm / 2.54, 3),
        _ => words::trimmed(cm, 2),
    };
    text.replace('\u{2212}', "-")
}

/// The other limb, at the same marks.
fn other_limb<'s>(draft: &Draft, limb: Limb) -> Vec<Step<'s>> {
    let name = "other_limb";
    let asked = format!("Was the other {} measured too", limb.name());
    let mut steps = vec![
        Step::new(draft, name, format!("{asked} (yes, no):"), move |text, draft| {
            match answer::word(text, &YES_NO)? {
                "yes" => draft.set("other_limb.marks", ""),
                _ => draft.leave_out("other_limb"),
            }
            Ok(())
        })
        .or_skip(),
    ];
    if !draft.has("other_limb") {
        return steps;
    }
    for place in 0..draft.count("marks") {
        let Some(landmark) =
            draft.text(&format!("marks.{place}.landmark")).and_then(|word| Landmark::parse(limb, &word))
        else {
            continue;
        };
        let own = place_of(draft, "other_limb.marks", limb, landmark);
        let done = own.is_some_and(|at| draft.has(&format!("other_limb.marks.{at}.girth")));
        steps.push(
            Step::new(
                draft,
                format!("other_limb:{}", landmark.name()),
                format!("Other {}, {}, girth:", limb.name(), words::label(landmark)),
                move |text, draft| {
                    let girths = answer::numbers(draft, text)?;
                    let at = place_of(draft, "other_limb.marks", limb, landmark)
                        .unwrap_or(draft.count("other_limb.marks"));
                    let same = draft.text(&format!("marks.{place}.at")).unwrap_or_default();
                    draft.set(&format!("other_limb.marks.{at}.landmark"), landmark.name());
                    draft.set(&format!("other_limb.marks.{at}.at"), &same);
                    let path = format!("other_limb.marks.{at}.girth");
                    match girths.as_slice() {
                        [one] => draft.set(&path, one),
                        several => draft.set_list(&path, several),
                    }
                    Ok(())
                },
            )
            .or_skip()
            .done_if(done),
        );
    }
    steps
}

/// The landmark of a question about a girth of the measured limb.
pub(super) fn landmark_of_girth(draft: &Draft, name: &str) -> Option<Landmark> {
    let (list, word) = name.split_once(':')?;
    let limb = super::record::limb_of(draft)?.0;
    list.ends_with("marks").then(|| Landmark::parse(limb, word))?
}

/// Takes the mark of a question out again; whether the name was one.
pub(super) fn open_again(draft: &mut Draft, name: &str) -> bool {
    let Some((list, word)) = name.split_once([':', '@']) else { return false };
    let girth_alone = name.contains(':') && list != "other_limb";
    let Some((limb, _)) = super::record::limb_of(draft) else { return false };
    let list = if list == "other_limb" { "other_limb.marks" } else { list };
    if let Some(landmark) = Landmark::parse(limb, word)
        && let Some(place) = place_of(draft, list, limb, landmark)
    {
        let whole = !girth_alone || is_zero(draft, landmark);
        draft.remove(&format!("{list}.{place}{}", if whole { "" } else { ".girth" }));
    }
    true
}
