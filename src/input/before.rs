//! Owns what is looked for before the parser sees a text. Does not parse.

use super::{Place, Problem, Source};

/// Deepest nesting of brackets (house rule; our files nest four deep). Far deeper ones keep the parser
/// busy for minutes before it gives up.
const MOST_BRACKETS: usize = 100;

/// What is looked for before the parser sees the text: characters that no text file holds, whose place
/// the parser does not tell, and brackets without end.
pub(super) fn before_parsing(source: &Source) -> Result<(), Problem> {
    let mut brackets = 0_usize;
    for (number, line) in source.text.split('\n').enumerate() {
        for (column, c) in line.chars().enumerate() {
            let refuse = |what: String| {
                let place = Place { line: number + 1, column: column + 1, text: line.trim_end().to_owned() };
                Err(Problem::at(&source.name, Some(place), what))
            };
            match c {
                '[' | '{' => brackets += 1,
                ']' | '}' => brackets = brackets.saturating_sub(1),
                '\t' | '\r' => {}
                c if c.is_control() && c != '\u{85}' => {
                    let code = u32::from(c);
                    return refuse(format!(
                        "a control character (U+{code:04X}), which no text holds; save the file as plain text"
                    ));
                }
                _ => {}
            }
            if brackets > MOST_BRACKETS {
                return refuse(DEEP.to_owned());
            }
        }
    }
    Ok(())
}

/// What is said of a document without end.
pub(super) const DEEP: &str = "is nested too deeply or repeats itself; this is no file of ours";
