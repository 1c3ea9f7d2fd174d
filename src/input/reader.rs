//! Owns the reading of one file: its tree, its declared units, and the problems raised so far.

use std::cell::{Cell, RefCell};

use super::keys::Form;
use super::told_once::told_once;
use super::{Fields, FileKind, Item, Kind, MOST_PROBLEMS, Node, Problem, Source, Spot, yaml};
use crate::quantity::{Dimension, Unit, Units};

/// A word of the file with its place, for checks that come later.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named {
    /// The word as written.
    pub text: String,
    /// Where it stands.
    pub spot: Spot,
}

/// A problem whose place is still a node.
pub(super) struct Raised {
    /// Where it is.
    pub(super) spot: Option<Spot>,
    /// In which field.
    pub(super) field: String,
    /// What is wrong.
    pub(super) what: String,
    /// How many mistakes it tells of.
    pub(super) count: usize,
}

/// Reads one file and collects its problems.
pub struct Reader {
    source: Source,
    root: Node,
    units: Cell<Units>,
    units_in_doubt: Cell<bool>,
    raised: RefCell<Vec<Raised>>,
}

impl Reader {
    /// Parses a source.
    ///
    /// # Errors
    /// One [`Problem`] when it is no YAML document at all.
    pub fn new(source: Source) -> Result<Self, Problem> {
        let root = yaml::read(&source)?;
        Ok(Self {
            source,
            root,
            units: Cell::default(),
            units_in_doubt: Cell::default(),
            raised: RefCell::default(),
        })
    }

    /// A table inside the program, turned into JSON when it was built.
    ///
    /// # Errors
    /// One [`Problem`] of a broken build.
    pub fn shipped(source: Source) -> Result<Self, Problem> {
        let root = yaml::read_shipped(&source)?;
        Ok(Self {
            source,
            root,
            units: Cell::default(),
            units_in_doubt: Cell::default(),
            raised: RefCell::default(),
        })
    }

    /// The source.
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// The kind on the file's first line, `record/1`, if it has one.
    pub fn kind(&self) -> Option<&str> {
        let Kind::Map(entries) = &self.root.kind else { return None };
        entries.iter().find(|entry| entry.name() == "tapeline").and_then(|entry| match &entry.value.kind {
            Kind::Text(text) => Some(text.as_str()),
            _ => None,
        })
    }

    /// The fields of the file, after its first line has been held against `kind` (as `record/1`)
    /// and its units have been read.
    pub fn fields(&self, kind: &str) -> Option<Fields<'_>> {
        let item = Item::new(self, &self.root, String::new());
        let Kind::Map(entries) = &self.root.kind else {
            self.raise(
                self.root.spot,
                "",
                format!(
                    "the file holds {}; it has to hold keys and start with its kind, as `tapeline: {kind}`",
                    self.root.word()
                ),
            );
            return None;
        };
        let form = FileKind::parse(kind).map(|kind| Form::Block(kind.keys()));
        let fields = Fields::new(item, entries, form.and_then(|form| form.block()), None);
        match entries.first() {
            // A library that sorts the keys puts it further down.
            Some(_) if fields.has("tapeline") => {}
            Some(first) => {
                self.raise(
                    first.key.spot,
                    "",
                    format!("the first key is not the kind; start with `tapeline: {kind}`"),
                );
            }
            None => self.raise(self.root.spot, "", format!("holds no keys; start with `tapeline: {kind}`")),
        }
        if let Some(found) = fields.optional("tapeline").and_then(|found| found.text()) {
            let spot = fields.spot_of("tapeline");
            let (name, version) = kind.split_once('/').unwrap_or((kind, ""));
            match found.split_once('/') {
                _ if found == kind => {}
                Some((same, other)) if same == name => {
                    self.raise(
                        spot,
                        "tapeline",
                        format!(
                            "version `{other}` of `{name}` is not known; this program reads version {version}"
                        ),
                    );
                    return None;
                }
                _ => {
                    self.raise(spot, "tapeline", format!("is `{found}`, but a `{kind}` file is wanted here"));
                    return None;
                }
            }
        }
        self.read_units(&fields);
        Some(fields)
    }

    fn read_units(&self, fields: &Fields<'_>) {
        let before = self.raised.borrow().len();
        let block = fields.optional("units").and_then(|item| item.fields());
        self.units_in_doubt.set(self.raised.borrow().len() > before);
        let Some(block) = block else { return };
        let mut units = Units::default();
        for dimension in Dimension::ALL {
            let Some(item) = block.optional(dimension.key()) else { continue };
            let Some(text) = item.text() else { continue };
            match Unit::parse(&text).filter(|unit| unit.dimension() == dimension) {
                Some(unit) => units = units.with(unit),
                None => item.refuse(format!(
                    "`{text}` is no unit of {}; accepted: {}",
                    dimension.key(),
                    dimension.accepted()
                )),
            }
        }
        block.finish();
        self.units.set(units);
        self.units_in_doubt.set(self.raised.borrow().len() > before);
    }

    /// The units declared so far.
    pub fn units(&self) -> Units {
        self.units.get()
    }

    /// Whether the block of units is itself wrong, so that a missing unit is no second fault.
    pub fn units_in_doubt(&self) -> bool {
        self.units_in_doubt.get()
    }

    /// Declares units by format rather than by file (scheme files: mmHg and %).
    pub fn set_default_units(&self, units: Units) {
        self.units.set(units);
    }

    /// Notes a problem at a place.
    pub fn raise(&self, spot: Spot, field: impl Into<String>, what: impl Into<String>) {
        self.raised.borrow_mut().push(Raised {
            spot: Some(spot),
            field: field.into(),
            what: what.into(),
            count: 1,
        });
    }

    /// Whether anything is wrong so far.
    pub fn has_problems(&self) -> bool {
        !self.raised.borrow().is_empty()
    }

    /// One problem with its line worked out, for checks across files.
    pub fn problem_at(&self, spot: Spot, field: impl Into<String>, what: impl Into<String>) -> Problem {
        let place = yaml::locate(&self.source, &[spot]).pop().flatten();
        Problem { field: field.into(), ..Problem::at(&self.source.name, place, what) }
    }

    /// All problems raised, in the order of the file, at most [`MOST_PROBLEMS`] and a count.
    pub fn problems(&self) -> Vec<Problem> {
        let mut raised = self.raised.take();
        // Equal places keep the order in which they were raised.
        raised.sort_by_key(|one| one.spot);
        raised.dedup_by(|one, other| {
            one.spot == other.spot && one.field == other.field && one.what == other.what
        });
        let mut raised = told_once(raised);
        let rest: usize = raised.iter().skip(MOST_PROBLEMS).map(|one| one.count).sum();
        raised.truncate(MOST_PROBLEMS);
        let spots: Vec<Spot> = raised.iter().filter_map(|one| one.spot).collect();
        let mut places = yaml::locate(&self.source, &spots).into_iter();
        let mut problems: Vec<Problem> = raised
            .into_iter()
            .map(|one| {
                let place = one.spot.and_then(|_| places.next().flatten());
                let file = Problem::at(&self.source.name, place, one.what);
                Problem { field: one.field, count: one.count, ..file }
            })
            .collect();
        problems.sort_by_key(|one| one.place.as_ref().map(|place| (place.line, place.column)));
        if rest > 0 {
            let what = format!("{rest} more problems of this file are not shown");
            problems.push(Problem { count: rest, ..Problem::of_file(&self.source.name, what) });
        }
        problems
    }
}
