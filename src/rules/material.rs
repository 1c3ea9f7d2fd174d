//! Owns the table of materials that a skin may not bear.

/// What a word under `allergies` stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AllergyKind {
    /// A material that touches the skin.
    Material,
    /// A drug, a food, a pollen: no garment is made of it.
    OtherThing,
    /// The question is still open: `not asked`.
    Open,
    /// There is none: `none`.
    Nothing,
}

impl AllergyKind {
    /// The words that files use.
    pub const WORDS: [(&'static str, Self); 4] = [
        ("material", Self::Material),
        ("other-thing", Self::OtherThing),
        ("open", Self::Open),
        ("nothing", Self::Nothing),
    ];
}

/// One material with the words for it.
#[derive(Clone, Debug)]
pub struct Material {
    /// The word that reports print.
    pub word: String,
    /// What it is.
    pub kind: AllergyKind,
    /// Other words for the same.
    pub synonyms: Vec<String>,
    /// Materials that an allergy to this one also takes out (not the reverse).
    pub covers: Vec<String>,
}

impl Material {
    /// Whether `word`, in small letters, is a word for it.
    pub fn is_called(&self, word: &str) -> bool {
        self.word == word || self.synonyms.iter().any(|one| one == word)
    }
}
