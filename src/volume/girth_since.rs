//! Owns the change of one girth on hand or foot since the last visit that has it.
//!
//! Source: hand and foot are left out of limb volume (published: Lymphoedema Framework 2006), so their
//! girths are a series of their own.

use super::Place;
use crate::quantity::Girth;

/// A girth on hand or foot, then and now.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GirthSince {
    /// Where.
    pub place: Place,
    /// The earlier visit, by its place in the limb's visits.
    pub from: usize,
    /// Girth then.
    pub was: Girth,
    /// Girth now.
    pub now: Girth,
    /// What the tape alone may give, cm: 1.96·√(SD1² + SD2²).
    pub detectable_cm: f64,
}

impl GirthSince {
    /// The change, cm.
    pub fn change_cm(self) -> f64 {
        self.now.cm() - self.was.cm()
    }

    /// Whether it is more than measuring.
    pub fn beyond(self) -> bool {
        self.change_cm().abs() > self.detectable_cm
    }
}
