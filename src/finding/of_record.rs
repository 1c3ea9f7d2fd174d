//! Owns the findings about the record and the limb.

use super::words::{cm, list};
use super::{Finding, FindingId, FindingPlace};
use crate::anatomy::{Landmark, Limb};
use crate::record::Slip;
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

    /// Girths outside the usual adult bands; the caller gives at least one.
    pub fn unusual_girth(limb_words: &str, outside: &[(PlausibleBand, i64)], slips: &[Slip]) -> Self {
        let said: Vec<String> = outside
            .iter()
            .map(|(band, girth)| {
                format!(
                    "{} at the {} (usual {:.0} to {:.0} cm)",
                    cm(*girth),
                    band.landmark.spoken(),
                    band.low_cm,
                    band.high_cm
                )
            })
            .collect();
        let sentence =
            format!("{limb_words}: unusual girth for an adult: {}.{}", list(&said), slip_words(slips));
        let names: Vec<&str> = outside.iter().map(|(band, _)| band.landmark.name()).collect();
        let first = outside.first();
        let place = first.map_or_else(marks, |(band, _)| marks().at(band.landmark));
        let basis = first.map_or(Basis::HouseRule, |(band, _)| band.basis);
        Self::new(FindingId::UnusualGirth, Severity::Care, place, basis, sentence)
            .with("girth_cm", first.map_or(f64::NAN, |(_, girth)| f(*girth)))
            .next(confirm_words(&names))
            .source(first.map(|(band, _)| band.source.clone()).unwrap_or_default())
            .question()
    }

    /// Girths in unusual proportions; the caller gives at least one.
    pub fn unusual_proportion(limb_words: &str, outside: &[(PlausibleRatio, f64)], slips: &[Slip]) -> Self {
        let said: Vec<String> = outside
            .iter()
            .map(|(band, ratio)| {
                format!(
                    "{} {ratio:.2} times the {} (usual {:.2} to {:.2})",
                    band.of.spoken(),
                    band.to.spoken(),
                    band.low,
                    band.high
                )
            })
            .collect();
        let sentence =
            format!("{limb_words}: unusual proportion for an adult: {}.{}", list(&said), slip_words(slips));
        let mut marks_named: Vec<Landmark> =
            outside.iter().flat_map(|(band, _)| [band.to, band.of]).collect();
        marks_named.sort_unstable();
        marks_named.dedup();
        let names: Vec<&str> = marks_named.iter().map(|one| one.name()).collect();
        let first = outside.first();
        let place = first.map_or_else(marks, |(band, _)| marks().at(band.of));
        let basis = first.map_or(Basis::HouseRule, |(band, _)| band.basis);
        Self::new(FindingId::UnusualProportion, Severity::Care, place, basis, sentence)
            .with("ratio", first.map_or(f64::NAN, |(_, ratio)| *ratio))
            .next(confirm_words(&names))
            .source(first.map(|(band, _)| band.source.clone()).unwrap_or_default())
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

    /// The girth falls toward the trunk; `more` other pairs fall as well, by less.
    pub fn girth_falls(distal: &str, proximal: &str, at: Option<Landmark>, by: i64, more: usize) -> Self {
        let sentence = format!(
            "The girth falls by {} from {distal} to {proximal}{}; limbs usually widen toward the trunk.",
            cm(by),
            more_words(more)
        );
        let place = at.map_or_else(marks, |at| marks().at(at));
        Self::new(FindingId::GirthFalls, Severity::Care, place, Basis::HouseRule, sentence)
            .with("fall_cm", f(by))
            .next("Check the two girths; if they hold, made to measure may serve better.")
    }

    /// The girth changes fast; `more` other pairs do as well, less so.
    pub fn slope_steep(
        distal: &str,
        proximal: &str,
        at: Option<Landmark>,
        slope: f64,
        strong: bool,
        more: usize,
    ) -> Self {
        let degree = if strong { "very fast" } else { "fast" };
        let sentence = format!(
            "The girth changes {degree} from {distal} to {proximal}: {slope:.1} cm per cm of length{}.",
            more_words(more)
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

fn more_words(more: usize) -> String {
    match more {
        0 => String::new(),
        1 => ", and less so at one more place".to_owned(),
        _ => format!(", and less so at {more} more places"),
    }
}

fn confirm_words(names: &[&str]) -> String {
    let (what, hold) = if names.len() == 1 { ("it", "it holds") } else { ("each", "they hold") };
    format!("Measure {what} again; if {hold}, add `confirmed: [{}]` to the record.", names.join(", "))
}

/// Slips that the sentence names before it only counts (house rule: on 507 adults the true one of a sure slip was always among them).
pub const SHOWN_SLIPS: usize = 4;

fn slip_words(slips: &[Slip]) -> String {
    if slips.is_empty() {
        return String::new();
    }
    let named: Vec<String> = slips.iter().take(SHOWN_SLIPS).map(Slip::words).collect();
    let more = slips.len().saturating_sub(SHOWN_SLIPS);
    let more = if more > 0 { format!("; and {more} less near") } else { String::new() };
    format!(" Possible slips, nearest first: {}{more}.", named.join("; "))
}
