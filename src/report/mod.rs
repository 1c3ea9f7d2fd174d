//! Owns the serialisable report: enums and indices, each figure as its number and its printed text.
//!
//! Computes nothing and joins nothing by label.

mod figure;
mod serial;
mod finding_row;
mod decision_block;
mod chart_block;
mod ranking_block;
mod pressure_block;
mod gradient_block;
mod volume_block;
mod course_block;
mod of_volume;
mod of_course;
mod volume_detail;
mod volume_report;
mod pattern_block;
mod cover_report;
mod design_block;
mod model;
mod build_decision;
mod build_finding;
mod build_record;
mod build_chart;
mod build_ranking;
mod build_estimate;
mod build_screening;
mod build;
mod build_pattern;
mod build_cover;
mod build_design;

pub use build::{LIMITS, build, build_with};
pub use build_pattern::build_pattern;
pub use chart_block::{ChartBlock, ClassBlock, MeasureBlock, OwnWidths, SizeBlock, WantedBlock};
pub use course_block::{ChangeBlock, CourseBlock, DriftBlock, DueBlock, ReadyBlock, VisitBlock, WornBlock};
pub use cover_report::{CoverChart, CoverMissed, CoverReport, CoverRow, CoverSize, CoverStock, Share};
pub use decision_block::{ActBlock, DecisionBlock, SubjectBlock};
pub use design_block::{DesignBlock, DesignRange, DesignSize};
pub use figure::Figure;
pub use finding_row::{DecidedBy, FindingRow};
pub use gradient_block::{
    BesideBlock, DecideBlock, ExponentBlock, GradientBlock, PairBlock, ResidualBlock, TurnBlock,
};
pub use model::{
    ArterialBlock, GroupBlock, LegBlock, LengthBlock, LimbBlock, MeasuredBlock, PresentBlock, QuestionBlock,
    RecordBlock, Report, RulesBlock, ScreeningBlock, Tool,
};
pub use pattern_block::{PatternBlock, PatternMark};
pub use pressure_block::{MarkBlock, PressureBlock, ProfileBlock, ReadBlock, ReferenceBlock, TopEdgeBlock};
pub use ranking_block::RankedBlock;
pub use volume_block::{DifferenceBlock, GradeBlock, PartBlock, VolumeBlock};
pub use volume_detail::{DetectableBlock, SegmentBlock, SetBlock, VolumeDetail, VolumeMark};
pub use volume_report::{VolumeLimb, VolumeRecord, VolumeReport};
