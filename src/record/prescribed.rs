//! Owns what was prescribed.

use crate::input::{Named, Spot, Text};
use crate::quantity::Pressure;

/// The prescription as recorded.
#[derive(Clone, Debug)]
pub struct Prescribed {
    /// The pressure asked for; none when only a style was written.
    pub wanted: Option<Wanted>,
    /// The style, as `sleeve`.
    pub style: Option<Text>,
    /// Who prescribed.
    pub by: Option<Text>,
    /// Place in the file.
    pub spot: Spot,
}

/// A pressure asked for.
#[derive(Clone, Debug)]
pub enum Wanted {
    /// A class of a scheme; both are held against the known schemes where they are needed.
    Class {
        /// The scheme's id, with its place.
        scheme: Named,
        /// The class in that scheme, with its place.
        class: Named,
    },
    /// A range of pressure.
    Range {
        /// Lowest.
        low: Pressure,
        /// Highest.
        high: Pressure,
    },
}
