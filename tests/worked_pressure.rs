//! Published and derived figures of wraps, sections, layers, the inverse, edges and bench tests.

use std::f64::consts::PI;

use tapeline::garment::{Bench, BenchKind, Branch, Fabric, LEAST_SPREAD, Pull, pool};
use tapeline::pressure::{
    Ellipse, Estimate, Line, Spread, Stacked, WrapPull, cone_share, estimate_cm, estimate_wrap, laplace,
    laplace_cm, overlap_layers, radius_from_chord, reduction_from_stretch, relaxed_for, stack,
    stretch_from_reduction, tension_for,
};
use tapeline::quantity::{mmhg, newton_per_metre, pressure_from_mmhg, tension_from_newton_per_metre};

use crate::made::{self, near};
use crate::worn_support::linear;

const GRAVITY: f64 = 9.806_65;

/// A linear fabric of `k` N/m per unit stretch, tested to 300 %.
fn fabric(k: f64) -> Fabric {
    linear("knit", k, 300.0)
}

fn pressed(estimate: &Estimate) -> f64 {
    mmhg(estimate.pressure().unwrap())
}

fn wrap(pull_n: f64, layers: f64, thickness_cm: f64, girth_cm: f64) -> f64 {
    let wrap = WrapPull { pull_n, width_cm: 10.0, layers, thickness_cm };
    pressed(&estimate_wrap(wrap, girth_cm, 0.0, 0.0))
}

#[test]
fn a_thin_wrap() {
    // K·F·n/(C·W), K = 2π·9.80665/(1e-4·133.322387415) (derived): 0.5 kgf, n 2, C 25, W 10.
    near(wrap(0.5 * GRAVITY, 2.0, 0.0, 25.0), 18.486_617_405_3, 1e-11);
    // 0.8 kgf, n 3, C 36, W 10 (derived).
    near(wrap(0.8 * GRAVITY, 3.0, 0.0, 36.0), 30.811_029_008_9, 1e-11);
    // The published constant 4620 (Thomas 2003, EWMA J 3:21; memory) is K rounded: 18.48.
    assert!((wrap(0.5 * GRAVITY, 2.0, 0.0, 25.0) / (4620.0 * 0.5 * 2.0 / 250.0) - 1.0).abs() < 4e-4);
    // Inverse (derived): 40 mmHg, C 25, W 10, n 2 needs 1.08186368341 kgf.
    near(wrap(1.081_863_683_41 * GRAVITY, 2.0, 0.0, 25.0), 40.0, 1e-11);
}

#[test]
fn a_thick_wrap_presses_less() {
    // F(D + t)/(W(D²/2 + t(D + t))) (Lamé; derived): 5 N on 10 cm, C 25 cm, t 1, 2, 3 mm.
    near(wrap(5.0, 1.0, 0.1, 25.0), 9.307_143_248_99, 1e-11);
    near(wrap(5.0, 1.0, 0.2, 25.0), 9.188_946_392_9, 1e-11);
    near(wrap(5.0, 1.0, 0.3, 25.0), 9.071_153_546_22, 1e-11);
    // The second layer lies on D + 2t (derived): two layers are the sum of the two.
    let second = {
        let (d, t) = (25.0 / PI / 100.0 + 2.0 * 0.002, 0.002);
        5.0 * (d + t) / (0.1 * (d * d / 2.0 + t * (d + t))) / 133.322_387_415
    };
    near(wrap(5.0, 2.0, 0.2, 25.0), 9.188_946_392_9 + second, 1e-10);
    // Leaving thickness out overestimates by 19.2 % or more at a 25 cm ankle under a thick four-layer wrap
    // (Al Khaburi 2011, Phlebology 26:75, published); about 1 % for one thin garment.
    let over = |layers, t| wrap(5.0, layers, 0.0, 25.0) / wrap(5.0, layers, t, 25.0) - 1.0;
    assert!(over(4.0, 0.4) > 0.192, "{}", over(4.0, 0.4));
    assert!((0.005..0.02).contains(&over(1.0, 0.08)), "{}", over(1.0, 0.08));
}

