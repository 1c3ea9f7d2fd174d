//! Owns where things stand in the drawing: distance along the limb downwards, pressure to the right.

/// Distance along the limb, drawn downwards from hand or foot; the same scale serves the limb's width.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Along {
    low: f64,
    top: f64,
    /// Points per cm.
    pub(super) scale: f64,
}

/// Greatest width of the limb in the drawing, points.
const GREATEST_WIDTH: f64 = 92.0;

impl Along {
    /// For positions from `low` to `high`, cm, drawn `tall` points high where a limb at most `widest` cm
    /// wide allows, the lowest at `top`; the height comes with it.
    pub(super) fn new((low, high): (f64, f64), tall: f64, widest: f64, top: f64) -> (Self, f64) {
        let span = (high - low).max(1.0);
        let scale = (tall / span).min(GREATEST_WIDTH / widest.max(1.0));
        (Self { low, top, scale }, span * scale)
    }

    /// The height on the page of a position, cm.
    pub(super) fn y(self, at: f64) -> f64 {
        self.top + (at - self.low) * self.scale
    }
}

/// Pressure, drawn to the right.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Across {
    left: f64,
    per_mmhg: f64,
    /// The last number on the axis, mmHg.
    pub(super) last: u32,
    /// From number to number, mmHg.
    pub(super) step: u32,
}

impl Across {
    /// From 0 to a round number at or above `highest` mmHg, between `left` and `right`.
    pub(super) fn new(highest: f64, left: f64, right: f64) -> Self {
        let mut step = 10_u32;
        while f64::from(step) * 10.0 < highest {
            step = step.saturating_mul(2);
        }
        let mut last = step;
        while f64::from(last) < highest {
            last = last.saturating_add(step);
        }
        Self { left, per_mmhg: (right - left) / f64::from(last), last, step }
    }

    /// The place of a pressure, mmHg.
    pub(super) fn x(self, mmhg: f64) -> f64 {
        self.left + mmhg * self.per_mmhg
    }
}

/// Heights for labels that want to stand at `wanted` (from the top down) and need `gap` between them:
/// labels that would collide stand as one group, centred on where they want to be.
pub(super) fn spread(wanted: &[f64], gap: f64) -> Vec<f64> {
    // A group: the sum of the wished heights of its first label, and how many it holds.
    let mut groups: Vec<(f64, u32)> = Vec::new();
    let start = |group: &(f64, u32)| group.0 / f64::from(group.1);
    for want in wanted {
        let mut group = (*want, 1_u32);
        while let Some(above) = groups.last().copied() {
            if start(&above) + f64::from(above.1) * gap <= start(&group) {
                break;
            }
            // Each label of the lower group wishes the first of both to stand so much higher.
            let shift = f64::from(above.1) * gap * f64::from(group.1);
            group = (above.0 + group.0 - shift, above.1 + group.1);
            groups.pop();
        }
        groups.push(group);
    }
    groups
        .iter()
        .flat_map(|group| (0..group.1).map(move |place| start(group) + f64::from(place) * gap))
        .collect()
}
