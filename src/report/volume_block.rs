//! Owns the volume part of the report.

use serde::Serialize;

use super::Figure;
use crate::record::VolumeMethod;
use crate::volume::Comparison;

/// Both limbs' volumes.
#[derive(Clone, Debug, Serialize)]
pub struct Volume {
    /// `frustum` or `disc`.
    pub method: &'static str,
    /// Spacing of the marks; null = unequal.
    pub spacing_cm: Option<Figure>,
    /// The measured limb.
    pub measured_ml: Option<Figure>,
    /// The other limb.
    pub other_ml: Option<Figure>,
    /// Affected minus other limb.
    pub excess_ml: Option<Figure>,
    /// In % of the limb that is not affected.
    pub excess_percent: Option<Figure>,
    /// SD of the excess by tape error.
    pub sd_ml: Option<Figure>,
    /// Severity sets.
    pub severity: Vec<SeverityGrade>,
    /// Distal and proximal parts.
    pub parts: Vec<Part>,
}

/// A grade in one set.
#[derive(Clone, Debug, Serialize)]
pub struct SeverityGrade {
    /// The set.
    pub set: String,
    /// The grade.
    pub grade: String,
}

/// A part of the limb.
#[derive(Clone, Debug, Serialize)]
pub struct Part {
    /// `distal` or `proximal`.
    pub part: &'static str,
    /// The measured limb's part.
    pub measured_ml: Option<Figure>,
    /// The other limb's part.
    pub other_ml: Option<Figure>,
    /// Excess of the part.
    pub excess_ml: Option<Figure>,
    /// Excess in %.
    pub excess_percent: Option<Figure>,
}

pub(super) fn volume(found: &Comparison) -> Volume {
    Volume {
        method: match found.method {
            VolumeMethod::Frustum => "frustum",
            VolumeMethod::Disc => "disc",
        },
        spacing_cm: found.spacing_cm.and_then(Figure::cm),
        measured_ml: found.measured_ml.and_then(Figure::ml),
        other_ml: found.other_ml.and_then(Figure::ml),
        excess_ml: found.excess_ml.and_then(Figure::ml),
        excess_percent: found.excess_percent.and_then(|one| Figure::new(one, 1)),
        sd_ml: found.sd_ml.and_then(Figure::ml),
        severity: found
            .severity
            .iter()
            .map(|(set, grade)| SeverityGrade { set: set.clone(), grade: grade.clone() })
            .collect(),
        parts: found
            .parts
            .iter()
            .map(|part| Part {
                part: part.part,
                measured_ml: Figure::ml(part.measured_ml),
                other_ml: Figure::ml(part.other_ml),
                excess_ml: part.excess_ml.and_then(Figure::ml),
                excess_percent: part.excess_percent.and_then(|one| Figure::new(one, 1)),
            })
            .collect(),
    }
}
