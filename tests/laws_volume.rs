//! Laws that hold for every limb and every course.

use proptest::prelude::*;
use tapeline::anatomy::{Limb, Side};
use tapeline::record::{Affected, Record};
use tapeline::volume::{Line, Point, Station, course, frustum, measure};

use crate::made::{day, record, rules, serial};

/// A limb: gaps and girths, cm.
fn limbs() -> impl Strategy<Value = Vec<(f64, f64)>> {
    prop::collection::vec((1.0..12.0_f64, 12.0..70.0_f64), 2..16).prop_map(|list| {
        let mut at = 0.0;
        list.into_iter()
            .map(|(gap, girth)| {
                at += gap;
                (at, girth)
            })
            .collect()
    })
}

fn stations(limb: &[(f64, f64)]) -> Vec<Station> {
    limb.iter().map(|(at_cm, girth_cm)| Station { at_cm: *at_cm, girth_cm: *girth_cm, sd_cm: 0.35 }).collect()
}

fn ml(limb: &[(f64, f64)]) -> f64 {
    frustum(&stations(limb)).unwrap().ml
}

fn same(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * one.abs().max(other.abs()).max(1e-3)
}

fn girths() -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec((1500..4500_i32).prop_map(|tenths| f64::from(tenths) / 100.0), 6)
}

fn visit(on: &str, affected: &[f64], other: &[f64]) -> Record {
    let marks = |girths: &[f64]| serial(Limb::Arm, girths, 5.0);
    record(on, Limb::Arm, marks(affected), Some(marks(other)))
}

proptest! {
    // Source: geometry (derived): girths k times as large give k² the volume, lengths k times k.
    #[test]
    fn a_larger_limb(limb in limbs(), k in 0.5..2.0_f64) {
        let wide: Vec<_> = limb.iter().map(|(at, girth)| (*at, girth * k)).collect();
        let long: Vec<_> = limb.iter().map(|(at, girth)| (at * k, *girth)).collect();
        prop_assert!(same(ml(&wide), k * k * ml(&limb)));
        prop_assert!(same(ml(&long), k * ml(&limb)));
        // The error grows with the gradient: k times.
        let sd = |limb: &[(f64, f64)]| frustum(&stations(limb)).unwrap().sd_ml();
        prop_assert!(same(sd(&wide), k * sd(&limb)));
    }

    // Source: geometry (derived): a mark more on a straight side changes nothing.
    #[test]
    fn a_segment_split(limb in limbs(), which in 0..100_usize, share in 0.01..0.99_f64) {
        let at = which % (limb.len() - 1);
        let ((x1, c1), (x2, c2)) = (limb[at], limb[at + 1]);
        let mut more = limb.clone();
        more.insert(at + 1, (x1 + share * (x2 - x1), c1 + share * (c2 - c1)));
        prop_assert!(same(ml(&more), ml(&limb)));
    }

    // Source: geometry (derived): the limb turned round has the same volume, one error at all marks is
    // never smaller than independent ones.
    #[test]
    fn a_limb_turned_round(limb in limbs()) {
        let end = limb.last().unwrap().0;
        let turned: Vec<_> = limb.iter().rev().map(|(at, girth)| (end - at, *girth)).collect();
        prop_assert!(same(ml(&turned), ml(&limb)));
        let volume = frustum(&stations(&limb)).unwrap();
        prop_assert!(volume.shared_sd_ml >= volume.sd_ml());
    }

    // Source: definition of the excess (derived): with the sides swapped, e becomes −100e/(100 + e).
    #[test]
    fn sides_swapped(affected in girths(), other in girths()) {
        let one = visit("2026-03-14", &affected, &other);
        let mut swapped = one.clone();
        swapped.affected = Affected::One(Side::Right);
        let percent = |record: &Record| measure(record, &record.limbs[0], &rules()).excess.unwrap().percent;
        let e = percent(&one);
        prop_assert!(same(percent(&swapped), -100.0 * e / (100.0 + e)));
    }

    // Source: house rule: the newest is judged, whatever the order in which records are given.
    #[test]
    fn order_of_records(first in girths(), second in girths(), third in girths(), turn in 0..6_usize) {
        let records = [
            visit("2026-01-14", &first, &second),
            visit("2026-02-14", &second, &third),
            visit("2026-03-14", &third, &first),
        ];
        let orders = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]];
        let said = |order: [usize; 3]| {
            let all: Vec<&Record> = order.iter().map(|at| &records[*at]).collect();
            let limb = course(&all, &[], day("2026-03-14"), &rules()).unwrap().limbs.remove(0);
            format!("{:?} {:?} {:?}", limb.changes, limb.ready, limb.worsening)
        };
        prop_assert_eq!(said(orders[turn]), said(orders[0]));
    }

    // Source: least squares (derived): a factor on all volumes changes no loss; days shifted change nothing;
    // weeks counted backwards turn loss into gain.
    #[test]
    fn a_line_shifted(
        volumes in prop::collection::vec(1000.0..4000.0_f64, 3..9), k in 0.5..2.0_f64, shift in -50.0..50.0_f64
    ) {
        let line = |of: &dyn Fn(f64, f64) -> (f64, f64)| {
            let points: Vec<Point> = (0_u8..)
                .zip(&volumes)
                .map(|(at, ml)| {
                    let (day, ml) = of(3.5 * f64::from(at), *ml);
                    Point { day, ml, sd_percent: 1.2 }
                })
                .collect();
            Line::through(&points).unwrap()
        };
        let plain = line(&|day, ml| (day, ml));
        let scaled = line(&|day, ml| (day, k * ml));
        let shifted = line(&|day, ml| (day + shift, ml));
        let turned = line(&|day, ml| (-day, ml));
        for other in [scaled, shifted] {
            prop_assert!((other.loss - plain.loss).abs() < 1e-8 && same(other.sd, plain.sd));
        }
        prop_assert!((turned.loss + plain.loss).abs() < 1e-8);
        prop_assert!(plain.low() <= plain.loss && plain.loss <= plain.high());
        prop_assert!(plain.most() >= plain.high().abs().max(plain.low().abs()) - 1e-9);
    }

    // Source: house rule: a larger rise is never told more mildly.
    #[test]
    fn more_is_never_milder(rise in 0.0..0.1_f64, more in 0.0..0.1_f64) {
        let severity = |rise: f64| {
            let girth = (2600.0 * (1.0 + rise).sqrt()).round() / 100.0;
            let records = [visit("2026-01-14", &[26.0; 6], &[23.0; 6]), visit("2026-03-14", &[girth; 6], &[23.0; 6])];
            let all: Vec<&Record> = records.iter().collect();
            let limb = course(&all, &[], day("2026-03-14"), &rules()).unwrap().limbs.remove(0);
            // Severities stand worst first.
            limb.worsening.map_or(0, |one| if one.severity == tapeline::rules::Severity::ClearFirst { 2 } else { 1 })
        };
        prop_assert!(severity(rise + more) >= severity(rise));
    }
}
