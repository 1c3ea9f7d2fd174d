//! Prints chances of a rise for `.ci/fall`, which holds them against `SciPy`.

use tapeline::gradient::rise_somewhere;

use crate::chance::Chance;

/// Source: `.ci/fall.py`: plain normal integrals and simulation by `SciPy`.
#[test]
#[ignore = "printed for .ci/fall"]
fn cases_for_scipy() {
    let mut chance = Chance::of(77);
    let delta = 1.1_f64.ln();
    for number in 0..48 {
        let count = [2, 3, 3, 4, 5, 7][number % 6];
        let slope = -0.8 * chance.uniform() + 0.2 * chance.uniform();
        let values: Vec<(f64, f64)> = (0..count)
            .map(|place| {
                let along = place as f64 / (count - 1) as f64;
                (
                    3.0 + slope * along + 0.1 * chance.normal(),
                    0.02 + 0.3 * chance.uniform() * chance.uniform(),
                )
            })
            .collect();
        print!("case {delta:.17} {:.17}", rise_somewhere(&values, delta));
        for (y, s) in values {
            print!(" {y:.17} {s:.17}");
        }
        println!();
    }
}
