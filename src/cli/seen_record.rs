//! Owns how `inspect` shows what was read of a record: everything that stands in it, judged by nothing.

use tapeline::document::{Block, Column, Table};
use tapeline::input::{Named, YesNo};
use tapeline::quantity::mmhg;
use tapeline::record::{
    AgeBand, Allergies, Arterial, Cap, Cause, ClearDecision, Cleared, GarmentInUse, Index, LimbRecord,
    Observed, Pitting, Prescribed, Reading, Record, Screening, Wanted,
};
use tapeline::words;

use super::seen::keys;

/// A record: who, when, which limb, what was answered, the marks.
pub(super) fn record(record: &Record) -> Vec<Block> {
    let allergies = match &record.allergies {
        Allergies::NotAsked => "not asked".to_owned(),
        Allergies::None => "none".to_owned(),
        Allergies::Some(all) => names(all),
    };
    let days: Vec<String> = record.infections.iter().map(|day| words::date_short(*day)).collect();
    let shown: Vec<&str> = record.shown.iter().map(tapeline::input::Text::as_str).collect();
    let mut top = vec![
        ("Client", Some(record.client.to_string())),
        ("Age", (record.age_band == AgeBand::Child).then(|| "under 16".to_owned())),
        ("Measured on", Some(words::date_long(record.measured_on))),
        ("Measured by", record.measured_by.as_ref().map(ToString::to_string)),
        ("Posture", record.posture.as_ref().map(ToString::to_string)),
        ("Positions from", Some(record.positions_from.name().to_owned())),
        ("Affected", Some(record.affected.word().to_owned())),
        ("Cause", Some(cause(&record.cause))),
        ("Before treatment", record.baseline.then(|| "yes".to_owned())),
        ("Dominant side", record.dominance.map(|side| side.name().to_owned())),
        ("Weight", record.weight_kg.map(|kg| format!("{} kg", words::trimmed(kg, 1)))),
        ("Prescribed", record.prescribed.as_ref().map(prescribed)),
        ("Allergies", Some(allergies)),
        ("Infections", (!days.is_empty()).then(|| words::list(&days))),
        ("Shown at home", (!shown.is_empty()).then(|| words::list(&shown))),
        ("Confirmed", listed(&record.confirmed)),
    ];
    top.extend(screening(&record.screening));
    top.extend(cleared(&record.cleared));
    let mut blocks = vec![keys(top)];
    for limb in &record.limbs {
        blocks.push(Block::heading(format!("{} {}", limb.side.name(), record.limb.name())));
        blocks.push(Block::Table(marks(record, limb)));
        let own = of_limb(record, limb);
        if own.iter().any(|(_, said)| said.is_some()) {
            blocks.push(keys(own));
        }
    }
    blocks
}

/// What belongs to one limb beside its marks.
fn of_limb(record: &Record, limb: &LimbRecord) -> Vec<(&'static str, Option<String>)> {
    let lengths: Vec<String> = limb
        .lengths
        .iter()
        .map(|(name, (span, _))| format!("{} {}", name.name(), words::cm(span.tenths())))
        .collect();
    let readings: Vec<String> = limb.readings.iter().map(reading).collect();
    let garments: Vec<String> = limb.garments.iter().map(garment).collect();
    let of_side = record.is_both();
    let mut all = vec![
        ("Lengths", (!lengths.is_empty()).then(|| words::list(&lengths))),
        ("Observed", Some(observed(&limb.observed, record.limb.extremity()))),
        ("Prescribed", limb.prescribed.as_ref().map(prescribed)),
        ("Arterial values", limb.arterial.as_ref().map(arterial)),
        ("Readings", (!readings.is_empty()).then(|| words::list(&readings))),
        ("Garments in use", (!garments.is_empty()).then(|| words::list(&garments))),
        ("Confirmed", listed(&limb.confirmed).filter(|_| of_side)),
    ];
    if of_side {
        all.extend(screening(&limb.screening));
        all.extend(cleared(&limb.cleared));
    }
    all
}

fn names(all: &[Named]) -> String {
    words::list(&all.iter().map(|one| one.text.as_str()).collect::<Vec<_>>())
}

fn listed(all: &[Named]) -> Option<String> {
    (!all.is_empty()).then(|| names(all))
}

fn answer(one: Option<YesNo>) -> &'static str {
    match one {
        None => "not answered",
        Some(YesNo::Yes) => "yes",
        Some(YesNo::No) => "no",
        Some(YesNo::Unknown) => "not known",
    }
}

fn cause(one: &Cause) -> String {
    let known = match one.known {
        None => "not answered",
        Some(YesNo::Yes) => "known",
        Some(YesNo::No | YesNo::Unknown) => "not known",
    };
    let note = one.note.as_ref().map(|note| format!(": {note}")).unwrap_or_default();
    let by = one.by.map(|role| format!(" (by {})", role.word())).unwrap_or_default();
    format!("{known}{note}{by}")
}

fn observed(one: &Observed, extremity: &str) -> String {
    let pitting = match one.pitting {
        None => "not answered",
        Some(Pitting::None) => "none",
        Some(Pitting::Minor) => "minor",
        Some(Pitting::Strong) => "strong",
        Some(Pitting::Unknown) => "not known",
    };
    format!(
        "pitting {pitting}; folds {}; distortion {}; {extremity} swelling {}; swelling beyond the garment {}",
        answer(one.folds),
        answer(one.distortion),
        answer(one.extremity_swelling),
        answer(one.swelling_beyond)
    )
}

