//! Owns which charts are alternatives of one part, and which are parts of a set.

use crate::anatomy::Landmark;
use crate::garment::Chart;

/// The part of each chart, numbered from 0 in the order of the charts. Charts whose stretches share two or more
/// landmarks are alternatives, linked ones form a group; stretches that share at most one (hand to wrist,
/// wrist to axilla) are parts of one set.
pub fn parts(charts: &[&Chart]) -> Vec<usize> {
    let mut group: Vec<usize> = (0..charts.len()).collect();
    for (at, one) in charts.iter().enumerate() {
        for (other_at, other) in charts.iter().enumerate().take(at) {
            let pair = (group.get(at).copied(), group.get(other_at).copied());
            if let ((Some(mine), Some(theirs)), true) = (pair, alternatives(one, other)) {
                let (keep, drop) = (mine.min(theirs), mine.max(theirs));
                group.iter_mut().filter(|place| **place == drop).for_each(|place| *place = keep);
            }
        }
    }
    let mut seen: Vec<usize> = Vec::new();
    group
        .into_iter()
        .map(|place| {
            seen.iter().position(|known| *known == place).unwrap_or_else(|| {
                seen.push(place);
                seen.len() - 1
            })
        })
        .collect()
}

fn alternatives(one: &Chart, other: &Chart) -> bool {
    if one.limb != other.limb {
        return false;
    }
    let covers = |chart: &Chart, landmark: Landmark| (chart.from..=chart.to).contains(&landmark);
    let all = Landmark::of(one.limb).iter();
    let shared = all.filter(|landmark| covers(one, **landmark) && covers(other, **landmark)).count();
    // Two garments of one place are alternatives, however short.
    shared >= 2 || (one.from, one.to) == (other.from, other.to)
}
