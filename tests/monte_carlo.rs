//! Every propagated figure of the pressure side against a seeded Monte Carlo of the same errors.
//!
//! Source of each figure compared: the definition of mean, SD and chance over normal errors (derived). The
//! propagation is linear, so SDs agree to a few per cent and chances to about a hundredth; the bounds below
//! say how far. `cargo test monte_carlo -- --nocapture` prints the table.

#![expect(clippy::cast_precision_loss, reason = "counts and 53 random bits are exact in an f64")]
#![expect(clippy::print_stdout, reason = "the table is read with --nocapture")]

use std::f64::consts::TAU;

use tapeline::anatomy::Landmark;
use tapeline::assessment::{Asked, GradientAssessment, assess_gradient};
use tapeline::garment::{Fabric, Outfit, Schemes, open_fabric, open_outfit};
use tapeline::rules::{NumberId, Rules};

use crate::direct::{TODAY, record, rules, source};
use crate::support::root;

const COUNT: usize = 200_000;

/// A small generator with a fixed seed (xorshift64*), and normal numbers from it (Box and Muller 1958).
struct Dice(u64);

impl Dice {
    fn even(&mut self) -> f64 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        let bits = self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 11;
        (bits as f64 + 0.5) / (1_u64 << 53) as f64
    }

    fn normal(&mut self) -> f64 {
        (-2.0 * self.even().ln()).sqrt() * (TAU * self.even()).cos()
    }
}

fn mean_sd(values: &[f64]) -> (f64, f64) {
    let count = values.len() as f64;
    let mean = values.iter().sum::<f64>() / count;
    (mean, (values.iter().map(|one| (one - mean).powi(2)).sum::<f64>() / (count - 1.0)).sqrt())
}

fn share(values: impl Iterator<Item = bool>) -> f64 {
    values.filter(|one| *one).count() as f64 / COUNT as f64
}

/// The worst disagreement so far, and the table.
#[derive(Default)]
struct Table {
    worst_sd: f64,
    worst_chance: f64,
}

impl Table {
    #[track_caller]
    fn sd(&mut self, what: &str, found: f64, drawn: f64, bound: f64) {
        let off = found / drawn - 1.0;
        println!("{what:<44} {found:>10.4} {drawn:>10.4} {:>8.2} %", off * 100.0);
        self.worst_sd = self.worst_sd.max(off.abs());
        assert!(off.abs() <= bound, "{what}: {found} is not {drawn} to {bound}");
    }

    #[track_caller]
    fn chance(&mut self, what: &str, found: f64, drawn: f64, bound: f64) {
        println!("{what:<44} {found:>10.4} {drawn:>10.4} {:>8.4}", found - drawn);
        self.worst_chance = self.worst_chance.max((found - drawn).abs());
        assert!((found - drawn).abs() <= bound, "{what}: {found} is not {drawn} to {bound}");
    }
}

/// A demo garment on a demo record.
fn on(record_file: &str, garment_file: &str, rules: &Rules) -> GradientAssessment {
    let text = std::fs::read_to_string(root().join("demo").join(record_file)).unwrap();
    let open = record(&text, rules).unwrap();
    let path = root().join("demo").join(garment_file);
    let garment = source(&path.display().to_string(), &std::fs::read_to_string(&path).unwrap());
    let outfit = open_outfit(garment, &Schemes::default()).ok().unwrap().outfit;
    let asked = Asked { label: outfit.label.clone(), size: None, hand_part: None, outfit: Some(outfit) };
    assess_gradient(&open, asked, TODAY.parse().unwrap(), rules)
}

/// P in mmHg of one layer.
fn pressure(fabric: &Fabric, c: f64, c0: f64) -> f64 {
    if c <= c0 {
        return 0.0;
    }
    let e = (c / c0 - 1.0).min(fabric.last_stretch());
    TAU * fabric.at(e).unwrap().newton_per_metre / (c / 100.0) / 133.322_387_415
}

