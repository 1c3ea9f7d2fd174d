//! Owns the question about one garment on a limb: a size of a chart, a garment file, or the readings alone.

use super::{Assessment, Opened, Setting, assess, fall_words};
use crate::assessment::Subject;
use crate::finding::Who;
use crate::garment::{Garment, Outfit, Piece};
use crate::input::Text;
use crate::record::Record;
use crate::rules::Role;

/// What is asked about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum AskedGarment {
    /// The garment files of the run.
    Files,
    /// A size of the one chart of the run, by its label.
    Size(String),
    /// The readings alone, of a garment as the record names it, or of the only one named.
    Readings(Option<String>),
}

/// Why there is nothing to look at.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoGarment {
    /// No record.
    NoRecord,
    /// Neither a garment file nor a chart with a size.
    Nothing,
    /// A chart without a size named; its sizes.
    NoSize(Vec<String>),
    /// More than one chart.
    SeveralCharts,
    /// No such size; the sizes there are.
    UnknownSize(Vec<String>),
    /// The record holds no readings (of that garment); those there are.
    NoReadings(Vec<String>),
    /// Readings of several garments; their names.
    SeveralReadings(Vec<String>),
}

/// Looks at one garment in depth: the client's findings, and the garment's.
///
/// # Errors
/// A [`NoGarment`] where there is nothing to look at.
pub fn assess_one(opened: &Opened, asked: &AskedGarment, setting: &Setting) -> Result<Assessment, NoGarment> {
    let record = opened.record().ok_or(NoGarment::NoRecord)?;
    let (outfits, visits) = match asked {
        AskedGarment::Files => {
            if opened.outfits.is_empty() {
                let sizes =
                    opened.charts.iter().flat_map(|chart| &chart.sizes).map(|size| size.label.to_string());
                let sizes: Vec<String> = sizes.collect();
                return Err(if sizes.is_empty() { NoGarment::Nothing } else { NoGarment::NoSize(sizes) });
            }
            (opened.outfits.clone(), opened.visits.clone())
        }
        AskedGarment::Size(label) => (vec![size_of(opened, label)?], opened.visits.clone()),
        AskedGarment::Readings(of) => {
            let (outfit, record) = of_readings(record, of.as_deref())?;
            let mut visits = opened.earlier().to_vec();
            visits.push(record);
            (vec![outfit], visits)
        }
    };
    let run = Opened { visits, charts: Vec::new(), outfits, fabrics: opened.fabrics.clone() };
    let mut found = assess(&run, setting).ok_or(NoGarment::NoRecord)?;
    said_of_garment(&mut found);
    Ok(found)
}

/// Without anything against it the decision speaks of the garment's fall.
pub(super) fn said_of_garment(found: &mut Assessment) {
    if found.decision.outcome.is_some() {
        return;
    }
    let Some(garment) = found.garments.first() else { return };
    found.decision.subject = Subject::Garment;
    if let Some(words) = fall_words(&garment.outfit, &garment.estimated, &garment.decide) {
        found.decision.reason = words;
    }
    // What would decide an open fall is the next step, as the finding has it.
    let open = found
        .findings
        .iter()
        .find(|one| one.place.garment && one.id.is(&crate::finding::fall_unknown::ENTRY))
        .map(|one| one.next.clone());
    found.decision.next =
        open.unwrap_or_else(|| "A certified fitter checks the garment on the limb.".to_owned());
    found.decision.who = vec![Who::Role(Role::Fitter)];
}

fn size_of(opened: &Opened, label: &str) -> Result<Outfit, NoGarment> {
    let chart = match opened.charts.as_slice() {
        [] => return Err(NoGarment::Nothing),
        [one] => one,
        _ => return Err(NoGarment::SeveralCharts),
    };
    let garment = chart.size_of(label).and_then(|size| chart.garment(size));
    let Some(garment) = garment else {
        return Err(NoGarment::UnknownSize(chart.sizes.iter().map(|size| size.label.to_string()).collect()));
    };
    let mut outfit = Outfit::of(Piece::Garment(Box::new(garment)));
    if let Ok(name) = Text::new(&format!("{}, size {label}", chart.label)) {
        outfit.label = name;
    }
    Ok(outfit)
}

/// A garment of which only readings are known, and the record with those readings alone.
fn of_readings(record: &Record, of: Option<&str>) -> Result<(Outfit, Record), NoGarment> {
    let mut names: Vec<String> = record
        .limbs
        .iter()
        .flat_map(|limb| &limb.readings)
        .map(|one| one.garment.as_ref().map_or_else(String::new, |named| named.text.clone()))
        .collect();
    names.sort_unstable();
    names.dedup();
    let name = match (of, names.as_slice()) {
        (Some(of), all) if all.iter().any(|one| one == of) => of.to_owned(),
        (None, [one]) => one.clone(),
        (None, [_, _, ..]) => return Err(NoGarment::SeveralReadings(names)),
        _ => return Err(NoGarment::NoReadings(names)),
    };
    let mut record = record.clone();
    for limb in &mut record.limbs {
        limb.readings.retain(|one| one.garment.as_ref().map_or("", |named| named.text.as_str()) == name);
    }
    let reference = record.limb.reference();
    let read = record.limbs.iter().flat_map(|limb| &limb.readings).map(|one| one.landmark);
    let to = read.max().unwrap_or(reference).max(reference);
    let label = Text::new(if name.is_empty() { "the garment that was read" } else { &name });
    let Ok(label) = label else { return Err(NoGarment::NoReadings(names)) };
    let garment = Garment {
        label,
        file: String::new(),
        limb: record.limb,
        style: None,
        from: reference,
        to,
        claim: None,
        materials: None,
        hand_part: None,
        fabric: None,
        fabric_at: Vec::new(),
        layers: 1,
        relaxed: Vec::new(),
        top_edge: None,
    };
    Ok((Outfit::of(Piece::Garment(Box::new(garment))), record))
}
