//! Visits: order, what does not belong together, lists of files, tables of visits.

use tapeline::anatomy::{Landmark, Limb, Side};
use tapeline::input::{Problem, Reader, Source, Table};
use tapeline::record::{
    Affected, Record, arrange_visits, is_visit_table, read_record, read_visit_table, read_visits,
};

use crate::made::{mark, record, text};

fn visit(on: &str, wrist: f64) -> Record {
    let marks = vec![
        mark(Some(Landmark::Wrist), 0.0, wrist),
        mark(Some(Landmark::Forearm), 14.0, 26.0),
        mark(Some(Landmark::UpperArm), 33.0, 31.0),
    ];
    record(on, Limb::Arm, marks.clone(), Some(marks))
}

fn table(text: &str) -> Table {
    Table::read(Source::from_bytes("history.csv".to_owned(), text.as_bytes().to_vec()).unwrap()).unwrap()
}

fn refused(text: &str, like: Option<&Record>) -> Vec<Problem> {
    read_visit_table(&table(text), like).unwrap_err()
}

#[test]
fn the_newest_is_judged_whatever_the_order() {
    let all = [visit("2026-01-05", 17.0), visit("2026-03-14", 16.5), visit("2025-11-02", 17.5)];
    for order in [[0, 1, 2], [1, 0, 2], [2, 1, 0], [0, 2, 1]] {
        let given = order.map(|at| all[at].clone()).to_vec();
        let visits = arrange_visits(given).unwrap().unwrap();
        assert_eq!(visits.newest.measured_on.to_string(), "2026-03-14");
        let days: Vec<String> = visits.earlier.iter().map(|one| one.measured_on.to_string()).collect();
        assert_eq!(days, ["2025-11-02", "2026-01-05"]);
        assert_eq!(visits.all().count(), 3);
    }
    assert!(arrange_visits(Vec::new()).is_none());
}

#[test]
fn another_client_limb_or_side_is_a_problem_with_its_key() {
    let newest = visit("2026-03-14", 16.5);
    let mut client = visit("2026-01-05", 17.0);
    client.client = text("K-9");
    let mut side = visit("2026-01-06", 17.0);
    side.limbs[0].side = Side::Right;
    let leg = record("2026-01-07", Limb::Leg, vec![mark(Some(Landmark::Ankle), 11.0, 23.0)], None);
    let faults = arrange_visits(vec![newest, client, side, leg]).unwrap().unwrap_err();
    let told: Vec<(usize, &str)> = faults.iter().map(|one| (one.record, one.field)).collect();
    assert_eq!(told, [(1, "client"), (2, "limb"), (3, "limb")]);
    assert!(faults[1].what.contains("`right arm`") && faults[1].what.contains("`left arm`"), "{faults:?}");
}

#[test]
fn two_records_of_one_day_need_their_time() {
    let (one, mut other) = (visit("2026-03-14", 16.5), visit("2026-03-14", 16.6));
    let faults = arrange_visits(vec![one.clone(), other.clone()]).unwrap().unwrap_err();
    assert_eq!(faults[0].field, "measured_on");
    other.measured_at = Some("14:00".parse().unwrap());
    assert!(arrange_visits(vec![one.clone(), other.clone()]).unwrap().is_err());
    let mut morning = one;
    morning.measured_at = Some("09:30".parse().unwrap());
    let visits = arrange_visits(vec![other, morning]).unwrap().unwrap();
    assert_eq!(visits.newest.measured_at, Some("14:00".parse().unwrap()));
}

#[test]
fn a_fault_is_told_with_its_line() {
    let yaml = "tapeline: record/1\nclient: K-1\nmeasured_on: 2026-01-05\nlimb: left arm\naffected: left\npositions_from: wrist\nmarks: [{landmark: wrist, at: 0 cm, girth: 17 cm}]\n";
    let reader =
        Reader::new(Source::from_bytes("old.yaml".to_owned(), yaml.as_bytes().to_vec()).unwrap()).unwrap();
    let old = read_record(&reader).unwrap();
    assert!(!reader.has_problems());
    let faults = arrange_visits(vec![old, visit("2026-03-14", 16.5)]).unwrap().unwrap_err();
    let told = faults[0].problem(Some(&reader)).to_string();
    assert!(told.starts_with("old.yaml:2:9: client: is `K-1`, but the newest record"), "{told}");
}

#[test]
fn a_list_of_visits_names_files_beside_it() {
    let read = |yaml: &str| {
        let source = Source::from_bytes("clinic/visits.yaml".to_owned(), yaml.as_bytes().to_vec()).unwrap();
        let reader = Reader::new(source).unwrap();
        let found = read_visits(&reader);
        (found, reader.problems())
    };
    let (found, problems) = read("tapeline: visits/1\nvisits: [v1.yaml, v2.yaml]\n");
    assert!(problems.is_empty());
    let names: Vec<String> = found.unwrap().iter().map(|(path, _)| path.display().to_string()).collect();
    assert_eq!(names, ["clinic/v1.yaml", "clinic/v2.yaml"]);
    assert_eq!(read("tapeline: visits/1\nvisits: []\n").1.len(), 1);
    assert_eq!(read("tapeline: visits/1\nvisit: [v1.yaml]\n").1.len(), 2);
}

