//! Owns the terminal form of one garment: asked about, or worked out; and of a fabric.

mod plot;
mod gradient;
mod pattern;
mod fabric;

pub use fabric::fabric_text;
pub use gradient::gradient_text;
pub use pattern::pattern_text;
