//! Owns the outcome in words and the sentences that go with every report.

use serde::Serialize;

use crate::assessment::{Assessment, ChartAssessment, Outcome};
use crate::finding::Finding;
use crate::rules::Severity;

/// Sentences that go with every report.
pub const LIMITS: [&str; 2] = [
    "All figures are estimates from tape and ruler, not measurements of pressure.",
    "A certified fitter and the treating clinician decide; local rules and licensed practice come first.",
];

/// What a model estimate is against a sensor. Basis: published (Partsch 2006, J Vasc Surg, doi
/// 10.1016/j.jvs.2006.06.024: 12 legs, mean difference -2.1, 95 % of differences -10.1 to +5.8 mmHg).
pub const SENSOR: &str = "Against a sensor, such estimates differed by \u{2212}10 to +6 mmHg at a single point (95 % of differences, 12 legs; Partsch 2006).";

/// The outcome in words.
#[derive(Clone, Debug, Serialize)]
pub struct Summary {
    /// What the report comes to, in one sentence.
    pub sentence: String,
    /// What to do next.
    pub next: String,
    /// The best chart's label, when one was given.
    pub best_chart: Option<String>,
}

pub(super) fn summary(found: &Assessment) -> Summary {
    let best = found.best_chart.and_then(|at| found.charts.get(at));
    let (sentence, next) = words(found, best);
    Summary { sentence, next, best_chart: best.map(|chart| chart.chart.label.clone()) }
}

fn words(found: &Assessment, best: Option<&ChartAssessment>) -> (String, String) {
    let open = |severity| {
        found
            .findings
            .iter()
            .filter(move |one| one.severity == severity && one.cleared.is_none() && one.place.is_client())
    };
    let client_stop = open(Severity::Stop).next();
    let size = best.and_then(size_words);
    match found.outcome {
        None => (
            "No chart was given, and nothing in the record stands against a fitting.".to_owned(),
            "Give a size chart with `--chart FILE`.".to_owned(),
        ),
        Some(Outcome::Stop) => match client_stop {
            Some(stop) => (format!("Do not fit. {}", stop.sentence), stop.next.clone()),
            None => (
                "Do not fit these garments. Each contains a material that the client is allergic to.".to_owned(),
                "Choose a garment without it.".to_owned(),
            ),
        },
        Some(Outcome::Refer) => {
            let reviews: Vec<&Finding> = found.findings.iter().filter(|one| one.is_open_review()).collect();
            let client = reviews.iter().filter(|one| one.place.is_client()).count();
            let size = size.map(|size| format!(" {size} holds by girth.")).unwrap_or_default();
            match (client, reviews.first()) {
                (0, _) => {
                    let why = best.map(|chart| super::chart_block::chart(chart).reason).unwrap_or_default();
                    let review = reviews.iter().find(|one| one.place.chart.as_deref() == best.map(|chart| chart.chart.label.as_str()));
                    let sentence = review.map_or_else(|| format!("{}.", capital(&why)), |one| format!("{}{size}", one.sentence));
                    (sentence, "A certified fitter looks at it before anything is fitted.".to_owned())
                }
                (1, Some(one)) => (format!("One review is not cleared. {}{size}", one.sentence), one.next.clone()),
                (many, _) => (
                    format!("{} reviews are not cleared.{size}", spelled(many)),
                    "Each is cleared by a named role with a reason, or nothing is fitted.".to_owned(),
                ),
            }
        }
        Some(Outcome::Incomplete) => {
            let size = size.map(|size| format!(" {size} holds by girth; nothing is fitted until this is answered.")).unwrap_or_default();
            let question = found.findings.iter().find(|one| one.is_question && one.place.is_client());
            match (question, best) {
                (Some(question), _) => (format!("{}{size}", question.sentence), question.next.clone()),
                (None, Some(chart)) => (
                    format!("{}.", capital(&super::chart_block::chart(chart).reason)),
                    "Measure what is missing and check again.".to_owned(),
                ),
                (None, None) => ("Something is missing.".to_owned(), String::new()),
            }
        }
        Some(Outcome::MadeToMeasure) => {
            let why = best.map(|chart| super::chart_block::chart(chart).reason).unwrap_or_default();
            (
                format!("{}.", capital(&why)),
                "A certified fitter takes and checks a made-to-measure order.".to_owned(),
            )
        }
        Some(Outcome::Unproven) => (
            format!("{} holds by girth, but its fall of pressure is not judged.", size.unwrap_or_default()),
            "Before a trial fitting: flat widths of the garment, its fabric curve, or sensor readings.".to_owned(),
        ),
        Some(Outcome::TryOn) => (
            format!("{}: go on to a trial fitting. Estimate, not a measurement.", size.unwrap_or_default()),
            "Fit on trial, look again after 10 to 30 minutes of wear, and take it off at any sign of trouble.".to_owned(),
        ),
    }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

fn spelled(count: usize) -> String {
    match count {
        2 => "Two".to_owned(),
        3 => "Three".to_owned(),
        4 => "Four".to_owned(),
        more => more.to_string(),
    }
}

/// `Size 3 wide, regular, sleeve chart B`.
fn size_words(chart: &ChartAssessment) -> Option<String> {
    let at = chart.choice.size?;
    let size = chart.chart.sizes.get(at)?;
    let variant = chart.sizing.sizes.get(at).and_then(|fit| fit.variant.clone());
    let variant = variant.map(|variant| format!(", {variant}")).unwrap_or_default();
    Some(format!("Size {}{variant}, {}", size.label, chart.chart.label))
}
