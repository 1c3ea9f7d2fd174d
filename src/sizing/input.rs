//! Owns what sizing needs to know of a limb: no record, so that a caseload's row serves as well.

use std::collections::BTreeMap;

use crate::anatomy::Landmark;
use crate::garment::Chart;
use crate::quantity::{Girth, Span};
use crate::record::{LengthName, LimbRecord, Origin};

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
    /// from the positions. `sd_cm` is the SD of one tape value at a landmark, cm.
    pub fn of(limb: &LimbRecord, origin: Origin, chart: &Chart, sd_cm: impl Fn(Landmark) -> f64) -> Self {
        let known = limb.marks.iter().filter_map(|mark| {
            let landmark = mark.landmark?;
            let tapes = u32::try_from(mark.readings()).unwrap_or(1).max(1);
            let sd_cm = sd_cm(landmark) / f64::from(tapes).sqrt();
            Some((landmark, KnownGirth { girth: mark.girth(), sd_cm, tapes }))
        });
        let asked = chart.lengths().into_iter();
        let lengths = asked.filter_map(|name| Some((name, limb.length(name, origin)?.0)));
        Self { girths: known.collect(), lengths: lengths.collect() }
    }
}
