//! Owns the report of the `cover` command: what the sizes of charts serve of a caseload.

use serde::Serialize;

use super::{DesignBlock, Figure, Tool};
use crate::anatomy::Landmark;

/// The report of a caseload's coverage.
#[derive(Clone, Debug, Serialize)]
pub struct CoverReport {
    /// `tapeline.cover/1`.
    pub schema: &'static str,
    /// The program.
    pub tool: Tool,
    /// Limbs read.
    pub limbs: u64,
    /// Rows that could not be read.
    pub problems: u64,
    /// The first of those rows, and what is wrong with each.
    pub rows: Vec<CoverRow>,
    /// Limbs that a size of some chart serves; null with `design`.
    pub served: Option<Share>,
    /// Limbs that no chart serves and for which a girth is missing that a chart asks for; null with `design`.
    pub not_judged: Option<Share>,
    /// The charts; none with `design`.
    pub charts: Vec<CoverChart>,
    /// Sizes of all charts, each the one that serves most beyond those before it.
    pub stock: Vec<CoverStock>,
    /// Sizes placed anew; null where none were asked for.
    pub design: Option<DesignBlock>,
}

/// A count of limbs and its share of all.
#[derive(Clone, Debug, Serialize)]
pub struct Share {
    /// Limbs.
    pub limbs: u64,
    /// Of all, %.
    pub percent: Figure,
}

/// A row that could not be read.
#[derive(Clone, Debug, Serialize)]
pub struct CoverRow {
    /// Its number; the header is row 1.
    pub row: u64,
    /// What is wrong.
    pub problem: String,
}

/// What one chart serves.
#[derive(Clone, Debug, Serialize)]
pub struct CoverChart {
    /// Its label as printed.
    pub label: String,
    /// Its file.
    pub file: String,
    /// Limbs that it serves.
    pub served: Share,
    /// Those that no other chart serves.
    pub only: Share,
    /// Limbs for which a girth is missing that it asks for.
    pub not_judged: Share,
    /// Limbs whose girths a size takes and that it does not serve, since each that takes them certainly rises.
    pub rises: Share,
    /// Served by a size whose fall is judged and known to fall; null where it is not asked for or nothing can be estimated.
    pub falls: Option<Share>,
    /// Served by two sizes alike, so that a fitter decides.
    pub alike: Share,
    /// Its sizes.
    pub sizes: Vec<CoverSize>,
    /// Limbs that it misses, most first.
    pub missed: Vec<CoverMissed>,
}

/// What one size serves.
#[derive(Clone, Debug, Serialize)]
pub struct CoverSize {
    /// Its label.
    pub label: String,
    /// Limbs for which it is chosen.
    pub chosen: Share,
    /// Those with a fall known to fall.
    pub falls: Option<Share>,
    /// Limbs that no other size of any chart takes: what dropping it costs.
    pub only: Share,
}

/// How limbs are missed.
#[derive(Clone, Debug, Serialize)]
pub struct CoverMissed {
    /// The measure that misses most at the nearest size.
    pub landmark: Landmark,
    /// `tight` or `loose`.
    pub direction: &'static str,
    /// Limbs.
    pub share: Share,
}

/// A step of the stock.
#[derive(Clone, Debug, Serialize)]
pub struct CoverStock {
    /// The chart, by its place.
    pub chart: usize,
    /// The size, by its place in the chart.
    pub size: usize,
    /// Limbs that it adds.
    pub adds: Share,
    /// Limbs served with it and those before.
    pub so_far: Share,
}
