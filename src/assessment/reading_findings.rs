//! Owns what sensor readings bring beside the fall: contradictions, unlike postures, a reading in the hollow
//! beside the ankle bone.

use super::size_findings::Garments;
use crate::estimate::{Estimated, FallOf};
use crate::finding::{self, Finding, Place};
use crate::gradient::Grade;
use crate::words;

/// What readings and estimate say of each other, where both are known.
pub fn contradiction(estimated: &Estimated) -> Option<String> {
    let said = estimated.readings.as_ref().filter(|said| said.contradicts)?;
    let apart: Vec<String> = said
        .against
        .iter()
        .filter(|one| one.contradicts && !one.read.in_hollow)
        .map(|one| {
            format!(
                "{} {} read, {} estimated",
                words::at(one.landmark),
                words::mmhg(one.read.mmhg),
                words::whole(one.estimate_mmhg)
            )
        })
        .collect();
    Some(if apart.is_empty() {
        "Readings and estimate contradict each other about the fall.".to_owned()
    } else {
        format!("Readings and estimate contradict each other: {}.", words::list(&apart))
    })
}

/// What the readings bring.
pub(super) fn of_readings(what: &Garments<'_>, place: Place) -> Vec<Finding> {
    mixed(what, place).into_iter().chain(in_hollow(what, place)).collect()
}

/// Readings and estimate contradict each other; where one of them rises, that is told with it, in `sentence`.
pub(super) fn differ(what: &Garments<'_>, place: Place, sentence: &str) -> Option<Finding> {
    let words = contradiction(what.estimated)?;
    let said = what.estimated.readings.as_ref()?;
    let at = said.against.iter().find(|one| one.contradicts && !one.read.in_hollow).map(|one| one.landmark);
    let at = at.or(said.fall.place);
    let place = at.map_or(place, |landmark| place.at(landmark));
    let rises = what.estimated.grade().is_some_and(|grade| grade <= Grade::Likely);
    // Where both fall, only the pressures contradict each other: no fall is quoted as the worse.
    let text = if rises { format!("{words} The worse of the two counts. {sentence}") } else { words };
    Some(finding::rise::contradicted(place, text.trim()))
}

fn mixed(what: &Garments<'_>, place: Place) -> Option<Finding> {
    let mut postures: Vec<String> =
        what.readings.iter().filter_map(|one| Some(one.posture.as_ref()?.to_string())).collect();
    postures.sort_unstable();
    postures.dedup();
    (postures.len() > 1).then(|| finding::readings_mixed::readings_mixed(place, &postures))
}

/// Readings that rise, or differ from the estimate, by nothing but the one in the hollow: it never rejects alone, and
/// it is not silent.
fn in_hollow(what: &Garments<'_>, place: Place) -> Option<Finding> {
    let said = what.estimated.readings.as_ref()?;
    if !said.rests_on_hollow {
        let differs = said.against.iter().find(|one| one.contradicts && one.read.in_hollow)?;
        return Some(finding::reading_in_hollow::hollow_differs(
            place.at(differs.landmark),
            &words::mmhg(differs.read.mmhg),
            &words::whole(differs.estimate_mmhg),
        ));
    }
    let at = said.fall.place.or(said.fall.against)?;
    let alone = what.estimated.fall.as_ref().is_some_and(|verdict| verdict.of == FallOf::Readings)
        && what.estimated.marks.is_empty();
    Some(finding::reading_in_hollow::reading_in_hollow(place.at(at), alone))
}
