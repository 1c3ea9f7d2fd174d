//! Owns which sizes take each case of a caseload, counted: what `cover` is worked out from, in constant memory.

use std::collections::BTreeMap;

use super::case::Case;
use super::prepared::{Prepared, Scratch};
use crate::anatomy::Landmark;
use crate::garment::Chart;
use crate::gradient::Grade;
use crate::sizing::ChartVerdict;

/// How a case is missed: the measure that misses most at the nearest size, and to which side.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Missed {
    /// The measure.
    pub landmark: Landmark,
    /// Whether the limb is too thick there (the garment too tight), else too thin.
    pub tight: bool,
}

/// Counts over one caseload of one chart or several.
#[derive(Clone, Debug, Default)]
pub struct Coverage {
    /// Cases read.
    pub cases: u64,
    /// Cases that no chart serves and for which a girth is missing that a chart asks for.
    pub not_judged: u64,
    /// Cases for which a girth is missing that this chart asks for, by chart.
    lacking: BTreeMap<usize, u64>,
    /// Cases by the set of sizes that take them and that no certain rise takes out; sizes of all charts are numbered
    /// through.
    sets: BTreeMap<Vec<u16>, u64>,
    /// Cases for which a size is the one chosen, by the number of the size.
    chosen: BTreeMap<u16, u64>,
    /// The same where the fall is judged and known to fall.
    falls: BTreeMap<u16, u64>,
    /// Cases that a chart misses, by chart and how.
    missed: BTreeMap<(usize, Missed), u64>,
    /// Cases whose girths a size takes and that no size serves, since each that takes them certainly rises, by chart.
    risen: BTreeMap<usize, u64>,
    /// Cases that a chart serves, by chart.
    served: BTreeMap<usize, u64>,
    /// Cases that a chart's size serves with a fall known to fall, by chart.
    served_falls: BTreeMap<usize, u64>,
    /// Cases that at least one chart serves.
    pub served_by_any: u64,
}

/// One size of a caseload's charts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SizeOf {
    /// The chart.
    pub chart: usize,
    /// The size within it.
    pub size: usize,
}

/// A step of a stock: a size, and the share served with it and those before.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stocked {
    /// The size.
    pub size: SizeOf,
    /// Cases that it adds.
    pub adds: u64,
    /// Cases served so far.
    pub so_far: u64,
}

impl Coverage {
    /// Counts one case against all charts; `known_fall` asks for the whole fall of the size chosen.
    pub fn count(&mut self, case: &Case, charts: &[Prepared], known_fall: bool, scratch: &mut Scratch) {
        self.cases += 1;
        let mut set: Vec<u16> = Vec::new();
        let mut base = 0;
        let (mut any, mut judged) = (false, true);
        for (number, prepared) in charts.iter().enumerate() {
            let sized = prepared.size(case, scratch);
            let of = |size: usize| u16::try_from(base + size).unwrap_or(u16::MAX);
            match sized.verdict {
                // Two that take it alike are both of use; the fitter picks.
                ChartVerdict::Size | ChartVerdict::Between => {
                    set.extend(prepared.upright(case, scratch).into_iter().map(of));
                }
                ChartVerdict::NotJudged => {
                    judged = false;
                    *self.lacking.entry(number).or_default() += 1;
                }
                ChartVerdict::MeasureAgain | ChartVerdict::MadeToMeasure => {}
            }
            let serves = set.iter().any(|size| usize::from(*size) >= base);
            if serves {
                any = true;
                *self.served.entry(number).or_default() += 1;
                if let Some(size) = sized.size {
                    *self.chosen.entry(of(size)).or_default() += 1;
                    let falls = known_fall
                        && prepared.estimate(size, case).is_some_and(|one| {
                            one.judged() == Some(true)
                                && matches!(one.grade(), Some(Grade::None | Grade::Possible))
                        });
                    if falls {
                        *self.falls.entry(of(size)).or_default() += 1;
                        *self.served_falls.entry(number).or_default() += 1;
                    }
                }
            } else if let Some(missed) = prepared.missed(case) {
                *self.missed.entry((number, missed)).or_default() += 1;
            } else if sized.verdict != ChartVerdict::NotJudged {
                *self.risen.entry(number).or_default() += 1;
            }
            base += prepared.chart.sizes.len();
        }
        self.not_judged += u64::from(!judged && !any);
        self.served_by_any += u64::from(any);
        *self.sets.entry(set).or_default() += 1;
    }

