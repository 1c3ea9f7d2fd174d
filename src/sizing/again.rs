//! Owns the chance that a second measurement would pick the same size.

use super::measure::inside_chance;
use super::points::normals;
use super::{KnownGirth, SizingInput};
use crate::garment::{BetweenSizes, Chart};
use crate::quantity::{Range, Step, phi};

/// How sure the choice of a size is, from the record alone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SameAgain {
    /// Chance that a second measurement picks the same size, 0 to 1, good to 0.01.
    pub chance: f64,
    /// The other size that would be picked most often; none where none would be.
    pub runner_up: Option<usize>,
    /// How often, 0 to 1; 0 without one.
    pub runner_up_chance: f64,
}

/// A size that takes less than this share of second measurements is not followed (house rule: far below what
/// is printed).
const NEGLIGIBLE: f64 = 1e-5;

/// One girth that is drawn anew: its value as stored, tenths of a millimetre, the SD of a second one, and the step
/// that a second one is rounded to, as the first was.
#[derive(Clone, Copy)]
struct Drawn {
    tenths: i64,
    centre: f64,
    spread: f64,
    step: Option<Step>,
}

impl Drawn {
    /// The chance that a second value lies in a range, once it is rounded (derived: the normal value between the
    /// first stored one that is rounded up to the low end and the first that is rounded beyond the high end).
    fn share(&self, range: Range) -> f64 {
        let Some(step) = self.step else {
            return inside_chance(self.tenths, range, self.spread / 100.0);
        };
        // A value is stored to the nearest tenth of a millimetre before it is rounded.
        let below = |end: i64| {
            let first = f64::from(i32::try_from(step.first_up_to(end)).unwrap_or(i32::MAX));
            phi((first - 0.5 - self.centre) / self.spread)
        };
        range.high.map_or(1.0, |high| below(high + 1)) - range.low.map_or(0.0, below)
    }

    /// A second value, tenths of a millimetre, at so many of its SDs.
    fn second(&self, z: f64) -> f64 {
        let drawn = self.centre + self.spread * z;
        self.step.map_or(drawn, |step| step.near(drawn))
    }
}

/// A size that may be picked.
struct Rival {
    place: usize,
    ranges: Vec<Range>,
    /// Chance that a second measurement lies in all its ranges.
    taken: f64,
    /// Points of those in its ranges that another size takes better.
    lost: u32,
    /// Points in its ranges.
    held: u32,
}

/// The chance that a second measurement would pick `picked` again, by margins, and the runner-up.
/// C′ ~ N(C, 2s²) for each girth, then sized; under a printed step coarser than a tape is read drawn around the girth as
/// stored and rounded as the first was. Sizes in `reversed` are out. None where a girth is missing.
///
/// The share of a size is Φ's exact share of its ranges, times the share of the even points in them that
/// no other size takes better; sizes that do not overlap need no points.
///
/// Source: flat prior, normal tape error (derived); the average is a house rule.
pub fn same_again(input: &SizingInput, chart: &Chart, reversed: &[bool], picked: usize) -> Option<SameAgain> {
    let step = rounding(chart);
    let drawn: Vec<Drawn> = chart
        .measures()
        .iter()
        .map(|landmark| input.girths.get(landmark).map(|known| drawn(known, chart, step)))
        .collect::<Option<_>>()?;
    let out = |place: usize| reversed.get(place).copied().unwrap_or(false);
    let mut rivals: Vec<Rival> = chart
        .sizes
        .iter()
        .enumerate()
        .filter(|(place, _)| !out(*place))
        .filter_map(|(place, size)| {
            let ranges: Vec<Range> = size.girths.iter().map(|(_, range)| *range).collect();
            let taken: f64 = drawn.iter().zip(&ranges).map(|(one, range)| one.share(*range)).product();
            (taken > NEGLIGIBLE || place == picked).then_some(Rival {
                place,
                ranges,
                taken,
                lost: 0,
                held: 0,
            })
        })
        .collect();
    // Under a step, an edge that two sizes share takes more than no second value.
    let edge = step.is_some();
    if overlap(&rivals, edge) {
        contest(&mut rivals, &drawn, chart.between_sizes);
    }
    let chance = |rival: &Rival| {
        let kept = 1.0 - f64::from(rival.lost) / f64::from(rival.held.max(1));
        rival.taken * kept
    };
    let own = rivals.iter().find(|rival| rival.place == picked).map(chance)?;
    let mut runner_up: Option<(usize, f64)> = None;
    for rival in rivals.iter().filter(|rival| rival.place != picked) {
        let share = chance(rival);
        if share > runner_up.map_or(NEGLIGIBLE, |(_, best)| best) {
            runner_up = Some((rival.place, share));
        }
    }
    Some(SameAgain {
        chance: own,
        runner_up: runner_up.map(|(place, _)| place),
        runner_up_chance: runner_up.map_or(0.0, |(_, share)| share),
    })
}