#[test]
fn the_slope_of_a_wrap_is_its_own_derivative() {
    // dP/dC by a central difference (derived), thin and thick, whole and part layers.
    for (layers, thickness_cm) in [(2.0, 0.0), (2.0, 0.15), (2.5, 0.3), (1.0, 0.1)] {
        let pull = WrapPull { pull_n: 5.0, width_cm: 10.0, layers, thickness_cm };
        let at = |c: f64| pressed(&estimate_wrap(pull, c, 0.0, 0.0));
        let Estimate::Pressed(found) = estimate_wrap(pull, 25.0, 0.35, 0.05) else { panic!() };
        near(found.per_girth, (at(25.001) - at(24.999)) / 0.002, 1e-7);
        // The pull is independent at each mark, so it stands with tape and ruler.
        near(found.sd_own, (0.35 * found.per_girth).hypot(0.05 * at(25.0)), 1e-12);
        assert!(found.sd_fabric == 0.0);
    }
}

#[test]
fn tension_from_pressure() {
    // T = PC/2π (derived): 20 mmHg on 25 and 50 cm.
    let tension = |c| newton_per_metre(tension_for(pressure_from_mmhg(20.0), c));
    near(tension(25.0), 106.094_584_91, 1e-10);
    near(tension(50.0), 212.189_169_819, 1e-11);
    let back = laplace_cm(tension_from_newton_per_metre(tension(25.0)), 25.0);
    near(mmhg(back), 20.0, 1e-14);
}

#[test]
fn two_ways_of_saying_a_reduction() {
    // e = RF/(1 − RF) (derived): RF 10, 15, 20 %.
    for (reduction, stretch) in [(0.10, 0.111_111_111_111), (0.15, 0.176_470_588_235), (0.20, 0.25)] {
        near(stretch_from_reduction(reduction), stretch, 1e-11);
        near(reduction_from_stretch(stretch), reduction, 1e-11);
    }
}

#[test]
fn relaxed_girths_for_a_wanted_pressure() {
    // C0 = C/(1 + PC/(2πk)) (derived): 20 mmHg, C 25, k 400; 25 mmHg, C 23, k 500.
    let first = relaxed_for(&fabric(400.0), 1, 25.0, 20.0).unwrap();
    near(first.relaxed_cm, 19.759_152_336_7, 1e-11);
    near(first.stretch, 0.265_236_462_274, 1e-11);
    let second = relaxed_for(&fabric(500.0), 1, 23.0, 25.0).unwrap();
    near(second.relaxed_cm, 18.488_485_220_4, 1e-11);
    near(second.stretch, 0.244_017_545_292, 1e-11);
    // Beyond the last tested point there is no answer (house rule).
    assert!(relaxed_for(&fabric(1.0), 1, 25.0, 60.0).is_none());
}

#[test]
fn an_oval_section() {
    // 4.5 × 3.5 cm half-axes, T 100 N/m (derived): C 25.2310122 cm; sharp 27.5532824, flat 12.9640272,
    // mean 18.678505 mmHg.
    let oval = Ellipse::from_diameters(9.0, 7.0).unwrap();
    let girth = oval.girth_cm();
    near(girth, 25.231_012_2, 3e-9);
    let mean = mmhg(laplace_cm(tension_from_newton_per_metre(100.0), girth));
    near(mean, 18.678_505, 3e-8);
    near(mean * oval.sharp_over_mean(girth), 27.553_282_4, 3e-9);
    near(mean * oval.flat_over_mean(girth), 12.964_027_2, 3e-9);
    // The mean of T/r over the arc is 2πT/C (derived); here by the trapezoid rule over the angle, which
    // converges faster than any power for a smooth periodic integrand.
    let (a, b, count) = (4.5_f64, 3.5_f64, 2000_u32);
    let (mut arc, mut turned) = (0.0, 0.0);
    for step in 0..count {
        let angle = 2.0 * PI * f64::from(step) / f64::from(count);
        let speed = (a * angle.sin()).hypot(b * angle.cos());
        arc += speed;
        turned += a * b / (speed * speed);
    }
    near(arc * 2.0 * PI / f64::from(count), girth, 1e-13);
    near(turned / arc, 2.0 * PI / girth, 1e-12);
    // A circle has one pressure all round (derived).
    let round = Ellipse::from_diameters(8.0, 8.0).unwrap();
    near(round.girth_cm(), 8.0 * PI, 1e-15);
    near(round.sharp_over_mean(round.girth_cm()), 1.0, 1e-14);
    assert!(Ellipse::from_diameters(7.0, 9.0).is_none() && Ellipse::from_diameters(7.0, 0.0).is_none());
}

