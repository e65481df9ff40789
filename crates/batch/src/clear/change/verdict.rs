//! What the change rules say of one change.
//!
//! Inside one rank a row whose word is the one asked for comes before a row for every case, and among the rows
//! left the stricter verdict wins. A rank without a row hands on to the next. Where no rank has a row, or the only
//! one that permits was not seen in print, the change is *not tested*.

use std::cmp::Reverse;

use almanac::{
    Almanac, Basis, CannerKind, Change, ChangeRule, IngredientClass as Class, Pack, RefusalKind, RuleId,
    ScaleRule, What,
};

use super::reading::{Amount, Meaning};
use super::scope::Scope;
use super::words::Thing;
use crate::clear::answer::{Because, Verdict};
use crate::clear::findings::Findings;
use crate::clear::refusal::add_refusal;

/// What is looked for among the rules.
#[derive(Debug, Clone, Default)]
struct Query {
    /// The changes a row may be about.
    changes: Vec<Change>,
    /// The ingredient classes it may be about.
    classes: Vec<Class>,
    /// The words asked for.
    whats: Vec<What>,
    /// The amount said.
    amount: Option<Amount>,
    /// Only rows that measure an amount count.
    amount_only: bool,
    /// Further changes whose rows may refuse and never permit.
    refusing: Vec<(Change, Vec<Class>)>,
}

/// Judges one meaning of one change.
pub(crate) fn judge(
    almanac: &Almanac,
    scope: &Scope<'_>,
    said: &str,
    meaning: &Meaning,
    line_found: bool,
    findings: &mut Findings,
) {
    let judging = Judging { almanac, scope, said, meaning };
    match meaning {
        Meaning::Lower(thing) => judging.by_rules(lowered(thing), findings),
        Meaning::Omit(thing) => judging.by_rules(omitted(thing), findings),
        Meaning::Raise(thing, amount) => {
            judging.by_rules(added(Change::Raise, thing, amount.as_ref()), findings)
        }
        Meaning::Add(thing, amount) => judging.by_rules(added(Change::Add, thing, amount.as_ref()), findings),
        Meaning::Replace { old, new, share } => judging.replacement(old, new, share.as_ref(), findings),
        Meaning::VinegarOf(percent) => judging.vinegar(*percent, findings),
        Meaning::AsPrinted(rule) => judging.printed(rule, findings),
        Meaning::SaltOf(percent) => judging.by_rules(salted(*percent), findings),
        Meaning::Fixed(Change::BatchHalf, class, what) => judging.half_batch(*class, *what, findings),
        Meaning::Fixed(change, class, what) => judging.by_rules(fixed(*change, *class, *what), findings),
        Meaning::Jar { change, .. } => {
            judging.looked_up(fixed(*change, Class::Other, None), line_found, findings)
        }
        Meaning::Pack(pack) => judging.looked_up(packed(*pack), line_found, findings),
        Meaning::Canner(canner) => judging.looked_up(canned_in(*canner), line_found, findings),
    }
}

fn fixed(change: Change, class: Class, what: Option<What>) -> Query {
    Query {
        changes: vec![change],
        classes: vec![class],
        whats: what.into_iter().collect(),
        ..Query::default()
    }
}

/// Less of it lies between the printed amount and none, so a row about leaving it out speaks of it too.
fn lowered(thing: &Thing) -> Query {
    Query {
        changes: vec![Change::Lower, Change::Omit],
        classes: widened(&thing.classes),
        whats: thing.whats.clone(),
        ..Query::default()
    }
}

