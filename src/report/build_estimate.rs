//! Owns the blocks of one garment's estimate: pressures, reference, fall.

use super::{
    BesideBlock, DecideBlock, ExponentBlock, Figure, GradientBlock, MarkBlock, PairBlock, PressureBlock,
    ProfileBlock, ReadBlock, ReferenceBlock, ResidualBlock, TopEdgeBlock, TurnBlock,
};
use crate::assessment::{contradiction, decide_words, fall_words};
use crate::estimate::{Estimated, FallOf, MarkEstimate, ProfilePoint};
use crate::finding::{after_strip_pull, fall_sentence};
use crate::garment::{Outfit, Piece};
use crate::gradient::{Decide, Grade, GradientBasis, Turn};
use crate::words;

/// What no figure holds, said once.
pub(super) const NOT_MODELLED: &str = "Not in the figures: lengthwise tension (about 1 mmHg at an ankle, an estimate of ours), muscle work (several mmHg at the calf), and a section that is not round (the girth gives the mean around the limb).";

/// Whose estimate it is.
pub(super) struct Of<'a> {
    /// The chart, by its place within the limb.
    pub chart: Option<usize>,
    /// The size, by its place.
    pub size: Option<usize>,
    /// The size's label.
    pub size_label: Option<String>,
    /// The garment's label.
    pub garment: String,
    /// What is worn.
    pub outfit: &'a Outfit,
    /// Its estimate.
    pub estimated: &'a Estimated,
    /// What would decide its fall.
    pub decide: &'a [Decide],
    /// At which exponents its grade would turn.
    pub turns: &'a [Turn],
    /// Drawn points.
    pub profile: &'a [ProfilePoint],
}

/// The pressures.
pub(super) fn pressure(of: &Of<'_>) -> PressureBlock {
    let estimated = of.estimated;
    let mut marks: Vec<MarkBlock> = Vec::new();
    let mut above: Option<&MarkEstimate> = None;
    for mark in &estimated.marks {
        marks.push(mark_block(mark, above));
        above = Some(mark);
    }
    let edge = estimated.top_edges.last();
    PressureBlock {
        chart: of.chart,
        size: of.size,
        size_label: of.size_label.clone(),
        garment: of.garment.clone(),
        basis: estimated.basis,
        pulled: of.outfit.is_pulled(),
        marks,
        read_only: estimated
            .read
            .iter()
            .filter(|(landmark, _)| estimated.marks.iter().all(|mark| mark.landmark != *landmark))
            .map(|(landmark, read)| ReadBlock { landmark: *landmark, reading_mmhg: Figure::mmhg(read.mmhg) })
            .collect(),
        reference: reference(of),
        top_edge: edge.map(|edge| TopEdgeBlock {
            landmark: edge.landmark,
            edge_mmhg: edge.edge_mmhg().and_then(Figure::mmhg),
            garment_mmhg: edge.garment_mmhg().and_then(Figure::mmhg),
            chance: edge.chance.and_then(Figure::chance),
            edge_is_bound: edge.edge.is_some_and(|one| one.bound().is_some()),
            garment_is_bound: edge.garment.is_some_and(|one| one.bound().is_some()),
        }),
        folded_edge_mmhg: estimated
            .folded_edge_mmhg()
            .filter(|_| !of.outfit.is_pulled())
            .and_then(Figure::mmhg),
        profile: of
            .profile
            .iter()
            .map(|point| ProfileBlock { at_cm: point.at.cm(), pressure_mmhg: point.mmhg })
            .collect(),
        notes: notes(of),
    }
}

fn notes(of: &Of<'_>) -> Vec<String> {
    let mut notes = Vec::new();
    if of.outfit.pieces.len() > 1 {
        notes.push("Where pieces lie over one another the figures are their plain sum, an upper estimate; 0.83 to 0.85 of it was measured.".to_owned());
    }
    if of.outfit.pieces.iter().any(|worn| matches!(worn.piece, Piece::Wrap(_))) {
        notes.push("The pull of a hand varies from turn to turn; bandages were measured up to 42 % below this law at the ankle.".to_owned());
    }
    notes
}

