//! Owns a garment worked out for a wanted pressure in the terminal report.

use crate::document::{Block, Column, Table};
use crate::render::sheet::{sentence, text};
use crate::report::Report;
use crate::words;

/// The relaxed girths that give the pressure wanted.
pub(super) fn pattern(report: &Report) -> Vec<Block> {
    let Some(pattern) = &report.pattern else { return Vec::new() };
    let mut table = Table::new(
        "",
        vec![
            Column::words("mark"),
            Column::numbers("girth", "cm"),
            Column::numbers("wanted", "mmHg"),
            Column::numbers("relaxed", "cm"),
            Column::numbers("flat width", "cm"),
            Column::numbers("stretch", "%"),
            Column::numbers("tape error", "mmHg"),
            Column::numbers("sewing", "mmHg"),
        ],
    );
    for mark in &pattern.marks {
        table.push(vec![
            words::label(mark.landmark),
            mark.girth_cm.text.clone(),
            mark.wanted_mmhg.text.clone(),
            text(mark.relaxed_cm.as_ref()),
            text(mark.flat_width_cm.as_ref()),
            text(mark.stretch_percent.as_ref()),
            text(mark.tape_mmhg.as_ref()),
            text(mark.sewing_mmhg.as_ref()),
        ]);
    }
    let layers = usize::try_from(pattern.layers).unwrap_or(1);
    vec![
        Block::heading(format!("Worked out: {}", pattern.label)),
        Block::entry("Aim", sentence(&pattern.target)),
        Block::entry("Fabric", format!("{}, {}", pattern.fabric, words::counted(layers, "layer", "layers"))),
        Block::Table(table),
        Block::text(sentence(&pattern.confirmed)),
    ]
}
