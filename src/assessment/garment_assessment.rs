//! Owns what is worked out for a garment file, or for one size or the readings that were asked about.

use super::size_findings::{Garments, of_estimate};
use super::{LimbContext, materials};
use crate::estimate::{
    EstimateRules, Estimated, OnLimb, ProfilePoint, Swelling, estimate, profile, swelling, turning,
    what_decides,
};
use crate::finding::{Finding, Place};
use crate::garment::Outfit;
use crate::gradient::{Decide, Turn};
use crate::record::Reading;

/// One garment on one limb, in depth.
#[derive(Clone, Debug)]
pub struct GarmentAssessment {
    /// The limb, by its place.
    pub limb: usize,
    /// The chart and size it is, by their places, where it is one.
    pub of_chart: Option<(usize, usize)>,
    /// Its label as printed.
    pub printed: String,
    /// What is worn.
    pub outfit: Outfit,
    /// Its estimate.
    pub estimated: Estimated,
    /// What would decide its fall.
    pub decide: Vec<Decide>,
    /// At which exponents its grade would turn.
    pub turns: Vec<Turn>,
    /// The pressure between the marks, drawn and not judged.
    pub profile: Vec<ProfilePoint>,
    /// What 1 cm of limb more or less would do.
    pub swelling: Vec<Swelling>,
}

/// Looks at a garment file on a limb: what is worked out, and what was found.
pub fn assess_garment(
    context: &LimbContext<'_>,
    outfit: &Outfit,
    only: bool,
) -> (GarmentAssessment, Vec<Finding>) {
    let on = OnLimb { limb: context.record.limb, marks: &context.limb.marks };
    let rules = EstimateRules::of(&context.setting.rules);
    let readings: Vec<&Reading> = context
        .limb
        .readings
        .iter()
        .filter(|one| one.garment.as_ref().map_or(only, |garment| garment.text == *outfit.label))
        .collect();
    let estimated = estimate(&on, outfit, &readings, &rules);
    let decide = what_decides(&on, outfit, &readings, &estimated, &rules);
    let place = Place::limb(context.index).garment();
    let mut found = materials::of_materials(context, outfit.materials().as_deref(), place);
    let has_part = outfit.hand_part() == Some(true);
    if context.extremity_swollen && !has_part {
        let part = context.record.limb.extremity();
        found.push(crate::finding::hand_part::hand_part(place, part, outfit.hand_part().is_some()));
    }
    let what = Garments {
        on,
        outfit,
        estimated: &estimated,
        decide: &decide,
        readings: &readings,
        wanted: context.wanted.as_ref(),
        name: &outfit.label,
        to_obtain: false,
    };
    found.extend(of_estimate(&what, place, &context.setting.rules));
    let found = found.into_iter().map(|one| context.clearings.decide(one)).collect();
    let assessed = GarmentAssessment {
        limb: context.index,
        of_chart: None,
        printed: outfit.label.to_string(),
        profile: profile(&on, outfit, &rules),
        swelling: swelling(&on, outfit, &rules),
        turns: turning(&on, outfit, &estimated, &rules),
        outfit: outfit.clone(),
        estimated,
        decide,
    };
    (assessed, found)
}
