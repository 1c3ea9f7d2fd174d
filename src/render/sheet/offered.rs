//! Owns what was asked for and what the chart offers, side by side.

use super::subject::Subject;
use super::{Block, Column, Room, Table};

const NOT_STATED: &str = "not stated";

/// The table of both.
pub(super) fn offered(subject: Subject<'_>) -> Vec<Block> {
    let mut blocks = vec![Block::heading("Asked for and offered")];
    let asked = subject.report.prescribed.as_ref();
    let offer = subject.chart.map(|chart| &chart.offered);
    let known = |text: Option<&str>| text.unwrap_or(NOT_STATED).to_owned();
    let mut rows = Vec::new();
    let mut row =
        |name: &str, asked: String, offered: String| rows.push(vec![name.to_owned(), asked, offered]);
    let none = "no chart given".to_owned();
    let or_none = |text: Option<String>| text.unwrap_or_else(|| none.clone());
    row(
        "From",
        asked.map_or_else(|| "nothing prescribed".to_owned(), |one| known(one.by.as_deref())),
        or_none(subject.chart.map(|chart| {
            let size = subject.size.map(|size| format!(", size {}", size.size)).unwrap_or_default();
            let variant = chart.variant.as_ref().map(|one| format!(", {one}")).unwrap_or_default();
            let picked = if chart.size.is_none() && subject.size.is_some() { " (not picked)" } else { "" };
            format!("{}{size}{variant}{picked}", chart.label)
        })),
    );
    row(
        "Pressure",
        asked.map_or_else(|| NOT_STATED.to_owned(), |one| one.words.clone()),
        or_none(offer.map(|one| one.words.clone())),
    );
    row(
        "Style",
        asked.map_or_else(|| NOT_STATED.to_owned(), |one| known(one.style.as_deref())),
        or_none(offer.map(|one| known(one.style.as_deref()))),
    );
    if let Some(offer) = offer {
        let mut make =
            vec![if offer.layers == 1 { "1 layer".to_owned() } else { format!("{} layers", offer.layers) }];
        make.push(offer.contains.as_ref().map_or_else(
            || "materials not stated".to_owned(),
            |list| format!("made of {}", list.join(", ")),
        ));
        if subject.report.record.limb == "arm" {
            let hand = match offer.hand_part {
                Some(true) => "with a hand part",
                Some(false) => "no hand part",
                None => "hand part not stated",
            };
            make.push(hand.to_owned());
        }
        make.push(
            offer
                .fabric
                .as_ref()
                .map_or_else(|| "no fabric curve".to_owned(), |label| format!("fabric curve {label}")),
        );
        row("Make", NOT_STATED.to_owned(), make.join("; "));
    }
    blocks.push(Block::Table(Table {
        caption: format!("Prescription and chart.{}", subject.caution()).trim_end_matches('.').to_owned()
            + ".",
        columns: vec![Column::words("", 18), Column::words("Asked for", 56), Column::words("Offered", 60)],
        rows,
        room: Room::None,
    }));
    blocks
}
