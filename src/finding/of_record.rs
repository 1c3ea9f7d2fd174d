//! Owns the findings about the record and the limb.

use super::words::{cm, list};
use super::{Finding, FindingId, FindingPlace};
use crate::anatomy::{Landmark, Limb};
use crate::rules::{Basis, PlausibleBand, PlausibleRatio, Severity};

fn marks() -> FindingPlace {
    FindingPlace::record("marks")
}

fn f(tenths: i64) -> f64 {
    f64::from(i32::try_from(tenths).unwrap_or_default()) / 100.0
}

impl Finding {
    /// Two readings of one mark differ by more than the rules allow.
    pub fn readings_differ(landmark: Option<Landmark>, mark: &str, gap: i64, basis: Basis) -> Self {
        let sentence = format!("The readings at {mark} differ by {}; measure this mark once more.", cm(gap));
        let place = landmark.map_or_else(marks, |landmark| marks().at(landmark));
        Self::new(FindingId::ReadingsDiffer, Severity::Care, place, basis, sentence).with("gap_cm", f(gap))
    }

    /// A girth outside the usual adult band.
    pub fn unusual_girth(limb_words: &str, band: &PlausibleBand, girth: i64, slips: &[String]) -> Self {
        let sentence = format!(
            "{limb_words}: a girth of {} at the {} is outside the usual {:.0} to {:.0} cm of adults.{}",
            cm(girth),
            band.landmark.spoken(),
            band.low_cm,
            band.high_cm,
            slip_words(slips),
        );
        Self::new(FindingId::UnusualGirth, Severity::Care, marks().at(band.landmark), band.basis, sentence)
            .with("girth_cm", f(girth))
            .next(format!(
                "Measure it again; if it holds, add `confirmed: [{}]` to the record.",
                band.landmark.name()
            ))
            .source(band.source.clone())
            .question()
    }

    /// Two girths in an unusual proportion.
    pub fn unusual_proportion(limb_words: &str, band: &PlausibleRatio, ratio: f64, slips: &[String]) -> Self {
        let sentence = format!(
            "{limb_words}: the girth at the {} is {ratio:.2} times that at the {}, outside the usual {:.2} to {:.2} of adults.{}",
            band.of.spoken(),
            band.to.spoken(),
            band.low,
            band.high,
            slip_words(slips),
        );
        Self::new(FindingId::UnusualProportion, Severity::Care, marks().at(band.of), band.basis, sentence)
            .with("ratio", ratio)
            .next(format!(
                "Measure both again; if they hold, add `confirmed: [{}, {}]` to the record.",
                band.to.name(),
                band.of.name()
            ))
            .source(band.source.clone())
            .question()
    }

    /// The girths are old.
    pub fn girths_old(severity: Severity, measured: &str, months: f64, basis: Basis) -> Self {
        let next = if severity == Severity::Review {
            "Measure again before fitting."
        } else {
            "Measure again if anything has changed."
        };
        let sentence = format!("The girths were taken on {measured}, more than {months:.0} months ago.");
        Self::new(FindingId::GirthsOld, severity, FindingPlace::record("record"), basis, sentence).next(next)
    }

    /// The record is dated after today.
    pub fn dated_ahead(measured: &str, today: &str) -> Self {
        let sentence =
            format!("The record is dated {measured}, after today, {today}; one of the two dates is wrong.");
        Self::new(
            FindingId::DatedAhead,
            Severity::Review,
            FindingPlace::record("record"),
            Basis::HouseRule,
            sentence,
        )
        .next("Correct the date in the record.")
    }

    /// A child.
    pub fn child() -> Self {
        let sentence = "The record is a child's: adult bands are not applied.".to_owned();
        Self::new(
            FindingId::Child,
            Severity::Review,
            FindingPlace::record("record"),
            Basis::HouseRule,
            sentence,
        )
        .next("A clinician who treats children decides on garment and pressure.")
    }

    /// Pitting was seen.
    pub fn pitting(basis: Basis, source: &str) -> Self {
        let sentence = "The swelling still pits: girths may go on falling.".to_owned();
        Self::new(FindingId::Pitting, Severity::Care, FindingPlace::record("observed"), basis, sentence)
            .next("Let the volume settle first, or measure again soon.")
            .source(source)
    }

    /// Folds or distortion.
    pub fn shape_irregular(what: &[String]) -> Self {
        let sentence = format!("Recorded: {}. A stock garment does not follow such a shape.", list(what));
        Self::new(
            FindingId::ShapeIrregular,
            Severity::Care,
            FindingPlace::record("observed"),
            Basis::Published,
            sentence,
        )
        .next("Made to measure; flat knit is preferred.")
        .source("Lymphoedema Framework 2006")
    }

    /// The girth falls toward the trunk.
    pub fn girth_falls(distal: &str, proximal: &str, at: Option<Landmark>, by: i64) -> Self {
        let sentence = format!(
            "The girth falls by {} from {distal} to {proximal}; limbs usually widen toward the trunk.",
            cm(by)
        );
        let place = at.map_or_else(marks, |at| marks().at(at));
        Self::new(FindingId::GirthFalls, Severity::Care, place, Basis::HouseRule, sentence)
            .with("fall_cm", f(by))
            .next("Check the two girths; if they hold, made to measure may serve better.")
    }

    /// The girth changes fast.
    pub fn slope_steep(distal: &str, proximal: &str, at: Option<Landmark>, slope: f64, strong: bool) -> Self {
        let degree = if strong { "very fast" } else { "fast" };
        let sentence = format!(
            "The girth changes {degree} from {distal} to {proximal}: {slope:.1} cm per cm of length."
        );
        let place = at.map_or_else(marks, |at| marks().at(at));
        Self::new(FindingId::SlopeSteep, Severity::Care, place, Basis::HouseRule, sentence)
            .with("slope_cm_per_cm", slope)
            .next("Check girths and distance; if they hold, made to measure may serve better.")
    }

    /// The limbs' volumes cannot be compared.
    pub fn volume_not_compared(limb: Limb, why: &str) -> Self {
        let sentence = format!("The volumes of the {}s cannot be compared: {why}.", limb.name());
        Self::new(
            FindingId::VolumeNotCompared,
            Severity::Care,
            FindingPlace::record("other_limb"),
            Basis::Derived,
            sentence,
        )
    }
}

fn slip_words(slips: &[String]) -> String {
    if slips.is_empty() { String::new() } else { format!(" Possible slips: {}.", slips.join("; ")) }
}
