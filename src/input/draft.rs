//! Owns a file that is being written: its answers so far, read back from the file itself, and its text.
//!
//! Knows the order of the keys, not what they mean.

use std::fmt::Write as _;

use super::keys::{Block, Key};
use super::text::is_refused;
use super::{FileKind, Kind, Node, Problem, Source, yaml};

/// A value of a draft.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Value {
    Text(String),
    List(Vec<Value>),
    Block(Vec<(String, Value)>),
}

/// A file that is being written.
#[derive(Clone, Debug)]
pub struct Draft {
    kind: FileKind,
    root: Vec<(String, Value)>,
    /// Questions that were passed over, by their names.
    left_out: Vec<String>,
    /// Remarks of whoever wrote the file, a line each; they stand at its top.
    remarks: Vec<String>,
}

/// How the remark begins by which an editor finds the schema of a file.
const SCHEMA: &str = "# yaml-language-server: $schema=";

/// How the remark begins that keeps what was passed over.
const LEFT_OUT: &str = "# left out for now: ";

/// Longest line that a block is kept on, characters (house rule).
const LONGEST: usize = 100;

impl Draft {
    /// An empty draft of a kind.
    pub fn new(kind: FileKind) -> Self {
        let tag = ("tapeline".to_owned(), Value::Text(kind.tag().to_owned()));
        Self { kind, root: vec![tag], left_out: Vec::new(), remarks: Vec::new() }
    }

    /// The draft that a file holds.
    ///
    /// # Errors
    /// One [`Problem`]: no YAML, or a file of another kind.
    pub fn read(source: &Source, kind: FileKind) -> Result<Self, Problem> {
        let other = || {
            let what = format!("is no {} file; give the new one another name", kind.tag());
            Problem::of_file(&source.name, what)
        };
        if source.kind() != Some(kind) {
            return Err(other());
        }
        let node = yaml::read(source)?;
        let mut draft = Self::new(kind);
        if let Value::Block(root) = value_of(&node) {
            draft.root = root;
        }
        if draft.text("tapeline").as_deref() != Some(kind.tag()) {
            return Err(other());
        }
        let remark = source.text.lines().find_map(|line| line.strip_prefix(LEFT_OUT));
        draft.left_out =
            remark.map(|words| words.split(", ").map(str::to_owned).collect()).unwrap_or_default();
        // A key that a template offers under a remark is no word of the writer's.
        let offered = |line: &str| {
            let key = line.trim_start_matches('#').trim_start().split_once(':').map(|(key, _)| key);
            key.is_some_and(|key| kind.keys().key(key).is_some())
        };
        let own = source
            .text
            .lines()
            .map(str::trim)
            .filter(|line| line.starts_with('#') && !line.starts_with(LEFT_OUT) && !offered(line));
        draft.remarks = own.map(str::to_owned).collect();
        Ok(draft)
    }

    /// The text at a path, as `marks.0.girth`; of a list of texts, joined by blanks.
    pub fn text(&self, path: &str) -> Option<String> {
        match find(&self.root, path)? {
            Value::Text(text) => Some(text.clone()),
            Value::List(list) => Some(
                list.iter()
                    .filter_map(|one| match one {
                        Value::Text(text) => Some(text.as_str()),
                        _ => None,
                    })
                    .collect::<Vec<_>>()
                    .join(" "),
            ),
            Value::Block(_) => None,
        }
    }

    /// The texts of a list.
    pub fn list(&self, path: &str) -> Vec<String> {
        match find(&self.root, path) {
            Some(Value::List(list)) => list
                .iter()
                .filter_map(|one| match one {
                    Value::Text(text) => Some(text.clone()),
                    _ => None,
                })
                .collect(),
            Some(Value::Text(text)) => vec![text.clone()],
            _ => Vec::new(),
        }
    }

    /// How many items a list has.
    pub fn count(&self, path: &str) -> usize {
        match find(&self.root, path) {
            Some(Value::List(list)) => list.len(),
            _ => 0,
        }
    }

    /// Whether something stands at a path.
    pub fn has(&self, path: &str) -> bool {
        find(&self.root, path).is_some()
    }

    /// Writes a text at a path; blocks and list items before it are made as needed.
    pub fn set(&mut self, path: &str, text: &str) {
        put(&mut self.root, path, Value::Text(text.to_owned()));
    }

