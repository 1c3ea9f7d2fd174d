//! Owns the opening of a record: content, prescription and screening held against rules and schemes.

use crate::garment::{Scheme, Schemes};
use crate::input::{Problem, Reader, Source};
use crate::record::{Record, Wanted, read_record};
use crate::rules::Rules;
use crate::screening::{Screened, settle};

/// A record that can be assessed.
#[derive(Clone, Debug)]
pub struct OpenRecord {
    /// The record.
    pub record: Record,
    /// Its screening, settled.
    pub screened: Screened,
    /// The scheme of the prescription, where a class was prescribed.
    pub prescribed_scheme: Option<Scheme>,
}

/// Opens a record file.
///
/// # Errors
/// Every problem of the file.
pub fn open_record(source: Source, rules: &Rules, schemes: &Schemes) -> Result<OpenRecord, Vec<Problem>> {
    let reader = Reader::new(source).map_err(|problem| vec![problem])?;
    let opened = read_record(&reader).map(|record| {
        let prescribed_scheme = match record.prescribed.as_ref().and_then(|one| one.wanted.as_ref()) {
            Some(Wanted::Class { scheme, class }) => {
                schemes.claimed(&reader, "prescribed", scheme, class, record.limb)
            }
            _ => None,
        };
        let screened = settle(&reader, &record, rules);
        OpenRecord { record, screened, prescribed_scheme }
    });
    let problems = reader.problems();
    match opened {
        Some(opened) if problems.is_empty() => Ok(opened),
        _ => Err(problems),
    }
}
