//! Owns the reading of one row of a table of visits.

use jiff::civil::{Date, Time};

use super::visit_heading::{Columns, MarkHeading};
use super::{Affected, Mark, Origin};
use crate::anatomy::{Landmark, Limb, Side};
use crate::input::{Problem, Row, Spot, Table, Text};
use crate::quantity::{Decimal, Dimension, Girth, Position, Units, read_quantity};

/// One row, read.
pub(super) struct Visit {
    pub(super) moment: (Date, Option<Time>),
    pub(super) side: Side,
    pub(super) line: u32,
    pub(super) client: Option<Text>,
    pub(super) affected: Option<Affected>,
    pub(super) origin: Option<Origin>,
    pub(super) measured_by: Option<Text>,
    pub(super) weight_kg: Option<f64>,
    pub(super) marks: Vec<Mark>,
}

/// A column of girths with its place along the limb.
pub(super) type MarkColumn<'h> = (usize, Option<Landmark>, Position, &'h MarkHeading);

/// Reads a row.
pub(super) fn read_row(
    table: &Table,
    row: &Row,
    columns: &Columns,
    places: &[MarkColumn<'_>],
    limb: Limb,
) -> Result<Visit, Problem> {
    let moment = cell(table, row, columns.date, |text| {
        read_moment(text).ok_or_else(|| format!("`{text}` is no date; write year-month-day, as `2026-03-14`"))
    })?;
    let side = cell(table, row, columns.side, |text| {
        let word = text.strip_suffix(limb.name()).unwrap_or(text);
        Side::parse(word).ok_or_else(|| format!("`{text}` is no side; accepted: left, right"))
    })?;
    let client = cell(table, row, columns.client, |text| Text::new(text).map_err(|fault| fault.to_string()))?;
    let affected = cell(table, row, columns.affected, |text| word(text, &Affected::WORDS))?;
    let origins: Vec<(&str, Origin)> =
        Origin::WORDS.iter().filter(|(_, one)| one.limb() == limb).copied().collect();
    let origin = cell(table, row, columns.positions_from, |text| word(text, &origins))?;
    let weight_kg =
        cell(table, row, columns.weight_kg, |text| match Decimal::parse(text).map(Decimal::to_f64) {
            Ok(kilograms) if (1.0..=500.0).contains(&kilograms) => Ok(kilograms),
            Ok(_) => Err(format!("`{text}` is no body weight from 1 to 500 kg")),
            Err(fault) => Err(format!("`{text}` {fault}")),
        })?;
    let measured_by =
        cell(table, row, columns.measured_by, |text| Text::new(text).map_err(|fault| fault.to_string()))?;
    let (Some(moment), Some(side)) = (moment, side) else {
        return Err(table.problem(row, None, "has no date or no side; fill both in"));
    };
    let line = u32::try_from(row.line()).unwrap_or_default();
    let marks = read_marks(table, row, places, Spot(line))?;
    Ok(Visit { moment, side, line, client, affected, origin, measured_by, weight_kg, marks })
}

/// What a cell holds; none where it is empty.
fn cell<T>(
    table: &Table,
    row: &Row,
    column: Option<usize>,
    read: impl Fn(&str) -> Result<T, String>,
) -> Result<Option<T>, Problem> {
    match row.cell(column).map(read) {
        None => Ok(None),
        Some(Ok(value)) => Ok(Some(value)),
        Some(Err(what)) => Err(table.problem(row, column, what)),
    }
}

fn word<T: Copy>(text: &str, words: &[(&str, T)]) -> Result<T, String> {
    let found = words.iter().find(|(word, _)| *word == text).map(|(_, one)| *one);
    found.ok_or_else(|| {
        let accepted: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
        format!("`{text}` is not known; accepted: {}", accepted.join(", "))
    })
}

fn read_marks(table: &Table, row: &Row, places: &[MarkColumn<'_>], spot: Spot) -> Result<Vec<Mark>, Problem> {
    let mut marks = Vec::new();
    for (column, landmark, at, heading) in places {
        let units = Units::default().with(heading.unit);
        let girth = cell(table, row, Some(*column), |text| {
            let written = read_quantity(text, Dimension::Length, units);
            let written = written.map_err(|fault| format!("`{text}` {fault}"))?;
            written.tenth_millimetres().and_then(Girth::from_tenths).ok_or_else(|| {
                format!("a girth of `{text}` is not above 0 and at most 2000 cm; check number and unit")
            })
        })?;
        let Some(first) = girth else { continue };
        marks.push(Mark { landmark: *landmark, at: *at, first, again: Vec::new(), calipers: None, spot });
    }
    if marks.is_empty() {
        return Err(table.problem(row, None, "holds no girth; take the row out, or fill in a mark"));
    }
    Ok(marks)
}

fn read_moment(text: &str) -> Option<(Date, Option<Time>)> {
    let (date, time) = text.split_once(['T', ' ']).map_or((text, None), |(date, time)| (date, Some(time)));
    let is_written = date.len() == 10 && date.chars().filter(|c| *c == '-').count() == 2;
    let date: Date = date.parse().ok().filter(|_| is_written)?;
    match time {
        // A spreadsheet writes a day as midnight.
        Some("00:00:00" | "00:00") | None => Some((date, None)),
        Some(time) => Some((date, Some(time.parse().ok()?))),
    }
}
