//! Owns the falls of what is worn: of each piece within itself, and of all together.

use super::knits::Knits;
use super::lying::{Lying, fall_mark, lying_at};
use super::{EstimateRules, OnLimb, Unheld};
use crate::anatomy::Landmark;
use crate::garment::Outfit;
use crate::gradient::{Band, Fall, FallMark, FallSetting, Grade, GradientBasis, judge};

/// How far beyond an overlap's edge a point is judged, cm (house rule: just beyond).
const BEYOND_EDGE_CM: f64 = 0.01;

/// Whose fall it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FallOf {
    /// One piece within itself, by its place.
    Piece(usize),
    /// All pieces, with the share of their sum that is felt.
    Whole {
        /// The share.
        share: f64,
    },
    /// What the sensor read.
    Readings,
}

/// The fall that counts, and those that it was the worst of.
#[derive(Clone, Debug)]
pub struct FallVerdict {
    /// The worst, which counts.
    pub fall: Fall,
    /// Whose it is.
    pub of: FallOf,
    /// Whether the whole garment is judged.
    pub judged: bool,
    /// All of them.
    pub all: Vec<(FallOf, Fall)>,
    /// Where nothing rises and the whole cannot be held against itself: why. The fall then says nothing.
    pub unheld: Option<Unheld>,
}

impl FallVerdict {
    /// Its grade.
    pub fn grade(&self) -> Grade {
        self.fall.grade
    }

    /// Whether a certain rise takes the garment out of the choice.
    pub fn removes(&self) -> bool {
        self.all.iter().any(|(_, fall)| fall.removes)
    }
}

/// One fall to judge.
#[derive(Clone, Debug)]
pub(super) struct Asked {
    /// Whose.
    pub of: FallOf,
    /// Its marks.
    pub marks: Vec<FallMark>,
    /// What it rests on.
    pub basis: GradientBasis,
    /// Exponents of the knit, by stretch.
    pub band: Band,
    /// The number of the first knit: by stretch of every mark.
    pub knit: Option<usize>,
    /// Its top.
    pub to: Landmark,
    /// What is known and is no mark of it.
    pub unheld: Option<Unheld>,
}

/// The setting under which a fall is judged.
pub(super) fn setting<'k>(
    on: &OnLimb<'_>,
    asked: &Asked,
    knits: &'k Knits<'_>,
    together: bool,
    rules: &EstimateRules,
) -> FallSetting<'k> {
    FallSetting {
        limb: on.limb,
        to: asked.to,
        basis: asked.basis,
        knits: knits.list(rules),
        band: asked.band,
        together,
        rules: rules.fall,
    }
}

/// Whether a landmark is judged.
pub(super) fn is_judged(landmark: Landmark) -> bool {
    !landmark.on_extremity() && !landmark.is_joint()
}

/// Landmarks of the limb that a piece, or all of it, would be judged at: fewer than two are no fall.
pub(super) fn has_fall(on: &OnLimb<'_>, from: Landmark, to: Landmark) -> bool {
    let judged = Landmark::of(on.limb).iter().filter(|one| is_judged(**one) && (from..=to).contains(*one));
    judged.count() >= 2
}

