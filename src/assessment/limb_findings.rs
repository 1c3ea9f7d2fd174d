//! Owns which findings hold for the limb as measured.

use jiff::civil::Date;
use jiff::{Span, ToSpan as _};

use super::OpenRecord;
use crate::anatomy::Landmark;
use crate::finding::Finding;
use crate::input::YesNo;
use crate::record::{
    Affected, AgeBand, Mark, Record, Unusual, WhichLimb, girth_changes, limb_marks, questions, weight_change,
};
use crate::rules::{Basis, NumberId, Rules, Severity};
use crate::volume::Comparison;

/// Findings about the record and the limb.
pub(super) fn of_limb(
    open: &OpenRecord,
    volume: Option<&Comparison>,
    today: Date,
    rules: &Rules,
) -> Vec<Finding> {
    let record = &open.record;
    let mut found = Vec::new();
    found.extend(of_age(record, today, rules));
    if record.age_band == AgeBand::Child {
        found.push(Finding::child());
    }
    let gap_limit = rules.number(NumberId::ReadingGap) * 100.0;
    let all_marks = record.marks.iter().chain(record.other_limb.iter().flatten());
    for mark in all_marks.filter(|mark| f64_of(mark.gap_tenths()) > gap_limit) {
        found.push(Finding::readings_differ(
            mark.landmark,
            &mark_words(mark),
            mark.gap_tenths(),
            rules.number_basis(NumberId::ReadingGap),
        ));
    }
    let questions = questions(record, rules);
    let mut asked: Vec<Landmark> = Vec::new();
    for question in &questions {
        let words = match question.limb {
            WhichLimb::Measured => {
                asked.extend(question.landmarks());
                format!("{} {}", record.side.name(), record.limb.name())
            }
            WhichLimb::Other => format!("Other {}", record.limb.name()),
        };
        let words = capital(&words);
        found.push(match &question.unusual {
            Unusual::Girths(outside) => Finding::unusual_girth(&words, outside, &question.slips),
            Unusual::Ratios(outside) => Finding::unusual_proportion(&words, outside, &question.slips),
            Unusual::Thinner(thinner) => {
                Finding::side_thinner(thinner, rules.number_basis(NumberId::ThinnerSide))
            }
        });
    }
    found.extend(of_change(open, &asked, rules));
    found.extend(of_shape(record, &asked, rules));
    found.extend(of_observed(open, rules));
    if let Some(volume) = volume
        && let Some(why) = why_not_compared(volume)
    {
        found.push(Finding::volume_not_compared(record.limb, why));
    }
    found
}

/// What was seen on the limb. Where a screening item says the same, the item alone speaks.
fn of_observed(open: &OpenRecord, rules: &Rules) -> Vec<Finding> {
    let mut found = Vec::new();
    let observed = &open.record.observed;
    let says = |item: &str| open.screened.yes.iter().any(|one| one == item);
    if observed.pitting == Some(YesNo::Yes) && !says("still-reducing") {
        let rule = rules.observed.iter().find(|rule| rule.key == "pitting");
        found.push(Finding::pitting(
            rule.map_or(Basis::Memory, |rule| rule.basis),
            rule.map_or("", |rule| &rule.source),
        ));
    }
    let irregular: Vec<String> = [(observed.folds, "folds"), (observed.distortion, "a distorted shape")]
        .into_iter()
        .filter(|(answer, _)| *answer == Some(YesNo::Yes))
        .map(|(_, word)| word.to_owned())
        .collect();
    if !irregular.is_empty() && !says("deep-folds") {
        found.push(Finding::shape_irregular(&irregular));
    }
    if open.record.affected == Affected::Both && !says("new-two-sided-swelling") {
        found.push(Finding::both_affected());
    }
    found
}

/// What has changed since earlier records; a mark that is asked about already is not asked about twice.
fn of_change(open: &OpenRecord, asked: &[Landmark], rules: &Rules) -> Vec<Finding> {
    let mut found = Vec::new();
    let mut changes = girth_changes(&open.record, &open.previous, rules);
    changes.retain(|one| !one.landmark.is_some_and(|landmark| asked.contains(&landmark)));
    if !changes.is_empty() {
        found.push(Finding::girth_changed(&changes, rules.number_basis(NumberId::PreviousChange)));
    }
    if let Some(change) = weight_change(&open.record, &open.previous, rules) {
        let share = rules.number(NumberId::WeightChange);
        found.push(Finding::weight_changed(&change, share, rules.number_basis(NumberId::WeightChange)));
    }
    found
}

