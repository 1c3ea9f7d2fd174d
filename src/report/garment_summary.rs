//! Owns the outcome in words where one garment is asked about or worked out.

use super::Summary;
use crate::assessment::{Assessment, GradientAssessment, Outcome};
use crate::finding::{Finding, FindingId};
use crate::graduation::Grade;
use crate::rules::Severity;

/// What to do before anything is fitted, whatever the figures say.
const ORDER: &str = "A made-to-measure order is made and checked by a certified fitter.";

pub(super) fn summary(found: &GradientAssessment) -> Summary {
    let clear = || {
        let verdict = found.verdict().and_then(|one| one.graduation.as_ref()).and_then(|one| one.verdict);
        let sentence = match verdict {
            Some(Grade::Possible) => {
                "The pressure falls toward the trunk in all likelihood; a rise at one step is possible."
            }
            _ if found.by_readings => {
                "By the readings the pressure falls toward the trunk at every judged step."
            }
            _ => "The pressure falls toward the trunk at every judged step, by the estimate.",
        };
        let next = "Check the size against its chart with `tapeline check`; look again on the limb at the trial fitting.";
        (sentence.to_owned(), next.to_owned())
    };
    of(&found.base, clear)
}

/// The same for a garment that was worked out.
pub(super) fn pattern_summary(found: &Assessment) -> Summary {
    of(found, || {
        let sentence = "This fabric gives the wanted pressure, and its read-back falls toward the trunk.";
        (sentence.to_owned(), ORDER.to_owned())
    })
}

fn of(found: &Assessment, clear: impl Fn() -> (String, String)) -> Summary {
    let first = |wanted: fn(&Finding) -> bool| found.findings.iter().find(|one| wanted(one));
    let said = |one: Option<&Finding>, lead: &str| {
        one.map_or_else(
            || (lead.to_owned(), String::new()),
            |one| (format!("{lead}{}", one.sentence), one.next.clone()),
        )
    };
    let (sentence, next) = match found.outcome {
        Some(Outcome::Stop) => {
            let stop = first(|one| one.severity == Severity::Stop && one.cleared.is_none());
            said(stop, "Figures only, do not fit. ")
        }
        Some(Outcome::Refer) => {
            let count = found.findings.iter().filter(|one| one.is_open_review()).count();
            let lead = if count > 1 { format!("{count} reviews are open. ") } else { String::new() };
            said(first(Finding::is_open_review), &lead)
        }
        Some(Outcome::Incomplete) => said(first(|one| one.is_question && one.place.is_client()), ""),
        Some(Outcome::Unproven) => said(first(|one| one.id == FindingId::GradientNotJudged), ""),
        _ => clear(),
    };
    let sentence = if sentence.is_empty() { "Something is missing.".to_owned() } else { sentence };
    Summary { sentence: sentence.trim().to_owned(), next, best_chart: None }
}
