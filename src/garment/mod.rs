//! Owns garments: size charts, fabrics (tension against stretch), relaxed girths and flat widths,
//! layers, wraps, what is worn together, bench tests of a fabric, and pressure schemes with their classes and graduation limits.
//!
//! Knows no client.
//!
//! Source: pressure classes of the published standards, each value with its basis in
//! `garment-tables/schemes/`.

mod class_band;
mod scheme;
mod schemes;
mod branch;
mod exponent;
mod relaxed;
mod bench;
mod fabric;
mod size;
mod chart;
mod read_claim;
mod read_cell;
mod read_bench;
mod read_fabric;
mod write_fabric;
mod read_sizes;
mod read_table;
mod turned;
mod read_chart;
mod made;
mod wrap;
mod outfit;
mod read_garment;
mod read_wrap;
mod write_garment;

pub use bench::{Bench, BenchKind, LEAST_SPREAD, Pooled, Pull, isotonic, pool};
pub use branch::Branch;
pub use chart::{BetweenSizes, Chart, Claim, MeasuredSize, printed_labels};
pub use class_band::{ClassBand, ClassPlace, GraduationLimit};
pub use exponent::{Exponent, ExponentDoubt, MOST_PULL_SD, StripPull};
pub use fabric::{Fabric, Tensed};
pub use made::{Garment, TopEdge};
pub use outfit::{MOST_FABRICS, MOST_PIECES, Outfit, Piece, Worn};
pub use read_chart::{OpenChart, open_chart};
pub use read_fabric::open_fabric;
pub use read_garment::{OpenOutfit, open_outfit};
pub use relaxed::Relaxed;
pub use scheme::Scheme;
pub use schemes::{SHIPPED_SCHEMES, Schemes};
pub use size::{Size, Variant};
pub use wrap::{WRAP_TENSION_SD, Wrap};
pub use write_fabric::fabric_file;
pub use write_garment::{garment_file, garment_to_measure};
