//! Owns the inverse: relaxed girths of a made-to-measure garment for a wanted pressure at each mark.

use jiff::civil::Date;

use super::chart::of_offer;
use super::garment_findings::{Subject, of_estimate};
use super::gradient::{as_offer, settle};
use super::outfit::estimate_outfit;
use super::{Assessment, OpenRecord, WornEstimate};
use crate::anatomy::Landmark;
use crate::finding::{Finding, FindingPlace};
use crate::garment::{Claim, ClassBand, Fabric, Garment, Outfit, Piece};
use crate::pressure::{
    Estimate, Relaxed, Spread, estimate_cm, laplace_cm, reduction_from_stretch, relaxed_for,
};
use crate::quantity::{Girth, Position, mmhg, tension_from_newton_per_metre};
use crate::record::Record;
use crate::rules::{NumberId, Rules};

/// How much of the reference's pressure is wanted along the limb.
#[derive(Clone, Debug)]
pub enum Fall {
    /// Straight in position from 100 % at the reference to this share at the top, per cent.
    Straight(f64),
    /// Straight to the middle of the scheme's limits at the top, kept within its limits between.
    Scheme,
}

/// The pressure that is wanted.
#[derive(Clone, Debug)]
pub enum Target {
    /// At the reference, mmHg, and the fall from it.
    Reference(f64, Fall),
    /// The middle of the claimed class's band, and the fall from it.
    Class(Fall),
    /// At each landmark, mmHg.
    List(Vec<(Landmark, f64)>),
}

/// What is to be worked out.
#[derive(Clone, Debug)]
pub struct Wanted {
    /// The label of the garment.
    pub label: String,
    /// Its fabric.
    pub fabric: Fabric,
    /// Layers of it.
    pub layers: u32,
    /// The class that it is to claim.
    pub claim: Option<Claim>,
    /// The style.
    pub style: Option<String>,
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
    /// A class is wanted and none is named.
    NoClass,
    /// The class has no lower or no upper end to take a middle of.
    OpenClass(String),
    /// The scheme sets no share for the landmark at the top.
    NoShare(Landmark),
    /// Fewer than two landmarks are measured from the reference on.
    TooFew,
}

/// One mark of the pattern.
#[derive(Clone, Debug)]
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
    /// The exact solution; none beyond the tested stretch.
    pub solved: Option<Relaxed>,
    /// Its relaxed girth on the tape's raster of 0.1 mm.
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

/// Everything worked out for a wanted pressure, unrounded.
#[derive(Clone, Debug)]
pub struct PatternAssessment {
    /// Client, outcome and findings; no charts.
    pub base: Assessment,
    /// What was wanted.
    pub wanted: Wanted,
    /// The marks, distal to proximal.
    pub marks: Vec<PatternMark>,
    /// The garment; none where a mark cannot be had.
    pub garment: Option<Garment>,
    /// The garment read back as `gradient` does.
    pub read_back: Option<WornEstimate>,
}

