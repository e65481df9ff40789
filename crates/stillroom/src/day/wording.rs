//! A planned day in words: times as the clock shows them, counts as ranges, each source once.
//!
//! The text of the terminal and the page for a phone are both drawn from the sheet made here, so that they cannot
//! say different things.

use std::collections::BTreeMap;

use almanac::Almanac;
use kitchen::answer::{BatchSheet, ClockLine, DayAnswer, LineAttention, Make, NotMade, ProcessLine, Refusal};
use kitchen::wording::{SaidAmount, as_sentence, capitalize, join_names, say_factor, tidy_amount};
use measure::{Altitude, Minutes, write_altitude, write_minutes};
use paper::day::{
    Act, Amount, Attention, BatchAmounts, Cleared, DaySheet, Fetch, Finish, Firmness, Later, MadeToday,
    PersonList, Reason, Refused,
};

use crate::amounts::for_paper;
use crate::cited::Cited;

/// Minutes of a day; later ones are of the next.
const DAY: u32 = 24 * 60;

/// The longest words that hang in the margin.
const FIGURE: usize = 11;

/// The whole day in words.
pub(super) fn word_day(almanac: &Almanac, answer: &DayAnswer) -> DaySheet {
    let labels = label_makes(&answer.makes);
    let clock: Vec<Act> = answer.clock.iter().map(|line| word_act(&labels, line)).collect();
    let mut cited = Cited::new(almanac);
    let makes: Vec<MadeToday> =
        answer.makes.iter().filter(|make| !make.is_errand).map(|make| word_make(&mut cited, make)).collect();
    let refused: Vec<Refused> =
        answer.refusals.iter().map(|refusal| word_refusal(&mut cited, refusal)).collect();
    DaySheet {
        title: answer.date_in_words.clone(),
        place: word_place(answer.altitude_ft),
        people: word_people(answer),
        finish: word_finish(answer),
        clash: answer.clash.iter().map(|words| as_sentence(words)).collect(),
        fetch: answer.to_fetch.iter().map(word_fetch).collect(),
        evening_before: answer.evening_before.iter().map(|words| as_sentence(words)).collect(),
        makes,
        errands: answer.makes.iter().filter(|make| make.is_errand).map(|make| make.name.clone()).collect(),
        lists: list_people(answer, &clock),
        clock,
        not_made: word_not_made(&answer.not_made),
        left_over: answer.left_over.iter().map(|left| reason(&left.what, &left.goes_to)).collect(),
        later: answer.later.iter().map(|line| word_later(&labels, line)).collect(),
        refused,
        cautions: answer.cautions.iter().map(|words| as_sentence(words)).collect(),
        filled_in: answer.filled_in.iter().map(|words| as_sentence(words)).collect(),
        sources: cited.list(),
    }
}

/// The first few of what is not made, which come in the order of their worth, and how many more there are.
fn word_not_made(not_made: &[NotMade]) -> Vec<Reason> {
    /// More than these nobody reads.
    const MOST: usize = 8;
    let mut reasons: Vec<Reason> =
        not_made.iter().take(MOST).map(|not| reason(&not.name, &not.why)).collect();
    let more = not_made.len().saturating_sub(MOST);
    if more > 0 {
        reasons.push(reason(&format!("And {more} more of less worth"), "`--json` lists them"));
    }
    reasons
}

fn word_place(altitude_ft: Option<u32>) -> String {
    match altitude_ft {
        Some(feet) => format!("{} above the sea.", write_altitude(Altitude::feet(feet))),
        None => "Height above the sea not given, so nothing is canned; see Refused.".to_owned(),
    }
}

fn word_people(answer: &DayAnswer) -> String {
    format!("{}, {} to {}.", join_names(&answer.people), clock(answer.starts), clock(answer.ends))
}

fn word_finish(answer: &DayAnswer) -> Finish {
    let margin = answer.margin_min.map(|minutes| match minutes {
        0 => "As the day ends, with nothing to spare.".to_owned(),
        minutes => format!("{} before the day ends.", write_minutes(Minutes(minutes))),
    });
    let proof = (!answer.proof.is_empty()).then(|| as_sentence(&answer.proof));
    Finish { time: answer.finish.map(clock), words: margin.into_iter().chain(proof).collect() }
}

fn word_fetch(line: &kitchen::answer::FetchLine) -> Fetch {
    Fetch {
        what: line.what.clone(),
        short: line.short.clone(),
        shop: line.shop.clone(),
        for_what: join_names(&line.for_makes),
    }
}

fn word_make(cited: &mut Cited<'_>, make: &Make) -> MadeToday {
    let range = make.containers.filter(|[low, _, high]| low != high);
    MadeToday {
        count: make.containers.map(|[_, likely, _]| likely.to_string()),
        range: range.map(|[low, _, high]| format!("{low} to {high}")),
        name: capitalize(without_yield(&make.name)),
        from: join_names(&make.from),
        yields: capitalize(&make.yields),
        keeps: make.keeps.clone(),
        clearance: make
            .process
            .as_ref()
            .map(|process| word_clearance(cited, process, make.verdict.as_deref())),
        source: make.source.as_deref().map(|source| cited.mark_written(source)),
        batches: word_batches(&make.batches),
    }
}

