//! What goes in by hand: schemas that editors find, the form for a pencil, guided entries, tables as
//! leaflets and spreadsheets print them.

use std::path::{Path, PathBuf};

use tapeline::input::{FileKind, schema};

use crate::source::root;
use crate::support::{folder, run_in};

fn yaml_files(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            yaml_files(&path, found);
        } else if path.extension().is_some_and(|ending| ending == "yaml") {
            found.push(path);
        }
    }
}

// The comment by which editors that speak the YAML language server's protocol find a schema; a relative
// path counts from the file (documentation of that server; published).
#[test]
fn every_file_shown_names_its_schema_and_the_schemas_are_those_printed() {
    let mut files = Vec::new();
    for folder in ["demo", "garment-tables"] {
        yaml_files(&root().join(folder), &mut files);
    }
    assert!(files.len() > 45, "{files:?}");
    for file in files {
        let text = std::fs::read_to_string(&file).unwrap();
        let named = text.lines().find_map(|line| line.strip_prefix("# yaml-language-server: $schema="));
        let named = named.unwrap_or_else(|| panic!("{} names no schema", file.display()));
        let schema = std::fs::read_to_string(file.parent().unwrap().join(named)).unwrap();
        let schema: serde_json::Value = serde_json::from_str(&schema).unwrap();
        let kind = text.lines().find_map(|line| line.strip_prefix("tapeline: ")).unwrap();
        assert_eq!(schema["properties"]["tapeline"]["const"], kind, "{}", file.display());
    }
    for kind in FileKind::ALL {
        let kept = root().join(format!("demo/schemas/{}.schema.json", kind.word()));
        let kept = std::fs::read_to_string(&kept).unwrap_or_else(|_| panic!("{} is missing", kept.display()));
        assert_eq!(kept, schema(kind), "print the schema of a {} anew into demo/schemas", kind.word());
    }
}

#[test]
fn a_guided_entry_names_a_schema_that_lies_beside_it_and_keeps_remarks() {
    let there = folder(&[("record.schema.json", "{}")]);
    run_in(there.path(), &["new", "record", "arm.yaml"], Some("K-1\n")).expect_status(1);
    let text = std::fs::read_to_string(there.path().join("arm.yaml")).unwrap();
    assert!(text.starts_with("# yaml-language-server: $schema=record.schema.json\n"), "{text}");
    // Once more: not twice, and what somebody wrote in between stays.
    std::fs::write(there.path().join("arm.yaml"), format!("# tape no. 2\n{text}")).unwrap();
    run_in(there.path(), &["new", "record", "arm.yaml"], Some("left arm\n")).expect_status(1);
    let text = std::fs::read_to_string(there.path().join("arm.yaml")).unwrap();
    assert_eq!(text.matches("yaml-language-server").count(), 1, "{text}");
    assert!(text.contains("# tape no. 2\n") && text.contains("limb: left arm"), "{text}");
    // Without a schema there is no name of one.
    let there = folder(&[]);
    run_in(there.path(), &["new", "record", "arm.yaml"], Some("K-1\n")).expect_status(1);
    let text = std::fs::read_to_string(there.path().join("arm.yaml")).unwrap();
    assert!(!text.contains('#'), "{text}");
}

#[test]
fn a_template_is_gone_on_with_step_by_step() {
    let there = folder(&[]);
    let template = run_in(there.path(), &["new", "record"], None).expect_status(0).stdout;
    std::fs::write(there.path().join("arm.yaml"), template).unwrap();
    let ran = run_in(there.path(), &["new", "record", "arm.yaml"], Some("K-7\nleft arm\n")).expect_status(1);
    assert!(ran.stderr.contains("Client's reference"), "{}", ran.stderr);
    let text = std::fs::read_to_string(there.path().join("arm.yaml")).unwrap();
    assert!(text.contains("client: K-7\n") && text.contains("limb: left arm\n"), "{text}");
    assert!(!text.contains("girth: \n") && !text.contains("# measured_by"), "{text}");
}

// Marks and their letters: measuring points of the published standards, as in tests/limbs.
#[test]
fn the_form_for_a_pencil_draws_each_limb_with_its_marks() {
    let there = folder(&[]);
    for ending in ["txt", "html"] {
        let name = format!("form.{ending}");
        run_in(there.path(), &["new", "record", "--blank", &name], None).expect_status(0);
        let text = std::fs::read_to_string(there.path().join(&name)).unwrap().replace('\u{a0}', " ");
        for mark in [
            "1 wrist (C)",
            "2 lower forearm (C1)",
            "6 axilla (G)",
            "8 hand (A)",
            "1 ankle (B)",
            "7 upper thigh (G)",
            "8 instep (Y)",
            "9 forefoot (A)",
        ] {
            // On the drawing and in the table; the page also says the drawing in words.
            assert!(text.matches(mark).count() >= 2, "{mark} in {name}");
        }
        assert_eq!(text.matches("none of these").count(), 9 + 8, "{name}: a box for each group");
    }
    let printed = run_in(there.path(), &["new", "record", "--blank", "-"], None).expect_status(0).stdout;
    assert!(printed.contains("MEASUREMENTS OF AN ARM") && printed.contains("1 ankle (B)"), "{printed}");
    let ran = run_in(there.path(), &["new", "record", "--blank", "form.docx"], None).expect_status(2);
    assert!(ran.stderr.contains("a form is `.pdf`, `.html` or `.txt`"), "{}", ran.stderr);
    let ran = run_in(there.path(), &["new", "record", "--blank", "form.txt"], None).expect_status(2);
    assert!(ran.stderr.contains("exists and is kept"), "{}", ran.stderr);
}

