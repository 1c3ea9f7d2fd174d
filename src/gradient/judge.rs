//! Owns the judgement: the chances, then the bounds, then whether the whole is judged.

use super::bound::{Bound, bound, least_mmhg};
use super::chances::{certain_pair, chances, graded, least_odds, odds, ranges, somewhere, usually};
use super::pairs::{Two, pairs};
use super::point::{Assumed, point};
use super::state::{State, settle};
use super::turns::may_change;
use super::{Fall, FallMark, FallSetting, Grade, GradientBasis, MarkKind, Pair, Part};

/// Judges the fall over the marks, in any order.
pub fn judge(marks: &[FallMark], setting: &FallSetting<'_>) -> Fall {
    let state = settle(marks, setting);
    let (found, own, two) = match chances(&state, setting) {
        Some((found, grade, two)) => (Some(found), grade, two),
        None => (None, Grade::Undecided, None),
    };
    let names = |two: Two| {
        let name = |number: usize| state.estimated.get(number).map(|mark| mark.landmark);
        Some((name(two.proximal)?, name(two.distal)?))
    };
    let place = two.and_then(names);
    let mut fall = Fall {
        basis: setting.basis,
        decided_by: setting.basis,
        grade: own,
        grade_of_estimated: own,
        by_bound: false,
        judged: false,
        removes: false,
        pull_may_change: own == Grade::Likely && may_change(marks, setting),
        chances: found,
        chance: found.map(|found| found.chance),
        place: place.map(|(place, _)| place),
        against: place.map(|(_, against)| against),
        pairs: in_figures(&state, setting),
        left_out: state.left_out.iter().map(|mark| mark.landmark).collect(),
        estimated: state.estimated.iter().map(|mark| mark.landmark).collect(),
    };
    let mut stretch_removes = false;
    if !state.left_out.is_empty() {
        if let Some(bound) = bound(&state, setting) {
            hold_bound(&mut fall, bound);
        }
        if one_knit(&state) {
            let stretch = judge(marks, &setting.by_stretch());
            stretch_removes = stretch.removes;
            hold_stretch(&mut fall, &stretch);
        }
    }
    fall.judged = is_whole(&state, setting) && fall.grade != Grade::Undecided;
    let plain = || fall.decided_by == GradientBasis::Stretch || is_plain(&state, setting);
    fall.removes = fall.grade == Grade::Certain && (stretch_removes || plain());
    fall
}

fn hold_bound(fall: &mut Fall, bound: Bound) {
    if bound.grade < fall.grade {
        fall.grade = bound.grade;
        fall.by_bound = true;
        fall.chance = Some(bound.chance);
        (fall.place, fall.against) = (Some(bound.place), Some(bound.against));
    }
}

fn hold_stretch(fall: &mut Fall, stretch: &Fall) {
    if stretch.grade < fall.grade {
        fall.grade = stretch.grade;
        fall.by_bound = false;
        fall.decided_by = GradientBasis::Stretch;
        fall.chance = stretch.chance;
        (fall.place, fall.against) = (stretch.place, stretch.against);
    }
}

/// Whether one knit presses everywhere, so that stretch can be compared from mark to mark.
fn one_knit(state: &State<'_>) -> bool {
    let mut first = None;
    state.judged.iter().flat_map(|mark| mark.parts()).all(|part| match part {
        Part::Knit(part) => *first.get_or_insert(part.knit) == part.knit,
        Part::Wrap(_) => false,
    })
}

/// The grade alone, with no more work than it needs: what a choice among many sizes asks for.
pub fn judge_grade(marks: &[FallMark], setting: &FallSetting<'_>) -> Grade {
    let state = settle(marks, setting);
    let own = grade_of(&state, setting);
    if state.left_out.is_empty() {
        return own;
    }
    let own = bound(&state, setting).map_or(own, |bound| own.worse(bound.grade));
    if own != Grade::Certain && one_knit(&state) {
        own.worse(judge_grade(marks, &setting.by_stretch()))
    } else {
        own
    }
}

