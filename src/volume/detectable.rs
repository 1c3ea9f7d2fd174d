//! Owns how far two volumes may lie apart by measuring alone.
//!
//! Source: minimal detectable change (95 %) = 1.96·√2·SD (derived). Whole arm, one person, minutes
//! apart: 42.9 mL, 2.39 % (published: Tánori-Tapia 2020, Healthcare 8:285). Leg, two weeks apart: 3.4
//! to 3.8 % (published: Lymphat Res Biol 2022, doi 10.1089/lrb.2022.0032).

use super::{LimbVolume, VolumeNumbers};

/// Two-sided 95 % of a normal value. Basis: derived (as the published changes are stated).
pub const TWO_SIDED: f64 = 1.96;

/// How the two measurements were taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Setting {
    /// By one person, minutes apart: the tape's own error.
    SameSitting,
    /// At two visits.
    BetweenVisits,
    /// At two visits, every mark read at least twice.
    TwoRepeats,
}

impl Setting {
    /// Every setting, in the order they are shown.
    pub const ALL: [Self; 3] = [Self::SameSitting, Self::BetweenVisits, Self::TwoRepeats];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::SameSitting => "same-sitting",
            Self::BetweenVisits => "between-visits",
            Self::TwoRepeats => "two-repeats",
        }
    }
}

/// The error of one volume in one setting, and the change that it can tell.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Detectable {
    /// In which setting.
    pub setting: Setting,
    /// SD of one volume, mL.
    pub sd_ml: f64,
    /// The same, % of the volume.
    pub sd_percent: f64,
    /// Least change that is more than measuring, mL.
    pub change_ml: f64,
    /// The same, % of the volume.
    pub change_percent: f64,
}

impl Detectable {
    /// Of a volume: between visits the larger of the rules' SD and the tape's own. A volume whose marks
    /// were read once is shown with two repeats as if each had been read twice.
    pub fn of(volume: LimbVolume, repeated: bool, setting: Setting, numbers: &VolumeNumbers) -> Self {
        let own = 100.0 * volume.sd_ml() / volume.ml;
        let sd_percent = match setting {
            Setting::SameSitting => own,
            Setting::BetweenVisits => own.max(numbers.sd_between_percent),
            Setting::TwoRepeats if repeated => own.max(numbers.sd_repeats_percent),
            Setting::TwoRepeats => (own / std::f64::consts::SQRT_2).max(numbers.sd_repeats_percent),
        };
        let change_percent = TWO_SIDED * std::f64::consts::SQRT_2 * sd_percent;
        Self {
            setting,
            sd_ml: sd_percent * volume.ml / 100.0,
            sd_percent,
            change_ml: change_percent * volume.ml / 100.0,
            change_percent,
        }
    }
}

/// SD of one visit's volume against those of other visits, %: by whether every mark was read twice.
pub(super) fn visit_sd_percent(volume: LimbVolume, repeated: bool, numbers: &VolumeNumbers) -> f64 {
    let setting = if repeated { Setting::TwoRepeats } else { Setting::BetweenVisits };
    Detectable::of(volume, repeated, setting, numbers).sd_percent
}
