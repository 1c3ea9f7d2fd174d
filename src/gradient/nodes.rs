//! Owns the nodes and weights of the quadratures.
//!
//! Source: zeros of the Legendre and Hermite polynomials (derived; printed by `NumPy`).

/// Five nodes on [−1, 1] with weights that sum to 1.
pub(super) const LEGENDRE_5: [(f64, f64); 5] = [
    (-0.906_179_845_938_664, 0.118_463_442_528_094_64),
    (-0.538_469_310_105_683_1, 0.239_314_335_249_683_15),
    (0.0, 0.284_444_444_444_444_33),
    (0.538_469_310_105_683_1, 0.239_314_335_249_683_15),
    (0.906_179_845_938_664, 0.118_463_442_528_094_64),
];

/// Eight nodes on [−1, 1]; the weights sum to 2.
pub(super) const LEGENDRE_8: [(f64, f64); 8] = [
    (-0.960_289_856_497_536_2, 0.101_228_536_290_377_06),
    (-0.796_666_477_413_626_7, 0.222_381_034_453_374_43),
    (-0.525_532_409_916_329, 0.313_706_645_877_886_9),
    (-0.183_434_642_495_649_78, 0.362_683_783_378_361_66),
    (0.183_434_642_495_649_78, 0.362_683_783_378_361_66),
    (0.525_532_409_916_329, 0.313_706_645_877_886_9),
    (0.796_666_477_413_626_7, 0.222_381_034_453_374_43),
    (0.960_289_856_497_536_2, 0.101_228_536_290_377_06),
];

/// Nine nodes of a standard normal value, with weights that sum to 1.
pub(super) const HERMITE_9: [(f64, f64); 9] = [
    (-4.512_745_863_399_783, 2.234_584_400_774_660_7e-5),
    (-3.205_429_002_856_47, 0.002_789_141_321_231_769_2),
    (-2.076_847_978_677_83, 0.049_916_406_765_217_82),
    (-1.023_255_663_789_132_6, 0.244_097_502_894_939_53),
    (0.0, 0.406_349_206_349_206_35),
    (1.023_255_663_789_132_6, 0.244_097_502_894_939_53),
    (2.076_847_978_677_83, 0.049_916_406_765_217_82),
    (3.205_429_002_856_47, 0.002_789_141_321_231_769_2),
    (4.512_745_863_399_783, 2.234_584_400_774_660_7e-5),
];

/// Values that a knit's relative tension error takes, in its SDs, with their weights: three nodes of a
/// standard normal value (derived).
pub(super) const NORMAL_3: [(f64, f64); 3] =
    [(0.0, 2.0 / 3.0), (1.732_050_807_568_877_2, 1.0 / 6.0), (-1.732_050_807_568_877_2, 1.0 / 6.0)];

/// For each of the eight nodes, the integrals from −1 to it of the eight Lagrange polynomials over them.
pub(super) fn running() -> [[f64; 8]; 8] {
    let mut found = [[0.0; 8]; 8];
    for (row, (upto, _)) in found.iter_mut().zip(LEGENDRE_8) {
        // ∫ from −1 to `upto`, by the eight nodes on that part: exact for degree 7 (derived).
        let half = f64::midpoint(upto, 1.0);
        for (node, weight) in LEGENDRE_8 {
            let place = half * (node + 1.0) - 1.0;
            for (number, value) in row.iter_mut().enumerate() {
                *value += half * weight * lagrange(number, place);
            }
        }
    }
    found
}

/// The Lagrange polynomial that is 1 at node `number` and 0 at the others.
fn lagrange(number: usize, place: f64) -> f64 {
    let own = LEGENDRE_8.get(number).map_or(0.0, |(node, _)| *node);
    let others = LEGENDRE_8.iter().enumerate().filter(|(other, _)| *other != number);
    others.map(|(_, (node, _))| (place - node) / (own - node)).product()
}
