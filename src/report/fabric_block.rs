//! Owns the report of a fabric: its curve, and the bench test behind it.

use serde::Serialize;

use super::Figure;
use crate::garment::{Fabric, pool};
use crate::rules::{NumberId, Rules};

/// A fabric.
#[derive(Clone, Debug, Serialize)]
pub struct FabricReport {
    /// `tapeline.fabric-report/1`.
    pub schema: &'static str,
    /// Its label.
    pub label: String,
    /// What the curve rests on.
    pub basis: &'static str,
    /// Where the curve comes from.
    pub note: Option<String>,
    /// SD of the tension.
    pub tension_sd_percent: Option<Figure>,
    /// Where that SD comes from, in words.
    pub tension_sd_from: &'static str,
    /// SD of a relaxed girth.
    pub relaxed_sd_cm: Option<Figure>,
    /// `strip` or `loop`; null without a bench test.
    pub bench: Option<&'static str>,
    /// The curve.
    pub curve: Vec<FabricPoint>,
    /// Every pull of the bench test.
    pub pulls: Vec<BenchPoint>,
}

/// One point of the curve.
#[derive(Clone, Debug, Serialize)]
pub struct FabricPoint {
    /// Stretch.
    pub stretch_percent: Option<Figure>,
    /// Tension of one layer.
    pub tension_n_per_m: Option<Figure>,
}

/// One pull.
#[derive(Clone, Debug, Serialize)]
pub struct BenchPoint {
    /// The pull.
    pub force_n: Option<Figure>,
    /// Stretch.
    pub stretch_percent: Option<Figure>,
    /// Tension.
    pub tension_n_per_m: Option<Figure>,
}

/// Makes the report of a fabric.
pub fn fabric_report(fabric: &Fabric, rules: &Rules) -> FabricReport {
    let point = |stretch: f64, tension: f64| FabricPoint {
        stretch_percent: Figure::new(stretch * 100.0, 1),
        tension_n_per_m: Figure::new(tension, 1),
    };
    let spread = fabric.tested.as_ref().and_then(pool).and_then(|pooled| pooled.spread);
    let from = match (fabric.tension_sd, spread) {
        (None, _) => "house rule, since the test has too few repeats or the file states none",
        (Some(sd), Some(spread)) if (sd - spread).abs() <= f64::EPSILON => {
            "spread of the pulls about the curve"
        }
        (Some(_), _) => "stated in the file",
    };
    let pulls = fabric.tested.as_ref().map(|bench| {
        let points = bench.points();
        let rows = bench.pulls.iter().zip(points);
        rows.map(|(pull, (stretch, tension))| BenchPoint {
            force_n: Figure::new(pull.force_n, 2),
            stretch_percent: Figure::new(stretch * 100.0, 1),
            tension_n_per_m: Figure::new(tension, 1),
        })
        .collect()
    });
    FabricReport {
        schema: "tapeline.fabric-report/1",
        label: fabric.label.clone(),
        basis: fabric.basis.word(),
        note: fabric.note.clone(),
        tension_sd_percent: Figure::new(
            fabric.tension_sd.unwrap_or_else(|| rules.number(NumberId::TensionSd)) * 100.0,
            1,
        ),
        tension_sd_from: from,
        relaxed_sd_cm: Figure::cm(fabric.relaxed_sd_cm.unwrap_or_else(|| rules.number(NumberId::RelaxedSd))),
        bench: fabric.tested.as_ref().map(|bench| bench.kind.word()),
        curve: fabric.curve.iter().map(|(stretch, tension)| point(*stretch, *tension)).collect(),
        pulls: pulls.unwrap_or_default(),
    }
}
