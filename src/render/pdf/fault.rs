//! Owns why a sheet is not written as PDF.

use std::fmt;

use super::characters::is_combining;

/// Why there is no PDF.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PdfFault {
    /// Characters that the font cannot set, each with the text it stands in.
    Characters(Vec<(char, String)>),
    /// The writer refused, with its reasons.
    Writer(Vec<String>),
}

impl fmt::Display for PdfFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Characters(all) => {
                for (place, (letter, text)) in all.iter().enumerate() {
                    if place > 0 {
                        out.write_str("; ")?;
                    }
                    let code = u32::from(*letter);
                    if letter.is_control() || is_combining(*letter) {
                        write!(out, "character U+{code:04X} in `{}`", text.escape_debug())?;
                    } else {
                        write!(out, "character `{letter}` (U+{code:04X}) in `{text}`")?;
                    }
                    if is_combining(*letter) {
                        out.write_str(" is a mark of its own; write letter and mark as one character")?;
                    } else {
                        out.write_str(" cannot be set in the sheet's font")?;
                    }
                }
                out.write_str("; the .html and .txt sheets keep it")
            }
            Self::Writer(reasons) => write!(out, "the writer refused: {}", reasons.join("; ")),
        }
    }
}

impl std::error::Error for PdfFault {}
