//! One concept, one name: what is printed stands in the glossary, and words that are not ours stand nowhere.

use std::collections::BTreeSet;

use serde_json::Value;
use tapeline::document::{Block, Sheet};
use tapeline::explain::{Catalogue, Glossary, Kind};
use tapeline::garment::Schemes;
use tapeline::render::{Language, sheet};
use tapeline::report::build;

use crate::random::scene;
use crate::scene::{DEFAULT, HAND_PIECE, Scene};
use crate::source::{files_of, rooms, root};

/// Scenes that between them bring every page, every table and every block of a report.
fn scenes() -> Vec<Scene> {
    let earlier =
        Scene::arm().set("measured_on", "2026-02-14").girths("wrist@0=17.6 forearm@14=27 upper-arm@33=32");
    let course = Scene::arm()
        .other("wrist@0=16 forearm@14=25 upper-arm@33=30")
        .set("garments", "[{label: sleeves, size: \"1\", given_on: 2026-02-10}]")
        .set("prescribed", "{scheme: ral-gz-387-2, class: \"2\"}")
        .earlier(&earlier);
    let set = Scene::arm()
        .chart(HAND_PIECE)
        .girths("hand@-7=19 wrist@0=17 forearm@14=26 elbow@22=27 upper-arm@33=31");
    let made = Scene::arm().seen("folds", "yes").seen("hand_swelling", "yes");
    let stop = Scene::arm().present("acute-infection");
    let urgent = Scene::arm().present("septic-signs");
    let mut all = vec![Scene::arm(), Scene::leg(), course, set, made, stop, urgent, Scene::arm().no_chart()];
    all.extend((0..30).map(scene).filter(|scene| scene.try_check().is_ok()));
    all
}

/// Labels of blocks: headings, heads of columns, names of values, labels of lines to fill.
fn labels(blocks: &[Block], found: &mut BTreeSet<String>) {
    for block in blocks {
        match block {
            Block::Heading(text) => {
                found.insert(text.clone());
            }
            Block::Keys(entries) | Block::Entries(entries) => {
                found.extend(entries.iter().map(|entry| entry.name.clone()));
            }
            Block::Blanks(rows) => found.extend(rows.iter().flatten().map(|blank| blank.label.clone())),
            Block::Square { label, .. } => {
                found.insert(label.clone());
            }
            Block::Table(table) => found.extend(table.columns.iter().map(|column| column.head.clone())),
            Block::Frame { title, inside, .. } => {
                found.insert(title.clone());
                labels(inside, found);
            }
            Block::Columns(parts) => parts.iter().for_each(|part| labels(&part.blocks, found)),
            Block::Together(inside) => labels(inside, found),
            _ => {}
        }
    }
}

fn printed(sheet: &Sheet) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    for leaf in &sheet.leaves {
        // The client's own pages are plain sentences, held by their data file.
        if !leaf.apart {
            found.insert(leaf.title.clone());
            labels(&leaf.blocks, &mut found);
        }
    }
    found
}

/// What a scene itself names: labels of charts, the client, sizes; and figures.
fn is_the_users(label: &str) -> bool {
    // A whole sentence is no label.
    if label.ends_with('.') {
        return true;
    }
    let named = ["sleeves", "stockings", "hand pieces", "chart ", "K-1"];
    let figures = label.chars().all(|letter| !letter.is_alphabetic());
    figures || named.iter().any(|name| label.contains(name))
}

/// A label without what stands behind a colon or in brackets, and without the limb.
fn stem(label: &str) -> String {
    let label = label.split([':', '(']).next().unwrap_or(label).trim();
    let mut stem = label.to_owned();
    for limb in [
        " of the left arm",
        " of the right arm",
        " of the left leg",
        " of the right leg",
        ", left arm",
        ", right leg",
        ", left leg",
        ", right arm",
    ] {
        stem = stem.replace(limb, "");
    }
    stem
}

// Design, section 3: a test holds every printed label to the list.
#[test]
fn every_printed_label_is_in_the_glossary() {
    let catalogue = Catalogue::of(&DEFAULT, &Schemes::default());
    let glossary = Glossary::shipped().unwrap();
    let known = |label: &str| {
        let low = label.to_lowercase();
        !catalogue.find(label).is_empty() || glossary.labels.iter().any(|one| one.label.to_lowercase() == low)
    };
    let mut missing = BTreeSet::new();
    for scene in scenes() {
        let report = build(&scene.check().0);
        for label in printed(&sheet(&report, Language::English)) {
            let stem = stem(&label);
            if !stem.is_empty() && !is_the_users(&label) && !known(&label) && !known(&stem) {
                missing.insert(label);
            }
        }
    }
    assert!(missing.is_empty(), "{} labels: {missing:#?}", missing.len());
}

#[test]
fn every_label_of_several_words_names_words_of_the_glossary() {
    let catalogue = Catalogue::of(&DEFAULT, &Schemes::default());
    for label in Glossary::shipped().unwrap().labels {
        for word in &label.of {
            assert!(!catalogue.find(word).is_empty(), "{}: {word}", label.label);
        }
    }
}

fn keys(value: &Value, found: &mut BTreeSet<String>) {
    match value {
        Value::Object(map) => {
            for (key, inner) in map {
                found.insert(key.clone());
                keys(inner, found);
            }
        }
        Value::Array(list) => list.iter().for_each(|inner| keys(inner, found)),
        _ => {}
    }
}

