//! Owns one probable misreading of the tape or the keyboard: what it would have been, and how near the mended
//! limb lies to the usual one. It is named, never applied.

use super::MarkPlace;
use crate::quantity::Girth;

/// What may have happened.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum MisreadingKind {
    /// The decimal point is one place off, or millimetres stand for centimetres.
    Point,
    /// The first digit is lost.
    LostDigit,
    /// Inches were typed as centimetres.
    Inches,
    /// Centimetres were taken for inches.
    NotInches,
    /// Two neighbouring digits are swapped.
    Digits,
    /// One digit is another one; told against the last visit alone.
    OtherDigit,
    /// Two neighbouring marks are exchanged.
    Exchanged,
    /// Diameters stand for girths.
    Diameters,
    /// The list runs the other way round.
    Reversed,
}

impl MisreadingKind {
    /// Every kind, with its word for reports.
    pub const WORDS: [(&'static str, Self); 9] = [
        ("decimal-point", Self::Point),
        ("first-digit-lost", Self::LostDigit),
        ("inches", Self::Inches),
        ("not-inches", Self::NotInches),
        ("digits-swapped", Self::Digits),
        ("another-digit", Self::OtherDigit),
        ("marks-exchanged", Self::Exchanged),
        ("diameters", Self::Diameters),
        ("list-reversed", Self::Reversed),
    ];

    /// The word for it.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(_, kind)| *kind == self).map_or("", |(word, _)| word)
    }
}

/// One probable misreading.
#[derive(Clone, Debug)]
pub struct Misreading {
    /// What may have happened.
    pub kind: MisreadingKind,
    /// Whether it would have happened to every girth of the limb.
    pub whole_limb: bool,
    /// The marks it would change, with the girth that would stand there instead.
    pub instead: Vec<(MarkPlace, Girth)>,
    /// Distance of the mended limb from the usual one (and from the last visit, where there is one), in SD of
    /// log girth; 0 where nothing can be compared.
    pub distance: f64,
}
