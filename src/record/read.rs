//! Owns the reading of a record file; every problem in it is raised in one run.

use super::read_answers::{read_allergies, read_cause, read_confirmed, read_screening};
use super::read_limb::{Top, read_both, read_one};
use super::read_pressure::read_prescribed;
use super::read_use::{read_dates, read_labels};
use super::{Affected, AgeBand, Allergies, Origin, Record, RecordSpots, VolumeMethod};
use crate::anatomy::{Limb, Side};
use crate::input::{Fields, Item, Reader};
use crate::quantity::Dimension;

/// Which limbs a record is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Sides {
    One(Side),
    Both,
}

/// Reads a record; none when the reader has raised problems that leave no record to look at.
///
/// A record may be given beside problems that leave it whole; the caller asks [`Reader::has_problems`].
///
/// ```
/// use tapeline::input::{Reader, Source};
/// use tapeline::record::read_record;
///
/// # fn example() -> Option<()> {
/// let text = "tapeline: record/1
/// client: L-0417
/// measured_on: 2026-03-14
/// units: {length: cm}
/// limb: left arm
/// affected: left
/// positions_from: wrist
/// marks: [{landmark: wrist, at: 0, girth: [16.9, 17.1]}]
/// ";
/// let source = Source::from_bytes("arm.yaml".to_owned(), text.as_bytes().to_vec()).ok()?;
/// let reader = Reader::new(source).ok()?;
/// let record = read_record(&reader)?;
/// assert!(!reader.has_problems());
/// assert_eq!(record.limbs[0].marks[0].girth().cm(), 17.0);
/// # Some(())
/// # }
/// # assert!(example().is_some());
/// ```
pub fn read_record(reader: &Reader) -> Option<Record> {
    let fields = reader.fields("record/1")?;
    let client = fields
        .required("client", "the clinic's reference code, as `client: K-0417`")
        .and_then(|one| one.label());
    let measured = fields
        .required("measured_on", "the date, as `measured_on: 2026-03-14`")
        .and_then(|one| one.date_and_time());
    let measured_by = fields.optional("measured_by").and_then(|one| one.label());
    let age_band = fields
        .optional("age_band")
        .map(|one| one.word(&[("adult", AgeBand::Adult), ("child", AgeBand::Child)]));
    let limb_item = fields.required("limb", "side and limb, as `limb: left arm`");
    let limb = limb_item.as_ref().and_then(read_limb_word);
    let affected = fields
        .required("affected", "the affected side: left, right, both or none")
        .and_then(|one| one.word(&Affected::WORDS));
    let cause = fields.optional("cause").and_then(|one| read_cause(&one)).unwrap_or_default();
    let posture = fields.optional("posture").and_then(|one| one.label());
    // Marks and landmarks can only be read once the limb is known; an arm is assumed for no other purpose.
    let kind = limb.map_or_else(|| guess_limb(&fields), |(_, limb)| limb);
    let positions_from = fields
        .required("positions_from", "the zero of `at`: wrist, styloid, fingertip, heel or floor")
        .and_then(|one| read_origin(&one, kind));
    let sides = limb.map(|(sides, _)| sides);
    let is_both =
        sides == Some(Sides::Both) || (limb.is_none() && (fields.has("left") || fields.has("right")));
    let limbs = match (is_both, sides) {
        (true, _) => read_both(&fields, kind),
        (false, Some(Sides::One(side))) => read_one(&fields, kind, side).map(|one| vec![one]),
        // The limb's own fault has been told; its block is read for the faults in it.
        (false, _) => read_one(&fields, kind, Side::Left).map(|one| vec![one]),
    };
    let top = Top::read(&fields, kind);
    let prescribed = fields.optional("prescribed").and_then(|one| read_prescribed(&one));
    let screening = fields.blank_or("screening").and_then(|one| read_screening(&one)).unwrap_or_default();
    let allergies =
        fields.blank_or("allergies").map_or(Some(Allergies::NotAsked), |one| read_allergies(&one));
    let confirmed =
        fields.blank_or("confirmed").and_then(|one| read_confirmed(&one, kind)).unwrap_or_default();
    let infections = fields.blank_or("infections").and_then(|one| read_dates(&one)).unwrap_or_default();
    let dominance = fields
        .optional("dominance")
        .and_then(|one| one.word(&[("left", Side::Left), ("right", Side::Right)]));
    let baseline = fields.optional("baseline").and_then(|one| one.yes_no());
    let shown = fields.blank_or("shown").and_then(|one| read_labels(&one)).unwrap_or_default();
    let weight_kg = fields.optional("weight").and_then(|one| read_weight(&one));
    let volume_method = fields.optional("volume_method").and_then(|one| one.word(&VolumeMethod::WORDS));
    fields.finish();
    let spots = RecordSpots {
        client: fields.spot_of("client"),
        limb: fields.spot_of("limb"),
        measured_on: fields.spot_of("measured_on"),
        affected: fields.spot_of("affected"),
    };

    let (measured_on, measured_at) = measured?;
    let (_, limb) = limb?;
    Some(Record {
        file: reader.source().name.clone(),
        client: client?,
        measured_on,
        measured_at: measured_at.and_then(|time| time.parse().ok()),
        measured_by,
        age_band: age_band.map_or(Some(AgeBand::Adult), |one| one)?,
        limb,
        limbs: limbs?,
        affected: affected?,
        cause,
        posture,
        positions_from: positions_from?,
        prescribed,
        screening,
        allergies: allergies?,
        confirmed,
        cleared: top.cleared,
        infections,
        dominance,
        baseline: baseline.unwrap_or(false),
        shown,
        weight_kg,
        volume_method: volume_method.unwrap_or(VolumeMethod::Frustum),
        spots,
    })
}

