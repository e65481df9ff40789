//! What the change rules say of one change.
//!
//! Inside one rank a row whose word is the one asked for comes before a row for every case, and among the rows
//! left the stricter verdict wins. A rank without a row hands on to the next. Where no rank has a row, or the only
//! one that permits was not seen in print, the change is *not tested*.

use almanac::{
    Almanac, Basis, CannerKind, Change, ChangeRule, Citation, IngredientClass as Class, RefusalKind, RuleId,
    ScaleRule, Verdict, What,
};

use super::query::{
    Query, added, canned_in, crosses_peppers, fixed, lowered, may_decide, measures_amount, number_permits,
    omitted, packed, refuses, rows_of_rank, salted, speaks_of_both_peppers, strictest, swappable, widened,
};
use super::reading::{Amount, Meaning};
use super::scope::Scope;
use super::things::Thing;
use crate::clear::answer::Because;
use crate::clear::findings::Findings;
use crate::clear::refusal::add_refusal;

/// Judges one meaning of one change.
pub(crate) fn judge(
    almanac: &Almanac,
    scope: &Scope<'_>,
    said: &str,
    meaning: &Meaning,
    line: Option<&Citation>,
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
        Meaning::Jar { change, .. } => judging.looked_up(fixed(*change, Class::Other, None), line, findings),
        Meaning::Pack(pack) => judging.looked_up(packed(*pack), line, findings),
        Meaning::Canner(canner) => judging.looked_up(canned_in(*canner), line, findings),
    }
}

