//! Owns the comparison of every size with every measure.

use super::{Direction, LengthFit, MeasureFit, MeasureVerdict, SizeFit, SizeVerdict, Sizing};
use crate::anatomy::Landmark;
use crate::garment::{Chart, Size};
use crate::quantity::{Girth, Range, phi};
use crate::record::Record;
use crate::rules::{NumberId, Rules};

/// Holds every size of `chart` against the record.
pub fn judge(record: &Record, chart: &Chart, rules: &Rules) -> Sizing {
    let sizes: Vec<SizeFit> = chart.sizes.iter().map(|size| size_fit(record, chart, size, rules)).collect();
    let wanted = chart.measures().into_iter().map(|landmark| (landmark, wanted(&sizes, landmark))).collect();
    let girths = chart.measures().into_iter().filter(|landmark| record.mark(*landmark).is_none());
    let lengths = chart.lengths().into_iter().filter(|between| !record.lengths.contains_key(between));
    let missing =
        girths
            .map(|landmark| format!("the girth at the {}", landmark.spoken()))
            .chain(lengths.map(|between| {
                format!("the length from {} to {}", between.from.spoken(), between.to.spoken())
            }))
            .collect();
    Sizing { sizes, wanted, missing }
}

fn wanted(sizes: &[SizeFit], landmark: Landmark) -> Vec<String> {
    let holds = |size: &&SizeFit| {
        size.measures.iter().any(|one| {
            one.landmark == landmark && matches!(one.verdict, MeasureVerdict::Inside | MeasureVerdict::Edge)
        })
    };
    sizes.iter().filter(holds).map(|size| size.label.clone()).collect()
}

fn size_fit(record: &Record, chart: &Chart, size: &Size, rules: &Rules) -> SizeFit {
    let edge_tenths = rules.number(NumberId::EdgeMargin) * 100.0;
    let mut chance = Some(1.0);
    let mut measures = Vec::new();
    for (landmark, range) in &size.girths {
        let mark = record.mark(*landmark);
        let girth = mark.map(|mark| mark.girth().rounded_to(chart.printed_step));
        chance = chance
            .zip(girth.zip(mark))
            .map(|(chance, (girth, mark))| chance * inside_chance(girth, *range, mark.sd_cm()));
        measures.push(measure_fit(*landmark, girth, *range, edge_tenths));
    }
    let (lengths, variant, length_holds) = length_fit(record, chart, size);
    let missing = measures.iter().any(|one| one.verdict == MeasureVerdict::NotJudged)
        || lengths.iter().any(|one| one.length.is_none());
    let outside = measures.iter().any(|one| one.verdict == MeasureVerdict::Outside);
    let verdict = match (missing, outside || !length_holds) {
        (true, _) => SizeVerdict::NotJudged,
        (false, true) => SizeVerdict::Outside,
        (false, false) => SizeVerdict::Inside,
    };
    SizeFit {
        label: size.label.clone(),
        verdict,
        measures,
        lengths,
        variant,
        length_holds,
        inside_probability: chance,
    }
}

/// Chance that the true girth lies in the range, given the one read: Φ((high − C)/s) − Φ((low − C)/s).
fn inside_chance(girth: Girth, range: Range, sd_cm: f64) -> f64 {
    let cm = |tenths: i64| f64::from(i32::try_from(tenths).unwrap_or(i32::MAX)) / 100.0;
    let upto = range.high.map_or(1.0, |high| phi((cm(high) - girth.cm()) / sd_cm));
    let from = range.low.map_or(0.0, |low| phi((cm(low) - girth.cm()) / sd_cm));
    upto - from
}

fn measure_fit(landmark: Landmark, girth: Option<Girth>, range: Range, edge_tenths: f64) -> MeasureFit {
    let Some(girth) = girth else {
        return MeasureFit {
            landmark,
            girth: None,
            range,
            margin: None,
            verdict: MeasureVerdict::NotJudged,
            direction: None,
        };
    };
    let margin = range.margin(girth.tenths());
    let direction = if range.high.is_some_and(|high| girth.tenths() > high) {
        Some(Direction::Tight)
    } else if range.low.is_some_and(|low| girth.tenths() < low) {
        Some(Direction::Loose)
    } else {
        None
    };
    let room = f64::from(i32::try_from(margin).unwrap_or(i32::MAX));
    let verdict = match direction {
        Some(_) => MeasureVerdict::Outside,
        None if room < edge_tenths => MeasureVerdict::Edge,
        None => MeasureVerdict::Inside,
    };
    MeasureFit { landmark, girth: Some(girth), range, margin: Some(margin), verdict, direction }
}

fn length_fit(record: &Record, chart: &Chart, size: &Size) -> (Vec<LengthFit>, Option<String>, bool) {
    let step = chart.printed_step;
    let mut fits: Vec<LengthFit> = Vec::new();
    for variant in &size.variants {
        for (between, range) in &variant.lengths {
            let entry = (variant.name.clone(), *range);
            match fits.iter_mut().find(|fit| fit.between == *between) {
                Some(fit) => fit.ranges.push(entry),
                None => fits.push(LengthFit {
                    between: *between,
                    length: record.lengths.get(between).map(|length| length.rounded_to(step)),
                    ranges: vec![entry],
                }),
            }
        }
    }
    let holds = |between, range: Range| {
        record.lengths.get(between).is_some_and(|length| range.holds(length.rounded_to(step).tenths()))
    };
    let found = size
        .variants
        .iter()
        .find(|variant| variant.lengths.iter().all(|(between, range)| holds(between, *range)));
    let length_holds = size.variants.is_empty() || found.is_some();
    (fits, found.and_then(|variant| variant.name.clone()), length_holds)
}