/// What the falls of what is worn are: each piece within itself, then all together at both ends of the
/// share that is felt.
pub(super) fn asked(
    on: &OnLimb<'_>,
    outfit: &Outfit,
    knits: &Knits<'_>,
    rules: &EstimateRules,
) -> Vec<Asked> {
    let mut found = Vec::new();
    for (piece, worn) in outfit.pieces.iter().enumerate() {
        if !has_fall(on, worn.from, worn.to) {
            continue;
        }
        let marks: Vec<(Landmark, Vec<Lying<'_>>)> = on
            .named()
            .filter(|(landmark, _)| is_judged(*landmark))
            .filter_map(|(landmark, _)| {
                let lying = lying_at(outfit, knits, std::iter::once(piece), landmark);
                (!lying.known.is_empty()).then_some((landmark, lying.known))
            })
            .collect();
        found.extend(ask(on, FallOf::Piece(piece), &marks, knits, worn.to, rules));
    }
    if outfit.pieces.len() > 1 && has_fall(on, outfit.from(), outfit.to()) {
        found.extend(whole(on, outfit, knits, rules));
    }
    found
}

fn ask(
    on: &OnLimb<'_>,
    of: FallOf,
    places: &[(Landmark, Vec<Lying<'_>>)],
    knits: &Knits<'_>,
    to: Landmark,
    rules: &EstimateRules,
) -> Option<Asked> {
    let lying = || places.iter().flat_map(|(_, lying)| lying);
    lying().next()?;
    let basis = if lying().any(Lying::is_estimable) { GradientBasis::Fabric } else { GradientBasis::Stretch };
    // Where a knit has no curve the mark is not estimated; by ruler, unlike knits are not held against each other.
    let unheld = Unheld::of(places);
    let held = |(landmark, _): &&(Landmark, Vec<Lying<'_>>)| {
        unheld.as_ref().is_none_or(|one| !one.landmarks.contains(landmark))
    };
    let places: Vec<&(Landmark, Vec<Lying<'_>>)> = places.iter().filter(held).collect();
    let first = lying().find_map(Lying::number);
    let share = match of {
        FallOf::Whole { share } => share,
        FallOf::Piece(_) | FallOf::Readings => 1.0,
    };
    let marks = places
        .into_iter()
        .filter_map(|(landmark, lying)| Some(fall_mark(*landmark, on.mark(*landmark)?, lying, share, rules)))
        .collect();
    let band = knits.band(first.unwrap_or_default(), rules);
    Some(Asked { of, marks, basis, band, knit: first, to, unheld })
}

/// All together at both ends of the share; nothing where one piece is not known well enough.
fn whole(on: &OnLimb<'_>, outfit: &Outfit, knits: &Knits<'_>, rules: &EstimateRules) -> Vec<Asked> {
    let mut places: Vec<(Landmark, Vec<Lying<'_>>)> = Vec::new();
    let mut beyond: Vec<(f64, Landmark, Vec<Lying<'_>>)> = Vec::new();
    let mut several = false;
    for (landmark, _) in on.named().filter(|(landmark, _)| is_judged(*landmark)) {
        let here = lying_at(outfit, knits, 0..outfit.pieces.len(), landmark);
        if here.known.is_empty() || !here.complete {
            continue;
        }
        several |= here.known.len() > 1;
        for above in [false, true] {
            let reaches = |piece: &usize| {
                let worn = outfit.pieces.get(*piece);
                worn.is_some_and(|worn| if above { worn.to > landmark } else { worn.from < landmark })
            };
            let on_limb = above || landmark > on.limb.reference();
            let there: Vec<Lying<'_>> =
                here.known.iter().filter(|one| reaches(&one.piece())).copied().collect();
            if on_limb && !there.is_empty() && there.len() < here.known.len() {
                let offset = if above { BEYOND_EDGE_CM } else { -BEYOND_EDGE_CM };
                beyond.push((offset, landmark, there));
            }
        }
        places.push((landmark, here.known));
    }
    let shares = if several { vec![rules.share_low, rules.share_high] } else { vec![rules.share_high] };
    shares
        .into_iter()
        .filter_map(|share| {
            let mut asked = ask(on, FallOf::Whole { share }, &places, knits, outfit.to(), rules)?;
            for (offset, landmark, lying) in &beyond {
                let estimable = match asked.basis {
                    GradientBasis::Stretch => asked.unheld.is_none(),
                    _ => lying.iter().all(Lying::is_estimable),
                };
                let Some(mark) = on.mark(*landmark).filter(|_| estimable) else { continue };
                let mut point = fall_mark(*landmark, mark, lying, share, rules);
                point.at_cm += offset;
                asked.marks.push(point);
            }
            Some(asked)
        })
        .collect()
}

/// The verdict over all falls; none where there is none.
pub(super) fn verdict(
    on: &OnLimb<'_>,
    outfit: &Outfit,
    asked: &[Asked],
    knits: &Knits<'_>,
    rules: &EstimateRules,
) -> Option<FallVerdict> {
    let together = outfit.pieces.len() > 1;
    let mut all: Vec<(FallOf, Fall)> = Vec::new();
    // What leaves marks out counts where it rises, and says nothing else.
    let mut open: Vec<(&Asked, &Unheld)> = Vec::new();
    for one in asked {
        let alone = matches!(one.of, FallOf::Piece(_));
        let fall = judge(&one.marks, &setting(on, one, knits, together && !alone, rules));
        match &one.unheld {
            Some(unheld) if fall.grade > Grade::Likely => open.push((one, unheld)),
            _ => all.push((one.of, fall)),
        }
    }
    // Of falls with one grade, the whole speaks for all, else the most likely one.
    let worst = all.iter().min_by(|one, other| {
        let key = |(of, fall): &(FallOf, Fall)| {
            (fall.grade, !matches!(of, FallOf::Whole { .. }), -fall.chance.unwrap_or_default())
        };
        let (a, b) = (key(one), key(other));
        a.0.cmp(&b.0).then(a.1.cmp(&b.1)).then(a.2.total_cmp(&b.2))
    });
    // One piece alone above the reference says all by itself.
    let counts = |one: &Asked| matches!(one.of, FallOf::Piece(_)) || above(on, outfit) > 1;
    if let Some((one, unheld)) = open.into_iter().rev().find(|(one, _)| counts(one))
        && worst.is_none_or(|(_, fall)| fall.grade > Grade::Likely)
    {
        let fall = judge(&[], &setting(on, one, knits, together, rules));
        return Some(FallVerdict { fall, of: one.of, judged: false, all, unheld: Some(unheld.clone()) });
    }
    let (of, fall) = worst?;
    let (of, fall) = (*of, fall.clone());
    let judged = fall.grade != Grade::Undecided && is_judged_whole(on, outfit, &all);
    Some(FallVerdict { fall, of, judged, all, unheld: None })
}

/// How many pieces reach above the reference.
fn above(on: &OnLimb<'_>, outfit: &Outfit) -> usize {
    outfit.pieces.iter().filter(|worn| worn.to > on.limb.reference()).count()
}

/// Whether the whole is judged: by the falls of all together; where unlike knits forbid that, by the one
/// piece that reaches above the reference.
fn is_judged_whole(on: &OnLimb<'_>, outfit: &Outfit, all: &[(FallOf, Fall)]) -> bool {
    let wholes = || all.iter().filter(|(of, _)| matches!(of, FallOf::Whole { .. }));
    if outfit.pieces.len() < 2 || wholes().next().is_none() {
        let [(_, fall)] = all else { return false };
        return above(on, outfit) == 1 && fall.judged;
    }
    wholes().all(|(_, fall)| fall.judged)
}
