//! Why the same size again is said too low on a chart narrow in every girth.

use std::array::from_fn;

use tapeline::sizing::{Limits, choose, judge, same_again};

use crate::sizing::{ARM_COV, ARM_MEAN, Dice, TAPE, arm, lower, stepped, taped};

type Three = [f64; 3];
type Square = [Three; 3];

fn times(a: Square, b: Square) -> Square {
    from_fn(|row| from_fn(|column| (0..3).map(|k| a[row][k] * b[k][column]).sum()))
}

fn inverse(m: Square) -> Square {
    let minor = |r: usize, c: usize| {
        let (r1, r2, c1, c2) = ((r + 1) % 3, (r + 2) % 3, (c + 1) % 3, (c + 2) % 3);
        m[r1][c1] * m[r2][c2] - m[r1][c2] * m[r2][c1]
    };
    let whole: f64 = (0..3).map(|c| m[0][c] * minor(0, c)).sum();
    from_fn(|row| from_fn(|column| minor(column, row) / whole))
}

/// The arm behind one measurement, to one who knows how girths of arms follow each other: mean and lower root of
/// the covariance of the logarithms (derived: a normal value seen with a normal error).
fn behind(seen: Three) -> (Three, Square) {
    let error = seen.map(|cm| (TAPE / cm).powi(2));
    let sum: Square =
        from_fn(|row| from_fn(|column| ARM_COV[row][column] + if row == column { error[row] } else { 0.0 }));
    let gain = times(ARM_COV, inverse(sum));
    let off: Three = from_fn(|at| seen[at].ln() - ARM_MEAN[at]);
    let mean = from_fn(|row| ARM_MEAN[row] + (0..3).map(|k| gain[row][k] * off[k]).sum::<f64>());
    let left = from_fn(|row| from_fn(|column| gain[row][column] * error[column]));
    (mean, lower(left))
}

// Source: simulated arms of 507 adults (Heinz et al. 2003), a chart narrow in every girth (2, 3, 4 cm). From the
// record alone each girth is as likely above as below what the tape said. To one who knows how girths of arms
// follow each other it is not: a girth out of step with the others was more likely misread, and the arm behind
// it lies nearer the middle of the size that all of them ask for. With that knowledge, and nothing else changed,
// the chance said is the chance seen; without it, it is too low. No one limb's record holds that knowledge.
#[test]
fn on_narrow_charts_the_other_girths_know_more() {
    const ARMS: u32 = 30_000;
    const AGAIN: u32 = 12;
    let chart = stepped([2.0, 3.0, 4.0], [2.0, 3.0, 4.0]);
    let mut dice = Dice(20_260_314);
    let pick = |input: &_| {
        choose(&judge(input, &chart, Limits::default()), &chart, &[], false, Limits::default()).size
    };
    let (mut count, mut said, mut known, mut seen) = (0.0, 0.0, 0.0, 0.0);
    for _ in 0..ARMS {
        let arm = arm(&mut dice);
        let first = taped(arm, &mut dice);
        let second = taped(arm, &mut dice);
        let Some(size) = pick(&first) else { continue };
        let chance = same_again(&first, &chart, &[], size).unwrap().chance;
        if (chance - 0.6).abs() > 0.05 {
            continue;
        }
        let girths: Vec<f64> = first.girths.values().map(|known| known.girth.cm()).collect();
        let (mean, root) = behind([girths[0], girths[1], girths[2]]);
        let mut same = 0_u32;
        for _ in 0..AGAIN {
            let z = [dice.normal(), dice.normal(), dice.normal()];
            let row = |at: usize| (mean[at] + (0..3).map(|k| root[at][k] * z[k]).sum::<f64>()).exp();
            let again = taped([row(0), row(1), row(2)], &mut dice);
            same += u32::from(pick(&again) == Some(size));
        }
        count += 1.0;
        said += chance;
        known += f64::from(same) / f64::from(AGAIN);
        seen += f64::from(u8::from(pick(&second) == Some(size)));
    }
    let (said, known, seen) = (said / count, known / count, seen / count);
    println!("said {said:.3}, by one who knows arms {known:.3}, seen {seen:.3} of {count}");
    assert!(count > 1_000.0, "only {count}");
    // Three standard errors of what is seen.
    let error = 3.0 * (seen * (1.0 - seen) / count).sqrt();
    assert!((known - seen).abs() < error + 0.005, "known {known}, seen {seen}, error {error}");
    assert!(said < seen + error, "it errs on the side of care: said {said}, seen {seen}");
}
