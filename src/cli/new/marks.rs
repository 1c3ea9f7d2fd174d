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

/// The landmark from which distances count where nothing else is said.
pub(super) fn usual_zero(limb: Limb) -> &'static str {
    match limb {
        Limb::Arm => "wrist",
        Limb::Leg => "floor",
    }
}

/// The question from where distances count.
pub(super) fn zero<'s>(draft: &Draft, limb: Limb) -> Step<'s> {
    let words: &'static [&'static str] = match limb {
        Limb::Arm => &ARM_ORIGINS,
        Limb::Leg => &LEG_ORIGINS,
    };
    Step::word(draft, "positions_from", "Distances count from the", words).offer(usual_zero(limb))
}

/// Every question about marks.
pub(super) fn steps<'s>(draft: &Draft, limb: Limb, both: bool) -> Vec<Step<'s>> {
    let mut steps = Vec::new();
    if !draft.has("positions_from") {
        return steps;
    }
    let (list, side) = if both { ("left.marks", "Left") } else { ("marks", "") };
    let order = measuring_order(limb);
    for (at, landmark) in order.iter().copied().enumerate() {
        let further: Vec<Landmark> = order.iter().copied().skip(at + 1).collect();
        steps.extend(of_landmark(draft, list, side, limb, landmark, further));
    }
    if both {
        let right = ("right.marks", format!("Right {}", limb.name()));
        steps.extend(beside(draft, limb, "left.marks", (right.0, &right.1), false));
    } else {
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

fn of_landmark<'s>(
    draft: &Draft,
    list: &str,
    side: &str,
    limb: Limb,
    landmark: Landmark,
    further: Vec<Landmark>,
) -> Vec<Step<'s>> {
    let place = place_of(draft, list, limb, landmark);
    let asked = format!("{side} {}", words::label(landmark)).trim().to_owned();
    let where_is = format!("{asked}: {}", where_is(landmark));
    let mut steps = Vec::new();
    let zero = is_zero(draft, landmark);
    if !zero {
        let step = distance(draft, list, limb, landmark, &asked, further);
        steps.push(step.above([where_is.clone()]).or_skip());
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
            let girths = answer::girths(draft, text)?;
            let at = place_of(draft, &list_owned, limb, landmark).unwrap_or(draft.count(&list_owned));
            draft.set(&format!("{list_owned}.{at}.landmark"), landmark.name());
            if zero {
                draft.set(&format!("{list_owned}.{at}.at"), "0");
            }
            set_girths(draft, &format!("{list_owned}.{at}.girth"), &girths);
            Ok(())
        },
    )
    .help("A number, with or without unit; two tape values of one girth as 25.6 25.8.")
    .done_if(place.is_some_and(|at| draft.has(&format!("{list}.{at}.girth"))));
    steps.push(if zero { girth.above([where_is]).or_skip() } else { girth });
    steps
}

fn set_girths(draft: &mut Draft, path: &str, girths: &[String]) {
    match girths {
        [one] => draft.set(path, one),
        several => draft.set_list(path, several),
    }
}

