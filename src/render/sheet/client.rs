//! Owns the client's leaf: plain words, no pressures.
//!
//! Source: the warnings follow published case reports (numbness at a tight edge: Saudi J Anaesth
//! 2016;10:462) and the consensus on infection of a swollen limb; care lines are common practice.
//! How long and when to wear is the clinician's to write, so that those lines are blank.

use super::subject::{State, Subject};
use super::{Block, Reader};
use super::{Leaf, Tone, Weight};

/// A line to write a name or number on.
const LINE: &str = "____________________";

/// The leaf.
pub(super) fn client(subject: Subject<'_>) -> Leaf {
    if subject.state == State::Trial { garment(subject) } else { nothing_yet(subject) }
}

fn garment(subject: Subject<'_>) -> Leaf {
    let limb = subject.limb_in_capitals();
    let style = subject.chart.and_then(|chart| chart.offered.style.as_deref()).unwrap_or("garment");
    let size = subject.size.map(|size| format!(", size {}", size.size)).unwrap_or_default();
    let variant = subject
        .chart
        .and_then(|chart| chart.variant.as_ref())
        .map(|one| format!(", {one}"))
        .unwrap_or_default();
    let mut blocks = vec![
        Block::Text(Tone::Lead, format!("A {style} for your {limb}{size}{variant}.")),
        Block::text("Wear it on this limb only. No one else should wear it. Keep this sheet at home."),
        Block::blanks(&[&["How many I have", "Given to me on"]]),
        take_it_off(),
        Block::heading("When to wear it"),
        Block::blanks(&[
            &["Put it on at", "Take it off at"],
            &["First day: how long", "After that"],
            &["At night"],
        ]),
        Block::heading("Putting it on and taking it off"),
        Block::List(putting_on(subject)),
        Block::Ticks {
            boxes: vec![],
            items: vec![
                "I have shown that it can be put on.".to_owned(),
                "I have shown that it can be taken off.".to_owned(),
            ],
        },
        Block::heading("Washing, skin and spare"),
        Block::list(&[
            "Have two if you can: one on, one in the wash.",
            "Wash it as the label says. Use no softener. Dry it flat, away from heat.",
            "Use plain cream at night, not just before you put it on.",
            "Look at your skin each day when you take it off.",
            "Ask for a new one when it feels slack or has a hole.",
        ]),
    ];
    if !subject.report.record.taught.is_empty() {
        blocks.extend(routine());
    }
    blocks.push(Block::heading("Next visit"));
    blocks.push(Block::blanks(&[&["Next visit", "Measure me again by"], &["Questions? I call"]]));
    Leaf { reader: Reader::Client, title: "For you: your garment".to_owned(), blocks }
}

/// Basis: published (numbness means off at once) and common practice.
fn take_it_off() -> Block {
    let mut inside = vec![
        Block::strong(format!("Take it off at once and call {LINE} if:")),
        Block::list(&[
            "your skin goes numb or tingles, and it does not stop",
            "you have new pain",
            "your fingers or toes turn blue, white or cold",
            "the limb swells more above or below the edges",
            "it slips down into a tight ring and you cannot smooth it out",
            "you get a blister or broken skin.",
        ]),
        Block::text("If you feel numb, take it off right away, day or night."),
    ];
    inside.extend(warnings());
    Block::Frame { weight: Weight::Thick, title: "Stay well: take it off when it hurts".to_owned(), inside }
}

/// Signs that do not wait. Basis: published (consensus on infection of a swollen limb) and common
/// practice.
fn warnings() -> Vec<Block> {
    vec![
        Block::strong("See a doctor the same day if:"),
        Block::text(
            "your skin is hot, red or sore, the redness spreads, or you feel as if you have the flu. Do not rub or massage it.",
        ),
        Block::strong("Call for emergency help if:"),
        Block::text("you cannot get your breath, your chest hurts, or you are confused."),
    ]
}

