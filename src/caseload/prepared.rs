//! Owns a chart prepared for a caseload: the compact form of sizing, and the rules themselves where that
//! form does not reach. A property test holds both equal.

use std::cmp::Ordering;

use super::case::Case;
use super::coverage::Missed;
use super::knit::{Curve, Knit, KnitMark, Pressed};
use super::lanes::{Held, Lane, Lanes};
use super::sized::Sized;
use crate::anatomy::Landmark;
use crate::assessment::{ChartFacts, ChartOutcomes, SizeAlone, of_size_alone};
use crate::estimate::{EstimateRules, Estimated, OnLimb, estimate_garment, is_taken_out};
use crate::finding::Finding;
use crate::garment::{BetweenSizes, Chart, Garment};
use crate::gradient::Grade;
use crate::quantity::phi_quick;
use crate::record::LengthName;
use crate::rules::{NumberId, Rules};
use crate::sizing::{
    ChartVerdict, Choice, Direction, LengthFit, Limits, SameAgain, SizeVerdict, Sizing, SizingInput, choose,
    judge, nearly, same_again,
};

/// A chart prepared for a caseload.
#[derive(Clone, Debug)]
pub struct Prepared {
    /// The chart.
    pub chart: Chart,
    /// The landmarks at which a size is estimated, distal to proximal.
    pub marks: Vec<Landmark>,
    measures: Vec<Landmark>,
    lengths: Vec<LengthName>,
    lanes: Option<Lanes>,
    garments: Vec<Garment>,
    knits: Vec<Knit>,
    curve: Option<Curve>,
    rules: EstimateRules,
    limits: Limits,
    set: Rules,
}

/// What is worked out on the way, used again for each case.
#[derive(Clone, Debug, Default)]
pub struct Scratch {
    held: Held,
}

/// The pressure at one mark of a caseload.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CasePressure {
    /// Where.
    pub landmark: Landmark,
    /// mmHg; 0 without contact, none beyond the curve.
    pub mmhg: Option<f64>,
    /// Its SD, mmHg.
    pub sd: Option<f64>,
    /// The least it can be beyond the curve, mmHg.
    pub bound: Option<f64>,
}

impl Prepared {
    /// Prepares a chart under a set of rules.
    pub fn of(chart: &Chart, set: &Rules) -> Self {
        let rules = EstimateRules::of(set);
        let garments: Vec<Garment> = (0..chart.sizes.len()).filter_map(|size| chart.garment(size)).collect();
        let curve = Curve::of(chart.fabric.as_ref(), &rules);
        let knits: Vec<Knit> =
            garments.iter().map(|garment| Knit::of(chart, garment, curve.as_ref())).collect();
        let mut marks: Vec<Landmark> =
            knits.iter().flat_map(|knit| knit.marks.iter().map(|mark| mark.landmark)).collect();
        marks.sort_unstable();
        marks.dedup();
        Self {
            chart: chart.clone(),
            marks: if curve.is_some() { marks } else { Vec::new() },
            measures: chart.measures(),
            lengths: chart.lengths(),
            lanes: Lanes::of(chart),
            garments,
            knits,
            curve,
            rules,
            limits: Limits::of_cm(set.number(NumberId::EdgeMargin), set.number(NumberId::PickMiss)),
            set: set.clone(),
        }
    }

    /// What holds for the chart without a record: by its verdict and length alone, and where the size's estimate is
    /// given, by that and its findings, as `check` has it.
    pub fn outcomes(
        &self,
        sized: &Sized,
        length: &LengthFit,
        known: Option<(&Estimated, &[Finding])>,
    ) -> ChartOutcomes {
        let facts = ChartFacts {
            verdict: sized.verdict,
            picked: sized.size.is_some(),
            length: sized.size.map(|_| length),
            judged: known.and_then(|(estimated, _)| estimated.judged()),
            margin: sized.margin.map(|(margin, _)| margin),
            shape: false,
        };
        ChartOutcomes::of(&facts, known.map_or(&[], |(_, found)| found), 0)
    }

    /// The findings of a size's estimate, as `check` has them where the record says nothing more.
    pub fn findings(&self, size: usize, case: &Case, estimated: &Estimated) -> Vec<Finding> {
        let marks = case.marks(self.chart.limb);
        let on = OnLimb { limb: self.chart.limb, marks: &marks };
        let Some(garment) = self.garments.get(size) else { return Vec::new() };
        of_size_alone(SizeAlone { on, garment, estimated }, &self.set)
    }

    /// The landmark of a measure.
    pub fn measure(&self, number: usize) -> Option<Landmark> {
        self.measures.get(number).copied()
    }

    /// Sizes a case, by the compact form where it reaches.
    pub fn size(&self, case: &Case, scratch: &mut Scratch) -> Sized {
        if let Some(lanes) = &self.lanes
            && lanes.hold(case, &mut scratch.held)
            && let Some(sized) = self.size_compactly(lanes, case, &mut scratch.held)
        {
            return sized;
        }
        self.size_by_rules(case)
    }

