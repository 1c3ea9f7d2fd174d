//! Owns what may stand behind a key.

use super::Block;
use crate::quantity::Dimension;

/// The form of a value.
#[derive(Clone, Copy, Debug)]
pub enum Form {
    /// The file's kind, `record/1`.
    Kind,
    /// A label: one line of text, at most 120 columns.
    Label,
    /// A text of any length.
    Prose,
    /// A path of another file, beside this one.
    File,
    /// A number with its unit, or bare under `units:`.
    Quantity(Dimension),
    /// A range of such numbers.
    Range(Dimension),
    /// A bare number.
    Number,
    /// A whole number from the first to the second.
    Whole(u32, u32),
    /// A day, `2026-03-14`.
    Date,
    /// A day, with a local time or without.
    DateTime,
    /// One of these words.
    Word(&'static [&'static str]),
    /// `yes` or `no` (`true` and `false` are taken).
    YesNo,
    /// `yes`, `no` or `unknown`.
    YesNoUnknown,
    /// A landmark, by word or letter.
    Landmark,
    /// Side and limb: `left arm`, `both legs`.
    Limb,
    /// One of two forms.
    Either(&'static Form, &'static Form),
    /// A list of such values.
    List(&'static Form),
    /// One such value, or a list of them.
    OneOrMore(&'static Form),
    /// A block of keys.
    Block(&'static Block),
    /// A list of such blocks.
    Blocks(&'static Block),
    /// A block whose keys are landmarks.
    ByLandmark(&'static Form),
    /// A block whose keys are the file's own words, as group names or lengths.
    ByName(&'static Form),
}

impl Form {
    /// The block of keys that it is or holds.
    pub fn block(&self) -> Option<&'static Block> {
        match self {
            Self::Block(block) | Self::Blocks(block) => Some(block),
            Self::List(of) | Self::OneOrMore(of) => of.block(),
            Self::Either(one, other) => one.block().or_else(|| other.block()),
            _ => None,
        }
    }

    /// The form of a list's items, if it may be a list.
    pub fn item(&self) -> Option<Form> {
        match self {
            Self::Blocks(block) => Some(Self::Block(block)),
            Self::List(of) | Self::OneOrMore(of) => Some(**of),
            Self::Either(one, other) => one.item().or_else(|| other.item()),
            _ => None,
        }
    }

    /// The form behind each key of an open block.
    pub fn named(&self) -> Option<&'static Form> {
        match self {
            Self::ByLandmark(of) | Self::ByName(of) => Some(of),
            Self::Either(one, other) => one.named().or_else(|| other.named()),
            _ => None,
        }
    }
}
