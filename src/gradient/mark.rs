//! Owns one mark as the judgement sees it.

use crate::anatomy::Landmark;

/// A mark: a place on the limb, and what presses there.
#[derive(Clone, Debug)]
pub struct FallMark {
    /// The landmark; a judged point beyond an overlap's edge carries the landmark of that edge.
    pub landmark: Landmark,
    /// Where along the limb, cm, increasing toward the trunk.
    pub at_cm: f64,
    /// Limb girth, cm, above 0.
    pub girth_cm: f64,
    /// SD of that girth, cm, of the mean where it was taped several times.
    pub girth_sd_cm: f64,
    /// How many tape values it is the mean of.
    pub tapes: u32,
    /// Share of the plain sum that is felt: 1, or less where several pieces lie over one another.
    pub share: f64,
    /// What presses there.
    pub what: MarkKind,
}

/// What presses at a mark.
#[derive(Clone, Debug)]
pub enum MarkKind {
    /// What is worn, one part for each piece that lies there.
    Worn(Vec<Part>),
    /// A sensor's reading.
    Read {
        /// mmHg, at least 0.
        mmhg: f64,
        /// Its SD, mmHg, above 0.
        sd: f64,
    },
}

/// One piece at a mark.
#[derive(Clone, Copy, Debug)]
pub enum Part {
    /// A knit.
    Knit(KnitPart),
    /// A wrap.
    Wrap(WrapPart),
}

/// A knit at a mark.
#[derive(Clone, Copy, Debug)]
pub struct KnitPart {
    /// Number of the knit in the setting; parts of one knit share its tension error.
    pub knit: usize,
    /// Number of the piece that it is of: what is measured again there is measured once.
    pub piece: usize,
    /// Relaxed girth, cm, above 0.
    pub relaxed_cm: f64,
    /// SD of it, cm, of the mean where the flat width was measured several times.
    pub relaxed_sd_cm: f64,
    /// How many flat widths it is the mean of.
    pub flat_widths: u32,
    /// Layers of it.
    pub layers: f64,
}

/// A wrap at a mark: its pull is independent there.
#[derive(Clone, Copy, Debug)]
pub struct WrapPart {
    /// Pressure, mmHg, above 0.
    pub mmhg: f64,
    /// Its change with the girth, mmHg per cm.
    pub per_girth: f64,
    /// Its SD by the pull, mmHg.
    pub pull_sd_mmhg: f64,
}

impl FallMark {
    /// The parts; none for a reading.
    pub fn parts(&self) -> &[Part] {
        match &self.what {
            MarkKind::Worn(parts) => parts,
            MarkKind::Read { .. } => &[],
        }
    }
}
