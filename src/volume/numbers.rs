//! Owns the numbers that volume and its course are judged by.

use crate::rules::{NumberId, Rules};

/// The numbers, each with its basis. [`VolumeNumbers::default`] holds the shipped values.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VolumeNumbers {
    /// SD of one volume between visits, % of it: 1.2. Basis: derived from a leg's detectable change of
    /// 3.4 % two weeks apart (published: Lymphat Res Biol 2022), 3.4/(1.96·√2).
    pub sd_between_percent: f64,
    /// The same where every mark is read twice: 0.8 %. Basis: house rule.
    pub sd_repeats_percent: f64,
    /// Loss below which a limb has settled, % a week: 2. Basis: house rule (over two weeks of making
    /// about 0.5 cm at a girth of 25 cm).
    pub settled_below_percent: f64,
    /// Days looked back over: 14. Basis: house rule.
    pub window_days: i32,
    /// Visits that those days have to hold: 4. Basis: house rule.
    pub window_visits: usize,
    /// Days looked back over where they hold fewer: 28. Basis: house rule.
    pub wide_window_days: i32,
    /// Least visits of a line: 3. Basis: house rule.
    pub least_visits: usize,
    /// Least days that they span: 7. Basis: house rule.
    pub least_span_days: i32,
    /// SD that a rise is held against, % of the limb's volume: 1.2, by 1.96·√2. Basis: house rule.
    pub worse_sd_percent: f64,
    /// Change of weight that asks for measuring again, %: 5. Basis: house rule.
    pub weight_change_percent: f64,
    /// Age of girths over which care is asked for, months: 3. Basis: house rule.
    pub girth_care_months: i32,
    /// Age of girths over which they are taken again, months: 6. Basis: published (Derbyshire JAPC).
    pub girth_again_months: i32,
    /// Difference of position that counts as the same place, cm: 0.1, the tape's step. Basis: house rule.
    pub same_place_cm: f64,
    /// Difference of the hour that is named, hours: 3. Basis: house rule.
    pub hours_apart: f64,
    /// Chance with which the stated number of further visits would decide: 0.8. Basis: house rule.
    pub decide_chance: f64,
}

impl Default for VolumeNumbers {
    fn default() -> Self {
        Self {
            sd_between_percent: 1.2,
            sd_repeats_percent: 0.8,
            settled_below_percent: 2.0,
            window_days: 14,
            window_visits: 4,
            wide_window_days: 28,
            least_visits: 3,
            least_span_days: 7,
            worse_sd_percent: 1.2,
            weight_change_percent: 5.0,
            girth_care_months: 3,
            girth_again_months: 6,
            same_place_cm: 0.1,
            hours_apart: 3.0,
            decide_chance: 0.8,
        }
    }
}

impl VolumeNumbers {
    /// Those of a set of rules.
    pub fn of(rules: &Rules) -> Self {
        let months = |id, otherwise| {
            // Months are read as whole numbers up to 255.
            #[expect(clippy::cast_possible_truncation, reason = "whole, and below 256")]
            let months = rules.number(id).round() as i32;
            if months > 0 { months } else { otherwise }
        };
        let shipped = Self::default();
        let weight = 100.0 * rules.number(NumberId::WeightChange);
        Self {
            weight_change_percent: if weight.is_finite() { weight } else { shipped.weight_change_percent },
            girth_care_months: months(NumberId::GirthAgeCaution, shipped.girth_care_months),
            girth_again_months: months(NumberId::GirthAgeLimit, shipped.girth_again_months),
            ..shipped
        }
    }
}