    /// Writes a list of texts at a path.
    pub fn set_list(&mut self, path: &str, texts: &[String]) {
        put(&mut self.root, path, Value::List(texts.iter().cloned().map(Value::Text).collect()));
    }

    /// Takes out what stands at a path.
    pub fn remove(&mut self, path: &str) {
        take(&mut self.root, path);
    }

    /// Notes that a question was passed over.
    pub fn leave_out(&mut self, name: &str) {
        if !self.is_left_out(name) {
            self.left_out.push(name.to_owned());
        }
    }

    /// Takes a question up again.
    pub fn take_up(&mut self, name: &str) {
        self.left_out.retain(|one| one != name);
    }

    /// Whether a question was passed over.
    pub fn is_left_out(&self, name: &str) -> bool {
        self.left_out.iter().any(|one| one == name)
    }

    /// The questions that were passed over.
    pub fn left_out(&self) -> &[String] {
        &self.left_out
    }

    /// Names the schema beside the file, for editors; one that is named already stays.
    pub fn name_schema(&mut self, file: &str) {
        if !self.remarks.iter().any(|line| line.starts_with(SCHEMA)) {
            self.remarks.insert(0, format!("{SCHEMA}{file}"));
        }
    }

    /// The file's text, its keys in their best order; with `whole` without the remark on what was passed over.
    pub fn to_text(&self, whole: bool) -> String {
        let mut root = self.root.clone();
        sort(&mut root, Some(self.kind.keys()));
        let mut out = String::new();
        for remark in &self.remarks {
            let _ = writeln!(out, "{remark}");
        }
        for (key, value) in &root {
            write_entry(&mut out, 0, key, value);
        }
        if !whole && !self.left_out.is_empty() {
            let _ = writeln!(out, "{LEFT_OUT}{}", self.left_out.join(", "));
        }
        out
    }
}

/// Puts the keys of a block, and of the blocks in it, in the order of its table.
fn sort(block: &mut [(String, Value)], known: Option<&'static Block>) {
    let Some(known) = known else { return };
    block.sort_by_key(|(key, _)| known.keys.iter().position(|one| one.name == key).unwrap_or(usize::MAX));
    for (key, value) in block {
        let inner = known.key(key).and_then(Key::block);
        match value {
            Value::Block(block) => sort(block, inner),
            Value::List(list) => {
                for one in list {
                    if let Value::Block(block) = one {
                        sort(block, inner);
                    }
                }
            }
            Value::Text(_) => {}
        }
    }
}

fn value_of(node: &Node) -> Value {
    match &node.kind {
        Kind::Text(text) => Value::Text(text.clone()),
        Kind::Bare | Kind::Empty => Value::Text(String::new()),
        // What a template leaves blank is no answer.
        Kind::List(nodes) => {
            let whole = nodes.iter().filter(|one| !matches!(one.kind, Kind::Empty)).map(value_of);
            Value::List(whole.filter(|one| *one != Value::Block(Vec::new())).collect())
        }
        Kind::Map(entries) => {
            let each =
                entries.iter().map(|one| (one.name().to_owned(), value_of(&one.value), &one.value.kind));
            let filled = each.filter(|(_, value, kind)| match kind {
                Kind::Empty => false,
                Kind::List(nodes) => nodes.is_empty() || *value != Value::List(Vec::new()),
                _ => true,
            });
            Value::Block(filled.map(|(name, value, _)| (name, value)).collect())
        }
    }
}

fn find<'v>(block: &'v [(String, Value)], path: &str) -> Option<&'v Value> {
    let mut steps = path.split('.');
    let first = steps.next()?;
    let mut value = block.iter().find(|(key, _)| key == first).map(|(_, value)| value)?;
    for step in steps {
        value = match value {
            Value::Block(block) => block.iter().find(|(key, _)| key == step).map(|(_, value)| value)?,
            Value::List(list) => list.get(step.parse::<usize>().ok()?)?,
            Value::Text(_) => return None,
        };
    }
    Some(value)
}

fn put(block: &mut Vec<(String, Value)>, path: &str, new: Value) {
    let (first, rest) = path.split_once('.').map_or((path, None), |(first, rest)| (first, Some(rest)));
    if !block.iter().any(|(key, _)| key == first) {
        block.push((first.to_owned(), Value::Text(String::new())));
    }
    let Some((_, value)) = block.iter_mut().find(|(key, _)| key == first) else { return };
    put_in(value, rest, new);
}

