//! What the tests share: the built program, run in the project's folder.

use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

/// What a run of the program came to.
pub struct Ran {
    pub args: Vec<String>,
    pub status: i32,
    pub stdout: String,
    pub stderr: String,
}

impl Ran {
    /// Fails with everything that is known unless the status is `wanted`.
    #[track_caller]
    pub fn expect_status(self, wanted: i32) -> Self {
        assert_eq!(
            self.status,
            wanted,
            "`tapeline {}`\nstatus {}\nstdout:\n{}\nstderr:\n{}",
            self.args.join(" "),
            self.status,
            self.stdout,
            self.stderr
        );
        self
    }

    /// Standard output as JSON.
    #[track_caller]
    pub fn json(&self) -> serde_json::Value {
        serde_json::from_str(&self.stdout)
            .unwrap_or_else(|fault| panic!("no JSON ({fault}):\n{}\n{}", self.stdout, self.stderr))
    }
}

/// The project's folder.
pub fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Runs `tapeline` in the project's folder.
pub fn run(args: &[&str]) -> Ran {
    run_in(&root(), args, None)
}

/// Runs `tapeline` in a folder, with a text on standard input.
pub fn run_in(folder: &Path, args: &[&str], input: Option<&str>) -> Ran {
    let mut child = Command::new(env!("CARGO_BIN_EXE_tapeline"))
        .args(args)
        .current_dir(folder)
        .env_remove("COLUMNS")
        .env_remove("NO_COLOR")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut stdin = child.stdin.take().unwrap();
    let _ = stdin.write_all(input.unwrap_or_default().as_bytes());
    drop(stdin);
    let out = child.wait_with_output().unwrap();
    Ran {
        args: args.iter().map(|arg| (*arg).to_owned()).collect(),
        status: out.status.code().unwrap_or(-1),
        stdout: String::from_utf8(out.stdout).unwrap(),
        stderr: String::from_utf8(out.stderr).unwrap(),
    }
}

/// A folder with the given files, gone when dropped.
pub fn folder(files: &[(&str, &str)]) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    for (name, text) in files {
        let path = folder.path().join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, text).unwrap();
    }
    folder
}

/// Whether there is a test `module::test_name`, the module a file or a folder's file under `tests`.
pub fn has_test(name: &str) -> bool {
    let (module, test) = name.rsplit_once("::").unwrap_or(("", name));
    let path = root().join("tests").join(format!("{}.rs", module.replace("::", "/")));
    let source = std::fs::read_to_string(path).unwrap_or_default();
    let lines: Vec<&str> = source.lines().map(str::trim).collect();
    lines.iter().enumerate().any(|(at, line)| {
        line.starts_with(&format!("fn {test}("))
            && lines[..at]
                .iter()
                .rev()
                .take_while(|line| line.starts_with("#["))
                .any(|line| *line == "#[test]")
    })
}
