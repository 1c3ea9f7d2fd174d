//! Owns the findings about a chart's chosen size: fit, materials, hand part, prescription.

use super::words::{list, percent_words};
use super::{Finding, FindingId, FindingPlace};
use crate::rules::{Basis, Severity};

impl Finding {
    /// The garment contains an allergen.
    pub fn allergen(place: FindingPlace, materials: &[String], source: &str) -> Self {
        let sentence =
            format!("Allergy on record: {}. This garment contains it and is taken out.", list(materials));
        Self::new(FindingId::Allergen, Severity::Stop, place, Basis::Published, sentence)
            .source(source)
            .next("Choose a garment without it.")
    }

    /// The garment's materials are not stated and the client has an allergy.
    pub fn materials_unknown(place: FindingPlace, allergies: &[String], source: &str) -> Self {
        let sentence = format!(
            "Allergy on record: {}. The chart does not state this garment's materials.",
            list(allergies)
        );
        Self::new(FindingId::MaterialsUnknown, Severity::Review, place, Basis::Published, sentence)
            .source(source)
            .next("Find out the materials and add `contains: […]` to the chart.")
    }

    /// Swollen hand without a hand part.
    pub fn hand_part(place: FindingPlace, stated: bool) -> Self {
        let sentence = if stated {
            "The hand is swollen and this garment has no hand part; a sleeve alone can make the hand swell more."
        } else {
            "The hand is swollen and the chart does not say whether this garment has a hand part."
        };
        Self::new(FindingId::HandPart, Severity::Review, place, Basis::Published, sentence.to_owned())
            .source("Lymphoedema Framework 2006")
            .next(
                "Choose a garment with a hand part, or add a hand piece and check the overlap at the wrist.",
            )
    }

    /// Prescribed and offered differ.
    pub fn prescription_differs(
        place: FindingPlace,
        severity: Severity,
        prescribed: &str,
        offered: &str,
    ) -> Self {
        let sentence = format!("Prescribed: {prescribed}. Offered: {offered}.");
        Self::new(FindingId::PrescriptionDiffers, severity, place, Basis::HouseRule, sentence)
            .next("Ask the prescriber, or offer what was prescribed.")
    }

    /// Prescribed and offered style differ.
    pub fn style_differs(place: FindingPlace, prescribed: &str, offered: &str) -> Self {
        let sentence = format!("Prescribed style: {prescribed}. This chart is for: {offered}.");
        Self::new(FindingId::StyleDiffers, Severity::Care, place, Basis::HouseRule, sentence)
            .next("Make sure that the style is the one wanted.")
    }

    /// Inside, but only just.
    pub fn inside_unsure(place: FindingPlace, chance: f64, basis: Basis) -> Self {
        let sentence = format!(
            "Every girth lies in this size, but several close to an edge: by tape error alone all true girths lie in it with a chance of {}.",
            percent_words(chance)
        );
        Self::new(FindingId::InsideUnsure, Severity::Care, place, basis, sentence)
            .with("inside_probability", chance)
            .next("Measure the close marks once more.")
    }

    /// Marks ask for sizes far apart.
    pub fn sizes_apart(chart: &str, asked: &[String], basis: Basis) -> Self {
        let sentence = format!("The marks ask for sizes far apart: {}.", asked.join(", "));
        Self::new(FindingId::SizesApart, Severity::Care, FindingPlace::chart(chart), basis, sentence)
            .next("Check these girths; if they hold, made to measure may serve better.")
    }
}
