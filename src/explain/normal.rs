//! Owns when two spellings of a word are one.

/// The word in small letters, its parts joined by one hyphen: `Residual Pressure`, `residual_pressure`
/// and `residual-pressure` are one word.
pub(super) fn normal(word: &str) -> String {
    let low = word.trim().trim_end_matches(['.', '?', ',', ':']).to_lowercase().replace('\u{2019}', "'");
    let parts = low.split([' ', '_', '-', '\u{a0}']).filter(|part| !part.is_empty());
    parts.collect::<Vec<_>>().join("-")
}

/// The word without the ending of a plural, if it has one.
pub(super) fn singular(word: &str) -> Option<String> {
    if let Some(stem) = word.strip_suffix("ies") {
        return Some(format!("{stem}y"));
    }
    word.strip_suffix('s').filter(|stem| stem.len() > 2 && !stem.ends_with('s')).map(str::to_owned)
}
