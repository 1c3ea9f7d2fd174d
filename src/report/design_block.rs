//! Owns sizes placed anew for a caseload, as the report holds them.

use serde::Serialize;

use super::Figure;
use super::cover_report::Share;
use crate::anatomy::Landmark;

/// Sizes of one shape placed so that they serve most of a caseload.
#[derive(Clone, Debug, Serialize)]
pub struct DesignBlock {
    /// The chart whose shape they have, as printed.
    pub like: String,
    /// Limbs with every girth that the shape asks for.
    pub judged: u64,
    /// How many of them the sizes are placed for: every one, or every second, fourth, …
    pub placed_for: u64,
    /// The sizes, small to large.
    pub sizes: Vec<DesignSize>,
    /// Of those placed for, limbs that they serve together.
    pub served: Share,
    /// No sizes of this shape, as many, serve more.
    pub bound: Share,
    /// Whether that is the best there can be.
    pub is_best: bool,
    /// The fabric and the class that the relaxed girths are for, as one says it; null without relaxed girths.
    pub relaxed_for: Option<String>,
    /// Why there are no relaxed girths; null where there are.
    pub no_relaxed: Option<String>,
}

/// One size.
#[derive(Clone, Debug, Serialize)]
pub struct DesignSize {
    /// Its ranges.
    pub girths: Vec<DesignRange>,
    /// Limbs that it alone of these sizes takes: what leaving it out costs.
    pub only: Share,
}

/// A range, and the relaxed girth that presses as the class asks on the limb in its middle.
#[derive(Clone, Debug, Serialize)]
pub struct DesignRange {
    /// The measure.
    pub landmark: Landmark,
    /// Low end.
    pub low_cm: Figure,
    /// High end.
    pub high_cm: Figure,
    /// Relaxed girth; null without one.
    pub relaxed_cm: Option<Figure>,
}
