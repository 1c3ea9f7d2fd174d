//! Owns the estimate of one garment on one limb: every mark, the reference, the fall.

use crate::anatomy::{Landmark, Limb};
use crate::garment::{Claim, ClassPlace, Fabric};
use crate::graduation::{Graduation, GraduationBasis, Point, Ratio, Value, judge, ratios};
use crate::pressure::{Estimate, Spread, estimate, stretch};
use crate::quantity::{Girth, Position, mmhg, phi};
use crate::record::Record;
use crate::rules::{NumberId, Rules};

/// One garment as it would be worn.
#[derive(Clone, Copy, Debug)]
pub struct Worn<'g> {
    /// Relaxed girths.
    pub relaxed: &'g [(Landmark, Girth)],
    /// Its fabric.
    pub fabric: Option<&'g Fabric>,
    /// Layers of it.
    pub layers: u32,
    /// The class claimed.
    pub claim: Option<&'g Claim>,
    /// Its proximal end.
    pub to: Landmark,
}

/// The estimate at one mark.
#[derive(Clone, Copy, Debug)]
pub struct MarkEstimate {
    /// Where.
    pub landmark: Landmark,
    /// Where along the limb.
    pub at: Position,
    /// Limb girth.
    pub girth: Girth,
    /// Relaxed girth.
    pub relaxed: Girth,
    /// Stretch, a fraction; negative where the garment is wider than the limb.
    pub stretch: f64,
    /// The estimate; none without a fabric curve.
    pub estimate: Option<Estimate>,
}

/// The estimate at the reference.
#[derive(Clone, Debug)]
pub struct ReferenceEstimate {
    /// Wrist or ankle, or what the scheme names.
    pub landmark: Landmark,
    /// mmHg.
    pub mmhg: Option<f64>,
    /// Where it lies among the classes of the scheme claimed.
    pub class: Option<ClassPlace>,
    /// Chance of the claimed class.
    pub claimed_probability: Option<f64>,
    /// Stiffness, mmHg per cm.
    pub stiffness: Option<f64>,
}

/// One garment on one limb.
#[derive(Clone, Debug)]
pub struct WornEstimate {
    /// What it rests on; none without relaxed girths at measured marks.
    pub basis: Option<GraduationBasis>,
    /// Every mark with a relaxed girth, distal to proximal.
    pub marks: Vec<MarkEstimate>,
    /// The reference.
    pub reference: ReferenceEstimate,
    /// The fall along the limb; none without relaxed girths.
    pub graduation: Option<Graduation>,
    /// Shares of the reference, with a fabric curve only.
    pub ratios: Vec<Ratio>,
    /// Whether a certain rise takes it out of the choice.
    pub removed: bool,
}

/// Estimates a garment on the record's limb.
pub fn estimate_worn(record: &Record, worn: Worn<'_>, rules: &Rules) -> WornEstimate {
    let sd_relaxed = worn
        .fabric
        .and_then(|fabric| fabric.relaxed_sd_cm)
        .unwrap_or_else(|| rules.number(NumberId::RelaxedSd));
    let sd_tension =
        worn.fabric.and_then(|fabric| fabric.tension_sd).unwrap_or_else(|| rules.number(NumberId::TensionSd));
    let mut marks = Vec::new();
    let mut points = Vec::new();
    for (landmark, relaxed) in worn.relaxed {
        let Some(mark) = record.mark(*landmark) else { continue };
        let girth = mark.girth();
        let spread = Spread { girth_cm: mark.sd_cm(), relaxed_cm: sd_relaxed, tension: sd_tension };
        let found = worn.fabric.map(|fabric| estimate(fabric, worn.layers, girth, *relaxed, spread));
        let value = match found {
            None => Value::Stretch { girth, relaxed: *relaxed, sd_girth: mark.sd_cm(), sd_relaxed },
            Some(found) => found.pressure().map_or(Value::NotEstimated, |pressure| Value::Pressure {
                mmhg: mmhg(pressure),
                sd: found.sd_own(),
            }),
        };
        points.push(Point { landmark: *landmark, at: mark.at, value });
        marks.push(MarkEstimate {
            landmark: *landmark,
            at: mark.at,
            girth,
            relaxed: *relaxed,
            stretch: stretch(girth, *relaxed),
            estimate: found,
        });
    }
    let basis = match (marks.is_empty(), worn.fabric) {
        (true, _) => None,
        (false, Some(_)) => Some(GraduationBasis::Fabric),
        (false, None) => Some(GraduationBasis::Stretch),
    };
    let reference = reference(record.limb, &marks, worn.claim);
    let graduation = basis.map(|basis| judge(&points, basis, record.limb, worn.to, rules));
    let class = worn.claim.map(|claim| claim.class.as_str()).or(match &reference.class {
        Some(ClassPlace::In(class)) => Some(class.as_str()),
        _ => None,
    });
    let ratios = if basis == Some(GraduationBasis::Fabric) {
        ratios(&points, record.limb.reference(), worn.claim.map(|claim| &claim.scheme), class)
    } else {
        Vec::new()
    };
    let removed = graduation.as_ref().is_some_and(|graduation| graduation.removes(rules));
    WornEstimate { basis, marks, reference, graduation, ratios, removed }
}

fn reference(limb: Limb, marks: &[MarkEstimate], claim: Option<&Claim>) -> ReferenceEstimate {
    let landmark = claim.and_then(|claim| claim.scheme.reference).unwrap_or(limb.reference());
    let found = marks.iter().find(|mark| mark.landmark == landmark).and_then(|mark| mark.estimate);
    let pressure = found.and_then(|found| found.pressure()).map(mmhg);
    let class =
        pressure.zip(claim).and_then(|(pressure, claim)| claim.scheme.place_of(pressure, Some(&claim.class)));
    let band = claim.and_then(|claim| claim.scheme.class(&claim.class));
    let claimed_probability = pressure.zip(band).zip(found).map(|((pressure, band), found)| {
        let sd = found.sd();
        if sd > 0.0 {
            let upto = band.high.map_or(1.0, |high| phi((high - pressure) / sd));
            let from = band.low.map_or(0.0, |low| phi((low - pressure) / sd));
            upto - from
        } else {
            f64::from(u8::from(band.holds(pressure)))
        }
    });
    let stiffness = found.and_then(|found| match found {
        Estimate::Pressed(pressed) => Some(pressed.per_girth),
        Estimate::Slack | Estimate::Beyond => None,
    });
    ReferenceEstimate { landmark, mmhg: pressure, class, claimed_probability, stiffness }
}

impl WornEstimate {
    /// The highest estimate, mmHg.
    pub fn highest(&self) -> Option<f64> {
        let all = self.marks.iter().filter_map(|mark| mark.estimate.and_then(|one| one.pressure()).map(mmhg));
        all.reduce(f64::max)
    }
}
