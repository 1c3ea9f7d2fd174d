//! Owns the one sentence about a fall, for findings, terminal, sheet and JSON alike.

use crate::anatomy::Landmark;
use crate::gradient::{Action, Decide, Fall, Grade, GradientBasis, Turn};
use crate::words;

/// `By the fabric curve`; a bandage has a pull instead.
fn basis_first(basis: GradientBasis, pulled: bool) -> &'static str {
    match basis {
        GradientBasis::Fabric if pulled => "By the pull of the bandage",
        GradientBasis::Readings => "By the readings",
        GradientBasis::Fabric => "By the fabric curve",
        GradientBasis::Stretch => "By stretch alone",
    }
}

/// What would measure it, said at the end of a certain rise.
fn as_sure_as(basis: GradientBasis) -> &'static str {
    match basis {
        GradientBasis::Readings => "as sure as the sensor goes",
        GradientBasis::Fabric | GradientBasis::Stretch => "as sure as tape and ruler go",
    }
}

fn look(fall: &Fall) -> String {
    match (fall.place, fall.against) {
        // A judged point beyond an edge carries the landmark of that edge.
        (Some(place), Some(against)) if place == against => {
            format!("the edge of the piece that ends or begins {}", words::at(place))
        }
        (Some(place), Some(against)) => words::against(place, against),
        (Some(place), None) => words::the(place),
        _ => "every mark".to_owned(),
    }
}

/// The sentence about a fall; `next` is what would most likely decide it, as an order with its chance; `first` and `last` are the most distal and proximal judged landmarks; `pulled`
/// = nothing but bandages is worn.
pub fn fall_sentence(
    fall: &Fall,
    first: Option<Landmark>,
    last: Option<Landmark>,
    next: Option<(String, Option<f64>)>,
    pulled: bool,
) -> String {
    let basis = fall.decided_by;
    let by = basis_first(basis, pulled);
    let chance = fall.chance.map_or_else(|| "not known".to_owned(), words::chance);
    let from = first.map_or_else(String::new, |one| format!(" from {}", words::the(one)));
    match fall.grade {
        Grade::None => format!(
            "{by} it falls{from} toward the trunk. The chance that it rises by a tenth or more somewhere is {chance}."
        ),
        Grade::Possible => format!(
            "{by} it falls on the whole. The chance that it rises by a tenth or more somewhere toward the trunk is {chance}; the place to look is {}.",
            look(fall)
        ),
        Grade::Likely => {
            let by_chance = fall.chance.is_some_and(|chance| chance > 0.5);
            let mut text = if by_chance {
                // Beyond the tested stretch the pressure is at least so much, and so is the chance of that rise.
                let bound = if fall.by_bound { "at least " } else { "" };
                format!(
                    "{by} it probably rises (chance {bound}{chance}): look at {}. This would act like a tourniquet.",
                    look(fall)
                )
            } else {
                let to = last.map_or_else(String::new, |one| format!(" to {}", words::the(one)));
                format!("{by} it does not fall on the whole{from}{to}; it may act like a tourniquet.")
            };
            if fall.pull_may_change {
                text.push_str(" A strip pull may change this.");
            }
            text
        }
        Grade::Certain => format!(
            "{by} it rises, {}: look at {}. This would act like a tourniquet.",
            as_sure_as(basis),
            look(fall)
        ),
        Grade::Undecided => {
            let what = match basis {
                GradientBasis::Readings => "The readings do not decide it.",
                GradientBasis::Fabric if pulled => "Tape and pull do not decide it.",
                GradientBasis::Fabric => "Tape, ruler and fabric do not decide it.",
                GradientBasis::Stretch => "Tape and ruler do not decide it.",
            };
            let place = if fall.chance.is_some_and(|chance| chance >= 0.05) && fall.place.is_some() {
                format!(" The place to look is {}.", look(fall))
            } else {
                String::new()
            };
            let way = next.map_or_else(String::new, |(way, chance)| {
                let chance =
                    chance.map_or_else(String::new, |chance| format!(" ({})", words::chance(chance)));
                format!(" Most likely to: {way}{chance}.")
            });
            format!("{what}{place}{way}")
        }
    }
}

/// A further measurement as an order: `pull a strip of the knit`; `whose` = of which of several pieces.
pub fn action(one: &Decide, whose: Option<&str>) -> String {
    let at = one.landmark.map_or_else(String::new, |landmark| format!(" {}", words::at(landmark)));
    let of = whose.map_or_else(String::new, |name| format!(" of {name}"));
    match one.action {
        Action::FlatWidth => format!("measure the flat width{of} again{at}"),
        Action::Tape => format!("tape the limb again{at}"),
        Action::StripPull => format!("pull a strip of the knit{of} at two weights"),
        Action::Curve => match whose {
            Some(name) => format!("get the tension curve of the fabric of {name}"),
            None => "get the fabric's tension curve".to_owned(),
        },
        Action::CurveFurther => format!("test the fabric{of} to more stretch (it is short{at})"),
        Action::ReadAgain => format!("read the pressure again{at}"),
        Action::SensorReadings => "read the pressure with a sensor at every judged mark".to_owned(),
    }
}

/// What the grade would be after a strip pull, by exponent: `It would fall on the whole at an exponent of 0.7 to 1.1 and probably
/// rise at 1.15 to 1.5.`; none where it would not turn.
pub fn after_strip_pull(turns: &[Turn]) -> Option<String> {
    let exponent = |value: f64| words::trimmed(value, 2);
    let mut lead = " an exponent of";
    let parts: Vec<String> = turns
        .iter()
        .map(|one| {
            let what = match one.grade {
                Grade::Certain => "certainly rise",
                Grade::Likely => "probably rise",
                Grade::Undecided => "not be decided",
                // True of a fall with and without the remark that a rise is possible.
                Grade::Possible | Grade::None => "fall on the whole",
            };
            let to = if one.high > one.low { format!(" to {}", exponent(one.high)) } else { String::new() };
            format!("{what} at{} {}{to}", std::mem::take(&mut lead), exponent(one.low))
        })
        .collect();
    (parts.len() > 1).then(|| format!("It would {}.", words::list(&parts)))
}
