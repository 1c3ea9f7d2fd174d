//! Owns the inverse of the estimate: relaxed girths of a made-to-measure garment for a wanted pressure.

use super::pattern_target::{Asked, Place, settle, shares};
use super::{EstimateRules, Estimated, OnLimb, Target, estimate_garment};
use crate::anatomy::Landmark;
use crate::garment::{Claim, Fabric, Garment, Relaxed};
use crate::gradient::Grade;
use crate::input::Text;
use crate::pressure::{Estimate, Spread, estimate_cm, laplace_cm, reduction_from_stretch, relaxed_for};
use crate::quantity::{Girth, Position, mmhg, tension_from_newton_per_metre};

/// So many SDs of sewing and tape a pattern aims inside a scheme's limits. House rule.
const INSIDE_SDS: f64 = 2.0;

/// Shapes of the fall that are tried: from straight in position to the same ratio at every step.
const SHAPES: [f64; 5] = [0.0, 0.25, 0.5, 0.75, 1.0];

/// What is to be worked out.
#[derive(Clone, Debug)]
pub struct Wanted {
    /// The label of the garment.
    pub label: Text,
    /// Its fabric, with a curve.
    pub fabric: Fabric,
    /// Layers of it, at least 1.
    pub layers: u32,
    /// The class that it is to claim.
    pub claim: Option<Claim>,
    /// The style.
    pub style: Option<Text>,
    /// The wanted pressure.
    pub target: Target,
    /// The garment's proximal end; none = the last measured landmark.
    pub to: Option<Landmark>,
}

/// Why there is no pattern.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoPattern {
    /// The landmark has no girth in the record.
    NotMeasured(Landmark),
    /// Two pressures are wanted at one landmark.
    Twice(Landmark),
    /// A class is wanted and none is named.
    NoClass,
    /// The class has no lower or no upper end to take a middle of.
    OpenClass(String),
    /// The scheme sets no share for the landmark at the top.
    NoShare(Landmark),
    /// Fewer than two landmarks are measured from the reference on.
    TooFew,
    /// The fabric has no curve.
    NoCurve,
}

/// One mark of the pattern.
#[derive(Clone, Copy, Debug)]
pub struct PatternMark {
    /// Where.
    pub landmark: Landmark,
    /// Where along the limb.
    pub at: Position,
    /// Limb girth.
    pub girth: Girth,
    /// The wanted pressure, mmHg.
    pub wanted: f64,
    /// Wanted, % of the reference.
    pub percent: f64,
    /// Stretch of the exact solution; none beyond the tested stretch.
    pub stretch: Option<f64>,
    /// Its relaxed girth, cm, before it is rounded.
    pub exact_cm: Option<f64>,
    /// Its relaxed girth on the raster of 0.1 mm.
    pub relaxed: Option<Girth>,
    /// Reduction of the limb's girth, a fraction.
    pub reduction: Option<f64>,
    /// What one SD of the tape would change, mmHg.
    pub by_tape: Option<f64>,
    /// What one SD of the relaxed girth (sewing, finishing) would change, mmHg.
    pub by_sewing: Option<f64>,
    /// The most that the fabric gives on this girth within its tested stretch, mmHg.
    pub most: f64,
}

/// A garment worked out for a wanted pressure.
#[derive(Clone, Debug)]
pub struct Pattern {
    /// The marks, distal to proximal.
    pub marks: Vec<PatternMark>,
    /// Pairs of neighbours whose targets do not fall toward the trunk.
    pub rises: Vec<(Landmark, Landmark)>,
    /// The garment; none where a mark cannot be had.
    pub garment: Option<Garment>,
    /// The garment estimated as any other.
    pub estimated: Option<Estimated>,
}

/// Works out the garment for a wanted pressure.
///
/// # Errors
/// A [`NoPattern`] where the record, the fabric or the scheme lacks what the target needs.
pub fn pattern(on: &OnLimb<'_>, wanted: &Wanted, rules: &EstimateRules) -> Result<Pattern, NoPattern> {
    if wanted.fabric.curve.len() < 2 {
        return Err(NoPattern::NoCurve);
    }
    match settle(on, &wanted.target, wanted.claim.as_ref(), wanted.to)? {
        Asked::Fixed(list) => Ok(made(on, wanted, &list, rules)),
        Asked::Fall { level, top, places } => Ok(best(on, wanted, (level, top), &places, rules)),
    }
}

/// Of the shapes of the fall the first that reads back inside every limit without a remark, else the one
/// least likely to rise.
fn best(
    on: &OnLimb<'_>,
    wanted: &Wanted,
    (level, top): (f64, f64),
    places: &[Place],
    rules: &EstimateRules,
) -> Pattern {
    let mut kept: Option<(Pattern, (usize, f64))> = None;
    for even in SHAPES {
        let found = shaped(on, wanted, (level, top, even), places, rules);
        let estimated = found.estimated.as_ref();
        let outside = estimated.map_or(usize::MAX, |one| {
            one.residual.iter().filter(|residual| residual.inside == Some(false)).count()
        });
        let chance = estimated.and_then(|one| one.fall.as_ref()).and_then(|fall| fall.fall.chance);
        let grade = estimated.and_then(Estimated::grade);
        if outside == 0 && found.rises.is_empty() && grade == Some(Grade::None) {
            return found;
        }
        let worth = (outside + found.rises.len(), chance.unwrap_or(1.0));
        if kept
            .as_ref()
            .is_none_or(|(_, before)| worth.0 < before.0 || (worth.0 == before.0 && worth.1 < before.1))
        {
            kept = Some((found, worth));
        }
    }
    kept.map_or_else(|| made(on, wanted, &[], rules), |(found, _)| found)
}

