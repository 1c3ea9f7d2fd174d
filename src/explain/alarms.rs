//! Owns the tables of how often what is said is right and wrong, as measured by simulation and scripted
//! cases.
//!
//! Source: each table in `src/explain/alarms/` names the test that measures it; that test fails when the
//! figures move.

use serde::Deserialize;

use crate::document::{Block, Column, Table};

/// The tables inside the program, in the order of the page.
const TABLES: [&str; 6] = [
    include_str!(concat!(env!("OUT_DIR"), "/alarms-fall.json")),
    include_str!(concat!(env!("OUT_DIR"), "/alarms-settled.json")),
    include_str!(concat!(env!("OUT_DIR"), "/alarms-misreadings.json")),
    include_str!(concat!(env!("OUT_DIR"), "/alarms-same-size.json")),
    include_str!(concat!(env!("OUT_DIR"), "/alarms-clients.json")),
    include_str!(concat!(env!("OUT_DIR"), "/alarms-adults.json")),
];

/// One table of rates. Without rows it is not measured and not shown.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AlarmTable {
    /// `alarms/1`.
    pub tapeline: String,
    /// Its heading.
    pub title: String,
    /// What was simulated or scripted, and what the figures are.
    pub about: String,
    /// The test that measures it, as `module::test_name` or a program under `.ci`.
    pub measured_by: String,
    /// The heads of the columns, each with its unit.
    #[serde(default)]
    pub columns: Vec<String>,
    /// The rows, as many cells as columns.
    #[serde(default)]
    pub rows: Vec<Vec<String>>,
    /// What to mind when reading it.
    #[serde(default)]
    pub remarks: Vec<String>,
}

/// Every table that is measured, in the order of the page.
///
/// # Errors
/// What is wrong with a table inside the program; a test keeps them free of that.
pub fn alarm_tables() -> Result<Vec<AlarmTable>, serde_json::Error> {
    let all: Result<Vec<AlarmTable>, _> = TABLES.iter().map(|text| serde_json::from_str(text)).collect();
    Ok(all?.into_iter().filter(|table: &AlarmTable| !table.rows.is_empty()).collect())
}

/// The page.
pub(super) fn blocks() -> Vec<Block> {
    let mut blocks = vec![
        Block::heading("How often it is right and wrong"),
        Block::text(
            "Simulated with fixed seeds, or scripted before the rules were run. A test repeats each table and fails when a figure moves.",
        ),
    ];
    for table in alarm_tables().unwrap_or_default() {
        blocks.push(Block::heading(&table.title));
        blocks.push(Block::text(&table.about));
        let columns = table.columns.iter().enumerate().map(|(place, head)| {
            if place > 0 && table.rows.iter().all(|row| row.get(place).is_some_and(|cell| is_figure(cell))) {
                Column::numbers(head, "")
            } else {
                Column::words(head)
            }
        });
        let mut drawn = Table::new("", columns.collect());
        for row in &table.rows {
            drawn.push(row.clone());
        }
        blocks.push(Block::Table(drawn));
        blocks.extend(table.remarks.iter().map(Block::small));
        blocks.push(Block::small(format!("Measured by {}.", table.measured_by)));
    }
    blocks
}

fn is_figure(cell: &str) -> bool {
    cell.chars().all(|letter| letter.is_ascii_digit() || matches!(letter, '.' | '\u{2212}' | '-'))
}
