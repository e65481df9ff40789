//! Is there a tested process for it?
//!
//! The question stands in the address, so an answer can be kept and sent on. What is wrong with it is said under the
//! field it is about, and everything typed stays as it was.

use almanac::{Almanac, CannerKind, JarSize, Pack, Verdict};
use askama::Template;
use axum::extract::{Query, State};
use axum::http::StatusCode;
use axum::response::Response;
use batch::clear::Clearance;
use kitchen::ask::{self, ClearAnswer, ClearWords, list_formulas, list_processes};
use kitchen::wording::{as_sentence, capitalize, name_canner, say_acid, say_heating, say_question, say_row};
use measure::write_length_in;
use serde::{Deserialize, Serialize};

use super::wrong::{Wrong, find_wrong};
use crate::choice::Choice;
use crate::leaf::{self, Place, filters};
use crate::pages::Kitchen;

/// The form as it was typed.
#[derive(Debug, Clone, Default, Deserialize, Serialize)]
#[serde(default)]
pub(crate) struct Typed {
    pub(crate) food: String,
    pub(crate) pack: String,
    pub(crate) jar: String,
    pub(crate) canner: String,
    pub(crate) altitude: String,
    pub(crate) gauge_error: String,
    pub(crate) gauge_tested: String,
    pub(crate) with: String,
    pub(crate) change: String,
}

#[derive(Template)]
#[template(path = "ask/process.html")]
struct ProcessPage {
    place: Place,
    title: String,
    typed: Typed,
    packs: Vec<Choice>,
    jars: Vec<Choice>,
    canners: Vec<Choice>,
    tested: Vec<Choice>,
    foods: Vec<String>,
    formulas: Vec<String>,
    wrong: Option<Wrong>,
    answer: Option<Answer>,
}

impl ProcessPage {
    /// What is wrong with a field, if it is that one.
    fn wrong_with(&self, field: &str) -> Option<&Wrong> {
        self.wrong.as_ref().filter(|wrong| wrong.field == field)
    }
}

/// An answer in finished words.
struct Answer {
    /// *Tested*, *Not tested*, *Do not*.
    word: &'static str,
    /// The class that draws the bar beside it.
    bar: &'static str,
    question: String,
    processes: Vec<Process>,
    acid: Option<(String, String)>,
    because: Vec<Sourced>,
    instead: Vec<Sourced>,
    riders: Vec<Sourced>,
}

struct Process {
    minutes: String,
    how: String,
    rest: Option<String>,
    headspace: String,
    row: String,
    source: String,
}

/// A sentence and where it stands.
struct Sourced {
    words: String,
    source: Option<String>,
}

/// The question, and its answer once it was asked.
pub(crate) async fn show(State(kitchen): State<Kitchen>, Query(typed): Query<Typed>) -> Response {
    let almanac = &kitchen.almanac;
    if typed.food.trim().is_empty() && typed.with.trim().is_empty() {
        return leaf::show(StatusCode::OK, &page(almanac, typed, None, None));
    }
    match ask::clear(almanac, &words_of(&typed)) {
        Ok(answer) => {
            let answer = word_answer(almanac, &typed, &answer);
            leaf::show(StatusCode::OK, &page(almanac, typed, None, Some(answer)))
        }
        Err(error) => {
            let wrong = find_wrong(almanac, &error, &typed);
            leaf::show(StatusCode::UNPROCESSABLE_ENTITY, &page(almanac, typed, Some(wrong), None))
        }
    }
}

fn page(almanac: &Almanac, typed: Typed, wrong: Option<Wrong>, answer: Option<Answer>) -> ProcessPage {
    let title = match (&answer, &wrong) {
        (Some(answer), _) => format!("{}: {}", answer.word, answer.question.trim_end_matches('.')),
        (None, Some(_)) => "Ask: one thing is missing".to_owned(),
        (None, None) => "Ask: is there a tested process?".to_owned(),
    };
    let names = |listed: Vec<ask::Listed>| listed.into_iter().map(|line| capitalize(&line.name)).collect();
    ProcessPage {
        place: Place::Ask,
        title,
        packs: Choice::of(Pack::ALL.iter().map(|pack| (pack.as_str(), pack.as_str())), &typed.pack),
        jars: Choice::of(JarSize::ALL.iter().map(|jar| (jar.as_str(), jar.as_str())), &typed.jar),
        canners: Choice::of(
            CannerKind::ALL.iter().map(|canner| (canner.as_str(), name_canner(*canner))),
            &typed.canner,
        ),
        tested: Choice::of(
            [("this-year", "within a year"), ("overdue", "longer ago"), ("never", "never")],
            &typed.gauge_tested,
        ),
        foods: names(list_processes(almanac)),
        formulas: names(list_formulas(almanac)),
        typed,
        wrong,
        answer,
    }
}

