//! Owns which findings hold for one garment on the limb, by its estimate.

use super::worn::WornEstimate;
use crate::anatomy::Landmark;
use crate::finding::{Finding, FindingPlace};
use crate::garment::{Claim, ClassBand, ClassPlace, Fabric};
use crate::graduation::{Grade, Graduation, GraduationBasis};
use crate::pressure::Estimate;
use crate::rules::{NumberId, Rules, Severity};

/// The garment that an estimate is about.
#[derive(Clone, Copy)]
pub(super) struct Subject<'s> {
    /// The class claimed.
    pub claim: Option<&'s Claim>,
    /// The prescribed band.
    pub wanted: Option<&'s ClassBand>,
    /// The fabric.
    pub fabric: Option<&'s Fabric>,
    /// The limb's reference.
    pub reference: Landmark,
    /// The garment's proximal end.
    pub top: Landmark,
}

/// What the estimate of one garment has to say.
pub(super) fn of_estimate(
    place: &FindingPlace,
    worn: &WornEstimate,
    subject: Subject<'_>,
    rules: &Rules,
) -> Vec<Finding> {
    let Subject { claim, wanted, fabric, reference, top } = subject;
    let mut found = Vec::new();
    let slack: Vec<Landmark> =
        worn.marks.iter().filter(|mark| mark.is_slack()).map(|mark| mark.landmark).collect();
    if !slack.is_empty() {
        found.push(Finding::slack(place.clone(), &slack));
    }
    let beyond: Vec<(Landmark, f64)> = worn
        .marks
        .iter()
        .filter(|mark| matches!(mark.estimate, Some(Estimate::Beyond)))
        .map(|mark| (mark.landmark, mark.deepest_stretch().unwrap_or_default()))
        .collect();
    if let (Some(fabric), false) = (fabric, beyond.is_empty()) {
        found.push(Finding::beyond_tested(place.clone(), &beyond, fabric.last_stretch()));
    }
    let limit = rules.number(NumberId::PressureLimit);
    let highest = worn
        .marks
        .iter()
        .filter_map(|mark| Some((mark.landmark, mark.mmhg()?)))
        .reduce(|best, one| if one.1 > best.1 { one } else { best });
    if let Some((landmark, pressure)) = highest.filter(|(_, pressure)| *pressure > limit) {
        found.push(Finding::pressure_high(
            place.clone(),
            landmark,
            pressure,
            limit,
            rules.number_basis(NumberId::PressureLimit),
        ));
    }
    found.extend(of_reference(place, worn, claim, wanted, rules));
    if let Some(rise) = worn.graduation.as_ref().and_then(|graduation| of_rise(place, graduation, rules)) {
        found.push(rise);
    }
    for ratio in worn.ratios.iter().filter(|ratio| ratio.inside == Some(false)) {
        let sure = ratio.chance_outside.is_some_and(|chance| chance >= rules.number(NumberId::RatioChance));
        let severity = if sure { Severity::Care } else { Severity::Note };
        found.push(Finding::ratio_outside(
            place.clone(),
            severity,
            ratio,
            claim.map_or("the scheme", |claim| &claim.scheme.label),
        ));
    }
    if let Some(why) = not_judged(worn, reference, top) {
        found.push(Finding::gradient_not_judged(place.clone(), &why));
    }
    found
}

fn of_reference(
    place: &FindingPlace,
    worn: &WornEstimate,
    claim: Option<&Claim>,
    wanted: Option<&ClassBand>,
    rules: &Rules,
) -> Option<Finding> {
    let reference = &worn.reference;
    let pressure = reference.mmhg?;
    let band = claim.and_then(|claim| claim.scheme.class(&claim.class));
    let missed = reference.claimed_probability.filter(|chance| *chance < rules.number(NumberId::ClassChance));
    if let (Some(chance), Some(claim), Some(band)) = (missed, claim, band) {
        let found = match &reference.class {
            Some(ClassPlace::In(class)) => format!("class {class}"),
            Some(ClassPlace::Between(low, high)) => format!("between class {low} and {high}"),
            Some(ClassPlace::Below(class)) => format!("below class {class}"),
            Some(ClassPlace::Above(class)) => format!("above class {class}"),
            None => "in no class".to_owned(),
        };
        let claimed = format!("class {} of {} ({})", claim.class, claim.scheme.label, band.spoken());
        let basis = rules.number_basis(NumberId::ClassChance);
        return Some(Finding::class_missed(
            place.clone(),
            reference.landmark,
            pressure,
            &claimed,
            &found,
            chance,
            basis,
        ));
    }
    let band = wanted.or(band)?;
    let tolerance = rules.number(NumberId::BandTolerance);
    let below = band.low.is_some_and(|low| pressure < low * (1.0 - tolerance));
    let above = band.high.is_some_and(|high| pressure > high * (1.0 + tolerance));
    (below || above).then(|| {
        let words = format!(
            "{} band of {}",
            if wanted.is_some() { "the prescribed" } else { "the claimed" },
            band.spoken()
        );
        Finding::band_missed(
            place.clone(),
            reference.landmark,
            pressure,
            &words,
            tolerance,
            rules.number_basis(NumberId::BandTolerance),
        )
    })
}

/// The worst pair, if it rises at all.
pub(super) fn of_rise(place: &FindingPlace, graduation: &Graduation, rules: &Rules) -> Option<Finding> {
    let worst = graduation.worst()?;
    let severity = match worst.grade {
        Some(Grade::Certain | Grade::Likely) => Severity::Review,
        Some(Grade::Possible) => Severity::Care,
        _ => return None,
    };
    Some(Finding::pressure_rises(place.clone(), severity, worst, rules.number_basis(NumberId::RiseCertain)))
}

/// Why the fall is not judged; none where it is, or where a rise already says enough.
fn not_judged(worn: &WornEstimate, reference: Landmark, top: Landmark) -> Option<String> {
    let Some(graduation) = &worn.graduation else {
        return Some("neither relaxed girths nor flat widths are known at the measured marks".to_owned());
    };
    if graduation.judged {
        return None;
    }
    let undecided: Vec<String> = graduation
        .all()
        .filter(|pair| pair.grade == Some(Grade::Undecided))
        .map(|pair| format!("{} to {}", pair.distal.spoken(), pair.proximal.spoken()))
        .collect();
    if let Some(first) = undecided.first() {
        let more =
            if undecided.len() > 1 { format!(" and {} more", undecided.len() - 1) } else { String::new() };
        return Some(format!("the stretch alone does not decide {first}{more}; it depends on the fabric"));
    }
    if graduation.all().any(|pair| pair.grade.is_none()) {
        return Some("a mark lies beyond the tested stretch".to_owned());
    }
    let has = |landmark| worn.marks.iter().any(|mark| mark.landmark == landmark);
    let stated = if graduation.basis == GraduationBasis::Readings {
        "a reading"
    } else {
        "a relaxed girth with a measured mark"
    };
    if !has(reference) {
        return Some(format!("{stated} at the {} is missing", reference.spoken()));
    }
    let judged_top = if top.is_joint() { top.below().unwrap_or(top) } else { top };
    if !worn.marks.iter().any(|mark| mark.landmark == judged_top) {
        return Some(format!("{stated} at the garment's upper end, {}, is missing", judged_top.spoken()));
    }
    Some(format!("{stated} between {} and {} is missing", reference.spoken(), judged_top.spoken()))
}