/// The question for the place of a mark, and with it for its girth.
fn distance<'s>(
    draft: &Draft,
    list: &str,
    limb: Limb,
    landmark: Landmark,
    asked: &str,
    further: Vec<Landmark>,
) -> Step<'s> {
    let outward = landmark.on_extremity() && limb == Limb::Arm;
    let (prompt, from) = match before(draft, list, limb, landmark) {
        _ if outward => (format!("{asked}, distance from the wrist toward the fingers, and girth:"), 0.0),
        Some((other, cm)) if !landmark.on_extremity() => {
            (format!("{asked}, distance from the {}, and girth:", words::noun(other)), cm)
        }
        _ => {
            let origin = draft.text("positions_from").unwrap_or_default();
            (format!("{asked}, distance from the {origin}, and girth:"), 0.0)
        }
    };
    let known = place_of(draft, list, limb, landmark);
    let list = list.to_owned();
    Step::new(draft, format!("{list}@{}", landmark.name()), prompt, move |text, draft| {
        if text.eq_ignore_ascii_case("end") {
            for one in std::iter::once(landmark).chain(further.iter().copied()) {
                draft.leave_out(&format!("{list}@{}", one.name()));
            }
            return Ok(());
        }
        let all = answer::numbers(draft, text)?;
        let place = place_of(draft, &list, limb, landmark);
        let girth = place.map(|at| format!("{list}.{at}.girth")).filter(|path| draft.has(path));
        if let Some(path) = girth {
            // The girth was in doubt and is measured again; its distance may stand before it once more.
            let at = place.and_then(|at| answer::cm(draft, &draft.text(&format!("{list}.{at}.at"))?));
            let told = all.first().and_then(|one| answer::cm(draft, one)).unwrap_or_default();
            let stands = if outward { -told } else { from + told };
            let again = all.len() > 1 && at.is_some_and(|at| (at - stands).abs() < 0.01);
            let girths = all.get(usize::from(again)..).unwrap_or(&all);
            answer::of_one_girth(draft, girths)?;
            set_girths(draft, &path, girths);
            return Ok(());
        }
        let Some((own, girths)) = all.split_first() else { return Ok(()) };
        answer::of_one_girth(draft, girths)?;
        let own = answer::cm(draft, own).unwrap_or_default();
        let place = place.unwrap_or(draft.count(&list));
        draft.set(&format!("{list}.{place}.landmark"), landmark.name());
        let at = if outward { -own } else { from + own };
        draft.set(&format!("{list}.{place}.at"), &in_unit(draft, at));
        if !girths.is_empty() {
            set_girths(draft, &format!("{list}.{place}.girth"), girths);
        }
        Ok(())
    })
    .help("How far along the limb, then the girth, as 7 20.9; a second tape value behind it, as 7 20.9 21.1. Enter passes over a mark that is not measured, `end` passes over all that follow. Distances are added up: the file holds each from the zero.")
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
    let asked = format!("Was the other {} measured too (yes, no):", limb.name());
    let mut steps = vec![
        Step::new(draft, "other_limb", asked, move |text, draft| {
            match answer::word(text, &YES_NO)? {
                "yes" => draft.set("other_limb.marks", ""),
                _ => draft.leave_out("other_limb"),
            }
            Ok(())
        })
        .or_skip(),
    ];
    if draft.has("other_limb") {
        let other = format!("Other {}", limb.name());
        steps.extend(beside(draft, limb, "marks", ("other_limb.marks", &other), true));
    }
    steps
}

/// The girths of a second limb, at the places of the first.
fn beside<'s>(
    draft: &Draft,
    limb: Limb,
    first: &str,
    (list, said): (&str, &str),
    may_skip: bool,
) -> Vec<Step<'s>> {
    let mut steps = Vec::new();
    for landmark in measuring_order(limb) {
        let Some(place) = place_of(draft, first, limb, landmark) else { continue };
        let own = place_of(draft, list, limb, landmark);
        let done = own.is_some_and(|at| draft.has(&format!("{list}.{at}.girth")));
        let (first, list) = (first.to_owned(), list.to_owned());
        let asked = format!("{said}, {}, girth:", words::label(landmark));
        let step = Step::new(draft, format!("{list}:{}", landmark.name()), asked, move |text, draft| {
            let girths = answer::girths(draft, text)?;
            let at = place_of(draft, &list, limb, landmark).unwrap_or(draft.count(&list));
            let same = draft.text(&format!("{first}.{place}.at")).unwrap_or_default();
            draft.set(&format!("{list}.{at}.landmark"), landmark.name());
            draft.set(&format!("{list}.{at}.at"), &same);
            set_girths(draft, &format!("{list}.{at}.girth"), &girths);
            Ok(())
        })
        .help("At the same place as on the first side; a number, or two tape values as 25.6 25.8.")
        .done_if(done);
        steps.push(if may_skip { step.or_skip() } else { step });
    }
    steps
}

/// The landmark whose girth a question has asked for.
pub(super) fn landmark_of_girth(draft: &Draft, name: &str) -> Option<Landmark> {
    let (list, word) = name.split_once([':', '@'])?;
    let limb = super::record::limb_of(draft)?.0;
    list.ends_with("marks").then(|| Landmark::parse(limb, word))?
}

/// Takes the mark of a question out again; whether the name was one.
pub(super) fn open_again(draft: &mut Draft, name: &str) -> bool {
    let Some((list, word)) = name.split_once([':', '@']) else { return false };
    if !list.ends_with("marks") {
        return false;
    }
    let Some((limb, _)) = super::record::limb_of(draft) else { return false };
    // A girth asked for by itself is asked for by itself again; its place stays.
    let girth_alone = name.contains(':') && !matches!(list, "other_limb.marks" | "right.marks");
    if let Some(landmark) = Landmark::parse(limb, word)
        && let Some(place) = place_of(draft, list, limb, landmark)
    {
        let mut held = draft.list("confirmed");
        held.retain(|word| word != landmark.name());
        if held.is_empty() {
            draft.remove("confirmed");
        } else {
            draft.set_list("confirmed", &held);
        }
        let whole = !girth_alone || is_zero(draft, landmark);
        draft.remove(&format!("{list}.{place}{}", if whole { "" } else { ".girth" }));
    }
    true
}
