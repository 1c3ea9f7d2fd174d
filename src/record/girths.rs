//! Owns the girths of one limb as the checks of plausibility see them.

use super::{Mark, MarkPlace};
use crate::anatomy::{Landmark, Limb};
use crate::quantity::Girth;
use crate::rules::{NumberId, Rules};

/// One girth with its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct GirthAt {
    pub(super) place: MarkPlace,
    pub(super) tenths: i64,
    /// SD of the girth by the tape, cm.
    pub(super) sd_cm: f64,
    /// Whether it was read more than once and the repeats agree.
    pub(super) is_repeated: bool,
}

impl GirthAt {
    pub(super) fn cm(self) -> f64 {
        Girth::from_tenths(self.tenths).map_or(0.0, Girth::cm)
    }
}

/// A limb's girths, distal to proximal.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Girths(pub(super) Vec<GirthAt>);

impl Girths {
    pub(super) fn of(marks: &[Mark], limb: Limb, rules: &Rules) -> Self {
        let (tape, gap) = (rules.tape(), rules.number(NumberId::RepeatGap));
        let of_mark = |mark: &Mark| GirthAt {
            place: MarkPlace::of(mark),
            tenths: mark.girth().tenths(),
            sd_cm: mark.sd_cm(limb, &tape),
            is_repeated: mark.readings() > 1 && !mark.is_gap_above(gap),
        };
        Self(marks.iter().map(of_mark).collect())
    }

    pub(super) fn at(&self, landmark: Landmark) -> Option<GirthAt> {
        self.0.iter().find(|one| one.place.landmark == Some(landmark)).copied()
    }

    /// The girth of the same mark.
    pub(super) fn same(&self, place: MarkPlace) -> Option<GirthAt> {
        self.0.iter().find(|one| one.place.is_same(place)).copied()
    }

    /// The same limb with other girths; none where one of them is no girth.
    pub(super) fn with(&self, change: impl Fn(usize, i64) -> i64) -> Option<Self> {
        let changed = self.0.iter().enumerate().map(|(at, one)| {
            let tenths = change(at, one.tenths);
            Girth::from_tenths(tenths).map(|_| GirthAt { tenths, ..*one })
        });
        changed.collect::<Option<Vec<_>>>().map(Self)
    }
}
