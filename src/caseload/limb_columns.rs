//! Owns the columns of a table of limbs: which hold the code, the girths, the positions and the lengths.

use crate::anatomy::{Landmark, Limb};
use crate::input::{Problem, RowBlocks};
use crate::quantity::Unit;
use crate::record::LengthName;

/// What a table of limbs looks like.
const FORM: &str =
    "a table of limbs has a column `id` and one for each girth with its unit, as `id,wrist_cm,forearm_cm`";

/// Words for the column that holds a limb's code.
const CODES: [&str; 4] = ["id", "limb", "client", "code"];

/// What one column holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Holds {
    /// The girth of a landmark.
    Girth(Landmark, Unit),
    /// Where that mark stands.
    At(Landmark, Unit),
    /// A length.
    Length(LengthName, Unit),
}

/// The columns of a table of limbs.
#[derive(Clone, Debug)]
pub struct LimbColumns {
    /// Arm or leg.
    pub limb: Limb,
    /// The column of the code; none = rows are known by their number.
    pub(super) code: Option<usize>,
    /// The columns that are used, in the order of the table.
    pub(super) used: Vec<(usize, Holds)>,
    /// Names of columns that are not used.
    pub unused: Vec<String>,
    /// How many columns the header has.
    pub(super) width: usize,
    /// The sign between two cells.
    pub(super) sign: u8,
    /// Whether a comma in a number is its decimal point.
    pub(super) decimal_comma: bool,
}

impl LimbColumns {
    /// The columns of a table; `limb` as the charts say, letters need it.
    ///
    /// # Errors
    /// One [`Problem`] of the header.
    pub fn of(blocks: &RowBlocks, limb: Limb, decimal_comma: bool) -> Result<Self, Problem> {
        let refuse = |at: usize, what: String| Err(blocks.header_problem_at(at, what));
        let mut found = Self {
            limb,
            code: None,
            used: Vec::new(),
            unused: Vec::new(),
            width: blocks.header().len(),
            sign: blocks.sign(),
            decimal_comma,
        };
        for (at, name) in blocks.header().iter().enumerate() {
            if found.code.is_none() && CODES.contains(&name.to_ascii_lowercase().as_str()) {
                found.code = Some(at);
                continue;
            }
            let Some((measure, unit)) = measure_and_unit(name) else {
                if Landmark::of_heading(limb, name).is_some() {
                    return refuse(
                        at,
                        format!(
                            "the column `{name}` has no unit; write it behind the landmark, as `{name}_cm`"
                        ),
                    );
                }
                found.unused.push(name.clone());
                continue;
            };
            let words = measure.to_lowercase().replace('_', " ");
            let (measure, is_at) = match words.strip_suffix(" at") {
                Some(mark) => (mark, true),
                None => (words.as_str(), false),
            };
            let holds = if LengthName::is_heading(measure) {
                LengthName::of_heading(limb, measure).map(|name| Holds::Length(name, unit))
            } else {
                Landmark::of_heading(limb, measure)
                    .map(|mark| if is_at { Holds::At(mark, unit) } else { Holds::Girth(mark, unit) })
            };
            let Some(holds) = holds else {
                if Landmark::word_of_heading(measure).is_some() {
                    return refuse(
                        at,
                        format!(
                            "the column `{name}` is not of the {}, for which the charts are",
                            limb.name()
                        ),
                    );
                }
                found.unused.push(name.clone());
                continue;
            };
            if found.used.iter().any(|(_, other)| same(*other, holds)) {
                return refuse(at, format!("two columns hold one thing, `{measure}`; keep one"));
            }
            found.used.push((at, holds));
        }
        if !found.used.iter().any(|(_, holds)| matches!(holds, Holds::Girth(..))) {
            return refuse(0, format!("holds no girth of the {}; {FORM}", limb.name()));
        }
        Ok(found)
    }

    /// The landmarks whose girths the table holds, distal to proximal.
    pub fn landmarks(&self) -> Vec<Landmark> {
        let mut all: Vec<Landmark> = self
            .used
            .iter()
            .filter_map(|(_, holds)| match holds {
                Holds::Girth(mark, _) => Some(*mark),
                Holds::At(..) | Holds::Length(..) => None,
            })
            .collect();
        all.sort_unstable();
        all
    }
}

/// Whether two columns hold one thing, whatever their units.
fn same(one: Holds, other: Holds) -> bool {
    match (one, other) {
        (Holds::Girth(a, _), Holds::Girth(b, _)) | (Holds::At(a, _), Holds::At(b, _)) => a == b,
        (Holds::Length(a, _), Holds::Length(b, _)) => a == b,
        _ => false,
    }
}

/// `wrist_cm`, `wrist (cm)`, `wrist cm`: the measure and the unit of length behind it.
fn measure_and_unit(name: &str) -> Option<(&str, Unit)> {
    let text = name.trim().trim_end_matches([')', ']']).trim_end();
    let at = text.rfind(['_', ' ', '(', '['])?;
    let unit = Unit::of_heading(text.get(at + 1..)?)?;
    Some((text.get(..at)?.trim_end_matches(['_', ' ', '(', '[', ',']), unit))
}
