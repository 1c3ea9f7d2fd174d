//! Owns the table of marks: the one place where a girth, its range, its margin and its pressure meet.
//! It runs from hand or foot toward the trunk, as the drawing does.

use super::subject::Part;
use super::wording::{EMPTY, text};
use crate::document::{Block, Column, Table};
use crate::report::{Figure, MarkBlock, MeasureBlock, MeasuredBlock};
use crate::words;

/// A column of the table.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Mark,
    Position,
    Girth,
    Takes,
    Margin,
    Pressure,
    Stretch,
    Against,
}

/// The columns that have something to say; fewer where two tables stand beside one another.
fn kinds(part: &Part<'_>, narrow: bool) -> Vec<Kind> {
    let worn = part.pressure.filter(|_| !narrow && !part.is_far());
    let any = |holds: &dyn Fn(&MarkBlock) -> bool| worn.is_some_and(|one| one.marks.iter().any(holds));
    let pressed = any(&|mark| pressure(mark) != EMPTY);
    let mut kinds = vec![Kind::Mark];
    if !narrow {
        kinds.push(Kind::Position);
    }
    kinds.push(Kind::Girth);
    if part.size.is_some() {
        kinds.extend([Kind::Takes, Kind::Margin]);
    }
    if pressed {
        kinds.push(Kind::Pressure);
    } else if any(&|mark| mark.stretch_percent.is_some()) {
        kinds.push(Kind::Stretch);
    }
    if any(&|mark| !mark.against_above.is_empty()) {
        kinds.push(Kind::Against);
    }
    kinds
}

impl Kind {
    fn column(self, part: &Part<'_>) -> Column {
        match self {
            Self::Mark => Column::words("Mark"),
            Self::Position => Column::numbers(format!("From {}", part.report.record.positions_from), "cm"),
            Self::Girth => Column::numbers("Girth", "cm"),
            Self::Takes => Column::ranges("Size takes", "cm"),
            Self::Margin => Column::numbers("Margin", "cm"),
            Self::Pressure => Column::numbers("Pressure", "mmHg"),
            Self::Stretch => Column::numbers("Stretch", "%"),
            Self::Against => Column::words("Against the row above"),
        }
    }

    fn cell(self, part: &Part<'_>, mark: &MeasuredBlock) -> String {
        let sized = part.size.and_then(|size| measure(&size.measures, mark));
        let worn =
            part.pressure.and_then(|one| one.marks.iter().find(|at| Some(at.landmark) == mark.landmark));
        let or_empty =
            |said: Option<String>| said.filter(|said| !said.is_empty()).unwrap_or_else(|| EMPTY.to_owned());
        match self {
            Self::Mark => mark.landmark.map_or_else(|| format!("at {} cm", mark.at_cm.text), words::label),
            Self::Position => mark.at_cm.text.clone(),
            Self::Girth if mark.tapes > 1 => format!("{} ({}\u{d7})", mark.girth_cm.text, mark.tapes),
            Self::Girth => mark.girth_cm.text.clone(),
            Self::Takes => or_empty(sized.map(takes)),
            Self::Margin => or_empty(sized.map(margin)),
            Self::Pressure => or_empty(worn.map(pressure)),
            Self::Stretch => text(worn.and_then(|one| one.stretch_percent.as_ref())),
            Self::Against => or_empty(worn.map(|one| one.against_above.clone())),
        }
    }
}

/// The table; `narrow` where two stand beside one another.
pub(super) fn marks(part: &Part<'_>, narrow: bool) -> Block {
    let kinds = kinds(part, narrow);
    let columns = kinds.iter().map(|kind| kind.column(part)).collect();
    let mut table = Table::new(caption(part, narrow), columns);
    for mark in part.limb.marks.iter().filter(|mark| is_here(part, mark)) {
        table.push(kinds.iter().map(|kind| kind.cell(part, mark)).collect());
    }
    Block::Table(table)
}

