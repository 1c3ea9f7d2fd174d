//! Owns the estimate of what is worn, as a whole.

use super::falls::{Asked, FallOf, FallVerdict, asked, setting, verdict};
use super::knits::Knits;
use super::mark::marks;
use super::readings::{self, ReadAt, ReadingsVerdict};
use super::reference::{ReferenceEstimate, reference};
use super::residual::{Residual, residuals};
use super::top_edge::{TopEdgeEstimate, top_edges};
use super::{EstimateRules, MarkEstimate, OnLimb};
use crate::anatomy::Landmark;
use crate::garment::{Garment, Outfit, Piece};
use crate::gradient::{
    Action, Decide, FallMark, FallSetting, Grade, GradientBasis, Turn, decide, judge, judge_grade,
    turns_of_all,
};
use crate::record::Reading;

/// What is worn on a limb, estimated.
#[derive(Clone, Debug)]
pub struct Estimated {
    /// What the pressures rest on; none where nothing is known.
    pub basis: Option<GradientBasis>,
    /// Every measured mark where a piece is known, distal to proximal.
    pub marks: Vec<MarkEstimate>,
    /// The reference.
    pub reference: ReferenceEstimate,
    /// The fall that counts; none where there is none (a hand piece), or nothing is known.
    pub fall: Option<FallVerdict>,
    /// Whether what is worn has a fall at all: two judged landmarks between its ends.
    pub has_fall: bool,
    /// The fall by the estimate where the readings' counts, or the other way round.
    pub beside: Option<FallVerdict>,
    /// What the readings say; none without readings.
    pub readings: Option<ReadingsVerdict>,
    /// Every landmark with a reading, also where nothing is estimated; distal to proximal.
    pub read: Vec<(Landmark, ReadAt)>,
    /// Residual pressures.
    pub residual: Vec<Residual>,
    /// Bands at upper ends.
    pub top_edges: Vec<TopEdgeEstimate>,
}

impl Estimated {
    /// The grade that counts; none where there is no fall.
    pub fn grade(&self) -> Option<Grade> {
        self.fall.as_ref().map(FallVerdict::grade)
    }

    /// Whether the whole is judged; none where there is no fall to judge.
    pub fn judged(&self) -> Option<bool> {
        self.has_fall.then(|| self.fall.as_ref().is_some_and(|fall| fall.judged))
    }

    /// Whether a certain rise takes it out of the choice.
    pub fn is_taken_out(&self) -> bool {
        self.fall.as_ref().is_some_and(|fall| fall.grade() == Grade::Certain && fall.removes())
    }

    /// The mark with the highest pressure or lower bound, mmHg.
    pub fn highest(&self) -> Option<(Landmark, f64)> {
        let all = self.marks.iter().filter_map(|mark| Some((mark.landmark, mark.at_least_mmhg()?)));
        all.max_by(|one, other| one.1.total_cmp(&other.1))
    }

    /// Landmarks beyond a curve's end.
    pub fn beyond(&self) -> Vec<Landmark> {
        self.marks.iter().filter(|mark| mark.bound_mmhg().is_some()).map(|mark| mark.landmark).collect()
    }

    /// Landmarks where nothing touches.
    pub fn no_contact(&self) -> Vec<Landmark> {
        self.marks.iter().filter(|mark| mark.is_slack()).map(|mark| mark.landmark).collect()
    }

    /// Twice the pressure at the most proximal mark, mmHg: what a fold of the edge would press (derived).
    pub fn folded_edge_mmhg(&self) -> Option<f64> {
        self.marks.last().and_then(MarkEstimate::at_least_mmhg).map(|mmhg| 2.0 * mmhg)
    }
}

