//! Owns units, exact decimals, the reader of texts such as `31.5 cm`, girths, positions and the
//! dimension-checked tension and pressure types, with the constants that tie them together.
//!
//! Does not know files, anatomy or people.
//!
//! Source: unit definitions (derived); the conventional millimetre of mercury, 133.322387415 Pa.

mod decimal;
mod unit;
mod written;
mod range;
mod girth;
mod position;
mod step;
mod physics;
mod phi;
mod phi_table;

pub use decimal::{Decimal, NumberFault};
pub use girth::Girth;
pub use phi::phi;
pub use phi_table::phi_quick;
pub use physics::{
    PASCAL_PER_MMHG, Pressure, STANDARD_GRAVITY, Tension, mmhg, newton_per_metre, pressure_from_mmhg,
    tension_from_newton_per_metre,
};
pub use position::{Position, Span};
pub use range::{Range, RangeFault, range_ends, read_range};
pub use step::Step;
pub use unit::{Dimension, Unit, Units};
pub use written::{QuantityFault, Written, read_quantity};
