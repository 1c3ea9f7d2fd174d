//! Owns the judgement of arterial values against their limits, and the rule for a leg without an index.

use super::Screened;
use crate::quantity::mmhg;
use crate::record::{Arterial, Clinical};
use crate::rules::{ArterialRule, ArterialValue, NumberId, Rules};

/// An arterial value that meets a limit.
#[derive(Clone, Debug)]
pub struct ArterialHit {
    /// The value, a plain number (index) or mmHg.
    pub value: f64,
    /// The limit that it meets.
    pub rule: ArterialRule,
}

/// Every value that meets a limit; both the index and the absolute pressures are judged.
pub fn arterial_hits(arterial: Option<&Arterial>, rules: &Rules) -> Vec<ArterialHit> {
    let Some(arterial) = arterial else { return Vec::new() };
    let value = |which| match which {
        ArterialValue::Abpi => arterial.index(),
        ArterialValue::AnkleSystolic => arterial.ankle_systolic.map(mmhg),
        ArterialValue::Toe => arterial.toe.map(mmhg),
        ArterialValue::Tcpo2 => arterial.tcpo2.map(mmhg),
    };
    let hits = rules.arterial.iter().filter_map(|rule| {
        let value = value(rule.value)?;
        rule.holds(value).then(|| ArterialHit { value, rule: rule.clone() })
    });
    hits.collect()
}

/// What a leg without an ankle-brachial pressure index comes to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoAbpi {
    /// There is an index, or a clinical assessment covers the target.
    Covered,
    /// The target is low and nothing speaks against it.
    Care,
    /// Someone named must clear it.
    Review,
}

/// The rule for a leg without an index. `target` is the highest pressure in question, mmHg; none =
/// unknown or open, which counts as above the limit.
pub fn no_abpi(
    arterial: Option<&Arterial>,
    screened: &Screened,
    target: Option<f64>,
    rules: &Rules,
) -> NoAbpi {
    if arterial.is_some_and(|arterial| arterial.index().is_some()) {
        return NoAbpi::Covered;
    }
    if let Some(arterial) = arterial
        && arterial.clinical == Some(Clinical::Adequate)
        && let (Some(cap), Some(target)) = (arterial.cap, target)
        && target <= mmhg(cap) * (1.0 + 1e-9)
    {
        return NoAbpi::Covered;
    }
    let low = target.is_some_and(|target| target <= rules.number(NumberId::NoAbpiTarget));
    if low && !screened.circulation_in_doubt(rules) { NoAbpi::Care } else { NoAbpi::Review }
}