#[test]
fn decimal_commas_reach_the_table_that_a_chart_names() {
    let chart = "tapeline: chart/1\nlabel: sleeve chart (invented)\nlimb: arm\nsizes_from: t.csv\n";
    let table = "size;wrist (cm);forearm (cm)\n1;14-16;21-24,5\n2;16-18;24,5-27\n";
    let there = folder(&[("c.yaml", chart), ("t.csv", table)]);
    let ran = run_in(there.path(), &["inspect", "c.yaml"], None).expect_status(2);
    assert!(ran.stderr.contains("t.csv:2") && ran.stderr.contains("--decimal-comma"), "{}", ran.stderr);
    let told = run_in(there.path(), &["inspect", "c.yaml", "--decimal-comma"], None).expect_status(0).stdout;
    assert!(told.contains("24.5"), "{told}");
    // A chart's own numbers are YAML: there a comma stays a fault.
    let own = "tapeline: chart/1\nlabel: x\nlimb: arm\nunits: {length: cm}\nsizes:\n  - {size: \"1\", girths: {wrist: \"14,5-16\"}}\n";
    std::fs::write(there.path().join("o.yaml"), own).unwrap();
    run_in(there.path(), &["inspect", "o.yaml", "--decimal-comma"], None).expect_status(2);
}

/// An arm without an open question, and a leaflet's sizes without a word about the garment.
fn obtained() -> (tempfile::TempDir, String) {
    let record = std::fs::read_to_string(root().join("demo/first-visit.yaml")).unwrap();
    let record = record.replace("allergies: [latex]", "allergies: none");
    let leaflet = std::fs::read_to_string(root().join("demo/leaflet.csv")).unwrap();
    let there = folder(&[("arm.yaml", &record), ("leaflet.csv", &leaflet)]);
    let ran = run_in(there.path(), &["check", "arm.yaml", "leaflet.csv", "--today", "2026-03-14"], None);
    assert!(ran.stdout.contains("FALL UNKNOWN"), "{}", ran.stdout);
    let json = run_in(
        there.path(),
        &["check", "arm.yaml", "leaflet.csv", "--today", "2026-03-14", "--format", "json"],
        None,
    )
    .json();
    let paste = json["limbs"][0]["charts"][0]["paste"].as_str().unwrap().to_owned();
    for line in paste.lines().map(str::trim_end) {
        assert!(ran.stdout.contains(line), "{line} in\n{}", ran.stdout);
    }
    (there, paste)
}

#[test]
fn a_size_to_obtain_is_a_file_to_fill_in_and_check_takes_it() {
    let (there, paste) = obtained();
    // As pasted, its blanks are told with their places; nothing is taken for measured.
    std::fs::write(there.path().join("own.yaml"), &paste).unwrap();
    let args = ["check", "arm.yaml", "leaflet.csv", "own.yaml", "--today", "2026-03-14"];
    let ran = run_in(there.path(), &args, None).expect_status(2);
    assert!(ran.stderr.contains("flat_width, wrist: has no value behind it"), "{}", ran.stderr);
    // Filled in: 46, 45 and 37 per cent of stretch toward the trunk (derived from the girths 16.9, 25.7, 37.2 cm).
    let filled = paste
        .replace("  wrist: \n", "  wrist: 5.8\n")
        .replace("  forearm: \n", "  forearm: [8.9, 8.8]\n")
        .replace("  axilla: \n", "  axilla: 13.6\n");
    assert_ne!(filled, paste);
    std::fs::write(there.path().join("own.yaml"), &filled).unwrap();
    let ran = run_in(there.path(), &args, None).expect_status(0);
    assert!(ran.stdout.contains("TRIAL FITTING: size 3 of leaflet"), "{}", ran.stdout);
    assert!(ran.stdout.contains("the flat widths of size 3 are those of own.yaml"), "{}", ran.stdout);
    assert!(!ran.stdout.contains("garment/1"), "{}", ran.stdout);
    let json = run_in(there.path(), &[&args[..], &["--format", "json"]].concat(), None).json();
    assert_eq!(json["limbs"][0]["charts"][0]["measured"][0]["file"], "own.yaml");
    assert!(json["limbs"][0]["charts"][0]["paste"].is_null());
    let ran = run_in(there.path(), &["gradient", "arm.yaml", "own.yaml", "--today", "2026-03-14"], None);
    assert!(ran.stdout.contains("By stretch alone it falls"), "{}", ran.stdout);
    // Slack at the wrist and tight at the forearm: the same file takes the size out.
    std::fs::write(there.path().join("own.yaml"), filled.replace("wrist: 5.8", "wrist: 8.3")).unwrap();
    let ran = run_in(there.path(), &args, None).expect_status(1);
    assert!(ran.stdout.contains("taken out") && !ran.stdout.contains("TRIAL FITTING"), "{}", ran.stdout);
}

#[test]
fn a_garment_of_another_label_is_no_size_of_the_chart() {
    let (there, paste) = obtained();
    let filled = paste
        .replace("  wrist: \n", "  wrist: 5.8\n")
        .replace("  forearm: \n", "  forearm: 8.9\n")
        .replace("  axilla: \n", "  axilla: 13.6\n");
    for other in ["leaflet, size 5", "leaflet size 3", "another sleeve"] {
        std::fs::write(there.path().join("own.yaml"), filled.replace("leaflet, size 3", other)).unwrap();
        let args = ["check", "arm.yaml", "leaflet.csv", "own.yaml", "--today", "2026-03-14"];
        let ran = run_in(there.path(), &args, None).expect_status(1);
        assert!(ran.stdout.contains("FALL UNKNOWN"), "{other}: {}", ran.stdout);
        assert!(!ran.stdout.contains("are those of own.yaml"), "{other}: {}", ran.stdout);
    }
}
