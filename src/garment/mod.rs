//! Owns garments: size charts, fabrics (tension against stretch), relaxed girths and flat widths,
//! layers, and pressure schemes with their classes and graduation limits.
//!
//! Knows no client.
//!
//! Source: pressure classes of the published standards, each value with its basis in
//! `garment-tables/schemes/`.

mod class_band;
mod scheme;
mod schemes;
mod fabric;
mod read_fabric;
mod size;
mod chart;
mod read_sizes;
mod read_table;
mod read_chart;

pub use chart::{BetweenSizes, Chart, Claim};
pub use class_band::{ClassBand, ClassPlace, GraduationLimit};
pub use fabric::{Fabric, Tensed};
pub use read_chart::{OpenChart, open_chart};
pub use read_fabric::open_fabric;
pub use scheme::Scheme;
pub use schemes::{SHIPPED_SCHEMES, Schemes};
pub use size::{Size, Variant};
