//! Owns the question about one garment: what it presses along the limb, and whether that falls.

use jiff::civil::Date;

use super::assess::{Client, of_the_client, worst_first};
use super::chart::{of_offer, prescribed_band};
use super::edge::{EdgeEstimate, edges};
use super::garment_findings::{Subject, of_estimate};
use super::gradient_findings::{of_classes, of_edges, of_overlap, of_readings, of_rings, of_sections};
use super::outfit::estimate_outfit;
use super::profile::{ProfilePoint, Swelling, profile, swelling};
use super::readings::{Against, against, estimate_readings, readings_decide, readings_of};
use super::{Assessment, OpenRecord, Outcome, WornEstimate};
use crate::finding::{Finding, FindingPlace};
use crate::garment::{BetweenSizes, Chart, Outfit};
use crate::graduation::{Undecided, undecided};
use crate::record::Reading;
use crate::rules::{Rules, Severity};

/// What is asked about.
#[derive(Clone, Debug)]
pub struct Asked {
    /// The garment's or chart's label.
    pub label: String,
    /// The size, for a chart.
    pub size: Option<String>,
    /// What is worn; none when the readings alone are asked about.
    pub outfit: Option<Outfit>,
    /// Whether it has a hand part, as stated; none = not stated.
    pub hand_part: Option<bool>,
}

/// Everything worked out for one garment, unrounded.
#[derive(Clone, Debug)]
pub struct GradientAssessment {
    /// Client, outcome and findings; no charts.
    pub base: Assessment,
    /// What was asked about.
    pub asked: Asked,
    /// The estimate; none when the readings alone are asked about.
    pub estimate: Option<WornEstimate>,
    /// The readings; none where there are none of this garment.
    pub read: Option<WornEstimate>,
    /// Whether the readings give the verdict.
    pub by_readings: bool,
    /// Estimate against readings.
    pub against: Option<Against>,
    /// Bands at upper ends.
    pub edges: Vec<EdgeEstimate>,
    /// The pressure between the marks.
    pub profile: Vec<ProfilePoint>,
    /// What 1 cm of limb would do.
    pub swelling: Vec<Swelling>,
    /// What decides the pairs that are not decided.
    pub undecided: Vec<Undecided>,
    /// The readings used.
    pub readings: Vec<Reading>,
}

impl GradientAssessment {
    /// The estimate or the readings, whichever gives the verdict.
    pub fn verdict(&self) -> Option<&WornEstimate> {
        if self.by_readings { self.read.as_ref() } else { self.estimate.as_ref() }
    }
}

/// Works out one garment on the record's limb, as of `today`.
pub fn assess_gradient(open: &OpenRecord, asked: Asked, today: Date, rules: &Rules) -> GradientAssessment {
    let record = &open.record;
    let outfit = asked.outfit.as_ref();
    let place = match &asked.size {
        Some(size) => FindingPlace::size(&asked.label, size),
        None => FindingPlace::chart(&asked.label),
    };
    let names = [asked.label.clone(), place.text()];
    let used = readings_of(record, &names, true);
    let claim = outfit.and_then(|outfit| outfit.claim.as_ref());
    let estimate = outfit.map(|outfit| estimate_outfit(record, outfit, rules));
    let read =
        (!used.is_empty()).then(|| estimate_readings(record, &used, claim, outfit.map(Outfit::to), rules));
    let by_readings = read
        .as_ref()
        .is_some_and(|read| readings_decide(read, estimate.as_ref().and_then(|one| one.graduation.as_ref())));
    let against = estimate.as_ref().zip(read.as_ref()).and_then(|(estimate, read)| against(estimate, read));
    let edges = outfit.map(|outfit| edges(record, outfit, rules)).unwrap_or_default();
    let chosen = if by_readings { read.as_ref() } else { estimate.as_ref() };

    let mut found = Vec::new();
    if let Some(outfit) = outfit {
        found.extend(of_offer(open, &as_offer(outfit, asked.hand_part), &place, rules));
    }
    if let Some(chosen) = chosen {
        let wanted = prescribed_band(open);
        let fabrics = outfit.map(Outfit::fabrics).unwrap_or_default();
        let top = outfit.map(Outfit::to).or(chosen.marks.last().map(|mark| mark.landmark));
        let subject = Subject {
            claim,
            wanted: wanted.as_ref(),
            fabric: fabrics.first().copied(),
            reference: record.limb.reference(),
            top: top.unwrap_or(record.limb.reference()),
        };
        found.extend(of_estimate(&place, chosen, subject, rules));
        found.extend(of_classes(&place, chosen, claim, rules));
        found.extend(of_rings(&place, chosen, rules));
    }
    if let Some(outfit) = outfit {
        found.extend(of_overlap(&place, record, outfit, rules));
        found.extend(of_edges(&place, &edges, rules));
        found.extend(of_sections(&place, record, outfit));
    }
    found.extend(of_readings(&place, &used));

    let mut ends: Vec<Option<f64>> = Vec::new();
    if let Some(claim) = claim {
        ends.push(claim.scheme.class(&claim.class).and_then(|band| band.high));
    }
    ends.extend(
        [estimate.as_ref(), read.as_ref()].into_iter().flatten().filter_map(WornEstimate::highest).map(Some),
    );
    let judged = chosen.and_then(|one| one.graduation.as_ref()).is_some_and(|one| one.judged);
    let base = settle(open, found, &ends, (!judged).then_some(Outcome::Unproven), today, rules);
    let undecided = estimate
        .as_ref()
        .and_then(|one| one.graduation.as_ref().map(|graduation| undecided(&one.points, graduation)))
        .unwrap_or_default();
    GradientAssessment {
        base,
        estimate,
        by_readings,
        against,
        edges,
        profile: outfit.map(|outfit| profile(record, outfit, rules)).unwrap_or_default(),
        swelling: outfit.map(|outfit| swelling(record, outfit, rules)).unwrap_or_default(),
        undecided,
        readings: used.into_iter().cloned().collect(),
        read,
        asked,
    }
}

/// Client, garment findings and outcome together. A clean garment adds no outcome: a trial fitting
/// also needs a size.
pub(super) fn settle(
    open: &OpenRecord,
    mut found: Vec<Finding>,
    ends: &[Option<f64>],
    own: Option<Outcome>,
    today: Date,
    rules: &Rules,
) -> Assessment {
    found.sort_by_key(|finding| finding.severity);
    let Client { mut findings, mut outcomes, volume } = of_the_client(open, &[], ends, today, rules);
    if found.iter().any(|finding| finding.severity == Severity::Stop) {
        outcomes.push(Outcome::Stop);
    }
    if found.iter().any(Finding::is_open_review) {
        outcomes.push(Outcome::Refer);
    }
    outcomes.extend(own);
    findings.extend(found);
    let (outcome, also) = worst_first(outcomes);
    Assessment { today, outcome, also, best_chart: None, findings, charts: Vec::new(), volume }
}

/// The garment as an offer without sizes, to be held against materials, hand and prescription.
pub(super) fn as_offer(outfit: &Outfit, hand_part: Option<bool>) -> Chart {
    Chart {
        label: outfit.label.clone(),
        limb: outfit.limb,
        style: outfit.style.clone(),
        from: Some(outfit.from()),
        to: outfit.to(),
        claim: outfit.claim.clone(),
        contains: outfit.contains(),
        hand_part,
        fabric: None,
        layers: 1,
        between_sizes: BetweenSizes::Refer,
        printed_step: None,
        sizes: Vec::new(),
    }
}
