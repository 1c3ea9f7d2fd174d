//! Owns what has changed since earlier records of the same limb.

use jiff::civil::Date;

use super::Record;
use crate::anatomy::Landmark;
use crate::quantity::Position;
use crate::rules::{NumberId, Rules};

/// A girth that has changed by the share that the rules name, or more.
#[derive(Clone, Copy, Debug)]
pub struct GirthChange {
    /// The landmark; none for a serial mark.
    pub landmark: Option<Landmark>,
    /// Where along the limb.
    pub at: Position,
    /// Girth then, tenths of a millimetre.
    pub was: i64,
    /// Girth now, tenths of a millimetre.
    pub now: i64,
    /// The day of the earlier girth.
    pub on: Date,
}

/// A weight that has changed by the share that the rules name, or more.
#[derive(Clone, Copy, Debug)]
pub struct WeightChange {
    /// Weight then, kg.
    pub was: f64,
    /// Weight now, kg.
    pub now: f64,
    /// The day of the earlier weight.
    pub on: Date,
}

/// Every mark whose girth differs from its latest earlier girth by the share of the rules or more;
/// a change of exactly that share counts. Confirmed marks are left out.
pub fn girth_changes(record: &Record, previous: &[Record], rules: &Rules) -> Vec<GirthChange> {
    let share = rules.number(NumberId::PreviousChange);
    let earlier = latest_first(previous);
    let mut all = Vec::new();
    for mark in &record.marks {
        if mark.landmark.is_some_and(|one| record.confirmed.contains(&one)) {
            continue;
        }
        let then = earlier.iter().find_map(|one| {
            let same = one.marks.iter().find(|old| match mark.landmark {
                Some(_) => old.landmark == mark.landmark,
                None => {
                    old.at == mark.at && old.landmark.is_none() && one.positions_from == record.positions_from
                }
            });
            same.map(|old| (old.girth(), one.measured))
        });
        let Some((was, on)) = then else { continue };
        let now = mark.girth();
        if changed(was.cm(), now.cm(), share) {
            all.push(GirthChange {
                landmark: mark.landmark,
                at: mark.at,
                was: was.tenths(),
                now: now.tenths(),
                on,
            });
        }
    }
    all
}

/// The change of weight since the latest earlier record that states one.
pub fn weight_change(record: &Record, previous: &[Record], rules: &Rules) -> Option<WeightChange> {
    let now = record.weight_kg?;
    let earlier = latest_first(previous);
    let (was, on) = earlier.iter().find_map(|one| Some((one.weight_kg?, one.measured)))?;
    changed(was, now, rules.number(NumberId::WeightChange)).then_some(WeightChange { was, now, on })
}

fn latest_first(previous: &[Record]) -> Vec<&Record> {
    let mut all: Vec<&Record> = previous.iter().collect();
    all.sort_by(|one, other| {
        other.measured.cmp(&one.measured).then_with(|| other.measured_at.cmp(&one.measured_at))
    });
    all
}

/// Relative change against the earlier value, with the slack that decimals need.
fn changed(was: f64, now: f64, share: f64) -> bool {
    (now - was).abs() >= was * share - 1e-9
}
