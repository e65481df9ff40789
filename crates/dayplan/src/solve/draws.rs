//! Numbers that look random and are always the same.

/// A fixed sequence of numbers that look random (Weyl steps through a 64-bit mixer).
pub(super) struct Draws {
    pub(super) state: u64,
}

impl Draws {
    fn next(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.state;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A number from 0 to below `n`, which is not 0.
    pub(super) fn below(&mut self, n: u64) -> u64 {
        self.next() % n
    }

    /// A number from 0 to below 1.
    pub(super) fn unit(&mut self) -> f64 {
        // 53 bits are what a float holds exactly.
        (self.next() >> 11) as f64 / (1u64 << 53) as f64
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn draws_stay_below_their_limit_and_repeat() {
        let row = || {
            let mut draws = Draws { state: 7 };
            (0..100).map(|_| draws.below(10)).collect::<Vec<u64>>()
        };
        assert_eq!(row(), row());
        assert!(
            row().iter().all(|&n| n < 10)
                && row().iter().collect::<std::collections::BTreeSet<_>>().len() == 10
        );
        assert!((0.0..1.0).contains(&Draws { state: 1 }.unit()));
    }
}
