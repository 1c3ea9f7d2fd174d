//! Owns the fall along the limb in words.

use super::super::subject::{forbids, parts};
use super::super::wording::sentence;
use crate::document::{Block, Entry};
use crate::gradient::GradientBasis;
use crate::report::{GradientBlock, PressureBlock, Report, ResidualBlock};
use crate::words::{self, capital};

/// The fall of each garment shown.
pub(in super::super) fn fall(report: &Report) -> Vec<Block> {
    let all = parts(report);
    let mut blocks = Vec::new();
    for part in
        all.iter().filter(|part| !part.is_far() && (part.gradient.is_some() || part.pressure.is_some()))
    {
        if blocks.is_empty() {
            blocks.push(Block::heading("The fall toward the trunk"));
            if forbids(report) {
                blocks.push(Block::strong("Figures only, do not fit."));
            }
        }
        let keys = fall_entries(part.gradient, part.pressure);
        if all.len() > 1 {
            let garment = part.chart.map(|chart| chart.printed.clone()).unwrap_or_default();
            blocks.push(Block::strong(format!("{}, {garment}", capital(&part.limb.printed))));
        }
        if !keys.is_empty() {
            blocks.push(Block::Keys(keys));
        }
    }
    blocks
}

/// The fall and the reference in words, the same in every form.
pub(in crate::render) fn fall_entries(
    gradient: Option<&GradientBlock>,
    pressure: Option<&PressureBlock>,
) -> Vec<Entry> {
    let mut keys = Vec::new();
    keys.extend(gradient.into_iter().flat_map(of_gradient));
    keys.extend(pressure.into_iter().flat_map(of_pressure));
    keys
}

fn of_gradient(gradient: &GradientBlock) -> Vec<Entry> {
    let mut keys = vec![Entry::new("Toward the trunk", sentence(&gradient.sentence))];
    if let Some(basis) = gradient.basis {
        let exponents = gradient.exponents_words.as_ref().map_or_else(String::new, |one| format!(" {one}"));
        let entry = Entry::new("Basis", format!("{}{exponents}", basis_words(basis, gradient.pulled)));
        // What the other basis says, where both are known.
        keys.push(match &gradient.beside {
            Some(beside) => entry.and(sentence(&beside.words)),
            None => entry,
        });
    }
    let steps: Vec<String> = gradient.decide.iter().map(|one| one.words.clone()).collect();
    if !steps.is_empty() {
        keys.push(Entry::new("What would decide", sentence(&steps.join("; "))));
    }
    if let Some(after) = &gradient.after_strip_pull_words {
        keys.push(Entry::new("After a strip pull", after.clone()));
    }
    let shares: Vec<String> = gradient.residual.iter().filter_map(share).collect();
    if !shares.is_empty() {
        keys.push(Entry::new("Residual pressure", shares.join(" ")));
    }
    keys
}

fn share(one: &ResidualBlock) -> Option<String> {
    let (percent, inside) = (one.percent.as_ref()?, one.inside?);
    let limits = match (one.low, one.high) {
        (Some(low), Some(high)) => format!("{} to {} %", words::plain(low), words::plain(high)),
        (Some(low), None) => format!("at least {} %", words::plain(low)),
        (None, Some(high)) => format!("at most {} %", words::plain(high)),
        (None, None) => return None,
    };
    let inside = if inside { "inside" } else { "outside" };
    Some(format!(
        "{} {} % of the reference, {inside} the scheme\u{2019}s {limits}.",
        capital(&words::at(one.landmark)),
        percent.text
    ))
}

fn of_pressure(pressure: &PressureBlock) -> Vec<Entry> {
    let mut keys = Vec::new();
    let read: Vec<String> = pressure
        .read_only
        .iter()
        .filter_map(|one| {
            Some(format!("{} mmHg {}", one.reading_mmhg.as_ref()?.text, words::at(one.landmark)))
        })
        .collect();
    if !read.is_empty() {
        let said = format!("Read where nothing is estimated: {}.", words::list(&read));
        keys.push(Entry::new("Readings", said));
    }
    let reference = &pressure.reference;
    if let Some(here) = &reference.pressure_mmhg {
        let mut said = format!("About {} mmHg {}", here.text, words::at(reference.landmark));
        if let Some(class) = &reference.class {
            let lead = if class.starts_with(char::is_numeric) { "class " } else { "" };
            said = format!("{said}, {lead}{class}");
        }
        if let Some(scheme) = reference.scheme_name.as_ref().filter(|_| reference.class.is_some()) {
            said = format!("{said} of {scheme}");
        }
        said.push('.');
        if let (Some(class), Some(chance)) = (&reference.claimed_class, &reference.claimed_chance) {
            said = format!("{said} Chance of the class {class} claimed: {}", chance.text);
            if let Some(worn) = &reference.claimed_chance_worn {
                said = format!("{said}; with the spread between wearers {}", worn.text);
            }
            said.push('.');
        }
        if let Some(change) = &reference.stiffness_mmhg_per_cm {
            said = format!("{said} At rest, 1 cm more girth there changes it by {} mmHg.", change.text);
        }
        keys.push(Entry::new("Reference", said));
    }
    if let Some(edge) = &pressure.top_edge
        && let (Some(here), Some(garment)) = (&edge.edge_mmhg, &edge.garment_mmhg)
    {
        keys.push(Entry::new(
            "Band at the top",
            format!(
                "{} {} mmHg {}, the garment there {}{}.",
                words::capital(about(edge.edge_is_bound)),
                here.text,
                words::at(edge.landmark),
                if edge.garment_is_bound { "at least " } else { "" },
                garment.text
            ),
        ));
    }
    if let Some(folded) = &pressure.folded_edge_mmhg {
        let about = about(pressure.marks.last().is_some_and(|mark| mark.bound.is_some()));
        keys.push(Entry::new(
            "A folded edge",
            format!("Would press {about} {} mmHg. It is never folded.", folded.text),
        ));
    }
    if !pressure.notes.is_empty() {
        let notes: Vec<String> = pressure.notes.iter().map(|one| sentence(one)).collect();
        keys.push(Entry::new("Not in the figures", notes.join(" ")));
    }
    keys
}

/// How a figure is led in: a bound is never an estimate.
fn about(is_bound: bool) -> &'static str {
    if is_bound { "at least" } else { "about" }
}

fn basis_words(basis: GradientBasis, pulled: bool) -> &'static str {
    match basis {
        GradientBasis::Fabric if pulled => "The pull of the bandage, its width and overlap, and the tape.",
        GradientBasis::Fabric => "The fabric curve, the relaxed girths and the tape.",
        GradientBasis::Stretch => {
            "Stretch alone, from relaxed girths or flat widths and the tape; the knit and its layers are taken to be the same all along, and no pressure is estimated."
        }
        GradientBasis::Readings => "Sensor readings under the garment.",
    }
}
