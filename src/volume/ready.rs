//! Owns whether a limb is ready for a garment.
//!
//! Source: a garment after the volume has settled (published: Lymphoedema Framework 2006); no plateau
//! in figures is published, so the rule is a house rule: a straight line through ln V with its bounds.

use super::{Line, Point, VolumeNumbers};
use crate::quantity::phi;

/// Ready for a garment?
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReadyState {
    /// It has settled.
    Settled,
    /// It still falls: a garment ordered now will be too large.
    NotYet,
    /// It grows.
    Rising,
    /// The visits do not tell.
    CannotTell,
}

impl ReadyState {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Settled => "settled",
            Self::NotYet => "not-yet",
            Self::Rising => "rising",
            Self::CannotTell => "cannot-tell",
        }
    }
}

/// Further visits that would show an unchanged limb as settled, four times in five.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Further {
    /// How many.
    pub visits: u32,
    /// Days between them: as up to now, or closer where that would not do.
    pub every_days: u32,
}

/// What would decide where the visits do not tell; either is none where it would take more than could
/// be asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Decide {
    /// Measured as up to now.
    pub visits: Option<Further>,
    /// With every mark read twice.
    pub with_repeats: Option<Further>,
}

/// Whether one limb is ready.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ready {
    /// The answer.
    pub state: ReadyState,
    /// What it rests on; none where there are too few visits or too few days between them. Then nothing
    /// is said beyond what would decide.
    pub line: Option<Line>,
    /// Visits looked at.
    pub visits: usize,
    /// The answer of the part below the joint alone, where there is a mark.
    pub distal: Option<(ReadyState, Line)>,
    /// Whether the skin pits more than before; then it has not settled.
    pub pitting_increased: bool,
    /// What would decide; none where it is decided.
    pub decide: Option<Decide>,
}

/// The points that count: those of the last days before the newest, by the numbers. Points are in
/// order of their days.
pub fn recent<'p>(points: &'p [Point], numbers: &VolumeNumbers) -> &'p [Point] {
    let newest = points.last().map_or(0.0, |one| one.day);
    let within = |days: f64| {
        let first = points.iter().position(|one| newest - one.day <= days).unwrap_or_default();
        points.get(first..).unwrap_or_default()
    };
    let near = within(numbers.window_days);
    if near.len() < VolumeNumbers::WINDOW_VISITS { within(numbers.wide_window_days) } else { near }
}

/// The line through the recent points; none where they are too few or span too few days.
pub fn recent_line(points: &[Point], numbers: &VolumeNumbers) -> Option<Line> {
    let recent = recent(points, numbers);
    let (first, last) = (recent.first()?, recent.last()?);
    let count = u32::try_from(recent.len()).unwrap_or(u32::MAX);
    let enough = f64::from(count) >= numbers.least_visits && last.day - first.day >= numbers.least_span_days;
    if enough { Line::through(recent) } else { None }
}

/// The answer of a line alone.
pub fn state_of(line: Option<Line>, numbers: &VolumeNumbers) -> ReadyState {
    match line {
        Some(line) if line.high() < 0.0 => ReadyState::Rising,
        Some(line) if line.most() < numbers.settled_below_percent => ReadyState::Settled,
        Some(line) if line.low() > 0.0 => ReadyState::NotYet,
        _ => ReadyState::CannotTell,
    }
}

impl Ready {
    /// Judges the points of a limb and of its distal part (empty where there is none), in order of
    /// their days.
    pub fn judge(
        whole: &[Point],
        distal: &[Point],
        pitting_increased: bool,
        numbers: &VolumeNumbers,
    ) -> Self {
        let line = recent_line(whole, numbers);
        let distal = recent_line(distal, numbers).map(|line| (state_of(Some(line), numbers), line));
        let held = pitting_increased || distal.is_some_and(|(state, _)| state == ReadyState::NotYet);
        let state = match state_of(line, numbers) {
            ReadyState::Settled if held => {
                let falls = line.is_some_and(|line| line.low() > 0.0);
                if falls { ReadyState::NotYet } else { ReadyState::CannotTell }
            }
            other => other,
        };
        let undecided = state == ReadyState::CannotTell;
        Self {
            state,
            line,
            visits: recent(whole, numbers).len(),
            distal,
            pitting_increased,
            decide: undecided.then(|| Decide::of(whole, numbers)),
        }
    }
}

/// Further visits looked ahead for. Basis: house rule.
const MOST_FURTHER: u32 = 20;

/// Days between further visits where the past ones do not say: 4. Basis: house rule.
const EVERY_DAYS: u32 = 4;

impl Decide {
    fn of(points: &[Point], numbers: &VolumeNumbers) -> Self {
        let mut gaps: Vec<f64> = recent(points, numbers)
            .windows(2)
            .filter_map(|pair| match pair {
                [one, other] => Some(other.day - one.day),
                _ => None,
            })
            .filter(|gap| *gap >= 1.0)
            .collect();
        gaps.sort_by(f64::total_cmp);
        let usual = gaps.get(gaps.len() / 2).copied();
        // Gaps are at most the days looked back over.
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "whole, 1 to 28")]
        let usual = usual.map_or(EVERY_DAYS, |gap| gap.round() as u32);
        let once = points.iter().map(|one| one.sd_percent).fold(numbers.sd_repeats_percent, f64::max);
        let twice = numbers.sd_repeats_percent.max(once / std::f64::consts::SQRT_2).min(once);
        let soonest = |sd_percent: f64| {
            (1..=usual).rev().find_map(|every_days| {
                let visits = further(points, every_days, sd_percent, numbers)?;
                Some(Further { visits, every_days })
            })
        };
        Self { visits: soonest(once), with_repeats: soonest(twice) }
    }
}

/// Further visits until an unchanged limb would be called settled with the chance of the numbers.
fn further(points: &[Point], every_days: u32, sd_percent: f64, numbers: &VolumeNumbers) -> Option<u32> {
    let mut all = points.to_vec();
    for count in 1..=MOST_FURTHER {
        let day = all.last().map_or(0.0, |one| one.day) + f64::from(every_days);
        all.push(Point { day, ml: 1.0, sd_percent });
        let Some(line) = recent_line(&all, numbers) else { continue };
        // The chance that a loss scattered around none stays inside what is left beside the bound.
        let room = (numbers.settled_below_percent - super::ONE_SIDED * line.sd) / line.sd;
        if 2.0 * phi(room) - 1.0 >= VolumeNumbers::DECIDE_CHANCE {
            return Some(count);
        }
    }
    None
}
