//! Owns what stands against a garment, in the client's words, worst first.

use super::super::language::{Item, Texts};
use super::super::subject::concerns;
use crate::report::{FindingRow, Report};
use crate::rules::{Severity, Urgency};
use crate::words::capital;

/// One matter.
pub(super) struct Matter {
    /// How soon.
    pub(super) urgency: Urgency,
    /// The sentence, its date filled in.
    pub(super) say: String,
    /// What to do with the garment now worn.
    pub(super) worn: String,
    /// How strongly it is left off.
    pub(super) off: u8,
}

/// Every matter that stands, most urgent first; each sentence once.
pub(super) fn matters(report: &Report, texts: &Texts) -> Vec<Matter> {
    let heavy = |one: &FindingRow| matches!(one.severity, Severity::Stop | Severity::ClearFirst);
    let mut all = said_of(report, texts, &|one| heavy(one) || is_of_worn(one));
    if all.is_empty() || outcome_stands(report) {
        let item = outcome(report, texts);
        all.push(Matter { urgency: Urgency::Routine, say: item.say, worn: item.worn, off: item.off });
    }
    all
}

/// What speaks against the garment now worn, whatever the outcome.
pub(super) fn against_worn(report: &Report, texts: &Texts) -> Vec<Matter> {
    said_of(report, texts, &is_of_worn)
}

/// The strongest advice on a garment now worn: it comes off at once.
const AT_ONCE: u8 = 3;

/// Whether a garment in use has to come off at once.
pub(super) fn comes_off(report: &Report, texts: &Texts) -> bool {
    against_worn(report, texts).iter().any(|one| one.off >= AT_ONCE)
}

/// A caution that tells what to do with the garment now worn.
fn is_of_worn(one: &FindingRow) -> bool {
    let high = one.id == "worn-pressure" && one.urgency <= Urgency::Soon;
    let own =
        ["feeling-altered", "wear-harm", "worn-feeling", "worn-allergen", "worn-reading", "garment-outgrown"];
    let own = own.contains(&one.id.as_str());
    one.severity == Severity::Caution && (high || own)
}

/// The findings that stand and are `wanted`, most urgent first; each sentence once.
fn said_of(report: &Report, texts: &Texts, wanted: &dyn Fn(&FindingRow) -> bool) -> Vec<Matter> {
    let stands = |one: &&FindingRow| wanted(one) && !one.cleared && !one.open && concerns(report, one);
    let mut found: Vec<&FindingRow> = report.findings.iter().filter(stands).collect();
    // Numbness under a garment is said once, with the garment.
    if found.iter().any(|one| one.id == "worn-feeling") {
        found.retain(|one| one.id != "feeling-altered");
    }
    found.sort_by_key(|one| (one.urgency, one.severity));
    let mut all: Vec<Matter> = Vec::new();
    for finding in found {
        let Some(item) = texts.item(&finding.id, finding.severity == Severity::Stop) else { continue };
        let limb = finding.limb.and_then(|at| report.limbs.get(at)).filter(|_| report.limbs.len() > 1);
        let of = limb.map(|limb| format!("{}: ", capital(texts.limb(&limb.printed)))).unwrap_or_default();
        let worn = format!("{of}{}", item.worn);
        // What cannot wait is said first and without anything before it.
        let of = if finding.urgency <= Urgency::SameDay { String::new() } else { of };
        let say = format!("{of}{}", dated(report, texts, &item.say));
        if all.iter().all(|one| one.say != say) {
            all.push(Matter { urgency: finding.urgency, say, worn, off: item.off() });
        }
    }
    all
}

/// Whether what the outcome says is not already said by its matters.
fn outcome_stands(report: &Report) -> bool {
    use crate::assessment::Outcome::{FallUnknown, Incomplete, MadeToMeasure};
    matches!(report.decision.outcome, Some(Incomplete | MadeToMeasure | FallUnknown))
}

/// What the outcome says.
fn outcome(report: &Report, texts: &Texts) -> Outcome {
    let item: Item = texts.outcome(report.decision.outcome.map_or("none", |one| one.word()));
    let off = item.off();
    Outcome { say: item.say, worn: item.worn, off }
}

struct Outcome {
    say: String,
    worn: String,
    off: u8,
}

/// What happens next.
pub(super) fn next(report: &Report, texts: &Texts) -> String {
    texts.outcome(report.decision.outcome.map_or("none", |one| one.word())).next
}

fn dated(report: &Report, texts: &Texts, say: &str) -> String {
    let day = report.decision.by.as_deref().map(|by| texts.day(by));
    say.replace("{date}", &day.unwrap_or_else(|| texts.day(&report.today)))
}

/// The label of a telephone number; for palliative clients their plan has one.
pub(super) fn phone(report: &Report, texts: &Texts) -> String {
    let plan = report.screening.present.iter().any(|one| one.item == "active-cancer");
    texts.text(if plan { "phone-plan" } else { "phone" }).to_owned()
}
