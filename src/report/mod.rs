//! Owns the plain, rounded, serialisable report: every figure as a number (JSON) and as the printed
//! text (terminal, sheets).
//!
//! Computes nothing; a renderer prints the texts as they are.
//!
//! Source: names of `tapeline.report/1`.

mod figure;
mod model;
mod record_block;
mod chart_block;
mod pressure_block;
mod volume_block;
mod summary;
mod garment_block;
mod garment_summary;
mod pattern_block;
mod fabric_block;
mod template;
mod build;

pub use build::{Inputs, build, build_gradient};
pub use chart_block::{Chart, LengthRow, Measure, Offered, Size, WantedSizes};
pub use fabric_block::{BenchPoint, FabricPoint, FabricReport, fabric_report};
pub use figure::Figure;
pub use garment_block::{
    AgainstBlock, AgainstMark, EdgeRow, GarmentBlock, OverlapRow, PartRow, PieceRow, ProfileRow, ReadingRow,
    SectionRow, SwellingRow, UndecidedRow,
};
pub use model::{Finding, Report, Screening, Tool};
pub use pattern_block::{PatternBlock, PatternRow, build_pattern};
pub use pressure_block::{Graduation, Mark, Pair, Pressure, Ratio, Reference, TopEdge};
pub use record_block::{Length, Prescribed, Record, RecordMark};
pub use summary::{LIMITS, SENSOR, Summary};
pub use volume_block::{Part, SeverityGrade, Volume};
