//! Owns the reader of one number with its unit. Does not read ranges or files.

use std::fmt;

use super::{Decimal, Dimension, NumberFault, Unit, Units};

/// A number as written, with the unit that holds for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Written {
    /// The number, exact.
    pub number: Decimal,
    /// Its unit, stated or declared.
    pub unit: Unit,
}

impl Written {
    /// In the coherent SI unit of the dimension (m, Pa, N/m, N, kg, 1, m³).
    pub fn si(self) -> f64 {
        self.number.to_f64() * self.unit.si()
    }

    /// A length as exact tenths of a millimetre times a power of ten, and that power; none for other
    /// dimensions or where it does not fit.
    pub(super) fn exact_tenth_millimetres(self) -> Option<(i128, i128)> {
        self.number.times_exactly(self.unit.tenth_millimetres()?)
    }

    /// A length in tenths of a millimetre, ties away from zero; none for other dimensions or
    /// where it does not fit.
    pub fn tenth_millimetres(self) -> Option<i64> {
        self.number.times_to_nearest(self.unit.tenth_millimetres()?)
    }
}

/// Why a text is not a quantity of the wanted dimension.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum QuantityFault {
    /// The number itself is wrong.
    Number(NumberFault),
    /// No unit in the text and none declared.
    NoUnit(Dimension),
    /// A unit that we do not know.
    UnknownUnit(String, Dimension),
    /// A fraction as on an inch tape; the decimal to write instead.
    Fraction(String),
    /// The sign of inches; the number before it.
    InchSign(String),
    /// A unit of another dimension.
    OtherDimension(Unit, Dimension),
}

impl fmt::Display for QuantityFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Number(fault) => fault.fmt(out),
            Self::NoUnit(wanted) => write!(
                out,
                "has no unit; add {}, or declare one under `units: {{{}: …}}`",
                wanted.accepted(),
                wanted.key()
            ),
            Self::UnknownUnit(unit, wanted) => {
                write!(out, "has the unknown unit `{unit}`; accepted: {}", wanted.accepted())
            }
            Self::Fraction(decimal) => {
                write!(
                    out,
                    "holds a fraction; write it as a decimal with its unit: `{decimal} in` if it is inches"
                )
            }
            Self::InchSign(number) => write!(out, "has the sign of inches; write `{number} in`"),
            Self::OtherDimension(unit, wanted) => {
                write!(
                    out,
                    "is a {} in `{}`; a {} is wanted here: {}",
                    unit.dimension().key(),
                    unit.symbol(),
                    wanted.key(),
                    wanted.accepted()
                )
            }
        }
    }
}

/// Reads `31.5 cm`, or a bare `31.5` when `units` declares the unit.
///
/// # Errors
/// A [`QuantityFault`] that names what is wrong and what would be accepted.
pub fn read_quantity(text: &str, wanted: Dimension, units: Units) -> Result<Written, QuantityFault> {
    let (number, unit) = split_unit(text);
    let fraction = as_on_a_tape(number, unit);
    let number = Decimal::parse(number).map_err(QuantityFault::Number)?;
    if let Some(fault) = fraction.filter(|_| wanted == Dimension::Length) {
        return Err(fault);
    }
    let unit = match unit {
        "" => units.of(wanted).ok_or(QuantityFault::NoUnit(wanted))?,
        stated => Unit::parse(stated).ok_or_else(|| QuantityFault::UnknownUnit(stated.to_owned(), wanted))?,
    };
    if unit.dimension() != wanted {
        return Err(QuantityFault::OtherDimension(unit, wanted));
    }
    Ok(Written { number, unit })
}

/// What is wrong with a length as an inch tape has it: `6 7/8`, `7/8 in` or `13"`; none for anything else.
fn as_on_a_tape(number: &str, unit: &str) -> Option<QuantityFault> {
    let signs = ['"', '\u{2033}', '\u{201d}', '\''];
    let bare = unit.trim_end_matches("in").trim_end().trim_end_matches(signs).trim_end();
    if bare.is_empty() {
        let is_inches = unit.contains(signs) && Decimal::parse(number).is_ok();
        return is_inches.then(|| QuantityFault::InchSign(number.to_owned()));
    }
    let whole: u32 = number.parse().ok()?;
    let (whole, above, below) = if let Some(below) = bare.strip_prefix('/') {
        (0, whole, below)
    } else {
        let (above, below) = bare.split_once('/')?;
        (whole, above.trim().parse().ok()?, below)
    };
    let below: u32 = below.trim().parse().ok()?;
    // A tape has halves to sixty-fourths; their decimals end.
    let digits = [2_u32, 4, 8, 16, 32, 64].iter().position(|one| *one == below)? + 1;
    let value = f64::from(whole) + f64::from(above) / f64::from(below);
    Some(QuantityFault::Fraction(
        format!("{value:.digits$}").trim_end_matches('0').trim_end_matches('.').to_owned(),
    ))
}

/// The number part and the unit part of a text; the unit is empty where there is none.
pub(super) fn split_unit(text: &str) -> (&str, &str) {
    let text = text.trim();
    let in_number = |c: char| c.is_ascii_digit() || matches!(c, '+' | '-' | '\u{2212}' | '.' | ',');
    let end = text.find(|c: char| !in_number(c)).unwrap_or(text.len());
    let (number, unit) = text.split_at(end);
    let unit = unit.trim();
    let not_finite = Decimal::parse(text) == Err(NumberFault::NotFinite);
    let exponent = Decimal::parse(text) == Err(NumberFault::Exponent);
    if number.is_empty() || not_finite || exponent { (text, "") } else { (number, unit) }
}