/// Basis: common practice.
fn putting_on(subject: Subject<'_>) -> Vec<String> {
    let arm = subject.report.record.limb == "arm";
    let rings = if arm {
        "Take off rings, watch and tight cuffs."
    } else {
        "Take off rings on your toes and tight socks."
    };
    [
        "Your skin should be dry.",
        rings,
        "Put on rubber gloves, or use a slip liner.",
        "Ease it up a little at a time. Do not pull it by the top edge.",
        "Smooth out each fold. Do not turn the top edge over.",
        "To take it off, peel it down slowly.",
    ]
    .iter()
    .map(|line| (*line).to_owned())
    .collect()
}

/// Shown only when the record says that it was taught. Basis: common practice.
fn routine() -> Vec<Block> {
    vec![
        Block::heading("What you were taught to do at home"),
        Block::list(&[
            "A short time each day is better than a long time once a week.",
            "Do it before bed, with the limb held up and resting on something.",
            "Start with slow, deep breaths.",
            "Clear the upper part of the limb first, then the lower part.",
            "Use a plain, water-based cream. Your garment does not go over fresh cream.",
            "Do not do it when your skin is hot, red or sore.",
        ]),
        Block::blanks(&[&["How long", "How often"]]),
    ]
}

fn nothing_yet(subject: Subject<'_>) -> Leaf {
    let limb = subject.limb_in_capitals();
    let mut inside = vec![Block::text(why(subject))];
    if subject.state == State::Stop {
        inside.push(Block::strong("Do not put on any compression garment until you are told that you may."));
    }
    let weight = if subject.state == State::Stop { Weight::Black } else { Weight::Thick };
    let mut signs = warnings();
    signs.push(Block::strong("If you wear a garment now, take it off at once and call if:"));
    signs.push(Block::text(
        "your skin goes numb or tingles, you have new pain, your fingers or toes turn blue, white or cold, or you get a blister or broken skin.",
    ));
    let blocks = vec![
        Block::Text(Tone::Lead, format!("This is about your {limb}.")),
        Block::Frame {
            weight,
            title: if subject.state == State::Stop { "STOP. Why" } else { "Why" }.to_owned(),
            inside,
        },
        Block::heading("What happens next"),
        Block::text(next(subject)),
        Block::blanks(&[&["I call", "Phone"], &["By this day", "Next visit"]]),
        Block::text(match subject.state {
            State::Stop => "Do you wear a garment now? Call today and ask if you should take it off.",
            _ => "Do you wear a garment now? Ask if you should go on wearing it.",
        }),
        Block::blanks(&[&["The answer"]]),
        Block::Frame {
            weight: Weight::Thin,
            title: "Do not wait with these signs".to_owned(),
            inside: signs,
        },
    ];
    Leaf { reader: Reader::Client, title: "No garment to wear from this sheet yet".to_owned(), blocks }
}

fn why(subject: Subject<'_>) -> &'static str {
    match subject.report.outcome {
        Some("stop") => {
            "Something in your answers or your tests must be looked at first. A garment could harm you now."
        }
        Some("refer") => {
            "Something must be checked by a trained person first. They will say if you can try a garment on."
        }
        Some("incomplete") => "Some questions or some sizes are still missing. We need all of them first.",
        Some("made-to-measure") => "No ready-made size fits your limb well. One may have to be made for you.",
        Some("unproven") => {
            "We found a size, but we do not know yet how it would press. We have to check that first."
        }
        _ => "We have measured your limb. We have not looked for a size yet.",
    }
}

fn next(subject: Subject<'_>) -> &'static str {
    match subject.report.outcome {
        Some("stop") => "A doctor or your care team looks at this first. Please call the person below.",
        Some("incomplete") => "Please call or visit the person below. They will ask you what is missing.",
        Some("made-to-measure") => "A trained fitter will measure you again and talk with you about it.",
        _ => "The person below will tell you when they know more.",
    }
}
