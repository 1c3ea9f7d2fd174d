//! Owns the excess of the affected limb, or of a part of it.
//!
//! Source: Va − Vu; 100·(Va − Vu)/Vu % (published: Cochrane CD003475).

use super::LimbVolume;
use crate::anatomy::Side;
use crate::record::Affected;

/// What the affected limb has more than the other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Excess {
    /// Affected minus other, mL.
    pub ml: f64,
    /// The same, % of the other.
    pub percent: f64,
    /// SD by the tape at both limbs, mL.
    pub sd_ml: f64,
}

impl Excess {
    /// Of the limb of `side` against the other; none where both or neither are affected, for then an
    /// excess has no meaning.
    pub(super) fn of(
        affected: Affected,
        side: Side,
        measured: LimbVolume,
        other: LimbVolume,
    ) -> Option<Self> {
        let sign = sign(affected, side)?;
        let base = if sign > 0.0 { other.ml } else { measured.ml };
        let ml = sign * (measured.ml - other.ml);
        let sd_ml = (measured.variance + other.variance).sqrt();
        (base > 0.0).then(|| Self { ml, percent: 100.0 * ml / base, sd_ml })
    }
}

/// +1 where the limb of `side` is the affected one, −1 where the other is; none for both or neither.
pub(super) fn sign(affected: Affected, side: Side) -> Option<f64> {
    match affected {
        Affected::One(one) if one == side => Some(1.0),
        Affected::One(_) => Some(-1.0),
        Affected::Both | Affected::Neither => None,
    }
}
