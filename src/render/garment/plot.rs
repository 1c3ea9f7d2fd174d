//! Owns small plots drawn in text: a value across a row of places.

/// One series of a plot: places and values with the sign that marks them.
pub(super) struct Series {
    /// The sign.
    pub sign: char,
    /// Place and value, places rising.
    pub points: Vec<(f64, f64)>,
    /// Whether the points are joined by straight lines.
    pub joined: bool,
}

/// Draws series on `width` columns and `height` rows, values from 0 up. Later series lie on top.
/// The last line names the ends of the places.
pub(super) fn plot(
    series: &[Series],
    width: usize,
    height: usize,
    places: &str,
    values: &str,
) -> Vec<String> {
    let all = || series.iter().flat_map(|one| one.points.iter());
    let first = all().map(|(place, _)| *place).fold(f64::INFINITY, f64::min);
    let last = all().map(|(place, _)| *place).fold(f64::NEG_INFINITY, f64::max);
    let top = crate::render::bar_scale(all().map(|(_, value)| *value));
    if first >= last || width < 16 || height < 2 {
        return Vec::new();
    }
    let margin = 6;
    let columns = width - margin - 1;
    let mut rows = vec![vec![' '; columns]; height];
    for one in series {
        let joined = if one.joined { joined(&one.points, columns) } else { one.points.clone() };
        for (place, value) in &joined {
            let at = step((place - first) / (last - first), columns);
            let up = step(value / top, height);
            if let Some(cell) = rows.get_mut(height - 1 - up).and_then(|row| row.get_mut(at)) {
                *cell = one.sign;
            }
        }
    }
    let mut lines = vec![values.to_owned()];
    for (number, row) in rows.iter().enumerate() {
        let share = 1.0 - share(number, height);
        let label = if number == 0 || number + 1 == height || number == height / 2 {
            format!("{:>4.0} ", top * share)
        } else {
            " ".repeat(5)
        };
        lines.push(format!("{label}│{}", row.iter().collect::<String>()));
    }
    lines.push(format!("{}└{}", " ".repeat(5), "─".repeat(columns)));
    let (from, to) = (format!("{first:.0}"), format!("{last:.0} {places}"));
    let space = columns.saturating_sub(from.chars().count() + to.chars().count());
    lines.push(format!("{}{from}{}{to}", " ".repeat(margin), " ".repeat(space)));
    lines
}

/// A point for every column, straight between the points given.
fn joined(points: &[(f64, f64)], columns: usize) -> Vec<(f64, f64)> {
    let mut all = Vec::new();
    for pair in points.windows(2) {
        let [(from, low), (to, high)] = pair else { continue };
        all.extend((0..=columns).map(|at| {
            let along = share(at, columns + 1);
            (from + (to - from) * along, low + (high - low) * along)
        }));
    }
    all
}

/// A share of 0 to 1 as one of `count` steps.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::cast_precision_loss,
    reason = "a share of at most 120 columns"
)]
fn step(share: f64, count: usize) -> usize {
    (share.clamp(0.0, 1.0) * (count - 1) as f64).round() as usize
}

#[expect(clippy::cast_precision_loss, reason = "at most a few dozen rows")]
fn share(number: usize, count: usize) -> f64 {
    number as f64 / (count - 1) as f64
}
