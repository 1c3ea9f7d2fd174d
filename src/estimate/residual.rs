//! Owns residual pressures: the share of the base point's pressure that is left at each mark.

use super::{EstimateRules, MarkEstimate};
use crate::anatomy::{Landmark, Limb};
use crate::garment::{Claim, ClassPlace, GraduationLimit};
use crate::pressure::Estimate;
use crate::quantity::{mmhg, phi};

/// Relative slack at a limit, for rounding in the last binary place only (house rule).
const SLACK: f64 = 1e-9;

/// The residual pressure at one landmark.
#[derive(Clone, Debug)]
pub struct Residual {
    /// Where.
    pub landmark: Landmark,
    /// Of which landmark's pressure.
    pub of: Landmark,
    /// Share of it, %; none where either is not estimated.
    pub percent: Option<f64>,
    /// The limit that the scheme sets, if any.
    pub limit: Option<GraduationLimit>,
    /// Whether the share lies within; none without limit or share.
    pub inside: Option<bool>,
    /// Chance that it lies outside on the side where it does.
    pub chance_outside: Option<f64>,
    /// Whether that chance is one of a caution.
    pub surely_outside: bool,
}

/// The residual pressures of every judged mark but the base point, held against the limits of the claimed
/// class, else of the estimated one.
pub(super) fn residuals(
    limb: Limb,
    marks: &[MarkEstimate],
    claim: Option<&Claim>,
    class: Option<&ClassPlace>,
    tension_sds: &[f64],
    rules: &EstimateRules,
) -> Vec<Residual> {
    if marks.iter().all(|mark| mark.estimate.is_none()) {
        return Vec::new();
    }
    let name = claim.map(|claim| claim.class.as_str()).or(match class {
        Some(ClassPlace::In(class)) => Some(class.as_str()),
        _ => None,
    });
    let base = claim.and_then(|claim| claim.scheme.reference).unwrap_or(limb.reference());
    let at = |landmark: Landmark| marks.iter().find(|mark| mark.landmark == landmark);
    marks
        .iter()
        .filter(|mark| mark.judged && mark.landmark > base)
        .map(|mark| {
            let limit = claim.zip(name).and_then(|(claim, name)| claim.scheme.limit(name, mark.landmark));
            let of = limit.map_or(base, |limit| limit.of);
            let base = at(of).filter(|base| base.mmhg().is_some_and(|base| base > 0.0));
            let share = base.zip(mark.mmhg()).and_then(|(base, here)| Some((base, here / base.mmhg()?)));
            let percent = share.map(|(_, share)| 100.0 * share);
            let low = limit
                .and_then(|limit| limit.low)
                .filter(|low| percent.is_some_and(|is| is < low * (1.0 - SLACK)));
            let high = limit
                .and_then(|limit| limit.high)
                .filter(|high| percent.is_some_and(|is| is > high * (1.0 + SLACK)));
            let chance_outside = share.and_then(|(base, share)| {
                let ln = |limit: f64| (share / (limit / 100.0)).ln();
                let gap = low.map(|low| -ln(low)).or_else(|| high.map(ln))?;
                let sd = ratio_sd(mark, base, tension_sds);
                Some(if sd > 0.0 { phi(gap / sd) } else { 1.0 })
            });
            Residual {
                landmark: mark.landmark,
                of,
                percent,
                limit: limit.cloned(),
                inside: limit.and(percent).map(|_| low.is_none() && high.is_none()),
                chance_outside,
                surely_outside: chance_outside.is_some_and(|chance| chance >= rules.ratio_chance),
            }
        })
        .collect()
}

/// SD of the logarithm of a ratio: own errors of both marks, and unlike knits as far as their shares differ.
/// One knit's error drops out (derived).
fn ratio_sd(mark: &MarkEstimate, base: &MarkEstimate, tension_sds: &[f64]) -> f64 {
    let share = |mark: &MarkEstimate, piece: usize| {
        let found = mark.pieces.iter().find(|one| one.piece == piece).and_then(|one| one.estimate);
        match (found, mark.mmhg()) {
            (Some(Estimate::Pressed(pressed)), Some(all)) if all > 0.0 => mmhg(pressed.pressure) / all,
            _ => 0.0,
        }
    };
    let unlike: f64 = tension_sds
        .iter()
        .enumerate()
        .map(|(piece, sd)| (sd * (share(mark, piece) - share(base, piece))).powi(2))
        .sum();
    let own = mark.own_ln_sd().unwrap_or(0.0).hypot(base.own_ln_sd().unwrap_or(0.0));
    own.hypot(unlike.sqrt())
}
