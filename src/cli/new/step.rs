//! Owns one question of a guided entry.

use tapeline::input::Draft;

/// How an answer is taken into the draft; a refusal says what would be accepted.
pub(super) type Take<'s> = Box<dyn Fn(&str, &mut Draft) -> Result<(), String> + 's>;

/// One question.
pub(super) struct Step<'s> {
    /// Its name, by which it is passed over: the path of its answer.
    pub(super) name: String,
    /// What is shown above the prompt, a line each.
    pub(super) above: Vec<String>,
    /// The prompt.
    pub(super) prompt: String,
    /// What is meant, for `?`.
    pub(super) help: String,
    /// The answer that an empty line gives.
    pub(super) offered: Option<String>,
    /// Whether it may be passed over.
    pub(super) may_skip: bool,
    /// Whether it is answered already.
    pub(super) done: bool,
    /// Takes an answer.
    pub(super) take: Take<'s>,
}

impl<'s> Step<'s> {
    /// A question whose answer stands at `name`.
    pub(super) fn new(
        draft: &Draft,
        name: impl Into<String>,
        prompt: impl Into<String>,
        take: impl Fn(&str, &mut Draft) -> Result<(), String> + 's,
    ) -> Self {
        let name = name.into();
        let done = draft.has(&name);
        Self {
            done,
            name,
            above: Vec::new(),
            prompt: prompt.into(),
            help: String::new(),
            offered: None,
            may_skip: false,
            take: Box::new(take),
        }
    }

    /// A text as typed.
    pub(super) fn text(draft: &Draft, name: impl Into<String>, prompt: impl Into<String>) -> Self {
        let name = name.into();
        let path = name.clone();
        Self::new(draft, name, prompt, move |text, draft| {
            let text = super::answer::label(text)?;
            draft.set(&path, &text);
            Ok(())
        })
    }

    /// One of some words, typed whole, by its first letters or by its number.
    pub(super) fn word(draft: &Draft, name: impl Into<String>, prompt: &str, words: &'s [&'s str]) -> Self {
        let name = name.into();
        let path = name.clone();
        let prompt = format!("{prompt} ({}):", words.join(", "));
        Self::new(draft, name, prompt, move |text, draft| {
            draft.set(&path, super::answer::word(text, words)?);
            Ok(())
        })
    }

    /// The same with lines above it.
    pub(super) fn above(mut self, lines: impl IntoIterator<Item = String>) -> Self {
        self.above.extend(lines);
        self
    }

    /// The same with an explanation.
    pub(super) fn help(mut self, help: impl Into<String>) -> Self {
        self.help = help.into();
        self
    }

    /// The same with what an empty line gives.
    pub(super) fn offer(mut self, text: impl Into<String>) -> Self {
        self.offered = Some(text.into());
        self
    }

    /// The same; it may be passed over.
    pub(super) fn or_skip(mut self) -> Self {
        self.may_skip = true;
        self
    }

    /// The same; whether it is answered is told.
    pub(super) fn done_if(mut self, done: bool) -> Self {
        self.done = done;
        self
    }
}
