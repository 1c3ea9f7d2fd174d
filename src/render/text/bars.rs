//! Owns bars drawn with letters.

use super::columns::{columns, wrap};
use super::look::Look;
use crate::document::{Bar, Bars, Reach};

/// Most columns of a bar (house rule: a longer one shows no more).
const LONGEST: usize = 60;

/// The bars and what their signs mean.
pub(super) fn bars(drawn: &Bars, width: usize, look: Look) -> Vec<String> {
    let labels = drawn.rows.iter().map(|bar| columns(&bar.label)).max().unwrap_or_default();
    let words = drawn.rows.iter().filter(|bar| bar.reach.is_some());
    let words = words.map(|bar| columns(&bar.words)).max().unwrap_or_default();
    let room = width.saturating_sub(labels + words + 3).clamp(10, LONGEST);
    let mut lines: Vec<String> = drawn
        .rows
        .iter()
        .map(|bar| {
            let pad = " ".repeat(labels.saturating_sub(columns(&bar.label)) + 2);
            let body = bar.reach.map_or_else(
                || bar.words.clone(),
                |reach| format!("{} {}", one(bar, reach, drawn.scale, room, look), bar.words),
            );
            format!("{}{pad}{body}", bar.label)
        })
        .collect();
    let key = match look {
        Look::Terminal => drawn.key.clone(),
        Look::Printer => drawn.key.replace('●', "o").replace('━', "="),
    };
    lines.extend(wrap(&key, width));
    lines
}

fn one(bar: &Bar, reach: Reach, scale: f64, width: usize, look: Look) -> String {
    let (dot, span, rest) = match look {
        Look::Terminal => ('●', '━', '·'),
        Look::Printer => ('o', '=', '.'),
    };
    let last = u16::try_from(width.saturating_sub(1)).unwrap_or_default();
    let column = |value: f64| {
        let share = (value / scale).clamp(0.0, 1.0) * f64::from(last);
        // The last column that begins at or before the value: whole numbers only, no cast.
        (0..=last).rev().find(|at| f64::from(*at) <= share + 0.5).unwrap_or_default()
    };
    let (low, high, at) = (column(reach.low), column(reach.high), column(reach.at));
    let band = bar.band.map(|(from, to)| (column(from), column(to)));
    (0..=last)
        .map(|here| {
            if here == at {
                dot
            } else if band.is_some_and(|(from, _)| from == here) {
                '['
            } else if band.is_some_and(|(_, to)| to == here) {
                ']'
            } else if (low..=high).contains(&here) {
                span
            } else {
                rest
            }
        })
        .collect()
}