#[test]
fn a_table_beside_a_record_takes_its_positions() {
    let like = visit("2026-03-14", 16.5);
    let text = "date,side,wrist_cm,forearm (mm),upper-arm [in],weight_kg\n\
        2026-01-05,left,17.2,265,12,71\n\
        2026-01-05,right,16.0,250,12,71\n\
        2026-02-05,left,16.9,,12,\n";
    assert!(is_visit_table(table(text).header()));
    let records = read_visit_table(&table(text), Some(&like)).unwrap();
    assert_eq!(records.len(), 2);
    let first = &records[0];
    assert_eq!((first.client.as_str(), first.affected), ("L-0417", Affected::One(Side::Left)));
    assert_eq!(first.weight_kg, Some(71.0));
    let marks: Vec<(f64, f64)> =
        first.limbs[0].marks.iter().map(|one| (one.at.cm(), one.girth().cm())).collect();
    // Source: 265 mm = 26.5 cm, 12 in = 30.48 cm by definition.
    assert_eq!(marks, [(0.0, 17.2), (14.0, 26.5), (33.0, 30.48)]);
    assert_eq!(first.limbs[0].other_limb.as_ref().unwrap().len(), 3);
    assert_eq!(records[1].limbs[0].marks.len(), 2);
    assert!(records[1].limbs[0].other_limb.is_none());
    let visits = arrange_visits(records.into_iter().chain([like]).collect()).unwrap().unwrap();
    assert_eq!(visits.newest.measured_on.to_string(), "2026-03-14");
}

#[test]
fn a_table_stands_alone_where_it_says_enough() {
    let text = "date,side,client,affected,positions_from,wrist at 0 cm (cm),at 4 cm (cm),forearm at 14_cm\n\
        2026-01-05,left,L-0417,left,wrist,17.2,19,26.5\n\
        2026-01-05,right,L-0417,left,wrist,16.0,18,25.0\n";
    let records = read_visit_table(&table(text), None).unwrap();
    assert_eq!(records.len(), 1);
    let limb = &records[0].limbs[0];
    assert_eq!(limb.side, Side::Left);
    let marks: Vec<(Option<Landmark>, f64)> =
        limb.marks.iter().map(|one| (one.landmark, one.at.cm())).collect();
    assert_eq!(marks, [(Some(Landmark::Wrist), 0.0), (None, 4.0), (Some(Landmark::Forearm), 14.0)]);
    let both = text.replace("L-0417,left,wrist", "L-0417,both,wrist");
    assert!(read_visit_table(&table(&both), None).unwrap()[0].is_both());
}

#[test]
fn what_a_table_does_not_say_is_asked_for() {
    for (text, wanted) in [
        ("date,side,wrist_cm\n2026-01-05,left,17\n", "does not say where `wrist` stands"),
        ("date,side,wrist at 0_cm\n2026-01-05,left,17\n", "add a column `client`"),
        ("date,side,client,wrist at 0_cm\n2026-01-05,left,K-1,17\n", "add a column `positions_from`"),
        (
            "date,side,client,positions_from,wrist at 0_cm\n2026-01-05,left,K-1,wrist,17\n2026-01-05,right,K-1,wrist,17\n",
            "add a column `affected`",
        ),
        ("date,side,wrist\n2026-01-05,left,17\n", "no unit"),
        ("date,side,at 4_cm\n2026-01-05,left,17\n", "names no landmark"),
    ] {
        let problems = refused(text, None);
        assert_eq!(problems.len(), 1, "{text}: {problems:?}");
        assert!(problems[0].to_string().contains(wanted), "{}", problems[0]);
    }
}

#[test]
fn faults_of_a_table_have_their_cell() {
    let like = visit("2026-03-14", 16.5);
    for (text, wanted) in [
        ("date,side,wrist_cm\n05/01/2026,left,17\n", "history.csv:2:1: date: `05/01/2026` is no date"),
        ("date,side,wrist_cm\n2026-01-05,link,17\n", "history.csv:2:12: side: `link` is no side"),
        (
            "date,side,wrist_cm\n2026-01-05,left,17 mmHg\n",
            "history.csv:2:17: wrist_cm: `17 mmHg` is a pressure",
        ),
        (
            "date,side,wrist_cm\n2026-01-05,left,0\n",
            "history.csv:2:17: wrist_cm: a girth of `0` is not above 0",
        ),
        ("date,side,wrist_cm\n2026-01-05,left,\n", "holds no girth"),
        (
            "date,side,wrist_cm\n2026-01-05,left,17\n2026-01-05,left,17\n",
            "is a second row of the left arm on one day",
        ),
        ("date,side,wrist_cm\n2026-01-05,right,17\n", "has no row of the left arm on 2026-01-05"),
        ("date,side,ankle_cm\n2026-01-05,left,17\n", "`ankle` is a landmark of the leg"),
        ("date,side,elbow_cm\n2026-01-05,left,17\n", "does not say where `elbow` stands"),
        ("date,side,wrist_cm,wrist_cm\n2026-01-05,left,17,17\n", "twice"),
        ("date,side,forearm at 2_cm,wrist at 4_cm\n2026-01-05,left,17,17\n", "nearer the trunk"),
    ] {
        let problems = refused(text, Some(&like));
        assert!(problems.iter().any(|one| one.to_string().contains(wanted)), "{text}: {problems:?}");
    }
}
