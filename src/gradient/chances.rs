//! Owns the three chances and the grade that they give.

use super::pairs::{Pairs, Two, pairs};
use super::rise::{of_points, usual};
use super::state::State;
use super::trend::{ends, trend};
use super::{FallRules, FallSetting, Grade, GradientBasis};

/// U is held below 1 by so much (house rule: the odds stay finite).
const BELOW_ONE: f64 = 1e-9;

/// The chances over the marks that are estimated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chances {
    /// The graded chance R: a rise somewhere beyond what such marks show by accident.
    pub chance: f64,
    /// A: the chance that some mark lies a tenth or more above one below it.
    pub rise_somewhere: f64,
    /// U: the mean A of an even fall measured with these marks.
    pub usual: f64,
    /// The lowest chance that the trend rises.
    pub trend_low: f64,
    /// The highest.
    pub trend_high: f64,
    /// The lowest chance that the top lies above the reference.
    pub end_low: f64,
    /// The highest.
    pub end_high: f64,
    /// The highest chance of any rise between two marks.
    pub any_rise: f64,
    /// The highest chance of a rise of a tenth between two marks.
    pub pair_chance: f64,
}

/// Lowest and highest over the band by stretch, else twice the average.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ranges {
    pub trend: (f64, f64),
    pub end: (f64, f64),
}

/// The trend and the ends.
pub(super) fn ranges(state: &State<'_>, setting: &FallSetting<'_>) -> Ranges {
    let of = |value: fn(&[super::point::Point]) -> f64| {
        if setting.basis == GradientBasis::Stretch {
            state
                .nodes
                .iter()
                .map(|node| value(&node.points))
                .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), one| (low.min(one), high.max(one)))
        } else {
            let mean: f64 = state.nodes.iter().map(|node| node.weight * value(&node.points)).sum();
            (mean, mean)
        }
    };
    Ranges { trend: of(trend), end: of(ends) }
}

/// A, averaged over the assumptions.
pub(super) fn somewhere(state: &State<'_>, setting: &FallSetting<'_>) -> f64 {
    if state.slack_below {
        return 1.0;
    }
    let delta = setting.delta();
    weighted(state, |points| of_points(points, delta))
}

/// U, averaged over the assumptions.
pub(super) fn usually(state: &State<'_>, setting: &FallSetting<'_>) -> f64 {
    let (delta, end) = (setting.delta(), setting.rules.usual_end);
    weighted(state, |points| usual(points, end, delta))
}

fn weighted(state: &State<'_>, of: impl Fn(&[super::point::Point]) -> f64) -> f64 {
    state.nodes.iter().filter(|node| node.weight > 0.0).map(|node| node.weight * of(&node.points)).sum()
}

/// R = A/(A + c(1 − A)).
pub(super) fn graded(somewhere: f64, odds: f64) -> f64 {
    somewhere / (somewhere + odds * (1.0 - somewhere))
}

/// The least that c can be.
pub(super) fn least_odds(marks: usize) -> f64 {
    f64::from(u32::try_from(marks.saturating_sub(2)).unwrap_or(u32::MAX)).max(1.0)
}

/// c = max(1, n − 2, 9·U/(1 − U)).
pub(super) fn odds(marks: usize, usual: f64, rules: &FallRules) -> f64 {
    let usual = usual.min(1.0 - BELOW_ONE);
    least_odds(marks).max(rules.usual_odds * usual / (1.0 - usual))
}

/// From which chance on one pair alone makes a rise certain.
pub(super) fn certain_pair(marks: usize, rules: &FallRules) -> f64 {
    let steps = f64::from(u32::try_from(marks.saturating_sub(1)).unwrap_or(u32::MAX)).max(1.0);
    1.0 - rules.pair_error / steps
}

/// All chances, the grade without any bound, and the pair to look at; none with fewer than two marks.
pub(super) fn chances(state: &State<'_>, setting: &FallSetting<'_>) -> Option<(Chances, Grade, Option<Two>)> {
    let marks = state.estimated.len();
    if marks < 2 {
        return None;
    }
    let rules = &setting.rules;
    let (pairs, ranges) = (pairs(state, setting), ranges(state, setting));
    let (somewhere, usual) = (somewhere(state, setting), usually(state, setting));
    let chance = graded(somewhere, odds(marks, usual, rules));
    let found = Chances {
        chance,
        rise_somewhere: somewhere,
        usual,
        trend_low: ranges.trend.0,
        trend_high: ranges.trend.1,
        end_low: ranges.end.0,
        end_high: ranges.end.1,
        any_rise: pairs.any_rise,
        pair_chance: pairs.counted,
    };
    let grade = grade(&found, marks, !state.left_out.is_empty(), rules);
    Some((found, grade, place(&pairs, grade, chance, marks, rules)))
}

/// The grade, in the order of the rule.
fn grade(chances: &Chances, marks: usize, left_out: bool, rules: &FallRules) -> Grade {
    if chances.chance >= rules.certain || chances.any_rise >= certain_pair(marks, rules) {
        Grade::Certain
    } else if chances.chance > rules.likely || chances.trend_low > rules.likely {
        Grade::Likely
    } else if !left_out && chances.trend_high <= rules.trend && chances.end_high < 0.5 {
        if chances.chance >= rules.possible { Grade::Possible } else { Grade::None }
    } else {
        Grade::Undecided
    }
}

fn place(pairs: &Pairs, grade: Grade, chance: f64, marks: usize, rules: &FallRules) -> Option<Two> {
    let shown = matches!(grade, Grade::Certain | Grade::Likely | Grade::Possible) || chance >= rules.possible;
    if !shown {
        None
    } else if pairs.any_rise >= certain_pair(marks, rules) {
        pairs.any_place
    } else {
        pairs.counted_place
    }
}
