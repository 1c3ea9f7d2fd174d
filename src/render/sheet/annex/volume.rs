//! Owns both limbs, the volume in plain words, and the course over the visits.

use super::super::wording::{sentence, text};
use crate::document::{Block, Column, Entry, Table};
use crate::render::course_plot::course_plot;
use crate::report::{CourseBlock, LimbBlock, Report, VolumeBlock};
use crate::words::{self, capital};

/// Both limbs and the course.
pub(in crate::render) fn volume(report: &Report) -> Vec<Block> {
    let mut blocks = Vec::new();
    for (at, limb) in report.limbs.iter().enumerate() {
        // Of two limbs the first table has both.
        blocks.extend(girths(limb).filter(|_| at == 0));
        blocks.extend(limb.volume.iter().flat_map(|volume| volumes(limb, volume)));
    }
    if !blocks.is_empty() {
        blocks.insert(0, Block::heading("Both limbs and volume"));
    }
    blocks.extend(report.course.iter().flat_map(|course| course_blocks(report, course)));
    blocks
}

fn girths(limb: &LimbBlock) -> Option<Block> {
    limb.marks.iter().any(|mark| mark.other_cm.is_some()).then(|| {
        let mut columns = vec![
            Column::words("Mark"),
            Column::numbers(capital(&limb.printed), "cm"),
            Column::numbers("Other side", "cm"),
        ];
        let signed = limb.volume.iter().any(|volume| !volume.differences.is_empty());
        if signed {
            columns.push(Column::numbers("Affected minus other", "cm"));
        }
        let mut table = Table::new("", columns);
        for mark in &limb.marks {
            let name = mark.landmark.map_or_else(|| format!("at {} cm", mark.at_cm.text), words::label);
            let difference =
                limb.volume.iter().flat_map(|volume| &volume.differences).find(|one| one.mark == name);
            let mut row = vec![name.clone(), mark.girth_cm.text.clone(), text(mark.other_cm.as_ref())];
            if signed {
                row.push(text(difference.map(|one| &one.difference_cm)));
            }
            table.push(row);
        }
        Block::Table(table)
    })
}

fn volumes(limb: &LimbBlock, volume: &VolumeBlock) -> Vec<Block> {
    let mut keys = Vec::new();
    let ml = |figure: Option<&crate::report::Figure>| figure.map(|one| format!("{} mL", one.text));
    let spacing =
        volume.spacing_cm.as_ref().map(|one| format!(", every {} cm", one.text)).unwrap_or_default();
    if let Some(measured) = ml(volume.measured_ml.as_ref()) {
        let other = ml(volume.other_ml.as_ref().filter(|_| volume.tells_pair))
            .map(|other| format!("; other side {other}"))
            .unwrap_or_default();
        keys.push(Entry::new(
            capital(&limb.printed),
            format!("{measured}{other} ({} method{spacing}; hand and foot left out).", volume.method),
        ));
    }
    if let (Some(excess), Some(percent), true) =
        (&volume.excess_ml, &volume.excess_percent, volume.tells_pair)
    {
        let sd = volume
            .sd_ml
            .as_ref()
            .map(|sd| format!("; the tape alone gives it an SD of {} mL", sd.text))
            .unwrap_or_default();
        keys.push(Entry::new("Affected minus other", format!("{} mL, {} %{sd}.", excess.text, percent.text)));
    }
    for part in &volume.parts {
        let percent = part
            .excess_percent
            .as_ref()
            .filter(|_| volume.tells_pair)
            .map(|one| format!(", {} % more than the other", one.text))
            .unwrap_or_default();
        let measured = ml(part.measured_ml.as_ref()).unwrap_or_default();
        keys.push(Entry::new(capital(&part.part), format!("{measured}{percent}.")));
    }
    if volume.tells_pair && !volume.words.is_empty() {
        keys.push(Entry::new(
            "In published sets",
            format!("{} None of them is a verdict.", sentence(&volume.words)),
        ));
    }
    if let Some(why) = volume.not_compared.as_ref().filter(|_| volume.tells_pair) {
        keys.push(Entry::new("Not compared", sentence(why)));
    }
    if keys.is_empty() { Vec::new() } else { vec![Block::Keys(keys)] }
}

fn course_blocks(report: &Report, course: &CourseBlock) -> Vec<Block> {
    let several = report.limbs.len() > 1;
    let mut columns = vec![Column::words("Visit")];
    if several {
        columns.push(Column::words("Limb"));
    }
    columns.extend([
        Column::numbers("Volume", "mL"),
        Column::numbers("Other side", "mL"),
        Column::numbers("Excess", "mL"),
        Column::numbers("Excess", "%"),
    ]);
    let mut table = Table::new("", columns);
    for visit in &course.visits {
        let mut cells = vec![visit.measured_on.clone()];
        if several {
            cells.push(report.limbs.get(visit.limb).map(|limb| limb.printed.clone()).unwrap_or_default());
        }
        cells.extend([
            text(visit.compared_ml.as_ref()),
            text(visit.compared_other_ml.as_ref()),
            text(visit.compared_excess_ml.as_ref()),
            text(visit.compared_excess_percent.as_ref()),
        ]);
        table.push(cells);
    }
    let mut blocks = vec![Block::heading("Course")];
    for (place, limb) in report.limbs.iter().enumerate() {
        blocks.extend(course_plot(course, place, &limb.printed).map(Block::Figure));
    }
    blocks.push(Block::Table(table));
    let said: Vec<String> = course.said().iter().map(|one| sentence(one)).collect();
    blocks.push(Block::List(said));
    blocks
}
