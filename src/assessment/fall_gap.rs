//! Owns why a fall is not judged, and the ways on, written for a clinic that may not have the garment yet.

use crate::anatomy::{Landmark, Limb};
use crate::estimate::{Estimated, OnLimb};
use crate::finding::{action, fall_sentence};
use crate::garment::Outfit;
use crate::gradient::{Action, Decide, Grade};
use crate::words;

/// Why a fall is not judged, and what to do.
#[derive(Clone, Debug)]
pub struct FallGap {
    /// Why, as a clause.
    pub why: String,
    /// What to do, as a sentence.
    pub way_on: String,
    /// Where the flat width of a size to obtain is to be measured.
    pub measure: Vec<Landmark>,
}

/// Which garment is meant: `size 3 of sleeve chart A`.
pub struct Asked<'a> {
    /// In words.
    pub name: &'a str,
    /// What is worn.
    pub outfit: &'a Outfit,
    /// Whether it is a size that the clinic may not have yet.
    pub to_obtain: bool,
}

/// The landmark that has to be judged at the top: the garment's end, or the one below it where it ends at the joint.
fn top(to: Landmark) -> Landmark {
    if to.is_joint() { to.below().unwrap_or(to) } else { to }
}

/// Why the fall of what is worn is not judged; none where it is, where it has none, or where a rise says enough.
pub fn fall_gap(
    on: &OnLimb<'_>,
    asked: &Asked<'_>,
    estimated: &Estimated,
    decide: &[Decide],
) -> Option<FallGap> {
    if estimated.judged() != Some(false) || estimated.grade().is_some_and(|grade| grade <= Grade::Likely) {
        return None;
    }
    let known: Vec<Landmark> = estimated
        .marks
        .iter()
        .filter(|mark| mark.judged && (mark.estimate.is_some() || mark.stretch.is_some()))
        .map(|mark| mark.landmark)
        .collect();
    let missing = missing(on, &known, top(asked.outfit.to()));
    if !missing.is_empty() {
        return Some(of_missing(on, asked, &missing));
    }
    let fall = estimated.fall.as_ref().map(|verdict| &verdict.fall)?;
    if fall.grade == Grade::Undecided {
        let why =
            fall_sentence(fall, known.first().copied(), known.last().copied(), &[], asked.outfit.is_pulled());
        let why = why.trim_end_matches('.').to_owned();
        return Some(FallGap {
            why: words::lower_first(&why),
            way_on: ways(asked, decide),
            measure: Vec::new(),
        });
    }
    let left_out: Vec<String> = fall.left_out.iter().map(|one| words::at(*one)).collect();
    Some(FallGap {
        why: format!("the fabric was not tested so far {}", words::list(&left_out)),
        way_on: "Get a curve of the fabric that is tested to more stretch, or take a larger size.".to_owned(),
        measure: Vec::new(),
    })
}

/// What the judgement lacks: the reference, a mark between, the top.
fn missing(on: &OnLimb<'_>, known: &[Landmark], top: Landmark) -> Vec<Landmark> {
    let reference = on.limb.reference();
    let mut lacking = Vec::new();
    if !known.contains(&reference) {
        lacking.push(reference);
    }
    let between = |one: &Landmark| reference < *one && *one < top && !one.is_joint();
    if !known.iter().any(between) {
        lacking.extend(wanted_between(on, top));
    }
    if !known.contains(&top) {
        lacking.push(top);
    }
    lacking
}

/// The mark between that serves best: the widest part of the lower limb, which charts state, or what was taped.
fn wanted_between(on: &OnLimb<'_>, top: Landmark) -> Option<Landmark> {
    let reference = on.limb.reference();
    let all = || {
        Landmark::of(on.limb).iter().copied().filter(|one| reference < *one && *one < top && !one.is_joint())
    };
    let usual = match on.limb {
        Limb::Arm => Landmark::Forearm,
        Limb::Leg => Landmark::Calf,
    };
    let taped = |one: &Landmark| on.mark(*one).is_some();
    all()
        .find(|one| *one == usual && taped(one))
        .or_else(|| all().find(taped))
        .or_else(|| all().find(|one| *one == usual))
        .or_else(|| all().next())
}

fn of_missing(on: &OnLimb<'_>, asked: &Asked<'_>, missing: &[Landmark]) -> FallGap {
    let reference = on.limb.reference();
    let from = asked.outfit.from();
    if from > reference {
        return FallGap {
            why: format!("it begins {}, above {}", words::at(from), words::the(reference)),
            way_on: "A certified fitter judges the fall of what is worn below it and of both together."
                .to_owned(),
            measure: Vec::new(),
        };
    }
    let only = |lacks: &dyn Fn(Landmark) -> bool| -> Vec<Landmark> {
        missing.iter().copied().filter(|one| lacks(*one)).collect()
    };
    let untaped = only(&|one| on.mark(one).is_none());
    let at = |list: &[Landmark]| words::list(&list.iter().map(|one| words::at(*one)).collect::<Vec<_>>());
    if asked.outfit.is_pulled() {
        // A bandage has no relaxed girth: only girths of the limb can be missing.
        let missing = if untaped.is_empty() { missing } else { &untaped };
        return FallGap {
            why: format!("the limb's girth is not known {}", at(missing)),
            way_on: format!("Tape the limb {}.", at(missing)),
            measure: Vec::new(),
        };
    }
    let flat = |one: Landmark| asked.outfit.garments().any(|garment| garment.relaxed_at(one).is_some());
    let mut unmeasured = only(&|one| !flat(one));
    if unmeasured.is_empty() && untaped.is_empty() {
        unmeasured = missing.to_vec();
    }
    let (mut reasons, mut ways) = (Vec::new(), Vec::new());
    if !untaped.is_empty() {
        reasons.push(format!("the limb's girth is not known {}", at(&untaped)));
        ways.push(format!("Tape the limb {}.", at(&untaped)));
    }
    if !unmeasured.is_empty() {
        reasons.push(format!("the garment's relaxed girth is not known {}", at(&unmeasured)));
        let obtain = if asked.to_obtain {
            format!("Obtain {}, lay it flat", asked.name)
        } else {
            format!("Lay {} flat", asked.name)
        };
        ways.push(format!("{obtain} before it is worn, and measure its width {}.", at(&unmeasured)));
    }
    FallGap {
        why: reasons.join(", and "),
        way_on: ways.join(" "),
        measure: if asked.to_obtain { unmeasured } else { Vec::new() },
    }
}

/// The further measurements, the likeliest first.
fn ways(asked: &Asked<'_>, decide: &[Decide]) -> String {
    let Some(first) = decide.first() else {
        return "Read the pressure with a sensor at every judged mark.".to_owned();
    };
    let chance = first.chance.map_or_else(String::new, |chance| {
        format!(" (decides it with a chance of {})", words::chance(chance))
    });
    let needs_garment = matches!(first.action, Action::FlatWidth | Action::StripPull | Action::Curve);
    let order = action(first);
    if asked.to_obtain && needs_garment {
        format!("Obtain {} and, before it is worn, {order}{chance}.", asked.name)
    } else {
        let mut letters = order.chars();
        let order: String =
            letters.next().map_or_else(String::new, |one| one.to_uppercase().chain(letters).collect());
        format!("{order}{chance}.")
    }
}
