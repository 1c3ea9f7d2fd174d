//! Owns which findings the course over the visits brings, and those of volume.

use super::LimbContext;
use crate::anatomy::Limb;
use crate::finding::{self, Finding, Place};
use crate::rules::Severity;
use crate::volume::{
    Change, Course, Due, DueKind, Further, Grown, LimbCourse, PartOfLimb, ProtocolChange, Ready, ReadyState,
    Since, Uncompared, VisitVolume, Wear, Worsening,
};
use crate::words;

/// What a part of a limb is called.
pub fn part_name(limb: Limb, part: PartOfLimb) -> &'static str {
    match (limb, part) {
        (Limb::Arm, PartOfLimb::Distal) => "forearm",
        (Limb::Arm, PartOfLimb::Proximal) => "upper arm",
        (Limb::Leg, PartOfLimb::Distal) => "lower leg",
        (Limb::Leg, PartOfLimb::Proximal) => "thigh",
    }
}

/// Findings of the volumes at this visit.
pub(super) fn of_volume(context: &LimbContext<'_>, volume: &VisitVolume) -> Vec<Finding> {
    let mut found = Vec::new();
    if !context.record.tells_pair(context.limb) {
        return found;
    }
    let (limb, place, setting) = (context.record.limb, Place::limb(context.index), context.setting);
    match volume.uncompared {
        Some(Uncompared::OtherMarks) => found.push(finding::volume_not_compared::volume_not_compared(
            place,
            "the marks of both limbs are not at the same places",
        )),
        Some(Uncompared::NoVolume) => found.push(finding::volume_not_compared::volume_not_compared(
            place,
            "a volume cannot be worked out from these marks",
        )),
        _ => {}
    }
    if let Some(excess) = volume.excess.filter(|excess| excess.percent > 0.0) {
        let what = format!(
            "The affected {} is {} larger than the other one ({})",
            limb.name(),
            words::millilitre(excess.ml),
            words::percent(excess.percent)
        );
        found.push(finding::excess::excess(place, &what));
    }
    if let (Some(part), Some(whole)) = (volume.hidden_distal(&setting.rules), volume.excess)
        && let Some(distal) = part.excess
    {
        let name = part_name(limb, part.part);
        found.push(finding::distal_hidden::distal_hidden(place, name, distal.percent, whole.percent));
    }
    found
}

/// The finding of a worsening.
pub(super) fn worsening(limb: Limb, one: &Worsening, course: &LimbCourse, place: Place) -> Finding {
    let of = match (one.grown, one.part) {
        (Grown::Excess, None) => "the excess".to_owned(),
        (Grown::Limb, None) => format!("the {}", limb.name()),
        (Grown::Excess, Some(part)) => format!("the excess of the {} part", part_name(limb, part)),
        (Grown::Limb, Some(part)) => format!("the {} part", part_name(limb, part)),
    };
    let running = if one.two_running { " over two visits running" } else { "" };
    let what = format!(
        "{of} went from {} to {}{running}, {} of the limb; up to {} is what measuring explains",
        words::whole(one.was_ml),
        words::millilitre(one.now_ml),
        words::trimmed(one.rise_percent, 1) + " %",
        words::trimmed(one.limit_percent, 1) + " %"
    );
    let on = |visit: usize| course.visits.get(visit).map(|visit| visit.measured_on);
    let days =
        on(one.from).zip(on(one.to)).map(|(from, to)| from.until(to).map_or(0, |span| span.get_days()));
    let few = days.filter(|days| *days <= finding::worsening::SUDDEN_DAYS);
    finding::worsening::worsening(place, one.severity, &what, few)
}

/// What is said of readiness; none without a course.
pub fn ready_words(ready: &Ready) -> Option<String> {
    let line = ready.line?;
    let rate = |value: f64| format!("{} %", words::trimmed(value, 1));
    Some(match ready.state {
        ReadyState::Settled => {
            format!("The limb has settled: it changes by less than {} a week.", rate(line.most()))
        }
        ReadyState::NotYet => format!(
            "The limb is not yet settled: it loses about {} a week ({} to {}), so a garment ordered now may soon be too large.",
            rate(line.loss),
            rate(line.low()),
            rate(line.high())
        ),
        ReadyState::Rising => format!("The limb is growing: about {} a week.", rate(-line.loss)),
        ReadyState::CannotTell => format!(
            "The visits do not tell whether the limb has settled (change {} to {} a week).",
            rate(line.low()),
            rate(line.high())
        ),
    })
}

