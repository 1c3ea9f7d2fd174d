//! Owns girths that have left the range of the size worn.

use crate::anatomy::Landmark;
use crate::garment::Chart;
use crate::input::Text;
use crate::record::{GarmentInUse, LimbRecord};

/// A girth of today outside the range of the size worn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Drift {
    /// The garment's label.
    pub garment: Text,
    /// Its size.
    pub size: Text,
    /// Where.
    pub landmark: Landmark,
    /// By how much, tenths of a millimetre: positive above the range, negative below it.
    pub by_tenths: i64,
}

/// The girths of `limb` that lie outside the size worn of each of its `garments` in use whose chart is
/// among `charts` (by its label, borne by no other), rounded to the chart's printed step as in sizing.
pub fn drift(limb: &LimbRecord, garments: &[GarmentInUse], charts: &[&Chart]) -> Vec<Drift> {
    let mut all = Vec::new();
    for garment in garments {
        let Some(worn) = &garment.size else { continue };
        let mut named = charts.iter().filter(|one| is(&one.label, &garment.label));
        let (Some(chart), None) = (named.next(), named.next()) else { continue };
        let Some(size) = chart.sizes.iter().find(|one| is(&one.label, worn)) else { continue };
        for (landmark, range) in &size.girths {
            let Some(mark) = limb.mark(*landmark) else { continue };
            let girth = mark.girth().rounded_to(chart.printed_step).tenths();
            let above = range.high.map(|high| girth - high).filter(|by| *by > 0);
            let below = range.low.map(|low| girth - low).filter(|by| *by < 0);
            if let Some(by_tenths) = above.or(below) {
                let (garment, size) = (garment.label.clone(), worn.clone());
                all.push(Drift { garment, size, landmark: *landmark, by_tenths });
            }
        }
    }
    all
}

fn is(one: impl AsRef<str>, other: &Text) -> bool {
    one.as_ref() == other.as_str()
}
