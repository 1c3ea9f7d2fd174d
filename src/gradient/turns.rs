//! Owns at which exponents of the tension the grade by stretch would turn, if a strip pull gave them.

use super::judge::judge_grade;
use super::{Band, FallMark, FallSetting, Grade, GradientBasis};

/// Exponents that are tried lie so far apart (house rule: half of what a strip pull tells).
const STEP: f64 = 0.05;

/// Exponents of one grade.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turn {
    /// The lowest tried.
    pub low: f64,
    /// The highest tried.
    pub high: f64,
    /// The grade at all of them; `possible` stands for `none` too.
    pub grade: Grade,
}

/// Whether a strip pull can tell more than is known.
fn is_open(setting: &FallSetting<'_>) -> bool {
    setting.basis == GradientBasis::Stretch && setting.band.width() > setting.rules.wide_band + 1e-9
}

/// The exponents that are tried, from one end of the band to the other.
fn tried(band: Band) -> impl Iterator<Item = f64> {
    let steps = (band.width() / STEP).round().clamp(1.0, 200.0);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "1 to 200")]
    let count = steps as u32;
    (0..=count).map(move |number| band.low + band.width() * f64::from(number) / steps)
}

/// The grade if a strip pull gave an exponent.
fn at(marks: &[FallMark], setting: &FallSetting<'_>, exponent: f64) -> Grade {
    let band = Band::around(exponent, setting.rules.strip_band);
    let grade = judge_grade(marks, &FallSetting { band, ..setting.clone() });
    if grade == Grade::None { Grade::Possible } else { grade }
}

/// What the grade would be after a strip pull, by exponent, lowest first; empty where it would be one and the same
/// whatever the pull gave, and where a pull tells nothing.
pub fn turns(marks: &[FallMark], setting: &FallSetting<'_>) -> Vec<Turn> {
    if !is_open(setting) {
        return Vec::new();
    }
    let mut all: Vec<Turn> = Vec::new();
    for exponent in tried(setting.band) {
        let grade = at(marks, setting, exponent);
        match all.last_mut().filter(|last| last.grade == grade) {
            Some(last) => last.high = exponent,
            None => all.push(Turn { low: exponent, high: exponent, grade }),
        }
    }
    if all.len() < 2 { Vec::new() } else { all }
}

/// Whether a strip pull may end otherwise than in a rise.
pub(super) fn may_change(marks: &[FallMark], setting: &FallSetting<'_>) -> bool {
    is_open(setting) && tried(setting.band).any(|exponent| at(marks, setting, exponent) > Grade::Likely)
}
