//! Owns the command line as a whole: the commands and the grouped help.

use clap::{Parser, Subcommand};

use super::{batch, check, cover, explain, fabric, gradient, inspect, new, pattern, print, sheet, volume};

/// The help of the program: examples, then the commands in groups.
const HELP: &str = "\
Checks limb girths against garment size charts, estimates the interface pressure along the limb and prints
what has to be looked at before a fitting. It estimates; a certified fitter decides.

Examples:
  tapeline new record arm.yaml                     measure and answer, step by step
  tapeline check arm.yaml charts/*.yaml            every size, its pressure and its fall
  tapeline sheet arm.yaml sleeve-a.yaml -o arm.pdf the fitting sheet to print
  tapeline gradient arm.yaml sleeve.yaml           one garment in depth
  tapeline explain tourniquet                      what a word means and on what it rests

Files stand in any order: each YAML file names its kind in its first key, a table by its header. `-` is
standard input.

{usage-heading} {usage}

Limb
  new       Write a record, chart, garment or fabric, step by step
  check     Check a record: screening, sizes, pressure and its fall, volume
  sheet     Print a fitting sheet: pages for the fitter, pages for the client
  volume    Limb volume, the two sides, the change over visits

Garment
  gradient  One garment's pressure along the limb, and whether it falls toward the trunk
  pattern   Relaxed girths of a made-to-measure garment for a wanted pressure

Charts and fabrics
  inspect   What was read in a file of any kind
  fabric    A fabric's curve, or a bench test pooled into one

Many limbs
  cover     The share of a caseload that each size of a chart serves
  batch     A table of limbs held against charts, one row for each limb

Reference
  explain   What a word means, its rule, its basis, what to do next
  print     Schemas of the input files, shell completions, the manual

Options:
{options}

Exit status: 0 trial fitting, or a report without outcome and fault · 1 any other outcome but stop, or faults
found · 3 stop · 2 no report (usage, input or output problem)
";

/// The command line.
#[derive(Debug, Parser)]
#[command(
    name = "tapeline",
    version,
    about = "Checks limb girths against garment size charts and estimates the pressure along the limb",
    help_template = HELP,
    arg_required_else_help = true,
    infer_subcommands = false,
    disable_help_subcommand = true
)]
pub(crate) struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub(crate) command: Command,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Write a record, chart, garment or fabric, step by step
    #[command(before_help = new::EXAMPLES)]
    New(new::New),
    /// Check a record: screening, sizes, pressure and its fall, volume
    #[command(before_help = check::EXAMPLES)]
    Check(check::Check),
    /// Print a fitting sheet: pages for the fitter, pages for the client
    #[command(before_help = sheet::EXAMPLES)]
    Sheet(sheet::Sheet),
    /// Limb volume, the two sides, the change over visits
    #[command(before_help = volume::EXAMPLES)]
    Volume(volume::Volume),
    /// One garment's pressure along the limb, and whether it falls toward the trunk
    #[command(before_help = gradient::EXAMPLES)]
    Gradient(gradient::Gradient),
    /// Relaxed girths of a made-to-measure garment for a wanted pressure
    #[command(before_help = pattern::EXAMPLES)]
    Pattern(pattern::Pattern),
    /// What was read in a file of any kind
    #[command(before_help = inspect::EXAMPLES)]
    Inspect(inspect::Inspect),
    /// A fabric's curve, or a bench test pooled into one
    #[command(before_help = fabric::EXAMPLES)]
    Fabric(fabric::Fabric),
    /// The share of a caseload that each size of a chart serves
    #[command(before_help = cover::EXAMPLES)]
    Cover(cover::Cover),
    /// A table of limbs held against charts, one row for each limb
    #[command(before_help = batch::EXAMPLES)]
    Batch(batch::BatchArgs),
    /// What a word means, its rule, its basis, what to do next
    #[command(before_help = explain::EXAMPLES)]
    Explain(explain::Explain),
    /// Schemas of the input files, shell completions, the manual
    #[command(before_help = print::EXAMPLES)]
    Print(print::Print),
}
