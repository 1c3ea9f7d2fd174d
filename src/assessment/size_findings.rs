//! Owns which findings hold for a garment on a limb: a size of a chart, or a garment file. One path for both.

use super::fall_gap::{Asked, decide_words, fall_gap, unheld_words};
use super::held_findings::{high, off_band, pieces_off_band, reference_words};
use super::reading_findings::{differ, of_readings};
use super::wanted::{WantedPressure, claim_printed};
use crate::anatomy::Landmark;
use crate::estimate::{Estimated, FallOf, OnLimb};
use crate::finding::{self, Finding, Place, fall_sentence};
use crate::garment::{Claim, ClassPlace, Fabric, Outfit, Piece};
use crate::gradient::{Decide, Fall, Grade};
use crate::record::Reading;
use crate::rules::{NumberId, Rules, Severity};
use crate::words;

/// What is asked about.
pub(super) struct Garments<'a> {
    /// The limb.
    pub on: OnLimb<'a>,
    /// What is worn.
    pub outfit: &'a Outfit,
    /// Its estimate.
    pub estimated: &'a Estimated,
    /// What would decide its fall.
    pub decide: &'a [Decide],
    /// The sensor readings that belong to it.
    pub readings: &'a [&'a Reading],
    /// What was prescribed.
    pub wanted: Option<&'a WantedPressure>,
    /// The garment in words: `size 3 of sleeve chart A`.
    pub name: &'a str,
    /// Whether it is a size that the clinic may not have yet.
    pub to_obtain: bool,
}

/// Every finding of a garment's estimate.
pub(super) fn of_estimate(what: &Garments<'_>, place: Place, rules: &Rules) -> Vec<Finding> {
    let mut found = Vec::new();
    found.extend(rise(what, place));
    found.extend(no_contact(what.estimated, place));
    found.extend(beyond(what, place));
    found.extend(high(what.estimated, place, rules));
    found.extend(off_band(what, place, rules));
    found.extend(pieces_off_band(what, place, rules));
    found.extend(class(what, place, rules, &found));
    found.extend(residual(what.estimated, place, what.outfit.claim.as_ref()));
    found.extend(top_edge(what.estimated, place, rules));
    found.extend(of_readings(what, place));
    found.extend(pieces(what, place));
    found.extend(exponents(what, place, rules));
    if let Some(gap) = fall_gap(
        &what.on,
        &Asked { name: what.name, outfit: what.outfit, to_obtain: what.to_obtain },
        what.estimated,
        what.decide,
    ) {
        found.push(finding::fall_unknown::fall_unknown(place, &gap.why, &gap.way_on).measures(gap.measure));
    }
    found
}

/// The exponents of untested knits, as the rules have them.
pub fn usual_exponents(rules: &Rules) -> (f64, f64) {
    (rules.number(NumberId::StretchExponentLow), rules.number(NumberId::StretchExponentHigh))
}

/// First and last judged landmark of an estimate.
pub fn ends(estimated: &Estimated) -> (Option<Landmark>, Option<Landmark>) {
    let judged = || estimated.marks.iter().filter(|mark| mark.judged).map(|mark| mark.landmark);
    (judged().next(), judged().next_back())
}

/// The one sentence about the fall of a garment; none where it has none.
pub fn fall_words(outfit: &Outfit, estimated: &Estimated, decide: &[Decide]) -> Option<String> {
    let verdict = estimated.fall.as_ref()?;
    if let Some(unheld) = &verdict.unheld {
        return Some(unheld_words(outfit, verdict, unheld));
    }
    let (first, last) = ends(estimated);
    let next = decide.first().map(|one| (decide_words(outfit, one), one.chance));
    let mut sentence = fall_sentence(&verdict.fall, first, last, next, outfit.is_pulled());
    if !verdict.judged && verdict.grade() > Grade::Undecided {
        // What is missing is told beside it: the whole is not known.
        sentence = format!("As far as it is known, {}", words::lower_first(&sentence));
    }
    // Where a piece by itself rises as surely as all together, it is named.
    let alone = |of: &FallOf, fall: &Fall| match of {
        FallOf::Piece(piece) if fall.grade == verdict.grade() => outfit.pieces.get(*piece),
        _ => None,
    };
    Some(match verdict.of {
        FallOf::Piece(piece) if outfit.pieces.len() > 1 => {
            let label = outfit.pieces.get(piece).map_or("", |worn| worn.piece.label().as_str());
            format!("{label} by itself: {}", words::lower_first(&sentence))
        }
        FallOf::Whole { .. } if verdict.grade() <= Grade::Likely => {
            let names: Vec<String> = verdict
                .all
                .iter()
                .filter_map(|(of, fall)| Some(alone(of, fall)?.piece.label().to_string()))
                .collect();
            if names.is_empty() {
                sentence
            } else {
                let so = if names.len() == 1 { "So does" } else { "So do" };
                format!("{sentence} {so} {} by itself.", words::list(&names))
            }
        }
        _ => sentence,
    })
}

