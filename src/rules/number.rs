//! Owns the numbers of the house: which there are, their units, their sane ranges, their values.
//!
//! Source: every value carries its own basis in the rules file; the sane ranges are house rules: outside
//! them a rules file has to say why, and every report opens with it.

use super::Basis;

/// How a number is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Written {
    /// A length; held in cm.
    Length,
    /// A pressure; held in mmHg.
    Pressure,
    /// A difference of pressures, which may be negative; held in mmHg.
    Signed,
    /// A share, written in %; held as a fraction.
    Share,
    /// A chance, written from 0 to 1.
    Chance,
    /// Calendar months.
    Months,
    /// Days.
    Days,
    /// A plain number.
    Plain,
}

macro_rules! numbers {
    ($($variant:ident $id:literal $written:ident $low:literal, $high:literal, $doc:literal,)+) => {
        /// A number that the rules of computation use.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
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

            /// The range, in its held unit, outside which a rules file has to say why (house rule).
            pub fn sane(self) -> (f64, f64) {
                match self { $(Self::$variant => ($low, $high),)+ }
            }

            /// What it is, in a sentence.
            pub fn meaning(self) -> &'static str {
                match self { $(Self::$variant => $doc,)+ }
            }
        }
    };
}

numbers! {
    TapeSd "tape-sd" Length 0.1, 1.0, "SD of one girth, cm.",
    RelaxedSd "relaxed-sd" Length 0.05, 1.5, "SD of a relaxed girth, cm, unless the garment's file states repeats.",
    TensionSd "tension-sd" Share 0.02, 0.5, "Relative SD of the fabric tension, unless the fabric states its own.",
    WrapSd "wrap-sd" Share 0.05, 0.5, "Relative SD of the pull of a wrap at each mark.",
    ReadingSd "reading-sd" Pressure 0.5, 10.0, "SD of one sensor reading, mmHg, unless stated.",
    HollowSd "hollow-sd" Pressure 2.5, 20.0, "SD of a reading in the hollow beside the ankle bone, mmHg.",
    WornSd "worn-sd" Pressure 1.0, 10.0, "SD between wearers and against a sensor, mmHg.",
    RepeatGap "repeat-gap" Length 0.1, 1.0, "Repeats of a girth further apart than this are said, cm.",
    RepeatLimit "repeat-limit" Length 0.5, 3.0, "Repeats of a girth further apart than this are measured again, cm.",
    LengthGap "length-gap" Length 0.2, 3.0, "A stated length that differs from the positions by more is asked about, cm.",
    PositionGap "position-gap" Length 0.2, 5.0, "Marks of both limbs further apart than this are asked about, cm.",
    EdgeMargin "edge-margin" Length 0.0, 2.0, "Room below which a girth counts as close, cm.",
    PickMiss "pick-miss" Length 0.0, 1.0, "Between two sizes, the most that a picked one may miss, cm.",
    InsideChance "inside-chance" Chance 0.2, 1.0, "Chance of lying inside below which it is said.",
    SameAgain "same-again" Chance 0.5, 1.0, "Chance of the same size again below which the runner-up is said.",
    SizesApart "sizes-apart" Plain 1.0, 5.0, "Marks that ask for sizes this far apart are said.",
    ChartWide "chart-wide" Share 0.1, 0.8, "A range wider than this share of its middle is said.",
    RiseStep "rise-step" Share 0.05, 0.25, "The rise that is looked for, as a share.",
    RiseCertain "rise-certain" Chance 0.8, 0.99, "Graded chance from which a rise is called certain.",
    RiseLikely "rise-likely" Chance 0.3, 0.7, "Graded chance above which a rise is called likely.",
    RisePossible "rise-possible" Chance 0.01, 0.3, "Graded chance from which a rise is called possible.",
    PairBeyondChance "pair-beyond-chance" Chance 0.001, 0.1, "A rise at one pair counts beyond 1 minus this over the steps.",
    FallSure "fall-sure" Chance 0.001, 0.1, "Highest chance of no fall that is still called a fall.",
    EvenFall "even-fall" Share 0.2, 0.6, "How much lower the even fall ends that the graded chance is held against.",
    GradedOdds "graded-odds" Plain 2.0, 30.0, "Odds of the graded chance.",
    RiseRemoves "rise-removes" Pressure 1.0, 10.0, "A certain rise of this much takes a size out, mmHg.",
    StretchExponentLow "stretch-exponent-low" Plain 0.3, 1.0, "Lower exponent of tension against stretch.",
    StretchExponentHigh "stretch-exponent-high" Plain 1.0, 3.0, "Higher exponent of tension against stretch.",
    StripExponent "strip-exponent" Plain 0.02, 0.4, "Half width of the exponent after a strip pull.",
    DecideLeast "decide-least" Chance 0.05, 0.8, "Least chance of deciding that is named.",
    DecideCheaper "decide-cheaper" Chance 0.0, 0.5, "A cheaper way within this of the best goes first.",
    RatioChance "ratio-chance" Chance 0.8, 0.99, "Chance outside a graduation limit from which it is a caution.",
    PressureLimit "pressure-limit" Pressure 30.0, 60.0, "Estimate above which a mark is cleared first, mmHg.",
    PressureLeast "pressure-least" Pressure 1.0, 15.0, "Reference below which a garment hardly presses, mmHg.",
    ClassChance "class-chance" Chance 0.01, 0.5, "Chance of the claimed class below which it is said.",
    BandTolerance "band-tolerance" Share 0.0, 0.2, "How far the reference may lie outside a wanted band, as a share.",
    UnheldLimit "unheld-limit" Pressure 5.0, 20.0, "Pressure without prescription and class above which it is cleared first, mmHg.",
    LayersLow "layers-low" Plain 0.5, 1.0, "Two layers in vivo, share of their sum, low.",
    LayersHigh "layers-high" Plain 0.8, 1.2, "Two layers in vivo, share of their sum, high.",
    SensorBias "sensor-bias" Signed -20.0, 20.0, "Estimate minus sensor, mean, mmHg.",
    SensorLow "sensor-low" Signed -30.0, 10.0, "Estimate minus sensor, low end of 95 %, mmHg.",
    SensorHigh "sensor-high" Signed -10.0, 30.0, "Estimate minus sensor, high end of 95 %, mmHg.",
    NoValueLimit "no-value-limit" Pressure 0.0, 20.0, "Pressure that a leg without any arterial value may have, mmHg.",
    ProtocolCap "protocol-cap" Pressure 0.0, 20.0, "Highest cap that podiatry may write by protocol, mmHg.",
    IndexGap "index-gap" Plain 0.05, 0.3, "Stated index and quotient further apart than this are asked about.",
    SlopeCaution "slope-caution" Plain 0.5, 3.0, "Slope of the girth along the limb that is a caution, cm per cm.",
    SlopeStrong "slope-strong" Plain 1.0, 5.0, "Slope that is said strongly, cm per cm.",
    GirthAgeCaution "girth-age-caution" Months 1.0, 3.0, "Age of the girths over which they are a caution.",
    GirthAgeLimit "girth-age-limit" Months 1.0, 6.0, "Age of the girths over which they are measured again.",
    ArterialAgeCaution "arterial-age-caution" Months 1.0, 6.0, "Age of arterial values over which they are a caution.",
    ArterialAgeLimit "arterial-age-limit" Months 1.0, 12.0, "Age of arterial values over which they pass no more.",
    ClearingValid "clearing-valid" Months 1.0, 6.0, "How long a clearing holds that states no last day.",
    ReOrderAge "re-order-age" Months 1.0, 12.0, "Age of the record that a re-order may rest on.",
    SoonDays "soon-days" Days 1.0, 14.0, "`soon` is today plus this.",
    InfectionRest "infection-rest" Days 14.0, 90.0, "Girths taken sooner after an infection are a caution.",
    WeightChange "weight-change" Share 0.02, 0.1, "Change of weight that asks for measuring again.",
    ThinnerSide "thinner-side" Share 0.01, 0.15, "Mean of ln(other/affected) that points to exchanged sides.",
    VisitChangeSd "visit-change-sd" Plain 1.5, 4.0, "A change of one girth this many SD off the others is asked about.",
    NaturalChange "natural-change" Share 0.005, 0.05, "Natural change of one girth between visits, SD.",
    NeighbourLow "neighbour-low" Plain 0.4, 0.9, "Lowest share of the mean of its neighbours without a question.",
    NeighbourHigh "neighbour-high" Plain 1.1, 2.5, "Highest share of the mean of its neighbours without a question.",
    OtherGirthLow "other-girth-low" Length 5.0, 16.0, "Lowest girth without a question where no survey tells, cm.",
    OtherGirthHigh "other-girth-high" Length 60.0, 120.0, "Highest girth without a question where no survey tells, cm.",
    GirthAskedAbove "girth-asked-above" Length 100.0, 200.0, "Girths above this are asked about, cm.",
    VisitVolumeSd "visit-volume-sd" Share 0.005, 0.04, "Relative SD of a volume between visits.",
    VisitVolumeSdRepeats "visit-volume-sd-repeats" Share 0.003, 0.04, "The same with two repeats at every mark.",
    ReadyLoss "ready-loss" Share 0.005, 0.03, "Loss a week below which a limb counts as settled.",
    ReadyDays "ready-days" Days 7.0, 28.0, "Visits of these last days make the course.",
    ReadyDaysLong "ready-days-long" Days 14.0, 60.0, "The longer course where the shorter holds few visits.",
    ReadyVisits "ready-visits" Plain 3.0, 10.0, "Fewest visits of a course.",
    ReadySpan "ready-span" Days 5.0, 28.0, "Shortest span of a course.",
    EarlyChange "early-change" Share 0.01, 0.1, "Early change of volume, trigger.",
    EarlyChangePublished "early-change-published" Share 0.01, 0.1, "Early change of volume, published trigger.",
    RecheckFrom "recheck-from" Days 1.0, 42.0, "First re-check after a garment is given, soonest.",
    RecheckTo "recheck-to" Days 7.0, 60.0, "First re-check after a garment is given, latest.",
    RecheckLaterFrom "recheck-later-from" Months 1.0, 6.0, "Later re-checks, soonest.",
    RecheckLaterTo "recheck-later-to" Months 1.0, 12.0, "Later re-checks, latest.",
    FirstLook "first-look" Days 1.0, 14.0, "First look after giving where harm could go unnoticed.",
    RenewInTurn "renew-in-turn" Months 1.0, 9.0, "Two garments worn in turn last this long.",
    RenewAlone "renew-alone" Months 1.0, 6.0, "One garment alone lasts this long.",
    RenewChild "renew-child" Months 1.0, 6.0, "A child's garment is looked at again after this.",
    WearDay "wear-day" Plain 4.0, 24.0, "Hours of wear a day that the months of renewal assume.",
    InfectionsAYear "infections-a-year" Plain 1.0, 4.0, "Infections in a year that ask for a medical review.",
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
