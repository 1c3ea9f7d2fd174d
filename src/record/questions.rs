//! Owns the questions that a record raises and does not answer with `confirmed`.

use super::consistency::{
    affected_question, arterial_question, client_question, length_questions, position_question,
    thinner_question,
};
use super::girths::Girths;
use super::misreadings::{Held, misreadings};
use super::since_visit::{Last, since_visit};
use super::unusual::{Unusual, unusual};
use super::{AgeBand, Confirmable, LimbRecord, Mark, MarkPlace, Question, QuestionKind, Record};
use crate::anatomy::{Landmark, Side};
use crate::quantity::Girth;
use crate::rules::{NumberId, Rules};

/// The open questions of a record, held against its earlier visits (`earlier`, oldest first). A child is held
/// against no adult band.
///
/// ```
/// use tapeline::input::{Reader, Source};
/// use tapeline::record::{MisreadingKind, questions, read_record};
/// use tapeline::rules::read_rules;
///
/// # fn example() -> Option<()> {
/// let text = "tapeline: record/1
/// client: L-0417
/// measured_on: 2026-03-14
/// units: {length: cm}
/// limb: left arm
/// affected: left
/// positions_from: wrist
/// marks: [{landmark: wrist, at: 0, girth: 169}, {landmark: forearm, at: 14, girth: 25.8}]
/// ";
/// let source = Source::from_bytes("arm.yaml".to_owned(), text.as_bytes().to_vec()).ok()?;
/// let record = read_record(&Reader::new(source).ok()?)?;
/// let asked = questions(&record, &[], &read_rules(None).ok()?);
/// assert_eq!(asked[0].misreadings()[0].kind, MisreadingKind::Point);
/// # Some(())
/// # }
/// # assert!(example().is_some());
/// ```
pub fn questions(record: &Record, earlier: &[&Record], rules: &Rules) -> Vec<Question> {
    let mut all: Vec<Question> = client_question(record).into_iter().collect();
    for limb in &record.limbs {
        let confirmed: Vec<Landmark> = Landmark::of(record.limb)
            .iter()
            .copied()
            .filter(|landmark| record.is_confirmed(limb, Confirmable::Mark(*landmark)))
            .collect();
        let last = Last::of(record, earlier, limb.side, rules);
        let is_adult = record.age_band == AgeBand::Adult;
        let held = Held { limb: record.limb, confirmed: &confirmed, is_adult, last: last.as_ref(), rules };
        let mut found = of_marks(&limb.marks, limb.side, false, &held);
        if let Some(other) = &limb.other_limb {
            let held = Held { last: None, ..held };
            found.extend(of_marks(other, limb.side.other(), true, &held));
        }
        let asked: Vec<MarkPlace> = found.iter().flat_map(Question::places).collect();
        let asked_ratio = found.iter().flat_map(Question::landmarks).collect::<Vec<_>>();
        let is_asked = |place: MarkPlace| {
            asked.iter().any(|one| one.is_same(place))
                || place.landmark.is_some_and(|landmark| asked_ratio.contains(&landmark))
        };
        all.extend(found);
        all.extend(thinner_question(record, limb, rules, is_asked));
        all.extend(affected_question(record, limb));
        all.extend(length_questions(record, limb, rules));
        all.extend(position_question(record, limb, rules));
        all.extend(arterial_question(record, limb, rules));
    }
    all
}

/// What the girths of one limb ask: what is unusual, repeats far apart, a mark that moved alone.
fn of_marks(marks: &[Mark], side: Side, of_other: bool, held: &Held<'_>) -> Vec<Question> {
    let ask = |kind| Question { side: Some(side), of_other, kind };
    let girths = Girths::of(marks, held.limb, held.rules);
    let mut all: Vec<Question> = Vec::new();
    let apart = marks.iter().filter(|mark| {
        mark.is_gap_above(held.rules.number(NumberId::RepeatLimit)) && !held.is_confirmed(MarkPlace::of(mark))
    });
    let apart: Vec<(MarkPlace, Girth, Girth)> = apart.map(gap_of).collect();
    let is_apart = |place: MarkPlace| apart.iter().any(|(one, _, _)| *one == place);
    all.extend(apart.iter().map(|(place, least, most)| {
        ask(QuestionKind::Repeats { place: *place, least: *least, most: *most })
    }));
    let unusual = unusual(&girths, held.confirmed, held.is_adult, held.rules);
    // The mean of repeats far apart is no girth; it is asked about once.
    let unusual: Vec<Unusual> =
        unusual.into_iter().filter(|one| !one.place().is_some_and(&is_apart)).collect();
    let is_unusual = !unusual.is_empty();
    if is_unusual {
        let misreadings = misreadings(&girths, held, &[]);
        all.push(ask(QuestionKind::Unusual { unusual, misreadings }));
    }
    // One girth far off moves the mean of the others; it is mended first.
    if let Some(last) = held.last.filter(|_| !is_unusual) {
        let moved =
            since_visit(&girths, last, held.rules, |place| held.is_confirmed(place) || is_apart(place));
        if !moved.is_empty() {
            let places: Vec<MarkPlace> = moved.iter().map(|one| one.place).collect();
            let misreadings = misreadings(&girths, held, &places);
            all.push(ask(QuestionKind::SinceVisit { moved, misreadings }));
        }
    }
    all
}

fn gap_of(mark: &Mark) -> (MarkPlace, Girth, Girth) {
    let all = || std::iter::once(mark.first).chain(mark.again.iter().copied());
    (MarkPlace::of(mark), all().min().unwrap_or(mark.first), all().max().unwrap_or(mark.first))
}

impl LimbRecord {
    /// Whether the forearm or calf of this limb is swollen against the other one: its excess there is above
    /// that of the mark above it.
    pub(super) fn is_swollen_between(
        &self,
        other: Option<&[Mark]>,
        distal: Landmark,
        proximal: Landmark,
    ) -> bool {
        let of = |marks: &[Mark], landmark| {
            marks.iter().find(|mark| mark.landmark == Some(landmark)).map(|mark| mark.girth().cm())
        };
        let excess = |landmark| {
            let ratio = of(&self.marks, landmark)? / of(other?, landmark)?;
            Some(ratio)
        };
        excess(distal).is_some_and(|below| below > 1.0 && excess(proximal).is_none_or(|above| below > above))
    }
}
