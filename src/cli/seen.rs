//! Owns how `inspect` shows what was read: blocks for each kind of file, figures through `words`.

use tapeline::anatomy::{Landmark, Limb};
use tapeline::assessment::usual_exponents;
use tapeline::document::{Block, Column, Entry, Table};
use tapeline::finding::exponent_doubt_words;
use tapeline::garment::{Chart, Claim, Exponent, Fabric, Garment, Outfit, Piece, Scheme, Wrap};
use tapeline::quantity::Range;
use tapeline::rules::Rules;
use tapeline::words;

/// Names with values; those without a value are left out.
pub(super) fn keys(all: Vec<(&str, Option<String>)>) -> Block {
    Block::Keys(all.into_iter().filter_map(|(name, said)| Some(Entry::new(name, said?))).collect())
}

fn ends(from: Landmark, to: Landmark) -> String {
    format!("{} to {}", words::label(from), words::label(to))
}

fn claimed(claim: Option<&Claim>) -> Option<String> {
    claim.map(|one| {
        let band = one.scheme.class(&one.class).map_or(String::new(), |band| format!(" ({})", band.spoken()));
        format!("{} of {}{band}", one.class, one.scheme.label)
    })
}

fn listed<T: AsRef<str>>(all: Option<&[T]>) -> String {
    match all {
        None => "not stated".to_owned(),
        Some([]) => "none".to_owned(),
        Some(all) => words::list(all),
    }
}

fn yes_no(answer: Option<bool>) -> String {
    match answer {
        None => "not stated".to_owned(),
        Some(true) => "yes".to_owned(),
        Some(false) => "no".to_owned(),
    }
}

/// A range of lengths as a cell: `16–18`, `under 14`, `over 36`, in cm.
fn range(range: Range) -> String {
    match (range.low, range.high) {
        (Some(low), Some(high)) => format!("{}–{}", words::cm_short(low), words::cm_short(high)),
        (None, Some(high)) => format!("under {}", words::cm_short(high)),
        (Some(low), None) => format!("over {}", words::cm_short(low)),
        (None, None) => String::new(),
    }
}

/// A chart: what it says of itself, then a row for each size.
pub(crate) fn chart(chart: &Chart) -> Vec<Block> {
    let fabric = chart.fabric.as_ref().map(|fabric| fabric.label.to_string());
    let mut blocks = vec![keys(vec![
        ("Label", Some(chart.label.to_string())),
        ("Limb", Some(chart.limb.name().to_owned())),
        ("Style", chart.style.as_ref().map(ToString::to_string)),
        ("Reaches", Some(ends(chart.from, chart.to))),
        ("Class", claimed(chart.claim.as_ref())),
        ("Materials", Some(listed(chart.materials.as_deref()))),
        ("Hand or foot part", Some(yes_no(chart.hand_part))),
        ("Fabric", Some(fabric.unwrap_or_else(|| "not stated".to_owned()))),
        ("Layers", Some(chart.layers.to_string())),
    ])];
    let marks = chart.measures();
    let mut columns = vec![Column::words("Size")];
    columns.extend(marks.iter().map(|mark| Column::ranges(words::label(*mark), "cm")));
    let mut girths = Table::new("Girths", columns);
    for size in &chart.sizes {
        let cells = marks.iter().map(|mark| size.range_at(*mark).map(range).unwrap_or_default());
        girths.push(std::iter::once(size.label.to_string()).chain(cells).collect());
    }
    blocks.push(Block::Table(girths));
    if chart.has_relaxed() {
        let mut stated: Vec<Landmark> =
            chart.sizes.iter().flat_map(|size| size.relaxed.iter().map(|(mark, _)| *mark)).collect();
        stated.sort_unstable();
        stated.dedup();
        let mut columns = vec![Column::words("Size")];
        columns.extend(stated.iter().map(|mark| Column::numbers(words::label(*mark), "cm")));
        let mut relaxed = Table::new("Relaxed girths", columns);
        for size in &chart.sizes {
            let cells = stated.iter().map(|mark| {
                size.relaxed_at(*mark).map(|one| words::cm_short(one.girth.tenths())).unwrap_or_default()
            });
            relaxed.push(std::iter::once(size.label.to_string()).chain(cells).collect());
        }
        blocks.push(Block::Table(relaxed));
    }
    let lengths = chart.lengths();
    if !lengths.is_empty() {
        let mut columns = vec![Column::words("Size"), Column::words("Length")];
        columns.extend(lengths.iter().map(|name| Column::ranges(name.name(), "cm")));
        let mut table = Table::new("Lengths", columns);
        for size in &chart.sizes {
            for variant in &size.variants {
                let name = variant.name.as_ref().map(ToString::to_string).unwrap_or_default();
                let cells = lengths.iter().map(|name| {
                    let found = variant.lengths.iter().find(|(one, _)| one == name);
                    found.map(|(_, one)| range(*one)).unwrap_or_default()
                });
                table.push([size.label.to_string(), name].into_iter().chain(cells).collect());
            }
        }
        blocks.push(Block::Table(table));
    }
    blocks
}

/// What is worn: each piece.
pub(crate) fn outfit(outfit: &Outfit) -> Vec<Block> {
    let mut blocks = Vec::new();
    if outfit.pieces.len() > 1 {
        blocks.push(keys(vec![
            ("Label", Some(outfit.label.to_string())),
            ("Limb", Some(outfit.limb.name().to_owned())),
            ("Worn together", Some(words::counted(outfit.pieces.len(), "piece", "pieces"))),
        ]));
    }
    for worn in &outfit.pieces {
        match &worn.piece {
            Piece::Garment(one) => blocks.extend(garment(one)),
            Piece::Wrap(one) => blocks.push(wrap(one)),
        }
    }
    blocks
}

