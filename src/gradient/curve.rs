//! Owns what the room needs to know of a knit.

/// A tension curve of one layer.
pub trait TensionCurve {
    /// Tension, N/m, and its slope against stretch, at a stretch of at least 0; none beyond the last
    /// tested point.
    fn tension(&self, stretch: f64) -> Option<(f64, f64)>;

    /// Tension at the last tested point, N/m.
    fn last_tension(&self) -> f64;
}

/// A knit by its number in [`super::FallSetting::knits`].
#[derive(Clone, Copy)]
pub struct Knit<'a> {
    /// Its curve; none where only its stretch is known.
    pub curve: Option<&'a dyn TensionCurve>,
    /// Relative SD of its tension, a fraction, common to all marks.
    pub tension_sd: f64,
}

impl std::fmt::Debug for Knit<'_> {
    fn fmt(&self, to: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        to.debug_struct("Knit")
            .field("curve", &self.curve.is_some())
            .field("tension_sd", &self.tension_sd)
            .finish()
    }
}
