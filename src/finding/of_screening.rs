//! Owns the findings about screening answers and arterial values.

use super::words::{list, mmhg_words};
use super::{ClearedBy, Finding, FindingId, FindingPlace};
use crate::record::Cleared;
use crate::rules::{Basis, ItemRule, Severity};
use crate::screening::ArterialHit;

impl ClearedBy {
    /// As the record states it.
    pub fn of(cleared: &Cleared) -> Self {
        Self { role: cleared.role.text.clone(), reason: cleared.reason.clone(), on: cleared.on.to_string() }
    }
}

impl Finding {
    /// A screening item answered yes.
    pub fn item(item: &ItemRule, cleared: Option<&Cleared>) -> Self {
        let sentence =
            if item.emergency { format!("EMERGENCY. {}", item.finding) } else { item.finding.clone() };
        let mut finding = Self::new(
            FindingId::Item(item.id.clone()),
            item.severity,
            FindingPlace::record("screening"),
            item.basis,
            sentence,
        )
        .next(item.next.clone())
        .source(item.source.clone());
        if item.severity != Severity::Stop {
            finding.cleared = cleared.map(ClearedBy::of);
        }
        finding
    }

    /// An arterial value that meets a limit.
    pub fn arterial(hit: &ArterialHit, cleared: Option<&Cleared>) -> Self {
        let rule = &hit.rule;
        let id = FindingId::Arterial(rule.value.word().to_owned());
        let mut finding =
            Self::new(id, rule.severity, FindingPlace::record("arterial"), rule.basis, rule.finding.clone())
                .next(rule.next.clone())
                .source(rule.source.clone())
                .with("value", hit.value);
        if rule.severity != Severity::Stop {
            finding.cleared = cleared.map(ClearedBy::of);
        }
        finding
    }

    /// A leg without index.
    pub fn no_abpi(severity: Severity, target: Option<f64>, limit: f64, cleared: Option<&Cleared>) -> Self {
        let target_words = target.map_or_else(
            || "the pressure in question is open or not known".to_owned(),
            |target| format!("the pressure in question reaches {}", mmhg_words(target)),
        );
        let sentence = if severity == Severity::Care {
            format!(
                "No ankle-brachial pressure index is recorded; {target_words}, not above {}.",
                mmhg_words(limit)
            )
        } else {
            format!(
                "No ankle-brachial pressure index is recorded and no clinical assessment covers the pressure: {target_words}."
            )
        };
        let mut finding = Self::new(
            FindingId::NoAbpi,
            severity,
            FindingPlace::record("arterial"),
            Basis::Published,
            sentence,
        )
        .source("Derbyshire JAPC")
        .next(if severity == Severity::Care {
            "Ask again about the arteries at every visit."
        } else {
            "Take the index, or have the arteries assessed; a named clinician clears it."
        });
        if let Some(target) = target {
            finding = finding.with("target_mmhg", target);
        }
        finding.cleared = cleared.map(ClearedBy::of);
        finding
    }

    /// The clinical assessment found the supply inadequate.
    pub fn clinical_inadequate(cleared: Option<&Cleared>) -> Self {
        let sentence =
            "The clinical vascular assessment judged the blood supply of the leg inadequate.".to_owned();
        let mut finding = Self::new(
            FindingId::ClinicalInadequate,
            Severity::Review,
            FindingPlace::record("arterial"),
            Basis::Published,
            sentence,
        )
        .source("Derbyshire JAPC")
        .next("The vascular team decides; a named clinician clears it.");
        finding.cleared = cleared.map(ClearedBy::of);
        finding
    }

    /// Questions that are open.
    pub fn not_answered(open: &[String], asked: bool) -> Self {
        let sentence = match open {
            _ if !asked && open.len() > SHOWN_QUESTIONS => {
                format!(
                    "The screening is not asked: {} questions are open. An open question is never a pass.",
                    open.len()
                )
            }
            [one] => format!("One question is not answered: {one}. An open question is never a pass."),
            many if many.len() <= SHOWN_QUESTIONS => {
                format!(
                    "{} questions are not answered: {}. An open question is never a pass.",
                    many.len(),
                    list(many)
                )
            }
            many => format!(
                "{} questions are not answered: {} and {} more. An open question is never a pass.",
                many.len(),
                many.get(..SHOWN_QUESTIONS).unwrap_or_default().join(", "),
                many.len() - SHOWN_QUESTIONS
            ),
        };
        Self::new(
            FindingId::NotAnswered,
            Severity::Care,
            FindingPlace::record("screening"),
            Basis::HouseRule,
            sentence,
        )
        .next("Ask them and answer each in the record.")
        .question()
    }

    /// The screening is old or not dated.
    pub fn screening_old(asked_on: Option<&str>, months: f64, basis: Basis) -> Self {
        let sentence = asked_on.map_or_else(
            || "The screening is not dated.".to_owned(),
            |on| format!("The screening was asked on {on}, more than {months:.0} months ago."),
        );
        Self::new(FindingId::ScreeningOld, Severity::Care, FindingPlace::record("screening"), basis, sentence)
            .next("Ask again and date it with `asked_on`.")
    }

    /// The arterial values are old or not dated.
    pub fn arterial_old(on: Option<&str>, months: f64, basis: Basis) -> Self {
        let sentence = on.map_or_else(
            || "The arterial values are not dated.".to_owned(),
            |on| format!("The arterial values were taken on {on}, more than {months:.0} months ago."),
        );
        Self::new(FindingId::ArterialOld, Severity::Care, FindingPlace::record("arterial"), basis, sentence)
            .next("Take them again, or date them with `on`.")
    }

    /// Cleared by someone who may not.
    pub fn cleared_in_vain(cleared: &Cleared, item: &ItemRule) -> Self {
        let sentence = format!(
            "`{}` was cleared by `{}`; only a role that names one of these clears it: {}. It still stands.",
            item.id,
            cleared.role.text,
            item.cleared_by.join(", "),
        );
        Self::new(
            FindingId::ClearedInVain,
            Severity::Care,
            FindingPlace::record("screening"),
            item.basis,
            sentence,
        )
        .source(item.source.clone())
    }
}

/// Open questions that the line names before it only counts (house rule: what fits two lines).
const SHOWN_QUESTIONS: usize = 6;
