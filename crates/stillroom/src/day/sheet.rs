//! The day sheet at 80 columns.

use paper::day::{Act, Attention, BatchAmounts, DaySheet, Fetch, MadeToday, PersonList, Reason, Refused};
use unicode_width::UnicodeWidthStr;

use crate::amounts::lay_out_amounts;
use crate::cited::lay_out_sources;
use crate::leaf::Leaf;
use kitchen::wording::capitalize;

/// The whole day, from what to fetch to where the figures come from.
pub(super) fn lay_out_day(sheet: &DaySheet) -> String {
    let mut leaf = Leaf::head(&sheet.title, &head_lines(sheet));
    if !sheet.clash.is_empty() {
        leaf.section("This day cannot be. These cannot hold together:");
        leaf.each(&sheet.clash);
        leaf.line("", "Give up one of them in the day file, and plan again.");
    }
    lay_out_before(&mut leaf, sheet);
    lay_out_makes(&mut leaf, sheet);
    if !sheet.clock.is_empty() {
        leaf.section("The day");
        leaf.gap();
        for act in &sheet.clock {
            lay_out_act(&mut leaf, act);
        }
    }
    for list in &sheet.lists {
        lay_out_list(&mut leaf, list);
    }
    lay_out_batches(&mut leaf, &sheet.makes);
    lay_out_reasons(&mut leaf, "Not made, and why", &sheet.not_made);
    lay_out_reasons(&mut leaf, "Left over", &sheet.left_over);
    lay_out_later(&mut leaf, sheet);
    lay_out_refused(&mut leaf, &sheet.refused);
    lay_out_sentences(&mut leaf, "Mind today", &sheet.cautions);
    lay_out_sentences(&mut leaf, "Ours: the day file did not say, so this was filled in", &sheet.filled_in);
    lay_out_sources(&mut leaf, &sheet.sources);
    leaf.finish()
}

fn head_lines(sheet: &DaySheet) -> Vec<String> {
    let mut lines = vec![sheet.place.clone(), sheet.people.clone()];
    match (&sheet.finish.time, sheet.finish.words.split_first()) {
        (Some(time), Some((margin, rest))) => {
            let mut letters = margin.chars();
            let small = letters.next().map(|first| first.to_lowercase().chain(letters).collect::<String>());
            lines.push(format!("Done by about {time}, {}", small.unwrap_or_default()));
            lines.extend(rest.iter().cloned());
        }
        (Some(time), None) => lines.push(format!("Done by about {time}.")),
        (None, _) => lines.extend(sheet.finish.words.iter().cloned()),
    }
    lines
}

fn lay_out_before(leaf: &mut Leaf, sheet: &DaySheet) {
    if !sheet.fetch.is_empty() {
        leaf.section("Fetch first");
        leaf.gap();
        for item in &sheet.fetch {
            lay_out_fetch(leaf, item);
        }
    }
    lay_out_sentences(leaf, "The evening before", &sheet.evening_before);
}

fn lay_out_fetch(leaf: &mut Leaf, item: &Fetch) {
    let shop = if item.shop.is_empty() { String::new() } else { format!(": {}", item.shop) };
    // A figure too long for the margin stands in the sentence instead.
    let (figure, what) = if item.short.width() <= SHORT_FIGURE {
        (item.short.as_str(), format!("{}{shop}", item.what))
    } else {
        ("", format!("{}, {}{shop}", item.what, item.short))
    };
    leaf.line(figure, &what);
    if !item.for_what.is_empty() {
        leaf.under(&format!("for {}", item.for_what));
    }
}

/// As wide as a figure in the margin may be.
const SHORT_FIGURE: usize = 11;

fn lay_out_makes(leaf: &mut Leaf, sheet: &DaySheet) {
    if sheet.makes.is_empty() && sheet.errands.is_empty() {
        return;
    }
    leaf.section("To make");
    for make in &sheet.makes {
        leaf.gap();
        lay_out_make(leaf, make);
    }
    if !sheet.errands.is_empty() {
        leaf.gap();
        leaf.line("", &format!("And: {}", sheet.errands.join("; ")));
    }
}

fn lay_out_make(leaf: &mut Leaf, make: &MadeToday) {
    leaf.named(make.count.as_deref().unwrap_or_default(), &make.name);
    let from = if make.from.is_empty() { String::new() } else { format!(", from {}", make.from) };
    leaf.line(make.range.as_deref().unwrap_or_default(), &format!("{}{from}.", make.yields));
    if !make.keeps.is_empty() {
        leaf.line("", &format!("Keeps {}.", make.keeps));
    }
    if let Some(cleared) = &make.clearance {
        leaf.line("", &format!("{}. {}", cleared.verdict, cleared.process));
        if let Some(acid) = &cleared.acid {
            leaf.under(&format!("Acid {acid}."));
        }
        if !cleared.headspace.is_empty() {
            leaf.under(&format!("Headspace {}.", cleared.headspace));
        }
        leaf.under(&format!("For {}: {}", cleared.band, cleared.source));
    }
    if let Some(source) = &make.source {
        leaf.under(&format!("Formula: {source}"));
    }
}

