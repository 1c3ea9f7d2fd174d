//! Owns the reading of a fabric file.

use super::Fabric;
use super::bench::pool;
use super::read_bench::read_bench;
use crate::input::{Item, Problem, Reader, Source};
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

fn read(reader: &Reader) -> Option<Fabric> {
    let fields = reader.fields("fabric/1")?;
    let label =
        fields.required("label", "the fabric's label, as `label: knit R2`").and_then(|one| one.text());
    let basis =
        fields.optional("basis").and_then(|one| one.word(&Basis::WORDS)).unwrap_or(Basis::UserSupplied);
    let tension_sd = fields.optional("tension_sd").and_then(|one| {
        let share = one.not_negative(Dimension::Ratio)?;
        if share >= 1.0 {
            one.refuse("is 100 % or more; a standard deviation of a few per cent is meant");
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
    let note = fields.optional("note").and_then(|one| one.text());
    let bench = fields.optional("bench");
    let (points, spread, tested) = if let Some(item) = &bench {
        if let Some(curve) = fields.optional("curve") {
            curve.refuse(
                "stands beside `bench`; the curve follows from the bench test, so keep one of the two",
            );
        }
        let bench = read_bench(item);
        fields.finish();
        let bench = bench?;
        let Some(pooled) = pool(&bench) else {
            item.refuse(
                "gives no rising curve: at least two weights have to stretch the piece further and further",
            );
            return None;
        };
        (pooled.curve, pooled.spread, Some(bench))
    } else {
        let curve = fields
            .required("curve", "its points, as `- {stretch: 20 %, tension: 62 N/m}`, or a `bench` test");
        let points = curve.as_ref().and_then(Item::list);
        fields.finish();
        let curve_item = curve?;
        let list = points?;
        let points: Vec<(f64, f64)> = list.iter().map(read_point).collect::<Option<_>>()?;
        check(&curve_item, &list, &points);
        (points, None, None)
    };
    let tension_sd = tension_sd.or(spread);
    Some(Fabric { label: label?, basis, tension_sd, relaxed_sd_cm, note, curve: points, tested })
}

fn read_point(item: &Item<'_>) -> Option<(f64, f64)> {
    let fields = item.fields()?;
    let stretch = fields.required("stretch", "the stretch, as `stretch: 20 %`").and_then(|one| {
        let share = one.not_negative(Dimension::Ratio)?;
        // House rule: no knit stretches to eleven times its length.
        if share > 10.0 {
            one.refuse("is above 1000 %; check number and unit");
        }
        Some(share)
    });
    let tension = fields.required("tension", "the tension, as `tension: 62 N/m`").and_then(|one| {
        let tension = one.not_negative(Dimension::Tension)?;
        // House rule: 10 000 N/m is a hundred times what a strong knit pulls.
        if tension > 10_000.0 {
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
