//! Owns the reading of sizes from a table, in three forms: long (a row for each size and measure), wide
//! (`wrist_low_cm,wrist_high_cm`), and as leaflets print it (`16-18` in a cell).

use std::collections::BTreeMap;

use super::read_cell::{Heading, Part};
use super::read_sizes::{Ends, MOST_SIZES, faults};
use super::{Relaxed, Size, Variant};
use crate::anatomy::{Landmark, Limb};
use crate::input::{Problem, Row, Source, Table, Text};
use crate::quantity::{Girth, Range};
use crate::record::{LengthName, landmark_fault};

/// What the header should look like.
const FORMS: &str = "a table of sizes has `size,wrist_cm,forearm_cm` with `16-18` in a cell, `size,wrist_low_cm,wrist_high_cm`, or `size,measure,low_cm,high_cm` with a row for each measure";

/// Reads the sizes of a table; `limb` is known from the chart, or found from the measures.
///
/// # Errors
/// Every problem of the table.
pub(super) fn read_table(
    source: Source,
    limb: Option<Limb>,
    ends: Ends,
) -> Result<(Limb, Vec<Size>), Vec<Problem>> {
    let table = Table::read(source).map_err(|problem| vec![problem])?;
    let columns = Columns::of(&table).map_err(|(at, what)| vec![table.header_problem_at(at, what)])?;
    let Some(limb) = limb.or_else(|| columns.limb(&table)) else {
        let what = "names no measure of an arm or a leg; write landmarks as words, as `wrist` or `ankle`";
        return Err(vec![table.header_problem(what)]);
    };
    let mut reading =
        Reading { table: &table, limb, sizes: Vec::new(), places: BTreeMap::new(), problems: Vec::new() };
    for row in table.rows() {
        if let Err(problem) = reading.row(&columns, row) {
            reading.problems.push(problem);
        }
    }
    if table.rows().is_empty() {
        reading.problems.push(table.header_problem("has no rows; add one for each size"));
    }
    reading.finish(ends).map(|sizes| (limb, sizes))
}

/// The columns by what they hold.
struct Columns {
    size: usize,
    measure: Option<usize>,
    variant: Option<usize>,
    values: Vec<(usize, Heading)>,
}

impl Columns {
    /// The columns, or what is wrong with one of them.
    fn of(table: &Table) -> Result<Self, (usize, String)> {
        let mut found = Self { size: usize::MAX, measure: None, variant: None, values: Vec::new() };
        for (at, name) in table.header().iter().enumerate() {
            let word = name.trim().to_ascii_lowercase();
            match word.as_str() {
                "size" if found.size == usize::MAX => found.size = at,
                "" if at == 0 => found.size = at,
                "measure" if found.measure.is_none() => found.measure = Some(at),
                "variant" if found.variant.is_none() => found.variant = Some(at),
                _ => match Heading::parse(name) {
                    Some(heading) => found.values.push((at, heading)),
                    None if name.trim().is_empty() => {
                        return Err((at, format!("has a column without a name; {FORMS}")));
                    }
                    None => {
                        return Err((
                            at,
                            format!(
                                "has the column `{name}`, which is not known or has no unit; write the unit behind the measure, as `wrist_cm`, `wrist_mm` or `wrist_in`; {FORMS}"
                            ),
                        ));
                    }
                },
            }
        }
        if found.size == usize::MAX {
            let why = match found.variant {
                Some(_) => {
                    " (lengths are variants of a size: each row needs its size and girths beside them)"
                }
                None => "",
            };
            return Err((0, format!("has no column `size`{why}; {FORMS}")));
        }
        let long = found.measure.is_some();
        for (at, heading) in &found.values {
            let placed = if long {
                heading.measure.is_empty() && heading.part != Part::Range
            } else {
                !heading.measure.is_empty()
            };
            if !placed {
                return Err((*at, format!("mixes the forms of a table; {FORMS}")));
            }
        }
        for (number, (at, heading)) in found.values.iter().enumerate() {
            let same = |other: &Heading| other.measure == heading.measure && other.part == heading.part;
            if found.values.iter().take(number).any(|(_, other)| same(other)) {
                return Err((*at, format!("has two columns for one thing, `{}`; keep one", heading.measure)));
            }
        }
        if found.values.is_empty() {
            return Err((0, format!("has no column with a unit; {FORMS}")));
        }
        Ok(found)
    }

