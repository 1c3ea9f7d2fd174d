//! Owns which findings hold only where one garment is asked about: rings, edges, overlaps, classes,
//! sections, readings.

use super::WornEstimate;
use super::edge::EdgeEstimate;
use crate::anatomy::Landmark;
use crate::finding::{Finding, FindingPlace};
use crate::garment::{Claim, ClassPlace, Outfit};
use crate::graduation::{Grade, rings};
use crate::pressure::Ellipse;
use crate::record::{Reading, Record};
use crate::rules::{NumberId, Rules, Severity};

/// Calipers and tape may differ by this share before they are asked about (house rule: twice the SD
/// of a tape reading at a 22 cm ankle, and room for a section that is no ellipse).
const CALIPERS_SHARE: f64 = 0.05;

/// Marks above both neighbours.
pub(super) fn of_rings(place: &FindingPlace, worn: &WornEstimate, rules: &Rules) -> Vec<Finding> {
    let basis = rules.number_basis(NumberId::RiseCertain);
    rings(&worn.points, rules).iter().map(|ring| Finding::ring(place.clone(), ring, basis)).collect()
}

/// Bands that press more than the garment below them.
pub(super) fn of_edges(place: &FindingPlace, edges: &[EdgeEstimate], rules: &Rules) -> Vec<Finding> {
    edges
        .iter()
        .filter_map(|edge| {
            let rise = edge.rise.filter(|rise| rise.mmhg > 0.0)?;
            let severity = match rise.grade {
                Grade::Certain | Grade::Likely => Severity::Review,
                Grade::Possible => Severity::Care,
                Grade::Undecided | Grade::None => return None,
            };
            let basis = rules.number_basis(NumberId::RiseCertain);
            Some(Finding::top_edge(place.clone(), severity, edge.landmark, rise.mmhg, rise.chance, basis))
        })
        .collect()
}

/// Marks under more than one garment.
pub(super) fn of_overlap(
    place: &FindingPlace,
    record: &Record,
    outfit: &Outfit,
    rules: &Rules,
) -> Option<Finding> {
    let marks: Vec<Landmark> = record
        .marks
        .iter()
        .filter_map(|mark| mark.landmark)
        .filter(|landmark| outfit.pieces.iter().filter(|worn| worn.covers(*landmark)).count() > 1)
        .collect();
    let shares = (rules.number(NumberId::LayersLow), rules.number(NumberId::LayersHigh));
    let basis = rules.number_basis(NumberId::LayersLow);
    (!marks.is_empty()).then(|| Finding::garments_overlap(place.clone(), &marks, shares, basis))
}

/// A reference between classes or in another one, while the claimed class keeps a fair chance.
pub(super) fn of_classes(
    place: &FindingPlace,
    worn: &WornEstimate,
    claim: Option<&Claim>,
    rules: &Rules,
) -> Option<Finding> {
    let claim = claim?;
    let reference = &worn.reference;
    let (pressure, chance) = (reference.mmhg?, reference.claimed_probability?);
    if chance < rules.number(NumberId::ClassChance) {
        return None;
    }
    let (place, mark) = (place.clone(), reference.landmark);
    match reference.class.as_ref()? {
        ClassPlace::In(class) if *class == claim.class => None,
        ClassPlace::Between(low, high) => {
            Some(Finding::between_classes(place, mark, pressure, (low, high), &claim.scheme.label))
        }
        ClassPlace::In(class) => Some(Finding::class_off(
            place,
            mark,
            pressure,
            &format!("in class {class}"),
            &claim.class,
            chance,
        )),
        ClassPlace::Below(class) => Some(Finding::class_off(
            place,
            mark,
            pressure,
            &format!("below class {class}"),
            &claim.class,
            chance,
        )),
        ClassPlace::Above(class) => Some(Finding::class_off(
            place,
            mark,
            pressure,
            &format!("above class {class}"),
            &claim.class,
            chance,
        )),
    }
}

/// Calipers that do not fit the tape, at marks of the garment.
pub(super) fn of_sections(place: &FindingPlace, record: &Record, outfit: &Outfit) -> Vec<Finding> {
    record
        .marks
        .iter()
        .filter_map(|mark| {
            let landmark = mark.landmark?;
            let (wide, deep) = mark.calipers?;
            outfit.pieces.iter().find(|worn| worn.covers(landmark))?;
            let around = Ellipse::from_diameters(wide.cm(), deep.cm())?.girth_cm();
            let tape = mark.girth().cm();
            ((around / tape - 1.0).abs() > CALIPERS_SHARE)
                .then(|| Finding::calipers_differ(place.clone(), landmark, around, tape))
        })
        .collect()
}

/// Readings in unlike postures.
pub(super) fn of_readings(place: &FindingPlace, readings: &[&Reading]) -> Option<Finding> {
    let mut postures: Vec<String> = Vec::new();
    for reading in readings {
        let posture = reading.posture.clone().unwrap_or_else(|| "not stated".to_owned());
        if !postures.contains(&posture) {
            postures.push(posture);
        }
    }
    (postures.len() > 1).then(|| Finding::readings_mixed(place.clone(), &postures))
}
