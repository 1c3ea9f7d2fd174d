//! Reads Rust source as far as the tests of the house need: paths used, texts in quotes, what is
//! formatted. Comments are left out, every spelling of a path is brought to one.

use std::path::{Path, PathBuf};

/// A piece of source.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Token {
    Word(String),
    Text(String),
    Sign(char),
    /// `::`
    Joint,
}

/// One source file.
#[derive(Debug)]
pub struct SourceFile {
    /// Where it is.
    pub path: PathBuf,
    /// Its module within the crate, outermost first.
    pub module: Vec<String>,
    /// Its lines.
    pub lines: usize,
    tokens: Vec<Token>,
}

/// The repository.
pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The rooms, in the order of `src/lib.rs`.
pub fn rooms() -> Vec<String> {
    let lib = std::fs::read_to_string(root().join("src/lib.rs")).unwrap();
    lib.lines()
        .filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';'))
        .map(str::to_owned)
        .collect()
}

/// Every source file of a room.
pub fn files_of(room: &str) -> Vec<SourceFile> {
    let mut found = Vec::new();
    let mut folders = vec![root().join("src").join(room)];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(&folder).into_iter().flatten() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|ext| ext == "rs") {
                let within = path.strip_prefix(root().join("src")).unwrap().with_extension("");
                let mut module: Vec<String> =
                    within.iter().map(|part| part.to_string_lossy().into_owned()).collect();
                if module.last().is_some_and(|last| last == "mod") {
                    module.pop();
                }
                let text = std::fs::read_to_string(&path).unwrap();
                found.push(SourceFile { module, ..SourceFile::of(&path, &text) });
            }
        }
    }
    found.sort_by(|one, other| one.path.cmp(&other.path));
    found
}

impl SourceFile {
    /// A file of this text; its module is that of its path's room alone.
    pub fn of(path: &Path, text: &str) -> Self {
        Self { path: path.to_owned(), module: Vec::new(), lines: text.lines().count(), tokens: tokens(text) }
    }

    /// A planted file of a module.
    pub fn planted(module: &[&str], text: &str) -> Self {
        let module = module.iter().map(|part| (*part).to_owned()).collect();
        Self { module, ..Self::of(Path::new("planted.rs"), text) }
    }

    /// Every path that the file uses: those of this crate begin with `crate`, those of texts (`serde(with =
    /// "…")`) among them. A last part `*` is a glob.
    pub fn paths(&self) -> Vec<Vec<String>> {
        let mut found = Vec::new();
        let mut at = 0;
        while at < self.tokens.len() {
            match &self.tokens[at] {
                Token::Word(word) if word == "use" && self.begins(at) => {
                    at = self.tree(at + 1, &[], &mut found);
                }
                Token::Word(_) | Token::Joint => {
                    let (path, next) = self.path_at(at);
                    // One word alone is no path: `pub(crate)`.
                    if path.len() > 1 {
                        found.push(path);
                    }
                    at = next;
                }
                Token::Text(text) => {
                    found.extend(in_text(text));
                    at += 1;
                }
                Token::Sign(_) => at += 1,
            }
        }
        found.into_iter().map(|path| self.absolute(path)).collect()
    }

    /// `use` begins a statement, unlike the `use<'a>` of a bound.
    fn begins(&self, at: usize) -> bool {
        self.tokens.get(at + 1) != Some(&Token::Sign('<'))
    }

    fn path_at(&self, mut at: usize) -> (Vec<String>, usize) {
        let mut path = Vec::new();
        if self.tokens[at] == Token::Joint {
            at += 1;
        }
        while let Some(Token::Word(word)) = self.tokens.get(at) {
            path.push(word.clone());
            at += 1;
            if self.tokens.get(at) != Some(&Token::Joint) {
                break;
            }
            at += 1;
        }
        (path, at.max(1))
    }

    /// Reads one branch of a tree of imports; gives the place behind it.
    fn tree(&self, mut at: usize, before: &[String], found: &mut Vec<Vec<String>>) -> usize {
        let mut path = before.to_vec();
        loop {
            match self.tokens.get(at) {
                Some(Token::Joint) => at += 1,
                Some(Token::Sign('*')) => {
                    path.push("*".to_owned());
                    found.push(path);
                    return at + 1;
                }
                Some(Token::Sign('{')) => {
                    at += 1;
                    while self.tokens.get(at).is_some_and(|token| *token != Token::Sign('}')) {
                        at = self.tree(at, &path, found);
                        if self.tokens.get(at) == Some(&Token::Sign(',')) {
                            at += 1;
                        }
                    }
                    return at + 1;
                }
                Some(Token::Word(word)) if word == "as" => at += 2,
                Some(Token::Word(word)) => {
                    // `{self}` names the path before it.
                    if word != "self" || path.is_empty() {
                        path.push(word.clone());
                    }
                    at += 1;
                }
                _ => {
                    found.push(path);
                    return at;
                }
            }
        }
    }

    /// The path from the crate's root, where it leads into this crate.
    fn absolute(&self, path: Vec<String>) -> Vec<String> {
        let mut base: Option<Vec<String>> = None;
        let mut rest = path.as_slice();
        while let Some((first, behind)) = rest.split_first() {
            let so_far = base.clone();
            base = match (first.as_str(), so_far) {
                ("crate" | "tapeline", None) => Some(Vec::new()),
                ("self", None) => Some(self.module.clone()),
                ("super", at) => {
                    let mut at = at.unwrap_or_else(|| self.module.clone());
                    at.pop();
                    Some(at)
                }
                _ => break,
            };
            rest = behind;
        }
        match base {
            Some(base) => {
                std::iter::once("crate".to_owned()).chain(base).chain(rest.iter().cloned()).collect()
            }
            None => path,
        }
    }

