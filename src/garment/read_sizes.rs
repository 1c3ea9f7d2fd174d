//! Owns the reading of a chart's sizes and the checks between them.

use std::collections::BTreeSet;

use super::read_claim::{read_label, read_repeats};
use super::{Relaxed, Size, Variant};
use crate::anatomy::{Landmark, Limb};
use crate::input::{Fields, Item};
use crate::quantity::Range;
use crate::record::{LengthName, landmark_fault};

/// Most sizes of one chart (house rule: far above any printed chart, with all its variants).
pub(super) const MOST_SIZES: usize = 50_000;

/// The ends of the garment that a file states.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Ends {
    /// `from`, where it stands.
    pub(super) from: Option<Landmark>,
    /// `to`, where it stands.
    pub(super) to: Option<Landmark>,
}

impl Ends {
    /// What is wrong with relaxed girths beyond the ends.
    pub(super) fn fault(self, relaxed: &[(Landmark, Relaxed)]) -> Option<String> {
        let beyond = |landmark: Landmark| {
            self.from.is_some_and(|from| landmark < from) || self.to.is_some_and(|to| landmark > to)
        };
        let (landmark, _) = relaxed.iter().find(|(landmark, _)| beyond(*landmark))?;
        let end =
            |word: &str, landmark: Option<Landmark>| landmark.map(|one| format!("{word} {}", one.name()));
        let ends: Vec<String> = [end("from", self.from), end("to", self.to)].into_iter().flatten().collect();
        Some(format!(
            "the garment runs {}, but a relaxed girth is stated at {}; move that end, or take the girth out",
            ends.join(" "),
            landmark.name()
        ))
    }
}

