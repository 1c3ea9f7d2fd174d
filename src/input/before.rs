//! Owns what is looked for before the parser sees a text: characters that no text holds, nesting
//! without end, anchors, aliases and tags, each with its place. Does not parse.
//!
//! The parser forgets anchors and tags, and writes aliases out, so that a small file can become a
//! huge one; a walk over the characters finds them first, in one pass.

use super::{Place, Problem, Source};

/// Deepest nesting of brackets or of dashes on one line (house rule; our files nest four deep). Far
/// deeper ones keep the parser busy for minutes before it gives up.
const MOST_NESTED: usize = 100;

/// What is said of a document without end.
pub(super) const DEEP: &str = "is nested too deeply or repeats itself; this is no file of ours";

const ANCHOR: &str = "an anchor, as `&name`, stands here; take it out, or put the text in quotes";
const ALIAS: &str = "an alias, as `*name`, stands here; write the value out, or put the text in quotes";
const TAG: &str = "a tag, as `!name`, stands here; take it out and write the plain value";

/// Looks over a text once.
///
/// # Errors
/// The first [`Problem`], with its place.
pub(super) fn before_parsing(source: &Source) -> Result<(), Problem> {
    let mut walk = Walk::default();
    for (number, line) in source.text.split('\n').enumerate() {
        if let Err((column, what)) = walk.line(line) {
            let place = Place::of(number + 1, column + 1, line.trim_end());
            return Err(Problem::at(&source.name, Some(place), what));
        }
    }
    Ok(())
}

/// What is open at the end of a line.
#[derive(Default)]
struct Walk {
    brackets: usize,
    quote: Option<char>,
    /// Columns of the key that a block of literal text belongs to.
    literal: Option<usize>,
}

impl Walk {
    fn line(&mut self, line: &str) -> Result<(), (usize, String)> {
        let plain = line.strip_suffix('\r').unwrap_or(line);
        if let Some((column, c)) = plain.chars().enumerate().find(|(_, c)| no_text(*c) || is_odd_end(*c)) {
            let code = u32::from(c);
            let what = if is_odd_end(c) {
                format!(
                    "a line end of another kind (U+{code:04X}), which would shift every line below; save the file with plain line ends"
                )
            } else {
                format!(
                    "a control character (U+{code:04X}), which no text holds; save the file as plain text"
                )
            };
            return Err((column, what));
        }
        let indent = line.chars().take_while(|c| *c == ' ').count();
        if let Some(parent) = self.literal {
            if line.trim().is_empty() || indent > parent {
                return Ok(());
            }
            self.literal = None;
        }
        if self.quote.is_none() && self.brackets == 0 && line.starts_with('%') {
            return Ok(());
        }
        self.nodes(line)
    }

    fn nodes(&mut self, line: &str) -> Result<(), (usize, String)> {
        let mut chars = line.chars().enumerate().peekable();
        // Whether a value may start here, whether the last character closed a quote, and the column of
        // the key or item that this line's value belongs to.
        let (mut starts, mut closed, mut owner, mut dashes) = (true, false, None, 0_usize);
        let mut before = ' ';
        while let Some((column, c)) = chars.next() {
            let next = chars.peek().map_or(' ', |(_, next)| *next);
            if let Some(quote) = self.quote {
                if c == '\\' && quote == '"' || c == quote && next == quote && quote == '\'' {
                    chars.next();
                } else if c == quote {
                    self.quote = None;
                    closed = true;
                }
                before = c;
                continue;
            }
            let blank_next = next.is_whitespace();
            match c {
                '#' if before.is_whitespace() => return Ok(()),
                c if c.is_whitespace() => {}
                '-' if column == 0 && line.starts_with("---") => {
                    chars.next();
                    chars.next();
                }
                '-' | '?' if starts && blank_next && self.brackets == 0 => {
                    dashes += 1;
                    if dashes > MOST_NESTED {
                        return Err((column, DEEP.to_owned()));
                    }
                }
                '&' if starts && !blank_next => return Err((column, ANCHOR.to_owned())),
                '*' if starts && !blank_next => return Err((column, ALIAS.to_owned())),
                '!' if starts => return Err((column, TAG.to_owned())),
                '"' | '\'' if starts => {
                    owner = owner.or(Some(column));
                    self.quote = Some(c);
                    starts = false;
                }
                '|' | '>' if starts && self.brackets == 0 && ends_as_header(line, column) => {
                    self.literal = Some(owner.unwrap_or(0));
                    return Ok(());
                }
                '[' | '{' if starts || self.brackets > 0 => {
                    self.brackets += 1;
                    if self.brackets > MOST_NESTED {
                        return Err((column, DEEP.to_owned()));
                    }
                    starts = true;
                }
                ']' | '}' if self.brackets > 0 => {
                    self.brackets -= 1;
                    starts = false;
                }
                ',' if self.brackets > 0 => starts = true,
                ':' if blank_next || (closed && self.brackets > 0) => starts = true,
                _ => {
                    owner = owner.or(Some(column));
                    starts = false;
                }
            }
            closed = closed && c.is_whitespace();
            before = c;
        }
        Ok(())
    }
}

/// Line ends that the parser counts and editors do not: a lone return, U+0085, U+2028, U+2029 (YAML 1.1, 5.4).
fn is_odd_end(c: char) -> bool {
    matches!(c, '\r' | '\u{85}' | '\u{2028}' | '\u{2029}')
}

fn no_text(c: char) -> bool {
    c.is_control() && c != '\t'
}

/// Whether `|` or `>` at `column` opens a block of literal text: nothing but its marks and a remark follow.
fn ends_as_header(line: &str, column: usize) -> bool {
    let rest: String = line.chars().skip(column + 1).collect();
    let rest = rest.trim_start_matches(|c: char| c == '+' || c == '-' || c.is_ascii_digit()).trim();
    rest.is_empty() || rest.starts_with('#')
}
