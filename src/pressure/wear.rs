//! Owns a straight line through values over time, for what wear takes off.

/// What a kind of garment lost by wear: months of wear and mmHg.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PublishedWear {
    /// The class of the stockings, of RAL-GZ 387.
    pub class: &'static str,
    /// Months of wear and mmHg at the ankle.
    pub points: [(f64, f64); 3],
}

/// Flat-knit leg stockings, new and worn. Basis: published (Veraart 1997, Phlebology). Of another kind it says
/// nothing.
pub const PUBLISHED_WEAR: [PublishedWear; 2] = [
    PublishedWear { class: "2", points: [(0.0, 29.3), (1.0, 27.6), (3.0, 26.5)] },
    PublishedWear { class: "3", points: [(0.0, 47.5), (1.0, 44.2), (3.0, 41.3)] },
];

/// A straight line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// Its value at 0.
    pub start: f64,
    /// Its change per unit.
    pub slope: f64,
}

impl Line {
    /// The line nearest to points of place and value, by least squares; none for fewer than two places.
    ///
    /// Source: derived; 29.3, 27.6, 26.5 at 0, 1, 3 give a slope of -0.878571429.
    pub fn through(points: &[(f64, f64)]) -> Option<Self> {
        let count = f64::from(u32::try_from(points.len()).ok()?);
        let mean = |of: fn(&(f64, f64)) -> f64| points.iter().map(of).sum::<f64>() / count;
        let (x, y) = (mean(|point| point.0), mean(|point| point.1));
        let square: f64 = points.iter().map(|point| (point.0 - x).powi(2)).sum();
        let cross: f64 = points.iter().map(|point| (point.0 - x) * (point.1 - y)).sum();
        (square > 0.0).then(|| Self { start: y - cross / square * x, slope: cross / square })
    }

    /// Its value at a place.
    pub fn at(self, place: f64) -> f64 {
        self.start + self.slope * place
    }

    /// Where it has a value; none where it is level.
    pub fn reaches(self, value: f64) -> Option<f64> {
        (self.slope.abs() > 0.0).then(|| (value - self.start) / self.slope)
    }
}
