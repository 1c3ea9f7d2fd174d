//! What cases are made of: the files of the demo, the shipped tables and the malformed ones, and every value that
//! stands under a key somewhere.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use serde_yaml::Value;

use crate::source::root;

/// A file to start from.
pub struct Seed {
    /// Its path in the project.
    pub name: String,
    pub text: String,
    /// Its tree, where it is YAML.
    pub tree: Option<Value>,
}

/// Everything there is to start from.
pub struct Corpus {
    pub seeds: Vec<Seed>,
    /// Places of the seeds of `tests/malformed`.
    pub malformed: Vec<usize>,
    /// Values by the key that they stand under.
    pub values: BTreeMap<String, Vec<Value>>,
    /// Keys with values by the key of the block that they stand in.
    pub inside: BTreeMap<String, Vec<(Value, Value)>>,
}

pub static CORPUS: LazyLock<Corpus> = LazyLock::new(Corpus::read);

/// Most values that are kept of one key.
const MOST: usize = 60;

impl Corpus {
    fn read() -> Self {
        let mut paths = Vec::new();
        for folder in ["demo", "garment-tables", "tests/malformed"] {
            collect(&root().join(folder), &mut paths);
        }
        paths.sort();
        let mut corpus = Self {
            seeds: Vec::new(),
            malformed: Vec::new(),
            values: BTreeMap::new(),
            inside: BTreeMap::new(),
        };
        for path in paths {
            let Ok(text) = std::fs::read_to_string(&path) else { continue };
            let name = path.strip_prefix(root()).unwrap().display().to_string();
            let tree = if is_table(&name) { None } else { serde_yaml::from_str::<Value>(&text).ok() };
            if let Some(tree) = &tree {
                corpus.learn("", tree);
            }
            if name.starts_with("tests/") {
                corpus.malformed.push(corpus.seeds.len());
            }
            corpus.seeds.push(Seed { name, text, tree });
        }
        assert!(corpus.seeds.len() > 300 && corpus.values.len() > 100, "{} seeds", corpus.seeds.len());
        corpus
    }

    /// The seed of a name.
    pub fn seed(&self, name: &str) -> &Seed {
        self.seeds.iter().find(|one| one.name == name).unwrap_or_else(|| panic!("no seed {name}"))
    }

    fn learn(&mut self, parent: &str, tree: &Value) {
        match tree {
            Value::Mapping(all) => {
                for (key, value) in all {
                    let name = key.as_str().unwrap_or_default().to_owned();
                    let known = self.values.entry(name.clone()).or_default();
                    if known.len() < MOST && !known.contains(value) {
                        known.push(value.clone());
                    }
                    let near = self.inside.entry(parent.to_owned()).or_default();
                    if near.len() < 4 * MOST && !near.iter().any(|(other, had)| other == key && had == value)
                    {
                        near.push((key.clone(), value.clone()));
                    }
                    self.learn(&name, value);
                }
            }
            Value::Sequence(all) => all.iter().for_each(|one| self.learn(parent, one)),
            _ => {}
        }
    }
}

/// Whether a file is a table by its name.
pub fn is_table(name: &str) -> bool {
    Path::new(name).extension().is_some_and(|ending| ending == "csv")
}

fn collect(folder: &Path, into: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            collect(&path, into);
        } else if path.extension().is_some_and(|ending| ending == "yaml" || ending == "csv") {
            into.push(path);
        }
    }
}
