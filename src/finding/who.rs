//! Owns who acts next.

use crate::rules::Role;

/// Who acts next.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Who {
    /// Someone of a role.
    Role(Role),
    /// The client.
    Client,
    /// Whoever filled in the record.
    Recorder,
}

impl Who {
    /// The word for it in files and JSON.
    pub fn word(self) -> &'static str {
        match self {
            Self::Role(role) => role.word(),
            Self::Client => "client",
            Self::Recorder => "recorder",
        }
    }

    /// Said with its article.
    pub fn spoken(self) -> &'static str {
        match self {
            Self::Client => "the client",
            Self::Recorder => "you, who keep the record",
            Self::Role(role) => match role {
                Role::Physician => "a doctor",
                Role::Vascular => "the vascular team",
                Role::Cardiology => "the heart team",
                Role::Renal => "the kidney team",
                Role::Oncology => "the cancer team",
                Role::Surgery => "the surgeon",
                Role::Podiatry => "podiatry or the wound clinic",
                Role::Palliative => "the palliative team",
                Role::Therapist => "the therapist",
                Role::Fitter => "a certified fitter",
                Role::Prescriber => "the prescriber",
            },
        }
    }
}

/// `the surgeon or the therapist`.
pub fn spoken_list(who: &[Who]) -> String {
    let names: Vec<&str> = who.iter().map(|one| one.spoken()).collect();
    crate::words::list_or(&names)
}

/// Roles as those who act.
pub fn roles(list: &[Role]) -> Vec<Who> {
    list.iter().copied().map(Who::Role).collect()
}
