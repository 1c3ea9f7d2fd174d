//! Owns how a landmark is said.

use crate::anatomy::Landmark;

/// `upper arm`, `below knee`.
pub fn noun(landmark: Landmark) -> String {
    landmark.name().replace('-', " ")
}

/// `wrist (C)`, for tables.
pub fn label(landmark: Landmark) -> String {
    format!("{} ({})", noun(landmark), landmark.letter())
}

/// `at the wrist`, `below the knee`.
pub fn at(landmark: Landmark) -> String {
    match landmark {
        Landmark::BelowKnee => "below the knee".to_owned(),
        other => format!("at the {}", noun(other)),
    }
}

/// `the wrist`, `the mark below the knee`.
pub fn the(landmark: Landmark) -> String {
    match landmark {
        Landmark::BelowKnee => "the mark below the knee".to_owned(),
        other => format!("the {}", noun(other)),
    }
}

/// `the calf, against the ankle`.
pub fn against(place: Landmark, other: Landmark) -> String {
    format!("{}, against {}", the(place), the(other))
}