    /// Sizes a case by the rules that `check` uses.
    pub fn size_by_rules(&self, case: &Case) -> Sized {
        let (sizing, choice, _) = self.choice(case);
        let between = match choice.between.as_slice() {
            [one, other, ..] => Some((*one, *other)),
            _ => None,
        };
        let shown = choice.shown();
        let margin = shown.and_then(|size| sizing.least_margin(size));
        Sized {
            verdict: choice.verdict,
            size: choice.size,
            nearest: choice.nearest,
            between,
            margin,
            inside_chance: shown.and_then(|size| sizing.sizes.get(size)?.inside_chance),
        }
    }

    fn input(&self, case: &Case) -> SizingInput {
        case.input(self.chart.limb, &self.rules.tape, &self.lengths)
    }

    fn choice(&self, case: &Case) -> (Sizing, Choice, Vec<bool>) {
        let input = self.input(case);
        let sizing = judge(&input, &self.chart, self.limits);
        let marks = case.marks(self.chart.limb);
        let on = OnLimb { limb: self.chart.limb, marks: &marks };
        let inside = sizing.places(SizeVerdict::Inside);
        let mut reversed = vec![false; self.chart.sizes.len()];
        // Those that are offered though they do not take the limb: both of a pair, and those to measure again for.
        let mut offered = Vec::new();
        if inside.is_empty() {
            offered = choose(&sizing, &self.chart, &[], false, self.limits).between;
            offered.extend(nearly(&sizing, self.limits));
        }
        for (place, flag) in reversed.iter_mut().enumerate() {
            let Some(garment) = self.garments.get(place) else { continue };
            *flag = if inside.contains(&place) {
                is_taken_out(&on, garment, &self.rules)
            } else {
                offered.contains(&place)
                    && estimate_garment(&on, garment, &[], &self.rules).grade() == Some(Grade::Certain)
            };
        }
        let choice = choose(&sizing, &self.chart, &reversed, false, self.limits);
        (sizing, choice, reversed)
    }

    fn size_compactly(&self, lanes: &Lanes, case: &Case, held: &mut Held) -> Option<Sized> {
        let mut inside = held.least.iter().enumerate().filter(|(_, least)| **least >= 0).map(|(at, _)| at);
        let Some(first) = inside.next() else {
            return self.none_takes(lanes, case, held);
        };
        let mut best: Option<usize> = self.stays(first, case)?.then_some(first);
        // The first other one, and the last, that take the case exactly as well.
        let mut alike: Option<(usize, usize)> = None;
        for other in inside {
            if !self.stays(other, case)? {
                continue;
            }
            match best.map(|best| lanes.compare(best, other, &held.girths)) {
                None | Some(Ordering::Less) => (best, alike) = (Some(other), None),
                Some(Ordering::Greater) => {}
                Some(Ordering::Equal) => alike = Some((alike.map_or(other, |(one, _)| one), other)),
            }
        }
        let first = best?;
        let size = match (alike, self.chart.between_sizes) {
            (None, _) | (Some(_), BetweenSizes::Smaller) => first,
            (Some((_, last)), BetweenSizes::Larger) => last,
            (Some((other, _)), BetweenSizes::Fitter) => {
                return Some(Sized {
                    verdict: ChartVerdict::Between,
                    size: None,
                    nearest: None,
                    between: Some((first, other)),
                    margin: None,
                    inside_chance: None,
                });
            }
        };
        Some(Sized {
            verdict: ChartVerdict::Size,
            size: Some(size),
            nearest: None,
            between: None,
            margin: lanes.margin(size, &held.girths),
            inside_chance: Some(self.inside_chance(lanes, size, case, held)),
        })
    }

    /// Whether a size stays in the choice; none where the rule of the fall has to say.
    fn stays(&self, size: usize, case: &Case) -> Option<bool> {
        let (Some(curve), Some(knit)) = (&self.curve, self.knits.get(size)) else {
            // Without relaxed girths nothing is estimated, so nothing takes it out.
            let bare = self.garments.get(size).is_none_or(|garment| garment.relaxed.is_empty());
            return bare.then_some(true);
        };
        knit.plainly_falls(case, curve, &self.rules).then_some(true)
    }

    fn none_takes(&self, lanes: &Lanes, case: &Case, held: &mut Held) -> Option<Sized> {
        // A limb between two sizes asks for their falls: the rules say.
        let in_gap = |size: &usize| {
            let mut all = lanes.lanes.iter().zip(&held.girths);
            all.all(|(lane, girth)| lane.gap(*size).is_some_and(|(low, high)| (low..=high).contains(girth)))
        };
        if lanes.gaps.iter().any(in_gap) {
            return None;
        }
        lanes.sum_misses(held);
        let all = held.least.iter().zip(&held.sums).enumerate();
        let ((worst, _), nearest) = all.map(|(at, (least, sum))| ((-least, *sum), at)).min()?;
        // Every girth of a caseload rests on one tape value.
        let again = i64::from(worst) <= 2 * self.limits.miss;
        Some(Sized {
            verdict: if again { ChartVerdict::MeasureAgain } else { ChartVerdict::MadeToMeasure },
            size: None,
            nearest: Some(nearest),
            between: None,
            margin: lanes.margin(nearest, &held.girths),
            inside_chance: Some(self.inside_chance(lanes, nearest, case, held)),
        })
    }

