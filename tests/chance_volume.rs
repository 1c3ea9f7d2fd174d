//! Rates and errors of volume by simulation, with fixed seeds.

use tapeline::explain::alarm_tables;
use tapeline::quantity::phi;
use tapeline::volume::{Point, ReadyState, Station, VolumeNumbers, frustum, recent_line, state_of};

use crate::made::rules;

/// Splitmix64 (published: Steele et al. 2014, OOPSLA) with the polar method: enough for rates.
pub struct Dice(pub u64);

impl Dice {
    fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    pub fn uniform(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn normal(&mut self) -> f64 {
        loop {
            let (u, v) = (2.0 * self.uniform() - 1.0, 2.0 * self.uniform() - 1.0);
            let s = u * u + v * v;
            if s > 0.0 && s < 1.0 {
                return u * (-2.0 * s.ln() / s).sqrt();
            }
        }
    }
}

const COURSES: u32 = 20_000;

const DAYS: [u32; 9] = [0, 3, 7, 10, 14, 17, 21, 24, 28];

/// What a simulated limb does.
#[derive(Clone, Copy)]
enum Simulated {
    Unchanged,
    /// % a week.
    Losing(f64),
    /// Excess in %, time constant in days.
    Decaying(f64, f64),
}

fn volume_on(limb: Simulated, day: f64) -> f64 {
    match limb {
        Simulated::Unchanged => 2000.0,
        Simulated::Losing(percent) => 2000.0 * (-percent / 100.0 * day / 7.0).exp(),
        Simulated::Decaying(excess, days) => 2000.0 * (1.0 + excess / 100.0 * (-day / days).exp()),
    }
}

/// % of courses whose bounds say settled at `day`, and % called so, and % called rising.
fn rates(limb: Simulated, sd_percent: f64, day: u32, seed: u64) -> [f64; 3] {
    let numbers = VolumeNumbers::of(&rules());
    let mut dice = Dice(seed);
    let mut counts = [0_u32; 3];
    for _ in 0..COURSES {
        let points: Vec<Point> = DAYS
            .iter()
            .filter(|one| **one <= day)
            .map(|one| {
                let day = f64::from(*one);
                let ml = volume_on(limb, day) * (1.0 + sd_percent / 100.0 * dice.normal());
                Point { day, ml, sd_percent }
            })
            .collect();
        let line = recent_line(&points, &numbers);
        counts[0] += u32::from(line.is_some_and(|line| line.most() < numbers.settled_below_percent));
        let state = state_of(line, &numbers);
        counts[1] += u32::from(state == ReadyState::Settled);
        counts[2] += u32::from(state == ReadyState::Rising);
    }
    counts.map(|count| 100.0 * f64::from(count) / f64::from(COURSES))
}

/// What the limb of a row does, by its words.
fn simulated(words: &str) -> Simulated {
    match words {
        "does not change" => Simulated::Unchanged,
        "loses 2 % a week" => Simulated::Losing(2.0),
        "loses 3 % a week" => Simulated::Losing(3.0),
        "grows 2 % a week" => Simulated::Losing(-2.0),
        "excess of 23 % decaying, time constant 5 days" => Simulated::Decaying(23.0, 5.0),
        other => panic!("no such limb: {other}"),
    }
}

#[test]
fn the_readiness_rates() {
    // The table that `explain alarms` prints, simulated anew: each figure within 1 point (derived: a rate
    // near one half scatters by 0.35 points among 20,000).
    let tables = alarm_tables().unwrap();
    let table = tables.iter().find(|one| one.title == "Whether a limb has settled").unwrap();
    let days: Vec<u32> = table
        .columns
        .iter()
        .filter_map(|head| head.strip_prefix("day ")?.strip_suffix(", %")?.parse().ok())
        .collect();
    assert_eq!(table.columns.len(), days.len() + 3);
    let mut seed = 0;
    for row in &table.rows {
        let (limb, sd) = (simulated(&row[0]), row[1].parse::<f64>().unwrap());
        for (day, cell) in days.iter().zip(&row[3..]) {
            seed += 1;
            let called = ["bounds alone", "settled", "rising"].iter().position(|one| one == &row[2]).unwrap();
            let simulated = rates(limb, sd, *day, seed)[called];
            let wanted: f64 = cell.parse().unwrap();
            println!("{row:?} day {day}: {simulated} {}", closed(limb, sd, *day)[called]);
            assert!((simulated - wanted).abs() <= 1.0, "{row:?}, day {day}: {simulated} %");
            let closed = closed(limb, sd, *day)[called];
            assert!((closed - wanted).abs() <= 1.0, "{row:?}, day {day}: {closed} % in closed form");
        }
    }
}

/// The same three rates in closed form (derived): the slope of a line through ln V with known SD is normal around
/// the slope through the true ln V. Visits and window are written out here: those of the last 14 days, or of 28
/// where those hold fewer than 4.
fn closed(limb: Simulated, sd_percent: f64, day: u32) -> [f64; 3] {
    let within = |days: u32| -> Vec<f64> {
        DAYS.iter().filter(|one| **one <= day && day - **one <= days).map(|one| f64::from(*one)).collect()
    };
    let near = within(14);
    let days = if near.len() < 4 { within(28) } else { near };
    let mean = days.iter().sum::<f64>() / days.len() as f64;
    let spread: f64 = days.iter().map(|one| (one - mean).powi(2)).sum();
    let along: f64 = days.iter().map(|one| (one - mean) * volume_on(limb, *one).ln()).sum();
    let (loss, sd) = (-700.0 * along / spread, 7.0 * sd_percent / spread.sqrt());
    let bound = 1.644_853_627 * sd;
    let between = |low: f64, high: f64| {
        if low < high { 100.0 * (phi((high - loss) / sd) - phi((low - loss) / sd)) } else { 0.0 }
    };
    let (low, high) = (bound - 2.0, 2.0 - bound);
    [between(low, high), between(low.max(-bound), high), between(f64::NEG_INFINITY, -bound)]
}

#[test]
fn a_longer_stable_course_is_settled_more_often() {
    // A law, on average: further visits of an unchanged limb never lower the rate.
    for sd in [0.8, 1.2] {
        let settled: Vec<f64> =
            [7, 10, 14].into_iter().map(|day| rates(Simulated::Unchanged, sd, day, 77)[1]).collect();
        assert!(settled.is_sorted(), "{settled:?}");
    }
}

#[test]
fn the_sd_of_a_volume() {
    // The stated SD against 20,000 arms measured with independent tape errors of 0.35 cm (derived: the
    // gradient is linear, the error small against the girth), and the detectable change between two of them.
    let girths = [15.8, 16.6, 18.3, 20.4, 22.3, 23.6, 24.0, 24.6, 25.9, 27.2, 28.5];
    let row = |errors: &mut dyn FnMut() -> f64| -> f64 {
        let stations: Vec<Station> = (0_u8..)
            .zip(girths)
            .map(|(at, girth)| Station {
                at_cm: 4.0 * f64::from(at),
                girth_cm: girth + 0.35 * errors(),
                sd_cm: 0.35,
            })
            .collect();
        frustum(&stations).unwrap().ml
    };
    let mut dice = Dice(5);
    let all: Vec<f64> = (0..COURSES).map(|_| row(&mut || dice.normal())).collect();
    let mean = all.iter().sum::<f64>() / f64::from(COURSES);
    let sd = (all.iter().map(|one| (one - mean).powi(2)).sum::<f64>() / f64::from(COURSES - 1)).sqrt();
    let stations: Vec<Station> = (0_u8..)
        .zip(girths)
        .map(|(at, girth_cm)| Station { at_cm: 4.0 * f64::from(at), girth_cm, sd_cm: 0.35 })
        .collect();
    let stated = frustum(&stations).unwrap().sd_ml();
    // The SD of 20,000 values scatters by 0.5 % (derived: 1/√2n).
    assert!((sd / stated - 1.0).abs() < 0.02, "{sd} {stated}");
    let change = 1.96 * 2.0_f64.sqrt() * stated;
    let pairs = all.chunks_exact(2).filter(|pair| (pair[0] - pair[1]).abs() <= change).count();
    let share = pairs as f64 / f64::from(COURSES / 2);
    assert!((share - 0.95).abs() < 0.01, "{share}");
}
