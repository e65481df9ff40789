//! May I change this? One rule a question: what the cook wants to do, to what, and what a publication says of it.

mod family;
mod word;

use measure::Fraction;

use crate::closed_list::closed_list;
use crate::fault::DataProblem;
use crate::row::{Reading, Row};
use crate::source::{Basis, Citation};
use crate::tables::Table;
use crate::{Almanac, FormulaClass, FormulaId, ProductId, RuleId};

pub use family::FoodFamily;
pub(crate) use family::read_families;
pub use word::{Change, IngredientClass, What};

closed_list!(
    /// What a publication says of a change, the strictest last.
    Verdict {
        /// A publication prints that it may be done.
        Tested = "tested",
        /// No page seen covers it; the process for the shelf falls away.
        NotTested = "not-tested",
        /// A publication bars it, or it breaks a barred proportion.
        DoNot = "do-not",
    }
);

/// What a rule is for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum AppliesTo {
    /// A family of formulas.
    Class(FormulaClass),
    /// One formula.
    Formula(FormulaId),
    /// Foods of the process tables.
    Products(Vec<ProductId>),
    /// A food that is only kept cold.
    NotProcessed(Box<str>),
    /// Everything.
    Any,
}

/// The figure of a rule: one number, or from one to another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LimitAmount {
    /// The only number, or the lower one.
    pub low: Fraction,
    /// The upper one.
    pub high: Option<Fraction>,
}

/// A rule on one change.
#[derive(Debug, Clone, PartialEq)]
pub struct ChangeRule {
    /// Its name.
    pub id: RuleId,
    /// What it is for.
    pub applies_to: AppliesTo,
    /// What the cook wants to do.
    pub change: Change,
    /// To what.
    pub ingredient: IngredientClass,
    /// What exactly: any of these.
    pub what: Vec<What>,
    /// How far, or with what, as printed.
    pub limit: Box<str>,
    /// The figure in the limit.
    pub amount: Option<LimitAmount>,
    /// What the figure counts.
    pub unit: Box<str>,
    /// What the row says, whatever its basis.
    pub verdict: Verdict,
    /// Why.
    pub because: Box<str>,
    /// What to do instead; empty when nothing need be offered.
    pub instead: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

impl ChangeRule {
    /// What may be told a cook: *tested* only from print of full rank, or from our reading of printed rules, which is
    /// to be called ours; a recalled row permits nothing.
    #[must_use]
    pub fn served_verdict(&self) -> Verdict {
        let permitted = self.citation.may_be_called_tested() || self.citation.basis == Basis::Derived;
        if self.verdict == Verdict::Tested && !permitted { Verdict::NotTested } else { self.verdict }
    }

    /// How near the rule is to what is asked: 0 for the formula or food itself, 1 for its family, 2 for anything;
    /// none when it is about something else.
    fn nearness(&self, question: &ChangeQuestion<'_>) -> Option<u8> {
        let near = match &self.applies_to {
            AppliesTo::Formula(id) => question.formula == Some(id),
            AppliesTo::Products(ids) => question.product.is_some_and(|product| ids.contains(product)),
            AppliesTo::Class(class) => question.classes.contains(class),
            AppliesTo::NotProcessed(_) => false,
            AppliesTo::Any => true,
        };
        near.then_some(match self.applies_to {
            AppliesTo::Class(_) => 1,
            AppliesTo::Any => 2,
            AppliesTo::Formula(_) | AppliesTo::Products(_) | AppliesTo::NotProcessed(_) => 0,
        })
    }

    /// How exactly the rule speaks of what is asked: 0 in so many words or in figures, 1 as every case; none when
    /// it does not.
    fn exactness(&self, question: &ChangeQuestion<'_>) -> Option<u8> {
        let said = self.what.iter().any(|what| match question.amount {
            Some(amount) if what.is_amount() => self.holds(*what, amount),
            _ => Some(*what) == question.what,
        });
        if said {
            return Some(0);
        }
        self.what.contains(&What::All).then_some(1)
    }

    fn holds(&self, what: What, amount: Fraction) -> bool {
        // Never false for want of a limit: a row of amounts without one is refused when it is read.
        let Some(limit) = self.amount else { return false };
        let upper = limit.high.unwrap_or(limit.low);
        match what {
            What::AmountBelow => amount < limit.low,
            What::AmountAbove => amount > limit.low,
            What::AmountUpTo => amount <= limit.low,
            What::AmountFromTo => limit.low <= amount && amount <= upper,
            What::AmountFromUnder => limit.low <= amount && amount < upper,
            _ => false,
        }
    }
}

impl What {
    /// Whether it stands for a figure in the limit.
    #[must_use]
    pub const fn is_amount(self) -> bool {
        matches!(
            self,
            Self::AmountAbove
                | Self::AmountBelow
                | Self::AmountFromTo
                | Self::AmountFromUnder
                | Self::AmountUpTo
        )
    }
}

/// A change to be judged.
#[derive(Debug, Clone, Copy)]
pub struct ChangeQuestion<'a> {
    /// The formula, if there is one.
    pub formula: Option<&'a FormulaId>,
    /// The food of the process tables, if there is one.
    pub product: Option<&'a ProductId>,
    /// The families it belongs to.
    pub classes: &'a [FormulaClass],
    /// What the cook wants to do.
    pub change: Change,
    /// To what.
    pub ingredient: IngredientClass,
    /// What exactly, if there is a word for it.
    pub what: Option<What>,
    /// The new amount in the unit of the rules, where it is a question of how much.
    pub amount: Option<Fraction>,
}

