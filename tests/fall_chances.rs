//! Each chance of the rule against simulation, its points worked out here from the rule's own formulas.
//!
//! Source: gradient.md, sections 1 and 2 (derived): θ_i ~ N(y_i, s_i²), independent; a rise somewhere is some later
//! θ at least ln 1.1 above an earlier one. The simulation draws θ, and what is unknown of the knits; the formulas of
//! y and s are written out again, so neither shares code with the program. Agreement is within four standard errors
//! of the simulation and, where nodes stand for a spread, a fifth of a point for them.

use tapeline::anatomy::{Landmark, Limb};
use tapeline::gradient::{
    FallMark, FallSetting, GradientBasis, Knit, KnitPart, MarkKind, Part, TensionCurve, judge,
};

use crate::chance::Chance;
use crate::fall_support::{mark, setting};

use Landmark::{Ankle, BelowKnee, Calf, MidThigh};

/// mmHg of one N/m over one cm. Source: unit definitions (derived).
const K: f64 = 4.71277587283339;
const DRAWS: u32 = 60_000;

/// Tension of a knit, N/m: `scale · e^power`.
#[derive(Clone, Copy)]
struct Power {
    scale: f64,
    power: f64,
}

impl TensionCurve for Power {
    fn tension(&self, stretch: f64) -> Option<(f64, f64)> {
        (stretch <= 3.0).then(|| {
            (self.scale * stretch.powf(self.power), self.scale * self.power * stretch.powf(self.power - 1.0))
        })
    }

    fn last_tension(&self) -> f64 {
        self.scale * 3.0_f64.powf(self.power)
    }
}

fn knit(number: usize, relaxed_cm: f64, relaxed_sd_cm: f64, layers: f64) -> Part {
    Part::Knit(KnitPart { knit: number, piece: number, relaxed_cm, relaxed_sd_cm, flat_widths: 1, layers })
}

const PLACES: [(Landmark, f64, f64); 4] =
    [(Ankle, 11.0, 23.0), (Calf, 31.0, 37.5), (BelowKnee, 40.0, 35.0), (MidThigh, 59.0, 50.0)];

/// The share of draws with a rise of a tenth; `points` gives y and s of one draw.
fn simulated(chance: &mut Chance, mut points: impl FnMut(&mut Chance) -> Vec<(f64, f64)>) -> f64 {
    let delta = 1.1_f64.ln();
    let mut hits = 0_u32;
    for _ in 0..DRAWS {
        let all = points(chance);
        let (mut least, mut rises) = (f64::INFINITY, false);
        for (y, s) in all {
            let value = y + s * chance.normal();
            rises |= value >= least + delta;
            least = least.min(value);
        }
        hits += u32::from(rises);
    }
    f64::from(hits) / f64::from(DRAWS)
}

fn agrees(what: &str, is: f64, seen: f64, slack: f64) {
    let error = (is * (1.0 - is) / f64::from(DRAWS)).sqrt();
    println!("{what}: {is:.4}, simulated {seen:.4} (standard error {error:.4})");
    assert!((is - seen).abs() < 4.0 * error + slack + 1e-4, "{what}: {is} seen {seen}");
}

/// Random stretches that fall, stay or rise a little, and errors of the tape and of the ruler.
fn stretches(chance: &mut Chance) -> ([f64; 4], f64, f64) {
    let (start, slope) = (0.25 + 0.3 * chance.uniform(), 0.7 * chance.uniform() - 0.1);
    let all = [0.0, 0.4, 0.6, 1.0].map(|at: f64| start * (1.0 + slope * at) * (1.0 + 0.06 * chance.normal()));
    (all, 0.2 + 0.5 * chance.uniform(), 0.15 + 0.4 * chance.uniform())
}

fn rise_somewhere(marks: &[FallMark], setting: &FallSetting<'_>) -> f64 {
    judge(marks, setting).chances.unwrap().rise_somewhere
}

/// By fabric: y = ln(K·T(e)/C), s² = (σ_C·(T′/T/C0 − 1/C))² + (σ_0·T′/T·C/C0²)².
#[test]
fn the_chance_by_fabric_is_that_of_a_simulation() {
    let mut chance = Chance::of(101);
    for round in 0..12 {
        let curve = Power { scale: 300.0, power: 0.7 + 0.8 * chance.uniform() };
        let (stretch, tape, ruler) = stretches(&mut chance);
        let mut marks = Vec::new();
        let mut points = Vec::new();
        for ((landmark, at, girth), e) in PLACES.into_iter().zip(stretch) {
            let relaxed = girth / (1.0 + e);
            let mut one = mark(landmark, at, girth, vec![knit(0, relaxed, ruler, 1.0)]);
            one.girth_sd_cm = tape;
            marks.push(one);
            let (tension, slope) = curve.tension(e).unwrap();
            let steep = slope / tension;
            let s =
                (tape * (steep / relaxed - 1.0 / girth)).hypot(ruler * steep * girth / (relaxed * relaxed));
            points.push(((K * tension / girth).ln(), s));
        }
        let base = setting(Limb::Leg, MidThigh, None);
        let by_fabric = FallSetting {
            basis: GradientBasis::Fabric,
            knits: vec![Knit { curve: Some(&curve), tension_sd: 0.05 }],
            ..base
        };
        let seen = simulated(&mut chance, |_| points.clone());
        agrees(&format!("fabric {round}"), rise_somewhere(&marks, &by_fabric), seen, 0.0);
    }
}

