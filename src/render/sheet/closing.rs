//! Owns the foot of the first page, and the trial fitting of the annex.

use super::subject::{forbids, is_trial};
use crate::anatomy::Limb;
use crate::document::{Blank, Block, Tick};
use crate::report::Report;

/// Signatures, date, the next measuring.
pub(super) fn signatures(report: &Report) -> Vec<Block> {
    let due = report.course.iter().flat_map(|course| &course.due).find(|due| due.kind == "re-measure");
    let again = due.map_or_else(
        || Blank::new("Measure again on"),
        |due| Blank::filled("Measure again on", due.on.clone()),
    );
    let third = if forbids(report) { "Looked at again on" } else { "Client or helper, date" };
    vec![
        Block::Blanks(vec![
            vec![Blank::new("Fitter, date"), Blank::new("Clinician, date")],
            vec![Blank::new(third), again],
        ]),
        Block::small(
            "All figures are estimates; a certified fitter and the treating clinician decide; local rules come first. Bases: annex.",
        ),
    ]
}

/// What is looked at in the trial fitting, with what it rests on.
const TRIAL: [(&str, &str); 11] = [
    ("Client, limb, side and size are the ones on this sheet", COMMON),
    ("The garment covers all of the swollen part", COMMON),
    ("No folds anywhere, above all at the joints", COMMON),
    ("The top edge lies flat: not folded, not rolled, no groove in the skin", COMMON),
    ("No gap at the far end and none at the top", COMMON),
    ("Every joint moves all the way, and nothing pinches", COMMON),
    ("Fingers or toes are warm, of their usual colour, and feel as on the other side", COMMON),
    ("It feels firm and comfortable; pain means no", COMMON),
    ("Looked at again after 10 to 30 minutes of use, and all of this still holds", "house rule"),
    ("Client or helper has shown putting it on and taking it off", COMMON),
    ("The client\u{2019}s pages were talked through and handed over", COMMON),
];

const COMMON: &str = "common practice";

/// Where a garment ends.
const END_OF_ARM: &str = "It ends about 2 cm below the armpit";
const END_OF_LEG: &str =
    "It ends about two fingers below the fold of the buttock, or below the crease behind the knee";

/// The trial fitting, on a sheet for one only.
pub(super) fn trial(report: &Report) -> Vec<Block> {
    if !is_trial(report) {
        return Vec::new();
    }
    let arm = report.limbs.iter().any(|limb| limb.limb == Limb::Arm);
    let end = if arm { END_OF_ARM } else { END_OF_LEG };
    let item = |(text, basis): (&str, &str)| Tick::open(format!("{text} ({basis})"));
    let mut items: Vec<Tick> = TRIAL.into_iter().map(item).collect();
    items.insert(4, item((end, COMMON)));
    vec![
        Block::heading("Trial fitting"),
        Block::strong("Any \u{201c}no\u{201d}: take it off."),
        Block::blanks(&[&["Time on", "Time looked at again", "By"]]),
        Block::Ticks { boxes: vec!["yes".to_owned(), "no".to_owned()], items },
    ]
}
