//! Owns what the sheet is about: the best chart, the size shown of it, and whether anything may be
//! fitted.

use crate::report::{Chart, Finding, Graduation, Pressure, Report, Size};

/// What a sheet is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum State {
    /// Go on to a trial fitting.
    Trial,
    /// Do not fit.
    Stop,
    /// Any other outcome, or none.
    Wait,
}

/// The parts of a report that the sheet is about.
#[derive(Clone, Copy, Debug)]
pub(super) struct Subject<'r> {
    /// The report.
    pub(super) report: &'r Report,
    /// What the sheet is for.
    pub(super) state: State,
    /// The best chart.
    pub(super) chart: Option<&'r Chart>,
    /// The size shown: the picked one, else the nearest, else the first that was estimated.
    pub(super) size: Option<&'r Size>,
    /// Its pressures.
    pub(super) pressure: Option<&'r Pressure>,
    /// Its fall.
    pub(super) graduation: Option<&'r Graduation>,
}

impl<'r> Subject<'r> {
    pub(super) fn of(report: &'r Report) -> Self {
        let state = match report.outcome {
            Some("try-on") => State::Trial,
            Some("stop") => State::Stop,
            _ => State::Wait,
        };
        let best = report.summary.best_chart.as_deref();
        let chart = best.and_then(|label| report.charts.iter().find(|chart| chart.label == label));
        let estimated = || {
            let one = report.pressure.iter().find(|one| Some(one.garment.as_str()) == best);
            one.and_then(|one| one.size.as_deref())
        };
        let label =
            chart.and_then(|chart| chart.size.as_deref().or(chart.nearest.as_deref())).or_else(estimated);
        let size = chart.and_then(|chart| chart.sizes.iter().find(|size| Some(size.size.as_str()) == label));
        let pressure = report
            .pressure
            .iter()
            .find(|one| Some(one.garment.as_str()) == best && one.size.as_deref() == label);
        let graduation = report
            .graduation
            .iter()
            .find(|one| Some(one.garment.as_str()) == best && one.size.as_deref() == label);
        Self { report, state, chart, size, pressure, graduation }
    }

    /// `LEFT ARM`.
    pub(super) fn limb_in_capitals(&self) -> String {
        self.limb().to_uppercase()
    }

    /// `left arm`.
    pub(super) fn limb(&self) -> String {
        format!("{} {}", self.report.record.side, self.report.record.limb)
    }

    /// What goes with every line about a garment while nothing may be fitted.
    pub(super) fn caution(&self) -> &'static str {
        match self.state {
            State::Stop => " Figures only, do not fit.",
            State::Trial | State::Wait => "",
        }
    }

    /// Whether a finding is about the client or the chart shown.
    pub(super) fn concerns(&self, finding: &Finding) -> bool {
        finding.chart.is_none() || finding.chart.as_deref() == self.chart.map(|chart| chart.label.as_str())
    }

    /// Whether the made-to-measure part belongs on the sheet.
    pub(super) fn made_to_measure(&self) -> bool {
        let here = |outcome: &str| outcome == "made-to-measure";
        self.state != State::Stop
            && (self.report.outcome.is_some_and(here) || self.report.also.iter().copied().any(here))
    }
}