    /// The pressures of a size on a case, where the chart names a fabric; a mark that is not measured or that
    /// the size does not state is left out.
    pub fn pressures<'p>(
        &'p self,
        size: usize,
        case: &'p Case,
    ) -> impl Iterator<Item = CasePressure> + use<'p> {
        let knit = self.knits.get(size).zip(self.curve.as_ref());
        let tape = &self.rules.tape;
        knit.into_iter().flat_map(move |(knit, curve)| {
            let measured = knit.marks.iter().filter(|mark| case.girth(mark.place) > 0);
            measured.map(move |mark: &KnitMark| {
                let pressed = knit.pressed(mark, case.girth(mark.place), curve, tape);
                let (mmhg, sd, bound) = match pressed {
                    Pressed::Slack => (Some(0.0), None, None),
                    Pressed::Beyond(bound) => (None, None, Some(bound)),
                    Pressed::Known { mmhg, sd, .. } => (Some(mmhg), Some(sd), None),
                };
                CasePressure { landmark: mark.landmark, mmhg, sd, bound }
            })
        })
    }

    /// The whole estimate of a size on a case, as `check` has it.
    pub fn estimate(&self, size: usize, case: &Case) -> Option<Estimated> {
        let marks = case.marks(self.chart.limb);
        let on = OnLimb { limb: self.chart.limb, marks: &marks };
        Some(estimate_garment(&on, self.garments.get(size)?, &[], &self.rules))
    }

    /// The chance of the same size again, as `check` has it.
    pub fn same_again(&self, size: usize, case: &Case) -> Option<SameAgain> {
        let (_, _, reversed) = self.choice(case);
        let input = self.input(case);
        same_again(&input, &self.chart, &reversed, size)
    }

    /// The length variant of a size for a case.
    pub fn length(&self, size: usize, case: &Case) -> LengthFit {
        let Some(size) = self.chart.sizes.get(size).filter(|size| !size.variants.is_empty()) else {
            return LengthFit::NotAsked;
        };
        let input = self.input(case);
        LengthFit::of(&input, size, self.chart.printed_step)
    }

    /// The sizes that take the case and that no certain rise takes out.
    pub fn upright(&self, case: &Case, scratch: &mut Scratch) -> Vec<usize> {
        if let Some(lanes) = &self.lanes
            && lanes.hold(case, &mut scratch.held)
        {
            let all = scratch.held.least.iter().enumerate();
            let inside = all.filter(|(_, least)| **least >= 0).map(|(size, _)| size);
            let kept =
                inside.filter(|size| self.stays(*size, case).unwrap_or_else(|| !self.is_out(*size, case)));
            return kept.collect();
        }
        let (sizing, _, reversed) = self.choice(case);
        let inside = sizing.places(SizeVerdict::Inside).into_iter();
        inside.filter(|size| !reversed.get(*size).copied().unwrap_or(false)).collect()
    }

    fn is_out(&self, size: usize, case: &Case) -> bool {
        let marks = case.marks(self.chart.limb);
        let on = OnLimb { limb: self.chart.limb, marks: &marks };
        self.garments.get(size).is_some_and(|garment| is_taken_out(&on, garment, &self.rules))
    }

    /// The measure that misses most at the nearest size; none where a size takes the girths.
    pub fn missed(&self, case: &Case) -> Option<Missed> {
        let input = self.input(case);
        let sizing = judge(&input, &self.chart, self.limits);
        let worst = sizing.sizes.get(sizing.nearest()?)?.worst()?;
        Some(Missed { landmark: worst.landmark, tight: worst.direction == Some(Direction::Tight) })
    }

    /// Π Φ((high − C)/s) − Φ((low − C)/s).
    fn inside_chance(&self, lanes: &Lanes, size: usize, case: &Case, held: &Held) -> f64 {
        let limb = self.chart.limb;
        let share = |((lane, girth), landmark): ((&Lane, &i32), &Landmark)| {
            let cm = f64::from(case.girth(lane.place)) / 100.0;
            let scale = 1.0 / (100.0 * self.rules.tape.of_mean(limb, Some(*landmark), cm, 1));
            lane.ends(size).map_or(1.0, |(low, high)| {
                phi_quick(f64::from(high - girth) * scale) - phi_quick(f64::from(low - girth) * scale)
            })
        };
        lanes.lanes.iter().zip(&held.girths).zip(&self.measures).map(share).product()
    }
}