/// Estimates what is worn on a limb, with the sensor readings that belong to it.
pub fn estimate(on: &OnLimb<'_>, outfit: &Outfit, readings: &[&Reading], rules: &EstimateRules) -> Estimated {
    let knits = Knits::of(outfit);
    let mut marks = marks(on, outfit, &knits, rules);
    for mark in &mut marks {
        mark.reading = readings::read_at(readings, mark.landmark, rules);
    }
    let claim = outfit.claim.as_ref();
    let reference = reference(on.limb, &marks, claim);
    let has_fall = super::falls::has_fall(on, outfit.from(), outfit.to());
    let asked = asked(on, outfit, &knits, rules);
    let by_estimate = verdict(on, outfit, &asked, &knits, rules);
    let grade = by_estimate.as_ref().map(FallVerdict::grade);
    let said = readings::verdict(on, readings, &marks, outfit.to(), grade, rules);
    let by_readings = said.as_ref().filter(|said| said.fall.estimated.len() >= 2).map(|said| FallVerdict {
        fall: said.fall.clone(),
        of: FallOf::Readings,
        judged: said.fall.judged,
        all: vec![(FallOf::Readings, said.fall.clone())],
        unheld: None,
    });
    let (fall, beside) = counted(by_estimate, by_readings, said.as_ref());
    let sds: Vec<f64> = outfit.pieces.iter().map(|worn| tension_sd(&worn.piece, rules)).collect();
    let residual = if has_fall {
        residuals(on.limb, &marks, claim, reference.class.as_ref(), &sds, rules)
    } else {
        Vec::new()
    };
    Estimated {
        basis: basis(&marks),
        reference,
        fall,
        has_fall,
        beside,
        readings: said,
        read: Landmark::of(on.limb)
            .iter()
            .filter_map(|one| Some((*one, readings::read_at(readings, *one, rules)?)))
            .collect(),
        residual,
        top_edges: top_edges(on, outfit, &knits, rules),
        marks,
    }
}

/// The fall that counts and the other one: readings alone decide where every judged mark has one; where the
/// two contradict each other the worse counts.
fn counted(
    estimate: Option<FallVerdict>,
    read: Option<FallVerdict>,
    said: Option<&ReadingsVerdict>,
) -> (Option<FallVerdict>, Option<FallVerdict>) {
    let (Some(said), Some(mut read)) = (said, read) else { return (estimate, None) };
    // A reading in the hollow beside the ankle bone never rejects alone: such a fall is not decided.
    if said.leaves_open() || (said.rests_on_hollow && estimate.is_none()) {
        read.fall.grade = Grade::Undecided;
        read.fall.removes = false;
        read.judged = false;
        read.all = vec![(FallOf::Readings, read.fall.clone())];
    }
    let Some(estimate) = estimate else { return (Some(read), None) };
    let worse = read.grade() < estimate.grade();
    let readings_count = if said.leaves_open() {
        worse
    } else if said.rests_on_hollow {
        false
    } else if said.contradicts {
        worse || (read.grade() == estimate.grade() && said.decides())
    } else {
        said.decides()
    };
    if readings_count { (Some(read), Some(estimate)) } else { (Some(estimate), Some(read)) }
}

/// What the pressures rest on.
fn basis(marks: &[MarkEstimate]) -> Option<GradientBasis> {
    if marks.is_empty() {
        None
    } else if marks.iter().any(|mark| mark.estimate.is_some()) {
        Some(GradientBasis::Fabric)
    } else {
        Some(GradientBasis::Stretch)
    }
}

fn tension_sd(piece: &Piece, rules: &EstimateRules) -> f64 {
    match piece {
        Piece::Garment(garment) => {
            garment.fabric.as_ref().and_then(|fabric| fabric.tension_sd).unwrap_or(rules.tension_sd)
        }
        // A wrap's pull is independent at each mark and stands in its own SD.
        Piece::Wrap(_) => 0.0,
    }
}

/// Estimates one garment, as a size of a chart is.
pub fn estimate_garment(
    on: &OnLimb<'_>,
    garment: &Garment,
    readings: &[&Reading],
    rules: &EstimateRules,
) -> Estimated {
    estimate(on, &Outfit::of(Piece::Garment(Box::new(garment.clone()))), readings, rules)
}

