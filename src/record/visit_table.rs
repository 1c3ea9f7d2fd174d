//! Owns the reading of visits from a table: a row for each day and side, a column for each mark.
//!
//! What a table cannot say (positions of landmarks, the affected side) it takes from a record of the same
//! client that is given beside it, or from columns of its own.

use std::collections::BTreeMap;

use jiff::civil::{Date, Time};

use super::visit_heading::{Columns, MarkHeading};
use super::visit_row::{MarkColumn, Visit, read_row};
use super::{
    Affected, AgeBand, Allergies, Cause, LimbRecord, Mark, Observed, Origin, Record, RecordSpots, Screening,
    VolumeMethod,
};
use crate::anatomy::{Landmark, Limb, Side};
use crate::input::{Problem, Spot, Table, Text};
use crate::quantity::Position;

/// Whether a header is that of a table of visits.
pub fn is_visit_table(header: &[String]) -> bool {
    let has = |name: &str| header.iter().any(|one| one.trim().eq_ignore_ascii_case(name));
    (has("date") || has("measured_on")) && has("side")
}

/// What a table does not say of its visits.
struct Pattern {
    client: Option<Text>,
    limb: Limb,
    origin: Option<Origin>,
    affected: Option<Affected>,
    sides: Option<Vec<Side>>,
    volume_method: VolumeMethod,
    age_band: AgeBand,
    dominance: Option<Side>,
}

impl Pattern {
    fn of(table: &Table, columns: &Columns, like: Option<&Record>) -> Result<Self, Problem> {
        if let Some(like) = like {
            return Ok(Self {
                client: Some(like.client.clone()),
                limb: like.limb,
                origin: Some(like.positions_from),
                affected: Some(like.affected),
                sides: Some(like.limbs.iter().map(|limb| limb.side).collect()),
                volume_method: like.volume_method,
                age_band: like.age_band,
                dominance: like.dominance,
            });
        }
        let Some(limb) = columns.marks.iter().find_map(|(_, heading)| heading.limb()) else {
            let what = "names no landmark of an arm or a leg; write words, as `wrist at 0 cm (cm)`, or give a record of the client beside it";
            return Err(table.header_problem(what));
        };
        Ok(Self {
            client: None,
            limb,
            origin: None,
            affected: None,
            sides: None,
            volume_method: VolumeMethod::Frustum,
            age_band: AgeBand::Adult,
            dominance: None,
        })
    }
}

/// Reads the visits of a table; `like` is a record of the same client and limb, whose positions, sides and
/// origin hold for the table. A record's spots are the numbers of its lines.
///
/// # Errors
/// Every problem of the table.
pub fn read_visit_table(table: &Table, like: Option<&Record>) -> Result<Vec<Record>, Vec<Problem>> {
    let columns = Columns::of(table).map_err(|problem| vec![problem])?;
    let pattern = Pattern::of(table, &columns, like).map_err(|problem| vec![problem])?;
    let mut problems = Vec::new();
    let mut places: Vec<MarkColumn<'_>> = Vec::new();
    for (at, heading) in &columns.marks {
        match place_of(heading, &pattern, like) {
            Ok((landmark, position)) => places.push((*at, landmark, position, heading)),
            Err(what) => problems.push(table.header_problem_at(*at, what)),
        }
    }
    places.sort_by_key(|(_, _, position, _)| *position);
    if let Some(what) = out_of_order(&places) {
        problems.push(table.header_problem(what));
    }
    if !problems.is_empty() {
        return Err(problems);
    }
    let mut visits: BTreeMap<(Date, Option<Time>), BTreeMap<Side, Visit>> = BTreeMap::new();
    for row in table.rows() {
        match read_row(table, row, &columns, &places, pattern.limb) {
            Ok(visit) => {
                let side = visit.side;
                let sides = visits.entry(visit.moment).or_default();
                if sides.insert(side, visit).is_some() {
                    let what =
                        format!("is a second row of the {} {} on one day", side.name(), pattern.limb.name());
                    problems.push(table.problem(row, columns.side, what));
                }
            }
            Err(problem) => problems.push(problem),
        }
    }
    if visits.is_empty() && problems.is_empty() {
        problems.push(table.header_problem("has no rows; add one for each day and side"));
    }
    let records: Vec<Result<Record, Problem>> =
        visits.into_iter().map(|(moment, sides)| record_of(table, &pattern, moment, sides)).collect();
    let mut whole = Vec::new();
    for record in records {
        match record {
            Ok(record) => whole.push(record),
            Err(problem) => problems.push(problem),
        }
    }
    if problems.is_empty() { Ok(whole) } else { Err(table.capped(problems)) }
}

