//! Owns the pressure along the limb in words, and its drawing.

use super::subject::Subject;
use super::wording::sentence;
use super::{Block, plot};

/// The words and the drawing.
pub(super) fn fall(subject: Subject<'_>) -> Vec<Block> {
    let mut blocks = vec![Block::heading("Pressure along the limb")];
    if !subject.caution().is_empty() {
        blocks.push(Block::strong(subject.caution().trim()));
    }
    blocks.push(Block::Keys(keys(subject)));
    blocks.extend(plot::plot(subject).map(Block::Figure));
    blocks
}

fn keys(subject: Subject<'_>) -> Vec<(String, String)> {
    let mut keys = Vec::new();
    let mut key = |name: &str, value: String| keys.push((name.to_owned(), value));
    let Some(graduation) = subject.graduation else {
        key("Toward the trunk", "Not judged: no size is shown.".to_owned());
        return keys;
    };
    key("Toward the trunk", sentence(&graduation.words));
    key("Basis", basis(graduation.basis).to_owned());
    let marks: Vec<&str> = graduation.pairs.iter().map(|pair| pair.words.as_str()).collect();
    if !marks.is_empty() {
        key("Step by step", sentence(&marks.join("; ")));
    }
    if let Some(ends) = &graduation.end_to_end {
        key("End to end", sentence(&ends.words));
    }
    let shares: Vec<String> = graduation.ratios.iter().filter_map(share).collect();
    if !shares.is_empty() {
        key("Shares", shares.join(" "));
    }
    if let Some(pressure) = subject.pressure {
        if let Some(words) = reference(pressure) {
            key("Reference", words);
        }
        if let Some(edge) = &pressure.top_edge
            && let (Some(flat), Some(folded)) = (&edge.pressure_mmhg, &edge.folded_mmhg)
        {
            let (at, flat, folded) = (spoken(edge.landmark), &flat.text, &folded.text);
            key(
                "Top edge",
                format!("{flat} mmHg at the {at}; folded over once about {folded} mmHg. It is never folded."),
            );
        }
    }
    keys
}

fn share(ratio: &crate::report::Ratio) -> Option<String> {
    let (percent, inside) = (ratio.percent.as_ref()?, ratio.inside?);
    let limits = match (&ratio.low, &ratio.high) {
        (Some(low), Some(high)) => format!("{} to {} %", low.text, high.text),
        (Some(low), None) => format!("at least {} %", low.text),
        (None, Some(high)) => format!("at most {} %", high.text),
        (None, None) => return None,
    };
    let (at, of) = (spoken(ratio.landmark), spoken(ratio.of));
    let inside = if inside { "within" } else { "outside" };
    Some(format!("At the {at} {} % of the {of}, {inside} the scheme\u{2019}s {limits}.", percent.text))
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
        Some("fabric") => "The fabric curve, the relaxed girths and the tape.",
        Some("stretch") => {
            "Stretch alone, from relaxed girths or flat widths and the tape; the knit and its layers are taken to be the same all along, and no pressure is estimated."
        }
        Some("readings") => "Sensor readings under the garment.",
        _ => "None yet; flat widths of the garment, its fabric curve or sensor readings would give one.",
    }
}

/// `upper arm` from `upper-arm`.
pub(super) fn spoken(landmark: &str) -> String {
    landmark.replace('-', " ")
}
