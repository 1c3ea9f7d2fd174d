//! Owns the numbers of the house: which there are, their units, their values.

use super::Basis;

/// How a number is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Written {
    /// A length; held in cm.
    Length,
    /// A pressure; held in mmHg.
    Pressure,
    /// A share, written in %; held as a fraction.
    Share,
    /// Calendar months.
    Months,
    /// A plain number.
    Plain,
}

macro_rules! numbers {
    ($($variant:ident $id:literal $written:ident $doc:literal,)+) => {
        /// A number that the rules of computation use.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum NumberId { $(#[doc = $doc] $variant,)+ }

        impl NumberId {
            /// Every number.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)+];

            /// Its id in files.
            pub fn id(self) -> &'static str {
                match self { $(Self::$variant => $id,)+ }
            }

            /// How it is written.
            pub fn written(self) -> Written {
                match self { $(Self::$variant => Written::$written,)+ }
            }
        }
    };
}

numbers! {
    TapeSd "tape-sd" Length "SD of one tape reading, cm.",
    RelaxedSd "relaxed-sd" Length "SD of a relaxed girth, cm, unless the fabric states its own.",
    TensionSd "tension-sd" Share "Relative SD of the fabric tension, unless the fabric states its own.",
    ReadingSd "reading-sd" Pressure "SD of one sensor reading, mmHg, unless stated.",
    ReadingGap "reading-gap" Length "Two readings of a mark may differ by this, cm.",
    EdgeMargin "edge-margin" Length "Room below which a girth counts as at the edge, cm.",
    PickMiss "pick-miss" Length "Between two sizes, the most that a picked one may miss, cm.",
    PairDistance "pair-distance" Length "Least distance of two marks that are compared in full, cm.",
    RiseCertain "rise-certain" Plain "Chance from which a rise is called certain.",
    RiseLikely "rise-likely" Plain "Chance above which a rise is called likely.",
    RisePossible "rise-possible" Plain "Chance from which a rise is called possible.",
    RiseRemoves "rise-removes" Pressure "A certain rise of this much takes a size out, mmHg.",
    StretchExponentLow "stretch-exponent-low" Plain "Lower exponent of tension against stretch.",
    StretchExponentHigh "stretch-exponent-high" Plain "Higher exponent of tension against stretch.",
    PressureLimit "pressure-limit" Pressure "Estimate above which a mark is reviewed, mmHg.",
    ClassChance "class-chance" Plain "Chance of the claimed class below which care is asked for.",
    RatioChance "ratio-chance" Plain "Chance of a ratio outside its limits from which care is asked for.",
    InsideChance "inside-chance" Plain "Inside probability below which care is asked for.",
    BandTolerance "band-tolerance" Share "How far the reference may lie outside a wanted band, as a share.",
    SlopeCare "slope-care" Plain "Slope of the girth along the limb from which care is asked for, cm per cm.",
    SlopeStrong "slope-strong" Plain "Slope that is said strongly, cm per cm.",
    GirthAgeCare "girth-age-care" Months "Age of the girths over which care is asked for.",
    GirthAgeReview "girth-age-review" Months "Age of the girths over which they are reviewed.",
    ScreeningAgeCare "screening-age-care" Months "Age of the answers over which care is asked for.",
    ArterialAgeCare "arterial-age-care" Months "Age of arterial values over which care is asked for.",
    NoAbpiTarget "no-abpi-target" Pressure "Target that a leg without an index may have, mmHg.",
    PreviousChange "previous-change" Share "Change of a girth since the last visit that is asked about.",
    ThinnerSide "thinner-side" Share "How much thinner than the other limb the affected one may be, as a share.",
    WeightChange "weight-change" Share "Change of weight that asks for measuring again.",
    SizesApart "sizes-apart" Plain "Marks that ask for sizes this far apart ask for care.",
    LayersLow "layers-low" Plain "Two layers in vivo, share of their sum, low.",
    LayersHigh "layers-high" Plain "Two layers in vivo, share of their sum, high.",
    SensorBias "sensor-bias" Pressure "Estimate minus sensor, mean, mmHg.",
    SensorLow "sensor-low" Pressure "Estimate minus sensor, low end of 95 %, mmHg.",
    SensorHigh "sensor-high" Pressure "Estimate minus sensor, high end of 95 %, mmHg.",
}

impl NumberId {
    /// Whether it has a sign: what an estimate misses a sensor by.
    pub(super) fn may_be_negative(self) -> bool {
        matches!(self, Self::SensorBias | Self::SensorLow | Self::SensorHigh)
    }

    /// Whether it is a chance, from 0 to 1.
    pub(super) fn is_chance(self) -> bool {
        matches!(
            self,
            Self::RiseCertain
                | Self::RiseLikely
                | Self::RisePossible
                | Self::ClassChance
                | Self::RatioChance
                | Self::InsideChance
        )
    }
}

/// One number with its basis.
#[derive(Clone, Debug)]
pub struct Number {
    /// Which.
    pub id: NumberId,
    /// Its value in the unit that [`NumberId::written`] names.
    pub value: f64,
    /// As the file writes it.
    pub text: String,
    /// What it rests on.
    pub basis: Basis,
    /// Why it is so, or where it was read.
    pub why: String,
}
