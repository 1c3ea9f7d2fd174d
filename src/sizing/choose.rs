//! Owns the choice among the sizes of a chart.

use std::cmp::Ordering;

use super::{MeasureVerdict, SizeFit, SizeVerdict, Sizing};
use crate::garment::{BetweenSizes, Chart};
use crate::rules::{NumberId, Rules};

/// What a chart comes to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ChartVerdict {
    /// A size holds.
    Size,
    /// The limb lies between two sizes, or two sizes hold equally well.
    Between,
    /// No stock size holds.
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
            Self::MadeToMeasure => "made-to-measure",
            Self::NotJudged => "not-judged",
        }
    }
}

/// Why a chart came to its verdict; sizes by their place in the chart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Reason {
    /// One size holds best.
    Holds,
    /// These sizes hold exactly alike.
    Alike(Vec<usize>),
    /// Every girth lies between these two neighbours.
    Gap(usize, usize),
    /// Sizes hold the girths, but the pressure of each certainly rises toward the trunk.
    AllReversed(Vec<usize>),
    /// No size holds.
    NoneHolds,
    /// These measures are missing.
    Missing(Vec<String>),
    /// An infection: girths taken now are not used.
    Postponed,
}

/// The choice.
#[derive(Clone, Debug)]
pub struct Choice {
    /// What the chart comes to.
    pub verdict: ChartVerdict,
    /// The size picked, by its place in the chart.
    pub size: Option<usize>,
    /// The nearest size when none holds.
    pub nearest: Option<usize>,
    /// Why.
    pub reason: Reason,
}

/// Chooses; `reversed` tells for each size whether its pressure certainly rises (sizes that hold only).
pub fn choose(sizing: &Sizing, chart: &Chart, reversed: &[bool], rules: &Rules) -> Choice {
    let of = |verdict, size, nearest, reason| Choice { verdict, size, nearest, reason };
    if !sizing.missing.is_empty() {
        return of(ChartVerdict::NotJudged, None, None, Reason::Missing(sizing.missing.clone()));
    }
    let inside: Vec<usize> = places(sizing, |size| size.verdict == SizeVerdict::Inside);
    let upright: Vec<usize> =
        inside.iter().copied().filter(|at| !reversed.get(*at).copied().unwrap_or(false)).collect();
    if !upright.is_empty() {
        let best = best_of(sizing, &upright);
        return match (best.as_slice(), chart.between_sizes) {
            ([one], _) => of(ChartVerdict::Size, Some(*one), None, Reason::Holds),
            ([first, ..], BetweenSizes::Smaller) => {
                of(ChartVerdict::Size, Some(*first), None, Reason::Alike(best))
            }
            ([.., last], BetweenSizes::Larger) => {
                of(ChartVerdict::Size, Some(*last), None, Reason::Alike(best))
            }
            _ => of(ChartVerdict::Between, None, None, Reason::Alike(best)),
        };
    }
    if !inside.is_empty() {
        return of(ChartVerdict::MadeToMeasure, None, None, Reason::AllReversed(inside));
    }
    if let Some(smaller) = gap(sizing) {
        let picked = match chart.between_sizes {
            BetweenSizes::Smaller => Some(smaller),
            BetweenSizes::Larger => Some(smaller + 1),
            BetweenSizes::Refer => None,
        };
        let most = rules.number(NumberId::PickMiss) * 100.0;
        let picked = picked.filter(|at| {
            sizing.sizes.get(*at).is_some_and(|size| {
                size.length_holds && f64::from(i32::try_from(size.misses().0).unwrap_or(i32::MAX)) <= most
            })
        });
        return of(ChartVerdict::Between, picked, None, Reason::Gap(smaller, smaller + 1));
    }
    let nearest = (0..sizing.sizes.len()).min_by_key(|at| sizing.sizes.get(*at).map(SizeFit::misses));
    of(ChartVerdict::MadeToMeasure, None, nearest, Reason::NoneHolds)
}

fn places(sizing: &Sizing, want: impl Fn(&SizeFit) -> bool) -> Vec<usize> {
    sizing.sizes.iter().enumerate().filter(|(_, size)| want(size)).map(|(at, _)| at).collect()
}

/// The sizes with the greatest smallest room relative to the width of its range; several on an
/// exact tie.
fn best_of(sizing: &Sizing, among: &[usize]) -> Vec<usize> {
    let mut best: Vec<usize> = Vec::new();
    for at in among {
        let Some(size) = sizing.sizes.get(*at) else { continue };
        let against = best.first().and_then(|first| sizing.sizes.get(*first));
        match against.map_or(Ordering::Greater, |other| compare(relative_room(size), relative_room(other))) {
            Ordering::Greater => best = vec![*at],
            Ordering::Equal => best.push(*at),
            Ordering::Less => {}
        }
    }
    best
}

/// Smallest room over range width as a fraction; none where every range is open (no limit).
fn relative_room(size: &SizeFit) -> Option<(i64, i64)> {
    let fractions = size.measures.iter().filter_map(|one| {
        let width = one.range.width()?;
        // A range of a single value leaves no room at all.
        Some((one.margin?, width.max(1)))
    });
    fractions.min_by(|one, other| compare(Some(*one), Some(*other)))
}

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
    let pairs = sizing.sizes.windows(2);
    pairs.enumerate().find_map(|(at, pair)| {
        let [small, large] = pair else { return None };
        let held = small.measures.iter().zip(&large.measures).all(|(below, above)| {
            let (Some(girth), Some(low), Some(high)) = (below.girth, below.range.high, above.range.low)
            else {
                return false;
            };
            (low..=high).contains(&girth.tenths()) && below.verdict != MeasureVerdict::NotJudged
        });
        held.then_some(at)
    })
}
