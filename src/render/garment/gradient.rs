//! Owns the terminal form of one garment that is asked about.

use super::plot::{Series, plot};
use crate::anatomy::Landmark;
use crate::render::text::{Page, print_along, print_findings, print_head, print_tail};
use crate::report::{Figure, GarmentBlock, Report};

/// The report of one garment for a terminal of `width` columns.
pub fn gradient_text(report: &Report, width: usize) -> String {
    let mut page = Page::new(width);
    print_head(&mut page, report);
    let Some(garment) = &report.garment else { return page.finish() };
    print_findings(&mut page, report);
    pieces(&mut page, garment);
    for (pressure, graduation) in report.pressure.iter().zip(&report.graduation) {
        if let Some(caution) = garment.caution {
            page.gap();
            page.line(&capital(caution));
        }
        print_along(&mut page, pressure, graduation);
    }
    drawn(&mut page, garment);
    overlaps(&mut page, garment);
    edges(&mut page, garment);
    swelling(&mut page, garment);
    sections(&mut page, garment);
    undecided(&mut page, garment);
    readings(&mut page, garment);
    if let Some(wear) = &garment.wear {
        page.heading("Wear");
        page.paragraph(wear);
    }
    if !garment.missing.is_empty() {
        page.heading("What is missing");
        for one in &garment.missing {
            page.paragraph(one);
        }
    }
    print_tail(&mut page, report);
    page.finish()
}

/// `Figures only, do not fit`.
pub(super) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

pub(super) fn text(figure: Option<&Figure>) -> String {
    figure.map_or_else(|| "–".to_owned(), |figure| figure.text.clone())
}

fn spoken(name: &str) -> String {
    Landmark::parse_word(name).map_or_else(|| name.to_owned(), Landmark::spoken)
}

fn label(name: &str) -> String {
    Landmark::parse_word(name).map_or_else(|| name.to_owned(), Landmark::label)
}

fn pieces(page: &mut Page, garment: &GarmentBlock) {
    if garment.pieces.is_empty() {
        return;
    }
    page.heading("Worn");
    for piece in &garment.pieces {
        page.led("  ", &piece.words);
    }
}

/// Rows of the plot (house rule: seen whole beside a table of seven marks).
const ROWS: usize = 9;

fn drawn(page: &mut Page, garment: &GarmentBlock) {
    let point = |at: Option<&Figure>, value: Option<&Figure>| Some((at?.value, value?.value));
    let all = || garment.profile.iter();
    let line = all().filter_map(|one| point(one.at_cm.as_ref(), one.pressure_mmhg.as_ref())).collect();
    let marks = all()
        .filter(|one| one.landmark.is_some())
        .filter_map(|one| point(one.at_cm.as_ref(), one.pressure_mmhg.as_ref()))
        .collect();
    let series = [
        Series { sign: '·', points: line, joined: true },
        Series { sign: '●', points: marks, joined: false },
    ];
    let width = page.width().min(76);
    let lines = plot(&series, width, ROWS, "cm", "mmHg");
    if lines.is_empty() {
        return;
    }
    page.gap();
    for line in lines {
        page.line(&line);
    }
    page.paragraph(
        "● the marks; · every 0.5 cm between them, girths taken as straight, drawn and not judged.",
    );
}

fn overlaps(page: &mut Page, garment: &GarmentBlock) {
    if garment.overlaps.is_empty() {
        return;
    }
    page.heading("Over one another");
    for one in &garment.overlaps {
        let parts: Vec<String> = one
            .parts
            .iter()
            .map(|part| format!("{} {}", part.label, text(part.pressure_mmhg.as_ref())))
            .collect();
        page.led(
            &format!("  {}: ", label(one.landmark)),
            &format!(
                "{} mmHg as a plain sum, an upper estimate ({}); {} by the shares that one study found.",
                text(one.sum_mmhg.as_ref()),
                parts.join(" + "),
                ends(one.in_vivo_low_mmhg.as_ref(), one.in_vivo_high_mmhg.as_ref()),
            ),
        );
    }
}

/// `39–40`, or `17` where both ends are printed alike.
fn ends(low: Option<&Figure>, high: Option<&Figure>) -> String {
    let (low, high) = (text(low), text(high));
    if low == high { low } else { format!("{low}–{high}") }
}

fn edges(page: &mut Page, garment: &GarmentBlock) {
    if garment.edges.is_empty() {
        return;
    }
    page.heading("Top edge against the garment just below it");
    for one in &garment.edges {
        let against = match (&one.rise_mmhg, &one.chance) {
            (Some(rise), Some(chance)) => format!(
                "{} mmHg {} (chance that it presses more: {})",
                rise.text.trim_start_matches('\u{2212}'),
                if rise.value < 0.0 { "less" } else { "more" },
                chance.text
            ),
            _ => "not estimated".to_owned(),
        };
        page.led("  ", &format!("{}, {}: {against}", one.garment, spoken(one.landmark)));
    }
}

