//! Owns the run: arguments in, one command, an exit status out.

mod say;
mod closed;
mod stream;
mod writer;
mod exit;
mod clock;
mod options;
mod sets;
mod files;
mod session;
mod seen;
mod seen_record;
mod new;
mod check;
mod sheet;
mod volume;
mod gradient;
mod pattern;
mod inspect;
mod fabric;
mod explain;
mod print;
mod interrupt;
mod long_output;
mod progress;
mod caseload;
mod batch;
mod cover;
mod args;

use std::process::ExitCode;

use anyhow::Context as _;
use clap::Parser as _;
use tapeline::render::{json, terminal_report};
use tapeline::report::Report;

use args::{Arguments, Command};
use exit::{Exit, Failure};
use options::Format;

/// Runs the command that the arguments name.
pub(crate) fn run() -> ExitCode {
    let exit = match Arguments::try_parse() {
        Ok(arguments) => command(&arguments.command),
        Err(fault) => misuse(&fault),
    };
    // What had to be said and could not be is an output problem.
    if say::was_lost() { Exit::NoReport.into() } else { exit.into() }
}

fn command(command: &Command) -> Exit {
    let done = match command {
        Command::New(args) => new::run(args),
        Command::Check(args) => check::run(args),
        Command::Sheet(args) => sheet::run(args),
        Command::Volume(args) => volume::run(args),
        Command::Gradient(args) => gradient::run(args),
        Command::Pattern(args) => pattern::run(args),
        Command::Inspect(args) => inspect::run(args),
        Command::Fabric(args) => fabric::run(args),
        Command::Cover(args) => cover::run(args),
        Command::Batch(args) => batch::run(args),
        Command::Explain(args) => explain::run(args),
        Command::Print(args) => print::run(args),
    };
    done.unwrap_or_else(|failure| {
        failure.say();
        Exit::NoReport
    })
}

/// Help and version go to standard output with status 0, misuse to standard error with status 2.
fn misuse(fault: &clap::Error) -> Exit {
    let text = fault.render().to_string();
    if fault.use_stderr() {
        match text.strip_prefix("error: ") {
            Some(what) => say::error(what.trim_end()),
            // No argument at all: the help itself.
            None => say::line(text.trim_end()),
        }
        return Exit::NoReport;
    }
    match stream::write(text.as_bytes()) {
        Ok(()) => Exit::Fine,
        Err(fault) => {
            Failure::from(fault).say();
            Exit::NoReport
        }
    }
}

/// A report in the form asked for.
fn text_of(report: &Report, format: Format) -> anyhow::Result<String> {
    match format {
        Format::Json => json(report).context("the report could not be made into JSON"),
        Format::Text => Ok(terminal_report(report, stream::columns())),
    }
}
