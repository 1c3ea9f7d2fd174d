//! Owns the pressure and graduation parts of the report.

use serde::Serialize;

use super::Figure;
use crate::anatomy::{Landmark, Limb};
use crate::assessment::{MarkEstimate, WornEstimate};
use crate::finding::{mmhg_words, percent_words};
use crate::garment::Claim;
use crate::graduation;
use crate::pressure::Estimate;
use crate::quantity::newton_per_metre;

/// Pressure along the limb of one garment.
#[derive(Clone, Debug, Serialize)]
pub struct Pressure {
    /// The chart's or garment's label.
    pub garment: String,
    /// The size.
    pub size: Option<String>,
    /// `fabric`, `stretch`, `readings`; null = no relaxed girths.
    pub basis: Option<&'static str>,
    /// The marks, distal to proximal.
    pub marks: Vec<Mark>,
    /// The reference.
    pub reference: Reference,
    /// The upper edge and what a fold there would do.
    pub top_edge: Option<TopEdge>,
}

/// One mark.
#[derive(Clone, Debug, Serialize)]
pub struct Mark {
    /// The landmark.
    pub landmark: &'static str,
    /// Where.
    pub at_cm: Option<Figure>,
    /// Limb girth.
    pub girth_cm: Option<Figure>,
    /// Relaxed girth.
    pub relaxed_cm: Option<Figure>,
    /// Stretch.
    pub stretch_percent: Option<Figure>,
    /// Tension of all layers.
    pub tension_n_per_m: Option<Figure>,
    /// The estimate.
    pub pressure_mmhg: Option<Figure>,
    /// Its SD.
    pub sd_mmhg: Option<Figure>,
    /// Low end of 95 %.
    pub low_mmhg: Option<Figure>,
    /// High end of 95 %.
    pub high_mmhg: Option<Figure>,
    /// As printed: `wrist (C)`.
    #[serde(skip)]
    pub label: String,
    /// Why it is not held against the mark below: `reference`, `joint, not judged`, `hand, not judged`.
    #[serde(skip)]
    pub role: Option<&'static str>,
    /// What can be said: an estimate with its range, `no contact`, `not estimated`, or empty by stretch.
    #[serde(skip)]
    pub words: String,
}

/// The reference.
#[derive(Clone, Debug, Serialize)]
pub struct Reference {
    /// The landmark.
    pub landmark: &'static str,
    /// The estimate.
    pub pressure_mmhg: Option<Figure>,
    /// The scheme's id.
    pub scheme: Option<String>,
    /// Where it lies: `2`, `between 1 and 2`.
    pub class: Option<String>,
    /// The class claimed.
    pub claimed_class: Option<String>,
    /// Its chance.
    pub claimed_probability: Option<Figure>,
    /// Stiffness.
    pub stiffness_mmhg_per_cm: Option<Figure>,
    /// The claimed class's low end.
    pub claimed_low_mmhg: Option<Figure>,
    /// The claimed class's high end.
    pub claimed_high_mmhg: Option<Figure>,
    /// The scheme as printed.
    pub scheme_label: Option<String>,
}

/// The upper edge.
#[derive(Clone, Debug, Serialize)]
pub struct TopEdge {
    /// The landmark.
    pub landmark: &'static str,
    /// The estimate there.
    pub pressure_mmhg: Option<Figure>,
    /// What one fold would press: twice that.
    pub folded_mmhg: Option<Figure>,
}

/// The fall along the limb of one garment.
#[derive(Clone, Debug, Serialize)]
pub struct Graduation {
    /// The chart's or garment's label.
    pub garment: String,
    /// The size.
    pub size: Option<String>,
    /// `fabric`, `stretch`, `readings`; null = no relaxed girths.
    pub basis: Option<&'static str>,
    /// The worst pair's grade.
    pub verdict: Option<&'static str>,
    /// Whether reference, top and a mark between are judged.
    pub judged: bool,
    /// The pairs.
    pub pairs: Vec<Pair>,
    /// Reference and top.
    pub end_to_end: Option<Pair>,
    /// The pair with the largest rise.
    pub largest_rise: Option<Pair>,
    /// Shares of the reference.
    pub ratios: Vec<Ratio>,
    /// The verdict in words.
    #[serde(skip)]
    pub words: String,
}

/// Two marks compared.
#[derive(Clone, Debug, Serialize)]
pub struct Pair {
    /// The one nearer hand or foot.
    pub distal: &'static str,
    /// The one nearer the trunk.
    pub proximal: &'static str,
    /// Proximal minus distal.
    pub rise_mmhg: Option<Figure>,
    /// Its SD by tape and ruler.
    pub sd_mmhg: Option<Figure>,
    /// Chance of a rise; by stretch the higher end.
    pub chance: Option<Figure>,
    /// By stretch the lower end.
    pub chance_low: Option<Figure>,
    /// `certain`, `likely`, `possible`, `undecided`, `none`; null = not estimated.
    pub grade: Option<&'static str>,
    /// In words: `falls 10 mmHg from wrist to forearm`.
    #[serde(skip)]
    pub words: String,
    /// The same beside the proximal mark: `falls 10 mmHg from wrist`.
    #[serde(skip)]
    pub short: String,
}

