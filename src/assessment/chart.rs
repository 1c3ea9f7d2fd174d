//! Owns one chart against one record: sizing, estimates, choice, findings, outcome.

use super::garment_findings::{Subject, of_estimate, of_rise};
use super::raise::raise;
use super::readings::{estimate_readings, readings_decide, readings_of};
use super::worn::{Worn, WornEstimate, estimate_worn};
use super::{OpenRecord, Outcome};
use crate::anatomy::Limb;
use crate::finding::{Finding, FindingPlace};
use crate::garment::{Chart, ClassBand};
use crate::input::YesNo;
use crate::quantity::mmhg;
use crate::record::Wanted;
use crate::rules::{Basis, NumberId, Rules, Severity};
use crate::screening::ALLERGY_ITEM;
use crate::sizing::{ChartVerdict, Choice, Reason, SizeVerdict, Sizing, choose, judge};

/// One chart against one record.
#[derive(Clone, Debug)]
pub struct ChartAssessment {
    /// The chart.
    pub chart: Chart,
    /// Every size against every measure.
    pub sizing: Sizing,
    /// The choice.
    pub choice: Choice,
    /// Estimates of the sizes that hold, the picked one and, when none holds, the nearest: place in the
    /// chart and estimate.
    pub shown: Vec<(usize, WornEstimate)>,
    /// What was found about the chosen size.
    pub findings: Vec<Finding>,
    /// Every outcome that holds for the chart, worst first.
    pub outcomes: Vec<Outcome>,
}

impl ChartAssessment {
    /// The worst outcome.
    pub fn outcome(&self) -> Outcome {
        self.outcomes.first().copied().unwrap_or(Outcome::Incomplete)
    }

    /// The estimate of a size.
    pub fn estimate_of(&self, size: usize) -> Option<&WornEstimate> {
        self.shown.iter().find(|(at, _)| *at == size).map(|(_, worn)| worn)
    }
}

/// Assesses one chart.
pub(super) fn assess_chart(open: &OpenRecord, chart: Chart, rules: &Rules) -> ChartAssessment {
    if open.screened.postponed {
        let choice =
            Choice { verdict: ChartVerdict::NotJudged, size: None, nearest: None, reason: Reason::Postponed };
        let sizing = Sizing { sizes: Vec::new(), wanted: Vec::new(), missing: Vec::new() };
        let outcomes = outcomes(open, &choice, &[], true);
        return ChartAssessment { chart, sizing, choice, shown: Vec::new(), findings: Vec::new(), outcomes };
    }
    let sizing = judge(&open.record, &chart, rules);
    let estimate = |at: usize| {
        chart.sizes.get(at).map(|size| {
            let worn = Worn {
                relaxed: &size.relaxed,
                fabric: chart.fabric.as_ref(),
                layers: chart.layers,
                claim: chart.claim.as_ref(),
                to: chart.to,
            };
            let estimate = estimate_worn(&open.record, worn, rules);
            by_readings(open, &chart, &size.label, &estimate, rules).unwrap_or(estimate)
        })
    };
    let mut shown: Vec<(usize, WornEstimate)> = Vec::new();
    for (at, size) in sizing.sizes.iter().enumerate() {
        if size.verdict == SizeVerdict::Inside
            && let Some(worn) = estimate(at)
        {
            shown.push((at, worn));
        }
    }
    let reversed: Vec<bool> = (0..sizing.sizes.len())
        .map(|at| shown.iter().any(|(one, worn)| *one == at && worn.removed))
        .collect();
    let choice = choose(&sizing, &chart, &reversed, rules);
    for at in choice.size.into_iter().chain(choice.nearest) {
        if !shown.iter().any(|(one, _)| *one == at)
            && let Some(worn) = estimate(at)
        {
            shown.push((at, worn));
        }
    }
    shown.sort_by_key(|(at, _)| *at);
    let mut findings = Vec::new();
    if let Some(at) = choice.size {
        findings = of_size(open, &chart, &sizing, at, &shown, rules);
    } else if let Reason::AllReversed(sizes) = &choice.reason {
        for at in sizes {
            let place = size_place(&chart, *at);
            let graduation =
                shown.iter().find(|(one, _)| one == at).and_then(|(_, worn)| worn.graduation.as_ref());
            findings.extend(graduation.and_then(|graduation| of_rise(&place, graduation, rules)));
        }
    }
    if choice.size.is_none()
        && let Some(apart) = sizes_apart(&chart, &sizing, rules)
    {
        findings.push(apart);
    }
    raise(&mut findings, rules);
    let judged = choice
        .size
        .and_then(|at| shown.iter().find(|(one, _)| *one == at))
        .and_then(|(_, worn)| worn.graduation.as_ref())
        .is_some_and(|graduation| graduation.judged);
    let outcomes = outcomes(open, &choice, &findings, judged);
    ChartAssessment { chart, sizing, choice, shown, findings, outcomes }
}

