//! Owns the choice among the sizes of a chart.

use std::cmp::Ordering;

use super::{Limits, MeasureFit, SizeFit, SizeVerdict, Sizing};
use crate::anatomy::Landmark;
use crate::garment::{BetweenSizes, Chart};

/// What is said of a chart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChartVerdict {
    /// A size takes the limb.
    Size,
    /// The limb lies between two sizes, or two sizes take it equally well.
    Between,
    /// A size takes it but for a little, on one tape value.
    MeasureAgain,
    /// No stock size takes it.
    MadeToMeasure,
    /// Measures are missing, or girths are not to be used now.
    NotJudged,
}

impl ChartVerdict {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Size => "size",
            Self::Between => "between",
            Self::MeasureAgain => "measure-again",
            Self::MadeToMeasure => "made-to-measure",
            Self::NotJudged => "not-judged",
        }
    }
}

/// Why; sizes by their place in the chart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Reason {
    /// One size takes the limb best.
    Takes,
    /// These sizes take it exactly alike.
    Alike(Vec<usize>),
    /// Every girth lies between these two neighbours.
    Gap(usize, usize),
    /// Sizes take the girths, but each certainly rises toward the trunk.
    AllReversed(Vec<usize>),
    /// This size misses by little, at girths that rest on one tape value.
    Again {
        /// The size.
        size: usize,
        /// The girths to measure again, distal to proximal.
        girths: Vec<Landmark>,
    },
    /// No size takes it.
    NoneTakes,
    /// These girths are missing, and sizes are still open.
    Missing(Vec<Landmark>),
    /// An infection: girths taken now are not used.
    Postponed,
}

/// The choice.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// What is said of the chart.
    pub verdict: ChartVerdict,
    /// The size picked, by its place in the chart.
    pub size: Option<usize>,
    /// The nearest size when none takes the limb.
    pub nearest: Option<usize>,
    /// Both sizes of a pair between, or those that take the limb exactly alike; else empty.
    pub between: Vec<usize>,
    /// Why.
    pub reason: Reason,
}

impl Choice {
    /// The size whose figures are given: picked, else nearest.
    pub fn shown(&self) -> Option<usize> {
        self.size.or(self.nearest)
    }
}

/// Chooses. `reversed` tells for each size whether a certain rise takes it out (short lists are read as
/// false); `postponed`, that girths are not to be used now (an active infection).
pub fn choose(sizing: &Sizing, chart: &Chart, reversed: &[bool], postponed: bool, limits: Limits) -> Choice {
    let out = |place: usize| reversed.get(place).copied().unwrap_or(false);
    let inside = sizing.places(SizeVerdict::Inside);
    let nearest = if inside.is_empty() { sizing.nearest() } else { None };
    let of = |verdict, size, nearest, between, reason| Choice { verdict, size, nearest, between, reason };
    if postponed {
        return of(ChartVerdict::NotJudged, None, nearest, Vec::new(), Reason::Postponed);
    }
    if !inside.is_empty() {
        let upright: Vec<usize> = inside.iter().copied().filter(|place| !out(*place)).collect();
        if upright.is_empty() {
            return of(ChartVerdict::MadeToMeasure, None, None, Vec::new(), Reason::AllReversed(inside));
        }
        let best = best_of(sizing, &upright);
        let picked = match (best.as_slice(), chart.between_sizes) {
            ([one], _) => return of(ChartVerdict::Size, Some(*one), None, Vec::new(), Reason::Takes),
            ([first, ..], BetweenSizes::Smaller) => Some(*first),
            ([.., last], BetweenSizes::Larger) => Some(*last),
            _ => None,
        };
        return match picked {
            Some(_) => of(ChartVerdict::Size, picked, None, Vec::new(), Reason::Alike(best)),
            None => of(ChartVerdict::Between, None, None, best.clone(), Reason::Alike(best)),
        };
    }
    if !sizing.places(SizeVerdict::Open).is_empty() {
        let reason = Reason::Missing(sizing.missing.clone());
        return of(ChartVerdict::NotJudged, None, nearest, Vec::new(), reason);
    }
    if let Some(smaller) = gap(sizing) {
        let picked = match chart.between_sizes {
            BetweenSizes::Smaller => Some(smaller),
            BetweenSizes::Larger => Some(smaller + 1),
            BetweenSizes::Fitter => None,
        };
        let near = |place: usize| sizing.sizes.get(place).is_some_and(|size| size.misses().0 <= limits.miss);
        let picked = picked.filter(|place| near(*place) && !out(*place));
        let pair = vec![smaller, smaller + 1];
        return of(ChartVerdict::Between, picked, nearest, pair, Reason::Gap(smaller, smaller + 1));
    }
    // Rather one that does not rise for certain, the nearest first.
    let near = nearly(sizing, limits);
    match near.iter().find(|place| !out(**place)).or(near.first()).copied() {
        Some(size) => {
            let measures = sizing.sizes.get(size).map(|fit| fit.measures.as_slice()).unwrap_or_default();
            let girths = measures.iter().filter(|one| one.miss() > 0).map(|one| one.landmark).collect();
            let reason = Reason::Again { size, girths };
            of(ChartVerdict::MeasureAgain, None, nearest, Vec::new(), reason)
        }
        None => of(ChartVerdict::MadeToMeasure, None, nearest, Vec::new(), Reason::NoneTakes),
    }
}