    fn limb(&self, table: &Table) -> Option<Limb> {
        let limb_of = |measure: &str| {
            let words = measure.to_lowercase().replace('_', " ");
            let word = words.trim().strip_prefix("floor to ").unwrap_or(words.trim());
            Landmark::word_of_heading(word.split(" to ").next()?).map(Landmark::limb)
        };
        match self.measure {
            Some(_) => table.rows().iter().find_map(|row| limb_of(row.cell(self.measure)?)),
            None => self.values.iter().find_map(|(_, heading)| limb_of(&heading.measure)),
        }
    }
}

/// Ends and relaxed girth of one measure of one row, as far as read.
#[derive(Clone, Copy, Debug, Default)]
struct Cells {
    range: Option<Range>,
    relaxed: Option<Girth>,
}

/// What a measure names.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Measure {
    Girth(Landmark),
    Length(LengthName),
}

struct Reading<'t> {
    table: &'t Table,
    limb: Limb,
    sizes: Vec<(Size, &'t Row)>,
    places: BTreeMap<Text, usize>,
    problems: Vec<Problem>,
}

impl<'t> Reading<'t> {
    fn row(&mut self, columns: &Columns, row: &'t Row) -> Result<(), Problem> {
        let fault = |column: usize, what: String| self.table.problem(row, Some(column), what);
        let label = row
            .cell(Some(columns.size))
            .ok_or_else(|| fault(columns.size, "is empty; give the size's label".to_owned()))?;
        let label = Text::new(label).map_err(|what| fault(columns.size, what.to_string()))?;
        let variant = row.cell(columns.variant).map(Text::new).transpose();
        let variant = variant.map_err(|what| fault(columns.variant.unwrap_or_default(), what.to_string()))?;
        let stated = self.stated(columns, row)?;
        let at = *self.places.entry(label.clone()).or_insert(self.sizes.len());
        if at == self.sizes.len() {
            if at >= MOST_SIZES {
                return Err(fault(
                    columns.size,
                    format!("is one size too many; at most {MOST_SIZES} are taken"),
                ));
            }
            let size =
                Size { label: label.clone(), girths: Vec::new(), relaxed: Vec::new(), variants: Vec::new() };
            self.sizes.push((size, row));
        } else if columns.measure.is_none() && columns.variant.is_none() {
            return Err(fault(
                columns.size,
                format!("the size `{label}` stands twice; give each size its own label"),
            ));
        }
        let Some((size, _)) = self.sizes.get_mut(at) else { return Ok(()) };
        for (column, measure, cells) in stated {
            match measure {
                Measure::Girth(landmark) => {
                    add_girth(size, landmark, cells, variant.is_some())
                        .map_err(|what| fault(column, what))?;
                }
                Measure::Length(name) => {
                    add_length(size, variant.as_ref(), name, cells).map_err(|what| fault(column, what))?;
                }
            }
        }
        Ok(())
    }

    /// The measures of a row with their first column and what their cells say.
    fn stated(&self, columns: &Columns, row: &Row) -> Result<Vec<(usize, Measure, Cells)>, Problem> {
        let fault = |column: usize, what: String| self.table.problem(row, Some(column), what);
        let long = match columns.measure {
            Some(column) => {
                let text = row
                    .cell(Some(column))
                    .ok_or_else(|| fault(column, "is empty; name a landmark".to_owned()))?;
                Some((column, self.measure(text).map_err(|what| fault(column, what))?))
            }
            None => None,
        };
        let mut found: Vec<(usize, Measure, Cells)> = Vec::new();
        for (column, heading) in &columns.values {
            let (first, measure) = match long {
                Some(known) => known,
                None => (
                    *column,
                    self.measure(&heading.measure)
                        .map_err(|what| self.table.header_problem_at(*column, what))?,
                ),
            };
            let known = found.iter().position(|(_, other, _)| *other == measure);
            let place = known.unwrap_or(found.len());
            if known.is_none() {
                found.push((first, measure, Cells::default()));
            }
            let Some((_, _, cells)) = found.get_mut(place) else { continue };
            let Some(text) = row.cell(Some(*column)) else { continue };
            let length = || heading.length(text).map_err(|what| fault(*column, format!("`{text}` {what}")));
            let open = Range { low: None, high: None };
            match heading.part {
                Part::Range => {
                    let range =
                        heading.range(text).map_err(|what| fault(*column, format!("`{text}` {what}")))?;
                    if cells.range.replace(range).is_some() {
                        return Err(fault(
                            *column,
                            "the measure stands twice, as a range and as its ends; keep one".to_owned(),
                        ));
                    }
                }
                Part::Low => {
                    cells.range = Some(Range { low: Some(length()?), ..cells.range.unwrap_or(open) });
                }
                Part::High => {
                    cells.range = Some(Range { high: Some(length()?), ..cells.range.unwrap_or(open) });
                }
                Part::Relaxed => cells.relaxed = Girth::from_tenths(length()?),
            }
        }
        for (column, _, cells) in &found {
            if let Some(Range { low: Some(low), high: Some(high) }) = cells.range
                && low > high
            {
                return Err(fault(
                    *column,
                    "the low end is above the high end; write the smaller first".to_owned(),
                ));
            }
        }
        Ok(found)
    }

