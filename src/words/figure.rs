//! Owns how a number is printed. Ties go away from zero at the printed place, as people round; −0 is 0.

/// The minus sign of print.
const MINUS: char = '\u{2212}';

/// A number with a fixed count of decimals; empty where it is not finite.
pub fn decimal(value: f64, decimals: usize) -> String {
    if !value.is_finite() {
        return String::new();
    }
    let scale = 10_f64.powi(i32::try_from(decimals).unwrap_or_default());
    // A value that is a tie in decimal notation may lie a last binary place below it.
    let scaled = value * scale;
    let rounded = (scaled + scaled.signum() * scaled.abs() * 1e-14).round() / scale;
    let text = format!("{:.decimals$}", if rounded.abs() > 0.0 { rounded } else { 0.0 });
    text.replace('-', &MINUS.to_string())
}

/// A number with at most `decimals` places and no idle zeros: `20.5`, `20`.
pub fn trimmed(value: f64, decimals: usize) -> String {
    let text = decimal(value, decimals);
    if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
}

/// A whole number.
pub fn whole(value: f64) -> String {
    decimal(value, 0)
}

/// A plain number with up to three decimals, for numbers of the rules.
pub fn plain(value: f64) -> String {
    trimmed(value, 3)
}

/// `26 mmHg`.
pub fn mmhg(value: f64) -> String {
    format!("{} mmHg", whole(value))
}

/// `1656 mL`.
pub fn millilitre(value: f64) -> String {
    format!("{} mL", whole(value))
}

/// `71.5 kg`.
pub fn kilogram(value: f64) -> String {
    format!("{} kg", trimmed(value, 1))
}

/// `12 %` of a value already in per cent.
pub fn percent(value: f64) -> String {
    format!("{} %", whole(value))
}

/// `12 %` of a share.
pub fn fraction_percent(share: f64) -> String {
    percent(share * 100.0)
}

/// A chance: whole per cent, its ends said as `under 1 %` and `over 99 %`.
pub fn chance(share: f64) -> String {
    if share > 0.99 {
        "over 99 %".to_owned()
    } else if share < 0.01 {
        "under 1 %".to_owned()
    } else {
        fraction_percent(share)
    }
}

/// `1.15 (SD 0.06)`: an exponent of a knit, with its SD where that is known.
pub fn exponent(value: f64, sd: Option<f64>) -> String {
    let sd = sd.map_or_else(String::new, |sd| format!(" (SD {})", decimal(sd, 2)));
    format!("{}{sd}", trimmed(value, 2))
}

/// Centimetres of whole tenths of a millimetre: the one way from tenths to centimetres.
#[expect(clippy::cast_precision_loss, reason = "a limb is far shorter than 2^53 tenths of a millimetre")]
pub fn cm_of_tenths(tenths: i64) -> f64 {
    tenths as f64 / 100.0
}

/// `16.9`: centimetres from whole tenths of a millimetre, to the millimetre; a tenth of one more where
/// that would hide the figure.
pub fn cm_short(tenths: i64) -> String {
    let decimals = if tenths % 10 == 0 { 1 } else { 2 };
    decimal(cm_of_tenths(tenths), decimals)
}

/// `16.9 cm`.
pub fn cm(tenths: i64) -> String {
    format!("{} cm", cm_short(tenths))
}
