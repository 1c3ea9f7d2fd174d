//! The turns: numbered cases, what they come to, and what is kept of those that break a law.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::sync::Once;
use std::time::{Duration, Instant};

use tapeline::assessment::Setting;
use tapeline::garment::Schemes;

use super::case::{self, Case};
use super::program;
use super::run::{Came, run};
use crate::made;
use crate::random::Dice;

thread_local! {
    /// Where the last panic of this thread was; kept only while a case runs.
    static PANIC: RefCell<Option<String>> = const { RefCell::new(None) };
    static RUNNING: RefCell<bool> = const { RefCell::new(false) };
}

/// Longest that a case may take (house rule; a debug build on a busy machine).
const LONGEST: Duration = Duration::from_secs(20);

/// Turns of one thread: what was read is remembered by thread, so that it is let go.
const A_THREAD: u64 = 2_000;

/// One turn in this many is given to the built program as well.
const PROGRAM: usize = 250;

/// What turns came to.
#[derive(Default)]
pub struct Turns {
    pub done: u64,
    pub came: BTreeMap<(case::Command, Came), u64>,
    pub programs: u64,
    /// What is wrong, by its kind: the first turn, how many, the words.
    pub faults: BTreeMap<String, (u64, u64, String)>,
}

impl Turns {
    fn add(&mut self, other: Self) {
        self.done += other.done;
        self.programs += other.programs;
        for (key, count) in other.came {
            *self.came.entry(key).or_default() += count;
        }
        for (key, (turn, count, what)) in other.faults {
            self.faults.entry(key).and_modify(|had| had.1 += count).or_insert((turn, count, what));
        }
    }
}

/// Runs turns `from..from + count`.
pub fn turns(from: u64, count: u64, keep: Option<&Path>) -> Turns {
    remember_panics();
    let mut all = Turns::default();
    let mut at = from;
    while at < from + count {
        let upto = (at + A_THREAD).min(from + count);
        let keep = keep.map(Path::to_path_buf);
        let part = std::thread::spawn(move || some(at, upto, keep)).join().unwrap();
        all.add(part);
        at = upto;
        if all.done.is_multiple_of(10_000) && count > 20_000 {
            let out: u64 = all.came.iter().filter(|((_, came), _)| *came == Came::Out).map(|(_, n)| n).sum();
            println!(
                "{} executions done, next turn {at}, {out} pages, {} kinds of fault",
                all.done,
                all.faults.len()
            );
        }
    }
    all
}

fn some(from: u64, upto: u64, keep: Option<PathBuf>) -> Turns {
    let setting =
        Setting { today: made::day("2026-03-14"), rules: made::rules(), schemes: Schemes::default() };
    let folder = tempfile::tempdir().unwrap();
    let mut all = Turns::default();
    for turn in from..upto {
        let given = case::of(turn);
        let mut dice = Dice::of(turn ^ 0x6675_7a7a);
        let mut wrong = Vec::new();
        let began = Instant::now();
        RUNNING.set(true);
        let ended = catch_unwind(AssertUnwindSafe(|| run(&given, &setting, &mut dice, &mut wrong)));
        RUNNING.set(false);
        let Ok(came) = ended else {
            let place = PANIC.take().unwrap_or_default();
            wrong.push(format!("panic: {place}"));
            note(&mut all, &given, turn, wrong, keep.as_deref());
            continue;
        };
        if began.elapsed() > LONGEST {
            wrong.push(format!("slow: {:?}", began.elapsed()));
        }
        *all.came.entry((given.command, came)).or_default() += 1;
        if dice.below(PROGRAM) == 0 {
            all.programs += 1;
            program::run(&given, folder.path(), &mut dice, &mut wrong);
        }
        all.done += 1;
        note(&mut all, &given, turn, wrong, keep.as_deref());
    }
    all
}

fn note(all: &mut Turns, case: &Case, turn: u64, wrong: Vec<String>, keep: Option<&Path>) {
    for what in wrong {
        let kind: String = what.chars().filter(|c| !c.is_ascii_digit()).take(50).collect();
        let had = all.faults.entry(kind).or_insert((turn, 0, what.clone()));
        had.1 += 1;
        if let (Some(keep), 1) = (keep, had.1) {
            let place = keep.join(format!("{turn}"));
            let _ = std::fs::create_dir_all(&place);
            for (name, bytes) in &case.files {
                let _ = std::fs::write(place.join(Path::new(name).file_name().unwrap()), bytes);
            }
            let _ = std::fs::write(place.join("what.txt"), format!("{:?}\n{what}\n", case.command));
        }
    }
}

/// A panic of a case is kept with its place; any other is told as always.
fn remember_panics() {
    static ONCE: Once = Once::new();
    ONCE.call_once(|| {
        let before = std::panic::take_hook();
        std::panic::set_hook(Box::new(move |info| {
            if RUNNING.with_borrow(|running| *running) {
                PANIC.set(Some(info.to_string()));
            } else {
                before(info);
            }
        }));
    });
}

fn number(name: &str, otherwise: u64) -> u64 {
    std::env::var(name).ok().and_then(|text| text.parse().ok()).unwrap_or(otherwise)
}

#[track_caller]
fn hold(from: u64, count: u64) {
    let keep = std::env::var_os("TAPELINE_FUZZ_KEEP").map(PathBuf::from);
    let all = turns(from, count, keep.as_deref());
    let came: Vec<String> =
        all.came.iter().map(|((command, came), n)| format!("{} {came:?} {n}", command.word())).collect();
    println!(
        "{} executions from turn {from}, {} of the program; {}",
        all.done,
        all.programs,
        came.join(", ")
    );
    for (turn, count, what) in all.faults.values() {
        println!("FAULT at turn {turn}, {count} times: {what}");
    }
    assert!(all.faults.is_empty(), "{} kinds of fault", all.faults.len());
}

/// A few turns with every run of the tests.
#[test]
fn a_few_turns_break_no_law() {
    hold(1, 300);
}

/// As many as `TAPELINE_FUZZ_COUNT` says, from `TAPELINE_FUZZ_FROM`.
#[test]
#[ignore = "long; .ci/fuzz runs it"]
fn fuzz_long() {
    hold(number("TAPELINE_FUZZ_FROM", 1), number("TAPELINE_FUZZ_COUNT", 50_000));
}
