//! Owns the arterial decision of one leg: every value judged, the worst wins, one other route where
//! values are missing.
//!
//! Source: the limits of the rules (Rabe 2020, Phlebology 35:447; bands of the foot; British Lymphology
//! Society 2018), each with its basis there.

use super::clearing::{Asked, clearing};
use super::{Age, Answer, ArterialFigure, CapHeld, Case, Clearing, JudgedValue, cap_mmhg};
use crate::quantity::mmhg;
use crate::record::{Arterial, Clinical, Index};
use crate::rules::{ArterialValue, ArterialWhen, Group, NumberId, Rules, Severity, Urgency};

/// The arterial decision of one leg.
#[derive(Clone, Debug)]
pub struct ArterialDecision {
    /// How old the values are; none where no block of values stands.
    pub age: Option<Age>,
    /// Every value given, judged.
    pub values: Vec<JudgedValue>,
    /// Whether a value or an assessment serves as a route: it is new enough and is no ankle pressure alone.
    pub has_route: bool,
    /// Whether the values pass: there is a route and nothing worse than a caution.
    pub passes: bool,
    /// How soon somebody has to act on a stop.
    pub stop_urgency: Urgency,
    /// Whether an item of circulation, diabetes or kidney failure is present or open.
    pub in_doubt: bool,
    /// The highest pressure that may be worn: the least of what is written.
    pub cap: Option<CapHeld>,
}

impl ArterialDecision {
    /// What it weighs that no route is there; none where one is, and beside a stop. `held` is the highest pressure in
    /// question, mmHg; none = unknown or open, which counts as above the limit.
    pub fn unknown(&self, held: Option<f64>, rules: &Rules) -> Option<Severity> {
        // Beside a stop, of whatever age, it adds nothing: the stop asks for the same values.
        if self.has_route || self.worst() == Some(Severity::Stop) {
            return None;
        }
        let low = held.is_some_and(|held| held <= rules.number(NumberId::NoValueLimit) + 1e-9);
        Some(if low && !self.in_doubt { Severity::Caution } else { Severity::ClearFirst })
    }

    /// The worst that the values weigh, whether cleared or not.
    pub fn worst(&self) -> Option<Severity> {
        self.values.iter().filter_map(|one| one.severity).min()
    }

    /// Whether a pressure lies above the cap.
    pub fn is_above_cap(&self, mmhg: f64) -> bool {
        self.cap.is_some_and(|cap| mmhg > cap.mmhg + 1e-9)
    }
}

/// What the values are judged beside: how the items were answered.
pub(super) type Answers<'a> = dyn Fn(&str) -> Answer + 'a;

/// How old the values of a block are.
pub(super) fn age(arterial: &Arterial, case: &Case<'_>) -> Age {
    let Some(on) = arterial.taken_on else { return Age::Undated };
    if on > case.today {
        Age::Ahead(on)
    } else if case.rules.time(NumberId::ArterialAgeLimit).is_over(on, case.today) {
        Age::RunOut(on)
    } else if case.rules.time(NumberId::ArterialAgeCaution).is_over(on, case.today) {
        Age::Old(on)
    } else {
        Age::Fresh(on)
    }
}

/// The values of the leg: the record's, else those of the record that a re-order rests on.
pub(super) fn block_of<'a>(case: &Case<'a>, earlier: Option<&Case<'a>>) -> Option<&'a Arterial> {
    case.limb.arterial.as_ref().or_else(|| earlier.and_then(|one| one.limb.arterial.as_ref()))
}

/// Whether the toe pressure, new enough, passes.
pub(super) fn is_toe_sound(block: Option<&Arterial>, case: &Case<'_>) -> bool {
    let Some(block) = block.filter(|block| age(block, case).may_pass()) else { return false };
    block.toe.is_some_and(|toe| limit(case.rules, ArterialValue::ToePressure, mmhg(toe), |_| true).is_none())
}

/// Whether the values pass, without what was cleared.
pub(super) fn values_pass(block: Option<&Arterial>, case: &Case<'_>, answers: &Answers<'_>) -> bool {
    let Some(block) = block else { return false };
    let values = judge(block, case, answers);
    has_route(&values, age(block, case))
        && values.iter().all(|one| one.severity.is_none_or(|severity| severity >= Severity::Caution))
}

/// Stands for an artery that cannot be pressed shut: above every limit of an index (derived).
const BEYOND_ANY_INDEX: f64 = 1e6;