/// A tape is read to this, tenths of a millimetre: rounding to it is in the error of the tape already (house rule).
const TAPE_READ: i64 = 10;

/// The printed step that a second measurement is rounded to: one coarser than a tape is read.
fn rounding(chart: &Chart) -> Option<Step> {
    chart.printed_step.filter(|step| step.whole_tenths().is_none_or(|step| step > TAPE_READ))
}

/// A girth as a second measurement would find it; the SD of the difference of two is √2 times one's.
fn drawn(known: &KnownGirth, chart: &Chart, step: Option<Step>) -> Drawn {
    let girth = if step.is_some() { known.girth } else { known.girth.rounded_to(chart.printed_step) };
    let tenths = girth.tenths();
    let centre = f64::from(i32::try_from(tenths).unwrap_or(i32::MAX));
    let spread = std::f64::consts::SQRT_2 * known.sd_cm * 100.0;
    Drawn { tenths, centre, spread, step }
}

/// Whether any two sizes share more than an edge in every girth, or an edge where that counts.
fn overlap(rivals: &[Rival], edge: bool) -> bool {
    let low = |range: Range| range.low.unwrap_or(i64::MIN);
    let high = |range: Range| range.high.unwrap_or(i64::MAX);
    let share = |one: &Rival, other: &Rival| {
        one.ranges.iter().zip(&other.ranges).all(|(a, b)| {
            let (from, upto) = (low(*a).max(low(*b)), high(*a).min(high(*b)));
            from < upto || (edge && from == upto)
        })
    };
    rivals.iter().enumerate().any(|(at, one)| rivals.iter().skip(at + 1).any(|other| share(one, other)))
}

/// Counts, for each size, the points in its ranges that another one takes better.
fn contest(rivals: &mut [Rival], drawn: &[Drawn], tie: BetweenSizes) {
    let Some(points) = normals(drawn.len()) else { return };
    let mut girths = vec![0.0_f64; drawn.len()];
    let mut margins = vec![None; rivals.len()];
    for point in points.chunks_exact(drawn.len().max(1)) {
        for ((girth, one), z) in girths.iter_mut().zip(drawn).zip(point) {
            *girth = one.second(*z);
        }
        let mut best: Option<(usize, f64)> = None;
        let mut equal = false;
        for (at, (rival, margin)) in rivals.iter().zip(&mut margins).enumerate() {
            *margin = relative_margin(&rival.ranges, &girths);
            let Some(margin) = *margin else { continue };
            let better = best.is_none_or(|(_, held)| margin > held);
            let alike = best.is_some_and(|(_, held)| margin.total_cmp(&held).is_eq());
            if better || (alike && tie == BetweenSizes::Larger) {
                best = Some((at, margin));
            }
            equal = (equal && !better) || alike;
        }
        let winner = best.filter(|_| !equal || tie != BetweenSizes::Fitter).map(|(at, _)| at);
        for (at, (rival, margin)) in rivals.iter_mut().zip(&margins).enumerate() {
            if margin.is_some() {
                rival.held += 1;
                rival.lost += u32::from(winner != Some(at));
            }
        }
    }
}

/// Smallest margin relative to the width of its range; infinite where every range is open; none outside.
fn relative_margin(ranges: &[Range], girths: &[f64]) -> Option<f64> {
    let end = |tenths: i64| f64::from(i32::try_from(tenths).unwrap_or(i32::MAX));
    let mut least = f64::INFINITY;
    for (range, girth) in ranges.iter().zip(girths) {
        let below = range.low.map(|low| girth - end(low));
        let above = range.high.map(|high| end(high) - girth);
        let margin = below.unwrap_or(f64::INFINITY).min(above.unwrap_or(f64::INFINITY));
        if margin < 0.0 {
            return None;
        }
        if let Some(width) = range.width() {
            least = least.min(margin / end(width.max(1)));
        }
    }
    Some(least)
}
