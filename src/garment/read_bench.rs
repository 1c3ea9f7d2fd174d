//! Owns the reading of the `bench` block of a fabric file.

use super::bench::MOST_STRETCH;
use super::exponent::StripPull;
use super::{Bench, BenchKind, Branch, Exponent, Pull};
use crate::input::Item;
use crate::quantity::{Dimension, STANDARD_GRAVITY, read_quantity};

/// Reads a bench test; none after its problems have been raised.
pub(super) fn read_bench(item: &Item<'_>, branch: Branch) -> Option<Bench> {
    let fields = item.fields()?;
    let kind = fields
        .required("kind", "how the piece hung: `kind: strip`, or `kind: loop` over two bars")
        .and_then(|one| one.word(&[("strip", BenchKind::Strip), ("loop", BenchKind::Loop)]));
    let width = fields.required("width", "the piece's width, as `width: 5 cm`").and_then(|one| one.girth());
    let relaxed = fields
        .required("relaxed", "its length without a weight, as `relaxed: 20 cm`")
        .and_then(|one| one.girth());
    let list = fields
        .required("pulls", "the weights, as `- {weight: 200 g, length: 23.1 cm}`")
        .and_then(|one| one.list());
    let loading = fields.optional("loading").map(|one| one.list());
    fields.finish();
    let relaxed_cm = relaxed?.cm();
    let (list, loading) = (list?, loading.unwrap_or_else(|| Some(Vec::new()))?);
    let read: Vec<Option<Vec<Pull>>> = list
        .iter()
        .map(|one| read_pull(one, relaxed_cm, branch))
        .chain(loading.iter().map(|one| read_pull(one, relaxed_cm, Branch::Loading)))
        .collect();
    let pulls: Vec<Vec<Pull>> = read.into_iter().collect::<Option<_>>()?;
    Some(Bench { kind: kind?, width_cm: width?.cm(), relaxed_cm, pulls: pulls.concat() })
}

fn read_pull(item: &Item<'_>, relaxed_cm: f64, branch: Branch) -> Option<Vec<Pull>> {
    let fields = item.fields()?;
    let weight = fields.optional("weight").map(|one| (read_weight(&one), one));
    let force = fields.optional("force").map(|one| (one.not_negative(Dimension::Force), one));
    let lengths = fields
        .required("length", "the length under this weight, as `length: 23.1 cm`, or a list of repeats")
        .and_then(|one| {
            let list = if one.is_list() { one.list()? } else { vec![one] };
            list.iter()
                .map(|one| {
                    let length = one.girth()?.cm();
                    if length < relaxed_cm {
                        one.refuse("is shorter than the piece without a weight; check both lengths");
                        return None;
                    }
                    if length / relaxed_cm - 1.0 > MOST_STRETCH {
                        one.refuse(
                            "is more than eleven times the piece without a weight; check both lengths",
                        );
                        return None;
                    }
                    Some(length)
                })
                .collect::<Option<Vec<f64>>>()
        });
    fields.finish();
    let (force_n, place) = match (weight, force) {
        (Some((force, one)), None) | (None, Some((force, one))) => (force?, one),
        (Some(_), Some((_, one))) => {
            one.refuse("stands beside `weight`; keep one of the two");
            return None;
        }
        (None, None) => {
            item.refuse("has neither `weight` nor `force`; add one, as `weight: 200 g`");
            return None;
        }
    };
    if force_n <= 0.0 {
        place.refuse("is no pull; leave this line out, the relaxed length stands under `relaxed`");
        return None;
    }
    Some(lengths?.into_iter().map(|length_cm| Pull { force_n, length_cm, branch }).collect())
}

/// A weight as the force of its hanging, N: a mass, or a force read off a spring balance.
fn read_weight(item: &Item<'_>) -> Option<f64> {
    let units = item.reader().units();
    let is_force = item.is_single()
        && item.text().is_some_and(|text| read_quantity(&text, Dimension::Force, units).is_ok());
    if is_force {
        return item.not_negative(Dimension::Force);
    }
    Some(item.not_negative(Dimension::Mass)? * STANDARD_GRAVITY)
}

/// Reads two pulls of a free strip, whatever its width: `strip: {relaxed: 20 cm, pulls: [...]}`.
pub(super) fn read_strip(item: &Item<'_>) -> Option<Exponent> {
    let fields = item.fields()?;
    let relaxed = fields
        .required("relaxed", "its length without a weight, as `relaxed: 20 cm`")
        .and_then(|one| one.girth());
    let pulls = fields.required("pulls", "two weights, as `- {weight: 200 g, length: 23.1 cm}`");
    fields.finish();
    let (relaxed_cm, pulls) = (relaxed?.cm(), pulls?);
    let list = pulls.list()?;
    if list.len() != 2 {
        pulls.refuse("two weights are wanted here, each with its length; a curve of more goes under `bench`");
        return None;
    }
    let read: Vec<Vec<Pull>> =
        list.iter().map(|one| read_pull(one, relaxed_cm, Branch::Return)).collect::<Option<_>>()?;
    let mut points: Vec<StripPull> = read.iter().filter_map(|repeats| mean(repeats)).collect();
    points.sort_by(|one, other| one.force.total_cmp(&other.force));
    let exponent = match points.as_slice() {
        [light, heavy] => Exponent::of_pulls(relaxed_cm, *light, *heavy),
        _ => None,
    };
    if exponent.is_none() {
        pulls.refuse("the heavier weight has to stretch the strip further than the lighter one, and both have to stretch it");
    }
    exponent
}

/// Mean length and force of the repeats of one weight.
fn mean(repeats: &[Pull]) -> Option<StripPull> {
    let force = repeats.first()?.force_n;
    let count = u32::try_from(repeats.len()).ok()?;
    let sum: f64 = repeats.iter().map(|pull| pull.length_cm).sum();
    Some(StripPull { force, length_cm: sum / f64::from(count), repeats: count })
}
