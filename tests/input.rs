//! Reading: places, bounds, tables, labels; each against texts written here.

use std::fmt::Write as _;
use std::path::Path;
use std::time::{Duration, Instant};

use tapeline::anatomy::{Landmark, Limb};
use tapeline::input::keys::{Block, Form};
use tapeline::input::{FileKind, Problem, Reader, Source, Table, Text, TextFault};

fn source(text: &str) -> Source {
    Source::from_bytes("r.yaml".to_owned(), text.as_bytes().to_vec()).unwrap()
}

/// The one problem that keeps a text from being read at all.
#[track_caller]
fn refused(text: &str) -> Problem {
    match Reader::new(source(text)) {
        Ok(_) => panic!("is read:\n{text}"),
        Err(problem) => problem,
    }
}

fn place(problem: &Problem) -> (usize, usize) {
    problem.place.as_ref().map_or((0, 0), |place| (place.line, place.column))
}

#[test]
fn places_of_many_problems_are_found_in_one_pass() {
    // Lines and columns counted by hand.
    let text = "tapeline: garment/1\nlabel: [x]\nlimb: arm\n\nrelaxed:\n  wrist: 13 cm\n  forearm: {a: 1}\nodd: 1\nfrom:\n  - wrist\n";
    let reader = Reader::new(source(text)).unwrap();
    let fields = reader.fields("garment/1").unwrap();
    assert_eq!(fields.optional("label").unwrap().label(), None);
    assert_eq!(fields.optional("limb").unwrap().label().unwrap().as_str(), "arm");
    for (name, _, item) in fields.optional("relaxed").unwrap().fields().unwrap().each() {
        assert_eq!(item.girth().is_some(), name == "wrist");
    }
    assert!(fields.optional("from").unwrap().text().is_none());
    fields.finish();
    let places: Vec<_> = reader.problems().iter().map(place).collect();
    assert_eq!(places, [(2, 8), (7, 12), (8, 1), (10, 3)]);
}

#[test]
fn the_first_character_and_an_empty_block_have_places() {
    let reader = Reader::new(source("- a\n")).unwrap();
    assert!(reader.fields("garment/1").is_none());
    assert_eq!(place(&reader.problems()[0]), (1, 1));
    let reader = Reader::new(source("tapeline: record/1\nmarks: {}\nclient: {}\n")).unwrap();
    let fields = reader.fields("record/1").unwrap();
    for key in ["marks", "client"] {
        assert!(fields.optional(key).unwrap().text().is_none());
    }
    assert_eq!(reader.problems().iter().map(place).collect::<Vec<_>>(), [(2, 8), (3, 9)]);
}

#[test]
fn anchors_aliases_and_tags_are_refused_where_they_stand() {
    for (line, column, what) in [
        ("girth: &g 16.9", 8, "an anchor"),
        ("girth: *g", 8, "an alias"),
        ("girth: !!float 16.9", 8, "a tag"),
        ("girth: !own 16.9", 8, "a tag"),
        ("list: [1, *a]", 11, "an alias"),
        ("list: [&a 1]", 8, "an anchor"),
        ("- - *a", 5, "an alias"),
        ("{\"a\":*b}", 6, "an alias"),
        ("? *a", 3, "an alias"),
        ("'it''s': *b", 10, "an alias"),
    ] {
        let problem = refused(&format!("tapeline: record/1\n{line}\n"));
        assert_eq!(place(&problem), (2, column), "{line}");
        assert!(problem.what.starts_with(what), "{line}: {}", problem.what);
    }
    // A literal text ends where its indent ends.
    let problem = refused("a:\n  - note: |\n      *x\n    other: *x\n");
    assert_eq!(place(&problem), (4, 12));
}

// YAML 1.1 (yaml.org, 2005), 5.4: these count as line ends there, and in no editor.
#[test]
fn line_ends_of_another_kind_are_refused() {
    for end in ["\r", "\u{85}", "\u{2028}", "\u{2029}"] {
        let problem = refused(&format!("tapeline: record/1\nnote: a{end} b\nlimb: [x]\n"));
        assert_eq!(place(&problem), (2, 8), "{end:?}");
        assert!(problem.what.starts_with("a line end of another kind"), "{}", problem.what);
    }
}

