//! Draws that are the same on every machine.

use rand_pcg::Pcg64;
use rand_pcg::rand_core::Rng;

use super::Spread;

/// The stream of the generator; any fixed number does, and the first draws are pinned in a test.
const STREAM: u128 = 0x5711_1200_a1b2_c3d4_e5f6_0718_293a_4b5c;

/// A seeded generator.
#[derive(Debug)]
pub(super) struct Draws(Pcg64);

impl Draws {
    pub(super) fn seeded(seed: u64) -> Draws {
        Draws(Pcg64::new(u128::from(seed), STREAM))
    }

    /// A number from 0 up to, not including, 1, on a grid of 2^-53: every one of them is exact.
    pub(super) fn unit(&mut self) -> f64 {
        /// 2^-53.
        const GRID: f64 = 1.0 / 9_007_199_254_740_992.0;
        // Never rounds: 53 bits fit a double.
        (self.0.next_u64() >> 11) as f64 * GRID
    }
}

/// The quantile of a triangular distribution: of so many minutes or fewer are a share `p` of the days.
///
/// # Source
/// Inverse of the triangular distribution function, by its two arcs: `low + sqrt(p (h - l)(m - l))` below the mode's
/// share `(m - l) / (h - l)`, `high - sqrt((1 - p)(h - l)(h - m))` above it (textbook; derived by integrating the density).
pub(super) fn triangular(spread: Spread, p: f64) -> f64 {
    let [low, typical, high] = [spread.low, spread.typical, spread.high].map(f64::from);
    if high <= low {
        return typical;
    }
    let typical = typical.clamp(low, high);
    if p * (high - low) < typical - low {
        low + libm::sqrt(p * (high - low) * (typical - low))
    } else {
        high - libm::sqrt((1.0 - p) * (high - low) * (high - typical))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quantiles_meet_their_ends_and_their_mode() {
        let spread = Spread { low: 4, typical: 7, high: 12 };
        let check = |p: f64, minutes: f64| assert!((triangular(spread, p) - minutes).abs() < 1e-9, "{p}");
        check(0.0, 4.0);
        check(3.0 / 8.0, 7.0);
        check(1.0, 12.0);
        // 12 - sqrt(0.2 * 8 * 5).
        check(0.8, 12.0 - 8.0_f64.sqrt());
        assert!((triangular(Spread { low: 5, typical: 5, high: 5 }, 0.3) - 5.0).abs() < 1e-12);
    }

    #[test]
    fn many_draws_have_the_mean_of_their_distribution() {
        let spread = Spread { low: 4, typical: 7, high: 12 };
        let mut draws = Draws::seeded(11);
        let sum: f64 = (0..20_000).map(|_| triangular(spread, draws.unit())).sum();
        // The mean is (4 + 7 + 12) / 3; the standard error of 20,000 draws is about 0.012.
        assert!((sum / 20_000.0 - 23.0 / 3.0).abs() < 0.05, "{}", sum / 20_000.0);
    }
}
