//! What the parts of a printed formula weigh as they go into the pot, for laying another mix beside it.

use almanac::{Almanac, Formula, Part};
use measure::Mass;

use super::line::{Line, PrintedAmount, read_lines};
use super::weights::Scales;

/// What a printed batch holds. Low-acid food is taken at its least and acid at its most, so that what is measured
/// against it is measured strictly.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct PrintedWeights {
    pub(crate) low_acid: Mass,
    pub(crate) produce: Mass,
    pub(crate) acid: Mass,
    pub(crate) liquid: Mass,
}

impl PrintedWeights {
    /// None where a line of the balance cannot be weighed, or goes in jar by jar.
    pub(crate) fn of(almanac: &Almanac, formula: &Formula) -> Option<Self> {
        let scales = Scales::new(almanac);
        let zero = Mass::ZERO;
        let mut sums = Self { low_acid: zero, produce: zero, acid: zero, liquid: zero };
        for line in read_lines(formula).iter().filter(|line| !line.is_poured_off() && !is_soak(line)) {
            let (sum, most) = match line.part {
                Part::LowAcid | Part::Oil => (&mut sums.low_acid, false),
                Part::Produce => (&mut sums.produce, false),
                Part::Acid => (&mut sums.acid, true),
                Part::Liquid => (&mut sums.liquid, false),
                _ => continue,
            };
            if line.optional && line.part == Part::Acid {
                continue;
            }
            *sum = *sum + weigh(&scales, line, most)?;
        }
        Some(sums)
    }
}

/// Water in which something only soaks never reaches the jar.
fn is_soak(line: &Line) -> bool {
    line.part == Part::Liquid && line.prep.contains("soak")
}

fn weigh(scales: &Scales<'_>, line: &Line, most: bool) -> Option<Mass> {
    let PrintedAmount::PerBatch { .. } = line.amount else { return None };
    let bought = scales.of_one_batch(line, None)?;
    let mass = if most { bought.high } else { bought.low };
    Some(if line.is_produce { mass * scales.edible_share(line) } else { mass })
}
