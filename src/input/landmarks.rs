//! Owns what is said of a text that is no landmark, the same in every file kind.

use super::suggest::nearest_word;
use crate::anatomy::{Landmark, Limb, meant};

/// What to say of a text that is no landmark of `limb`: the landmark meant, where it can be told.
pub fn landmark_fault(limb: Limb, text: &str) -> String {
    let names = || Landmark::of(limb).iter().map(|one| one.name());
    let article = if limb == Limb::Arm { "an" } else { "a" };
    if let Some(other) = Landmark::parse_word(text) {
        return format!(
            "`{text}` is a landmark of the {}; this is {article} {}: {}",
            other.limb().name(),
            limb.name(),
            names().collect::<Vec<_>>().join(", ")
        );
    }
    let letter = Landmark::of(limb).iter().find(|one| {
        one.letter().eq_ignore_ascii_case(text)
            || one.name().replace('-', " ").eq_ignore_ascii_case(text)
            || one.name().replace('-', "_").eq_ignore_ascii_case(text)
            || one.name().eq_ignore_ascii_case(text)
    });
    let near = match (letter, meant(limb, text)) {
        (Some(one), _) | (None, [one]) => Some(one.name().to_owned()),
        (None, [one, other]) => Some(format!("{}` or `{}", one.name(), other.name())),
        _ => nearest_word(text, names()).map(str::to_owned),
    };
    match near {
        Some(near) => format!("`{text}` is no landmark of the {}; did you mean `{near}`?", limb.name()),
        None => format!(
            "`{text}` is no landmark of the {}; accepted: {}",
            limb.name(),
            Landmark::of(limb)
                .iter()
                .map(|one| format!("{} ({})", one.name(), one.letter()))
                .collect::<Vec<_>>()
                .join(", ")
        ),
    }
}
