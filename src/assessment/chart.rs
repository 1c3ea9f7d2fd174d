//! Owns the check of one chart on one limb: sizes, estimates, choice, what holds.

use super::chart_assessment::{ChartAssessment, ShownSize};
use super::chart_findings::{ChartAsked, chart_findings};
use super::{ChartFacts, ChartOutcomes, LimbContext};
use crate::estimate::{EstimateRules, Estimated, OnLimb, estimate, turning, what_decides};
use crate::finding::{Finding, Place};
use crate::garment::{Chart, Outfit, Piece};
use crate::gradient::Grade;
use crate::quantity::Range;
use crate::record::Reading;
use crate::sizing::{
    ChartVerdict, Choice, LengthFit, SizeVerdict, Sizing, SizingInput, choose, judge, nearly, same_again,
};
use crate::words;

/// A chart in its run.
pub(super) struct ChartInRun {
    /// The chart.
    pub chart: Chart,
    /// Its label as printed.
    pub printed: String,
    /// Which part of a set.
    pub part: usize,
    /// Its place within the limb.
    pub place: usize,
    /// Whether another chart of the run, of another part, has the hand or foot part.
    pub part_elsewhere: bool,
}

/// Checks one chart on one limb: what is worked out, and what was found.
pub(super) fn assess_chart(context: &LimbContext<'_>, run: ChartInRun) -> (ChartAssessment, Vec<Finding>) {
    let setting = context.setting;
    let ChartInRun { chart, printed, part, place, part_elsewhere } = run;
    let tape = setting.rules.tape();
    let input = SizingInput::of(context.limb, context.record.positions_from, &chart, &tape);
    let limits = setting.limits();
    let sizing = judge(&input, &chart, limits);
    let offered = candidates(&sizing, &chart, context.postponed, limits);
    let mut shown: Vec<ShownSize> =
        offered.into_iter().filter_map(|size| show(context, &chart, &printed, size)).collect();
    let mut reversed = vec![false; chart.sizes.len()];
    for one in &shown {
        let inside = sizing.sizes.get(one.size).is_some_and(|size| size.verdict == SizeVerdict::Inside);
        let out =
            if inside { one.estimated.is_taken_out() } else { one.estimated.grade() == Some(Grade::Certain) };
        if let Some(flag) = reversed.get_mut(one.size) {
            *flag = out;
        }
    }
    let choice = choose(&sizing, &chart, &reversed, context.postponed, limits);
    // Those that girths may be measured again for were looked at for their rise alone.
    let kept = candidates_shown(&sizing, &choice);
    shown.retain(|one| kept.contains(&one.size));
    for (place, flag) in reversed.iter_mut().enumerate() {
        *flag &= kept.contains(&place);
    }
    let again = match (choice.verdict, choice.size) {
        (ChartVerdict::Size, Some(size)) => same_again(&input, &chart, &reversed, size),
        _ => None,
    };
    let (variant, length_note) = length(&sizing, choice.size);
    let mut assessed = ChartAssessment {
        printed,
        part,
        sizing,
        reversed,
        choice,
        again,
        shown,
        variant,
        length_note,
        outcomes: ChartOutcomes::unsettled(part),
        counted: false,
        chart,
    };
    let own = Place::limb(context.index).chart(place);
    let found = chart_findings(context, &ChartAsked { assessed: &assessed, place: own, part_elsewhere });
    assessed.outcomes = outcomes(context, &assessed, &found);
    (assessed, found)
}

/// The sizes that are estimated: those inside; else a pair between, the nearest, and those that girths may be measured
/// again for.
fn candidates(sizing: &Sizing, chart: &Chart, postponed: bool, limits: crate::sizing::Limits) -> Vec<usize> {
    // Girths that are not used give no pressures.
    if postponed {
        return Vec::new();
    }
    let inside = sizing.places(SizeVerdict::Inside);
    if !inside.is_empty() {
        return inside;
    }
    let choice = choose(sizing, chart, &[], false, limits);
    let near = if choice.between.is_empty() { nearly(sizing, limits) } else { Vec::new() };
    let all = choice.between.into_iter().chain(choice.size).chain(choice.nearest).chain(sizing.nearest());
    let mut all: Vec<usize> = all.chain(near).collect();
    all.sort_unstable();
    all.dedup();
    all
}

