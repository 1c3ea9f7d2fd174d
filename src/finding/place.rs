//! Owns what a finding is about, by index.

use crate::anatomy::Landmark;

/// What a finding is about; nothing set = the client.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Place {
    /// The limb, by its place in the report.
    pub limb: Option<usize>,
    /// The chart, by its place within the limb; for a garment file none.
    pub chart: Option<usize>,
    /// The size, by its place in the chart.
    pub size: Option<usize>,
    /// Whether it is about a garment file of the run.
    pub garment: bool,
    /// The landmark.
    pub landmark: Option<Landmark>,
}

impl Place {
    /// The client.
    pub const CLIENT: Self = Self { limb: None, chart: None, size: None, garment: false, landmark: None };

    /// One limb.
    pub fn limb(limb: usize) -> Self {
        Self { limb: Some(limb), ..Self::CLIENT }
    }

    /// A chart on a limb.
    #[must_use]
    pub fn chart(self, chart: usize) -> Self {
        Self { chart: Some(chart), ..self }
    }

    /// A size of that chart.
    #[must_use]
    pub fn size(self, size: usize) -> Self {
        Self { size: Some(size), ..self }
    }

    /// A garment file on a limb.
    #[must_use]
    pub fn garment(self) -> Self {
        Self { garment: true, ..self }
    }

    /// The same, at a landmark.
    #[must_use]
    pub fn at(self, landmark: Landmark) -> Self {
        Self { landmark: Some(landmark), ..self }
    }

    /// Whether it is about client or limb, not about a garment.
    pub fn is_client(self) -> bool {
        self.chart.is_none() && !self.garment
    }
}
