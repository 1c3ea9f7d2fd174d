//! Owns the highest pressure that may be worn.

use crate::garment::Schemes;
use crate::quantity::mmhg;
use crate::record::Cap;

/// A cap that holds for a limb.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CapHeld {
    /// The highest pressure, mmHg.
    pub mmhg: f64,
    /// Whether it was written with the arterial values; else in a clearing.
    pub with_values: bool,
}

/// A cap in mmHg: as written, or the upper end of its class; none where the class is not known or has
/// no upper end.
pub fn cap_mmhg(cap: &Cap, schemes: &Schemes) -> Option<f64> {
    match cap {
        Cap::Pressure(pressure) => Some(mmhg(*pressure)),
        Cap::Class { class, scheme } => schemes.find(&scheme.text)?.class(&class.text)?.high,
    }
}
