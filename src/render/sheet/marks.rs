//! Owns the table of marks: the one place where a girth, its range, its room and its pressure meet.

use super::fall::spoken;
use super::subject::Subject;
use super::{Block, Column, Room, Table};
use crate::report::{Figure, RecordMark};

/// What stands in a cell that has nothing to say.
const EMPTY: &str = "\u{2013}";

/// The table and the lengths under it.
pub(super) fn marks(subject: Subject<'_>) -> Vec<Block> {
    let record = &subject.report.record;
    let from = format!("From {}, cm", record.positions_from);
    let mut columns = vec![
        Column::words("Mark", 24),
        Column::numbers(&from, 13),
        Column::numbers("Girth, cm", 13),
        Column::numbers("Each reading, cm", 19),
    ];
    let sized = subject.size.is_some();
    let worn = subject.pressure.is_some_and(|one| !one.marks.is_empty());
    // By stretch alone nothing is said about pressure, and no column is left empty.
    let said = subject.pressure.is_some_and(|one| one.marks.iter().any(|mark| !mark.words.is_empty()));
    if sized {
        columns.push(Column::numbers("Size range, cm", 20));
        columns.push(Column::words("Room", 22));
    }
    if worn {
        columns.push(Column::numbers("Stretch, %", 16));
        if said {
            columns.push(Column::numbers("Pressure, mmHg", 21));
        }
        columns.push(Column::words("Against the mark below", 27));
    }
    let rows = record.marks.iter().map(|mark| row(subject, mark, [sized, worn, said])).collect();
    let what = match (subject.chart, subject.size) {
        (Some(chart), Some(size)) => {
            format!("Marks from hand or foot toward the trunk; {}, size {}.", chart.label, size.size)
        }
        _ => "Marks from hand or foot toward the trunk.".to_owned(),
    };
    let mut blocks = vec![
        Block::heading("Mark by mark"),
        Block::Table(Table {
            caption: format!("{what}{}", subject.caution()),
            columns,
            rows,
            room: Room::None,
        }),
    ];
    let mut remarks = Vec::new();
    if worn && subject.pressure.is_some_and(|one| one.basis == Some("readings")) {
        remarks.push("Pressure: as read by a sensor under the garment, with its 95 % range.".to_owned());
    } else if worn && subject.pressure.is_some_and(|one| one.basis == Some("fabric")) {
        remarks.push("Pressure: the estimate with the range in which 95 % of such estimates lie by tape, ruler and fabric error.".to_owned());
    }
    remarks.extend(record.lengths.iter().map(|length| {
        let fit = subject.size.and_then(|size| size.lengths.iter().find(|one| one.between == length.between));
        let fit = fit.map(|fit| {
            let inside = match fit.inside {
                Some(true) => "inside",
                Some(false) => "OUTSIDE every length",
                None => "not judged",
            };
            format!("; the size has {} cm: {inside}", fit.ranges_words)
        });
        format!(
            "Length {}: {} cm{}.",
            spoken(&length.between),
            text(length.length_cm.as_ref()),
            fit.unwrap_or_default()
        )
    }));
    blocks.extend(remarks.into_iter().map(Block::small));
    blocks
}

/// A figure's text, or a dash.
pub(super) fn text(figure: Option<&Figure>) -> String {
    figure.map_or_else(|| EMPTY.to_owned(), |figure| figure.text.clone())
}

fn row(subject: Subject<'_>, mark: &RecordMark, [sized, worn, said]: [bool; 3]) -> Vec<String> {
    let readings: Vec<String> = mark.readings_cm.iter().map(|one| one.text.clone()).collect();
    let each = if readings.len() > 1 { readings.join(" | ") } else { "once".to_owned() };
    let mut cells = vec![mark.label.clone(), text(mark.at_cm.as_ref()), text(mark.girth_cm.as_ref()), each];
    if sized {
        let fit =
            subject.size.and_then(|size| size.measures.iter().find(|one| Some(one.measure) == mark.landmark));
        cells.push(fit.map_or_else(|| EMPTY.to_owned(), |fit| fit.range_words.clone()));
        cells.push(fit.map_or_else(|| EMPTY.to_owned(), |fit| fit.room_words.clone()));
    }
    if worn {
        let found =
            subject.pressure.and_then(|one| one.marks.iter().find(|one| Some(one.landmark) == mark.landmark));
        cells.push(text(found.and_then(|one| one.stretch_percent.as_ref())));
        if said {
            cells.push(found.map_or_else(
                || EMPTY.to_owned(),
                |one| if one.words.is_empty() { "not estimated".to_owned() } else { one.words.clone() },
            ));
        }
        cells.push(against(subject, mark));
    }
    cells
}

fn against(subject: Subject<'_>, mark: &RecordMark) -> String {
    let Some(graduation) = subject.graduation else { return "not judged".to_owned() };
    let pairs: Vec<&str> = graduation
        .pairs
        .iter()
        .filter(|pair| Some(pair.proximal) == mark.landmark)
        .map(|pair| pair.short.as_str())
        .collect();
    let role = subject
        .pressure
        .and_then(|one| one.marks.iter().find(|one| Some(one.landmark) == mark.landmark))
        .and_then(|one| one.role);
    if pairs.is_empty() { role.unwrap_or("not judged").to_owned() } else { pairs.join("; ") }
}
