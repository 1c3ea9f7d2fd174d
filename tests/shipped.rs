//! The tables inside the program are the ones in `garment-tables/`.

use tapeline::garment::{SHIPPED_SCHEMES, Schemes};
use tapeline::input::Source;
use tapeline::rules::{SHIPPED_RULES, read_rules};

use crate::source::root;

fn yaml_files(kind: &str) -> Vec<(String, Source)> {
    let folder = root().join("garment-tables").join(kind);
    let mut files: Vec<_> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.sort();
    files
        .into_iter()
        .map(|path| (path.file_stem().unwrap().to_string_lossy().into_owned(), Source::read(&path).unwrap()))
        .collect()
}

#[test]
fn every_scheme_file_is_inside_and_reads_alike() {
    let files = yaml_files("schemes");
    assert_eq!(files.len(), SHIPPED_SCHEMES.len());
    let shipped = Schemes::default();
    for (id, source) in files {
        let inside = shipped.find(&id).unwrap_or_else(|| panic!("`{id}` is not inside the program"));
        let read = Schemes::with_files(vec![source]).unwrap().find(&id).unwrap();
        assert_eq!(format!("{read:?}"), format!("{inside:?}"), "{id}");
        assert!(!inside.classes.is_empty());
    }
}

#[test]
fn every_rules_file_is_inside_and_reads_alike() {
    let files = yaml_files("rules");
    assert_eq!(files.len(), SHIPPED_RULES.len());
    for (id, source) in files {
        assert!(SHIPPED_RULES.iter().any(|(inside, _)| *inside == id), "`{id}` is not inside the program");
        let read = read_rules(Some(source)).unwrap();
        assert_eq!(read.id, id);
        if id == "default" {
            assert_eq!(format!("{read:?}"), format!("{:?}", read_rules(None).unwrap()));
        }
    }
}

// Written as on a label: the class that is meant is asked about, in the chart, the prescription and the cap alike.
#[test]
fn a_class_in_roman_figures_is_asked_about() {
    let schemes = tapeline::garment::Schemes::default();
    let scheme = schemes.find("ral-gz-387-1").unwrap();
    for (text, class) in [("II", "2"), ("iv", "4"), ("CCL2", "2"), ("class 3", "3"), ("Class II.", "2")] {
        let said = scheme.no_such_class(text);
        assert!(said.contains(&format!("did you mean `{class}`?")), "{said}");
    }
    for text in ["V", "9", "CCL 9", "mild", ""] {
        let said = scheme.no_such_class(text);
        assert!(said.ends_with("its classes: `1`, `2`, `3`, `4`"), "{said}");
    }
    // A scheme of other words: nothing is guessed.
    let us = schemes.find("us-customary").unwrap();
    assert!(!us.no_such_class("II").contains("did you mean"));
}
