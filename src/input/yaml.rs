//! Owns the use of `serde_yaml`: a document becomes a tree of nodes, and a node's number becomes a
//! line and column. Knows no keys.
//!
//! `serde_yaml` tells a place only with an error. So the tree is built without places, and the places
//! of all problems are found by reading the document once more and raising at each wanted node.

use std::cell::{Cell, RefCell};
use std::fmt;

use serde::Deserialize as _;
use serde::de::{DeserializeSeed, Deserializer, EnumAccess, Error as _, MapAccess, SeqAccess, Visitor};

use super::before::{DEEP, before_parsing};
use super::lines::Lines;
use super::{Entry, Kind, Node, Place, Problem, Source, Spot};

/// Reads the one document of a source.
///
/// # Errors
/// One [`Problem`] with its place: a syntax fault, an empty file, or a second document.
pub(super) fn read(source: &Source) -> Result<Node, Problem> {
    before_parsing(source)?;
    let mut documents = serde_yaml::Deserializer::from_str(&source.text);
    let empty =
        || Problem::of_file(&source.name, "is empty; a file starts with its kind, as `tapeline: record/1`");
    let first = documents.next().ok_or_else(empty)?;
    let mut root =
        (Build { counter: &Cell::new(0) }).deserialize(first).map_err(|fault| syntax(source, &fault))?;
    if matches!(root.kind, Kind::Empty) {
        return Err(empty());
    }
    if let Some(second) = documents.next() {
        let what = "a second document starts here; keep one document in a file";
        let place = Mark.deserialize(second).err().and_then(|fault| place_of(source, &fault));
        return Err(Problem::at(&source.name, place, what));
    }
    if let Some(again) = serde_yaml::Deserializer::from_str(&source.text).next() {
        Fill { node: &mut root }.deserialize(again).map_err(|fault| syntax(source, &fault))?;
    }
    Ok(root)
}

/// Reads a table that was turned into JSON when the program was built: every scalar a text.
///
/// # Errors
/// One [`Problem`] of the whole table; a test keeps it from happening.
pub(super) fn read_shipped(source: &Source) -> Result<Node, Problem> {
    let mut from = serde_json::Deserializer::from_str(&source.text);
    (Build { counter: &Cell::new(0) })
        .deserialize(&mut from)
        .map_err(|fault| Problem::of_file(&source.name, format!("this build is broken: {fault}")))
}

/// The lines and columns of nodes, in one pass over the document; `spots` in rising order.
pub(super) fn locate(source: &Source, spots: &[Spot]) -> Vec<Option<Place>> {
    let mut found = vec![None; spots.len()];
    if spots.is_empty() || source.is_built() {
        return found;
    }
    let Some(document) = serde_yaml::Deserializer::from_str(&source.text).next() else { return found };
    let search = Search { counter: Cell::new(0), spots, marks: RefCell::default() };
    // The root has no list or map around it that could be asked twice.
    if search.wants_next() {
        let root = serde_yaml::Deserializer::from_str(&source.text).next();
        search.note(root.and_then(|root| Mark.deserialize(root).err()).map(|fault| fault.to_string()));
    }
    let _ = Walk(&search).deserialize(document);
    let lines = Lines::of(&source.text);
    for (slot, mark) in found.iter_mut().zip(search.marks.into_inner()) {
        *slot = mark.map(|(line, column)| Place::of(line, column, lines.line(line)));
    }
    found
}

fn place_of(source: &Source, fault: &serde_yaml::Error) -> Option<Place> {
    let location = fault.location()?;
    Some(Place::of(location.line(), location.column(), source.line(location.line())))
}

/// Where the construct began that a fault was found in, `… while parsing a flow mapping at line 10 column 5`.
fn began_at(source: &Source, message: &str) -> Option<Place> {
    let (_, context) = message.split_once(", while ")?;
    let (line, column) = line_and_column(context)?;
    Some(Place::of(line, column, source.line(line)))
}

/// The numbers of `… at line 10 column 5`.
fn line_and_column(message: &str) -> Option<(usize, usize)> {
    let (line, column) = message.rsplit_once(" at line ")?.1.split_once(" column ")?;
    Some((line.parse().ok()?, column.parse().ok()?))
}