/// None of it is more than less of it: a row about less may refuse and never permit.
fn omitted(thing: &Thing) -> Query {
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
fn added(change: Change, thing: &Thing, amount: Option<&Amount>) -> Query {
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

fn salted(percent: f64) -> Query {
    Query {
        changes: vec![Change::Lower, Change::Raise],
        classes: vec![Class::Salt],
        amount: Some(Amount { number: percent, unit: "percent" }),
        amount_only: true,
        ..Query::default()
    }
}

fn packed(pack: Pack) -> Query {
    let mut query = fixed(Change::Pack, Class::Other, None);
    if pack == Pack::Raw {
        query.whats.push(What::RawGroundMeat);
    }
    query
}

fn canned_in(canner: CannerKind) -> Query {
    let (changes, whats) = match canner {
        CannerKind::BoilingWater => (vec![Change::CannerOther], vec![What::BoilingWater]),
        CannerKind::Steam => (vec![Change::CannerSteam, Change::CannerOther], vec![What::Steam]),
        CannerKind::Dial | CannerKind::Weighted => (vec![Change::CannerPressure], Vec::new()),
    };
    Query { changes, classes: vec![Class::Other], whats, ..Query::default() }
}

/// A class with the wider ones it belongs to, and acid with the acids.
fn widened(classes: &[Class]) -> Vec<Class> {
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

/// The rows that decide, and what to offer.
struct Found<'a> {
    rows: Vec<&'a ChangeRule>,
    /// Rows that only refuse, found on the way.
    refusing: Vec<&'a ChangeRule>,
}

struct Judging<'a, 's> {
    almanac: &'a Almanac,
    scope: &'s Scope<'a>,
    said: &'s str,
    meaning: &'s Meaning,
}

impl<'a> Judging<'a, '_> {
    /// Judges by the first rank that has a row.
    fn by_rules(&self, query: Query, findings: &mut Findings) {
        let found = self.find(&query, 3);
        self.settle(&query, &found, findings);
    }

    /// The question was changed and looked up as such. Where a line is printed, only a row about this very formula
    /// or food can speak against it; where none is, the wider rows say why.
    fn looked_up(&self, query: Query, line_found: bool, findings: &mut Findings) {
        let found = self.find(&query, if line_found { 1 } else { 3 });
        if let Some(row) = strictest(&found.rows, &query) {
            if verdict_of(row) == Verdict::Tested {
                if line_found {
                    self.permit(row, findings);
                }
            } else {
                self.refuse(row, findings);
            }
        }
    }

    /// A variation was asked for in the very words of its row.
    fn printed(&self, rule: &RuleId, findings: &mut Findings) {
        if let Some(row) = self.scope.ranks.iter().flatten().find(|row| row.id == *rule) {
            self.permit(row, findings);
        }
    }

    fn replacement(&self, old: &Thing, new: &Thing, share: Option<&Amount>, findings: &mut Findings) {
        let sweet = old.classes.contains(&Class::Sugar) && new.classes.contains(&Class::Sugar);
        // Honey, syrup and brown sugar are sugars; what has no word of its own or is sucralose sweetens otherwise.
        let otherwise = sweet && (new.whats.is_empty() || new.whats.contains(&What::Sucralose));
        let mut changes = vec![Change::Replace];
        if otherwise {
            changes.push(Change::AlternativeSweetener);
        }
        let mut refusing = Vec::new();
        if !new.classes.iter().any(|class| old.classes.contains(class)) {
            refusing.push((Change::Add, new.classes.clone()));
        }
        let query = Query {
            changes,
            classes: widened(&old.classes),
            whats: new.whats.clone(),
            amount: share.cloned().or(Some(Amount { number: 100.0, unit: "percent" })),
            refusing,
            ..Query::default()
        };
        let found = self.find(&query, 3);
        if found.rows.is_empty() && found.refusing.is_empty() && self.in_two_steps(old, new, findings) {
            return;
        }
        self.settle(&query, &found, findings);
    }

    /// Replacing is leaving out the one and adding the other: where both are printed as allowed, so is it.
    fn in_two_steps(&self, old: &Thing, new: &Thing, findings: &mut Findings) -> bool {
        let (leaving, coming) = (omitted(old), added(Change::Raise, new, None));
        let (out, into) = (self.find(&leaving, 3), self.find(&coming, 3));
        let rows = (strictest(&out.rows, &leaving), strictest(&into.rows, &coming));
        let (Some(out_row), Some(in_row)) = rows else { return false };
        let allowed = [out_row, in_row].iter().all(|row| verdict_of(row) == Verdict::Tested);
        if !allowed || !out.refusing.is_empty() || !into.refusing.is_empty() {
            return false;
        }
        self.permit(out_row, findings);
        self.permit(in_row, findings);
        true
    }

    /// Vinegar as strong as the rule asks is as printed; weaker vinegar is judged as less acid.
    fn vinegar(&self, percent: f64, findings: &mut Findings) {
        let rule = self.almanac.rule("vinegar-strength");
        let least = rule.and_then(|rule| rule.value?.as_percent()).map(|(low, _)| low.as_percent());
        if let (Some(rule), Some(least)) = (rule, least)
            && percent >= least
        {
            let text = format!("the vinegar is labelled {least} percent acidity or more");
            return findings.remind("vinegar-strength", text, Some(&rule.citation));
        }
        let query = Query {
            changes: vec![Change::Replace],
            classes: vec![Class::Vinegar],
            whats: vec![What::VinegarUnder5Percent],
            amount: Some(Amount { number: percent, unit: "percent" }),
            refusing: vec![(Change::Lower, vec![Class::Vinegar, Class::Acid])],
            ..Query::default()
        };
        let found = self.find(&query, 3);
        self.settle(&query, &found, findings);
    }

    /// A batch cooked as a whole is not divided, whatever its class.
    fn half_batch(&self, class: Class, what: Option<What>, findings: &mut Findings) {
        if let Some(formula) = self.scope.formula.filter(|formula| formula.scale == ScaleRule::SingleBatch) {
            let text = format!("{:?}: {} is printed as one batch, made whole", self.said, formula.id);
            findings.refuse(Verdict::NotTested, Because::BatchChanged, text, Some(&formula.citation));
            findings.offer("batch", "the printed batch, once", Some(&formula.citation));
            return;
        }
        self.by_rules(fixed(Change::BatchHalf, class, what), findings);
    }

    /// The rows of the first `ranks` ranks that decide.
    fn find(&self, query: &Query, ranks: usize) -> Found<'a> {
        let mut refusing = Vec::new();
        for rank in self.scope.ranks.iter().take(ranks) {
            refusing.extend(rank.iter().copied().filter(|row| refuses(row, query)));
            let rows = rows_of_rank(rank, query);
            if !rows.is_empty() {
                return Found { rows, refusing };
            }
        }
        Found { rows: Vec::new(), refusing }
    }

    fn settle(&self, query: &Query, found: &Found<'a>, findings: &mut Findings) {
        let decisive = strictest(&found.rows, query);
        for row in &found.refusing {
            self.refuse(row, findings);
        }
        match decisive {
            Some(row) if verdict_of(row) != Verdict::Tested => {
                self.refuse(row, findings);
                self.offer_printed(query, findings);
            }
            Some(row) if found.refusing.is_empty() => self.permit(row, findings),
            Some(_) => self.offer_printed(query, findings),
            None => self.refuse_unprinted(query, found, findings),
        }
    }

    fn permit(&self, row: &ChangeRule, findings: &mut Findings) {
        let mut text = format!("{:?} is printed as allowed", self.said);
        if row.citation.basis == Basis::Derived {
            text = format!("{:?} is allowed by our reading of the printed rules", self.said);
        }
        if !row.limit.is_empty() {
            text = format!("{text} ({} {})", row.limit, row.unit).replace(" )", ")");
        }
        text = format!("{text}: {}", row.because);
        findings.remind("change-allowed", text, Some(&row.citation));
    }

    fn refuse(&self, row: &ChangeRule, findings: &mut Findings) {
        let text = format!("{:?}: {}", self.said, row.because);
        let verdict = verdict_of(row);
        findings.refuse(verdict, code_for(self.meaning, row, verdict), text, Some(&row.citation));
        if !row.instead.is_empty() {
            findings.offer("instead", &*row.instead, Some(&row.citation));
        }
    }

    /// No row speaks of it: not tested. A food that may not be in a jar at all is refused by its own row.
    fn refuse_unprinted(&self, query: &Query, found: &Found<'_>, findings: &mut Findings) {
        if found.refusing.is_empty() {
            let text = match self.meaning {
                Meaning::Fixed(Change::Altitude, _, None) => {
                    format!(
                        "{:?}: the line belongs to its altitude; ask again with the altitude you can at",
                        self.said
                    )
                }
                Meaning::Fixed(Change::CannerPressure, ..) => {
                    format!("{:?}: ask for a dial or a weighted gauge, each has lines of its own", self.said)
                }
                _ => format!("{:?}: no rule on file prints this change", self.said),
            };
            let code = code_by_meaning(self.meaning, Verdict::NotTested);
            findings.refuse(Verdict::NotTested, code, text, None);
        }
        if let Meaning::Add(thing, _) | Meaning::Replace { new: thing, .. } = self.meaning {
            for refusal in self.almanac.find_refusals(&thing.name) {
                if refusal.kind == RefusalKind::Food && refusal.citation.basis == Basis::Read {
                    let code = code_by_meaning(self.meaning, Verdict::DoNot);
                    add_refusal(refusal, Verdict::DoNot, code, findings);
                }
            }
        }
        self.offer_printed(query, findings);
        findings.offer("as-printed", "make it as printed, or keep it cold or frozen", None);
    }

    /// Offers what is printed nearest by: the band of an amount, a variation in its own words, a permission with
    /// its limit.
    fn offer_printed(&self, query: &Query, findings: &mut Findings) {
        for row in self.scope.ranks[0].iter().chain(&self.scope.ranks[1]) {
            let about = query.changes.contains(&row.change) && query.classes.contains(&row.ingredient);
            let limited = measures_amount(row) || row.what.contains(&What::AsPrinted) || number_permits(row);
            if about && limited && may_decide(row) && verdict_of(row) == Verdict::Tested {
                let text = format!("printed: {} {}", row.limit, row.unit);
                findings.offer("printed", text.trim_end(), Some(&row.citation));
            }
        }
    }
}

