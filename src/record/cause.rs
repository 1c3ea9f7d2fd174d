//! Owns why a limb is swollen, as recorded.

use crate::input::{Text, YesNo};
use crate::rules::Role;

/// The cause as recorded; all absent = the question is open.
#[derive(Clone, Debug, Default)]
pub struct Cause {
    /// Whether it is known.
    pub known: Option<YesNo>,
    /// In words.
    pub note: Option<Text>,
    /// Who established it.
    pub by: Option<Role>,
}