fn put_in(value: &mut Value, rest: Option<&str>, new: Value) {
    let Some(rest) = rest else {
        *value = new;
        return;
    };
    let (step, further) = rest.split_once('.').map_or((rest, None), |(first, rest)| (first, Some(rest)));
    if let Ok(index) = step.parse::<usize>() {
        if !matches!(value, Value::List(_)) {
            *value = Value::List(Vec::new());
        }
        if let Value::List(list) = value {
            while list.len() <= index {
                list.push(Value::Block(Vec::new()));
            }
            if let Some(one) = list.get_mut(index) {
                put_in(one, further, new);
            }
        }
        return;
    }
    if !matches!(value, Value::Block(_)) {
        *value = Value::Block(Vec::new());
    }
    if let Value::Block(inner) = value {
        put(inner, rest, new);
    }
}

fn take(block: &mut Vec<(String, Value)>, path: &str) {
    let Some((first, rest)) = path.split_once('.') else {
        block.retain(|(key, _)| key != path);
        return;
    };
    if let Some((_, value)) = block.iter_mut().find(|(key, _)| key == first) {
        take_in(value, rest);
    }
}

fn take_in(value: &mut Value, rest: &str) {
    let (step, further) = rest.split_once('.').map_or((rest, None), |(first, rest)| (first, Some(rest)));
    match value {
        Value::Block(inner) => take(inner, rest),
        Value::List(list) => {
            let Ok(index) = step.parse::<usize>() else { return };
            match further {
                None if index < list.len() => {
                    list.remove(index);
                }
                None => {}
                Some(further) => {
                    if let Some(one) = list.get_mut(index) {
                        take_in(one, further);
                    }
                }
            }
        }
        Value::Text(_) => {}
    }
}

fn write_entry(out: &mut String, indent: usize, key: &str, value: &Value) {
    let room = " ".repeat(indent);
    let inline = flow(value);
    match value {
        Value::Block(inner)
            if !inner.is_empty() && (indent + key.len() + inline.len() > LONGEST || holds_lists(inner)) =>
        {
            let _ = writeln!(out, "{room}{}:", quoted(key));
            for (key, value) in inner {
                write_entry(out, indent + 2, key, value);
            }
        }
        Value::List(items) if items.iter().any(|one| matches!(one, Value::Block(_))) => {
            let _ = writeln!(out, "{room}{}:", quoted(key));
            for item in items {
                let _ = writeln!(out, "{room}  - {}", flow(item));
            }
        }
        _ => {
            let _ = writeln!(out, "{room}{}: {inline}", quoted(key));
        }
    }
}

fn holds_lists(block: &[(String, Value)]) -> bool {
    block.iter().any(|(_, value)| match value {
        Value::List(items) => items.iter().any(|one| matches!(one, Value::Block(_))),
        _ => false,
    })
}

fn flow(value: &Value) -> String {
    match value {
        Value::Text(text) => quoted(text),
        Value::List(items) => format!("[{}]", items.iter().map(flow).collect::<Vec<_>>().join(", ")),
        Value::Block(inner) => {
            let parts: Vec<String> =
                inner.iter().map(|(key, value)| format!("{}: {}", quoted(key), flow(value))).collect();
            format!("{{{}}}", parts.join(", "))
        }
    }
}

/// A text as YAML, in quotes where it needs them.
fn quoted(text: &str) -> String {
    let plain = !["", "null", "Null", "NULL", "~"].contains(&text)
        && !text.starts_with(|c: char| "-?:,[]{}#&*!|>'\"%@` ".contains(c) && !is_minus(text, c))
        && !text.ends_with([':', ' '])
        && !text.contains([',', '[', ']', '{', '}', '"', '\\'])
        && !text.contains(is_refused)
        && !text.contains(": ")
        && !text.contains(" #");
    if plain {
        return text.to_owned();
    }
    let mut out = String::from("\"");
    for c in text.chars() {
        match c {
            '\\' => out.push_str("\\\\"),
            '"' => out.push_str("\\\""),
            // What no file holds as it is stays what it was, for the reader to refuse at its place.
            c if is_refused(c) => {
                let _ = write!(out, "\\u{:04x}", u32::from(c));
            }
            c => out.push(c),
        }
    }
    out.push('"');
    out
}

/// Whether the first character is the sign of a number.
fn is_minus(text: &str, first: char) -> bool {
    first == '-' && text.chars().nth(1).is_some_and(|c| c.is_ascii_digit())
}
