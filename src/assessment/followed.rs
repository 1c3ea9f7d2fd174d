//! Owns the course of a run, where there is something to follow.

use super::Setting;
use crate::anatomy::Side;
use crate::record::{LimbRecord, Record};
use crate::volume::{Course, course};

/// The course of `visits`, oldest first; none without earlier visits, garments in use and infections.
pub fn followed(visits: &[Record], setting: &Setting) -> Option<Course> {
    let record = visits.last()?;
    let in_use = record.limbs.iter().any(|limb| !limb.garments.is_empty() || !limb.infections.is_empty());
    if visits.len() < 2 && !in_use && record.infections.is_empty() {
        return None;
    }
    let all: Vec<&Record> = visits.iter().collect();
    course(&all, &closely(record), setting.today, &setting.rules)
}

/// The sides where harm might go unnoticed.
fn closely(record: &Record) -> Vec<Side> {
    const ITEMS: [&str; 4] = ["diabetes", "feeling-reduced", "feeling-lost-diabetes", "cannot-report"];
    let named = |list: &[crate::input::Named]| list.iter().any(|one| ITEMS.contains(&one.text.as_str()));
    let client = named(&record.screening.present);
    let own = |limb: &&LimbRecord| {
        client
            || named(&limb.screening.present)
            || limb.arterial.as_ref().is_some_and(|one| one.cap.is_some())
    };
    record.limbs.iter().filter(own).map(|limb| limb.side).collect()
}
