//! Owns how typed values become strings, in the last room.

use serde::{Serialize, Serializer};

use crate::anatomy::{Landmark, Limb, Side};
use crate::assessment::Outcome;
use crate::finding::Who;
use crate::gradient::{Grade, GradientBasis};
use crate::rules::{Basis, Severity, Urgency};

macro_rules! as_word {
    ($($type:ty, $word:ident;)+) => { $(
        impl Serialize for $type {
            fn serialize<S: Serializer>(&self, out: S) -> Result<S::Ok, S::Error> {
                out.serialize_str(self.$word())
            }
        }
    )+ };
}

as_word! {
    Landmark, name;
    Limb, name;
    Side, name;
    Outcome, word;
    Who, word;
    Grade, word;
    GradientBasis, word;
    Basis, word;
    Severity, word;
    Urgency, word;
}
