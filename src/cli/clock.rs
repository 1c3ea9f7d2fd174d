//! Owns the day of a run: what `--today` says, else the system's date in its time zone.

use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;

use super::say;

/// The day, said only where its time zone is not known.
pub(crate) fn today(told: Option<Date>) -> Date {
    told.unwrap_or_else(|| Timestamp::now().to_zoned_datetime(zone()).date())
}

/// The zone of `TZ` (a name, `:name`, a rule or a path), else the system's; an unknown one is said.
fn zone() -> TimeZone {
    let Some(told) = std::env::var_os("TZ") else {
        return TimeZone::try_system().unwrap_or_else(|_| {
            say::note("the system's time zone is not known; the day is that of UTC (or say `--today DATE`)");
            TimeZone::UTC
        });
    };
    let told = told.to_string_lossy();
    let name = told.trim().trim_start_matches(':');
    if name.is_empty() {
        return TimeZone::UTC;
    }
    let of_file = || {
        let bytes = name.starts_with('/').then(|| std::fs::read(name).ok()).flatten()?;
        TimeZone::tzif(name, &bytes).ok()
    };
    let found = TimeZone::get(name).ok().or_else(|| TimeZone::posix(name).ok()).or_else(of_file);
    found.unwrap_or_else(|| {
        say::note(&format!(
            "the time zone `{name}` of TZ is not known; the day is that of UTC (or say `--today DATE`)"
        ));
        TimeZone::UTC
    })
}