#[test]
fn signs_inside_texts_are_no_anchors() {
    for line in [
        "note: a & b *c* !d",
        "note: \"&a, *b, !c\"",
        "note: '*a'",
        "note: after surgery, *right* side",
        "note: a # &b",
        "note: |\n  &a\n  *b: !c\nposture: x",
        "note: >-\n  *b\nposture: x",
        "note: \"two\n  *lines\"",
        "note: a[1]{2}",
    ] {
        let text = format!("tapeline: record/1\n{line}\n");
        assert!(Reader::new(source(&text)).is_ok(), "{line}");
    }
}

/// House rule of this project: an answer within a second (a build without optimisation, on a busy machine, is only
/// kept from running away).
#[test]
fn large_files_are_answered_within_a_second() {
    let start = Instant::now();
    let keys = (0..40_000).fold("tapeline: record/1\n".to_owned(), |mut text, at| {
        let _ = writeln!(text, "k{at}: 1");
        text
    });
    let reader = Reader::new(source(&keys)).unwrap();
    reader.fields("record/1").unwrap().finish();
    let problems = reader.problems();
    assert_eq!(problems.len(), 51);
    assert_eq!(problems.iter().map(|one| one.count).sum::<usize>(), 40_000);
    assert_eq!(place(&problems[49]), (51, 1));
    let keys_took = start.elapsed();

    let start = Instant::now();
    let long = format!("tapeline: record/1\nclient: {}\nlimb: [a]\n", "x".repeat(8 * 1024 * 1024 - 100));
    let reader = Reader::new(source(&long)).unwrap();
    let fields = reader.fields("record/1").unwrap();
    assert_eq!(fields.optional("client").unwrap().label(), None);
    let told = reader.problems();
    assert!(told[0].to_string().len() < 1_000);
    let line_took = start.elapsed();
    let limit = Duration::from_secs(if cfg!(debug_assertions) { 40 } else { 1 });
    assert!(keys_took < limit && line_took < limit, "{keys_took:?}, {line_took:?}");
}

#[test]
fn deep_nesting_is_refused() {
    for deep in ["[".repeat(200), "{a: ".repeat(200), "- ".repeat(200), "? ".repeat(200)] {
        let problem = refused(&format!("tapeline: record/1\n{deep}\n"));
        assert!(problem.what.contains("nested too deeply"), "{}", problem.what);
    }
}

#[test]
fn what_is_no_plain_file_is_a_problem_at_once() {
    let folder = tempfile::tempdir().unwrap();
    let told = Source::read_as(folder.path(), "a fabric file").unwrap_err();
    assert!(told.what.contains("is a folder, but a fabric file is wanted"), "{}", told.what);
    let told = Source::read_as(Path::new("/dev/zero"), "a record").unwrap_err();
    assert!(told.what.contains("is a pipe or device, but a record is wanted"), "{}", told.what);
}

#[test]
fn files_tell_their_kind() {
    for kind in FileKind::ALL {
        assert_eq!(source(&format!("# a remark\n\ntapeline: {}\nx: 1\n", kind.tag())).kind(), Some(kind));
        assert_eq!(FileKind::parse_word(kind.word()), Some(kind));
        assert_eq!(kind.keys().keys[0].name, "tapeline");
    }
    assert_eq!(source("---\n\"tapeline\": 'chart/1' # x\n").kind(), Some(FileKind::Chart));
    assert_eq!(source("{tapeline: chart/1, label: x}\n").kind(), Some(FileKind::Chart));
    assert_eq!(source("size,measure\n").kind(), None);
}

