//! A formula of the household's own beside the nearest tested one, line by line, with what would have to change.

use almanac::{Almanac, Verdict};
use batch::clear::{ChangesQuestion, HomeIngredient, Nearest, clear_changes, find_nearest, shares_of_mix};
use measure::{Amount, write_mass_us, write_percent, write_volume_us};
use serde::Serialize;

use super::OwnFormula;
use crate::ask::{cite, word_printed_amount};

/// Two formulas side by side.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Beside {
    /// What the household calls its own.
    pub name: String,
    /// How it is kept.
    pub keep: &'static str,
    /// The id of the nearest tested formula; none where none shares its food.
    pub nearest: Option<String>,
    /// Its name.
    pub nearest_name: String,
    /// Where it is printed.
    pub source: String,
    /// Each line.
    pub lines: Vec<BesideLine>,
    /// The shares that keep a jar, where both can be weighed.
    pub shares: Vec<BesideShare>,
}

/// One ingredient of either.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct BesideLine {
    /// The household's; empty where it has none.
    pub yours: String,
    /// The printed one; empty where it has none.
    pub printed: String,
    /// What would have to change for the tested formula to hold; empty where nothing would.
    pub change: String,
}

/// One share of the balance.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct BesideShare {
    /// Of what.
    pub what: &'static str,
    /// The household's.
    pub yours: String,
    /// The printed one.
    pub printed: String,
}

/// Lays a formula of the household's own beside the nearest tested one. It gets no process, whatever it looks like.
#[must_use]
pub fn lay_beside(almanac: &Almanac, own: &OwnFormula) -> Beside {
    let (name, keep) = (own.name.clone(), own.keep.as_str());
    let Some(nearest) = find_nearest(almanac, &own.ingredients) else {
        let (nearest_name, source) = (String::new(), String::new());
        let lines = own.ingredients.iter().map(|one| line(word_mine(one), String::new(), String::new()));
        return Beside {
            name,
            keep,
            nearest: None,
            nearest_name,
            source,
            lines: lines.collect(),
            shares: Vec::new(),
        };
    };
    Beside {
        name,
        keep,
        nearest: Some(nearest.formula.id.to_string()),
        nearest_name: nearest.formula.name.to_string(),
        source: cite(almanac, &nearest.formula.citation),
        lines: word_lines(almanac, own, &nearest),
        shares: word_shares(almanac, own, &nearest),
    }
}

fn line(yours: String, printed: String, change: String) -> BesideLine {
    BesideLine { yours, printed, change }
}

/// Matched lines stand beside each other; what only one of them holds is judged by the change rules.
fn word_lines(almanac: &Almanac, own: &OwnFormula, nearest: &Nearest<'_>) -> Vec<BesideLine> {
    let printed = |at: usize| {
        let ingredient = &nearest.formula.ingredients[at];
        format!("{} {}", word_printed_amount(ingredient), ingredient.name)
    };
    let mut lines: Vec<BesideLine> = Vec::new();
    for (mine, matched) in own.ingredients.iter().zip(&nearest.matched) {
        lines.push(match matched {
            Some(at) => {
                let change = word_other(almanac, nearest, mine, *at);
                line(word_mine(mine), printed(*at), change)
            }
            None => {
                let judged = judge(almanac, nearest, &format!("add {}", mine.what));
                line(word_mine(mine), String::new(), format!("leave it out: {judged}"))
            }
        });
    }
    for (at, ingredient) in nearest.formula.ingredients.iter().enumerate() {
        if !nearest.matched.contains(&Some(at)) && !ingredient.optional {
            let judged = judge(almanac, nearest, &format!("no {}", ingredient.name));
            lines.push(line(String::new(), printed(at), format!("put it in: leaving it out is {judged}")));
        }
    }
    lines
}

/// What stands for what: a thing that shares no word with the printed one takes its place.
fn word_other(almanac: &Almanac, nearest: &Nearest<'_>, mine: &HomeIngredient, at: usize) -> String {
    let printed = &nearest.formula.ingredients[at].name;
    let words = |text: &str| -> Vec<String> {
        let parts = text.split(|mark: char| !mark.is_alphabetic()).filter(|part| part.len() > 2);
        parts.map(|part| part.trim_end_matches('s').to_lowercase()).collect()
    };
    let said = words(&mine.what);
    if words(printed).iter().any(|word| said.contains(word)) {
        return String::new();
    }
    let judged = judge(almanac, nearest, &format!("{} for {printed}", mine.what));
    format!("use {printed}: {} in its place is {judged}", mine.what)
}

/// What the change rules say of one difference.
fn judge(almanac: &Almanac, nearest: &Nearest<'_>, change: &str) -> String {
    let question = ChangesQuestion {
        formula: nearest.formula.id.clone(),
        pack: None,
        jar: None,
        canner: None,
        altitude: None,
        changes: vec![change.to_owned()],
    };
    let word = match clear_changes(almanac, &question).map(|answer| answer.changes[0].verdict) {
        Ok(Verdict::Tested) => "printed as allowed, as a change of the tested formula",
        Ok(Verdict::DoNot) => "printed as wrong",
        Ok(Verdict::NotTested) | Err(_) => "not tested",
    };
    word.to_owned()
}

fn word_mine(ingredient: &HomeIngredient) -> String {
    let amount = match &ingredient.amount {
        Some(Amount::Mass(mass)) => write_mass_us(*mass),
        Some(Amount::Volume(volume)) => write_volume_us(*volume),
        Some(Amount::Count(number)) => number.to_string(),
        Some(Amount::Container { number, name }) => format!("{number} {name}"),
        None => String::new(),
    };
    format!("{amount} {}", ingredient.what).trim().to_owned()
}

fn word_shares(almanac: &Almanac, own: &OwnFormula, nearest: &Nearest<'_>) -> Vec<BesideShare> {
    let (Ok(Some(mine)), Some(printed)) = (shares_of_mix(almanac, &own.ingredients), nearest.shares) else {
        return Vec::new();
    };
    let share = |what, mine, printed| BesideShare {
        what,
        yours: write_percent(mine),
        printed: write_percent(printed),
    };
    vec![
        share("low-acid food", mine.low_acid, printed.low_acid),
        share("acid", mine.acid, printed.acid),
        share("water, against the food and acid", mine.liquid, printed.liquid),
    ]
}
