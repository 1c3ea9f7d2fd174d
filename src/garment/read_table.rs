//! Owns the reading of sizes from a table: one row for each size and measure, the unit in the header.

use super::read_sizes::faults;
use super::{Size, Variant};
use crate::anatomy::{Between, Landmark, Limb};
use crate::input::{Problem, Row, Source, Table};
use crate::quantity::{Dimension, Girth, Range, Unit, Units, Written, read_quantity};
use crate::record::landmark_fault;

/// Reads the sizes of a table; `limb` is known from the chart, or found from the measures.
///
/// # Errors
/// Every problem of the table.
pub(super) fn read_table(source: Source, limb: Option<Limb>) -> Result<(Limb, Vec<Size>), Vec<Problem>> {
    let table = Table::read(source).map_err(|problem| vec![problem])?;
    let columns = Columns::of(&table).map_err(|what| vec![table.header_problem(what)])?;
    let Some(limb) = limb.or_else(|| limb_of(&table, &columns)) else {
        let what = "names no measure of an arm or a leg; write landmarks as words, as `wrist` or `ankle`";
        return Err(vec![table.header_problem(what)]);
    };
    let mut problems = Vec::new();
    let mut sizes: Vec<(Size, &Row)> = Vec::new();
    for row in table.rows() {
        if let Err(problem) = add_row(&table, &columns, row, limb, &mut sizes) {
            problems.push(problem);
        }
    }
    if table.rows().is_empty() {
        problems.push(table.header_problem("has no rows; add one for each size and measure"));
    }
    for (size, _) in &mut sizes {
        size.girths.sort_by_key(|(landmark, _)| *landmark);
        size.relaxed.sort_by_key(|(landmark, _)| *landmark);
    }
    if problems.is_empty() {
        let all: Vec<&Size> = sizes.iter().map(|(size, _)| size).collect();
        for (at, what) in faults(&all) {
            problems.extend(sizes.get(at).map(|(_, row)| table.problem(row, None, what)));
        }
    }
    if problems.is_empty() {
        Ok((limb, sizes.into_iter().map(|(size, _)| size).collect()))
    } else {
        Err(problems)
    }
}

struct Columns {
    size: usize,
    measure: usize,
    low: usize,
    high: usize,
    relaxed: Option<usize>,
    units: Units,
}

impl Columns {
    fn of(table: &Table) -> Result<Self, String> {
        const SHAPE: &str = "`size,measure,low_cm,high_cm` and, if known, `relaxed_cm`";
        let named = |name: &str| {
            table.column(name).ok_or_else(|| format!("has no column `{name}`; the header is {SHAPE}"))
        };
        let (size, measure) = (named("size")?, named("measure")?);
        let unit = ["cm", "mm", "m", "in"]
            .into_iter()
            .find(|unit| table.column(&format!("low_{unit}")).is_some())
            .ok_or_else(|| {
                format!("has no column `low_cm`; the header is {SHAPE}, with mm, m or in for another unit")
            })?;
        let (low, high) = (named(&format!("low_{unit}"))?, named(&format!("high_{unit}"))?);
        let relaxed = table.column(&format!("relaxed_{unit}"));
        let known = [Some(size), Some(measure), Some(low), Some(high), relaxed];
        if let Some(other) = (0..table.header().len()).find(|at| !known.contains(&Some(*at))) {
            let name = table.header().get(other).map_or("", String::as_str);
            return Err(format!(
                "has the column `{name}`, which is not known or has another unit; the header is {SHAPE}"
            ));
        }
        let units = Unit::parse(unit).map_or_else(Units::default, |unit| Units::default().with(unit));
        Ok(Self { size, measure, low, high, relaxed, units })
    }
}

fn limb_of(table: &Table, columns: &Columns) -> Option<Limb> {
    table.rows().iter().find_map(|row| {
        let measure = row.cell(Some(columns.measure))?;
        let word = measure.split(" to ").next()?;
        Landmark::parse_word(word).map(Landmark::limb)
    })
}

fn add_row<'t>(
    table: &'t Table,
    columns: &Columns,
    row: &'t Row,
    limb: Limb,
    sizes: &mut Vec<(Size, &'t Row)>,
) -> Result<(), Problem> {
    let fault = |column: usize, what: String| table.problem(row, Some(column), what);
    let label = row
        .cell(Some(columns.size))
        .ok_or_else(|| fault(columns.size, "is empty; give the size's label".to_owned()))?;
    let measure = row
        .cell(Some(columns.measure))
        .ok_or_else(|| fault(columns.measure, "is empty; name a landmark".to_owned()))?;
    let end = |column: usize| -> Result<Option<i64>, Problem> {
        let Some(text) = row.cell(Some(column)) else { return Ok(None) };
        let written = read_quantity(text, Dimension::Length, columns.units)
            .map_err(|what| fault(column, format!("`{text}` {what}")))?;
        tenths(written)
            .map(Some)
            .ok_or_else(|| fault(column, format!("`{text}` is not above 0 and at most 200 cm")))
    };
    let range = Range { low: end(columns.low)?, high: end(columns.high)? };
    match (range.low, range.high) {
        (None, None) => {
            return Err(fault(columns.low, "low and high are both empty; give at least one".to_owned()));
        }
        (Some(low), Some(high)) if low > high => {
            return Err(fault(
                columns.low,
                "the low end is above the high end; write the smaller first".to_owned(),
            ));
        }
        _ => {}
    }
    let relaxed = columns.relaxed.map(end).transpose()?.flatten().and_then(Girth::from_tenths);
    let known = sizes.iter().position(|(size, _)| size.label == label);
    let at = known.unwrap_or(sizes.len());
    if known.is_none() {
        let size =
            Size { label: label.to_owned(), girths: Vec::new(), relaxed: Vec::new(), variants: Vec::new() };
        sizes.push((size, row));
    }
    let Some((size, _)) = sizes.get_mut(at) else { return Ok(()) };
    if measure.contains(" to ") {
        let between = Between::parse(limb, measure).ok_or_else(|| {
            fault(columns.measure, format!("`{measure}` is no stretch of the {}", limb.name()))
        })?;
        if size.variants.is_empty() {
            size.variants.push(Variant { name: None, lengths: Vec::new() });
        }
        if let Some(variant) = size.variants.first_mut() {
            variant.lengths.push((between, range));
        }
        return Ok(());
    }
    let landmark = Landmark::parse(limb, measure)
        .ok_or_else(|| fault(columns.measure, landmark_fault(measure, limb)))?;
    if size.girths.iter().any(|(other, _)| *other == landmark) {
        return Err(fault(
            columns.measure,
            format!("size `{label}` states `{}` twice; keep one row", landmark.name()),
        ));
    }
    size.girths.push((landmark, range));
    size.relaxed.extend(relaxed.map(|relaxed| (landmark, relaxed)));
    Ok(())
}

fn tenths(written: Written) -> Option<i64> {
    written.tenth_millimetres().filter(|tenths| (1..=Girth::MOST_TENTHS).contains(tenths))
}