/// Whether a certain rise takes a garment out of the choice: what a choice among many sizes asks for, with
/// no more work than it needs.
pub fn is_taken_out(on: &OnLimb<'_>, garment: &Garment, rules: &EstimateRules) -> bool {
    let outfit = Outfit::of(Piece::Garment(Box::new(garment.clone())));
    let knits = Knits::of(&outfit);
    asked(on, &outfit, &knits, rules).iter().any(|one| {
        let setting = setting(on, one, &knits, false, rules);
        judge_grade(&one.marks, &setting) == Grade::Certain && judge(&one.marks, &setting).removes
    })
}

/// What would decide a fall that is not decided, the measurement to name first; for the garment that is
/// reported, not for every size.
pub fn what_decides(
    on: &OnLimb<'_>,
    outfit: &Outfit,
    readings: &[&Reading],
    estimated: &Estimated,
    rules: &EstimateRules,
) -> Vec<Decide> {
    let Some(verdict) = estimated.fall.as_ref().filter(|one| one.grade() == Grade::Undecided) else {
        return Vec::new();
    };
    if verdict.of == FallOf::Readings {
        let (asked, setting) = readings::asked(on, readings, outfit.to(), true, rules);
        let mut found = decide(&asked.marks, &setting, &verdict.fall);
        // Where nothing but the hollow beside the ankle bone leaves it open, that is read again.
        let hollow = estimated.readings.as_ref().filter(|said| said.rests_on_hollow).and_then(|_| {
            estimated.read.iter().find(|(_, read)| read.in_hollow).map(|(landmark, _)| *landmark)
        });
        if let (Some(landmark), Some(first)) = (hollow, found.first_mut()) {
            first.landmark = Some(landmark);
        }
        return found;
    }
    if let Some(unheld) = &verdict.unheld {
        // A curve of every knit lets them be held against each other; how that would end is not known.
        let only = match unheld.pieces.as_slice() {
            [one] => Some(*one),
            _ => None,
        };
        let open = |action, piece| Decide { action, landmark: None, piece, chance: None };
        return vec![open(Action::Curve, only), open(Action::SensorReadings, None)];
    }
    let knits = Knits::of(outfit);
    let all: Vec<Asked> = asked(on, outfit, &knits, rules);
    let Some(one) = all.iter().find(|one| one.of == verdict.of) else { return Vec::new() };
    let together = outfit.pieces.len() > 1 && !matches!(one.of, FallOf::Piece(_));
    let mut found = decide(&one.marks, &setting(on, one, &knits, together, rules), &verdict.fall);
    if let FallOf::Piece(piece) = one.of {
        for one in &mut found {
            if matches!(one.action, Action::StripPull | Action::Curve | Action::CurveFurther) {
                one.piece = Some(piece);
            }
        }
    }
    found
}

/// At which exponents the grade by ruler would turn, if a strip pull gave them; for what is reported, not for every
/// size. Of pieces worn together where one knit decides: a pull is of one knit, and of several knits nothing is told.
pub fn turning(on: &OnLimb<'_>, outfit: &Outfit, estimated: &Estimated, rules: &EstimateRules) -> Vec<Turn> {
    let by_estimate = |fall: &FallVerdict| fall.of != FallOf::Readings && fall.unheld.is_none();
    if !estimated.fall.as_ref().is_some_and(by_estimate) {
        return Vec::new();
    }
    let knits = Knits::of(outfit);
    let all: Vec<Asked> =
        asked(on, outfit, &knits, rules).into_iter().filter(|one| one.unheld.is_none()).collect();
    let one_knit = all.iter().all(|one| {
        one.basis == GradientBasis::Stretch && one.knit == all.first().and_then(|first| first.knit)
    });
    if !one_knit {
        return Vec::new();
    }
    let several = outfit.pieces.len() > 1;
    let settings: Vec<FallSetting<'_>> = all
        .iter()
        .map(|one| {
            let together = several && !matches!(one.of, FallOf::Piece(_));
            setting(on, one, &knits, together, rules)
        })
        .collect();
    let falls: Vec<(&[FallMark], &FallSetting<'_>)> =
        all.iter().map(|one| one.marks.as_slice()).zip(&settings).collect();
    turns_of_all(&falls)
}
