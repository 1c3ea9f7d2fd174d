//! Owns which findings hold for the limb as measured.

use jiff::civil::Date;
use jiff::{Span, ToSpan as _};

use super::OpenRecord;
use crate::anatomy::Landmark;
use crate::finding::Finding;
use crate::input::YesNo;
use crate::record::{AgeBand, Mark, Record, Unusual, WhichLimb, limb_marks, questions};
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
    for question in questions(record, rules) {
        let words = match question.limb {
            WhichLimb::Measured => format!("{} {}", record.side.name(), record.limb.name()),
            WhichLimb::Other => format!("Other {}", record.limb.name()),
        };
        let words = capital(&words);
        found.push(match &question.unusual {
            Unusual::Girth(band, girth) => Finding::unusual_girth(&words, band, *girth, &question.slips),
            Unusual::Ratio(band, ratio) => Finding::unusual_proportion(&words, band, *ratio, &question.slips),
        });
    }
    found.extend(of_shape(record, rules));
    let observed = &record.observed;
    if observed.pitting == Some(YesNo::Yes) {
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
    if !irregular.is_empty() {
        found.push(Finding::shape_irregular(&irregular));
    }
    if let Some(volume) = volume
        && let Some(why) = why_not_compared(volume)
    {
        found.push(Finding::volume_not_compared(record.limb, why));
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

/// Girths that fall or change fast. Exempt from the fall: hand to wrist, everything distal to the
/// ankle, calf to below the knee, and the joint.
fn of_shape(record: &Record, rules: &Rules) -> Vec<Finding> {
    let mut found = Vec::new();
    let marks = limb_marks(&record.marks, record.limb, record.positions_from);
    let without_joint: Vec<&Mark> =
        marks.iter().copied().filter(|mark| !mark.landmark.is_some_and(Landmark::is_joint)).collect();
    // Smaller falls than the gap allowed between two readings are the tape's.
    let least = rules.number(NumberId::ReadingGap) * 100.0;
    for pair in without_joint.windows(2) {
        let [distal, proximal] = pair else { continue };
        let exempt =
            distal.landmark == Some(Landmark::Calf) && proximal.landmark == Some(Landmark::BelowKnee);
        let fall = distal.girth().tenths() - proximal.girth().tenths();
        if !exempt && f64_of(fall) > least {
            found.push(Finding::girth_falls(
                &mark_words(distal),
                &mark_words(proximal),
                proximal.landmark,
                fall,
            ));
        }
    }
    let (care, strong) = (rules.number(NumberId::SlopeCare), rules.number(NumberId::SlopeStrong));
    for pair in marks.windows(2) {
        let [distal, proximal] = pair else { continue };
        let rise = f64_of(proximal.girth().tenths() - distal.girth().tenths());
        let run = f64_of(proximal.at.tenths() - distal.at.tenths());
        let slope = (rise / run).abs();
        if slope > care {
            let words = (mark_words(distal), mark_words(proximal));
            found.push(Finding::slope_steep(&words.0, &words.1, proximal.landmark, slope, slope > strong));
        }
    }
    found
}
