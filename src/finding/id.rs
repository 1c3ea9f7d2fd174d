//! Owns the ids of findings.

macro_rules! ids {
    ($($variant:ident $id:literal $doc:literal,)+) => {
        /// What was found. Screening items and arterial limits carry the ids of the rules.
        #[derive(Clone, Debug, PartialEq, Eq)]
        pub enum FindingId {
            $(#[doc = $doc] $variant,)+
            /// A screening item answered yes.
            Item(String),
            /// An arterial value that meets a limit.
            Arterial(String),
        }

        impl FindingId {
            /// Every id that does not come from the rules.
            pub const OWN: &'static [Self] = &[$(Self::$variant,)+];

            /// The id as printed.
            pub fn text(&self) -> &str {
                match self {
                    $(Self::$variant => $id,)+
                    Self::Item(id) | Self::Arterial(id) => id,
                }
            }

            /// What it means, in a line.
            pub fn meaning(&self) -> &'static str {
                match self {
                    $(Self::$variant => $doc,)+
                    Self::Item(_) => "A screening question was answered yes.",
                    Self::Arterial(_) => "An arterial value meets a limit.",
                }
            }
        }
    };
}

ids! {
    ReadingsDiffer "readings-differ" "Two readings of one mark lie too far apart.",
    UnusualGirth "unusual-girth" "A girth is outside the usual adult band.",
    UnusualProportion "unusual-proportion" "Two girths stand in an unusual proportion.",
    GirthChanged "girth-changed" "A girth has changed much since the last record.",
    WeightChanged "weight-changed" "The weight has changed since the last record.",
    SideThinner "side-thinner" "The affected limb is much thinner than the other one.",
    BothAffected "both-affected" "Both limbs are affected, so none is a measure of the other.",
    GirthsOld "girths-old" "The girths were taken some time ago.",
    DatedAhead "dated-ahead" "The record is dated after today.",
    Child "child" "Adult bands do not hold for a child.",
    Pitting "pitting" "The skin pits.",
    ShapeIrregular "shape-irregular" "Folds or a distorted shape ask for made to measure.",
    GirthFalls "girth-falls" "The girth falls toward the trunk.",
    SlopeSteep "slope-steep" "The girth changes fast along the limb.",
    NotAnswered "not-answered" "Questions are not answered, or answered unknown.",
    ScreeningOld "screening-old" "The screening was asked some time ago, or is not dated.",
    ArterialOld "arterial-old" "The arterial values are old, or not dated.",
    NoAbpi "no-abpi" "A leg has no ankle-brachial pressure index.",
    ClinicalInadequate "clinical" "The clinical vascular assessment judged the supply inadequate.",
    ClearedInVain "cleared-in-vain" "A clearance by a role that cannot clear this item.",
    Allergen "allergen" "The garment contains a material the client is allergic to.",
    MaterialsUnknown "materials-unknown" "The client has a material allergy and the garment's materials are not stated.",
    HandPart "hand-part" "The hand is swollen and the garment has no hand part.",
    PrescriptionDiffers "prescription-differs" "The class or pressure offered is not the one prescribed.",
    StyleDiffers "style-differs" "The style offered is not the one prescribed.",
    InsideUnsure "inside-unsure" "By tape error alone the girths may well lie outside the size.",
    SizesApart "sizes-apart" "Marks ask for sizes two or more apart.",
    PressureRises "pressure-rises" "The estimated pressure rises toward the trunk.",
    GradientNotJudged "gradient-not-judged" "What is known does not decide whether the pressure falls.",
    Slack "slack" "The garment does not touch the limb at a mark.",
    BeyondTested "beyond-tested" "The stretch lies beyond the last tested point of the fabric.",
    PressureHigh "pressure-high" "The estimate at a mark is very high.",
    ClassMissed "class-missed" "The estimate at the reference misses the claimed class.",
    BandMissed "band-missed" "The estimate at the reference lies far outside the wanted band.",
    RatioOutside "ratio-outside" "The share of the reference pressure lies outside the scheme's limits.",
    Ring "ring" "A mark certainly presses more than the marks on both sides of it.",
    TopEdge "top-edge" "The band at the garment's upper end presses more than the garment below it.",
    GarmentsOverlap "garments-overlap" "Garments lie over one another; the plain sum is an upper estimate.",
    BetweenClasses "between-classes" "The pressure at the reference lies in the gap between two classes.",
    ClassOff "class-off" "The pressure at the reference lies in another class than the one claimed.",
    CalipersDiffer "calipers-differ" "Two calipers and the tape do not describe the same section.",
    ReadingsMixed "readings-mixed" "Readings were taken in unlike postures.",
    TargetRises "target-rises" "The wanted pressure does not fall toward the trunk.",
    TargetBeyond "target-beyond" "The wanted pressure asks for more stretch than the fabric was tested for.",
    VolumeNotCompared "volume-not-compared" "The limbs' volumes cannot be compared.",
}