fn rise(what: &Garments<'_>, place: Place) -> Option<Finding> {
    let estimated = what.estimated;
    let grade = estimated.grade();
    let sentence = fall_words(what.outfit, estimated, &[]).unwrap_or_default();
    if let Some(one) = differ(what, place, &sentence) {
        return Some(one);
    }
    let at = estimated.fall.as_ref().and_then(|verdict| verdict.fall.place);
    let place = at.map_or(place, |landmark| place.at(landmark));
    let severity = match grade? {
        Grade::Certain | Grade::Likely => Severity::ClearFirst,
        Grade::Possible => Severity::Caution,
        Grade::Undecided | Grade::None => return None,
    };
    Some(finding::rise::rise(place, severity, &sentence))
}

fn no_contact(estimated: &Estimated, place: Place) -> Option<Finding> {
    let marks = estimated.no_contact();
    let names: Vec<String> = marks.iter().map(|one| words::at(*one)).collect();
    let first = marks.first()?;
    Some(finding::no_contact::no_contact(place.at(*first), &names))
}

fn fabric_of(outfit: &Outfit) -> Option<&Fabric> {
    outfit.garments().find_map(|garment| garment.fabric.as_ref())
}

fn beyond(what: &Garments<'_>, place: Place) -> Option<Finding> {
    let marks: Vec<(Landmark, f64)> =
        what.estimated.marks.iter().filter_map(|mark| Some((mark.landmark, mark.bound_mmhg()?))).collect();
    let first = marks.first()?.0;
    let names: Vec<String> = marks
        .iter()
        .map(|(mark, bound)| format!("at least {} {}", words::mmhg(*bound), words::at(*mark)))
        .collect();
    Some(finding::beyond_tested::beyond_tested(place.at(first), &names, &short_curves(what)))
}

/// The fabrics that end too early, each with its last tested stretch in per cent and, where several are worn, whose
/// it is.
fn short_curves(what: &Garments<'_>) -> Vec<(Option<String>, f64)> {
    let mut found: Vec<(Option<String>, f64)> = Vec::new();
    let several = what.outfit.fabrics().len() > 1;
    for mark in &what.estimated.marks {
        for at in mark.pieces.iter().filter(|at| at.estimate.is_some_and(|one| one.bound().is_some())) {
            let worn = what.outfit.pieces.get(at.piece);
            let Some(Piece::Garment(garment)) = worn.map(|worn| &worn.piece) else { continue };
            let Some(fabric) = garment.fabric_at(mark.landmark) else { continue };
            let whose = if what.outfit.pieces.len() > 1 { &garment.label } else { &fabric.label };
            let one = (several.then(|| whose.to_string()), fabric.last_stretch() * 100.0);
            if !found.contains(&one) {
                found.push(one);
            }
        }
    }
    found
}

fn class(what: &Garments<'_>, place: Place, rules: &Rules, before: &[Finding]) -> Option<Finding> {
    if before.iter().any(|one| one.id.is(&finding::off_band::ENTRY)) {
        return None;
    }
    let claim = what.outfit.claim.as_ref()?;
    let reference = &what.estimated.reference;
    let chance = reference.claimed_chance?;
    let (_, _, text) = reference_words(what.estimated)?;
    let found = reference.class.as_ref()?;
    let place = place.at(reference.landmark);
    let where_it_lies = class_place(found);
    if chance < rules.number(NumberId::ClassChance) {
        return Some(finding::class_missed::class_missed(
            place,
            &text,
            &claim_printed(claim),
            &where_it_lies,
            chance,
        ));
    }
    let same = matches!(found, ClassPlace::In(class) if *class == claim.class);
    (!same).then(|| finding::class_off::class_off(place, &text, &claim_printed(claim), &where_it_lies))
}

