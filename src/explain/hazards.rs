//! Owns the hazards that this program has to control, the controls, and the tests that hold each.
//!
//! Source: `tests/hazards/`; hazards are foreseeable situations of use and misuse, collected by us.
//! No conformity with any standard is claimed.

use crate::input::{Fields, Item, Problem, Reader, Source};

/// Hazards, as kept beside the tests.
const HAZARDS: &str = include_str!("../../tests/hazards/hazards.yaml");
/// Controls, as kept beside the tests.
const CONTROLS: &str = include_str!("../../tests/hazards/controls.yaml");

/// A situation that could do harm.
#[derive(Clone, Debug)]
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
#[derive(Clone, Debug)]
pub struct Control {
    /// Its id.
    pub id: String,
    /// What it does.
    pub what: String,
    /// The tests that hold it, as `module::test_name`.
    pub tests: Vec<String>,
}

/// Hazards and controls.
#[derive(Clone, Debug)]
pub struct Matrix {
    /// The hazards.
    pub hazards: Vec<Hazard>,
    /// The controls.
    pub controls: Vec<Control>,
}

impl Matrix {
    /// The matrix inside the program.
    ///
    /// # Errors
    /// Every problem of its two files; a test keeps them free of any.
    pub fn shipped() -> Result<Self, Vec<Problem>> {
        let hazards = read("hazards.yaml", HAZARDS, "hazards/1", "hazards", |fields| {
            Some(Hazard {
                id: fields.required("id", "a number, as `hz-01`")?.text()?,
                situation: fields.required("situation", "what happens")?.text()?,
                harm: fields.required("harm", "what it does")?.text()?,
                controls: names(fields, "controls")?,
            })
        })?;
        let controls = read("controls.yaml", CONTROLS, "controls/1", "controls", |fields| {
            Some(Control {
                id: fields.required("id", "a short name")?.text()?,
                what: fields.required("what", "what it does")?.text()?,
                tests: names(fields, "tests")?,
            })
        })?;
        Ok(Self { hazards, controls })
    }

    /// A control by id.
    pub fn control(&self, id: &str) -> Option<&Control> {
        self.controls.iter().find(|control| control.id == id)
    }
}

fn names(fields: &Fields<'_>, key: &'static str) -> Option<Vec<String>> {
    let list = fields.required(key, "a list of names")?.list()?;
    list.iter().map(Item::text).collect()
}

fn read<T>(
    name: &str,
    text: &str,
    kind: &str,
    key: &'static str,
    one: impl Fn(&Fields<'_>) -> Option<T>,
) -> Result<Vec<T>, Vec<Problem>> {
    let source = Source { name: name.to_owned(), text: text.to_owned() };
    let reader = Reader::new(source).map_err(|problem| vec![problem])?;
    let mut all = Vec::new();
    if let Some(fields) = reader.fields(kind) {
        let list = fields.required(key, "a list").and_then(|item| item.list()).unwrap_or_default();
        for item in &list {
            if let Some(fields) = item.fields() {
                all.extend(one(&fields));
                fields.finish();
            }
        }
        fields.finish();
    }
    let problems = reader.problems();
    if problems.is_empty() { Ok(all) } else { Err(problems) }
}
