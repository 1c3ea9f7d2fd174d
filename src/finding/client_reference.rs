//! Finding `client-reference`: the client's reference looks like a name.

use super::{Entry, Finding, Place, Who};
use crate::rules::{Basis, Severity};

/// What is known of it beforehand.
pub const ENTRY: Entry = Entry {
    id: "client-reference",
    title: "Reference looks like a name",
    meaning: "The client's reference looks like a name.",
    rule: "Asked where it holds blanks; answered by `client` under `confirmed`.",
    basis: Basis::HouseRule,
    source: "",
};

/// The reference looks like a name.
pub fn client_reference(place: Place) -> Finding {
    Finding::of(&ENTRY, Severity::Caution, place)
        .say("The client's reference looks like a name; a record holds a reference code only.")
        .next("Write the clinic's reference. If it is one, say so in the record.", &[Who::Recorder])
        .asks("client")
}
