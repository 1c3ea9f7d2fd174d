//! Owns the marks that are judged, under every assumption.

use super::nodes::{LEGENDRE_5, NORMAL_3};
use super::point::{Assumed, Point, contact, is_beyond, point};
use super::{FallMark, FallSetting, GradientBasis, Part};
use crate::anatomy::Landmark;

/// The points under one assumption, with its weight.
#[derive(Clone, Debug)]
pub(super) struct Node {
    /// Weights sum to 1 over the nodes; 0 at the ends of the band.
    pub weight: f64,
    /// One for each mark estimated, distal first.
    pub points: Vec<Point>,
}

/// What is judged.
#[derive(Clone, Debug)]
pub(super) struct State<'m> {
    /// Marks that are judged, distal first.
    pub judged: Vec<&'m FallMark>,
    /// Those of them that are estimated.
    pub estimated: Vec<&'m FallMark>,
    /// Those that lie beyond a curve's end.
    pub left_out: Vec<&'m FallMark>,
    /// Every assumption; by stretch the last two are the ends of the band, without weight.
    pub nodes: Vec<Node>,
    /// Whether a clearly slack mark lies below one with clear contact.
    pub slack_below: bool,
}

/// Whether a landmark is judged: from the reference toward the trunk, without the joint.
pub(super) fn is_judged(landmark: Landmark) -> bool {
    !landmark.on_extremity() && !landmark.is_joint()
}

/// Settles the marks under a setting.
pub(super) fn settle<'m>(marks: &'m [FallMark], setting: &FallSetting<'_>) -> State<'m> {
    let mut judged: Vec<&FallMark> = marks
        .iter()
        .filter(|mark| mark.landmark.limb() == setting.limb && is_judged(mark.landmark))
        .collect();
    judged.sort_by(|one, other| one.at_cm.total_cmp(&other.at_cm));
    let rules = &setting.rules;
    let (mut estimated, mut left_out) = (Vec::new(), Vec::new());
    for mark in &judged {
        let beyond = setting.basis == GradientBasis::Fabric
            && mark.parts().iter().any(|part| match part {
                Part::Knit(part) => is_beyond(mark, part, &setting.knits, rules),
                Part::Wrap(_) => false,
            });
        if beyond { left_out.push(*mark) } else { estimated.push(*mark) }
    }
    let slack_below = !setting.together && slack_below(&judged, setting);
    let nodes = nodes(&estimated, setting);
    State { judged, estimated, left_out, nodes, slack_below }
}

fn slack_below(judged: &[&FallMark], setting: &FallSetting<'_>) -> bool {
    let clear = setting.rules.clear;
    let mut slack = false;
    for mark in judged {
        let [Part::Knit(part)] = mark.parts() else { continue };
        let contact = contact(mark, part);
        if slack && contact.over >= clear * contact.sd {
            return true;
        }
        slack |= contact.over <= -clear * contact.sd;
    }
    false
}

/// Marks under every assumption.
pub(super) fn nodes(marks: &[&FallMark], setting: &FallSetting<'_>) -> Vec<Node> {
    let node = |weight, assumed: Assumed<'_>| Node {
        weight,
        points: marks
            .iter()
            .filter_map(|mark| point(mark, setting.basis, &setting.knits, assumed, &setting.rules))
            .collect(),
    };
    let at = |weight, exponent| node(weight, Assumed { exponent, errors: &[] });
    match setting.basis {
        GradientBasis::Readings => vec![at(1.0, 1.0)],
        GradientBasis::Stretch => {
            let (middle, half) =
                (f64::midpoint(setting.band.low, setting.band.high), setting.band.width() / 2.0);
            if half <= 0.0 {
                return vec![at(1.0, middle)];
            }
            let inner = LEGENDRE_5.iter().map(|(place, weight)| at(*weight, middle + half * place));
            let ends = [setting.band.low, setting.band.high].map(|exponent| at(0.0, exponent));
            inner.chain(ends).collect()
        }
        GradientBasis::Fabric => {
            let mut used: Vec<usize> = Vec::new();
            for part in marks.iter().flat_map(|mark| mark.parts()) {
                if let Part::Knit(part) = part
                    && !used.contains(&part.knit)
                {
                    used.push(part.knit);
                }
            }
            // One knit's error is common to all marks and drops out.
            if used.len() < 2
                && !marks.iter().flat_map(|mark| mark.parts()).any(|part| matches!(part, Part::Wrap(_)))
            {
                return vec![at(1.0, 1.0)];
            }
            combined(&used, setting)
                .iter()
                .map(|(weight, errors)| node(*weight, Assumed { exponent: 1.0, errors }))
                .collect()
        }
    }
}

/// Every combination of the knits' errors with its weight.
fn combined(used: &[usize], setting: &FallSetting<'_>) -> Vec<(f64, Vec<f64>)> {
    let mut all = vec![(1.0, vec![0.0; setting.knits.len()])];
    for number in used {
        let sd = setting.knits.get(*number).map_or(0.0, |knit| knit.tension_sd);
        if sd <= 0.0 {
            continue;
        }
        all = all
            .iter()
            .flat_map(|(weight, errors)| {
                NORMAL_3.map(|(z, share)| {
                    let mut errors = errors.clone();
                    if let Some(error) = errors.get_mut(*number) {
                        *error = z * sd;
                    }
                    (weight * share, errors)
                })
            })
            .collect();
    }
    all
}
