//! One case: a command with the files that it is given.

use serde_yaml::Value;

use super::corpus::{CORPUS, is_table};
use super::mutate;
use crate::random::{Dice, scene};

/// What is run on the files.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Command {
    Check,
    Gradient,
    Pattern,
    Volume,
    Inspect,
    Batch,
    Cover,
    New,
}

impl Command {
    /// As the command line has it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Check => "check",
            Self::Gradient => "gradient",
            Self::Pattern => "pattern",
            Self::Volume => "volume",
            Self::Inspect => "inspect",
            Self::Batch => "batch",
            Self::Cover => "cover",
            Self::New => "new",
        }
    }
}

/// A command with its files.
#[derive(Clone, Debug)]
pub struct Case {
    pub command: Command,
    /// Path in the project, and bytes.
    pub files: Vec<(String, Vec<u8>)>,
}

/// Runs of whole files, each with the commands that take them.
const RUNS: [(&[Command], &[&str]); 30] = {
    use Command::{Batch, Check, Cover, Gradient, Inspect, New, Pattern, Volume};
    [
        (&[Check], &["demo/first-visit.yaml", "demo/sleeve-chart-b.yaml"]),
        (&[Check], &["demo/first-visit.yaml", "demo/sleeve-chart-a.yaml", "demo/sleeve-chart-c.yaml"]),
        (&[Check], &["demo/first-visit.yaml", "demo/sleeve-chart-d.yaml"]),
        (&[Check], &["demo/first-visit.yaml", "demo/sleeve-chart-e.yaml"]),
        (&[Check], &["demo/first-visit.yaml", "demo/leaflet.csv"]),
        (&[Check], &["demo/leg.yaml", "demo/stocking-chart-b.yaml"]),
        (&[Check], &["demo/stop.yaml", "demo/stocking-chart-b.yaml"]),
        (&[Check], &["demo/emergency.yaml"]),
        (&[Check], &["demo/misreading.yaml"]),
        (&[Check], &["demo/both-legs.yaml", "demo/stocking-chart-a.yaml"]),
        (&[Check], &["demo/hand-swelling.yaml", "demo/sleeve-chart-b.yaml", "demo/hand-piece-chart-a.yaml"]),
        (&[Check, Gradient], &["demo/with-readings.yaml", "demo/sleeve-one.yaml"]),
        (&[Check, Gradient], &["demo/hand-swelling.yaml", "demo/sleeve-and-hand-piece.yaml"]),
        (&[Check, Gradient], &["demo/first-visit.yaml", "demo/sleeve-and-outer-sleeve.yaml"]),
        (&[Check, Gradient], &["demo/narrow-ankle.yaml", "demo/narrow-ankle-garment.yaml"]),
        (&[Check, Gradient], &["demo/leg.yaml", "demo/calf-wrap.yaml"]),
        (&[Check, Volume], &["demo/followed/visit-6.yaml", "demo/followed/visit-7.yaml"]),
        (&[Check, Volume], &["demo/followed/visit-7.yaml", "demo/followed/history.csv"]),
        (&[Check, Volume], &["demo/first-visit.yaml", "demo/next-visit.yaml"]),
        (&[Volume], &["demo/followed/visits.yaml"]),
        (&[Check], &["demo/blank-screening.yaml", "demo/sleeve-chart-b.yaml"]),
        (&[Gradient], &["demo/first-visit.yaml", "demo/sleeve-chart-b.yaml"]),
        (&[Gradient], &["demo/leg.yaml", "demo/stocking-chart-b.yaml"]),
        (&[Pattern], &["demo/narrow-ankle.yaml", "demo/knit-r3.yaml"]),
        (&[Pattern], &["demo/first-visit.yaml", "demo/knit-r2.yaml"]),
        (&[Batch, Cover], &["demo/caseload.csv", "demo/sleeve-chart-b.yaml"]),
        (&[Batch, Cover], &["demo/caseload.csv", "demo/sleeve-chart-a.yaml", "demo/sleeve-chart-c.yaml"]),
        (&[Inspect], &["demo/knit-r4-bench.yaml"]),
        (&[New, Inspect], &["demo/first-visit.yaml"]),
        (&[New, Inspect], &["demo/sleeve-chart-b.yaml"]),
    ]
};

