//! Owns what makes a chart take limbs that it cannot know.

use crate::anatomy::Landmark;
use crate::garment::Chart;
use crate::quantity::Range;

/// A range wider than this share of its middle says little (house rule).
pub const WIDE_SHARE: f64 = 0.4;

/// Why a chart is weak.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Weakness {
    /// Its sizes state one girth.
    OneGirth(Landmark),
    /// A size's range is wider than 40 % of its middle.
    WideRange {
        /// The size, by its place.
        size: usize,
        /// The girth.
        landmark: Landmark,
    },
}

/// What makes a chart weak; the first wide range of each size only.
pub fn weaknesses(chart: &Chart) -> Vec<Weakness> {
    let one = match chart.measures().as_slice() {
        [only] => Some(Weakness::OneGirth(*only)),
        _ => None,
    };
    let wide = chart.sizes.iter().enumerate().filter_map(|(size, one)| {
        let (landmark, _) = one.girths.iter().find(|(_, range)| is_wide(*range))?;
        Some(Weakness::WideRange { size, landmark: *landmark })
    });
    one.into_iter().chain(wide).collect()
}

/// Whether a range with both ends is wider than 40 % of its middle; exact on whole tenths:
/// high − low > 0.4·(high + low)/2.
pub fn is_wide(range: Range) -> bool {
    match (range.low, range.high) {
        (Some(low), Some(high)) => 5 * (high - low) > high + low,
        _ => false,
    }
}