fn f64_of(tenths: i64) -> f64 {
    f64::from(i32::try_from(tenths).unwrap_or(i32::MAX))
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

/// `the wrist`, `the mark at 18 cm`.
fn mark_words(mark: &Mark) -> String {
    mark.landmark.map_or_else(
        || format!("the mark at {} cm", mark.at.cm()),
        |landmark| format!("the {}", landmark.spoken()),
    )
}

fn why_not_compared(volume: &Comparison) -> Option<&'static str> {
    if !volume.same_positions {
        Some("the two limbs are not measured at the same positions")
    } else if volume.measured_ml.is_none() {
        Some("there are fewer than two marks on the limb, or a disc volume without equal spacing")
    } else {
        None
    }
}

/// Whether `then` lies more than `months` calendar months before `today`.
pub(super) fn older_than(then: Date, months: f64, today: Date) -> bool {
    // Rules hold whole months up to 255.
    #[expect(clippy::cast_possible_truncation, reason = "read as a whole number up to 255")]
    let span: Span = (months.round() as i64).months();
    then.checked_add(span).is_ok_and(|limit| today > limit)
}

fn of_age(record: &Record, today: Date, rules: &Rules) -> Option<Finding> {
    if record.measured > today {
        return Some(Finding::dated_ahead(&record.measured.to_string(), &today.to_string()));
    }
    let limits = [(Severity::Review, NumberId::GirthAgeReview), (Severity::Care, NumberId::GirthAgeCare)];
    limits.into_iter().find(|(_, id)| older_than(record.measured, rules.number(*id), today)).map(
        |(severity, id)| {
            Finding::girths_old(
                severity,
                &record.measured.to_string(),
                rules.number(id),
                rules.number_basis(id),
            )
        },
    )
}

/// Girths that fall or change fast: the largest fall and the steepest stretch. Exempt from the fall:
/// hand to wrist, everything distal to the ankle, calf to below the knee, and the joint. A pair with a
/// girth that is asked about says nothing of its own.
fn of_shape(record: &Record, asked: &[Landmark], rules: &Rules) -> Vec<Finding> {
    let mut found = Vec::new();
    let doubted = |mark: &Mark| mark.landmark.is_some_and(|landmark| asked.contains(&landmark));
    let marks = limb_marks(&record.marks, record.limb, record.positions_from);
    let without_joint: Vec<&Mark> =
        marks.iter().copied().filter(|mark| !mark.landmark.is_some_and(Landmark::is_joint)).collect();
    // Smaller falls than the gap allowed between two readings are the tape's.
    let least = rules.number(NumberId::ReadingGap) * 100.0;
    let mut falls: Vec<(&Mark, &Mark, i64)> = Vec::new();
    for pair in without_joint.windows(2) {
        let [distal, proximal] = pair else { continue };
        let exempt =
            distal.landmark == Some(Landmark::Calf) && proximal.landmark == Some(Landmark::BelowKnee);
        let fall = distal.girth().tenths() - proximal.girth().tenths();
        if !exempt && !doubted(distal) && !doubted(proximal) && f64_of(fall) > least {
            falls.push((distal, proximal, fall));
        }
    }
    if let Some((distal, proximal, fall)) = first_largest(&falls, |one| f64_of(one.2)) {
        let words = (mark_words(distal), mark_words(proximal));
        found.push(Finding::girth_falls(&words.0, &words.1, proximal.landmark, *fall, falls.len() - 1));
    }
    let (care, strong) = (rules.number(NumberId::SlopeCare), rules.number(NumberId::SlopeStrong));
    let mut steep: Vec<(&Mark, &Mark, f64)> = Vec::new();
    for pair in marks.windows(2) {
        let [distal, proximal] = pair else { continue };
        let fell = falls.iter().any(|(one, other, _)| one.at == distal.at && other.at == proximal.at);
        let rise = f64_of(proximal.girth().tenths() - distal.girth().tenths());
        let run = f64_of(proximal.at.tenths() - distal.at.tenths());
        let slope = (rise / run).abs();
        if slope > care && !fell && !doubted(distal) && !doubted(proximal) {
            steep.push((distal, proximal, slope));
        }
    }
    if let Some((distal, proximal, slope)) = first_largest(&steep, |one| one.2) {
        let words = (mark_words(distal), mark_words(proximal));
        found.push(Finding::slope_steep(
            &words.0,
            &words.1,
            proximal.landmark,
            *slope,
            *slope > strong,
            steep.len() - 1,
        ));
    }
    found
}

fn first_largest<T>(all: &[T], size: impl Fn(&T) -> f64) -> Option<&T> {
    all.iter().reduce(|best, one| if size(one) > size(best) { one } else { best })
}
