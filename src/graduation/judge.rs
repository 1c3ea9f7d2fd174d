//! Owns which marks are compared and what a garment's comparison comes to.

use super::grade::Limits;
use super::stretch_pair::{Worn, chance as stretch_chance};
use super::{Grade, GraduationBasis, Point, Value, Verdict, unlike_fabrics_sd};
use crate::anatomy::{Landmark, Limb};
use crate::quantity::phi;
use crate::rules::{NumberId, Rules};

/// Two marks compared.
#[derive(Clone, Copy, Debug)]
pub struct Pair {
    /// The one nearer hand or foot.
    pub distal: Landmark,
    /// The one nearer the trunk.
    pub proximal: Landmark,
    /// Proximal minus distal pressure, mmHg; none by stretch alone.
    pub rise: Option<f64>,
    /// SD of the rise by tape and ruler, mmHg.
    pub sd: Option<f64>,
    /// Chance that the proximal pressure is the higher; by stretch the higher end.
    pub chance: Option<f64>,
    /// By stretch the lower end.
    pub chance_low: Option<f64>,
    /// How certain; none = not estimated.
    pub grade: Option<Grade>,
    /// Whether the two stand nearer than the distance at which falls can be told.
    pub near: bool,
}

/// A garment's comparison along the limb.
#[derive(Clone, Debug)]
pub struct Graduation {
    /// What it rests on.
    pub basis: GraduationBasis,
    /// Neighbours, and marks at a distance.
    pub pairs: Vec<Pair>,
    /// Reference and top.
    pub end_to_end: Option<Pair>,
    /// The pair with the largest rise in mmHg; none by stretch alone.
    pub largest_rise: Option<Pair>,
    /// The worst pair; a pair not estimated counts as undecided. None without pairs.
    pub verdict: Option<Verdict>,
    /// Whether reference, top and a mark between were compared and every pair decided.
    pub judged: bool,
}

impl Graduation {
    /// All pairs, end to end last.
    pub fn all(&self) -> impl Iterator<Item = &Pair> {
        self.pairs.iter().chain(self.end_to_end.as_ref())
    }

    /// The worst pair: worst grade, then highest chance.
    pub fn worst(&self) -> Option<&Pair> {
        self.all().min_by(|one, other| {
            let key = |pair: &Pair| pair.grade.unwrap_or(Grade::Undecided);
            key(one).cmp(&key(other)).then(other.chance.unwrap_or(0.0).total_cmp(&one.chance.unwrap_or(0.0)))
        })
    }

    /// Whether a certain rise takes the size out of the choice: at least so many mmHg, or by stretch.
    pub fn removes(&self, rules: &Rules) -> bool {
        let least = rules.number(NumberId::RiseRemoves);
        self.all()
            .any(|pair| pair.grade == Some(Grade::Certain) && pair.rise.is_none_or(|rise| rise >= least))
    }
}

/// Compares the judged points (reference toward the trunk, joint left out) of one garment that ends
/// at `top`.
pub fn judge(
    points: &[Point],
    basis: GraduationBasis,
    limb: Limb,
    top: Landmark,
    rules: &Rules,
) -> Graduation {
    let judged = judged_points(points);
    let least_tenths = rules.number(NumberId::PairDistance) * 100.0;
    let far = |distal: &Point, proximal: &Point| {
        f64::from(i32::try_from(proximal.at.tenths() - distal.at.tenths()).unwrap_or_default())
            >= least_tenths
    };
    let compare = |distal: &Point, proximal: &Point| pair(distal, proximal, !far(distal, proximal), rules);
    let mut pairs = Vec::new();
    for (number, proximal) in judged.iter().enumerate() {
        let before = judged.get(..number).unwrap_or_default();
        let Some(neighbour) = before.last() else { continue };
        if !far(neighbour, proximal) {
            pairs.push(compare(neighbour, proximal));
        }
        if let Some(distal) = before.iter().rfind(|distal| far(distal, proximal)) {
            pairs.push(compare(distal, proximal));
        }
    }
    let end_to_end = match (judged.first(), judged.last()) {
        (Some(first), Some(last)) if judged.len() > 1 => Some(pair(first, last, false, rules)),
        _ => None,
    };
    let all = || pairs.iter().chain(end_to_end.as_ref());
    let largest_rise = all()
        .filter(|pair| pair.rise.is_some())
        .copied()
        .reduce(|best, pair| if pair.rise > best.rise { pair } else { best });
    let verdict = all().map(|pair| pair.grade.unwrap_or(Grade::Undecided)).min();
    let open = all().any(|pair| matches!(pair.grade, None | Some(Grade::Undecided)));
    let (reference, top) = (limb.reference(), judged_top(top));
    let any = |holds: &dyn Fn(Landmark) -> bool| judged.iter().any(|point| holds(point.landmark));
    let whole = any(&|one| one == reference)
        && any(&|one| reference < one && one < top)
        && any(&|one| one == top)
        && !open;
    Graduation { basis, pairs, end_to_end, largest_rise, verdict, judged: whole }
}