/// The rows of one rank that decide: those with the word or the amount asked for, else those for every case.
fn rows_of_rank<'a>(rank: &[&'a ChangeRule], query: &Query) -> Vec<&'a ChangeRule> {
    let about: Vec<&ChangeRule> = rank
        .iter()
        .copied()
        .filter(|row| query.changes.contains(&row.change) && query.classes.contains(&row.ingredient))
        .filter(|row| may_decide(row))
        .collect();
    let exact: Vec<&ChangeRule> = about.iter().copied().filter(|row| is_asked_for(row, query)).collect();
    if !exact.is_empty() || query.amount_only {
        return exact;
    }
    about.into_iter().filter(|row| row.what.contains(&What::All)).collect()
}

/// Whether a row names the word or holds the amount asked for.
fn is_asked_for(row: &ChangeRule, query: &Query) -> bool {
    if measures_amount(row) {
        return query.amount.as_ref().is_some_and(|amount| holds_amount(row, amount));
    }
    let named = row.what.iter().any(|what| query.whats.contains(what));
    named && (verdict_of(row) != Verdict::Tested || within_permission(row, query))
}

/// Whether a row about one of the further changes refuses.
fn refuses(row: &ChangeRule, query: &Query) -> bool {
    let about = query
        .refusing
        .iter()
        .any(|(change, classes)| row.change == *change && classes.contains(&row.ingredient));
    let meant = row.what.contains(&What::All) || is_asked_for(row, query);
    about && meant && verdict_of(row) != Verdict::Tested
}

