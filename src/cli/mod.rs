//! Owns the run: arguments in, one command, an exit status out.

mod args;
mod check;
mod exit;
mod explain;
mod fabric;
mod gradient;
mod pattern;
mod target;
mod inputs;
mod output;
mod sheet;
mod sheet_args;

use std::process::ExitCode;

use clap::Parser as _;

use args::{Args, Command};
use exit::{Exit, Failure};

/// Runs the command that the arguments name.
pub(crate) fn run() -> ExitCode {
    let args = match Args::try_parse() {
        Ok(args) => args,
        Err(fault) => {
            // Help and version go to stdout with status 0, misuse to stderr with status 2.
            let status = if fault.use_stderr() { Exit::NoReport } else { Exit::Fine };
            let _ = fault.print();
            return status.into();
        }
    };
    let done = match &args.command {
        Command::Check(check) => check::run(check),
        Command::Sheet(sheet) => sheet::run(sheet),
        Command::Explain(args) => explain::run(args),
        Command::Gradient(gradient) => gradient::run(gradient),
        Command::Pattern(pattern) => pattern::run(pattern),
        Command::Fabric(fabric) => fabric::run(fabric),
    };
    match done {
        Ok(exit) => exit.into(),
        Err(failure) => {
            failure.print();
            Exit::NoReport.into()
        }
    }
}

impl From<Failure> for ExitCode {
    fn from(failure: Failure) -> Self {
        failure.print();
        Exit::NoReport.into()
    }
}
