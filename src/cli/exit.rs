//! Owns exit statuses and what is printed when there is no report.

use std::process::ExitCode;

use tapeline::input::Problem;

/// The exit status of a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Exit {
    /// `try-on`, or a report that has no outcome and no fault.
    Fine,
    /// Any other outcome but stop, or faults found.
    Attention,
    /// No report: usage, input or output problem.
    NoReport,
    /// `stop`.
    Stop,
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        match exit {
            Exit::Fine => Self::from(0),
            Exit::Attention => Self::from(1),
            Exit::NoReport => Self::from(2),
            Exit::Stop => Self::from(3),
        }
    }
}

impl Exit {
    /// The status of a report's outcome.
    pub(crate) fn of_outcome(outcome: Option<&str>) -> Self {
        match outcome {
            None | Some("try-on") => Self::Fine,
            Some("stop") => Self::Stop,
            Some(_) => Self::Attention,
        }
    }
}

/// Why there is no report.
#[derive(Debug)]
pub(crate) enum Failure {
    /// Input files are wrong.
    Input(Vec<Problem>),
    /// Something else, with its causes.
    Other(anyhow::Error),
}

impl Failure {
    /// Says why on standard error.
    #[expect(clippy::print_stderr, reason = "this is where the program speaks to standard error")]
    pub(crate) fn print(&self) {
        match self {
            Self::Input(problems) => {
                for problem in problems {
                    eprintln!("{problem}");
                }
                let count: usize = problems.iter().map(|problem| problem.count).sum();
                let files = if count == 1 { "1 problem".to_owned() } else { format!("{count} problems") };
                eprintln!("{files}; no report. Mend the input and run again.");
            }
            Self::Other(fault) => eprintln!("tapeline: {fault:#}"),
        }
    }
}

impl From<Vec<Problem>> for Failure {
    fn from(problems: Vec<Problem>) -> Self {
        Self::Input(problems)
    }
}

impl From<Problem> for Failure {
    fn from(problem: Problem) -> Self {
        Self::Input(vec![problem])
    }
}

impl From<anyhow::Error> for Failure {
    fn from(fault: anyhow::Error) -> Self {
        Self::Other(fault)
    }
}
