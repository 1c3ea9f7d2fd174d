//! Owns the text of a garment file, for garments that were worked out here.

use std::fmt::Write as _;

use super::write_fabric::{plain, quoted};
use super::{Chart, Claim, Garment};
use crate::anatomy::Landmark;

/// The garment as a `garment/1` file whose fabric stands in the file `fabric`.
pub fn garment_file(garment: &Garment, fabric: &str) -> String {
    let mut text = String::from("tapeline: garment/1\n");
    let _ = writeln!(text, "label: {}", quoted(&garment.label));
    let _ = writeln!(text, "limb: {}", garment.limb.name());
    if let Some(style) = &garment.style {
        let _ = writeln!(text, "style: {}", quoted(style));
    }
    let _ = writeln!(text, "from: {}\nto: {}", garment.from.name(), garment.to.name());
    if let Some(Claim { scheme, class }) = &garment.claim {
        let _ = writeln!(text, "scheme: {}\nclass: {}", scheme.id, quoted(class));
    }
    if let Some(materials) = &garment.materials {
        let list: Vec<String> = materials.iter().map(|one| quoted(one)).collect();
        let _ = writeln!(text, "materials: [{}]", list.join(", "));
    }
    if let Some(hand_part) = garment.hand_part {
        let _ = writeln!(text, "hand_part: {}", if hand_part { "yes" } else { "no" });
    }
    let _ = writeln!(text, "fabric: {}\nlayers: {}", quoted(fabric), garment.layers);
    text.push_str("relaxed:\n");
    for (landmark, relaxed) in &garment.relaxed {
        let _ = writeln!(text, "  {}: {} cm", landmark.name(), plain(relaxed.girth.cm()));
    }
    text
}

/// A size of a chart as a `garment/1` file to fill in: flat widths that the chart knows stand in it, those
/// of `landmarks` wait for the ruler. Under its label the file is that size again.
pub fn garment_to_measure(
    chart: &Chart,
    printed: &str,
    size: usize,
    landmarks: &[Landmark],
) -> Option<String> {
    let size = chart.sizes.get(size)?;
    let mut text = String::from("tapeline: garment/1\n");
    let _ = writeln!(text, "label: {}", quoted(&format!("{printed}, size {}", size.label)));
    let _ = writeln!(text, "limb: {}", chart.limb.name());
    let _ = writeln!(text, "from: {}\nto: {}", chart.from.name(), chart.to.name());
    text.push_str("units: {length: cm}\nflat_width:   # laid flat without a pull, cm; two widths of one mark as [5.7, 5.8]\n");
    let all = Landmark::of(chart.limb).iter().copied();
    for landmark in all.filter(|one| landmarks.contains(one) || size.relaxed_at(*one).is_some()) {
        let known = size.relaxed_at(landmark).map(|known| plain(known.girth.cm() / 2.0));
        let _ = writeln!(text, "  {}: {}", landmark.name(), known.unwrap_or_default());
    }
    Some(text)
}
