//! Owns the drawing of an empty limb with its marks, for the form that is filled in with a pencil: an arm
//! that hangs, a leg from the side, each landmark with its number in measuring order.
//!
//! A drawing of nobody: it shows where a mark lies, its widths mean nothing.
//!
//! Source: ours; the places follow the measuring points of the published standards (leg: published; arm:
//! common trade use, memory).

use super::blank::{measuring_order, where_is};
use crate::anatomy::{Landmark, Limb};
use crate::document::{Anchor, Ink, Scene, Shape};
use crate::words;

/// Width of the drawing, points.
const WIDTH: f64 = 206.0;
/// Height of the letters, points.
const LETTERS: f64 = 9.0;
/// How far a mark's line reaches past the limb, points.
const PAST: f64 = 5.0;
/// Points of the curve between two points of an outline.
const STEPS: u8 = 6;

type Place = (f64, f64);

/// An arm that hangs, thumb to the left: down the left edge, round the hand, up the right edge.
const ARM: [Place; 27] = [
    (43.0, 6.0),
    (44.0, 26.0),
    (47.0, 70.0),
    (52.0, 112.0),
    (50.0, 136.0),
    (51.0, 152.0),
    (56.0, 186.0),
    (59.5, 214.0),
    (58.0, 224.0),
    (49.0, 238.0),
    (43.0, 252.0),
    (42.5, 260.0),
    (47.0, 261.0),
    (52.0, 253.0),
    (55.0, 249.0),
    (55.0, 264.0),
    (57.0, 284.0),
    (64.0, 297.0),
    (74.0, 298.0),
    (82.0, 286.0),
    (86.0, 266.0),
    (85.0, 244.0),
    (81.0, 216.0),
    (86.0, 186.0),
    (92.0, 150.0),
    (90.0, 112.0),
    (98.0, 6.0),
];

/// A leg from the side, toes to the left: down the shin, round the foot, up the calf.
const LEG: [Place; 26] = [
    (38.0, 6.0),
    (40.0, 40.0),
    (48.0, 95.0),
    (55.0, 122.0),
    (52.0, 138.0),
    (58.0, 156.0),
    (61.0, 190.0),
    (66.0, 226.0),
    (69.0, 248.0),
    (61.0, 262.0),
    (40.0, 273.0),
    (21.0, 280.0),
    (18.0, 286.0),
    (24.0, 290.0),
    (42.0, 290.0),
    (62.0, 287.0),
    (84.0, 290.0),
    (96.0, 289.0),
    (99.0, 280.0),
    (94.0, 266.0),
    (90.0, 248.0),
    (92.0, 226.0),
    (106.0, 188.0),
    (97.0, 144.0),
    (106.0, 90.0),
    (113.0, 6.0),
];

/// The two ends of a landmark's line on the drawing: at the skin, left and right.
fn line_of(landmark: Landmark) -> (Place, Place) {
    match landmark {
        Landmark::Axilla => ((44.0, 26.0), (96.5, 26.0)),
        Landmark::UpperArm => ((47.5, 72.0), (92.5, 72.0)),
        Landmark::Elbow => ((52.0, 114.0), (90.0, 114.0)),
        Landmark::Forearm => ((51.0, 150.0), (92.0, 150.0)),
        Landmark::LowerForearm => ((56.0, 186.0), (86.0, 186.0)),
        Landmark::Wrist => ((59.5, 215.0), (81.0, 215.0)),
        Landmark::ThumbWeb => ((54.0, 250.0), (85.5, 250.0)),
        Landmark::Hand => ((55.0, 266.0), (86.0, 266.0)),
        Landmark::UpperThigh => ((39.5, 34.0), (111.0, 34.0)),
        Landmark::MidThigh => ((46.5, 86.0), (106.5, 86.0)),
        Landmark::Knee => ((52.0, 138.0), (97.5, 138.0)),
        Landmark::BelowKnee => ((58.0, 158.0), (99.0, 158.0)),
        Landmark::Calf => ((61.0, 188.0), (106.0, 188.0)),
        Landmark::LowerCalf => ((66.0, 226.0), (92.0, 226.0)),
        Landmark::Ankle => ((69.0, 247.0), (90.0, 247.0)),
        Landmark::Instep => ((66.0, 255.0), (99.0, 288.0)),
        Landmark::Forefoot => ((38.0, 274.0), (38.0, 290.0)),
    }
}