/// A permission stands only where it was seen in print, or is our reading of print and says so; a refusal always.
pub(crate) fn may_decide(row: &ChangeRule) -> bool {
    row.verdict == row.served_verdict()
}

fn verdict_of(row: &ChangeRule) -> Verdict {
    match row.verdict {
        almanac::Verdict::Tested => Verdict::Tested,
        almanac::Verdict::NotTested => Verdict::NotTested,
        almanac::Verdict::DoNot => Verdict::DoNot,
    }
}

/// The row that decides: the strictest, and among these the one that speaks most nearly of what was said.
fn strictest<'a>(rows: &[&'a ChangeRule], query: &Query) -> Option<&'a ChangeRule> {
    rows.iter().copied().min_by_key(|row| {
        let change = query.changes.iter().position(|change| *change == row.change);
        let class = query.classes.iter().position(|class| *class == row.ingredient);
        (Reverse(verdict_of(row)), change, class)
    })
}

fn measures_amount(row: &ChangeRule) -> bool {
    row.what.iter().any(|what| what.is_amount())
}

/// Whether an amount said lies where a row's words put it. An amount in another unit never does.
fn holds_amount(row: &ChangeRule, amount: &Amount) -> bool {
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
fn within_permission(row: &ChangeRule, query: &Query) -> bool {
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
fn number_permits(row: &ChangeRule) -> bool {
    let swap = row.what.iter().any(|what| matches!(what, What::AnotherPepperKind | What::AsPrinted));
    !swap && !measures_amount(row) && !row.unit.is_empty() && row.amount.is_some()
}

/// The figure of a row, from its lower to its upper end.
fn ends_of(row: &ChangeRule) -> Option<(f64, f64)> {
    let amount = row.amount?;
    Some((amount.low.to_f64(), amount.high.unwrap_or(amount.low).to_f64()))
}

fn code_for(meaning: &Meaning, row: &ChangeRule, verdict: Verdict) -> Because {
    let printed_without_limit = row.change == Change::LowTempPasteurize && verdict == Verdict::NotTested;
    if printed_without_limit { Because::NoAltitudeLimitPrinted } else { code_by_meaning(meaning, verdict) }
}

fn code_by_meaning(meaning: &Meaning, verdict: Verdict) -> Because {
    let acid = |thing: &Thing| {
        thing.classes.iter().any(|class| matches!(class, Class::Acid | Class::Vinegar | Class::LemonJuice))
    };
    match meaning {
        Meaning::Lower(thing) if acid(thing) => Because::AcidWeaker,
        Meaning::Omit(thing) if acid(thing) => Because::AcidMissing,
        Meaning::VinegarOf(_) => Because::AcidWeaker,
        Meaning::Replace { old, .. } if acid(old) && verdict == Verdict::DoNot => Because::AcidWeaker,
        Meaning::Add(thing, _) | Meaning::Raise(thing, _) | Meaning::Replace { new: thing, .. }
            if thing.classes.contains(&Class::Thickener) =>
        {
            Because::Thickened
        }
        Meaning::Lower(_) | Meaning::Omit(_) | Meaning::Raise(..) | Meaning::SaltOf(_) => {
            Because::RatioChanged
        }
        Meaning::Add(..) | Meaning::AsPrinted(_) => Because::IngredientAdded,
        Meaning::Replace { .. } => Because::IngredientReplaced,
        Meaning::Jar { .. } => Because::JarTooLarge,
        Meaning::Pack(_) => Because::PackNotPrinted,
        Meaning::Canner(CannerKind::BoilingWater | CannerKind::Steam) => Because::LowAcid,
        Meaning::Canner(CannerKind::Dial | CannerKind::Weighted) => Because::NoRow,
        Meaning::Fixed(change, ..) => match change {
            Change::BatchDouble | Change::BatchHalf => Because::BatchChanged,
            Change::JarLarger => Because::JarTooLarge,
            Change::JarSmaller | Change::Altitude | Change::CannerPressure => Because::NoRow,
            Change::OwnFormula => Because::OwnFormula,
            _ => Because::BannedPractice,
        },
    }
}
