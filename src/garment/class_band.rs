//! Owns one pressure class and one graduation limit.

use crate::anatomy::Landmark;
use crate::rules::Basis;
use crate::words;

/// A pressure class: a band of pressure at the reference, mmHg.
#[derive(Clone, Debug)]
pub struct ClassBand {
    /// Its name within its scheme.
    pub class: String,
    /// Low end, mmHg; none = no lower limit.
    pub low: Option<f64>,
    /// High end, mmHg; none = no upper limit.
    pub high: Option<f64>,
    /// Whether the low end itself is outside.
    pub low_open: bool,
    /// Whether the high end itself is outside.
    pub high_open: bool,
    /// What it rests on.
    pub basis: Basis,
    /// Where it was read.
    pub source: String,
}

impl ClassBand {
    /// Whether a pressure, unrounded mmHg, lies in the class.
    pub fn holds(&self, mmhg: f64) -> bool {
        !self.is_below(mmhg) && !self.is_above(mmhg)
    }

    /// Whether a pressure lies below it.
    pub fn is_below(&self, mmhg: f64) -> bool {
        self.low.is_some_and(|low| mmhg < low || (self.low_open && mmhg <= low))
    }

    /// Whether a pressure lies above it.
    pub fn is_above(&self, mmhg: f64) -> bool {
        self.high.is_some_and(|high| mmhg > high || (self.high_open && mmhg >= high))
    }

    /// `23 to 32 mmHg`, `under 20 mmHg`, `over 36 mmHg`.
    pub fn spoken(&self) -> String {
        words::band(self.low, self.high, self.low_open, self.high_open)
    }
}

/// Where a pressure lies among the classes of a scheme.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ClassPlace {
    /// In a class.
    In(String),
    /// In the gap between two classes.
    Between(String, String),
    /// Below the lowest.
    Below(String),
    /// Above the highest.
    Above(String),
}

impl ClassPlace {
    /// `2`, `between 1 and 2`, `below 1`, `above 3`.
    pub fn name(&self) -> String {
        match self {
            Self::In(class) => class.clone(),
            Self::Between(low, high) => format!("between {low} and {high}"),
            Self::Below(class) => format!("below {class}"),
            Self::Above(class) => format!("above {class}"),
        }
    }
}

/// Finds the place of a pressure among `classes`, small to large. A value in two classes counts to
/// the claimed one, else to the higher.
pub(super) fn place_of(classes: &[ClassBand], mmhg: f64, claimed: Option<&str>) -> Option<ClassPlace> {
    let inside = || classes.iter().filter(|class| class.holds(mmhg));
    if let Some(class) =
        inside().find(|class| claimed == Some(class.class.as_str())).or_else(|| inside().next_back())
    {
        return Some(ClassPlace::In(class.class.clone()));
    }
    let below = classes.iter().rfind(|class| class.is_above(mmhg));
    let above = classes.iter().find(|class| class.is_below(mmhg));
    match (below, above) {
        (Some(low), Some(high)) => Some(ClassPlace::Between(low.class.clone(), high.class.clone())),
        (None, Some(high)) => Some(ClassPlace::Below(high.class.clone())),
        (Some(low), None) => Some(ClassPlace::Above(low.class.clone())),
        (None, None) => None,
    }
}

/// A limit of the pressure at a landmark as a share of the pressure at another.
#[derive(Clone, Debug)]
pub struct GraduationLimit {
    /// For which class.
    pub class: String,
    /// Where.
    pub landmark: Landmark,
    /// Of what.
    pub of: Landmark,
    /// Lowest share, per cent.
    pub low: Option<f64>,
    /// Highest share, per cent.
    pub high: Option<f64>,
    /// What it rests on.
    pub basis: Basis,
    /// Where it was read.
    pub source: String,
}
