//! Owns the reading of marks and the checks between them: order, doubles, landmarks.

use std::collections::BTreeSet;

use super::Mark;
use crate::anatomy::{Landmark, Limb};
use crate::input::{Fields, Item};
use crate::quantity::Girth;

/// Reads a landmark of `limb`, a word or a letter.
pub(crate) fn read_landmark(item: &Item<'_>, limb: Limb) -> Option<Landmark> {
    let text = item.text()?;
    let found = Landmark::parse(limb, &text);
    if found.is_none() {
        item.refuse(landmark_fault(&text, limb));
    }
    found
}

/// What to say of a text that is no landmark of `limb`.
pub(crate) fn landmark_fault(text: &str, limb: Limb) -> String {
    crate::input::landmark_fault(limb, text)
}

/// Most marks of one limb (house rule: a slip of a spreadsheet, not a limb, has more).
const MOST_MARKS: usize = 50_000;

/// Most repeats of one girth (house rule).
const MOST_REPEATS: usize = 20;

/// Reads the key `marks` of a block.
pub(super) fn read_marks(fields: &Fields<'_>, limb: Limb) -> Option<Vec<Mark>> {
    let item =
        fields.required("marks", "at least one mark, as `- {landmark: wrist, at: 0 cm, girth: 16.9 cm}`")?;
    let list = item.list()?;
    if list.is_empty() {
        item.refuse("holds no mark; add at least one, as `- {landmark: wrist, at: 0 cm, girth: 16.9 cm}`");
        return None;
    }
    if list.len() > MOST_MARKS {
        item.refuse(format!("holds {} marks; at most {MOST_MARKS} are taken of one limb", list.len()));
        return None;
    }
    let read: Vec<(Option<Mark>, &Item<'_>)> = list.iter().map(|one| (read_mark(one, limb), one)).collect();
    let whole = read.iter().all(|(mark, _)| mark.is_some());
    let mut marks: Vec<(Mark, &Item<'_>)> =
        read.into_iter().filter_map(|(mark, one)| Some((mark?, one))).collect();
    check_doubles(&marks);
    marks.sort_by_key(|(mark, _)| mark.at);
    check_order(&marks);
    whole.then(|| marks.into_iter().map(|(mark, _)| mark).collect())
}

fn read_mark(item: &Item<'_>, limb: Limb) -> Option<Mark> {
    let fields = item.fields()?;
    let named = fields.optional("landmark");
    let landmark = named.as_ref().and_then(|one| read_landmark(one, limb));
    let at =
        fields.required("at", "its distance along the limb, as `at: 14 cm`").and_then(|one| one.position());
    let girths = fields.required("girth", "its girth, as `girth: 25.6 cm`").and_then(|one| read_girths(&one));
    let calipers = fields.optional("calipers").map(|one| {
        let block = one.fields()?;
        let wide =
            block.required("wide", "the widest diameter, as `wide: 9 cm`").and_then(|one| diameter(&one));
        let deep =
            block.required("deep", "the diameter across it, as `deep: 7 cm`").and_then(|one| diameter(&one));
        block.finish();
        let (wide, deep) = (wide?, deep?);
        if deep > wide {
            one.refuse("`deep` is above `wide`; write the larger diameter as `wide`");
            return None;
        }
        Some((wide, deep))
    });
    fields.finish();
    if named.is_some() && landmark.is_none() {
        return None;
    }
    let calipers = match calipers {
        None => None,
        Some(pair) => Some(pair?),
    };
    let (first, again) = girths?;
    Some(Mark { landmark, at: at?, first, again, calipers, spot: item.spot() })
}

/// One girth, or a list of repeats of it.
fn read_girths(item: &Item<'_>) -> Option<(Girth, Vec<Girth>)> {
    if !item.is_list() {
        return item.girth().map(|girth| (girth, Vec::new()));
    }
    let list = item.list()?;
    if list.len() > MOST_REPEATS {
        item.refuse(format!("holds {} girths; at most {MOST_REPEATS} repeats are taken", list.len()));
        return None;
    }
    if let Some(mended) = comma_in_list(item) {
        item.refuse(format!("a decimal comma splits a girth into two; write `girth: {mended}`"));
        return None;
    }
    let girths: Vec<Option<Girth>> = list.iter().map(Item::girth).collect();
    let girths: Vec<Girth> = girths.into_iter().collect::<Option<_>>()?;
    let Some((first, again)) = girths.split_first() else {
        item.refuse(
            "holds no girth; write one, as `girth: 25.6 cm`, or repeats, as `girth: [25.6 cm, 25.8 cm]`",
        );
        return None;
    };
    Some((*first, again.to_vec()))
}

/// `[16,9]` is a list of 16 and 9: a whole number followed by one bare digit that lies more than 2 cm off.
/// Gives the list with points.
fn comma_in_list(item: &Item<'_>) -> Option<String> {
    let texts: Vec<String> = item.list()?.iter().map(Item::plain).collect::<Option<_>>()?;
    let is_whole = |text: &str| !text.is_empty() && text.chars().all(|c| c.is_ascii_digit());
    let (mut mended, mut at, mut found) = (Vec::new(), 0, false);
    while let Some(text) = texts.get(at) {
        let tail = texts.get(at + 1).filter(|tail| {
            let number = |text: &str| text.parse::<u32>().unwrap_or_default();
            is_whole(text) && is_whole(tail) && tail.len() == 1 && number(text) > number(tail) + 2
        });
        found |= tail.is_some();
        mended.push(tail.map_or_else(|| text.clone(), |tail| format!("{text}.{tail}")));
        at += if tail.is_some() { 2 } else { 1 };
    }
    found.then(|| match mended.as_slice() {
        [one] => one.clone(),
        all => format!("[{}]", all.join(", ")),
    })
}

/// A diameter between two calipers: the thickest girth taken, 200 cm, is 64 cm across (derived).
fn diameter(item: &Item<'_>) -> Option<Girth> {
    item.length_called("diameter", 6_400)
}

fn check_doubles(marks: &[(Mark, &Item<'_>)]) {
    let (mut landmarks, mut places) = (BTreeSet::new(), BTreeSet::new());
    for (mark, item) in marks {
        let place_taken = !places.insert(mark.at);
        if let Some(landmark) = mark.landmark.filter(|one| !landmarks.insert(*one)) {
            item.refuse(format!(
                "`{}` is marked twice; write repeats of one girth as a list, as `girth: [25.6 cm, 25.8 cm]`",
                landmark.name()
            ));
        } else if place_taken {
            item.refuse(format!(
                "two marks stand at {} cm; write repeats of one girth as a list, as `girth: [25.6 cm, 25.8 cm]`",
                mark.at.cm()
            ));
        }
    }
}

fn check_order(sorted: &[(Mark, &Item<'_>)]) {
    let mut highest: Option<(Landmark, f64)> = None;
    for (mark, item) in sorted {
        let Some(landmark) = mark.landmark else { continue };
        if let Some((above, at)) = highest
            && landmark < above
        {
            item.refuse(format!(
                "`{}` at {} cm lies nearer the trunk than `{}` at {at} cm; positions rise from {} toward the trunk",
                landmark.name(),
                mark.at.cm(),
                above.name(),
                landmark.limb().extremity(),
            ));
        }
        if highest.is_none_or(|(above, _)| landmark > above) {
            highest = Some((landmark, mark.at.cm()));
        }
    }
}
