//! Owns the made-to-measure order, laid out in the order in which a limb is measured: hand or foot,
//! the girths toward the trunk, the lengths, then pressure, knit, edges and delivery. Whatever the
//! record knows stands filled.

use super::subject::{Part, forbids, parts};
use super::wording::{EMPTY, sentence};
use crate::document::{Blank, Block, Column, Entry, Room, Table, Tick};
use crate::report::{MeasuredBlock, PatternMark, Report};
use crate::words::{self, capital};

/// The orders, one for each limb that needs one; none under a stop and under refer.
pub(super) fn made(report: &Report) -> Vec<Block> {
    if forbids(report) {
        return Vec::new();
    }
    let mut blocks = Vec::new();
    let mut done = Vec::new();
    for part in parts(report) {
        if part.is_made() && !done.contains(&part.limb_at) {
            done.push(part.limb_at);
            blocks.extend(one(&part));
        }
    }
    blocks
}

fn one(part: &Part<'_>) -> Vec<Block> {
    let limb = part.limb;
    let end = limb.limb.extremity();
    let why = part.chart.map(|chart| sentence(&chart.line)).unwrap_or_default();
    let style = part.chart.and_then(|chart| chart.style.clone());
    let style = style.map_or_else(|| Blank::new("Garment"), |style| Blank::filled("Garment", style));
    let mut blocks = vec![
        Block::heading(format!("Order: {}", limb.printed)),
        Block::text(why),
        Block::Blanks(vec![vec![style, Blank::new("Quantity"), Blank::new("Deliver to, by").wide(2)]]),
        Block::heading(format!("1. {}", capital(end))),
        Block::Ticks {
            boxes: Vec::new(),
            items: vec![
                Tick::known(limb.hand_or_foot_swollen == Some(true), format!("{end} part, sewn on or apart")),
                Tick::open(if end == "hand" {
                    "fingers, each with its girths below"
                } else {
                    "toes, each with its girths below"
                }),
            ],
        },
    ];
    let digits: &[&str] = if end == "hand" {
        &["Thumb", "Index", "Middle", "Ring", "Little"]
    } else {
        &["Big toe", "2nd", "3rd", "4th", "Little"]
    };
    blocks.push(Block::Blanks(vec![digits.iter().map(|name| Blank::new(*name)).collect()]));
    blocks.push(Block::heading("2. Girths, from the far end toward the trunk"));
    blocks.push(Block::Table(girths(part)));
    blocks.push(Block::heading("3. Lengths"));
    blocks.push(lengths(part));
    blocks.push(Block::heading("4. Pressure"));
    blocks.push(pressure(part));
    blocks.push(Block::heading("5. Knit, edges and closures"));
    blocks.extend(make(part));
    blocks.push(Block::Blanks(vec![
        vec![Blank::new("Other needs")],
        vec![Blank::new("Measured again by, date"), Blank::new("Ordered by, date")],
    ]));
    blocks
}

fn girths(part: &Part<'_>) -> Table {
    let limb = part.limb;
    let pattern = part.report.pattern.as_ref().filter(|_| part.report.limbs.len() == 1);
    let mut columns = vec![
        Column::words("Mark").at_least(20),
        Column::numbers(format!("From {}", part.report.record.positions_from), "cm"),
        Column::numbers("From the mark above", "cm"),
        Column::numbers("Girth", "cm"),
        Column::numbers("Relaxed girth", "cm").at_least(15),
    ];
    columns.push(if pattern.is_some() {
        Column::numbers("Pressure wanted", "mmHg")
    } else {
        Column::words("Pressure wanted, mmHg").at_least(15)
    });
    columns.push(Column::words("Remarks").at_least(20));
    let mut table = Table::new("", columns);
    table.room = Room::Writing;
    let mut before: Option<&MeasuredBlock> = None;
    for mark in &limb.marks {
        let name = mark.landmark.map_or_else(|| format!("at {} cm", mark.at_cm.text), words::label);
        let found: Option<&PatternMark> =
            pattern.and_then(|one| one.marks.iter().find(|here| Some(here.landmark) == mark.landmark));
        let gap = before
            .map_or_else(|| EMPTY.to_owned(), |last| words::decimal(mark.at_cm.value - last.at_cm.value, 1));
        table.push(vec![
            name,
            mark.at_cm.text.clone(),
            gap,
            mark.girth_cm.text.clone(),
            found.and_then(|one| one.relaxed_cm.as_ref()).map(|one| one.text.clone()).unwrap_or_default(),
            found.map(|one| one.wanted_mmhg.text.clone()).unwrap_or_default(),
            String::new(),
        ]);
        before = Some(mark);
    }
    table
}

fn lengths(part: &Part<'_>) -> Block {
    let mut row: Vec<Blank> = part
        .limb
        .lengths
        .iter()
        .map(|one| {
            let from = if one.from_positions { ", from the positions" } else { "" };
            Blank::filled(capital(&one.name.replace('-', " ")), format!("{} cm{from}", one.length_cm.text))
        })
        .collect();
    if row.is_empty() {
        row.push(Blank::new("Length of the whole garment, cm"));
    }
    Block::Blanks(row.chunks(2).map(<[Blank]>::to_vec).collect())
}

fn pressure(part: &Part<'_>) -> Block {
    let wanted = part.report.prescribed.clone();
    let wanted =
        wanted.map_or_else(|| Blank::new("Class or band"), |one| Blank::filled("Class or band", one));
    let mut rows = vec![vec![wanted]];
    match part.report.pattern.as_ref().filter(|_| part.report.limbs.len() == 1) {
        Some(pattern) => {
            rows.push(vec![Blank::filled("Worked out for", pattern.target.clone())]);
            rows.push(vec![Blank::filled(
                "Fabric",
                format!(
                    "{}, {}",
                    pattern.fabric,
                    words::counted(usize::try_from(pattern.layers).unwrap_or(1), "layer", "layers")
                ),
            )]);
        }
        None => rows.push(vec![Blank::filled(
            "Fall",
            "even, toward the trunk; no mark above the one nearer the far end",
        )]),
    }
    Block::Blanks(rows)
}

fn make(part: &Part<'_>) -> Vec<Block> {
    let flat = part.limb.flat_knit;
    let tick = |text: &str| Tick::open(text.to_owned());
    let choice = |name: &str, words: &[&str], ticked: Option<usize>| {
        let sign = |at: usize| if ticked == Some(at) { '\u{2612}' } else { '\u{2610}' };
        let each: Vec<String> =
            words.iter().enumerate().map(|(at, word)| format!("{}\u{a0}{word}", sign(at))).collect();
        Entry::new(name, each.join("    "))
    };
    vec![
        Block::Keys(vec![
            choice("Knit", &["flat", "round"], flat.then_some(0)),
            choice("Top band", &["plain", "with a grip", "none"], None),
            choice("Closure", &["none", "zip", "hook and loop"], None),
        ]),
        Block::Ticks {
            boxes: Vec::new(),
            items: vec![
                tick("lining or padding over bone or scar, where:"),
                tick("reinforced places, where:"),
                tick("shoulder strap, waist band or other hold:"),
            ],
        },
    ]
}