/// A share of the reference.
#[derive(Clone, Debug, Serialize)]
pub struct Ratio {
    /// The landmark.
    pub landmark: &'static str,
    /// The share.
    pub percent: Option<Figure>,
    /// The scheme's low limit.
    pub low: Option<Figure>,
    /// The scheme's high limit.
    pub high: Option<Figure>,
    /// Whether it lies within; null without limit.
    pub inside: Option<bool>,
    /// Of which landmark's pressure.
    pub of: &'static str,
    /// What the limit rests on.
    pub basis: Option<&'static str>,
}

pub(super) fn pressure(
    garment: &str,
    size: Option<&str>,
    worn: &WornEstimate,
    claim: Option<&Claim>,
) -> Pressure {
    let band = claim.and_then(|claim| claim.scheme.class(&claim.class));
    let reference = &worn.reference;
    let top = worn.marks.last().and_then(|mark| Some((mark.landmark, mark.mmhg()?)));
    Pressure {
        garment: garment.to_owned(),
        size: size.map(str::to_owned),
        basis: worn.basis.map(graduation::GraduationBasis::word),
        marks: worn.marks.iter().map(mark).collect(),
        reference: Reference {
            landmark: reference.landmark.name(),
            pressure_mmhg: reference.mmhg.and_then(Figure::mmhg),
            scheme: claim.map(|claim| claim.scheme.id.clone()),
            class: reference.class.as_ref().map(crate::garment::ClassPlace::name),
            claimed_class: claim.map(|claim| claim.class.clone()),
            claimed_probability: reference.claimed_probability.and_then(Figure::chance),
            stiffness_mmhg_per_cm: reference.stiffness.and_then(|one| Figure::new(one, 1)),
            claimed_low_mmhg: band.and_then(|band| band.low).and_then(Figure::mmhg),
            claimed_high_mmhg: band.and_then(|band| band.high).and_then(Figure::mmhg),
            scheme_label: claim.map(|claim| claim.scheme.label.clone()),
        },
        top_edge: top.map(|(landmark, pressure)| TopEdge {
            landmark: landmark.name(),
            pressure_mmhg: Figure::mmhg(pressure),
            // n layers press n times over the same girth (derived).
            folded_mmhg: Figure::mmhg(2.0 * pressure),
        }),
    }
}

/// The upper edge where its band is stated; none without a fabric curve.
pub(super) fn stated_edge(edge: &crate::assessment::EdgeEstimate) -> Option<TopEdge> {
    let pressure = crate::quantity::mmhg(edge.estimate?.pressure()?);
    Some(TopEdge {
        landmark: edge.landmark.name(),
        pressure_mmhg: Figure::mmhg(pressure),
        folded_mmhg: Figure::mmhg(2.0 * pressure),
    })
}

/// 95 % of a normal distribution lies within so many SDs (derived).
const SDS: f64 = 1.96;

fn mark(one: &MarkEstimate) -> Mark {
    let pressure = one.mmhg();
    let sd = one.sd();
    let tension = match one.estimate {
        Some(Estimate::Pressed(pressed)) => Some(newton_per_metre(pressed.tension)),
        Some(Estimate::Slack) => Some(0.0),
        Some(Estimate::Beyond) | None => None,
    };
    let ends = pressure.zip(sd).map(|(pressure, sd)| ((pressure - SDS * sd).max(0.0), pressure + SDS * sd));
    let words = match (one.estimate, pressure, ends) {
        (Some(Estimate::Beyond), ..) => "not estimated: beyond tested stretch".to_owned(),
        _ if one.is_slack() => "no contact".to_owned(),
        (_, Some(pressure), Some((low, high))) => {
            format!("{} ({:.0}\u{2013}{:.0})", mmhg_words(pressure).replace(" mmHg", ""), low, high)
        }
        _ => String::new(),
    };
    Mark {
        landmark: one.landmark.name(),
        at_cm: Figure::cm(one.at.cm()),
        girth_cm: Figure::cm(one.girth.cm()),
        relaxed_cm: one.relaxed.and_then(|relaxed| Figure::cm(relaxed.cm())),
        stretch_percent: one.stretch.and_then(|stretch| Figure::percent(stretch * 100.0)),
        tension_n_per_m: tension.and_then(|tension| Figure::new(tension, 0)),
        pressure_mmhg: pressure.and_then(Figure::mmhg),
        sd_mmhg: sd.and_then(|sd| Figure::new(sd, 1)),
        low_mmhg: ends.and_then(|(low, _)| Figure::mmhg(low)),
        high_mmhg: ends.and_then(|(_, high)| Figure::mmhg(high)),
        label: one.landmark.label(),
        role: role(one.landmark),
        words,
    }
}

