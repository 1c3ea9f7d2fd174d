//! Owns the question for what is seen on the limb: all of it on screen at once, answered as a group.

use tapeline::anatomy::Limb;
use tapeline::input::Draft;

use super::answer;
use super::questions::sides;
use super::step::Step;

/// Ends the name of the question; before it stands the prefix of a side.
const NAME: &str = "observed:seen";

/// What can be seen: key, value and words, in the order in which it is shown.
fn signs(limb: Limb) -> [(&'static str, &'static str, String); 6] {
    let swollen = match limb {
        Limb::Arm => "hand_swelling",
        Limb::Leg => "foot_swelling",
    };
    [
        ("pitting", "minor", "a finger leaves a small pit".to_owned()),
        ("pitting", "strong", "a finger leaves a deep pit".to_owned()),
        ("folds", "yes", "the skin lies in folds".to_owned()),
        ("distortion", "yes", "the limb has lost its shape".to_owned()),
        (swollen, "yes", format!("the {} is swollen", limb.extremity())),
        ("swelling_beyond", "yes", "swelling beyond the limb's root".to_owned()),
    ]
}

/// What a sign reads when it is not there.
fn absent(key: &str) -> &'static str {
    if key == "pitting" { "none" } else { "no" }
}

/// What is seen on the limb, on each side where both are fitted.
pub(super) fn seen<'s>(draft: &Draft, limb: Limb, both: bool) -> Vec<Step<'s>> {
    let signs = signs(limb);
    let ask = |(prefix, side): &(&str, &str)| {
        let lines = signs.iter().enumerate().map(|(at, (_, _, words))| format!("  {} {words}", at + 1));
        let heading = format!("{side}What is seen on the {}?", limb.name());
        let done = signs.iter().all(|(key, _, _)| draft.has(&format!("{prefix}observed.{key}")));
        let prefix = (*prefix).to_owned();
        Step::new(
            draft,
            format!("{prefix}{NAME}"),
            "0 none of these · numbers of those seen · u not known · ? what is meant:",
            move |text, draft| take(draft, &prefix, limb, text),
        )
        .above(std::iter::once(heading).chain(lines))
        .help("Press a finger for ten seconds for the pit. 0 when none is there; the numbers of those that are, as 1 3; u where nothing was looked at, u3 for a single one.")
        .or_skip()
        .done_if(done)
    };
    sides(both).iter().map(ask).collect()
}

fn take(draft: &mut Draft, prefix: &str, limb: Limb, text: &str) -> Result<(), String> {
    let signs = signs(limb);
    let mut answers: Vec<(&str, &str)> = Vec::new();
    let low = text.trim().to_lowercase();
    match low.as_str() {
        "0" | "none" | "no" => {}
        "u" | "unknown" => answers = signs.iter().map(|(key, _, _)| (*key, "unknown")).collect(),
        text => {
            for part in text.split([' ', ',']).filter(|part| !part.is_empty()) {
                let (number, is_unknown) = part.strip_prefix('u').map_or((part, false), |rest| (rest, true));
                for pick in answer::picks(number, signs.len())? {
                    let Some((key, value, _)) = pick.checked_sub(1).and_then(|at| signs.get(at)) else {
                        continue;
                    };
                    let value = if is_unknown { "unknown" } else { value };
                    if answers.iter().any(|(other, told)| other == key && *told != value) {
                        return Err(
                            "A pit is small or deep, seen or not known; type one number of them.".to_owned()
                        );
                    }
                    answers.push((key, value));
                }
            }
        }
    }
    for (key, _, _) in &signs {
        let told = answers.iter().find(|(other, _)| other == key).map_or(absent(key), |(_, value)| value);
        draft.set(&format!("{prefix}observed.{key}"), told);
    }
    Ok(())
}

/// Takes the answer out again; whether the name was this question's.
pub(super) fn open_again(draft: &mut Draft, name: &str) -> bool {
    let Some(prefix) = name.strip_suffix(NAME) else { return false };
    draft.remove(&format!("{prefix}observed"));
    true
}
