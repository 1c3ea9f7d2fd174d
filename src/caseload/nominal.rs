//! Owns where marks stand along a limb when a table does not say.

use crate::anatomy::Landmark;
use crate::quantity::Position;

use Landmark::{
    Ankle, Axilla, BelowKnee, Calf, Elbow, Forearm, Forefoot, Hand, Instep, Knee, LowerCalf, LowerForearm,
    MidThigh, ThumbWeb, UpperArm, UpperThigh, Wrist,
};

/// The usual place of a landmark from the reference, cm, for tables without positions: only the trend of the
/// fall and what is usual in it depend on it (house rule: an adult's limb of middle length).
pub fn nominal_cm(landmark: Landmark) -> i16 {
    match landmark {
        Hand => -8,
        ThumbWeb => -5,
        Wrist | Ankle => 0,
        LowerForearm => 7,
        Forearm => 14,
        Elbow => 24,
        UpperArm => 31,
        Axilla => 41,
        Forefoot => -16,
        Instep => -6,
        LowerCalf => 9,
        Calf => 20,
        BelowKnee => 29,
        Knee => 34,
        MidThigh => 50,
        UpperThigh => 65,
    }
}

/// The same as a position.
pub fn nominal(landmark: Landmark) -> Option<Position> {
    Position::from_tenths(i64::from(nominal_cm(landmark)) * 100)
}
