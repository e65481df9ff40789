//! What is left and where it may go. The words are ours; a limit that is printed says where.

use almanac::{Formula, KeptIn};
use measure::Mass;

use super::answer::{FittedBatch, LeftOver};
use super::line::{Held, Line};
use super::liquid::SpareLiquid;

/// Less than this is not told; ours: it is what a scale does not show.
const NOT_WORTH_TELLING: Mass = Mass::grams(5.0);

/// Produce beyond the batches.
pub(crate) fn produce_left(
    formula: &Formula,
    lines: &[Line],
    held: &[Held],
    batches: &[FittedBatch],
) -> Vec<LeftOver> {
    held.iter()
        .filter_map(|held| {
            let used = used_of(batches, held.index);
            let mass = held.mass - used;
            let line = lines.get(held.index)?;
            (mass > NOT_WORTH_TELLING).then(|| LeftOver {
                what: line.name.clone(),
                mass: Some(mass),
                goes_to: goes_to(formula, line).to_owned(),
            })
        })
        .collect()
}

/// What the batches use of an ingredient, as bought.
pub(crate) fn used_of(batches: &[FittedBatch], index: usize) -> Mass {
    batches
        .iter()
        .flat_map(|batch| &batch.ingredients)
        .filter(|line| line.index == index)
        .filter_map(|line| line.takes.or(line.weight))
        .sum()
}

fn goes_to(formula: &Formula, line: &Line) -> &'static str {
    match (line.is_produce, formula.kept_in) {
        (false, _) => "back on the shelf",
        (true, KeptIn::CanningJar | KeptIn::Refrigerator) => {
            "another formula, the freezer, the dehydrator or the table"
        }
        (true, KeptIn::Freezer | KeptIn::DryJar | KeptIn::Wrapped) => "another formula or the table",
    }
}

/// Cover liquid beyond the jars.
pub(crate) fn liquid_left(spare: &SpareLiquid) -> LeftOver {
    let (what, goes_to) = if spare.is_syrup {
        ("syrup", "the refrigerator; it sweetens drinks and fruit within days")
    } else {
        (
            "brine",
            "the refrigerator, for pickles that stay there and are eaten soon; it is not used in anything that is canned",
        )
    };
    LeftOver { what: what.to_owned(), mass: spare.mass, goes_to: goes_to.to_owned() }
}

/// Jars that are likely to be full and find no room in the load.
pub(crate) fn spare_jars(number: u32) -> Option<LeftOver> {
    (number > 0).then(|| LeftOver {
        what: if number == 1 {
            "one jar more than the canner takes".to_owned()
        } else {
            format!("{number} jars more than the canner takes")
        },
        mass: None,
        goes_to: "the refrigerator, to be eaten first: a filled jar does not wait for the next load"
            .to_owned(),
    })
}
