//! Owns the columns that a batch may write.

use crate::anatomy::Landmark;

/// A name that `--columns` takes, and what it stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// The limb's code, or its row's number.
    Id,
    /// The chart's label as printed.
    Chart,
    /// What is said of the chart.
    Verdict,
    /// The size picked.
    Size,
    /// The length variant.
    Variant,
    /// The nearest size where none takes the limb.
    Nearest,
    /// The two sizes that it lies between.
    Between,
    /// The least margin, cm.
    Margin,
    /// The measure of that margin.
    Measure,
    /// Chance that every true girth lies in the ranges.
    InsideChance,
    /// Chance that a second measurement picks the same size.
    SameAgain,
    /// The other size that a second measurement would pick most often.
    RunnerUp,
    /// Pressure at a landmark, mmHg.
    Pressure(Landmark),
    /// Its SD, mmHg.
    Sd(Landmark),
    /// The least it can be beyond the curve, mmHg.
    Bound(Landmark),
    /// Grade of a rise toward the trunk.
    Grade,
    /// Chance of it.
    RiseChance,
    /// The mark to look at.
    RiseAt,
    /// Whether the fall is judged.
    Judged,
    /// Ids of findings.
    Findings,
    /// What is wrong with the row.
    Problem,
}

/// The names that `--columns` takes, in the order of the output; `pressures` and `bounds` stand for one column
/// for each landmark.
pub const FIELD_NAMES: [&str; 20] = [
    "id",
    "chart",
    "verdict",
    "size",
    "variant",
    "nearest",
    "between",
    "margin_cm",
    "measure",
    "inside_chance",
    "same_again_chance",
    "runner_up",
    "pressures",
    "bounds",
    "grade",
    "rise_chance",
    "rise_at",
    "judged",
    "findings",
    "problem",
];

impl Field {
    /// The fields of one name; none for a name that is not known.
    pub(super) fn named(name: &str, marks: &[Landmark]) -> Option<Vec<Self>> {
        Some(match name {
            "id" => vec![Self::Id],
            "chart" => vec![Self::Chart],
            "verdict" => vec![Self::Verdict],
            "size" => vec![Self::Size],
            "variant" => vec![Self::Variant],
            "nearest" => vec![Self::Nearest],
            "between" => vec![Self::Between],
            "margin_cm" => vec![Self::Margin],
            "measure" => vec![Self::Measure],
            "inside_chance" => vec![Self::InsideChance],
            "same_again_chance" => vec![Self::SameAgain],
            "runner_up" => vec![Self::RunnerUp],
            "pressures" => marks.iter().flat_map(|mark| [Self::Pressure(*mark), Self::Sd(*mark)]).collect(),
            "bounds" => marks.iter().map(|mark| Self::Bound(*mark)).collect(),
            "grade" => vec![Self::Grade],
            "rise_chance" => vec![Self::RiseChance],
            "rise_at" => vec![Self::RiseAt],
            "judged" => vec![Self::Judged],
            "findings" => vec![Self::Findings],
            "problem" => vec![Self::Problem],
            _ => return None,
        })
    }

    /// The column's heading.
    pub fn heading(self) -> String {
        match self {
            Self::Id => "id".to_owned(),
            Self::Chart => "chart".to_owned(),
            Self::Verdict => "verdict".to_owned(),
            Self::Size => "size".to_owned(),
            Self::Variant => "variant".to_owned(),
            Self::Nearest => "nearest".to_owned(),
            Self::Between => "between".to_owned(),
            Self::Margin => "margin_cm".to_owned(),
            Self::Measure => "measure".to_owned(),
            Self::InsideChance => "inside_chance".to_owned(),
            Self::SameAgain => "same_again_chance".to_owned(),
            Self::RunnerUp => "runner_up".to_owned(),
            Self::Pressure(mark) => format!("{}_mmhg", mark.name()),
            Self::Sd(mark) => format!("{}_sd_mmhg", mark.name()),
            Self::Bound(mark) => format!("{}_bound_mmhg", mark.name()),
            Self::Grade => "grade".to_owned(),
            Self::RiseChance => "rise_chance".to_owned(),
            Self::RiseAt => "rise_at".to_owned(),
            Self::Judged => "judged".to_owned(),
            Self::Findings => "findings".to_owned(),
            Self::Problem => "problem".to_owned(),
        }
    }

    /// Whether it asks for the whole fall.
    pub(super) fn needs_fall(self) -> bool {
        matches!(self, Self::Grade | Self::RiseChance | Self::RiseAt | Self::Judged | Self::Findings)
    }

    /// Whether it asks for a second measurement.
    pub(super) fn needs_again(self) -> bool {
        matches!(self, Self::SameAgain | Self::RunnerUp | Self::Findings)
    }
}
