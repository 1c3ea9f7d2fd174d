//! Owns one measured mark.

use crate::anatomy::{Landmark, Limb};
use crate::input::Spot;
use crate::quantity::{Girth, Position};
use crate::rules::TapeSd;

/// A girth at a place along the limb.
#[derive(Clone, Debug)]
pub struct Mark {
    /// The landmark; none for a serial mark.
    pub landmark: Option<Landmark>,
    /// Where along the limb.
    pub at: Position,
    /// First reading.
    pub first: Girth,
    /// Further readings of the same mark.
    pub again: Vec<Girth>,
    /// Two calipers across the section, widest and deepest.
    pub calipers: Option<(Girth, Girth)>,
    /// Place in the file.
    pub spot: Spot,
}

impl Mark {
    /// The mean of the readings, to 0.1 mm.
    pub fn girth(&self) -> Girth {
        Girth::mean(self.first, &self.again)
    }

    /// How often it was read.
    pub fn readings(&self) -> usize {
        1 + self.again.len()
    }

    /// Standard deviation of the mean girth by the tape, cm; `limb` is whose mark it is.
    pub fn sd_cm(&self, limb: Limb, tape: &TapeSd) -> f64 {
        tape.of_mean(limb, self.landmark, self.girth().cm(), self.readings())
    }

    /// Whether its repeats lie further apart than `most_cm`.
    pub fn is_gap_above(&self, most_cm: f64) -> bool {
        self.gap_tenths() > tenths_of(most_cm)
    }

    /// Largest gap between two readings, tenths of a millimetre.
    pub fn gap_tenths(&self) -> i64 {
        let all = || std::iter::once(self.first).chain(self.again.iter().copied()).map(Girth::tenths);
        all().max().unwrap_or_default() - all().min().unwrap_or_default()
    }
}

/// A number of the rules in cm, as tenths of a millimetre.
pub(super) fn tenths_of(cm: f64) -> i64 {
    // The rules hold lengths below 2 m.
    #[expect(clippy::cast_possible_truncation, reason = "far below 2^53")]
    let tenths = (cm * 100.0).round() as i64;
    tenths
}