/// The sizes whose misses are all little, each at a girth with one tape value, the nearest first: measured again a
/// limb may prove to be inside. Which of them a rise takes out is not looked at.
pub fn nearly(sizing: &Sizing, limits: Limits) -> Vec<usize> {
    let may = |size: &SizeFit| {
        let mut missed = size.measures.iter().filter(|one| one.miss() > 0).peekable();
        missed.peek().is_some() && missed.all(|one| one.miss() <= limits.miss && one.tapes == 1)
    };
    let all = sizing.sizes.iter().enumerate().filter(|(_, size)| may(size));
    let mut near: Vec<((i64, i64), usize)> = all.map(|(place, size)| (size.misses(), place)).collect();
    near.sort_unstable();
    near.into_iter().map(|(_, place)| place).collect()
}

/// The sizes with the greatest smallest margin relative to the width of its range; several on an
/// exact tie.
fn best_of(sizing: &Sizing, among: &[usize]) -> Vec<usize> {
    let mut best: Vec<usize> = Vec::new();
    for place in among {
        let Some(size) = sizing.sizes.get(*place) else { continue };
        let against = best.first().and_then(|first| sizing.sizes.get(*first));
        match against.map_or(Ordering::Greater, |other| compare(relative(size), relative(other))) {
            Ordering::Greater => best = vec![*place],
            Ordering::Equal => best.push(*place),
            Ordering::Less => {}
        }
    }
    best
}

/// Smallest margin over range width as a fraction; none where every range is open (no limit).
fn relative(size: &SizeFit) -> Option<(i64, i64)> {
    let fraction = |one: &MeasureFit| {
        let width = one.range.width()?;
        // A range of a single value has no margin at all.
        Some((one.margin?, width.max(1)))
    };
    let fractions = size.measures.iter().filter_map(fraction);
    fractions.min_by(|one, other| compare(Some(*one), Some(*other)))
}

/// Compares two fractions exactly; none is above every fraction.
fn compare(one: Option<(i64, i64)>, other: Option<(i64, i64)>) -> Ordering {
    match (one, other) {
        (None, None) => Ordering::Equal,
        (None, Some(_)) => Ordering::Greater,
        (Some(_), None) => Ordering::Less,
        (Some((a, b)), Some((c, d))) => (i128::from(a) * i128::from(d)).cmp(&(i128::from(c) * i128::from(b))),
    }
}

/// The first size k for which every girth lies in the gap from the high end of k to the low end of k + 1.
fn gap(sizing: &Sizing) -> Option<usize> {
    sizing.sizes.windows(2).position(|pair| {
        let [small, large] = pair else { return false };
        small.measures.iter().zip(&large.measures).all(|(below, above)| {
            let (Some(girth), Some(low), Some(high)) = (below.girth, below.range.high, above.range.low)
            else {
                return false;
            };
            (low..=high).contains(&girth.tenths())
        })
    })
}