fn swelling(page: &mut Page, garment: &GarmentBlock) {
    if garment.swelling.is_empty() {
        return;
    }
    page.heading("If the limb changes by 1 cm, mmHg");
    let head = ["mark", "1 cm less", "as measured", "1 cm more"].map(str::to_owned);
    let rows: Vec<Vec<String>> = garment
        .swelling
        .iter()
        .map(|one| {
            vec![
                label(one.landmark),
                text(one.minus_1cm_mmhg.as_ref()),
                text(one.pressure_mmhg.as_ref()),
                text(one.plus_1cm_mmhg.as_ref()),
            ]
        })
        .collect();
    page.table(&head, &rows, &[1, 2, 3]);
}

fn sections(page: &mut Page, garment: &GarmentBlock) {
    if garment.sections.is_empty() {
        return;
    }
    page.heading("Sections that are not round");
    for one in &garment.sections {
        page.led(
            &format!("  {}: ", label(one.landmark)),
            &format!(
                "{} × {} cm; mean {} mmHg, at the sharp end about {}, on the flat side about {} ({} times the mean).",
                text(one.wide_cm.as_ref()),
                text(one.deep_cm.as_ref()),
                text(one.mean_mmhg.as_ref()),
                text(one.sharp_mmhg.as_ref()),
                text(one.flat_mmhg.as_ref()),
                text(one.sharp_over_mean.as_ref()),
            ),
        );
    }
    page.paragraph(
        "The mean holds for any rounded section; the ends are those of an oval with these two diameters.",
    );
}

fn undecided(page: &mut Page, garment: &GarmentBlock) {
    if garment.undecided.is_empty() {
        return;
    }
    page.heading("What decides it");
    for one in &garment.undecided {
        let ends = format!("{} to {}", spoken(one.distal), spoken(one.proximal));
        let when = match (one.falls_for_exponents, &one.level_exponent) {
            ("below", Some(level)) => {
                format!("falls for curves with an exponent below {} (straight is 1)", level.text)
            }
            ("above", Some(level)) => {
                format!("falls for curves with an exponent above {} (straight is 1)", level.text)
            }
            ("always", _) => {
                "falls for every curve at the measured values, but the girths are not sure enough".to_owned()
            }
            _ => "falls for no curve at the measured values, but the girths are not sure enough".to_owned(),
        };
        page.led("  ", &format!("{ends}: {when}. Decided by:"));
        for way in &one.ways {
            page.led("    - ", way);
        }
    }
}

fn readings(page: &mut Page, garment: &GarmentBlock) {
    if garment.readings.is_empty() {
        return;
    }
    page.heading("Readings under the garment");
    let head = ["mark", "mmHg", "SD", "posture", "minutes worn"].map(str::to_owned);
    let rows: Vec<Vec<String>> = garment
        .readings
        .iter()
        .map(|one| {
            vec![
                label(one.landmark),
                text(one.pressure_mmhg.as_ref()),
                text(one.sd_mmhg.as_ref()),
                one.posture.clone().unwrap_or_else(|| "not stated".to_owned()),
                text(one.minutes_worn.as_ref()),
            ]
        })
        .collect();
    page.table(&head, &rows, &[1, 2, 4]);
    let Some(against) = &garment.against else { return };
    page.gap();
    let head = ["mark", "estimate", "reading", "difference"].map(str::to_owned);
    let rows: Vec<Vec<String>> = against
        .marks
        .iter()
        .map(|one| {
            vec![
                label(one.landmark),
                text(one.estimate_mmhg.as_ref()),
                text(one.reading_mmhg.as_ref()),
                text(one.difference_mmhg.as_ref()),
            ]
        })
        .collect();
    page.table(&head, &rows, &[1, 2, 3]);
    let spread = against.spread_mmhg.as_ref().map(|one| format!(", SD {}", one.text)).unwrap_or_default();
    page.paragraph(&format!(
        "Estimate minus reading: mean {} mmHg{spread}.",
        text(against.bias_mmhg.as_ref())
    ));
    if let (Some(scale), Some(sd)) = (&against.scale, &against.scale_sd) {
        page.paragraph(&format!(
            "The fabric's curve times {} (SD {}) fits these readings best; `--calibrate FILE` writes that curve.",
            scale.text, sd.text
        ));
    }
}