/// One act. The printed lines behind it are left to the page and to `--json`: they say in more words what the act
/// says.
fn lay_out_act(leaf: &mut Leaf, act: &Act) {
    let times = time_span(act);
    if act.must_not_be_left {
        let until = if act.to.is_empty() { String::new() } else { format!(" until {}", act.to) };
        let stays = match (&act.who, act.attention) {
            // Who only watches may work at something else beside it.
            (Some(who), Attention::Eyes) => format!("Must not be left. {who} keeps an eye on it{until}."),
            (Some(who), _) => format!("Must not be left. {who} stays at it{until}."),
            (None, _) => format!("Must not be left{until}."),
        };
        let mut sentences = vec![word_act("", act), stays];
        sentences.extend(act.caution.clone());
        leaf.frame(&times, &sentences);
        return;
    }
    let mut figure = times;
    if let Some(caution) = &act.caution {
        // The caution stands before the act.
        leaf.line(&figure, &format!("Mind: {caution}"));
        figure = String::new();
    }
    match (&act.who, act.attention) {
        (_, Attention::Alone) => leaf.by_itself(&figure, &word_act("By itself", act)),
        (Some(who), Attention::Eyes) => {
            leaf.line(&figure, &word_act(&format!("{who} has an eye on it"), act))
        }
        (Some(who), Attention::Hands) => leaf.line(&figure, &word_act(who, act)),
        (None, _) => leaf.line(&figure, &word_act("", act)),
    }
}

/// Who, for which make, and the act: `Nora, peach jam: Crush the peaches.`
fn word_act(who: &str, act: &Act) -> String {
    let parts = [who, act.make.as_str()];
    let before = parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ");
    if before.is_empty() { act.what.clone() } else { format!("{}: {}", capitalize(&before), act.what) }
}

fn time_span(act: &Act) -> String {
    if act.to.is_empty() { act.from.clone() } else { format!("{}-{}", act.from, act.to) }
}

fn lay_out_list(leaf: &mut Leaf, list: &PersonList) {
    leaf.section(&format!("{}’s day", list.name));
    leaf.gap();
    for act in &list.acts {
        let stay =
            if act.must_not_be_left { format!(" Must not be left until {}.", act.to) } else { String::new() };
        leaf.line(&act.from, &format!("{}{stay}", word_act("", act)));
    }
}

fn lay_out_batches(leaf: &mut Leaf, makes: &[MadeToday]) {
    if makes.iter().all(|make| make.batches.is_empty()) {
        return;
    }
    leaf.section("Amounts");
    for make in makes {
        for batch in &make.batches {
            leaf.gap();
            lay_out_batch(leaf, &make.name, batch);
        }
    }
}

fn lay_out_batch(leaf: &mut Leaf, name: &str, batch: &BatchAmounts) {
    leaf.line("", &format!("{name}. {}", batch.heading));
    lay_out_amounts(leaf, &batch.amounts);
}

fn lay_out_reasons(leaf: &mut Leaf, title: &str, reasons: &[Reason]) {
    let sentences: Vec<String> =
        reasons.iter().map(|reason| format!("{}. {}", reason.what, reason.why)).collect();
    lay_out_sentences(leaf, title, &sentences);
}

fn lay_out_later(leaf: &mut Leaf, sheet: &DaySheet) {
    if sheet.later.is_empty() {
        return;
    }
    leaf.section("Afterwards");
    leaf.gap();
    for later in &sheet.later {
        let dot = if sheet.later.len() > 1 { "·" } else { "" };
        let figure = if later.when.is_empty() { dot } else { &later.when };
        let of = if later.make.is_empty() { String::new() } else { format!("{}: ", capitalize(&later.make)) };
        leaf.line(figure, &format!("{of}{}", later.what));
    }
}

fn lay_out_refused(leaf: &mut Leaf, refused: &[Refused]) {
    if refused.is_empty() {
        return;
    }
    leaf.section("Refused");
    for refusal in refused {
        leaf.gap();
        leaf.line(&refusal.verdict, &format!("{}.", refusal.wish));
        leaf.each(&refusal.because);
        for instead in &refusal.instead {
            leaf.line("Instead", instead);
        }
        if let Some(source) = &refusal.source {
            leaf.under(source);
        }
    }
}

fn lay_out_sentences(leaf: &mut Leaf, title: &str, sentences: &[String]) {
    if sentences.is_empty() {
        return;
    }
    leaf.section(title);
    leaf.gap();
    leaf.each(sentences);
}

#[cfg(test)]
mod tests {
    use paper::day::{Amount, Cleared, Finish, Firmness, Later, Publication};

    use super::*;
    use crate::leaf::without_marks;

    fn words(lines: &[&str]) -> Vec<String> {
        lines.iter().map(|line| (*line).to_owned()).collect()
    }

