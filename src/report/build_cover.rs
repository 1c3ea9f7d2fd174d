//! Owns the making of the report of `cover` from the counts.

use super::cover_report::{CoverChart, CoverMissed, CoverReport, CoverRow, CoverSize, CoverStock, Share};
use super::{DesignBlock, Figure, Tool};
use crate::caseload::{Covered, SizeOf};
use crate::garment::Chart;

impl Share {
    /// A count of all.
    #[expect(clippy::cast_precision_loss, reason = "counts far below 2^53")]
    pub fn of(limbs: u64, all: u64) -> Self {
        let percent = if all == 0 { 0.0 } else { 100.0 * limbs as f64 / all as f64 };
        let percent = Figure::new(percent, 1).unwrap_or(Figure { value: 0.0, text: String::new() });
        Self { limbs, percent }
    }
}

impl CoverReport {
    /// Makes the report of what charts, with their printed labels, serve; `known_fall` where the fall was asked for.
    pub fn of(covered: &Covered, charts: &[&Chart], labels: &[String], known_fall: bool) -> Self {
        let found = &covered.coverage;
        let share = |limbs: u64| Share::of(limbs, found.cases);
        let of_chart = |(number, (chart, label)): (usize, (&&Chart, &String))| {
            let chosen = |size: usize| found.chosen(SizeOf { chart: number, size }, charts);
            let sizes = chart.sizes.iter().enumerate().map(|(size, one)| {
                let of = SizeOf { chart: number, size };
                CoverSize {
                    label: one.label.to_string(),
                    chosen: share(chosen(size)),
                    falls: known_fall.then(|| share(found.falls(of, charts))),
                    only: share(found.only(of, charts)),
                }
            });
            let all_chosen: u64 = (0..chart.sizes.len()).map(chosen).sum();
            CoverChart {
                label: label.clone(),
                file: chart.file.clone(),
                served: share(found.served(number)),
                only: share(found.only_chart(number, charts)),
                not_judged: share(found.lacking(number)),
                rises: share(found.risen(number)),
                falls: known_fall.then(|| share(found.served_falls(number))),
                alike: share(found.served(number).saturating_sub(all_chosen)),
                sizes: sizes.collect(),
                missed: (found.missed(number).into_iter())
                    .map(|(how, count)| CoverMissed {
                        landmark: how.landmark,
                        direction: if how.tight { "tight" } else { "loose" },
                        share: share(count),
                    })
                    .collect(),
            }
        };
        Self {
            served: Some(share(found.served_by_any)),
            not_judged: Some(share(found.not_judged)),
            charts: charts.iter().zip(labels).enumerate().map(of_chart).collect(),
            stock: (found.stock(charts).into_iter())
                .map(|step| CoverStock {
                    chart: step.size.chart,
                    size: step.size.size,
                    adds: share(step.adds),
                    so_far: share(step.so_far),
                })
                .collect(),
            ..Self::bare(found.cases, covered.problems, &covered.told)
        }
    }

    /// Makes the report of sizes placed anew.
    pub fn of_design(block: DesignBlock, limbs: u64, problems: u64, told: &[(u64, String)]) -> Self {
        Self { design: Some(block), ..Self::bare(limbs, problems, told) }
    }

    fn bare(limbs: u64, problems: u64, told: &[(u64, String)]) -> Self {
        let rows = told.iter().map(|(row, problem)| CoverRow { row: *row, problem: problem.clone() });
        Self {
            schema: "tapeline.cover/1",
            tool: Tool { name: "tapeline", version: env!("CARGO_PKG_VERSION") },
            limbs,
            problems,
            rows: rows.collect(),
            served: None,
            not_judged: None,
            charts: Vec::new(),
            stock: Vec::new(),
            design: None,
        }
    }
}
