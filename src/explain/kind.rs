//! Owns what a word may be about.

use serde::Deserialize;

/// What a word is about, in the order of the catalogue.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// What a report states.
    Outcome,
    /// How much a finding weighs.
    Severity,
    /// How soon somebody has to act.
    Urgency,
    /// How sure a rise of pressure is.
    Grade,
    /// What a judgement of the fall rests on.
    Ground,
    /// What is said of a measure, a size or a chart.
    Verdict,
    /// A measurement that would decide.
    Step,
    /// Whether a limb has settled.
    State,
    /// How a question stands.
    Answer,
    /// Who acts or clears.
    Role,
    /// What a value rests on.
    Basis,
    /// A landmark.
    Landmark,
    /// A word of the trade or ours.
    Term,
    /// A kind of file.
    File,
    /// A finding.
    Finding,
    /// A group of screening items.
    Group,
    /// A screening item.
    Item,
    /// A question about the limb itself.
    Observed,
    /// An arterial value.
    Arterial,
    /// A number of the rules.
    Number,
    /// A set of grades of an excess.
    GradeSet,
    /// A material that a skin may not bear.
    Material,
    /// A pressure scheme.
    Scheme,
    /// A class of a scheme.
    Class,
    /// A set of rules.
    RuleSet,
    /// A key of a file.
    Key,
    /// A key of a report in JSON.
    ReportKey,
}

impl Kind {
    /// Every kind, in the order of the catalogue.
    pub const ALL: [Self; 27] = [
        Self::Outcome,
        Self::Severity,
        Self::Urgency,
        Self::Grade,
        Self::Ground,
        Self::Verdict,
        Self::Step,
        Self::State,
        Self::Answer,
        Self::Role,
        Self::Basis,
        Self::Landmark,
        Self::Term,
        Self::File,
        Self::Finding,
        Self::Group,
        Self::Item,
        Self::Observed,
        Self::Arterial,
        Self::Number,
        Self::GradeSet,
        Self::Material,
        Self::Scheme,
        Self::Class,
        Self::RuleSet,
        Self::Key,
        Self::ReportKey,
    ];

    /// Its word for one.
    pub fn word(self) -> &'static str {
        self.words().0
    }

    /// Its heading for many.
    pub fn heading(self) -> &'static str {
        self.words().1
    }

    fn words(self) -> (&'static str, &'static str) {
        match self {
            Self::Outcome => ("outcome", "Outcomes"),
            Self::Severity => ("severity", "Severities"),
            Self::Urgency => ("urgency", "Urgencies"),
            Self::Grade => ("grade of a rise", "Grades of a rise of pressure"),
            Self::Ground => ("basis of the fall", "What a fall is judged by"),
            Self::Verdict => ("verdict", "Verdicts on measures, sizes and charts"),
            Self::Step => ("measurement that decides", "Measurements that decide"),
            Self::State => ("state of a limb", "States of a limb over its visits"),
            Self::Answer => ("answer", "How a question stands"),
            Self::Role => ("role", "Roles"),
            Self::Basis => ("basis", "What a value rests on"),
            Self::Landmark => ("landmark", "Landmarks"),
            Self::Term => ("term", "Terms"),
            Self::File => ("file", "Kinds of files"),
            Self::Finding => ("finding", "Findings"),
            Self::Group => ("group of screening items", "Groups of screening items"),
            Self::Item => ("screening item", "Screening items"),
            Self::Observed => ("question about the limb", "Questions about the limb"),
            Self::Arterial => ("arterial value", "Arterial values"),
            Self::Number => ("number", "Numbers"),
            Self::GradeSet => ("grades of an excess", "Grades of an excess"),
            Self::Material => ("material", "Materials"),
            Self::Scheme => ("pressure scheme", "Pressure schemes"),
            Self::Class => ("pressure class", "Pressure classes"),
            Self::RuleSet => ("set of rules", "Sets of rules"),
            Self::Key => ("key of a file", "Keys of files"),
            Self::ReportKey => ("key of a report", "Keys of reports in JSON"),
        }
    }
}
