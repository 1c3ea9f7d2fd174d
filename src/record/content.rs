//! Owns the record's content: one visit of one client.

use jiff::civil::{Date, Time};

use super::{Cause, LimbRecord, Mark, Prescribed, Screening};
use crate::anatomy::{Limb, Side};
use crate::input::{Named, Spot, Text};
use crate::quantity::Position;

/// Adult or child.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AgeBand {
    /// Adult bands hold.
    Adult,
    /// Under 16: adult bands are off; always cleared first.
    Child,
}

/// Which side is affected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Affected {
    /// One side.
    One(Side),
    /// Both: no excess against the other side.
    Both,
    /// Neither.
    Neither,
}

impl Affected {
    /// The words that files and reports use.
    pub const WORDS: [(&'static str, Self); 4] = [
        ("left", Self::One(Side::Left)),
        ("right", Self::One(Side::Right)),
        ("both", Self::Both),
        ("none", Self::Neither),
    ];

    /// The word for it.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(_, one)| *one == self).map_or("", |(word, _)| word)
    }

    /// Whether a side is affected.
    pub fn includes(self, side: Side) -> bool {
        match self {
            Self::One(one) => one == side,
            Self::Both => true,
            Self::Neither => false,
        }
    }
}

/// The zero of positions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Origin {
    /// Wrist crease.
    Wrist,
    /// Ulnar styloid.
    Styloid,
    /// Tip of the middle finger.
    Fingertip,
    /// Heel.
    Heel,
    /// Floor, standing.
    Floor,
}

impl Origin {
    /// The words that files use.
    pub const WORDS: [(&'static str, Self); 5] = [
        ("wrist", Self::Wrist),
        ("styloid", Self::Styloid),
        ("fingertip", Self::Fingertip),
        ("heel", Self::Heel),
        ("floor", Self::Floor),
    ];

    /// The word for it.
    pub fn name(self) -> &'static str {
        Self::WORDS.iter().find(|(_, origin)| *origin == self).map_or("", |(word, _)| word)
    }

    /// The limb it belongs to.
    pub fn limb(self) -> Limb {
        match self {
            Self::Wrist | Self::Styloid | Self::Fingertip => Limb::Arm,
            Self::Heel | Self::Floor => Limb::Leg,
        }
    }
}

/// How volume is worked out from girths.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum VolumeMethod {
    /// A cut cone between each two marks.
    Frustum,
    /// A disc around each mark.
    Disc,
}

impl VolumeMethod {
    /// The words that files and reports use.
    pub const WORDS: [(&'static str, Self); 2] = [("frustum", Self::Frustum), ("disc", Self::Disc)];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Frustum => "frustum",
            Self::Disc => "disc",
        }
    }
}

/// Known allergies to materials.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Allergies {
    /// The question is open.
    #[default]
    NotAsked,
    /// Asked, none.
    None,
    /// Words as written, at least one.
    Some(Vec<Named>),
}

/// Places of the keys that other files are held against.
#[derive(Clone, Copy, Debug)]
pub struct RecordSpots {
    /// Of `client`.
    pub client: Spot,
    /// Of `limb`.
    pub limb: Spot,
    /// Of `measured_on`.
    pub measured_on: Spot,
    /// Of `affected`.
    pub affected: Spot,
}

/// One visit, checked: one limb, or both (then the left one first).
#[derive(Clone, Debug)]
pub struct Record {
    /// The file's name as the user gave it.
    pub file: String,
    /// The clinic's reference, never a name.
    pub client: Text,
    /// The day of measuring.
    pub measured_on: Date,
    /// The local time of measuring, if it was written.
    pub measured_at: Option<Time>,
    /// Who measured.
    pub measured_by: Option<Text>,
    /// Adult or child.
    pub age_band: AgeBand,
    /// Arm or leg.
    pub limb: Limb,
    /// The limbs to be fitted: one, or left and right. Never empty.
    pub limbs: Vec<LimbRecord>,
    /// Which side is affected.
    pub affected: Affected,
    /// Why it is swollen.
    pub cause: Cause,
    /// Posture while measuring.
    pub posture: Option<Text>,
    /// The zero of positions.
    pub positions_from: Origin,
    /// What was prescribed for the client (a limb may have its own).
    pub prescribed: Option<Prescribed>,
    /// Screening answers that are the client's; a limb has its own beside them.
    pub screening: Screening,
    /// Known allergies to materials.
    pub allergies: Allergies,
    /// Questions answered by their word: a landmark, `affected`, `thinner`, `lengths`, `positions`, `arterial`, `client`.
    pub confirmed: Vec<Named>,
    /// Findings cleared that name no side.
    pub cleared: Vec<super::Cleared>,
    /// Dates of infections of the limb, as written outside a side.
    pub infections: Vec<Date>,
    /// The dominant hand or leg.
    pub dominance: Option<Side>,
    /// Whether it was measured before treatment.
    pub baseline: bool,
    /// Home routines that were shown.
    pub shown: Vec<Text>,
    /// Body weight, kg.
    pub weight_kg: Option<f64>,
    /// Volume method.
    pub volume_method: VolumeMethod,
    /// Places in the file.
    pub spots: RecordSpots,
}

