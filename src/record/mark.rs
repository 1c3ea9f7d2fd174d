//! Owns one measured mark.

use crate::anatomy::Landmark;
use crate::input::Spot;
use crate::quantity::{Girth, Position};

/// Standard deviation of one girth read with a tape, cm. Basis: derived (from the whole-arm minimal
/// detectable change 42.9 mL of Tánori-Tapia 2020, Healthcare 8:285, published).
pub const TAPE_SD_CM: f64 = 0.35;

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

    /// Standard deviation of the mean girth, cm: one reading's over √n.
    pub fn sd_cm(&self) -> f64 {
        TAPE_SD_CM / f64::from(u32::try_from(self.readings()).unwrap_or(1)).sqrt()
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
