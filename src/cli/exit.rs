//! Owns exit statuses and what is said when there is no report.

use std::process::ExitCode;

use tapeline::assessment::Outcome;
use tapeline::input::Problem;

use super::say;

/// The exit status of a run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Exit {
    /// `trial-fitting`, or a report that has no outcome and no fault.
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
    pub(crate) fn of_outcome(outcome: Option<Outcome>) -> Self {
        match outcome {
            None | Some(Outcome::TrialFitting) => Self::Fine,
            Some(Outcome::Stop) => Self::Stop,
            Some(_) => Self::Attention,
        }
    }

    /// The status of a listing that may show faults.
    pub(crate) fn of_faults(faults: bool) -> Self {
        if faults { Self::Attention } else { Self::Fine }
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
    pub(crate) fn say(&self) {
        match self {
            Self::Input(problems) => {
                for problem in problems {
                    say::error(&problem.to_string());
                }
                let count: usize = problems.iter().map(|problem| problem.count).sum();
                let counted = if count == 1 { "1 problem".to_owned() } else { format!("{count} problems") };
                say::error(&format!("{counted}; no report. Mend the input and run again."));
            }
            Self::Other(fault) => say::error(&format!("{fault:#}")),
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