#[test]
fn radius_and_cone() {
    // r = (w² + h²)/(2h) (derived).
    for (w, h, r) in [(3.0, 1.0, 5.0), (2.0, 0.5, 4.25), (1.5, 1.0, 1.625)] {
        near(radius_from_chord(w, h), r, 1e-15);
    }
    // cos α for 22 to 36 cm over 20 cm (derived): −0.61 %.
    assert!(((cone_share(14.0, 20.0) - 1.0) * 100.0 + 0.61).abs() < 0.005);
}

#[test]
fn stiffness_by_hand() {
    // k 400, C0 20 (derived): pressures at 24.5, 25, 25.5 and 26; slope at 25: 3.01617655861 mmHg/cm.
    let at = |c| estimate_cm(&fabric(400.0), 1, c, 20.0, Spread::NONE);
    for (c, wanted) in [
        (24.5, 17.312_237_900_2),
        (25.0, 18.851_103_491_3),
        (25.5, 20.329_621_412_2),
        (26.0, 21.751_273_259_2),
    ] {
        near(pressed(&at(c)), wanted, 1e-11);
    }
    let Estimate::Pressed(found) = at(25.0) else { panic!() };
    near(found.per_girth, 3.016_176_558_61, 1e-11);
    // g = 1/e for a linear fabric (derived): at 25 % fourfold.
    near(found.per_girth / pressed(&at(25.0)) * 25.0, 4.0, 1e-12);
}

#[test]
fn garments_over_one_another_add() {
    // Σ T·2π/C (derived): 100 and 60 N/m on 25 cm; one of them, k 400 on 20 cm, has 100 N/m.
    let spread = Spread { girth_cm: 0.35, relaxed_cm: 0.3, tension: 0.05 };
    let one = estimate_cm(&fabric(400.0), 1, 25.0, 20.0, spread);
    let other = estimate_cm(&fabric(240.0), 1, 25.0, 20.0, spread);
    let of = |estimate, fabric| Stacked { estimate, fabric };
    let both = stack(&[of(one, 0), of(other, 1)], 0.35);
    near(pressed(&both), 30.161_765_586_1, 1e-11);
    let (Estimate::Pressed(a), Estimate::Pressed(b), Estimate::Pressed(sum)) = (one, other, both) else {
        panic!()
    };
    // One girth under both: slopes add; relaxed girths and unlike fabrics in quadrature (derived).
    near(sum.sd_own, (0.35 * (a.per_girth + b.per_girth)).hypot(a.sd_relaxed.hypot(b.sd_relaxed)), 1e-12);
    near(sum.sd_fabric, a.sd_fabric.hypot(b.sd_fabric), 1e-12);
    let Estimate::Pressed(same) = stack(&[of(one, 0), of(other, 0)], 0.35) else { panic!() };
    near(same.sd_fabric, a.sd_fabric + b.sd_fabric, 1e-12);
    // One that does not touch adds nothing; one beyond its curve leaves a lower bound.
    near(pressed(&stack(&[of(one, 0), of(Estimate::Slack, 1)], 0.35)), pressed(&one), 1e-15);
    let beyond = stack(&[of(one, 0), of(Estimate::Beyond { bound: pressure_from_mmhg(7.0) }, 1)], 0.35);
    assert!(beyond.pressure().is_none());
    near(mmhg(beyond.bound().unwrap()), pressed(&one) + 7.0, 1e-12);
}

