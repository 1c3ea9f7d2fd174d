//! Owns why a fall is not judged, and the ways on, written for a clinic that may not have the garment yet.

use crate::anatomy::{Landmark, Limb};
use crate::estimate::{Estimated, FallOf, FallVerdict, OnLimb, Unheld};
use crate::finding::{action, fall_sentence};
use crate::garment::{Outfit, Piece};
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
    if let Some(verdict) = estimated.fall.as_ref().filter(|verdict| verdict.of == FallOf::Readings)
        && verdict.grade() > Grade::Undecided
    {
        return of_unread(on, asked, &verdict.fall.estimated);
    }
    let known: Vec<Landmark> = estimated
        .marks
        .iter()
        .filter(|mark| mark.judged && mark.complete)
        .map(|mark| mark.landmark)
        .collect();
    let unheld = estimated.fall.as_ref().and_then(|verdict| verdict.unheld.as_ref());
    let unheld = unheld.map(|one| (not_held(asked.outfit, one), way_to_hold(asked.outfit, one)));
    let missing = missing(on, &known, top(asked.outfit.to()));
    if !missing.is_empty() {
        let mut gap = of_missing(on, asked, &missing);
        if let Some((why, way_on)) = unheld {
            gap.why = format!("{}, and {why}", gap.why);
            gap.way_on = format!("{} {way_on}", gap.way_on);
        }
        return Some(gap);
    }
    if let Some((why, way_on)) = unheld {
        return Some(FallGap { why, way_on, measure: Vec::new() });
    }
    let fall = estimated.fall.as_ref().map(|verdict| &verdict.fall)?;
    if fall.grade == Grade::Undecided {
        let why = fall_sentence(
            fall,
            known.first().copied(),
            known.last().copied(),
            None,
            asked.outfit.is_pulled(),
        );
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

/// What readings that fall lack for the whole.
fn of_unread(on: &OnLimb<'_>, asked: &Asked<'_>, read: &[Landmark]) -> Option<FallGap> {
    let missing = missing(on, read, top(asked.outfit.to()));
    let at = |list: &[Landmark]| words::list(&list.iter().map(|one| words::at(*one)).collect::<Vec<_>>());
    let untaped = missing.iter().any(|one| on.mark(*one).is_none());
    let tape = if untaped { "Tape the limb and read" } else { "Read" };
    (!missing.is_empty()).then(|| FallGap {
        why: format!("nothing was read {}", at(&missing)),
        way_on: format!("{tape} the pressure {} too.", at(&missing)),
        measure: Vec::new(),
    })
}

/// Why girths that are known are not held against each other, as a clause.
fn not_held(outfit: &Outfit, unheld: &Unheld) -> String {
    let bandaged = outfit.pieces.iter().any(|worn| matches!(worn.piece, Piece::Wrap(_)));
    let what = if bandaged { "knit and bandage" } else { "unlike knits" };
    let rule = format!("{what} are not held against each other by stretch");
    if let [_] = outfit.pieces.as_slice() {
        let at: Vec<String> = unheld.landmarks.iter().map(|one| words::at(*one)).collect();
        return format!("the knit {} has no curve, and {rule}", words::list(&at));
    }
    let names = names_of(outfit, &unheld.pieces);
    let have = if names.len() == 1 { "has" } else { "have" };
    format!("{} {have} no fabric curve, and {rule}", words::list(&names))
}

/// What would let them be.
fn way_to_hold(outfit: &Outfit, unheld: &Unheld) -> String {
    let sensor = "read the pressure with a sensor at every judged mark";
    let names = names_of(outfit, &unheld.pieces);
    match outfit.pieces.as_slice() {
        [_] => format!("Get the tension curve of every knit in it, or {sensor}."),
        _ if names.len() == 1 => format!("Get the tension curve of {}, or {sensor}.", words::list(&names)),
        _ => format!(
            "If {} are of one knit, name it as their fabric; otherwise get the tension curve of each, or {sensor}.",
            words::list(&names)
        ),
    }
}

fn names_of(outfit: &Outfit, pieces: &[usize]) -> Vec<String> {
    pieces.iter().filter_map(|piece| Some(outfit.pieces.get(*piece)?.piece.label().to_string())).collect()
}

/// The sentence where the whole is not held against itself: why, and what each of several pieces does alone.
pub(super) fn unheld_words(outfit: &Outfit, verdict: &FallVerdict, unheld: &Unheld) -> String {
    let why = not_held(outfit, unheld);
    let alone: Vec<String> = verdict
        .all
        .iter()
        .filter_map(|(of, fall)| {
            let FallOf::Piece(piece) = of else { return None };
            let name = outfit.pieces.get(*piece)?.piece.label();
            let what = if fall.grade == Grade::Undecided { "is not decided" } else { "falls" };
            Some(format!("{name} {what}"))
        })
        .collect();
    if outfit.pieces.len() < 2 {
        return format!("Whether it falls is not known: {why}.");
    }
    let alone = if alone.is_empty() { String::new() } else { format!(" By itself {}.", words::list(&alone)) };
    format!("How the pieces fall together is not known: {why}.{alone}")
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
    let (mut reasons, mut ways) = (Vec::new(), Vec::new());
    if !untaped.is_empty() {
        reasons.push(format!("the limb's girth is not known {}", at(&untaped)));
        ways.push(format!("Tape the limb {}.", at(&untaped)));
    }
    let mut unmeasured = Vec::new();
    for (name, marks) in unmeasured_of(asked, missing, untaped.is_empty()) {
        match name {
            Some(name) => reasons.push(format!("the relaxed girth of {name} is not known {}", at(&marks))),
            None => reasons.push(format!("the garment's relaxed girth is not known {}", at(&marks))),
        }
        let obtain = if asked.to_obtain {
            format!("Obtain {}, lay it flat", asked.name)
        } else {
            format!("Lay {} flat", name.unwrap_or(asked.name))
        };
        ways.push(format!("{obtain} before it is worn, and measure its width {}.", at(&marks)));
        unmeasured.extend(marks);
    }
    FallGap {
        why: reasons.join(", and "),
        way_on: ways.join(" "),
        measure: if asked.to_obtain { unmeasured } else { Vec::new() },
    }
}

/// Where relaxed girths are missing, by the piece that lacks them; one piece alone is not named. `all` = what is
/// missing is not the limb's girth.
fn unmeasured_of<'a>(
    asked: &'a Asked<'_>,
    missing: &[Landmark],
    all: bool,
) -> Vec<(Option<&'a str>, Vec<Landmark>)> {
    let pieces = &asked.outfit.pieces;
    let mut found: Vec<(Option<&str>, Vec<Landmark>)> = Vec::new();
    for worn in pieces {
        let Piece::Garment(garment) = &worn.piece else { continue };
        let several = pieces.len() > 1;
        let lacks = |one: &Landmark| (!several || worn.covers(*one)) && garment.relaxed_at(*one).is_none();
        let marks: Vec<Landmark> = missing.iter().copied().filter(lacks).collect();
        if !marks.is_empty() {
            found.push((several.then_some(garment.label.as_str()), marks));
        }
    }
    if found.is_empty() && all {
        found.push((None, missing.to_vec()));
    }
    found
}

/// A further measurement as an order, with the piece where several are worn.
pub fn decide_words(outfit: &Outfit, one: &Decide) -> String {
    let several = outfit.pieces.len() > 1;
    let worn = one.piece.filter(|_| several).and_then(|piece| outfit.pieces.get(piece));
    action(one, worn.map(|worn| worn.piece.label().as_str()))
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
    let order = decide_words(asked.outfit, first);
    if asked.to_obtain && needs_garment {
        format!("Obtain {} and, before it is worn, {order}{chance}.", asked.name)
    } else {
        let mut letters = order.chars();
        let order: String =
            letters.next().map_or_else(String::new, |one| one.to_uppercase().chain(letters).collect());
        format!("{order}{chance}.")
    }
}
