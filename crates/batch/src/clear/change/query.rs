//! What is looked for among the change rules, and which rows of a rank answer it.

use std::cmp::Reverse;

use almanac::{CannerKind, Change, ChangeRule, IngredientClass as Class, Pack, Verdict, What};

use super::reading::Amount;
use super::things::Thing;

/// What is looked for among the rules.
#[derive(Debug, Clone, Default)]
pub(crate) struct Query {
    /// The changes a row may be about.
    pub(crate) changes: Vec<Change>,
    /// The ingredient classes it may be about.
    pub(crate) classes: Vec<Class>,
    /// The words asked for.
    pub(crate) whats: Vec<What>,
    /// The amount said.
    pub(crate) amount: Option<Amount>,
    /// Only rows that measure an amount count.
    pub(crate) amount_only: bool,
    /// Of the classes, those a permission may be about; all of them where none is named. A row about the produce
    /// of a formula bars a swap of any part of it, but permits only a swap of that produce.
    pub(crate) permitted: Option<Vec<Class>>,
    /// Further changes whose rows may refuse and never permit.
    pub(crate) refusing: Vec<(Change, Vec<Class>)>,
}

pub(crate) fn fixed(change: Change, class: Class, what: Option<What>) -> Query {
    Query {
        changes: vec![change],
        classes: vec![class],
        whats: what.into_iter().collect(),
        ..Query::default()
    }
}

/// Less of it lies between the printed amount and none, so a row about leaving it out speaks of it too.
pub(crate) fn lowered(thing: &Thing) -> Query {
    Query {
        changes: vec![Change::Lower, Change::Omit],
        classes: widened(&thing.classes),
        whats: thing.whats.clone(),
        ..Query::default()
    }
}

/// None of it is more than less of it: a row about less may refuse and never permit.
pub(crate) fn omitted(thing: &Thing) -> Query {
    let classes = widened(&thing.classes);
    Query {
        changes: vec![Change::Omit],
        refusing: vec![(Change::Lower, classes.clone())],
        classes,
        whats: thing.whats.clone(),
        amount: Some(Amount { number: 0.0, unit: "" }),
        ..Query::default()
    }
}

/// More of it and adding it are one to the jar. A thickener added is barred in the words of replacing one, too.
pub(crate) fn added(change: Change, thing: &Thing, amount: Option<&Amount>) -> Query {
    if thing.classes == [Class::Sugar] && !thing.is_sugar() {
        // Honey, syrups and sweeteners are not the sugar whose amount is free.
        return Query {
            changes: vec![Change::AlternativeSweetener],
            classes: vec![Class::Sugar],
            whats: thing.whats.clone(),
            refusing: vec![(Change::Replace, vec![Class::Sugar])],
            ..Query::default()
        };
    }
    let other = if change == Change::Raise { Change::Add } else { Change::Raise };
    let mut refusing = Vec::new();
    if thing.classes.contains(&Class::Thickener) {
        refusing.push((Change::Replace, vec![Class::Thickener]));
    }
    Query {
        changes: vec![change, other],
        classes: widened(&thing.classes),
        whats: thing.whats.clone(),
        amount: amount.cloned(),
        refusing,
        ..Query::default()
    }
}

pub(crate) fn salted(percent: f64) -> Query {
    Query {
        changes: vec![Change::Lower, Change::Raise],
        classes: vec![Class::Salt],
        amount: Some(Amount { number: percent, unit: "percent" }),
        amount_only: true,
        ..Query::default()
    }
}

pub(crate) fn packed(pack: Pack) -> Query {
    let mut query = fixed(Change::Pack, Class::Other, None);
    if pack == Pack::Raw {
        query.whats.push(What::RawGroundMeat);
    }
    query
}

pub(crate) fn canned_in(canner: CannerKind) -> Query {
    let (changes, whats) = match canner {
        CannerKind::BoilingWater => (vec![Change::CannerOther], vec![What::BoilingWater]),
        CannerKind::Steam => (vec![Change::CannerSteam, Change::CannerOther], vec![What::Steam]),
        CannerKind::Dial | CannerKind::Weighted => (vec![Change::CannerPressure], Vec::new()),
    };
    Query { changes, classes: vec![Class::Other], whats, ..Query::default() }
}

/// A class with the wider ones it belongs to, and acid with the acids.
pub(crate) fn widened(classes: &[Class]) -> Vec<Class> {
    let mut wide = Vec::new();
    for class in classes {
        let more: &[Class] = match class {
            Class::Vinegar | Class::LemonJuice => &[Class::Acid],
            Class::Acid => &[Class::Vinegar, Class::LemonJuice],
            Class::Onion | Class::Garlic | Class::HotPepper | Class::SweetPepper | Class::HerbFresh => {
                &[Class::LowAcidVegetable, Class::Produce]
            }
            Class::LowAcidVegetable | Class::TomatoKind => &[Class::Produce],
            Class::HerbDried => &[Class::Spice],
            _ => &[],
        };
        wide.push(*class);
        wide.extend_from_slice(more);
    }
    wide
}

/// The rows of one rank that decide: those with the word or the amount asked for, else those for every case.
pub(crate) fn rows_of_rank<'a>(rank: &[&'a ChangeRule], query: &Query) -> Vec<&'a ChangeRule> {
    let about: Vec<&ChangeRule> = rank
        .iter()
        .copied()
        .filter(|row| query.changes.contains(&row.change) && query.classes.contains(&row.ingredient))
        .filter(|row| may_decide(row) && may_permit(row, query))
        .collect();
    let exact: Vec<&ChangeRule> = about.iter().copied().filter(|row| is_asked_for(row, query)).collect();
    if !exact.is_empty() || query.amount_only {
        return exact;
    }
    about.into_iter().filter(|row| row.what.contains(&What::All)).collect()
}

