//! Owns the hazards that this program has to control, the controls, and the tests that hold each.
//!
//! Source: `tests/hazards/`; hazards are foreseeable situations of use and misuse, collected by us. No
//! conformity with any standard is claimed.

use serde::Deserialize;
use serde::de::DeserializeOwned;

use crate::document::{Block, Entry};

/// Hazards, as kept beside the tests.
const HAZARDS: &str = include_str!(concat!(env!("OUT_DIR"), "/hazards.json"));
/// Controls, as kept beside the tests.
const CONTROLS: &str = include_str!(concat!(env!("OUT_DIR"), "/controls.json"));

/// A situation that could do harm.
#[derive(Clone, Debug, Deserialize)]
pub struct Hazard {
    /// Its number, as `hz-01`.
    pub id: String,
    /// What happens.
    pub situation: String,
    /// What it does.
    pub harm: String,
    /// What keeps it away, by id.
    pub controls: Vec<String>,
}

/// What keeps a hazard away.
#[derive(Clone, Debug, Deserialize)]
pub struct Control {
    /// Its id.
    pub id: String,
    /// What it does.
    pub what: String,
    /// The tests that hold it, as `module::test_name`.
    pub tests: Vec<String>,
}

/// Hazards and controls.
#[derive(Clone, Debug, Default)]
pub struct Matrix {
    /// The hazards.
    pub hazards: Vec<Hazard>,
    /// The controls.
    pub controls: Vec<Control>,
}

#[derive(Deserialize)]
struct HazardFile {
    hazards: Vec<Hazard>,
}

#[derive(Deserialize)]
struct ControlFile {
    controls: Vec<Control>,
}

impl Matrix {
    /// The matrix inside the program.
    ///
    /// # Errors
    /// What is wrong with its two files; a test keeps them free of that.
    pub fn shipped() -> Result<Self, serde_json::Error> {
        let hazards: HazardFile = read(HAZARDS)?;
        let controls: ControlFile = read(CONTROLS)?;
        Ok(Self { hazards: hazards.hazards, controls: controls.controls })
    }

    /// A control by id.
    pub fn control(&self, id: &str) -> Option<&Control> {
        self.controls.iter().find(|control| control.id == id)
    }

    /// The page.
    pub(super) fn blocks(&self) -> Vec<Block> {
        let mut tests: Vec<&String> = self.controls.iter().flat_map(|control| &control.tests).collect();
        tests.sort_unstable();
        tests.dedup();
        let hazards = self.hazards.iter().map(|hazard| {
            Entry::new(&hazard.id, &hazard.situation)
                .and(format!("Harm: {}", hazard.harm))
                .and(format!("Controls: {}", hazard.controls.join(", ")))
        });
        let controls = self.controls.iter().map(|control| {
            Entry::new(&control.id, &control.what).and(format!("Held by: {}", control.tests.join(", ")))
        });
        vec![
            Block::heading("Hazards and what keeps each away"),
            Block::text(format!(
                "{} hazards, {} controls, held by {} tests. No conformity with any standard is claimed.",
                self.hazards.len(),
                self.controls.len(),
                tests.len()
            )),
            Block::heading("Hazards"),
            Block::Entries(hazards.collect()),
            Block::heading("Controls"),
            Block::Entries(controls.collect()),
        ]
    }
}

fn read<T: DeserializeOwned>(text: &str) -> Result<T, serde_json::Error> {
    serde_json::from_str(text)
}