/// The decision of the leg of `case`; `answers` tells how an item was answered.
pub(super) fn arterial<'a>(
    case: &Case<'a>,
    earlier: Option<&Case<'a>>,
    answers: &dyn Fn(&str) -> Answer,
) -> ArterialDecision {
    let block = block_of(case, earlier);
    let written = block.and_then(|block| block.cap.as_ref()).and_then(|cap| cap_mmhg(cap, case.schemes));
    let age = block.map(|block| age(block, case));
    let mut values = block.map(|block| judge(block, case, answers)).unwrap_or_default();
    for one in &mut values {
        if one.severity == Some(Severity::ClearFirst) {
            let asked = Asked {
                id: one.value.word(),
                on: age.and_then(Age::date).filter(|on| *on <= case.today),
                sided: case.is_both(),
                capped: true,
                light_touch: false,
                arterial_pass: false,
                written_cap: written,
            };
            one.clearing = clearing(case, earlier, asked);
        }
    }
    let has_route = age.is_some_and(|age| has_route(&values, age));
    let passes =
        has_route && values.iter().all(|one| one.severity.is_none_or(|weight| weight >= Severity::Caution));
    let present = |id: &str| answers(id).is_present();
    let acute = ["arterial-rest-pain", "foot-wound", "open-wound"].into_iter().any(present);
    let circulation =
        case.rules.group(Group::Circulation).filter(|item| item.limbs.include(case.record.limb));
    let in_doubt = circulation
        .map(|item| item.id.as_str())
        .chain(["diabetes", "kidney-liver"])
        .any(|id| !answers(id).is_absent());
    let cap = least_cap(case, written, &values);
    ArterialDecision {
        age,
        values,
        has_route,
        passes,
        stop_urgency: if acute { Urgency::SameDay } else { Urgency::Soon },
        in_doubt,
        cap,
    }
}

/// The cap written with the values, and those of the clearings that count on them.
fn least_cap(case: &Case<'_>, written: Option<f64>, values: &[JudgedValue]) -> Option<CapHeld> {
    let written = written.map(|mmhg| CapHeld { mmhg, with_values: true });
    let cleared = values.iter().filter_map(|one| {
        let cap = one.clearing.counting()?.cap.as_ref()?;
        Some(CapHeld { mmhg: cap_mmhg(cap, case.schemes)?, with_values: false })
    });
    written.into_iter().chain(cleared).min_by(|a, b| a.mmhg.total_cmp(&b.mmhg))
}

/// An ankle pressure without an index is no route; neither is an assessment that does not count.
fn has_route(values: &[JudgedValue], age: Age) -> bool {
    age.may_pass() && values.iter().any(|one| one.value != ArterialValue::AnklePressure)
}

/// The worst limit that holds for a value: its place among the rules and what it weighs.
fn limit(
    rules: &Rules,
    value: ArterialValue,
    figure: f64,
    applies: impl Fn(ArterialWhen) -> bool,
) -> Option<(usize, Severity)> {
    let own = rules.arterial.iter().enumerate().filter(|(_, rule)| rule.value == value);
    own.filter(|(_, rule)| rule.holds(figure) && applies(rule.when))
        .map(|(place, rule)| (place, rule.severity))
        .min_by_key(|(_, severity)| *severity)
}

fn judge(block: &Arterial, case: &Case<'_>, answers: &Answers<'_>) -> Vec<JudgedValue> {
    let may_pass = age(block, case).may_pass();
    let at_toe = may_pass && (block.toe.is_some() || block.tcpo2.is_some());
    let stiff = ["diabetes", "kidney-liver"].into_iter().any(|id| answers(id).is_present());
    let applies = |when: ArterialWhen| match when {
        ArterialWhen::Always => true,
        ArterialWhen::DiabetesOrKidneys => stiff,
        ArterialWhen::NotDecidedAtToe => !at_toe,
    };
    let judged = |value: ArterialValue, figure: ArterialFigure, number: f64| {
        let found = limit(case.rules, value, number, applies);
        JudgedValue {
            value,
            figure,
            severity: found.map(|(_, severity)| severity),
            rule: found.map(|(place, _)| place),
            clearing: Clearing::Open,
        }
    };
    let mut values = Vec::new();
    match block.abpi {
        Some(Index::Value(index)) => {
            values.push(judged(ArterialValue::Abpi, ArterialFigure::Index(index), index));
        }
        Some(Index::NotCompressible) => {
            values.push(judged(ArterialValue::Abpi, ArterialFigure::NotCompressible, BEYOND_ANY_INDEX));
        }
        None => {}
    }
    if let Some(index) = block.quotient() {
        values.push(judged(ArterialValue::Abpi, ArterialFigure::Quotient(index), index));
    }
    let pressures = [
        (ArterialValue::AnklePressure, block.ankle_systolic),
        (ArterialValue::ToePressure, block.toe),
        (ArterialValue::Tcpo2, block.tcpo2),
    ];
    for (value, pressure) in pressures {
        if let Some(pressure) = pressure.map(mmhg) {
            values.push(judged(value, ArterialFigure::Mmhg(pressure), pressure));
        }
    }
    if let Some(index) = block.toe_brachial {
        values.push(judged(ArterialValue::ToeBrachial, ArterialFigure::Index(index), index));
    }
    values.extend(assessed(block, case));
    values.sort_by_key(|one| one.value);
    values
}

/// An adequate assessment counts with role, date and what was found; a bad one counts in any case.
fn assessed(block: &Arterial, case: &Case<'_>) -> Option<JudgedValue> {
    let clinical = block.clinical?;
    let severity = match clinical {
        Clinical::Adequate => {
            let by = block.clinical_by.is_some_and(|role| case.rules.assessment.by.contains(&role));
            if !by || block.clinical_found.is_none() || block.taken_on.is_none() {
                return None;
            }
            None
        }
        Clinical::Doubtful => Some(Severity::ClearFirst),
        Clinical::Inadequate => Some(Severity::Stop),
    };
    Some(JudgedValue {
        value: ArterialValue::Clinical,
        figure: ArterialFigure::Assessed(clinical),
        severity,
        rule: None,
        clearing: Clearing::Open,
    })
}
