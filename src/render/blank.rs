//! Owns the empty form of a record: what is filled in at the couch with a pencil, in the order of the
//! guided entry.
//!
//! Source: the order of the marks follows the hand that measures; the questions are those of the rules.

use super::limb_outline::{limb_outline, numbered};
use super::limb_sketch::limb_sketch;
use crate::anatomy::{Landmark, Limb};
use crate::document::{
    Blank, Block, Column, Figure, Head, Leaf, Letters, Reader, Room, Sheet, Table, Tick, hold_units,
};
use crate::rules::{AnsweredBy, Rules};

/// Where a landmark is, in one line: the same words as in the guided entry.
///
/// Basis: measuring points of the published standards (leg: published; arm: common trade use, memory).
pub fn where_is(landmark: Landmark) -> &'static str {
    match landmark {
        Landmark::Hand => "round the hand at the knuckles",
        Landmark::ThumbWeb => "round the hand across the thumb web",
        Landmark::Wrist => "smallest girth of the wrist; zero of the distances",
        Landmark::LowerForearm => "lower forearm, between wrist and fullest forearm",
        Landmark::Forearm => "fullest forearm",
        Landmark::Elbow => "elbow, arm slightly bent",
        Landmark::UpperArm => "upper arm, midway between elbow and axilla",
        Landmark::Axilla => "about 2 cm below the fold of the axilla",
        Landmark::Forefoot => "ball of the foot, base of great to little toe",
        Landmark::Instep => "round the heel point over the ankle bend",
        Landmark::Ankle => "smallest girth above the ankle bones",
        Landmark::LowerCalf => "where the Achilles tendon passes into the calf muscle",
        Landmark::Calf => "largest girth of the calf",
        Landmark::BelowKnee => "just below the bump of the shin bone under the knee",
        Landmark::Knee => "middle of the kneecap, over the hollow of the knee",
        Landmark::MidThigh => "midway between groin and middle of the kneecap",
        Landmark::UpperThigh => "5 cm below the groin",
    }
}

/// The order in which a hand measures: from the reference toward the trunk, then hand or foot from there
/// outward.
pub fn measuring_order(limb: Limb) -> Vec<Landmark> {
    let (outer, inner): (Vec<_>, Vec<_>) =
        Landmark::of(limb).iter().copied().partition(|one| one.on_extremity());
    inner.into_iter().chain(outer.into_iter().rev()).collect()
}

/// The empty form, one leaf for each kind of limb; `made_on` is the day, `2026-03-14`.
pub fn blank_form(rules: &Rules, made_on: &str) -> Sheet {
    let leaf = |limb: Limb| Leaf {
        reader: Reader::Fitter,
        head: Head {
            bold: format!("Measured at the couch \u{b7} {}", limb.name()),
            plain: "typed in with tapeline new record".to_owned(),
        },
        title: format!("Measurements of an {}", limb.name()).replace("an leg", "a leg"),
        blocks: blocks(limb, rules),
        language: "en-GB".to_owned(),
        numbered: "page {page} of {pages}".to_owned(),
        apart: true,
    };
    let mut sheet = Sheet {
        title: "Measurement form".to_owned(),
        leaves: vec![leaf(Limb::Arm), leaf(Limb::Leg)],
        made_on: made_on.to_owned(),
        made_by: format!("tapeline {}", env!("CARGO_PKG_VERSION")),
    };
    hold_units(&mut sheet);
    sheet
}

fn boxes(words: &[&str]) -> Vec<String> {
    words.iter().map(|word| (*word).to_owned()).collect()
}

fn ticks(words: &[&str], items: impl IntoIterator<Item = String>) -> Block {
    Block::Ticks { boxes: boxes(words), items: items.into_iter().map(Tick::open).collect() }
}

fn blocks(limb: Limb, rules: &Rules) -> Vec<Block> {
    let mut blocks = vec![
        Block::Blanks(vec![
            vec![
                Blank::new("Client's reference, never a name").wide(3),
                Blank::new("Age, if a child").wide(2),
            ],
            vec![
                Blank::new("Measured on").wide(2),
                Blank::new("Measured by").wide(2),
                Blank::new("Cause found by (role)").wide(3),
            ],
            vec![
                Blank::new("Posture").wide(3),
                Blank::new("Distances from").wide(3),
                Blank::new("Tape in (cm, mm, in)").wide(3),
            ],
        ]),
        ticks(&["left", "right", "both"], ["measured".to_owned()]),
        ticks(&["left", "right", "both", "none"], ["affected by the swelling".to_owned()]),
        ticks(&["yes", "no", "unknown"], ["the cause of the swelling is known".to_owned()]),
        Block::beside((4, vec![outline(limb)]), (9, vec![marks(limb)])),
        ticks(&["none", "minor", "strong", "unknown"], ["pit left by a finger".to_owned()]),
        ticks(
            &["no", "yes", "unknown"],
            [
                "skin in folds".to_owned(),
                "the limb has lost its shape".to_owned(),
                format!("the {} is swollen", limb.extremity()),
                "swelling beyond the limb's root".to_owned(),
            ],
        ),
        Block::heading("Questions"),
        Block::text(
            "Tick what is there and what could not be found out, or that none is there. A group without a tick was not asked.",
        ),
    ];
    for group in rules.groups.iter().filter(|group| !group.id.is_of_re_order()) {
        let asked = rules.items.iter().filter(|one| {
            one.group == Some(group.id) && one.limbs.include(limb) && one.answered_by == AnsweredBy::Screening
        });
        let asked: Vec<String> = asked.map(|one| one.condition.clone()).collect();
        if !asked.is_empty() {
            blocks.push(Block::Together(vec![
                Block::strong(format!("{}   \u{2610}\u{a0}none\u{a0}of\u{a0}these", group.question)),
                ticks(&["present", "unknown"], asked),
            ]));
        }
    }
    if limb == Limb::Leg {
        blocks.push(Block::Blanks(vec![
            vec![
                Blank::new("Ankle-brachial pressure index").wide(4),
                Blank::new("Toe pressure, mmHg").wide(3),
                Blank::new("Taken on").wide(2),
            ],
            vec![
                Blank::new("Blood supply as judged by hand and eye").wide(5),
                Blank::new("Judged by (role)").wide(3),
            ],
        ]));
    }
    blocks.push(Block::Blanks(vec![
        vec![
            Blank::new("Prescribed: scheme and class, or range").wide(5),
            Blank::new("Style").wide(2),
            Blank::new("By (role)").wide(2),
        ],
        vec![
            Blank::new("Materials that are not borne, or none").wide(5),
            Blank::new("Body weight, kg").wide(3),
        ],
    ]));
    blocks
}

fn outline(limb: Limb) -> Block {
    Block::Figure(Figure { scene: limb_outline(limb), letters: Some(Letters::Sketch(limb_sketch(limb))) })
}

fn marks(limb: Limb) -> Block {
    let mut table = Table::new(
        "Marks, in measuring order",
        vec![
            Column::words("Mark"),
            Column::words("Distance").at_least(13),
            Column::words("Girth").at_least(13),
            Column::words("Again").at_least(13),
            Column::words("Other side").at_least(13),
        ],
    );
    table.room = Room::Writing;
    for landmark in measuring_order(limb) {
        let mut row = vec![format!("{}: {}", numbered(limb, landmark), where_is(landmark))];
        row.extend(std::iter::repeat_n(String::new(), 4));
        table.push(row);
    }
    Block::Table(table)
}