/// The points that are judged, distal to proximal: neither on hand or foot nor at the joint.
pub(super) fn judged_points(points: &[Point]) -> Vec<Point> {
    let mut judged: Vec<Point> = points
        .iter()
        .copied()
        .filter(|point| !point.landmark.on_extremity() && !point.landmark.is_joint())
        .collect();
    judged.sort_by_key(|point| point.at);
    judged
}

/// The last mark that has to be compared: the garment's end, or the landmark below it when the
/// garment ends at the joint.
fn judged_top(top: Landmark) -> Landmark {
    if top.is_joint() { top.below().unwrap_or(top) } else { top }
}

/// Grades the chance of a rise that was worked out elsewhere.
pub fn grade_rise(chance: f64, rules: &Rules) -> Grade {
    limits(rules).grade(chance)
}

fn limits(rules: &Rules) -> Limits {
    Limits {
        certain: rules.number(NumberId::RiseCertain),
        likely: rules.number(NumberId::RiseLikely),
        possible: rules.number(NumberId::RisePossible),
    }
}

pub(super) fn pair(distal: &Point, proximal: &Point, near: bool, rules: &Rules) -> Pair {
    let limits = limits(rules);
    let mut pair = Pair {
        distal: distal.landmark,
        proximal: proximal.landmark,
        rise: None,
        sd: None,
        chance: None,
        chance_low: None,
        grade: None,
        near,
    };
    match (distal.value, proximal.value) {
        (
            Value::Pressure { mmhg: low, sd: sd_low, fabrics: of_low },
            Value::Pressure { mmhg: high, sd: sd_high, fabrics: of_high },
        ) => {
            let rise = high - low;
            let sd = sd_low.hypot(sd_high).hypot(unlike_fabrics_sd(&of_high, &of_low, 1.0));
            let chance = if sd > 0.0 { phi(rise / sd) } else { f64::from(u8::from(rise > 0.0)) };
            pair.rise = Some(rise);
            pair.sd = Some(sd);
            pair.chance = Some(chance);
            pair.grade = Some(limits.grade(chance));
        }
        (
            Value::Stretch { girth, relaxed, sd_girth, sd_relaxed },
            Value::Stretch {
                girth: girth_2,
                relaxed: relaxed_2,
                sd_girth: sd_girth_2,
                sd_relaxed: sd_relaxed_2,
            },
        ) => {
            let below = Worn { girth, relaxed, sd_girth, sd_relaxed };
            let above =
                Worn { girth: girth_2, relaxed: relaxed_2, sd_girth: sd_girth_2, sd_relaxed: sd_relaxed_2 };
            let at = |exponent| stretch_chance(below, above, rules.number(exponent));
            let (one, other) = (at(NumberId::StretchExponentLow), at(NumberId::StretchExponentHigh));
            pair.chance = Some(one.max(other));
            pair.chance_low = Some(one.min(other));
            pair.grade = Some(limits.grade_between(one.min(other), one.max(other)));
        }
        _ => {}
    }
    // Too near for a fall to be told; a mark that is not estimated stays so.
    if near && pair.grade.is_some_and(|grade| grade != Grade::Certain) {
        pair.grade = Some(Grade::None);
    }
    pair
}
