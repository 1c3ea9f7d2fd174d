//! Owns the entries of outcomes, severities and grades of a rise.

use super::{Entry, Kind};

fn entry(kind: Kind, id: &str, meaning: &str, rule: &str, severity: &str, next: &str) -> Entry {
    Entry {
        id: id.to_owned(),
        kind,
        meaning: meaning.to_owned(),
        rule: vec![rule.to_owned()],
        severity: severity.to_owned(),
        basis: "house rule".to_owned(),
        source: "our own rule".to_owned(),
        next: next.to_owned(),
    }
}

pub(super) fn entries() -> Vec<Entry> {
    let outcome = |id, meaning, rule, status, next| entry(Kind::Outcome, id, meaning, rule, status, next);
    let weight = |id, meaning, rule, next| entry(Kind::Severity, id, meaning, rule, id, next);
    let grade = |id, meaning, rule, severity, next| entry(Kind::Grade, id, meaning, rule, severity, next);
    vec![
        outcome(
            "stop",
            "Do not fit.",
            "A stop finding about the client, or, for one chart, a material that the client is allergic to. Nothing overrides it; it ends only when the answer or value behind it changes.",
            "worst outcome; exit status 3",
            "Medical opinion first, as the finding says.",
        ),
        outcome(
            "refer",
            "Someone named has to look before anything is fitted.",
            "A review finding that nobody has cleared, or girths between two sizes of the best chart.",
            "second outcome; exit status 1",
            "Put the finding to the clinician or fitter it names; a screening item or arterial finding is cleared in the record under `cleared` with role, reason and date.",
        ),
        outcome(
            "incomplete",
            "Answers or measures are missing.",
            "A question that applies is not answered or answered unknown, an unusual girth is not confirmed, or no chart could be judged for want of a measure.",
            "third outcome; exit status 1",
            "Ask, measure, write it into the record, and check again.",
        ),
        outcome(
            "made-to-measure",
            "No stock size of the charts given serves.",
            "No size takes every girth and length and none lies between two sizes; or every size that does has a certain rise of pressure; or folds or a distorted shape are recorded.",
            "fourth outcome; exit status 1",
            "A certified fitter takes and checks a made-to-measure order.",
        ),
        outcome(
            "unproven",
            "A size holds by girth, but its fall of pressure toward the trunk is not judged.",
            "The reference, a mark between and the top are not all known, or a pair stays undecided.",
            "fifth outcome; exit status 1",
            "Give flat widths of the garment, its fabric curve, or sensor readings.",
        ),
        outcome(
            "try-on",
            "Go on to a trial fitting.",
            "A size takes every girth, its fall of pressure is judged, and nothing open stands against it. An estimate, not a measurement.",
            "best outcome; exit status 0",
            "Fit on trial, look again after 10 to 30 minutes of wear, and take it off at any sign of trouble.",
        ),
        weight(
            "stop",
            "Do not fit; medical opinion first.",
            "Worst finding wins; there are no points and no sums. It cannot be cleared.",
            "As the finding says.",
        ),
        weight(
            "review",
            "Someone named must clear it before fitting.",
            "Cleared only in the record, by role, reason and date, and only by the role that the item names where it names one.",
            "Put it to that person.",
        ),
        weight(
            "care",
            "Fit with extra checks.",
            "Does not change the outcome by itself, unless it is a question.",
            "Do the check that the finding names.",
        ),
        weight("note", "For information.", "Changes nothing.", "Nothing has to be done."),
        grade(
            "certain",
            "By tape and ruler alone the pressure rises toward the trunk.",
            "Chance of a rise at least `rise-certain`; at `rise-removes` or more, or judged by stretch, the size is taken out of the choice.",
            "review, or the size is taken out",
            "Another size, or made to measure.",
        ),
        grade(
            "likely",
            "A rise is likelier than not.",
            "Chance above `rise-likely`, below `rise-certain`.",
            "review",
            "A certified fitter checks the fall there before fitting.",
        ),
        grade(
            "possible",
            "A rise cannot be ruled out.",
            "Chance at least `rise-possible`, up to `rise-likely`.",
            "care",
            "Check the fall there at the trial fitting.",
        ),
        grade(
            "undecided",
            "What is known does not decide whether the pressure falls.",
            "Judged by stretch, the two ends of the fabric exponent disagree.",
            "note; the outcome is `unproven`",
            "Fabric curve or sensor readings.",
        ),
        grade("none", "Nothing to report: the pressure falls.", "Chance below `rise-possible`.", "none", ""),
    ]
}
