//! Owns the relaxed girths of a size placed anew: those that press as a class asks on the limb in its middle.

use super::case::Case;
use crate::anatomy::Landmark;
use crate::estimate::{EstimateRules, NoPattern, OnLimb, Target, Wanted, WantedFall, pattern};
use crate::garment::Chart;
use crate::quantity::Girth;

/// The fall that is aimed at where the scheme sets no shares, per cent of the reference at the top (house rule: the
/// even fall that the rule of the fall calls usual).
pub const USUAL_FALL: f64 = 60.0;

/// Why sizes have no relaxed girths.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoRelaxed {
    /// The chart names no fabric with a curve.
    NoFabric,
    /// The chart claims no class.
    NoClass,
    /// The measures do not reach from the reference to a mark above it, or the class has no middle.
    NoTarget,
    /// The fabric does not press so within its tested stretch.
    TooWeak,
}

/// A relaxed girth as it is cut and printed: whole millimetres (house rule).
fn cut(girth: Girth) -> Option<Girth> {
    const MILLIMETRE: i64 = 10;
    Girth::from_tenths((girth.tenths() + MILLIMETRE / 2) / MILLIMETRE * MILLIMETRE)
}

/// Relaxed girths of a size between these low and high ends, tenths of a millimetre, in the order of the chart's
/// measures, by its fabric and class; those outside its stretch along the limb have none.
///
/// # Errors
/// Why there are none.
pub fn relaxed_girths(
    chart: &Chart,
    ends: &[(i64, i64)],
    rules: &EstimateRules,
) -> Result<Vec<(Landmark, Girth)>, NoRelaxed> {
    let fabric = chart.fabric.as_ref().filter(|fabric| fabric.has_curve()).ok_or(NoRelaxed::NoFabric)?;
    let claim = chart.claim.clone().ok_or(NoRelaxed::NoClass)?;
    let measures = chart.measures();
    let within = |mark: &Landmark| (chart.from..=chart.to).contains(mark);
    let middles = measures.iter().zip(ends).filter(|(mark, _)| within(mark));
    let middles = middles
        .filter_map(|(mark, (low, high))| Some((*mark, Girth::from_tenths(i64::midpoint(*low, *high))?)));
    let case = Case::of(&middles.collect::<Vec<_>>());
    let marks = case.marks(chart.limb);
    let on = OnLimb { limb: chart.limb, marks: &marks };
    let made = |fall: WantedFall| {
        let wanted = Wanted {
            label: chart.label.clone(),
            fabric: fabric.clone(),
            layers: chart.layers,
            claim: Some(claim.clone()),
            style: None,
            target: Target::Class(fall),
            to: measures.iter().rev().find(|mark| within(mark)).copied(),
        };
        pattern(&on, &wanted, rules)
    };
    let found = match made(WantedFall::Scheme) {
        Err(NoPattern::NoShare(_)) => made(WantedFall::To(USUAL_FALL)),
        other => other,
    };
    let found = found.map_err(|_| NoRelaxed::NoTarget)?;
    let all = found.marks.iter().map(|mark| Some((mark.landmark, cut(mark.relaxed?)?)));
    all.collect::<Option<Vec<_>>>().ok_or(NoRelaxed::TooWeak)
}
