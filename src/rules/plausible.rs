//! Owns the adult bands and ratios that raise a question, and the usual limb.

use super::Basis;
use crate::anatomy::{Landmark, Limb};

/// A band of girths outside which the tool asks.
#[derive(Clone, Debug)]
pub struct PlausibleBand {
    /// Where.
    pub landmark: Landmark,
    /// Lowest girth that raises no question, cm.
    pub low_cm: f64,
    /// Highest girth that raises no question, cm.
    pub high_cm: f64,
    /// What it rests on.
    pub basis: Basis,
    /// Where it comes from.
    pub source: String,
}

/// A band of the ratio of two girths outside which the tool asks.
#[derive(Clone, Debug)]
pub struct PlausibleRatio {
    /// The girth above the line.
    pub of: Landmark,
    /// The girth below the line.
    pub to: Landmark,
    /// Lowest ratio that raises no question.
    pub low: f64,
    /// Highest ratio that raises no question.
    pub high: f64,
    /// What it rests on.
    pub basis: Basis,
    /// Where it comes from.
    pub source: String,
}

/// The usual limb: mean and covariance of the logarithms of its girths in cm.
#[derive(Clone, Debug)]
pub struct Nearness {
    /// Arm or leg.
    pub limb: Limb,
    /// The landmarks, in the order of `mean` and `cov`.
    pub landmarks: Vec<Landmark>,
    /// Means of ln(girth in cm).
    pub mean: Vec<f64>,
    /// Covariance of ln(girth in cm).
    pub cov: Vec<Vec<f64>>,
    /// What it rests on.
    pub basis: Basis,
    /// Where it comes from.
    pub source: String,
}
