//! Owns the volumes of a limb as the report holds them.

use serde::Serialize;

use super::Figure;

/// The volumes of a limb.
#[derive(Clone, Debug, Serialize)]
pub struct VolumeBlock {
    /// `frustum` or `disc`.
    pub method: &'static str,
    /// The spacing of the marks where it is even.
    pub spacing_cm: Option<Figure>,
    /// This limb.
    pub measured_ml: Option<Figure>,
    /// The other limb.
    pub other_ml: Option<Figure>,
    /// Affected minus other.
    pub excess_ml: Option<Figure>,
    /// In % of the other.
    pub excess_percent: Option<Figure>,
    /// SD of the excess, else of the limb.
    pub sd_ml: Option<Figure>,
    /// What the grade sets say.
    pub grades: Vec<GradeBlock>,
    /// Parts below and above the joint.
    pub parts: Vec<PartBlock>,
    /// Girth differences, affected minus other.
    pub differences: Vec<DifferenceBlock>,
    /// Why both limbs are not compared.
    pub not_compared: Option<String>,
    /// Whether what both limbs give together is told under this one; of two it is told once.
    #[serde(skip)]
    pub tells_pair: bool,
    /// In plain words: `ISL: minimal; CTCAE v3: grade 2; 200 mL: met`.
    pub words: String,
}

/// A grade.
#[derive(Clone, Debug, Serialize)]
pub struct GradeBlock {
    /// The set.
    pub set: String,
    /// Its grade.
    pub grade: String,
}

/// A part of the limb.
#[derive(Clone, Debug, Serialize)]
pub struct PartBlock {
    /// Its name: `forearm part`.
    pub part: String,
    /// This limb.
    pub measured_ml: Option<Figure>,
    /// The other limb.
    pub other_ml: Option<Figure>,
    /// Affected minus other, % of the other.
    pub excess_percent: Option<Figure>,
}

/// A girth difference.
#[derive(Clone, Debug, Serialize)]
pub struct DifferenceBlock {
    /// The mark as printed.
    pub mark: String,
    /// Affected minus other.
    pub difference_cm: Figure,
}
