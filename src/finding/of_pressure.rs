//! Owns the findings about pressure along the limb.

use super::words::{list, mmhg_words, percent_words, whole};
use super::{Finding, FindingId, FindingPlace};
use crate::anatomy::Landmark;
use crate::graduation::{Grade, Pair, Ratio};
use crate::rules::{Basis, Severity};

impl Finding {
    /// The pressure rises toward the trunk.
    pub fn pressure_rises(place: FindingPlace, severity: Severity, pair: &Pair, basis: Basis) -> Self {
        let (from, to) = (pair.distal.spoken(), pair.proximal.spoken());
        let by = pair.rise.map_or_else(String::new, |rise| format!(" by about {}", mmhg_words(rise)));
        let chance = pair.chance.unwrap_or_default();
        let sentence = match pair.grade {
            Some(Grade::Certain) => format!(
                "The estimate rises{by} from {from} to {to}, certain by tape and ruler: this would press like a ring."
            ),
            Some(Grade::Likely) => format!(
                "The estimate likely rises{by} from {from} to {to} (chance {}).",
                percent_words(if pair.rise.is_some() { chance } else { pair.chance_low.unwrap_or(chance) })
            ),
            _ => {
                format!("The estimate possibly rises from {from} to {to} (chance {}).", percent_words(chance))
            }
        };
        let next = match severity {
            Severity::Care => "Check the fall there at the trial fitting.",
            _ => "A certified fitter checks the fall there before fitting; another size, or made to measure.",
        };
        let mut finding =
            Self::new(FindingId::PressureRises, severity, place.at(pair.proximal), basis, sentence)
                .source("any rise counts as a reversal: Best 2000, JBJS Br 82-B:116; the grades are ours")
                .next(next)
                .with("chance", chance);
        if let Some(rise) = pair.rise {
            finding = finding.with("rise_mmhg", rise);
        }
        finding
    }

    /// What is known does not decide the fall.
    pub fn gradient_not_judged(place: FindingPlace, why: &str) -> Self {
        let sentence = format!("Whether the pressure falls toward the trunk is not judged: {why}.");
        Self::new(FindingId::GradientNotJudged, Severity::Note, place, Basis::HouseRule, sentence).next(
            "Three ways on: lay the garment flat and measure its width at each mark (`flat_width`); get the fabric's tension curve (`fabric`); or read the pressure under the garment with a sensor (`readings`).",
        )
    }

    /// No contact at marks.
    pub fn slack(place: FindingPlace, marks: &[Landmark]) -> Self {
        let names: Vec<String> = marks.iter().map(|mark| mark.spoken()).collect();
        let sentence = format!(
            "The relaxed garment is as wide as the limb or wider at the {}: no contact, no pressure there.",
            list(&names)
        );
        let first = marks.first().copied();
        let place = first.map_or(place.clone(), |mark| place.at(mark));
        Self::new(FindingId::Slack, Severity::Review, place, Basis::Derived, sentence)
            .next("Check the relaxed girth; a smaller size or made to measure.")
    }

    /// Stretch beyond the last tested point.
    pub fn beyond_tested(place: FindingPlace, marks: &[(Landmark, f64)], last: f64) -> Self {
        let names: Vec<String> = marks
            .iter()
            .map(|(mark, stretch)| format!("{} ({} %)", mark.spoken(), whole(stretch * 100.0)))
            .collect();
        let sentence = format!(
            "The stretch lies beyond the fabric's last tested point, {} %, at: {}. Nothing is estimated there.",
            whole(last * 100.0),
            list(&names)
        );
        Self::new(FindingId::BeyondTested, Severity::Care, place, Basis::HouseRule, sentence)
            .next("A larger size, or a curve tested further.")
    }

    /// Very high estimate.
    pub fn pressure_high(place: FindingPlace, mark: Landmark, mmhg: f64, limit: f64, basis: Basis) -> Self {
        let sentence = format!(
            "The estimate at the {} is {}, above {}.",
            mark.spoken(),
            mmhg_words(mmhg),
            mmhg_words(limit)
        );
        Self::new(FindingId::PressureHigh, Severity::Review, place.at(mark), basis, sentence)
            .with("pressure_mmhg", mmhg)
            .next("A certified fitter checks girth, relaxed girth and fabric before anything is fitted.")
    }

    /// The claimed class is missed.
    pub fn class_missed(
        place: FindingPlace,
        mark: Landmark,
        mmhg: f64,
        claimed: &str,
        found: &str,
        chance: f64,
        basis: Basis,
    ) -> Self {
        let sentence = format!(
            "The estimate at the {} is {}, {found}; claimed is {claimed}. Chance of the claimed class: {}.",
            mark.spoken(),
            mmhg_words(mmhg),
            percent_words(chance),
        );
        Self::new(FindingId::ClassMissed, Severity::Care, place.at(mark), basis, sentence)
            .with("pressure_mmhg", mmhg)
            .with("claimed_probability", chance)
            .next("Check relaxed girth and fabric at the reference, or take a reading.")
    }

    /// The reference estimate is far outside a wanted band.
    pub fn band_missed(
        place: FindingPlace,
        mark: Landmark,
        mmhg: f64,
        band: &str,
        tolerance: f64,
        basis: Basis,
    ) -> Self {
        let sentence = format!(
            "The estimate at the {} is {}, more than {} % outside {band}.",
            mark.spoken(),
            mmhg_words(mmhg),
            whole(tolerance * 100.0),
        );
        Self::new(FindingId::BandMissed, Severity::Care, place.at(mark), basis, sentence)
            .with("pressure_mmhg", mmhg)
            .next("Made to measure, another class, or a reading at the reference.")
    }

    /// Shares outside the scheme's limits.
    pub fn ratio_outside(place: FindingPlace, severity: Severity, ratio: &Ratio, scheme: &str) -> Self {
        let limit = ratio.limit.as_ref();
        let range = match limit.map(|limit| (limit.low, limit.high)) {
            Some((Some(low), Some(high))) => format!("{low:.0} to {high:.0} %"),
            Some((Some(low), None)) => format!("at least {low:.0} %"),
            Some((None, Some(high))) => format!("at most {high:.0} %"),
            _ => "no limit".to_owned(),
        };
        let sentence = format!(
            "The estimate at the {} is {} % of that at the {}; {scheme} asks for {range}.",
            ratio.landmark.spoken(),
            whole(ratio.percent),
            ratio.of.spoken(),
        );
        let finding = Self::new(
            FindingId::RatioOutside,
            severity,
            place.at(ratio.landmark),
            limit.map_or(Basis::HouseRule, |limit| limit.basis),
            sentence,
        );
        finding
            .source(limit.map(|limit| limit.source.clone()).unwrap_or_default())
            .with("percent", ratio.percent)
    }
}
