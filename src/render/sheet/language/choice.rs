//! Owns which languages there are.

/// A language of the client's pages.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Language {
    /// English.
    English,
    /// German, a draft.
    German,
}

impl Language {
    /// The words that choose one.
    pub const WORDS: [(&'static str, Self); 2] = [("en", Self::English), ("de", Self::German)];

    /// Its data, as the build made it of the file.
    pub(super) fn data(self) -> &'static str {
        match self {
            Self::English => include_str!(concat!(env!("OUT_DIR"), "/en.json")),
            Self::German => include_str!(concat!(env!("OUT_DIR"), "/de.json")),
        }
    }
}
