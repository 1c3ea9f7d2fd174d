//! Owns the pressures of a garment as bars, for forms that have letters alone.

use super::marks::pressure as cell;
use crate::document::{Bar, Bars, Reach};
use crate::gradient::GradientBasis;
use crate::report::{ClassBlock, PressureBlock};
use crate::words;

/// The bars; none where nothing is estimated.
pub(in crate::render) fn bars(pressure: &PressureBlock, claim: Option<&ClassBlock>) -> Option<Bars> {
    let highs = pressure.marks.iter().filter_map(|mark| mark.high_mmhg.as_ref()).map(|high| high.value);
    let scale = Bars::scale_for(highs.chain(claim.and_then(|claim| claim.high)));
    let band = claim.filter(|claim| claim.low.is_some() || claim.high.is_some());
    let band = band.map(|claim| (claim.low.unwrap_or(0.0), claim.high.unwrap_or(scale)));
    let rows: Vec<Bar> = pressure
        .marks
        .iter()
        .map(|mark| {
            let reach = match (&mark.pressure_mmhg, &mark.low_mmhg, &mark.high_mmhg) {
                (Some(at), Some(low), Some(high)) if at.value > 0.0 => {
                    Some(Reach { low: low.value, at: at.value, high: high.value })
                }
                _ => None,
            };
            Bar {
                label: words::label(mark.landmark),
                words: match reach {
                    Some(_) => mark.pressure_mmhg.as_ref().map(|at| at.text.clone()).unwrap_or_default(),
                    None => cell(mark),
                },
                reach,
                band: band.filter(|_| mark.landmark == pressure.reference.landmark),
            }
        })
        .collect();
    if rows.iter().all(|row| row.reach.is_none()) {
        return None;
    }
    let what = if pressure.basis == Some(GradientBasis::Readings) {
        "reading, ━ its 95 % range by the sensor"
    } else if pressure.pulled {
        "estimate, ━ its 95 % range by tape and pull"
    } else {
        "estimate, ━ its 95 % range by tape, ruler and fabric"
    };
    let shade = if band.is_some() { ", [ ] the class claimed" } else { "" };
    Some(Bars { rows, scale, key: format!("0 to {} mmHg: ● {what}{shade}.", words::whole(scale)) })
}
