//! Owns the pressure along the limb in the terminal report.

use super::{Page, bar_scale, pressure_bar};
use crate::anatomy::Landmark;
use crate::report::{Figure, Graduation, Mark, Pressure};

/// Prints in two lines how the nearest size of a chart without a choice would do.
pub(super) fn print_nearest(page: &mut Page, pressure: &Pressure, graduation: &Graduation) {
    let size = pressure.size.as_deref().unwrap_or_default();
    if pressure.marks.is_empty() {
        return;
    }
    page.gap();
    page.led(&format!("Size {size}, if it were worn: "), &graduation.words);
    reference(page, pressure);
}

/// Prints one garment: a row for each mark, the verdict, the reference and the edges.
pub(super) fn print(page: &mut Page, pressure: &Pressure, graduation: Option<&Graduation>) {
    let size = pressure.size.as_ref().map(|size| format!(", size {size}")).unwrap_or_default();
    page.heading(&format!("Along the limb: {}{size}", pressure.garment));
    if pressure.marks.is_empty() {
        page.paragraph("No relaxed girths and no flat widths at the measured marks: nothing is estimated.");
        return;
    }
    if matches!(pressure.basis, Some("fabric" | "readings")) {
        fabric(page, pressure, graduation);
    } else {
        stretch(page, pressure, graduation);
    }
    if let Some(graduation) = graduation {
        page.led("Gradient: ", &graduation.words);
        let ratios: Vec<String> = graduation
            .ratios
            .iter()
            .map(|one| {
                let percent = one.percent.as_ref().map_or("?", |percent| &percent.text);
                let limits = match (&one.low, &one.high) {
                    (Some(low), Some(high)) => format!(" (limits {}\u{2013}{} %)", low.text, high.text),
                    (Some(low), None) => format!(" (at least {} %)", low.text),
                    (None, Some(high)) => format!(" (at most {} %)", high.text),
                    (None, None) => String::new(),
                };
                format!("{} {percent} % of the {}{limits}", spoken(one.landmark), spoken(one.of))
            })
            .collect();
        if !ratios.is_empty() {
            page.led("Shares: ", &ratios.join("; "));
        }
    }
    reference(page, pressure);
    if let Some(top) = &pressure.top_edge
        && let (Some(here), Some(folded)) = (&top.pressure_mmhg, &top.folded_mmhg)
    {
        let name = spoken(top.landmark);
        page.led(
            "Top edge: ",
            &format!(
                "about {} mmHg at the {name}; folded once, about {} mmHg there.",
                here.text, folded.text
            ),
        );
    }
}

/// Prints one garment that is asked about alone.
pub(in crate::render) fn print_garment(page: &mut Page, pressure: &Pressure, graduation: &Graduation) {
    print(page, pressure, Some(graduation));
}

/// A landmark's name as it reads in a sentence.
fn spoken(name: &str) -> String {
    Landmark::parse_word(name).map_or_else(|| name.to_owned(), Landmark::spoken)
}

fn text(figure: Option<&Figure>) -> String {
    figure.map_or_else(|| "–".to_owned(), |figure| figure.text.clone())
}

/// How a mark stands against the one below it.
fn against_below(mark: &Mark, graduation: Option<&Graduation>) -> String {
    let pair = graduation.and_then(|one| one.pairs.iter().rfind(|pair| pair.proximal == mark.landmark));
    let Some(pair) = pair else { return mark.role.unwrap_or_default().to_owned() };
    let rise = pair.rise_mmhg.as_ref().map(|rise| rise.value);
    match (pair.grade, rise) {
        (None, _) => "not estimated".to_owned(),
        (Some("certain"), _) => "RISES, certain".to_owned(),
        (Some("likely"), _) => "rises, likely".to_owned(),
        (Some("possible"), _) => "may rise".to_owned(),
        (Some("undecided"), _) => "undecided".to_owned(),
        (Some(_), Some(rise)) if rise > 0.5 => "near, not told".to_owned(),
        (Some(_), _) => "falls".to_owned(),
    }
}