#[test]
fn strips_and_loops() {
    // T = F/w; over two bars T = F/(2w); F = m·g (derived): 500 g on 5 cm.
    let bench = |kind| Bench {
        kind,
        width_cm: 5.0,
        relaxed_cm: 20.0,
        pulls: vec![Pull { force_n: 0.5 * GRAVITY, length_cm: 28.0, branch: Branch::Return }],
    };
    let (stretch, tension) = bench(BenchKind::Strip).points(Branch::Return)[0];
    near(stretch, 0.4, 1e-14);
    near(tension, 98.066_5, 1e-14);
    near(bench(BenchKind::Loop).points(Branch::Return)[0].1, 49.033_25, 1e-14);
}

#[test]
fn repeats_pool_into_one_rising_curve() {
    let pull = |force_n: f64, length_cm: f64| Pull { force_n, length_cm, branch: Branch::Return };
    let pulls = vec![
        pull(1.0, 21.0),
        pull(1.0, 23.0),
        pull(2.0, 25.0),
        pull(2.0, 25.0),
        pull(3.0, 24.5),
        pull(3.0, 24.5),
        pull(4.0, 28.0),
    ];
    let bench = Bench { kind: BenchKind::Strip, width_cm: 10.0, relaxed_cm: 20.0, pulls };
    let pooled = pool(&bench, Branch::Return).unwrap();
    // Means 10, 25, 22.5 and 40 %; 25 and 22.5 fall, so both become their mean, 23.75 %, and 20 and
    // 30 N/m one point at 25 N/m (pool adjacent violators by hand; derived).
    let wanted = [(0.0, 0.0), (0.10, 10.0), (0.2375, 25.0), (0.40, 40.0)];
    assert_eq!(pooled.curve.len(), wanted.len());
    for ((e, t), (e_wanted, t_wanted)) in pooled.curve.iter().zip(wanted) {
        assert!((e - e_wanted).abs() < 1e-12 && (t - t_wanted).abs() < 1e-12, "{:?}", pooled.curve);
    }
    // Residuals in tension, by hand on the straight pieces (derived): 4 pulls more than points.
    let at = |e: f64| match e {
        e if e < 0.10 => 100.0 * e,
        e if e < 0.2375 => 10.0 + 15.0 / 0.1375 * (e - 0.10),
        e => 25.0 + 15.0 / 0.1625 * (e - 0.2375),
    };
    let points =
        [(0.05, 10.0), (0.15, 10.0), (0.25, 20.0), (0.25, 20.0), (0.225, 30.0), (0.225, 30.0), (0.40, 40.0)];
    let sum: f64 = points.iter().map(|(e, t)| (at(*e) / t - 1.0).powi(2)).sum();
    near(pooled.spread.unwrap(), (sum / 4.0).sqrt(), 1e-9);
}

#[test]
fn oversized_sleeves_fall_in_order() {
    // Sleeves 1, 2 and 3 sizes too large on small arms press ever less: forearm 24, 19, 17, 13, upper arm 21,
    // 17, 16, 10 mmHg (Suehiro, Japan J Med, doi 10.31488/jjm.1000102, published). Read as ratios: each size
    // up lowers both, and three sizes take off 46 and 52 %. The model, with sizes 1 cm apart (invented),
    // falls in the same order.
    for (girth, relaxed, step) in [(24.0, 17.0, 1.0), (27.0, 19.5, 1.0)] {
        let at = |sizes: f64| {
            pressed(&estimate_cm(&fabric(220.0), 1, girth, relaxed + step * sizes, Spread::NONE))
        };
        let all: Vec<f64> = [0.0, 1.0, 2.0, 3.0].iter().map(|sizes| at(*sizes)).collect();
        assert!(all.windows(2).all(|pair| pair[1] < pair[0]), "{all:?}");
        let published = [24.0, 19.0, 17.0, 13.0, 21.0, 17.0, 16.0, 10.0];
        for (sizes, four) in [(1, &published[..4]), (3, &published[4..])] {
            assert!(four[sizes] < four[0] && all[sizes] < all[0]);
        }
        assert!((0.3..0.7).contains(&(all[3] / all[0])), "{all:?}");
    }
}