#[test]
fn every_key_of_a_report_is_explained() {
    let catalogue = Catalogue::of(&DEFAULT, &Schemes::default());
    let mut found = BTreeSet::new();
    for scene in scenes() {
        keys(&serde_json::to_value(build(&scene.check().0)).unwrap(), &mut found);
    }
    let missing: Vec<&String> = found.iter().filter(|key| catalogue.find(key).is_empty()).collect();
    assert!(missing.is_empty(), "{} keys: {missing:?}", missing.len());
}

/// Kinds of words that name a concept of its own each.
fn is_a_concept(kind: Kind) -> bool {
    matches!(
        kind,
        Kind::Term | Kind::Outcome | Kind::Severity | Kind::Urgency | Kind::Grade | Kind::State | Kind::Step
    )
}

#[test]
fn no_concept_has_two_names() {
    let glossary = Glossary::shipped().unwrap();
    let words: Vec<_> = glossary.words.iter().filter(|word| is_a_concept(word.kind)).collect();
    for (at, one) in words.iter().enumerate() {
        // No name of ours is also what people type instead of another concept of the same kind.
        for other in words.iter().skip(at + 1).filter(|other| other.kind == one.kind) {
            assert_ne!(one.word, other.word, "stands twice");
            assert_ne!(one.meaning, other.meaning, "{} and {} mean one thing", one.word, other.word);
            for name in &one.printed {
                let twice = other.printed.iter().any(|printed| printed.eq_ignore_ascii_case(name));
                assert!(!twice, "`{name}` is printed for {} and {}", one.word, other.word);
            }
        }
        for name in &one.typed {
            assert_ne!(name, &one.word, "leads to itself");
        }
    }
}

/// Words that others use for a concept of ours, and where one may stand after all.
const NOT_OURS: [(&str, &[&str]); 24] = [
    ("probability", &[]),
    ("likelihood", &[]),
    ("circumference", &[]),
    ("perimeter", &[]),
    (concat!("try", "-on"), &[]),
    (concat!("un", "proven"), &[]),
    ("none_of", &[]),
    ("thresholds", &[]),
    ("comes to", &[]),
    ("custom-made", &[]),
    ("bespoke", &[]),
    ("at edge", &[]),
    ("slips", &["slips down"]),
    ("a slip", &["a slip liner"]),
    ("patient", &["outpatient"]),
    ("needs review", &[]),
    ("is reviewed", &[]),
    ("of care", &[]),
    ("ease of", &["disease of"]),
    ("safe to", &[]),
    ("reading again", &[]),
    ("second reading", &[]),
    ("a bandage", &[]),
    ("edema", &["oedema"]),
];

// Design, section 3: one concept, one name; a girth has no other word, a misreading is no slip.
#[test]
fn words_that_are_not_ours_stand_nowhere() {
    let mut texts: Vec<(String, String)> = Vec::new();
    for room in
        rooms().iter().map(String::as_str).chain(["cli"]).filter(|room| !matches!(*room, "explain" | "input"))
    {
        for file in files_of(room) {
            let name = file.path.display().to_string();
            texts.extend(file.texts().map(|text| (name.clone(), text.to_lowercase())));
        }
    }
    for name in ["garment-tables/rules/default.yaml", "src/render/sheet/language/en.yaml"] {
        let text = std::fs::read_to_string(root().join(name)).unwrap();
        let lines = text.lines().filter(|line| !line.trim_start().starts_with(['#', 's']));
        texts.extend(lines.map(|line| (name.to_owned(), line.to_lowercase())));
    }
    let mut wrong = Vec::new();
    for (name, text) in &texts {
        for (word, but) in NOT_OURS {
            let mut text = text.clone();
            for allowed in but {
                text = text.replace(allowed, "");
            }
            // `source` texts name papers by their titles.
            if text.contains(word) && !text.contains("j wound care") {
                wrong.push(format!("{name}: `{word}` in `{text}`"));
            }
        }
    }
    assert!(wrong.is_empty(), "{} words:\n{}", wrong.len(), wrong.join("\n"));
}

// Rules 11: no option, key or id stands on a printed sheet.
#[test]
fn no_option_key_or_id_stands_on_a_sheet() {
    let ids: Vec<String> = DEFAULT
        .items
        .iter()
        .map(|item| item.id.clone())
        .chain(tapeline::finding::ALL.iter().map(|entry| entry.id.to_owned()))
        .filter(|id| id.contains('-'))
        .collect();
    let mut wrong = BTreeSet::new();
    for scene in scenes() {
        let report = build(&scene.check().0);
        let pages = sheet(&report, Language::English);
        // Lines to fill in, and what is filled in, are drawn by underscores.
        let text = tapeline::render::plain(&pages, tapeline::render::Paper::A4);
        let text = text.replace("__", " ").replace(" _", " ").replace("_ ", " ");
        for word in text.split_whitespace().map(|word| {
            word.trim_matches(|letter: char| !letter.is_alphanumeric() && letter != '-' && letter != '_')
        }) {
            let option = word.starts_with("--") && word.trim_matches('-').chars().any(char::is_alphanumeric);
            if option
                || word.contains('_') && word.chars().any(char::is_alphanumeric)
                || ids.iter().any(|id| id == word)
            {
                wrong.insert(word.to_owned());
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:?}");
}
