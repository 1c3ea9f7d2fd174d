//! Owns the filling in of numbers: `{edge-margin}` in a text becomes the number of the rules in use.

use crate::rules::Rules;

/// The text with every number filled in; a name that is none stays as it is.
pub(super) fn filled(text: &str, rules: &Rules) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('{') {
        out.push_str(before);
        let Some((name, behind)) = after.split_once('}') else {
            out.push('{');
            rest = after;
            continue;
        };
        if let Some(number) = rules.numbers.iter().find(|number| number.id.id() == name) {
            out.push_str(&number.text);
        } else {
            out.push('{');
            out.push_str(name);
            out.push('}');
        }
        rest = behind;
    }
    out.push_str(rest);
    out
}