/// The grade of the estimated marks, with no recursion where the pairs already tell (derived: no chance
/// of a rise somewhere is below that of one pair or above the sum of all).
pub(super) fn grade_of(state: &State<'_>, setting: &FallSetting<'_>) -> Grade {
    let count = state.estimated.len();
    if count < 2 {
        return Grade::Undecided;
    }
    let rules = &setting.rules;
    let (pairs, ranges) = (pairs(state, setting), ranges(state, setting));
    if pairs.any_rise >= certain_pair(count, rules) {
        return Grade::Certain;
    }
    let falls = state.left_out.is_empty() && ranges.trend.1 <= rules.trend && ranges.end.1 < 0.5;
    let rises = ranges.trend.0 > rules.likely;
    // The chance from which on the grade turns.
    let turn = if rises {
        rules.certain
    } else if falls {
        rules.possible
    } else {
        rules.likely
    };
    let most = if state.slack_below { 1.0 } else { pairs.sum.min(1.0) };
    let chance = if graded(most, least_odds(count)) < turn {
        0.0
    } else {
        let somewhere = somewhere(state, setting);
        if graded(somewhere, least_odds(count)) < turn {
            0.0
        } else {
            graded(somewhere, odds(count, usually(state, setting), rules))
        }
    };
    if chance >= rules.certain {
        Grade::Certain
    } else if chance > rules.likely || rises {
        Grade::Likely
    } else if !falls {
        Grade::Undecided
    } else if chance >= rules.possible {
        Grade::Possible
    } else {
        Grade::None
    }
}

/// Whether the reference, a mark between and the top are there, all estimated.
fn is_whole(state: &State<'_>, setting: &FallSetting<'_>) -> bool {
    let reference = setting.limb.reference();
    let top = if setting.to.is_joint() { setting.to.below().unwrap_or(setting.to) } else { setting.to };
    let has = |landmark| state.estimated.iter().any(|mark| mark.landmark == landmark);
    let between = state.estimated.iter().any(|mark| mark.landmark > reference && mark.landmark < top);
    state.left_out.is_empty() && has(reference) && has(top) && between
}

/// Whether some mark presses more than the least below it by what counts for a choice of size.
fn is_plain(state: &State<'_>, setting: &FallSetting<'_>) -> bool {
    let assumed = Assumed { exponent: 1.0, errors: &[] };
    let mut least = f64::INFINITY;
    for mark in &state.judged {
        let beyond = state.left_out.iter().any(|other| std::ptr::eq(*other, *mark));
        let pressure = if beyond {
            least_mmhg(mark, setting)
        } else if is_slack(mark) {
            0.0
        } else {
            point(mark, setting.basis, &setting.knits, assumed, &setting.rules).map_or(0.0, |one| one.y.exp())
        };
        if pressure - least > setting.rules.least_rise_mmhg {
            return true;
        }
        least = least.min(pressure);
    }
    false
}

/// Whether nothing touches the limb at a mark.
fn is_slack(mark: &FallMark) -> bool {
    match &mark.what {
        MarkKind::Read { mmhg, .. } => *mmhg <= 0.0,
        MarkKind::Worn(parts) => parts.iter().all(|part| match part {
            Part::Knit(part) => mark.girth_cm <= part.relaxed_cm,
            Part::Wrap(_) => false,
        }),
    }
}

/// Each estimated mark against the one below it.
fn in_figures(state: &State<'_>, setting: &FallSetting<'_>) -> Vec<Pair> {
    state
        .estimated
        .windows(2)
        .enumerate()
        .filter_map(|(number, pair)| {
            let [below, above] = pair else { return None };
            let mut mean = (0.0, 0.0, 0.0);
            for node in state.nodes.iter().filter(|node| node.weight > 0.0) {
                let (low, high) = (node.points.get(number)?, node.points.get(number + 1)?);
                let (p, q) = (low.y.exp(), high.y.exp());
                let rise = q - p;
                mean.0 += node.weight * rise;
                mean.1 += node.weight * rise * rise;
                mean.2 += node.weight * ((low.s * p).powi(2) + (high.s * q).powi(2));
            }
            let (rise, square, own) = mean;
            let common = match (state.nodes.as_slice(), above.parts()) {
                ([_], [Part::Knit(part)]) => {
                    setting.knits.get(part.knit).map_or(0.0, |knit| (knit.tension_sd * rise).powi(2))
                }
                _ => (square - rise * rise).max(0.0),
            };
            let figures = (setting.basis != GradientBasis::Stretch).then(|| (rise, (own + common).sqrt()));
            Some(Pair {
                distal: below.landmark,
                proximal: above.landmark,
                rise_mmhg: figures.map(|(rise, _)| rise),
                sd_mmhg: figures.map(|(_, sd)| sd),
            })
        })
        .collect()
}
