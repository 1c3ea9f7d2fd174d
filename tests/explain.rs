//! Everything that the program can say is explained, from a closed list.

use tapeline::explain::{Catalogue, Kind, entry_text};
use tapeline::finding::FindingId;
use tapeline::garment::{SHIPPED_SCHEMES, Schemes};
use tapeline::rules::{NumberId, SHIPPED_RULES, read_shipped_rules};

use crate::support::run;

fn catalogues() -> Vec<Catalogue> {
    let schemes = Schemes::default();
    SHIPPED_RULES.iter().map(|(id, _)| Catalogue::of(&read_shipped_rules(id).unwrap(), &schemes)).collect()
}

// Control: explained
#[test]
fn every_id_has_an_entry_without_a_gap() {
    for catalogue in catalogues() {
        let rules = read_shipped_rules("consensus").unwrap();
        let has = |kind, id: &str| catalogue.find(id).iter().any(|entry| entry.kind == kind);
        for id in FindingId::OWN {
            assert!(has(Kind::Finding, id.text()), "{}", id.text());
        }
        for item in &rules.items {
            assert!(has(Kind::Question, &item.id), "{}", item.id);
        }
        for rule in &rules.arterial {
            assert!(has(Kind::Arterial, rule.value.word()));
        }
        for id in NumberId::ALL {
            assert!(has(Kind::Number, id.id()), "{}", id.id());
        }
        for (id, _) in SHIPPED_SCHEMES {
            assert!(has(Kind::Scheme, id), "{id}");
        }
        for outcome in ["stop", "refer", "incomplete", "made-to-measure", "unproven", "try-on"] {
            assert!(has(Kind::Outcome, outcome), "{outcome}");
        }
        for entry in catalogue.all() {
            let texts = [&entry.meaning, &entry.severity, &entry.basis, &entry.source];
            assert!(texts.iter().all(|text| !text.trim().is_empty()), "{entry:#?}");
            assert!(!entry.rule.is_empty() && entry.rule.iter().all(|line| !line.is_empty()), "{entry:#?}");
            assert!(!entry.next.is_empty() || entry.id == "none", "{}: what next?", entry.id);
        }
    }
}

#[test]
fn an_entry_shows_the_numbers_in_use() {
    let rules = read_shipped_rules("consensus").unwrap();
    let catalogue = Catalogue::of(&rules, &Schemes::default());
    for number in &rules.numbers {
        let entry = catalogue.find(number.id.id())[0];
        assert!(entry_text(entry).contains(&number.text), "{}", number.id.id());
    }
    let default = run(&["explain", "moderate-heart-failure"]).expect_status(0);
    assert!(default.stdout.contains("severity  review"), "{}", default.stdout);
    let other = run(&["explain", "moderate-heart-failure", "--thresholds", "s2k"]).expect_status(0);
    assert!(other.stdout.contains("severity  stop"), "{}", other.stdout);
}

#[test]
fn a_mistyped_id_is_answered_from_the_list_only() {
    let near = run(&["explain", "unusual-girt"]).expect_status(2);
    assert!(near.stdout.is_empty());
    assert!(near.stderr.contains("did you mean `unusual-girth`?"), "{}", near.stderr);
    let far = run(&["explain", "xylophone"]).expect_status(2);
    assert!(!far.stderr.contains("did you mean"), "{}", far.stderr);
    assert!(far.stderr.contains("lists every id"), "{}", far.stderr);
}

#[test]
fn a_word_of_two_kinds_shows_both() {
    let ran = run(&["explain", "pitting"]).expect_status(0);
    assert!(ran.stdout.contains("pitting (finding)"));
    assert!(ran.stdout.contains("pitting (question about the limb)"));
}

#[test]
fn the_whole_catalogue_is_markdown_with_each_id_once_per_kind() {
    let ran = run(&["explain", "--all"]).expect_status(0);
    for kind in Kind::ALL {
        assert!(ran.stdout.contains(&format!("\n## {}\n", kind.heading())), "{}", kind.heading());
    }
    let headings = ran.stdout.lines().filter(|line| line.starts_with("### `")).count();
    assert_eq!(headings, catalogues()[0].all().len());
}

#[test]
fn the_list_of_questions_names_every_item() {
    let ran = run(&["explain", "screening"]).expect_status(0);
    for item in &read_shipped_rules("consensus").unwrap().items {
        assert!(
            ran.stdout.contains(&item.question.split(' ').take(4).collect::<Vec<_>>().join(" ")),
            "{}",
            item.id
        );
    }
}

// Control: never-safe
#[test]
fn no_text_calls_anything_safe_or_guaranteed() {
    let all = run(&["explain", "--all"]).expect_status(0).stdout.to_lowercase();
    for word in ["safe", "guarantee", "custom-made", "custom made", "diagnos"] {
        assert!(!all.contains(word), "`{word}` stands in what the program says");
    }
}
