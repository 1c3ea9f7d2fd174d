//! Owns what does not agree with itself, or with the calendar, before any outcome.

use jiff::civil::Date;

use super::{Age, Case};
use crate::anatomy::{Limb, Side};
use crate::record::{Affected, Clinical, Confirmable, Index};
use crate::rules::{NumberId, Severity};

/// What a date belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DateOf {
    /// The measuring.
    Measured,
    /// The screening, or one of its groups.
    Asked,
    /// The arterial values.
    Taken,
    /// A garment given.
    Given,
    /// An infection.
    Infection,
}

/// Something that does not agree. None of these is ever silent.
#[derive(Clone, Debug, PartialEq)]
pub enum Inconsistent {
    /// The limb to be fitted is not the affected one: a question, `affected`.
    NotAffected {
        /// The limb.
        side: Side,
        /// Which side is affected.
        affected: Affected,
        /// Whether the record confirms it.
        confirmed: bool,
    },
    /// A date lies ahead of today: incomplete.
    Ahead {
        /// Of what.
        of: DateOf,
        /// The date.
        on: Date,
    },
    /// The girths are old: a caution, or incomplete beyond the limit.
    GirthsOld {
        /// When they were taken.
        on: Date,
        /// Whether they have to be taken again.
        beyond: bool,
    },
    /// Girths taken soon after an infection: a caution, measured again before made to measure.
    SoonAfterInfection {
        /// The infection.
        on: Date,
    },
    /// A stated index and its quotient lie apart: both are judged, and it is a question, `arterial`.
    IndexApart {
        /// As stated.
        stated: f64,
        /// Ankle over brachial pressure.
        quotient: f64,
        /// Whether the record confirms it.
        confirmed: bool,
    },
    /// A clinical assessment without role, date or what was found: it does not count.
    AssessmentNotCounted {
        /// Whether the role is missing, or is none whose assessment counts.
        role: bool,
        /// Whether the date is missing.
        date: bool,
        /// Whether it is missing what was found.
        found: bool,
    },
    /// Arterial values are old: a caution, or no route beyond the limit.
    ArterialOld {
        /// When they were taken.
        on: Date,
        /// Whether they pass no more.
        beyond: bool,
    },
    /// Arterial values without a date are no route.
    ArterialUndated,
    /// Arterial values on an arm: they are not used.
    ArterialOnArm,
}

impl Inconsistent {
    /// Whether the report cannot be completed before it is answered.
    pub fn is_open(&self) -> bool {
        match self {
            Self::NotAffected { confirmed, .. } | Self::IndexApart { confirmed, .. } => !confirmed,
            Self::Ahead { .. } => true,
            Self::GirthsOld { beyond, .. } => *beyond,
            Self::SoonAfterInfection { .. }
            | Self::AssessmentNotCounted { .. }
            | Self::ArterialOld { .. }
            | Self::ArterialUndated
            | Self::ArterialOnArm => false,
        }
    }

    /// What it weighs.
    pub fn severity(&self) -> Severity {
        match self {
            Self::ArterialOnArm => Severity::Note,
            Self::NotAffected { confirmed, .. } | Self::IndexApart { confirmed, .. } if *confirmed => {
                Severity::Note
            }
            _ => Severity::Caution,
        }
    }
}

/// Everything about the limb of `case` that does not agree.
pub fn inconsistencies(case: &Case<'_>) -> Vec<Inconsistent> {
    let mut all = Vec::new();
    let record = case.record;
    if !record.affected.includes(case.limb.side) {
        let confirmed = record.is_confirmed(case.limb, Confirmable::Affected);
        all.push(Inconsistent::NotAffected { side: case.limb.side, affected: record.affected, confirmed });
    }
    all.extend(dates_ahead(case));
    all.extend(girths(case));
    all.extend(arterial(case));
    all
}

fn dates_ahead(case: &Case<'_>) -> Vec<Inconsistent> {
    let record = case.record;
    let blocks = [&record.screening, &case.limb.screening];
    let mut dates = vec![(DateOf::Measured, record.measured_on)];
    for block in blocks {
        dates.extend(block.asked_on.map(|on| (DateOf::Asked, on)));
        dates.extend(block.asked.iter().map(|(_, on)| (DateOf::Asked, *on)));
    }
    dates.extend(case.limb.arterial.iter().filter_map(|one| one.taken_on).map(|on| (DateOf::Taken, on)));
    dates.extend(case.limb.garments.iter().map(|one| (DateOf::Given, one.given_on)));
    dates.extend(record.infections_of(case.limb).into_iter().map(|on| (DateOf::Infection, on)));
    let mut all: Vec<Inconsistent> = Vec::new();
    for (of, on) in dates.into_iter().filter(|(_, on)| *on > case.today) {
        let ahead = Inconsistent::Ahead { of, on };
        if !all.contains(&ahead) {
            all.push(ahead);
        }
    }
    all
}

fn girths(case: &Case<'_>) -> Vec<Inconsistent> {
    let on = case.record.measured_on;
    let over = |id| case.rules.time(id).is_over(on, case.today);
    let mut all = Vec::new();
    if over(NumberId::GirthAgeLimit) {
        all.push(Inconsistent::GirthsOld { on, beyond: true });
    } else if over(NumberId::GirthAgeCaution) {
        all.push(Inconsistent::GirthsOld { on, beyond: false });
    }
    let rest = case.rules.time(NumberId::InfectionRest);
    let recent = |day: &Date| *day <= on && rest.last_day(*day).is_some_and(|last| on < last);
    if let Some(on) = case.record.infections_of(case.limb).into_iter().filter(recent).max() {
        all.push(Inconsistent::SoonAfterInfection { on });
    }
    all
}

fn arterial(case: &Case<'_>) -> Vec<Inconsistent> {
    let Some(block) = &case.limb.arterial else { return Vec::new() };
    if case.record.limb == Limb::Arm {
        return vec![Inconsistent::ArterialOnArm];
    }
    let mut all = Vec::new();
    if let (Some(Index::Value(stated)), Some(quotient)) = (block.abpi, block.quotient())
        && (stated - quotient).abs() > case.rules.number(NumberId::IndexGap) + 1e-9
    {
        let confirmed = case.record.is_confirmed(case.limb, Confirmable::Arterial);
        all.push(Inconsistent::IndexApart { stated, quotient, confirmed });
    }
    if block.clinical == Some(Clinical::Adequate) {
        let by = |role| case.rules.assessment.by.contains(&role);
        let role = !block.clinical_by.is_some_and(by);
        let (date, found) = (block.taken_on.is_none(), block.clinical_found.is_none());
        if role || date || found {
            all.push(Inconsistent::AssessmentNotCounted { role, date, found });
        }
    }
    match super::arterial::age(block, case) {
        Age::Old(on) => all.push(Inconsistent::ArterialOld { on, beyond: false }),
        Age::RunOut(on) => all.push(Inconsistent::ArterialOld { on, beyond: true }),
        Age::Undated => all.push(Inconsistent::ArterialUndated),
        Age::Fresh(_) | Age::Ahead(_) => {}
    }
    all
}
