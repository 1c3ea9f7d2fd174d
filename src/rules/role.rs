//! Owns the closed list of people who may clear something.

/// Who may clear a finding; a specialty includes its nurses.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Role {
    /// Any doctor or advanced practitioner.
    Physician,
    /// The team for blood vessels.
    Vascular,
    /// The heart team.
    Cardiology,
    /// The kidney team.
    Renal,
    /// The cancer team.
    Oncology,
    /// The surgeon.
    Surgery,
    /// Diabetic foot, leg ulcer, tissue viability.
    Podiatry,
    /// The palliative team.
    Palliative,
    /// A lymphoedema therapist.
    Therapist,
    /// A certified fitter.
    Fitter,
    /// Whoever wrote the prescription.
    Prescriber,
}

impl Role {
    /// The words that files and reports use.
    pub const WORDS: [(&'static str, Self); 11] = [
        ("physician", Self::Physician),
        ("vascular", Self::Vascular),
        ("cardiology", Self::Cardiology),
        ("renal", Self::Renal),
        ("oncology", Self::Oncology),
        ("surgery", Self::Surgery),
        ("podiatry", Self::Podiatry),
        ("palliative", Self::Palliative),
        ("therapist", Self::Therapist),
        ("fitter", Self::Fitter),
        ("prescriber", Self::Prescriber),
    ];

    /// The word for it.
    pub fn word(self) -> &'static str {
        Self::WORDS.iter().find(|(_, role)| *role == self).map_or("", |(word, _)| word)
    }
}
