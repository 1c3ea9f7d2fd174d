//! Owns the reading of a fabric file.

use super::bench::{MOST_STRETCH, MOST_TENSION, pool};
use super::read_bench::{read_bench, read_strip};
use super::read_claim::read_label;
use super::{Bench, Branch, Exponent, Fabric};
use crate::input::{Fields, Item, Problem, Reader, Source};
use crate::quantity::Dimension;
use crate::rules::Basis;

/// Reads a fabric file.
///
/// # Errors
/// Every problem of the file.
pub fn open_fabric(source: Source) -> Result<Fabric, Vec<Problem>> {
    let reader = Reader::new(source).map_err(|problem| vec![problem])?;
    let fabric = read(&reader);
    let problems = reader.problems();
    match fabric {
        Some(fabric) if problems.is_empty() => Ok(fabric),
        _ => Err(problems),
    }
}

/// Largest SD of a tension, a fraction (house rule: half the tension is no knowledge of it).
const MOST_SD: f64 = 0.5;

fn read(reader: &Reader) -> Option<Fabric> {
    let fields = reader.fields("fabric/1")?;
    let label =
        fields.required("label", "the fabric's label, as `label: knit R2`").and_then(|one| read_label(&one));
    let basis =
        fields.optional("basis").and_then(|one| one.word(&Basis::WORDS)).unwrap_or(Basis::UserSupplied);
    let tension_sd = fields.optional("tension_sd").and_then(|one| {
        let share = one.not_negative(Dimension::Ratio)?;
        if share > MOST_SD {
            one.refuse("is above 50 %; a standard deviation of a few per cent is meant, as `5 %`");
        }
        Some(share)
    });
    let relaxed_sd_cm = fields.optional("relaxed_sd").and_then(|one| {
        let cm = one.not_negative(Dimension::Length)? * 100.0;
        // House rule: ten times what a ruler misses is a slip of the unit.
        if cm > 5.0 {
            one.refuse("is above 5 cm; a standard deviation of a few millimetres is meant");
        }
        Some(cm)
    });
    let note = fields.optional("note").and_then(|one| read_label(&one));
    let branch = fields.optional("branch").and_then(|one| one.word(&Branch::WORDS)).unwrap_or_default();
    let exponent = read_exponent(&fields);
    let curve = read_curve(&fields, branch, exponent.is_some());
    fields.finish();
    let (exponent, curve) = (exponent.unwrap_or(Some(None))?, curve?);
    Some(Fabric {
        label: label?,
        file: reader.source().name.clone(),
        basis,
        tension_sd: tension_sd.or(curve.spread),
        relaxed_sd_cm,
        exponent,
        note,
        branch,
        curve: curve.points,
        loading: curve.loading,
        tested: curve.tested,
    })
}

/// `exponent`, or two pulls under `strip`; none where neither stands, an inner none after a problem.
#[expect(clippy::option_option, reason = "absent, wrong and there are three cases")]
fn read_exponent(fields: &Fields<'_>) -> Option<Option<Option<Exponent>>> {
    let (stated, strip) = (fields.optional("exponent"), fields.optional("strip"));
    match (stated, strip) {
        (Some(_), Some(strip)) => {
            strip.refuse("stands beside `exponent`, which follows from it; keep one of the two");
            Some(None)
        }
        (Some(one), None) => Some(read_stated(&one).map(Some)),
        (None, Some(strip)) => Some(read_strip(&strip).map(Some)),
        (None, None) => None,
    }
}

/// `exponent: 1.05`, or `exponent: {value: 1.05, sd: 0.05}`.
fn read_stated(item: &Item<'_>) -> Option<Exponent> {
    let in_bounds = |one: &Item<'_>, low: f64, high: f64| {
        let value = one.number()?;
        if !(low..=high).contains(&value) {
            one.refuse(format!("`{value}` is not from {low} to {high}"));
            return None;
        }
        Some(value)
    };
    // House rule: no knit pulls as the tenth root or the fifth power of its stretch.
    let value_of = |one: &Item<'_>| in_bounds(one, 0.1, 5.0);
    if !item.is_block() {
        return value_of(item).map(|value| Exponent::stated(value, None));
    }
    let fields = item.fields()?;
    let value = fields.required("value", "the exponent, as `value: 1.05`").and_then(|one| value_of(&one));
    let sd = fields.optional("sd").map(|one| in_bounds(&one, 0.0, 1.0));
    fields.finish();
    Some(Exponent::stated(value?, sd.map_or(Some(None), |sd| sd.map(Some))?))
}

