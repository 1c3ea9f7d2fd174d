//! Owns how a count, a list and a first letter are said.

/// `1 question`, `3 questions`.
pub fn counted(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

/// `one` to `twelve`, then figures.
pub fn number_word(count: usize) -> String {
    const WORDS: [&str; 13] = [
        "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
        "twelve",
    ];
    WORDS.get(count).map_or_else(|| count.to_string(), |word| (*word).to_owned())
}

/// `2 of 5`.
pub fn ordinal_of(number: usize, all: usize) -> String {
    format!("{number} of {all}")
}

/// `a, b and c`.
pub fn list<T: AsRef<str>>(items: &[T]) -> String {
    joined(items, "and")
}

/// `a, b or c`.
pub fn list_or<T: AsRef<str>>(items: &[T]) -> String {
    joined(items, "or")
}

fn joined<T: AsRef<str>>(items: &[T], word: &str) -> String {
    match items.split_last() {
        None => String::new(),
        Some((last, [])) => last.as_ref().to_owned(),
        Some((last, rest)) => {
            let rest: Vec<&str> = rest.iter().map(AsRef::as_ref).collect();
            format!("{} {word} {}", rest.join(", "), last.as_ref())
        }
    }
}

/// The text with its first letter in capitals.
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// The text with its first letter small.
pub fn lower_first(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}
