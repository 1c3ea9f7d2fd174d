//! Owns the knits of what is worn, by number.

use super::EstimateRules;
use crate::garment::{Fabric, Outfit, Piece};
use crate::gradient::{Band, Knit, TensionCurve};

/// A fabric as the rule of the fall sees it.
#[derive(Clone, Copy, Debug)]
struct Curve<'o>(&'o Fabric);

impl TensionCurve for Curve<'_> {
    fn tension(&self, stretch: f64) -> Option<(f64, f64)> {
        self.0.at(stretch).map(|one| (one.newton_per_metre, one.slope))
    }

    fn last_tension(&self) -> f64 {
        self.0.curve.last().map_or(0.0, |(_, tension)| *tension)
    }
}

/// One knit.
#[derive(Clone, Copy, Debug)]
struct One<'o> {
    /// Its fabric; none where none is named.
    fabric: Option<Curve<'o>>,
    /// The piece that it belongs to, where no fabric is named: two such knits are never taken as alike.
    piece: usize,
}

/// Every knit of what is worn. Pieces that name no fabric count as a knit each.
#[derive(Clone, Debug)]
pub(super) struct Knits<'o> {
    all: Vec<One<'o>>,
}

/// Whether a fabric has a curve.
pub(super) fn has_curve(fabric: &Fabric) -> bool {
    fabric.curve.len() >= 2
}

impl<'o> Knits<'o> {
    /// The knits of an outfit.
    pub(super) fn of(outfit: &'o Outfit) -> Self {
        let mut all: Vec<One<'o>> = outfit
            .fabrics()
            .into_iter()
            .map(|fabric| One { fabric: Some(Curve(fabric)), piece: 0 })
            .collect();
        for (piece, worn) in outfit.pieces.iter().enumerate() {
            if let Piece::Garment(garment) = &worn.piece
                && garment.relaxed.iter().any(|(landmark, _)| garment.fabric_at(*landmark).is_none())
            {
                all.push(One { fabric: None, piece });
            }
        }
        Self { all }
    }

    /// The number of a fabric, or of a piece without one.
    pub(super) fn number(&self, fabric: Option<&Fabric>, piece: usize) -> usize {
        let found = match fabric {
            Some(fabric) => {
                self.all.iter().position(|one| one.fabric.is_some_and(|own| own.0.is_same(fabric)))
            }
            None => self.all.iter().position(|one| one.fabric.is_none() && one.piece == piece),
        };
        found.unwrap_or_default()
    }

    /// As the rule of the fall takes them.
    pub(super) fn list<'k>(&'k self, rules: &EstimateRules) -> Vec<Knit<'k>>
    where
        'o: 'k,
    {
        self.all
            .iter()
            .map(|one| Knit {
                curve: one
                    .fabric
                    .as_ref()
                    .filter(|curve| has_curve(curve.0))
                    .map(|curve| curve as &dyn TensionCurve),
                tension_sd: one.fabric.and_then(|curve| curve.0.tension_sd).unwrap_or(rules.tension_sd),
            })
            .collect()
    }

    /// The exponents of a knit's tension.
    pub(super) fn band(&self, number: usize, rules: &EstimateRules) -> Band {
        let fabric = self.all.get(number).and_then(|one| one.fabric);
        let exponent = fabric.and_then(|curve| curve.0.exponent);
        exponent.map_or(rules.band, |exponent| {
            let (low, high) = exponent.band(rules.fall.strip_band, (rules.band.low, rules.band.high));
            Band { low, high }
        })
    }
}

/// SD of a relaxed girth measured once, cm.
pub(super) fn relaxed_sd(fabric: Option<&Fabric>, rules: &EstimateRules) -> f64 {
    fabric.and_then(|fabric| fabric.relaxed_sd_cm).unwrap_or(rules.relaxed_sd_cm)
}