/// `in class 2`, `between classes 1 and 2`, `below class 1`, `above class 3`.
pub fn class_place(found: &ClassPlace) -> String {
    match found {
        ClassPlace::In(class) => format!("in class {class}"),
        ClassPlace::Between(low, high) => format!("between classes {low} and {high}"),
        ClassPlace::Below(class) => format!("below class {class}"),
        ClassPlace::Above(class) => format!("above class {class}"),
    }
}

fn residual(estimated: &Estimated, place: Place, claim: Option<&Claim>) -> Vec<Finding> {
    estimated
        .residual
        .iter()
        .filter(|one| one.inside == Some(false))
        .filter_map(|one| {
            let limit = one.limit.as_ref()?;
            let range = match (limit.low, limit.high) {
                (Some(low), Some(high)) => format!("{} to {}", words::trimmed(low, 1), words::percent(high)),
                (Some(low), None) => format!("at least {}", words::percent(low)),
                (None, Some(high)) => format!("at most {}", words::percent(high)),
                (None, None) => return None,
            };
            let what = format!(
                "{} of {} {}; {} asks for {range}",
                words::percent(one.percent?),
                words::the(one.of),
                words::at(one.landmark),
                claim.map_or("the scheme", |claim| claim.scheme.label.as_str()),
            );
            let severity = if one.surely_outside { Severity::Caution } else { Severity::Note };
            let found = finding::residual::residual(place.at(one.landmark), severity, &what);
            Some(found.basis(limit.basis, limit.source.clone()))
        })
        .collect()
}

fn top_edge(estimated: &Estimated, place: Place, rules: &Rules) -> Vec<Finding> {
    estimated
        .top_edges
        .iter()
        .filter_map(|edge| {
            let chance = edge.chance?;
            if chance <= rules.number(NumberId::RiseLikely) {
                return None;
            }
            let severity = Severity::ClearFirst;
            let bound = edge.edge.is_some_and(|one| one.bound().is_some());
            let least = if bound { "at least " } else { "" };
            let said = edge.edge_mmhg().map_or_else(
                || "more by its stretch".to_owned(),
                |mmhg| format!("{least}{}", words::mmhg(mmhg)),
            );
            let below = edge.garment_mmhg().map_or_else(|| "less".to_owned(), words::mmhg);
            Some(finding::top_edge::top_edge(
                place.at(edge.landmark),
                severity,
                (&said, &below),
                (chance, bound),
            ))
        })
        .collect()
}

fn pieces(what: &Garments<'_>, place: Place) -> Vec<Finding> {
    let mut found = Vec::new();
    if what.outfit.pieces.iter().any(|worn| matches!(worn.piece, Piece::Wrap(_))) {
        found.push(finding::wrap_shortfall::wrap_shortfall(place));
    }
    if fabric_of(what.outfit).is_some_and(|fabric| fabric.has_curve() && fabric.branch.overestimates()) {
        found.push(finding::loading_branch::loading_branch(place));
    }
    if what.outfit.pieces.len() > 1 {
        let names: Vec<String> =
            what.outfit.pieces.iter().map(|worn| worn.piece.label().to_string()).collect();
        let over: Vec<Landmark> = what
            .estimated
            .marks
            .iter()
            .filter(|mark| mark.pieces.len() > 1)
            .map(|mark| mark.landmark)
            .collect();
        if let (Some(first), Some(last)) = (over.first(), over.last()) {
            let over = if first == last {
                words::at(*first)
            } else {
                format!("from {} to {}", words::the(*first), words::the(*last))
            };
            found.push(finding::layers::layers(place, &names, &over));
        }
    }
    found
}

/// Exponents of knits that are asked about.
fn exponents(what: &Garments<'_>, place: Place, rules: &Rules) -> Vec<Finding> {
    let usual = usual_exponents(rules);
    what.outfit
        .fabrics()
        .into_iter()
        .filter_map(|fabric| {
            let exponent = fabric.exponent?;
            let doubt = exponent.doubt(usual)?;
            Some(finding::exponent_doubt::exponent_doubt(place, &fabric.label, exponent, doubt, usual))
        })
        .collect()
}
