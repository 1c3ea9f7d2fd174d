//! Owns the exponent of tension against stretch that a pull of a strip gives, and how far it is known.

/// SD of one length read off a ruler, cm (house rule: to a millimetre).
const LENGTH_SD_CM: f64 = 0.1;

/// SD of a pulled exponent above which the pull is asked about. House rule: twice what two weights give of which the
/// lighter is two fifths of the heavier, on 20 cm.
pub const MOST_PULL_SD: f64 = 0.1;

/// Tension grows as stretch to this power.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exponent {
    /// The exponent, above 0.
    pub value: f64,
    /// Its SD, where one was stated.
    pub sd: Option<f64>,
    /// Its SD by the lengths read, where two pulls gave it.
    pub pull_sd: Option<f64>,
}

/// What is to be asked about an exponent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ExponentDoubt {
    /// It lies outside what knits are known to have.
    Odd,
    /// The two weights stretched the strip so much alike that it is hardly known.
    Unsure,
}

/// One weight on a strip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StripPull {
    /// Its force, in one unit with the other.
    pub force: f64,
    /// The length under it, the mean of the repeats, cm.
    pub length_cm: f64,
    /// How many lengths that is the mean of.
    pub repeats: u32,
}

impl Exponent {
    /// As a file states it.
    pub fn stated(value: f64, sd: Option<f64>) -> Self {
        Self { value, sd, pull_sd: None }
    }

    /// From two pulls of one strip, both rising: b = ln(F2/F1)/ln(e2/e1), e = L/L0 − 1. None where they do not rise.
    ///
    /// Its SD is that of three lengths read (derived): b/ln(e2/e1) times the root of the squares of 1/(L2 − L0),
    /// 1/(L1 − L0) and, common to both, (L2/L0)/(L2 − L0) − (L1/L0)/(L1 − L0), each times the SD of a length.
    pub fn of_pulls(relaxed_cm: f64, light: StripPull, heavy: StripPull) -> Option<Self> {
        let over = |pull: StripPull| pull.length_cm - relaxed_cm;
        let (near, far) = (over(light), over(heavy));
        if !(near > 0.0 && light.force > 0.0 && far > near && heavy.force > light.force) {
            return None;
        }
        let spread = (far / near).ln();
        let value = (heavy.force / light.force).ln() / spread;
        let of_mean = |pull: StripPull| LENGTH_SD_CM / f64::from(pull.repeats.max(1)).sqrt() / over(pull);
        let common = LENGTH_SD_CM * (heavy.length_cm / far - light.length_cm / near) / relaxed_cm;
        let logarithm = of_mean(heavy).hypot(of_mean(light)).hypot(common);
        Some(Self { value, sd: None, pull_sd: Some(value / spread * logarithm) })
    }

    /// Its SD as printed: the stated one, else that of the pull.
    pub fn known_sd(self) -> Option<f64> {
        self.sd.or(self.pull_sd)
    }

    /// What is to be asked about it; `low` and `high` are the exponents of untested knits.
    pub fn doubt(self, (low, high): (f64, f64)) -> Option<ExponentDoubt> {
        if !(low..=high).contains(&self.value) {
            Some(ExponentDoubt::Odd)
        } else if self.pull_sd.is_some_and(|sd| sd > MOST_PULL_SD) {
            Some(ExponentDoubt::Unsure)
        } else {
            None
        }
    }

    /// The band in which it is taken to lie, evenly: ±`half` (the rules: 0.1), or ±√3 times a stated SD
    /// (derived: the even band of that SD); never at or below 0. A pull in doubt by its lengths is taken as wide as
    /// they leave it, within the band of untested knits; an exponent outside that band is judged with all of it as
    /// well (house rules: what is in doubt is never milder than no pull).
    pub fn band(self, half: f64, (low, high): (f64, f64)) -> (f64, f64) {
        let root = 3.0_f64.sqrt();
        let half = self.sd.map_or(half, |sd| root * sd);
        let (mut from, mut upto) = ((self.value - half).max(0.01), self.value + half);
        if let Some(sd) = self.pull_sd.filter(|sd| *sd > MOST_PULL_SD) {
            from = from.min((self.value - root * sd).max(low));
            upto = upto.max((self.value + root * sd).min(high));
        }
        if self.doubt((low, high)) == Some(ExponentDoubt::Odd) {
            (from, upto) = (from.min(low), upto.max(high));
        }
        (from, upto)
    }
}
