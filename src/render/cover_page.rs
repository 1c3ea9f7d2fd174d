//! Owns the page of the `cover` command as blocks.

use crate::document::{Block, Column, Table};
use crate::report::{CoverChart, CoverReport, DesignBlock, Share};
use crate::words;

/// What stands on the page.
pub fn cover_page(report: &CoverReport) -> Vec<Block> {
    let mut blocks = Vec::new();
    if let Some(served) = &report.served {
        let which = if report.charts.len() == 1 { "the chart" } else { "the charts together" };
        blocks.push(Block::lead(format!("{}, {} served by {which}.", limbs(report.limbs), percent(served))));
    }
    if let Some(design) = &report.design {
        blocks.extend(of_design(design));
    }
    if let Some(missing) = report.not_judged.as_ref().filter(|missing| missing.limbs > 0) {
        let which = if report.charts.len() == 1 { "the chart asks for" } else { "a chart asks for" };
        blocks.push(Block::text(format!(
            "Not served and not judged: {}, where a girth is missing that {which}.",
            percent(missing)
        )));
    }
    if report.problems > 0 {
        let count = usize::try_from(report.problems).unwrap_or(usize::MAX);
        let are = if count == 1 { "is" } else { "are" };
        blocks.push(Block::strong(format!(
            "{} could not be read and {are} left out.",
            words::counted(count, "row", "rows")
        )));
    }
    if report.charts.len() > 1 {
        blocks.extend(side_by_side(report));
    }
    for chart in &report.charts {
        blocks.extend(of_chart(chart, report.charts.len() > 1));
    }
    if !report.charts.is_empty() {
        blocks.extend(stock(report));
    }
    blocks
}

fn limbs(count: u64) -> String {
    words::counted(usize::try_from(count).unwrap_or(usize::MAX), "limb", "limbs")
}

/// Whole per cent; a few that round to none are said as such.
fn percent(share: &Share) -> String {
    if share.limbs > 0 && share.percent.value < 0.5 {
        return "under 1 %".to_owned();
    }
    words::percent(share.percent.value)
}

fn cell(share: Option<&Share>) -> String {
    share.map(|share| share.percent.text.clone()).unwrap_or_default()
}

fn side_by_side(report: &CoverReport) -> Vec<Block> {
    let with_fall = report.charts.iter().any(|chart| chart.falls.is_some());
    let mut columns = vec![Column::words("Chart"), Column::numbers("Serves", "%")];
    if with_fall {
        columns.push(Column::numbers("And falls", "%"));
    }
    columns.push(Column::numbers("Only this chart", "%"));
    let mut table = Table::new("The charts side by side", columns);
    for chart in &report.charts {
        let mut cells = vec![chart.label.clone(), cell(Some(&chart.served))];
        if with_fall {
            cells.push(cell(chart.falls.as_ref()));
        }
        cells.push(cell(Some(&chart.only)));
        table.push(cells);
    }
    vec![Block::Table(table)]
}

fn of_chart(chart: &CoverChart, several: bool) -> Vec<Block> {
    let fall = chart.falls.as_ref().map(|falls| format!(", {} with a fall known to fall", percent(falls)));
    let alike = Some(&chart.alike).filter(|alike| alike.limbs > 0);
    let alike = alike.map(|alike| {
        format!(
            " For {} of all limbs two sizes serve alike and a fitter decides; no size is chosen there.",
            percent(alike)
        )
    });
    let lacking = Some(&chart.not_judged).filter(|lacking| several && lacking.limbs > 0);
    let lacking = lacking.map(|lacking| format!(" Not judged, a girth missing: {}.", percent(lacking)));
    let mut blocks = vec![
        Block::heading(chart.label.as_str()),
        Block::text(format!(
            "Serves {}{}.{}{}",
            percent(&chart.served),
            fall.unwrap_or_default(),
            alike.unwrap_or_default(),
            lacking.unwrap_or_default()
        )),
    ];
    let with_fall = chart.falls.is_some();
    let mut columns = vec![Column::words("Size"), Column::numbers("Chosen", "%")];
    if with_fall {
        columns.push(Column::numbers("And falls", "%"));
    }
    columns.push(Column::numbers("Only this size", "%"));
    let mut table = Table::new("Sizes; what only one size takes is lost when it is dropped", columns);
    for size in &chart.sizes {
        let mut cells = vec![size.label.clone(), cell(Some(&size.chosen))];
        if with_fall {
            cells.push(cell(size.falls.as_ref()));
        }
        cells.push(cell(Some(&size.only)));
        table.push(cells);
    }
    blocks.push(Block::Table(table));
    let said: Vec<String> = (chart.missed.iter())
        .map(|missed| {
            let at = words::at(missed.landmark);
            format!("{} missed, too {} {at}", percent(&missed.share), missed.direction)
        })
        .collect();
    if !said.is_empty() {
        blocks.push(Block::heading("Missed, by the girth that misses most at the nearest size"));
        blocks.push(Block::list(said));
    }
    if chart.rises.limbs > 0 {
        blocks.push(Block::text(format!(
            "{} not served, though a size takes every girth: on them its pressure certainly rises toward the trunk.",
            percent(&chart.rises)
        )));
    }
    blocks
}

