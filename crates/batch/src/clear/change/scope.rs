//! Which change rules speak about a question, and in what order: a row for the formula or the food comes before a
//! row of its class, and a row for everything comes last.

use almanac::{
    Almanac, AppliesTo, CannerKind, ChangeRule, Formula, FormulaClass, FormulaId, Part, ProductId, What,
};

use super::query::may_decide;
use super::words::words_of;

/// The rules that apply, by rank.
pub(crate) struct Scope<'a> {
    /// First the rows for the formula or the food, then those of its class, then those for everything.
    pub(crate) ranks: [Vec<&'a ChangeRule>; 3],
    /// The formula the food is made by, as far as it is known.
    pub(crate) formula: Option<&'a Formula>,
}

impl<'a> Scope<'a> {
    pub(crate) fn of(
        almanac: &'a Almanac,
        product: Option<&ProductId>,
        formula: Option<&'a Formula>,
    ) -> Self {
        let formula = formula.or_else(|| only_formula_of(almanac, product?));
        let classes = product.map_or_else(Vec::new, |product| classes_of(almanac, product, formula));
        let mut ranks = [Vec::new(), Vec::new(), Vec::new()];
        for rule in almanac.change_rules() {
            if let Some(rank) = rank_of(rule, product, formula.map(|formula| &formula.id), &classes) {
                ranks[rank].push(rule);
            }
        }
        Self { ranks, formula }
    }

    /// The row that prints a variation in these very words.
    pub(crate) fn find_as_printed(&self, said: &str) -> Option<&'a ChangeRule> {
        let said = words_of(said);
        self.ranks.iter().flatten().copied().find(|row| {
            // A number at the end of the cell is the amount measured in the row's unit.
            let limit = &*row.limit;
            let without_number =
                limit.rsplit_once(", ").filter(|_| row.amount.is_some()).map(|(words, _)| words);
            let in_words =
                [Some(limit), without_number].into_iter().flatten().any(|words| words_of(words) == said);
            row.what.contains(&What::AsPrinted) && may_decide(row) && in_words
        })
    }
}

fn rank_of(
    rule: &ChangeRule,
    product: Option<&ProductId>,
    formula: Option<&FormulaId>,
    classes: &[FormulaClass],
) -> Option<usize> {
    match &rule.applies_to {
        AppliesTo::Formula(id) => (formula == Some(id)).then_some(0),
        AppliesTo::Products(products) => product.is_some_and(|id| products.contains(id)).then_some(0),
        AppliesTo::Class(class) => classes.contains(class).then_some(1),
        AppliesTo::Any => Some(2),
        AppliesTo::NotProcessed(_) => None,
    }
}

/// The formula of a food that has exactly one.
pub(crate) fn only_formula_of<'a>(almanac: &'a Almanac, product: &ProductId) -> Option<&'a Formula> {
    let mut made = almanac.formulas().filter(|formula| formula.product.as_ref() == Some(product));
    let first = made.next()?;
    made.next().is_none().then_some(first)
}

/// The classes of change rules a food goes by. Where its kind is not known, all it may be: the strictest stands.
fn classes_of(almanac: &Almanac, id: &ProductId, formula: Option<&Formula>) -> Vec<FormulaClass> {
    let Some(product) = almanac.product(id) else { return Vec::new() };
    let mut classes = match formula.and_then(|formula| formula.class) {
        Some(class) => vec![class],
        None => {
            let mut made: Vec<FormulaClass> = almanac
                .formulas()
                .filter(|formula| formula.product.as_ref() == Some(id))
                .filter_map(|formula| formula.class)
                .collect();
            made.sort();
            made.dedup();
            if made.is_empty() { almanac.families_of(id).to_vec() } else { made }
        }
    };
    // A jelly with added pectin goes by the rules of both.
    let holds_pectin =
        formula.is_some_and(|formula| formula.ingredients.iter().any(|one| one.part == Part::Pectin));
    if classes.contains(&FormulaClass::Jelly) && (formula.is_none() || holds_pectin) {
        classes.push(FormulaClass::JamPectin);
    }
    if product.canners.contains(&CannerKind::BoilingWater) && !classes.contains(&FormulaClass::AcidFood) {
        classes.push(FormulaClass::AcidFood);
    }
    classes
}