    /// The names of the macros that the file calls.
    pub fn macros(&self) -> Vec<&str> {
        let pairs = self.tokens.windows(2);
        pairs
            .filter_map(|pair| match pair {
                [Token::Word(word), Token::Sign('!')] => Some(word.as_str()),
                _ => None,
            })
            .collect()
    }

    /// The first text in quotes of every call of a formatting macro.
    pub fn formats(&self) -> Vec<&str> {
        const FORMATTING: [&str; 7] =
            ["format", "write", "writeln", "format_args", "print", "println", "panic"];
        let mut found = Vec::new();
        for (at, pair) in self.tokens.windows(2).enumerate() {
            if let [Token::Word(word), Token::Sign('!')] = pair
                && FORMATTING.contains(&word.as_str())
            {
                let text = self.tokens[at..].iter().take(12).find_map(|token| match token {
                    Token::Text(text) => Some(text.as_str()),
                    _ => None,
                });
                found.extend(text);
            }
        }
        found
    }
}

impl SourceFile {
    /// Every text in quotes.
    pub fn texts(&self) -> impl Iterator<Item = &str> {
        self.tokens.iter().filter_map(|token| match token {
            Token::Text(text) => Some(text.as_str()),
            _ => None,
        })
    }
}

/// Paths of this crate that stand in a text, as attributes hold them.
fn in_text(text: &str) -> Vec<Vec<String>> {
    text.match_indices("crate::")
        .map(|(at, _)| {
            let path = text[at..]
                .split(|letter: char| !(letter.is_alphanumeric() || letter == '_' || letter == ':'));
            path.take(1).flat_map(|path| path.split("::")).map(str::to_owned).collect()
        })
        .collect()
}

fn tokens(text: &str) -> Vec<Token> {
    let letters: Vec<char> = text.chars().collect();
    let mut found = Vec::new();
    let mut at = 0;
    while at < letters.len() {
        let letter = letters[at];
        let next = letters.get(at + 1).copied().unwrap_or(' ');
        if letter == '/' && next == '/' {
            while at < letters.len() && letters[at] != '\n' {
                at += 1;
            }
        } else if letter == '/' && next == '*' {
            at = behind_comment(&letters, at);
        } else if letter == '"' {
            let (text, behind) = quoted(&letters, at + 1);
            found.push(Token::Text(text));
            at = behind;
        } else if let Some((text, behind)) = raw(&letters, at) {
            found.push(Token::Text(text));
            at = behind;
        } else if letter == '\'' {
            at = behind_quote(&letters, at);
        } else if letter.is_alphanumeric() || letter == '_' {
            let start = at;
            while at < letters.len() && (letters[at].is_alphanumeric() || letters[at] == '_') {
                at += 1;
            }
            found.push(Token::Word(letters[start..at].iter().collect()));
            // `r#type` is the word `type`.
            if letters.get(at) == Some(&'#') && found.last() == Some(&Token::Word("r".to_owned())) {
                found.pop();
                at += 1;
            }
        } else if letter == ':' && next == ':' {
            found.push(Token::Joint);
            at += 2;
        } else {
            if !letter.is_whitespace() && letter != '$' {
                found.push(Token::Sign(letter));
            }
            at += 1;
        }
    }
    found
}

fn behind_comment(letters: &[char], mut at: usize) -> usize {
    let mut deep = 0;
    while at < letters.len() {
        match (letters[at], letters.get(at + 1)) {
            ('/', Some('*')) => {
                deep += 1;
                at += 2;
            }
            ('*', Some('/')) => {
                deep -= 1;
                at += 2;
                if deep == 0 {
                    return at;
                }
            }
            _ => at += 1,
        }
    }
    at
}

fn quoted(letters: &[char], mut at: usize) -> (String, usize) {
    let mut text = String::new();
    while at < letters.len() && letters[at] != '"' {
        if letters[at] == '\\' {
            at += 1;
        }
        text.extend(letters.get(at));
        at += 1;
    }
    (text, at + 1)
}

/// `r"…"`, `br#"…"#`.
fn raw(letters: &[char], at: usize) -> Option<(String, usize)> {
    let before = at.checked_sub(1).and_then(|before| letters.get(before));
    if before.is_some_and(|letter| letter.is_alphanumeric() || *letter == '_') {
        return None;
    }
    let mut open = at;
    if letters.get(open) == Some(&'b') {
        open += 1;
    }
    if letters.get(open) != Some(&'r') {
        return None;
    }
    open += 1;
    let hashes = letters[open..].iter().take_while(|letter| **letter == '#').count();
    if letters.get(open + hashes) != Some(&'"') {
        return None;
    }
    let start = open + hashes + 1;
    let close = (start..letters.len()).find(|place| {
        letters[*place] == '"'
            && letters[place + 1..].iter().take(hashes).filter(|one| **one == '#').count() == hashes
    })?;
    Some((letters[start..close].iter().collect(), close + 1 + hashes))
}

/// Behind a letter in quotes, or behind the sign of a lifetime.
fn behind_quote(letters: &[char], at: usize) -> usize {
    match (letters.get(at + 1), letters.get(at + 2)) {
        (Some('\\'), _) => {
            let close = (at + 3..letters.len()).find(|place| letters[*place] == '\'');
            close.map_or(letters.len(), |close| close + 1)
        }
        (Some(_), Some('\'')) => at + 3,
        _ => at + 1,
    }
}
