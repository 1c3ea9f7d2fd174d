//! Owns what the report adds where one garment is asked about.

use serde::Serialize;

use super::Figure;
use crate::anatomy::Landmark;
use crate::assessment::{EdgeEstimate, GradientAssessment, OpenRecord, PieceAt};
use crate::garment::{Garment, Outfit, Piece, Wrap};
use crate::graduation::{FallsWhen, Undecided};
use crate::pressure::{Ellipse, Line};
use crate::quantity::mmhg;
use crate::record::{Mark, Record};
use crate::rules::{NumberId, Rules};

/// The garment asked about.
#[derive(Clone, Debug, Serialize)]
pub struct GarmentBlock {
    /// Its label.
    pub label: String,
    /// The size, for a chart.
    pub size: Option<String>,
    /// `figures only, do not fit` under a stop.
    pub caution: Option<&'static str>,
    /// `readings`, `fabric` or `stretch`: what the verdict rests on.
    pub verdict_by: Option<&'static str>,
    /// The pieces worn, inner first.
    pub pieces: Vec<PieceRow>,
    /// What the pieces do at marks where more than one lies.
    pub overlaps: Vec<OverlapRow>,
    /// Bands at upper ends that are stated.
    pub edges: Vec<EdgeRow>,
    /// The pressure at the marks and every 0.5 cm between them; drawn, not judged.
    pub profile: Vec<ProfileRow>,
    /// What 1 cm of limb more or less would do.
    pub swelling: Vec<SwellingRow>,
    /// Sections that are not round.
    pub sections: Vec<SectionRow>,
    /// What decides the pairs that are not decided.
    pub undecided: Vec<UndecidedRow>,
    /// The readings used.
    pub readings: Vec<ReadingRow>,
    /// Estimate against reading.
    pub against: Option<AgainstBlock>,
    /// What is missing for a gradient that counts as judged.
    pub missing: Vec<String>,
    /// What wear takes off, where the record says when a garment was handed out.
    pub wear: Option<String>,
}

/// One piece worn.
#[derive(Clone, Debug, Serialize)]
pub struct PieceRow {
    /// Its label.
    pub label: String,
    /// `garment` or `wrap`.
    pub kind: &'static str,
    /// Distal end.
    pub from: &'static str,
    /// Proximal end.
    pub to: &'static str,
    /// Layers.
    pub layers: Option<Figure>,
    /// The fabrics' labels.
    pub fabrics: Vec<String>,
    /// A wrap's pull.
    pub pull_n: Option<Figure>,
    /// A wrap's width.
    pub width_cm: Option<Figure>,
    /// Thickness of one layer of a wrap.
    pub thickness_cm: Option<Figure>,
    /// In words.
    #[serde(skip)]
    pub words: String,
}

/// A mark under several pieces.
#[derive(Clone, Debug, Serialize)]
pub struct OverlapRow {
    /// The landmark.
    pub landmark: &'static str,
    /// The plain sum: an upper estimate.
    pub sum_mmhg: Option<Figure>,
    /// The published share of the sum, low.
    pub in_vivo_low_mmhg: Option<Figure>,
    /// The published share of the sum, high.
    pub in_vivo_high_mmhg: Option<Figure>,
    /// Each piece alone.
    pub parts: Vec<PartRow>,
}

/// One piece alone at a mark.
#[derive(Clone, Debug, Serialize)]
pub struct PartRow {
    /// The piece's label.
    pub label: String,
    /// Its relaxed girth.
    pub relaxed_cm: Option<Figure>,
    /// Its pressure.
    pub pressure_mmhg: Option<Figure>,
}

/// A band at an upper end.
#[derive(Clone, Debug, Serialize)]
pub struct EdgeRow {
    /// The garment's label.
    pub garment: String,
    /// The landmark.
    pub landmark: &'static str,
    /// The band's relaxed girth.
    pub relaxed_cm: Option<Figure>,
    /// Its pressure.
    pub pressure_mmhg: Option<Figure>,
    /// How far it lies above the garment just below it.
    pub rise_mmhg: Option<Figure>,
    /// SD of that.
    pub sd_mmhg: Option<Figure>,
    /// Chance that it presses more.
    pub chance: Option<Figure>,
    /// How certain.
    pub grade: Option<&'static str>,
    /// What one fold of it would press.
    pub folded_mmhg: Option<Figure>,
}