/// Whether a mark stands in the table of this part: its own ones, and in the first table of a set those
/// that no part asks for.
fn is_here(part: &Part<'_>, mark: &MeasuredBlock) -> bool {
    let all = super::subject::parts(part.report);
    let here: Vec<&Part<'_>> = all.iter().filter(|one| one.limb_at == part.limb_at).collect();
    let own = |one: &Part<'_>| {
        let measured = one.size.is_some_and(|size| measure(&size.measures, mark).is_some());
        let worn =
            one.pressure.is_some_and(|one| one.marks.iter().any(|at| Some(at.landmark) == mark.landmark));
        measured || worn
    };
    let first = here.first().is_some_and(|one| one.chart_at == part.chart_at);
    here.len() < 2 || own(part) || (first && !here.iter().any(|one| own(one)))
}

fn measure<'m>(measures: &'m [MeasureBlock], mark: &MeasuredBlock) -> Option<&'m MeasureBlock> {
    measures.iter().find(|one| mark.landmark.is_some_and(|landmark| landmark.name() == one.measure))
}

fn caption(part: &Part<'_>, narrow: bool) -> String {
    let limb =
        if narrow { format!("{}: ", crate::words::capital(&part.limb.printed)) } else { String::new() };
    let what = match (part.chart, part.size) {
        (Some(chart), Some(size)) if part.is_chosen() => format!("{}, size {}.", chart.printed, size.size),
        (Some(chart), Some(size)) => format!("{}, size {}, which was not picked.", chart.printed, size.size),
        (Some(chart), None) => format!("{}: no size is shown.", chart.printed),
        (None, _) => "girths as measured.".to_owned(),
    };
    let only = if super::subject::forbids(part.report) { " Figures only, do not fit." } else { "" };
    let said = format!("{limb}{what}{only}");
    if narrow { said } else { crate::words::capital(&said) }
}

/// `16.0–18.0`, `under 16.0`, `over 36.0`.
pub(in crate::render) fn takes(measure: &MeasureBlock) -> String {
    match (&measure.low_cm, &measure.high_cm) {
        (Some(low), Some(high)) => format!("{}\u{2013}{}", low.text, high.text),
        (Some(low), None) => format!("over {}", low.text),
        (None, Some(high)) => format!("under {}", high.text),
        (None, None) => EMPTY.to_owned(),
    }
}

/// `1.2`, `0.3, close`, `1.2 too tight`.
pub(in crate::render) fn margin(measure: &MeasureBlock) -> String {
    if measure.margin_cm.is_none() {
        return if measure.girth_cm.is_none() { "not measured".to_owned() } else { EMPTY.to_owned() };
    }
    let amount = amount(measure);
    match (measure.direction, measure.verdict) {
        (Some(direction), _) => format!("{amount} too {direction}"),
        (None, "close") => format!("{amount}, close"),
        (None, _) => amount,
    }
}

/// The distance to the nearer end, without its sign.
pub(in crate::render) fn amount(measure: &MeasureBlock) -> String {
    let text = measure.margin_cm.as_ref().map(|margin| margin.text.as_str()).unwrap_or_default();
    text.trim_start_matches(['\u{2212}', '-']).to_owned()
}

/// `24 (18–29)`, `at least 27`, `no contact`.
pub(in crate::render) fn pressure(mark: &MarkBlock) -> String {
    let range = |low: &Figure, high: &Figure| format!("({}\u{2013}{})", low.text, high.text);
    match (&mark.pressure_mmhg, &mark.low_mmhg, &mark.high_mmhg, &mark.bound) {
        (Some(here), Some(low), Some(high), _) if here.value > 0.0 => {
            format!("{} {}", here.text, range(low, high))
        }
        (Some(here), ..) if here.value > 0.0 => here.text.clone(),
        (Some(_), ..) => "no contact".to_owned(),
        (None, _, _, Some(bound)) => format!("at least {}", bound.text),
        _ => EMPTY.to_owned(),
    }
}
