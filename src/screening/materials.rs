//! Owns allergies against the materials of a garment.

use crate::input::{Named, Text};
use crate::record::Allergies;
use crate::rules::{AllergyKind, Material, Rules};

/// What stands under `allergies`, by the table of materials.
#[derive(Clone, Debug, Default)]
pub struct AllergyWords {
    /// Words of materials, each with the table's word.
    pub materials: Vec<(Named, String)>,
    /// Words that are not in the table: cleared first, by the fitter.
    pub unknown: Vec<Named>,
    /// Drugs, foods, pollen: a note.
    pub other_things: Vec<Named>,
    /// Whether the question is still open.
    pub is_open: bool,
}

/// What an allergy means for one garment.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MaterialVerdict {
    /// Nothing speaks against it.
    Clear,
    /// A material of the garment: the allergy and the material as written.
    Match {
        /// The allergy.
        allergy: String,
        /// The material.
        material: String,
    },
    /// The garment does not tell what it is made of, wholly or in one word.
    Unknown {
        /// The word that the table does not know; none where no list is given.
        word: Option<String>,
    },
}

/// Sorts the words under `allergies`.
pub fn allergy_words(allergies: &Allergies, rules: &Rules) -> AllergyWords {
    let mut words = AllergyWords::default();
    let named = match allergies {
        Allergies::NotAsked => {
            words.is_open = true;
            return words;
        }
        Allergies::None => return words,
        Allergies::Some(named) => named,
    };
    for one in named {
        let found = find(&one.text, rules);
        if found.is_empty() {
            words.unknown.push(one.clone());
        }
        for material in found {
            match material.kind {
                AllergyKind::Material => words.materials.push((one.clone(), material.word.clone())),
                AllergyKind::OtherThing => words.other_things.push(one.clone()),
                AllergyKind::Open => words.is_open = true,
                // Beside another word it says nothing; alone the record's reader has refused it.
                AllergyKind::Nothing if named.len() > 1 => words.unknown.push(one.clone()),
                AllergyKind::Nothing => {}
            }
        }
    }
    words
}

/// What the stated allergies mean for a garment of `materials`; none or an empty list is unknown.
pub fn against_materials(words: &AllergyWords, materials: Option<&[Text]>, rules: &Rules) -> MaterialVerdict {
    if words.materials.is_empty() && words.unknown.is_empty() {
        return MaterialVerdict::Clear;
    }
    let Some(materials) = materials.filter(|list| !list.is_empty()) else {
        return MaterialVerdict::Unknown { word: None };
    };
    let mut unknown = None;
    for material in materials {
        let found: Vec<&Material> =
            find(material, rules).into_iter().filter(|one| one.kind == AllergyKind::Material).collect();
        if found.is_empty() && unknown.is_none() {
            unknown = Some(material.as_str().to_owned());
        }
        for (allergy, word) in &words.materials {
            let covers = rules.materials.iter().find(|one| one.word == *word).map(|one| &one.covers);
            let hit =
                |one: &&Material| one.word == *word || covers.is_some_and(|all| all.contains(&one.word));
            if found.iter().any(hit) {
                return MaterialVerdict::Match {
                    allergy: allergy.text.clone(),
                    material: material.as_str().to_owned(),
                };
            }
        }
        // A word that neither table nor allergy knows may still be the same word.
        let same = words.unknown.iter().find(|one| plain(&one.text) == plain(material));
        if let Some(one) = same {
            return MaterialVerdict::Match {
                allergy: one.text.clone(),
                material: material.as_str().to_owned(),
            };
        }
    }
    match unknown {
        Some(word) => MaterialVerdict::Unknown { word: Some(word) },
        None => MaterialVerdict::Clear,
    }
}

/// Words that turn what follows or goes before into its opposite.
const TURNS: [&str; 5] = ["free", "no", "without", "none", "not"];

/// The materials that a text names: as a whole, else by the words in it.
fn find<'r>(text: &str, rules: &'r Rules) -> Vec<&'r Material> {
    let whole = text.trim().to_lowercase();
    let exact: Vec<&Material> = rules.materials.iter().filter(|one| one.is_called(&whole)).collect();
    if !exact.is_empty() {
        return exact;
    }
    let words = plain(text);
    let exact: Vec<&Material> = rules
        .materials
        .iter()
        .filter(|one| names(one).any(|name| plain(name) == words && !words.is_empty()))
        .collect();
    if !exact.is_empty() || words.iter().any(|word| TURNS.contains(&word.as_str())) {
        return exact;
    }
    let within = |name: &str| {
        let name = plain(name);
        !name.is_empty() && words.windows(name.len()).any(|part| part == name.as_slice())
    };
    rules
        .materials
        .iter()
        .filter(|one| one.kind == AllergyKind::Material)
        .filter(|one| names(one).any(within))
        .collect()
}

fn names(material: &Material) -> impl Iterator<Item = &str> {
    std::iter::once(material.word.as_str()).chain(material.synonyms.iter().map(String::as_str))
}

/// The words of a text in small letters, without signs and figures.
fn plain(text: &str) -> Vec<String> {
    text.to_lowercase()
        .split(|c: char| !c.is_alphabetic())
        .filter(|word| !word.is_empty())
        .map(str::to_owned)
        .collect()
}
