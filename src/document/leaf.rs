//! Owns a leaf: pages for one reader, with the head that stands on each of them.

use super::Block;

/// A leaf; it starts a page.
#[derive(Clone, Debug, PartialEq)]
pub struct Leaf {
    /// For whom.
    pub reader: Reader,
    /// The head of each of its pages.
    pub head: Head,
    /// Its title.
    pub title: String,
    /// What stands on it.
    pub blocks: Vec<Block>,
    /// The language of its words, `en-GB`.
    pub language: String,
    /// The words of its page numbers, such as `page {page} of {pages}`.
    pub numbered: String,
    /// Whether it starts on an odd page and numbers its pages by itself.
    pub apart: bool,
}

/// The head of every page of a leaf.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Head {
    /// Client and limb, then what the sheet is for: the words nobody may miss.
    pub bold: String,
    /// The dates.
    pub plain: String,
}

/// For whom a leaf is; the client's is set in larger letters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reader {
    /// The fitter and the file.
    Fitter,
    /// The client.
    Client,
}

impl Leaf {
    /// The words of a page's number.
    pub fn number(&self, page: usize, pages: usize) -> String {
        self.numbered.replace("{page}", &page.to_string()).replace("{pages}", &pages.to_string())
    }
}
