//! Owns the two ends of a guided entry: what is shown (standard error) and what is typed (standard input,
//! a terminal or a pipe). Plain lines, so that a screen reader and a slow terminal follow.

use std::io::{BufRead as _, IsTerminal as _, Write as _};

use crate::cli::say;

/// What was typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Typed {
    /// A text.
    Text(String),
    /// Nothing: what is offered, or to be passed over.
    Nothing,
    /// To the question before.
    Back,
    /// To be passed over.
    Skip,
    /// An explanation is wanted.
    Help,
    /// Enough for now, or the input has ended.
    Stop,
}

/// The two ends of a guided entry.
pub(super) struct Ask {
    asked: usize,
    is_terminal: bool,
}

impl Ask {
    /// A new one.
    pub(super) fn new() -> Self {
        Self { asked: 0, is_terminal: std::io::stdin().is_terminal() }
    }

    /// Whether anything was asked.
    pub(super) fn has_asked(&self) -> bool {
        self.asked > 0
    }

    /// Shows a line.
    pub(super) fn show(line: &str) {
        say::line(line);
    }

    /// Asks for one line.
    pub(super) fn line(&mut self, prompt: &str) -> Typed {
        self.asked += 1;
        {
            let mut out = std::io::stderr().lock();
            let _ = out.write_all(format!("{prompt} ").as_bytes()).and_then(|()| out.flush());
        }
        let mut text = String::new();
        match std::io::stdin().lock().read_line(&mut text) {
            Ok(read) if read > 0 => {}
            _ => {
                Self::show("");
                return Typed::Stop;
            }
        }
        if !self.is_terminal {
            // Nobody has seen what was typed; the next question starts a line of its own.
            Self::show(text.trim());
        }
        match text.trim() {
            "" => Typed::Nothing,
            "<" | "back" => Typed::Back,
            "skip" => Typed::Skip,
            "?" | "help" => Typed::Help,
            "stop" | "quit" | "exit" => Typed::Stop,
            text => Typed::Text(text.to_owned()),
        }
    }
}