fn word_clearance(cited: &mut Cited<'_>, process: &ProcessLine, verdict: Option<&str>) -> Cleared {
    Cleared {
        // A process without a verdict is none of ours to call tested.
        verdict: capitalize(verdict.unwrap_or("on file")),
        process: as_sentence(&process.words),
        headspace: process.headspace.clone(),
        band: process.band.clone(),
        acid: process.acid.clone(),
        source: cited.mark_written(&process.source),
    }
}

/// Batches one after the other that take the same are told once.
fn word_batches(batches: &[BatchSheet]) -> Vec<BatchAmounts> {
    let alike = |one: &BatchSheet, other: &BatchSheet| word_amounts(one) == word_amounts(other);
    batches
        .chunk_by(alike)
        .map(|same| {
            let factor = same[0].factor.as_str();
            let of_printed =
                factor.parse().map_or_else(|_| format!("{factor} of the printed formula"), say_factor);
            let heading = match same {
                [_] if batches.len() == 1 => of_printed,
                [one] => format!("batch {}, {of_printed}", one.number),
                same => format!("{} batches alike, each {of_printed}", same.len()),
            };
            BatchAmounts { heading: as_sentence(&heading), amounts: word_amounts(&same[0]) }
        })
        .collect()
}

fn word_amounts(batch: &BatchSheet) -> Vec<Amount> {
    let amounts = batch.ingredients.iter().map(|line| {
        for_paper(tidy_amount(SaidAmount {
            what: capitalize(&line.ingredient),
            prep: line.prep.clone(),
            measure: line.measure.clone(),
            weight: line.weight.clone(),
            moved: line.moved.clone(),
        }))
    });
    amounts.collect()
}

fn word_act(labels: &Labels, line: &ClockLine) -> Act {
    Act {
        from: clock(line.from),
        to: if line.to > line.from { clock(line.to) } else { String::new() },
        who: line.who.clone(),
        attention: match line.attention {
            LineAttention::Hands => Attention::Hands,
            LineAttention::Eyes => Attention::Eyes,
            LineAttention::Alone => Attention::Alone,
        },
        what: as_sentence(&line.act),
        make: label(labels, &line.make),
        // One printed line says what the act says already.
        detail: line
            .detail
            .iter()
            .filter(|_| line.detail.len() > 1)
            .map(|words| as_sentence(words))
            .collect(),
        caution: line.caution.as_deref().map(as_sentence),
        must_not_be_left: line.must_not_be_left,
    }
}

/// A short label for the name of each make.
type Labels = BTreeMap<String, String>;

/// The first words of each name, as many as it takes to tell it from every other make of the day.
fn label_makes(makes: &[Make]) -> Labels {
    let beginning = |name: &str, parts: usize| name.split(", ").take(parts).collect::<Vec<_>>().join(", ");
    let label_of = |name: &str| {
        let parts = without_yield(name).split(", ").count();
        let tells = |parts: &usize| {
            makes.iter().filter(|make| beginning(&make.name, *parts) == beginning(name, *parts)).count() == 1
        };
        beginning(name, (1..=parts).find(tells).unwrap_or(parts))
    };
    makes.iter().map(|make| (make.name.clone(), label_of(&make.name))).collect()
}

fn label(labels: &Labels, name: &str) -> String {
    labels.get(name).cloned().unwrap_or_else(|| name.to_owned())
}

/// A formula's name without the size it is printed at, which a fitted batch does not have: "tomatoes, crushed, 7
/// quarts" is made as nine pints.
fn without_yield(name: &str) -> &str {
    match name.rsplit_once(", ") {
        Some((before, last)) if last.starts_with(|letter: char| letter.is_ascii_digit()) => before,
        _ => name,
    }
}

/// The acts of each person; none when there is only one, whose day is the clock itself.
fn list_people(answer: &DayAnswer, clock: &[Act]) -> Vec<PersonList> {
    if answer.people.len() < 2 {
        return Vec::new();
    }
    let list = |name: &String| PersonList {
        name: name.clone(),
        acts: clock.iter().filter(|act| is_done_by(act, name)).map(shorten).collect(),
    };
    answer.people.iter().map(list).filter(|list| !list.acts.is_empty()).collect()
}

/// An act in few words: the first thing done, without its amounts, which stand in the whole clock.
fn shorten(act: &Act) -> Act {
    let first = act.what.split("; ").next().unwrap_or_default();
    let first = match first.trim_end_matches('.').rsplit_once(" (") {
        Some((before, amount)) if amount.ends_with(')') => before,
        _ => first,
    };
    Act { what: as_sentence(first), detail: Vec::new(), caution: None, ..act.clone() }
}

