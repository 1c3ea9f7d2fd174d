//! The library driven without the program: texts in, the report out.

use std::fmt::Write as _;

use serde_json::Value;
use tapeline::assessment::{OpenRecord, assess, open_record};
use tapeline::garment::{Chart, Schemes, open_chart, open_fabric};
use tapeline::input::{Problem, Source};
use tapeline::render;
use tapeline::report::{Inputs, build};
use tapeline::rules::{Rules, read_rules};

/// The day that every test checks on.
pub const TODAY: &str = "2026-03-14";

/// The shipped rules.
pub fn rules() -> Rules {
    read_rules(None).unwrap()
}

/// A source as a file of the project's folder would be.
pub fn source(name: &str, text: &str) -> Source {
    Source { name: name.to_owned(), text: text.to_owned() }
}

/// Opens a record.
pub fn record(text: &str, rules: &Rules) -> Result<OpenRecord, Vec<Problem>> {
    open_record(source("record.yaml", text), rules, &Schemes::default())
}

/// Opens a chart, with a fabric given as text.
pub fn chart(text: &str, fabric: Option<&str>) -> Result<Chart, Vec<Problem>> {
    let mut chart = open_chart(source("chart.yaml", text), &Schemes::default())?.chart;
    if let Some(fabric) = fabric {
        chart.fabric = Some(open_fabric(source("fabric.yaml", fabric))?);
    }
    Ok(chart)
}

/// The report of a record that is already open, as JSON and as text.
pub fn both(open: &OpenRecord, charts: Vec<Chart>, rules: &Rules) -> (String, String) {
    let found = assess(open, charts, TODAY.parse().unwrap(), rules);
    let report = build(Inputs { open, found: &found, rules });
    (render::json(&report), render::text(&report, 100))
}

/// The report of a record against charts, each with its fabric as text or none.
#[track_caller]
pub fn report(record_text: &str, charts: &[(&str, Option<&str>)]) -> Value {
    let rules = rules();
    let told = |problems: Vec<Problem>| -> String {
        problems.iter().map(Problem::to_string).collect::<Vec<_>>().join("\n")
    };
    let open = record(record_text, &rules).map_err(told).unwrap_or_else(|said| panic!("{said}"));
    let charts = charts
        .iter()
        .map(|(text, fabric)| chart(text, *fabric).map_err(told).unwrap_or_else(|said| panic!("{said}")));
    serde_json::from_str(&both(&open, charts.collect(), &rules).0).unwrap()
}

/// Every question of an arm answered: nothing stands against a fitting.
pub const ARM_ANSWERS: &str = "observed: {hand_swelling: no, pitting: no, folds: no, distortion: no}
screening: {asked_on: 2026-03-14, none_of: [circulation, heart, nerves, infection, skin, cancer-and-devices, daily-life]}
allergies: []
";

/// The head of a record of a left arm in cm.
pub const ARM_HEAD: &str = "tapeline: record/1
client: K-0001
measured: 2026-03-14
units: {length: cm, pressure: mmHg}
limb: left arm
affected: left
positions_from: wrist
";

/// A left arm with these marks, every question answered.
pub fn arm(marks: &[&str]) -> String {
    format!("{ARM_HEAD}{ARM_ANSWERS}{}", listed(marks))
}

/// A left leg with these marks, every question answered, with an index of 1.
pub fn leg(marks: &[&str]) -> String {
    let head = ARM_HEAD.replace("left arm", "left leg").replace("from: wrist", "from: floor");
    format!("{head}{ARM_ANSWERS}arterial: {{on: 2026-03-10, abpi: 1.0}}\n{}", listed(marks))
}

/// The key `marks` with one mark a line.
pub fn listed(marks: &[&str]) -> String {
    marks.iter().fold("marks:\n".to_owned(), |text, mark| format!("{text}  - {{{mark}}}\n"))
}

/// A chart in cm from these head lines and sizes, each `label | girths | rest`.
pub fn chart_of(limb: &str, head: &str, sizes: &[&str]) -> String {
    let mut text =
        format!("tapeline: chart/1\nlabel: chart T\nlimb: {limb}\nunits: {{length: cm}}\n{head}sizes:\n");
    for size in sizes {
        let mut parts = size.splitn(3, " | ");
        let (label, girths) = (parts.next().unwrap(), parts.next().unwrap());
        writeln!(text, "  - size: \"{label}\"\n    girths: {{{girths}}}").unwrap();
        for rest in parts {
            writeln!(text, "    {rest}").unwrap();
        }
    }
    text
}

/// A linear fabric of `k` N/m per unit stretch, tested up to 300 %.
pub fn linear(k: f64) -> String {
    format!(
        "tapeline: fabric/1\nlabel: linear\nbasis: derived\ncurve:\n  - {{stretch: 0 %, tension: 0 N/m}}\n  \
         - {{stretch: 300 %, tension: {} N/m}}\n",
        3.0 * k
    )
}

/// The figure at a path such as `/pressure/0/marks/1/sd_mmhg`.
#[track_caller]
pub fn figure(report: &Value, path: &str) -> f64 {
    let found = report.pointer(path).unwrap_or_else(|| panic!("no `{path}`"));
    found.as_f64().unwrap_or_else(|| panic!("`{path}` is {found}"))
}

/// The word at a path.
#[track_caller]
pub fn word<'v>(report: &'v Value, path: &str) -> &'v str {
    let found = report.pointer(path).unwrap_or_else(|| panic!("no `{path}`"));
    found.as_str().unwrap_or_else(|| panic!("`{path}` is {found}"))
}

/// Asserts that two figures agree to a relative tolerance.
#[track_caller]
pub fn near(found: f64, wanted: f64, relative: f64) {
    assert!((found - wanted).abs() <= relative * wanted.abs(), "{found} is not {wanted} to {relative}");
}

/// The ids of the findings with their severities.
pub fn findings(report: &Value) -> Vec<(String, String)> {
    let list = report["findings"].as_array().unwrap().iter();
    list.map(|one| (word(one, "/id").to_owned(), word(one, "/severity").to_owned())).collect()
}

/// Whether a finding of this id and severity stands in the report.
pub fn has(report: &Value, id: &str, severity: &str) -> bool {
    findings(report).iter().any(|(one, weight)| one == id && weight == severity)
}
