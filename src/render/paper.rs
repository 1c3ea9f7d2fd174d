//! Owns the paper sizes.

/// Paper of a printed sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 210 × 297 mm (ISO 216).
    A4,
    /// 8.5 × 11 inches.
    Letter,
}