/// Whether a row names the word or holds the amount asked for.
pub(crate) fn is_asked_for(row: &ChangeRule, query: &Query) -> bool {
    if measures_amount(row) {
        return query.amount.as_ref().is_some_and(|amount| holds_amount(row, amount));
    }
    let named = row.what.iter().any(|what| query.whats.contains(what));
    named && (row.verdict != Verdict::Tested || within_permission(row, query))
}

/// Whether a row about one of the further changes refuses.
pub(crate) fn refuses(row: &ChangeRule, query: &Query) -> bool {
    let about = query
        .refusing
        .iter()
        .any(|(change, classes)| row.change == *change && classes.contains(&row.ingredient));
    let meant = row.what.contains(&What::All) || is_asked_for(row, query);
    about && meant && row.verdict != Verdict::Tested
}

fn may_permit(row: &ChangeRule, query: &Query) -> bool {
    let among = query.permitted.as_ref().is_none_or(|classes| classes.contains(&row.ingredient));
    among || row.verdict != Verdict::Tested
}

/// The classes of rows that may permit a swap of one thing for another: its own, acid for an acid, and the produce
/// where the thing is what a formula of its kind is made of. Peppers go only for peppers, and paste stands for no
/// tomato.
pub(crate) fn swappable(old: &Thing, new: &Thing) -> Vec<Class> {
    let pepper = |thing: &Thing| thing.classes.iter().any(|class| PEPPERS.contains(class));
    let peppers_for_other = new.whats.contains(&What::AnotherPepperKind) && !pepper(old);
    if old.whats.contains(&What::TomatoPaste) || peppers_for_other && !new.whats.contains(&What::Peppers) {
        return Vec::new();
    }
    let mut classes = old.classes.clone();
    for class in &old.classes {
        match class {
            Class::Vinegar | Class::LemonJuice => classes.push(Class::Acid),
            Class::TomatoKind | Class::HotPepper | Class::SweetPepper => classes.push(Class::Produce),
            _ => {}
        }
    }
    if peppers_for_other {
        // "Peppers for onions" is printed for one salsa, under the onions it replaces.
        classes.retain(|class| *class == Class::Onion);
    }
    classes
}

/// Peppers, hot or sweet.
const PEPPERS: [Class; 2] = [Class::HotPepper, Class::SweetPepper];

/// Whether a swap goes from hot peppers to sweet ones, the other way, or from one it does not say.
pub(crate) fn crosses_peppers(old: &Thing, new: &Thing) -> bool {
    let pepper = |thing: &Thing| thing.classes.iter().all(|class| PEPPERS.contains(class));
    pepper(old) && pepper(new) && old.classes != new.classes
}

/// Whether rows about both hot and sweet peppers are among these, so that one may stand for the other.
pub(crate) fn speaks_of_both_peppers(rows: &[&ChangeRule]) -> bool {
    PEPPERS.iter().all(|class| rows.iter().any(|row| row.ingredient == *class))
}

/// A permission stands only where it was seen in print, or is our reading of print and says so; a refusal always.
pub(crate) fn may_decide(row: &ChangeRule) -> bool {
    row.verdict == row.served_verdict()
}

/// The row that decides: the strictest, and among these the one that speaks most nearly of what was said.
pub(crate) fn strictest<'a>(rows: &[&'a ChangeRule], query: &Query) -> Option<&'a ChangeRule> {
    rows.iter().copied().min_by_key(|row| {
        let change = query.changes.iter().position(|change| *change == row.change);
        let class = query.classes.iter().position(|class| *class == row.ingredient);
        (Reverse(row.verdict), change, class)
    })
}

pub(crate) fn measures_amount(row: &ChangeRule) -> bool {
    row.what.iter().any(|what| what.is_amount())
}

/// Whether an amount said lies where a row's words put it. An amount in another unit never does.
pub(crate) fn holds_amount(row: &ChangeRule, amount: &Amount) -> bool {
    let Some((first, last)) = ends_of(row) else { return false };
    let same_unit = amount.unit.is_empty() || row.unit.split_whitespace().any(|word| word == amount.unit);
    let number = amount.number;
    same_unit
        && row.what.iter().any(|what| match what {
            What::AmountBelow => number < first,
            What::AmountAbove => number > first,
            What::AmountUpTo => number <= first,
            What::AmountFromTo => (first..=last).contains(&number),
            What::AmountFromUnder => (first..last).contains(&number),
            _ => false,
        })
}

/// Whether a permission that is tied to a number is used within it.
pub(crate) fn within_permission(row: &ChangeRule, query: &Query) -> bool {
    if !number_permits(row) {
        return true;
    }
    let (Some((first, last)), Some(amount)) = (ends_of(row), &query.amount) else { return false };
    let same_unit = row.unit.split_whitespace().any(|word| word == amount.unit);
    let up_to = row.what.iter().any(|what| matches!(what, What::Honey | What::CornSyrup | What::Butter));
    same_unit && if up_to { amount.number <= last } else { (first..=last).contains(&amount.number) }
}

/// Whether a number in the row belongs to its permission. A swap of peppers keeps the printed total, so the number
/// beside it asks for nothing more.
pub(crate) fn number_permits(row: &ChangeRule) -> bool {
    let swap = row.what.iter().any(|what| matches!(what, What::AnotherPepperKind | What::AsPrinted));
    !swap && !measures_amount(row) && !row.unit.is_empty() && row.amount.is_some()
}

/// The figure of a row, from its lower to its upper end.
pub(crate) fn ends_of(row: &ChangeRule) -> Option<(f64, f64)> {
    let amount = row.amount?;
    Some((amount.low.to_f64(), amount.high.unwrap_or(amount.low).to_f64()))
}
