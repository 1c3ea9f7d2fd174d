//! Owns which outcomes hold for a chart, and which chart of a part counts: with a record or without.
//!
//! Source: the order of the outcomes and what brings them are house rules.

use super::{Outcome, Rank, Standing};
use crate::finding::{self, Finding};
use crate::rules::Severity;
use crate::sizing::{ChartVerdict, LengthFit};

/// What a chart brings to the decision.
#[derive(Clone, Debug)]
pub struct ChartOutcomes {
    /// Which part of a set.
    pub part: usize,
    /// Every outcome that holds, worst first; never empty.
    pub holds: Vec<Outcome>,
    /// Whether a girth only has to be taped again, or a length is unknown, with a size at hand.
    pub nearly: bool,
    /// Whether it is the shape of the limb alone that asks for made to measure. That speaks against every chart alike, so
    /// it ranks none: else a chart would come first for what is now known of the limb.
    pub by_shape: bool,
    /// The least margin of the size that is shown, tenths of a millimetre, negative outside.
    pub margin: Option<i64>,
    /// What to say of a trial fitting: `size 3 wide, regular, sleeve chart B`; empty where none is said.
    pub offer: String,
    /// The chart as printed.
    pub printed: String,
}

/// What the charts bring on one limb.
#[derive(Clone, Debug, Default)]
pub struct LimbOutcomes {
    /// How the limb is told from the other of the report, `right arm`; empty where it is the only one.
    pub name: String,
    /// Its charts, in their order.
    pub charts: Vec<ChartOutcomes>,
}

/// What the outcomes of a chart follow from, beside its findings.
#[derive(Clone, Copy, Debug)]
pub struct ChartFacts<'a> {
    /// What sizing says of it.
    pub verdict: ChartVerdict,
    /// Whether a size is picked.
    pub picked: bool,
    /// Its length; none where no size is picked.
    pub length: Option<&'a LengthFit>,
    /// Whether its fall is judged; none where it has none, or no size is picked.
    pub judged: Option<bool>,
    /// The least margin of the size that is shown, tenths of a millimetre.
    pub margin: Option<i64>,
    /// Whether the shape of the limb asks for made to measure.
    pub shape: bool,
}

impl ChartOutcomes {
    /// What holds before anything is known.
    pub(super) fn unsettled(part: usize) -> Self {
        Self {
            part,
            holds: Vec::new(),
            nearly: false,
            by_shape: false,
            margin: None,
            offer: String::new(),
            printed: String::new(),
        }
    }

    /// What holds, from the facts and the chart's own findings.
    pub fn of(facts: &ChartFacts<'_>, found: &[Finding], part: usize) -> Self {
        let mut holds = Vec::new();
        if found.iter().any(|one| one.severity == Severity::Stop) {
            holds.push(Outcome::Stop);
        }
        let cleared = || found.iter().any(|one| one.id.is(&finding::between::ENTRY) && one.is_cleared());
        let between_open = facts.verdict == ChartVerdict::Between && (!facts.picked || !cleared());
        if between_open || found.iter().any(Finding::must_be_cleared) {
            holds.push(Outcome::Refer);
        }
        let length_unknown = matches!(facts.length, Some(LengthFit::Unknown(_)));
        if length_unknown || matches!(facts.verdict, ChartVerdict::MeasureAgain | ChartVerdict::NotJudged) {
            holds.push(Outcome::Incomplete);
        }
        let no_length = matches!(facts.length, Some(LengthFit::None { .. }));
        let no_size = no_length || facts.verdict == ChartVerdict::MadeToMeasure;
        if no_size || facts.shape {
            holds.push(Outcome::MadeToMeasure);
        }
        if facts.judged == Some(false) && facts.verdict == ChartVerdict::Size {
            holds.push(Outcome::FallUnknown);
        }
        if holds.is_empty() {
            holds.push(Outcome::TrialFitting);
        }
        holds.sort_unstable();
        let nearly = length_unknown || facts.verdict == ChartVerdict::MeasureAgain;
        Self {
            holds,
            nearly,
            by_shape: facts.shape && !no_size,
            margin: facts.margin,
            ..Self::unsettled(part)
        }
    }

    /// The worst.
    pub fn outcome(&self) -> Outcome {
        self.holds.first().copied().unwrap_or(Outcome::TrialFitting)
    }

    /// How it ranks among the charts of its part, as the one at `place`.
    pub fn rank(&self, place: usize) -> Rank {
        let own = self.holds.iter().filter(|one| !(self.by_shape && **one == Outcome::MadeToMeasure));
        let holds = own.map(|outcome| Standing::of(*outcome, self.nearly));
        Rank::of(holds, self.margin, place)
    }
}

impl LimbOutcomes {
    /// The chart that counts of each part.
    pub(super) fn counted(&self) -> impl Iterator<Item = &ChartOutcomes> {
        counted(&self.charts).into_iter().filter_map(|at| self.charts.get(at))
    }
}

/// The charts by their places: part by part, in each the best first.
pub fn ranking(charts: &[ChartOutcomes]) -> Vec<usize> {
    let mut all: Vec<(usize, &ChartOutcomes)> = charts.iter().enumerate().collect();
    all.sort_by_key(|(place, chart)| (chart.part, chart.rank(*place)));
    all.into_iter().map(|(place, _)| place).collect()
}

/// For each part of a set, in order, the chart that counts: the best.
pub fn counted(charts: &[ChartOutcomes]) -> Vec<usize> {
    let mut best = ranking(charts);
    best.dedup_by_key(|place| charts.get(*place).map(|chart| chart.part));
    best
}
