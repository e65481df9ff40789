//! What is not known, as a band: a model asked many times with its inputs drawn from their ranges.
//!
//! The seed is handed in: the same seed gives the same band on any machine.

/// A range that an input is drawn from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    /// The least it may be.
    pub low: f64,
    /// The likeliest.
    pub likely: f64,
    /// The most it may be.
    pub high: f64,
}

/// A row of numbers that looks like chance and is the same for the same seed (SplitMix64: G. L. Steele and others, Fast
/// splittable pseudorandom number generators, 2014; from memory).
#[derive(Debug, Clone)]
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// From 0 to just below 1.
    fn next_share(&mut self) -> f64 {
        // Exact: the upper 53 bits fit a double.
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Below `bound`.
    fn next_below(&mut self, bound: usize) -> usize {
        // Never truncates: below `bound`.
        (self.next_share() * bound as f64) as usize
    }
}

impl Spread {
    /// A range without a likeliest value: its middle.
    #[must_use]
    pub fn between(low: f64, high: f64) -> Self {
        Self { low, likely: (low + high) / 2.0, high }
    }

    /// The value below which a share of draws lies: a triangle with its top at the likeliest.
    fn at_share(&self, share: f64) -> f64 {
        let width = self.high - self.low;
        if width <= 0.0 {
            return self.likely;
        }
        let rises = (self.likely - self.low) / width;
        if share < rises {
            self.low + width * libm::sqrt(share * rises)
        } else {
            self.high - width * libm::sqrt((1.0 - share) * (1.0 - rises))
        }
    }
}

/// Draws of several inputs together, each range cut into as many equal parts as there are draws and one drawn from each part
/// (Latin hypercube): a thousand draws cover the corners that chance alone would miss.
#[must_use]
pub fn draw_inputs(spreads: &[Spread], draws: usize, seed: u64) -> Vec<Vec<f64>> {
    let mut chance = Chance(seed);
    let columns: Vec<Vec<f64>> = spreads
        .iter()
        .map(|spread| {
            let mut parts: Vec<usize> = (0..draws).collect();
            for at in (1..draws).rev() {
                parts.swap(at, chance.next_below(at + 1));
            }
            // Exact: counts of draws.
            parts
                .iter()
                .map(|part| spread.at_share((*part as f64 + chance.next_share()) / draws as f64))
                .collect()
        })
        .collect();
    (0..draws).map(|draw| columns.iter().map(|column| column[draw]).collect()).collect()
}

/// The ends between which nine in ten of the answers lie, and the middle one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// One in twenty lies below.
    pub low: f64,
    /// The middle answer.
    pub middle: f64,
    /// One in twenty lies above.
    pub high: f64,
}

/// The band of answers; `None` when there are none or one is no number.
#[must_use]
pub fn find_band(mut answers: Vec<f64>) -> Option<Band> {
    if answers.is_empty() || answers.iter().any(|answer| answer.is_nan()) {
        return None;
    }
    answers.sort_by(f64::total_cmp);
    let last = answers.len() - 1;
    // Never out of range: a share below one of the last index.
    let at = |share: f64| answers[libm::round(share * last as f64) as usize];
    Some(Band { low: at(0.05), middle: at(0.5), high: at(0.95) })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_seed_gives_the_same_draws_and_another_does_not() {
        let spreads = [Spread::between(0.0, 1.0), Spread { low: 1.0, likely: 2.0, high: 5.0 }];
        assert_eq!(draw_inputs(&spreads, 100, 7), draw_inputs(&spreads, 100, 7));
        assert_ne!(draw_inputs(&spreads, 100, 7), draw_inputs(&spreads, 100, 8));
    }

    #[test]
    fn draws_fill_their_range_and_never_leave_it() {
        let spread = Spread { low: 1.0, likely: 2.0, high: 5.0 };
        let draws = draw_inputs(&[spread], 1000, 1);
        assert!(draws.iter().all(|draw| (1.0..=5.0).contains(&draw[0])));
        let mean = draws.iter().map(|draw| draw[0]).sum::<f64>() / 1000.0;
        // The mean of a triangle is that of its corners.
        assert!((mean - 8.0 / 3.0).abs() < 0.01, "{mean}");
        let fixed = draw_inputs(&[Spread::between(3.0, 3.0)], 5, 1);
        assert!(fixed.iter().all(|draw| draw[0] == 3.0));
    }

    #[test]
    fn nine_in_ten_lie_in_the_band() {
        let answers: Vec<f64> = (0..=100).map(f64::from).collect();
        assert_eq!(find_band(answers), Some(Band { low: 5.0, middle: 50.0, high: 95.0 }));
        assert_eq!(find_band(vec![]), None);
        assert_eq!(find_band(vec![1.0, f64::NAN]), None);
    }
}
