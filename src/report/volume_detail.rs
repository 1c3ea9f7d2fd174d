//! Owns what the `volume` command shows of one limb beyond the block that every report holds.

use serde::Serialize;

use super::Figure;
use super::of_volume::{cut_off_name, cut_off_words, grade_words, place_words, set_words};
use crate::volume::{Detectable, GirthPair, Segment, Setting, VisitVolume};

/// The detail of one limb's volume.
#[derive(Clone, Debug, Serialize)]
pub struct VolumeDetail {
    /// Every mark of the limb, distal to proximal.
    pub marks: Vec<VolumeMark>,
    /// Marks on hand or foot, a series of their own, in no volume.
    pub hand_or_foot: Vec<VolumeMark>,
    /// Each segment, distal to proximal.
    pub segments: Vec<SegmentBlock>,
    /// What the volume can tell in each setting.
    pub detectable: Vec<DetectableBlock>,
    /// Whether every mark was read at least twice.
    pub repeated: bool,
    /// Each set in words, with its source.
    pub sets: Vec<SetBlock>,
}

/// One mark beside the other limb's.
#[derive(Clone, Debug, Serialize)]
pub struct VolumeMark {
    /// As printed.
    pub mark: String,
    /// Where along the limb.
    pub at_cm: Option<Figure>,
    /// This limb's girth.
    pub girth_cm: Figure,
    /// The other limb's.
    pub other_cm: Option<Figure>,
    /// Affected minus other.
    pub difference_cm: Option<Figure>,
}

/// One segment.
#[derive(Clone, Debug, Serialize)]
pub struct SegmentBlock {
    /// Its distal mark.
    pub from: String,
    /// Its proximal mark; the same for a disc.
    pub to: String,
    /// This limb's.
    pub measured_ml: Option<Figure>,
    /// The other limb's.
    pub other_ml: Option<Figure>,
    /// Affected minus other.
    pub excess_ml: Option<Figure>,
    /// In % of the other.
    pub excess_percent: Option<Figure>,
}

/// What a volume can tell in one setting.
#[derive(Clone, Debug, Serialize)]
pub struct DetectableBlock {
    /// `same-sitting`, `between-visits`, `two-repeats`.
    pub setting: &'static str,
    /// As printed.
    pub words: &'static str,
    /// SD of one volume.
    pub sd_ml: Option<Figure>,
    /// The same, %.
    pub sd_percent: Option<Figure>,
    /// Least change that is more than measuring.
    pub change_ml: Option<Figure>,
    /// The same, %.
    pub change_percent: Option<Figure>,
}

/// One set in words.
#[derive(Clone, Debug, Serialize)]
pub struct SetBlock {
    /// Its name as printed: `ISL`.
    pub name: String,
    /// What it says: `minimal`, `grade 2`, `met`.
    pub result: String,
    /// Where it was read.
    pub source: String,
}

impl VolumeDetail {
    /// Of the volume of a limb at one visit.
    pub fn of(volume: &VisitVolume) -> Self {
        let mut sets: Vec<SetBlock> = volume
            .grades
            .iter()
            .map(|one| SetBlock {
                name: set_words(&one.set),
                result: grade_words(&one.grade),
                source: one.source.clone(),
            })
            .collect();
        sets.extend(volume.cut_offs.iter().map(|one| SetBlock {
            name: cut_off_name(one),
            result: cut_off_words(one.grade).to_owned(),
            source: one.source.clone(),
        }));
        Self {
            marks: volume.girths.iter().map(mark).collect(),
            hand_or_foot: volume.extremity.iter().map(mark).collect(),
            segments: volume.segments.iter().map(segment).collect(),
            detectable: volume.detectable.iter().map(detectable).collect(),
            repeated: volume.repeated,
            sets,
        }
    }
}

fn mark(pair: &GirthPair) -> VolumeMark {
    VolumeMark {
        mark: place_words(pair.place),
        at_cm: Figure::new(pair.at_cm, 1),
        girth_cm: Figure::cm(pair.measured.tenths()),
        other_cm: pair.other.map(|one| Figure::cm(one.tenths())),
        difference_cm: pair.difference_tenths.map(Figure::cm),
    }
}

fn segment(one: &Segment) -> SegmentBlock {
    SegmentBlock {
        from: place_words(one.from),
        to: place_words(one.to),
        measured_ml: Figure::ml(one.measured.ml),
        other_ml: one.other.and_then(|other| Figure::ml(other.ml)),
        excess_ml: one.excess.and_then(|excess| Figure::ml(excess.ml)),
        excess_percent: one.excess.and_then(|excess| Figure::new(excess.percent, 1)),
    }
}

fn detectable(one: &Detectable) -> DetectableBlock {
    DetectableBlock {
        setting: one.setting.word(),
        words: match one.setting {
            Setting::SameSitting => "at one sitting",
            Setting::BetweenVisits => "between visits",
            Setting::TwoRepeats => "between visits, every mark read twice",
        },
        sd_ml: Figure::ml(one.sd_ml),
        sd_percent: Figure::new(one.sd_percent, 1),
        change_ml: Figure::ml(one.change_ml),
        change_percent: Figure::new(one.change_percent, 1),
    }
}
