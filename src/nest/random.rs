//! A small generator of numbers with a fixed start, so that the same pieces always get the same
//! layout, on every run and every machine.

/// The xorshift64* generator (S. Vigna, An experimental exploration of Marsaglia's xorshift
/// generators, scrambled, ACM Transactions on Mathematical Software 42, 2016; from memory).
pub(super) struct Random(u64);

impl Random {
    /// Starts a run of numbers; the same `start` gives the same run.
    pub(super) fn new(start: u64) -> Random {
        Random(start.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1)
    }

    /// A whole number from 0 up to, but not including, `limit`; 0 when `limit` is 0.
    pub(super) fn below(&mut self, limit: usize) -> usize {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        let high = self.0.wrapping_mul(0x2545_F491_4F6C_DD1D) >> 32;
        ((high * limit as u64) >> 32) as usize
    }
}

impl Random {
    /// A number from 0 up to, but not including, 1.
    pub(super) fn part(&mut self) -> f64 {
        self.below(1 << 30) as f64 / f64::from(1 << 30)
    }
}
