//! Owns whether the swelling has grown since the last visit.
//!
//! Source: house rule on the detectable change of leg volumes two weeks apart (published: Lymphat Res
//! Biol 2022, doi 10.1089/lrb.2022.0032).

use super::{Change, PartOfLimb, TWO_SIDED, VolumeNumbers};
use crate::rules::Severity;

/// What was judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grown {
    /// The excess of one-sided swelling.
    Excess,
    /// The limb itself.
    Limb,
}

/// The swelling has grown by more than the rule allows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Worsening {
    /// What was judged.
    pub grown: Grown,
    /// Of which part; none = the whole limb.
    pub part: Option<PartOfLimb>,
    /// The visit it is counted from, by its place in the limb's visits.
    pub from: usize,
    /// The newest visit.
    pub to: usize,
    /// Was, mL.
    pub was_ml: f64,
    /// Is, mL.
    pub now_ml: f64,
    /// The rise, % of the limb's volume then.
    pub rise_percent: f64,
    /// The rise that the rule allows, %.
    pub limit_percent: f64,
    /// Whether it rose at two visits running and only their sum, or that as well, is beyond the limit.
    pub two_running: bool,
    /// [`Severity::Caution`] or [`Severity::ClearFirst`].
    pub severity: Severity,
}

/// The rise that the rule allows, % of the limb's volume: 1.96·√2·SD.
pub fn worse_limit_percent(numbers: &VolumeNumbers) -> f64 {
    TWO_SIDED * std::f64::consts::SQRT_2 * numbers.sd_between_percent
}

/// A rise between two visits: what it was, what it is, and the limb's volume that it is held against.
#[derive(Clone, Copy, Debug)]
pub(super) struct Rise {
    grown: Grown,
    from: usize,
    to: usize,
    was: f64,
    now: f64,
    base: f64,
}

impl Rise {
    /// Of the limb: by its excess where the swelling is one-sided, else by its volume; none where a
    /// one-sided excess is not there at both visits.
    pub(super) fn of(change: &Change, one_sided: bool) -> Option<Self> {
        let (from, to, base) = (change.from, change.to, change.volume.was_ml);
        if one_sided {
            let excess = change.excess?;
            return Some(Self {
                grown: Grown::Excess,
                from,
                to,
                was: excess.was.ml,
                now: excess.now.ml,
                base,
            });
        }
        let (was, now) = (change.volume.was_ml, change.volume.now_ml);
        Some(Self { grown: Grown::Limb, from, to, was, now, base })
    }

    fn percent(self) -> f64 {
        100.0 * (self.now - self.was) / self.base
    }
}

impl Worsening {
    /// Judges the rise since the last visit, with the one before it (`before`, up to the last visit) and
    /// their sum (`over`, from two visits back), where there are.
    pub(super) fn judge(
        last: Rise,
        before: Option<Rise>,
        over: Option<Rise>,
        numbers: &VolumeNumbers,
    ) -> Option<Self> {
        let limit = worse_limit_percent(numbers);
        let running = before.is_some_and(|before| before.percent() > 0.0) && last.percent() > 0.0;
        let sum = over.filter(|over| running && over.percent() > limit);
        let severity = if last.percent() > 2.0 * limit || sum.is_some() {
            Severity::ClearFirst
        } else if last.percent() > limit {
            Severity::Caution
        } else {
            return None;
        };
        let told = sum.unwrap_or(last);
        Some(Self {
            grown: told.grown,
            part: None,
            from: told.from,
            to: told.to,
            was_ml: told.was,
            now_ml: told.now,
            rise_percent: told.percent(),
            limit_percent: limit,
            two_running: sum.is_some(),
            severity,
        })
    }
}
