//! Ids of `batch` that are blank or repeat, and rows that cannot be read where nothing else tells of them.

use std::fs;

use tapeline::anatomy::Limb;
use tapeline::caseload::{Batch, BatchForm, LimbColumns, Prepared, REMEMBERED, run_batch};
use tapeline::input::RowBlocks;

use crate::scene::DEFAULT;
use crate::sizing::chart;
use crate::support::{Ran, run_in};

const CHART: &str = "tapeline: chart/1\nlabel: plain\nlimb: arm\nunits: {length: cm}\nsizes: [{size: \"1\", girths: {wrist: 14-16}}, {size: \"2\", girths: {wrist: 16.5-18}}]\n";

fn ran(table: &str, args: &[&str]) -> Ran {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("chart.yaml"), CHART).unwrap();
    fs::write(folder.path().join("limbs.csv"), table).unwrap();
    let all: Vec<&str> =
        ["batch", "limbs.csv", "chart.yaml"].into_iter().chain(args.iter().copied()).collect();
    run_in(folder.path(), &all, None)
}

const MIXED: &str = "id,wrist_cm\n3,15\n,17\nb,17\nb,15\n3,x\n3,15\n";

// Source: derived by hand; the table's first row is row 2. Row 3 has no id, row 5 repeats row 4, row 6 cannot be read
// (its id is of no harm: it has no size), row 7 repeats row 2.
#[test]
fn blank_and_repeated_ids_are_told() {
    let csv = ran(MIXED, &["--columns", "id,size,problem"]).expect_status(1);
    assert_eq!(
        csv.stdout,
        "id,size,problem\n3,1,\nrow 3,2,row 3: has no id\nb,2,\nb,1,row 5: has the id of row 4\n\
         3,,row 6: wrist: `x` is not a number\n3,1,row 7: has the id of row 2\n"
    );
    for said in [
        "1 row of 6 without an id",
        "2 rows of 6 with the id of an earlier row",
        "1 row of 6 could not be read; the column `problem` says why",
    ] {
        assert!(csv.stderr.contains(said), "{said}: {}", csv.stderr);
    }
    assert!(!csv.stderr.contains("row 5:"), "{}", csv.stderr);
    let jsonl = ran(MIXED, &["--columns", "id,problem,size", "--format", "jsonl"]).expect_status(1);
    let rows: Vec<serde_json::Value> =
        jsonl.stdout.lines().map(|line| serde_json::from_str(line).unwrap()).collect();
    assert_eq!(rows[3]["problem"], "row 5: has the id of row 4");
    assert_eq!((&rows[3]["size"], &rows[3]["id"]), (&"1".into(), &"b".into()));
    assert!(rows[0]["problem"].is_null());
}

// Source: derived: with ids that differ, and without a column of ids, nothing is told, and a table without faults ends
// with 0; an id alone is no fault of the row, whose size holds.
#[test]
fn ids_that_differ_are_not_told() {
    let fine = ran("id,wrist_cm\na,15\nA,17\na1,17\n", &["--columns", "id,problem"]).expect_status(0);
    assert_eq!((fine.stdout.as_str(), fine.stderr.as_str()), ("id,problem\na,\nA,\na1,\n", ""));
    let numbers = ran("wrist_cm\n15\n15\n", &["--columns", "id,size,problem"]).expect_status(0);
    assert_eq!((numbers.stdout.as_str(), numbers.stderr.as_str()), ("id,size,problem\n2,1,\n3,1,\n", ""));
    ran("id,wrist_cm\na,15\na,17\n", &["--columns", "id,problem"]).expect_status(0);
}

// Source: derived: without the column `problem` the first ten rows are told beside the table, and how many there are.
#[test]
fn without_the_column_problem_rows_are_told_beside_it() {
    let bad = |count: usize| {
        format!(
            "id,wrist_cm\nz,15\n{}",
            (0..count).map(|at| format!("{at},x{at}\n")).collect::<Vec<_>>().concat()
        )
    };
    let ten = ran(&bad(10), &["--columns", "id,size"]).expect_status(1);
    assert_eq!(ten.stderr.matches("is not a number").count(), 10, "{}", ten.stderr);
    assert!(ten.stderr.contains("row 3: wrist: `x0` is not a number"), "{}", ten.stderr);
    assert!(ten.stderr.contains("10 rows of 11 could not be read\n"), "{}", ten.stderr);
    let eleven = ran(&bad(11), &["--columns", "id,size"]).expect_status(1);
    assert_eq!(eleven.stderr.matches("is not a number").count(), 10, "{}", eleven.stderr);
    assert!(
        eleven.stderr.contains(
            "11 rows of 12 could not be read; the first are told above, the column `problem` has all"
        ),
        "{}",
        eleven.stderr
    );
    let ids = ran("id,wrist_cm\na,15\na,15\n,15\n", &["--columns", "id,size"]).expect_status(0);
    assert!(ids.stderr.contains("row 3: has the id of row 2"), "{}", ids.stderr);
    assert!(ids.stderr.contains("row 4: has no id"), "{}", ids.stderr);
}

/// The rows with a repeated id and the output, of a table whose ids are these numbers.
fn repeated(ids: impl Iterator<Item = usize>, threads: usize) -> (u64, Vec<u8>) {
    let table: String =
        std::iter::once("id,wrist_cm\n".to_owned()).chain(ids.map(|id| format!("{id},15\n"))).collect();
    let blocks = RowBlocks::from_text("limbs.csv", &table).unwrap();
    let columns = LimbColumns::of(&blocks, Limb::Arm, false).unwrap();
    let charts = vec![("plain".to_owned(), Prepared::of(&chart(CHART), &DEFAULT))];
    let asked = ["id".to_owned(), "problem".to_owned()];
    let batch = Batch::of(charts, columns, Some(&asked), BatchForm::Csv, &DEFAULT).unwrap();
    let mut out = Vec::new();
    let end = run_batch(&batch, blocks, threads, &mut out, &mut |_, _| {});
    (end.repeated, out)
}

// Source: derived: an id is known over as many rows as are remembered, and no longer over more than twice as many; the
// output is the same for any number of workers.
#[test]
fn ids_are_remembered_over_a_bounded_stretch() {
    let near = || (0..REMEMBERED).chain([0, 1]);
    let (count, out) = repeated(near(), 1);
    assert_eq!(count, 2);
    assert!(
        out.ends_with(
            format!(
                "0,row {}: has the id of row 2\n1,row {}: has the id of row 3\n",
                REMEMBERED + 2,
                REMEMBERED + 3
            )
            .as_bytes()
        )
    );
    assert!(repeated(near(), 3).1 == out);
    assert_eq!(repeated((0..=2 * REMEMBERED).chain([0]), 2).0, 0);
}