fn read_limb_word(item: &Item<'_>) -> Option<(Sides, Limb)> {
    let text = item.text()?;
    let found = text.split_once(' ').and_then(|(side, limb)| match side.trim() {
        "both" => {
            let limb = limb.trim();
            Some((Sides::Both, Limb::parse(limb.strip_suffix('s').unwrap_or(limb))?))
        }
        side => Some((Sides::One(Side::parse(side)?), Limb::parse(limb)?)),
    });
    if found.is_none() {
        item.refuse(format!(
            "`{text}` is no limb; write `left arm`, `right arm`, `both arms`, `left leg`, `right leg` or `both legs`"
        ));
    }
    found
}

/// Which limb the marks speak of while `limb:` itself is missing or wrong, so that its fault alone is told.
fn guess_limb(fields: &Fields<'_>) -> Limb {
    let leg = fields.each().any(|(key, _, item)| {
        key == "positions_from" && item.text().is_some_and(|text| text == "heel" || text == "floor")
    });
    if leg { Limb::Leg } else { Limb::Arm }
}

fn read_origin(item: &Item<'_>, limb: Limb) -> Option<Origin> {
    let origin = item.word(&Origin::WORDS)?;
    if origin.limb() != limb {
        let own = Origin::WORDS.iter().filter(|(_, one)| one.limb() == limb);
        let own: Vec<&str> = own.map(|(word, _)| *word).collect();
        item.refuse(format!(
            "`{}` is no origin on the {}; accepted: {}",
            origin.name(),
            limb.name(),
            own.join(", ")
        ));
        return None;
    }
    Some(origin)
}

/// Body weight, kg. House rule: outside 1 to 500 kg is a misreading, not a body weight.
fn read_weight(item: &Item<'_>) -> Option<f64> {
    let kilograms = item.not_negative(Dimension::Mass)?;
    let plausible = (1.0..=500.0).contains(&kilograms);
    if !plausible {
        item.refuse("is no body weight from 1 to 500 kg; check number and unit");
    }
    plausible.then_some(kilograms)
}
