//! Owns the findings about one garment that is asked about alone, and about a wanted garment.

use super::words::{list, mmhg_words, percent_words, whole};
use super::{Finding, FindingId, FindingPlace};
use crate::anatomy::Landmark;
use crate::graduation::Ring;
use crate::rules::{Basis, Severity};

impl Finding {
    /// A mark above both its neighbours.
    pub fn ring(place: FindingPlace, ring: &Ring, basis: Basis) -> Self {
        let by = ring.above.map_or_else(String::new, |above| format!(" by at least {}", mmhg_words(above)));
        let sentence = format!(
            "The {} presses more than {} and {}{by}, certain by tape and ruler: it would press like a ring there.",
            ring.at.spoken(),
            ring.distal.spoken(),
            ring.proximal.spoken(),
        );
        let mut finding = Self::new(FindingId::Ring, Severity::Review, place.at(ring.at), basis, sentence)
            .next("A certified fitter checks the girth and the garment there before fitting.");
        if let Some(above) = ring.above {
            finding = finding.with("above_mmhg", above);
        }
        finding
    }

    /// The band at the upper end presses more than the garment below it.
    pub fn top_edge(
        place: FindingPlace,
        severity: Severity,
        mark: Landmark,
        rise: f64,
        chance: f64,
        basis: Basis,
    ) -> Self {
        let sentence = format!(
            "The top edge at the {} presses about {} more than the garment just below it (chance {}).",
            mark.spoken(),
            mmhg_words(rise),
            percent_words(chance),
        );
        Self::new(FindingId::TopEdge, severity, place.at(mark), basis, sentence)
            .with("rise_mmhg", rise)
            .with("chance", chance)
            .next("A wider band or a softer one; look for a groove after 10 to 30 minutes of wear.")
    }

    /// Garments lie over one another.
    pub fn garments_overlap(
        place: FindingPlace,
        marks: &[Landmark],
        shares: (f64, f64),
        basis: Basis,
    ) -> Self {
        let names: Vec<String> = marks.iter().map(|mark| mark.spoken()).collect();
        let sentence = format!(
            "More than one garment lies on the {}. The plain sum shown there is an upper estimate: two stockings over one another pressed {:.2} to {:.2} of their sum.",
            list(&names),
            shares.0,
            shares.1,
        );
        let place = marks.first().map_or(place.clone(), |mark| place.at(*mark));
        Self::new(FindingId::GarmentsOverlap, Severity::Care, place, basis, sentence)
            .source("Ann Vasc Dis 2012;5:435")
            .next("Check that the overlap neither rolls nor cuts in, and look at the fall across it.")
    }

    /// The reference lies between two classes.
    pub fn between_classes(
        place: FindingPlace,
        mark: Landmark,
        mmhg: f64,
        classes: (&str, &str),
        scheme: &str,
    ) -> Self {
        let sentence = format!(
            "About {} at the {} lies in the gap between class {} and class {} of {scheme}; it is in neither.",
            mmhg_words(mmhg),
            mark.spoken(),
            classes.0,
            classes.1,
        );
        Self::new(FindingId::BetweenClasses, Severity::Note, place.at(mark), Basis::Derived, sentence)
            .with("pressure_mmhg", mmhg)
    }

    /// The reference lies in another class than the one claimed, with a fair chance of the claimed one.
    pub fn class_off(
        place: FindingPlace,
        mark: Landmark,
        mmhg: f64,
        found: &str,
        claimed: &str,
        chance: f64,
    ) -> Self {
        let sentence = format!(
            "About {} at the {} lies {found}; class {claimed} is claimed. Chance of the claimed class: {}.",
            mmhg_words(mmhg),
            mark.spoken(),
            percent_words(chance),
        );
        Self::new(FindingId::ClassOff, Severity::Note, place.at(mark), Basis::Derived, sentence)
            .with("pressure_mmhg", mmhg)
            .with("claimed_probability", chance)
    }

    /// Calipers and tape differ.
    pub fn calipers_differ(place: FindingPlace, mark: Landmark, by_calipers: f64, by_tape: f64) -> Self {
        let sentence = format!(
            "At the {} an oval of the two calipers would measure {by_calipers:.1} cm around, the tape says {by_tape:.1} cm.",
            mark.spoken(),
        );
        Self::new(FindingId::CalipersDiffer, Severity::Care, place.at(mark), Basis::HouseRule, sentence)
            .next("Measure girth and both calipers there once more; the sharp-end figure rests on them.")
    }

    /// Readings in unlike postures.
    pub fn readings_mixed(place: FindingPlace, postures: &[String]) -> Self {
        let sentence = format!(
            "The readings were taken in unlike postures ({}); they do not belong to one pressure along the limb.",
            postures.join("; "),
        );
        Self::new(FindingId::ReadingsMixed, Severity::Care, place, Basis::HouseRule, sentence)
            .next("Read all marks in one posture, after the same time of wear.")
    }

    /// The wanted pressure does not fall.
    pub fn target_rises(place: FindingPlace, from: (Landmark, f64), to: (Landmark, f64)) -> Self {
        let sentence = format!(
            "The wanted pressure does not fall from {} ({}) to {} ({}).",
            from.0.spoken(),
            mmhg_words(from.1),
            to.0.spoken(),
            mmhg_words(to.1),
        );
        Self::new(FindingId::TargetRises, Severity::Review, place.at(to.0), Basis::HouseRule, sentence)
            .source("any rise counts as a reversal: Best 2000, JBJS Br 82-B:116")
            .next("Ask for less pressure toward the trunk.")
    }

    /// The wanted pressure cannot be had with this fabric.
    pub fn target_beyond(place: FindingPlace, marks: &[(Landmark, f64, f64)], last: f64) -> Self {
        let names: Vec<String> = marks
            .iter()
            .map(|(mark, wanted, most)| {
                format!("{} ({} wanted, {} at most)", mark.spoken(), mmhg_words(*wanted), mmhg_words(*most))
            })
            .collect();
        let sentence = format!(
            "This fabric does not give the wanted pressure within its tested stretch, {} %, at the {}.",
            whole(last * 100.0),
            list(&names),
        );
        let place = marks.first().map_or(place.clone(), |(mark, ..)| place.at(*mark));
        Self::new(FindingId::TargetBeyond, Severity::Review, place, Basis::HouseRule, sentence)
            .next("A stronger fabric, more layers, less pressure, or a curve tested further.")
    }
}