    fn measure(&self, text: &str) -> Result<Measure, String> {
        let text = text.trim();
        if LengthName::is_heading(text) {
            return LengthName::of_heading(self.limb, text)
                .map(Measure::Length)
                .ok_or_else(|| format!("`{text}` is no stretch of the {}", self.limb.name()));
        }
        Landmark::of_heading(self.limb, text)
            .map(Measure::Girth)
            .ok_or_else(|| landmark_fault(text, self.limb))
    }

    fn finish(mut self, ends: Ends) -> Result<Vec<Size>, Vec<Problem>> {
        for (size, row) in &mut self.sizes {
            size.girths.sort_by_key(|(landmark, _)| *landmark);
            size.relaxed.sort_by_key(|(landmark, _)| *landmark);
            if size.girths.is_empty() {
                let what = format!("the size `{}` states no girth", size.label);
                self.problems.push(self.table.problem(row, None, what));
            } else if let Some(what) = ends.fault(&size.relaxed) {
                self.problems.push(self.table.problem(row, None, what));
            }
        }
        if self.problems.is_empty() {
            let all: Vec<&Size> = self.sizes.iter().map(|(size, _)| size).collect();
            for (at, what) in faults(&all) {
                self.problems.extend(self.sizes.get(at).map(|(_, row)| self.table.problem(row, None, what)));
            }
        }
        if self.problems.is_empty() {
            Ok(self.sizes.into_iter().map(|(size, _)| size).collect())
        } else {
            Err(self.problems)
        }
    }
}

fn add_girth(size: &mut Size, landmark: Landmark, cells: Cells, again: bool) -> Result<(), String> {
    let known = size.range_at(landmark);
    match (cells.range, known) {
        (Some(range), Some(before)) if range != before || !again => {
            return Err(format!("size `{}` states `{}` twice; keep one", size.label, landmark.name()));
        }
        (Some(_), Some(_)) => {}
        (Some(range), None) => size.girths.push((landmark, range)),
        (None, _) => {
            return Err(
                "states no girth; give at least one end, as `16-18`, `under 14` or `over 36`".to_owned()
            );
        }
    }
    match (cells.relaxed, size.relaxed_at(landmark)) {
        (Some(girth), Some(before)) if before.girth != girth => Err(format!(
            "size `{}` states the relaxed girth of `{}` twice; keep one",
            size.label,
            landmark.name()
        )),
        (Some(girth), None) => {
            size.relaxed.push((landmark, Relaxed::once(girth)));
            Ok(())
        }
        _ => Ok(()),
    }
}

fn add_length(size: &mut Size, variant: Option<&Text>, name: LengthName, cells: Cells) -> Result<(), String> {
    let Some(range) = cells.range else { return Ok(()) };
    let known = size.variants.iter().position(|one| one.name.as_ref() == variant);
    if known.is_none() {
        size.variants.push(Variant { name: variant.cloned(), lengths: Vec::new() });
    }
    let place = known.unwrap_or(size.variants.len() - 1);
    let Some(one) = size.variants.get_mut(place) else { return Ok(()) };
    if one.lengths.iter().any(|(other, _)| *other == name) {
        return Err(format!("size `{}` states `{}` twice; keep one", size.label, name.name()));
    }
    one.lengths.push((name, range));
    Ok(())
}
