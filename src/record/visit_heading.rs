//! Owns the columns of a table of visits: what each header means.

use crate::anatomy::{Landmark, Limb};
use crate::input::{Problem, Table};
use crate::quantity::{Decimal, Dimension, Position, Unit, Units, read_quantity};

/// What the header should look like.
pub(super) const FORM: &str = "a table of visits has `date,side,wrist_cm,forearm_cm`, or `wrist at 0 cm (cm)` where no record of the client is given beside it";

/// The columns of a table of visits.
pub(super) struct Columns {
    pub(super) date: Option<usize>,
    pub(super) side: Option<usize>,
    pub(super) client: Option<usize>,
    pub(super) affected: Option<usize>,
    pub(super) weight_kg: Option<usize>,
    pub(super) measured_by: Option<usize>,
    pub(super) positions_from: Option<usize>,
    pub(super) marks: Vec<(usize, MarkHeading)>,
}

impl Columns {
    pub(super) fn of(table: &Table) -> Result<Self, Problem> {
        let mut found = Self {
            date: None,
            side: None,
            client: None,
            affected: None,
            weight_kg: None,
            measured_by: None,
            positions_from: None,
            marks: Vec::new(),
        };
        for (at, name) in table.header().iter().enumerate() {
            let word = name.trim().to_ascii_lowercase();
            let place = match word.as_str() {
                "date" | "measured_on" => &mut found.date,
                "side" => &mut found.side,
                "client" => &mut found.client,
                "affected" => &mut found.affected,
                "weight_kg" | "weight (kg)" => &mut found.weight_kg,
                "measured_by" => &mut found.measured_by,
                "positions_from" => &mut found.positions_from,
                _ => {
                    let Some(heading) = MarkHeading::parse(name) else {
                        return Err(table.header_problem_at(
                            at,
                            format!("has the column `{name}`, which is not known or has no unit; {FORM}"),
                        ));
                    };
                    if found.marks.iter().any(|(_, other)| *other == heading) {
                        return Err(
                            table.header_problem_at(at, format!("has the column `{name}` twice; keep one"))
                        );
                    }
                    found.marks.push((at, heading));
                    continue;
                }
            };
            if place.replace(at).is_some() {
                return Err(table.header_problem_at(at, format!("has two columns for `{word}`; keep one")));
            }
        }
        if found.date.is_none() || found.side.is_none() || found.marks.is_empty() {
            return Err(table.header_problem(format!("is no table of visits; {FORM}")));
        }
        Ok(found)
    }
}

/// A column of girths.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct MarkHeading {
    /// The landmark's word or letter; none for a serial mark.
    pub(super) landmark: Option<String>,
    /// Where it stands, if the header says so.
    pub(super) at: Option<Position>,
    /// The unit of its girths.
    pub(super) unit: Unit,
}

impl MarkHeading {
    /// Reads `wrist_cm`, `wrist (cm)`, `wrist at 0 cm (cm)`, `at 14_cm`; none where there is no unit or no mark.
    pub(super) fn parse(header: &str) -> Option<Self> {
        let (name, unit) = split_unit(header.trim())?;
        let words = name.replace('_', " ").to_lowercase();
        let words = words.trim();
        let (landmark, at) = match words.strip_prefix("at ") {
            Some(at) => ("", Some(at)),
            None => words.split_once(" at ").map_or((words, None), |(mark, at)| (mark, Some(at))),
        };
        let at = match at {
            Some(at) => {
                let written =
                    read_quantity(at.trim(), Dimension::Length, Units::default().with(unit)).ok()?;
                Some(Position::from_tenths(written.tenth_millimetres()?)?)
            }
            None => None,
        };
        let landmark = landmark.trim();
        if landmark.is_empty() && at.is_none() {
            return None;
        }
        // A bare number would be a position to one reader and a girth to another.
        if Decimal::parse(landmark).is_ok() {
            return None;
        }
        let landmark = (!landmark.is_empty()).then(|| landmark.replace(' ', "-"));
        Some(Self { landmark, at, unit })
    }

    /// The limb that its word belongs to; none for a letter or a serial mark.
    pub(super) fn limb(&self) -> Option<Limb> {
        self.landmark.as_deref().and_then(Landmark::word_of_heading).map(Landmark::limb)
    }
}

/// The name and the unit of `wrist_cm`, `wrist (cm)`, `wrist [cm]`, `wrist cm`.
fn split_unit(header: &str) -> Option<(&str, Unit)> {
    let bare = header.strip_suffix([')', ']']);
    let (name, unit) = match bare {
        Some(rest) => rest.rsplit_once(['(', '['])?,
        None => header.rsplit_once(['_', ' '])?,
    };
    let unit = Unit::of_heading(unit)?;
    Some((name, unit))
}
