//! Owns the exponent of tension against stretch that a pull of a strip gives.

/// Tension grows as stretch to this power.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exponent {
    /// The exponent, above 0.
    pub value: f64,
    /// Its SD, where one was stated.
    pub sd: Option<f64>,
}

impl Exponent {
    /// From two pulls of one strip: stretch (fractions) and pulls in one unit, both rising; b = ln(F2/F1)/ln(e2/e1).
    /// None where they do not rise (derived).
    pub fn of_pulls(first: (f64, f64), second: (f64, f64)) -> Option<Self> {
        let ((e1, f1), (e2, f2)) = (first, second);
        (e1 > 0.0 && f1 > 0.0 && e2 > e1 && f2 > f1)
            .then(|| Self { value: (f2 / f1).ln() / (e2 / e1).ln(), sd: None })
    }

    /// The band in which it is taken to lie, evenly: ±`half` (the rules: 0.1), or ±√3 times a stated SD
    /// (derived: the even band of that SD); never at or below 0.
    pub fn band(self, half: f64) -> (f64, f64) {
        let half = self.sd.map_or(half, |sd| 3.0_f64.sqrt() * sd);
        ((self.value - half).max(0.01), self.value + half)
    }
}
