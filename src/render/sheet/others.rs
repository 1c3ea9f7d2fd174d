//! Owns the other sizes and charts, one reason each, and the volume of both limbs.

use super::fall::spoken;
use super::marks::text;
use super::result::finding_words;
use super::subject::{State, Subject};
use super::wording::capital;
use super::{Block, Column, Room, Table};
use crate::report::Chart;

/// Other sizes of the chart shown, other charts, and what was found about those.
pub(super) fn others(subject: Subject<'_>) -> Vec<Block> {
    let report = subject.report;
    let mut rows = Vec::new();
    if let Some(chart) = subject.chart {
        if chart.size.is_none() {
            rows.push(vec![chart.label.clone(), "none".to_owned(), capital(&chart.reason)]);
        }
        for size in chart.sizes.iter().filter(|size| Some(&size.size) != chart.size.as_ref()) {
            rows.push(vec![chart.label.clone(), format!("size {}", size.size), capital(&size.reason)]);
        }
    }
    for chart in report.charts.iter().filter(|one| Some(&one.label) != subject.chart.map(|one| &one.label)) {
        let size = chart.size.as_ref().map_or_else(|| "none".to_owned(), |size| format!("size {size}"));
        rows.push(vec![chart.label.clone(), size, verdict(subject, chart)]);
    }
    if rows.is_empty() {
        return Vec::new();
    }
    let mut blocks = vec![
        Block::heading("Other sizes and charts"),
        Block::Table(Table {
            caption: format!("What else was looked at, and why it was not taken.{}", subject.caution()),
            columns: vec![Column::words("Chart", 36), Column::words("Size", 15), Column::words("Reason", 95)],
            rows,
            room: Room::None,
        }),
    ];
    let about: Vec<String> = report
        .findings
        .iter()
        .filter(|one| !subject.concerns(one))
        .map(|one| format!("{}. {}", capital(&one.place), finding_words(one)))
        .collect();
    if !about.is_empty() {
        blocks.push(Block::strong("Found about other charts:"));
        blocks.push(Block::List(about));
    }
    blocks
}

/// The outcome and its reason. While nothing is fitted, no line of a sheet invites to try a garment on.
fn verdict(subject: Subject<'_>, chart: &Chart) -> String {
    if chart.outcome == "try-on" && subject.state != State::Trial {
        return format!("Holds by girth: {}", chart.reason);
    }
    format!("{}: {}", capital(&chart.outcome.replace('-', " ")), chart.reason)
}

/// Both limbs, when the record has both.
pub(super) fn volume(subject: Subject<'_>) -> Vec<Block> {
    let record = &subject.report.record;
    let Some(other) = &record.other_limb else { return Vec::new() };
    let mut blocks = vec![Block::heading("Both limbs")];
    if let Some(volume) = &subject.report.volume {
        let row = |name: &str, measured, other, excess, percent| {
            vec![name.to_owned(), text(measured), text(other), text(excess), text(percent)]
        };
        let mut rows = vec![row(
            "Whole length measured",
            volume.measured_ml.as_ref(),
            volume.other_ml.as_ref(),
            volume.excess_ml.as_ref(),
            volume.excess_percent.as_ref(),
        )];
        rows.extend(volume.parts.iter().map(|part| {
            row(
                &format!("{} part", capital(part.part)),
                part.measured_ml.as_ref(),
                part.other_ml.as_ref(),
                part.excess_ml.as_ref(),
                part.excess_percent.as_ref(),
            )
        }));
        blocks.push(Block::Table(Table {
            caption: format!("Volume by the {} method.", volume.method),
            columns: vec![
                Column::words("Part", 40),
                Column::numbers("This limb, mL", 26),
                Column::numbers("Other limb, mL", 26),
                Column::numbers("Excess, mL", 26),
                Column::numbers("Excess, %", 26),
            ],
            rows,
            room: Room::None,
        }));
        let mut words = Vec::new();
        if let Some(sd) = &volume.sd_ml {
            words.push(format!("Tape error alone gives the excess an SD of {} mL.", sd.text));
        }
        let sets: Vec<String> =
            volume.severity.iter().map(|one| format!("{} {}", one.set, one.grade)).collect();
        if !sets.is_empty() {
            words.push(format!("In published sets: {}.", sets.join(", ")));
        }
        if !words.is_empty() {
            blocks.push(Block::small(words.join(" ")));
        }
    }
    let beside = |label: &str| {
        let one = other.iter().find(|mark| mark.label == label);
        text(one.and_then(|mark| mark.girth_cm.as_ref()))
    };
    let rows: Vec<Vec<String>> = record
        .marks
        .iter()
        .map(|mark| vec![mark.label.clone(), text(mark.girth_cm.as_ref()), beside(&mark.label)])
        .chain(
            other
                .iter()
                .filter(|mark| record.marks.iter().all(|one| one.label != mark.label))
                .map(|mark| vec![mark.label.clone(), text(None), text(mark.girth_cm.as_ref())]),
        )
        .collect();
    blocks.push(Block::Table(Table {
        caption: "Girths of both limbs.".to_owned(),
        columns: vec![
            Column::words("Mark", 40),
            Column::numbers("This limb, cm", 26),
            Column::numbers("Other limb, cm", 26),
        ],
        rows,
        room: Room::None,
    }));
    blocks
}

/// What a made-to-measure order needs.
pub(super) fn made_to_measure(subject: Subject<'_>) -> Vec<Block> {
    if !subject.made_to_measure() {
        return Vec::new();
    }
    let report = subject.report;
    let target =
        report.prescribed.as_ref().map_or_else(|| "____________".to_owned(), |one| one.words.clone());
    let why = subject.chart.map(|chart| capital(&chart.reason)).unwrap_or_default();
    let mut keys = vec![("Pressure wanted".to_owned(), target), ("Why".to_owned(), why)];
    keys.extend(report.record.lengths.iter().map(|length| {
        (format!("Length {}", spoken(&length.between)), format!("{} cm", text(length.length_cm.as_ref())))
    }));
    let rows = report
        .record
        .marks
        .iter()
        .map(|mark| {
            let label = capital(&mark.landmark.map_or_else(|| mark.label.clone(), spoken));
            vec![label, text(mark.at_cm.as_ref()), text(mark.girth_cm.as_ref()), String::new()]
        })
        .collect();
    vec![
        Block::heading("For a made-to-measure garment"),
        Block::Keys(keys),
        Block::Table(Table {
            caption: "Girths, and relaxed girths to be filled in.".to_owned(),
            columns: vec![
                Column::words("Mark", 40),
                Column::numbers("Distance, cm", 26),
                Column::numbers("Girth, cm", 26),
                Column::numbers("Relaxed girth, cm", 34),
            ],
            rows,
            room: Room::Number,
        }),
        Block::Ticks {
            boxes: vec![],
            items: vec![
                "hand, finger, foot or toe piece".to_owned(),
                "folds, lobes or a distorted shape: flat knit is preferred".to_owned(),
                "help for putting on, zip or wide opening".to_owned(),
                "padding or lining over bone".to_owned(),
            ],
        },
        Block::blanks(&[&["Other needs"], &["Second garment, for the wash", "Checked by"]]),
    ]
}
