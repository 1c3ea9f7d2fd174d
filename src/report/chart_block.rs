//! Owns a chart's part of the report.

use serde::Serialize;

use super::Figure;
use crate::assessment::ChartAssessment;
use crate::garment;
use crate::quantity::Range;
use crate::sizing::{Direction, LengthFit, MeasureFit, MeasureVerdict, Reason, SizeFit, SizeVerdict};

/// One chart against the limb.
#[derive(Clone, Debug, Serialize)]
pub struct Chart {
    /// Its label.
    pub label: String,
    /// What it comes to.
    pub outcome: &'static str,
    /// `size`, `between`, `made-to-measure`, `not-judged`.
    pub verdict: &'static str,
    /// The size picked.
    pub size: Option<String>,
    /// The length variant of that size.
    pub variant: Option<String>,
    /// The nearest size when none holds.
    pub nearest: Option<String>,
    /// Why, in a sentence.
    pub reason: String,
    /// What the chart offers.
    pub offered: Offered,
    /// Every size.
    pub sizes: Vec<Size>,
    /// The sizes that each measure asks for alone.
    pub wanted: Vec<WantedSizes>,
}

/// What a chart offers.
#[derive(Clone, Debug, Serialize)]
pub struct Offered {
    /// The style.
    pub style: Option<String>,
    /// The scheme's id.
    pub scheme: Option<String>,
    /// The class claimed.
    pub class: Option<String>,
    /// The pressure in words.
    pub words: String,
    /// Materials; null = not stated.
    pub contains: Option<Vec<String>>,
    /// Whether it has a hand part; null = not stated.
    pub hand_part: Option<bool>,
    /// Layers.
    pub layers: u32,
    /// The fabric's label.
    pub fabric: Option<String>,
}

/// One size.
#[derive(Clone, Debug, Serialize)]
pub struct Size {
    /// Its label.
    pub size: String,
    /// `inside`, `outside`, `not-judged`.
    pub verdict: &'static str,
    /// Whether its pressure certainly rises; null = not estimated.
    pub reversed: Option<bool>,
    /// Chance that the true girths lie in the ranges.
    pub inside_probability: Option<Figure>,
    /// The girths.
    pub measures: Vec<Measure>,
    /// The lengths.
    pub lengths: Vec<LengthRow>,
    /// In a sentence.
    pub reason: String,
}

/// One girth against one range.
#[derive(Clone, Debug, Serialize)]
pub struct Measure {
    /// The landmark.
    pub measure: &'static str,
    /// The girth, rounded to the chart's step.
    pub girth_cm: Option<Figure>,
    /// The range's low end.
    pub low_cm: Option<Figure>,
    /// The range's high end.
    pub high_cm: Option<Figure>,
    /// Room to the nearer end, negative outside.
    pub margin_cm: Option<Figure>,
    /// `inside`, `edge`, `outside`, `not-judged`.
    pub verdict: &'static str,
    /// `tight` or `loose`.
    pub direction: Option<&'static str>,
    /// The range in words.
    #[serde(skip)]
    pub range_words: String,
    /// The room in words: `1.2 cm too tight`.
    #[serde(skip)]
    pub room_words: String,
}

/// One length against the variants.
#[derive(Clone, Debug, Serialize)]
pub struct LengthRow {
    /// `wrist to axilla`.
    pub between: String,
    /// The length.
    pub length_cm: Option<Figure>,
    /// Whether a variant holds it.
    pub inside: Option<bool>,
    /// The variants' ranges in words.
    #[serde(skip)]
    pub ranges_words: String,
}

/// The sizes that one measure asks for.
#[derive(Clone, Debug, Serialize)]
pub struct WantedSizes {
    /// The landmark.
    pub measure: &'static str,
    /// Sizes that hold it.
    pub sizes: Vec<String>,
}

