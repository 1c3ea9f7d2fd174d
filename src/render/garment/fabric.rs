//! Owns the terminal form of a fabric.

use super::gradient::text;
use super::plot::{Series, plot};
use crate::render::text::Page;
use crate::report::{FabricReport, Figure};

/// A fabric for a terminal of `width` columns.
pub fn fabric_text(fabric: &FabricReport, width: usize) -> String {
    let mut page = Page::new(width);
    page.heading(&fabric.label);
    let bench = fabric.bench.map(|kind| {
        format!("; bench test, {kind}, {} pulls pooled into one rising curve", fabric.pulls.len())
    });
    page.paragraph(&format!("Curve: {}{}.", fabric.basis, bench.unwrap_or_default()));
    if let Some(note) = &fabric.note {
        page.paragraph(note);
    }
    page.paragraph(&format!(
        "SD of the tension {} % ({}); SD of a relaxed girth {} cm.",
        text(fabric.tension_sd_percent.as_ref()),
        fabric.tension_sd_from,
        text(fabric.relaxed_sd_cm.as_ref()),
    ));
    page.gap();
    let head = ["stretch %", "tension N/m"].map(str::to_owned);
    let rows: Vec<Vec<String>> = fabric
        .curve
        .iter()
        .map(|one| vec![text(one.stretch_percent.as_ref()), text(one.tension_n_per_m.as_ref())])
        .collect();
    page.table(&head, &rows, &[0, 1]);
    let point = |stretch: Option<&Figure>, tension: Option<&Figure>| Some((stretch?.value, tension?.value));
    let pulls = fabric
        .pulls
        .iter()
        .filter_map(|one| point(one.stretch_percent.as_ref(), one.tension_n_per_m.as_ref()))
        .collect();
    let curve: Vec<(f64, f64)> = fabric
        .curve
        .iter()
        .filter_map(|one| point(one.stretch_percent.as_ref(), one.tension_n_per_m.as_ref()))
        .collect();
    let between = Series { sign: '·', points: Vec::clone(&curve), joined: true };
    let series = [
        between,
        Series { sign: '×', points: pulls, joined: false },
        Series { sign: '●', points: curve, joined: false },
    ];
    page.gap();
    for line in plot(&series, page.width().min(76), 10, "% stretch", "N/m, one layer") {
        page.line(&line);
    }
    let pulls = if fabric.pulls.is_empty() { "" } else { "; × single pulls" };
    page.paragraph(&format!(
        "● the curve, straight between its points{pulls}. Beyond the last point nothing is estimated."
    ));
    page.finish()
}
