//! Owns who may clear what, and under which condition.

use super::Role;

/// A condition on a role that may clear.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ClearWhen {
    /// Whatever else holds.
    Always,
    /// Only by a written protocol that is named.
    ByProtocol,
    /// Only after an arterial decision that passes (an arm needs none).
    AfterArterialPass,
    /// Only where light touch is felt: `feeling-reduced` and, on a leg, `feeling-lost-diabetes` answered
    /// absent.
    LightTouchFelt,
}

impl ClearWhen {
    /// The words that stand behind the role in a rules file.
    pub const WORDS: [(&'static str, Self); 4] = [
        ("", Self::Always),
        ("by protocol", Self::ByProtocol),
        ("after a passing arterial decision", Self::AfterArterialPass),
        ("where light touch is felt", Self::LightTouchFelt),
    ];

    /// The words for it; nothing for [`Self::Always`].
    pub fn words(self) -> &'static str {
        Self::WORDS.iter().find(|(_, when)| *when == self).map_or("", |(words, _)| words)
    }
}

/// One role that may clear something.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct ClearRule {
    /// Who.
    pub role: Role,
    /// When.
    pub when: ClearWhen,
}

impl ClearRule {
    /// Reads `therapist`, `therapist by protocol`.
    pub fn parse(text: &str) -> Option<Self> {
        let (role, when) = text.trim().split_once(' ').unwrap_or((text.trim(), ""));
        let role = Role::WORDS.iter().find(|(word, _)| *word == role)?.1;
        let when = ClearWhen::WORDS.iter().find(|(words, _)| *words == when.trim())?.1;
        Some(Self { role, when })
    }

    /// `therapist by protocol`.
    pub fn spoken(self) -> String {
        let words = self.when.words();
        if words.is_empty() { self.role.word().to_owned() } else { format!("{} {words}", self.role.word()) }
    }
}

/// Who may clear a finding that is no screening item.
#[derive(Clone, Debug)]
pub struct FindingRule {
    /// The finding's id.
    pub finding: String,
    /// Who may clear it; nobody where empty.
    pub cleared_by: Vec<ClearRule>,
}
