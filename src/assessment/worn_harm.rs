//! Owns what is recorded of a client that speaks against a garment in use itself: a stop, readings under it, numbness on
//! its limb, an allergy to what it is made of.

use super::worn::{Given, outfit_of, printed};
use crate::estimate::{EstimateRules, OnLimb, estimate};
use crate::finding::{self, Finding, Place};
use crate::gradient::Grade;
use crate::input::Text;
use crate::quantity::mmhg;
use crate::record::{GarmentInUse, LimbRecord, Reading, Record};
use crate::rules::NumberId;
use crate::screening::{MaterialVerdict, Screened, against_materials, allergy_words};
use crate::words;

/// What speaks against the `garments` in use on a limb.
pub(super) fn worn_harm(
    garments: &[GarmentInUse],
    screened: &Screened,
    record: &Record,
    limb: &LimbRecord,
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
    let readings = garments.iter().filter_map(|garment| read_under(garment, limb, given, place));
    let stop =
        (screened.has_stop() && !names.is_empty()).then(|| finding::worn_stop::worn_stop(place, &names));
    stop.into_iter().chain(readings).chain(feeling).chain(allergens).collect()
}

/// Where a garment in use has to come off for what was read under it, that is told once.
pub(super) fn take_off_once(findings: Vec<Finding>) -> Vec<Finding> {
    let read = |limb: Option<usize>| {
        let is = |one: &Finding| one.id.is(&finding::worn_reading::ENTRY) && one.place.limb == limb;
        findings.iter().any(is)
    };
    let told: Vec<bool> = findings.iter().map(|one| read(one.place.limb)).collect();
    let both = findings.into_iter().zip(told);
    both.map(|(one, told)| if told { finding::pressure_high::told_to_take_off(one) } else { one }).collect()
}

/// What a sensor read under a garment in use, where that is too high or rises.
fn read_under(garment: &GarmentInUse, limb: &LimbRecord, given: &Given<'_>, place: Place) -> Option<Finding> {
    let name = printed(garment);
    let under = |one: &&Reading| one.garment.as_ref().is_some_and(|of| of.text == name);
    let own: Vec<&Reading> = limb.readings.iter().filter(under).collect();
    let limit = given.setting.number(NumberId::PressureLimit);
    let highest = own.iter().map(|one| (mmhg(one.pressure), one.landmark)).max_by(|a, b| a.0.total_cmp(&b.0));
    if let Some((read, landmark)) = highest.filter(|(read, _)| *read > limit) {
        let what = format!(
            "{} were read {}, which is more than any garment should press",
            words::mmhg(read),
            words::at(landmark)
        );
        return Some(finding::worn_reading::worn_reading(place.at(landmark), &name, &what));
    }
    let outfit = outfit_of(garment, given).ok().filter(|_| own.len() > 1)?;
    let on = OnLimb { limb: outfit.limb, marks: &limb.marks };
    let said = estimate(&on, &outfit, &own, &EstimateRules::of(&given.setting.rules)).readings?;
    let rises = matches!(said.fall.grade, Grade::Certain | Grade::Likely) && !said.rests_on_hollow;
    rises.then(|| {
        let what = "the readings rise toward the trunk: it acts like a tourniquet";
        finding::worn_reading::worn_reading(place, &name, what)
    })
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
