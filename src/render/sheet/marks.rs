//! Owns the table of marks: the one place where a girth, its range, its margin and its pressure meet.
//! It runs from hand or foot toward the trunk, as the drawing does.

use super::subject::Part;
use super::wording::{EMPTY, text};
use crate::document::{Block, Column, Table};
use crate::report::{Figure, MarkBlock, MeasureBlock, MeasuredBlock};
use crate::words;

/// Which columns a table has.
#[derive(Clone, Copy)]
struct Has {
    positions: bool,
    sized: bool,
    pressed: bool,
    stretched: bool,
    compared: bool,
}

/// The table; `narrow` where two stand beside one another.
pub(super) fn marks(part: &Part<'_>, narrow: bool) -> Block {
    let worn = part.pressure.filter(|_| part.size.is_some() || part.chart.is_none());
    let pressed = worn.is_some_and(|one| one.marks.iter().any(|mark| pressure(mark) != EMPTY));
    let has = Has {
        positions: !narrow,
        sized: part.size.is_some(),
        pressed,
        stretched: worn.is_some_and(|one| one.marks.iter().any(|mark| mark.stretch_percent.is_some()))
            && !pressed,
        compared: !narrow
            && worn.is_some_and(|one| one.marks.iter().any(|mark| !mark.against_above.is_empty())),
    };
    let mut columns = vec![Column::words("Mark")];
    if has.positions {
        columns.push(Column::numbers(format!("From {}", part.report.record.positions_from), "cm"));
    }
    columns.push(Column::numbers("Girth", "cm"));
    if has.sized {
        columns.push(Column::ranges("Size takes", "cm"));
        columns.push(Column::numbers("Margin", "cm"));
    }
    if has.pressed {
        columns.push(Column::numbers("Pressure", "mmHg"));
    }
    if has.stretched {
        columns.push(Column::numbers("Stretch", "%"));
    }
    if has.compared {
        columns.push(Column::words("Against the row above"));
    }
    let mut table = Table::new(caption(part, narrow), columns);
    for mark in &part.limb.marks {
        table.push(row(part, mark, has));
    }
    Block::Table(table)
}

fn caption(part: &Part<'_>, narrow: bool) -> String {
    let limb =
        if narrow { format!("{}: ", super::wording::capital(&part.limb.printed)) } else { String::new() };
    let what = match (part.chart, part.size) {
        (Some(chart), Some(size)) if part.is_chosen() => format!("{}, size {}.", chart.printed, size.size),
        (Some(chart), Some(size)) => format!("{}, size {}, which was not picked.", chart.printed, size.size),
        (Some(chart), None) => format!("{}: no size is shown.", chart.printed),
        (None, _) => "girths as measured.".to_owned(),
    };
    let only = if super::subject::forbids(part.report) { " Figures only, do not fit." } else { "" };
    let said = format!("{limb}{what}{only}");
    if narrow { said } else { super::wording::capital(&said) }
}

fn row(part: &Part<'_>, mark: &MeasuredBlock, has: Has) -> Vec<String> {
    let name = mark.landmark.map_or_else(|| format!("at {} cm", mark.at_cm.text), words::label);
    let mut cells = vec![name];
    if has.positions {
        cells.push(mark.at_cm.text.clone());
    }
    let tapes = if mark.tapes > 1 { format!(" ({}\u{d7})", mark.tapes) } else { String::new() };
    cells.push(format!("{}{tapes}", mark.girth_cm.text));
    let measure = part.size.and_then(|size| {
        size.measures.iter().find(|one| mark.landmark.is_some_and(|landmark| landmark.name() == one.measure))
    });
    if has.sized {
        cells.push(measure.map_or_else(|| EMPTY.to_owned(), takes));
        cells.push(measure.map_or_else(|| EMPTY.to_owned(), margin));
    }
    let worn = part.pressure.and_then(|one| one.marks.iter().find(|one| Some(one.landmark) == mark.landmark));
    if has.pressed {
        cells.push(worn.map_or_else(|| EMPTY.to_owned(), pressure));
    }
    if has.stretched {
        cells.push(text(worn.and_then(|one| one.stretch_percent.as_ref())));
    }
    if has.compared {
        let against = worn.map(|one| one.against_above.clone()).filter(|said| !said.is_empty());
        cells.push(against.unwrap_or_else(|| EMPTY.to_owned()));
    }
    cells
}

/// `16.0–18.0`, `under 16.0`, `over 36.0`.
pub(in crate::render) fn takes(measure: &MeasureBlock) -> String {
    match (&measure.low_cm, &measure.high_cm) {
        (Some(low), Some(high)) => format!("{}\u{2013}{}", low.text, high.text),
        (Some(low), None) => format!("over {}", low.text),
        (None, Some(high)) => format!("under {}", high.text),
        (None, None) => EMPTY.to_owned(),
    }
}

/// `1.2`, `0.3, close`, `1.2 too tight`.
pub(in crate::render) fn margin(measure: &MeasureBlock) -> String {
    if measure.margin_cm.is_none() {
        return if measure.girth_cm.is_none() { "not measured".to_owned() } else { EMPTY.to_owned() };
    }
    let amount = amount(measure);
    match (measure.direction, measure.verdict) {
        (Some(direction), _) => format!("{amount} too {direction}"),
        (None, "close") => format!("{amount}, close"),
        (None, _) => amount,
    }
}

/// The distance to the nearer end, without its sign.
pub(in crate::render) fn amount(measure: &MeasureBlock) -> String {
    let text = measure.margin_cm.as_ref().map(|margin| margin.text.as_str()).unwrap_or_default();
    text.trim_start_matches(['\u{2212}', '-']).to_owned()
}

/// `24 (18–29)`, `at least 27`, `no contact`.
pub(in crate::render) fn pressure(mark: &MarkBlock) -> String {
    let range = |low: &Figure, high: &Figure| format!("({}\u{2013}{})", low.text, high.text);
    match (&mark.pressure_mmhg, &mark.low_mmhg, &mark.high_mmhg, &mark.bound) {
        (Some(here), Some(low), Some(high), _) if here.value > 0.0 => {
            format!("{} {}", here.text, range(low, high))
        }
        (Some(here), ..) if here.value > 0.0 => here.text.clone(),
        (Some(_), ..) => "no contact".to_owned(),
        (None, _, _, Some(bound)) => format!("at least {}", bound.text),
        _ => EMPTY.to_owned(),
    }
}
