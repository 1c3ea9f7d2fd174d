//! Owns the bar of one estimate with its uncertainty.

/// The end of the scale: the highest value, up to the next ten, at least 10 mmHg.
pub fn bar_scale(values: impl IntoIterator<Item = f64>) -> f64 {
    let highest = values.into_iter().fold(0.0_f64, f64::max);
    ((highest / 10.0).ceil() * 10.0).max(10.0)
}

/// A bar of `width` columns from 0 to `scale` mmHg: `━` the 95 % range, `●` the estimate, `[` and
/// `]` the ends of the claimed band, `·` the rest.
pub fn pressure_bar(
    width: usize,
    scale: f64,
    range: (f64, f64),
    estimate: f64,
    band: Option<(f64, f64)>,
) -> String {
    let last = width.saturating_sub(1);
    let column = |mmhg: f64| {
        let share = (mmhg / scale).clamp(0.0, 1.0);
        // A share of a width of at most 120 columns.
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            clippy::cast_precision_loss,
            reason = "0 to 120"
        )]
        let at = (share * last as f64).round() as usize;
        at
    };
    let (low, high, dot) = (column(range.0), column(range.1), column(estimate));
    (0..width)
        .map(|at| {
            if at == dot {
                '●'
            } else if band.is_some_and(|(from, _)| column(from) == at) {
                '['
            } else if band.is_some_and(|(_, to)| column(to) == at) {
                ']'
            } else if (low..=high).contains(&at) {
                '━'
            } else {
                '·'
            }
        })
        .collect()
}
