//! Owns a chart's place among the charts of its part as the report holds it.

use serde::Serialize;

use super::Figure;
use crate::anatomy::Landmark;

/// A chart among its alternatives.
#[derive(Clone, Debug, Serialize)]
pub struct RankedBlock {
    /// The chart, by its place within the limb.
    pub chart: usize,
    /// Which part of a set.
    pub part: usize,
    /// From 1, the best, within its part.
    pub rank: usize,
    /// The size that is shown, in words: picked, between two, or the nearest.
    pub shown: String,
    /// What stands against the chart, in words.
    pub result: String,
    /// The least margin of that size, negative outside; null = none is known.
    pub margin_cm: Option<Figure>,
    /// Its measure.
    pub margin_at: Option<Landmark>,
    /// `tight` or `loose`, where it is outside.
    pub direction: Option<&'static str>,
    /// The fall of that size, in words; null = none is known.
    pub fall: Option<&'static str>,
    /// Where the chart above serves alike: what decided between the two, and what else differs.
    pub tie: Option<String>,
}
