//! What is printed for a load in trouble: which rule of the canner tables decides which trouble.
//!
//! Nothing here permits by itself. A rule lets a load go on, begin again or be kept only when its own row and the
//! canner rule it follows were both seen in print in sources of full rank; every other row can only warn or throw
//! away. A trouble without such a rule is a gap, and is told as one.

use crate::closed_list::closed_list;
use crate::process::CannerKind;
use crate::row::Reading;
use crate::rule::{CannerRule, RuleValue};
use crate::source::Citation;
use crate::tables::Table;
use crate::{Almanac, RuleId};

closed_list!(
    /// What is asked about a load, or what went wrong with it.
    LoadTrouble {
        /// Nothing yet: when does the clock start.
        Start = "start",
        /// The water or the steam stopped boiling.
        BoilLost = "boil-lost",
        /// The pressure fell below the line.
        PressureLost = "pressure-lost",
        /// The power was cut or the burner went out.
        PowerCut = "power-cut",
        /// The canner boiled dry.
        BoiledDry = "boiled-dry",
        /// A jar broke in the canner.
        JarBroke = "jar-broke",
        /// The water stands lower than printed, and still over the lids.
        WaterLow = "water-low",
        /// The water was found below the lids.
        WaterBelowLids = "water-below-lids",
        /// A pressure canner was cooled or opened by force.
        ForcedCooling = "forced-cooling",
        /// The acid was forgotten.
        AcidForgotten = "acid-forgotten",
        /// Too little or too weak acid.
        WrongAcid = "wrong-acid",
        /// Too short a time.
        WrongTime = "wrong-time",
        /// Another pack than the printed one.
        WrongPack = "wrong-pack",
        /// A larger jar than the printed one.
        WrongJar = "wrong-jar",
        /// Vented too short or not at all.
        WrongVent = "wrong-vent",
        /// Another canner than the printed one.
        WrongCanner = "wrong-canner",
        /// The line of a lower altitude.
        WrongAltitude = "wrong-altitude",
        /// No tested formula.
        WrongFormula = "wrong-formula",
        /// The heat went off and nobody was there.
        LeftAlone = "left-alone",
        /// Right process, and a jar did not seal.
        Unsealed = "unsealed",
    }
);

closed_list!(
    /// When a trouble was noticed, counted against the process.
    Noticed {
        /// Before the heat.
        Before = "before",
        /// While the jars were processed.
        During = "during",
        /// When the process was over.
        After = "after",
    }
);

closed_list!(
    /// What a rule says of a load.
    LoadRuling {
        /// When the clock starts.
        Start = "start",
        /// How long the steam streams before that.
        Vent = "vent",
        /// The whole time again.
        WholeTimeAgain = "whole-time-again",
        /// Until when a load may be begun again, refrigerated or frozen.
        Limit = "limit",
        /// The whole time had run.
        Complete = "complete",
        /// Water is added and the process goes on.
        TopUp = "top-up",
        /// The acid goes in before anything else.
        AcidFirst = "acid-first",
        /// Begun again only by a hot-pack line.
        HotPack = "hot-pack",
        /// How a jar is frozen.
        Freeze = "freeze",
        /// Thrown away.
        Discard = "discard",
        /// A warning only.
        Caution = "caution",
    }
);

/// A rule for a load in trouble.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadRule {
    /// Its name.
    pub id: RuleId,
    /// The trouble it is about.
    pub trouble: LoadTrouble,
    /// The canners it is for.
    pub canners: Vec<CannerKind>,
    /// When the trouble was noticed; `None` for any time.
    pub noticed: Option<Noticed>,
    /// What it says.
    pub ruling: LoadRuling,
    /// The canner rule whose words and figure it goes by; `None` where it stands by itself.
    pub follows: Option<RuleId>,
    /// The rule in short words.
    pub rule: Box<str>,
    /// Where it stands.
    pub citation: Citation,
}

/// A rule for a load with the canner rule it follows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FoundLoadRule<'a> {
    /// The rule.
    pub rule: &'a LoadRule,
    /// The canner rule it follows, where it follows one.
    pub followed: Option<&'a CannerRule>,
}

impl<'a> FoundLoadRule<'a> {
    /// Whether the load may do what it says: every row it rests on was seen in print in a source of full rank.
    #[must_use]
    pub fn may_permit(&self) -> bool {
        let follows = self.followed.is_none_or(|rule| rule.citation.may_be_called_tested());
        follows && self.rule.citation.may_be_called_tested()
    }

    /// The figure of the canner rule.
    #[must_use]
    pub fn value(&self) -> Option<RuleValue> {
        self.followed?.value
    }

