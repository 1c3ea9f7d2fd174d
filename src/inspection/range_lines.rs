//! Owns the ranges of a chart drawn with letters, one measure under the other, so that the eye sees gap and
//! overlap.

use crate::anatomy::Landmark;
use crate::garment::Chart;
use crate::quantity::Range;
use crate::words;

/// Most columns of one drawing (house rule: a longer one shows no more).
const LONGEST: usize = 64;

/// The ranges of every measure as lines of at most `width` columns.
pub fn range_lines(chart: &Chart, width: usize) -> Vec<String> {
    let mut lines = Vec::new();
    for landmark in chart.measures() {
        lines.extend(of_measure(chart, landmark, width));
        lines.push(String::new());
    }
    lines.pop();
    lines
}

/// The ends that a measure's drawing reaches to, tenths of a millimetre; an open end reaches half a range further.
pub(super) fn reach(chart: &Chart, landmark: Landmark) -> Option<(i64, i64)> {
    let ends = |range: Range| [range.low, range.high];
    let all = || chart.sizes.iter().filter_map(|size| size.range_at(landmark)).flat_map(ends).flatten();
    let (low, high) = (all().min()?, all().max()?);
    let open = |end: fn(Range) -> Option<i64>| {
        chart.sizes.iter().filter_map(|size| size.range_at(landmark)).any(|range| end(range).is_none())
    };
    let room = ((high - low) / 10).max(50);
    let low = if open(|range| range.low) { low - room } else { low };
    let high = if open(|range| range.high) { high + room } else { high };
    Some((low, high.max(low + 1)))
}

fn of_measure(chart: &Chart, landmark: Landmark, width: usize) -> Vec<String> {
    let Some((from, to)) = reach(chart, landmark) else { return Vec::new() };
    let labels = chart.sizes.iter().map(|size| size.label.chars().count()).max().unwrap_or_default();
    let figures: Vec<String> =
        chart.sizes.iter().map(|size| size.range_at(landmark).map(said).unwrap_or_default()).collect();
    let words_wide = figures.iter().map(|text| text.chars().count()).max().unwrap_or_default();
    let room = width.saturating_sub(labels + words_wide + 4).clamp(10, LONGEST);
    let last = i64::try_from(room).unwrap_or(10) - 1;
    let column = |tenths: i64| ((tenths - from) * last + (to - from) / 2) / (to - from);
    let pad =
        |text: &str, wide: usize| format!("{text}{}", " ".repeat(wide.saturating_sub(text.chars().count())));
    let mut lines = vec![format!("{}, {} to {}", words::label(landmark), words::cm(from), words::cm(to))];
    for (size, figure) in chart.sizes.iter().zip(&figures) {
        let Some(range) = size.range_at(landmark) else { continue };
        let (low, high) = (column(range.low.unwrap_or(from)), column(range.high.unwrap_or(to)));
        let bar: String = (0..=last).map(|at| if (low..=high).contains(&at) { '━' } else { '·' }).collect();
        lines.push(format!("{}  {}  {bar}", pad(&size.label, labels), pad(figure, words_wide)));
    }
    lines
}

/// `16.0–18.0`, `under 14.0`, `over 36.0`.
pub(super) fn said(range: Range) -> String {
    match (range.low, range.high) {
        (Some(low), Some(high)) => format!("{}–{}", words::cm_short(low), words::cm_short(high)),
        (None, Some(high)) => format!("under {}", words::cm_short(high)),
        (Some(low), None) => format!("over {}", words::cm_short(low)),
        (None, None) => String::new(),
    }
}
