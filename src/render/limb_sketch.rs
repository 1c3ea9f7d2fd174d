//! Owns the same empty limb in letters, for a form that is plain text.
//!
//! Source: ours, as the drawing.

use super::limb_outline::numbered;
use crate::anatomy::{Landmark, Limb};

/// An arm that hangs, line by line; a landmark's line is dashed and followed by its words.
const ARM: [(&str, Option<Landmark>); 19] = [
    ("        |            |", None),
    ("      --|------------|--", Some(Landmark::Axilla)),
    ("        |            |", None),
    ("      ---\\----------/---", Some(Landmark::UpperArm)),
    ("          |        |", None),
    ("      ----|--------|----", Some(Landmark::Elbow)),
    ("         /          \\", None),
    ("      --|------------|--", Some(Landmark::Forearm)),
    ("         \\          /", None),
    ("      ----\\--------/----", Some(Landmark::LowerForearm)),
    ("           |      |", None),
    ("      -----|------|-----", Some(Landmark::Wrist)),
    ("          /        \\", None),
    ("        /  /        |", None),
    ("      /--/|---------|---", Some(Landmark::ThumbWeb)),
    ("     /_/  |         |", None),
    ("      ----|---------|---", Some(Landmark::Hand)),
    ("           \\       /", None),
    ("            \\_____/", None),
];

/// A leg from the side, toes to the left.
const LEG: [(&str, Option<Landmark>); 19] = [
    ("        |               |", None),
    ("      --|---------------|--", Some(Landmark::UpperThigh)),
    ("         \\              |", None),
    ("      ----\\------------|---", Some(Landmark::MidThigh)),
    ("           |           |", None),
    ("      ----(-----------|----", Some(Landmark::Knee)),
    ("           |          |", None),
    ("      -----|-----------\\---", Some(Landmark::BelowKnee)),
    ("           |            |", None),
    ("      -----|------------|--", Some(Landmark::Calf)),
    ("            |         /", None),
    ("      ------|-------/------", Some(Landmark::LowerCalf)),
    ("             |     |", None),
    ("      -------|-----|-------", Some(Landmark::Ankle)),
    ("           /  \\     \\", None),
    ("       /        \\----\\-----", Some(Landmark::Instep)),
    ("  /--|------------\\---\\----", Some(Landmark::Forefoot)),
    (" (___|_____________\\___)", None),
    ("", None),
];

/// The empty limb with its marks, a line each.
pub(super) fn limb_sketch(limb: Limb) -> Vec<String> {
    let lines = match limb {
        Limb::Arm => ARM,
        Limb::Leg => LEG,
    };
    let line = |(drawn, landmark): (&str, Option<Landmark>)| match landmark {
        Some(landmark) => format!("{drawn:<28}{}", numbered(limb, landmark)),
        None => drawn.to_owned(),
    };
    lines.into_iter().map(line).collect()
}
