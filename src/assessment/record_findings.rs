//! Owns which findings hold for the record and the limb as measured.

use super::Setting;
use crate::finding::{self, Finding, Place};
use crate::input::YesNo;
use crate::pressure::Ellipse;
use crate::record::{
    Affected, Confirmable, LimbRecord, Mark, MarkPlace, Misreading, MisreadingKind, Pitting, Question,
    QuestionKind, Record, Unusual, falls, questions,
};
use crate::rules::NumberId;
use crate::words;

/// A mark as said: `at the wrist`, `at 12.0 cm`.
pub(super) fn at_mark(place: MarkPlace) -> String {
    place.landmark.map_or_else(|| format!("at {}", words::cm(place.at.tenths())), words::at)
}

/// A mark as named: `wrist`, `mark at 12.0 cm`.
fn mark_name(place: MarkPlace) -> String {
    place.landmark.map_or_else(|| format!("mark at {}", words::cm(place.at.tenths())), words::noun)
}

/// Every finding of the record as measured.
pub(super) fn of_record(record: &Record, earlier: &[&Record], setting: &Setting) -> Vec<Finding> {
    let asked = questions(record, earlier, &setting.rules);
    let mut found: Vec<Finding> = asked.iter().map(|one| of_question(record, one)).collect();
    for (index, limb) in record.limbs.iter().enumerate() {
        let place = Place::limb(index);
        found.extend(repeats(limb, &asked, place, setting));
        found.extend(shape(record, limb, &asked, place, setting));
        found.extend(observed(record, limb, place));
        found.extend(limb.marks.iter().filter_map(|mark| calipers(mark, place)));
    }
    if record.affected == Affected::Both && record.limbs.iter().any(|limb| record.other_marks(limb).is_some())
    {
        found.push(finding::both_affected::both_affected(Place::CLIENT));
    }
    found
}

/// The place of a question in the report.
fn place_of(record: &Record, question: &Question) -> Place {
    let own = question.side.map(|side| if question.of_other { side.other() } else { side });
    let index = own.and_then(|side| record.limbs.iter().position(|limb| limb.side == side));
    index.map_or(Place::CLIENT, Place::limb)
}

fn of_question(record: &Record, question: &Question) -> Finding {
    let place = place_of(record, question);
    let other = if question.of_other { " on the other limb" } else { "" };
    let word = question.words().iter().map(|word| confirm_word(*word)).collect::<Vec<_>>().join(", ");
    let guesses: Vec<String> = question.misreadings().iter().map(guess).collect();
    match &question.kind {
        QuestionKind::Unusual { unusual, .. } => {
            let ratios_only = unusual.iter().all(|one| matches!(one, Unusual::Ratio { .. }));
            let said: Vec<String> =
                unusual.iter().map(|one| format!("{}{other}", unusual_words(one))).collect();
            if ratios_only {
                finding::unusual_proportion::unusual_proportion(place, &said, &guesses, &word)
            } else {
                finding::unusual_girth::unusual_girth(place, &said, &guesses, &word)
            }
        }
        QuestionKind::Repeats { place: mark, least, most } => {
            let values = format!("{} to {}", words::cm_short(least.tenths()), words::cm_short(most.tenths()));
            let at = format!("{}{other}", at_mark(*mark));
            finding::repeats_apart::repeats_apart(
                place,
                &at,
                &values,
                most.tenths() - least.tenths(),
                Some(&word),
            )
        }
        QuestionKind::SinceVisit { moved, .. } => {
            let said: Vec<String> = moved
                .iter()
                .map(|one| {
                    format!(
                        "{} {} after {}",
                        words::cm(one.now.tenths()),
                        at_mark(one.place),
                        words::cm(one.was.tenths())
                    )
                })
                .collect();
            let since = question.against().unwrap_or(record.measured_on);
            finding::girth_changed::girth_changed(place, &said, since, &guesses, &word)
        }
        QuestionKind::Thinner { mean_log, .. } => {
            finding::thinner::thinner(place, 100.0 * (1.0 - mean_log.exp()))
        }
        QuestionKind::NotAffected { fitted, affected } => {
            let recorded = match affected {
                Affected::One(side) => format!("the {} {}", side.name(), record.limb.name()),
                Affected::Both => "both sides".to_owned(),
                Affected::Neither => "neither side".to_owned(),
            };
            let is = if *affected == Affected::Both { "are" } else { "is" };
            let recorded = format!("{recorded} {is}");
            finding::affected::affected(
                place,
                &format!("{} {}", fitted.name(), record.limb.name()),
                &recorded,
                match affected {
                    Affected::One(side) if record.is_both() => {
                        Some(format!("{} {}", side.name(), record.limb.name()))
                    }
                    _ => None,
                }
                .as_deref(),
            )
        }
        QuestionKind::Length { name, stated, by_positions } => finding::lengths::lengths(
            place,
            &[format!(
                "{} {}, by the positions {}",
                name.name().replace('-', " "),
                words::cm(stated.tenths()),
                words::cm(by_positions.tenths())
            )],
        ),
        QuestionKind::Positions { apart } => {
            let said: Vec<String> = apart
                .iter()
                .map(|(landmark, here, there)| {
                    format!(
                        "{} {} and {}",
                        words::noun(*landmark),
                        words::cm_short(here.tenths()),
                        words::cm(there.tenths())
                    )
                })
                .collect();
            finding::positions::positions(place, &said)
        }
        QuestionKind::Arterial { stated, quotient } => {
            finding::arterial_differ::arterial_differ(place, *stated, *quotient)
        }
        QuestionKind::ClientLabel => finding::client_reference::client_reference(place),
    }
}

