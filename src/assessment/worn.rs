//! Owns the estimate of one garment on one limb: every mark, the reference, the fall.

use crate::anatomy::{Landmark, Limb};
use crate::garment::{Claim, ClassPlace, Fabric};
use crate::graduation::{Graduation, GraduationBasis, Point, Ratio, Share, Shares, Value, judge, ratios};
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

/// The pressure that a sensor read at one mark: the mean of its readings.
#[derive(Clone, Copy, Debug)]
pub struct ReadAt {
    /// mmHg.
    pub mmhg: f64,
    /// SD of the mean, mmHg.
    pub sd: f64,
    /// How many readings.
    pub count: usize,
}

/// What one garment of several does at a mark.
#[derive(Clone, Debug)]
pub struct PieceAt {
    /// Its place among the pieces worn.
    pub piece: usize,
    /// Its relaxed girth there; none for a wrap, or where it is not stated.
    pub relaxed: Option<Girth>,
    /// Its own estimate; none without a fabric curve.
    pub estimate: Option<Estimate>,
}

/// The estimate at one mark.
#[derive(Clone, Debug)]
pub struct MarkEstimate {
    /// Where.
    pub landmark: Landmark,
    /// Where along the limb.
    pub at: Position,
    /// Limb girth.
    pub girth: Girth,
    /// Relaxed girth; none for wraps, readings and several garments at one mark.
    pub relaxed: Option<Girth>,
    /// Stretch, a fraction; negative where the garment is wider than the limb.
    pub stretch: Option<f64>,
    /// The estimate; none without a fabric curve.
    pub estimate: Option<Estimate>,
    /// What was read there, by readings.
    pub read: Option<ReadAt>,
    /// Each garment at this mark; empty for a size of a chart and for readings.
    pub pieces: Vec<PieceAt>,
}

impl MarkEstimate {
    /// mmHg: what was read, else the estimate.
    pub fn mmhg(&self) -> Option<f64> {
        self.read.map(|read| read.mmhg).or_else(|| self.estimate.and_then(|one| one.pressure()).map(mmhg))
    }

    /// SD of it, mmHg.
    pub fn sd(&self) -> Option<f64> {
        self.mmhg()?;
        self.read.map(|read| read.sd).or_else(|| self.estimate.map(|one| one.sd()))
    }

    /// The greatest stretch of a garment at this mark.
    pub fn deepest_stretch(&self) -> Option<f64> {
        let pieces = self.pieces.iter().filter_map(|piece| piece.relaxed);
        self.stretch.or_else(|| pieces.map(|relaxed| stretch(self.girth, relaxed)).reduce(f64::max))
    }

    /// Whether the garment is as wide as the limb or wider.
    pub fn is_slack(&self) -> bool {
        matches!(self.estimate, Some(Estimate::Slack))
            || self.relaxed.is_some_and(|relaxed| self.girth <= relaxed)
    }
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
    /// The same as the comparison sees them.
    pub points: Vec<Point>,
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
                fabrics: one_fabric(mmhg(pressure), sd_tension),
            }),
        };
        points.push(Point { landmark: *landmark, at: mark.at, value });
        marks.push(MarkEstimate {
            landmark: *landmark,
            at: mark.at,
            girth,
            relaxed: Some(*relaxed),
            stretch: Some(stretch(girth, *relaxed)),
            estimate: found,
            read: None,
            pieces: Vec::new(),
        });
    }
    let basis = match (marks.is_empty(), worn.fabric) {
        (true, _) => None,
        (false, Some(_)) => Some(GraduationBasis::Fabric),
        (false, None) => Some(GraduationBasis::Stretch),
    };
    compare(record.limb, basis, marks, points, worn.claim, worn.to, rules)
}

/// The shares of a pressure that one fabric brings alone.
fn one_fabric(mmhg: f64, sd: f64) -> Shares {
    let mut shares = Shares::default();
    if let Some(first) = shares.first_mut() {
        *first = Share { mmhg, sd };
    }
    shares
}

/// Reference, fall and shares of marks that are known.
pub(super) fn compare(
    limb: Limb,
    basis: Option<GraduationBasis>,
    marks: Vec<MarkEstimate>,
    points: Vec<Point>,
    claim: Option<&Claim>,
    to: Landmark,
    rules: &Rules,
) -> WornEstimate {
    let reference = reference(limb, &marks, claim);
    let graduation = basis.map(|basis| judge(&points, basis, limb, to, rules));
    let class = claim.map(|claim| claim.class.as_str()).or(match &reference.class {
        Some(ClassPlace::In(class)) => Some(class.as_str()),
        _ => None,
    });
    let ratios = if matches!(basis, Some(GraduationBasis::Fabric | GraduationBasis::Readings)) {
        ratios(&points, limb.reference(), claim.map(|claim| &claim.scheme), class)
    } else {
        Vec::new()
    };
    let removed = graduation.as_ref().is_some_and(|graduation| graduation.removes(rules));
    WornEstimate { basis, marks, points, reference, graduation, ratios, removed }
}

fn reference(limb: Limb, marks: &[MarkEstimate], claim: Option<&Claim>) -> ReferenceEstimate {
    let landmark = claim.and_then(|claim| claim.scheme.reference).unwrap_or(limb.reference());
    let mark = marks.iter().find(|mark| mark.landmark == landmark);
    let pressure = mark.and_then(MarkEstimate::mmhg);
    let class =
        pressure.zip(claim).and_then(|(pressure, claim)| claim.scheme.place_of(pressure, Some(&claim.class)));
    let band = claim.and_then(|claim| claim.scheme.class(&claim.class));
    let claimed_probability = pressure.zip(band).zip(mark).map(|((pressure, band), mark)| {
        let sd = mark.sd().unwrap_or_default();
        if sd > 0.0 {
            let upto = band.high.map_or(1.0, |high| phi((high - pressure) / sd));
            let from = band.low.map_or(0.0, |low| phi((low - pressure) / sd));
            upto - from
        } else {
            f64::from(u8::from(band.holds(pressure)))
        }
    });
    let stiffness = mark.and_then(|mark| mark.estimate).and_then(|found| match found {
        Estimate::Pressed(pressed) => Some(pressed.per_girth),
        Estimate::Slack | Estimate::Beyond => None,
    });
    ReferenceEstimate { landmark, mmhg: pressure, class, claimed_probability, stiffness }
}

impl WornEstimate {
    /// The highest estimate, mmHg.
    pub fn highest(&self) -> Option<f64> {
        self.marks.iter().filter_map(MarkEstimate::mmhg).reduce(f64::max)
    }
}
