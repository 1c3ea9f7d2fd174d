//! `batch` interrupted by the keyboard (SIGINT) or told to end (SIGTERM), by running the built program.
#![cfg(unix)]

use std::fs;
use std::io::{BufRead as _, BufReader, Read as _, Write as _};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use crate::source::root;

const HEAD: &str = "id,wrist_cm,forearm_cm,elbow_cm,upper-arm_cm,axilla_cm\n";
const ROW: &str = "a,16.9,25.7,27.6,32.4,37.2\n";

fn started(folder: &Path, arguments: &[&str]) -> Child {
    Command::new(env!("CARGO_BIN_EXE_tapeline"))
        .arg("batch")
        .args(arguments)
        .arg(root().join("demo/sleeve-chart-b.yaml"))
        .current_dir(folder)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap()
}

/// Hidden parts of an output.
fn parts(folder: &Path) -> Vec<String> {
    let all = fs::read_dir(folder).unwrap().flatten();
    let names = all.map(|entry| entry.file_name().to_string_lossy().into_owned());
    names.filter(|name| name.ends_with(".tapeline-part")).collect()
}

fn until(what: &str, mut holds: impl FnMut() -> bool) {
    let begun = Instant::now();
    while !holds() {
        assert!(begun.elapsed() < Duration::from_mins(1), "{what}");
        std::thread::sleep(Duration::from_millis(5));
    }
}

fn signal(child: &Child, name: &str) {
    let told = Command::new("kill").args([name, &child.id().to_string()]).status().unwrap();
    assert!(told.success());
}

/// The status and what was said, once it has ended.
fn ended(mut child: Child) -> (Option<i32>, String) {
    let mut said = String::new();
    child.stderr.take().unwrap().read_to_string(&mut said).unwrap();
    (child.wait().unwrap().code(), said)
}

// A table that never ends: a file that is there stays as it was, one that is not is not written.
#[test]
fn a_stream_interrupted_leaves_the_old_file() {
    for (name, old) in [("-INT", true), ("-TERM", true), ("-INT", false), ("-TERM", false)] {
        let folder = tempfile::tempdir().unwrap();
        let out = folder.path().join("out.csv");
        if old {
            fs::write(&out, "the old rows\n").unwrap();
        }
        let mut child = started(folder.path(), &["-", "-o", "out.csv", "--force"]);
        let mut rows = child.stdin.take().unwrap();
        rows.write_all(format!("{HEAD}{}", ROW.repeat(3000)).as_bytes()).unwrap();
        until("the output begins", || !parts(folder.path()).is_empty());
        signal(&child, name);
        let (status, said) = ended(child);
        assert_eq!(status, Some(2), "{said}");
        let left = if old { "is as it was" } else { "was not written" };
        assert!(said.starts_with("tapeline: error: interrupted; ") && said.contains("out.csv"), "{said}");
        assert!(said.contains(left) && said.lines().count() == 1, "{said}");
        assert_eq!(parts(folder.path()), Vec::<String>::new());
        assert_eq!(fs::read_to_string(&out).ok().as_deref(), old.then_some("the old rows\n"));
    }
}

// In the middle of a long table in a file, all workers busy.
#[test]
fn a_long_run_interrupted_leaves_nothing() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("limbs.csv"), format!("{HEAD}{}", ROW.repeat(60_000))).unwrap();
    let child = started(folder.path(), &["limbs.csv", "-o", "out.csv"]);
    until("the output begins", || !parts(folder.path()).is_empty());
    std::thread::sleep(Duration::from_millis(200));
    signal(&child, "-INT");
    let (status, said) = ended(child);
    assert_eq!(status, Some(2), "{said}");
    let mut names: Vec<_> =
        fs::read_dir(folder.path()).unwrap().flatten().map(|one| one.file_name()).collect();
    names.sort();
    assert_eq!(names, ["limbs.csv"], "{said}");
}

// Rows on standard output end with a whole row, and the status tells.
#[test]
fn rows_into_a_pipe_end_whole() {
    let folder = tempfile::tempdir().unwrap();
    let mut child = started(folder.path(), &["-", "--columns", "id,verdict,size,chart", "--threads", "2"]);
    let mut rows = child.stdin.take().unwrap();
    let feeding = std::thread::spawn(move || {
        let _ = rows.write_all(HEAD.as_bytes());
        while rows.write_all(ROW.repeat(1000).as_bytes()).is_ok() {}
    });
    let mut out = BufReader::new(child.stdout.take().unwrap());
    let mut first = String::new();
    for _ in 0..100 {
        out.read_line(&mut first).unwrap();
    }
    signal(&child, "-INT");
    let mut rest = String::new();
    out.read_to_string(&mut rest).unwrap();
    let (status, said) = ended(child);
    feeding.join().unwrap();
    assert_eq!(status, Some(2), "{said}");
    assert_eq!(said, "tapeline: error: interrupted; the rows so far are written, and the rest is missing\n");
    assert!(rest.ends_with('\n'));
    let whole = "a,size,3 wide,sleeve chart B (invented)";
    assert!(rest.lines().all(|line| line == whole), "{:?}", rest.lines().find(|line| *line != whole));
}

// A run that ends by itself: nothing but what is meant on standard error, where that is no terminal.
#[test]
fn no_progress_is_drawn_into_a_pipe() {
    let folder = tempfile::tempdir().unwrap();
    let rows: Vec<String> = (0..3000).map(|at| format!("{at}{ROW}")).collect();
    fs::write(folder.path().join("limbs.csv"), format!("{HEAD}{}", rows.concat())).unwrap();
    let child = started(folder.path(), &["limbs.csv", "-o", "out.csv", "--columns", "id,size"]);
    let (status, said) = ended(child);
    assert_eq!((status, said.lines().count()), (Some(0), 1), "{said}");
    assert!(said.starts_with("tapeline: wrote ") && said.ends_with("out.csv\n"), "{said}");
}
