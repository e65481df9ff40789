//! The ways of naming a row, and the rows that a person's words call up.

use crate::words::{Stems, fold_of, stems_of};

/// Words that people say around a sign or a food and that change nothing about it. A word that may be half a sign (how
/// long, how open, how full, how odd) is not here: what stands beside a sign and is not understood keeps nothing.
const PLAIN_WORDS: &str = "a about after all already also am an and any apple are at back bag band be bean because been beet \
    before big bought box but by can canned canner carrot cellar corn could cup did do does doing done \
    eat eating even every everywhere few food for found freezer fridge from frozen fruit get gets \
    getting give got had hand has have he help her here his home homemade how i if im in inside into is \
    it its jam jar jars jelly just kind kitchen lemon lid lids like little lot made make many may maybe \
    me meat might more most much my new now of old on one only or other our ours outside pack package \
    packed pantry pea peach pear pickle piece pint please press push put quart quarter quite \
    refrigerator ring safe salsa sauce say see seem seems she shelf shop should slice small so some soup \
    stew store than that the their them then there these they thing think this those to today tomato too \
    top turn two under up us vegetable very was we went were what when where which while who why will \
    with would you your";

/// The phrases of one row.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Phrases {
    phrases: Vec<Phrase>,
}

#[derive(Debug, Clone, PartialEq)]
struct Phrase {
    written: Box<str>,
    words: Stems,
    /// Whether nothing else may be said.
    alone: bool,
}

impl Phrases {
    /// Reads phrases parted by bars; one that begins with `=` must stand alone.
    pub(super) fn read(cell: &str) -> Self {
        let phrases = cell.split('|').map(str::trim).filter(|text| !text.is_empty()).map(|text| {
            let (alone, words) = text.strip_prefix('=').map_or((false, text), |words| (true, words));
            Phrase { written: words.into(), words: stems_of(words), alone }
        });
        Self { phrases: phrases.collect() }
    }

    /// The phrases as the table writes them.
    #[cfg(test)]
    pub(super) fn written(&self) -> impl Iterator<Item = &str> {
        self.phrases.iter().map(|phrase| &*phrase.written)
    }

    /// The phrase that names the row best, for a list of what may be asked.
    fn first(&self) -> Option<&str> {
        self.phrases.first().map(|phrase| &*phrase.written)
    }

    /// The words of every phrase that is in the question.
    fn met_in(&self, question: &Stems, plain: &Stems) -> Vec<&Stems> {
        let meant = self.phrases.iter().filter(|phrase| {
            phrase.words.is_subset(question)
                && (!phrase.alone || question.difference(&phrase.words).all(|word| plain.contains(word)))
        });
        meant.map(|phrase| &phrase.words).collect()
    }
}

/// What a longer phrase does to a shorter one that is part of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Longer {
    /// Both count.
    StandsBeside,
    /// `ice cream` is not cream.
    HidesShorter,
}

/// The rows that a person's words call up, and the words that called up none.
#[derive(Debug, Clone, PartialEq)]
pub struct Called<'a, T> {
    /// The rows, in the order of their table.
    pub rows: Vec<&'a T>,
    /// The words of the question that no row understood, as they were typed.
    pub not_understood: Vec<String>,
}

/// Finds the rows of which some phrase has all its words among those typed.
pub(super) fn call_up<'a, T>(
    typed: &str,
    rows: &'a [T],
    phrases: impl Fn(&'a T) -> &'a Phrases,
    longer: Longer,
) -> Called<'a, T> {
    let question = stems_of(typed);
    let plain = stems_of(PLAIN_WORDS);
    let met: Vec<(&T, Vec<&Stems>)> = rows
        .iter()
        .map(|row| (row, phrases(row).met_in(&question, &plain)))
        .filter(|(_, met)| !met.is_empty())
        .collect();
    let hidden = |words: &Stems| {
        let others = met.iter().flat_map(|(_, met)| met.iter());
        longer == Longer::HidesShorter
            && others.into_iter().any(|other| words.len() < other.len() && words.is_subset(other))
    };
    let kept: Vec<&(&T, Vec<&Stems>)> =
        met.iter().filter(|(_, met)| met.iter().any(|words| !hidden(words))).collect();
    let understood: Stems =
        kept.iter().flat_map(|(_, met)| met.iter().flat_map(|words| (*words).clone())).collect();
    Called {
        rows: kept.iter().map(|(row, _)| *row).collect(),
        not_understood: words_outside(typed, &understood, &plain),
    }
}

/// The words typed that are neither understood nor plain; numbers say how much and not what.
fn words_outside(typed: &str, understood: &Stems, plain: &Stems) -> Vec<String> {
    let words = typed.split(|mark: char| !mark.is_alphanumeric()).filter(|word| !word.is_empty());
    let unknown = words.filter(|word| {
        let stems = stems_of(word);
        !word.chars().any(|letter| letter.is_ascii_digit())
            && fold_of(word).chars().count() > 1
            && stems.iter().any(|stem| !understood.contains(stem) && !plain.contains(stem))
    });
    unknown.map(str::to_owned).collect()
}

/// What may be asked: the first phrase of each row, each once.
pub(super) fn askable<'a>(phrases: impl Iterator<Item = &'a Phrases>) -> Vec<String> {
    let mut words: Vec<String> = Vec::new();
    for first in phrases.filter_map(Phrases::first) {
        if !words.iter().any(|word| word == first) {
            words.push(first.to_owned());
        }
    }
    words
}
