//! Owns the JSON Schema of each file kind, made of its keys. Knows no more than the keys do.
//!
//! Source: JSON Schema, draft 2020-12.

use serde_json::{Map, Value, json};

use super::FileKind;
use super::keys::{Block, Form, Key};
use crate::anatomy::{Landmark, Limb};

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
        if key.may_be_blank {
            value = json!({"anyOf": [value, {"type": "null"}]});
        }
        if let Value::Object(map) = &mut value {
            map.insert("description".to_owned(), json!(format!("{}, as `{}`", key.about, key.example)));
        }
        properties.insert(key.name.to_owned(), value);
    }
    let required: Vec<&str> = block.required().map(|key| key.name).collect();
    let further = block.open.map_or(Value::Bool(false), |form| of_form(&form));
    json!({
        "type": "object",
        "properties": properties,
        "required": required,
        "additionalProperties": further,
    })
}

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

fn of_form(form: &Form) -> Value {
    let date = "^[0-9]{4}-[0-9]{2}-[0-9]{2}";
    match form {
        Form::Kind | Form::Prose | Form::File | Form::Range(_) => json!({"type": "string", "minLength": 1}),
        // A class or size written without quotes is a number to some libraries.
        Form::Label => json!({"type": ["string", "number"], "minLength": 1, "maxLength": 120}),
        Form::Quantity(_) | Form::Number => json!({"type": ["string", "number"], "minLength": 1}),
        Form::Whole(least, most) => {
            json!({"type": ["integer", "string"], "minimum": least, "maximum": most, "pattern": "^[0-9]+$"})
        }
        Form::Date => json!({"type": "string", "pattern": format!("{date}$")}),
        Form::DateTime => {
            json!({"type": "string", "pattern": format!("{date}(T[0-9]{{2}}:[0-9]{{2}}(:[0-9]{{2}})?)?$")})
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
            "propertyNames": {"enum": landmarks()},
            "additionalProperties": of_form(of),
        }),
        Form::ByName(of) => json!({"type": "object", "additionalProperties": of_form(of)}),
    }
}
