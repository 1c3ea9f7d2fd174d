//! Every word that the program prints is explained, and what people type instead leads to it.

use tapeline::anatomy::{Landmark, Limb};
use tapeline::assessment::Outcome;
use tapeline::document::Block;
use tapeline::explain::{Answer, Catalogue, Glossary, Kind, Topic, alarm_tables, all, index, lookup};
use tapeline::finding;
use tapeline::garment::{SHIPPED_SCHEMES, Schemes, open_fabric};
use tapeline::gradient::{Action, Grade, GradientBasis};
use tapeline::input::Source;
use tapeline::render::terminal;
use tapeline::rules::{
    ArterialValue, Basis, Group, NumberId, Role, Rules, SHIPPED_RULES, Severity, Urgency, read_shipped_rules,
};

fn rules() -> Rules {
    read_shipped_rules("default").unwrap()
}

fn catalogue() -> Catalogue {
    Catalogue::of(&rules(), &Schemes::default())
}

/// The page of a word as a terminal of 100 columns shows it.
pub fn page(word: &str) -> String {
    match lookup(word, &rules(), &Schemes::default()) {
        Answer::Found(blocks) => terminal(&blocks, 100),
        Answer::Near(near) => panic!("`{word}` is not known; near: {near:?}"),
    }
}

// Control: explained
#[test]
fn every_word_of_a_closed_list_has_an_entry() {
    for (id, _) in SHIPPED_RULES {
        let rules = read_shipped_rules(id).unwrap();
        let catalogue = Catalogue::of(&rules, &Schemes::default());
        let holds = |kind: Kind, word: &str| {
            assert!(
                catalogue.find(word).iter().any(|entry| entry.kind == kind),
                "`{word}` ({}) is not explained",
                kind.word()
            );
        };
        for one in Outcome::ALL {
            holds(Kind::Outcome, one.word());
        }
        for (word, _) in Severity::WORDS {
            holds(Kind::Severity, word);
        }
        for (word, _) in Urgency::WORDS {
            holds(Kind::Urgency, word);
        }
        for (word, _) in Role::WORDS {
            holds(Kind::Role, word);
        }
        for (word, _) in Basis::WORDS {
            holds(Kind::Basis, word);
        }
        for (word, _) in Group::WORDS {
            holds(Kind::Group, word);
        }
        for one in NumberId::ALL {
            holds(Kind::Number, one.id());
        }
        ArterialValue::WORDS
            .iter()
            .filter(|(_, value)| *value != ArterialValue::Unknown)
            .for_each(|(word, _)| holds(Kind::Arterial, word));
        for grade in [Grade::Certain, Grade::Likely, Grade::Possible, Grade::Undecided, Grade::None] {
            holds(Kind::Grade, grade.word());
        }
        for basis in [GradientBasis::Readings, GradientBasis::Fabric, GradientBasis::Stretch] {
            holds(Kind::Ground, basis.word());
        }
        for action in [
            Action::FlatWidth,
            Action::Tape,
            Action::StripPull,
            Action::Curve,
            Action::CurveFurther,
            Action::ReadAgain,
            Action::SensorReadings,
        ] {
            holds(Kind::Step, action.word());
        }
        for limb in [Limb::Arm, Limb::Leg] {
            for one in Landmark::of(limb) {
                holds(Kind::Landmark, one.name());
            }
        }
        for verdict in ["inside", "close", "outside", "missing", "open", "tight", "loose"] {
            holds(Kind::Verdict, verdict);
        }
        for verdict in ["size", "between", "measure-again", "made-to-measure", "not-judged"] {
            holds(Kind::Verdict, verdict);
        }
        for state in ["settled", "not-yet", "rising", "cannot-tell"] {
            holds(Kind::State, state);
        }
        for one in finding::ALL {
            holds(Kind::Finding, one.id);
        }
        rules.items.iter().for_each(|one| holds(Kind::Item, &one.id));
        rules.observed.iter().for_each(|one| holds(Kind::Observed, &one.key));
        rules.severity_sets.iter().for_each(|one| holds(Kind::GradeSet, &one.set));
        for (id, _) in SHIPPED_RULES {
            holds(Kind::RuleSet, id);
        }
        for (id, _) in SHIPPED_SCHEMES {
            holds(Kind::Scheme, id);
        }
        for (id, _) in SHIPPED_SCHEMES {
            for class in &Schemes::default().find(id).unwrap().classes {
                holds(Kind::Class, &format!("class {} of {id}", class.class));
            }
        }
    }
}

