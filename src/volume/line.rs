//! Owns the straight line through the logarithms of volumes, errors known.
//!
//! Source: weighted least squares with known variances (derived); slope and its SD agree with any
//! reference library.

/// One-sided 95 % of a normal value. Basis: derived (Φ⁻¹(0.95)).
pub const ONE_SIDED: f64 = 1.644_853_626_951_472_2;

/// A volume on a day, for a line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Days since any day.
    pub day: f64,
    /// Volume, mL, above 0.
    pub ml: f64,
    /// SD, % of the volume.
    pub sd_percent: f64,
}

/// Loss of volume along a line through ln V.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// Loss, % a week; negative = gain.
    pub loss: f64,
    /// Its SD, % a week.
    pub sd: f64,
    /// Visits it rests on.
    pub visits: usize,
}

impl Line {
    /// The line through `points`; none where all lie on one day.
    pub fn through(points: &[Point]) -> Option<Self> {
        let weight = |one: &Point| 1.0 / (one.sd_percent * one.sd_percent);
        let total: f64 = points.iter().map(weight).sum();
        let mean = |of: &dyn Fn(&Point) -> f64| -> f64 {
            points.iter().map(|one| weight(one) * of(one)).sum::<f64>() / total
        };
        let (day, log) = (mean(&|one| one.day), mean(&|one| one.ml.ln()));
        let spread: f64 = points.iter().map(|one| weight(one) * (one.day - day) * (one.day - day)).sum();
        if !(spread > 0.0 && spread.is_finite()) {
            return None;
        }
        let along: f64 = points.iter().map(|one| weight(one) * (one.day - day) * (one.ml.ln() - log)).sum();
        // The SD in % of the volume is the SD of ln V in hundredths.
        Some(Self { loss: -700.0 * along / spread, sd: 7.0 / spread.sqrt(), visits: points.len() })
    }

    /// Lower bound of the loss, one-sided 95 %, % a week.
    pub fn low(self) -> f64 {
        self.loss - ONE_SIDED * self.sd
    }

    /// Upper bound of the loss, one-sided 95 %, % a week.
    pub fn high(self) -> f64 {
        self.loss + ONE_SIDED * self.sd
    }

    /// Upper bound of loss or gain, whichever it is, % a week.
    pub fn most(self) -> f64 {
        self.loss.abs() + ONE_SIDED * self.sd
    }
}
