//! Owns at which exponents of the tension the grade by stretch would turn, if a strip pull gave them.

use super::judge::judge_grade;
use super::{Band, FallMark, FallSetting, Grade, GradientBasis};

/// Exponents that are tried lie so far apart (house rule: half of what a strip pull tells).
const STEP: f64 = 0.05;

/// Levels are told to so many parts of one (house rule: far below what a pull tells).
const GRID: f64 = 1e9;

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
    (0..=count).map(move |number| on_grid(band.low + band.width() * f64::from(number) / steps))
}

/// A level without the last bits of its sum: 0.9, not 0.8999999999999999.
fn on_grid(exponent: f64) -> f64 {
    (exponent * GRID).round() / GRID
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
    turns_of_all(&[(marks, setting)])
}

/// The same for several falls of one knit of which the worst counts, as of pieces worn together.
pub fn turns_of_all(falls: &[(&[FallMark], &FallSetting<'_>)]) -> Vec<Turn> {
    let Some((_, first)) = falls.first() else { return Vec::new() };
    if !falls.iter().all(|(_, setting)| is_open(setting) && setting.band == first.band) {
        return Vec::new();
    }
    let mut all: Vec<Turn> = Vec::new();
    for exponent in tried(first.band) {
        let worst = falls.iter().map(|(marks, setting)| at(marks, setting, exponent)).min();
        let Some(grade) = worst else { continue };
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