/// The readings of a size that the record names, `chart, size 3`, where they give the verdict.
fn by_readings(
    open: &OpenRecord,
    chart: &Chart,
    size: &str,
    estimate: &WornEstimate,
    rules: &Rules,
) -> Option<WornEstimate> {
    if open.record.readings.is_empty() {
        return None;
    }
    let named = FindingPlace::size(&chart.label, size).text();
    let used = readings_of(&open.record, &[named], false);
    if used.is_empty() {
        return None;
    }
    let read = estimate_readings(&open.record, &used, chart.claim.as_ref(), Some(chart.to), rules);
    readings_decide(&read, estimate.graduation.as_ref()).then_some(read)
}

fn size_place(chart: &Chart, at: usize) -> FindingPlace {
    FindingPlace::size(&chart.label, chart.sizes.get(at).map_or("", |size| &size.label))
}

fn outcomes(open: &OpenRecord, choice: &Choice, findings: &[Finding], judged: bool) -> Vec<Outcome> {
    let mut all = Vec::new();
    match choice.verdict {
        ChartVerdict::Size => {
            all.push(Outcome::TryOn);
            if !judged {
                all.push(Outcome::Unproven);
            }
        }
        ChartVerdict::Between => all.push(Outcome::Refer),
        ChartVerdict::MadeToMeasure => all.push(Outcome::MadeToMeasure),
        ChartVerdict::NotJudged => all.push(Outcome::Incomplete),
    }
    if choice.size.is_some() && findings.iter().any(Finding::is_open_review) {
        all.push(Outcome::Refer);
    }
    let observed = &open.record.observed;
    if observed.folds == Some(YesNo::Yes) || observed.distortion == Some(YesNo::Yes) {
        // A shape that no stock garment follows: whatever the chart says, made to measure.
        all = vec![Outcome::MadeToMeasure];
    }
    if findings.iter().any(|finding| finding.severity == Severity::Stop) {
        all = vec![Outcome::Stop];
    }
    all.sort_unstable();
    all.dedup();
    all
}

fn of_size(
    open: &OpenRecord,
    chart: &Chart,
    sizing: &Sizing,
    at: usize,
    shown: &[(usize, WornEstimate)],
    rules: &Rules,
) -> Vec<Finding> {
    let place = size_place(chart, at);
    let mut found = of_offer(open, chart, &place, rules);
    let chance = sizing
        .sizes
        .get(at)
        .filter(|size| size.verdict == SizeVerdict::Inside)
        .and_then(|size| size.inside_probability);
    if let Some(chance) = chance.filter(|chance| *chance < rules.number(NumberId::InsideChance)) {
        found.push(Finding::inside_unsure(place.clone(), chance, rules.number_basis(NumberId::InsideChance)));
    }
    if let Some((_, worn)) = shown.iter().find(|(one, _)| *one == at) {
        let wanted = prescribed_band(open);
        let subject = Subject {
            claim: chart.claim.as_ref(),
            wanted: wanted.as_ref(),
            fabric: chart.fabric.as_ref(),
            reference: open.record.limb.reference(),
            top: chart.to,
        };
        found.extend(of_estimate(&place, worn, subject, rules));
    }
    found
}

/// What holds of an offer whatever its girths: materials, hand part, prescription.
pub(super) fn of_offer(
    open: &OpenRecord,
    chart: &Chart,
    place: &FindingPlace,
    rules: &Rules,
) -> Vec<Finding> {
    let mut found: Vec<Finding> = of_materials(open, chart, place, rules).into_iter().collect();
    if open.record.limb == Limb::Arm
        && open.record.observed.hand_swelling == Some(YesNo::Yes)
        && chart.hand_part != Some(true)
    {
        found.push(Finding::hand_part(place.clone(), chart.hand_part.is_some()));
    }
    found.extend(of_prescription(open, chart, place));
    found
}

