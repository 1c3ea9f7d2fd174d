//! Owns the end of the fitter's leaf: the trial fitting, bases and limits, signatures.

use super::Block;
use super::subject::{State, Subject};

/// What is looked at in the trial fitting. Basis: common practice of fitters, put in our own words;
/// the second look after 10 to 30 minutes is a house rule.
const TRIAL: [&str; 11] = [
    "Client, limb, side and size are the ones on this sheet",
    "The garment covers all of the swollen part",
    "No folds anywhere, above all at the joints",
    "The top edge lies flat: not folded, not rolled, no groove in the skin",
    "No gap at the far end and none at the top",
    "Every joint moves all the way, and nothing pinches",
    "Fingers or toes are warm, of their usual colour, and feel as on the other side",
    "It feels firm and comfortable; pain means no",
    "Looked at again after 10 to 30 minutes of use, and all of this still holds",
    "Client or helper has shown putting it on and taking it off",
    "The client\u{2019}s leaf was talked through and handed over",
];

/// Where a garment ends. Basis: common practice.
const END_OF_ARM: &str = "It ends about 2 cm below the armpit";
const END_OF_LEG: &str =
    "It ends about two fingers below the fold of the buttock, or below the crease behind the knee";

/// The trial fitting, under `try-on` only.
pub(super) fn trial(subject: Subject<'_>) -> Vec<Block> {
    if subject.state != State::Trial {
        return Vec::new();
    }
    let end = if subject.report.record.limb == "arm" { END_OF_ARM } else { END_OF_LEG };
    let mut items: Vec<String> = TRIAL.iter().map(|item| (*item).to_owned()).collect();
    items.insert(4, end.to_owned());
    vec![
        Block::heading("Trial fitting"),
        Block::strong("Any \u{201c}no\u{201d}: take it off."),
        Block::blanks(&[&["Time on", "Time looked at again", "By"]]),
        Block::Ticks { boxes: vec!["yes", "no"], items },
    ]
}

/// Bases, limits, signatures, the next measuring.
pub(super) fn closing(subject: Subject<'_>) -> Vec<Block> {
    let report = subject.report;
    let limits = report.limits.join(" ");
    let bases = format!(
        "Bases: published (the source was read), secondary (read where it is quoted), memory (recalled), derived (worked out), common practice, house rule (ours), or the user\u{2019}s own file. Screening rules used: {}. Made by {} {} on {}.",
        report.screening.thresholds, report.tool.name, report.tool.version, report.today
    );
    let mut signatures: Vec<&[&str]> = vec![&["Fitter, date", "Clinician, date"]];
    if subject.state == State::Trial {
        signatures.push(&["Client or helper, date", "Measure again on"]);
    } else {
        signatures.push(&["Looked at again on", "Measure again on"]);
    }
    vec![
        Block::heading("Bases and limits"),
        Block::text(limits),
        Block::small(bases),
        Block::blanks(&signatures),
    ]
}
