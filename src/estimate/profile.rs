//! Owns the pressure between the marks, for drawing only, and what a change of the limb would do.

use super::knits::Knits;
use super::lying::{Lying, all_on, covered, lying_at};
use super::{EstimateRules, OnLimb};
use crate::anatomy::Landmark;
use crate::garment::{Garment, Outfit, Piece};
use crate::quantity::{Position, mmhg};

/// Distance of two drawn places, tenths of a millimetre: 0.5 cm (house rule).
const STEP_TENTHS: i64 = 50;

/// The pressure at one place, drawn and not judged.
#[derive(Clone, Copy, Debug)]
pub struct ProfilePoint {
    /// Where.
    pub at: Position,
    /// The landmark that stands there, if one does.
    pub landmark: Option<Landmark>,
    /// Girth, straight between the marks, cm.
    pub girth_cm: f64,
    /// Relaxed girth, straight between the marks, cm; none for several pieces or a wrap.
    pub relaxed_cm: Option<f64>,
    /// mmHg; none where nothing is estimated.
    pub mmhg: Option<f64>,
    /// Its SD, mmHg.
    pub sd: Option<f64>,
}

/// What 1 cm more or less limb would do at a mark: the slow, resting change.
#[derive(Clone, Copy, Debug)]
pub struct Swelling {
    /// Where.
    pub landmark: Landmark,
    /// mmHg as measured.
    pub now: f64,
    /// mmHg with 1 cm less; none beyond the tested stretch.
    pub shrunk: Option<f64>,
    /// mmHg with 1 cm more; none beyond the tested stretch.
    pub swollen: Option<f64>,
}

/// What is known along the limb: position and cm.
#[derive(Clone, Copy, Debug)]
struct Along<'k> {
    /// Limb girths.
    girths: &'k [(i64, f64)],
    /// SDs of the limb girths.
    sds: &'k [(i64, f64)],
    /// Relaxed girths of each piece.
    pieces: &'k [Vec<(i64, f64)>],
}

/// A value straight between two knots; none outside them.
fn between(knots: &[(i64, f64)], at: i64) -> Option<f64> {
    if let Some((_, value)) = knots.iter().find(|(knot, _)| *knot == at) {
        return Some(*value);
    }
    knots.windows(2).find_map(|pair| {
        let [(from, low), (to, high)] = pair else { return None };
        (*from <= at && at <= *to).then(|| low + (high - low) * tenths(at - from) / tenths(to - from))
    })
}

fn tenths(value: i64) -> f64 {
    f64::from(i32::try_from(value).unwrap_or_default())
}

/// The places where a piece's relaxed girth is known: position and cm; for a wrap where it lies.
fn knots(on: &OnLimb<'_>, outfit: &Outfit, piece: usize) -> Vec<(i64, f64)> {
    let places = covered(on, outfit, piece);
    let at = |landmark: &Landmark| on.mark(*landmark).map(|mark| mark.at.tenths());
    match outfit.pieces.get(piece).map(|worn| &worn.piece) {
        Some(Piece::Garment(garment)) => {
            let known =
                |landmark: &Landmark| Some((at(landmark)?, garment.relaxed_at(*landmark)?.girth.cm()));
            places.iter().filter_map(known).collect()
        }
        Some(Piece::Wrap(_)) => places.iter().filter_map(|landmark| Some((at(landmark)?, 0.0))).collect(),
        None => Vec::new(),
    }
}