fn garment(garment: &Garment) -> Vec<Block> {
    let fabric = garment.fabric.as_ref().map(|fabric| fabric.label.to_string());
    let mut marks = Table::new(
        "Relaxed girths",
        vec![
            Column::words("Landmark"),
            Column::numbers("Relaxed girth", "cm"),
            Column::numbers("Measured", "times"),
        ],
    );
    for (mark, relaxed) in &garment.relaxed {
        marks.push(vec![
            words::label(*mark),
            words::cm_short(relaxed.girth.tenths()),
            relaxed.repeats.to_string(),
        ]);
    }
    vec![
        keys(vec![
            ("Label", Some(garment.label.to_string())),
            ("Limb", Some(garment.limb.name().to_owned())),
            ("Style", garment.style.as_ref().map(ToString::to_string)),
            ("Reaches", Some(ends(garment.from, garment.to))),
            ("Class", claimed(garment.claim.as_ref())),
            ("Materials", Some(listed(garment.materials.as_deref()))),
            ("Hand or foot part", Some(yes_no(garment.hand_part))),
            ("Fabric", Some(fabric.unwrap_or_else(|| "not stated".to_owned()))),
            ("Layers", Some(garment.layers.to_string())),
        ]),
        Block::Table(marks),
    ]
}

fn wrap(wrap: &Wrap) -> Block {
    keys(vec![
        ("Label", Some(wrap.label.to_string())),
        ("Limb", Some(wrap.limb.name().to_owned())),
        ("Reaches", Some(ends(wrap.from, wrap.to))),
        ("Pull", Some(format!("{} N", words::trimmed(wrap.pull_n, 2)))),
        ("Varies by", Some(words::fraction_percent(wrap.tension_sd))),
        ("Width", Some(format!("{} cm", words::trimmed(wrap.width_cm, 2)))),
        ("Layers", Some(words::trimmed(wrap.layers, 2))),
    ])
}

/// What is to look at in a fabric.
pub(crate) fn fabric_doubts(fabric: &Fabric, rules: &Rules) -> Vec<Block> {
    let usual = usual_exponents(rules);
    let doubt = fabric.exponent.and_then(|one| Some((one, one.doubt(usual)?)));
    doubt.map_or_else(Vec::new, |(one, doubt)| {
        let (what, next) = exponent_doubt_words(&fabric.label, one, doubt, usual);
        vec![Block::heading("To look at"), Block::list([format!("{what} {next} (exponent-doubt)")])]
    })
}

/// A fabric: its curve, and its exponent where it has one.
pub(crate) fn fabric(fabric: &Fabric) -> Vec<Block> {
    let mut blocks = vec![keys(vec![
        ("Label", Some(fabric.label.to_string())),
        ("Basis", Some(fabric.basis.word().to_owned())),
        ("Tension varies by", fabric.tension_sd.map(words::fraction_percent)),
        ("Exponent", fabric.exponent.map(exponent)),
        ("Note", fabric.note.as_ref().map(ToString::to_string)),
    ])];
    if fabric.has_curve() {
        let columns = vec![Column::numbers("Stretch", "%"), Column::numbers("Tension", "N/m")];
        let mut points = Table::new("Curve", columns);
        for (stretch, tension) in &fabric.curve {
            points.push(vec![words::trimmed(stretch * 100.0, 1), words::trimmed(*tension, 1)]);
        }
        blocks.push(Block::Table(points));
    }
    blocks
}

/// `1.15 (SD 0.06), by a strip pull`.
fn exponent(one: Exponent) -> String {
    let by = if one.pull_sd.is_some() { ", by a strip pull" } else { ", as stated" };
    format!("{}{by}", words::exponent(one.value, one.known_sd()))
}

/// A scheme: its classes and limits.
pub(crate) fn scheme(scheme: &Scheme) -> Vec<Block> {
    let mut classes = Table::new(
        "Classes",
        vec![Column::words("Class"), Column::words("Pressure"), Column::words("Basis")],
    );
    for class in &scheme.classes {
        classes.push(vec![class.class.clone(), class.spoken(), class.basis.word().to_owned()]);
    }
    vec![
        keys(vec![
            ("Id", Some(scheme.id.clone())),
            ("Label", Some(scheme.label.clone())),
            ("Source", Some(scheme.source.clone())),
        ]),
        Block::Table(classes),
    ]
}

/// Rules: how much they hold.
pub(crate) fn rules(rules: &Rules) -> Vec<Block> {
    vec![keys(vec![
        ("Id", Some(rules.id.clone())),
        ("Label", Some(rules.label.clone())),
        ("Source", Some(rules.source.clone())),
        ("Screening items", Some(rules.items.len().to_string())),
        ("Numbers", Some(rules.numbers.len().to_string())),
        ("Tape error", tape(rules)),
        ("Makes milder", Some(words::counted(rules.lowered.len(), "line", "lines"))),
    ])]
}

/// Where they state another error of the tape than the number has.
fn tape(rules: &Rules) -> Option<String> {
    let mut said: Vec<String> =
        [Limb::Arm, Limb::Leg].into_iter().flat_map(|limb| rules.tape_said(limb)).collect();
    said.dedup();
    (!said.is_empty()).then(|| words::list(&said))
}