/// Which sizes to stock first.
fn stock(report: &CoverReport) -> Vec<Block> {
    let several = report.charts.len() > 1;
    let mut columns = vec![Column::numbers("Step", "")];
    if several {
        columns.push(Column::words("Chart"));
    }
    columns.extend([Column::words("Size"), Column::numbers("Adds", "%"), Column::numbers("So far", "%")]);
    let mut table = Table::new("Stock first", columns);
    for (step, one) in report.stock.iter().enumerate() {
        let chart = report.charts.get(one.chart);
        let mut cells = vec![(step + 1).to_string()];
        if several {
            cells.push(chart.map(|chart| chart.label.clone()).unwrap_or_default());
        }
        let size = chart.and_then(|chart| chart.sizes.get(one.size));
        cells.push(size.map(|size| size.label.clone()).unwrap_or_default());
        cells.extend([cell(Some(&one.adds)), cell(Some(&one.so_far))]);
        table.push(cells);
    }
    let all: usize = report.charts.iter().map(|chart| chart.sizes.len()).sum();
    let idle = all.saturating_sub(report.stock.len());
    let mut blocks = vec![Block::heading("Which sizes to stock first")];
    if report.stock.is_empty() {
        blocks.push(Block::text("No size serves a limb of this table."));
        return blocks;
    }
    blocks.push(Block::text("Each step is the size that serves most limbs beyond those before it."));
    blocks.push(Block::Table(table));
    if idle > 0 {
        blocks.push(Block::text(format!(
            "{} would serve none beyond these.",
            words::counted(idle, "size", "sizes")
        )));
    }
    blocks
}

fn of_design(design: &DesignBlock) -> Vec<Block> {
    let count = words::counted(design.sizes.len(), "size", "sizes");
    let (serve, others) =
        if design.sizes.len() == 1 { ("serves", "No other size") } else { ("serve", "No others") };
    let also = if design.sizes.len() == 1 { "serves" } else { "serve" };
    let sure = if design.is_best {
        format!("{others} of this shape {also} more.")
    } else if design.bound.limbs >= design.placed_for {
        format!("Whether {} of this shape {also} more is not known.", others_as_asked(design))
    } else {
        let more = limbs(design.bound.limbs.saturating_sub(design.served.limbs));
        format!(
            "{others} of this shape {also} more than {}, {more} beyond these.",
            one_decimal(&design.bound)
        )
    };
    let mut blocks = vec![Block::lead(format!(
        "{count} as wide as most of {} {serve} {} of {}. {sure}",
        design.like,
        one_decimal(&design.served),
        limbs(design.placed_for)
    ))];
    let marks: Vec<_> = design.sizes.iter().take(1).flat_map(|size| size.girths.iter()).collect();
    let heads = || marks.iter().map(|range| words::label(range.landmark));
    let mut columns = vec![Column::numbers("Size", "")];
    columns.extend(heads().map(|head| Column::ranges(head, "cm")));
    columns.push(Column::numbers("Only this size", "%"));
    let mut table = Table::new("Girths", columns);
    for (number, size) in design.sizes.iter().enumerate() {
        let ranges = size.girths.iter().map(|one| format!("{}–{}", one.low_cm.text, one.high_cm.text));
        let mut cells = vec![(number + 1).to_string()];
        cells.extend(ranges);
        cells.push(cell(Some(&size.only)));
        table.push(cells);
    }
    blocks.push(Block::Table(table));
    if let Some(how) = &design.relaxed_for {
        let mut columns = vec![Column::numbers("Size", "")];
        columns.extend(heads().map(|head| Column::numbers(head, "cm")));
        let mut table = Table::new("Relaxed girths", columns);
        for (number, size) in design.sizes.iter().enumerate() {
            let own = size.girths.iter().map(|one| one.relaxed_cm.as_ref());
            let own = own.map(|one| one.map(|one| one.text.clone()).unwrap_or_default());
            table.push(std::iter::once((number + 1).to_string()).chain(own).collect());
        }
        blocks.push(Block::Table(table));
        blocks.push(Block::text(format!("For {how}, on the limb in the middle of each size.")));
    }
    if let Some(why) = &design.no_relaxed {
        blocks.push(Block::text(format!("No relaxed girths: {why}.")));
    }
    if design.placed_for < design.judged {
        blocks.push(Block::text(format!(
            "Placed for {} of {}, taken evenly; the shares are of those.",
            design.placed_for,
            limbs(design.judged)
        )));
    }
    blocks
}

fn others_as_asked(design: &DesignBlock) -> &'static str {
    if design.sizes.len() == 1 { "another size" } else { "others" }
}

fn one_decimal(share: &Share) -> String {
    format!("{} %", share.percent.text)
}