#[test]
fn one_garment_of_one_fabric() {
    let rules = rules();
    let found = on("narrow-ankle.yaml", "narrow-ankle-garment.yaml", &rules);
    let worn = found.estimate.as_ref().unwrap();
    let fabric = found.asked.outfit.as_ref().unwrap().fabrics()[0].clone();
    let (sd_relaxed, sd_tension) = (fabric.relaxed_sd_cm.unwrap(), fabric.tension_sd.unwrap());
    let mut dice = Dice(20_260_314);
    let mut drawn: Vec<Vec<f64>> = vec![Vec::new(); worn.marks.len()];
    for _ in 0..COUNT {
        let scale = 1.0 + sd_tension * dice.normal();
        for (mark, all) in worn.marks.iter().zip(&mut drawn) {
            let c = mark.girth.cm() + 0.35 * dice.normal();
            let c0 = mark.relaxed.unwrap().cm() + sd_relaxed * dice.normal();
            all.push(scale * pressure(&fabric, c, c0));
        }
    }
    let mut table = Table::default();
    for (mark, all) in worn.marks.iter().zip(&drawn) {
        table.sd(&format!("SD of P, {}", mark.landmark.name()), mark.sd().unwrap(), mean_sd(all).1, 0.04);
    }
    let place = |landmark| worn.marks.iter().position(|mark| mark.landmark == landmark).unwrap();
    for pair in worn.graduation.as_ref().unwrap().all() {
        let (below, above) = (&drawn[place(pair.distal)], &drawn[place(pair.proximal)]);
        let rises: Vec<f64> = above.iter().zip(below).map(|(above, below)| above - below).collect();
        let name = format!("{} to {}", pair.distal.name(), pair.proximal.name());
        table.chance(
            &format!("chance of a rise, {name}"),
            pair.chance.unwrap(),
            share(rises.iter().map(|rise| *rise > 0.0)),
            0.02,
        );
        // The SD printed is by tape and ruler: the common fabric scale is taken out by the ratio's sign.
        let own: Vec<f64> = {
            let mut dice = Dice(7);
            (0..COUNT)
                .map(|_| {
                    let mut at = |landmark| {
                        let mark = &worn.marks[place(landmark)];
                        let c = mark.girth.cm() + 0.35 * dice.normal();
                        let c0 = mark.relaxed.unwrap().cm() + sd_relaxed * dice.normal();
                        pressure(&fabric, c, c0)
                    };
                    at(pair.proximal) - at(pair.distal)
                })
                .collect()
        };
        table.sd(&format!("SD of the rise, {name}"), pair.sd.unwrap(), mean_sd(&own).1, 0.04);
    }
    let reference = &drawn[place(Landmark::Ankle)];
    // RAL-GZ 387/1:2008 class 2: 23 to 32 mmHg (published).
    table.chance(
        "chance of the claimed class",
        worn.reference.claimed_probability.unwrap(),
        share(reference.iter().map(|one| (23.0..=32.0).contains(one))),
        0.02,
    );
    for ratio in worn.ratios.iter().filter(|ratio| ratio.inside == Some(false)) {
        let limit = ratio.limit.as_ref().unwrap().high.unwrap();
        let here = &drawn[place(ratio.landmark)];
        let outside = share(here.iter().zip(reference).map(|(one, base)| *one > limit / 100.0 * base));
        table.chance("chance outside a limit", ratio.chance_outside.unwrap(), outside, 0.02);
    }
    println!("worst: SD {:.4}, chance {:.4}", table.worst_sd, table.worst_chance);
}

#[test]
fn a_reversal_and_its_limits() {
    let rules = rules();
    // An untapered tube of the demo knit with a close call between calf and below-knee mark (invented).
    let garment = "tapeline: garment/1\nlabel: tube\nlimb: leg\nscheme: ral-gz-387-1\nclass: \"2\"\nfabric: demo/knit-r3.yaml\nrelaxed: {ankle: 15 cm, calf: 27 cm, below-knee: 24.8 cm}\n";
    let outfit =
        open_outfit(source(&root().join("tube.yaml").display().to_string(), garment), &Schemes::default());
    let outfit = outfit.ok().unwrap().outfit;
    let text = std::fs::read_to_string(root().join("demo/narrow-ankle.yaml")).unwrap();
    let open = record(&text, &rules).unwrap();
    let fabric = outfit.fabrics()[0].clone();
    let asked = Asked { label: "tube".to_owned(), size: None, hand_part: None, outfit: Some(outfit) };
    let found = assess_gradient(&open, asked, TODAY.parse().unwrap(), &rules);
    let worn = found.estimate.unwrap();
    let mut dice = Dice(99);
    let mut table = Table::default();
    let drawn: Vec<Vec<f64>> = (0..COUNT)
        .map(|_| {
            let scale = 1.0 + 0.05 * dice.normal();
            worn.marks
                .iter()
                .map(|mark| {
                    let c = mark.girth.cm() + 0.35 * dice.normal();
                    scale * pressure(&fabric, c, mark.relaxed.unwrap().cm() + 0.3 * dice.normal())
                })
                .collect()
        })
        .collect();
    let place = |landmark| worn.marks.iter().position(|mark| mark.landmark == landmark).unwrap();
    for pair in worn.graduation.as_ref().unwrap().all() {
        let rises = share(drawn.iter().map(|one| one[place(pair.proximal)] > one[place(pair.distal)]));
        let name = format!("chance of a rise, {} to {}", pair.distal.name(), pair.proximal.name());
        table.chance(&name, pair.chance.unwrap(), rises, 0.02);
    }
    for ratio in worn.ratios.iter().filter(|ratio| ratio.inside == Some(false)) {
        let high = ratio.limit.as_ref().unwrap().high.unwrap() / 100.0;
        let outside = share(drawn.iter().map(|one| one[place(ratio.landmark)] > high * one[0]));
        let name = format!("chance outside a limit, {}", ratio.landmark.name());
        table.chance(&name, ratio.chance_outside.unwrap(), outside, 0.02);
    }
    println!("worst: chance {:.4}", table.worst_chance);
}

