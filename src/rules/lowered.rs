//! Owns what a rules file makes milder than the shipped default; every report opens with it.

/// What was made milder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoweredWhat {
    /// The severity of a screening item.
    Severity,
    /// The urgency of a screening item.
    Urgency,
    /// On which limbs an item is asked.
    Limbs,
    /// More roles may clear.
    Roles,
    /// A band of an arterial value.
    Arterial,
    /// How long answers of a group hold.
    Validity,
    /// A number outside its sane range.
    Number,
}

/// One thing that a rules file makes milder, with the reason it states.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lowered {
    /// What kind of thing.
    pub what: LoweredWhat,
    /// Its id.
    pub id: String,
    /// What it is in the default.
    pub was: String,
    /// What it is now.
    pub now: String,
    /// The reason as the file states it.
    pub why: String,
}