/// The pressure at one place.
#[derive(Clone, Debug, Serialize)]
pub struct ProfileRow {
    /// Where.
    pub at_cm: Option<Figure>,
    /// The landmark there.
    pub landmark: Option<&'static str>,
    /// Girth, straight between the marks.
    pub girth_cm: Option<Figure>,
    /// Relaxed girth, straight between the marks.
    pub relaxed_cm: Option<Figure>,
    /// The estimate.
    pub pressure_mmhg: Option<Figure>,
    /// Its SD.
    pub sd_mmhg: Option<Figure>,
}

/// What 1 cm of limb would do.
#[derive(Clone, Debug, Serialize)]
pub struct SwellingRow {
    /// The landmark.
    pub landmark: &'static str,
    /// As measured.
    pub pressure_mmhg: Option<Figure>,
    /// With 1 cm less; null beyond the tested stretch.
    pub minus_1cm_mmhg: Option<Figure>,
    /// With 1 cm more; null beyond the tested stretch.
    pub plus_1cm_mmhg: Option<Figure>,
}

/// A section that is not round.
#[derive(Clone, Debug, Serialize)]
pub struct SectionRow {
    /// The landmark.
    pub landmark: &'static str,
    /// Widest diameter.
    pub wide_cm: Option<Figure>,
    /// Diameter across it.
    pub deep_cm: Option<Figure>,
    /// Girth of the oval.
    pub oval_girth_cm: Option<Figure>,
    /// Mean pressure.
    pub mean_mmhg: Option<Figure>,
    /// Pressure at the sharp end.
    pub sharp_mmhg: Option<Figure>,
    /// Pressure on the flat side.
    pub flat_mmhg: Option<Figure>,
    /// Sharp end over mean.
    pub sharp_over_mean: Option<Figure>,
}

/// What decides a pair.
#[derive(Clone, Debug, Serialize)]
pub struct UndecidedRow {
    /// The mark nearer hand or foot.
    pub distal: &'static str,
    /// The mark nearer the trunk.
    pub proximal: &'static str,
    /// Stretch at the distal mark.
    pub distal_stretch_percent: Option<Figure>,
    /// Stretch at the proximal mark.
    pub proximal_stretch_percent: Option<Figure>,
    /// The pressure falls when the tension at the proximal stretch is less than this many times the
    /// other.
    pub level_tension_ratio: Option<Figure>,
    /// `below`, `above`, `always`, `never`: for which exponents the pressure falls.
    pub falls_for_exponents: &'static str,
    /// The exponent at which it is level.
    pub level_exponent: Option<Figure>,
    /// What would decide it.
    pub ways: Vec<String>,
}

/// One reading.
#[derive(Clone, Debug, Serialize)]
pub struct ReadingRow {
    /// The landmark.
    pub landmark: &'static str,
    /// What was read.
    pub pressure_mmhg: Option<Figure>,
    /// Its SD.
    pub sd_mmhg: Option<Figure>,
    /// Posture.
    pub posture: Option<String>,
    /// Minutes worn.
    pub minutes_worn: Option<Figure>,
}

/// Estimate against reading.
#[derive(Clone, Debug, Serialize)]
pub struct AgainstBlock {
    /// Mark by mark.
    pub marks: Vec<AgainstMark>,
    /// Mean of estimate minus reading.
    pub bias_mmhg: Option<Figure>,
    /// SD of estimate minus reading.
    pub spread_mmhg: Option<Figure>,
    /// Scale of the curve that fits best.
    pub scale: Option<Figure>,
    /// Its SD.
    pub scale_sd: Option<Figure>,
}

/// One mark of it.
#[derive(Clone, Debug, Serialize)]
pub struct AgainstMark {
    /// The landmark.
    pub landmark: &'static str,
    /// The estimate.
    pub estimate_mmhg: Option<Figure>,
    /// The reading.
    pub reading_mmhg: Option<Figure>,
    /// Estimate minus reading.
    pub difference_mmhg: Option<Figure>,
}

