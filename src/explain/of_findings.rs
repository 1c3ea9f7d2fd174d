//! Owns the entries of the findings that are the program's own: for each, its rule with the numbers
//! in use, what it weighs, what the rule rests on, and what to do next.
//!
//! The match is without a wildcard: a new finding is not built before it is explained.

use super::{Entry, Kind, of_one_garment};
use crate::finding::FindingId;
use crate::rules::{NumberId, Rules};

/// What is said of one finding beside its meaning.
pub(super) struct About {
    pub rule: String,
    pub severity: &'static str,
    pub basis: String,
    pub source: String,
    pub next: &'static str,
}

const OURS: &str = "our own rule";
const FRAMEWORK: &str = "Lymphoedema Framework 2006";

pub(super) fn entries(rules: &Rules) -> Vec<Entry> {
    let own = FindingId::OWN.iter().filter_map(|id| {
        let about = about(id, rules)?;
        let raised = rules
            .raised(id.text())
            .map(|severity| format!("{} (the thresholds file in use: {})", about.severity, severity.word()));
        Some(Entry {
            id: id.text().to_owned(),
            kind: Kind::Finding,
            meaning: id.meaning().to_owned(),
            rule: vec![about.rule],
            severity: raised.unwrap_or_else(|| about.severity.to_owned()),
            basis: about.basis,
            source: about.source,
            next: about.next.to_owned(),
        })
    });
    own.collect()
}