pub(super) fn chart(one: &ChartAssessment) -> Chart {
    let label = |at: Option<usize>| at.and_then(|at| one.chart.sizes.get(at)).map(|size| size.label.clone());
    let variant =
        one.choice.size.and_then(|at| one.sizing.sizes.get(at)).and_then(|size| size.variant.clone());
    Chart {
        label: one.chart.label.clone(),
        outcome: one.outcome().word(),
        verdict: one.choice.verdict.word(),
        size: label(one.choice.size),
        variant,
        nearest: label(one.choice.nearest),
        reason: reason(one),
        offered: offered(&one.chart),
        sizes: one.sizing.sizes.iter().enumerate().map(|(at, size)| self::size(one, at, size)).collect(),
        wanted: one
            .sizing
            .wanted
            .iter()
            .map(|(landmark, sizes)| WantedSizes { measure: landmark.name(), sizes: sizes.clone() })
            .collect(),
    }
}

fn offered(chart: &garment::Chart) -> Offered {
    let claim = chart.claim.as_ref();
    let words = claim.map_or_else(
        || "no class stated".to_owned(),
        |claim| {
            let band = claim
                .scheme
                .class(&claim.class)
                .map(|band| format!(", {}", band.spoken()))
                .unwrap_or_default();
            format!("class {} of {}{band}", claim.class, claim.scheme.label)
        },
    );
    Offered {
        style: chart.style.clone(),
        scheme: claim.map(|claim| claim.scheme.id.clone()),
        class: claim.map(|claim| claim.class.clone()),
        words,
        contains: chart.contains.clone(),
        hand_part: chart.hand_part,
        layers: chart.layers,
        fabric: chart.fabric.as_ref().map(|fabric| fabric.label.clone()),
    }
}

fn size(chart: &ChartAssessment, at: usize, fit: &SizeFit) -> Size {
    let reversed = chart.estimate_of(at).and_then(|worn| worn.graduation.as_ref().map(|_| worn.removed));
    Size {
        size: fit.label.clone(),
        verdict: fit.verdict.word(),
        reversed,
        inside_probability: fit.inside_probability.and_then(Figure::chance),
        measures: fit.measures.iter().map(measure).collect(),
        lengths: fit.lengths.iter().map(|one| length(one, fit)).collect(),
        reason: size_reason(fit, reversed == Some(true)),
    }
}

fn tenths(value: i64) -> f64 {
    f64::from(i32::try_from(value).unwrap_or_default()) / 100.0
}

fn measure(fit: &MeasureFit) -> Measure {
    Measure {
        measure: fit.landmark.name(),
        girth_cm: fit.girth.and_then(|girth| Figure::cm(girth.cm())),
        low_cm: fit.range.low.and_then(|low| Figure::cm(tenths(low))),
        high_cm: fit.range.high.and_then(|high| Figure::cm(tenths(high))),
        margin_cm: fit.margin.and_then(|margin| Figure::cm(tenths(margin))),
        verdict: fit.verdict.word(),
        direction: fit.direction.map(Direction::word),
        range_words: range_words(fit.range),
        room_words: room_words(fit),
    }
}

fn range_words(range: Range) -> String {
    let text = |end: Option<i64>| {
        end.and_then(|end| Figure::cm(tenths(end))).map(|figure| figure.text).unwrap_or_default()
    };
    match (range.low, range.high) {
        (Some(_), Some(_)) => format!("{}\u{2013}{}", text(range.low), text(range.high)),
        (Some(_), None) => format!("over {}", text(range.low)),
        (None, _) => format!("under {}", text(range.high)),
    }
}

fn room_words(fit: &MeasureFit) -> String {
    let Some(margin) = fit.margin else { return "not measured".to_owned() };
    let amount = crate::finding::cm(margin.abs());
    match (fit.direction, fit.verdict) {
        (Some(direction), _) => format!("{amount} too {}", direction.word()),
        (None, MeasureVerdict::Edge) => format!("{amount} room, edge"),
        (None, _) => format!("{amount} room"),
    }
}