    fn act(from: &str, to: &str, who: Option<&str>, attention: Attention, what: &str, make: &str) -> Act {
        Act {
            from: from.into(),
            to: to.into(),
            who: who.map(str::to_owned),
            attention,
            what: what.into(),
            make: make.into(),
            ..Act::default()
        }
    }

    fn tomatoes() -> MadeToday {
        MadeToday {
            count: Some("7".into()),
            range: Some("6 to 8".into()),
            name: "Crushed tomatoes".into(),
            from: "21 lb of tomatoes".into(),
            yields: "6 to 8 quarts, likely 7".into(),
            keeps: "on the shelf, processed as below".into(),
            clearance: Some(Cleared {
                verdict: "Tested".into(),
                process: "Boiling water, 50 minutes at a full rolling boil.".into(),
                headspace: "1/2 in".into(),
                band: "1,001 to 3,000 ft".into(),
                acid: Some(
                    "into each quart first: 2 tbsp bottled lemon juice, or 1/2 tsp citric acid".into(),
                ),
                source: "Guide 3 p. 3-8 [1]".into(),
            }),
            source: Some("Guide 3 p. 3-8 [1]".into()),
            batches: vec![BatchAmounts {
                heading: "The whole printed formula.".into(),
                amounts: vec![Amount {
                    what: "Tomatoes".into(),
                    prep: "peeled, cored, quartered".into(),
                    measure: "21 lb".into(),
                    weight: Some("9.53 kg".into()),
                    moved: None,
                }],
            }],
        }
    }

    fn day() -> DaySheet {
        let clock = vec![
            act(
                "8:30",
                "9:10",
                Some("Tove"),
                Attention::Hands,
                "Peel and core the tomatoes.",
                "crushed tomatoes",
            ),
            act("9:10", "10:40", None, Attention::Alone, "Let the dough rise.", "bread"),
            Act {
                caution: Some("Hot glass.".into()),
                ..act("9:15", "9:40", Some("Tove"), Attention::Hands, "Fill 7 quarts.", "crushed tomatoes")
            },
            Act {
                must_not_be_left: true,
                caution: Some("If the boil stops, bring it back and give the whole time again.".into()),
                ..act(
                    "10:05",
                    "10:55",
                    Some("Ansel"),
                    Attention::Eyes,
                    "Process 7 quarts.",
                    "crushed tomatoes",
                )
            },
            act("10:55", "", Some("Ansel"), Attention::Hands, "Heat off.", "crushed tomatoes"),
        ];
        let acts = clock.iter().filter(|act| act.who.as_deref() == Some("Ansel")).cloned().collect();
        DaySheet {
            title: "Saturday 29 August 2026".into(),
            place: "1,340 ft above the sea.".into(),
            people: "Tove and Ansel, 8:30 to 17:00.".into(),
            finish: Finish {
                time: Some("16:20".into()),
                words: words(&["40 min before the day ends.", "Proved."]),
            },
            fetch: vec![Fetch {
                what: "vinegar of 5 %".into(),
                short: "2 cups".into(),
                shop: "1 bottle of 32 fl oz".into(),
                for_what: "relish".into(),
            }],
            evening_before: words(&["Set the ice in trays."]),
            makes: vec![tomatoes()],
            errands: words(&["bread"]),
            lists: vec![PersonList { name: "Ansel".into(), acts }],
            clock,
            not_made: vec![Reason { what: "Peach halves".into(), why: "Seven quart lids are short.".into() }],
            left_over: vec![Reason { what: "2 lb of tomatoes".into(), why: "Into the soup.".into() }],
            later: vec![Later {
                when: String::new(),
                what: "Check the seals, tomorrow.".into(),
                make: "crushed tomatoes".into(),
            }],
            refused: vec![Refused {
                wish: "pumpkin puree in pints".into(),
                verdict: "Do not".into(),
                firmness: Firmness::DoNot,
                because: words(&["Heat does not reach the middle."]),
                instead: words(&["Freeze it."]),
                source: None,
            }],
            cautions: words(&["Hot syrup.", "Hot glass."]),
            filled_in: words(&["Peaches wait two to four days."]),
            sources: vec![Publication { mark: "[1]".into(), title: "A guide to home canning, 2015".into() }],
            clash: Vec::new(),
        }
    }

    #[test]
    fn a_day_is_laid_out_in_the_order_it_is_read() {
        insta::assert_snapshot!(without_marks(&lay_out_day(&day())));
    }

    #[test]
    fn a_day_that_cannot_be_names_what_clashes_and_nothing_empty() {
        let sheet = DaySheet {
            title: "Saturday".into(),
            clash: words(&["Relish must be done.", "There are 0 pint lids."]),
            ..DaySheet::default()
        };
        let text = without_marks(&lay_out_day(&sheet));
        assert!(text.contains("This day cannot be"), "{text}");
        assert!(text.contains("There are 0 pint lids."), "{text}");
        assert_eq!(text.matches("═╤═").count() + text.matches("─┼─").count(), 1, "one section: {text}");
    }
}