#[test]
fn wear_takes_off_pressure() {
    // Class 2 flat knit: 29.3, 27.6, 26.5 mmHg at 0, 1, 3 months (Veraart 1997, Phlebology, published). Least
    // squares by hand (derived): slope −0.878571429; 25 mmHg at 4.52032520 months, in the paper 4 to 5.
    let line = Line::through(&[(0.0, 29.3), (1.0, 27.6), (3.0, 26.5)]).unwrap();
    near(line.slope, -0.878_571_429, 1e-9);
    near(line.reaches(25.0).unwrap(), 4.520_325_20, 1e-9);
    assert!(Line::through(&[(1.0, 2.0), (1.0, 3.0)]).is_none());
}

#[test]
fn two_stockings_over_one_another_press_less_than_their_sum() {
    // 46.4 for two against 27.3 mmHg for one lying, 52.1 against 31.5 standing (Ann Vasc Dis 2012;5:435,
    // published): 0.85 and 0.83 of the plain sum. The fall is judged at the lower share and at the sum.
    let rules = crate::worn_support::rules();
    assert!((52.1_f64 / (2.0 * 31.5) - rules.share_low).abs() < 0.005);
    assert!((rules.share_low..rules.share_high).contains(&(46.4_f64 / (2.0 * 27.3))));
}

#[test]
fn a_cylinder_under_even_tension() {
    // P = T/r (Laplace; derived): 100 N/m on r 5 cm is 2000 Pa = 15.0012315169 mmHg.
    let t = |newton: f64| tension_from_newton_per_metre(newton);
    near(mmhg(laplace_cm(t(100.0), 10.0 * PI)), 15.001_231_516_9, 1e-11);
    // P = 2πT/C (derived): 100 N/m on 25, 22, 36 and 50 cm.
    for (cm, wanted) in [
        (25.0, 18.851_103_491_3),
        (22.0, 21.421_708_512_9),
        (36.0, 13.091_044_091_2),
        (50.0, 9.425_551_745_67),
    ] {
        near(mmhg(laplace(t(100.0), made::girth(cm))), wanted, 1e-11);
    }
    near(laplace(t(100.0), made::girth(25.0)).get::<uom::si::pressure::pascal>(), 2_513.274_122_87, 1e-11);
    // n = 1/(1 − overlap) (derived): half and two thirds.
    near(overlap_layers(0.5).unwrap(), 2.0, 1e-12);
    near(overlap_layers(2.0 / 3.0).unwrap(), 3.0, 1e-12);
    assert!(overlap_layers(1.0).is_none() && overlap_layers(-0.1).is_none());
}

#[test]
fn a_linear_fabric_at_one_reduction() {
    // P = 2πk(1/C0 − 1/C), k 400 N/m, the limb's girth reduced by 20 % (derived).
    for (girth, wanted) in [
        (15.0, 31.418_51),
        (20.0, 23.563_88),
        (25.0, 18.851_1),
        (30.0, 15.709_25),
        (40.0, 11.781_94),
        (50.0, 9.425_552),
        (60.0, 7.854_626),
    ] {
        near(pressed(&estimate_cm(&fabric(400.0), 1, girth, 0.8 * girth, Spread::NONE)), wanted, 3e-7);
    }
    // An untapered tube C0 16 cm, k 250, on ankle 20 and calf 38 (derived): it rises.
    near(pressed(&estimate_cm(&fabric(250.0), 1, 20.0, 16.0, Spread::NONE)), 14.727_424_602_6, 1e-11);
    near(pressed(&estimate_cm(&fabric(250.0), 1, 38.0, 16.0, Spread::NONE)), 42.632_018_586_5, 1e-11);
}

