//! Owns what sizing needs to know of a limb: no record, so that a caseload's row serves as well.

use std::collections::BTreeMap;

use crate::anatomy::Landmark;
use crate::garment::Chart;
use crate::quantity::{Girth, Span};
use crate::record::{LengthName, LimbRecord, Origin};
use crate::rules::TapeSd;

/// A girth as measured.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KnownGirth {
    /// The mean of the tape values, to 0.1 mm.
    pub girth: Girth,
    /// SD of that mean, cm, above 0.
    pub sd_cm: f64,
    /// How many tape values, at least 1.
    pub tapes: u32,
}

/// The girths and lengths of one limb.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SizingInput {
    /// Girths at landmarks.
    pub girths: BTreeMap<Landmark, KnownGirth>,
    /// Lengths known, stated or worked out from positions.
    pub lengths: BTreeMap<LengthName, Span>,
}

impl SizingInput {
    /// What a record knows of a limb for a chart: the girths, and the lengths that the chart asks for, stated or
    /// from the positions. `tape` is the error of the tape.
    pub fn of(limb: &LimbRecord, origin: Origin, chart: &Chart, tape: &TapeSd) -> Self {
        let known = limb.marks.iter().filter_map(|mark| {
            let landmark = mark.landmark?;
            let tapes = u32::try_from(mark.readings()).unwrap_or(1).max(1);
            let sd_cm = mark.sd_cm(landmark.limb(), tape);
            Some((landmark, KnownGirth { girth: mark.girth(), sd_cm, tapes }))
        });
        let asked = chart.lengths().into_iter();
        let lengths = asked.filter_map(|name| Some((name, limb.length(name, origin)?.0)));
        Self { girths: known.collect(), lengths: lengths.collect() }
    }
}
