//! Owns the pressure between the marks, for drawing only, and what a change of the limb would do.

use super::outfit::{Lying, LyingKind, all_on, lying_at, wrap_at};
use crate::anatomy::Landmark;
use crate::garment::{Outfit, Piece};
use crate::pressure::Estimate;
use crate::quantity::{Position, mmhg};
use crate::record::{Mark, Record, TAPE_SD_CM};
use crate::rules::Rules;

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
    /// Relaxed girth, straight between the marks, cm; none for several garments or a wrap.
    pub relaxed_cm: Option<f64>,
    /// mmHg; none where nothing is estimated.
    pub mmhg: Option<f64>,
    /// Its SD, mmHg.
    pub sd: Option<f64>,
}

/// What 1 cm more or less limb would do at a mark.
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

/// The places where each piece's relaxed girth is known: position and cm; for a wrap its two ends.
fn knots(record: &Record, outfit: &Outfit, piece: usize) -> Vec<(i64, f64)> {
    let Some(worn) = outfit.pieces.get(piece) else { return Vec::new() };
    let covered = record.marks.iter().filter_map(|mark| {
        let landmark = mark.landmark.filter(|landmark| worn.covers(*landmark))?;
        Some((mark.at.tenths(), landmark))
    });
    match &worn.piece {
        Piece::Garment(garment) => {
            covered.filter_map(|(at, landmark)| Some((at, garment.relaxed_at(landmark)?.cm()))).collect()
        }
        Piece::Wrap(_) => covered.map(|(at, _)| (at, 0.0)).collect(),
    }
}

/// The pressure at every mark and every 0.5 cm between the first and the last mark of the garments.
/// Girth and relaxed girth are straight between the marks; the fabric is that of the nearer mark.
pub fn profile(record: &Record, outfit: &Outfit, rules: &Rules) -> Vec<ProfilePoint> {
    let girths: Vec<(i64, f64)> =
        record.marks.iter().map(|mark| (mark.at.tenths(), mark.girth().cm())).collect();
    let pieces: Vec<Vec<(i64, f64)>> =
        (0..outfit.pieces.len()).map(|piece| knots(record, outfit, piece)).collect();
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
    places.into_iter().filter_map(|place| one(record, outfit, rules, &girths, &pieces, place)).collect()
}

fn one(
    record: &Record,
    outfit: &Outfit,
    rules: &Rules,
    girths: &[(i64, f64)],
    pieces: &[Vec<(i64, f64)>],
    place: i64,
) -> Option<ProfilePoint> {
    let girth_cm = between(girths, place)?;
    let fabrics = outfit.fabrics();
    let mut lying: Vec<Lying<'_>> = Vec::new();
    let mut relaxed = Vec::new();
    let mut complete = true;
    for (piece, knots) in pieces.iter().enumerate() {
        let Some(relaxed_cm) = between(knots, place) else { continue };
        match outfit.pieces.get(piece).map(|worn| &worn.piece) {
            Some(Piece::Garment(garment)) => {
                relaxed.push(relaxed_cm);
                let near = nearest_landmark(record, garment.relaxed.iter().map(|(one, _)| *one), place);
                match near.and_then(|landmark| garment.fabric_at(landmark)) {
                    Some(fabric) => {
                        let number = fabrics.iter().position(|one| one.is_same(fabric)).unwrap_or_default();
                        let kind = LyingKind::Knit { fabric, layers: garment.layers, relaxed_cm };
                        lying.push(Lying { piece, number, kind });
                    }
                    None => complete = false,
                }
            }
            Some(Piece::Wrap(_)) => lying.extend(wrap_at(outfit, piece, fabrics.len())),
            None => {}
        }
    }
    let found = (complete && !lying.is_empty()).then(|| all_on(&lying, girth_cm, TAPE_SD_CM, rules));
    let mark = record.marks.iter().find(|mark| mark.at.tenths() == place);
    Some(ProfilePoint {
        at: Position::from_tenths(place)?,
        landmark: mark.and_then(|mark| mark.landmark),
        girth_cm,
        relaxed_cm: match relaxed.as_slice() {
            [one] if lying.len() <= 1 => Some(*one),
            _ => None,
        },
        mmhg: found.and_then(|one| one.pressure()).map(mmhg),
        sd: found.filter(|one| one.pressure().is_some()).map(|one| one.sd()),
    })
}

/// The landmark nearest to a place; of two alike the distal one.
fn nearest_landmark(
    record: &Record,
    landmarks: impl Iterator<Item = Landmark>,
    place: i64,
) -> Option<Landmark> {
    landmarks
        .filter_map(|landmark| Some((record.mark(landmark)?.at.tenths(), landmark)))
        .min_by_key(|(at, _)| ((at - place).abs(), *at))
        .map(|(_, landmark)| landmark)
}

/// What 1 cm more or less limb would do at each mark that is estimated.
pub fn swelling(record: &Record, outfit: &Outfit, rules: &Rules) -> Vec<Swelling> {
    let at = |mark: &Mark| {
        let landmark = mark.landmark?;
        let lying = lying_at(outfit, landmark).filter(|one| one.complete && !one.known.is_empty())?;
        let on = |change: f64| {
            let girth = mark.girth().cm() + change;
            let found: Option<Estimate> = (girth > 0.0).then(|| all_on(&lying.known, girth, 0.0, rules));
            found.and_then(|one| one.pressure()).map(mmhg)
        };
        Some(Swelling { landmark, now: on(0.0)?, shrunk: on(-1.0), swollen: on(1.0) })
    };
    record.marks.iter().filter_map(at).collect()
}
