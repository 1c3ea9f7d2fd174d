//! The one language of fixtures: a complete record with charts that fit, of which a test changes one part,
//! checked in this process.
//!
//! The base records are complete: nothing is asked, nothing is found above `note`, the outcome is a trial
//! fitting. Every figure is invented.

use std::sync::LazyLock;

use tapeline::assessment::{Assessment, Setting, assess, open_files};
use tapeline::finding::Finding;
use tapeline::garment::Schemes;
use tapeline::input::{Problem, Source};
use tapeline::rules::{Rules, Severity, read_rules, read_shipped_rules};

use crate::source::root;

/// The day of every scene.
pub const TODAY: &str = "2026-03-14";
/// Every group that an arm is asked.
pub const ARM_GROUPS: &str =
    "today, skin, feeling, cause, operations, heart-kidneys, circulation, devices, daily-life";
/// Every group that a leg is asked.
pub const LEG_GROUPS: &str =
    "today, skin, feeling, cause, operations, heart-kidneys, circulation, daily-life";
/// Nothing seen on an arm.
pub const ARM_SEEN: &str =
    "{pitting: none, folds: no, distortion: no, hand_swelling: no, swelling_beyond: no}";
/// Nothing seen on a leg.
pub const LEG_SEEN: &str =
    "{pitting: none, folds: no, distortion: no, foot_swelling: no, swelling_beyond: no}";

/// A chart that the base arm lies in the middle of, its pressure falling steeply.
pub const SLEEVE: &str = r#"tapeline: chart/1
label: sleeves
limb: arm
style: sleeve
from: wrist
to: upper-arm
scheme: ral-gz-387-2
class: "2"
materials: [polyamide]
hand_part: no
units: {length: cm}
sizes:
  - size: "1"
    girths: {wrist: 14-20, forearm: 22-30, upper-arm: 26-36}
    relaxed: {wrist: 12.5, forearm: 20.8, upper-arm: 27}
  - size: "2"
    girths: {wrist: 20-26, forearm: 30-38, upper-arm: 36-46}
    relaxed: {wrist: 16.5, forearm: 26, upper-arm: 34}
  - size: "3"
    girths: {wrist: 26-32, forearm: 38-46, upper-arm: 46-56}
    relaxed: {wrist: 20.5, forearm: 33, upper-arm: 43}
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
materials: [polyamide]
units: {length: cm}
sizes:
  - size: "1"
    girths: {ankle: 19-27, calf: 33-43, mid-thigh: 44-58}
    relaxed: {ankle: 16.5, calf: 31, mid-thigh: 45}
"#;

/// A hand piece that the base arm's hand lies in the middle of.
pub const HAND_PIECE: &str = r#"tapeline: chart/1
label: hand pieces
limb: arm
style: hand piece
from: hand
to: wrist
scheme: ral-gz-387-2
class: "2"
materials: [polyamide]
hand_part: yes
units: {length: cm}
sizes:
  - size: "1"
    girths: {hand: 16-22, wrist: 14-20}
    relaxed: {hand: 15.5, wrist: 13.8}
"#;

/// The default set, read once.
pub static DEFAULT: LazyLock<Rules> = LazyLock::new(|| read_rules(None).unwrap());

/// A record with its charts, garments and earlier records.
#[derive(Clone)]
pub struct Scene {
    keys: Vec<(String, String)>,
    charts: Vec<(String, String)>,
    garments: Vec<String>,
    earlier: Vec<String>,
    rules: Option<RulesOf>,
}

#[derive(Clone)]
enum RulesOf {
    Shipped(String),
    Own(String),
}

impl Scene {
    /// A complete left arm with a chart that fits.
    pub fn arm() -> Self {
        Self::of(&[
            ("limb", "left arm"),
            ("affected", "left"),
            ("cause", "{known: yes, by: physician}"),
            ("positions_from", "wrist"),
            (
                "marks",
                "[{landmark: wrist, at: 0, girth: 17}, {landmark: forearm, at: 14, girth: 26}, {landmark: upper-arm, at: 33, girth: 31}]",
            ),
            ("observed", ARM_SEEN),
            ("screening", &asked(ARM_GROUPS)),
        ])
        .chart(SLEEVE)
    }

    /// A complete right leg with a chart that fits and an index that passes.
    pub fn leg() -> Self {
        Self::of(&[
            ("limb", "right leg"),
            ("affected", "right"),
            ("cause", "{known: yes, by: physician}"),
            ("positions_from", "floor"),
            (
                "marks",
                "[{landmark: ankle, at: 11, girth: 23}, {landmark: calf, at: 31, girth: 38}, {landmark: mid-thigh, at: 59, girth: 51}]",
            ),
            ("observed", LEG_SEEN),
            ("screening", &asked(LEG_GROUPS)),
            ("arterial", "{taken_on: 2026-03-10, abpi: 1.05}"),
        ])
        .chart(STOCKING)
    }