/// By stretch: y = b·ln e − ln C, s² = ((b/d − 1/C)·σ_C)² + (b·C/(C0·d)·σ_0)², b even from 0.7 to 1.5, common to all
/// marks.
#[test]
fn the_chance_by_stretch_is_that_of_a_simulation() {
    let mut chance = Chance::of(102);
    for round in 0..12 {
        let (stretch, tape, ruler) = stretches(&mut chance);
        let mut marks = Vec::new();
        let mut known = Vec::new();
        for ((landmark, at, girth), e) in PLACES.into_iter().zip(stretch) {
            let relaxed = girth / (1.0 + e);
            let mut one = mark(landmark, at, girth, vec![knit(0, relaxed, ruler, 1.0)]);
            one.girth_sd_cm = tape;
            marks.push(one);
            known.push((girth, relaxed, girth - relaxed));
        }
        let seen = simulated(&mut chance, |chance| {
            let b = 0.7 + 0.8 * chance.uniform();
            known
                .iter()
                .map(|(c, c0, d)| {
                    let s = ((b / d - 1.0 / c) * tape).hypot(b * c / (c0 * d) * ruler);
                    (b * (d / c0).ln() - c.ln(), s)
                })
                .collect()
        });
        let is = rise_somewhere(&marks, &setting(Limb::Leg, MidThigh, None));
        agrees(&format!("stretch {round}"), is, seen, 0.002);
    }
}

/// Two unlike knits over one another from the calf on: y = ln ΣP_f(1 + z_f), each knit's z common to all marks; the
/// tape's slopes add over the knits, the ruler's terms in quadrature. Three nodes stand for each z.
#[test]
fn the_chance_of_a_set_is_that_of_a_simulation() {
    let mut chance = Chance::of(103);
    for round in 0..8 {
        let knits = [Power { scale: 250.0, power: 1.0 }, Power { scale: 300.0, power: 1.3 }];
        let sds = [0.05, 0.05 + 0.1 * chance.uniform()];
        let (stretch, tape, ruler) = stretches(&mut chance);
        let mut marks = Vec::new();
        let mut known: Vec<(Vec<f64>, f64)> = Vec::new();
        for ((landmark, at, girth), e) in PLACES.into_iter().zip(stretch) {
            let here = if landmark == Ankle { 1 } else { 2 };
            let parts: Vec<(f64, f64, Power)> = (0..here)
                .map(|number| {
                    let stretch = if number == 0 { 0.7 * e } else { 0.4 * e };
                    (stretch, girth / (1.0 + stretch), knits[number])
                })
                .collect();
            let mut one = mark(
                landmark,
                at,
                girth,
                parts.iter().enumerate().map(|(number, (_, c0, _))| knit(number, *c0, ruler, 1.0)).collect(),
            );
            one.girth_sd_cm = tape;
            marks.push(one);
            let (mut per_girth, mut own, mut pressures) = (0.0, 0.0, Vec::new());
            for (e, c0, knit) in parts {
                let (tension, slope) = knit.tension(e).unwrap();
                pressures.push(K * tension / girth);
                per_girth += K * (slope / c0 - tension / girth) / girth;
                own += (ruler * K * slope / (c0 * c0)).powi(2);
            }
            let sum: f64 = pressures.iter().sum();
            known.push((pressures, (tape * per_girth).hypot(own.sqrt()) / sum));
        }
        let mut together = setting(Limb::Leg, MidThigh, None);
        together.basis = GradientBasis::Fabric;
        together.together = true;
        together.knits = (0..2)
            .map(|at| Knit { curve: Some(&knits[at] as &dyn TensionCurve), tension_sd: sds[at] })
            .collect();
        let is = rise_somewhere(&marks, &together);
        let seen = simulated(&mut chance, |chance| {
            let z = [sds[0] * chance.normal(), sds[1] * chance.normal()];
            known
                .iter()
                .map(|(pressures, s)| {
                    let sum: f64 = pressures.iter().zip(z).map(|(p, z)| p * (1.0 + z)).sum();
                    (sum.ln(), *s)
                })
                .collect()
        });
        agrees(&format!("set {round}"), is, seen, 0.002);
    }
}