// Design, section 3: the words, each printed landmark with its letter.
#[test]
fn a_landmark_is_found_by_word_letter_and_the_users_word() {
    for (asked, said) in [
        ("wrist (C)", "wrist"),
        ("armpit", "axilla"),
        ("biceps", "upper-arm"),
        ("foot", "forefoot"),
        ("B1", "lower-calf"),
        ("Y", "instep"),
    ] {
        assert!(page(asked).contains(&format!("{said} (landmark)")), "{asked}: {}", page(asked));
    }
    // One letter, two limbs.
    assert!(page("C").contains("wrist (landmark)") && page("C").contains("calf (landmark)"));
}

// Issue: words that users type lead to ours.
#[test]
fn what_people_type_leads_to_our_word() {
    for (typed, ours) in [
        ("tourniquet", "tourniquet effect (term)"),
        ("tourniquet", "rise (finding)"),
        ("ring", "tourniquet effect (term)"),
        ("circumference", "girth (term)"),
        ("ABI", "abpi (arterial value)"),
        ("compression class", "class (term)"),
        ("custom", "made-to-measure (outcome)"),
        ("fit", "trial-fitting (outcome)"),
        ("swelling", "excess (term)"),
        ("slip", "misreading (term)"),
        ("graduation", "graduation (term)"),
        ("probability", "chance (term)"),
        ("edema", "excess (term)"),
        ("oedema", "excess (term)"),
        ("size chart", "chart (term)"),
        ("reversed gradient", "rise (finding)"),
        ("contraindications", "screening (term)"),
        ("Residual Pressure", "residual pressure (term)"),
        ("margin_cm", "margin (term)"),
        ("margins", "margin (term)"),
        ("class 2", "class 2 of ral-gz-387-2 (pressure class)"),
        ("latex", "natural rubber (material)"),
    ] {
        assert!(page(typed).contains(ours), "`{typed}` does not lead to `{ours}`:\n{}", page(typed));
    }
    assert!(page("tourniquet").contains("`tourniquet` leads to"), "{}", page("tourniquet"));
}

#[test]
fn every_lead_and_every_number_in_a_text_resolves() {
    let catalogue = catalogue();
    for lead in catalogue.leads() {
        assert!(catalogue.all().iter().any(|entry| entry.word == lead.to), "{}", lead.to);
    }
    for entry in catalogue.all() {
        // Keys show lines to copy, which hold braces of YAML.
        if !matches!(entry.kind, Kind::Key | Kind::Number) {
            let texts = entry.rule.iter().chain([&entry.meaning]);
            texts.for_each(|text| assert!(!text.contains('{'), "{}: {text}", entry.word));
        }
        assert!(!entry.meaning.trim().is_empty() && !entry.basis.is_empty(), "{entry:?}");
        assert!(entry.rule.iter().all(|rule| !rule.trim().is_empty()), "{entry:?}");
    }
}

#[test]
fn every_basis_is_a_word_of_the_list() {
    for word in Glossary::shipped().unwrap().words {
        let known = Basis::WORDS.iter().any(|(basis, _)| *basis == word.basis);
        assert!(known || word.basis.is_empty(), "{}: {}", word.word, word.basis);
        if word.basis == "published" || word.basis == "secondary" {
            assert!(!word.source.is_empty(), "{}: where was it read?", word.word);
        }
    }
}

#[test]
fn the_numbers_in_use_are_shown() {
    let (rules, catalogue) = (rules(), catalogue());
    for number in &rules.numbers {
        let found = catalogue.find(number.id.id());
        let page: String = found.iter().map(|entry| terminal(&entry.blocks(), 100)).collect();
        assert!(page.contains(&number.text), "{}: {page}", number.id.id());
    }
    assert!(page("close").contains("below 0.5 cm"), "{}", page("close"));
}

