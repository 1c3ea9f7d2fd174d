//! Owns the shares of the pressure at one landmark of that at another.

use super::{Point, Value, unlike_fabrics_sd};
use crate::anatomy::Landmark;
use crate::garment::{GraduationLimit, Scheme};
use crate::quantity::phi;

/// Relative slack at a limit, for rounding in the last binary place only (house rule).
const SLACK: f64 = 1e-9;

/// The share at one landmark.
#[derive(Clone, Debug)]
pub struct Ratio {
    /// Where.
    pub landmark: Landmark,
    /// Of which landmark's pressure.
    pub of: Landmark,
    /// The share, %.
    pub percent: f64,
    /// The limit that the scheme sets, if any.
    pub limit: Option<GraduationLimit>,
    /// Whether the share lies within; none without limit.
    pub inside: Option<bool>,
    /// Chance, by tape and ruler, that the share lies outside on the side where it does.
    pub chance_outside: Option<f64>,
}

/// The shares of every judged landmark but the reference, held against the limits of `class`.
pub fn ratios(
    points: &[Point],
    reference: Landmark,
    scheme: Option<&Scheme>,
    class: Option<&str>,
) -> Vec<Ratio> {
    let at = |landmark: Landmark| {
        points.iter().find(|point| point.landmark == landmark).and_then(|point| match point.value {
            Value::Pressure { mmhg, sd, fabrics } => Some((mmhg, sd, fabrics)),
            Value::Stretch { .. } | Value::NotEstimated => None,
        })
    };
    let judged = points.iter().map(|point| point.landmark).filter(|one| *one > reference && !one.is_joint());
    judged
        .filter_map(|landmark| {
            let limit = scheme.zip(class).and_then(|(scheme, class)| scheme.limit(class, landmark));
            let of = limit.map_or(reference, |limit| limit.of);
            let ((here, sd_here, of_here), (base, sd_base, of_base)) = (at(landmark)?, at(of)?);
            if base <= 0.0 {
                return None;
            }
            let percent = 100.0 * here / base;
            let low = limit.and_then(|limit| limit.low).filter(|low| percent < low * (1.0 - SLACK));
            let high = limit.and_then(|limit| limit.high).filter(|high| percent > high * (1.0 + SLACK));
            // The chance that P − k·Pref has the sign it shows; linear, so the term of one fabric drops out.
            let chance = |share: f64, below: bool| {
                let k = share / 100.0;
                let sd = sd_here.hypot(k * sd_base).hypot(unlike_fabrics_sd(&of_here, &of_base, k));
                let gap = if below { k * base - here } else { here - k * base };
                if sd > 0.0 { phi(gap / sd) } else { 1.0 }
            };
            let chance_outside =
                low.map(|low| chance(low, true)).or_else(|| high.map(|high| chance(high, false)));
            let inside = limit.map(|_| low.is_none() && high.is_none());
            Some(Ratio { landmark, of, percent, limit: limit.cloned(), inside, chance_outside })
        })
        .collect()
}
