//! Owns what a clinic's own readings say of the spread between wearers: readings and estimates of one check.

use super::Assessment;
use crate::estimate::{AgainstReading, Estimated};

/// Every mark of a check that has both a reading and an estimate, of whatever is shown.
pub fn read_and_estimated(found: &Assessment) -> Vec<AgainstReading> {
    let rows = |estimated: &Estimated| {
        estimated.readings.as_ref().map(|said| said.against.clone()).unwrap_or_default()
    };
    let charts = found.limbs.iter().flat_map(|limb| &limb.charts).flat_map(|chart| &chart.shown);
    let of_charts = charts.flat_map(|shown| rows(&shown.estimated));
    of_charts.chain(found.garments.iter().flat_map(|one| rows(&one.estimated))).collect()
}
