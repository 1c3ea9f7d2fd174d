//! Owns the everyday words for landmarks, each with the landmarks that may be meant. None is taken
//! for a landmark: a reader answers with the word to write.

use super::{Landmark, Limb};

/// The landmarks of `limb` that an everyday word may mean, the likeliest first; none for a word that
/// is not known.
///
/// Basis: house rule (words that people type; the landmarks are those of the standards).
pub fn meant(limb: Limb, text: &str) -> &'static [Landmark] {
    use Landmark::{
        Ankle, Axilla, BelowKnee, Calf, Elbow, Forearm, Forefoot, Hand, Instep, Knee, LowerCalf,
        LowerForearm, MidThigh, ThumbWeb, UpperArm, UpperThigh, Wrist,
    };
    let word = text.trim().to_lowercase().replace(['_', ' '], "-");
    match (limb, word.as_str()) {
        (Limb::Arm, "armpit" | "underarm" | "top" | "shoulder") => &[Axilla],
        (Limb::Arm, "biceps" | "bicep" | "triceps" | "arm" | "upperarm" | "mid-arm") => &[UpperArm],
        (Limb::Arm, "palm" | "knuckles" | "mcp" | "hand-girth") => &[Hand],
        (Limb::Arm, "thumb" | "web" | "thumbweb") => &[ThumbWeb],
        (Limb::Arm, "lower-arm" | "fore-arm" | "lowerarm") => &[Forearm, LowerForearm],
        (Limb::Arm, "cubital" | "olecranon" | "elbow-crease") => &[Elbow],
        (Limb::Arm, "carpus" | "wrist-crease" | "styloid") => &[Wrist],
        (Limb::Leg, "foot" | "toes" | "ball" | "ball-of-foot" | "metatarsal") => &[Forefoot],
        (Limb::Leg, "heel" | "arch" | "bridge" | "ankle-bend") => &[Instep],
        (Limb::Leg, "malleolus" | "above-ankle" | "ankles") => &[Ankle],
        (Limb::Leg, "shin" | "achilles") => &[LowerCalf],
        (Limb::Leg, "calf-max" | "widest-calf" | "calves") => &[Calf],
        (Limb::Leg, "under-knee" | "belowknee" | "tibial-tuberosity") => &[BelowKnee],
        (Limb::Leg, "patella" | "mid-knee" | "mid-patella" | "kneecap") => &[Knee],
        (Limb::Leg, "thigh" | "upper-leg" | "upperleg") => &[MidThigh, UpperThigh],
        (Limb::Leg, "midthigh") => &[MidThigh],
        (Limb::Leg, "groin" | "top" | "crotch" | "gluteal") => &[UpperThigh],
        _ => &[],
    }
}