/// One shape, kept inside the limits by twice the error that its own girths have.
fn shaped(
    on: &OnLimb<'_>,
    wanted: &Wanted,
    (level, top, even): (f64, f64, f64),
    places: &[Place],
    rules: &EstimateRules,
) -> Pattern {
    let mut room = vec![0.0; places.len()];
    let mut list = Vec::new();
    // The error hangs on the girths and they on the error; it settles within a few rounds.
    for _ in 0..6 {
        let percents = shares(places, top, even, &room);
        list = places
            .iter()
            .zip(&percents)
            .map(|(place, percent)| (place.landmark, level * percent / 100.0))
            .collect();
        let marks: Vec<PatternMark> =
            list.iter().filter_map(|(landmark, mmhg)| solve(on, wanted, *landmark, *mmhg, rules)).collect();
        let error = |landmark: Landmark| {
            let mark = marks.iter().find(|mark| mark.landmark == landmark)?;
            Some(mark.by_tape?.hypot(mark.by_sewing?) / mark.wanted)
        };
        let base = places.first().and_then(|place| error(place.landmark)).unwrap_or_default();
        room = places
            .iter()
            .zip(&percents)
            .map(|(place, percent)| {
                INSIDE_SDS * percent * error(place.landmark).unwrap_or_default().hypot(base)
            })
            .collect();
    }
    made(on, wanted, &list, rules)
}

/// The garment for a pressure at each landmark, estimated.
fn made(on: &OnLimb<'_>, wanted: &Wanted, list: &[(Landmark, f64)], rules: &EstimateRules) -> Pattern {
    let mut marks: Vec<PatternMark> =
        list.iter().filter_map(|(landmark, mmhg)| solve(on, wanted, *landmark, *mmhg, rules)).collect();
    let base = marks.iter().find(|mark| mark.landmark == on.limb.reference()).or(marks.first());
    let base = base.map_or(1.0, |mark| mark.wanted);
    for mark in &mut marks {
        mark.percent = 100.0 * mark.wanted / base;
    }
    let judged: Vec<&PatternMark> =
        marks.iter().filter(|mark| !mark.landmark.is_joint() && !mark.landmark.on_extremity()).collect();
    let rises = judged.windows(2).filter_map(|pair| match pair {
        [below, above] if above.wanted >= below.wanted => Some((below.landmark, above.landmark)),
        _ => None,
    });
    let rises = rises.collect();
    let garment = garment(on, wanted, &marks);
    let estimated = garment.as_ref().map(|garment| estimate_garment(on, garment, &[], rules));
    Pattern { marks, rises, garment, estimated }
}

fn solve(
    on: &OnLimb<'_>,
    wanted: &Wanted,
    landmark: Landmark,
    pressure: f64,
    rules: &EstimateRules,
) -> Option<PatternMark> {
    let mark = on.mark(landmark)?;
    let girth = mark.girth();
    let layers = wanted.layers.max(1);
    let solved = relaxed_for(&wanted.fabric, layers, girth.cm(), pressure);
    let spread = Spread {
        girth_cm: mark.sd_cm(on.limb, &rules.tape),
        relaxed_cm: wanted.fabric.relaxed_sd_cm.unwrap_or(rules.relaxed_sd_cm),
        tension: 0.0,
    };
    let slopes = solved.and_then(|one| {
        match estimate_cm(&wanted.fabric, layers, girth.cm(), one.relaxed_cm, spread) {
            Estimate::Pressed(pressed) => {
                Some(((pressed.per_girth * spread.girth_cm).abs(), pressed.sd_relaxed))
            }
            Estimate::Slack | Estimate::Beyond { .. } => None,
        }
    });
    let last = wanted.fabric.curve.last().map_or(0.0, |(_, tension)| *tension);
    let all = tension_from_newton_per_metre(last * f64::from(layers));
    Some(PatternMark {
        landmark,
        at: mark.at,
        girth,
        wanted: pressure,
        percent: 0.0,
        stretch: solved.map(|one| one.stretch),
        exact_cm: solved.map(|one| one.relaxed_cm),
        relaxed: solved.and_then(|one| on_raster(one.relaxed_cm)),
        reduction: solved.map(|one| reduction_from_stretch(one.stretch)),
        by_tape: slopes.map(|(tape, _)| tape),
        by_sewing: slopes.map(|(_, sewing)| sewing),
        most: mmhg(laplace_cm(all, girth.cm())),
    })
}

/// The nearest girth on the raster of 0.1 mm.
fn on_raster(cm: f64) -> Option<Girth> {
    let tenths = (cm * 100.0).round();
    #[expect(clippy::cast_possible_truncation, reason = "a relaxed girth is below a limb girth")]
    (1.0..=1e6).contains(&tenths).then(|| Girth::from_tenths(tenths as i64)).flatten()
}

fn garment(on: &OnLimb<'_>, wanted: &Wanted, marks: &[PatternMark]) -> Option<Garment> {
    let relaxed: Option<Vec<(Landmark, Relaxed)>> =
        marks.iter().map(|mark| mark.relaxed.map(|girth| (mark.landmark, Relaxed::once(girth)))).collect();
    let relaxed = relaxed?;
    Some(Garment {
        label: wanted.label.clone(),
        file: String::new(),
        limb: on.limb,
        style: wanted.style.clone(),
        from: relaxed.first()?.0,
        to: relaxed.last()?.0,
        claim: wanted.claim.clone(),
        materials: None,
        hand_part: None,
        fabric: Some(wanted.fabric.clone()),
        fabric_at: Vec::new(),
        layers: wanted.layers.max(1),
        relaxed,
        top_edge: None,
    })
}
