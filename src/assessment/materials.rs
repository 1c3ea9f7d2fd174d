//! Owns which findings the materials of a garment bring.

use super::LimbContext;
use crate::finding::{self, Finding, Place};
use crate::input::Text;
use crate::screening::{MaterialVerdict, against_materials, allergy_words};

/// What the allergies mean for a garment.
pub(super) fn of_materials(
    context: &LimbContext<'_>,
    materials: Option<&[Text]>,
    place: Place,
) -> Vec<Finding> {
    let rules = &context.setting.rules;
    let words = allergy_words(&context.record.allergies, rules);
    match against_materials(&words, materials, rules) {
        MaterialVerdict::Clear => Vec::new(),
        MaterialVerdict::Match { allergy, material } => {
            vec![finding::allergen::allergen(place, &material, &allergy)]
        }
        MaterialVerdict::Unknown { .. } => {
            let named = words.materials.iter().map(|(one, _)| one).chain(&words.unknown);
            let mut all: Vec<String> = named.map(|one| one.text.clone()).collect();
            all.dedup();
            vec![finding::materials_unknown::materials_unknown(place, &all)]
        }
    }
}