#[test]
fn garments_together_and_a_band() {
    let rules = rules();
    // The outer layer of another knit, so that two unlike fabrics meet (invented).
    let inner = "tapeline: garment/1\nlabel: inner\nlimb: arm\nfabric: demo/knit-r2.yaml\nrelaxed: {wrist: 11.4 cm, forearm: 17.3 cm, upper-arm: 22.4 cm, axilla: 26.8 cm}\ntop_edge: {relaxed: 28.4 cm, fabric: demo/knit-r3.yaml}\n";
    let outer = "tapeline: garment/1\nlabel: outer\nlimb: arm\nfabric: demo/knit-r3.yaml\nrelaxed: {upper-arm: 28.5 cm, axilla: 33 cm}\n";
    let read = |text: &str| {
        open_outfit(source(&root().join("one.yaml").display().to_string(), text), &Schemes::default())
            .ok()
            .unwrap()
            .outfit
    };
    let (inner, outer) = (read(inner), read(outer));
    let outfit = Outfit {
        label: "both".to_owned(),
        pieces: inner.pieces.iter().chain(&outer.pieces).cloned().collect(),
        ..inner.clone()
    };
    let knits: Vec<Fabric> = ["knit-r2.yaml", "knit-r3.yaml"]
        .iter()
        .map(|name| {
            open_fabric(source(name, &std::fs::read_to_string(root().join("demo").join(name)).unwrap()))
                .unwrap()
        })
        .collect();
    let text = std::fs::read_to_string(root().join("demo/with-readings.yaml")).unwrap();
    let open = record(&text, &rules).unwrap();
    let asked = Asked { label: "both".to_owned(), size: None, hand_part: None, outfit: Some(outfit) };
    let found = assess_gradient(&open, asked, TODAY.parse().unwrap(), &rules);
    let worn = found.estimate.as_ref().unwrap();
    let mut dice = Dice(5);
    let mut table = Table::default();
    let mut drawn: Vec<Vec<f64>> = Vec::new();
    let mut band = Vec::new();
    for _ in 0..COUNT {
        let scale = [1.0 + 0.05 * dice.normal(), 1.0 + 0.05 * dice.normal()];
        let mut row = Vec::new();
        for mark in &worn.marks {
            let sd = open.record.mark(mark.landmark).unwrap().sd_cm();
            let c = mark.girth.cm() + sd * dice.normal();
            let mut sum = 0.0;
            let mut body = 0.0;
            for piece in &mark.pieces {
                let c0 = piece.relaxed.unwrap().cm() + 0.3 * dice.normal();
                let here = scale[piece.piece] * pressure(&knits[piece.piece], c, c0);
                sum += here;
                if piece.piece == 0 {
                    body = here;
                }
            }
            row.push(sum);
            if mark.landmark == Landmark::Axilla {
                band.push(scale[1] * pressure(&knits[1], c, 28.4 + 0.3 * dice.normal()) - body);
            }
        }
        drawn.push(row);
    }
    for (at, mark) in worn.marks.iter().enumerate() {
        let all: Vec<f64> = drawn.iter().map(|row| row[at]).collect();
        table.sd(
            &format!("SD of the sum, {}", mark.landmark.name()),
            mark.sd().unwrap(),
            mean_sd(&all).1,
            0.04,
        );
    }
    let place = |landmark| worn.marks.iter().position(|mark| mark.landmark == landmark).unwrap();
    for pair in worn.graduation.as_ref().unwrap().all() {
        let rises = share(drawn.iter().map(|row| row[place(pair.proximal)] > row[place(pair.distal)]));
        let name = format!("chance of a rise, {} to {}", pair.distal.name(), pair.proximal.name());
        table.chance(&name, pair.chance.unwrap(), rises, 0.02);
    }
    let edge = found.edges[0].rise.unwrap();
    table.chance(
        "chance that the band presses more",
        edge.chance,
        share(band.iter().map(|one| *one > 0.0)),
        0.02,
    );
    println!("worst: SD {:.4}, chance {:.4}", table.worst_sd, table.worst_chance);
}