#[test]
fn the_edges_of_an_estimate() {
    // C <= C0: no contact, so no pressure (derived). Beyond the last point: at least 2πT/C (derived).
    let cloth = linear("knit", 400.0, 25.0);
    let at = |girth: f64| estimate_cm(&cloth, 2, girth, 20.0, Spread::NONE);
    for girth in [20.0, 19.99] {
        assert!(matches!(at(girth), Estimate::Slack) && pressed(&at(girth)) == 0.0);
    }
    assert!(pressed(&at(20.01)) > 0.0);
    near(pressed(&at(25.0)), 2.0 * 18.851_103_491_3, 1e-11);
    let beyond = at(25.01);
    assert!(beyond.pressure().is_none() && beyond.sd() == 0.0);
    near(mmhg(beyond.bound().unwrap()), 2.0 * 18.851_103_491_3 * 25.0 / 25.01, 1e-11);
    near(mmhg(beyond.at_least()), mmhg(beyond.bound().unwrap()), 1e-15);
}

#[test]
fn the_variance_of_one_pressure() {
    // Linear fabric: dP/dC = 2πk/C², dP/dC0 = −2πk/C0² (derived); two layers double every term.
    let spread = Spread { girth_cm: 0.35, relaxed_cm: 0.3, tension: 0.05 };
    let per = |cm: f64| 2.0 * PI * 400.0 / (cm / 100.0).powi(2) / 133.322_387_415 / 100.0;
    for layers in [1, 2] {
        let Estimate::Pressed(found) = estimate_cm(&fabric(400.0), layers, 25.0, 20.0, spread) else {
            panic!()
        };
        let n = f64::from(layers);
        near(found.per_girth, n * per(25.0), 1e-11);
        near(found.per_relaxed, -n * per(20.0), 1e-11);
        near(found.sd_own, n * (0.35 * per(25.0)).hypot(0.3 * per(20.0)), 1e-11);
        near(found.sd(), n * (0.35 * per(25.0)).hypot(0.3 * per(20.0)).hypot(0.05 * 18.851_103_491_3), 1e-11);
    }
}

#[test]
fn equal_repeats_are_no_certainty() {
    // Issue 9: three equal repeats gave an SD of 0 %; the floor is 2 % (house rule).
    let pull = |force_n: f64, length_cm: f64| Pull { force_n, length_cm, branch: Branch::Return };
    let pulls =
        [1.0, 2.0, 3.0].iter().flat_map(|n| std::iter::repeat_n(pull(*n, 20.0 + 2.0 * n), 3)).collect();
    let bench = Bench { kind: BenchKind::Strip, width_cm: 10.0, relaxed_cm: 20.0, pulls };
    near(pool(&bench, Branch::Return).unwrap().spread.unwrap(), LEAST_SPREAD, 1e-12);
    assert!(pool(&bench, Branch::Loading).is_none());
}

#[test]
fn published_means_lie_inside_the_wider_range() {
    // Sleeves in their own size: forearm 21.8 mmHg (SD 3.7), upper arm 15.2 (SD 3.3) between wearers
    // (Suehiro, published). A garment of those means has 95 % as worn that takes in 95 % of the wearers.
    for (mean, sd, girth) in [(21.8, 3.7, 24.0), (15.2, 3.3, 27.0)] {
        let relaxed = relaxed_for(&fabric(300.0), 1, girth, mean).unwrap().relaxed_cm;
        let spread = Spread { girth_cm: 0.35, relaxed_cm: 0.3, tension: 0.05 };
        let found = estimate_cm(&fabric(300.0), 1, girth, relaxed, spread);
        let worn = found.sd().hypot(crate::worn_support::rules().worn_sd_mmhg);
        assert!(worn >= sd && worn < 2.0 * sd, "{worn}");
    }
}
