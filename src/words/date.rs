//! Owns how a date is said.

use jiff::civil::Date;

/// `2026-03-14`, as files write it; for the fitter's pages.
pub fn date_short(date: Date) -> String {
    date.to_string()
}

/// `14 March 2026`, for a person.
pub fn date_long(date: Date) -> String {
    const MONTHS: [&str; 12] = [
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
        "December",
    ];
    let month = usize::try_from(date.month()).ok().and_then(|month| MONTHS.get(month.saturating_sub(1)));
    format!("{} {} {}", date.day(), month.copied().unwrap_or_default(), date.year())
}
