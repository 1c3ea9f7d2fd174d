//! A record and charts made of replaceable parts, checked in this process.
//!
//! The base records are complete: nothing is asked, nothing is found above `note`.

use std::path::PathBuf;
use std::sync::LazyLock;

use tapeline::assessment::{OpenRecord, assess, open_previous, open_record};
use tapeline::garment::{Chart, Schemes, open_chart};
use tapeline::input::{Problem, Source};
use tapeline::render;
use tapeline::report::{Inputs, build};
use tapeline::rules::{Rules, read_rules, read_shipped_rules};

use crate::support::root;

/// Every group that a record may answer as a whole.
pub const GROUPS: &str = "circulation, heart, nerves, infection, skin, cancer-and-devices, daily-life";

/// A chart that the base arm lies in the middle of, its pressure falling steeply.
pub const SLEEVE: &str = r#"tapeline: chart/1
label: sleeves
limb: arm
style: sleeve
from: wrist
to: upper-arm
scheme: ral-gz-387-2
class: "2"
contains: [polyamide]
hand_part: no
units: {length: cm}
sizes:
  - size: "1"
    girths: {wrist: 15-19, forearm: 22-30, upper-arm: 26-36}
    relaxed: {wrist: 12.5, forearm: 20.8, upper-arm: 27}
  - size: "2"
    girths: {wrist: 19-23, forearm: 30-38, upper-arm: 36-46}
    relaxed: {wrist: 15.5, forearm: 26, upper-arm: 34}
  - size: "3"
    girths: {wrist: 23-27, forearm: 38-46, upper-arm: 46-56}
    relaxed: {wrist: 18.5, forearm: 33, upper-arm: 43}
"#;

/// The same for the base leg.
pub const STOCKING: &str = r#"tapeline: chart/1
label: stockings
limb: leg
style: stocking
from: ankle
to: mid-thigh
scheme: ral-gz-387-1
class: "2"
contains: [polyamide]
units: {length: cm}
sizes:
  - size: "1"
    girths: {ankle: 20-26, calf: 34-42, mid-thigh: 45-57}
    relaxed: {ankle: 16.5, calf: 31, mid-thigh: 45}
"#;

/// The default set, read once.
pub static CONSENSUS: LazyLock<Rules> = LazyLock::new(|| read_rules(None).unwrap());

/// A record with its charts and earlier records.
#[derive(Clone)]
pub struct Scene {
    keys: Vec<(String, String)>,
    charts: Vec<String>,
    previous: Vec<String>,
    today: String,
    thresholds: Thresholds,
}

#[derive(Clone)]
enum Thresholds {
    Shipped(String),
    Own(String),
}

impl Scene {
    /// A complete arm with a chart that fits.
    pub fn arm() -> Self {
        let screening = format!("{{asked_on: 2026-03-14, by: R2, none_of: [{GROUPS}]}}");
        Self::of(&[
            ("client", "K-1"),
            ("measured", "2026-03-14"),
            ("units", "{length: cm, pressure: mmHg}"),
            ("limb", "left arm"),
            ("affected", "left"),
            ("positions_from", "wrist"),
            (
                "marks",
                "[{landmark: wrist, at: 0, girth: 17}, {landmark: forearm, at: 14, girth: 26}, {landmark: upper-arm, at: 33, girth: 31}]",
            ),
            ("observed", "{hand_swelling: no, pitting: no, folds: no, distortion: no}"),
            ("screening", &screening),
            ("allergies", "[]"),
        ])
        .chart(SLEEVE)
    }

    /// A complete leg with a chart that fits.
    pub fn leg() -> Self {
        let screening = format!("{{asked_on: 2026-03-14, by: R2, none_of: [{GROUPS}]}}");
        Self::of(&[
            ("client", "K-2"),
            ("measured", "2026-03-14"),
            ("units", "{length: cm, pressure: mmHg}"),
            ("limb", "right leg"),
            ("affected", "right"),
            ("positions_from", "floor"),
            (
                "marks",
                "[{landmark: ankle, at: 11, girth: 23}, {landmark: calf, at: 31, girth: 38}, {landmark: mid-thigh, at: 59, girth: 51}]",
            ),
            ("observed", "{pitting: no, folds: no, distortion: no}"),
            ("screening", &screening),
            ("arterial", "{on: 2026-03-10, abpi: 1.05}"),
            ("allergies", "[]"),
        ])
        .chart(STOCKING)
    }

