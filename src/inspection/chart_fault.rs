//! Owns one fault of a chart and the sentence for it.

use crate::anatomy::Landmark;
use crate::garment::Chart;
use crate::gradient::Grade;
use crate::words;

/// A fault of a chart; sizes by their place.
#[derive(Clone, Debug, PartialEq)]
pub struct ChartFault {
    /// The size, or the smaller of two neighbours; none = the whole chart.
    pub size: Option<usize>,
    /// The larger of two neighbours; none where one size alone is at fault.
    pub next: Option<usize>,
    /// The measure; none = the size as a whole.
    pub landmark: Option<Landmark>,
    /// What is wrong.
    pub kind: FaultKind,
}

/// What is wrong.
#[derive(Clone, Debug, PartialEq)]
pub enum FaultKind {
    /// Limbs between this size and the next fall through: width, tenths of a millimetre (derived).
    Gap(i64),
    /// Limbs are taken by this size and the next: width, tenths of a millimetre, and whether it is more than half
    /// of the narrower range (house rule).
    Overlap(i64, bool),
    /// The next size is smaller here (derived).
    OutOfOrder,
    /// The range is narrower than what one tape value tells: its width, tenths of a millimetre (house rule).
    Narrow(i64),
    /// The range is wider than 40 % of its middle (house rule): its width, tenths of a millimetre.
    Wide(i64),
    /// From this size to the next it grows by another step than between most: both, tenths of a millimetre
    /// (house rule).
    StepJump {
        /// From this size to the next.
        step: i64,
        /// Between most sizes.
        usual: i64,
    },
    /// The middle of the range is no girth of an adult: a slip of the unit or a digit (plausible bands).
    Implausible,
    /// The relaxed girth is not below the range (derived: the garment would not touch the limb).
    RelaxedNotBelow,
    /// On a limb in the middle of its ranges the pressure rises toward the trunk.
    Reversed(Grade),
    /// On a limb in the middle of its ranges the reference lies outside the claimed class: the pressure, mmHg.
    OffClass(f64),
    /// The chart states one girth only (house rule: it takes limbs that it cannot know).
    OneGirth,
}

impl FaultKind {
    /// Its id.
    pub fn id(&self) -> &'static str {
        match self {
            Self::Gap(_) => "gap",
            Self::Overlap(..) => "overlap",
            Self::OutOfOrder => "out-of-order",
            Self::Narrow(_) => "narrow-range",
            Self::Wide(_) => "wide-range",
            Self::StepJump { .. } => "step-jump",
            Self::Implausible => "implausible-range",
            Self::RelaxedNotBelow => "relaxed-not-below",
            Self::Reversed(_) => "reversed-in-the-middle",
            Self::OffClass(_) => "off-class-in-the-middle",
            Self::OneGirth => "one-girth",
        }
    }

    /// Whether it is only worth knowing: an overlap of up to half a range, as leaflets have it.
    pub fn is_remark(&self) -> bool {
        matches!(self, Self::Overlap(_, false))
    }
}

impl ChartFault {
    /// The sentence for it.
    pub fn sentence(&self, chart: &Chart) -> String {
        let name = |size: Option<usize>| {
            size.and_then(|size| chart.sizes.get(size))
                .map_or_else(String::new, |size| format!("size {}", size.label))
        };
        let this = name(self.size);
        let next = name(self.next);
        let at = self.landmark.map(words::at).unwrap_or_default();
        match &self.kind {
            FaultKind::Gap(width) => {
                format!("A gap of {} between {this} and {next} {at}.", words::cm(*width))
            }
            FaultKind::Overlap(width, _) => {
                format!("An overlap of {} of {this} and {next} {at}.", words::cm(*width))
            }
            FaultKind::OutOfOrder => {
                format!("{} is smaller than {this} before it {at}; sizes stand small to large.", upper(&next))
            }
            FaultKind::Narrow(width) => format!(
                "{} takes only {} {at}: less than one tape value tells.",
                upper(&this),
                words::cm(*width)
            ),
            FaultKind::Wide(width) => {
                format!(
                    "{} takes {} {at}: limbs that one garment hardly serves alike.",
                    upper(&this),
                    words::cm(*width)
                )
            }
            FaultKind::StepJump { step, usual } => format!(
                "From {this} to {next} it grows by {} {at}, between most sizes by {}.",
                words::cm(*step),
                words::cm(*usual)
            ),
            FaultKind::Implausible => {
                format!("The range of {this} {at} is no girth of an adult; look at its unit and digits.")
            }
            FaultKind::RelaxedNotBelow => {
                format!(
                    "The relaxed girth of {this} {at} is not below its range: it would not touch every limb it takes."
                )
            }
            FaultKind::Reversed(grade) => format!(
                "On a limb in the middle of {this} the pressure rises toward the trunk ({}).",
                grade.word()
            ),
            FaultKind::OffClass(mmhg) => format!(
                "On a limb in the middle of {this} it presses {} {at}, outside the class that the chart claims.",
                words::mmhg(*mmhg)
            ),
            FaultKind::OneGirth => {
                "The chart states one girth only; it takes limbs that it cannot know.".to_owned()
            }
        }
    }
}

fn upper(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
