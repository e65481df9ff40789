//! The reckoner: small sums that anyone may ask for, each with its inputs, its equation, its range and its source.
//!
//! A sum is a value of [`Sum`]: its name, what it asks for, and how it is answered. The command line and the pages list them
//! and ask them through [`reckon`]; neither knows one by name. Nothing is assumed in silence: an input that was left out is
//! asked for with what a kitchen can measure, or filled in by us and said so in the answer.

mod air;
mod answer;
mod asked;
mod cold;
mod dry;
mod error;
mod ferment;
mod heat;
mod measures;
mod salt;
mod sour;
mod spread;
mod sugar;
mod sum;
mod why;

pub use answer::{Note, Output, Reckoning, SourceLine, Vetoed};
pub use error::ReckonError;
pub use sum::{Input, Kind, Need, Sum};
pub use why::{EXPLAINS_ONLY, HeatHistory, HistoryLine, WhyError, WhyWords, compare_histories, explain_heat};

use almanac::Almanac;

use asked::Asked;

/// Every sum, in the order in which a kitchen comes to them.
#[must_use]
pub fn list_sums() -> Vec<&'static Sum> {
    [
        measures::SUMS,
        salt::SUMS,
        sour::SUMS,
        sugar::SUMS,
        air::SUMS,
        heat::SUMS,
        cold::SUMS,
        dry::SUMS,
        ferment::SUMS,
    ]
    .concat()
}

/// Answers a sum by its name from inputs as they were typed, `KEY=VALUE` each.
///
/// # Errors
///
/// When no sum has that name, an input is missing, unknown, given twice, of another kind or outside the range of the model.
pub fn reckon(almanac: &Almanac, name: &str, typed: &[String]) -> Result<Reckoning, ReckonError> {
    let sums = list_sums();
    let wanted = name.trim().to_lowercase().replace([' ', '_'], "-");
    let Some(sum) = sums.iter().find(|sum| sum.name == wanted) else {
        let near = |sum: &&&Sum| sum.name.split('-').any(|word| wanted.split('-').any(|typed| typed == word));
        return Err(ReckonError::NoSuchSum {
            typed: name.to_owned(),
            nearest: sums.iter().filter(near).map(|sum| sum.name).collect(),
        });
    };
    let asked = Asked::read(sum, typed)?;
    let answer = (sum.answer)(&asked, almanac)?;
    let reckoning = Reckoning::new(sum, &asked, answer);
    // The last gate: whatever a model let through, nothing is told that is no number.
    if reckoning.outputs.iter().all(answer::Output::is_number) {
        Ok(reckoning)
    } else {
        Err(foodsci::ModelError::NotANumber { quantity: "answer" }.into())
    }
}

#[cfg(test)]
mod anything;
#[cfg(test)]
mod printed;
#[cfg(test)]
mod tests;
