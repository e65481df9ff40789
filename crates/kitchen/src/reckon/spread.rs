//! Ranges: a model asked at the ends of what its inputs may be, or many times in between.

use almanac::Spread;
use foodsci::band::{Spread as Drawn, draw_inputs, find_band};

use super::error::ReckonError;

/// The ends of an answer and the likeliest in between.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// The least.
    pub low: f64,
    /// The likeliest; none where only the ends mean anything.
    pub likely: Option<f64>,
    /// The most.
    pub high: f64,
}

impl Range {
    /// A range of which only the ends mean anything.
    pub(super) fn ends(one: f64, other: f64) -> Self {
        Self { low: one.min(other), likely: None, high: one.max(other) }
    }

    /// A range around its likeliest value; the ends may come in either order.
    pub(super) fn around(one: f64, likely: f64, other: f64) -> Self {
        Self { low: one.min(other), likely: Some(likely), high: one.max(other) }
    }
}

/// The numbers of a spread, for drawing from it.
pub(super) fn numbers<Q: Copy>(spread: Spread<Q>, read: impl Fn(Q) -> f64) -> Drawn {
    Drawn { low: read(spread.low), likely: read(spread.likely), high: read(spread.high) }
}

/// One figure that is known.
pub(super) fn known(value: f64) -> Drawn {
    Drawn { low: value, likely: value, high: value }
}

/// Asks a model a few hundred times with its inputs drawn from their spreads: nine in ten answers lie in the range. The
/// likeliest is the answer to the likeliest inputs.
///
/// Draws for which the model has no answer (a burner too weak to boil) are left out as long as the likeliest has one.
pub(super) fn spread_over(
    spreads: &[Drawn],
    ask: impl Fn(&[f64]) -> Result<f64, ReckonError>,
) -> Result<Range, ReckonError> {
    /// Enough for the ends to be steady to a percent, and far below ten milliseconds.
    const DRAWS: usize = 200;
    /// Fixed, so that the same question has the same answer.
    const SEED: u64 = 0x5717_1200;
    let likeliest: Vec<f64> = spreads.iter().map(|spread| spread.likely).collect();
    let likely = ask(&likeliest)?;
    let answers: Vec<f64> =
        draw_inputs(spreads, DRAWS, SEED).iter().filter_map(|draw| ask(draw).ok()).collect();
    Ok(match find_band(answers) {
        Some(band) => Range { low: band.low.min(likely), likely: Some(likely), high: band.high.max(likely) },
        None => Range { low: likely, likely: Some(likely), high: likely },
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_known_has_no_width_and_what_is_not_has() {
        let fixed = spread_over(&[known(3.0)], |draw| Ok(draw[0] * 2.0)).unwrap();
        assert_eq!(fixed, Range { low: 6.0, likely: Some(6.0), high: 6.0 });
        let wide = Drawn { low: 1.0, likely: 2.0, high: 4.0 };
        let range = spread_over(&[wide], |draw| Ok(draw[0])).unwrap();
        assert!(range.low > 1.0 && range.low < 2.0 && range.high > 2.0 && range.high < 4.0);
        assert_eq!(range, spread_over(&[wide], |draw| Ok(draw[0])).unwrap());
    }
}