/// Works out the garment for a wanted pressure, as of `today`.
///
/// # Errors
/// A [`NoPattern`] where the record or the scheme lacks what the target needs.
pub fn assess_pattern(
    open: &OpenRecord,
    wanted: Wanted,
    today: Date,
    rules: &Rules,
) -> Result<PatternAssessment, NoPattern> {
    let record = &open.record;
    let targets = targets(record, &wanted)?;
    let marks: Vec<PatternMark> = targets
        .iter()
        .filter_map(|(landmark, mmhg)| solve(record, &wanted, *landmark, *mmhg, rules))
        .collect();
    let base_mmhg = targets
        .iter()
        .find(|(landmark, _)| *landmark == record.limb.reference())
        .or(targets.first())
        .map_or(1.0, |(_, mmhg)| *mmhg);
    let marks: Vec<PatternMark> = marks
        .into_iter()
        .map(|mark| PatternMark { percent: 100.0 * mark.wanted / base_mmhg, ..mark })
        .collect();
    let garment = garment(open, &wanted, &marks);
    let place = FindingPlace::chart(&wanted.label);
    let mut found = of_targets(&place, &wanted, &marks);
    let mut ends: Vec<Option<f64>> = marks.iter().map(|mark| Some(mark.wanted)).collect();
    let mut read_back = None;
    if let Some(garment) = &garment {
        let outfit = Outfit::of(Piece::Garment(Box::new(garment.clone())));
        let worn = estimate_outfit(record, &outfit, rules);
        found.extend(of_offer(open, &as_offer(&outfit, None), &place, rules));
        let subject = Subject {
            claim: wanted.claim.as_ref(),
            wanted: None,
            fabric: Some(&wanted.fabric),
            reference: record.limb.reference(),
            top: garment.to,
        };
        found.extend(of_estimate(&place, &worn, subject, rules));
        ends.extend(worn.highest().map(Some));
        read_back = Some(worn);
    }
    let judged = read_back.as_ref().and_then(|worn| worn.graduation.as_ref()).is_some_and(|one| one.judged);
    let own = (garment.is_some() && !judged).then_some(super::Outcome::Unproven);
    let base = settle(open, found, &ends, own, today, rules);
    Ok(PatternAssessment { base, wanted, marks, garment, read_back })
}

fn targets(record: &Record, wanted: &Wanted) -> Result<Vec<(Landmark, f64)>, NoPattern> {
    let measured = |landmark: Landmark| record.mark(landmark).map(|mark| mark.at);
    let reference = record.limb.reference();
    let (level, fall) = match &wanted.target {
        Target::List(list) => {
            if let Some((missing, _)) = list.iter().find(|(landmark, _)| measured(*landmark).is_none()) {
                return Err(NoPattern::NotMeasured(*missing));
            }
            let mut list = list.clone();
            list.sort_by_key(|(landmark, _)| *landmark);
            return if list.len() < 2 { Err(NoPattern::TooFew) } else { Ok(list) };
        }
        Target::Reference(level, fall) => (*level, fall),
        Target::Class(fall) => (middle(wanted.claim.as_ref())?, fall),
    };
    let marks: Vec<(Landmark, Position)> = record
        .marks
        .iter()
        .filter_map(|mark| Some((mark.landmark?, mark.at)))
        .filter(|(landmark, _)| *landmark >= reference && wanted.to.is_none_or(|to| *landmark <= to))
        .collect();
    let (Some((first, from)), Some((last, upto))) = (marks.first(), marks.last()) else {
        return Err(NoPattern::TooFew);
    };
    if let Some(to) = wanted.to.filter(|to| to != last) {
        return Err(NoPattern::NotMeasured(to));
    }
    if *first != reference {
        return Err(NoPattern::NotMeasured(reference));
    }
    if marks.len() < 2 {
        return Err(NoPattern::TooFew);
    }
    let limits = |landmark: Landmark| {
        let claim = wanted.claim.as_ref()?;
        let limit = claim.scheme.limit(&claim.class, landmark).filter(|limit| limit.of == reference)?;
        Some((limit.low.unwrap_or(0.0), limit.high.unwrap_or(100.0)))
    };
    let top = match fall {
        Fall::Straight(percent) => *percent,
        Fall::Scheme => {
            limits(*last).map(|(low, high)| f64::midpoint(low, high)).ok_or(NoPattern::NoShare(*last))?
        }
    };
    let length = upto.cm() - from.cm();
    Ok(marks
        .iter()
        .map(|(landmark, at)| {
            let share = if length > 0.0 { (at.cm() - from.cm()) / length } else { 0.0 };
            let straight = 100.0 + (top - 100.0) * share;
            let kept = match (fall, limits(*landmark)) {
                (Fall::Scheme, Some((low, high))) => straight.clamp(low, high),
                _ => straight,
            };
            (*landmark, level * kept / 100.0)
        })
        .collect())
}

/// The middle of the claimed class's band, mmHg.
fn middle(claim: Option<&Claim>) -> Result<f64, NoPattern> {
    let claim = claim.ok_or(NoPattern::NoClass)?;
    match claim.scheme.class(&claim.class) {
        Some(ClassBand { low: Some(low), high: Some(high), .. }) => Ok(f64::midpoint(*low, *high)),
        _ => Err(NoPattern::OpenClass(claim.class.clone())),
    }
}

