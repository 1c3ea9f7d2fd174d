//! Owns the closed list of landmarks.

use super::Limb;

/// A named measuring point. The order of the variants is distal to proximal within each limb.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Landmark {
    /// Arm A: hand at the knuckles.
    Hand,
    /// Arm B: hand across the thumb web.
    ThumbWeb,
    /// Arm C: wrist, the reference of the arm.
    Wrist,
    /// Arm C1: lower forearm.
    LowerForearm,
    /// Arm D: forearm.
    Forearm,
    /// Arm E: elbow, the joint.
    Elbow,
    /// Arm F: upper arm, midway.
    UpperArm,
    /// Arm G: about 2 cm below the axillary fold.
    Axilla,
    /// Leg A: ball of the foot.
    Forefoot,
    /// Leg Y: over heel point and ankle bend.
    Instep,
    /// Leg B: smallest girth above the malleoli, the reference of the leg.
    Ankle,
    /// Leg B1: where the Achilles tendon passes into the calf muscle.
    LowerCalf,
    /// Leg C: largest calf girth.
    Calf,
    /// Leg D: just below the tibial tuberosity.
    BelowKnee,
    /// Leg E: mid-patella, the joint.
    Knee,
    /// Leg F: midway between groin and mid-patella.
    MidThigh,
    /// Leg G: 5 cm below the groin.
    UpperThigh,
}

use Landmark::{
    Ankle, Axilla, BelowKnee, Calf, Elbow, Forearm, Forefoot, Hand, Instep, Knee, LowerCalf, LowerForearm,
    MidThigh, ThumbWeb, UpperArm, UpperThigh, Wrist,
};

impl Landmark {
    /// The landmarks of one limb, distal to proximal.
    pub fn of(limb: Limb) -> &'static [Self] {
        match limb {
            Limb::Arm => &[Hand, ThumbWeb, Wrist, LowerForearm, Forearm, Elbow, UpperArm, Axilla],
            Limb::Leg => &[Forefoot, Instep, Ankle, LowerCalf, Calf, BelowKnee, Knee, MidThigh, UpperThigh],
        }
    }

    /// Which limb it belongs to.
    pub fn limb(self) -> Limb {
        if self <= Axilla { Limb::Arm } else { Limb::Leg }
    }

    /// The word for it.
    pub fn name(self) -> &'static str {
        match self {
            Hand => "hand",
            ThumbWeb => "thumb-web",
            Wrist => "wrist",
            LowerForearm => "lower-forearm",
            Forearm => "forearm",
            Elbow => "elbow",
            UpperArm => "upper-arm",
            Axilla => "axilla",
            Forefoot => "forefoot",
            Instep => "instep",
            Ankle => "ankle",
            LowerCalf => "lower-calf",
            Calf => "calf",
            BelowKnee => "below-knee",
            Knee => "knee",
            MidThigh => "mid-thigh",
            UpperThigh => "upper-thigh",
        }
    }

    /// The word in running text, where "the" may stand before it: `upper arm`, `below-knee mark`.
    pub fn spoken(self) -> String {
        if self == BelowKnee { "below-knee mark".to_owned() } else { self.name().replace('-', " ") }
    }

    /// The word with its letter, for tables: `upper arm (F)`.
    pub fn label(self) -> String {
        format!("{} ({})", self.name().replace('-', " "), self.letter())
    }

    /// The letter of the standards, unique within its limb.
    pub fn letter(self) -> &'static str {
        match self {
            Hand | Forefoot => "A",
            ThumbWeb | Ankle => "B",
            LowerCalf => "B1",
            Wrist | Calf => "C",
            LowerForearm => "C1",
            Forearm | BelowKnee => "D",
            Elbow | Knee => "E",
            UpperArm | MidThigh => "F",
            Axilla | UpperThigh => "G",
            Instep => "Y",
        }
    }

    /// Reads a word or a letter of `limb`.
    pub fn parse(limb: Limb, text: &str) -> Option<Self> {
        let text = text.trim();
        Self::of(limb).iter().copied().find(|one| one.name() == text || one.letter() == text)
    }

    /// Reads a word of either limb.
    pub fn parse_word(text: &str) -> Option<Self> {
        let text = text.trim();
        [Limb::Arm, Limb::Leg].into_iter().flat_map(Self::of).copied().find(|one| one.name() == text)
    }

    /// Whether it lies on the hand or the foot, distal to the reference.
    pub fn on_extremity(self) -> bool {
        self < self.limb().reference()
    }

    /// Whether it is the joint of its limb.
    pub fn is_joint(self) -> bool {
        self == self.limb().joint()
    }

    /// The landmark just distal to it, if any.
    pub fn below(self) -> Option<Self> {
        Self::of(self.limb()).iter().copied().rfind(|one| *one < self)
    }
}
