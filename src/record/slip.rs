//! Owns one probable slip of the keyboard or the tape: what it would have been, and how near the
//! mended limb lies to the usual one. A slip is named, never applied.

use crate::anatomy::Landmark;
use crate::quantity::Girth;

/// What may have happened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SlipKind {
    /// The decimal point is one place off, or millimetres stand for centimetres.
    Point,
    /// A leading digit is lost.
    LostDigit,
    /// Inches were typed as centimetres.
    Inches,
    /// Centimetres were taken for inches.
    NotInches,
    /// Two neighbouring digits are swapped.
    Digits,
    /// Two neighbouring marks are exchanged.
    Exchanged,
    /// Diameters stand for girths.
    Diameters,
    /// The list runs the other way round.
    Reversed,
}

/// One probable slip.
#[derive(Clone, Debug)]
pub struct Slip {
    /// What may have happened.
    pub kind: SlipKind,
    /// Whether it would have happened to every girth of the limb.
    pub whole_limb: bool,
    /// The marks it would change, with the girth that would stand there instead.
    pub instead: Vec<(Landmark, Girth)>,
    /// Mahalanobis distance of the mended limb from the usual one, in log girth, no unit; 0 where
    /// none of its marks is known there.
    pub distance: f64,
}

impl Slip {
    /// In words: `wrist 16.9 cm (decimal point)`.
    pub fn words(&self) -> String {
        let why = match self.kind {
            SlipKind::Point => "decimal point, or mm for cm",
            SlipKind::LostDigit => "a leading digit lost",
            SlipKind::Inches => "typed in inches",
            SlipKind::NotInches => "cm taken for inches",
            SlipKind::Digits => "digits swapped",
            SlipKind::Exchanged => {
                let names: Vec<String> = self.instead.iter().map(|(mark, _)| mark.spoken()).collect();
                return format!("{} exchanged", names.join(" and "));
            }
            SlipKind::Diameters => "diameters typed for girths",
            SlipKind::Reversed => return "the list of marks the other way round".to_owned(),
        };
        if self.whole_limb {
            return format!("every girth of the limb: {why}");
        }
        let girths: Vec<String> = self
            .instead
            .iter()
            .map(|(mark, girth)| format!("{} {:.1} cm", mark.spoken(), girth.cm()))
            .collect();
        format!("{} ({why})", girths.join(", "))
    }
}
