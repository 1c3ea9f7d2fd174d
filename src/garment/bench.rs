//! Owns a bench test of a fabric: hanging weights, and the tension curve that they give.

use super::Branch;

/// Largest stretch of a fabric, a fraction (house rule: no knit stretches to eleven times its length).
pub(super) const MOST_STRETCH: f64 = 10.0;

/// Largest tension, N/m (house rule: a hundred times what a strong knit pulls).
pub(super) const MOST_TENSION: f64 = 10_000.0;

/// How the piece was hung.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BenchKind {
    /// A strip: the pull is on its width.
    Strip,
    /// A loop or tube over two bars: the pull is on twice its width.
    Loop,
}

impl BenchKind {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Strip => "strip",
            Self::Loop => "loop",
        }
    }
}

/// One pull: a force, and the length that the piece then had.
#[derive(Clone, Copy, Debug)]
pub struct Pull {
    /// N, above 0.
    pub force_n: f64,
    /// Length, in the unit of [`Bench::relaxed_cm`], cm.
    pub length_cm: f64,
    /// Whether it was read while the weights went on or came off.
    pub branch: Branch,
}

/// A bench test.
#[derive(Clone, Debug)]
pub struct Bench {
    /// How the piece was hung.
    pub kind: BenchKind,
    /// Its width, cm: the worn width.
    pub width_cm: f64,
    /// Its length without a pull, cm.
    pub relaxed_cm: f64,
    /// Every pull.
    pub pulls: Vec<Pull>,
}

impl Bench {
    /// Each pull as stretch (a fraction) and tension (N/m).
    ///
    /// Strip: T = F/w. Loop over two bars: T = F/(2w) (derived).
    pub fn points(&self, branch: Branch) -> Vec<(f64, f64)> {
        let sides = match self.kind {
            BenchKind::Strip => 1.0,
            BenchKind::Loop => 2.0,
        };
        let metres = self.width_cm / 100.0;
        self.pulls
            .iter()
            .filter(|pull| pull.branch == branch)
            .map(|pull| (pull.length_cm / self.relaxed_cm - 1.0, pull.force_n / (sides * metres)))
            .collect()
    }
}

/// A curve pooled from a bench test.
#[derive(Clone, Debug)]
pub struct Pooled {
    /// Stretch (a fraction) and tension (N/m), rising, from 0, 0.
    pub curve: Vec<(f64, f64)>,
    /// Relative SD of one pull about the curve, in tension, never below [`LEAST_SPREAD`]; none with too
    /// few repeats.
    pub spread: Option<f64>,
}

/// Least SD that repeats of one strip give: 2 % (house rule: three equal lengths do not make a fabric
/// without error; the weights, the ruler and the next strip differ).
pub const LEAST_SPREAD: f64 = 0.02;

/// Pulls beyond the curve's own points from which their spread is taken as the SD (house rule).
const LEAST_SPARE: usize = 3;

/// Two tensions or stretches closer than this are one (house rule: far below any weight's error).
const SAME: f64 = 1e-9;

/// Weighted least squares under the bond that the values do not fall: pool adjacent violators.
/// Each item is a value and its weight, above 0.
///
/// Source: the usual isotonic regression (derived); checked against `SciPy`.
pub fn isotonic(values: &[(f64, f64)]) -> Vec<f64> {
    let mut blocks: Vec<(f64, f64, usize)> = Vec::new();
    for (value, weight) in values {
        let mut block = (*value, *weight, 1_usize);
        while let Some((before, heavy, many)) = blocks.last().copied() {
            if before <= block.0 {
                break;
            }
            blocks.pop();
            let sum = heavy + block.1;
            block = ((before * heavy + block.0 * block.1) / sum, sum, many + block.2);
        }
        blocks.push(block);
    }
    blocks.iter().flat_map(|(value, _, many)| std::iter::repeat_n(*value, *many)).collect()
}

/// Pools the pulls into one rising curve: the mean stretch of each weight, kept from falling by
/// [`isotonic`]; weights that end on one stretch become one point. None where fewer than two points
/// remain on that branch.
pub fn pool(bench: &Bench, branch: Branch) -> Option<Pooled> {
    let mut all = bench.points(branch);
    all.sort_by(|one, other| one.1.total_cmp(&other.1));
    let mut groups: Vec<(f64, f64, f64)> = Vec::new();
    for (stretch, tension) in &all {
        match groups.last_mut() {
            Some((sum, same, count)) if (tension - *same).abs() <= SAME * tension => {
                *sum += stretch;
                *count += 1.0;
            }
            _ => groups.push((*stretch, *tension, 1.0)),
        }
    }
    let means: Vec<(f64, f64)> = groups.iter().map(|(sum, _, count)| (sum / count, *count)).collect();
    let fitted = isotonic(&means);
    let mut curve: Vec<(f64, f64)> = vec![(0.0, 0.0)];
    let mut heavy = 0.0;
    for (stretch, (_, tension, count)) in fitted.iter().zip(&groups) {
        match curve.last_mut() {
            Some((before, pooled)) if stretch - *before <= SAME && *pooled > 0.0 => {
                *pooled = (*pooled * heavy + tension * count) / (heavy + count);
                heavy += count;
            }
            _ if *stretch > SAME => {
                curve.push((*stretch, *tension));
                heavy = *count;
            }
            _ => {}
        }
    }
    let spare = all.len().saturating_sub(curve.len() - 1);
    (curve.len() >= 3).then(|| Pooled { spread: spread(&curve, &all, spare), curve })
}

/// Relative SD of single pulls about the curve, in tension.
fn spread(curve: &[(f64, f64)], pulls: &[(f64, f64)], spare: usize) -> Option<f64> {
    if spare < LEAST_SPARE {
        return None;
    }
    let at = |stretch: f64| {
        let mut found = 0.0;
        for (number, pair) in curve.windows(2).enumerate() {
            if let [(low, tension), (high, above)] = pair
                && (number == 0 || stretch >= *low)
            {
                found = tension + (above - tension) * (stretch - low) / (high - low);
            }
        }
        found
    };
    let sum: f64 = pulls.iter().map(|(stretch, tension)| (at(*stretch) / tension - 1.0).powi(2)).sum();
    let spare = f64::from(u32::try_from(spare).unwrap_or(u32::MAX));
    Some((sum / spare).sqrt().max(LEAST_SPREAD))
}
