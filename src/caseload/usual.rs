//! Owns what is odd in a row before it is sized: nothing in it, or a girth that adults rarely have.
//!
//! Source: the bands of `record`, which `check` asks by.

use super::case::{Case, PLACES, place};
use crate::anatomy::{Landmark, Limb};
use crate::record::usual_girth;
use crate::rules::Rules;

/// The usual girths of adults by place, tenths of a millimetre.
#[derive(Clone, Debug)]
pub(super) struct Usual([(i32, i32); PLACES]);

impl Usual {
    /// The bands of a limb.
    pub(super) fn of(limb: Limb, rules: &Rules) -> Self {
        let mut all = [(0, i32::MAX); PLACES];
        for landmark in Landmark::of(limb) {
            let (low, high, _) = usual_girth(*landmark, rules);
            if let Some(slot) = all.get_mut(place(*landmark)) {
                *slot = (tenths(low), tenths(high));
            }
        }
        Self(all)
    }

    /// Whether a girth lies outside its band.
    pub(super) fn is_unusual(&self, case: &Case) -> bool {
        let all = self.0.iter().zip(&case.girths);
        all.into_iter().any(|((low, high), girth)| *girth > 0 && !(low..=high).contains(&girth))
    }
}

#[expect(clippy::cast_possible_truncation, reason = "girths of at most 20 000 tenths of a millimetre")]
fn tenths(cm: f64) -> i32 {
    (cm * 100.0).round() as i32
}

/// Whether a row has nothing in its cells, as spreadsheets save empty lines.
pub(super) fn is_blank(row: &[u8], sign: u8) -> bool {
    row.iter().all(|byte| byte.is_ascii_whitespace() || *byte == sign)
}