#[test]
fn pairs_by_stretch_alone() {
    let rules = rules();
    let garment = "tapeline: garment/1\nlabel: flat\nlimb: leg\nflat_width: {ankle: 7.3 cm, calf: 13.2 cm, below-knee: 12.1 cm}\n";
    let outfit = open_outfit(source("flat.yaml", garment), &Schemes::default()).ok().unwrap().outfit;
    let text = std::fs::read_to_string(root().join("demo/narrow-ankle.yaml")).unwrap();
    let open = record(&text, &rules).unwrap();
    let asked = Asked { label: "flat".to_owned(), size: None, hand_part: None, outfit: Some(outfit) };
    let found = assess_gradient(&open, asked, TODAY.parse().unwrap(), &rules);
    let worn = found.estimate.unwrap();
    let mut table = Table::default();
    for pair in worn.graduation.as_ref().unwrap().all() {
        let mark = |landmark| worn.marks.iter().find(|mark| mark.landmark == landmark).unwrap();
        let mut ends: Vec<f64> = [NumberId::StretchExponentLow, NumberId::StretchExponentHigh]
            .iter()
            .map(|id| {
                let b = rules.number(*id);
                let mut dice = Dice(11);
                share((0..COUNT).map(|_| {
                    let mut at = |landmark| {
                        let mark = mark(landmark);
                        let c = mark.girth.cm() + 0.35 * dice.normal();
                        let e = c / (mark.relaxed.unwrap().cm() + 0.3 * dice.normal()) - 1.0;
                        e.max(0.0).powf(b) / c
                    };
                    at(pair.proximal) > at(pair.distal)
                }))
            })
            .collect();
        ends.sort_by(f64::total_cmp);
        let name = format!("{} to {}", pair.distal.name(), pair.proximal.name());
        table.chance(&format!("lower chance, {name}"), pair.chance_low.unwrap(), ends[0], 0.02);
        table.chance(&format!("higher chance, {name}"), pair.chance.unwrap(), ends[1], 0.02);
    }
    println!("worst: chance {:.4}", table.worst_chance);
}

#[test]
fn a_wrap() {
    let rules = rules();
    let found = on("leg.yaml", "calf-wrap.yaml", &rules);
    let worn = found.estimate.as_ref().unwrap();
    let mut table = Table::default();
    let mut dice = Dice(3);
    for mark in &worn.marks {
        let all: Vec<f64> = (0..COUNT)
            .map(|_| {
                let d = (mark.girth.cm() + 0.35 * dice.normal()) / 100.0 / std::f64::consts::PI;
                let pull = 0.5 * 9.806_65 * (1.0 + 0.05 * dice.normal());
                // Two layers of 1.5 mm, each by the Lamé form on its own diameter (derived).
                let layer = |d: f64| pull * (d + 0.0015) / (0.1 * (d * d / 2.0 + 0.0015 * (d + 0.0015)));
                (layer(d) + layer(d + 0.003)) / 133.322_387_415
            })
            .collect();
        table.sd(&format!("SD of P, {}", mark.landmark.name()), mark.sd().unwrap(), mean_sd(&all).1, 0.02);
    }
    println!("worst: SD {:.4}", table.worst_sd);
}

#[test]
fn the_calibration_of_a_curve() {
    let rules = rules();
    let found = on("with-readings.yaml", "sleeve-one.yaml", &rules);
    let against = found.against.as_ref().unwrap();
    let worn = found.estimate.as_ref().unwrap();
    let own = |landmark| {
        worn.marks.iter().find(|mark| mark.landmark == landmark).unwrap().estimate.unwrap().sd_own()
    };
    // Readings drawn about the estimates times 0.9: the fitted scale has mean 0.9 and the SD printed.
    let mut dice = Dice(17);
    let scales: Vec<f64> = (0..COUNT)
        .map(|_| {
            let (mut cross, mut square) = (0.0, 0.0);
            for row in &against.rows {
                let variance = row.reading_sd.powi(2) + own(row.landmark).powi(2);
                let reading = 0.9 * row.estimate + variance.sqrt() * dice.normal();
                cross += reading * row.estimate / variance;
                square += row.estimate.powi(2) / variance;
            }
            cross / square
        })
        .collect();
    let (mean, sd) = mean_sd(&scales);
    let mut table = Table::default();
    table.chance("mean of the scale", 0.9, mean, 0.002);
    table.sd("SD of the scale", against.scale.unwrap().sd, sd, 0.01);
}
