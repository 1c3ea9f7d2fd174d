//! Owns the numbers of the rule, each with what it rests on.

/// The numbers by which a fall is judged.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FallRules {
    /// A rise that counts, as a share of the lower pressure. House rule: a tenth; any rise is a reversal
    /// (Best 2000, published), but tape and ruler do not see less.
    pub rise: f64,
    /// Graded chance from which a rise is certain. House rule.
    pub certain: f64,
    /// Graded chance above which a rise is likely. House rule.
    pub likely: f64,
    /// Graded chance from which a fall carries the remark `possible`. House rule: a rise of 15 % from
    /// mark to mark is remarked in more than 95 of 100.
    pub possible: f64,
    /// Chance left over for all steps together when one pair alone makes a rise certain; it is divided
    /// by the steps. House rule (Bonferroni over the steps).
    pub pair_error: f64,
    /// Most that the trend may be a rise where the garment is called falling. House rule: a level
    /// garment is called falling in less than 3 of 100.
    pub trend: f64,
    /// Share of the reference's pressure that the even fall ends at, against which accidental rises are
    /// counted. House rule, set by simulation.
    pub usual_end: f64,
    /// Odds of the accidental rise that are taken out. House rule, set by simulation.
    pub usual_odds: f64,
    /// Pressure by which a certain rise must exceed a mark below to take a size out, mmHg. House rule.
    pub least_rise_mmhg: f64,
    /// Half the width of the band of exponents after a strip pull. House rule.
    pub strip_band: f64,
    /// Width of the band above which a strip pull or a curve can tell more. Derived: twice `strip_band`.
    pub wide_band: f64,
    /// Chance of a decision below which sensor readings are named. House rule.
    pub least_chance: f64,
    /// How much less likely to decide a cheaper measurement may be. House rule.
    pub cheaper: f64,
    /// Smallest SD of a logarithm. House rule.
    pub least_sd: f64,
    /// Largest SD of a logarithm. House rule.
    pub most_sd: f64,
    /// Least girth over the relaxed one that counts, in shares of the error of their difference. House
    /// rule: no contact is low and unsure, never nothing.
    pub contact: f64,
    /// Errors of the difference from which contact, or its absence, is clear. House rule.
    pub clear: f64,
}

impl Default for FallRules {
    fn default() -> Self {
        Self {
            rise: 0.1,
            certain: 0.95,
            likely: 0.5,
            possible: 0.05,
            pair_error: 0.05,
            trend: 0.02,
            usual_end: 0.6,
            usual_odds: 9.0,
            least_rise_mmhg: 3.0,
            strip_band: 0.1,
            wide_band: 0.2,
            least_chance: 0.2,
            cheaper: 0.1,
            least_sd: 0.005,
            most_sd: 1.0,
            contact: 0.5,
            clear: 2.0,
        }
    }
}