// Unicode: U+202E turns the direction of writing, U+001B starts a terminal's commands.
#[test]
fn labels_are_one_plain_line() {
    assert_eq!(Text::new("a\u{202e}b"), Err(TextFault::Character('\u{202e}')));
    assert_eq!(Text::new("a\u{1b}]0;x"), Err(TextFault::Character('\u{1b}')));
    assert_eq!(Text::new("a\nb"), Err(TextFault::Character('\n')));
    assert_eq!(Text::new(&"x".repeat(121)), Err(TextFault::Long));
    assert!(Text::new(&"x".repeat(120)).is_ok());
    let reader = Reader::new(source("tapeline: chart/1\nlabel: \"a\\e]0;b\\a\"\n")).unwrap();
    let fields = reader.fields("chart/1").unwrap();
    assert_eq!(fields.optional("label").unwrap().label(), None);
    let told = reader.problems()[0].to_string();
    assert!(told.starts_with("r.yaml:2:8: label: "), "{told}");
    assert!(told.contains("`a\\u{1b}]0;b\\u{7}`") && !told.contains('\u{1b}'), "{told:?}");
}

#[test]
fn messages_show_one_correct_line() {
    let reader =
        Reader::new(source("tapeline: record/1\nname: x\nmarks:\n  - {at: 1, girt: 3 cm}\n")).unwrap();
    let fields = reader.fields("record/1").unwrap();
    let _ = fields.required("client", "x");
    let marks = fields.optional("marks").unwrap().list().unwrap();
    let mark = marks[0].fields().unwrap();
    assert!(mark.required("at", "x").unwrap().position().is_none());
    assert!(mark.required("girth", "x").is_none());
    mark.finish();
    fields.finish();
    let told: Vec<String> = reader.problems().iter().map(|one| one.what.clone()).collect();
    assert_eq!(
        told[0],
        "the key `client` is missing; add the clinic's reference code, never a name, as `client: L-0417`"
    );
    assert_eq!(told[1], "the key `name` is not known; did you mean `client`? write `client: L-0417`");
    assert!(told.iter().any(|one| one.ends_with("; as `at: 14 cm`")), "{told:?}");
    assert!(told.iter().any(|one| one.contains("did you mean `girth`? write `girth: 25.6 cm`")), "{told:?}");
}

#[test]
fn one_mistake_at_every_mark_is_told_once() {
    let marks = (0..9).fold(String::new(), |text, at| text + &format!("  - {{at: {at} cm, girth: {at}}}\n"));
    let reader = Reader::new(source(&format!("tapeline: record/1\nmarks:\n{marks}"))).unwrap();
    let fields = reader.fields("record/1").unwrap();
    for mark in fields.optional("marks").unwrap().list().unwrap() {
        assert!(mark.fields().unwrap().optional("girth").unwrap().girth().is_none());
    }
    let told = reader.problems();
    assert_eq!(told.len(), 1);
    assert_eq!(told[0].count, 9);
    assert!(told[0].what.ends_with("; the same at 8 more places of this list"), "{}", told[0].what);
    assert_eq!(place(&told[0]), (3, 23));
}

// YAML 1.1 (yaml.org, 2005) writes yes and no as true and false.
#[test]
fn truth_values_of_other_libraries_are_taken() {
    let reader = Reader::new(source("tapeline: record/1\na: true\nb: False\nc: yes\nd: unknown\n")).unwrap();
    let fields = reader.fields("record/1").unwrap();
    let read = |key| fields.optional(key).unwrap();
    assert_eq!(read("a").yes_no(), Some(true));
    assert_eq!(read("b").yes_no(), Some(false));
    assert_eq!(read("c").yes_no(), Some(true));
    assert!(read("d").yes_no_unknown().is_some());
}

#[test]
fn everyday_words_are_answered_with_the_landmark_meant() {
    for (limb, word, wanted) in [
        (Limb::Arm, "armpit", "did you mean `axilla`?"),
        (Limb::Arm, "biceps", "did you mean `upper-arm`?"),
        (Limb::Leg, "foot", "did you mean `forefoot`?"),
        (Limb::Leg, "thigh", "did you mean `mid-thigh` or `upper-thigh`?"),
        (Limb::Leg, "below knee", "did you mean `below-knee`?"),
        (Limb::Arm, "c1", "did you mean `lower-forearm`?"),
        (Limb::Arm, "ankle", "is a landmark of the leg"),
    ] {
        let told = tapeline::input::landmark_fault(limb, word);
        assert!(told.contains(wanted), "{word}: {told}");
    }
    assert_eq!(Landmark::parse(Limb::Arm, "C1"), Some(Landmark::LowerForearm));
}

