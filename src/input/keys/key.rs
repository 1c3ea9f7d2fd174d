//! Owns what is said of one key: its name, its form, one correct line and what it means.

use super::{Block, Form};

/// Whether a key has to be there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Need {
    /// It has to be there.
    Required,
    /// It may be absent.
    Optional,
}

/// One key of a block.
#[derive(Clone, Copy, Debug)]
pub struct Key {
    /// Its name in the file.
    pub name: &'static str,
    /// Whether it has to be there.
    pub need: Need,
    /// What may stand behind it.
    pub form: Form,
    /// One correct line to copy, as `client: L-0417`.
    pub example: &'static str,
    /// What it is, in a few words without a full stop.
    pub about: &'static str,
    /// Words that people write for it, each answered with its name.
    pub also: &'static [&'static str],
    /// Whether it may stand without a value: a question that is not answered yet.
    pub may_be_blank: bool,
}

impl Key {
    /// A key that has to be there.
    pub const fn required(
        name: &'static str,
        form: Form,
        example: &'static str,
        about: &'static str,
    ) -> Self {
        Self { name, need: Need::Required, form, example, about, also: &[], may_be_blank: false }
    }

    /// A key that may be absent.
    pub const fn optional(
        name: &'static str,
        form: Form,
        example: &'static str,
        about: &'static str,
    ) -> Self {
        Self { name, need: Need::Optional, form, example, about, also: &[], may_be_blank: false }
    }

    /// The same key with other words that people write for it.
    #[must_use]
    pub const fn also(mut self, also: &'static [&'static str]) -> Self {
        self.also = also;
        self
    }

    /// The same key, which may stand without a value.
    #[must_use]
    pub const fn or_blank(mut self) -> Self {
        self.may_be_blank = true;
        self
    }

    /// The block behind it, or behind each item of its list.
    pub fn block(&self) -> Option<&'static Block> {
        self.form.block()
    }
}