impl Almanac {
    /// Every change rule, as the table lists them.
    #[must_use]
    pub fn change_rules(&self) -> &[ChangeRule] {
        &self.changes
    }

    /// A change rule.
    #[must_use]
    pub fn change_rule(&self, id: &str) -> Option<&ChangeRule> {
        self.changes.iter().find(|rule| rule.id.as_str() == id)
    }

    /// The rule that decides a change: a formula's own rule before that of its family, and that before the rule for
    /// everything; among these the one that names the case before the one for every case; among these the
    /// strictest. None when no rule speaks of it: not tested.
    #[must_use]
    pub fn judge_change(&self, question: &ChangeQuestion<'_>) -> Option<&ChangeRule> {
        self.changes
            .iter()
            .filter(|rule| rule.change == question.change && rule.ingredient == question.ingredient)
            .filter_map(|rule| Some(((rule.nearness(question)?, rule.exactness(question)?), rule)))
            .min_by_key(|(nearness, rule)| (*nearness, std::cmp::Reverse(rule.served_verdict())))
            .map(|(_, rule)| rule)
    }
}

/// Reads `change_rules.csv`; the checks need to know which formulas and foods there are.
pub(crate) fn read_changes(
    reading: &mut Reading<'_>,
    is_formula: impl Fn(&str) -> bool,
    is_product: impl Fn(&str) -> bool,
) -> Vec<(u64, ChangeRule)> {
    const COLUMNS: &[&str] = &[
        "rule_id",
        "applies_to",
        "change",
        "ingredient_class",
        "what",
        "limit",
        "unit",
        "verdict",
        "because",
        "instead",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::ChangeRules, COLUMNS, |row| {
        let id = row.id("rule_id");
        let applies_to = applies_to(row, &is_formula, &is_product);
        let change = row.word("change");
        let ingredient = row.word("ingredient_class");
        let what: Vec<What> = row.words("what", "|");
        let limit = row.free_text("limit");
        let amount = amount_of(&limit);
        if amount.is_none() && what.iter().any(|what| what.is_amount()) {
            row.spoil(DataProblem::NotANumber { column: "limit", text: limit.to_string() });
        }
        let rule = ChangeRule {
            id,
            applies_to,
            change,
            ingredient,
            what,
            limit,
            amount,
            unit: row.free_text("unit"),
            verdict: row.word("verdict"),
            because: row.text("because").into(),
            instead: row.free_text("instead"),
            citation: row.citation(),
        };
        (row.line(), rule)
    })
}

fn applies_to(
    row: &mut Row<'_>,
    is_formula: impl Fn(&str) -> bool,
    is_product: impl Fn(&str) -> bool,
) -> AppliesTo {
    let cell = row.text("applies_to");
    if cell == "any" {
        return AppliesTo::Any;
    }
    if let Some(food) = cell.strip_prefix("not-processed:") {
        return AppliesTo::NotProcessed(food.into());
    }
    if cell.starts_with("canning:") {
        let ids: Vec<&str> = cell.split('|').map(|id| id.strip_prefix("canning:").unwrap_or(id)).collect();
        for id in ids.iter().filter(|id| !is_product(id)) {
            let (text, table) = ((*id).to_owned(), "a process table");
            row.spoil(DataProblem::UnknownKey { column: "applies_to", text, table });
        }
        return AppliesTo::Products(ids.into_iter().map(ProductId::from).collect());
    }
    // A formula may bear the name of a family; no formula does.
    if let Some(class) = FormulaClass::find(cell) {
        return AppliesTo::Class(class);
    }
    if !is_formula(cell) {
        let (text, table) = (cell.to_owned(), Table::Formulas.file());
        row.spoil(DataProblem::UnknownKey { column: "applies_to", text, table });
    }
    AppliesTo::Formula(FormulaId::from(cell))
}

/// The figure at the end of a limit: `45`, `2.0 to 2.25`, `seafood; 100`.
fn amount_of(limit: &str) -> Option<LimitAmount> {
    let last = limit.rsplit([',', ';']).next()?.trim();
    let (low, high) = match last.split_once(" to ") {
        Some((low, high)) => (low, Some(high)),
        None => (last, None),
    };
    Some(LimitAmount {
        low: low.trim().parse().ok()?,
        high: match high {
            Some(high) => Some(high.trim().parse().ok()?),
            None => None,
        },
    })
}

#[cfg(test)]
mod tests;
