//! Owns how old the girths are.

/// How old the newest girths are against today, by calendar months.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GirthAge {
    /// They serve.
    Fresh,
    /// Over the age from which care is asked for.
    Care,
    /// Over the age from which they are taken again.
    Again,
}
