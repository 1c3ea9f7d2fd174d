//! Owns the pressure of a wrap that is put on with a known pull.

use std::f64::consts::{PI, TAU};

use uom::si::pressure::pascal;

use super::estimate::mmhg_per_cm;
use super::{Estimate, Pressed};
use crate::quantity::{Pressure, mmhg, tension_from_newton_per_metre};

/// A wrap as it lies at one place.
#[derive(Clone, Copy, Debug)]
pub struct WrapPull {
    /// The pull on the strip, N, at least 0.
    pub pull_n: f64,
    /// The strip's width, cm, above 0.
    pub width_cm: f64,
    /// Layers at one place, at least 1; a part of a layer counts as such.
    pub layers: f64,
    /// Thickness of one layer, cm; 0 = thin.
    pub thickness_cm: f64,
}

/// Estimates the pressure of a wrap on a girth in cm, above 0.
///
/// Thin: P = 2πnF/(WC). With a thickness t: layer i lies on a diameter D + 2t(i − 1) and presses
/// F(D + t)/(W(D²/2 + t(D + t))) (derived; Lamé form). The pull is held, so the pressure falls with
/// the girth. The pull of a hand varies from turn to turn: its relative SD `pull_sd` is independent at
/// each mark.
pub fn estimate_wrap(wrap: WrapPull, girth_cm: f64, girth_sd_cm: f64, pull_sd: f64) -> Estimate {
    let line = wrap.pull_n / (wrap.width_cm / 100.0);
    let metre = girth_cm / 100.0;
    let (pressure_pa, per_metre_pa) = if wrap.thickness_cm > 0.0 {
        thick(wrap, line, metre)
    } else {
        let pressure = TAU * line * wrap.layers / metre;
        (pressure, -pressure / metre)
    };
    let pressure = Pressure::new::<pascal>(pressure_pa);
    let per_girth = mmhg_per_cm(per_metre_pa);
    Estimate::Pressed(Pressed {
        tension: tension_from_newton_per_metre(line * wrap.layers),
        pressure,
        per_girth,
        per_relaxed: 0.0,
        sd_own: (girth_sd_cm * per_girth).hypot(pull_sd * mmhg(pressure)),
        sd_relaxed: pull_sd * mmhg(pressure),
        sd_fabric: 0.0,
    })
}

/// Pressure, Pa, and its change with the girth, Pa per m, layer by layer.
fn thick(wrap: WrapPull, line: f64, girth_m: f64) -> (f64, f64) {
    let t = wrap.thickness_cm / 100.0;
    let (mut sum, mut change) = (0.0, 0.0);
    let mut below = 0.0;
    while below < wrap.layers {
        let share = (wrap.layers - below).min(1.0);
        let d = girth_m / PI + 2.0 * t * below;
        let inner = d * d / 2.0 + t * (d + t);
        sum += share * line * (d + t) / inner;
        // d/dD of (D + t)/M with M′ = D + t, then dD = dC/π.
        change += share * line * (inner - (d + t) * (d + t)) / (inner * inner) / PI;
        below += 1.0;
    }
    (sum, change)
}
