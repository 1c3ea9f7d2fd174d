//! Owns the volume in the terminal report.

use super::Page;
use crate::report::{Figure, Report};

fn text(figure: Option<&Figure>, unit: &str) -> String {
    figure.map_or_else(|| "not compared".to_owned(), |figure| format!("{} {unit}", figure.text))
}

/// Prints both limbs' volumes.
pub(super) fn print(page: &mut Page, report: &Report) {
    let Some(volume) = &report.volume else { return };
    page.heading("Limb volume");
    let spacing = volume
        .spacing_cm
        .as_ref()
        .map_or("unequal spacing".to_owned(), |one| format!("every {} cm", one.text));
    page.paragraph(&format!(
        "Measured limb {}, other limb {} ({}, {spacing}, hand and foot left out).",
        text(volume.measured_ml.as_ref(), "mL"),
        text(volume.other_ml.as_ref(), "mL"),
        volume.method,
    ));
    if let (Some(excess), Some(percent)) = (&volume.excess_ml, &volume.excess_percent) {
        let sd =
            volume.sd_ml.as_ref().map(|sd| format!(", SD by tape error {} mL", sd.text)).unwrap_or_default();
        page.paragraph(&format!("Excess of the affected limb {} mL, {} %{sd}.", excess.text, percent.text));
    }
    for part in &volume.parts {
        if let (Some(excess), Some(percent)) = (&part.excess_ml, &part.excess_percent) {
            page.paragraph(&format!("  {} part: {} mL, {} %", part.part, excess.text, percent.text));
        }
    }
    if !volume.severity.is_empty() {
        let sets: Vec<String> =
            volume.severity.iter().map(|one| format!("{} {}", one.set, one.grade)).collect();
        page.led(
            "Sets: ",
            &format!("{}. They disagree by design; none of them is a verdict.", sets.join(" · ")),
        );
    }
}
