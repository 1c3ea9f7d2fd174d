//! Owns what a sheet is about: each limb, each part of a set, the chart that counts and the size shown.

use crate::assessment::Outcome;
use crate::report::{ChartBlock, FindingRow, GradientBlock, LimbBlock, PressureBlock, Report, SizeBlock};

/// One garment of the sheet: a part of a set on a limb, or the limb alone where there is no chart.
#[derive(Clone, Copy, Debug)]
pub(in crate::render) struct Part<'r> {
    /// The report.
    pub(in crate::render) report: &'r Report,
    /// The limb's place.
    pub(in crate::render) limb_at: usize,
    /// The limb.
    pub(in crate::render) limb: &'r LimbBlock,
    /// The chart's place.
    pub(in crate::render) chart_at: Option<usize>,
    /// The chart that counts.
    pub(in crate::render) chart: Option<&'r ChartBlock>,
    /// The size shown: the chosen one, else the picked one, else the nearest.
    pub(in crate::render) size: Option<&'r SizeBlock>,
    /// Its pressures.
    pub(in crate::render) pressure: Option<&'r PressureBlock>,
    /// Its fall.
    pub(in crate::render) gradient: Option<&'r GradientBlock>,
}

impl<'r> Part<'r> {
    /// A chart on a limb.
    pub(in crate::render) fn of(
        report: &'r Report,
        limb_at: usize,
        limb: &'r LimbBlock,
        chart_at: usize,
    ) -> Self {
        let chart = limb.charts.get(chart_at);
        let shown = chart.and_then(|chart| {
            chart.size.or(chart.picked).or(chart.nearest).or_else(|| chart.between.first().copied())
        });
        Self {
            report,
            limb_at,
            limb,
            chart_at: Some(chart_at),
            chart,
            size: chart.zip(shown).and_then(|(chart, at)| chart.sizes.get(at)),
            pressure: limb.pressure.iter().find(|one| one.chart == Some(chart_at) && one.size == shown),
            gradient: limb.gradient.iter().find(|one| one.chart == Some(chart_at) && one.size == shown),
        }
    }

    /// Whether the size shown was chosen.
    pub(in crate::render) fn is_chosen(&self) -> bool {
        self.chart.is_some_and(|chart| chart.size.is_some())
    }

    /// Whether it is to be made to measure.
    pub(in crate::render) fn is_made(&self) -> bool {
        let made = Outcome::MadeToMeasure;
        self.chart.map_or(self.limb.outcome == Some(made), |chart| {
            chart.outcome == made || chart.also.contains(&made)
        })
    }

    /// Whether the size shown misses a girth by so much that nothing is said of its pressure: more than
    /// 2 cm (house rule).
    pub(in crate::render) fn is_far(&self) -> bool {
        let measures = self.size.iter().flat_map(|size| &size.measures);
        measures.filter_map(|one| one.margin_cm.as_ref()).any(|margin| margin.value < -2.0)
    }

    /// `3, regular`.
    pub(in crate::render) fn size_words(&self) -> String {
        let Some(size) = self.size else { return super::wording::EMPTY.to_owned() };
        let variant = self.chart.and_then(|chart| chart.variant.as_ref());
        let variant = variant.map(|one| format!(", {one}")).unwrap_or_default();
        if self.is_chosen() {
            format!("{}{variant}", size.size)
        } else {
            format!("not picked; {} is nearest", size.size)
        }
    }
}

/// The garments of a sheet: for each limb each part of a set, by the chart that counts.
pub(in crate::render) fn parts(report: &Report) -> Vec<Part<'_>> {
    let mut parts = Vec::new();
    for (limb_at, limb) in report.limbs.iter().enumerate() {
        let counted = limb.charts.iter().enumerate().filter(|(_, chart)| chart.counted);
        let before = parts.len();
        parts.extend(counted.map(|(at, _)| Part::of(report, limb_at, limb, at)));
        if parts.len() == before {
            parts.push(Part {
                report,
                limb_at,
                limb,
                chart_at: None,
                chart: None,
                size: None,
                pressure: limb.pressure.iter().find(|one| one.chart.is_none()),
                gradient: limb.gradient.iter().find(|one| one.chart.is_none()),
            });
        }
    }
    parts
}

/// Whether no line of the sheet may invite to fit.
pub(in crate::render) fn forbids(report: &Report) -> bool {
    report.decision.outcome.is_some_and(Outcome::forbids_fitting)
}

/// Whether the sheet is for a trial fitting.
pub(in crate::render) fn is_trial(report: &Report) -> bool {
    report.decision.outcome == Some(Outcome::TrialFitting)
}

/// Whether a finding is about the client, a limb, a garment file, or a chart that counts.
pub(in crate::render) fn concerns(report: &Report, finding: &FindingRow) -> bool {
    let Some(chart) = finding.chart else { return true };
    let limb = report.limbs.get(finding.limb.unwrap_or_default());
    limb.and_then(|limb| limb.charts.get(chart)).is_some_and(|chart| chart.counted)
}

/// What stands before a sentence about one of two limbs: `left leg: `.
pub(in crate::render) fn of_limb(report: &Report, limb: Option<usize>) -> String {
    match limb.and_then(|at| report.limbs.get(at)) {
        Some(limb) if report.limbs.len() > 1 => format!("{}: ", crate::words::capital(&limb.printed)),
        _ => String::new(),
    }
}
