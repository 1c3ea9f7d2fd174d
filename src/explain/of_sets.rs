//! Owns the entries of the sets that grade an excess.

use super::of_rules::limbs;
use super::{Entry, Kind};
use crate::rules::{Cutoff, ExcessMeasure, Grade, Rules, SeveritySet};
use crate::words;

/// The name under which the two cut-offs are explained.
const CUTOFFS: &str = "two-cut-offs";

pub(super) fn entries(rules: &Rules) -> Vec<Entry> {
    let mut all: Vec<Entry> = rules.severity_sets.iter().map(of).collect();
    if let Some(first) = rules.cutoffs.first() {
        all.push(
            Entry::new(
                Kind::GradeSet,
                CUTOFFS,
                "Grades the excess by two cut-offs, none or mild, moderate, severe, by limb and dominance; body scans of one cohort, hand and foot apart.",
            )
            .rules(rules.cutoffs.iter().map(cutoff))
            .rests_on(first.basis.word(), &first.source),
        );
    }
    all
}

fn of(set: &SeveritySet) -> Entry {
    let of = match set.of {
        ExcessMeasure::Percent => "excess volume in % of the other limb",
        ExcessMeasure::Millilitres => "excess volume in mL",
        ExcessMeasure::GirthDifference => "largest difference of girth at one mark, in cm",
    };
    Entry::new(
        Kind::GradeSet,
        &set.set,
        format!("Grades the {of}, of {}. Never a verdict alone.", limbs(set.limbs)),
    )
    .rules(set.grades.iter().map(grade))
    .rests_on("beside each grade", &set.source)
    .then("Read it beside the course over several visits.")
}

fn grade(grade: &Grade) -> String {
    let ends =
        [("from", grade.at_least), ("above", grade.above), ("up to", grade.at_most), ("below", grade.below)];
    let ends: Vec<String> = ends
        .into_iter()
        .filter_map(|(word, limit)| limit.map(|limit| format!("{word} {}", words::plain(limit))))
        .collect();
    format!("{}: {} ({})", grade.grade, ends.join(" and "), grade.basis.word())
}

fn cutoff(cutoff: &Cutoff) -> String {
    let whose = match cutoff.dominant {
        Some(true) => "dominant ",
        Some(false) => "other ",
        None => "",
    };
    format!(
        "{whose}{}: moderate from {} %, severe from {} %",
        cutoff.limb.name(),
        words::plain(cutoff.moderate),
        words::plain(cutoff.severe)
    )
}
