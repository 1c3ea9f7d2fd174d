//! Owns the JSON Schema of each file kind, made of its keys. Knows no more than the keys do.
//!
//! Source: JSON Schema, draft 2020-12.

use serde_json::{Map, Value, json};

use super::FileKind;
use super::keys::{Block, Form, Key};
use crate::anatomy::{Landmark, Limb};
use crate::quantity::{Dimension, Unit};

/// The JSON Schema of a kind of file.
///
/// ```
/// use tapeline::input::{FileKind, schema};
///
/// assert!(schema(FileKind::Record).contains("measured_on"));
/// ```
pub fn schema(kind: FileKind) -> String {
    let mut blocks = Vec::new();
    gather(kind.keys(), &mut blocks);
    let mut definitions = Map::new();
    for block in blocks {
        if !std::ptr::eq(block, kind.keys()) {
            definitions.insert(name_of(block), of_block(block, None));
        }
    }
    let mut root = of_block(kind.keys(), Some(kind));
    if let Value::Object(map) = &mut root {
        map.insert("$schema".to_owned(), json!("https://json-schema.org/draft/2020-12/schema"));
        map.insert("title".to_owned(), json!(format!("tapeline {}", kind.tag())));
        if !definitions.is_empty() {
            map.insert("$defs".to_owned(), Value::Object(definitions));
        }
    }
    let mut text = serde_json::to_string_pretty(&root).unwrap_or_default();
    text.push('\n');
    text
}

/// Every block that can be reached, each once.
fn gather(block: &'static Block, seen: &mut Vec<&'static Block>) {
    if seen.iter().any(|one| std::ptr::eq(*one, block)) {
        return;
    }
    seen.push(block);
    for inner in block.keys.iter().filter_map(Key::block) {
        gather(inner, seen);
    }
}

fn name_of(block: &Block) -> String {
    block.name.replace(' ', "-")
}

fn of_block(block: &'static Block, kind: Option<FileKind>) -> Value {
    let mut properties = Map::new();
    for key in block.keys {
        let mut value = match (key.form, kind) {
            (Form::Kind, Some(kind)) => json!({"const": kind.tag()}),
            (form, _) => of_form(&form),
        };
        if let Value::Object(map) = &mut value {
            if FILLED.contains(&key.name) {
                map.insert("minItems".to_owned(), json!(if key.name == "curve" { 2 } else { 1 }));
            }
            // A place may lie below the zero; nothing else that is measured does.
            if key.name == "at" {
                map.remove("exclusiveMinimum");
                map.insert(
                    "pattern".to_owned(),
                    json!(format!("^ *[-\u{2212}]?{NUMBER}{} *$", unit(Dimension::Length))),
                );
            }
        }
        if key.may_be_blank {
            value = json!({"anyOf": [value, {"type": "null"}]});
        }
        if let Value::Object(map) = &mut value {
            map.insert("description".to_owned(), json!(format!("{}, as `{}`", key.about, key.example)));
        }
        properties.insert(key.name.to_owned(), value);
    }
    let required: Vec<&str> = block.required().map(|key| key.name).collect();
    // A class is read only with its scheme.
    let mut together = Map::new();
    if block.key("scheme").is_some() && block.key("class").is_some() {
        together.insert("scheme".to_owned(), json!(["class"]));
        together.insert("class".to_owned(), json!(["scheme"]));
    }
    let mut all: Vec<Value> = Vec::new();
    for group in block.one_needed {
        let needed: Vec<Value> = group.iter().map(|key| json!({"required": [key]})).collect();
        all.push(json!({"anyOf": needed}));
    }
    if kind.is_some() && block.key("limb").is_some() {
        for limb in [Limb::Arm, Limb::Leg] {
            if let Some(then) = of_limb(block, limb) {
                let when = json!({"properties": {"limb": {"pattern": limb.name()}}, "required": ["limb"]});
                all.push(json!({"if": when, "then": then}));
            }
        }
    }
    if block.key("left").is_some() && block.key("right").is_some() {
        let when = json!({"properties": {"limb": {"pattern": "^both"}}, "required": ["limb"]});
        all.push(json!({"if": when, "then": {"required": ["left", "right"]}}));
    }
    for (one, other) in block.not_both {
        all.push(json!({"not": {"required": [one, other]}}));
    }
    let further = block.open.map_or(Value::Bool(false), |form| of_form(&form));
    let mut schema = json!({
        "type": "object",
        "properties": properties,
        "required": required,
        "additionalProperties": further,
    });
    if let Value::Object(map) = &mut schema {
        if !together.is_empty() {
            map.insert("dependentRequired".to_owned(), Value::Object(together));
        }
        if !all.is_empty() {
            map.insert("allOf".to_owned(), Value::Array(all));
        }
    }
    schema
}

/// What holds of a block once its limb is known: its landmarks are that limb's.
fn of_limb(block: &'static Block, limb: Limb) -> Option<Value> {
    let mut properties = Map::new();
    for key in block.keys {
        if let Some(value) = of_limb_form(&key.form, limb) {
            properties.insert(key.name.to_owned(), value);
        }
    }
    (!properties.is_empty()).then(|| json!({"properties": properties}))
}