#[expect(clippy::too_many_lines, reason = "one arm for each finding of a closed list")]
fn about(id: &FindingId, rules: &Rules) -> Option<About> {
    let n = |id: NumberId| {
        rules.numbers.iter().find(|number| number.id == id).map_or("", |number| number.text.as_str())
    };
    let house = |rule: String, severity, next| About {
        rule,
        severity,
        basis: "house rule".to_owned(),
        source: OURS.to_owned(),
        next,
    };
    // The basis and the reason of the number that the finding turns on.
    let by_number = |number: NumberId, rule: String, severity, next| {
        let found = rules.numbers.iter().find(|one| one.id == number);
        About {
            rule,
            severity,
            basis: found.map_or("house rule", |one| one.basis.word()).to_owned(),
            source: found.map_or_else(|| OURS.to_owned(), |one| one.why.clone()),
            next,
        }
    };
    let published = |source: &str, rule: String, severity, next| About {
        rule,
        severity,
        basis: "published".to_owned(),
        source: source.to_owned(),
        next,
    };
    let of_item = |item: &str| {
        rules.item(item).map_or_else(
            || ("house rule".to_owned(), OURS.to_owned()),
            |item| (item.basis.word().to_owned(), item.source.clone()),
        )
    };
    Some(match id {
        FindingId::ReadingsDiffer => by_number(
            NumberId::ReadingGap,
            format!("Readings of one mark (`girth` and `again`) further apart than {}.", n(NumberId::ReadingGap)),
            "care",
            "Measure the mark once more and add the reading to `again`.",
        ),
        FindingId::UnusualGirth => {
            let bands: Vec<String> = rules
                .plausible
                .iter()
                .map(|band| format!("{} {:.0} to {:.0} cm", band.landmark.spoken(), band.low_cm, band.high_cm))
                .collect();
            About {
                rule: format!(
                    "Adults only; a girth outside its band: {}. Slips that would explain the limb are named, nearest to the usual limb first, and never applied.",
                    bands.join(", ")
                ),
                severity: "care; a question: the outcome is `incomplete` until it is answered",
                basis: rules.plausible.first().map_or("house rule", |band| band.basis.word()).to_owned(),
                source: rules.plausible.first().map(|band| band.source.clone()).unwrap_or_default(),
                next: "Measure again; what holds goes into the record's `confirmed`.",
            }
        }
        FindingId::UnusualProportion => {
            let bands: Vec<String> = rules
                .ratios
                .iter()
                .map(|band| {
                    format!("{}/{} {:.2} to {:.2}", band.of.spoken(), band.to.spoken(), band.low, band.high)
                })
                .collect();
            About {
                rule: format!(
                    "Adults only; the ratio of two girths outside its band: {}. Not asked where one of the girths is asked about already.",
                    bands.join(", ")
                ),
                severity: "care; a question: the outcome is `incomplete` until it is answered",
                basis: rules.ratios.first().map_or("house rule", |band| band.basis.word()).to_owned(),
                source: rules.ratios.first().map(|band| band.source.clone()).unwrap_or_default(),
                next: "Measure both again; what holds goes into the record's `confirmed`.",
            }
        }
        FindingId::GirthChanged => by_number(
            NumberId::PreviousChange,
            format!(
                "A mark that differs by {} or more from the latest record given with `--previous` that has it.",
                n(NumberId::PreviousChange)
            ),
            "care; a question at landmarks: the outcome is `incomplete` until it is answered",
            "Measure again; what holds goes into the record's `confirmed`.",
        ),
        FindingId::WeightChanged => by_number(
            NumberId::WeightChange,
            format!(
                "A weight that differs by {} or more from the latest one in the records given with `--previous`.",
                n(NumberId::WeightChange)
            ),
            "care",
            "Measure every mark again; do not go by earlier girths.",
        ),
        FindingId::SideThinner => by_number(
            NumberId::ThinnerSide,
            format!(
                "With one side affected and both limbs measured: a landmark of the affected limb thinner than the other's by {} or more.",
                n(NumberId::ThinnerSide)
            ),
            "care; a question: the outcome is `incomplete` until it is answered",
            "Check whether the sides are exchanged, and the girths; what holds goes into `confirmed`.",
        ),
        FindingId::BothAffected => house(
            "`affected: both`, unless the item `new-two-sided-swelling` says so already. No excess against the other limb is worked out.".to_owned(),
            "note",
            "Follow each limb against its own earlier records.",
        ),
        FindingId::GirthsOld => by_number(
            NumberId::GirthAgeReview,
            format!(
                "Girths more than {} old: care; more than {}: review. Calendar months before the day of the check.",
                n(NumberId::GirthAgeCare),
                n(NumberId::GirthAgeReview)
            ),
            "care or review, by age",
            "Measure again.",
        ),
        FindingId::DatedAhead => house(
            "`measured` lies after the day of the check.".to_owned(),
            "review",
            "Correct the date, or give the day of the check with `--today`.",
        ),
        FindingId::Child => house(
            "`age_band: child`: adult bands are not applied.".to_owned(),
            "review; nothing in the record clears it",
            "A clinician who treats children decides on garment and pressure.",
        ),
        FindingId::Pitting => {
            let rule = rules.observed.iter().find(|rule| rule.key == "pitting");
            About {
                rule: "`observed.pitting: yes`, unless the item `still-reducing` says so already.".to_owned(),
                severity: "care",
                basis: rule.map_or("memory", |rule| rule.basis.word()).to_owned(),
                source: rule.map(|rule| rule.source.clone()).unwrap_or_default(),
                next: "Let the volume settle first, or measure again soon.",
            }
        }
        FindingId::ShapeIrregular => published(
            FRAMEWORK,
            "`observed.folds` or `observed.distortion` is yes: every chart's outcome is `made-to-measure`. Left out where the item `deep-folds` says so already.".to_owned(),
            "care; the outcome is `made-to-measure`",
            "Made to measure; flat knit is preferred for folds and distortion.",
        ),
        FindingId::GirthFalls => house(
            format!(
                "A girth smaller than the one distal to it by more than {}. Exempt: hand to wrist, everything distal to the ankle, calf to below the knee, the joint.",
                n(NumberId::ReadingGap)
            ),
            "care; a thresholds file may raise it",
            "Check the two girths; if they hold, made to measure may serve better.",
        ),
        FindingId::SlopeSteep => by_number(
            NumberId::SlopeCare,
            format!(
                "The girth changes by more than {} cm per cm of length between two marks; above {} it is said strongly.",
                n(NumberId::SlopeCare),
                n(NumberId::SlopeStrong)
            ),
            "care; a thresholds file may raise it",
            "Check girths and distance; if they hold, made to measure may serve better.",
        ),
        FindingId::NotAnswered => house(
            "Any question that applies to the limb is not answered or answered unknown; all of them together make this one line.".to_owned(),
            "care; the outcome is `incomplete`",
            "Ask each question and answer it in the record.",
        ),
        FindingId::ScreeningOld => by_number(
            NumberId::ScreeningAgeCare,
            format!("`screening.asked_on` is missing, or more than {} before the day of the check.", n(NumberId::ScreeningAgeCare)),
            "care",
            "Ask again and date it.",
        ),
        FindingId::ArterialOld => by_number(
            NumberId::ArterialAgeCare,
            format!("`arterial.on` is missing, or more than {} before the day of the check.", n(NumberId::ArterialAgeCare)),
            "care",
            "Take the values again, or date them.",
        ),
        FindingId::NoAbpi => by_number(
            NumberId::NoAbpiTarget,
            format!(
                "A leg without an index: review where the pressure in question is above {} or open, or a circulation item is yes or unknown; else care. The pressure in question is the highest of the prescribed upper end, the claimed upper ends and the estimates of the sizes chosen. A clinical assessment that found the supply adequate covers it up to its written `cap`.",
                n(NumberId::NoAbpiTarget)
            ),
            "care or review; cleared as `no-abpi`",
            "Take the index, or have the arteries assessed.",
        ),
        FindingId::ClinicalInadequate => published(
            "Derbyshire JAPC",
            "`arterial.clinical: inadequate`.".to_owned(),
            "review; cleared as `clinical`",
            "The vascular team decides.",
        ),
        FindingId::ClearedInVain => house(
            "`cleared` names an item that only certain roles may clear, by another role. The item still stands.".to_owned(),
            "care",
            "Ask the role that the item names.",
        ),
        FindingId::Allergen => {
            let (basis, source) = of_item("material-allergy");
            About {
                rule: "A material of the record's `allergies` stands in the chart's `contains`.".to_owned(),
                severity: "stop for that garment",
                basis,
                source,
                next: "Choose a garment without it.",
            }
        }
        FindingId::MaterialsUnknown => {
            let (basis, source) = of_item("material-allergy");
            About {
                rule: "The record names an allergy and the chart has no `contains`.".to_owned(),
                severity: "review",
                basis,
                source,
                next: "Find out the materials and add `contains` to the chart.",
            }
        }
        FindingId::HandPart => published(
            FRAMEWORK,
            "`observed.hand_swelling: yes` on an arm and a chart without `hand_part: yes`.".to_owned(),
            "review",
            "Choose a garment with a hand part, or add a hand piece and check the overlap at the wrist: two layers.",
        ),
        FindingId::PrescriptionDiffers => house(
            "Another scheme or class than prescribed: review; a band outside the prescribed range: review; a chart that states no class: care.".to_owned(),
            "care or review",
            "Ask the prescriber, or offer what was prescribed.",
        ),
        FindingId::StyleDiffers => house(
            "The prescribed style and the chart's differ.".to_owned(),
            "care",
            "Make sure that the style is the one wanted.",
        ),
        FindingId::InsideUnsure => by_number(
            NumberId::InsideChance,
            format!(
                "Every girth lies in the size, but by tape error alone (SD {}) the chance that all true girths do is below {}.",
                n(NumberId::TapeSd),
                n(NumberId::InsideChance)
            ),
            "care",
            "Measure the close marks once more.",
        ),
        FindingId::SizesApart => by_number(
            NumberId::SizesApart,
            format!("No size holds, and two marks ask for sizes {} or more apart.", n(NumberId::SizesApart)),
            "care; a thresholds file may raise it",
            "Check these girths; if they hold, made to measure may serve better.",
        ),
        FindingId::PressureRises => by_number(
            NumberId::RiseCertain,
            format!(
                "Pairs of marks at least {} apart, and end to end: the chance that the proximal pressure is the higher, by tape and relaxed girth. At least {} certain, above {} likely, at least {} possible. Certain by {} or more takes the size out.",
                n(NumberId::PairDistance),
                n(NumberId::RiseCertain),
                n(NumberId::RiseLikely),
                n(NumberId::RisePossible),
                n(NumberId::RiseRemoves)
            ),
            "review where certain or likely, care where possible",
            "Another size, or made to measure; a certified fitter checks the fall there.",
        ),
        FindingId::GradientNotJudged => house(
            "The reference, a mark between and the garment's upper end are not all known, or the stretch alone leaves a pair undecided.".to_owned(),
            "note; the outcome is `unproven`",
            "Flat widths of the garment, its fabric curve, or sensor readings.",
        ),
        FindingId::Slack => About {
            rule: "The limb's girth is not above the relaxed girth: no contact, no pressure.".to_owned(),
            severity: "review",
            basis: "derived".to_owned(),
            source: "stretch = girth / relaxed girth \u{2212} 1".to_owned(),
            next: "Check the relaxed girth; a smaller size or made to measure.",
        },
        FindingId::BeyondTested => house(
            "The stretch lies beyond the last point of the fabric's curve; nothing is estimated there.".to_owned(),
            "care",
            "A larger size, or a curve tested further.",
        ),
        FindingId::PressureHigh => by_number(
            NumberId::PressureLimit,
            format!("The estimate at a mark is above {}.", n(NumberId::PressureLimit)),
            "review",
            "A certified fitter checks girth, relaxed girth and fabric before anything is fitted.",
        ),
        FindingId::ClassMissed => by_number(
            NumberId::ClassChance,
            format!("The chance of the claimed class at the reference is below {}.", n(NumberId::ClassChance)),
            "care",
            "Check relaxed girth and fabric at the reference, or take a reading.",
        ),
        FindingId::BandMissed => by_number(
            NumberId::BandTolerance,
            format!(
                "The estimate at the reference lies more than {} outside the prescribed band, else the claimed one; left out where `class-missed` says so already.",
                n(NumberId::BandTolerance)
            ),
            "care; a thresholds file may raise it",
            "Made to measure, another class, or a reading at the reference.",
        ),
        FindingId::RatioOutside => About {
            rule: format!(
                "The estimate at a mark, in % of the one that the scheme names, lies outside the scheme's limits; care where the chance of that is at least {}.",
                n(NumberId::RatioChance)
            ),
            severity: "note, or care where it is sure",
            basis: "beside each limit of the scheme".to_owned(),
            source: "the scheme; `tapeline explain SCHEME` shows it".to_owned(),
            next: "Compare with the fall along the limb.",
        },
        FindingId::Ring
        | FindingId::TopEdge
        | FindingId::GarmentsOverlap
        | FindingId::BetweenClasses
        | FindingId::ClassOff
        | FindingId::CalipersDiffer
        | FindingId::ReadingsMixed
        | FindingId::TargetRises
        | FindingId::TargetBeyond => return of_one_garment::about(id, rules),
        FindingId::VolumeNotCompared => About {
            rule: "Both limbs are measured, but not at the same positions, or with too few marks.".to_owned(),
            severity: "care",
            basis: "derived".to_owned(),
            source: "a volume needs two marks, a difference the same stretch of both limbs".to_owned(),
            next: "Measure both limbs at the same positions.",
        },
        FindingId::Item(_) | FindingId::Arterial(_) => return None,
    })
}