fn syntax(source: &Source, fault: &serde_yaml::Error) -> Problem {
    let mut place = place_of(source, fault);
    let whole = fault.to_string();
    let message = whole.split(" at line ").next().unwrap_or_default();
    let found_in = |what: &str| whole.contains(&format!("while {what}"));
    let tab = place.as_ref().is_some_and(|place| {
        place.text.chars().take(place.column).any(|c| c == '\t')
            || place.text.trim_start_matches(' ').starts_with('\t')
    });
    let what = if tab {
        "a tab indents this line; indent with spaces".to_owned()
    } else if found_in("scanning a quoted scalar") {
        place = began_at(source, &whole).or(place);
        "the quotation mark that opens here is not closed".to_owned()
    } else if found_in("parsing a flow") && message.contains("did not find expected") {
        place = began_at(source, &whole).or(place);
        "the bracket that opens here is not closed where it should be; check its end, and its commas"
            .to_owned()
    } else if found_in("scanning a simple key") {
        place = began_at(source, &whole).or(place);
        "a line without key; write `key: value`, with a blank behind the `:`".to_owned()
    } else if message.contains("unknown anchor") {
        "a `*` that names nothing in this file; write the value out, or put the text in quotes".to_owned()
    } else if message.contains("invalid type: enum") {
        "a tag, as `!name`, stands here; take it out and write the plain value".to_owned()
    } else if message.contains("mapping values are not allowed") {
        "a `:` where none may stand; check the indent of this line and the one above, or put the text in quotes".to_owned()
    } else if message.contains("did not find expected") {
        "this does not go on as the lines above began; check indents, commas and closing brackets".to_owned()
    } else if message.contains("recursion limit") || message.contains("repetition limit") {
        DEEP.to_owned()
    } else {
        format!("is not YAML that can be read: {message}")
    };
    Problem::at(&source.name, place, what)
}

fn take(counter: &Cell<u32>) -> u32 {
    let number = counter.get();
    counter.set(number.saturating_add(1));
    number
}

/// First reading: the shape of the document.
#[derive(Clone, Copy)]
struct Build<'c> {
    counter: &'c Cell<u32>,
}

impl<'de> DeserializeSeed<'de> for Build<'_> {
    type Value = Node;

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<Node, D::Error> {
        let spot = Spot(take(self.counter));
        Ok(Node { spot, kind: from.deserialize_any(self)? })
    }
}

impl<'de> Visitor<'de> for Build<'_> {
    type Value = Kind;

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("a text, a number, a list or a block of keys, without tags")
    }

    fn visit_bool<E>(self, _: bool) -> Result<Kind, E> {
        Ok(Kind::Bare)
    }

    fn visit_i64<E>(self, _: i64) -> Result<Kind, E> {
        Ok(Kind::Bare)
    }

    fn visit_u64<E>(self, _: u64) -> Result<Kind, E> {
        Ok(Kind::Bare)
    }

    fn visit_i128<E>(self, _: i128) -> Result<Kind, E> {
        Ok(Kind::Bare)
    }

    fn visit_u128<E>(self, _: u128) -> Result<Kind, E> {
        Ok(Kind::Bare)
    }

    fn visit_f64<E>(self, _: f64) -> Result<Kind, E> {
        Ok(Kind::Bare)
    }

    fn visit_str<E>(self, text: &str) -> Result<Kind, E> {
        Ok(Kind::Text(text.to_owned()))
    }

    fn visit_unit<E>(self) -> Result<Kind, E> {
        Ok(Kind::Empty)
    }

    fn visit_none<E>(self) -> Result<Kind, E> {
        Ok(Kind::Empty)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Kind, A::Error> {
        let mut nodes = Vec::new();
        while let Some(node) = list.next_element_seed(self)? {
            nodes.push(node);
        }
        Ok(Kind::List(nodes))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Kind, A::Error> {
        let mut entries = Vec::new();
        while let Some(key) = map.next_key_seed(self)? {
            entries.push(Entry { key, value: map.next_value_seed(self)? });
        }
        Ok(Kind::Map(entries))
    }
}

/// Second reading: the texts of numbers as written (`1.10`, `007`).
struct Fill<'n> {
    node: &'n mut Node,
}

impl<'de> DeserializeSeed<'de> for Fill<'_> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<(), D::Error> {
        match self.node.kind {
            Kind::Bare => from.deserialize_str(self),
            Kind::Text(_) | Kind::Empty => serde::de::IgnoredAny::deserialize(from).map(|_| ()),
            Kind::List(_) | Kind::Map(_) => from.deserialize_any(self),
        }
    }
}