fn prescribed(one: &Prescribed) -> String {
    let wanted = one.wanted.as_ref().map(|wanted| match wanted {
        Wanted::Class { scheme, class } => format!("class {} of {}", class.text, scheme.text),
        Wanted::Range { low, high } => {
            format!("{} to {}", words::whole(mmhg(*low)), words::mmhg(mmhg(*high)))
        }
    });
    let style = one.style.as_ref().map(ToString::to_string);
    let by = one.by.as_ref().map(|by| format!("by {by}"));
    wanted.into_iter().chain(style).chain(by).collect::<Vec<_>>().join(", ")
}

fn cap(one: &Cap) -> String {
    match one {
        Cap::Pressure(pressure) => words::mmhg(mmhg(*pressure)),
        Cap::Class { class, scheme } => format!("class {} of {}", class.text, scheme.text),
    }
}

fn arterial(one: &Arterial) -> String {
    let index = one.abpi.map(|index| match index {
        Index::Value(value) => format!("ankle-brachial index {}", words::decimal(value, 2)),
        Index::NotCompressible => "ankle-brachial index not compressible".to_owned(),
    });
    let pressure = |name: &str, value: Option<tapeline::quantity::Pressure>| {
        value.map(|value| format!("{name} {}", words::mmhg(mmhg(value))))
    };
    let all = [
        one.taken_on.map(|on| format!("taken on {}", words::date_short(on))),
        index,
        pressure("ankle", one.ankle_systolic),
        pressure("brachial", one.brachial_systolic),
        pressure("toe", one.toe),
        one.toe_brachial.map(|value| format!("toe-brachial index {}", words::decimal(value, 2))),
        pressure("tcpO2", one.tcpo2),
        one.clinical.map(|clinical| format!("clinical assessment {}", clinical.word())),
        one.clinical_by.map(|role| format!("by {}", role.word())),
        one.clinical_found.as_ref().map(ToString::to_string),
        one.cap.as_ref().map(|one| format!("cap {}", cap(one))),
    ];
    all.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

fn reading(one: &Reading) -> String {
    let side = one.sensor_side_text.as_ref().map(|side| format!(" ({side})")).unwrap_or_default();
    let of = one.garment.as_ref().map(|of| format!(" under {}", of.text)).unwrap_or_default();
    format!("{} {}{side}{of}", words::mmhg(mmhg(one.pressure)), words::at(one.landmark))
}

fn garment(one: &GarmentInUse) -> String {
    let size = one.size.as_ref().map(|size| format!(", size {size}")).unwrap_or_default();
    let hours = one.hours_a_day.map(|hours| format!(", {} hours a day", words::trimmed(hours, 1)));
    format!(
        "{} of {}{size}, given {}{}",
        one.quantity,
        one.label,
        words::date_short(one.given_on),
        hours.unwrap_or_default()
    )
}

fn screening(one: &Screening) -> Vec<(&'static str, Option<String>)> {
    let asked = one.asked_on.map(|on| {
        let by = one.by.as_ref().map(|by| format!(" by {by}")).unwrap_or_default();
        format!("{}{by}", words::date_short(on))
    });
    vec![
        ("Screening asked", asked),
        ("Unchanged since", one.unchanged_since.map(|(on, _)| words::date_short(on))),
        ("Absent", listed(&one.absent)),
        ("Present", listed(&one.present)),
        ("Unknown", listed(&one.unknown)),
    ]
}

fn cleared(all: &[Cleared]) -> Vec<(&'static str, Option<String>)> {
    let said = |one: &Cleared| {
        let decision = match one.decision {
            ClearDecision::Cleared => "cleared",
            ClearDecision::Refused => "refused",
        };
        format!(
            "{} {decision} by {} on {}",
            one.item.text,
            one.role.word(),
            words::date_short(one.cleared_on)
        )
    };
    let said: Vec<String> = all.iter().map(said).collect();
    vec![("Cleared", (!said.is_empty()).then(|| words::list(&said)))]
}

fn marks(record: &Record, limb: &LimbRecord) -> Table {
    let mut columns = vec![
        Column::words("Mark"),
        Column::numbers("At", "cm"),
        Column::numbers("Girth", "cm"),
        Column::numbers("Tape", "values"),
    ];
    let other = record.other_marks(limb);
    if other.is_some() {
        columns.push(Column::numbers("Other limb", "cm"));
    }
    let mut table = Table::new("Marks", columns);
    for mark in &limb.marks {
        let name = mark.landmark.map_or_else(|| "serial mark".to_owned(), words::label);
        let mut row = vec![
            name,
            words::cm_short(mark.at.tenths()),
            words::cm_short(mark.girth().tenths()),
            mark.readings().to_string(),
        ];
        if let Some(other) = other {
            let same = other.iter().find(|one| match mark.landmark {
                Some(_) => one.landmark == mark.landmark,
                None => one.landmark.is_none() && one.at == mark.at,
            });
            row.push(same.map(|one| words::cm_short(one.girth().tenths())).unwrap_or_default());
        }
        table.push(row);
    }
    table
}
