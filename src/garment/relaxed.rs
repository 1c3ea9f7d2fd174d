//! Owns a garment's girth when relaxed, with the number of flat widths that it is the mean of.

use crate::quantity::Girth;

/// A relaxed girth: the mean of its repeats, to 0.1 mm.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Relaxed {
    /// The girth; a flat width is doubled, then stored.
    pub girth: Girth,
    /// How often it was measured, at least 1; the SD of the mean is one width's over √n.
    pub repeats: u32,
}

impl Relaxed {
    /// Measured once.
    pub fn once(girth: Girth) -> Self {
        Self { girth, repeats: 1 }
    }

    /// The mean of several; none of no girth at all.
    pub fn mean(girths: &[Girth]) -> Option<Self> {
        let (first, rest) = girths.split_first()?;
        Some(Self { girth: Girth::mean(*first, rest), repeats: u32::try_from(girths.len()).ok()? })
    }

    /// The SD of the mean, in the unit of `sd`: that of one width over √n.
    pub fn sd(self, sd: f64) -> f64 {
        sd / f64::from(self.repeats.max(1)).sqrt()
    }
}