fn table(text: &str, comma: bool) -> Result<Table, Problem> {
    Table::read_with(Source::from_bytes("t.csv".to_owned(), text.as_bytes().to_vec()).unwrap(), comma)
}

#[test]
fn tables_count_their_lines() {
    // Lines counted by hand: a quoted line end, an empty line and CRLF line ends.
    let read = table("size,note,low_cm\r\n1,\"two\r\nlines\",14\r\n\r\n2,x,16\r\n", false).unwrap();
    assert_eq!(read.rows().iter().map(tapeline::input::Row::line).collect::<Vec<_>>(), [2, 5]);
    let told = read.problem(&read.rows()[0], Some(2), "x");
    assert_eq!(place(&told), (3, 8));
    let told = read.problem(&read.rows()[1], Some(2), "x");
    assert_eq!(place(&told), (5, 5));
    let told = table("a,b\n1,\"x\n2,y\n", false).err().unwrap();
    assert!(told.what.contains("a quote is opened and not closed"), "{}", told.what);
    assert_eq!(place(&told), (2, 1));
    let told = table("a,b\n1,2\n1,2,3\n", false).err().unwrap();
    assert_eq!(place(&told), (3, 1));
    let told = table("a,b\ncm,cm\n1,2\n", false).err().unwrap();
    assert!(told.what.contains("second header row"), "{}", told.what);
}

#[test]
fn european_tables_are_read_and_told() {
    let read = table("size;wrist (cm)\n1;14,5-16\n", true).unwrap();
    assert_eq!(read.rows()[0].cell(Some(1)), Some("14.5-16"));
    assert_eq!(read.understood(), ["columns separated by semicolons", "decimal commas read as points"]);
    let read = table("size\twrist_cm\n1\t14-16\n", false).unwrap();
    assert_eq!(read.understood(), ["columns separated by tabs"]);
}

// A half, three quarters and five eighths of an inch, by definition of the fractions.
#[test]
fn inch_fractions_are_decimals() {
    let read =
        table("size,wrist_in\n1,6 1/2\n2,6½-7 3/4\n3,5/8\n4,under 14\n5,6 5/16 to 7\n", false).unwrap();
    let cells: Vec<_> = read.rows().iter().map(|row| row.cell(Some(1)).unwrap().to_owned()).collect();
    assert_eq!(cells, ["6.5", "6.5-7.75", "0.625", "under 14", "6.3125 to 7"]);
}

/// House rule of this project: 20,000 sizes within 100 ms (in a build with optimisation).
#[test]
fn long_tables_are_read_in_linear_time() {
    let text = (0..20_000).fold("size,wrist_cm,forearm_cm,upper-arm_cm\n".to_owned(), |mut text, at| {
        let _ = writeln!(text, "{at},14-16,20-22,28-30");
        text
    });
    let start = Instant::now();
    assert_eq!(table(&text, false).unwrap().rows().len(), 20_000);
    let limit = Duration::from_millis(if cfg!(debug_assertions) { 15_000 } else { 100 });
    assert!(start.elapsed() < limit, "{:?}", start.elapsed());
}