    fn of(keys: &[(&str, &str)]) -> Self {
        Self {
            keys: keys.iter().map(|(key, value)| ((*key).to_owned(), (*value).to_owned())).collect(),
            charts: Vec::new(),
            previous: Vec::new(),
            today: "2026-03-14".to_owned(),
            thresholds: Thresholds::Shipped("consensus".to_owned()),
        }
    }

    /// With a key set.
    pub fn set(mut self, key: &str, value: &str) -> Self {
        match self.keys.iter_mut().find(|(name, _)| name == key) {
            Some(entry) => value.clone_into(&mut entry.1),
            None => self.keys.push((key.to_owned(), value.to_owned())),
        }
        self
    }

    /// Without a key.
    pub fn without(mut self, key: &str) -> Self {
        self.keys.retain(|(name, _)| name != key);
        self
    }

    /// With one screening answer beside the groups: `yes`, `no` or `unknown`.
    pub fn answer(self, item: &str, answer: &str) -> Self {
        let screening = format!("{{asked_on: 2026-03-14, by: R2, none_of: [{GROUPS}], {answer}: [{item}]}}");
        self.set("screening", &screening)
    }

    /// With a review cleared.
    pub fn cleared(self, item: &str, role: &str) -> Self {
        self.set("cleared", &format!("[{{item: {item}, role: {role}, reason: assessed, on: 2026-03-13}}]"))
    }

    /// With girths, `landmark@position=girth`, separated by spaces.
    pub fn girths(self, marks: &str) -> Self {
        let marks = marks_yaml(marks);
        self.set("marks", &marks)
    }

    /// With the other limb's girths.
    pub fn other(self, marks: &str) -> Self {
        let marks = format!("{{marks: {}}}", marks_yaml(marks));
        self.set("other_limb", &marks)
    }

    /// With one more chart.
    pub fn chart(mut self, text: &str) -> Self {
        self.charts.push(text.to_owned());
        self
    }

    /// With this chart alone.
    pub fn only_chart(mut self, text: &str) -> Self {
        self.charts = vec![text.to_owned()];
        self
    }

    /// Without charts.
    pub fn no_chart(mut self) -> Self {
        self.charts.clear();
        self
    }

    /// With an earlier record.
    pub fn previous(mut self, other: &Self) -> Self {
        self.previous.push(other.record());
        self
    }

    /// On another day.
    pub fn today(mut self, day: &str) -> Self {
        day.clone_into(&mut self.today);
        self
    }

    /// By a shipped set of thresholds.
    pub fn shipped(mut self, id: &str) -> Self {
        self.thresholds = Thresholds::Shipped(id.to_owned());
        self
    }

    /// By a thresholds file of one's own, beside the default set.
    pub fn thresholds(mut self, keys: &str) -> Self {
        self.thresholds = Thresholds::Own(format!(
            "tapeline: thresholds/1\nid: own\nlabel: own\nsource: own\nextends: consensus\n{keys}\n"
        ));
        self
    }

    /// The record as a file.
    pub fn record(&self) -> String {
        let keys: Vec<String> = self.keys.iter().map(|(key, value)| format!("{key}: {value}\n")).collect();
        format!("tapeline: record/1\n{}", keys.concat())
    }

    fn rules(&self) -> Rules {
        match &self.thresholds {
            Thresholds::Shipped(id) if id == "consensus" => Ok(CONSENSUS.clone()),
            Thresholds::Shipped(id) => read_shipped_rules(id),
            Thresholds::Own(text) => {
                read_rules(Some(Source { name: "own.yaml".to_owned(), text: text.clone() }))
            }
        }
        .unwrap_or_else(|problems| panic!("{problems:#?}"))
    }

    /// The record, opened.
    #[track_caller]
    pub fn open(&self) -> OpenRecord {
        let source = Source { name: "record.yaml".to_owned(), text: self.record() };
        open_record(source, &self.rules(), &Schemes::default())
            .unwrap_or_else(|problems| panic!("{problems:#?}"))
    }