/// Whether the act names this person, alone or with others.
fn is_done_by(act: &Act, name: &str) -> bool {
    act.who
        .as_deref()
        .is_some_and(|who| who.split(", ").flat_map(|part| part.split(" and ")).any(|one| one == name))
}

/// A short time hangs in the margin; a longer one stands in the sentence.
fn word_later(labels: &Labels, line: &kitchen::answer::LaterLine) -> Later {
    let make = label(labels, &line.make);
    if line.when.chars().count() <= FIGURE {
        Later { when: line.when.clone(), what: as_sentence(&line.what), make }
    } else {
        Later { when: String::new(), what: as_sentence(&format!("{}, {}", line.what, line.when)), make }
    }
}

fn word_refusal(cited: &mut Cited<'_>, refusal: &Refusal) -> Refused {
    let verdict = refusal.verdict.replace('-', " ");
    Refused {
        wish: refusal.wish.trim_end_matches('.').to_owned(),
        firmness: match verdict.as_str() {
            "do not" => Firmness::DoNot,
            "not tested" => Firmness::NotTested,
            _ => Firmness::NotPlanned,
        },
        verdict: capitalize(&verdict),
        because: refusal.because.iter().map(|words| as_sentence(words)).collect(),
        instead: refusal.instead.iter().map(|words| as_sentence(words)).collect(),
        source: refusal.source.as_deref().map(|source| cited.mark_written(source)),
    }
}

fn reason(what: &str, why: &str) -> Reason {
    Reason { what: capitalize(what.trim_end_matches('.')), why: as_sentence(why) }
}

/// The time of day: `9:05`.
fn clock(minute: u32) -> String {
    let time = format!("{}:{:02}", minute % DAY / 60, minute % 60);
    if minute < DAY { time } else { format!("{time} next day") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_clock_reads_as_on_the_wall() {
        assert_eq!(clock(545), "9:05");
        assert_eq!(clock(0), "0:00");
        assert_eq!(clock(1460), "0:20 next day");
    }

    #[test]
    fn makes_are_called_by_as_few_words_as_tell_them_apart() {
        let check = |names: &[&str], labels: &[&str]| {
            let makes: Vec<Make> = names.iter().map(|name| make_called(name)).collect();
            let found = label_makes(&makes);
            let got: Vec<&str> = names.iter().map(|name| found[*name].as_str()).collect();
            assert_eq!(got, labels);
        };
        check(&["peach jam, powdered pectin", "bread"], &["peach jam", "bread"]);
        check(
            &["tomatoes, crushed, no added liquid, 7 quarts", "tomatoes, halved, 7 quarts"],
            &["tomatoes, crushed", "tomatoes, halved"],
        );
        check(&["bread", "bread"], &["bread", "bread"]);
    }

    fn make_called(name: &str) -> Make {
        Make {
            project: String::new(),
            name: name.to_owned(),
            is_errand: false,
            formula: None,
            from: Vec::new(),
            yields: String::new(),
            containers: None,
            keeps: String::new(),
            process: None,
            batches: Vec::new(),
            worth: 0.0,
            worth_parts: Vec::new(),
            verdict: None,
            source: None,
        }
    }

    #[test]
    fn a_persons_own_list_tells_the_first_act_only() {
        let check = |what: &str, short: &str| {
            let act = Act { what: what.into(), caution: Some("Hot glass.".into()), ..Act::default() };
            let short_act = shorten(&act);
            assert_eq!((short_act.what.as_str(), short_act.caution), (short, None));
        };
        check(
            "Wash and trim green beans; pack spices and beans upright (2 lb).",
            "Wash and trim green beans.",
        );
        check("Husk ears and silk (6 lb).", "Husk ears and silk.");
        check("Lift 8 pints out onto a towel.", "Lift 8 pints out onto a towel.");
    }

    #[test]
    fn of_what_is_not_made_the_first_eight_are_told_and_the_rest_counted() {
        let not =
            |at: usize| NotMade { name: format!("jam {at}"), why: "the day is full".into(), worth: 0.0 };
        let told = word_not_made(&(0..11).map(not).collect::<Vec<_>>());
        assert_eq!(told.len(), 9);
        assert_eq!(
            (told[8].what.as_str(), told[8].why.as_str()),
            ("And 3 more of less worth", "`--json` lists them.")
        );
        assert_eq!(word_not_made(&[not(1)]).len(), 1);
    }

    #[test]
    fn a_person_is_found_among_others_and_not_inside_a_longer_name() {
        let act = |who: &str| Act { who: Some(who.into()), ..Act::default() };
        assert!(is_done_by(&act("Tove and Ansel"), "Ansel"));
        assert!(is_done_by(&act("Tove, Per and Ansel"), "Per"));
        assert!(!is_done_by(&act("Ansela"), "Ansel"));
    }
}
