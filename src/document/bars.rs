//! Owns bars of figures with their ranges, as a form that has letters alone draws them.

/// Bars under one another on one scale that begins at 0.
#[derive(Clone, Debug, PartialEq)]
pub struct Bars {
    /// The end of the scale.
    pub scale: f64,
    /// The bars, first at the top.
    pub rows: Vec<Bar>,
    /// What the signs mean, in one sentence.
    pub key: String,
}

/// One bar.
#[derive(Clone, Debug, PartialEq)]
pub struct Bar {
    /// What it is about.
    pub label: String,
    /// How far it reaches; none where there is nothing to draw.
    pub reach: Option<Reach>,
    /// Two ends that are shown on it, such as those of a class.
    pub band: Option<(f64, f64)>,
    /// What stands behind it.
    pub words: String,
}

/// A figure with its range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    /// The lower end.
    pub low: f64,
    /// The figure.
    pub at: f64,
    /// The upper end.
    pub high: f64,
}

impl Bars {
    /// The end of a scale for these values: the highest, up to the next ten, at least ten.
    pub fn scale_for(values: impl IntoIterator<Item = f64>) -> f64 {
        let highest = values.into_iter().fold(0.0_f64, f64::max);
        ((highest / 10.0).ceil() * 10.0).max(10.0)
    }
}
