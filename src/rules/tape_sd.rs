//! Owns how far one tape value is off, mark by mark.
//!
//! Source: 0.35 cm, derived (Tánori-Tapia 2020, Healthcare 8:285, published). A rules file may state it by
//! landmark or limb, fixed or as a share of the girth: the same paper's segments allow 0.13 cm at the wrist to
//! 0.42 cm near the axilla.

use super::{Basis, Limbs};
use crate::anatomy::{Landmark, Limb};
use crate::words;

/// Landmarks of both limbs.
const LANDMARKS: usize = 17;

/// The SD of one tape value: a share of the girth, held between two ends. A fixed one has both ends alike.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TapeError {
    /// Share of the girth.
    pub share: f64,
    /// Least, cm.
    pub least_cm: f64,
    /// Most, cm.
    pub most_cm: f64,
}

impl TapeError {
    /// One that is the same for every girth.
    pub fn fixed(cm: f64) -> Self {
        Self { share: 0.0, least_cm: cm, most_cm: cm }
    }

    /// SD of one tape value of a girth, cm.
    pub fn cm(self, girth_cm: f64) -> f64 {
        (self.share * girth_cm).max(self.least_cm).min(self.most_cm)
    }

    /// `0.25 cm`; `1.5 % of the girth (0.25 to 0.45 cm)`.
    pub fn said(self) -> String {
        let (least, most) = (words::plain(self.least_cm), words::plain(self.most_cm));
        if self.share > 0.0 {
            format!("{} % of the girth ({least} to {most} cm)", words::plain(100.0 * self.share))
        } else {
            format!("{most} cm")
        }
    }
}

/// What a rules file states of the tape.
#[derive(Clone, Debug, PartialEq)]
pub struct TapeSdRule {
    /// On which limbs.
    pub limbs: Limbs,
    /// At which landmark; none = at every mark of them, serial marks too.
    pub landmark: Option<Landmark>,
    /// The error.
    pub error: TapeError,
    /// What it rests on.
    pub basis: Basis,
    /// Why it is so.
    pub why: String,
}

impl TapeSdRule {
    /// `wrist`; `arm`; `both`.
    pub fn id(&self) -> &'static str {
        self.landmark.map_or(self.limbs.word(), Landmark::name)
    }

    /// `at the wrist`; `on the arm`; `on arm and leg`.
    pub fn place(&self) -> String {
        match (self.landmark, self.limbs) {
            (Some(landmark), _) => words::at(landmark),
            (None, Limbs::Only(limb)) => format!("on the {}", limb.name()),
            (None, Limbs::Both) => "on arm and leg".to_owned(),
        }
    }
}

/// The SD of a tape value at every mark: the one answer for sizing, pressure, fall and volume.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TapeSd {
    at: [TapeError; LANDMARKS],
    serial: [TapeError; 2],
}

impl TapeSd {
    /// The same everywhere.
    pub fn everywhere(cm: f64) -> Self {
        Self { at: [TapeError::fixed(cm); LANDMARKS], serial: [TapeError::fixed(cm); 2] }
    }

    /// `cm` where nothing else is stated; a landmark goes before its limb, whatever the order.
    pub fn of(cm: f64, stated: &[TapeSdRule]) -> Self {
        let mut all = Self::everywhere(cm);
        for rule in stated.iter().filter(|rule| rule.landmark.is_none()) {
            for limb in [Limb::Arm, Limb::Leg].into_iter().filter(|limb| rule.limbs.include(*limb)) {
                for landmark in Landmark::of(limb) {
                    all.set(*landmark, rule.error);
                }
                if let Some(slot) = all.serial.get_mut(limb as usize) {
                    *slot = rule.error;
                }
            }
        }
        for rule in stated {
            if let Some(landmark) = rule.landmark {
                all.set(landmark, rule.error);
            }
        }
        all
    }

    fn set(&mut self, landmark: Landmark, error: TapeError) {
        if let Some(slot) = self.at.get_mut(landmark as usize) {
            *slot = error;
        }
    }

    /// SD of the mean of `tapes` values at a landmark, or at a serial mark of `limb`, whose mean is
    /// `girth_cm`; cm.
    pub fn of_mean(&self, limb: Limb, landmark: Option<Landmark>, girth_cm: f64, tapes: usize) -> f64 {
        let error = match landmark {
            Some(landmark) => self.at.get(landmark as usize),
            None => self.serial.get(limb as usize),
        };
        let one = error.map_or(f64::NAN, |error| error.cm(girth_cm));
        if tapes <= 1 {
            return one;
        }
        one / f64::from(u32::try_from(tapes).unwrap_or(u32::MAX)).sqrt()
    }
}