    /// The same client with both limbs alike: what belongs to a side stands there. `both arms`, `both legs`.
    pub fn both(self, limbs: &str) -> Self {
        const OF_A_SIDE: [&str; 8] =
            ["marks", "observed", "arterial", "readings", "garments", "infections", "cleared", "lengths"];
        let own: Vec<String> = OF_A_SIDE
            .iter()
            .filter(|key| !self.value(key).is_empty())
            .map(|key| format!("{key}: {}", self.value(key)))
            .collect();
        // Groups that are answered for each side, and those of the client.
        let mut sided = vec!["skin", "feeling", "cause", "operations", "circulation"];
        if limbs.ends_with("arms") {
            sided.push("devices");
        }
        let side = format!("{{{}, screening: {{absent: [{}]}}}}", own.join(", "), sided.join(", "));
        let both = OF_A_SIDE.iter().fold(self, |scene, key| scene.without(key)).without("other_limb");
        both.set("limb", limbs)
            .set("affected", "both")
            .set("screening", &asked("today, heart-kidneys, daily-life"))
            .set("left", &side)
            .set("right", &side)
    }

    fn of(keys: &[(&str, &str)]) -> Self {
        let first = [("client", "K-1"), ("measured_on", TODAY), ("units", "{length: cm, pressure: mmHg}")];
        let all = first.iter().chain(keys).chain(&[("allergies", "none")]);
        Self {
            keys: all.map(|(key, value)| ((*key).to_owned(), (*value).to_owned())).collect(),
            charts: Vec::new(),
            garments: Vec::new(),
            earlier: Vec::new(),
            rules: None,
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

    /// The value of a key.
    pub fn value(&self, key: &str) -> &str {
        self.keys.iter().find(|(name, _)| name == key).map_or("", |(_, value)| value)
    }

    /// With a text within a key's value replaced.
    #[track_caller]
    pub fn change(self, key: &str, from: &str, to: &str) -> Self {
        let value = self.value(key).to_owned();
        assert!(value.contains(from), "`{key}: {value}` holds no `{from}`");
        self.set(key, &value.replace(from, to))
    }

    /// With something seen: `seen("folds", "yes")`.
    #[track_caller]
    pub fn seen(self, key: &str, answer: &str) -> Self {
        let value = self.value("observed").to_owned();
        let (before, rest) =
            value.split_once(&format!("{key}: ")).unwrap_or_else(|| panic!("{key}: {value}"));
        let end = rest.find([',', '}']).unwrap();
        self.set("observed", &format!("{before}{key}: {answer}{}", &rest[end..]))
    }

    /// With screening items present, beside the groups answered no.
    pub fn present(self, items: &str) -> Self {
        let value = self.value("screening").trim_end_matches('}').to_owned();
        self.set("screening", &format!("{value}, present: [{items}]}}"))
    }

    /// With screening items answered unknown.
    pub fn unknown(self, items: &str) -> Self {
        let value = self.value("screening").trim_end_matches('}').to_owned();
        self.set("screening", &format!("{value}, unknown: [{items}]}}"))
    }

    /// With something cleared.
    pub fn cleared(self, item: &str, role: &str) -> Self {
        self.set(
            "cleared",
            &format!("[{{item: {item}, role: {role}, reason: assessed, cleared_on: {TODAY}}}]"),
        )
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
        let name = format!("chart-{}.yaml", self.charts.len() + 1);
        self.charts.push((name, text.to_owned()));
        self
    }

    /// With this chart alone.
    pub fn only_chart(mut self, text: &str) -> Self {
        self.charts.clear();
        self.chart(text)
    }

    /// With a text within the one chart replaced.
    #[track_caller]
    pub fn chart_with(mut self, from: &str, to: &str) -> Self {
        let (_, text) = self.charts.last_mut().unwrap();
        assert!(text.contains(from), "the chart holds no `{from}`:\n{text}");
        *text = text.replace(from, to);
        self
    }

    /// Without charts.
    pub fn no_chart(mut self) -> Self {
        self.charts.clear();
        self
    }

    /// With a garment file.
    pub fn garment(mut self, text: &str) -> Self {
        self.garments.push(text.to_owned());
        self
    }

    /// With an earlier record.
    pub fn earlier(mut self, other: &Self) -> Self {
        self.earlier.push(other.record());
        self
    }

    /// By a shipped set of rules.
    pub fn shipped(mut self, id: &str) -> Self {
        self.rules = Some(RulesOf::Shipped(id.to_owned()));
        self
    }

    /// By a rules file of one's own, over the default set.
    pub fn rules(mut self, keys: &str) -> Self {
        let head = "tapeline: rules/1\nid: own\nlabel: own\nsource: own\nextends: default\n";
        self.rules = Some(RulesOf::Own(format!("{head}{keys}\n")));
        self
    }

    /// The record as a file.
    pub fn record(&self) -> String {
        let keys: Vec<String> = self.keys.iter().map(|(key, value)| format!("{key}: {value}\n")).collect();
        format!("tapeline: record/1\n{}", keys.concat())
    }

    /// Every file of the run: name and text. Files that they name are looked for in `garment-tables/charts`.
    pub fn files(&self) -> Vec<(String, String)> {
        let mut files = vec![("record.yaml".to_owned(), self.record())];
        files.extend(self.charts.iter().cloned());
        let numbered = |kind: &str, all: &[String]| -> Vec<(String, String)> {
            let name = |at: usize| format!("{kind}-{}.yaml", at + 1);
            all.iter().enumerate().map(|(at, text)| (name(at), text.clone())).collect()
        };
        files.extend(numbered("garment", &self.garments));
        files.extend(numbered("earlier", &self.earlier));
        files
    }

    /// Under what the check is made.
    pub fn setting(&self) -> Setting {
        let rules = match &self.rules {
            None => Ok(DEFAULT.clone()),
            Some(RulesOf::Shipped(id)) => read_shipped_rules(id),
            Some(RulesOf::Own(text)) => read_rules(Some(Source::of_text("own.yaml", text.clone()))),
        };
        let rules = rules.unwrap_or_else(|problems| panic!("{problems:#?}"));
        Setting { today: TODAY.parse().unwrap(), rules, schemes: Schemes::default() }
    }

    /// The check, or what is wrong with the input.
    pub fn try_check(&self) -> Result<Checked, Vec<Problem>> {
        let folder = root().join("garment-tables/charts");
        let sources = self
            .files()
            .into_iter()
            .map(|(name, text)| Source::of_text(folder.join(name).display().to_string(), text));
        let setting = self.setting();
        let opened = open_files(sources.collect(), &setting)?;
        Ok(Checked(assess(&opened, &setting).unwrap()))
    }

    /// The check.
    #[track_caller]
    pub fn check(&self) -> Checked {
        match self.try_check() {
            Ok(checked) => checked,
            Err(problems) => panic!("no report: {}\n{}", texts(&problems).join("\n"), self.record()),
        }
    }

    /// What is wrong with the input.
    #[track_caller]
    pub fn problems(&self) -> Vec<String> {
        match self.try_check() {
            Ok(checked) => panic!("a report where a problem was wanted: {:?}", checked.ids()),
            Err(problems) => texts(&problems),
        }
    }
}

fn asked(groups: &str) -> String {
    format!("{{asked_on: {TODAY}, by: R2, absent: [{groups}]}}")
}

fn texts(problems: &[Problem]) -> Vec<String> {
    problems.iter().map(ToString::to_string).collect()
}

/// `wrist@0=17 @4=18 forearm@14=25.6/25.8` as a list of YAML.
pub fn marks_yaml(marks: &str) -> String {
    let marks: Vec<String> = marks
        .split_whitespace()
        .map(|mark| {
            let (place, girth) = mark.split_once('=').unwrap();
            let (landmark, at) = place.split_once('@').unwrap();
            let landmark =
                if landmark.is_empty() { String::new() } else { format!("landmark: {landmark}, ") };
            let girth = if girth.contains('/') {
                format!("[{}]", girth.replace('/', ", "))
            } else {
                girth.to_owned()
            };
            format!("{{{landmark}at: {at}, girth: {girth}}}")
        })
        .collect();
    format!("[{}]", marks.join(", "))
}

/// A check, with questions to it.
pub struct Checked(pub Assessment);

impl Checked {
    /// The outcome's word; `none` where there is none.
    pub fn outcome(&self) -> &'static str {
        self.0.decision.outcome.map_or("none", |outcome| outcome.word())
    }

    /// Every finding of an id.
    pub fn of<'a>(&'a self, id: &'a str) -> impl Iterator<Item = &'a Finding> {
        self.0.findings.iter().filter(move |one| one.id.text() == id)
    }

    /// Severities of every finding of an id.
    pub fn severities(&self, id: &str) -> Vec<&'static str> {
        self.of(id).map(|one| one.severity.word()).collect()
    }

