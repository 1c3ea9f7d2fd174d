//! Finding `not-answered`: questions are not answered, or answered unknown.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};
use crate::words;

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "not-answered",
    title: "Questions open",
    meaning: "Questions are not answered, or answered unknown.",
    rule: "An open question is never a pass; all of them are one line.",
    basis: Basis::HouseRule,
    source: "",
};

/// `open` questions of the limb; `asked` is false when nothing was answered at all; `why` says of those that
/// have an answer why it does not count.
pub fn not_answered(place: Place, open: usize, asked: bool, names: &[String], why: &[String]) -> Finding {
    const MOST: usize = 8;
    let count = words::counted(open, "question is", "questions are");
    let message = if !asked {
        format!("The screening is not asked: {count} open. An open question is never a pass.")
    } else if names.len() <= MOST {
        format!("{} open: {}. An open question is never a pass.", words::capital(&count), words::list(names))
    } else {
        let first: Vec<&str> = names.iter().take(MOST).map(String::as_str).collect();
        format!(
            "{} open, among them {}. An open question is never a pass.",
            words::capital(&count),
            words::list(&first)
        )
    };
    let why = why.iter().fold(String::new(), |all, one| all + " " + one + ".");
    Finding::of(&ENTRY, Severity::Caution, place)
        .say(format!("{message}{why}"))
        .next("Ask and write down what is open.", &[Who::Recorder])
        .open()
}
