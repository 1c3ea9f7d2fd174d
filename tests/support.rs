//! What the tests of the program share: the built program, run in a folder.

use std::io::Write as _;
use std::path::Path;
use std::process::{Command, Stdio};

use crate::source::root;

/// What a run of the program gave.
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

/// Runs `tapeline` in the project's folder.
pub fn run(args: &[&str]) -> Ran {
    run_in(root(), args, None)
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
