//! Owns the text of a garment file, for garments that were worked out here.

use std::fmt::Write as _;

use super::write_fabric::{plain, quoted};
use super::{Claim, Garment};

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
