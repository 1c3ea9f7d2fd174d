//! Owns what a size chart's own figures show before any client: gaps, overlaps, jumps, slips of the unit,
//! sizes that would rise on the limb they are made for; and the drawing of its ranges.
//!
//! Knows no client, and mends nothing: what contradicts itself is a problem of the file, not a fault here.
//!
//! Source: each kind of fault names its basis.

mod chart_fault;
mod chart_faults;
mod range_lines;
mod range_scene;

pub use chart_fault::{ChartFault, FaultKind};
pub use chart_faults::chart_faults;
pub use range_lines::range_lines;
pub use range_scene::range_scenes;
