//! Owns the reading of the `bench` block of a fabric file.

use super::{Bench, BenchKind, Pull};
use crate::input::Item;
use crate::quantity::{Dimension, STANDARD_GRAVITY};

/// Reads a bench test; none after its problems have been raised.
pub(super) fn read_bench(item: &Item<'_>) -> Option<Bench> {
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
    fields.finish();
    let relaxed_cm = relaxed?.cm();
    let list = list?;
    let read: Vec<Option<Vec<Pull>>> = list.iter().map(|one| read_pull(one, relaxed_cm)).collect();
    let pulls: Vec<Vec<Pull>> = read.into_iter().collect::<Option<_>>()?;
    Some(Bench { kind: kind?, width_cm: width?.cm(), relaxed_cm, pulls: pulls.concat() })
}

fn read_pull(item: &Item<'_>, relaxed_cm: f64) -> Option<Vec<Pull>> {
    let fields = item.fields()?;
    let weight = fields.optional("weight").map(|one| (one.not_negative(Dimension::Mass), one));
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
                    Some(length)
                })
                .collect::<Option<Vec<f64>>>()
        });
    fields.finish();
    let (force_n, place) = match (weight, force) {
        (Some((mass, one)), None) => (mass? * STANDARD_GRAVITY, one),
        (None, Some((force, one))) => (force?, one),
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
    Some(lengths?.into_iter().map(|length_cm| Pull { force_n, length_cm }).collect())
}