pub(super) fn garment(found: &GradientAssessment, open: &OpenRecord, rules: &Rules) -> GarmentBlock {
    let outfit = found.asked.outfit.as_ref();
    let stop = found.base.outcome == Some(crate::assessment::Outcome::Stop);
    let verdict = found.verdict();
    GarmentBlock {
        label: found.asked.label.clone(),
        size: found.asked.size.clone(),
        caution: stop.then_some("figures only, do not fit"),
        verdict_by: verdict.and_then(|one| one.basis).map(crate::graduation::GraduationBasis::word),
        pieces: outfit.map(|outfit| outfit.pieces.iter().map(piece).collect()).unwrap_or_default(),
        overlaps: outfit.map(|outfit| overlaps(found, outfit, rules)).unwrap_or_default(),
        edges: found.edges.iter().map(edge).collect(),
        profile: found
            .profile
            .iter()
            .map(|one| ProfileRow {
                at_cm: Figure::cm(one.at.cm()),
                landmark: one.landmark.map(Landmark::name),
                girth_cm: Figure::cm(one.girth_cm),
                relaxed_cm: one.relaxed_cm.and_then(Figure::cm),
                pressure_mmhg: one.mmhg.and_then(Figure::mmhg),
                sd_mmhg: one.sd.and_then(|sd| Figure::new(sd, 1)),
            })
            .collect(),
        swelling: found
            .swelling
            .iter()
            .map(|one| SwellingRow {
                landmark: one.landmark.name(),
                pressure_mmhg: Figure::mmhg(one.now),
                minus_1cm_mmhg: one.shrunk.and_then(Figure::mmhg),
                plus_1cm_mmhg: one.swollen.and_then(Figure::mmhg),
            })
            .collect(),
        sections: sections(found, &open.record),
        undecided: found.undecided.iter().map(|one| undecided(one, found, &open.record)).collect(),
        readings: found
            .readings
            .iter()
            .map(|one| ReadingRow {
                landmark: one.landmark.name(),
                pressure_mmhg: Figure::mmhg(mmhg(one.pressure)),
                sd_mmhg: Figure::new(one.sd.map_or(rules.number(NumberId::ReadingSd), mmhg), 1),
                posture: one.posture.clone(),
                minutes_worn: one.minutes_worn.and_then(|one| Figure::new(one, 0)),
            })
            .collect(),
        against: found.against.as_ref().map(against),
        missing: missing(found),
        wear: wear(open, found),
    }
}

fn piece(worn: &crate::garment::Worn) -> PieceRow {
    let ends = format!("{} to {}", worn.from.spoken(), worn.to.spoken());
    match &worn.piece {
        Piece::Garment(one) => PieceRow {
            label: one.label.clone(),
            kind: "garment",
            from: worn.from.name(),
            to: worn.to.name(),
            layers: Figure::new(f64::from(one.layers), 0),
            fabrics: one.fabrics().iter().map(|fabric| fabric.label.clone()).collect(),
            pull_n: None,
            width_cm: None,
            thickness_cm: None,
            words: garment_words(one, &ends),
        },
        Piece::Wrap(one) => PieceRow {
            label: one.label.clone(),
            kind: "wrap",
            from: worn.from.name(),
            to: worn.to.name(),
            layers: Figure::new(one.layers, 1),
            fabrics: Vec::new(),
            pull_n: Figure::new(one.pull_n, 1),
            width_cm: Figure::cm(one.width_cm),
            thickness_cm: one.thickness_cm.and_then(|cm| Figure::new(cm, 2)),
            words: wrap_words(one, &ends),
        },
    }
}

fn garment_words(one: &Garment, ends: &str) -> String {
    let layers = if one.layers == 1 { String::new() } else { format!(", {} layers", one.layers) };
    let fabrics: Vec<String> = one.fabrics().iter().map(|fabric| fabric.label.clone()).collect();
    let fabric = if fabrics.is_empty() { "no fabric curve".to_owned() } else { fabrics.join(" and ") };
    format!("{}: {ends}{layers}, {fabric}", one.label)
}

