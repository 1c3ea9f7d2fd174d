//! Volumes and courses as cases that any implementation can be held to.

use serde_yaml::Value;
use tapeline::anatomy::{Landmark, Limb, Side};
use tapeline::record::{Affected, Mark, Record, VolumeMethod};
use tapeline::volume::{VisitVolume, course, measure};

use crate::made::{day, mark, record, rules, serial};

fn text<'v>(case: &'v Value, key: &str) -> Option<&'v str> {
    case.get(key).and_then(Value::as_str)
}

fn marks(list: &Value, kind: Limb) -> Vec<Mark> {
    let one = |row: &Value| {
        let landmark = row[0].as_str().map(|name| Landmark::parse(kind, name).unwrap());
        mark(landmark, row[1].as_f64().unwrap(), row[2].as_f64().unwrap())
    };
    list.as_sequence().unwrap().iter().map(one).collect()
}

fn visit(case: &Value) -> Record {
    let kind = if text(case, "limb") == Some("leg") { Limb::Leg } else { Limb::Arm };
    let other = case.get("other").map(|list| marks(list, kind));
    let mut made = record("2026-03-14", kind, marks(&case["marks"], kind), other);
    if text(case, "method") == Some("disc") {
        made.volume_method = VolumeMethod::Disc;
    }
    match text(case, "affected") {
        Some("right") => made.affected = Affected::One(Side::Right),
        Some("both") => made.affected = Affected::Both,
        _ => {}
    }
    made
}

fn figure(volume: &VisitVolume, key: &str) -> Option<f64> {
    match key {
        "measured_ml" => volume.measured.map(|one| one.ml),
        "other_ml" => volume.other.map(|one| one.ml),
        "excess_ml" => volume.excess.map(|one| one.ml),
        "excess_percent" => volume.excess.map(|one| one.percent),
        "spacing_cm" => volume.spacing_cm,
        other => panic!("unknown figure {other}"),
    }
}

#[test]
fn volumes() {
    // Source: each case of the file says its own.
    let cases: Vec<Value> = serde_yaml::from_str(include_str!("conformance/volume.yaml")).unwrap();
    assert!(cases.len() >= 15);
    for case in &cases {
        let name = text(case, "name").unwrap();
        assert!(text(case, "basis").is_some(), "{name}: no basis");
        let tolerance = case["tolerance"].as_f64().unwrap();
        let made = visit(case);
        let volume = measure(&made, &made.limbs[0], &rules());
        let close = |found: f64, wanted: f64| (found - wanted).abs() <= tolerance * wanted.abs();
        for (key, wanted) in case["wanted"].as_mapping().unwrap() {
            let found = figure(&volume, key.as_str().unwrap());
            match (found, wanted.as_f64()) {
                (Some(found), Some(wanted)) => {
                    assert!(close(found, wanted), "{name}: {key:?} {found}, wanted {wanted}");
                }
                (found, wanted) => assert_eq!(found, wanted, "{name}: {key:?}"),
            }
        }
        if let Some(wanted) = case.get("grades").and_then(Value::as_mapping) {
            let found: Vec<(&str, &str)> =
                volume.grades.iter().map(|one| (one.set.as_str(), one.grade.as_str())).collect();
            let wanted: Vec<(&str, &str)> =
                wanted.iter().map(|(set, grade)| (set.as_str().unwrap(), grade.as_str().unwrap())).collect();
            assert_eq!(found, wanted, "{name}");
        }
        if let Some(wanted) = case.get("parts") {
            for part in &volume.parts {
                let wanted = wanted[part.part.word()].as_f64().unwrap();
                assert!(close(part.measured.ml, wanted), "{name}: {part:?}");
            }
            assert_eq!(volume.parts.len(), 2, "{name}");
        }
    }
}

#[test]
fn courses() {
    // Source: each case of the file says its own.
    let cases: Vec<Value> = serde_yaml::from_str(include_str!("conformance/volume-course.yaml")).unwrap();
    assert!(cases.len() >= 15);
    for case in &cases {
        let name = text(case, "name").unwrap();
        assert!(text(case, "basis").is_some(), "{name}: no basis");
        let arm = |girth: f64| serial(Limb::Arm, &[girth; 11], 4.0);
        let visits: Vec<Record> = case["visits"]
            .as_sequence()
            .unwrap()
            .iter()
            .map(|row| {
                let other = row[2].as_f64().map(arm);
                record(row[0].as_str().unwrap(), Limb::Arm, arm(row[1].as_f64().unwrap()), other)
            })
            .collect();
        let all: Vec<&Record> = visits.iter().rev().collect();
        let today = day(case["visits"].as_sequence().unwrap().last().unwrap()[0].as_str().unwrap());
        let limb = course(&all, &[], today, &rules()).unwrap().limbs.remove(0);
        if let Some(wanted) = case.get("state") {
            assert_eq!(limb.ready.map(|one| one.state.word()), wanted.as_str(), "{name}");
        }
        if let Some(wanted) = case.get("loss") {
            let loss = limb.ready.and_then(|one| one.line).map(|line| line.loss);
            match (loss, wanted.as_f64()) {
                (Some(loss), Some(wanted)) => {
                    let tolerance = case["tolerance"].as_f64().unwrap();
                    assert!((loss - wanted).abs() <= tolerance, "{name}: {loss}, wanted {wanted}");
                }
                (loss, wanted) => assert_eq!(loss, wanted, "{name}"),
            }
        }
        if let Some(wanted) = case.get("worsening") {
            assert_eq!(limb.worsening.map(|one| one.severity.word()), wanted.as_str(), "{name}");
        }
    }
}
