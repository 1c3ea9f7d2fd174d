//! Owns the pressure along the limb in the terminal report.

use crate::document::{Block, Column, Entry, Figure, Letters, Scene, Table};
use crate::render::sheet::{EMPTY, bars, fall_entries, pressure, text};
use crate::report::{ClassBlock, GradientBlock, LimbBlock, PressureBlock, Report};
use crate::words;

/// Every size of a chart that was estimated: in full where it is chosen or between, else in two lines.
pub(super) fn of_chart(report: &Report, limb: &LimbBlock, chart_at: usize) -> Vec<Block> {
    let Some(chart) = limb.charts.get(chart_at) else { return Vec::new() };
    let mut blocks = Vec::new();
    for pressure in limb.pressure.iter().filter(|one| one.chart == Some(chart_at)) {
        let gradient =
            limb.gradient.iter().find(|one| one.chart == Some(chart_at) && one.size == pressure.size);
        let nearest = chart.size.is_none() && chart.nearest == pressure.size && chart.between.is_empty();
        if nearest {
            let label = pressure.size_label.as_deref().unwrap_or_default();
            if let Some(gradient) = gradient {
                blocks
                    .push(Block::entry(format!("Size {label}, if it were worn"), gradient.sentence.clone()));
            }
        } else {
            blocks.extend(one(report, limb, pressure, gradient, chart.claim.as_ref()));
        }
    }
    blocks
}

/// Garment files of the run.
pub(super) fn of_garments(report: &Report, limb: &LimbBlock) -> Vec<Block> {
    let mut blocks = Vec::new();
    for pressure in limb.pressure.iter().filter(|one| one.chart.is_none()) {
        let gradient =
            limb.gradient.iter().find(|one| one.chart.is_none() && one.garment == pressure.garment);
        blocks.extend(one(report, limb, pressure, gradient, None));
    }
    blocks
}

fn one(
    report: &Report,
    limb: &LimbBlock,
    worn: &PressureBlock,
    gradient: Option<&GradientBlock>,
    claim: Option<&ClassBlock>,
) -> Vec<Block> {
    let of = if report.limbs.len() > 1 { format!(", {}", limb.printed) } else { String::new() };
    let size = worn.size_label.as_ref().map(|size| format!(", size {size}")).unwrap_or_default();
    let mut blocks = vec![Block::heading(format!("Along the limb: {}{size}{of}", worn.garment))];
    if worn.marks.is_empty() {
        blocks.push(Block::text(
            "No relaxed girths and no flat widths at the measured marks: nothing is estimated.",
        ));
    } else {
        blocks.push(Block::Table(table(worn)));
        if let Some(bars) = bars(worn, claim) {
            let scene = Scene {
                width: 0.0,
                height: 0.0,
                title: String::new(),
                description: String::new(),
                shapes: Vec::new(),
            };
            blocks.push(Block::Figure(Figure { scene, letters: Some(Letters::Bars(bars)) }));
        }
    }
    let entries: Vec<Entry> = fall_entries(gradient, Some(worn));
    if !entries.is_empty() {
        blocks.push(Block::Entries(entries));
    }
    blocks
}

/// A row for each mark; pressures where any is known.
fn table(worn: &PressureBlock) -> Table {
    let pressed = worn.marks.iter().any(|mark| pressure(mark) != EMPTY);
    let wide = worn.marks.iter().any(|mark| mark.low_worn_mmhg.is_some());
    let read = worn.marks.iter().any(|mark| mark.reading_mmhg.is_some());
    let mut columns = vec![
        Column::words("mark"),
        Column::numbers("girth", "cm"),
        Column::numbers("relaxed", "cm"),
        Column::numbers("stretch", "%"),
    ];
    if pressed {
        columns.push(Column::numbers("pressure", "mmHg"));
    }
    if wide {
        columns.push(Column::ranges("as worn", "mmHg"));
    }
    if read {
        columns.push(Column::numbers("read", "mmHg"));
    }
    columns.push(Column::words("against the row above"));
    let mut table = Table::new("", columns);
    for mark in &worn.marks {
        let mut row = vec![
            words::label(mark.landmark),
            mark.girth_cm.text.clone(),
            text(mark.relaxed_cm.as_ref()),
            text(mark.stretch_percent.as_ref()),
        ];
        if pressed {
            row.push(pressure(mark));
        }
        if wide {
            row.push(match (&mark.low_worn_mmhg, &mark.high_worn_mmhg) {
                (Some(low), Some(high)) => format!("{}\u{2013}{}", low.text, high.text),
                _ => EMPTY.to_owned(),
            });
        }
        if read {
            row.push(text(mark.reading_mmhg.as_ref()));
        }
        row.push(mark.against_above.clone());
        table.push(row);
    }
    table
}
