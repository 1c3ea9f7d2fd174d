//! Owns the numbers that volume and its course are judged by, taken from the rules.

use crate::rules::{NumberId, Rules, TapeSd};

/// The numbers. Their bases stand in the rules; what the rules leave out is a house rule named here.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VolumeNumbers {
    /// The error of the tape.
    pub tape: TapeSd,
    /// SD of one volume between visits, % of it.
    pub sd_between_percent: f64,
    /// The same where every mark is read twice.
    pub sd_repeats_percent: f64,
    /// Loss below which a limb has settled, % a week.
    pub settled_below_percent: f64,
    /// Days looked back over.
    pub window_days: f64,
    /// Days looked back over where those hold fewer than [`Self::WINDOW_VISITS`] visits.
    pub wide_window_days: f64,
    /// Least visits of a line.
    pub least_visits: f64,
    /// Least days that they span.
    pub least_span_days: f64,
    /// Relative volume change of the early triggers, %: the recalled one and the published one.
    pub early_percent: (f64, f64),
    /// Change of weight that asks for measuring again, %.
    pub weight_change_percent: f64,
    /// Infections within twelve months that ask for review.
    pub infections_a_year: f64,
    /// Days of a first look where harm might go unnoticed.
    pub first_look_days: i32,
    /// Days to the first re-check, soonest and latest.
    pub recheck_days: (i32, i32),
    /// Months between regular visits, soonest and latest.
    pub regular_months: (i32, i32),
    /// Months to the renewal: of one garment alone, of two in turn, of a child's.
    pub renewal_months: (i32, i32, i32),
    /// Hours of wear a day that those months assume.
    pub wear_day_hours: f64,
}

impl VolumeNumbers {
    /// Visits that the last days have to hold, else the wide window counts. Basis: house rule.
    pub const WINDOW_VISITS: usize = 4;
    /// Days before the renewal on which the limb is measured for it: two weeks of making. Basis: house rule.
    pub const MAKING_DAYS: i32 = 14;
    /// Difference of position that counts as the same place, cm: the tape's step. Basis: house rule.
    pub const SAME_PLACE_CM: f64 = 0.1;
    /// Difference of the hour that is named, hours. Basis: house rule.
    pub const HOURS_APART: f64 = 3.0;
    /// Chance with which the stated number of further visits would decide. Basis: house rule.
    pub const DECIDE_CHANCE: f64 = 0.8;

    /// Those of a set of rules.
    pub fn of(rules: &Rules) -> Self {
        let percent = |id| 100.0 * rules.number(id);
        // Days and months are written as whole numbers of a few hundred at most.
        #[expect(clippy::cast_possible_truncation, reason = "whole and small; a wrong rule saturates")]
        let whole = |id| rules.number(id).round() as i32;
        Self {
            tape: rules.tape(),
            sd_between_percent: percent(NumberId::VisitVolumeSd),
            sd_repeats_percent: percent(NumberId::VisitVolumeSdRepeats),
            settled_below_percent: percent(NumberId::ReadyLoss),
            window_days: rules.number(NumberId::ReadyDays),
            wide_window_days: rules.number(NumberId::ReadyDaysLong),
            least_visits: rules.number(NumberId::ReadyVisits),
            least_span_days: rules.number(NumberId::ReadySpan),
            early_percent: (percent(NumberId::EarlyChange), percent(NumberId::EarlyChangePublished)),
            weight_change_percent: percent(NumberId::WeightChange),
            infections_a_year: rules.number(NumberId::InfectionsAYear),
            first_look_days: whole(NumberId::FirstLook),
            recheck_days: (whole(NumberId::RecheckFrom), whole(NumberId::RecheckTo)),
            regular_months: (whole(NumberId::RecheckLaterFrom), whole(NumberId::RecheckLaterTo)),
            renewal_months: (
                whole(NumberId::RenewAlone),
                whole(NumberId::RenewInTurn),
                whole(NumberId::RenewChild),
            ),
            wear_day_hours: rules.number(NumberId::WearDay),
        }
    }
}