/// What is always open where no rule offers anything else.
const AS_PRINTED: &str = "make it as printed, or keep it cold or frozen";

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
    fn looked_up(&self, query: Query, line: Option<&Citation>, findings: &mut Findings) {
        let found = self.find(&query, if line.is_some() { 1 } else { 3 });
        let decisive = strictest(&found.rows, &query);
        match (decisive, line) {
            (Some(row), _) if row.verdict != Verdict::Tested => self.refuse(row, findings),
            (Some(row), Some(_)) => self.permit(row, findings),
            (None, Some(printed)) => {
                let text = format!("{:?}: a process is printed for it", self.said);
                findings.remind("change-allowed", text, Some(printed));
                self.remind_of_steam(findings);
            }
            (_, None) => {
                let text = format!("{:?}: no process is printed for this food so", self.said);
                findings.refuse(Verdict::NotTested, Because::NoRow, text, None);
                findings.offer("as-printed", AS_PRINTED, None);
            }
        }
    }

    /// A line is printed for boiling water; that steam may take its place has a limit and a source of its own.
    fn remind_of_steam(&self, findings: &mut Findings) {
        let rule = self.almanac.rule("steam-max");
        let limit = rule.and_then(|rule| rule.value?.as_minutes()).map(|(_, longest)| longest.0);
        if let (Meaning::Canner(CannerKind::Steam), Some(rule), Some(limit)) = (self.meaning, rule, limit) {
            let text = format!("a steam canner runs {limit} min at most, the altitude step included");
            findings.remind("steam-max", text, Some(&rule.citation));
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
            permitted: Some(swappable(old, new)),
            whats: new.whats.clone(),
            amount: share.cloned().or(Some(Amount { number: 100.0, unit: "percent" })),
            refusing,
            ..Query::default()
        };
        let mut found = self.find(&query, 3);
        if crosses_peppers(old, new) {
            // Sweet for hot is printed only where rows about both say that one kind may stand for another.
            let both = Query {
                classes: [old.classes.clone(), new.classes.clone()].concat(),
                permitted: None,
                ..query.clone()
            };
            let about_both = self.find(&both, 3);
            if !speaks_of_both_peppers(&about_both.rows) {
                found.rows.retain(|row| row.verdict != Verdict::Tested);
            }
        }
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
        let allowed = [out_row, in_row].iter().all(|row| row.verdict == Verdict::Tested);
        if !allowed || !out.refusing.is_empty() || !into.refusing.is_empty() {
            return false;
        }
        self.permit(out_row, findings);
        self.permit(in_row, findings);
        true
    }

    /// Vinegar of the printed strength is as printed, and stronger vinegar where the strength is printed as a floor;
    /// weaker vinegar is judged as less acid.
    fn vinegar(&self, percent: f64, findings: &mut Findings) {
        let rule = self.almanac.rule("vinegar-strength");
        let printed = rule.and_then(|rule| rule.value?.as_percent()).map(|(low, _)| low.as_percent());
        let about_it = |row: &&&ChangeRule| row.what.contains(&What::VinegarUnder5Percent);
        let floor = self.scope.ranks.iter().flatten().find(about_it);
        let known = self.scope.formula.is_some() || floor.is_some();
        if let (Some(rule), Some(printed), true) = (rule, printed, known)
            && (percent == printed || percent > printed && floor.is_some())
        {
            let text = format!("the vinegar is labelled {printed} percent acidity or more");
            return findings.remind("vinegar-strength", text, Some(&rule.citation));
        }
        if printed.is_some_and(|printed| percent >= printed) {
            let text = format!("{:?}: no rule on file prints vinegar of this strength here", self.said);
            return findings.refuse(Verdict::NotTested, Because::RatioChanged, text, None);
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
            Some(row) if row.verdict != Verdict::Tested => {
                self.refuse(row, findings);
                self.offer_printed(query, findings);
            }
            Some(row) if found.refusing.is_empty() => self.permit(row, findings),
            Some(_) => self.offer_printed(query, findings),
            None => self.refuse_unprinted(query, found, findings),
        }
    }

    fn permit(&self, row: &ChangeRule, findings: &mut Findings) {
        findings.rule(&row.id);
        // What is printed here is another process, or none for the shelf: the lines found are not for it.
        if row.what.contains(&What::UnsterilizedJars) || row.change == Change::ProcessSkip {
            let text = format!("{:?}: the line found is not for this", self.said);
            findings.refuse(Verdict::NotTested, Because::NoRow, text, Some(&row.citation));
            let text = format!("printed: {} {}", row.limit, row.because);
            return findings.offer("printed", text.replace("  ", " "), Some(&row.citation));
        }
        let mut text = format!("{:?} is printed as allowed", self.said);
        if row.citation.basis == Basis::Derived {
            text = format!("{:?} is allowed by our reading of the printed rules", self.said);
        }
        // A limit of nothing says no more than the change itself does.
        if !matches!(&*row.limit, "" | "0") {
            text = format!("{text} ({} {})", row.limit, row.unit).replace(" )", ")");
        }
        text = format!("{text}: {}", row.because);
        findings.remind("change-allowed", text, Some(&row.citation));
    }

    fn refuse(&self, row: &ChangeRule, findings: &mut Findings) {
        findings.rule(&row.id);
        let text = format!("{:?}: {}", self.said, row.because);
        let verdict = row.verdict;
        findings.refuse(verdict, code_for(self.meaning, row, verdict), text, Some(&row.citation));
        if row.instead.is_empty() {
            findings.offer("as-printed", AS_PRINTED, None);
        } else {
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
        if let Meaning::Fixed(..) = self.meaning {
            for refusal in self.almanac.find_refusals(self.said) {
                if refusal.citation.basis == Basis::Read {
                    add_refusal(refusal, Verdict::DoNot, Because::BannedPractice, findings);
                }
            }
        }
        self.offer_printed(query, findings);
        findings.offer("as-printed", AS_PRINTED, None);
    }

    /// Offers what is printed nearest by: the band of an amount, a variation in its own words, a permission with
    /// its limit.
    fn offer_printed(&self, query: &Query, findings: &mut Findings) {
        for row in self.scope.ranks[0].iter().chain(&self.scope.ranks[1]) {
            let about = query.changes.contains(&row.change) && query.classes.contains(&row.ingredient);
            let limited = measures_amount(row) || row.what.contains(&What::AsPrinted) || number_permits(row);
            if about && limited && may_decide(row) && row.verdict == Verdict::Tested {
                let text = format!("printed: {} {}", row.limit, row.unit);
                findings.offer("printed", text.trim_end(), Some(&row.citation));
            }
        }
    }
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
