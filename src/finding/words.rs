//! Owns how figures read in sentences.

/// `1.2 cm`, from tenths of a millimetre, to the millimetre where that is exact enough, else to 0.1 mm.
pub fn cm(tenths: i64) -> String {
    let magnitude = tenths.abs();
    let sign = if tenths < 0 { "\u{2212}" } else { "" };
    if magnitude % 10 == 0 {
        format!("{sign}{}.{} cm", magnitude / 100, magnitude / 10 % 10)
    } else {
        format!("{sign}{}.{:02} cm", magnitude / 100, magnitude % 100)
    }
}

/// `26 mmHg`: whole, never −0.
pub fn mmhg_words(mmhg: f64) -> String {
    format!("{} mmHg", whole(mmhg))
}

/// `99 %`, with the ends said as `over 99 %` and `under 1 %`.
pub fn percent_words(share: f64) -> String {
    if share > 0.99 {
        "over 99 %".to_owned()
    } else if share < 0.01 {
        "under 1 %".to_owned()
    } else {
        format!("{} %", whole(share * 100.0))
    }
}

pub(super) fn whole(value: f64) -> String {
    let rounded = value.round();
    if rounded.abs() < 0.5 { "0".to_owned() } else { format!("{rounded:.0}").replace('-', "\u{2212}") }
}

/// `a, b and c`.
pub(super) fn list(items: &[String]) -> String {
    match items.split_last() {
        None => String::new(),
        Some((last, [])) => last.clone(),
        Some((last, rest)) => format!("{} and {last}", rest.join(", ")),
    }
}
