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
    /// Earlier records of the same limb, in the order given.
    pub previous: Vec<Record>,
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
        OpenRecord { record, screened, prescribed_scheme, previous: Vec::new() }
    });
    let problems = reader.problems();
    match opened {
        Some(opened) if problems.is_empty() => Ok(opened),
        _ => Err(problems),
    }
}

/// Opens an earlier record of the same limb.
///
/// # Errors
/// Every problem of the file; another client, limb or side, and a later day, are problems of it.
pub fn open_previous(source: Source, record: &Record) -> Result<Record, Vec<Problem>> {
    let reader = Reader::new(source).map_err(|problem| vec![problem])?;
    let earlier = read_record(&reader);
    if let Some(earlier) = &earlier {
        let spots = earlier.spots;
        if earlier.client != record.client {
            let what = format!(
                "the record is of `{}`, but the one to check is of `{}`; a previous record is of the same client",
                earlier.client, record.client
            );
            reader.raise(spots.client, "client", what);
        }
        if earlier.limb != record.limb || earlier.side != record.side {
            let limb = |one: &Record| format!("{} {}", one.side.name(), one.limb.name());
            let what = format!(
                "the record is of the {}, but the one to check is of the {}; a previous record is of the same limb and side",
                limb(earlier),
                limb(record)
            );
            reader.raise(spots.limb, "limb", what);
        }
        if earlier.measured > record.measured {
            let what = format!(
                "the record is of {}, later than the one to check, {}; a previous record is earlier",
                earlier.measured, record.measured
            );
            reader.raise(spots.measured, "measured", what);
        }
    }
    let problems = reader.problems();
    match earlier {
        Some(earlier) if problems.is_empty() => Ok(earlier),
        _ => Err(problems),
    }
}
