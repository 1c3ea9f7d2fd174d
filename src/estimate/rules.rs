//! Owns the numbers of the estimate.

use crate::gradient::{Band, FallRules};
use crate::rules::{NumberId, Rules, TapeSd};

/// The numbers of the estimate, taken from the rules.
#[derive(Clone, Copy, Debug)]
pub struct EstimateRules {
    /// The error of the tape. Derived (Tánori-Tapia 2020, Healthcare 8:285, published).
    pub tape: TapeSd,
    /// SD of a relaxed girth measured once, cm. House rule.
    pub relaxed_sd_cm: f64,
    /// Relative SD of a fabric's tension. House rule.
    pub tension_sd: f64,
    /// SD of one sensor reading, mmHg. House rule.
    pub reading_sd_mmhg: f64,
    /// SD of one reading in the hollow beside the ankle bone, mmHg. House rule.
    pub hollow_sd_mmhg: f64,
    /// SD between wearers and against a sensor, mmHg. Published (Suehiro; Partsch 2006): about 4.1 a point.
    pub worn_sd_mmhg: f64,
    /// Several pieces, share of their sum that is felt, lowest. Published.
    pub share_low: f64,
    /// Highest: the plain sum. Derived.
    pub share_high: f64,
    /// Chance from which a residual pressure outside its limits is a caution. House rule.
    pub ratio_chance: f64,
    /// Exponents of the tension of an untested knit. House rule.
    pub band: Band,
    /// The rule of the fall.
    pub fall: FallRules,
}

impl Default for EstimateRules {
    fn default() -> Self {
        Self {
            tape: TapeSd::everywhere(0.35),
            relaxed_sd_cm: 0.3,
            tension_sd: 0.05,
            reading_sd_mmhg: 2.5,
            hollow_sd_mmhg: 5.0,
            worn_sd_mmhg: 4.1,
            share_low: 0.83,
            share_high: 1.0,
            ratio_chance: 0.95,
            band: Band::UNTESTED,
            fall: FallRules::default(),
        }
    }
}

impl EstimateRules {
    /// The numbers of a rule set.
    pub fn of(rules: &Rules) -> Self {
        let number = |id| rules.number(id);
        Self {
            tape: rules.tape(),
            relaxed_sd_cm: number(NumberId::RelaxedSd),
            tension_sd: number(NumberId::TensionSd),
            reading_sd_mmhg: number(NumberId::ReadingSd),
            hollow_sd_mmhg: number(NumberId::HollowSd),
            worn_sd_mmhg: number(NumberId::WornSd),
            share_low: number(NumberId::LayersLow),
            share_high: number(NumberId::LayersHigh),
            ratio_chance: number(NumberId::RatioChance),
            band: Band {
                low: number(NumberId::StretchExponentLow),
                high: number(NumberId::StretchExponentHigh),
            },
            fall: FallRules {
                rise: number(NumberId::RiseStep),
                certain: number(NumberId::RiseCertain),
                likely: number(NumberId::RiseLikely),
                possible: number(NumberId::RisePossible),
                pair_error: number(NumberId::PairBeyondChance),
                trend: number(NumberId::FallSure),
                usual_end: 1.0 - number(NumberId::EvenFall),
                usual_odds: number(NumberId::GradedOdds),
                least_rise_mmhg: number(NumberId::RiseRemoves),
                strip_band: number(NumberId::StripExponent),
                wide_band: 2.0 * number(NumberId::StripExponent),
                least_chance: number(NumberId::DecideLeast),
                cheaper: number(NumberId::DecideCheaper),
                ..FallRules::default()
            },
        }
    }
}
