//! Owns the telling of one mistake that stands at many places of a list: once, with its count.

use std::collections::BTreeMap;

use super::reader::Raised;

/// A mistake is told once from this many places on (house rule: two are still read faster as two).
const LEAST: usize = 3;

/// The problems, in order, with each mistake that is made at three or more items of a list told at
/// the first of them.
pub(super) fn told_once(raised: Vec<Raised>) -> Vec<Raised> {
    let mut firsts: BTreeMap<(String, String), (usize, usize)> = BTreeMap::new();
    let names: Vec<Option<(String, String)>> = raised.iter().map(mistake).collect();
    for (at, name) in names.iter().enumerate() {
        let Some(name) = name else { continue };
        firsts.entry(name.clone()).and_modify(|(_, count)| *count += 1).or_insert((at, 1));
    }
    let mut told = Vec::with_capacity(raised.len());
    for (at, (mut one, name)) in raised.into_iter().zip(names).enumerate() {
        match name.and_then(|name| firsts.get(&name).copied()) {
            Some((first, count)) if count >= LEAST => {
                if first == at {
                    one.what = format!("{}; the same at {} more places of this list", one.what, count - 1);
                    one.count = count;
                    told.push(one);
                }
            }
            _ => told.push(one),
        }
    }
    told
}

/// The field without the numbers of its items, and what is wrong without the values: the same for one
/// mistake at every item; none outside lists.
fn mistake(one: &Raised) -> Option<(String, String)> {
    if !one.field.contains("item ") {
        return None;
    }
    let field = one.field.chars().filter(|c| !c.is_ascii_digit()).collect();
    let mut what = String::with_capacity(one.what.len());
    for (number, part) in one.what.split('`').enumerate() {
        let value = number % 2 == 1 && part.contains(|c: char| c.is_ascii_digit());
        what.push_str(if value { "#" } else { part });
    }
    Some((field, what))
}