/// What `curve` or `bench` gives.
#[derive(Default)]
struct Curve {
    points: Vec<(f64, f64)>,
    loading: Option<Vec<(f64, f64)>>,
    spread: Option<f64>,
    tested: Option<Bench>,
}

fn read_curve(fields: &Fields<'_>, branch: Branch, has_exponent: bool) -> Option<Curve> {
    let (bench, curve) = (fields.optional("bench"), fields.optional("curve"));
    match (bench, curve) {
        (Some(_), Some(curve)) => {
            curve.refuse(
                "stands beside `bench`; the curve follows from the bench test, so keep one of the two",
            );
            None
        }
        (Some(item), None) => read_pooled(&item, branch),
        (None, Some(item)) => {
            let list = item.list()?;
            let points: Vec<(f64, f64)> = list.iter().map(read_point).collect::<Option<_>>()?;
            check(&item, &list, &points);
            Some(Curve { points, ..Curve::default() })
        }
        (None, None) if has_exponent => Some(Curve::default()),
        (None, None) => {
            fields.required(
                "curve",
                "its points, as `- {stretch: 20 %, tension: 62 N/m}`, a `bench` test, or two pulls under `strip`",
            );
            None
        }
    }
}

fn read_pooled(item: &Item<'_>, branch: Branch) -> Option<Curve> {
    let bench = read_bench(item, branch)?;
    let Some(pooled) = pool(&bench, branch) else {
        item.refuse(
            "gives no rising curve: at least two weights have to stretch the piece further and further",
        );
        return None;
    };
    if pooled.spread.is_some_and(|spread| spread > MOST_SD) {
        item.refuse(
            "its repeats scatter by more than 50 % about the curve; hang the weights again and read the lengths anew",
        );
        return None;
    }
    if pooled.curve.iter().any(|(_, tension)| *tension > MOST_TENSION) {
        item.refuse("gives a tension above 10000 N/m; check weights, width and their units");
        return None;
    }
    let loading = (branch == Branch::Return).then(|| pool(&bench, Branch::Loading)).flatten();
    Some(Curve {
        points: pooled.curve,
        loading: loading.map(|pooled| pooled.curve),
        spread: pooled.spread,
        tested: Some(bench),
    })
}

fn read_point(item: &Item<'_>) -> Option<(f64, f64)> {
    let fields = item.fields()?;
    let stretch = fields.required("stretch", "the stretch, as `stretch: 20 %`").and_then(|one| {
        let share = one.not_negative(Dimension::Ratio)?;
        if share > MOST_STRETCH {
            one.refuse("is above 1000 %; check number and unit");
        }
        Some(share)
    });
    let tension = fields.required("tension", "the tension, as `tension: 62 N/m`").and_then(|one| {
        let tension = one.not_negative(Dimension::Tension)?;
        if tension > MOST_TENSION {
            one.refuse("is above 10000 N/m; check number and unit");
        }
        Some(tension)
    });
    fields.finish();
    Some((stretch?, tension?))
}

fn check(curve: &Item<'_>, list: &[Item<'_>], points: &[(f64, f64)]) {
    if points.len() < 2 {
        curve.refuse("has fewer than two points; give 0 % with 0 N/m and at least one more");
        return;
    }
    if let (Some((stretch, tension)), Some(item)) = (points.first(), list.first())
        && (*stretch > 0.0 || *tension > 0.0)
    {
        item.refuse("is the first point but not 0 % with 0 N/m; a relaxed fabric has no tension, so the curve starts there");
    }
    for (pair, item) in points.windows(2).zip(list.iter().skip(1)) {
        if let [(low, below), (high, above)] = pair {
            if high <= low {
                item.refuse(
                    "does not stretch further than the point before it; write the points from 0 % up",
                );
            } else if above <= below {
                item.refuse("has no more tension than the point before it; a tension curve has to rise, so check these two points");
            }
        }
    }
}
