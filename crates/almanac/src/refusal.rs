//! Foods and practices that are refused, why, and what to do instead.

use crate::closed_list::closed_list;
use crate::row::Reading;
use crate::source::Citation;
use crate::tables::Table;
use crate::words::{Stems, stems_of};
use crate::{Almanac, RefusalId};

closed_list!(
    /// What is refused.
    RefusalKind {
        /// A food.
        Food = "food",
        /// A way of doing it.
        Practice = "practice",
    }
);

/// A food or practice that is refused.
#[derive(Debug, Clone, PartialEq)]
pub struct NotForCanning {
    /// Its name in the table.
    pub id: RefusalId,
    /// What it is.
    pub item: Box<str>,
    /// Food or practice.
    pub kind: RefusalKind,
    /// Why.
    pub reason: Box<str>,
    /// What to do instead.
    pub instead: Box<str>,
    /// Where it stands. A refusal counts whatever its basis or rank.
    pub citation: Citation,
    /// Ways of naming it.
    phrases: Vec<Phrase>,
}

/// A way of naming a refused food or practice.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Phrase {
    words: Stems,
    /// Whether nothing else may be said: plain cabbage is refused, pickled cabbage is another food.
    alone: bool,
}

/// Words that do not turn a food into another one.
const PLAIN_WORDS: &str = "plain can canned jar raw fresh cooked home";

impl Phrase {
    /// Reads a phrase; one that begins with `=` must stand alone.
    fn read(text: &str) -> Self {
        let (alone, words) = text.strip_prefix('=').map_or((false, text), |words| (true, words));
        Self { words: stems_of(words), alone }
    }

    /// How many words of the phrase are in the question; none when it is not meant.
    fn met_in(&self, question: &Stems) -> Option<usize> {
        let plain = || stems_of(PLAIN_WORDS);
        let meant = self.words.is_subset(question)
            && (!self.alone || question.difference(&self.words).all(|word| plain().contains(word)));
        meant.then_some(self.words.len())
    }
}

impl NotForCanning {
    /// How many words of its longest phrase are in the question; none when no phrase is.
    fn met_in(&self, question: &Stems) -> Option<usize> {
        self.phrases.iter().filter_map(|phrase| phrase.met_in(question)).max()
    }
}

impl Almanac {
    /// A refusal.
    #[must_use]
    pub fn refusal(&self, id: &str) -> Option<&NotForCanning> {
        self.refusals.get(id)
    }

    /// Every refusal, in the order of the ids.
    pub fn refusals(&self) -> impl Iterator<Item = &NotForCanning> {
        self.refusals.values()
    }

    /// The refusals that a person's words call up: those of which some phrase has all its words among them. The one
    /// with the longest phrase comes first.
    #[must_use]
    pub fn find_refusals(&self, words: &str) -> Vec<&NotForCanning> {
        let question = stems_of(words);
        let mut found: Vec<(usize, &NotForCanning)> = self
            .refusals
            .values()
            .filter_map(|refusal| Some((refusal.met_in(&question)?, refusal)))
            .collect();
        found.sort_by_key(|(length, _)| std::cmp::Reverse(*length));
        found.into_iter().map(|(_, refusal)| refusal).collect()
    }
}

/// Reads `not_for_canning.csv`.
pub(crate) fn read_refusals(reading: &mut Reading<'_>) -> Vec<(u64, NotForCanning)> {
    const COLUMNS: &[&str] =
        &["item_id", "item", "kind", "reason", "safe_alternative", "words", "source_id", "locator", "basis"];
    reading.rows(Table::NotForCanning, COLUMNS, |row| {
        let refusal = NotForCanning {
            id: row.id("item_id"),
            item: row.text("item").into(),
            kind: row.word("kind"),
            reason: row.text("reason").into(),
            instead: row.text("safe_alternative").into(),
            phrases: row.text("words").split('|').map(Phrase::read).collect(),
            citation: row.citation(),
        };
        (row.line(), refusal)
    })
}

#[cfg(test)]
mod tests {
    use crate::{Almanac, Table, Tables};

    fn first(almanac: &Almanac, words: &str) -> Option<String> {
        almanac.find_refusals(words).first().map(|refusal| refusal.id.to_string())
    }

    #[test]
    fn what_is_refused_is_found_by_the_words_people_use() {
        let almanac = Almanac::load().expect("the built-in tables hold no fault");
        let cases = [
            ("butternut squash purée", "pumpkin-squash-puree"),
            ("pumpkin butter", "pumpkin-butter"),
            ("garlic in olive oil", "garlic-in-oil"),
            ("pickled garlic", "pickled-garlic-shelf"),
            ("candied jalapeño rings", "candied-pepper-rings"),
            ("pepper rings in syrup", "candied-pepper-rings"),
            ("white peach jam", "white-peaches"),
            ("salsa thickened with flour", "starch-in-salsa"),
            ("canned cabbage", "cabbage-plain"),
            ("zucchini", "summer-squash-alone"),
            ("mashed sweet potatoes", "sweet-potato-mashed"),
            ("green beans with a splash of vinegar", "vinegar-does-not-replace-pressure"),
            ("half-gallon", "oversize-jars"),
            ("chicken soup with noodles", "soup-with-thickener"),
        ];
        for (words, id) in cases {
            assert_eq!(first(&almanac, words).as_deref(), Some(id), "{words}");
            let tables = Tables::embedded()
                .without_lines(Table::NotForCanning, |line| line.starts_with(&format!("{id},")));
            let without = Almanac::from_tables(&tables).expect("the other rows hold no fault");
            assert_ne!(first(&without, words).as_deref(), Some(id), "{words}");
        }
    }

    #[test]
    fn what_is_tested_is_not_called_refused() {
        let almanac = Almanac::load().expect("the built-in tables hold no fault");
        for words in [
            "apple butter",
            "bread and butter pickles",
            "cream style corn",
            "banana pepper rings, pickled",
            "pickled cauliflower",
            "sauerkraut",
            "bread-and-butter zucchini",
            "wax beans",
            "rice vinegar",
            "tomatoes",
            "",
        ] {
            assert_eq!(first(&almanac, words), None, "{words}");
        }
    }
}
