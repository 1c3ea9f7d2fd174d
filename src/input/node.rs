//! Owns the tree of one YAML document: texts as written, keys in order, duplicates kept.

/// A place in a document: the number of a node in reading order, from 0. Lines are worked out
/// from it only when a problem has to be printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Spot(pub u32);

/// One node.
#[derive(Clone, Debug)]
pub struct Node {
    /// Where it stands.
    pub spot: Spot,
    /// What it is.
    pub kind: Kind,
}

/// What a node is.
#[derive(Clone, Debug)]
pub enum Kind {
    /// A text, number or word, as written.
    Text(String),
    /// A number or truth value whose text is still to be read again as written.
    Bare,
    /// Nothing behind the key.
    Empty,
    /// A list.
    List(Vec<Node>),
    /// A map, in the order of the file, duplicates kept.
    Map(Vec<Entry>),
}

/// One key of a map with its value.
#[derive(Clone, Debug)]
pub struct Entry {
    /// The key.
    pub key: Node,
    /// The value.
    pub value: Node,
}

impl Entry {
    /// The key as written; empty for a key that is no text.
    pub fn name(&self) -> &str {
        match &self.key.kind {
            Kind::Text(name) => name,
            _ => "",
        }
    }
}

impl Node {
    /// What it is, in a word.
    pub fn word(&self) -> &'static str {
        match self.kind {
            Kind::Text(_) | Kind::Bare => "a single value",
            Kind::Empty => "nothing",
            Kind::List(_) => "a list",
            Kind::Map(_) => "a block of keys",
        }
    }
}
