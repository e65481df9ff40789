//! What is asked: a formula, what there is of its produce, and the jars and canner at hand.

use std::collections::BTreeMap;

use almanac::{CannerKind, FormulaId, JarSize};
use measure::{Altitude, Mass};
use thiserror::Error;

/// One formula to be fitted to what is there.
#[derive(Debug, Clone, PartialEq)]
pub struct FitQuestion {
    /// The formula.
    pub formula: FormulaId,
    /// What there is of its ingredients; the scarcest sets the size. What is not named is to be fetched.
    pub have: Vec<Have>,
    /// The jars to fill, in the order wished; empty takes the formula's own.
    pub jars: Vec<JarSize>,
    /// The canner; without one a load of the usual size is taken.
    pub canner: Option<CannerLoad>,
    /// The altitude, when it is known: only jars with a process at it are then filled.
    pub altitude: Option<Altitude>,
    /// The most batches anyone wants to make.
    pub most_batches: Option<u32>,
}

/// So much of one ingredient: net of its bowl, as it was bought or picked.
#[derive(Debug, Clone, PartialEq)]
pub struct Have {
    /// Which ingredient.
    pub ingredient: IngredientRef,
    /// How much of it.
    pub mass: Mass,
}

/// An ingredient of the formula, as a person or a program points at it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum IngredientRef {
    /// The first whose part is produce; where none is, the first that is prepared as produce.
    MainProduce,
    /// By its place in the formula, from 0.
    Index(usize),
    /// By its name or by words of its name.
    Named(String),
}

/// A canner and how many jars of each size it holds at once.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CannerLoad {
    /// What the household calls it.
    pub id: String,
    /// How it works.
    pub kind: CannerKind,
    /// Jars at once, by size; a size that is missing does not go in.
    pub holds: BTreeMap<JarSize, u32>,
}

/// Why a question cannot be answered as it stands.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum FitError {
    /// No formula has that id.
    #[error("no formula `{formula}`; hint: {}", nearest_hint(.nearest))]
    UnknownFormula {
        /// What was asked for.
        formula: String,
        /// Formulas whose names come close.
        nearest: Vec<String>,
    },
    /// The formula has no such ingredient.
    #[error("{formula} has no ingredient `{asked}`; hint: it has {}", .ingredients.join("; "))]
    UnknownIngredient {
        /// The formula.
        formula: String,
        /// The words or the number given.
        asked: String,
        /// The ingredients it has.
        ingredients: Vec<String>,
    },
    /// The words fit several ingredients.
    #[error("`{asked}` may be any of these in {formula}: {}; hint: give the whole name", .matches.join("; "))]
    AmbiguousIngredient {
        /// The formula.
        formula: String,
        /// The words given.
        asked: String,
        /// The ingredients they fit.
        matches: Vec<String>,
    },
    /// One ingredient was named twice.
    #[error("`{ingredient}` is given twice for {formula}; hint: add the weights together")]
    IngredientTwice {
        /// The formula.
        formula: String,
        /// The ingredient.
        ingredient: String,
    },
    /// No bare weight can be meant: the formula has no produce.
    #[error(
        "{formula} has no produce that a bare weight could mean; hint: name the ingredient, as in `sugar=1 kg`"
    )]
    NoProduce {
        /// The formula.
        formula: String,
    },
    /// Nothing was given to fit the formula to.
    #[error("nothing is given to fit {formula} to; hint: say how much there is of `{ingredient}`")]
    NothingHad {
        /// The formula.
        formula: String,
        /// The ingredient most likely meant.
        ingredient: String,
    },
    /// A weight that is none.
    #[error(
        "the weight of `{ingredient}` is {grams} g, which is not above 0 g; hint: weigh it net of its bowl"
    )]
    NoWeight {
        /// The ingredient.
        ingredient: String,
        /// The weight given, as it was understood.
        grams: String,
    },
    /// The ingredient is printed in a measure that no row turns into a weight.
    #[error(
        "`{ingredient}` is printed as {printed}, and no row on file turns that into a weight; hint: leave it out of what you have"
    )]
    NotWeighable {
        /// The ingredient.
        ingredient: String,
        /// The printed amount.
        printed: String,
    },
    /// The canner holds none of the jars.
    #[error("canner `{canner}` is not said to hold any {jars}; hint: say how many of them go in at once")]
    CannerHoldsNone {
        /// The canner.
        canner: String,
        /// The jar sizes tried.
        jars: String,
    },
}

fn nearest_hint(nearest: &[String]) -> String {
    if nearest.is_empty() {
        "the almanac lists the formulas on file".to_owned()
    } else {
        format!("did you mean {}?", nearest.join(" or "))
    }
}