    /// The charts, opened.
    #[track_caller]
    pub fn opened_charts(&self) -> Vec<Chart> {
        let open = |text: &String| {
            let source = Source { name: folder("chart.yaml").display().to_string(), text: text.clone() };
            open_chart(source, &Schemes::default()).unwrap_or_else(|problems| panic!("{problems:#?}")).chart
        };
        self.charts.iter().map(open).collect()
    }

    fn try_report(&self) -> Result<serde_json::Value, Vec<Problem>> {
        let rules = self.rules();
        let schemes = Schemes::default();
        // Files named in a chart are looked for in the demo folder.
        let named = |name: &str, text: &str| Source {
            name: folder(name).display().to_string(),
            text: text.to_owned(),
        };
        let mut open = open_record(named("record.yaml", &self.record()), &rules, &schemes)?;
        for text in &self.previous {
            let earlier = open_previous(named("previous.yaml", text), &open.record)?;
            open.previous.push(earlier);
        }
        let mut charts = Vec::new();
        for text in &self.charts {
            charts.push(open_chart(named("chart.yaml", text), &schemes)?.chart);
        }
        let found = assess(&open, charts, self.today.parse().unwrap(), &rules);
        let report = build(Inputs { open: &open, found: &found, rules: &rules });
        Ok(serde_json::from_str(&render::json(&report)).unwrap())
    }

    /// The report.
    #[track_caller]
    pub fn report(&self) -> Report {
        match self.try_report() {
            Ok(value) => Report(value),
            Err(problems) => panic!("no report: {}\n{}", texts(&problems).join("\n"), self.record()),
        }
    }

    /// What is wrong with the input.
    #[track_caller]
    pub fn problems(&self) -> Vec<String> {
        match self.try_report() {
            Ok(report) => panic!("a report where a problem was wanted: {report:#}"),
            Err(problems) => texts(&problems),
        }
    }
}

fn folder(name: &str) -> PathBuf {
    root().join("demo").join(name)
}

fn texts(problems: &[Problem]) -> Vec<String> {
    problems.iter().map(ToString::to_string).collect()
}

fn marks_yaml(marks: &str) -> String {
    let marks: Vec<String> = marks
        .split_whitespace()
        .map(|mark| {
            let (place, girth) = mark.split_once('=').unwrap();
            let (landmark, at) = place.split_once('@').unwrap();
            if landmark.is_empty() {
                format!("{{at: {at}, girth: {girth}}}")
            } else {
                format!("{{landmark: {landmark}, at: {at}, girth: {girth}}}")
            }
        })
        .collect();
    format!("[{}]", marks.join(", "))
}

/// A report as JSON, with questions to it.
pub struct Report(pub serde_json::Value);

impl Report {
    /// The outcome.
    pub fn outcome(&self) -> Option<&str> {
        self.0["outcome"].as_str()
    }

    /// Severities of every finding of an id.
    pub fn severities(&self, id: &str) -> Vec<&str> {
        self.findings().filter(|one| one["id"] == id).map(|one| one["severity"].as_str().unwrap()).collect()
    }

    /// The message of the first finding of an id.
    #[track_caller]
    pub fn message(&self, id: &str) -> &str {
        let found = self.findings().find(|one| one["id"] == id);
        found.unwrap_or_else(|| panic!("no `{id}`: {:?}", self.ids()))["message"].as_str().unwrap()
    }

    /// Every finding.
    pub fn findings(&self) -> impl Iterator<Item = &serde_json::Value> {
        self.0["findings"].as_array().unwrap().iter()
    }

    /// Ids and severities of every finding.
    pub fn ids(&self) -> Vec<String> {
        self.findings()
            .map(|one| format!("{} {}", one["id"].as_str().unwrap(), one["severity"].as_str().unwrap()))
            .collect()
    }

    /// Whether a finding of an id is cleared.
    pub fn is_cleared(&self, id: &str) -> bool {
        self.findings().any(|one| one["id"] == id && one["cleared"] == true)
    }
}