// APPNOTE of the ZIP format: a central entry says at byte 24 what it unpacks to; here 1 GiB, in a file of 70 bytes.
#[test]
fn a_packed_bomb_is_refused_by_what_it_says() {
    let folder = tempfile::tempdir().unwrap();
    let mut bytes = b"PK\x01\x02".to_vec();
    bytes.extend([0; 20]);
    bytes.extend(0x4000_0000_u32.to_le_bytes());
    bytes.extend([0; 18]);
    bytes.extend(b"PK\x05\x06");
    bytes.extend([0, 0, 0, 0, 1, 0, 1, 0, 46, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
    for (name, bytes, wanted) in [
        ("bomb.xlsx", bytes, "unpacks to more than 64 MiB"),
        ("text.xlsx", b"size,wrist_cm\n".to_vec(), "is no spreadsheet that can be read"),
        ("empty.ods", Vec::new(), "is no spreadsheet that can be read"),
    ] {
        let path = folder.path().join(name);
        std::fs::write(&path, bytes).unwrap();
        let told = Source::read(&path).unwrap_err();
        assert!(told.what.contains(wanted), "{name}: {}", told.what);
    }
}

/// Every block that can be reached from a kind's keys.
fn blocks(block: &'static Block, seen: &mut Vec<&'static Block>) {
    if seen.iter().any(|one| std::ptr::eq(*one, block)) {
        return;
    }
    seen.push(block);
    for key in block.keys {
        if let Some(inner) = key.form.block() {
            blocks(inner, seen);
        }
    }
}

fn all_blocks() -> Vec<&'static Block> {
    let mut seen = Vec::new();
    for kind in FileKind::ALL {
        blocks(kind.keys(), &mut seen);
    }
    seen
}

#[test]
fn every_key_has_a_line_to_copy_and_no_two_names() {
    for block in all_blocks() {
        let mut names = std::collections::BTreeSet::new();
        for key in block.keys {
            assert!(names.insert(key.name), "{}: `{}` twice", block.name, key.name);
            assert!(key.example.starts_with(&format!("{}: ", key.name)), "{}: {}", block.name, key.example);
            assert!(!key.about.is_empty() && !key.about.ends_with('.'), "{}: {}", block.name, key.about);
            assert!(Reader::new(source(key.example)).is_ok(), "{}", key.example);
            for also in key.also {
                assert!(block.key(also).is_none(), "{}: `{also}` is a key itself", block.name);
            }
        }
    }
}

/// Every kind read from its own examples, in a folder with nothing else; problems do not matter here.
fn read_every_kind() {
    let text = |kind: FileKind, change: &dyn Fn(&str) -> Option<String>| {
        let lines = kind.keys().keys.iter().filter_map(|key| change(key.example));
        lines.collect::<Vec<_>>().join("\n") + "\n"
    };
    let all = |line: &str| Some(line.to_owned());
    let schemes = tapeline::garment::Schemes::default();
    for (limb, both) in [("left arm", false), ("right leg", false), ("both arms", true)] {
        let record = text(FileKind::Record, &|line: &str| match line.split(':').next() {
            Some("limb") => Some(format!("limb: {limb}")),
            Some("positions_from") if limb == "right leg" => Some("positions_from: floor".to_owned()),
            Some("left" | "right") if !both => None,
            Some("marks") => Some(
                "marks: [{landmark: A, at: 0 cm, girth: 16 cm, calipers: {wide: 9 cm, deep: 7 cm}}]"
                    .to_owned(),
            ),
            Some("other_limb") if both => None,
            _ => Some(line.to_owned()),
        });
        let reader = Reader::new(source(&record)).unwrap();
        let _ = tapeline::record::read_record(&reader);
    }
    let chart = text(FileKind::Chart, &|line: &str| {
        match line.split(':').next() {
        Some("sizes_from") => None,
        Some("sizes") => Some(
            "sizes: [{size: a, girths: {wrist: 16-18 cm}, lengths: [{variant: short, wrist to axilla: 36-40 cm}]}]"
                .to_owned(),
        ),
        _ => Some(line.to_owned()),
    }
    });
    let _ = tapeline::garment::open_chart(source(&chart), &schemes);
    let chart = text(FileKind::Chart, &|line: &str| (!line.starts_with("sizes:")).then(|| line.to_owned()));
    let _ = tapeline::garment::open_chart(source(&chart), &schemes);
    let worn = |line: &str| line.starts_with("worn_together");
    for together in [false, true] {
        let garment =
            text(FileKind::Garment, &|line: &str| (together || !worn(line)).then(|| line.to_owned()));
        let _ = tapeline::garment::open_outfit(source(&garment), &schemes);
    }
    let _ = tapeline::garment::open_outfit(source(&text(FileKind::Wrap, &all)), &schemes);
    for left_out in ["bench", "curve", "exponent", "strip"] {
        let fabric = text(FileKind::Fabric, &|line: &str| {
            let shown = if line.starts_with("exponent") { "exponent: {value: 1.05}" } else { line };
            (!line.starts_with(left_out)).then(|| shown.to_owned())
        });
        let _ = tapeline::garment::open_fabric(source(&fabric));
    }
    let _ = tapeline::garment::Schemes::with_files(vec![source(&text(FileKind::Scheme, &all))]);
    let visits = Reader::new(source(&text(FileKind::Visits, &all))).unwrap();
    let _ = tapeline::record::read_visits(&visits);
    let _ = tapeline::rules::read_shipped_rules("default");
    let _ = tapeline::rules::read_shipped_rules("awmf-037-005");
    // The shipped sets raise no finding and state the tape's error once.
    let raising = "tapeline: rules/1\nid: own\nextends: default\nlabel: own\nsource: own\nraised: [{finding: slope-steep, severity: clear-first, basis: house rule, why: own}]\ntape_sd: [{landmark: wrist, sd: 0.3 cm, basis: invented, why: own}, {limb: leg, share: 1 %, least: 0.2 cm, most: 0.4 cm, basis: invented, why: own}]\n";
    let _ = tapeline::rules::read_rules(Some(source(raising)));
}

#[test]
fn every_key_asked_for_is_in_its_table_and_the_reverse() {
    read_every_kind();
    let asked = tapeline::input::keys_asked();
    // `again` is asked for only to be told that repeats are a list.
    let unlisted: Vec<_> = asked
        .iter()
        .filter(|(name, key)| {
            !all_blocks().iter().any(|block| block.name == *name && block.key(key).is_some())
                && key != "again"
        })
        .collect();
    assert!(unlisted.is_empty(), "asked for, in no table: {unlisted:?}");
    let mut unasked = Vec::new();
    for block in all_blocks() {
        for key in block.keys {
            let known = asked.iter().any(|(name, asked)| *name == block.name && asked == key.name);
            if !known {
                unasked.push(format!("{}: {}", block.name, key.name));
            }
        }
    }
    assert!(unasked.is_empty(), "in a table, asked for by nobody: {unasked:?}");
}

#[test]
fn no_fixed_word_turns_into_a_truth_value() {
    // YAML 1.1, yaml.org/type/bool.html, without `y` and `n`, which the common libraries leave alone
    // (the unit N is one).
    let words = ["yes", "no", "true", "false", "on", "off"];
    for block in all_blocks() {
        for key in block.keys {
            assert!(!words.contains(&key.name.to_lowercase().as_str()), "{}: `{}`", block.name, key.name);
            if let Form::Word(list) = key.form {
                assert!(
                    !list.iter().any(|word| words.contains(&word.to_lowercase().as_str())),
                    "{}",
                    key.name
                );
            }
        }
    }
}

// Derived: n/2 to n/64 of an inch end as decimals. A length as a tape has it is refused with the figure to write.
#[test]
fn a_fraction_of_an_inch_is_told_its_decimal() {
    use tapeline::quantity::{Dimension, Units, read_quantity};
    let told = |text: &str| read_quantity(text, Dimension::Length, Units::default()).unwrap_err().to_string();
    for (text, decimal) in [
        ("6 7/8", "6.875"),
        ("6 7/8 in", "6.875"),
        ("6 7/8\"", "6.875"),
        ("7/8", "0.875"),
        ("5 1/2", "5.5"),
        ("5 4/2", "7"),
        ("1 1/64", "1.015625"),
        ("10 3/32", "10.09375"),
    ] {
        assert!(
            told(text).contains(&format!("write it as a decimal with its unit: `{decimal} in`")),
            "{text}"
        );
    }
    for (text, number) in [("13\"", "13"), ("12.25\"", "12.25"), ("13 \u{2033}", "13")] {
        assert!(told(text).ends_with(&format!("write `{number} in`")), "{text}: {}", told(text));
    }
    for other in ["6 7/9", "6 7/", "6 /8 cm", "6 x/8", "6 7/8 cm", "6 99999999999/8", "\""] {
        assert!(!told(other).contains("fraction") && !told(other).contains("sign of inches"), "{other}");
    }
    let kilograms = read_quantity("6 7/8", Dimension::Mass, Units::default()).unwrap_err().to_string();
    assert!(kilograms.contains("unknown unit"), "{kilograms}");
}
