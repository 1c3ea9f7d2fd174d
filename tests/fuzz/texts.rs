//! Every text of every kind of file, by the tables of keys: a character that a terminal obeys is refused there, and a
//! label is one line of at most 120 columns.

use serde_yaml::{Mapping, Value};
use tapeline::assessment::{Setting, open_files};
use tapeline::garment::{Schemes, open_chart, open_fabric, open_outfit};
use tapeline::input::keys::{Block, Form};
use tapeline::input::{FileKind, Problem, Source};
use tapeline::rules::read_rules;

use super::corpus::CORPUS;
use super::laws::obeyed;
use crate::made;

/// A step into a file.
#[derive(Clone, Debug)]
enum Step {
    Key(String),
    First,
}

/// Where a text stands, and whether it is a label.
struct Place {
    steps: Vec<Step>,
    is_label: bool,
    in_list: bool,
}

fn places(block: &Block, before: &[Step], into: &mut Vec<Place>) {
    if before.len() > 8 {
        return;
    }
    for key in block.keys {
        let steps = [before, &[Step::Key(key.name.to_owned())]].concat();
        of_form(&key.form, &steps, into);
    }
}

fn of_form(form: &Form, steps: &[Step], into: &mut Vec<Place>) {
    match form {
        Form::Label | Form::Prose => {
            into.push(Place { steps: steps.to_vec(), is_label: matches!(form, Form::Label), in_list: false });
        }
        Form::List(of) | Form::OneOrMore(of) if matches!(of, Form::Label) => {
            into.push(Place { steps: steps.to_vec(), is_label: true, in_list: true });
        }
        Form::Either(one, other) => {
            of_form(one, steps, into);
            of_form(other, steps, into);
        }
        Form::Block(block) => places(block, steps, into),
        Form::Blocks(block) => places(block, &[steps, &[Step::First]].concat(), into),
        Form::ByLandmark(of) => of_form(of, &[steps, &[Step::Key("wrist".to_owned())]].concat(), into),
        _ => {}
    }
}

fn put(tree: &mut Value, steps: &[Step], text: Value) {
    match steps.split_first() {
        None => *tree = text,
        Some((Step::Key(key), rest)) => {
            if !tree.is_mapping() {
                *tree = Value::Mapping(Mapping::new());
            }
            let map = tree.as_mapping_mut().unwrap();
            // Two ways of one thing: the other one is taken out.
            for other in match key.as_str() {
                "bench" | "strip" | "exponent" => ["curve", "exponent"],
                "prescribed" | "worn_together" => ["relaxed", "flat_width"],
                _ => ["", ""],
            } {
                map.shift_remove(other);
            }
            put(map.entry(key.as_str().into()).or_insert(Value::Null), rest, text);
        }
        Some((Step::First, rest)) => {
            if !tree.is_sequence() || tree.as_sequence().is_some_and(Vec::is_empty) {
                *tree = Value::Sequence(vec![Value::Null]);
            }
            put(&mut tree.as_sequence_mut().unwrap()[0], rest, text);
        }
    }
}

fn problems(kind: FileKind, text: String, setting: &Setting) -> Vec<Problem> {
    let source = Source::of_text(crate::source::root().join("demo/x.yaml").display().to_string(), text);
    let found = match kind {
        FileKind::Chart => open_chart(source, &setting.schemes).map(|_| ()),
        FileKind::Garment | FileKind::Wrap => open_outfit(source, &setting.schemes).map(|_| ()),
        FileKind::Fabric => open_fabric(source).map(|_| ()),
        FileKind::Scheme => Schemes::with_files(vec![source]).map(|_| ()),
        FileKind::Rules => read_rules(Some(source)).map(|_| ()),
        FileKind::Record | FileKind::Visits => open_files(vec![source], setting).map(|_| ()),
    };
    found.err().unwrap_or_default()
}

#[test]
fn no_text_of_any_kind_lets_in_what_a_terminal_obeys() {
    let setting =
        Setting { today: made::day("2026-03-14"), rules: made::rules(), schemes: Schemes::default() };
    let long = "x".repeat(121);
    let hostile = [
        "a\u{1b}]0;b\u{7}c",
        "a\u{202e}b",
        "a\nb",
        "a\tb",
        "a\u{85}b",
        "a\u{2028}b",
        "a\u{0}b",
        long.as_str(),
    ];
    let bases = [
        (FileKind::Record, "demo/first-visit.yaml"),
        (FileKind::Chart, "demo/sleeve-chart-b.yaml"),
        (FileKind::Garment, "demo/sleeve-one.yaml"),
        (FileKind::Wrap, "demo/calf-wrap.yaml"),
        (FileKind::Fabric, "demo/knit-r2.yaml"),
        (FileKind::Scheme, "garment-tables/schemes/env-12718.yaml"),
        (FileKind::Rules, "garment-tables/rules/default.yaml"),
        (FileKind::Visits, "demo/followed/visits.yaml"),
    ];
    let (mut tried, mut free, mut let_in) = (0, 0, Vec::new());
    for (kind, base) in bases {
        let mut all = Vec::new();
        places(kind.keys(), &[], &mut all);
        for place in &all {
            let with = |text: &str| {
                let mut tree = CORPUS.seed(base).tree.clone().unwrap();
                let value = if place.in_list { Value::from(vec![text]) } else { text.into() };
                put(&mut tree, &place.steps, value);
                problems(kind, serde_yaml::to_string(&tree).unwrap(), &setting)
            };
            // A place that takes any text has to say what is wrong with this one; another refuses it all the same.
            let is_free = with("a b").is_empty();
            free += usize::from(is_free);
            for text in hostile {
                let is_large = kind == FileKind::Rules && !text.starts_with("a\u{1b}") && text != long;
                if is_large || text == long && !(place.is_label && is_free) {
                    continue;
                }
                tried += 1;
                let found = with(text);
                let told = found.iter().any(|one| {
                    let why = ["not printed", "control character", "longer than", "line end of another kind"];
                    one.place.is_some() && (!is_free || why.iter().any(|why| one.what.contains(why)))
                });
                let raw = found.iter().any(|one| one.to_string().chars().any(|c| obeyed(c) && c != '\n'));
                if !told || raw {
                    let first = found.first().map(ToString::to_string).unwrap_or_default();
                    let_in.push(format!("{kind:?} {:?} {text:?}: {first}", place.steps));
                }
            }
        }
    }
    println!("{tried} texts, {free} free places");
    assert!(let_in.is_empty(), "{} of {tried} let in: {:#?}", let_in.len(), &let_in);
    assert!(tried > 300 && free > 30, "{tried} {free}");
}