/// The word of `confirmed`.
fn confirm_word(word: Confirmable) -> String {
    match word {
        Confirmable::Mark(landmark) => landmark.name().to_owned(),
        Confirmable::Affected => "affected".to_owned(),
        Confirmable::Thinner => "thinner".to_owned(),
        Confirmable::Lengths => "lengths".to_owned(),
        Confirmable::Positions => "positions".to_owned(),
        Confirmable::Arterial => "arterial".to_owned(),
        Confirmable::Client => "client".to_owned(),
    }
}

fn unusual_words(one: &Unusual) -> String {
    match one {
        Unusual::Large { place, girth } => {
            format!("{} {} (above 200 cm)", words::cm(girth.tenths()), at_mark(*place))
        }
        Unusual::Band { place, girth, low_cm, high_cm, .. } => format!(
            "{} {} (usual {} to {} cm)",
            words::cm(girth.tenths()),
            at_mark(*place),
            words::trimmed(*low_cm, 1),
            words::trimmed(*high_cm, 1)
        ),
        Unusual::Ratio { band, ratio } => format!(
            "{} over {} {} (usual {} to {})",
            words::noun(band.of),
            words::noun(band.to),
            words::decimal(*ratio, 2),
            words::decimal(band.low, 2),
            words::decimal(band.high, 2)
        ),
        Unusual::Neighbours(beside) => format!(
            "{} {} times its neighbours (usual {} to {})",
            mark_name(beside.place),
            words::decimal(beside.ratio, 2),
            words::trimmed(beside.low, 2),
            words::trimmed(beside.high, 2)
        ),
    }
}

/// One probable misreading as said: `wrist 16.9 cm (decimal point, or mm for cm)`.
fn guess(one: &Misreading) -> String {
    let what = match one.kind {
        MisreadingKind::Point => "decimal point, or mm for cm",
        MisreadingKind::LostDigit => "first digit lost",
        MisreadingKind::Inches => "inches for cm",
        MisreadingKind::NotInches => "cm for inches",
        MisreadingKind::Digits => "two digits swapped",
        MisreadingKind::OtherDigit => "another digit",
        MisreadingKind::Exchanged => "two marks exchanged",
        MisreadingKind::Diameters => "diameters for girths",
        MisreadingKind::Reversed => "list turned round",
    };
    if one.whole_limb {
        return format!("all girths ({what})");
    }
    let instead: Vec<String> = one
        .instead
        .iter()
        .map(|(place, girth)| format!("{} {}", mark_name(*place), words::cm(girth.tenths())))
        .collect();
    format!("{} ({what})", words::list(&instead))
}

/// Repeats that lie apart without being asked about.
fn repeats(limb: &LimbRecord, asked: &[Question], place: Place, setting: &Setting) -> Vec<Finding> {
    let most = setting.number(NumberId::RepeatGap);
    let is_asked = |mark: &Mark| {
        asked.iter().any(|one| matches!(&one.kind, QuestionKind::Repeats { place, .. } if place.is_same(MarkPlace::of(mark))))
    };
    let apart = |mark: &&Mark| mark.is_gap_above(most) && !is_asked(mark);
    let own = limb.marks.iter().filter(apart).map(|mark| (mark, ""));
    let other = limb.other_limb.iter().flatten().filter(apart).map(|mark| (mark, " on the other limb"));
    own.chain(other)
        .map(|(mark, where_else)| {
            let all: Vec<String> = std::iter::once(mark.first)
                .chain(mark.again.iter().copied())
                .map(|girth| words::cm_short(girth.tenths()))
                .collect();
            let at = format!("{}{where_else}", at_mark(MarkPlace::of(mark)));
            let place = mark.landmark.map_or(place, |landmark| place.at(landmark));
            finding::repeats_apart::repeats_apart(place, &at, &words::list(&all), mark.gap_tenths(), None)
        })
        .collect()
}