fn fabric(page: &mut Page, pressure: &Pressure, graduation: Option<&Graduation>) {
    let head = ["mark", "girth", "relaxed", "stretch", "mmHg", "95 %", "to the mark below"];
    let rows: Vec<Vec<String>> = pressure
        .marks
        .iter()
        .map(|mark| {
            let (here, range) = match (&mark.pressure_mmhg, &mark.low_mmhg, &mark.high_mmhg) {
                (Some(here), Some(low), Some(high)) => {
                    (here.text.clone(), format!("{}\u{2013}{}", low.text, high.text))
                }
                _ => ("?".to_owned(), String::new()),
            };
            let mut row = shared_cells(mark);
            row.extend([here, range, against_below(mark, graduation)]);
            row
        })
        .collect();
    page.table(&head.map(str::to_owned), &rows, &[1, 2, 3, 4, 5]);
    let highs = pressure.marks.iter().filter_map(|mark| mark.high_mmhg.as_ref()).map(|high| high.value);
    let claimed = pressure.reference.claimed_high_mmhg.as_ref().map(|high| high.value);
    let scale = bar_scale(highs.chain(claimed));
    let reference = &pressure.reference;
    let band = reference.claimed_class.as_ref().map(|_| {
        let low = reference.claimed_low_mmhg.as_ref().map_or(0.0, |low| low.value);
        (low, reference.claimed_high_mmhg.as_ref().map_or(scale, |high| high.value))
    });
    let label_width = pressure.marks.iter().map(|mark| mark.label.chars().count()).max().unwrap_or_default();
    let width = page.width().saturating_sub(label_width + 8).min(60);
    page.gap();
    for mark in &pressure.marks {
        let bar = match (&mark.pressure_mmhg, &mark.low_mmhg, &mark.high_mmhg) {
            (Some(here), Some(low), Some(high)) if mark.words != "no contact" => {
                let band = band.filter(|_| mark.landmark == reference.landmark);
                format!(
                    "{} {}",
                    pressure_bar(width, scale, (low.value, high.value), here.value, band),
                    here.text
                )
            }
            _ => mark.words.clone(),
        };
        page.line(&format!("{:label_width$}  {bar}", mark.label));
    }
    let what = if pressure.basis == Some("readings") {
        "reading, ━ its 95 % range by the sensor"
    } else {
        "estimate, ━ its 95 % range by tape, ruler and fabric"
    };
    let shade = if band.is_some() { ", [ ] the claimed class" } else { "" };
    page.paragraph(&format!("0 to {scale:.0} mmHg: ● {what}{shade}. Girths in cm."));
}

/// Mark, girth, relaxed girth, stretch.
fn shared_cells(mark: &Mark) -> Vec<String> {
    vec![
        mark.label.clone(),
        text(mark.girth_cm.as_ref()),
        text(mark.relaxed_cm.as_ref()),
        mark.stretch_percent.as_ref().map_or_else(|| "–".to_owned(), |one| format!("{} %", one.text)),
    ]
}

fn stretch(page: &mut Page, pressure: &Pressure, graduation: Option<&Graduation>) {
    let head = ["mark", "girth", "relaxed", "stretch", "to the mark below"];
    let rows: Vec<Vec<String>> = pressure
        .marks
        .iter()
        .map(|mark| {
            let mut row = shared_cells(mark);
            row.push(if mark.words.is_empty() {
                against_below(mark, graduation)
            } else {
                mark.words.clone()
            });
            row
        })
        .collect();
    page.table(&head.map(str::to_owned), &rows, &[1, 2, 3]);
    page.paragraph(
        "No fabric curve, so no mmHg: the fall is judged from stretch and girth alone. Girths in cm.",
    );
}

fn reference(page: &mut Page, pressure: &Pressure) {
    let reference = &pressure.reference;
    let name = spoken(reference.landmark);
    let Some(here) = &reference.pressure_mmhg else {
        if let (Some(class), Some(scheme)) = (&reference.claimed_class, &reference.scheme_label) {
            page.led(
                "Class: ",
                &format!(
                    "class {class} of {scheme} is claimed; not judged without a fabric curve or a reading."
                ),
            );
        }
        return;
    };
    let class = match (&reference.class, &reference.scheme_label) {
        (Some(class), Some(scheme)) => {
            let word = if class.starts_with(|c: char| c.is_ascii_digit() || c.is_ascii_uppercase()) {
                "class "
            } else {
                ""
            };
            format!(", {word}{class} of {scheme}")
        }
        _ => String::new(),
    };
    let chance = match (&reference.claimed_class, &reference.claimed_probability) {
        (Some(claimed), Some(chance)) => format!("; chance of the claimed class {claimed}: {}", chance.text),
        _ => String::new(),
    };
    let stiffness = reference
        .stiffness_mmhg_per_cm
        .as_ref()
        .map(|one| format!("; 1 cm more girth there changes it by {} mmHg", one.text))
        .unwrap_or_default();
    page.led("Reference: ", &format!("about {} mmHg at the {name}{class}{chance}{stiffness}.", here.text));
}
