//! The built program: its streams, its files, its statuses.

use std::path::Path;
use std::process::Command;

use crate::support::{Ran, folder, run, run_in};

const RECORD: &str = "tapeline: record/1
client: K-0001
measured_on: 2026-03-14
units: {length: cm}
limb: left arm
affected: left
positions_from: wrist
marks:
  - {landmark: wrist, at: 0, girth: 16.9}
  - {landmark: forearm, at: 14, girth: 25.6}
  - {landmark: axilla, at: 42, girth: 34.0}
";

const CHART: &str = "tapeline: chart/1
label: sleeve chart (invented)
limb: arm
units: {length: cm}
sizes:
  - {size: \"1\", girths: {wrist: 16-18, forearm: 24-27, axilla: 32-36}}
";

/// A line of the shell, in a folder; the program stands in `$T`.
fn shell(folder: &Path, line: &str) -> Ran {
    let out = Command::new("sh")
        .args(["-c", line])
        .current_dir(folder)
        .env("T", env!("CARGO_BIN_EXE_tapeline"))
        .env_remove("COLUMNS")
        .output()
        .unwrap();
    Ran {
        args: vec![line.to_owned()],
        status: out.status.code().unwrap_or(-1),
        stdout: String::from_utf8_lossy(&out.stdout).into_owned(),
        stderr: String::from_utf8_lossy(&out.stderr).into_owned(),
    }
}

fn clinic() -> tempfile::TempDir {
    folder(&[("r.yaml", RECORD), ("c.yaml", CHART)])
}

// POSIX: /dev/full answers every write with ENOSPC; `>&-` closes a stream (Linux full(4), sh(1)).
#[cfg(target_os = "linux")]
#[test]
fn a_stream_that_is_full_or_closed_is_an_output_problem() {
    let folder = clinic();
    for line in [
        "$T --help >/dev/full",
        "$T --help >&-",
        "$T --version >/dev/full",
        "$T check r.yaml c.yaml --today 2026-03-14 >/dev/full",
        "$T check r.yaml c.yaml --today 2026-03-14 >&-",
        "$T check missing.yaml 2>/dev/full",
        "$T check missing.yaml 2>&-",
        "$T --nonsense 2>/dev/full",
        "$T inspect c.yaml -o out.txt 2>/dev/full",
        "$T print manual >/dev/full",
        "$T new chart >/dev/full",
    ] {
        let ran = shell(folder.path(), line).expect_status(2);
        assert!(!ran.stderr.contains("panicked"), "{line}: {}", ran.stderr);
    }
    // A reader that goes away is no error.
    let ran = shell(folder.path(), "$T explain --all | head -n 1; exit 0").expect_status(0);
    assert!(ran.stderr.is_empty(), "{}", ran.stderr);
    // An open null device is a place like any other.
    shell(folder.path(), "$T inspect c.yaml >/dev/null").expect_status(0);
    shell(folder.path(), "$T inspect c.yaml <&-").expect_status(0);
    // So it is when it is open for both (sh(1), `<>`), as schedulers give it; the runtime's own stand-in for a
    // closed stream looks the same.
    shell(folder.path(), "$T inspect c.yaml 1<>/dev/null 2<>/dev/null").expect_status(0);
    let ran = shell(folder.path(), "$T inspect c.yaml >&-").expect_status(2);
    assert!(ran.stderr.contains("standard output is closed"), "{}", ran.stderr);
}

#[test]
fn every_error_has_one_form() {
    let folder = clinic();
    for args in [
        &["check"][..],
        &["chek", "r.yaml"],
        &["check", "--chart", "c.yaml"],
        &["check", "missing.yaml"],
        &["check", "c.yaml"],
        &["check", "r.yaml", "--today", "14.3.2026"],
        &["check", "r.yaml", "--rules", "defualt"],
        &["sheet", "r.yaml", "-o", "r.doc"],
        &["explain", "qwertz"],
        &["inspect", "."],
        &["new", "record", "-"],
    ] {
        let ran = run_in(folder.path(), args, None).expect_status(2);
        assert!(ran.stdout.is_empty(), "{args:?}: {}", ran.stdout);
        assert!(ran.stderr.starts_with("tapeline: error: "), "{args:?}: {}", ran.stderr);
    }
    let ran = run_in(folder.path(), &["chek", "r.yaml"], None);
    assert!(ran.stderr.contains("check"), "{}", ran.stderr);
    let ran = run_in(folder.path(), &["check", "r.yaml", "--rules", "defualt"], None);
    assert!(ran.stderr.contains("did you mean `default`?"), "{}", ran.stderr);
    let ran = run_in(folder.path(), &["check", "r.yaml", "--formt", "json"], None).expect_status(2);
    assert!(ran.stderr.contains("--format"), "{}", ran.stderr);
}

#[test]
fn files_stand_in_any_order_and_tell_their_kind() {
    let folder = clinic();
    let one = run_in(folder.path(), &["check", "r.yaml", "c.yaml", "--today", "2026-03-14"], None);
    let other = run_in(folder.path(), &["check", "c.yaml", "r.yaml", "--today", "2026-03-14"], None);
    assert_eq!(one.stdout, other.stdout);
    assert!(one.stderr.is_empty() && !one.stdout.is_empty(), "{}", one.stderr);
    let piped = run_in(folder.path(), &["check", "-", "c.yaml", "--today", "2026-03-14"], Some(RECORD));
    assert_eq!(piped.status, one.status, "{}", piped.stderr);
    std::fs::write(folder.path().join("x.yaml"), "client: K-1\n").unwrap();
    let ran = run_in(folder.path(), &["check", "x.yaml"], None).expect_status(2);
    assert!(
        ran.stderr.starts_with("tapeline: error: x.yaml:1:1: does not start with its kind"),
        "{}",
        ran.stderr
    );
    std::fs::write(folder.path().join("x.yaml"), "tapeline: record/2\n").unwrap();
    let ran = run_in(folder.path(), &["check", "x.yaml"], None).expect_status(2);
    assert!(ran.stderr.contains("it reads `record/1`"), "{}", ran.stderr);
    let ran = run_in(folder.path(), &["volume", "r.yaml", "c.yaml"], None).expect_status(2);
    assert!(
        ran.stderr.contains("c.yaml:1:1: is a size chart, but `volume` takes a record"),
        "{}",
        ran.stderr
    );
    let ran = run_in(folder.path(), &["check", "-", "-"], Some("")).expect_status(2);
    assert!(ran.stderr.contains("`-` stands for two files"), "{}", ran.stderr);
}

#[cfg(unix)]
#[test]
fn what_is_no_plain_file_is_told_at_once_with_who_named_it() {
    let folder = clinic();
    let chart = CHART.replace("limb: arm", "limb: arm\nfabric: pipe");
    std::fs::write(folder.path().join("f.yaml"), chart).unwrap();
    shell(folder.path(), "mkfifo pipe").expect_status(0);
    let start = std::time::Instant::now();
    let ran = run_in(folder.path(), &["check", "pipe"], None).expect_status(2);
    assert!(ran.stderr.contains("pipe: is a pipe or device, but a record"), "{}", ran.stderr);
    let ran = run_in(folder.path(), &["check", "r.yaml", "f.yaml"], None).expect_status(2);
    let wanted =
        "f.yaml:4:9: fabric: the fabric file `pipe`: is a pipe or device, but a fabric file is wanted";
    assert!(ran.stderr.contains(wanted), "{}", ran.stderr);
    assert!(start.elapsed().as_secs() < 5);
}

#[cfg(unix)]
#[test]
fn outputs_are_whole_private_and_never_over_what_is_there() {
    use std::os::unix::fs::PermissionsExt as _;
    let folder = clinic();
    let mode = |name: &str| std::fs::metadata(folder.path().join(name)).unwrap().permissions().mode() & 0o777;
    let args = |extra: &[&str]| {
        let mut all = vec!["inspect", "c.yaml"];
        all.extend_from_slice(extra);
        run_in(folder.path(), &all, None)
    };
    let ran = args(&["-o", "out.txt"]).expect_status(0);
    assert_eq!(ran.stderr, "tapeline: wrote out.txt\n");
    assert_eq!(mode("out.txt"), 0o600);
    let first = std::fs::read(folder.path().join("out.txt")).unwrap();
    let ran = args(&["-o", "out.txt"]).expect_status(2);
    assert!(ran.stderr.contains("out.txt exists and is kept"), "{}", ran.stderr);
    // The mode of the old file is kept.
    shell(folder.path(), "chmod 640 out.txt").expect_status(0);
    args(&["-o", "out.txt", "--force"]).expect_status(0);
    assert_eq!(mode("out.txt"), 0o640);
    assert_eq!(std::fs::read(folder.path().join("out.txt")).unwrap(), first);
    // A narrower umask is respected.
    shell(folder.path(), "umask 277; $T inspect c.yaml -o narrow.txt").expect_status(0);
    assert_eq!(mode("narrow.txt"), 0o400);
    // An input is never written over, by any name of it.
    shell(folder.path(), "ln c.yaml hard.yaml; ln -s c.yaml soft.yaml").expect_status(0);
    for name in ["c.yaml", "./c.yaml", "hard.yaml", "soft.yaml"] {
        let ran = args(&["-o", name, "--force", "--format", "text"]).expect_status(2);
        assert!(ran.stderr.contains("is an input of this run"), "{name}: {}", ran.stderr);
    }
    assert_eq!(std::fs::read_to_string(folder.path().join("c.yaml")).unwrap(), CHART);
    // A link is followed, and that is said; one to nothing is refused.
    shell(folder.path(), "ln -s out.txt link.txt; ln -s nothing.txt dead.txt").expect_status(0);
    let ran = args(&["-o", "link.txt", "--force"]).expect_status(0);
    assert!(ran.stderr.contains("wrote link.txt (a link; the file behind it is"), "{}", ran.stderr);
    assert!(std::fs::symlink_metadata(folder.path().join("link.txt")).unwrap().is_symlink());
    let ran = args(&["-o", "dead.txt", "--force"]).expect_status(2);
    assert!(ran.stderr.contains("is a link to a file that is not there"), "{}", ran.stderr);
    let ran = args(&["-o", "."]).expect_status(2);
    assert!(ran.stderr.contains("is a folder"), "{}", ran.stderr);
    args(&["-o", "/dev/null"]).expect_status(0);
}

#[cfg(target_os = "linux")]
#[test]
fn what_a_killed_run_left_is_cleared_by_the_next() {
    let folder = clinic();
    // No process has this number: the highest that Linux gives is 4194304 (proc(5)).
    let left = folder.path().join(".out.txt.4194305.tapeline-part");
    std::fs::write(&left, "half").unwrap();
    // One of a process that runs, this one, stays.
    let own = folder.path().join(format!(".out.txt.{}.tapeline-part", std::process::id()));
    std::fs::write(&own, "half").unwrap();
    run_in(folder.path(), &["inspect", "c.yaml", "-o", "out.txt"], None).expect_status(0);
    assert!(!left.exists() && own.exists());
}

#[test]
fn of_two_runs_that_write_one_name_one_wins() {
    for _ in 0..20 {
        let folder = clinic();
        let start = || {
            Command::new(env!("CARGO_BIN_EXE_tapeline"))
                .args(["inspect", "c.yaml", "-o", "out.txt"])
                .current_dir(folder.path())
                .stderr(std::process::Stdio::piped())
                .spawn()
                .unwrap()
        };
        let both = [start(), start()];
        let mut statuses: Vec<i32> =
            both.into_iter().map(|run| run.wait_with_output().unwrap().status.code().unwrap()).collect();
        statuses.sort_unstable();
        assert_eq!(statuses, [0, 2]);
        let names: Vec<String> = std::fs::read_dir(folder.path())
            .unwrap()
            .map(|entry| entry.unwrap().file_name().into_string().unwrap())
            .filter(|name| name.contains("part"))
            .collect();
        assert!(names.is_empty(), "{names:?}");
    }
}

/// A kill at any moment: nothing half under the final name, nothing of the inputs touched.
#[cfg(unix)]
#[test]
fn a_killed_run_leaves_nothing_half() {
    let folder = clinic();
    let whole = {
        run_in(folder.path(), &["explain", "--all", "-o", "whole.txt"], None).expect_status(0);
        std::fs::read(folder.path().join("whole.txt")).unwrap()
    };
    for turn in 0..40_u64 {
        let mut run = Command::new(env!("CARGO_BIN_EXE_tapeline"))
            .args(["explain", "--all", "-o", "out.txt", "--force"])
            .current_dir(folder.path())
            .stderr(std::process::Stdio::null())
            .spawn()
            .unwrap();
        std::thread::sleep(std::time::Duration::from_micros(turn * 700));
        let _ = run.kill();
        let _ = run.wait();
        if let Ok(found) = std::fs::read(folder.path().join("out.txt")) {
            assert_eq!(found, whole, "turn {turn}");
        }
    }
    assert_eq!(std::fs::read_to_string(folder.path().join("r.yaml")).unwrap(), RECORD);
}

// IANA time zones: Kiritimati is 14 hours ahead of UTC, and `Etc/GMT+12` 12 hours behind, so their days
// always differ.
#[cfg(unix)]
#[test]
fn the_day_follows_the_time_zone() {
    let folder = clinic();
    let day = |zone: &str| {
        let ran = shell(folder.path(), &format!("TZ={zone} $T check r.yaml --format json"));
        let said = ran.stderr.clone();
        (ran.json()["today"].as_str().unwrap().to_owned(), said)
    };
    let (east, said) = day("Pacific/Kiritimati");
    assert!(said.is_empty(), "{said}");
    let (west, _) = day("Etc/GMT+12");
    assert!(east > west, "{east} and {west}");
    assert_eq!(day(":Pacific/Kiritimati").0, east);
    assert_eq!(day("LINT-14").0, east);
    let (_, said) = day("Nowhere/Town");
    assert!(said.contains("the time zone `Nowhere/Town` of TZ is not known"), "{said}");
}

#[test]
fn help_opens_with_examples_and_names_every_command() {
    let help = run(&["--help"]).expect_status(0).stdout;
    for (group, commands) in [
        ("Limb", &["new", "check", "sheet", "volume"][..]),
        ("Garment", &["gradient", "pattern"]),
        ("Charts and fabrics", &["inspect", "fabric"]),
        ("Reference", &["explain", "print"]),
    ] {
        assert!(help.contains(&format!("\n{group}\n")), "{group} in\n{help}");
        for command in commands {
            assert!(help.contains(&format!("\n  {command} ")), "{command} in\n{help}");
            let own = run(&[command, "--help"]).expect_status(0).stdout;
            assert!(own.starts_with("Examples:\n  tapeline "), "{command}: {own}");
        }
    }
    for line in help.lines() {
        assert!(line.chars().count() <= 110, "{line}");
    }
}

#[test]
fn templates_are_read_once_they_are_filled() {
    for kind in ["record", "chart", "garment", "fabric"] {
        let template = run(&["new", kind]).expect_status(0).stdout;
        assert!(template.contains(&format!("\ntapeline: {kind}/1\n")), "{template}");
        let filled = template
            .replacen("client: ", "client: K-1", 1)
            .replacen("measured_on: ", "measured_on: 2026-03-14", 1)
            .replacen("\nlimb: ", if kind == "record" { "\nlimb: left arm" } else { "\nlimb: arm" }, 1)
            .replacen("affected: ", "affected: left", 1)
            .replacen("positions_from: ", "positions_from: wrist", 1)
            .replacen("label: ", "label: x", 1)
            .replacen("{landmark: , at: , girth: }", "{landmark: wrist, at: 0, girth: 17}", 1)
            .replacen("{landmark: , at: , girth: }", "{landmark: forearm, at: 14, girth: 26}", 1)
            .replacen("{landmark: , at: , girth: }", "{landmark: axilla, at: 42, girth: 34}", 1)
            .replacen("- size: ", "- size: a", 1)
            .replacen(
                "girths: {wrist: , forearm: , axilla: }",
                "girths: {wrist: 16-18, forearm: 24-27, axilla: 30-36}",
                1,
            )
            .replacen("\n  wrist: ", "\n  wrist: 6.5", 1)
            .replacen("\n  forearm: ", "\n  forearm: 9.7", 1)
            .replacen("\n  axilla: ", "\n  axilla: 12.8", 1)
            .replacen("{stretch: , tension: }", "{stretch: 20 %, tension: 60 N/m}", 1);
        let read = run_in(std::env::temp_dir().as_path(), &["inspect", "-"], Some(&filled));
        assert_eq!(read.status, 0, "{filled}\n{}", read.stderr);
    }
}

#[test]
fn a_guided_record_is_kept_answer_by_answer() {
    let folder = folder(&[]);
    let new = |answers: &[&str]| {
        let typed = answers.iter().fold(String::new(), |text, one| text + one + "\n");
        run_in(folder.path(), &["new", "record", "arm.yaml", "--today", "2026-03-14"], Some(&typed))
    };
    let text = || std::fs::read_to_string(folder.path().join("arm.yaml")).unwrap();
    // Client, limb, then the input ends: both are on disk.
    let ran = new(&["K-0417", "left arm"]).expect_status(1);
    assert!(ran.stderr.contains("To go on: the same command again."), "{}", ran.stderr);
    assert!(text().contains("client: K-0417\nlimb: left arm\n"), "{}", text());
    // On from there: back once, a wrong answer, a comma, a repeat, everything passed over that may be.
    let mut answers = vec!["right", "back", "left", "", "M2", "unknown", ""];
    // A distance typed twice is no second tape value.
    answers.extend(["16,9", "skip", "abc", "14 14 25.6", "14 25.6 25,8", "", "17", "30.5", "12 34.2", "end"]);
    answers.extend(["", "", "0"]);
    answers.extend(["0", "1", "u", "0", "0", "0", "0", "0", "0"]);
    answers.extend(["", "0", "71"]);
    let ran = new(&answers);
    assert_eq!(ran.status, 0, "{}\n{}", ran.stderr, text());
    assert_eq!(ran.stderr.matches("14 and 25.6 are too far apart to be tape values of one girth").count(), 1);
    let text = text();
    for line in [
        "affected: left",
        "  - {landmark: wrist, at: 0, girth: 16.9}",
        "  - {landmark: forearm, at: 14, girth: [25.6, 25.8]}",
        "  - {landmark: upper-arm, at: 31, girth: 30.5}",
        "  - {landmark: axilla, at: 43, girth: 34.2}",
        "  unknown: [feeling]",
        "allergies: none",
        "weight: 71 kg",
    ] {
        assert!(text.contains(line), "{line} in\n{text}");
    }
    assert!(!text.contains("left out"), "{text}");
    let report =
        run_in(folder.path(), &["check", "arm.yaml", "--today", "2026-03-14", "--format", "json"], None);
    assert_eq!(report.json()["record"]["client"], "K-0417");
}

#[cfg(unix)]
#[test]
fn a_second_writer_of_one_file_is_refused() {
    let folder = folder(&[]);
    let ran = shell(
        folder.path(),
        "mkfifo typed; $T new record arm.yaml <typed 2>first & exec 3>typed; echo K-1 >&3; sleep 1; \
         echo K-2 | $T new record arm.yaml; code=$?; exec 3>&-; wait; exit $code",
    );
    let ran = ran.expect_status(2);
    assert!(ran.stderr.contains("arm.yaml is being written by another run"), "{}", ran.stderr);
    let text = std::fs::read_to_string(folder.path().join("arm.yaml")).unwrap();
    assert!(text.contains("client: K-1"), "{text}");
}

#[test]
fn schemas_are_json_and_name_every_key() {
    for kind in tapeline::input::FileKind::ALL {
        let schema = run(&["print", "schema", kind.word()]).expect_status(0).json();
        for key in kind.keys().keys {
            assert!(schema["properties"][key.name].is_object(), "{}: {}", kind.word(), key.name);
        }
        assert_eq!(schema["properties"]["tapeline"]["const"], kind.tag());
    }
}

// A chart that prints 14-15.9 and 16-17.9 means girths read to 0.1 cm: said once, where every gap is that step.
#[test]
fn gaps_of_one_printed_step_are_told_their_key() {
    let chart = |second: &str, step: &str| {
        format!(
            "tapeline: chart/1\nlabel: a\nlimb: arm\nunits: {{length: cm}}\n{step}sizes:\n  - {{size: \"1\", girths: {{wrist: 14-15.9, forearm: 22-24.9}}}}\n  - {{size: \"2\", girths: {{wrist: {second}-18, forearm: 25-28}}}}\n"
        )
    };
    let told = |second: &str, step: &str| {
        let ran = run_in(std::env::temp_dir().as_path(), &["inspect", "-"], Some(&chart(second, step)));
        ran.stdout
            .split_whitespace()
            .collect::<Vec<_>>()
            .join(" ")
            .contains("write `printed_step: 0.1 cm` in it")
    };
    assert!(told("16", ""));
    assert!(!told("16.1", ""), "gaps of two widths");
    assert!(!told("15.9", ""), "one gap");
    assert!(!told("16", "printed_step: 0.1 cm\n"));
}
