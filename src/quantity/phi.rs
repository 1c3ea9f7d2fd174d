//! Owns the standard normal distribution function.

/// Φ(z), the chance that a standard normal value lies below `z`, by erfc (accurate in the lower tail).
///
/// Source: definition of erfc (derived); `libm` gives the same bits on every platform.
pub fn phi(z: f64) -> f64 {
    0.5 * libm::erfc(-z / std::f64::consts::SQRT_2)
}