impl Record {
    /// Whether both sides are to be fitted.
    pub fn is_both(&self) -> bool {
        self.limbs.len() > 1
    }

    /// The limb of a side.
    pub fn limb_of(&self, side: Side) -> Option<&LimbRecord> {
        self.limbs.iter().find(|limb| limb.side == side)
    }

    /// The marks of the other side: `other_limb`, or under `limb: both` the other limb of this record.
    pub fn other_marks<'r>(&'r self, limb: &'r LimbRecord) -> Option<&'r [Mark]> {
        match &limb.other_limb {
            Some(marks) => Some(marks),
            None => self.limbs.iter().find(|one| one.side != limb.side).map(|one| one.marks.as_slice()),
        }
    }

    /// Whether what both limbs give together is told under this one: of two limbs the affected one, else the
    /// first, so that it is said once.
    pub fn tells_pair(&self, limb: &LimbRecord) -> bool {
        match self.affected {
            Affected::One(side) if self.is_both() => side == limb.side,
            _ => self.limbs.first().is_none_or(|first| first.side == limb.side),
        }
    }

    /// Whether a question of a limb was answered, at the top of the record or for its side.
    pub fn is_confirmed(&self, limb: &LimbRecord, what: super::Confirmable) -> bool {
        let mut words = self.confirmed.iter().chain(&limb.confirmed);
        words.any(|one| super::Confirmable::parse(self.limb, &one.text) == Some(what))
    }

    /// The infections of a limb, oldest first: as written at the top, and for its side.
    pub fn infections_of(&self, limb: &LimbRecord) -> Vec<Date> {
        let mut all: Vec<Date> = self.infections.iter().chain(&limb.infections).copied().collect();
        all.sort_unstable();
        all.dedup();
        all
    }

    /// Where the limb proper begins (wrist or ankle): the mark of that landmark, else zero where positions are
    /// taken from the wrist; none where it cannot be told.
    pub fn start_of(&self, marks: &[Mark]) -> Option<Position> {
        let reference = self.limb.reference();
        let marked = marks.iter().find(|mark| mark.landmark == Some(reference)).map(|mark| mark.at);
        marked.or_else(|| match self.positions_from {
            Origin::Wrist | Origin::Styloid => Position::from_tenths(0),
            Origin::Fingertip | Origin::Heel | Origin::Floor => None,
        })
    }

    /// The marks of the limb proper: not on hand or foot, by landmark or, for serial marks, by position.
    pub fn limb_marks<'m>(&self, marks: &'m [Mark]) -> Vec<&'m Mark> {
        let start = self.start_of(marks);
        marks
            .iter()
            .filter(|mark| match mark.landmark {
                Some(landmark) => !landmark.on_extremity(),
                None => start.is_none_or(|start| mark.at >= start),
            })
            .collect()
    }

    /// The marks of a side, fitted or not.
    pub fn marks_of(&self, side: Side) -> Option<&[Mark]> {
        if let Some(limb) = self.limb_of(side) {
            return Some(&limb.marks);
        }
        self.limbs.first().and_then(|limb| limb.other_limb.as_deref())
    }

    /// The prescription that holds for a limb.
    pub fn prescribed_for<'r>(&'r self, limb: &'r LimbRecord) -> Option<&'r Prescribed> {
        limb.prescribed.as_ref().or(self.prescribed.as_ref())
    }
}
