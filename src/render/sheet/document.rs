//! Owns the sheet as a whole: its head, its leaves.

use super::Block;

/// A sheet: what every form of it draws.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// What stands at the head of every page; its bold words are the document's title.
    pub head: Head,
    /// The leaves; each starts a page.
    pub leaves: Vec<Leaf>,
    /// The day it was made, `2026-03-14`.
    pub made_on: String,
    /// The program and its version.
    pub made_by: String,
}

/// The head of every page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Head {
    /// Client and limb, then what the sheet is for: the words nobody may miss.
    pub bold: String,
    /// The dates.
    pub plain: String,
}

/// A leaf.
#[derive(Clone, Debug, PartialEq)]
pub struct Leaf {
    /// For whom.
    pub reader: Reader,
    /// Its title.
    pub title: String,
    /// What stands on it.
    pub blocks: Vec<Block>,
}

/// For whom a leaf is; the client's is set in larger letters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reader {
    /// The fitter and the file.
    Fitter,
    /// The client.
    Client,
}
