//! The fitting sheet and the terminal report, by reports written by hand.

use tapeline::assessment::Outcome;
use tapeline::document::{Block, Leaf, Reader, Sheet};
use tapeline::render::{self, Language, Paper};
use tapeline::report::Report;
use tapeline::rules::Severity;

use crate::sheet_reports::{all, both_legs, emergency, made, refer, set, trial};

/// Every text of a sheet's plain form, its lines joined.
fn words(sheet: &Sheet) -> String {
    let text = render::plain(sheet, Paper::A4);
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Every text of a sheet's page for a browser, without its marks.
fn page_words(sheet: &Sheet) -> String {
    let page = render::html(sheet, Paper::A4);
    let body = page.split_once("<main>").unwrap().1;
    let mut text = String::new();
    for piece in body.split('<') {
        text.push_str(piece.split_once('>').map_or(piece, |(_, words)| words));
    }
    let text = text.replace("&quot;", "\"").replace("&#39;", "'").replace("&lt;", "<").replace("&gt;", ">");
    text.replace("&amp;", "&")
}

fn squeezed(text: &str) -> String {
    text.chars().filter(|c| !c.is_whitespace() && *c != '-').collect()
}

fn english(report: &Report) -> Sheet {
    render::sheet(report, Language::English)
}

fn client(sheet: &Sheet) -> &Leaf {
    sheet.leaves.iter().find(|leaf| leaf.reader == Reader::Client).unwrap()
}

#[test]
fn every_finding_stands_on_the_sheet_and_in_the_terminal_report() {
    for (name, report) in all() {
        let paper = squeezed(&page_words(&english(&report)));
        let terminal = squeezed(&render::terminal_report(&report, 100));
        for finding in &report.findings {
            let message = squeezed(finding.message.trim_end_matches('.'));
            assert!(paper.contains(&message), "{name}: {}", finding.message);
            assert!(terminal.contains(&message), "{name}: {}", finding.message);
        }
        for question in &report.screening.questions {
            assert!(paper.contains(&squeezed(&question.question)), "{name}: {}", question.question);
        }
    }
}

/// Source: the sheet's own rule: no option, key, id or name of a set stands on paper.
#[test]
fn no_code_stands_on_paper() {
    for (name, report) in all() {
        let paper = words(&english(&report));
        let ids = report.findings.iter().map(|one| one.id.as_str()).filter(|id| id.contains('-'));
        for code in ids.chain(["clear-first", "ral-gz", "tapeline.report", "fall-unknown", "_cm"]) {
            assert!(!paper.contains(code), "{name}: {code}");
        }
    }
}

#[test]
fn nothing_invites_to_fit_under_stop_and_refer() {
    for report in [refer(), emergency()] {
        let paper = words(&english(&report)).to_lowercase();
        assert!(paper.contains("figures only"));
        assert!(!paper.contains("go on to a trial fitting"));
        assert!(!paper.contains("trial fitting"));
        assert!(!paper.contains("quantity"));
    }
}

#[test]
fn what_cannot_wait_is_the_title_of_the_clients_pages() {
    let sheet = english(&emergency());
    assert!(client(&sheet).title.starts_with("Call for emergency help now: "));
    let german = render::sheet(&emergency(), Language::German);
    assert!(client(&german).title.starts_with("Rufen Sie jetzt den Notruf: "));
}

/// The advice about a garment already worn is one, the strongest of those that hold.
#[test]
fn one_advice_about_the_garment_worn() {
    let sheet = english(&emergency());
    let frames: Vec<String> = client(&sheet)
        .blocks
        .iter()
        .filter_map(|block| match block {
            Block::Frame { title, inside, .. } if title == "The garment you wear now" => {
                Some(format!("{inside:?}"))
            }
            _ => None,
        })
        .collect();
    assert_eq!(frames.len(), 1);
    assert!(frames[0].contains("Take it off now."), "{frames:?}");
}

#[test]
fn the_date_by_which_is_printed_and_never_left_blank() {
    let page = words(&english(&refer()));
    assert!(page.contains("See your doctor by 28 March 2026"), "{page}");
    assert!(!page.contains("{date}"));
    let german = words(&render::sheet(&refer(), Language::German));
    assert!(german.contains("bis zum 28. März 2026"));
}

#[test]
fn an_arm_has_fingers_and_a_leg_has_toes() {
    let arm = words(&english(&trial()));
    assert!(arm.contains("your fingers turn blue") && !arm.contains("your toes"));
    let legs = words(&english(&both_legs()));
    assert!(legs.contains("your toes turn blue") && !legs.contains("your fingers"));
    assert!(legs.contains("your foot drops"));
}

#[test]
fn a_line_for_each_part_and_limb_and_one_leaf_for_the_client() {
    for (report, lines) in [(trial(), 1), (set(), 2), (both_legs(), 2)] {
        let sheet = english(&report);
        assert_eq!(sheet.leaves.iter().filter(|leaf| leaf.reader == Reader::Client).count(), 1);
        let order = sheet.leaves[0].blocks.iter().find_map(|block| match block {
            Block::Frame { title, inside, .. } if title == "Order" => Some(inside),
            _ => None,
        });
        let Some(Block::Table(table)) = order.unwrap().first() else { panic!("no table in the order box") };
        assert_eq!(table.rows.len(), lines);
    }
}

#[test]
fn the_order_knows_what_the_record_knows() {
    let page = words(&english(&made()));
    assert!(page.contains("[x] flat"), "flat knit is ticked for folds");
    assert!(page.contains("[x] hand part"), "the hand part is ticked");
    assert!(page.contains("41.5 cm, from the positions"));
    assert!(!page.contains("estimated pressure"), "no plot of a garment that does not serve");
}

#[test]
fn the_languages_have_the_same_keys() {
    let keys = |text: &str| {
        let value: serde_json::Value = serde_yaml::from_str(text).unwrap();
        let mut keys = Vec::new();
        for (name, part) in value.as_object().unwrap() {
            match part.as_object() {
                Some(part) => keys.extend(part.keys().map(|key| format!("{name}.{key}"))),
                None => keys.push(name.clone()),
            }
        }
        keys.sort();
        keys
    };
    let english = include_str!("../src/render/sheet/language/en.yaml");
    let german = include_str!("../src/render/sheet/language/de.yaml");
    assert_eq!(keys(english), keys(german));
    assert!(german.contains("to be reviewed by a clinician who speaks it"));
}

/// Every item that stops or must be cleared has a sentence of its own for the client.
#[test]
fn each_item_has_the_clients_words() {
    let english: serde_json::Value =
        serde_yaml::from_str(include_str!("../src/render/sheet/language/en.yaml")).unwrap();
    let rules = tapeline::rules::read_shipped_rules("default").unwrap();
    for item in &rules.items {
        let heavy = matches!(item.severity, Severity::Stop | Severity::ClearFirst);
        if heavy && !["changes", "wear", "any-change", "wear-harm"].contains(&item.id.as_str()) {
            assert!(english["items"][&item.id]["say"].is_string(), "{} has no words for the client", item.id);
        }
    }
}

#[test]
fn the_terminal_report_keeps_to_its_width() {
    for (name, report) in all() {
        for width in [60, 80, 100, 120] {
            for line in render::terminal_report(&report, width).lines() {
                assert!(line.chars().count() <= width, "{name} at {width}: {line}");
                assert_eq!(line, line.trim_end());
            }
        }
    }
}

#[test]
fn the_same_report_gives_the_same_bytes() {
    for (_, report) in all() {
        let sheet = english(&report);
        assert_eq!(render::html(&sheet, Paper::A4), render::html(&english(&report), Paper::A4));
        #[cfg(feature = "pdf")]
        assert_eq!(render::pdf(&sheet, Paper::A4), render::pdf(&english(&report), Paper::A4));
    }
}

#[test]
fn the_band_says_the_outcome_on_every_sheet() {
    for (name, report) in all() {
        let first = &english(&report).leaves[0].blocks[0];
        let said = format!("{first:?}");
        let word = match report.decision.outcome {
            Some(Outcome::Stop) => "STOP",
            Some(Outcome::Refer) => "REFER",
            Some(Outcome::MadeToMeasure) => "MADE TO MEASURE",
            _ => "TRIAL FITTING",
        };
        assert!(said.contains(word), "{name}");
        assert!(said.contains("Next") && said.contains("Who acts"), "{name}");
    }
}
