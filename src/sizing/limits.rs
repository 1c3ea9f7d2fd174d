//! Owns the two distances of sizing that a rules file may replace.

/// Distances, tenths of a millimetre.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Limits {
    /// A girth inside with a margin below this is close to an end.
    pub close: i64,
    /// The most that a girth may miss for a pick between two sizes, or to be measured again.
    pub miss: i64,
}

impl Limits {
    /// Of centimetres, as rules files state them.
    pub fn of_cm(close: f64, miss: f64) -> Self {
        let tenths = |cm: f64| {
            let tenths = (cm * 100.0).round().clamp(0.0, 20_000.0);
            #[expect(clippy::cast_possible_truncation, reason = "clamped to a limb's size just before")]
            let whole = tenths as i64;
            whole
        };
        Self { close: tenths(close), miss: tenths(miss) }
    }
}

impl Default for Limits {
    /// 0.5 cm and 0.5 cm (house rules: the published limits of a calf girth taken twice are ±0.5 cm, Jamaiyah
    /// 2008, Malays J Nutr 14:137).
    fn default() -> Self {
        Self { close: 50, miss: 50 }
    }
}