fn wrap_words(one: &Wrap, ends: &str) -> String {
    let thickness = one.thickness_cm.map_or_else(
        || "taken as thin".to_owned(),
        |cm| format!("{:.1} mm thick a layer, built up outward", cm * 10.0),
    );
    format!(
        "{}: {ends}, {:.1} N on {:.1} cm, {:.1} layers, {thickness}",
        one.label, one.pull_n, one.width_cm, one.layers
    )
}

fn overlaps(found: &GradientAssessment, outfit: &Outfit, rules: &Rules) -> Vec<OverlapRow> {
    let Some(estimate) = &found.estimate else { return Vec::new() };
    let share = |id| rules.number(id);
    let part = |one: &PieceAt| PartRow {
        label: outfit.pieces.get(one.piece).map_or_else(String::new, |worn| worn.piece.label().to_owned()),
        relaxed_cm: one.relaxed.and_then(|girth| Figure::cm(girth.cm())),
        pressure_mmhg: one.estimate.and_then(|one| one.pressure()).and_then(|one| Figure::mmhg(mmhg(one))),
    };
    estimate
        .marks
        .iter()
        .filter(|mark| mark.pieces.len() > 1)
        .map(|mark| OverlapRow {
            landmark: mark.landmark.name(),
            sum_mmhg: mark.mmhg().and_then(Figure::mmhg),
            in_vivo_low_mmhg: mark.mmhg().and_then(|one| Figure::mmhg(one * share(NumberId::LayersLow))),
            in_vivo_high_mmhg: mark.mmhg().and_then(|one| Figure::mmhg(one * share(NumberId::LayersHigh))),
            parts: mark.pieces.iter().map(part).collect(),
        })
        .collect()
}

fn edge(one: &EdgeEstimate) -> EdgeRow {
    let pressure = one.estimate.and_then(|one| one.pressure()).map(mmhg);
    EdgeRow {
        garment: one.garment.clone(),
        landmark: one.landmark.name(),
        relaxed_cm: Figure::cm(one.relaxed.cm()),
        pressure_mmhg: pressure.and_then(Figure::mmhg),
        rise_mmhg: one.rise.and_then(|rise| Figure::mmhg(rise.mmhg)),
        sd_mmhg: one.rise.and_then(|rise| Figure::new(rise.sd, 1)),
        chance: one.rise.and_then(|rise| Figure::chance(rise.chance)),
        grade: one.rise.map(|rise| rise.grade.word()),
        // Twice the layers on the same girth (derived).
        folded_mmhg: pressure.and_then(|one| Figure::mmhg(2.0 * one)),
    }
}

fn sections(found: &GradientAssessment, record: &Record) -> Vec<SectionRow> {
    let chosen = found.estimate.iter().chain(found.read.iter());
    let marks: Vec<_> = chosen.flat_map(|one| one.marks.iter()).collect();
    let row = |mark: &Mark| {
        let landmark = mark.landmark?;
        let (wide, deep) = mark.calipers?;
        let oval = Ellipse::from_diameters(wide.cm(), deep.cm())?;
        let here = marks.iter().find(|one| one.landmark == landmark)?;
        let mean = here.mmhg();
        let girth = mark.girth().cm();
        let (sharp, flat) = (oval.sharp_over_mean(girth), oval.flat_over_mean(girth));
        Some(SectionRow {
            landmark: landmark.name(),
            wide_cm: Figure::cm(wide.cm()),
            deep_cm: Figure::cm(deep.cm()),
            oval_girth_cm: Figure::cm(oval.girth_cm()),
            mean_mmhg: mean.and_then(Figure::mmhg),
            sharp_mmhg: mean.and_then(|mean| Figure::mmhg(mean * sharp)),
            flat_mmhg: mean.and_then(|mean| Figure::mmhg(mean * flat)),
            sharp_over_mean: Figure::new(sharp, 2),
        })
    };
    record.marks.iter().filter_map(row).collect()
}

