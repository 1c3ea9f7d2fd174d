//! Where the report goes: full disks, closed pipes, files that are there already, standard input.

use std::io::Read as _;
use std::path::Path;
use std::process::{Command, Stdio};

use crate::support::{folder, root, run, run_in};

const CHECK: [&str; 6] =
    ["check", "demo/first-visit.yaml", "--chart", "demo/sleeve-chart-b.yaml", "--today", "2026-03-14"];

fn to(file: &str, more: &[&str]) -> crate::support::Ran {
    run(&[&CHECK[..], &["-o", file], more].concat())
}

fn names(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    names
}

#[test]
fn a_file_holds_what_standard_output_would() {
    let folder = folder(&[]);
    let file = folder.path().join("report.txt").display().to_string();
    let ran = to(&file, &[]).expect_status(0);
    assert!(ran.stdout.is_empty() && ran.stderr.is_empty(), "{}{}", ran.stdout, ran.stderr);
    assert_eq!(std::fs::read_to_string(&file).unwrap(), run(&CHECK).stdout);
    assert_eq!(names(folder.path()), ["report.txt"], "nothing else is left");
    assert_eq!(to("-", &[]).expect_status(0).stdout, run(&CHECK).stdout);
}

#[test]
fn an_existing_file_is_kept_unless_forced() {
    let folder = folder(&[("report.txt", "kept")]);
    let file = folder.path().join("report.txt").display().to_string();
    let ran = to(&file, &[]).expect_status(2);
    assert!(
        ran.stdout.is_empty()
            && ran.stderr.contains("exists and is kept")
            && ran.stderr.contains("`--force`")
    );
    assert_eq!(std::fs::read_to_string(&file).unwrap(), "kept");
    to(&file, &["--force"]).expect_status(0);
    assert_ne!(std::fs::read_to_string(&file).unwrap(), "kept");
    assert_eq!(names(folder.path()), ["report.txt"]);
}

#[test]
fn no_report_leaves_an_existing_file_alone() {
    let folder = folder(&[("report.txt", "kept"), ("bad.yaml", "tapeline: record/1\n")]);
    let args = ["check", "bad.yaml", "-o", "report.txt", "--force", "--today", "2026-03-14"];
    run_in(folder.path(), &args, None).expect_status(2);
    assert_eq!(std::fs::read_to_string(folder.path().join("report.txt")).unwrap(), "kept");
}

#[test]
fn places_that_cannot_be_written_are_told() {
    let folder = folder(&[]);
    let inside = |name: &str| folder.path().join(name).display().to_string();
    let ran = to(&inside("no/such/folder.txt"), &[]).expect_status(2);
    assert!(ran.stderr.contains("could not be written"), "{}", ran.stderr);
    let ran = to(&inside("."), &["--force"]).expect_status(2);
    assert!(ran.stderr.contains("is a directory; name a file in it"), "{}", ran.stderr);
    assert!(names(folder.path()).is_empty());
}

#[test]
#[cfg(unix)]
fn an_unwritable_folder_is_told_and_left_clean() {
    use std::os::unix::fs::PermissionsExt as _;
    let folder = folder(&[]);
    std::fs::set_permissions(folder.path(), std::fs::Permissions::from_mode(0o555)).unwrap();
    let file = folder.path().join("report.txt");
    // The user `root` may write anywhere; then there is nothing to see here.
    let free = std::fs::File::create(folder.path().join("probe")).is_ok();
    let ran = to(&file.display().to_string(), &[]);
    std::fs::set_permissions(folder.path(), std::fs::Permissions::from_mode(0o755)).unwrap();
    if !free {
        assert_eq!(ran.status, 2);
        assert!(ran.stderr.contains("could not be written"), "{}", ran.stderr);
        assert!(names(folder.path()).is_empty());
    }
}

#[test]
#[cfg(unix)]
fn a_link_stays_a_link() {
    let folder = folder(&[("report.txt", "old")]);
    std::os::unix::fs::symlink(folder.path().join("report.txt"), folder.path().join("link.txt")).unwrap();
    to(&folder.path().join("link.txt").display().to_string(), &["--force"]).expect_status(0);
    assert!(folder.path().join("link.txt").is_symlink());
    assert_ne!(std::fs::read_to_string(folder.path().join("report.txt")).unwrap(), "old");
}

