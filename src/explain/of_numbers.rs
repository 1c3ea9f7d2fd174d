//! Owns the entries of the numbers of the rules.

use super::{Entry, Kind};
use crate::rules::{Number, NumberId, Rules};

/// How the tape's error is stated by landmark. Source of the share: the segments of Tánori-Tapia 2020 (derived);
/// its ends are house rules.
const TAPE_BY_LANDMARK: &str = "A rules file may state it by landmark or limb, fixed or as a share of the girth: `tape_sd: [{landmark: wrist, sd: 0.25 cm, basis: …, why: …}]` or `tape_sd: [{limb: arm, share: 1.5 %, least: 0.25 cm, most: 0.45 cm, basis: derived, why: …}]`; it then counts for sizes, pressures, the fall and volumes alike. The share agrees with the segments of Tánori-Tapia 2020 (derived; its ends are house rules).";

/// What repeats do not lower. Source: physics of the tape (house rule).
const TAPE_COMMON: &str = "What is common to all values of one sitting (posture, the pull of the tape) does not fall with repeats and is not worked out.";

pub(super) fn entries(rules: &Rules) -> Vec<Entry> {
    rules.numbers.iter().map(|number| of(number, rules)).collect()
}

fn of(number: &Number, rules: &Rules) -> Entry {
    let id = number.id.id();
    let mut rule = vec![format!("{id} = {}", number.text), sentence(&number.why)];
    if number.id == NumberId::TapeSd {
        rule.extend(rules.tape_sds.iter().map(|one| {
            format!("{} {} ({}): {}", one.error.said(), one.place(), one.basis.word(), sentence(&one.why))
        }));
        rule.push(TAPE_BY_LANDMARK.to_owned());
        rule.push(TAPE_COMMON.to_owned());
    }
    Entry::new(Kind::Number, id, number.id.meaning().replace(['`'], ""))
        .rules(rule)
        .rests_on(number.basis.word(), "")
        .then(&format!("A rules file replaces it: `numbers: [{{id: {id}, value: …, basis: …, why: …}}]`."))
}

/// A capital first, a full stop last.
pub(super) fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|first| first.to_uppercase().chain(letters).collect::<String>());
    let mut sentence = first.unwrap_or_default();
    if !sentence.is_empty() && !sentence.ends_with(['.', '?', '!']) {
        sentence.push('.');
    }
    sentence
}