fn mark_block(mark: &MarkEstimate, above: Option<&MarkEstimate>) -> MarkBlock {
    let range = mark.range();
    let worn = mark.range_worn();
    MarkBlock {
        landmark: mark.landmark,
        at_cm: Figure::cm(mark.at.tenths()),
        girth_cm: Figure::cm(mark.girth.tenths()),
        relaxed_cm: mark.relaxed_cm.and_then(|cm| Figure::new(cm, 1)),
        stretch_percent: mark.stretch.and_then(|stretch| Figure::percent(stretch * 100.0)),
        tension_n_per_m: mark.tension().and_then(|tension| Figure::new(tension, 0)),
        pressure_mmhg: mark.mmhg().and_then(Figure::mmhg),
        bound: mark.bound_mmhg().and_then(Figure::mmhg),
        sd_mmhg: mark.sd_mmhg().and_then(|sd| Figure::new(sd, 1)),
        low_mmhg: range.and_then(|range| Figure::mmhg(range.low)),
        high_mmhg: range.and_then(|range| Figure::mmhg(range.high)),
        low_worn_mmhg: worn.and_then(|range| Figure::mmhg(range.low)),
        high_worn_mmhg: worn.and_then(|range| Figure::mmhg(range.high)),
        reading_mmhg: mark.reading.and_then(|read| Figure::mmhg(read.mmhg)),
        judged: mark.judged,
        against_above: against_above(mark, above),
    }
}

/// A row against the row above it, in figures only: the verdict stands in the fall.
fn against_above(mark: &MarkEstimate, above: Option<&MarkEstimate>) -> String {
    let Some(above) = above else { return String::new() };
    match (mark.mmhg(), above.mmhg()) {
        (Some(here), Some(before)) => {
            let change = here.round() - before.round();
            if change > 0.0 {
                format!("{} more", words::whole(change))
            } else if change < 0.0 {
                format!("{} less", words::whole(-change))
            } else {
                "the same".to_owned()
            }
        }
        _ => String::new(),
    }
}

fn reference(of: &Of<'_>) -> ReferenceBlock {
    let one = &of.estimated.reference;
    ReferenceBlock {
        landmark: one.landmark,
        pressure_mmhg: one.mmhg.and_then(Figure::mmhg),
        scheme: one.scheme.clone(),
        scheme_name: of.outfit.claim.as_ref().map(|claim| claim.scheme.label.clone()),
        class: one.class.as_ref().map(crate::garment::ClassPlace::name),
        claimed_class: one.claimed.clone(),
        claimed_chance: one.claimed_chance.and_then(Figure::chance),
        claimed_chance_worn: one.claimed_chance_worn.and_then(Figure::chance),
        stiffness_mmhg_per_cm: one.stiffness.and_then(|value| Figure::new(value, 1)),
    }
}

/// The fall.
pub(super) fn gradient(of: &Of<'_>) -> GradientBlock {
    let estimated = of.estimated;
    let fall = estimated.fall.as_ref().map(|verdict| &verdict.fall);
    let chances = fall.and_then(|fall| fall.chances.as_ref());
    let chance = |value: fn(&crate::gradient::Chances) -> f64| chances.map(value).and_then(Figure::chance);
    let known = estimated.has_fall;
    // A fall that is not held against itself rests on nothing.
    let is_open = estimated.fall.as_ref().is_some_and(|verdict| verdict.unheld.is_some());
    let grade = if known { Some(estimated.grade().unwrap_or(Grade::Undecided)) } else { None };
    let exponents = if fall.is_some_and(|fall| fall.decided_by == GradientBasis::Stretch && !is_open) {
        exponents(of.outfit)
    } else {
        Vec::new()
    };
    let shows_place = grade.is_some_and(|grade| grade != Grade::None);
    GradientBlock {
        chart: of.chart,
        size: of.size,
        size_label: of.size_label.clone(),
        garment: of.garment.clone(),
        basis: if is_open { None } else { fall.map(|fall| fall.decided_by).or(estimated.basis) },
        grade,
        judged: estimated.judged(),
        chance: fall.and_then(|fall| fall.chance).and_then(Figure::chance),
        chance_is_bound: fall.is_some_and(|fall| fall.by_bound),
        rise_somewhere: chance(|one| one.rise_somewhere),
        usual: chance(|one| one.usual),
        trend_low: chance(|one| one.trend_low),
        trend_high: chance(|one| one.trend_high),
        end_low: chance(|one| one.end_low),
        end_high: chance(|one| one.end_high),
        any_rise: chance(|one| one.any_rise),
        place: fall.and_then(|fall| fall.place).filter(|_| shows_place),
        against: fall.and_then(|fall| fall.against).filter(|_| shows_place),
        exponents_words: exponents_words(&exponents),
        exponents,
        pairs: fall
            .map(|fall| {
                fall.pairs
                    .iter()
                    .map(|pair| PairBlock {
                        distal: pair.distal,
                        proximal: pair.proximal,
                        rise_mmhg: pair.rise_mmhg.and_then(Figure::mmhg),
                        sd_mmhg: pair.sd_mmhg.and_then(|sd| Figure::new(sd, 1)),
                    })
                    .collect()
            })
            .unwrap_or_default(),
        decide: of
            .decide
            .iter()
            .map(|one| DecideBlock {
                action: one.action.word(),
                landmark: one.landmark,
                chance: one.chance.and_then(Figure::chance),
                piece: one
                    .piece
                    .filter(|_| of.outfit.pieces.len() > 1)
                    .and_then(|piece| Some(of.outfit.pieces.get(piece)?.piece.label().to_string())),
                words: decide_words(of.outfit, one),
            })
            .collect(),
        after_strip_pull: (of.turns.iter())
            .map(|one| TurnBlock {
                low: Figure::new(one.low, 2),
                high: Figure::new(one.high, 2),
                grade: one.grade,
            })
            .collect(),
        after_strip_pull_words: after_strip_pull(of.turns).map(|said| of_whose_knit(of, said)),
        residual: estimated
            .residual
            .iter()
            .map(|one| ResidualBlock {
                landmark: one.landmark,
                percent: one.percent.and_then(Figure::percent),
                low: one.limit.as_ref().and_then(|limit| limit.low),
                high: one.limit.as_ref().and_then(|limit| limit.high),
                inside: one.inside,
            })
            .collect(),
        sentence: sentence(of),
        beside: beside(estimated, of.outfit.is_pulled()),
        pulled: of.outfit.is_pulled(),
    }
}

