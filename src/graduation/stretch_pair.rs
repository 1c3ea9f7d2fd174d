//! Owns the comparison of two marks by their stretch alone.

use crate::pressure::stretch;
use crate::quantity::{Girth, phi};

/// A limb girth and a relaxed girth with their SDs, cm.
#[derive(Clone, Copy, Debug)]
pub(super) struct Worn {
    pub girth: Girth,
    pub relaxed: Girth,
    pub sd_girth: f64,
    pub sd_relaxed: f64,
}

impl Worn {
    fn slack(self) -> bool {
        self.girth <= self.relaxed
    }

    /// Variance of ln P = b ln e − ln C + constant: by girth b/(C − C0) − 1/C, by relaxed girth
    /// −bC/(C0(C − C0)).
    fn variance(self, b: f64) -> f64 {
        let (c, c0) = (self.girth.cm(), self.relaxed.cm());
        let by_girth = (b / (c - c0) - 1.0 / c) * self.sd_girth;
        let by_relaxed = b * c / (c0 * (c - c0)) * self.sd_relaxed;
        by_girth * by_girth + by_relaxed * by_relaxed
    }
}

/// Chance that the proximal pressure is the higher when T ∝ e^b:
/// ln(Pj/Pi) = b ln(ej/ei) + ln(Ci/Cj), tape and relaxed errors propagated (derived).
///
/// A mark without contact has no pressure: the other one is then certainly the higher.
pub(super) fn chance(distal: Worn, proximal: Worn, b: f64) -> f64 {
    match (distal.slack(), proximal.slack()) {
        (_, true) => 0.0,
        (true, false) => 1.0,
        (false, false) => {
            let log_ratio = b
                * (stretch(proximal.girth, proximal.relaxed) / stretch(distal.girth, distal.relaxed)).ln()
                + (distal.girth.cm() / proximal.girth.cm()).ln();
            let sd = (distal.variance(b) + proximal.variance(b)).sqrt();
            if sd > 0.0 { phi(log_ratio / sd) } else { f64::from(u8::from(log_ratio > 0.0)) }
        }
    }
}
