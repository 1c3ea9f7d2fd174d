//! Owns the quick reading and writing of decimals: exact to a tenth of a millimetre, the same bytes on
//! every machine.

use crate::quantity::{Dimension, Unit, Units, read_quantity};

/// Reads a length in `unit`, tenths of a millimetre, ties away from zero; a unit may stand in the cell.
///
/// # Errors
/// What is wrong, as the end of a sentence about the cell.
pub(super) fn tenths(cell: &[u8], unit: Unit) -> Result<i64, String> {
    if let Some(quick) = quick_tenths(cell, unit) {
        return Ok(quick);
    }
    let text = std::str::from_utf8(cell).map_err(|_| "is no text".to_owned())?;
    let units = Units::default().with(unit);
    let written = read_quantity(text, Dimension::Length, units).map_err(|fault| fault.to_string())?;
    written.tenth_millimetres().ok_or_else(|| "has more digits than a measurement can carry".to_owned())
}

/// A plain number of at most twelve digits; none for anything else.
fn quick_tenths(cell: &[u8], unit: Unit) -> Option<i64> {
    const MOST: usize = 13;
    if cell.is_empty() || cell.len() > MOST {
        return None;
    }
    let (mut whole, mut scale, mut point) = (0_i64, 1_i64, false);
    let mut digits = 0;
    for byte in cell {
        match byte {
            b'0'..=b'9' => {
                whole = whole * 10 + i64::from(byte - b'0');
                scale *= if point { 10 } else { 1 };
                digits += 1;
            }
            b'.' if !point => point = true,
            _ => return None,
        }
    }
    let factor = unit.tenth_millimetres()?;
    // At most twelve digits times 10 000 stay within an i64.
    (digits > 0).then(|| (2 * whole * factor + scale) / (2 * scale))
}

/// Powers of ten.
const POWERS: [u64; 13] = [
    1,
    10,
    100,
    1_000,
    10_000,
    100_000,
    1_000_000,
    10_000_000,
    100_000_000,
    1_000_000_000,
    10_000_000_000,
    100_000_000_000,
    1_000_000_000_000,
];

/// Writes a value with at most `places` (up to 12) decimals and no idle zeros, ties away from zero; −0 is 0. Values
/// of a million and more, and those that are not finite, are left out.
pub(super) fn write_decimal(out: &mut Vec<u8>, value: f64, places: usize) {
    let Some(power) = POWERS.get(places) else { return };
    if !value.is_finite() || value.abs() >= 1e6 {
        return;
    }
    #[expect(clippy::cast_precision_loss, reason = "powers of ten up to 1e12 are exact")]
    let scaled = (value.abs() * *power as f64).round();
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "at least 0 and below 1e18 after the checks above"
    )]
    let scaled = scaled as u64;
    if value < 0.0 && scaled > 0 {
        out.push(b'-');
    }
    write_whole(out, scaled / power);
    write_part(out, scaled % power, places);
}

/// Writes hundredths, such as centimetres of tenths of a millimetre, without idle zeros.
pub(super) fn write_hundredths(out: &mut Vec<u8>, value: i64) {
    if value < 0 {
        out.push(b'-');
    }
    let value = value.unsigned_abs();
    write_whole(out, value / 100);
    write_part(out, value % 100, 2);
}

/// Writes a whole number.
pub(super) fn write_whole(out: &mut Vec<u8>, value: u64) {
    let mut digits = [0_u8; 20];
    let mut rest = value;
    let mut count = 0;
    for digit in digits.iter_mut().rev() {
        *digit = digit_of(rest % 10);
        rest /= 10;
        count += 1;
        if rest == 0 {
            break;
        }
    }
    out.extend_from_slice(digits.get(20 - count..).unwrap_or_default());
}

fn write_part(out: &mut Vec<u8>, part: u64, places: usize) {
    if part == 0 {
        return;
    }
    let mut digits = [b'0'; 12];
    let mut rest = part;
    for digit in digits.iter_mut().take(places).rev() {
        *digit = digit_of(rest % 10);
        rest /= 10;
    }
    let kept = digits.iter().take(places).rposition(|digit| *digit != b'0').map_or(0, |at| at + 1);
    out.push(b'.');
    out.extend_from_slice(digits.get(..kept).unwrap_or_default());
}

fn digit_of(value: u64) -> u8 {
    b'0' + u8::try_from(value).unwrap_or(0)
}