fn of_materials(open: &OpenRecord, chart: &Chart, place: &FindingPlace, rules: &Rules) -> Option<Finding> {
    let allergies = open.record.allergies.as_ref().filter(|list| !list.is_empty())?;
    let source = rules.item(ALLERGY_ITEM).map(|item| item.source.clone()).unwrap_or_default();
    let Some(contains) = &chart.contains else {
        return Some(Finding::materials_unknown(place.clone(), allergies, &source));
    };
    let same = |allergy: &str| {
        let allergy = allergy.to_lowercase();
        contains.iter().any(|material| {
            let material = material.to_lowercase();
            material.contains(&allergy) || allergy.contains(&material)
        })
    };
    let matched: Vec<String> = allergies.iter().filter(|one| same(one)).cloned().collect();
    (!matched.is_empty()).then(|| Finding::allergen(place.clone(), &matched, &source))
}

/// The prescribed band: a range, or the band of the prescribed class.
pub(super) fn prescribed_band(open: &OpenRecord) -> Option<ClassBand> {
    match open.record.prescribed.as_ref()?.wanted.as_ref()? {
        Wanted::Range { low, high } => Some(ClassBand {
            class: String::new(),
            low: Some(mmhg(*low)),
            high: Some(mmhg(*high)),
            low_open: false,
            high_open: false,
            basis: Basis::UserSupplied,
            source: String::new(),
        }),
        Wanted::Class { class, .. } => open.prescribed_scheme.as_ref()?.class(&class.text).cloned(),
    }
}

fn of_prescription(open: &OpenRecord, chart: &Chart, place: &FindingPlace) -> Vec<Finding> {
    let Some(prescribed) = &open.record.prescribed else { return Vec::new() };
    let mut found = Vec::new();
    if let Some(wanted) = &prescribed.wanted {
        let asked = match (wanted, &open.prescribed_scheme) {
            (Wanted::Class { class, .. }, Some(scheme)) => {
                let band = scheme.class(&class.text).map(ClassBand::spoken).unwrap_or_default();
                format!("class {} of {} ({band})", class.text, scheme.label)
            }
            (Wanted::Class { scheme, class }, None) => format!("class {} of {}", class.text, scheme.text),
            (Wanted::Range { low, high }, _) => format!("{:.0} to {:.0} mmHg", mmhg(*low), mmhg(*high)),
        };
        let severity = match (&chart.claim, wanted) {
            (None, _) => Some(Severity::Care),
            (Some(claim), Wanted::Class { scheme, class }) => {
                let same = claim.scheme.id == scheme.text && claim.class == class.text;
                (!same).then_some(Severity::Review)
            }
            (Some(claim), Wanted::Range { low, high }) => {
                let band = claim.scheme.class(&claim.class);
                let within = band.is_some_and(|band| {
                    band.low.is_some_and(|end| end >= mmhg(*low) - 1e-9)
                        && band.high.is_some_and(|end| end <= mmhg(*high) + 1e-9)
                });
                (!within).then_some(Severity::Review)
            }
        };
        let offered = match &chart.claim {
            None => "no class is stated for this chart".to_owned(),
            Some(claim) => {
                let band = claim.scheme.class(&claim.class).map(ClassBand::spoken).unwrap_or_default();
                format!("class {} of {} ({band})", claim.class, claim.scheme.label)
            }
        };
        found.extend(
            severity.map(|severity| Finding::prescription_differs(place.clone(), severity, &asked, &offered)),
        );
    }
    if let (Some(asked), Some(offered)) = (&prescribed.style, &chart.style)
        && !asked.eq_ignore_ascii_case(offered)
    {
        found.push(Finding::style_differs(place.clone(), asked, offered));
    }
    found
}

fn sizes_apart(chart: &Chart, sizing: &Sizing, rules: &Rules) -> Option<Finding> {
    let index = |label: &String| chart.sizes.iter().position(|size| size.label == *label);
    let spans: Vec<(usize, usize)> = sizing
        .wanted
        .iter()
        .filter_map(|(_, sizes)| {
            let places: Vec<usize> = sizes.iter().filter_map(index).collect();
            Some((*places.iter().min()?, *places.iter().max()?))
        })
        .collect();
    let largest_need = spans.iter().map(|(low, _)| *low).max()?;
    let smallest_need = spans.iter().map(|(_, high)| *high).min()?;
    let apart = largest_need.saturating_sub(smallest_need);
    let limit = rules.number(NumberId::SizesApart);
    (f64::from(u32::try_from(apart).unwrap_or_default()) >= limit).then(|| {
        let asked: Vec<String> = sizing
            .wanted
            .iter()
            .filter(|(_, sizes)| !sizes.is_empty())
            .map(|(landmark, sizes)| format!("{} {}", landmark.spoken(), sizes.join(" or ")))
            .collect();
        Finding::sizes_apart(&chart.label, &asked, rules.number_basis(NumberId::SizesApart))
    })
}
