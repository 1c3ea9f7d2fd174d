//! Owns the entries of the findings that only `gradient` and `pattern` bring.

use super::of_findings::About;
use crate::finding::FindingId;
use crate::rules::{NumberId, Rules};

const OURS: &str = "our own rule";
const REVERSAL: &str = "any rise counts as a reversal: Best 2000, JBJS Br 82-B:116; the grades are ours";

/// What is said of one of them; none for any other finding.
pub(super) fn about(id: &FindingId, rules: &Rules) -> Option<About> {
    let n = |id: NumberId| {
        rules.numbers.iter().find(|number| number.id == id).map_or("", |number| number.text.as_str())
    };
    let said = |rule: String, severity, basis: &str, source: &str, next| {
        Some(About { rule, severity, basis: basis.to_owned(), source: source.to_owned(), next })
    };
    match id {
        FindingId::Ring => said(
            format!(
                "A judged mark whose pressure is above that of the judged marks on both sides, each with a chance of at least {}. Asked about one garment only.",
                n(NumberId::RiseCertain)
            ),
            "review",
            "house rule",
            REVERSAL,
            "A certified fitter checks the girth and the garment there before fitting.",
        ),
        FindingId::TopEdge => said(
            format!(
                "The stated `top_edge` against the garment on the same girth: a chance above {} that the band presses more is review, from {} care. Any edge folded once presses twice.",
                n(NumberId::RiseLikely),
                n(NumberId::RisePossible)
            ),
            "care or review, by chance",
            "house rule",
            "rolled edges have caused nerve palsy within days: Am J Phys Med Rehabil 2014;93:609",
            "A wider band or a softer one; look for a groove after 10 to 30 minutes of wear.",
        ),
        FindingId::GarmentsOverlap => said(
            format!(
                "A measured mark under more than one piece worn together. The figures add; on two stockings the sum was {} to {} of the plain sum.",
                n(NumberId::LayersLow),
                n(NumberId::LayersHigh)
            ),
            "care",
            "published",
            "Ann Vasc Dis 2012;5:435",
            "Check that the overlap neither rolls nor cuts in, and look at the fall across it.",
        ),
        FindingId::BetweenClasses => said(
            "The pressure at the reference lies in the gap between two classes of the claimed scheme, while the chance of the claimed class is not small (else `class-missed`). It is never moved into a class.".to_owned(),
            "note",
            "derived",
            "the bands of the scheme; see its entry",
            "Nothing by itself; a reading at the reference tells more.",
        ),
        FindingId::ClassOff => said(
            "The pressure at the reference lies in another class than the claimed one, or below or above all, while the chance of the claimed class is not small (else `class-missed`).".to_owned(),
            "note",
            "derived",
            "the bands of the scheme; see its entry",
            "Nothing by itself; a reading at the reference tells more.",
        ),
        FindingId::CalipersDiffer => said(
            "An oval of the two calipers differs from the tape's girth by more than 5 %.".to_owned(),
            "care",
            "house rule",
            OURS,
            "Measure girth and both calipers there once more.",
        ),
        FindingId::ReadingsMixed => said(
            "The readings of one garment name more than one posture, or some name none.".to_owned(),
            "care",
            "house rule",
            OURS,
            "Read all marks in one posture, after the same time of wear.",
        ),
        FindingId::TargetRises => said(
            "The wanted pressure at a mark is not below that of the mark distal to it; the joint is left out.".to_owned(),
            "review",
            "house rule",
            REVERSAL,
            "Ask for less pressure toward the trunk.",
        ),
        FindingId::TargetBeyond => said(
            "The wanted pressure needs a tension above that of the fabric's last tested point.".to_owned(),
            "review",
            "house rule",
            OURS,
            "A stronger fabric, more layers, less pressure, or a curve tested further.",
        ),
        _ => None,
    }
}
