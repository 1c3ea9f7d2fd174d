//! Owns everything that girths say of one limb's volume at one visit.

use super::{CutOffs, Detectable, Excess, GirthPair, Graded, LimbVolume, Part, PartOfLimb, Segment, Setting};
use crate::record::VolumeMethod;
use crate::rules::Rules;

/// Why two limbs are not compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Uncompared {
    /// The other limb was not measured.
    NoOther,
    /// The marks of both limbs are not at the same landmarks, or serial positions.
    OtherMarks,
    /// A volume cannot be worked out: fewer than two marks, or discs at unequal spacing.
    NoVolume,
}

/// One limb's volume at one visit, with what is said of it.
#[derive(Clone, Debug)]
pub struct VisitVolume {
    /// How it was worked out.
    pub method: VolumeMethod,
    /// Spacing of the marks where it is the same throughout, cm.
    pub spacing_cm: Option<f64>,
    /// The measured limb; none where it cannot be worked out.
    pub measured: Option<LimbVolume>,
    /// The other limb; none where it is not compared.
    pub other: Option<LimbVolume>,
    /// Why it is not; none where both are there.
    pub uncompared: Option<Uncompared>,
    /// What the affected limb has more; none where both or neither are affected.
    pub excess: Option<Excess>,
    /// The excess by every named set of the rules that holds for the limb; empty without an excess.
    pub grades: Vec<Graded>,
    /// The excess between the two cut-offs of its limb.
    pub cut_offs: Option<CutOffs>,
    /// Below and above the joint, where a mark stands there with marks on both sides; else empty.
    pub parts: Vec<Part>,
    /// Each segment, distal to proximal.
    pub segments: Vec<Segment>,
    /// Each mark of the limb, distal to proximal.
    pub girths: Vec<GirthPair>,
    /// Each mark on hand or foot, a series of its own, left out of every volume.
    pub extremity: Vec<GirthPair>,
    /// What the volume of the measured limb can tell in each setting; empty without a volume.
    pub detectable: Vec<Detectable>,
    /// Whether every mark of the limb was read at least twice.
    pub repeated: bool,
}

impl VisitVolume {
    /// SD by the tape: of the excess, where there is one, else of the limb; mL.
    pub fn sd_ml(&self) -> Option<f64> {
        self.excess.map(|excess| excess.sd_ml).or_else(|| self.measured.map(LimbVolume::sd_ml))
    }

    /// What the volume can tell in a setting.
    pub fn detectable_in(&self, setting: Setting) -> Option<Detectable> {
        self.detectable.iter().copied().find(|one| one.setting == setting)
    }

    /// A part, where the limb is split.
    pub fn part(&self, part: PartOfLimb) -> Option<&Part> {
        self.parts.iter().find(|one| one.part == part)
    }

    /// The distal part, where the whole limb hides its excess: it reaches a higher grade of the
    /// consensus than the whole, and more than the tape's error. Basis: house rule.
    pub fn hidden_distal(&self, rules: &Rules) -> Option<&Part> {
        let set = rules.severity_sets.iter().find(|set| set.set == CONSENSUS)?;
        let rank = |percent: f64| set.grades.iter().position(|grade| grade.holds(percent));
        let whole = self.excess?;
        self.part(PartOfLimb::Distal).filter(|part| {
            part.excess.is_some_and(|excess| {
                rank(excess.percent) > rank(whole.percent)
                    && excess.percent > whole.percent
                    && excess.ml > super::TWO_SIDED * excess.sd_ml
            })
        })
    }
}

/// The set that a hidden part is graded by.
const CONSENSUS: &str = "isl";
