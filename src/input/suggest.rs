//! Owns "did you mean": the nearest word of a closed list.

/// The word of `words` nearest to `text`, if it is near enough to be a slip of the fingers: at most
/// a third of its letters off (house rule), never more than three.
pub fn nearest_word<'w>(text: &str, words: impl IntoIterator<Item = &'w str>) -> Option<&'w str> {
    let low = text.to_lowercase();
    words
        .into_iter()
        .map(|word| (strsim::damerau_levenshtein(&low, &word.to_lowercase()), word))
        .filter(|(distance, word)| *distance <= (word.chars().count() / 3).clamp(1, 3))
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, word)| word)
}