// Rules: the default says how many of its items rest on what.
#[test]
fn a_set_of_rules_says_what_it_rests_on() {
    let page = page("default");
    assert!(page.contains("Tapeline's questions, after Rabe 2020 and others"), "{page}");
    for basis in ["published", "secondary", "memory", "house rule"] {
        assert!(page.contains(basis), "{basis}: {page}");
    }
    assert!(self::page("awmf-037-005").contains("Milder than the default"));
}

#[test]
fn a_mistyped_word_is_answered_with_the_nearest() {
    let near = |word: &str| match lookup(word, &rules(), &Schemes::default()) {
        Answer::Near(near) => near,
        Answer::Found(_) => panic!("`{word}` is known"),
    };
    assert_eq!(near("unusual-girt").first().map(String::as_str), Some("unusual-girth"));
    assert!(near("marginn").contains(&"margin".to_owned()));
    assert!(near("xylophone").is_empty());
}

#[test]
fn the_pages_stand() {
    for topic in Topic::ALL {
        assert!(!topic.blocks(&rules()).is_empty());
        assert!(page(topic.word()).lines().count() > 3, "{}", topic.word());
    }
    let strip = page("strip-pull");
    for said in
        ["free strip narrows", "heaviest weight first", "while the weights come off", "ln(F2/F1)/ln(e2/e1)"]
    {
        let flat = strip.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains(said), "{said}: {strip}");
    }
    let questions = page("screening");
    rules().items.iter().for_each(|item| assert!(questions.contains(&item.id), "{}", item.id));
}

#[test]
fn the_list_and_the_whole_name_every_word() {
    let (rules, schemes) = (rules(), Schemes::default());
    let list = terminal(&index(&rules, &schemes), 100);
    let list: String = list.split_whitespace().collect::<Vec<_>>().join(" ");
    for entry in catalogue().all().iter().filter(|entry| !matches!(entry.kind, Kind::Key | Kind::ReportKey)) {
        assert!(list.contains(&entry.word), "{}", entry.word);
    }
    assert!(all(&rules, &schemes).len() > catalogue().all().len());
}

#[test]
fn a_page_keeps_to_the_width_of_the_terminal() {
    for entry in catalogue().all() {
        for line in terminal(&entry.blocks(), 80).lines() {
            assert!(line.chars().count() <= 80, "{}: {line}", entry.word);
        }
    }
}

#[test]
fn the_tables_of_alarms_are_whole() {
    assert_eq!(alarm_tables().unwrap().len(), 6, "a table is not measured yet");
    for table in alarm_tables().unwrap() {
        assert!(table.rows.iter().all(|row| row.len() == table.columns.len()), "{}", table.title);
        assert!(!table.measured_by.is_empty() && !table.about.is_empty(), "{}", table.title);
    }
}

// Control: never-safe
#[test]
fn no_text_calls_anything_safe_or_guaranteed() {
    let (rules, schemes) = (rules(), Schemes::default());
    let text = terminal(&all(&rules, &schemes), 120).to_lowercase();
    // The names of a control and of this test.
    let text = text.replace("never-safe", "").replace("no_text_calls_anything_safe_or_guaranteed", "");
    for word in ["safe", "guarantee", "custom-made"] {
        let at =
            text.find(word).map(|at| text[at.saturating_sub(80)..].chars().take(160).collect::<String>());
        assert!(at.is_none(), "`{word}` stands in what the program says: {at:?}");
    }
}

// Every file that a page shows to be copied is read as it stands.
#[test]
fn files_to_copy_are_read() {
    for topic in [Topic::StripPull, Topic::BenchTest] {
        let mut shown = 0;
        for block in topic.blocks(&rules()) {
            if let Block::Verbatim(text) = block {
                let source = Source::of_text("page.yaml", text);
                let fabric = open_fabric(source).unwrap_or_else(|problems| panic!("{problems:?}"));
                assert_eq!(fabric.has_curve(), topic == Topic::BenchTest);
                shown += 1;
            }
        }
        assert_eq!(shown, 1);
    }
}

#[test]
#[ignore = "shows pages to be read"]
fn shown() {
    for word in std::env::var("WORDS").unwrap_or_default().split(';') {
        println!("{}", page(word));
    }
}
