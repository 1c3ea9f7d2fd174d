//! Hazards have controls, controls have tests, tests name controls that exist.

use std::collections::BTreeSet;

use tapeline::explain::Matrix;

use crate::source::root;
use crate::support::run;

/// Where each test says, in a comment above it, which control it holds.
const MARK: &str = "// Control: ";

fn matrix() -> Matrix {
    Matrix::shipped().unwrap_or_else(|problems| panic!("{problems:#?}"))
}

/// Whether `module::name` is a test of `tests/module.rs`.
fn has_test(test: &str) -> bool {
    let Some((module, name)) = test.split_once("::") else { return false };
    let Ok(source) = std::fs::read_to_string(root().join("tests").join(module).with_extension("rs")) else {
        return false;
    };
    let lines: Vec<&str> = source.lines().map(str::trim).collect();
    let head = format!("fn {name}(");
    // A test of proptest's macro has its attribute above it as well.
    lines.iter().enumerate().any(|(at, line)| {
        line.starts_with(&head) && lines[..at].iter().rev().take(4).any(|above| *above == "#[test]")
    })
}

/// File, and control named in it.
fn marks() -> Vec<(String, String)> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(root().join("tests")).unwrap() {
        let path = entry.unwrap().path();
        let is_own = path.file_name().is_some_and(|name| name == "hazards.rs");
        if path.extension().is_some_and(|ext| ext == "rs") && !is_own {
            let source = std::fs::read_to_string(&path).unwrap();
            let named = source.lines().filter_map(|line| line.trim().strip_prefix(MARK));
            found.extend(named.map(|control| (path.display().to_string(), control.to_owned())));
        }
    }
    found
}

/// What is missing between hazards, controls and tests.
fn faults(matrix: &Matrix, marks: &[(String, String)]) -> Vec<String> {
    let mut found = Vec::new();
    for hazard in &matrix.hazards {
        if hazard.controls.is_empty() {
            found.push(format!("{}: no control", hazard.id));
        }
        let unknown = hazard.controls.iter().filter(|control| matrix.control(control).is_none());
        found.extend(unknown.map(|control| format!("{}: no such control: {control}", hazard.id)));
    }
    for control in &matrix.controls {
        if control.tests.is_empty() {
            found.push(format!("{}: no test", control.id));
        }
        let missing = control.tests.iter().filter(|test| !has_test(test));
        found.extend(missing.map(|test| format!("{}: there is no test `{test}`", control.id)));
    }
    let unknown = marks.iter().filter(|(_, control)| matrix.control(control).is_none());
    found.extend(unknown.map(|(file, control)| format!("{file}: no such control: {control}")));
    found
}

#[test]
fn hazards_controls_and_tests_hold_together() {
    let matrix = matrix();
    assert!(matrix.hazards.len() >= 35, "{} hazards", matrix.hazards.len());
    let faults = faults(&matrix, &marks());
    assert!(faults.is_empty(), "{faults:#?}");
}

#[test]
fn each_way_of_falling_apart_is_a_fault() {
    let broken = |change: fn(&mut Matrix)| {
        let mut matrix = matrix();
        change(&mut matrix);
        faults(&matrix, &marks())
    };
    assert_eq!(broken(|matrix| matrix.hazards[0].controls.clear()), ["hz-01: no control"]);
    assert_eq!(
        broken(|matrix| matrix.hazards[0].controls.push("hope".to_owned())),
        ["hz-01: no such control: hope"]
    );
    assert_eq!(broken(|matrix| matrix.controls[0].tests.clear()), ["unit-required: no test"]);
    assert_eq!(
        broken(|matrix| matrix.controls[0].tests.push("guards::nothing".to_owned())),
        ["unit-required: there is no test `guards::nothing`"]
    );
    let stray = [("tests/any.rs".to_owned(), "hope".to_owned())];
    assert_eq!(faults(&matrix(), &stray), ["tests/any.rs: no such control: hope"]);
    assert!(!has_test("support::folder"), "a helper is no test");
}

#[test]
fn ids_are_used_once_and_in_order() {
    let matrix = matrix();
    for (number, hazard) in matrix.hazards.iter().enumerate() {
        assert_eq!(hazard.id, format!("hz-{:02}", number + 1));
    }
    let ids: BTreeSet<&str> = matrix.controls.iter().map(|control| control.id.as_str()).collect();
    assert_eq!(ids.len(), matrix.controls.len());
    let used: BTreeSet<&str> =
        matrix.hazards.iter().flat_map(|hazard| hazard.controls.iter().map(String::as_str)).collect();
    let idle: Vec<&&str> = ids.difference(&used).collect();
    assert!(idle.is_empty(), "controls of no hazard: {idle:?}");
}

#[test]
fn the_matrix_is_printed_whole() {
    let ran = run(&["explain", "hazards"]).expect_status(0);
    let matrix = matrix();
    // Long names are broken at the width of the terminal.
    let close = |text: &str| text.split_whitespace().collect::<String>();
    let printed = close(&ran.stdout);
    let has = |text: &str| printed.contains(&close(text));
    assert!(matrix.hazards.iter().all(|hazard| has(&hazard.id)));
    assert!(
        matrix.controls.iter().all(|control| has(&control.id) && control.tests.iter().all(|test| has(test)))
    );
    assert!(has("No conformity with any standard is claimed"));
}
