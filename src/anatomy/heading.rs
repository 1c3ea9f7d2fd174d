//! Owns how a landmark may stand in the header of a table: in any case, with blanks for hyphens, with `the`.

use super::{Landmark, Limb};

impl Landmark {
    /// Reads a heading's landmark: `Ankle`, `below knee`, `Below the knee`, `UPPER_ARM`, `c1`.
    pub fn of_heading(limb: Limb, text: &str) -> Option<Self> {
        let word = plain(text);
        let of = Self::of(limb).iter().copied();
        of.clone()
            .find(|one| one.name() == word)
            .or_else(|| of.clone().find(|one| one.letter().eq_ignore_ascii_case(&word)))
    }

    /// Reads a heading's word of either limb; a letter stands for a mark of each and is none.
    pub fn word_of_heading(text: &str) -> Option<Self> {
        let word = plain(text);
        [Limb::Arm, Limb::Leg].into_iter().flat_map(Self::of).copied().find(|one| one.name() == word)
    }
}

/// `Below the Knee` as `below-knee`.
fn plain(text: &str) -> String {
    let words = text.to_lowercase();
    let words = words.split(|c: char| c.is_whitespace() || c == '_' || c == '-');
    words.filter(|word| !word.is_empty() && *word != "the").collect::<Vec<_>>().join("-")
}
