//! Owns the pressure along the limb in words, and its drawing.

use super::subject::Subject;
use super::wording::sentence;
use super::{Block, plot};

/// The words and the drawing.
pub(super) fn fall(subject: Subject<'_>) -> Vec<Block> {
    let mut blocks = vec![Block::heading("Pressure along the limb")];
    let mut words = Vec::new();
    if let Some(graduation) = subject.graduation {
        words.push(format!("Toward the trunk: {}", sentence(&graduation.words)));
        words.push(basis(graduation.basis).to_owned());
        let marks: Vec<&str> = graduation.pairs.iter().map(|pair| pair.words.as_str()).collect();
        if !marks.is_empty() {
            words.push(format!("Judged: {}.", marks.join("; ")));
        }
        if let Some(ends) = &graduation.end_to_end {
            words.push(format!("End to end: {}.", ends.words));
        }
        for ratio in &graduation.ratios {
            if let (Some(percent), Some(inside)) = (&ratio.percent, ratio.inside) {
                let limits = match (&ratio.low, &ratio.high) {
                    (Some(low), Some(high)) => format!("{} to {} %", low.text, high.text),
                    (Some(low), None) => format!("at least {} %", low.text),
                    (None, Some(high)) => format!("at most {} %", high.text),
                    (None, None) => continue,
                };
                let (at, of) = (spoken(ratio.landmark), spoken(ratio.of));
                let inside = if inside { "within" } else { "outside" };
                words.push(format!(
                    "Share at the {at}: {} % of the {of}, {inside} the scheme\u{2019}s {limits}.",
                    percent.text
                ));
            }
        }
    } else {
        words.push("Not judged: no size is shown.".to_owned());
    }
    if let Some(pressure) = subject.pressure {
        words.extend(reference(pressure));
        if let Some(edge) = &pressure.top_edge
            && let (Some(flat), Some(folded)) = (&edge.pressure_mmhg, &edge.folded_mmhg)
        {
            words.push(format!(
                "Top edge at the {}: {} mmHg; folded over once it would press about {} mmHg. The top edge is never folded.",
                spoken(edge.landmark), flat.text, folded.text
            ));
        }
    }
    if !subject.caution().is_empty() {
        blocks.push(Block::strong(subject.caution().trim()));
    }
    blocks.push(Block::text(words.join(" ")));
    blocks.extend(plot::plot(subject).map(Block::Figure));
    blocks
}

fn reference(pressure: &crate::report::Pressure) -> Option<String> {
    let reference = &pressure.reference;
    let estimate = reference.pressure_mmhg.as_ref()?;
    let scheme = reference.scheme_label.as_deref().map(|label| format!(" of {label}")).unwrap_or_default();
    let found = match reference.class.as_deref() {
        Some(class) if class.chars().all(|c| c.is_ascii_digit()) => format!(", class {class}{scheme}"),
        Some(place) => format!(", {place}{scheme}"),
        None => String::new(),
    };
    let chance = match (&reference.claimed_class, &reference.claimed_probability) {
        (Some(class), Some(chance)) => format!("; chance of the claimed class {class}: {}", chance.text),
        _ => String::new(),
    };
    Some(format!("At the {} about {} mmHg{found}{chance}.", spoken(reference.landmark), estimate.text))
}

fn basis(basis: Option<&str>) -> &'static str {
    match basis {
        Some("fabric") => "Basis: the fabric curve, the relaxed girths and the tape.",
        Some("stretch") => {
            "Basis: stretch alone, from relaxed girths or flat widths and the tape; the knit and its layers are taken to be the same all along, and no pressure is estimated."
        }
        Some("readings") => "Basis: sensor readings under the garment.",
        _ => {
            "Basis: none yet; flat widths of the garment, its fabric curve or sensor readings would give one."
        }
    }
}

/// `upper arm` from `upper-arm`.
pub(super) fn spoken(landmark: &str) -> String {
    landmark.replace('-', " ")
}