/// What would decide readiness, as a sentence.
pub fn ready_way(ready: &Ready) -> String {
    let Some(decide) = &ready.decide else {
        return "The therapist decides whether to wait before a garment is measured.".to_owned();
    };
    let say = |further: &Further, how: &str| {
        let times = words::counted(usize::try_from(further.visits).unwrap_or(usize::MAX), "time", "times");
        format!("Measure {times} more, {} days apart{how}.", further.every_days)
    };
    match (&decide.visits, &decide.with_repeats) {
        (Some(visits), Some(fewer)) if fewer.visits < visits.visits => {
            format!("{} With every mark taped twice, {} would do.", say(visits, ""), fewer.visits)
        }
        (Some(visits), _) => say(visits, ""),
        (None, Some(fewer)) => say(fewer, ", with every mark taped twice"),
        (None, None) => "Measure at every visit, every mark twice.".to_owned(),
    }
}

/// Findings of a limb's course. `made_to_measure` when an order would be made to measure.
pub(super) fn of_limb_course(
    limb: Limb,
    course: &LimbCourse,
    place: Place,
    made_to_measure: bool,
) -> Vec<Finding> {
    let mut found = Vec::new();
    if let Some(one) = &course.worsening {
        found.push(worsening(limb, one, course, place));
    }
    if let Some(ready) = &course.ready
        && let Some(said) = ready_words(ready)
    {
        let severity = match ready.state {
            ReadyState::Settled => None,
            ReadyState::CannotTell => Some(Severity::Note),
            ReadyState::NotYet | ReadyState::Rising if made_to_measure => Some(Severity::ClearFirst),
            ReadyState::NotYet | ReadyState::Rising => Some(Severity::Caution),
        };
        let grown = course.worsening.is_some() && ready.state == ReadyState::Rising;
        if let Some(severity) = severity.filter(|_| !grown) {
            found.push(finding::not_settled::not_settled(place, severity, &said, &ready_way(ready)));
        }
    }
    found.extend(other_left_out(course, place));
    let last_visit = course.visits.len().saturating_sub(1);
    if let Some(newest) = course.visits.last() {
        let differs: Vec<String> =
            newest.changes.iter().filter(|one| one.starts_series()).map(protocol_words).collect();
        if let (false, Some(before)) =
            (differs.is_empty(), last_visit.checked_sub(1).and_then(|at| course.visits.get(at)))
        {
            found.push(finding::protocol_differs::protocol_differs(place, before.measured_on, &differs));
        }
    }
    found.extend(
        course.changes.iter().filter(|one| one.beyond()).filter_map(|one| beyond(course, one, place)),
    );
    if let (None, Some(grown)) = (&course.worsening, course.grown_since_given())
        && let Some(fitted) = course.visits.get(grown.from)
    {
        let (percent, explained) = (grown.volume.percent, grown.volume.detectable_percent);
        let on = fitted.measured_on;
        found.push(finding::garment_outgrown::limb_outgrown(place, on, percent, explained));
    }
    if course.infections.ask_for_review {
        found.push(finding::infections::infections(place, course.infections.in_a_year));
    }
    if let Some(on) = course.infections.after_measuring {
        found.push(finding::infection_recent::infection_since(place, on));
    }
    let renewed = |one: &Due| {
        let of = |other: &&Due| other.garment == one.garment && other.kind == DueKind::Renewal;
        course.due.iter().find(of).is_some_and(|renewal| renewal.is_due)
    };
    found.extend(
        course
            .due
            .iter()
            .filter(|one| one.is_due && !(one.kind == DueKind::Remeasure && renewed(one)))
            .map(|one| finding::garment_due::garment_due(place, &due_words(one))),
    );
    found
}

/// The other limb, measured at an earlier visit and not at the newest.
fn other_left_out(course: &LimbCourse, place: Place) -> Option<Finding> {
    let (newest, earlier) = course.visits.split_last()?;
    let left_out = newest.volume.uncompared == Some(Uncompared::NoOther)
        && earlier.iter().any(|visit| visit.volume.excess.is_some());
    left_out.then(|| finding::other_limb_not_measured::other_limb_not_measured(place, newest.measured_on))
}

/// A change beyond the error, unless it is a worsening, which says it already.
fn beyond(course: &LimbCourse, change: &Change, place: Place) -> Option<Finding> {
    let from = course.visits.get(change.from)?.measured_on;
    if course.worsening.as_ref().is_some_and(|one| one.from == change.from) {
        return None;
    }
    Some(finding::change_beyond_error::change_beyond_error(
        place,
        &change_words(change, &words::date_short(from), course.worsening.is_some()),
    ))
}