impl<'de> Visitor<'de> for Fill<'_> {
    type Value = ();

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("the same document again")
    }

    fn visit_str<E>(self, text: &str) -> Result<(), E> {
        self.node.kind = Kind::Text(text.to_owned());
        Ok(())
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<(), A::Error> {
        if let Kind::List(nodes) = &mut self.node.kind {
            for node in nodes {
                list.next_element_seed(Fill { node })?;
            }
        }
        while list.next_element::<serde::de::IgnoredAny>()?.is_some() {}
        Ok(())
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<(), A::Error> {
        if let Kind::Map(entries) = &mut self.node.kind {
            for entry in entries {
                map.next_key_seed(Fill { node: &mut entry.key })?;
                map.next_value_seed(Fill { node: &mut entry.value })?;
            }
        }
        while map.next_entry::<serde::de::IgnoredAny, serde::de::IgnoredAny>()?.is_some() {}
        Ok(())
    }
}

/// The search for the places of some nodes.
///
/// A list or map asks for its next node with [`Mark`] first, which looks without taking and raises
/// an error that carries the place; the error is kept, and the node is then asked for again.
struct Search<'s> {
    counter: Cell<u32>,
    spots: &'s [Spot],
    marks: RefCell<Vec<Option<(usize, usize)>>>,
}

impl Search<'_> {
    /// Whether the next node in reading order is looked for.
    fn wants_next(&self) -> bool {
        self.spots.get(self.marks.borrow().len()).is_some_and(|spot| spot.0 == self.counter.get())
    }

    /// Keeps the place of an error for the next node, and for each spot that names the same node.
    fn note(&self, message: Option<String>) {
        // The very first character has a place that its error does not print.
        let mark = message.map(|message| line_and_column(&message).unwrap_or((1, 1)));
        while self.wants_next() {
            self.marks.borrow_mut().push(mark);
        }
    }
}

/// Looks at the next node without taking it, and raises.
struct Mark;

impl<'de> DeserializeSeed<'de> for Mark {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<(), D::Error> {
        from.deserialize_enum("node", &[], self)
    }
}

impl<'de> Visitor<'de> for Mark {
    type Value = ();

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("nothing")
    }

    fn visit_enum<A: EnumAccess<'de>>(self, _: A) -> Result<(), A::Error> {
        Err(A::Error::custom("here"))
    }
}

/// Walks over every node in reading order.
#[derive(Clone, Copy)]
struct Walk<'s, 'f>(&'f Search<'s>);

impl<'de> DeserializeSeed<'de> for Walk<'_, '_> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<(), D::Error> {
        take(&self.0.counter);
        from.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Walk<'_, '_> {
    type Value = ();

    fn expecting(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        out.write_str("the same document again")
    }

    fn visit_bool<E>(self, _: bool) -> Result<(), E> {
        Ok(())
    }

    fn visit_i64<E>(self, _: i64) -> Result<(), E> {
        Ok(())
    }

    fn visit_u64<E>(self, _: u64) -> Result<(), E> {
        Ok(())
    }

    fn visit_i128<E>(self, _: i128) -> Result<(), E> {
        Ok(())
    }

    fn visit_u128<E>(self, _: u128) -> Result<(), E> {
        Ok(())
    }

    fn visit_f64<E>(self, _: f64) -> Result<(), E> {
        Ok(())
    }

    fn visit_str<E>(self, _: &str) -> Result<(), E> {
        Ok(())
    }

    fn visit_unit<E>(self) -> Result<(), E> {
        Ok(())
    }

    fn visit_none<E>(self) -> Result<(), E> {
        Ok(())
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<(), A::Error> {
        loop {
            if self.0.wants_next() {
                let seen = list.next_element_seed(Mark).err().map(|fault| fault.to_string());
                // At the end of the list nothing is raised: the next node stands elsewhere.
                if seen.is_some() {
                    self.0.note(seen);
                }
            }
            if list.next_element_seed(self)?.is_none() {
                return Ok(());
            }
        }
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<(), A::Error> {
        loop {
            if self.0.wants_next() {
                let seen = map.next_key_seed(Mark).err().map(|fault| fault.to_string());
                if seen.is_some() {
                    self.0.note(seen);
                }
            }
            if map.next_key_seed(self)?.is_none() {
                return Ok(());
            }
            if self.0.wants_next() {
                self.0.note(map.next_value_seed(Mark).err().map(|fault| fault.to_string()));
            }
            map.next_value_seed(self)?;
        }
    }
}