#[test]
#[cfg(target_os = "linux")]
fn a_device_is_written_into_and_never_replaced() {
    use std::os::unix::fs::FileTypeExt as _;
    for more in [&[][..], &["--force"]] {
        to("/dev/null", more).expect_status(0);
        assert!(std::fs::metadata("/dev/null").unwrap().file_type().is_char_device());
        let ran = to("/dev/full", more).expect_status(2);
        assert!(ran.stderr.contains("could not be written"), "{}", ran.stderr);
    }
}

#[test]
#[cfg(target_os = "linux")]
fn a_full_disk_is_no_report() {
    let full = std::fs::File::options().write(true).open("/dev/full").unwrap();
    for format in ["text", "json"] {
        let out = Command::new(env!("CARGO_BIN_EXE_tapeline"))
            .args(CHECK)
            .args(["--format", format])
            .current_dir(root())
            .stdout(full.try_clone().unwrap())
            .stderr(Stdio::piped())
            .output()
            .unwrap();
        assert_eq!(out.status.code(), Some(2));
        let said = String::from_utf8(out.stderr).unwrap();
        assert!(said.starts_with("tapeline: the report could not be written to standard output"), "{said}");
    }
}

#[test]
fn a_reader_that_goes_away_is_no_error() {
    let mut child = Command::new(env!("CARGO_BIN_EXE_tapeline"))
        .args(CHECK)
        .current_dir(root())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let status = child.wait().unwrap();
    let mut said = String::new();
    child.stderr.take().unwrap().read_to_string(&mut said).unwrap();
    assert_eq!((status.code(), said.as_str()), (Some(0), ""));
}

#[test]
fn a_dash_is_standard_input() {
    let record = std::fs::read_to_string(root().join("demo/first-visit.yaml")).unwrap();
    let args = ["check", "-", "--chart", "demo/sleeve-chart-b.yaml", "--today", "2026-03-14"];
    let ran = run_in(&root(), &args, Some(&record)).expect_status(0);
    assert_eq!(ran.stdout, run(&CHECK).stdout);
    let chart = std::fs::read_to_string(root().join("demo/sleeve-chart-b.yaml")).unwrap();
    let args = ["check", "first-visit.yaml", "--chart", "-", "--today", "2026-03-14"];
    let ran = run_in(&root().join("demo"), &args, Some(&chart)).expect_status(0);
    assert_eq!(ran.stdout, run(&CHECK).stdout);
    let args = ["check", "-", "--chart", "-", "--today", "2026-03-14"];
    let ran = run_in(&root(), &args, Some(&record)).expect_status(2);
    assert!(ran.stderr.contains("`-` stands for two files"), "{}", ran.stderr);
}

#[test]
fn a_wrong_date_is_misuse() {
    for today in ["14.03.2026", "2026-02-30", "today", "20260314", "2026-3-14", ""] {
        let ran = run(&["check", "demo/leg.yaml", "--today", today]).expect_status(2);
        assert!(ran.stdout.is_empty() && ran.stderr.contains("--today"), "{today}: {}", ran.stderr);
    }
}

#[test]
fn the_four_statuses() {
    let status = |record: &str, chart: &str| {
        let (record, chart) = (format!("demo/{record}.yaml"), format!("demo/{chart}.yaml"));
        let args = ["check", &record, "--chart", &chart, "--today", "2026-03-14"];
        let ran = run(&args);
        assert!(ran.stderr.is_empty() && !ran.stdout.is_empty());
        ran.status
    };
    assert_eq!(status("first-visit", "sleeve-chart-b"), 0, "try-on");
    assert_eq!(status("first-visit", "sleeve-chart-a"), 1, "made to measure");
    assert_eq!(status("first-visit", "sleeve-chart-e"), 1, "unproven");
    assert_eq!(status("blank-screening", "sleeve-chart-b"), 1, "incomplete");
    assert_eq!(status("stop", "stocking-chart-b"), 3, "stop");
    run(&["check", "demo/first-visit.yaml", "--chart", "demo/stocking-chart-b.yaml"]).expect_status(2);
    // No chart and nothing against a fitting: a report without outcome is no fault.
    run(&["check", "demo/first-visit.yaml", "--today", "2026-03-14"]).expect_status(0);
    // A script that asks for help gets it on standard output.
    assert!(run(&["--help"]).expect_status(0).stdout.contains("3 stop"));
}
