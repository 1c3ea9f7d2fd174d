//! Owns what is recorded of a client that speaks against a garment in use itself: numbness on its limb, an allergy to
//! what it is made of.

use super::worn::{Given, printed};
use crate::finding::{self, Finding, Place};
use crate::input::Text;
use crate::record::{GarmentInUse, Record};
use crate::screening::{MaterialVerdict, Screened, against_materials, allergy_words};

/// What speaks against the `garments` in use on a limb.
pub(super) fn worn_harm(
    garments: &[GarmentInUse],
    screened: &Screened,
    record: &Record,
    given: &Given<'_>,
    place: Place,
) -> Vec<Finding> {
    let names: Vec<String> = garments.iter().map(printed).collect();
    let numb = screened.present("feeling-altered").is_some() && !names.is_empty();
    let feeling = numb.then(|| finding::worn_feeling::worn_feeling(place, &names));
    let rules = &given.setting.rules;
    let allergies = allergy_words(&record.allergies, rules);
    let allergens = garments.iter().filter_map(|garment| {
        let own = materials(&garment.label, given);
        own.into_iter().find_map(|list| match against_materials(&allergies, Some(list), rules) {
            MaterialVerdict::Match { allergy, material } => {
                Some(finding::worn_allergen::worn_allergen(place, &printed(garment), &material, &allergy))
            }
            MaterialVerdict::Clear | MaterialVerdict::Unknown { .. } => None,
        })
    });
    feeling.into_iter().chain(allergens).collect()
}

/// The materials of every chart, garment file or piece of one that bears the label.
fn materials<'g>(label: &Text, given: &Given<'g>) -> Vec<&'g [Text]> {
    let is_called = |other: &Text| other.as_str() == label.as_str();
    let charts = given.charts.iter().filter(|one| is_called(&one.label));
    let charts = charts.filter_map(|one| one.materials.as_deref());
    let outfits = given.outfits.iter();
    let pieces = outfits.flat_map(|one| {
        one.pieces.iter().filter(|worn| is_called(&one.label) || is_called(worn.piece.label()))
    });
    charts.chain(pieces.filter_map(|worn| worn.piece.materials())).collect()
}