fn length(fit: &LengthFit, size: &SizeFit) -> LengthRow {
    let ranges: Vec<String> = fit
        .ranges
        .iter()
        .map(|(name, range)| match name {
            Some(name) => format!("{name} {}", range_words(*range)),
            None => range_words(*range),
        })
        .collect();
    LengthRow {
        between: fit.between.name(),
        length_cm: fit.length.and_then(|length| Figure::cm(length.cm())),
        inside: fit.length.map(|_| size.length_holds),
        ranges_words: ranges.join(", "),
    }
}

/// `1.2 cm too tight at the axilla, 0.6 cm too loose at the wrist`, worst first.
fn misses(fit: &SizeFit) -> String {
    let mut outside: Vec<&MeasureFit> =
        fit.measures.iter().filter(|one| one.verdict == MeasureVerdict::Outside).collect();
    outside.sort_by_key(|one| one.margin);
    let mut parts: Vec<String> =
        outside.iter().map(|one| format!("{} at the {}", room_words(one), one.landmark.spoken())).collect();
    if !fit.length_holds && fit.lengths.iter().all(|one| one.length.is_some()) {
        for one in &fit.lengths {
            let length = one
                .length
                .and_then(|length| Figure::cm(length.cm()))
                .map(|figure| figure.text)
                .unwrap_or_default();
            parts.push(format!(
                "no variant for {length} cm from {} to {}",
                one.between.from.spoken(),
                one.between.to.spoken()
            ));
        }
    }
    parts.join(", ")
}

fn size_reason(fit: &SizeFit, reversed: bool) -> String {
    match fit.verdict {
        SizeVerdict::NotJudged => "not judged: a measure is missing".to_owned(),
        SizeVerdict::Outside => misses(fit),
        SizeVerdict::Inside if reversed => {
            "every girth in size, but the pressure certainly rises toward the trunk".to_owned()
        }
        SizeVerdict::Inside => match fit.least_room() {
            Some(least) => format!(
                "every girth in size; least room {} at the {}",
                room_words(least).replace(" room", ""),
                least.landmark.spoken()
            ),
            None => "every girth in size".to_owned(),
        },
    }
}

fn reason(one: &ChartAssessment) -> String {
    let label =
        |at: usize| one.chart.sizes.get(at).map_or_else(String::new, |size| format!("size {}", size.label));
    let fit = |at: usize| one.sizing.sizes.get(at);
    let labels = |list: &[usize]| list.iter().map(|at| label(*at)).collect::<Vec<_>>().join(" and ");
    match &one.choice.reason {
        Reason::Holds => one.choice.size.map_or_else(String::new, |at| {
            let least = fit(at).map(|fit| size_reason(fit, false)).unwrap_or_default();
            format!("{}: {least}", label(at))
        }),
        Reason::Alike(list) => match one.choice.size {
            Some(at) => format!("{} hold exactly alike; the chart picks {}", labels(list), label(at)),
            None => format!("{} hold exactly alike; a fitter decides", labels(list)),
        },
        Reason::Gap(small, large) => {
            let picked = one
                .choice
                .size
                .map_or_else(|| "none is picked".to_owned(), |at| format!("the chart picks {}", label(at)));
            let detail: Vec<String> = [*small, *large]
                .iter()
                .filter_map(|at| fit(*at).map(|fit| format!("{} is {}", label(*at), misses(fit))))
                .collect();
            format!(
                "every girth lies between {} and {}; {picked}, a fitter decides ({})",
                label(*small),
                label(*large),
                detail.join("; ")
            )
        }
        Reason::AllReversed(list) => {
            let verb = if list.len() == 1 { "holds" } else { "hold" };
            format!("{} {verb} every girth, but the pressure certainly rises toward the trunk", labels(list))
        }
        Reason::NoneHolds => one.choice.nearest.map_or_else(String::new, |at| {
            format!("no size holds; nearest {}: {}", label(at), fit(at).map(misses).unwrap_or_default())
        }),
        Reason::Missing(list) => format!("not judged: the record lacks {}", list.join(", ")),
        Reason::Postponed => "not judged: girths taken during an infection are not used".to_owned(),
    }
}