    /// Ids and severities of every finding.
    pub fn ids(&self) -> Vec<String> {
        self.0.findings.iter().map(|one| format!("{} {}", one.id.text(), one.severity.word())).collect()
    }

    /// Ids of the findings above `note`.
    pub fn above_note(&self) -> Vec<String> {
        let above = self.0.findings.iter().filter(|one| one.severity != Severity::Note);
        above.map(|one| format!("{} {}", one.id.text(), one.severity.word())).collect()
    }
}

#[test]
fn the_base_scenes_have_no_finding() {
    for scene in [
        Scene::arm(),
        Scene::leg(),
        Scene::arm().chart(HAND_PIECE).girths("hand@-7=19 wrist@0=17 forearm@14=26 upper-arm@33=31"),
    ] {
        let checked = scene.check();
        assert!(checked.above_note().is_empty(), "{:#?}", checked.0.findings);
        assert_eq!(checked.outcome(), "trial-fitting", "{:?}", checked.0.decision);
    }
    for scene in [Scene::arm().both("both arms"), Scene::leg().both("both legs")] {
        let checked = scene.check();
        assert!(checked.above_note().is_empty(), "{:#?}", checked.0.findings);
        assert_eq!(checked.outcome(), "trial-fitting", "{:?}", checked.0.decision);
        assert_eq!(checked.0.limbs.len(), 2);
    }
    assert_eq!(Scene::arm().no_chart().check().outcome(), "none");
}
