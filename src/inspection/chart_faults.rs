//! Owns the search for faults of a chart.

use super::{ChartFault, FaultKind};
use crate::anatomy::Landmark;
use crate::caseload::{Case, Prepared};
use crate::garment::{Chart, Size};
use crate::gradient::Grade;
use crate::quantity::{Girth, Range};
use crate::rules::Rules;
use crate::sizing::is_wide;

/// A range narrower than so many hundredths of the tape's SD tells less than one tape value: 1.96 SD to either side
/// (derived; 1.372 cm at 0.35 cm).
const NARROW_HUNDREDTHS: i64 = 2 * 196;

/// A step that differs from the usual one by more than this share of it is a jump (house rule).
const JUMP_SHARE: f64 = 0.5;

/// A step that differs by no more than this is none, tenths of a millimetre: what rounding in print makes of it
/// (house rule).
const JUMP_TENTHS: i64 = 20;

/// Fewest steps of which one can be unusual (house rule).
const FEWEST_STEPS: usize = 3;

/// Every fault of a chart, by measure along the limb and size by size, those of the whole first.
pub fn chart_faults(chart: &Chart, rules: &Rules) -> Vec<ChartFault> {
    let mut found = Vec::new();
    let measures = chart.measures();
    if let [only] = measures.as_slice() {
        found.push(ChartFault { size: None, next: None, landmark: Some(*only), kind: FaultKind::OneGirth });
    }
    let pairs = neighbours(chart);
    for landmark in &measures {
        let ranges: Vec<Range> = chart.sizes.iter().filter_map(|size| size.range_at(*landmark)).collect();
        let fault = |size, next, kind| ChartFault { size: Some(size), next, landmark: Some(*landmark), kind };
        for (size, range) in ranges.iter().enumerate() {
            found.extend(of_range(*landmark, *range, rules).map(|kind| fault(size, None, kind)));
        }
        for (size, next) in &pairs {
            if let (Some(range), Some(other)) = (ranges.get(*size), ranges.get(*next)) {
                let kind = of_neighbours(chart, *range, *other);
                found.extend(kind.map(|kind| fault(*size, Some(*next), kind)));
            }
        }
        let jumps = jumps(&ranges, &pairs).into_iter();
        found.extend(jumps.map(|(size, next, kind)| fault(size, Some(next), kind)));
    }
    for (place, size) in chart.sizes.iter().enumerate() {
        for (landmark, relaxed) in &size.relaxed {
            let low = size.range_at(*landmark).and_then(|range| range.low);
            if low.is_some_and(|low| relaxed.girth.tenths() >= low) {
                let kind = FaultKind::RelaxedNotBelow;
                found.push(ChartFault { size: Some(place), next: None, landmark: Some(*landmark), kind });
            }
        }
    }
    found.extend(in_the_middle(chart, rules));
    found
}

fn of_range(landmark: Landmark, range: Range, rules: &Rules) -> Option<FaultKind> {
    let (low, high) = (range.low?, range.high?);
    let middle = crate::words::cm_of_tenths(i64::midpoint(low, high));
    let band = rules.plausible.iter().find(|band| band.landmark == landmark);
    if band.is_some_and(|band| !(band.low_cm..=band.high_cm).contains(&middle)) {
        return Some(FaultKind::Implausible);
    }
    let width = high - low;
    if is_wide(range) {
        Some(FaultKind::Wide(width))
    } else if is_narrow(landmark, middle, width, rules) {
        Some(FaultKind::Narrow(width))
    } else {
        None
    }
}

/// Whether a width, tenths of a millimetre, is less than one tape value tells at this girth; exact where the SD has four
/// decimals of a centimetre at most.
fn is_narrow(landmark: Landmark, middle_cm: f64, width: i64, rules: &Rules) -> bool {
    const MICROMETRES_A_TENTH: i64 = 100;
    let sd = rules.tape().of_mean(landmark.limb(), Some(landmark), middle_cm, 1);
    #[expect(clippy::cast_possible_truncation, reason = "a tape's error lies far below 2^63 micrometres")]
    let sd_micrometres = (sd * 1e4).round() as i64;
    100 * MICROMETRES_A_TENTH * width < NARROW_HUNDREDTHS * sd_micrometres
}