fn of_limb_form(form: &Form, limb: Limb) -> Option<Value> {
    match form {
        Form::Landmark => Some(json!({"enum": words_of(Landmark::of(limb))})),
        Form::ByLandmark(_) => Some(json!({"propertyNames": {"enum": words_of(Landmark::of(limb))}})),
        Form::List(of) => Some(json!({"items": of_limb_form(of, limb)?})),
        Form::Block(block) => of_limb(block, limb),
        Form::Blocks(block) => Some(json!({"items": of_limb(block, limb)?})),
        _ => None,
    }
}

fn words_of(all: &[Landmark]) -> Vec<&'static str> {
    all.iter().flat_map(|one| [one.name(), one.letter()]).collect()
}

/// Lists that hold something where they stand.
const FILLED: [&str; 7] = ["marks", "sizes", "classes", "curve", "pulls", "visits", "worn_together"];

fn landmarks() -> Vec<&'static str> {
    let mut words: Vec<&str> = Vec::new();
    for one in [Limb::Arm, Limb::Leg].into_iter().flat_map(Landmark::of) {
        for word in [one.name(), one.letter()] {
            if !words.contains(&word) {
                words.push(word);
            }
        }
    }
    words
}

/// A number as files write it.
const NUMBER: &str = "[+]?([0-9]+\\.?[0-9]*|\\.[0-9]+)";

/// The units of a dimension behind a number, or none.
fn unit(of: Dimension) -> String {
    let own = Unit::ALL.iter().filter(|unit| unit.dimension() == of).map(|unit| unit.symbol());
    let everyday = ["inch", "inches", "mm Hg", "ml", "l", "lbs"];
    let everyday =
        everyday.into_iter().filter(|word| Unit::parse(word).is_some_and(|unit| unit.dimension() == of));
    format!("( *({}))?", own.chain(everyday).collect::<Vec<_>>().join("|"))
}

fn of_form(form: &Form) -> Value {
    let date = "^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])";
    match form {
        Form::Kind | Form::Prose | Form::File => json!({"type": "string", "pattern": "\\S"}),
        Form::Range(of) => {
            let one = format!("{NUMBER}{}", unit(*of));
            let forms = [
                format!("(under|over) +{one}"),
                format!("{one} *(-|\u{2013}|\u{2014}) *{one}"),
                format!("{one} +to +{one}"),
            ];
            json!({"type": "string", "pattern": format!("^ *({}) *$", forms.join("|"))})
        }
        // A class or size written without quotes is a number to some libraries.
        Form::Label => json!({
            "type": ["string", "number"],
            "pattern": "^(?=.*\\S)[^\\u0000-\\u001f\\u007f\\u202a-\\u202e\\u2066-\\u2069]*$",
            "maxLength": 120,
        }),
        Form::Quantity(of) => {
            let pattern = format!("^ *{NUMBER}{} *$", unit(*of));
            // Nothing that is measured with a tape is zero long; a place may be, see there.
            let least = if *of == Dimension::Length { "exclusiveMinimum" } else { "minimum" };
            json!({"type": ["string", "number"], "pattern": pattern, least: 0})
        }
        Form::Number => {
            json!({"type": ["string", "number"], "pattern": format!("^ *[-\u{2212}]?{NUMBER} *$")})
        }
        Form::Whole(least, most) => {
            json!({"type": ["integer", "string"], "minimum": least, "maximum": most, "pattern": "^[0-9]+$"})
        }
        Form::Date => json!({"type": "string", "pattern": format!("{date}$")}),
        Form::DateTime => {
            json!({"type": "string", "pattern": format!("{date}(T([01][0-9]|2[0-3]):[0-5][0-9](:[0-5][0-9])?)?$")})
        }
        Form::Word(words) => json!({"enum": words}),
        Form::YesNo => json!({"enum": ["yes", "no", true, false]}),
        Form::YesNoUnknown => json!({"enum": ["yes", "no", "unknown", true, false]}),
        Form::Landmark => json!({"enum": landmarks()}),
        Form::Limb => {
            json!({"enum": ["left arm", "right arm", "left leg", "right leg", "both arms", "both legs"]})
        }
        Form::Either(one, other) => json!({"anyOf": [of_form(one), of_form(other)]}),
        Form::List(of) => json!({"type": "array", "items": of_form(of)}),
        Form::OneOrMore(of) => {
            json!({"anyOf": [of_form(of), {"type": "array", "minItems": 1, "items": of_form(of)}]})
        }
        Form::Block(block) => json!({"$ref": format!("#/$defs/{}", name_of(block))}),
        Form::Blocks(block) => {
            json!({"type": "array", "items": {"$ref": format!("#/$defs/{}", name_of(block))}})
        }
        Form::ByLandmark(of) => json!({
            "type": "object",
            "minProperties": 1,
            "propertyNames": {"enum": landmarks()},
            "additionalProperties": of_form(of),
        }),
        Form::ByName(of) => json!({"type": "object", "additionalProperties": of_form(of)}),
    }
}
