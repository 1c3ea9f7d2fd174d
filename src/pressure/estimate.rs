//! Owns the estimate at one mark and how its errors spread.

use std::f64::consts::TAU;

use super::law::laplace_cm;
use crate::garment::Fabric;
use crate::quantity::{
    Girth, Pressure, Tension, mmhg, newton_per_metre, pressure_from_mmhg, tension_from_newton_per_metre,
};

/// Standard deviations that go into an estimate.
#[derive(Clone, Copy, Debug)]
pub struct Spread {
    /// Of the limb girth, cm.
    pub girth_cm: f64,
    /// Of the relaxed girth, cm.
    pub relaxed_cm: f64,
    /// Of the tension, a fraction.
    pub tension: f64,
}

/// What can be said of the pressure at one mark.
#[derive(Clone, Copy, Debug)]
pub enum Estimate {
    /// The relaxed garment is as wide as the limb or wider: no contact, no pressure.
    Slack,
    /// The fabric was not tested so far. Tension does not fall with stretch, so the pressure is at least
    /// `K·T_last/C`; nothing more is estimated.
    Beyond {
        /// The least pressure.
        bound: Pressure,
    },
    /// An estimate.
    Pressed(Pressed),
}

/// An estimate at one mark.
#[derive(Clone, Copy, Debug)]
pub struct Pressed {
    /// Tension of all layers.
    pub tension: Tension,
    /// The pressure.
    pub pressure: Pressure,
    /// Change of pressure with limb girth, mmHg per cm (the garment's stiffness there).
    pub per_girth: f64,
    /// Change of pressure with relaxed girth, mmHg per cm, negative.
    pub per_relaxed: f64,
    /// SD by tape and ruler alone, mmHg: what two marks of one garment do not share.
    pub sd_own: f64,
    /// The part of it that the relaxed girth or a wrap's pull brings, mmHg: what two pieces at one mark do
    /// not share.
    pub sd_relaxed: f64,
    /// SD by the fabric, mmHg: common to all marks of one garment.
    pub sd_fabric: f64,
}

impl Pressed {
    /// Standard deviation of the estimate, mmHg.
    pub fn sd(&self) -> f64 {
        self.sd_own.hypot(self.sd_fabric)
    }
}

/// Stretch of a garment on a limb: C/C0 − 1 (derived).
pub fn stretch(girth: Girth, relaxed: Girth) -> f64 {
    girth.cm() / relaxed.cm() - 1.0
}

/// Estimates the pressure of `layers` layers of `fabric`, relaxed girth C0, on a limb girth C.
pub fn estimate(fabric: &Fabric, layers: u32, girth: Girth, relaxed: Girth, spread: Spread) -> Estimate {
    estimate_cm(fabric, layers, girth.cm(), relaxed.cm(), spread)
}

/// The same for girths in cm that are not on the tape's raster, both above 0.
///
/// With e = C/C0 − 1 and T the tension of all layers: P = 2πT/C, dP/dC = 2π((1+e)T′ − T)/C²,
/// dP/dC0 = −2πT′(1+e)/(C·C0); the variance adds the tape, relaxed-girth and fabric terms (derived).
pub fn estimate_cm(fabric: &Fabric, layers: u32, girth_cm: f64, relaxed_cm: f64, spread: Spread) -> Estimate {
    if girth_cm <= relaxed_cm {
        return Estimate::Slack;
    }
    let e = girth_cm / relaxed_cm - 1.0;
    let layers = f64::from(layers);
    let Some(one) = fabric.at(e) else {
        let last = fabric.curve.last().map_or(0.0, |(_, tension)| *tension);
        return Estimate::Beyond {
            bound: laplace_cm(tension_from_newton_per_metre(last * layers), girth_cm),
        };
    };
    let tension: Tension = tension_from_newton_per_metre(one.newton_per_metre * layers);
    let pressure: Pressure = laplace_cm(tension, girth_cm);
    let (t, slope) = (newton_per_metre(tension), one.slope * layers);
    let (c, c0) = (girth_cm / 100.0, relaxed_cm / 100.0);
    let per_girth = mmhg_per_cm(TAU * ((1.0 + e) * slope - t) / (c * c));
    let per_relaxed = mmhg_per_cm(-TAU * slope * (1.0 + e) / (c * c0));
    let sd_relaxed = (spread.relaxed_cm * per_relaxed).abs();
    let sd_own = (spread.girth_cm * per_girth).hypot(sd_relaxed);
    let sd_fabric = spread.tension * mmhg(pressure);
    Estimate::Pressed(Pressed { tension, pressure, per_girth, per_relaxed, sd_own, sd_relaxed, sd_fabric })
}

/// Pascal per metre as mmHg per cm.
pub(super) fn mmhg_per_cm(pascal_per_metre: f64) -> f64 {
    mmhg(Pressure::new::<uom::si::pressure::pascal>(pascal_per_metre)) / 100.0
}

impl Estimate {
    /// The pressure, zero without contact; none where nothing is estimated.
    pub fn pressure(&self) -> Option<Pressure> {
        match self {
            Self::Slack => Some(pressure_from_mmhg(0.0)),
            Self::Beyond { .. } => None,
            Self::Pressed(pressed) => Some(pressed.pressure),
        }
    }

    /// The least pressure beyond the fabric's last tested point.
    pub fn bound(&self) -> Option<Pressure> {
        match self {
            Self::Beyond { bound } => Some(*bound),
            Self::Slack | Self::Pressed(_) => None,
        }
    }

    /// The pressure, or the least that it can be.
    pub fn at_least(&self) -> Pressure {
        match self {
            Self::Slack => pressure_from_mmhg(0.0),
            Self::Beyond { bound } => *bound,
            Self::Pressed(pressed) => pressed.pressure,
        }
    }

    /// SD, mmHg, zero without contact.
    pub fn sd(&self) -> f64 {
        match self {
            Self::Pressed(pressed) => pressed.sd(),
            Self::Slack | Self::Beyond { .. } => 0.0,
        }
    }
}
