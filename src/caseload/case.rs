//! Owns one row of a table of limbs as read: girths on the raster of tenths of a millimetre.

use super::limb_columns::{Holds, LimbColumns};
use super::nominal::nominal;
use super::number::tenths;
use crate::anatomy::{Landmark, Limb};
use crate::input::{RowCells, Spot};
use crate::quantity::{Girth, Position, Span};
use crate::record::{LengthName, Mark};
use crate::rules::TapeSd;
use crate::sizing::{KnownGirth, SizingInput};

/// Landmarks of one limb, at most.
pub(super) const PLACES: usize = 9;

/// One limb of a caseload.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Case {
    /// Girths by place along the limb, tenths of a millimetre; 0 = not measured.
    pub(super) girths: [i32; PLACES],
    /// Positions by place, tenths of a millimetre; none = the usual place.
    pub(super) at: [Option<i32>; PLACES],
    /// Lengths.
    pub(super) lengths: Vec<(LengthName, Span)>,
}

/// The place of a landmark along its limb.
pub(super) fn place(landmark: Landmark) -> usize {
    Landmark::of(landmark.limb()).iter().position(|one| *one == landmark).unwrap_or_default()
}

impl Case {
    /// A limb of girths, cm to the tenth of a millimetre, each measured once.
    pub fn of(girths: &[(Landmark, Girth)]) -> Self {
        let mut case = Self::default();
        for (landmark, girth) in girths {
            if let Some(slot) = case.girths.get_mut(place(*landmark)) {
                *slot = i32::try_from(girth.tenths()).unwrap_or_default();
            }
        }
        case
    }

    /// Reads a row into this case, which is used again for each.
    ///
    /// # Errors
    /// What is wrong with the row.
    pub(super) fn read(&mut self, cells: &RowCells, columns: &LimbColumns) -> Result<(), String> {
        self.girths = [0; PLACES];
        self.at = [None; PLACES];
        self.lengths.clear();
        if cells.len() != columns.width {
            return Err(format!("has {} cells under {} columns", cells.len(), columns.width));
        }
        for (at, holds) in &columns.used {
            let Some(cell) = cells.get(*at).filter(|cell| !cell.is_empty()) else { continue };
            let mended;
            let cell = if columns.decimal_comma && cell.contains(&b',') {
                mended =
                    cell.iter().map(|byte| if *byte == b',' { b'.' } else { *byte }).collect::<Vec<u8>>();
                mended.as_slice()
            } else {
                cell
            };
            let (Holds::Girth(_, unit) | Holds::At(_, unit) | Holds::Length(_, unit)) = holds;
            let fault = |what: &str| format!("{}: `{}` {what}", noun(*holds), String::from_utf8_lossy(cell));
            if cell.starts_with(b"=") {
                return Err(fault("is a formula; save the table with its values"));
            }
            let value = tenths(cell, *unit).map_err(|what| fault(&what))?;
            match holds {
                Holds::Girth(landmark, _) => {
                    if value < 1 {
                        return Err(fault("is not above 0"));
                    }
                    let whole = i32::try_from(value).ok().filter(|_| value <= Girth::UNASKED_TENTHS);
                    let whole = whole.ok_or_else(|| {
                        fault("is above 200 cm, which no limb has; look at its unit and digits")
                    })?;
                    if let Some(slot) = self.girths.get_mut(place(*landmark)) {
                        *slot = whole;
                    }
                }
                Holds::At(landmark, _) => {
                    let whole = Position::from_tenths(value).and_then(|at| i32::try_from(at.tenths()).ok());
                    let whole = whole.ok_or_else(|| fault("is no position on a limb"))?;
                    if let Some(slot) = self.at.get_mut(place(*landmark)) {
                        *slot = Some(whole);
                    }
                }
                Holds::Length(name, _) => {
                    let span = Span::from_tenths(value).ok_or_else(|| fault("is no length of a limb"))?;
                    self.lengths.push((*name, span));
                }
            }
        }
        Ok(())
    }

    /// The girth at a place, tenths of a millimetre; 0 = not measured.
    pub(super) fn girth(&self, place: usize) -> i32 {
        self.girths.get(place).copied().unwrap_or_default()
    }

    /// What sizing asks for. A length of `asked` that is not stated follows from the positions, where the row has
    /// both.
    pub fn input(&self, limb: Limb, tape: &TapeSd, asked: &[LengthName]) -> SizingInput {
        let all = Landmark::of(limb).iter().zip(&self.girths);
        let girths = all.filter_map(|(landmark, tenths)| {
            let girth = Girth::from_tenths(i64::from(*tenths))?;
            let sd_cm = tape.of_mean(limb, Some(*landmark), girth.cm(), 1);
            Some((*landmark, KnownGirth { girth, sd_cm, tapes: 1 }))
        });
        let by_positions = asked.iter().filter_map(|name| Some((*name, self.length_by_positions(*name)?)));
        let stated = self.lengths.iter().copied();
        SizingInput { girths: girths.collect(), lengths: by_positions.chain(stated).collect() }
    }

    fn length_by_positions(&self, name: LengthName) -> Option<Span> {
        let at = |landmark: Landmark| self.at.get(place(landmark)).copied().flatten();
        match name {
            LengthName::Between(between) => Span::from_tenths(i64::from(at(between.to)? - at(between.from)?)),
            // A table does not say where its positions begin.
            LengthName::FromFloor(_) => None,
        }
    }

    /// The marks as a record has them; a mark without a position stands at its usual place.
    pub fn marks(&self, limb: Limb) -> Vec<Mark> {
        let all = Landmark::of(limb).iter().zip(&self.girths).zip(&self.at);
        all.filter_map(|((landmark, tenths), at)| {
            let first = Girth::from_tenths(i64::from(*tenths))?;
            let at = match at {
                Some(at) => Position::from_tenths(i64::from(*at))?,
                None => nominal(*landmark)?,
            };
            Some(Mark {
                landmark: Some(*landmark),
                at,
                first,
                again: Vec::new(),
                calipers: None,
                spot: Spot(0),
            })
        })
        .collect()
    }
}

fn noun(holds: Holds) -> String {
    match holds {
        Holds::Girth(landmark, _) => landmark.name().to_owned(),
        Holds::At(landmark, _) => format!("position of {}", landmark.name()),
        Holds::Length(name, _) => name.name(),
    }
}
