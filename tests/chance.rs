//! Repeatable chance for simulations: splitmix64 and the Box–Muller transform, seeds fixed.

/// A stream of chance.
pub struct Chance(u64);

impl Chance {
    /// The stream of a seed.
    pub fn of(seed: u64) -> Self {
        Self(seed)
    }

    /// Uniform in [0, 1).
    pub fn uniform(&mut self) -> f64 {
        // Source: splitmix64, Steele, Lea & Flood 2014, OOPSLA.
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^= mixed >> 31;
        (mixed >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Normal, mean 0, SD 1.
    pub fn normal(&mut self) -> f64 {
        let (one, other) = (1.0 - self.uniform(), self.uniform());
        (-2.0 * one.ln()).sqrt() * (std::f64::consts::TAU * other).cos()
    }

    /// A whole number from 0 to `below` − 1.
    pub fn below(&mut self, below: usize) -> usize {
        (self.uniform() * below as f64) as usize
    }
}
