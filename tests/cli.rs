//! The command line as a user meets it.

use crate::support::run;

#[test]
fn no_arguments_print_the_help_and_no_report() {
    let ran = run(&[]).expect_status(2);
    assert!(ran.stdout.is_empty());
    assert!(ran.stderr.contains("Usage: tapeline"));
}

#[test]
fn version_goes_to_standard_output() {
    let ran = run(&["--version"]).expect_status(0);
    assert!(ran.stdout.starts_with("tapeline "));
}