/// A bound: ln(K·T_last/C) with σ_C/C against ln P of the mark below; a rise of a tenth or more.
#[test]
fn the_chance_by_a_bound_is_that_of_its_own_simulation() {
    let mut chance = Chance::of(104);
    let mut counted = 0;
    for round in 0..16 {
        let curve = Power { scale: 240.0, power: 1.0 };
        let last = 3.0;
        let (girth, above) = (23.0, 37.5);
        // The upper mark lies beyond the curve's end; its bound is near the pressure of the lower one.
        let e = 3.0 * girth / above / (0.9 + 0.4 * chance.uniform());
        let relaxed = girth / (1.0 + e);
        let (tape, ruler) = (0.2 + 0.5 * chance.uniform(), 0.1 + 0.2 * chance.uniform());
        let mut marks = [
            mark(Ankle, 11.0, girth, vec![knit(0, relaxed, ruler, 1.0)]),
            mark(Calf, 31.0, above, vec![knit(0, above / (1.0 + last) - 1.0, ruler, 1.0)]),
        ];
        marks.iter_mut().for_each(|one| one.girth_sd_cm = tape);
        let setting = FallSetting {
            basis: GradientBasis::Fabric,
            knits: vec![Knit { curve: Some(&curve), tension_sd: 0.05 }],
            ..setting(Limb::Leg, Calf, None)
        };
        let Some(is) = tapeline::gradient::held_against(&marks[0], &marks[1], &setting) else {
            panic!("no chance")
        };
        assert!(matches!(&marks[1].what, MarkKind::Worn(parts) if parts.len() == 1));
        let steep = 1.0 / e;
        let s = (tape * (steep / relaxed - 1.0 / girth)).hypot(ruler * steep * girth / (relaxed * relaxed));
        let points = [((K * 240.0 * e / girth).ln(), s), ((K * 240.0 * last / above).ln(), tape / above)];
        let seen = simulated(&mut chance, |_| points.to_vec());
        counted += u32::from((0.02..0.98).contains(&is));
        agrees(&format!("bound {round}"), is, seen, 0.0);
    }
    assert!(counted > 7, "{counted}");
}

/// Source: gradient.md, beyond the curve (derived): of two knits at one mark, one beyond its end, the bound is
/// K·(T_last + T)/C, the whole of the other added.
#[test]
fn a_bound_adds_the_knit_that_is_not_at_its_end() {
    let (long, short) = (Power { scale: 300.0, power: 1.0 }, Power { scale: 20.0, power: 1.0 });
    let marks = [
        mark(Ankle, 11.0, 23.0, vec![knit(0, 19.0, 0.3, 1.0)]),
        mark(Calf, 31.0, 37.5, vec![knit(0, 34.0, 0.3, 2.0), knit(1, 9.0, 0.3, 1.0)]),
    ];
    let setting = FallSetting {
        basis: GradientBasis::Fabric,
        knits: [&long, &short]
            .map(|knit| Knit { curve: Some(knit as &dyn TensionCurve), tension_sd: 0.05 })
            .to_vec(),
        ..setting(Limb::Leg, Calf, None)
    };
    let is = tapeline::gradient::held_against(&marks[0], &marks[1], &setting).unwrap();
    let e = 23.0 / 19.0 - 1.0;
    let own = f64::hypot(0.35 * (1.0 / e / 19.0 - 1.0 / 23.0), 0.3 / e * 23.0 / (19.0 * 19.0));
    let below = (K * 300.0 * e / 23.0).ln();
    let bound = K * (2.0 * 300.0 * (37.5 / 34.0 - 1.0) + 20.0 * 3.0) / 37.5;
    let wanted = tapeline::quantity::phi((bound.ln() - below - 1.1_f64.ln()) / own.hypot(0.35 / 37.5));
    assert!((0.01..0.99).contains(&wanted) && (is - wanted).abs() < 1e-9, "{is} {wanted}");
}

/// Source: gradient.md section 2: U is held at 1 − 1e-9, so that a rise that is sure stays a figure even where so many
/// and so poorly measured marks show one by accident.
#[test]
fn a_sure_rise_among_hopeless_marks_stays_a_figure() {
    let mut marks: Vec<FallMark> = (0..24_i32)
        .map(|at| {
            let mut one = mark(Calf, 31.0 + f64::from(at), 37.5, vec![knit(0, 37.4, 0.3, 1.0)]);
            one.girth_sd_cm = 3.0;
            one
        })
        .collect();
    marks.insert(0, mark(Ankle, 11.0, 23.0, vec![knit(0, 26.0, 0.3, 1.0)]));
    marks.push(mark(MidThigh, 70.0, 50.0, vec![knit(0, 40.0, 0.3, 1.0)]));
    let fall = judge(&marks, &setting(Limb::Leg, MidThigh, None));
    let chances = fall.chances.unwrap();
    assert!(chances.usual > 1.0 - 1e-9, "{:e}", 1.0 - chances.usual);
    assert_eq!((chances.rise_somewhere, chances.chance), (1.0, 1.0));
}