/// A curve through the places of an outline (Catmull and Rom's, uniform).
fn smooth(places: &[Place]) -> Vec<Place> {
    let mut out = Vec::new();
    for at in 0..places.len() {
        let Some(from) = places.get(at).copied() else { break };
        let Some(to) = places.get(at + 1).copied() else {
            out.push(from);
            break;
        };
        let before = at.checked_sub(1).and_then(|one| places.get(one)).copied().unwrap_or(from);
        let after = places.get(at + 2).copied().unwrap_or(to);
        for step in 0..STEPS {
            let t = f64::from(step) / f64::from(STEPS);
            let along = |a: f64, b: f64, c: f64, d: f64| {
                0.5 * (2.0 * b
                    + (c - a) * t
                    + (2.0 * a - 5.0 * b + 4.0 * c - d) * t * t
                    + (3.0 * b - a - 3.0 * c + d) * t * t * t)
            };
            out.push((along(before.0, from.0, to.0, after.0), along(before.1, from.1, to.1, after.1)));
        }
    }
    out
}

/// The number of a landmark in measuring order, with its label: `1 wrist (C)`.
pub(super) fn numbered(limb: Limb, landmark: Landmark) -> String {
    let number = measuring_order(limb).iter().position(|one| *one == landmark).unwrap_or_default() + 1;
    format!("{number} {}", words::label(landmark))
}

/// The empty limb with its marks.
pub(super) fn limb_outline(limb: Limb) -> Scene {
    let edge = match limb {
        Limb::Arm => smooth(&ARM),
        Limb::Leg => smooth(&LEG),
    };
    // Toward the trunk it goes on: filled, without a line across.
    let mut shapes = vec![
        Shape::Path { points: edge.clone(), closed: true, fill: Ink::Light, pen: None },
        Shape::line(edge, 1.1),
    ];
    for landmark in Landmark::of(limb).iter().copied() {
        shapes.extend(mark(limb, landmark));
    }
    let said: Vec<String> = measuring_order(limb)
        .into_iter()
        .map(|one| format!("{}: {}", numbered(limb, one), where_is(one)))
        .collect();
    Scene {
        width: WIDTH,
        height: 312.0,
        title: format!("{} with its marks in measuring order", article(limb)),
        description: format!("{}.", said.join(". ")),
        shapes,
    }
}

fn article(limb: Limb) -> String {
    match limb {
        Limb::Arm => "An arm".to_owned(),
        Limb::Leg => "A leg".to_owned(),
    }
}

/// Where the words of marks begin, points.
fn words_from(limb: Limb) -> f64 {
    match limb {
        Limb::Arm => 108.0,
        Limb::Leg => 123.0,
    }
}

/// A landmark's line over the limb and its words.
fn mark(limb: Limb, landmark: Landmark) -> Vec<Shape> {
    let (left, right) = line_of(landmark);
    let (wide, high) = (right.0 - left.0, right.1 - left.1);
    let long = wide.hypot(high);
    let past = (wide / long * PAST, high / long * PAST);
    let from = (left.0 - past.0, left.1 - past.1);
    let to = (right.0 + past.0, right.1 + past.1);
    let words = numbered(limb, landmark);
    let start = words_from(limb);
    let mut shapes = vec![Shape::line(vec![from, to], 1.1)];
    if landmark == Landmark::Forefoot {
        shapes.push(Shape::label((to.0, to.1 + LETTERS), Anchor::Middle, LETTERS, words));
    } else {
        shapes.push(Shape::dashed(vec![to, (start - 3.0, to.1)], 0.5, 1.5));
        shapes.push(Shape::label((start, to.1 + LETTERS * 0.35), Anchor::Start, LETTERS, words));
    }
    shapes
}
