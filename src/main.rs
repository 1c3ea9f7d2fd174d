//! The command line of `tapeline`.
//!
//! Owns clap, anyhow, standard output and error, the clock and the exit status. Does no arithmetic.

mod cli;

use std::process::ExitCode;

fn main() -> ExitCode {
    cli::run()
}