    /// Adds the counts of another part of the caseload.
    pub fn add(&mut self, other: &Self) {
        fn sum<K: Ord + Clone>(into: &mut BTreeMap<K, u64>, from: &BTreeMap<K, u64>) {
            for (key, count) in from {
                *into.entry(key.clone()).or_default() += count;
            }
        }
        self.cases += other.cases;
        self.not_judged += other.not_judged;
        self.served_by_any += other.served_by_any;
        sum(&mut self.lacking, &other.lacking);
        sum(&mut self.risen, &other.risen);
        sum(&mut self.sets, &other.sets);
        sum(&mut self.chosen, &other.chosen);
        sum(&mut self.falls, &other.falls);
        sum(&mut self.missed, &other.missed);
        sum(&mut self.served, &other.served);
        sum(&mut self.served_falls, &other.served_falls);
    }

    /// Cases for which a size is the one chosen.
    pub fn chosen(&self, size: SizeOf, charts: &[&Chart]) -> u64 {
        number(size, charts).and_then(|number| self.chosen.get(&number)).copied().unwrap_or_default()
    }

    /// The same where the fall is known to fall.
    pub fn falls(&self, size: SizeOf, charts: &[&Chart]) -> u64 {
        number(size, charts).and_then(|number| self.falls.get(&number)).copied().unwrap_or_default()
    }

    /// Cases that a chart serves.
    pub fn served(&self, chart: usize) -> u64 {
        self.served.get(&chart).copied().unwrap_or_default()
    }

    /// Cases for which a girth is missing that a chart asks for.
    pub fn lacking(&self, chart: usize) -> u64 {
        self.lacking.get(&chart).copied().unwrap_or_default()
    }

    /// Cases whose girths a size of a chart takes and that it does not serve, since each that takes them certainly rises.
    pub fn risen(&self, chart: usize) -> u64 {
        self.risen.get(&chart).copied().unwrap_or_default()
    }

    /// Cases that a chart serves with a fall known to fall.
    pub fn served_falls(&self, chart: usize) -> u64 {
        self.served_falls.get(&chart).copied().unwrap_or_default()
    }

    /// Cases that a chart misses, by how, most first.
    pub fn missed(&self, chart: usize) -> Vec<(Missed, u64)> {
        let own = self.missed.iter().filter(|((of, _), _)| *of == chart);
        let mut all: Vec<(Missed, u64)> = own.map(|((_, missed), count)| (*missed, *count)).collect();
        all.sort_by_key(|(missed, count)| (std::cmp::Reverse(*count), *missed));
        all
    }

    /// Cases that only this size takes: what dropping it costs.
    pub fn only(&self, size: SizeOf, charts: &[&Chart]) -> u64 {
        let Some(number) = number(size, charts) else { return 0 };
        self.sets.get([number].as_slice()).copied().unwrap_or_default()
    }

    /// Cases that sizes of this chart alone take: what dropping the chart costs.
    pub fn only_chart(&self, chart: usize, charts: &[&Chart]) -> u64 {
        let before: usize = charts.iter().take(chart).map(|one| one.sizes.len()).sum();
        let own = before..before + charts.get(chart).map_or(0, |one| one.sizes.len());
        let alone =
            |set: &&Vec<u16>| !set.is_empty() && set.iter().all(|size| own.contains(&usize::from(*size)));
        self.sets.iter().filter(|(set, _)| alone(set)).map(|(_, count)| count).sum()
    }

    /// Which sizes to stock first: at each step the one that serves most more, until none adds any.
    pub fn stock(&self, charts: &[&Chart]) -> Vec<Stocked> {
        let sizes = sizes(charts);
        let mut left: Vec<(&[u16], u64)> =
            self.sets.iter().map(|(set, count)| (set.as_slice(), *count)).collect();
        let mut stocked: Vec<Stocked> = Vec::new();
        let mut so_far = 0;
        loop {
            let mut adds = vec![0_u64; sizes.len()];
            for (set, count) in &left {
                for size in *set {
                    if let Some(slot) = adds.get_mut(usize::from(*size)) {
                        *slot += count;
                    }
                }
            }
            let best =
                adds.iter().enumerate().max_by_key(|(place, adds)| (**adds, std::cmp::Reverse(*place)));
            let Some((place, adds)) = best.filter(|(_, adds)| **adds > 0) else { return stocked };
            let Some(size) = sizes.get(place) else { return stocked };
            so_far += adds;
            stocked.push(Stocked { size: *size, adds: *adds, so_far });
            left.retain(|(set, _)| !set.iter().any(|one| usize::from(*one) == place));
        }
    }
}

/// Every size of the charts, numbered through.
pub fn sizes(charts: &[&Chart]) -> Vec<SizeOf> {
    let of = |(chart, one): (usize, &&Chart)| (0..one.sizes.len()).map(move |size| SizeOf { chart, size });
    charts.iter().enumerate().flat_map(of).collect()
}

fn number(size: SizeOf, charts: &[&Chart]) -> Option<u16> {
    let before: usize = charts.iter().take(size.chart).map(|chart| chart.sizes.len()).sum();
    u16::try_from(before + size.size).ok()
}
