//! Owns what a finding is about.

use crate::anatomy::Landmark;

/// What a finding is about.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct FindingPlace {
    /// The part of the record: `record`, `marks`, `screening`, `arterial`; empty for a garment.
    pub part: &'static str,
    /// The chart's label.
    pub chart: Option<String>,
    /// The size's label.
    pub size: Option<String>,
    /// The landmark.
    pub landmark: Option<Landmark>,
}

impl FindingPlace {
    /// A part of the record.
    pub fn record(part: &'static str) -> Self {
        Self { part, ..Self::default() }
    }

    /// A size of a chart.
    pub fn size(chart: &str, size: &str) -> Self {
        Self { chart: Some(chart.to_owned()), size: Some(size.to_owned()), ..Self::default() }
    }

    /// A chart as a whole.
    pub fn chart(chart: &str) -> Self {
        Self { chart: Some(chart.to_owned()), ..Self::default() }
    }

    /// The same, at a landmark.
    #[must_use]
    pub fn at(mut self, landmark: Landmark) -> Self {
        self.landmark = Some(landmark);
        self
    }

    /// In words: `screening`, `sleeve chart A, size 3`.
    pub fn text(&self) -> String {
        match (&self.chart, &self.size) {
            (Some(chart), Some(size)) => format!("{chart}, size {size}"),
            (Some(chart), None) => chart.clone(),
            (None, _) => self.part.to_owned(),
        }
    }

    /// Whether it is about the client, not a garment.
    pub fn is_client(&self) -> bool {
        self.chart.is_none()
    }
}
