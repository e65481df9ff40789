//! Which change rules speak about a question, and in what order: a row for the formula or the food comes before a
//! row of its class, and a row for everything comes last.

use almanac::{
    Almanac, AppliesTo, CannerKind, ChangeRule, FoodGroup, Formula, FormulaClass, FormulaId, Part, Product,
    ProductId, What,
};

use super::query::may_decide;
use super::words::words_of;
use crate::clear::question::ClearQuestion;

/// The rules that apply, by rank.
pub(crate) struct Scope<'a> {
    /// First the rows for the formula or the food, then those of its class, then those for everything.
    pub(crate) ranks: [Vec<&'a ChangeRule>; 3],
    /// The formula the food is made by, as far as it is known.
    pub(crate) formula: Option<&'a Formula>,
}

impl<'a> Scope<'a> {
    pub(crate) fn of(almanac: &'a Almanac, question: &ClearQuestion, formula: Option<&'a Formula>) -> Self {
        let formula = formula.or_else(|| only_formula_of(almanac, &question.product));
        let classes = classes_of(almanac, &question.product, formula);
        let mut ranks = [Vec::new(), Vec::new(), Vec::new()];
        for rule in almanac.change_rules() {
            if let Some(rank) = rank_of(rule, &question.product, formula.map(|formula| &formula.id), &classes)
            {
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
    product: &ProductId,
    formula: Option<&FormulaId>,
    classes: &[FormulaClass],
) -> Option<usize> {
    match &rule.applies_to {
        AppliesTo::Formula(id) => (formula == Some(id)).then_some(0),
        AppliesTo::Products(products) => products.contains(product).then_some(0),
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

/// Fish and shellfish; the process tables hold them among the meats.
const FISH: &[&str] = &["clams", "crab", "fish-pints", "fish-quarts", "oysters", "smoked-fish", "tuna"];

/// Fruit that is canned as it is, so that what the guide says of plain fruit is about it. Other foods of that
/// group are fixed formulas: no rule of plain fruit permits anything there.
const PLAIN_FRUIT: &[&str] = &[
    "apples-sliced",
    "applesauce",
    "apricots-halved",
    "asian-pears",
    "berries-whole",
    "cherries-whole",
    "figs",
    "grapefruit-orange-sections",
    "grapes-whole",
    "mixed-fruit-cocktail",
    "nectarines-halved",
    "peach-halves",
    "pear-halves",
    "pineapple",
    "plums",
    "rhubarb-stewed",
];

/// Tomatoes canned as they are; the rest of that group are sauces.
const PLAIN_TOMATO: &[&str] = &[
    "tomatillos",
    "tomato-juice",
    "tomato-sauce",
    "tomato-vegetable-juice",
    "tomatoes-crushed",
    "tomatoes-okra-zucchini",
    "tomatoes-whole-juice",
    "tomatoes-whole-no-liquid",
    "tomatoes-whole-water",
];

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
            if made.is_empty() { classes_of_group(product) } else { made }
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

fn classes_of_group(product: &Product) -> Vec<FormulaClass> {
    let id = product.id.as_str();
    match product.group {
        FoodGroup::Fruit if id.starts_with("pie-filling-") => vec![FormulaClass::PieFilling],
        FoodGroup::Fruit if PLAIN_FRUIT.contains(&id) => vec![FormulaClass::FruitPlain],
        FoodGroup::Fruit | FoodGroup::Juice => Vec::new(),
        FoodGroup::Tomato if PLAIN_TOMATO.contains(&id) => vec![FormulaClass::TomatoPlain],
        FoodGroup::Tomato => vec![FormulaClass::Sauce],
        FoodGroup::Salsa => vec![FormulaClass::Salsa],
        FoodGroup::Pickle => vec![FormulaClass::PickleFresh],
        FoodGroup::Fermented => vec![FormulaClass::PickleFermented],
        FoodGroup::JamJelly => vec![FormulaClass::JamPectin, FormulaClass::JamNoPectin, FormulaClass::Jelly],
        FoodGroup::Vegetable => vec![FormulaClass::VegetablePlain],
        FoodGroup::Soup => vec![FormulaClass::SoupMixed],
        FoodGroup::Meat if FISH.contains(&id) => vec![FormulaClass::Fish],
        FoodGroup::Meat => vec![FormulaClass::Meat],
    }
}
