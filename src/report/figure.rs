//! Owns one figure: its number for JSON, its text for people.

use serde::{Serialize, Serializer};

use crate::words;

/// A finite figure with its printed text (no unit: the heading or the sentence has it).
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
        let value = value + 0.0;
        value.is_finite().then(|| Self { value, text: words::decimal(value, decimals) })
    }

    /// A length in cm from whole tenths of a millimetre.
    pub fn cm(tenths: i64) -> Self {
        Self { value: words::cm_of_tenths(tenths), text: words::cm_short(tenths) }
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
        Some(Self { text: words::chance(value), ..Self::new(value, 2)? })
    }
}

impl Serialize for Figure {
    fn serialize<S: Serializer>(&self, out: S) -> Result<S::Ok, S::Error> {
        out.serialize_f64(self.value)
    }
}