    /// Where it is printed: the canner rule's own place, else that of the row.
    #[must_use]
    pub fn citation(&self) -> &'a Citation {
        self.followed.map_or(&self.rule.citation, |rule| &rule.citation)
    }
}

/// The canners that a cell names.
fn canners_of(cell: &str) -> Option<Vec<CannerKind>> {
    match cell {
        "any" => Some(CannerKind::ALL.to_vec()),
        "pressure" => Some(vec![CannerKind::Dial, CannerKind::Weighted]),
        one => CannerKind::find(one).map(|kind| vec![kind]),
    }
}

/// Reads `load_rules.csv`.
pub(crate) fn read_load_rules(reading: &mut Reading<'_>) -> Vec<(u64, LoadRule)> {
    const COLUMNS: &[&str] = &[
        "rule_id",
        "trouble",
        "canner",
        "noticed",
        "ruling",
        "follows",
        "rule",
        "source_id",
        "locator",
        "basis",
    ];
    reading.rows(Table::LoadRules, COLUMNS, |row| {
        let id = row.id("rule_id");
        let trouble = row.word("trouble");
        let cell = row.text("canner");
        let canners = canners_of(cell).unwrap_or_else(|| {
            row.contradict(format!("{cell:?} is no canner, nor `any` or `pressure`"));
            Vec::new()
        });
        let noticed = row.maybe_word("noticed");
        let ruling = row.word("ruling");
        let follows = Some(row.cell("follows")).filter(|cell| !cell.is_empty()).map(RuleId::from);
        let rule = row.text("rule").into();
        let citation = row.citation();
        (row.line(), LoadRule { id, trouble, canners, noticed, ruling, follows, rule, citation })
    })
}

impl Almanac {
    /// The rules for a trouble in a canner, in the order of the table. A rule that follows a canner rule which is
    /// not on file is not among them. Without `noticed` the rules of every time are.
    pub fn find_load_rules(
        &self,
        trouble: LoadTrouble,
        canner: CannerKind,
        noticed: Option<Noticed>,
    ) -> impl Iterator<Item = FoundLoadRule<'_>> {
        let for_this = move |rule: &&LoadRule| {
            rule.trouble == trouble
                && rule.canners.contains(&canner)
                && (rule.noticed.is_none() || noticed.is_none() || rule.noticed == noticed)
        };
        self.load_rules.iter().filter(for_this).filter_map(|rule| match &rule.follows {
            None => Some(FoundLoadRule { rule, followed: None }),
            Some(id) => self.rule(id.as_str()).map(|found| FoundLoadRule { rule, followed: Some(found) }),
        })
    }

    /// Every rule for loads in trouble, in the order of the table.
    #[must_use]
    pub fn load_rules(&self) -> &[LoadRule] {
        &self.load_rules
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Tables;

    fn load() -> Almanac {
        Almanac::load().expect("the tables built in have no fault")
    }

    #[test]
    fn every_rule_that_is_followed_is_on_file() {
        let almanac = load();
        for rule in almanac.load_rules() {
            let Some(id) = &rule.follows else { continue };
            let followed = almanac.rule(id.as_str()).unwrap_or_else(|| panic!("{} follows {id}", rule.id));
            assert_eq!(rule.citation.basis, followed.citation.basis, "{}", rule.id);
        }
    }

    #[test]
    fn a_recalled_rule_and_one_of_lower_rank_permit_nothing() {
        let almanac = load();
        let permits = |trouble| {
            let found: Vec<_> = almanac.find_load_rules(trouble, CannerKind::Dial, None).collect();
            assert!(!found.is_empty(), "{trouble}");
            found.iter().any(|found| found.rule.ruling != LoadRuling::Caution && found.may_permit())
        };
        assert!(permits(LoadTrouble::PressureLost));
        for trouble in [LoadTrouble::BoiledDry, LoadTrouble::LeftAlone, LoadTrouble::JarBroke] {
            assert!(!permits(trouble), "{trouble}");
        }
    }

    #[test]
    fn striking_the_canner_rule_takes_what_follows_it_along() {
        let tables =
            Tables::embedded().without_lines(Table::CannerRules, |line| line.starts_with("pc-restart,"));
        let almanac = Almanac::from_tables(&tables).expect("a struck row is no fault");
        let found =
            almanac.find_load_rules(LoadTrouble::PressureLost, CannerKind::Dial, Some(Noticed::During));
        assert!(found.into_iter().all(|found| found.rule.ruling != LoadRuling::WholeTimeAgain));
    }
}
