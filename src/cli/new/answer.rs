//! Owns how an answer is read: decimal commas are taken here, a unit may be left out once it is declared.

use jiff::civil::Date;
use tapeline::input::{Draft, Text, nearest_word, plain_numbers};
use tapeline::quantity::{Dimension, Unit, Units, read_quantity, read_range};

/// A label.
pub(super) fn label(text: &str) -> Result<String, String> {
    Text::new(text).map(|text| text.as_str().to_owned()).map_err(|fault| format!("It {fault}."))
}

/// One of some words: whole, by its first letters, or by its number from 1.
pub(super) fn word<'w>(text: &str, words: &[&'w str]) -> Result<&'w str, String> {
    let low = text.trim().to_lowercase();
    if let Some(found) = words.iter().find(|word| **word == low) {
        return Ok(found);
    }
    if let Some(found) = low.parse::<usize>().ok().and_then(|number| words.get(number.checked_sub(1)?)) {
        return Ok(found);
    }
    let mut starting = words.iter().filter(|word| word.starts_with(&low));
    if let (Some(found), None) = (starting.next(), starting.next()) {
        return Ok(found);
    }
    let near = nearest_word(&low, words.iter().copied());
    let near = near.map_or(String::new(), |near| format!(" Did you mean {near}?"));
    Err(format!("`{text}` is none of {}.{near}", words.join(", ")))
}

/// Decimal commas as points, inch fractions as decimals.
pub(super) fn pointed(text: &str) -> String {
    plain_numbers(text)
}

/// The units that a draft declares.
pub(super) fn units(draft: &Draft) -> Units {
    let keys = Dimension::ALL.into_iter().filter_map(|one| draft.text(&format!("units.{}", one.key())));
    keys.filter_map(|text| Unit::parse(&text)).fold(Units::default(), Units::with)
}

/// A number of a dimension, with its unit or bare under a declared one, as the file has it.
pub(super) fn number(draft: &Draft, text: &str, dimension: Dimension) -> Result<String, String> {
    let text = pointed(text);
    read_quantity(&text, dimension, units(draft))
        .map(|_| text.clone())
        .map_err(|fault| format!("`{text}` {fault}."))
}

/// Several numbers of a length, separated by blanks: `25.6 25.8`, `7 20.9 cm`, `7 cm 20.9 cm`.
pub(super) fn numbers(draft: &Draft, text: &str) -> Result<Vec<String>, String> {
    let text = pointed(text);
    let mut parts: Vec<String> = Vec::new();
    let mut told = 0;
    for part in text.split([' ', ';']).filter(|part| !part.is_empty()) {
        match (Unit::parse(part).is_some(), parts.last_mut()) {
            (true, Some(number)) => {
                *number = format!("{number} {part}");
                told += 1;
            }
            _ => parts.push(part.to_owned()),
        }
    }
    // A unit behind the last alone holds for all.
    if told == 1
        && let Some((_, unit)) =
            parts.last().and_then(|last| last.split_once(' ')).map(|(a, b)| (a.to_owned(), b.to_owned()))
    {
        let most = parts.len().saturating_sub(1);
        for part in parts.iter_mut().take(most) {
            *part = format!("{part} {unit}");
        }
    }
    if parts.is_empty() {
        return Err("Type a number.".to_owned());
    }
    parts.iter().map(|part| number(draft, part, Dimension::Length)).collect()
}

/// Most that two tape values of one girth may lie apart, share of the greater (house rule: more is a slip of typing, as a
/// distance before the girth; what is measured lies within a few per cent).
const APART: f64 = 0.2;

/// The tape values of one girth; values that cannot be of one girth are refused.
pub(super) fn girths(draft: &Draft, text: &str) -> Result<Vec<String>, String> {
    let all = numbers(draft, text)?;
    of_one_girth(draft, &all)?;
    Ok(all)
}

/// Whether the values can be those of one girth.
pub(super) fn of_one_girth(draft: &Draft, all: &[String]) -> Result<(), String> {
    let values: Vec<f64> = all.iter().filter_map(|one| cm(draft, one)).collect();
    let least = values.iter().copied().fold(f64::INFINITY, f64::min);
    let most = values.iter().copied().fold(0.0, f64::max);
    if most - least > APART * most {
        return Err(format!(
            "{} are too far apart to be tape values of one girth; type the girth alone.",
            tapeline::words::list(all)
        ));
    }
    Ok(())
}

/// A length in cm of a number as the file has it.
pub(super) fn cm(draft: &Draft, text: &str) -> Option<f64> {
    read_quantity(text, Dimension::Length, units(draft)).ok().map(|written| written.si() * 100.0)
}

/// A range of lengths: `16-18`, `under 14`.
pub(super) fn range(draft: &Draft, text: &str) -> Result<String, String> {
    let text = pointed(text);
    read_range(&text, units(draft)).map(|_| text.clone()).map_err(|fault| format!("`{text}` {fault}."))
}

/// A day.
pub(super) fn day(text: &str) -> Result<String, String> {
    let shaped = text.len() == 10;
    match text.parse::<Date>() {
        Ok(_) if shaped => Ok(text.to_owned()),
        _ => Err(format!("`{text}` is no day; write year-month-day, as 2026-03-14.")),
    }
}

/// Numbers from 1 to `most`, separated by blanks or commas.
pub(super) fn picks(text: &str, most: usize) -> Result<Vec<usize>, String> {
    text.split([' ', ','])
        .filter(|part| !part.is_empty())
        .map(|part| {
            let number = part.parse::<usize>().ok().filter(|number| (1..=most).contains(number));
            number.ok_or_else(|| format!("`{part}` is no number from 1 to {most}."))
        })
        .collect()
}
