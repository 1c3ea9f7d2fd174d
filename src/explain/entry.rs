//! Owns one entry of the catalogue.

/// What an entry is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// What a report comes to.
    Outcome,
    /// How much a finding weighs.
    Severity,
    /// How sure a rise of pressure is.
    Grade,
    /// Something that is found.
    Finding,
    /// A screening question.
    Question,
    /// A question about the limb itself.
    Observed,
    /// An arterial value.
    Arterial,
    /// A pressure scheme.
    Scheme,
    /// A number of the rules.
    Number,
    /// A set that grades an excess.
    SeveritySet,
}

impl Kind {
    /// Every kind, in the order of the catalogue.
    pub const ALL: [Self; 10] = [
        Self::Outcome,
        Self::Severity,
        Self::Grade,
        Self::Finding,
        Self::Question,
        Self::Observed,
        Self::Arterial,
        Self::Scheme,
        Self::Number,
        Self::SeveritySet,
    ];

    /// Its word for one.
    pub fn word(self) -> &'static str {
        match self {
            Self::Outcome => "outcome",
            Self::Severity => "severity",
            Self::Grade => "grade of a rise",
            Self::Finding => "finding",
            Self::Question => "screening question",
            Self::Observed => "question about the limb",
            Self::Arterial => "arterial value",
            Self::Scheme => "pressure scheme",
            Self::Number => "number",
            Self::SeveritySet => "set of severities",
        }
    }

    /// Its heading for many.
    pub fn heading(self) -> &'static str {
        match self {
            Self::Outcome => "Outcomes",
            Self::Severity => "Severities",
            Self::Grade => "Grades of a rise of pressure",
            Self::Finding => "Findings",
            Self::Question => "Screening questions",
            Self::Observed => "Questions about the limb",
            Self::Arterial => "Arterial values",
            Self::Scheme => "Pressure schemes",
            Self::Number => "Numbers",
            Self::SeveritySet => "Sets of severities",
        }
    }
}

/// One entry; no text is empty except `next`, where there is nothing to do.
#[derive(Clone, Debug)]
pub struct Entry {
    /// The id, as the report prints it.
    pub id: String,
    /// What it is about.
    pub kind: Kind,
    /// What it means.
    pub meaning: String,
    /// The rule, with its numbers; one line each.
    pub rule: Vec<String>,
    /// What it weighs.
    pub severity: String,
    /// What the rule rests on.
    pub basis: String,
    /// Where it was read.
    pub source: String,
    /// What to do next.
    pub next: String,
}