/// Reads the list of sizes.
pub(super) fn read_sizes(item: &Item<'_>, limb: Limb, ends: Ends) -> Option<Vec<Size>> {
    let list = item.list()?;
    if list.is_empty() {
        item.refuse("holds no size; add at least one, as `- {size: \"1\", girths: {wrist: 14-16 cm}}`");
        return None;
    }
    if list.len() > MOST_SIZES {
        item.refuse(format!("holds {} sizes; at most {MOST_SIZES} are taken in one chart", list.len()));
        return None;
    }
    let read: Vec<Option<Size>> = list.iter().map(|one| read_size(one, limb, ends)).collect();
    let known: Vec<(&Size, &Item<'_>)> =
        read.iter().zip(&list).filter_map(|(size, item)| Some((size.as_ref()?, item))).collect();
    let sizes: Vec<&Size> = known.iter().map(|(size, _)| *size).collect();
    for (at, what) in faults(&sizes) {
        if let Some((_, item)) = known.get(at) {
            item.refuse(what);
        }
    }
    read.into_iter().collect()
}

fn read_size(item: &Item<'_>, limb: Limb, ends: Ends) -> Option<Size> {
    let fields = item.fields()?;
    let label = fields.required("size", "its label, as `size: \"3\"`").and_then(|one| read_label(&one));
    let girths = fields
        .required("girths", "the girths it is made for, as `girths: {wrist: 16-18 cm}`")
        .and_then(|one| by_landmark(&one, limb, Item::range));
    let relaxed = fields.optional("relaxed");
    let flat = fields.optional("flat_width");
    if let (Some(_), Some(flat)) = (&relaxed, &flat) {
        flat.refuse("stands beside `relaxed`; a flat width is half a relaxed girth, so keep one of the two");
    }
    let place = relaxed.clone().or(flat.clone());
    let relaxed = match (relaxed, flat) {
        (Some(one), _) => Some(by_landmark(&one, limb, |one| read_repeats(one, Item::girth))),
        (None, Some(one)) => Some(by_landmark(&one, limb, |one| read_repeats(one, Item::flat_width))),
        (None, None) => None,
    };
    if let (Some(place), Some(Some(list))) = (place, &relaxed)
        && let Some(what) = ends.fault(list)
    {
        place.refuse(what);
    }
    let variants = fields.optional("lengths").map(|one| read_variants(&one, limb));
    fields.finish();
    let girths = girths?;
    if girths.is_empty() {
        item.refuse("states no girth; add at least one under `girths`");
        return None;
    }
    Some(Size {
        label: label?,
        girths,
        relaxed: relaxed.map_or(Some(Vec::new()), |one| one)?,
        variants: variants.map_or(Some(Vec::new()), |one| one)?,
    })
}

/// A block of landmarks with a value each, distal to proximal; a landmark and its letter are one.
pub(super) fn by_landmark<'r, T>(
    item: &Item<'r>,
    limb: Limb,
    value: impl Fn(&Item<'r>) -> Option<T>,
) -> Option<Vec<(Landmark, T)>> {
    let fields: Fields<'r> = item.fields()?;
    let mut list: Vec<(Landmark, T)> = Vec::new();
    let mut whole = !fields.is_split();
    for (name, spot, one) in fields.each() {
        let Some(landmark) = Landmark::parse(limb, &name) else {
            item.reader().raise(spot, item.field_name(), landmark_fault(&name, limb));
            whole = false;
            continue;
        };
        if list.iter().any(|(other, _)| *other == landmark) {
            item.reader().raise(
                spot,
                item.field_name(),
                format!("`{}` stands twice, as word and letter; keep one", landmark.name()),
            );
            whole = false;
            continue;
        }
        match value(&one) {
            Some(value) => list.push((landmark, value)),
            None => whole = false,
        }
    }
    list.sort_by_key(|(landmark, _)| *landmark);
    whole.then_some(list)
}

fn read_variants(item: &Item<'_>, limb: Limb) -> Option<Vec<Variant>> {
    let list = item.list()?;
    let read: Vec<(Option<Variant>, &Item<'_>)> =
        list.iter().map(|one| (read_variant(one, limb), one)).collect();
    for (number, (variant, one)) in read.iter().enumerate() {
        let Some(variant) = variant else { continue };
        let mut earlier = read.iter().take(number).filter_map(|(other, _)| other.as_ref());
        if earlier.any(|other| other.name == variant.name) {
            let name = variant.name.as_ref().map_or("without name".to_owned(), |name| format!("`{name}`"));
            one.refuse(format!("the variant {name} stands twice in this size; give each its own name"));
        }
    }
    read.into_iter().map(|(variant, _)| variant).collect()
}

fn read_variant(item: &Item<'_>, limb: Limb) -> Option<Variant> {
    let fields = item.fields()?;
    let name = fields.optional("variant").map(|one| read_label(&one));
    let mut lengths: Vec<(LengthName, Range)> = Vec::new();
    let mut whole = !fields.is_split();
    for (key, spot, one) in fields.each() {
        if key == "variant" {
            continue;
        }
        match (LengthName::parse(limb, &key), one.range()) {
            (Some(between), Some(_)) if lengths.iter().any(|(other, _)| *other == between) => {
                whole = false;
                item.reader().raise(
                    spot,
                    item.field_name(),
                    format!("`{}` stands twice, as words and letters; keep one", between.name()),
                );
            }
            (Some(between), Some(range)) => lengths.push((between, range)),
            (None, _) => {
                whole = false;
                item.reader().raise(spot, item.field_name(), format!("`{key}` is no stretch of the {}; write two landmarks toward the trunk, as `{} to {}`, or `floor to` a landmark", limb.name(), limb.reference().name(), Landmark::of(limb).last().map_or("", |one| one.name())));
            }
            (Some(_), None) => whole = false,
        }
    }
    if lengths.is_empty() && whole {
        item.refuse("states no length; add one, as `wrist to axilla: 40-44 cm`");
        whole = false;
    }
    let name = name.map_or(Some(None), |name| name.map(Some))?;
    whole.then_some(Variant { name, lengths })
}

/// What contradicts itself between sizes: the place of the size, and what. What is only odd (gaps,
/// overlaps, the order) is told by `inspect`.
pub(super) fn faults(sizes: &[&Size]) -> Vec<(usize, String)> {
    let mut found = Vec::new();
    let mut labels = BTreeSet::new();
    for (number, size) in sizes.iter().enumerate() {
        if !labels.insert(size.label.as_str()) {
            found.push((
                number,
                format!("the size `{}` stands twice; give each size its own label", size.label),
            ));
        }
    }
    let Some(first) = sizes.first() else { return found };
    let measures = |size: &Size| size.girths.iter().map(|(landmark, _)| landmark.name()).collect::<Vec<_>>();
    let wanted = measures(first);
    for (number, size) in sizes.iter().enumerate().skip(1) {
        let stated = measures(size);
        if stated != wanted {
            found.push((
                number,
                format!(
                    "size `{}` states {}, size `{}` states {}; all sizes of a chart state the same girths",
                    size.label,
                    stated.join(", "),
                    first.label,
                    wanted.join(", "),
                ),
            ));
        }
    }
    found
}