/// A change in words, without a full stop.
///
/// `worse` = the limb is judged to have grown, by whatever part of it: then a growth is not called error beside it.
pub fn change_words(change: &Change, since: &str, worse: bool) -> String {
    let shared = if change.on_shared_marks { ", by the marks that both visits share" } else { "" };
    if let Some(excess) = change.excess {
        if words::whole(excess.was.ml) == words::whole(excess.now.ml) && !excess.beyond() {
            return format!(
                "The excess is {}, the same as on {since}{shared}",
                words::millilitre(excess.now.ml)
            );
        }
        let what = format!(
            "The excess went from {} to {} since {since}",
            words::whole(excess.was.ml),
            words::millilitre(excess.now.ml)
        );
        return if excess.beyond() || (worse && excess.now.ml > excess.was.ml) {
            format!("{what}{shared}")
        } else {
            format!("{what}{shared}, within measurement error")
        };
    }
    let volume = change.volume;
    let what = format!("The limb changed by {} % since {since}", words::trimmed(volume.percent, 1));
    if volume.beyond() {
        format!(
            "{what} (measuring explains up to {} %){shared}",
            words::trimmed(volume.detectable_percent, 1)
        )
    } else if worse && volume.percent > 0.0 {
        // Growth that is judged as such is not called error beside it.
        format!("{what}{shared}")
    } else {
        format!("{what}, within measurement error{shared}")
    }
}

/// One difference of protocol in words.
pub fn protocol_words(one: &ProtocolChange) -> String {
    match one {
        ProtocolChange::Method(was, now) => format!("volume by {} instead of {}", now.word(), was.word()),
        ProtocolChange::Origin(was, now) => {
            format!("positions from the {} instead of the {}", now.name(), was.name())
        }
        ProtocolChange::Start(was, now) => {
            format!("first mark at {} instead of {} cm", words::decimal(*now, 1), words::decimal(*was, 1))
        }
        ProtocolChange::Spacing => "marks at other places".to_owned(),
        ProtocolChange::FurtherMarks { shared } => format!("not all the same marks; {shared} are shared"),
        ProtocolChange::Posture(was, now) => format!("posture {now} instead of {was}"),
        ProtocolChange::Observer(was, now) => format!("measured by {now} instead of {was}"),
        ProtocolChange::Hour(hours) => format!("{} hours off the time of day", words::trimmed(*hours, 1)),
    }
}

/// Something due in words, without a full stop.
pub fn due_words(due: &Due) -> String {
    let what = match due.kind {
        DueKind::FirstLook => "First look at",
        DueKind::Recheck => "Re-check of",
        DueKind::Regular => "Regular re-check of",
        DueKind::Remeasure => "Measuring again for a new",
        DueKind::Renewal => "Renewal of",
    };
    let late = if due.is_late { ", overdue since " } else { ", by " };
    let wear = due.wear.map_or_else(String::new, |wear| format!(" ({})", wear_words(wear)));
    format!("{what} {}{wear}{late}{}", due.garment, words::date_short(due.by))
}

/// `2 in turn, 12 hours a day`.
pub fn wear_words(wear: Wear) -> String {
    let number = match wear.quantity {
        ..2 => "one alone".to_owned(),
        more => format!("{more} in turn"),
    };
    match wear.hours_a_day {
        Some(hours) => format!("{number}, {} hours a day", words::trimmed(hours, 1)),
        None => number,
    }
}

/// Whether the course has found the swelling of a limb worse.
pub(super) fn is_worse(course: Option<&Course>, side: crate::anatomy::Side) -> bool {
    course.is_some_and(|course| course.limbs.iter().any(|one| one.side == side && one.worsening.is_some()))
}

/// Whether the limb of a side has grown by more than measuring explains since the last visit, while nothing
/// tells whether its swelling has: the other limb was not measured at both.
pub(super) fn is_grown(course: Option<&Course>, side: crate::anatomy::Side) -> bool {
    let beyond = |one: &Change| {
        one.since == Since::Last && one.excess.is_none() && one.volume.beyond() && one.volume.percent > 0.0
    };
    course.is_some_and(|course| {
        course.limbs.iter().any(|one| one.side == side && one.changes.iter().any(beyond))
    })
}
