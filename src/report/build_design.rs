//! Owns the making of the block of sizes placed anew.

use super::cover_report::Share;
use super::{DesignBlock, DesignRange, DesignSize, Figure};
use crate::caseload::{Designed, Girths, NoRelaxed, USUAL_FALL, relaxed_girths};
use crate::estimate::EstimateRules;
use crate::garment::Chart;
use crate::words;

impl DesignBlock {
    /// Makes the block: sizes placed for the girths read, in the shape of a chart that is printed as `like`.
    pub fn of(
        found: &Designed,
        read: &Girths,
        chart: &Chart,
        like: &str,
        widths: &[i64],
        rules: &EstimateRules,
    ) -> Self {
        let number = |count: usize| u64::try_from(count).unwrap_or_default();
        let all = number(read.limbs.len());
        let marks = chart.measures();
        let ends = |lows: &[i64]| -> Vec<(i64, i64)> {
            lows.iter().zip(widths).map(|(low, width)| (*low, low + width)).collect()
        };
        let takes = |lows: &[i64], limb: &[i64]| {
            limb.iter().zip(ends(lows)).all(|(girth, (low, high))| (low..=high).contains(girth))
        };
        let relaxed: Vec<Result<_, NoRelaxed>> =
            found.sizes.iter().map(|lows| relaxed_girths(chart, &ends(lows), rules)).collect();
        let why = relaxed.iter().find_map(|one| one.as_ref().err());
        let sizes = found.sizes.iter().zip(&relaxed).enumerate().map(|(at, (lows, relaxed))| {
            let girths = marks.iter().zip(ends(lows)).map(|(landmark, (low, high))| DesignRange {
                landmark: *landmark,
                low_cm: Figure::cm(low),
                high_cm: Figure::cm(high),
                relaxed_cm: relaxed.as_ref().ok().and_then(|all| {
                    let own = all.iter().find(|(mark, _)| mark == landmark)?;
                    Some(Figure::cm(own.1.tenths()))
                }),
            });
            let others = || found.sizes.iter().enumerate().filter(move |(other, _)| *other != at);
            let alone = read
                .limbs
                .iter()
                .filter(|limb| takes(lows, limb) && !others().any(|(_, other)| takes(other, limb)));
            DesignSize { only: Share::of(number(alone.count()), all), girths: girths.collect() }
        });
        let claim = chart.claim.as_ref();
        let says = claim.map(|claim| {
            let shares = claim.scheme.graduation.iter().any(|one| one.class == claim.class);
            let fall = if shares {
                "falling as its limits ask".to_owned()
            } else {
                format!("falling to {}", words::percent(USUAL_FALL))
            };
            let fabric = chart.fabric.as_ref().map(|fabric| fabric.label.to_string()).unwrap_or_default();
            format!("class {} of {}, {fall}, in {fabric}", claim.class, claim.scheme.label)
        });
        Self {
            like: like.to_owned(),
            judged: read.judged,
            placed_for: all,
            sizes: sizes.collect(),
            served: Share::of(number(found.served), all),
            bound: Share::of(number(found.bound), all),
            is_best: found.served == found.bound,
            relaxed_for: says.filter(|_| relaxed.iter().any(Result::is_ok)),
            no_relaxed: why.map(|why| said(why).to_owned()),
        }
    }
}

fn said(why: &NoRelaxed) -> &'static str {
    match why {
        NoRelaxed::NoFabric => "the chart names no fabric with a curve",
        NoRelaxed::NoClass => "the chart claims no class",
        NoRelaxed::NoTarget => {
            "the measures do not reach from the reference to a mark above it, or the class has no middle"
        }
        NoRelaxed::TooWeak => {
            "for a size without them the fabric does not press so within its tested stretch"
        }
    }
}
