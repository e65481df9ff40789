//! How a standing question is written down here, and how it is put.

use almanac::{Almanac, SourceId, Verdict};
use batch::clear::{Because, Clearance};
use kitchen::ask::{ClearAnswer, ClearWords, clear};

/// One question: what is asked, in the words of the command, and what an educator would answer.
#[derive(Clone, Copy)]
pub struct Question {
    /// As it is asked over a counter.
    pub asked: &'static str,
    pub food: &'static str,
    pub pack: &'static str,
    pub jar: &'static str,
    pub canner: &'static str,
    pub altitude: &'static str,
    pub gauge_error: &'static str,
    pub gauge_tested: &'static str,
    pub with: &'static str,
    pub changes: &'static [&'static str],
    pub answer: Answer,
    /// An id that the answer must name among its sources; empty where the question is handed back.
    pub cites: &'static str,
    /// The sentence it rests on, in our own words.
    pub rests_on: &'static str,
    /// Issuer, title, year, place; a page without a year is given with the year it was read in, or as such.
    pub source: &'static str,
}

/// What an educator would answer.
#[derive(Clone, Copy, Debug)]
pub enum Answer {
    /// Tested, by these lines: minutes, and the dial reading or weight to keep.
    Tested(&'static [(u32, Option<u32>)]),
    /// Not so, with the first reason.
    Not(Verdict, Because),
    /// Refused by its name, under this id.
    Refused(&'static str, Verdict),
    /// Handed back with these words: something must be known first.
    Asks(&'static str),
}

/// A question about nothing, to be filled in.
pub const BLANK: Question = Question {
    asked: "",
    food: "",
    pack: "",
    jar: "",
    canner: "",
    altitude: "",
    gauge_error: "",
    gauge_tested: "",
    with: "",
    changes: &[],
    answer: Answer::Asks(""),
    cites: "",
    rests_on: "",
    source: "",
};

/// A food in a boiling-water canner near the sea.
pub const fn boiled(food: &'static str, pack: &'static str, jar: &'static str) -> Question {
    Question { food, pack, jar, canner: "boiling-water", altitude: "500 ft", ..BLANK }
}

/// A food on a dial that was tested this year and found right, near the sea.
pub const fn on_dial(food: &'static str, pack: &'static str, jar: &'static str) -> Question {
    Question { food, pack, jar, canner: "dial", altitude: "500 ft", gauge_tested: "this-year", ..BLANK }
}

/// Puts every question of a list and checks its answer.
pub fn put(questions: &[Question]) {
    let almanac = Almanac::load().expect("the tables built in have no fault");
    for question in questions {
        question.put(&almanac);
    }
}

impl Question {
    fn words(&self) -> ClearWords {
        let said = |text: &str| (!text.is_empty()).then(|| text.to_owned());
        ClearWords {
            food: self.food.to_owned(),
            pack: said(self.pack),
            jar: said(self.jar),
            canner: said(self.canner),
            altitude: said(self.altitude),
            gauge_error: said(self.gauge_error),
            gauge_tested: said(self.gauge_tested),
            with: said(self.with),
            changes: self.changes.iter().map(|change| (*change).to_owned()).collect(),
        }
    }

    fn put(&self, almanac: &Almanac) {
        let asked = self.asked;
        for text in [asked, self.food, self.rests_on, self.source] {
            assert!(!text.is_empty(), "{asked}: the question is not filled in");
        }
        let year = |word: &str| word.len() == 4 && (word.starts_with("19") || word.starts_with("20"));
        let dated = self.source.split(|mark: char| !mark.is_ascii_digit()).any(year);
        assert!(
            dated || self.source.contains("no year"),
            "{asked}: no year is named, nor that there is none"
        );
        match (clear(almanac, &self.words()), self.answer) {
            (Ok(ClearAnswer::Judged(said)), Answer::Tested(lines)) => self.is_tested(almanac, &said, lines),
            (Ok(ClearAnswer::Judged(said)), Answer::Not(verdict, code)) => {
                assert_eq!(said.verdict, verdict, "{asked}: {:?}", said.because);
                assert_eq!(said.because[0].code, code, "{asked}: {:?}", said.because);
                assert!(said.processes.is_empty() && said.acid.is_none(), "{asked} is given a process");
                assert!(!said.instead.is_empty(), "{asked} is refused with no way out");
                let texts = said.because.iter().map(|reason| &reason.text);
                says_never_safe(asked, texts.chain(said.instead.iter().map(|instead| &instead.text)));
                let sources = said.sources.iter().map(|source| &source.citation().source);
                self.cites(almanac, sources);
            }
            (Ok(ClearAnswer::Refused(food)), Answer::Refused(id, verdict)) => {
                let item = &almanac.refusal(id).unwrap_or_else(|| panic!("{asked}: no refusal {id}")).item;
                let said = &food.refused;
                assert_eq!(said.verdict, verdict, "{asked}");
                assert!(said.because.iter().any(|one| one.text.starts_with(&**item)), "{asked}: {said:?}");
                assert!(!said.instead.is_empty(), "{asked} is refused with no way out");
                let texts = said.because.iter().map(|reason| &reason.text);
                says_never_safe(asked, texts.chain(said.instead.iter().map(|instead| &instead.text)));
                self.cites(almanac, said.sources.iter().map(|source| &source.citation().source));
            }
            (Err(error), Answer::Asks(words)) => {
                assert!(error.to_string().contains(words), "{asked}: {error}");
            }
            (other, wanted) => panic!("{asked}: {wanted:?} is wanted, {other:?} is said"),
        }
    }

    fn is_tested(&self, almanac: &Almanac, said: &Clearance, lines: &[(u32, Option<u32>)]) {
        let asked = self.asked;
        assert_eq!(said.verdict, Verdict::Tested, "{asked}: {:?}", said.because);
        let served: Vec<(u32, Option<u32>)> = said
            .processes
            .iter()
            .map(|line| {
                let kept = line.hold().or(line.process().pressure());
                (line.process().minutes().0, kept.map(|pressure| pressure.as_psi() as u32))
            })
            .collect();
        assert_eq!(served, lines, "{asked}");
        says_never_safe(asked, said.riders.iter().map(|rider| &rider.text));
        self.cites(almanac, said.sources.iter().map(|source| &source.citation().source));
    }

    fn cites<'a>(&self, almanac: &Almanac, sources: impl Iterator<Item = &'a SourceId>) {
        let sources: Vec<&SourceId> = sources.collect();
        let wanted = SourceId::from(self.cites);
        assert!(sources.contains(&&wanted), "{}: {wanted} is not among {sources:?}", self.asked);
        assert!(almanac.source(&wanted).is_some());
    }
}

/// No jar is ever called safe: the words for permission are *tested*, *not tested*, *do not*.
fn says_never_safe<'a>(asked: &str, texts: impl Iterator<Item = &'a String>) {
    for text in texts {
        let mut words = text.split(|mark: char| !mark.is_alphabetic());
        assert!(!words.any(|word| word.eq_ignore_ascii_case("safe")), "{asked}: {text}");
    }
}
