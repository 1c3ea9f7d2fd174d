//! Owns the course of one limb.

use jiff::civil::Date;

use super::{Change, Due, GirthSince, Infections, Ready, RelativeChange, Since, Visit, Worsening};
use crate::anatomy::Side;
use crate::record::GarmentInUse;

/// The course of one limb over its visits.
#[derive(Clone, Debug)]
pub struct LimbCourse {
    /// Which limb.
    pub side: Side,
    /// Its visits, oldest first; the last is the one that is judged.
    pub visits: Vec<Visit>,
    /// The changes of the newest visit, since the first of its series and since the last; empty where it
    /// begins a series.
    pub changes: Vec<Change>,
    /// Since the baseline before treatment, where one is marked and both limbs were measured.
    pub relative: Option<RelativeChange>,
    /// Whether it is ready for a garment; none without an earlier visit in the newest series.
    pub ready: Option<Ready>,
    /// Whether the swelling has grown: of the whole limb, else of the part below the joint.
    pub worsening: Option<Worsening>,
    /// The change since the visit at which the newest garment in use was fitted; none where no garment is
    /// in use, or the newest visit is that visit.
    pub since_given: Option<Change>,
    /// The girths of hand or foot since the last visit that has them.
    pub hand_or_foot: Vec<GirthSince>,
    /// The garments in use: of each label the last given, by the last record that names any.
    pub garments: Vec<GarmentInUse>,
    /// What is due for the garments in use, soonest first.
    pub due: Vec<Due>,
    /// Its infections.
    pub infections: Infections,
}

impl LimbCourse {
    /// The change since the first or the last visit.
    pub fn change(&self, since: Since) -> Option<&Change> {
        self.changes.iter().find(|one| one.since == since)
    }

    /// The visit at which a garment that was given on a day was fitted: the last one up to that day, by its
    /// place; none where it is the newest, or there is none.
    pub fn fitted(&self, given: Date) -> Option<usize> {
        let at = self.visits.iter().rposition(|visit| visit.measured_on <= given)?;
        (at + 1 < self.visits.len()).then_some(at)
    }

    /// The change since the fitting, where the limb has grown by more than measuring explains: the garment
    /// is looked at again.
    pub fn grown_since_given(&self) -> Option<&Change> {
        self.since_given.as_ref().filter(|one| one.volume.percent > 0.0 && one.volume.beyond())
    }

    /// The days on which a series begins anew, after the first: volumes before and after are shown beside
    /// one another, without a difference.
    pub fn new_baselines(&self) -> Vec<Date> {
        self.visits
            .windows(2)
            .filter_map(|pair| match pair {
                [one, other] if other.series != one.series => Some(other.measured_on),
                _ => None,
            })
            .collect()
    }
}
