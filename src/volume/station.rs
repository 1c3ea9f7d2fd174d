//! Owns a girth at a place, as volume needs it.

/// A girth at a place along the limb.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Station {
    /// Position along the limb, cm, rising toward the trunk.
    pub at_cm: f64,
    /// Girth, cm, above 0.
    pub girth_cm: f64,
    /// Standard deviation of the girth by the tape, cm.
    pub sd_cm: f64,
}