fn solve(
    record: &Record,
    wanted: &Wanted,
    landmark: Landmark,
    pressure: f64,
    rules: &Rules,
) -> Option<PatternMark> {
    let mark = record.mark(landmark)?;
    let girth = mark.girth();
    let solved = relaxed_for(&wanted.fabric, wanted.layers, girth.cm(), pressure);
    let spread = Spread {
        girth_cm: mark.sd_cm(),
        relaxed_cm: wanted.fabric.relaxed_sd_cm.unwrap_or_else(|| rules.number(NumberId::RelaxedSd)),
        tension: 0.0,
    };
    let slopes = solved.and_then(|one| {
        match estimate_cm(&wanted.fabric, wanted.layers, girth.cm(), one.relaxed_cm, spread) {
            Estimate::Pressed(pressed) => {
                Some(((pressed.per_girth * spread.girth_cm).abs(), pressed.sd_relaxed))
            }
            Estimate::Slack | Estimate::Beyond => None,
        }
    });
    let last = wanted.fabric.curve.last().map_or(0.0, |(_, tension)| *tension);
    let all = tension_from_newton_per_metre(last * f64::from(wanted.layers));
    Some(PatternMark {
        landmark,
        at: mark.at,
        girth,
        wanted: pressure,
        percent: 0.0,
        relaxed: solved.and_then(|one| on_raster(one.relaxed_cm)),
        reduction: solved.map(|one| reduction_from_stretch(one.stretch)),
        solved,
        by_tape: slopes.map(|(tape, _)| tape),
        by_sewing: slopes.map(|(_, sewing)| sewing),
        most: mmhg(laplace_cm(all, girth.cm())),
    })
}

/// The nearest girth on the raster of 0.1 mm.
fn on_raster(cm: f64) -> Option<Girth> {
    let tenths = (cm * 100.0).round();
    #[expect(
        clippy::cast_possible_truncation,
        reason = "a relaxed girth is below a limb girth, at most 20 000"
    )]
    (1.0..=20_000.0).contains(&tenths).then(|| Girth::from_tenths(tenths as i64)).flatten()
}

fn garment(open: &OpenRecord, wanted: &Wanted, marks: &[PatternMark]) -> Option<Garment> {
    let relaxed: Option<Vec<(Landmark, Girth)>> =
        marks.iter().map(|mark| mark.relaxed.map(|relaxed| (mark.landmark, relaxed))).collect();
    let relaxed = relaxed?;
    Some(Garment {
        label: wanted.label.clone(),
        limb: open.record.limb,
        style: wanted.style.clone(),
        from: relaxed.first()?.0,
        to: relaxed.last()?.0,
        claim: wanted.claim.clone(),
        contains: None,
        hand_part: None,
        fabric: Some(wanted.fabric.clone()),
        fabric_at: Vec::new(),
        layers: wanted.layers,
        relaxed,
        top_edge: None,
    })
}

fn of_targets(place: &FindingPlace, wanted: &Wanted, marks: &[PatternMark]) -> Vec<Finding> {
    let mut found = Vec::new();
    let judged: Vec<&PatternMark> =
        marks.iter().filter(|mark| !mark.landmark.is_joint() && !mark.landmark.on_extremity()).collect();
    for pair in judged.windows(2) {
        if let [below, above] = pair
            && above.wanted >= below.wanted
        {
            found.push(Finding::target_rises(
                place.clone(),
                (below.landmark, below.wanted),
                (above.landmark, above.wanted),
            ));
        }
    }
    let beyond: Vec<(Landmark, f64, f64)> = marks
        .iter()
        .filter(|mark| mark.solved.is_none())
        .map(|mark| (mark.landmark, mark.wanted, mark.most))
        .collect();
    if !beyond.is_empty() {
        found.push(Finding::target_beyond(place.clone(), &beyond, wanted.fabric.last_stretch()));
    }
    found
}
