//! Owns the comparison of single girths with the last visit: one mark that moved otherwise than the rest.
//!
//! Source: house rule of plausibility; found 53 to 74 % of wrong units digits in simulation, at 4 % of limbs
//! asked without cause.

use jiff::civil::Date;

use super::girths::{GirthAt, Girths};
use super::{MarkPlace, Record};
use crate::anatomy::Side;
use crate::quantity::Girth;
use crate::rules::{NumberId, Rules};

/// A mark that moved otherwise than the others since the last visit.
#[derive(Clone, Copy, Debug)]
pub struct SinceVisit {
    /// Which mark.
    pub place: MarkPlace,
    /// Its girth then.
    pub was: Girth,
    /// Its girth now.
    pub now: Girth,
    /// The day of the earlier visit.
    pub on: Date,
    /// Its relative change against the mean change of the others, in SD.
    pub away_sd: f64,
}

/// The limb at the last earlier visit.
#[derive(Clone, Debug)]
pub(super) struct Last {
    girths: Girths,
    on: Date,
}

impl Last {
    /// The marks of a side at the last of the earlier visits (oldest first) that has them.
    pub(super) fn of(record: &Record, earlier: &[&Record], side: Side, rules: &Rules) -> Option<Self> {
        let mut comparable = earlier.iter().rev().filter(|one| one.positions_from == record.positions_from);
        comparable.find_map(|one| {
            Some(Self { girths: Girths::of(one.marks_of(side)?, one.limb, rules), on: one.measured_on })
        })
    }
}

/// One mark at both visits.
#[derive(Clone, Copy, Debug)]
struct Moved {
    was: GirthAt,
    now: GirthAt,
    change: f64,
    variance: f64,
}

impl Moved {
    fn new(was: GirthAt, now: GirthAt, natural: f64) -> Self {
        let relative = |one: GirthAt| (one.sd_cm / one.cm()).powi(2);
        Self {
            was,
            now,
            change: now.cm().ln() - was.cm().ln(),
            variance: relative(was) + relative(now) + natural.powi(2),
        }
    }
}

/// How far each mark's change lies from the mean change of the others, in SD; empty below two shared marks.
fn away(moved: &[Moved]) -> Vec<f64> {
    let count = f64::from(u32::try_from(moved.len()).unwrap_or(u32::MAX)) - 1.0;
    if count < 1.0 {
        return Vec::new();
    }
    let sum: f64 = moved.iter().map(|one| one.change).sum();
    let variances: f64 = moved.iter().map(|one| one.variance).sum();
    let of = |one: &Moved| {
        let others = (sum - one.change) / count;
        let variance = one.variance + (variances - one.variance) / count.powi(2);
        (one.change - others) / variance.sqrt()
    };
    moved.iter().map(of).collect()
}

/// How far the mark that moved most lies from the others, in SD.
pub(super) fn farthest(
    girths: &Girths,
    last: &Last,
    rules: &Rules,
    is_skipped: impl Fn(MarkPlace) -> bool,
) -> f64 {
    away(&moved(girths, last, rules, is_skipped)).iter().fold(0.0, |worst, one| worst.max(one.abs()))
}

fn moved(girths: &Girths, last: &Last, rules: &Rules, is_skipped: impl Fn(MarkPlace) -> bool) -> Vec<Moved> {
    let natural = rules.number(NumberId::NaturalChange);
    let open = girths.0.iter().filter(|one| !is_skipped(one.place));
    open.filter_map(|now| Some(Moved::new(last.girths.same(now.place)?, *now, natural))).collect()
}

/// The marks that moved otherwise than the others: the farthest one, or both where only two are shared.
/// `is_skipped` marks are confirmed, or asked about already.
pub(super) fn since_visit(
    girths: &Girths,
    last: &Last,
    rules: &Rules,
    is_skipped: impl Fn(MarkPlace) -> bool,
) -> Vec<SinceVisit> {
    let moved = moved(girths, last, rules, is_skipped);
    let away = away(&moved);
    let worst = away.iter().fold(0.0_f64, |worst, one| worst.max(one.abs()));
    if worst <= rules.number(NumberId::VisitChangeSd) {
        return Vec::new();
    }
    let far = moved.iter().zip(away).filter(|(_, away)| away.abs() >= worst - 1e-9);
    let asked = far.filter_map(|(one, away_sd)| {
        let girth = |one: GirthAt| Girth::from_tenths(one.tenths);
        Some(SinceVisit {
            place: one.now.place,
            was: girth(one.was)?,
            now: girth(one.now)?,
            on: last.on,
            away_sd,
        })
    });
    asked.collect()
}