/// The pressure at every mark and every 0.5 cm between the first and the last mark of the pieces. Girth and
/// relaxed girth are straight between the marks; the fabric is that of the nearer mark.
pub fn profile(on: &OnLimb<'_>, outfit: &Outfit, rules: &EstimateRules) -> Vec<ProfilePoint> {
    let girths: Vec<(i64, f64)> = on.marks.iter().map(|mark| (mark.at.tenths(), mark.girth().cm())).collect();
    let sds: Vec<(i64, f64)> =
        on.marks.iter().map(|mark| (mark.at.tenths(), mark.sd_cm(on.limb, &rules.tape))).collect();
    let pieces: Vec<Vec<(i64, f64)>> =
        (0..outfit.pieces.len()).map(|piece| knots(on, outfit, piece)).collect();
    let ends = || pieces.iter().flatten().map(|(at, _)| *at);
    let (Some(first), Some(last)) = (ends().min(), ends().max()) else { return Vec::new() };
    let mut places: Vec<i64> =
        girths.iter().map(|(at, _)| *at).filter(|at| (first..=last).contains(at)).collect();
    let mut place = first;
    while place < last {
        places.push(place);
        place += STEP_TENTHS;
    }
    places.sort_unstable();
    places.dedup();
    let knits = Knits::of(outfit);
    let along = Along { girths: &girths, sds: &sds, pieces: &pieces };
    places.into_iter().filter_map(|place| one(on, outfit, &knits, rules, along, place)).collect()
}

fn one(
    on: &OnLimb<'_>,
    outfit: &Outfit,
    knits: &Knits<'_>,
    rules: &EstimateRules,
    along: Along<'_>,
    place: i64,
) -> Option<ProfilePoint> {
    let girth_cm = between(along.girths, place)?;
    let mut lying: Vec<Lying<'_>> = Vec::new();
    for (piece, knots) in along.pieces.iter().enumerate() {
        let Some(relaxed_cm) = between(knots, place) else { continue };
        match outfit.pieces.get(piece).map(|worn| &worn.piece) {
            Some(Piece::Garment(garment)) => {
                lying.push(drawn(on, (piece, garment), knits, relaxed_cm, place));
            }
            Some(Piece::Wrap(wrap)) => lying.push(Lying::Wrap { piece, wrap }),
            None => {}
        }
    }
    let found = all_on(&lying, girth_cm, between(along.sds, place)?, rules);
    let mark = on.marks.iter().find(|mark| mark.at.tenths() == place);
    Some(ProfilePoint {
        at: Position::from_tenths(place)?,
        landmark: mark.and_then(|mark| mark.landmark),
        girth_cm,
        relaxed_cm: match lying.as_slice() {
            [one] => one.relaxed_cm(),
            _ => None,
        },
        mmhg: found.and_then(|one| one.pressure()).map(mmhg),
        sd: found.filter(|one| one.pressure().is_some()).map(|one| one.sd()),
    })
}

/// A garment at a place between its marks.
fn drawn<'o>(
    on: &OnLimb<'_>,
    (piece, garment): (usize, &'o Garment),
    knits: &Knits<'_>,
    relaxed_cm: f64,
    place: i64,
) -> Lying<'o> {
    let distance = |landmark: Landmark| on.mark(landmark).map(|mark| (mark.at.tenths() - place).abs());
    // Of two marks alike the distal one.
    let near = garment
        .relaxed
        .iter()
        .filter_map(|(landmark, relaxed)| Some((distance(*landmark)?, *landmark, relaxed.repeats)))
        .min();
    let fabric = near.and_then(|(_, landmark, _)| garment.fabric_at(landmark));
    Lying::Knit {
        piece,
        number: knits.number(fabric, piece),
        fabric,
        layers: garment.layers.max(1),
        relaxed_cm,
        repeats: near.map_or(1, |(_, _, repeats)| repeats),
    }
}

/// What 1 cm more or less limb would do at each mark that is estimated.
pub fn swelling(on: &OnLimb<'_>, outfit: &Outfit, rules: &EstimateRules) -> Vec<Swelling> {
    let knits = Knits::of(outfit);
    on.named()
        .filter_map(|(landmark, mark)| {
            let lying = lying_at(outfit, &knits, 0..outfit.pieces.len(), landmark);
            let with = |change: f64| {
                let girth = mark.girth().cm() + change;
                let found = (girth > 0.0 && lying.complete).then(|| all_on(&lying.known, girth, 0.0, rules));
                found.flatten().and_then(|one| one.pressure()).map(mmhg)
            };
            Some(Swelling { landmark, now: with(0.0)?, shrunk: with(-1.0), swollen: with(1.0) })
        })
        .collect()
}