/// The sizes whose estimates are shown: those inside; else a pair between, and the nearest.
fn candidates_shown(sizing: &Sizing, choice: &Choice) -> Vec<usize> {
    let inside = sizing.places(SizeVerdict::Inside);
    if !inside.is_empty() {
        return inside;
    }
    choice.between.iter().copied().chain(choice.size).chain(choice.nearest).collect()
}

fn show(context: &LimbContext<'_>, chart: &Chart, printed: &str, size: usize) -> Option<ShownSize> {
    let garment = chart.garment(size)?;
    let outfit = Outfit::of(Piece::Garment(Box::new(garment)));
    let on = OnLimb { limb: context.record.limb, marks: &context.limb.marks };
    let label = chart.sizes.get(size).map(|one| one.label.as_str()).unwrap_or_default();
    let readings = context.readings_of(printed, &chart.label, label);
    let rules = EstimateRules::of(&context.setting.rules);
    let estimated: Estimated = estimate(&on, &outfit, &readings, &rules);
    let decide = what_decides(&on, &outfit, &readings, &estimated, &rules);
    let turns = turning(&on, &outfit, &estimated, &rules);
    Some(ShownSize { size, outfit, estimated, decide, turns })
}

/// The variant's name, and what is known of the length where none serves.
fn length(sizing: &Sizing, size: Option<usize>) -> (Option<String>, Option<String>) {
    let Some(fit) = size.and_then(|size| sizing.sizes.get(size)) else { return (None, None) };
    match &fit.length {
        LengthFit::NotAsked => (None, None),
        LengthFit::Takes { name, .. } => (name.as_ref().map(ToString::to_string), None),
        LengthFit::Unknown(names) => {
            let names: Vec<String> = names.iter().map(|name| name.name().replace('-', " ")).collect();
            (None, Some(format!("The length {} is not known", words::list(&names))))
        }
        LengthFit::None { length, ranges, .. } => (None, Some(no_length(length.tenths(), ranges))),
    }
}

/// `No length for 48.0 cm; the longest is 44.0`.
fn no_length(tenths: i64, ranges: &[Range]) -> String {
    let longest = ranges.iter().filter_map(|range| range.high).max();
    let shortest = ranges.iter().filter_map(|range| range.low).min();
    let end = match (longest, shortest) {
        (Some(high), _) if tenths > high => format!("; the longest is {}", words::cm(high)),
        (_, Some(low)) if tenths < low => format!("; the shortest is {}", words::cm(low)),
        _ => "; it lies between two of them".to_owned(),
    };
    format!("No length for {}{end}", words::cm(tenths))
}

/// Which outcomes hold for a chart.
fn outcomes(context: &LimbContext<'_>, assessed: &ChartAssessment, found: &[Finding]) -> ChartOutcomes {
    let size = assessed.size();
    let shown = assessed.choice.shown();
    let facts = ChartFacts {
        verdict: assessed.choice.verdict,
        picked: size.is_some(),
        length: size.and_then(|size| assessed.sizing.sizes.get(size)).map(|fit| &fit.length),
        judged: size.and_then(|size| assessed.shown(size)).and_then(|one| one.estimated.judged()),
        margin: shown.and_then(|size| assessed.sizing.least_margin(size)).map(|(margin, _)| margin),
        shape: context.made_to_measure,
    };
    let printed = assessed.printed.clone();
    let known = ChartOutcomes::of(&facts, found, assessed.part);
    ChartOutcomes { offer: offer(context, assessed), printed, ..known }
}

/// `size 3 wide, regular, of sleeve chart B`.
fn offer(context: &LimbContext<'_>, assessed: &ChartAssessment) -> String {
    let Some(size) = assessed.size() else { return String::new() };
    let variant = assessed.variant.as_ref().map_or_else(String::new, |variant| format!(", {variant}"));
    let whose = if context.record.is_both() {
        format!("{} {}: ", context.limb.side.name(), context.record.limb.name())
    } else {
        String::new()
    };
    format!("{whose}size {}{variant} of {}", assessed.size_label(size), assessed.printed)
}

impl LimbContext<'_> {
    /// The readings whose `garment` names a size of a chart: `LABEL, size S`.
    pub fn readings_of(&self, printed: &str, label: &str, size: &str) -> Vec<&Reading> {
        let names = [format!("{printed}, size {size}"), format!("{label}, size {size}")];
        self.limb
            .readings
            .iter()
            .filter(|one| match &one.garment {
                Some(garment) => names.contains(&garment.text),
                None => self.only_garment,
            })
            .collect()
    }
}
