//! Owns exact decimal numbers as people write them. Does not know units.

use std::fmt;

/// A finite decimal number, held exactly as `digits` / 10^`scale`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Decimal {
    digits: i128,
    scale: u32,
}

/// Why a text is not a number that we take.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NumberFault {
    /// A comma stands where a point belongs; the corrected text is given.
    DecimalComma(String),
    /// `.nan`, `.inf` and their like.
    NotFinite,
    /// An exponent such as `1e3`.
    Exponent,
    /// More digits than any measurement has.
    TooManyDigits,
    /// Nothing that reads as a number.
    NotANumber,
}

impl fmt::Display for NumberFault {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::DecimalComma(mended) => write!(out, "has a decimal comma; write `{mended}`"),
            Self::NotFinite => out.write_str("is not a finite number"),
            Self::Exponent => out.write_str("has an exponent; write the number out"),
            Self::TooManyDigits => out.write_str("has more digits than a measurement can carry"),
            Self::NotANumber => out.write_str("is not a number"),
        }
    }
}

/// Most digits that a number may have, before and after the point together.
const MOST_DIGITS: usize = 18;

impl Decimal {
    /// Reads a plain decimal: an optional sign, digits, an optional point with digits.
    ///
    /// # Errors
    /// A [`NumberFault`] that says what is wrong; nothing is guessed.
    pub fn parse(text: &str) -> Result<Self, NumberFault> {
        let text = text.trim();
        let (negative, body) = match text.chars().next() {
            Some('-' | '\u{2212}') => (true, text.trim_start_matches(['-', '\u{2212}'])),
            Some('+') => (false, text.trim_start_matches('+')),
            _ => (false, text),
        };
        let lower = body.to_ascii_lowercase();
        if matches!(lower.as_str(), ".nan" | "nan" | ".inf" | "inf" | "infinity") {
            return Err(NumberFault::NotFinite);
        }
        if body.contains(',') && body.chars().all(|c| c.is_ascii_digit() || c == ',' || c == '.') {
            return Err(NumberFault::DecimalComma(text.replacen(',', ".", 1)));
        }
        let mut halves = body.splitn(2, '.');
        let whole = halves.next().unwrap_or_default();
        let part = halves.next().unwrap_or_default();
        let all_digits = |s: &str| s.chars().all(|c| c.is_ascii_digit());
        if whole.is_empty() && part.is_empty() {
            return Err(NumberFault::NotANumber);
        }
        if !all_digits(whole) || !all_digits(part) {
            let exponent = lower.split_once('e').is_some_and(|(before, after)| {
                before.starts_with(|c: char| c.is_ascii_digit() || c == '.')
                    && after.trim_start_matches(['+', '-']).chars().all(|c| c.is_ascii_digit())
            });
            return Err(if exponent { NumberFault::Exponent } else { NumberFault::NotANumber });
        }
        if whole.len() + part.len() > MOST_DIGITS {
            return Err(NumberFault::TooManyDigits);
        }
        let digits = format!("{whole}{part}").parse::<i128>().map_err(|_| NumberFault::NotANumber)?;
        let scale = u32::try_from(part.len()).map_err(|_| NumberFault::TooManyDigits)?;
        Ok(Self { digits: if negative { -digits } else { digits }, scale })
    }

    /// The nearest binary floating-point number.
    pub fn to_f64(self) -> f64 {
        format!("{}e-{}", self.digits, self.scale).parse().unwrap_or_default()
    }

    /// This number times `factor`, to the nearest whole number, ties away from zero; none where it
    /// would not fit.
    pub fn times_to_nearest(self, factor: i64) -> Option<i64> {
        let product = self.digits.checked_mul(i128::from(factor))?;
        i64::try_from(nearest(product, 10_i128.checked_pow(self.scale)?)).ok()
    }

    /// This number times `factor`, as a whole number over a power of ten; none where it would not fit.
    pub(super) fn times_exactly(self, factor: i64) -> Option<(i128, i128)> {
        Some((self.digits.checked_mul(i128::from(factor))?, 10_i128.checked_pow(self.scale)?))
    }

    /// Whether the number is below zero.
    pub fn is_negative(self) -> bool {
        self.digits < 0
    }
}

/// `numerator` / `divisor` to the nearest whole number, ties away from zero; `divisor` is positive.
pub(crate) fn nearest(numerator: i128, divisor: i128) -> i128 {
    let half = divisor / 2;
    let (quotient, rest) = (numerator / divisor, (numerator % divisor).abs());
    let up = rest > half || (rest == half && divisor % 2 == 0);
    if up { quotient + numerator.signum() } else { quotient }
}

impl fmt::Display for Decimal {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.digits < 0 {
            out.write_str("-")?;
        }
        let scale = usize::try_from(self.scale).unwrap_or_default();
        let digits = format!("{:0>width$}", self.digits.unsigned_abs(), width = scale + 1);
        let (whole, part) = digits.split_at(digits.len() - scale);
        if part.is_empty() { out.write_str(whole) } else { write!(out, "{whole}.{part}") }
    }
}
