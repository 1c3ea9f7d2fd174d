//! Owns the order of the sheet.

use super::subject::{State, Subject};
use super::{Head, Leaf, Reader, Sheet, client, closing, fall, marks, offered, others, result, wording};
use crate::report::Report;

/// The sheet of a report: a leaf for the fitter and the file, a leaf for the client.
pub fn sheet(report: &Report) -> Sheet {
    let subject = Subject::of(report);
    let limb = subject.limb_in_capitals();
    let (title, state) = match subject.state {
        State::Trial => (format!("Sheet for a trial fitting: {limb}"), "TRIAL FITTING"),
        State::Stop => (format!("STOP: do not fit, {limb}"), "STOP: DO NOT FIT"),
        State::Wait => (format!("Not yet for fitting: {limb}"), "NO FITTING YET"),
    };
    let record = &report.record;
    let mut sheet = Sheet {
        head: Head {
            bold: format!("{} \u{b7} {limb} \u{b7} {state}", record.client),
            plain: format!("measured {} \u{b7} printed {}", record.measured, report.today),
        },
        leaves: vec![fitter(subject, title), client::client(subject)],
        made_on: report.today.clone(),
        made_by: format!("{} {}", report.tool.name, report.tool.version),
    };
    wording::hold_units(&mut sheet);
    sheet
}

fn fitter(subject: Subject<'_>, title: String) -> Leaf {
    let parts = [
        result::result,
        result::to_clear,
        result::also_seen,
        offered::offered,
        marks::marks,
        fall::fall,
        others::others,
        others::volume,
        closing::trial,
        others::made_to_measure,
        closing::closing,
    ];
    let blocks = parts.into_iter().flat_map(|part| part(subject)).collect();
    Leaf { reader: Reader::Fitter, title, blocks }
}