fn role(landmark: Landmark) -> Option<&'static str> {
    if landmark == landmark.limb().reference() {
        Some("reference")
    } else if landmark.is_joint() {
        Some("joint, not judged")
    } else if landmark.on_extremity() {
        Some(match landmark.limb() {
            Limb::Arm => "hand, not judged",
            Limb::Leg => "foot, not judged",
        })
    } else {
        None
    }
}

pub(super) fn graduation(garment: &str, size: Option<&str>, worn: &WornEstimate) -> Graduation {
    let found = worn.graduation.as_ref();
    Graduation {
        garment: garment.to_owned(),
        size: size.map(str::to_owned),
        basis: worn.basis.map(graduation::GraduationBasis::word),
        verdict: found.and_then(|one| one.verdict).map(graduation::Grade::word),
        judged: found.is_some_and(|one| one.judged),
        pairs: found.map(|one| one.pairs.iter().map(pair).collect()).unwrap_or_default(),
        end_to_end: found.and_then(|one| one.end_to_end.as_ref()).map(pair),
        largest_rise: found.and_then(|one| one.largest_rise.as_ref()).map(pair),
        ratios: worn
            .ratios
            .iter()
            .map(|one| {
                let limit = one.limit.as_ref();
                Ratio {
                    landmark: one.landmark.name(),
                    percent: Figure::percent(one.percent),
                    low: limit.and_then(|limit| limit.low).and_then(Figure::percent),
                    high: limit.and_then(|limit| limit.high).and_then(Figure::percent),
                    inside: one.inside,
                    of: one.of.name(),
                    basis: limit.map(|limit| limit.basis.word()),
                }
            })
            .collect(),
        words: verdict_words(worn),
    }
}

fn pair(one: &graduation::Pair) -> Pair {
    Pair {
        distal: one.distal.name(),
        proximal: one.proximal.name(),
        rise_mmhg: one.rise.and_then(Figure::mmhg),
        sd_mmhg: one.sd.and_then(|sd| Figure::new(sd, 1)),
        chance: one.chance.and_then(Figure::chance),
        chance_low: one.chance_low.and_then(Figure::chance),
        grade: one.grade.map(graduation::Grade::word),
        words: pair_words(one, &format!("from {} to {}", one.distal.spoken(), one.proximal.spoken())),
        short: pair_words(one, &format!("from {}", one.distal.spoken())),
    }
}

fn pair_words(one: &graduation::Pair, ends: &str) -> String {
    let Some(grade) = one.grade else { return format!("not estimated {ends}") };
    match (one.rise, grade) {
        (Some(rise), _) if rise.abs() < 0.5 => format!("stays level {ends}"),
        (Some(rise), _) if rise > 0.0 => format!("rises {} {ends}", mmhg_words(rise)),
        (Some(rise), _) => format!("falls {} {ends}", mmhg_words(-rise)),
        (None, graduation::Grade::Certain) => format!("rises {ends}, whatever the knit"),
        (None, graduation::Grade::Likely) => format!("likely rises {ends}"),
        (None, graduation::Grade::Possible) => format!("likely falls {ends}"),
        (None, graduation::Grade::Undecided) => format!("undecided {ends}: it depends on the fabric"),
        (None, graduation::Grade::None) if one.near => format!("too near to tell {ends}"),
        (None, graduation::Grade::None) => format!("falls {ends}, whatever the knit"),
    }
}

fn verdict_words(worn: &WornEstimate) -> String {
    let Some(found) = &worn.graduation else {
        return "not judged: no relaxed girths and no flat widths".to_owned();
    };
    let worst = found
        .worst()
        .map(|pair| format!("{} to {}", pair.distal.spoken(), pair.proximal.spoken()))
        .unwrap_or_default();
    let chance = found.worst().and_then(|pair| pair.chance).map(percent_words).unwrap_or_default();
    let words = match found.verdict {
        None => "not judged: fewer than two marks can be compared".to_owned(),
        Some(graduation::Grade::Certain) => {
            format!("RISES toward the trunk, certain by tape and ruler ({worst})")
        }
        Some(graduation::Grade::Likely) => format!("likely rises ({worst}, chance {chance})"),
        Some(graduation::Grade::Possible) => {
            format!("falls in all likelihood; a rise is possible ({worst}, chance {chance})")
        }
        Some(graduation::Grade::Undecided) => format!("undecided ({worst}): it depends on the fabric"),
        Some(graduation::Grade::None) => "falls at every judged step, by the estimate".to_owned(),
    };
    if found.judged || found.verdict.is_none() || matches!(found.verdict, Some(graduation::Grade::Undecided))
    {
        words
    } else {
        format!("{words}; not judged as a whole, since marks are missing")
    }
}