/// The case of a turn: always the same one.
pub fn of(turn: u64) -> Case {
    let mut dice = Dice::of(turn.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ 0x7461_7065);
    match dice.below(10) {
        0..=3 => of_scene(turn, &mut dice),
        4 => of_malformed(&mut dice),
        5 => of_any(&mut dice),
        _ => of_run(&mut dice),
    }
}

fn of_scene(turn: u64, dice: &mut Dice) -> Case {
    let made = scene(turn).files();
    let command = match dice.below(8) {
        0 => Command::Gradient,
        1 => Command::Volume,
        _ => Command::Check,
    };
    let mut files: Vec<(String, Vec<u8>)> = made
        .into_iter()
        .map(|(name, text)| (format!("garment-tables/charts/{name}"), text.into_bytes()))
        .collect();
    // As drawn, most of the time: it is random already.
    if dice.luck(0.6) {
        changed(&mut files, dice);
    }
    Case { command, files }
}

fn of_run(dice: &mut Dice) -> Case {
    let (commands, names) = RUNS[dice.below(RUNS.len())];
    let command = commands[dice.below(commands.len())];
    let mut files: Vec<(String, Vec<u8>)> =
        names.iter().map(|name| ((*name).to_owned(), CORPUS.seed(name).text.clone().into_bytes())).collect();
    changed(&mut files, dice);
    Case { command, files }
}

/// One file of `tests/malformed`, beside what it belongs to.
fn of_malformed(dice: &mut Dice) -> Case {
    let seed = &CORPUS.seeds[CORPUS.malformed[dice.below(CORPUS.malformed.len())]];
    let file = (seed.name.clone(), seed.text.clone().into_bytes());
    let record = || {
        let seed = CORPUS.seed("demo/first-visit.yaml");
        (seed.name.clone(), seed.text.clone().into_bytes())
    };
    let mut files = match seed.name.split('/').nth(2) {
        Some("chart" | "fabric") if dice.luck(0.5) => vec![record(), file],
        _ => vec![file],
    };
    let command = match dice.below(4) {
        0 => Command::New,
        1 => Command::Inspect,
        _ => Command::Check,
    };
    if dice.luck(0.8) {
        changed(&mut files, dice);
    }
    Case { command, files }
}

/// Any file by itself.
fn of_any(dice: &mut Dice) -> Case {
    let seed = &CORPUS.seeds[dice.below(CORPUS.seeds.len())];
    let mut files = vec![(seed.name.clone(), seed.text.clone().into_bytes())];
    changed(&mut files, dice);
    Case { command: if dice.luck(0.3) { Command::New } else { Command::Inspect }, files }
}

/// One or two files changed: the tree, or the bytes.
fn changed(files: &mut [(String, Vec<u8>)], dice: &mut Dice) {
    let at = dice.below(files.len());
    let (name, bytes) = &mut files[at];
    let known = CORPUS.seeds.iter().find(|one| one.name == *name).and_then(|one| one.tree.clone());
    let tree =
        known.or_else(|| if is_table(name) { None } else { serde_yaml::from_slice::<Value>(bytes).ok() });
    match tree {
        Some(mut tree) if dice.luck(0.8) => {
            for _ in 0..=dice.below(3) {
                mutate::tree(&mut tree, dice);
            }
            if let Ok(text) = serde_yaml::to_string(&tree) {
                *bytes = text.into_bytes();
            }
            if dice.luck(0.05) {
                *bytes = mutate::bytes(std::mem::take(bytes), dice);
            }
        }
        _ => *bytes = mutate::bytes(std::mem::take(bytes), dice),
    }
}
