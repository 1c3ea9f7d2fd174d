//! `tapeline print`: what other programs need to know of this one.

use clap::{Args, CommandFactory as _, Subcommand, ValueEnum};
use clap_complete::Shell;
use tapeline::input::{FileKind, schema};

use super::args::Arguments;
use super::exit::{Exit, Failure};
use super::options::Place;

pub(crate) const EXAMPLES: &str = "Examples:
  tapeline print schema record -o record.schema.json
  tapeline print completions bash > ~/.local/share/bash-completion/completions/tapeline
  tapeline print manual | man -l -";

/// `print`.
#[derive(Debug, Args)]
pub(crate) struct Print {
    #[command(subcommand)]
    what: Thing,
}

#[derive(Debug, Subcommand)]
enum Thing {
    /// The JSON Schema of an input file, for editors and other programs
    Schema {
        /// The kind of file
        kind: Kind,
        #[command(flatten)]
        place: Place,
    },
    /// Completions for a shell
    Completions {
        /// The shell
        shell: Shell,
        #[command(flatten)]
        place: Place,
    },
    /// The manual page
    Manual {
        #[command(flatten)]
        place: Place,
    },
}

#[derive(Clone, Copy, Debug, ValueEnum)]
enum Kind {
    Record,
    Chart,
    Garment,
    Wrap,
    Fabric,
    Scheme,
    Rules,
    Visits,
}

impl Kind {
    fn kind(self) -> FileKind {
        match self {
            Self::Record => FileKind::Record,
            Self::Chart => FileKind::Chart,
            Self::Garment => FileKind::Garment,
            Self::Wrap => FileKind::Wrap,
            Self::Fabric => FileKind::Fabric,
            Self::Scheme => FileKind::Scheme,
            Self::Rules => FileKind::Rules,
            Self::Visits => FileKind::Visits,
        }
    }
}

/// Runs the command.
pub(crate) fn run(args: &Print) -> Result<Exit, Failure> {
    let (text, place) = match &args.what {
        Thing::Schema { kind, place } => (schema(kind.kind()), place),
        Thing::Completions { shell, place } => {
            let mut bytes = Vec::new();
            clap_complete::generate(*shell, &mut Arguments::command(), "tapeline", &mut bytes);
            (String::from_utf8_lossy(&bytes).into_owned(), place)
        }
        Thing::Manual { place } => (manual()?, place),
    };
    place.write(&text)?;
    Ok(Exit::Fine)
}

/// One page with every command.
fn manual() -> anyhow::Result<String> {
    let mut command = Arguments::command();
    command.build();
    let mut bytes = Vec::new();
    let page = clap_mangen::Man::new(command.clone()).date("").manual("tapeline");
    page.render_title(&mut bytes)?;
    page.render_name_section(&mut bytes)?;
    page.render_synopsis_section(&mut bytes)?;
    page.render_description_section(&mut bytes)?;
    for one in command.get_subcommands().filter(|one| one.get_name() != "help") {
        let title = one.get_name().to_uppercase();
        bytes.extend(format!(".SH \"{title}\"\n").into_bytes());
        let page = clap_mangen::Man::new(one.clone());
        let mut part = Vec::new();
        page.render_synopsis_section(&mut part)?;
        page.render_description_section(&mut part)?;
        page.render_options_section(&mut part)?;
        // Sections of a command are sections of a section here.
        let part = String::from_utf8_lossy(&part).replace(".SH ", ".SS ");
        bytes.extend(part.into_bytes());
    }
    page.render_extra_section(&mut bytes)?;
    page.render_version_section(&mut bytes)?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}
