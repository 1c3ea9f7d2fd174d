//! Owns the keys of a list of visits.

use super::shared::{UNITS, kind};
use super::{Block, Form, Key};

/// The keys of `visits/1`.
pub static VISITS: Block = Block::of(
    "visits",
    &[
        kind("tapeline: visits/1"),
        UNITS,
        Key::required(
            "visits",
            Form::List(&Form::File),
            "visits: [visit-1.yaml, visit-2.yaml]",
            "the records of one client and limb, each a file",
        ),
    ],
);
