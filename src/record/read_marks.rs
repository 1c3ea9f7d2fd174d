//! Owns the reading of marks and the checks between them: order, doubles, landmarks.

use super::Mark;
use crate::anatomy::{Landmark, Limb};
use crate::input::{Fields, Item, nearest_word};
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
    let names = || Landmark::of(limb).iter().map(|one| one.name());
    let accepted = names().collect::<Vec<_>>().join(", ");
    if let Some(other) = Landmark::parse_word(text) {
        return format!(
            "`{text}` is a landmark of the {}; this is {} {}: {accepted}",
            other.limb().name(),
            if limb == Limb::Arm { "an" } else { "a" },
            limb.name()
        );
    }
    match nearest_word(text, names()) {
        Some(near) => format!("`{text}` is no landmark of the {}; did you mean `{near}`?", limb.name()),
        None => format!("`{text}` is no landmark of the {}; accepted: {accepted}", limb.name()),
    }
}

/// Most marks of one limb (house rule: a tape every 0.5 cm along a long leg gives 200).
const MOST_MARKS: usize = 500;

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
    let first = fields.required("girth", "its girth, as `girth: 25.6 cm`").and_then(|one| one.girth());
    let again = fields.optional("again").map(|one| {
        if one.is_list() {
            let list = one.list()?;
            list.iter().map(Item::girth).collect::<Option<Vec<_>>>()
        } else {
            one.girth().map(|girth| vec![girth])
        }
    });
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
    let again = match again {
        None => Vec::new(),
        Some(list) => list?,
    };
    let calipers = match calipers {
        None => None,
        Some(pair) => Some(pair?),
    };
    Some(Mark { landmark, at: at?, first: first?, again, calipers, spot: item.spot() })
}

/// A diameter between two calipers: the thickest girth taken, 200 cm, is 64 cm across (derived).
fn diameter(item: &Item<'_>) -> Option<Girth> {
    item.length_called("diameter", 6_400)
}

fn check_doubles(marks: &[(Mark, &Item<'_>)]) {
    for (number, (mark, item)) in marks.iter().enumerate() {
        let earlier = || marks.iter().take(number).map(|(other, _)| other);
        if let Some(landmark) = mark.landmark
            && earlier().any(|other| other.landmark == Some(landmark))
        {
            item.refuse(format!(
                "`{}` is marked twice; give a second reading of one mark as `again:`",
                landmark.name()
            ));
        } else if earlier().any(|other| other.at == mark.at) {
            item.refuse(format!(
                "two marks stand at {} cm; give a second reading of one mark as `again:`",
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