/// What a range and the next show: the order, a gap, an overlap.
fn of_neighbours(chart: &Chart, range: Range, next: Range) -> Option<FaultKind> {
    let low = |range: Range| range.low.unwrap_or(0);
    let high = |range: Range| range.high.unwrap_or(Girth::MOST_TENTHS);
    if low(next) < low(range) && high(next) < high(range) {
        return Some(FaultKind::OutOfOrder);
    }
    let between = low(next) - high(range);
    // In print, 16–17.9 and 18–19.9 leave no gap when girths are read to that step.
    let step = chart.printed_step.and_then(crate::quantity::Step::whole_tenths).unwrap_or(0);
    if between > step {
        return Some(FaultKind::Gap(between));
    }
    if between < 0 {
        let narrower = (high(range) - low(range)).min(high(next) - low(next));
        return Some(FaultKind::Overlap(-between, 2 * -between > narrower));
    }
    None
}

/// Each size with the next larger one. Sizes that share their most distal range (slim and wide ones) are of one
/// step: the first is held against the first of the next step, the second against the second.
fn neighbours(chart: &Chart) -> Vec<(usize, usize)> {
    let first = |place: usize| chart.sizes.get(place).and_then(|size| size.girths.first()).map(|one| one.1);
    let mut steps: Vec<Vec<usize>> = Vec::new();
    for place in 0..chart.sizes.len() {
        match steps.last_mut() {
            Some(step) if step.first().is_some_and(|one| first(*one) == first(place)) => step.push(place),
            _ => steps.push(vec![place]),
        }
    }
    let mut pairs = Vec::new();
    for pair in steps.windows(2) {
        let [step, next] = pair else { continue };
        for (rank, size) in step.iter().enumerate() {
            pairs.extend(next.get(rank.min(next.len() - 1)).map(|other| (*size, *other)));
        }
    }
    pairs
}

/// Steps from size to size that are unlike most.
fn jumps(ranges: &[Range], pairs: &[(usize, usize)]) -> Vec<(usize, usize, FaultKind)> {
    let middle = |place: usize| {
        let range = ranges.get(place)?;
        Some(i64::midpoint(range.low?, range.high?))
    };
    let steps: Vec<(usize, usize, i64)> = pairs
        .iter()
        .filter_map(|(size, next)| {
            let step = middle(*next)? - middle(*size)?;
            (step > 0).then_some((*size, *next, step))
        })
        .collect();
    if steps.len() < FEWEST_STEPS {
        return Vec::new();
    }
    let mut sorted: Vec<i64> = steps.iter().map(|(_, _, step)| *step).collect();
    sorted.sort_unstable();
    let usual = sorted.get(sorted.len() / 2).copied().unwrap_or_default();
    let off = |step: i64| {
        let apart = (step - usual).abs();
        apart > JUMP_TENTHS
            && crate::words::cm_of_tenths(apart) > JUMP_SHARE * crate::words::cm_of_tenths(usual)
    };
    let unusual = steps.into_iter().filter(|(_, _, step)| off(*step));
    unusual.map(|(size, next, step)| (size, next, FaultKind::StepJump { step, usual })).collect()
}

/// What a size would do on the limb in the middle of its ranges, at the usual places along the limb.
fn in_the_middle(chart: &Chart, rules: &Rules) -> Vec<ChartFault> {
    let prepared = Prepared::of(chart, rules);
    let mut found = Vec::new();
    for (place, size) in chart.sizes.iter().enumerate() {
        let Some(case) = middle_limb(size) else { continue };
        let Some(estimated) = prepared.estimate(place, &case) else { continue };
        if let Some(grade @ (Grade::Certain | Grade::Likely)) = estimated.grade() {
            let at = estimated.fall.as_ref().and_then(|fall| fall.fall.place);
            found.push(ChartFault {
                size: Some(place),
                next: None,
                landmark: at,
                kind: FaultKind::Reversed(grade),
            });
        }
        let reference = &estimated.reference;
        let band = chart.claim.as_ref().and_then(|claim| claim.scheme.class(&claim.class));
        if let (Some(mmhg), Some(band)) = (reference.mmhg, band)
            && !band.holds(mmhg)
        {
            let kind = FaultKind::OffClass(mmhg);
            found.push(ChartFault {
                size: Some(place),
                next: None,
                landmark: Some(reference.landmark),
                kind,
            });
        }
    }
    found
}

/// The limb in the middle of a size's ranges; none where it states no relaxed girth.
fn middle_limb(size: &Size) -> Option<Case> {
    if size.relaxed.is_empty() {
        return None;
    }
    let middles = size.girths.iter().filter_map(|(landmark, range)| {
        Some((*landmark, Girth::from_tenths(i64::midpoint(range.low?, range.high?))?))
    });
    Some(Case::of(&middles.collect::<Vec<_>>()))
}