fn undecided(one: &Undecided, found: &GradientAssessment, record: &Record) -> UndecidedRow {
    let (falls, level) = match one.falls {
        FallsWhen::Below(level) => ("below", Some(level)),
        FallsWhen::Above(level) => ("above", Some(level)),
        FallsWhen::Always => ("always", None),
        FallsWhen::Never => ("never", None),
    };
    let (distal, proximal) = (one.distal.spoken(), one.proximal.spoken());
    let percent = |stretch: f64| format!("{:.0} %", stretch * 100.0);
    let mut ways = vec![
        format!(
            "a fabric curve, or two weights on a strip of the knit: the pressure falls if the pull at {} stretch is less than {:.2} times the pull at {}",
            percent(one.stretches.1),
            one.level_tension_ratio,
            percent(one.stretches.0),
        ),
        format!("one reading each at the {distal} and at the {proximal}, in one posture"),
    ];
    let stated = |landmark: Landmark| {
        found.estimate.as_ref().is_some_and(|one| one.marks.iter().any(|mark| mark.landmark == landmark))
    };
    let third = record.marks.iter().filter_map(|mark| mark.landmark).find(|landmark| {
        *landmark > one.distal && *landmark < one.proximal && !landmark.is_joint() && !stated(*landmark)
    });
    if let Some(third) = third.filter(|_| !one.ends) {
        ways.push(format!("the garment's flat width in a third place, at the {}", third.spoken()));
    }
    if matches!(falls, "always" | "never") {
        ways.push(format!(
            "girth and flat width at the {distal} and the {proximal} measured twice more: at the measured values the answer is one for every knit"
        ));
    }
    UndecidedRow {
        distal: one.distal.name(),
        proximal: one.proximal.name(),
        distal_stretch_percent: Figure::percent(one.stretches.0 * 100.0),
        proximal_stretch_percent: Figure::percent(one.stretches.1 * 100.0),
        level_tension_ratio: Figure::new(one.level_tension_ratio, 2),
        falls_for_exponents: falls,
        level_exponent: level.and_then(|level| Figure::new(level, 2)),
        ways,
    }
}

fn against(one: &crate::assessment::Against) -> AgainstBlock {
    AgainstBlock {
        marks: one
            .rows
            .iter()
            .map(|row| AgainstMark {
                landmark: row.landmark.name(),
                estimate_mmhg: Figure::mmhg(row.estimate),
                reading_mmhg: Figure::mmhg(row.reading),
                difference_mmhg: Figure::mmhg(row.estimate - row.reading),
            })
            .collect(),
        bias_mmhg: Figure::new(one.bias, 1),
        spread_mmhg: one.spread.and_then(|spread| Figure::new(spread, 1)),
        scale: one.scale.and_then(|scale| Figure::new(scale.factor, 3)),
        scale_sd: one.scale.and_then(|scale| Figure::new(scale.sd, 3)),
    }
}

/// Pressures of new and worn garments at 0, 1 and 3 months: class 2, class 3. Basis: published (Veraart
/// 1997, Phlebology).
const WORN: [[(f64, f64); 3]; 2] =
    [[(0.0, 29.3), (1.0, 27.6), (3.0, 26.5)], [(0.0, 47.5), (1.0, 44.2), (3.0, 41.3)]];

/// What wear takes off in a month, by straight lines through two published series.
fn wear(open: &OpenRecord, found: &GradientAssessment) -> Option<String> {
    let given = open.record.garment_given?;
    let months = found.base.today.since((jiff::Unit::Month, given)).ok()?.get_months();
    let losses: Vec<f64> = WORN
        .iter()
        .filter_map(|series| Line::through(series))
        .map(|line| -100.0 * line.slope / line.start)
        .collect();
    let (low, high) = (losses.first()?, losses.last()?);
    Some(format!(
        "A garment was handed out on {given}, {months} months ago. The estimate is of a new one: in two published series pressure fell by about {low:.0} to {high:.0} % a month over 3 months (Veraart 1997)."
    ))
}

/// What is missing for a gradient that counts as judged, with the findings' own words.
fn missing(found: &GradientAssessment) -> Vec<String> {
    found
        .base
        .findings
        .iter()
        .filter(|one| one.id == crate::finding::FindingId::GradientNotJudged)
        .map(|one| format!("{} {}", one.sentence, one.next))
        .collect()
}