fn words_of(typed: &Typed) -> ClearWords {
    let given = |field: &String| Some(field.trim().to_owned()).filter(|words| !words.is_empty());
    ClearWords {
        food: typed.food.trim().to_owned(),
        pack: given(&typed.pack),
        jar: given(&typed.jar),
        canner: given(&typed.canner),
        altitude: given(&typed.altitude),
        gauge_error: given(&typed.gauge_error),
        gauge_tested: given(&typed.gauge_tested),
        with: given(&typed.with),
        changes: given(&typed.change).into_iter().collect(),
    }
}

fn word_answer(almanac: &Almanac, typed: &Typed, answer: &ClearAnswer) -> Answer {
    let (word, bar) = match answer.verdict() {
        Verdict::Tested => ("Tested", ""),
        Verdict::NotTested => ("Not tested", "not"),
        Verdict::DoNot => ("Do not", "donot"),
    };
    let plain = Answer {
        word,
        bar,
        question: as_sentence(&typed.food),
        processes: Vec::new(),
        acid: None,
        because: Vec::new(),
        instead: Vec::new(),
        riders: Vec::new(),
    };
    match answer {
        ClearAnswer::Judged(clearance) => word_clearance(almanac, plain, clearance),
        ClearAnswer::Refused(food) => Answer {
            because: word_reasons(almanac, &food.refused.because),
            instead: word_instead(almanac, &food.refused.instead),
            ..plain
        },
        ClearAnswer::Changes(changes) => Answer {
            question: format!("The change alone: {}.", changes.question.changes.join("; ")),
            because: word_reasons(almanac, &changes.because),
            instead: word_instead(almanac, &changes.instead),
            riders: word_riders(almanac, &changes.riders),
            ..plain
        },
    }
}

fn word_clearance(almanac: &Almanac, plain: Answer, clearance: &Clearance) -> Answer {
    Answer {
        question: say_question(almanac, clearance),
        processes: clearance
            .processes
            .iter()
            .map(|line| {
                let process = line.process();
                Process {
                    minutes: format!("{} min", process.minutes().0),
                    how: as_sentence(&say_heating(line)),
                    rest: process.rest().map(|rest| format!("{} min", rest.0)),
                    headspace: write_length_in(process.headspace()),
                    row: say_row(process),
                    source: ask::cite(almanac, process.citation()),
                }
            })
            .collect(),
        acid: clearance.acid.as_ref().map(|acid| (say_acid(acid), ask::cite(almanac, &acid.rule().citation))),
        because: word_reasons(almanac, &clearance.because),
        instead: word_instead(almanac, &clearance.instead),
        riders: word_riders(almanac, &clearance.riders),
        ..plain
    }
}

fn word_riders(almanac: &Almanac, riders: &[batch::clear::Rider]) -> Vec<Sourced> {
    let worded = riders.iter().map(|rider| Sourced {
        words: as_sentence(&rider.text),
        source: rider.source.as_deref().map(|written| written_source(almanac, written)),
    });
    worded.collect()
}

fn word_reasons(almanac: &Almanac, because: &[batch::clear::Reason]) -> Vec<Sourced> {
    let worded = because.iter().map(|reason| Sourced {
        words: as_sentence(&reason.text),
        source: reason.source.as_deref().map(|written| written_source(almanac, written)),
    });
    worded.collect()
}

fn word_instead(almanac: &Almanac, instead: &[batch::clear::Instead]) -> Vec<Sourced> {
    let worded = instead.iter().map(|offer| Sourced {
        words: as_sentence(&offer.text),
        source: offer.source.as_deref().map(|written| written_source(almanac, written)),
    });
    worded.collect()
}

/// A written citation with the title of the publication in place of its id.
fn written_source(almanac: &Almanac, written: &str) -> String {
    match ask::split_citation(almanac, written) {
        Some((source, place)) => format!("{}: {place}", source.title),
        None => written.to_owned(),
    }
}
