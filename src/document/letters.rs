//! Owns how a drawing stands where there are letters alone.

use super::Bars;

/// A drawing in letters.
#[derive(Clone, Debug, PartialEq)]
pub enum Letters {
    /// Bars on a scale.
    Bars(Bars),
    /// Lines as they are, each at most 70 columns wide, in plain ASCII.
    Sketch(Vec<String>),
}
