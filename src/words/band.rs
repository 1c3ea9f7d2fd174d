//! Owns how a band of pressure is said.

use super::trimmed;

/// Decimals that a band may carry: `20.5`; a band stated in kPa needs no more to be told from its neighbour.
const DECIMALS: usize = 1;

/// `23 to 32 mmHg`, `under 20 mmHg`, `over 36 mmHg`, `49 mmHg or more`.
pub fn band(low: Option<f64>, high: Option<f64>, low_open: bool, high_open: bool) -> String {
    let say = |value| trimmed(value, DECIMALS);
    match (low, high) {
        (Some(low), Some(high)) if low_open => format!("over {} to {} mmHg", say(low), say(high)),
        (Some(low), Some(high)) if high_open => format!("{} to under {} mmHg", say(low), say(high)),
        (Some(low), Some(high)) => format!("{} to {} mmHg", say(low), say(high)),
        (Some(low), None) if low_open => format!("over {} mmHg", say(low)),
        (Some(low), None) => format!("{} mmHg or more", say(low)),
        (None, Some(high)) if high_open => format!("under {} mmHg", say(high)),
        (None, Some(high)) => format!("up to {} mmHg", say(high)),
        (None, None) => "any pressure".to_owned(),
    }
}

/// `23–32`: both ends, for a table whose heading has the unit.
pub fn band_figures(low: f64, high: f64) -> String {
    format!("{}\u{2013}{}", trimmed(low, DECIMALS), trimmed(high, DECIMALS))
}
