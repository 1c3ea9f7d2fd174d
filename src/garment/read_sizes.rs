//! Owns the reading of a chart's sizes and the checks between them.

use super::{Size, Variant};
use crate::anatomy::{Between, Landmark, Limb};
use crate::input::{Fields, Item};
use crate::quantity::{Girth, Range};
use crate::record::landmark_fault;

/// Most sizes of one chart (house rule: far above any printed chart, with all its variants).
const MOST_SIZES: usize = 1000;

/// Reads the list of sizes.
pub(super) fn read_sizes(item: &Item<'_>, limb: Limb) -> Option<Vec<Size>> {
    let list = item.list()?;
    if list.is_empty() {
        item.refuse("holds no size; add at least one, as `- {size: \"1\", girths: {wrist: 14-16 cm}}`");
        return None;
    }
    if list.len() > MOST_SIZES {
        item.refuse(format!("holds {} sizes; at most {MOST_SIZES} are taken in one chart", list.len()));
        return None;
    }
    let read: Vec<Option<Size>> = list.iter().map(|one| read_size(one, limb)).collect();
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

fn read_size(item: &Item<'_>, limb: Limb) -> Option<Size> {
    let fields = item.fields()?;
    let label = fields.required("size", "its label, as `size: \"3\"`").and_then(|one| one.text());
    let girths = fields
        .required("girths", "the girths it is made for, as `girths: {wrist: 16-18 cm}`")
        .and_then(|one| by_landmark(&one, limb, Item::range));
    let relaxed = fields.optional("relaxed");
    let flat = fields.optional("flat_width");
    if let (Some(_), Some(flat)) = (&relaxed, &flat) {
        flat.refuse("stands beside `relaxed`; a flat width is half a relaxed girth, so keep one of the two");
    }
    let relaxed = match (relaxed, flat) {
        (Some(one), _) => Some(by_landmark(&one, limb, Item::girth)),
        (None, Some(one)) => Some(by_landmark(&one, limb, Item::flat_width)),
        (None, None) => None,
    };
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
    let name = fields.optional("variant").map(|one| one.text());
    let mut lengths: Vec<(Between, Range)> = Vec::new();
    let mut whole = !fields.is_split();
    for (key, spot, one) in fields.each() {
        if key == "variant" {
            continue;
        }
        match (Between::parse(limb, &key), one.range()) {
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
                item.reader().raise(spot, item.field_name(), format!("`{key}` is no stretch of the {}; write two landmarks toward the trunk, as `{} to {}`", limb.name(), limb.reference().name(), Landmark::of(limb).last().map_or("", |one| one.name())));
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

/// What is wrong between sizes: the place of the size, and what.
pub(super) fn faults(sizes: &[&Size]) -> Vec<(usize, String)> {
    let mut found = Vec::new();
    for (number, size) in sizes.iter().enumerate() {
        if sizes.iter().take(number).any(|other| other.label == size.label) {
            found.push((
                number,
                format!("the size `{}` stands twice; give each size its own label", size.label),
            ));
        }
    }
    let Some(first) = sizes.first() else { return found };
    let measures = |size: &Size| size.girths.iter().map(|(landmark, _)| landmark.name()).collect::<Vec<_>>();
    for (number, size) in sizes.iter().enumerate().skip(1) {
        if measures(size) != measures(first) {
            found.push((
                number,
                format!(
                    "size `{}` states {}, size `{}` states {}; all sizes of a chart state the same girths",
                    size.label,
                    measures(size).join(", "),
                    first.label,
                    measures(first).join(", "),
                ),
            ));
        }
    }
    for (number, pair) in sizes.windows(2).enumerate() {
        let [small, large] = pair else { continue };
        if measures(small) == measures(large) && out_of_order(small, large) {
            let what = format!(
                "size `{}` is smaller than size `{}` before it; write the sizes from small to large",
                large.label, small.label
            );
            found.push((number + 1, what));
        }
    }
    found
}

/// Whether the second size is smaller than the first: at its most distal girth, or everywhere.
/// A wide variant after a plain size may be larger in one place and smaller in another.
fn out_of_order(small: &Size, large: &Size) -> bool {
    let end = |range: Range| (range.low.unwrap_or(0), range.high.unwrap_or(Girth::MOST_TENTHS + 1));
    let pairs: Vec<((i64, i64), (i64, i64))> =
        small.girths.iter().zip(&large.girths).map(|((_, a), (_, b))| (end(*a), end(*b))).collect();
    let shrinks = |(a, b): &((i64, i64), (i64, i64))| b.0 <= a.0 && b.1 <= a.1 && a != b;
    let grows = |(a, b): &((i64, i64), (i64, i64))| b.0 > a.0 || b.1 > a.1;
    pairs.first().is_some_and(shrinks) || (pairs.iter().any(shrinks) && !pairs.iter().any(grows))
}
