//! Owns one figure: its number for JSON, its text for people.

use serde::{Serialize, Serializer};

/// A finite figure with its printed text.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// The number, unrounded.
    pub value: f64,
    /// As printed.
    pub text: String,
}

impl Figure {
    /// A figure printed with `decimals` places; none where it is not finite. −0 is 0.
    pub fn new(value: f64, decimals: usize) -> Option<Self> {
        if !value.is_finite() {
            return None;
        }
        let value = value + 0.0;
        Some(Self { value, text: printed(value, decimals) })
    }

    /// A length in cm, to the millimetre, from exact tenths of a millimetre; less than half a
    /// millimetre is printed with one place more rather than as 0.
    pub fn cm(value: f64) -> Option<Self> {
        let small = value.abs() > 0.0 && value.abs() < 0.05;
        Self::new(value, if small { 2 } else { 1 })
    }

    /// A pressure, whole mmHg.
    pub fn mmhg(value: f64) -> Option<Self> {
        Self::new(value, 0)
    }

    /// A volume, whole mL.
    pub fn ml(value: f64) -> Option<Self> {
        Self::new(value, 0)
    }

    /// Per cent, whole.
    pub fn percent(value: f64) -> Option<Self> {
        Self::new(value, 0)
    }

    /// A chance, printed in per cent with its ends named.
    pub fn chance(value: f64) -> Option<Self> {
        let mut figure = Self::new(value, 2)?;
        figure.text = crate::finding::percent_words(value);
        Some(figure)
    }
}

fn printed(value: f64, decimals: usize) -> String {
    // Ties away from zero at the printed place, as people round; the format alone rounds the binary value.
    let scale = 10_f64.powi(i32::try_from(decimals).unwrap_or_default());
    let rounded = (value * scale).round() / scale;
    let text = format!("{:.decimals$}", if rounded.abs() > 0.0 { rounded } else { 0.0 });
    text.replace('-', "\u{2212}")
}

impl Serialize for Figure {
    fn serialize<S: Serializer>(&self, out: S) -> Result<S::Ok, S::Error> {
        out.serialize_f64(self.value)
    }
}