fn place_of(
    heading: &MarkHeading,
    pattern: &Pattern,
    like: Option<&Record>,
) -> Result<(Option<Landmark>, Position), String> {
    let landmark = match &heading.landmark {
        Some(word) => {
            let found = Landmark::of_heading(pattern.limb, word);
            Some(found.ok_or_else(|| super::landmark_fault(word, pattern.limb))?)
        }
        None => None,
    };
    let of_record = || {
        let marks = like?.limbs.iter().flat_map(|limb| &limb.marks);
        let mut same = marks.filter(|mark| mark.landmark.is_some() && mark.landmark == landmark);
        same.next().map(|mark| mark.at)
    };
    heading.at.or_else(of_record).map(|at| (landmark, at)).ok_or_else(|| {
            let word = heading.landmark.clone().unwrap_or_default();
            format!(
                "does not say where `{word}` stands; write `{word} at 0 cm ({})`, or give a record of the client with that mark beside it",
                heading.unit.symbol()
            )
    })
}

fn out_of_order(places: &[MarkColumn<'_>]) -> Option<String> {
    let named: Vec<Landmark> = places.iter().filter_map(|(_, landmark, _, _)| *landmark).collect();
    let turned = named.windows(2).find_map(|pair| match pair {
        [below, above] if below >= above => Some(format!(
            "has `{}` nearer the trunk than `{}`; positions rise from {} toward the trunk",
            below.name(),
            above.name(),
            below.limb().extremity()
        )),
        _ => None,
    });
    let twice = places.windows(2).find_map(|pair| match pair {
        [(_, _, one, _), (_, _, other, _)] if one == other => {
            Some(format!("has two columns at {} cm; keep one", one.cm()))
        }
        _ => None,
    });
    turned.or(twice)
}

/// The record of one day.
fn record_of(
    table: &Table,
    pattern: &Pattern,
    (measured_on, measured_at): (Date, Option<Time>),
    mut sides: BTreeMap<Side, Visit>,
) -> Result<Record, Problem> {
    let missing = |what: &str| {
        Err(table.header_problem(format!("{what}, or give a record of the client beside the table")))
    };
    let first = |of: &dyn Fn(&Visit) -> Option<Text>| sides.values().find_map(of);
    let measured_by = first(&|visit| visit.measured_by.clone());
    let Some(client) = first(&|visit| visit.client.clone()).or_else(|| pattern.client.clone()) else {
        return missing("does not say whose visits these are; add a column `client`");
    };
    let affected = sides.values().find_map(|visit| visit.affected).or(pattern.affected);
    let affected = match (affected, sides.len()) {
        (Some(affected), _) => affected,
        (None, 1) => Affected::One(sides.keys().next().copied().unwrap_or(Side::Left)),
        (None, _) => {
            return missing(
                "does not say which side is affected; add a column `affected` (left, right, both, none)",
            );
        }
    };
    let origin = sides.values().find_map(|visit| visit.origin).or(pattern.origin);
    let Some(positions_from) = origin else {
        return missing("does not say where positions are taken from; add a column `positions_from`");
    };
    let weight_kg = sides.values().find_map(|visit| visit.weight_kg);
    let line = sides.values().map(|visit| visit.line).min().unwrap_or_default();
    let wanted: Vec<Side> = match (&pattern.sides, affected) {
        (Some(sides), _) => sides.clone(),
        (None, Affected::One(side)) => vec![side],
        (None, _) => sides.keys().copied().collect(),
    };
    let mut limbs = Vec::new();
    for side in &wanted {
        let Some(visit) = sides.remove(side) else {
            return Err(table.header_problem(format!(
                "has no row of the {} {} on {measured_on}; add one, or take the day out",
                side.name(),
                pattern.limb.name()
            )));
        };
        limbs.push(limb_of(*side, visit.marks));
    }
    if let ([limb], Some((_, other))) = (limbs.as_mut_slice(), sides.into_iter().next()) {
        limb.other_limb = Some(other.marks);
    }
    let spot = Spot(line);
    Ok(Record {
        file: table.source().name.clone(),
        client,
        measured_on,
        measured_at,
        measured_by,
        age_band: pattern.age_band,
        limb: pattern.limb,
        limbs,
        affected,
        cause: Cause::default(),
        posture: None,
        positions_from,
        prescribed: None,
        screening: Screening::default(),
        allergies: Allergies::NotAsked,
        confirmed: Vec::new(),
        cleared: Vec::new(),
        infections: Vec::new(),
        dominance: pattern.dominance,
        baseline: false,
        shown: Vec::new(),
        weight_kg,
        volume_method: pattern.volume_method,
        spots: RecordSpots { client: spot, limb: spot, measured_on: spot, affected: spot },
    })
}

fn limb_of(side: Side, marks: Vec<Mark>) -> LimbRecord {
    LimbRecord {
        side,
        marks,
        other_limb: None,
        lengths: BTreeMap::new(),
        observed: Observed::default(),
        prescribed: None,
        screening: Screening::default(),
        arterial: None,
        confirmed: Vec::new(),
        cleared: Vec::new(),
        readings: Vec::new(),
        garments: Vec::new(),
        infections: Vec::new(),
    }
}