fn exponents(outfit: &Outfit) -> Vec<ExponentBlock> {
    let known = outfit.fabrics().into_iter().filter_map(|fabric| Some((fabric, fabric.exponent?)));
    known
        .map(|(fabric, exponent)| ExponentBlock {
            fabric: fabric.label.to_string(),
            value: Figure::new(exponent.value, 2),
            sd: exponent.known_sd().and_then(|sd| Figure::new(sd, 2)),
            by_pull: exponent.pull_sd.is_some(),
        })
        .collect()
}

/// `The exponent of knit R2 is 1.15 (SD 0.06), by a strip pull.`
fn exponents_words(all: &[ExponentBlock]) -> Option<String> {
    let said: Vec<String> = all
        .iter()
        .filter_map(|one| {
            let said = words::exponent(one.value.as_ref()?.value, one.sd.as_ref().map(|sd| sd.value));
            let by = if one.by_pull { "by a strip pull" } else { "as stated" };
            Some(format!("The exponent of {} is {said}, {by}.", one.fabric))
        })
        .collect();
    (!said.is_empty()).then(|| said.join(" "))
}

/// Of pieces of several knits the one whose knit is to be pulled is named.
fn of_whose_knit(of: &Of<'_>, said: String) -> String {
    match of.estimated.fall.as_ref().map(|verdict| verdict.of) {
        Some(FallOf::Piece(piece)) if of.outfit.pieces.len() > 1 => {
            let name = of.outfit.pieces.get(piece).map_or("", |worn| worn.piece.label().as_str());
            format!("Pulled from {name}: {}", words::lower_first(&said))
        }
        _ => said,
    }
}

fn sentence(of: &Of<'_>) -> String {
    if !of.estimated.has_fall {
        return "It covers too short a stretch to have a fall of its own.".to_owned();
    }
    fall_words(of.outfit, of.estimated, of.decide).unwrap_or_else(|| {
        "Whether the pressure falls is not known: neither relaxed girths nor readings are there at two marks.".to_owned()
    })
}

fn beside(estimated: &Estimated, pulled: bool) -> Option<BesideBlock> {
    let other = estimated.beside.as_ref()?;
    let fall = &other.fall;
    let judged = || estimated.marks.iter().filter(|mark| mark.judged).map(|mark| mark.landmark);
    let basis: GradientBasis = fall.decided_by;
    let said = fall_sentence(fall, judged().next(), judged().next_back(), None, pulled);
    let contradicts = contradiction(estimated);
    let words = contradicts.clone().unwrap_or(said);
    Some(BesideBlock {
        basis,
        grade: Some(fall.grade),
        chance: fall.chance.and_then(Figure::chance),
        chance_is_bound: fall.by_bound,
        contradicts: contradicts.is_some(),
        words,
    })
}
