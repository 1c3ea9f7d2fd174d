//! Owns the opening of the files that a command names, in any order: each tells its own kind.

use std::path::{Path, PathBuf};

use anyhow::anyhow;
use tapeline::input::{FileKind, Place, Problem, Source};

use super::exit::Failure;
use super::options::Tables;

/// What a file is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum What {
    /// A YAML file of a kind.
    Kind(FileKind),
    /// A table of sizes.
    SizeTable,
    /// A table of visits.
    VisitTable,
    /// A table of limbs.
    LimbTable,
}

impl What {
    /// How a sentence names it.
    pub(crate) fn spoken(self) -> &'static str {
        match self {
            Self::Kind(kind) => kind.spoken(),
            Self::SizeTable => "a table of sizes",
            Self::VisitTable => "a table of visits",
            Self::LimbTable => "a table of limbs",
        }
    }
}

/// One file of the command line.
pub(crate) struct Given {
    /// What it is.
    pub(crate) what: What,
    /// Its text.
    pub(crate) source: Source,
}

/// The files of a command line by kind, each kind in the order given.
#[derive(Default)]
pub(crate) struct Files {
    all: Vec<Given>,
}

impl Files {
    /// Reads every file; `command` takes the kinds `accepted` and none else.
    ///
    /// Problems of all files are told together.
    pub(crate) fn read(
        paths: &[PathBuf],
        tables: Option<&Tables>,
        command: &str,
        accepted: &[What],
    ) -> Result<Self, Failure> {
        if paths.iter().filter(|path| path.as_os_str() == "-").count() > 1 {
            return Err(anyhow!(
                "`-` stands for two files, but standard input holds one; name the other one"
            )
            .into());
        }
        let mut all: Vec<Given> = Vec::new();
        let mut problems = Vec::new();
        for path in paths {
            match read_one(path, tables, command, accepted) {
                Ok(given) => all.push(given),
                Err(found) => problems.push(found),
            }
        }
        if problems.is_empty() { Ok(Self { all }) } else { Err(problems.into()) }
    }

    /// The paths of the files of one kind.
    pub(crate) fn names_of(&self, what: What) -> Vec<PathBuf> {
        let own = self.all.iter().filter(|given| given.what == what);
        own.map(|given| PathBuf::from(&given.source.name)).collect()
    }

    /// The sources in the order given.
    pub(crate) fn into_sources(self) -> Vec<Source> {
        self.all.into_iter().map(|given| given.source).collect()
    }

    /// The files in the order given.
    pub(crate) fn all(&self) -> &[Given] {
        &self.all
    }
}

fn read_one(
    path: &Path,
    tables: Option<&Tables>,
    command: &str,
    accepted: &[What],
) -> Result<Given, Problem> {
    let source = Source::read_as(path, &listed(accepted))?;
    let what = match source.kind() {
        Some(kind) => What::Kind(kind),
        None if source.is_table() => table_kind(&source),
        None => return Err(no_kind(&source, accepted)),
    };
    let source = match (what, tables) {
        (What::Kind(_), Some(tables)) if tables.decimal_comma => source.naming_comma_tables(),
        (What::Kind(_), _) => source,
        (_, Some(tables)) if tables.decimal_comma => source.with_decimal_commas(),
        _ => source,
    };
    if !accepted.contains(&what) {
        let place = (!matches!(what, What::SizeTable | What::VisitTable | What::LimbTable))
            .then(|| Place::of(first_line(&source), 1, source.line(first_line(&source))));
        let told = format!("is {}, but `{command}` takes {}", what.spoken(), listed(accepted));
        return Err(Problem::at(&source.name, place, told));
    }
    Ok(Given { what, source })
}

/// Which table it is, by the words of its header.
fn table_kind(source: &Source) -> What {
    let header = source.text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default().to_lowercase();
    let columns: Vec<&str> =
        header.split([',', ';', '\t']).map(|cell| cell.trim().trim_matches('"').trim()).collect();
    let has = |words: &[&str]| columns.iter().any(|column| words.contains(column));
    if has(&["size"]) {
        What::SizeTable
    } else if tapeline::record::is_visit_table(
        &columns.iter().map(|one| (*one).to_owned()).collect::<Vec<_>>(),
    ) {
        What::VisitTable
    } else if has(&["limb", "id", "client", "code"]) {
        What::LimbTable
    } else {
        What::SizeTable
    }
}

fn first_line(source: &Source) -> usize {
    let content = |line: &str| !line.trim().is_empty() && !line.trim_start().starts_with('#');
    source.text.lines().position(content).map_or(1, |at| at + 1)
}

/// A file that does not say what it is.
fn no_kind(source: &Source, accepted: &[What]) -> Problem {
    if source.text.trim().is_empty() {
        return Problem::of_file(
            &source.name,
            "is empty; a file starts with its kind, as `tapeline: record/1`",
        );
    }
    let line = first_line(source);
    let place = Place::of(line, 1, source.line(line));
    let tags: Vec<String> = accepted
        .iter()
        .filter_map(|what| match what {
            What::Kind(kind) => Some(format!("`tapeline: {}`", kind.tag())),
            _ => None,
        })
        .collect();
    let said = source.line(line).trim();
    let told = match said
        .strip_prefix("tapeline:")
        .map(|tag| tag.split('#').next().unwrap_or_default().trim())
    {
        Some(tag) => {
            let name = tag.split('/').next().unwrap_or_default();
            match FileKind::parse_word(name) {
                Some(kind) => {
                    format!("is a `{tag}` file, which this program does not know; it reads `{}`", kind.tag())
                }
                None => format!("names the kind `{tag}`, which is not known; accepted: {}", tags.join(", ")),
            }
        }
        None => format!("does not start with its kind; the first key is {}", tags.join(" or ")),
    };
    Problem::at(&source.name, Some(place), told)
}

/// `a record, a size chart or a garment file`.
fn listed(accepted: &[What]) -> String {
    let words: Vec<&str> = accepted.iter().map(|what| what.spoken()).collect();
    match words.split_last() {
        Some((last, [])) => (*last).to_owned(),
        Some((last, rest)) => format!("{} or {last}", rest.join(", ")),
        None => "a file".to_owned(),
    }
}
