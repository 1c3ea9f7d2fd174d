//! Owns what was prescribed.

use crate::input::Named;
use crate::quantity::Pressure;

/// The prescription as recorded.
#[derive(Clone, Debug)]
pub struct Prescribed {
    /// The pressure asked for; none when only a style was written.
    pub wanted: Option<Wanted>,
    /// The style, as `sleeve`.
    pub style: Option<String>,
    /// Who prescribed.
    pub by: Option<String>,
}

/// A pressure asked for.
#[derive(Clone, Debug)]
pub enum Wanted {
    /// A class of a scheme.
    Class {
        /// The scheme's id, with its place for checks against the known schemes.
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