/// Girths that fall toward the trunk and steep slopes; silent where the girth itself is asked about.
fn shape(
    record: &Record,
    limb: &LimbRecord,
    asked: &[Question],
    place: Place,
    setting: &Setting,
) -> Vec<Finding> {
    let questioned: Vec<MarkPlace> =
        asked.iter().filter(|one| place_of(record, one) == place).flat_map(Question::places).collect();
    let is_asked = |mark: MarkPlace| questioned.iter().any(|one| one.is_same(mark));
    let mut found = Vec::new();
    let all: Vec<String> = falls(record, limb, &setting.rules)
        .iter()
        .filter(|fall| !is_asked(fall.distal) && !is_asked(fall.proximal))
        .map(|fall| {
            let exchange = if fall.is_exchange { ", or the two were exchanged" } else { "" };
            format!(
                "by {} from {} to {}{exchange}",
                words::cm(fall.by_tenths),
                mark_name(fall.distal),
                mark_name(fall.proximal)
            )
        })
        .collect();
    if !all.is_empty() {
        let mut one = finding::girth_falls::girth_falls(place, &all);
        raise(&mut one, setting);
        found.push(one);
    }
    found.extend(slopes(record, limb, &is_asked, place, setting));
    found
}

fn slopes(
    record: &Record,
    limb: &LimbRecord,
    is_asked: &dyn Fn(MarkPlace) -> bool,
    place: Place,
    setting: &Setting,
) -> Option<Finding> {
    let marks = record.limb_marks(&limb.marks);
    let caution = setting.number(NumberId::SlopeCaution);
    let strong = setting.number(NumberId::SlopeStrong);
    let mut said = Vec::new();
    let mut steepest: f64 = 0.0;
    for pair in marks.windows(2) {
        let [distal, proximal] = pair else { continue };
        let length = proximal.at.cm() - distal.at.cm();
        if length <= 0.0 || is_asked(MarkPlace::of(distal)) || is_asked(MarkPlace::of(proximal)) {
            continue;
        }
        let slope = (proximal.girth().cm() - distal.girth().cm()) / length;
        if slope.abs() > caution {
            steepest = steepest.max(slope.abs());
            said.push(format!(
                "{} cm a cm from {} to {}",
                words::decimal(slope, 1),
                mark_name(MarkPlace::of(distal)),
                mark_name(MarkPlace::of(proximal))
            ));
        }
    }
    if said.is_empty() {
        return None;
    }
    let mut one = finding::slope_steep::slope_steep(place, &said, steepest > strong);
    raise(&mut one, setting);
    Some(one)
}

/// Calipers and tape may differ by this share of the tape (house rule: no limb is so far from an ellipse).
const CALIPERS_APART: f64 = 0.1;

/// Two calipers whose ellipse has another girth than the tape.
fn calipers(mark: &Mark, place: Place) -> Option<Finding> {
    let (wide, deep) = mark.calipers?;
    let around = Ellipse::from_diameters(wide.cm(), deep.cm())?.girth_cm();
    let tape = mark.girth().cm();
    let own = mark.landmark.map_or(place, |landmark| place.at(landmark));
    let said = at_mark(MarkPlace::of(mark));
    ((around / tape - 1.0).abs() > CALIPERS_APART)
        .then(|| finding::calipers_differ::calipers_differ(own, &said, around, tape))
}

/// The severity that the rules raise a finding of the house to.
pub(super) fn raise(found: &mut Finding, setting: &Setting) {
    if let Some(severity) = setting.rules.raised(found.id.text()) {
        found.severity = severity;
    }
}

/// What was seen: pitting, folds, distortion, hand or foot, swelling beyond.
fn observed(record: &Record, limb: &LimbRecord, place: Place) -> Vec<Finding> {
    let seen = &limb.observed;
    let mut found = Vec::new();
    let is = |answer: Option<YesNo>| answer == Some(YesNo::Yes);
    let strong = seen.pitting == Some(Pitting::Strong);
    if strong && is(seen.folds) {
        found.push(finding::reduce_first::reduce_first(place));
    } else if strong {
        found.push(finding::pitting_strong::pitting_strong(place));
    }
    let mut shape = Vec::new();
    if is(seen.folds) {
        shape.push("folds");
    }
    if is(seen.distortion) {
        shape.push("a distorted shape");
    }
    if !shape.is_empty() {
        found.push(finding::shape_irregular::shape_irregular(place, &shape));
    }
    if is(seen.extremity_swelling) {
        found.push(finding::hand_part_needed::hand_part_needed(place, record.limb.extremity()));
    }
    if is(seen.swelling_beyond) {
        found.push(finding::swelling_beyond::swelling_beyond(place));
    }
    found
}
