//! What holds of every answer, whatever the day.

use std::collections::BTreeMap;

use dayplan::{Choice, Step};
use kitchen::answer::{ClockLine, LineAttention, Make};
use kitchen::day::{ClockTime, Person, Span};

use crate::days::{CLUB, DEMO, METRIC, Planned};

/// Things one person may keep an eye on at once.
const EYES_EACH: usize = 2;

/// Minutes by which a break may begin later, so that someone finishes what they are at.
const BREAK_MAY_SLIP: u32 = 20;

/// The project that stands for absent people.
const ABSENCES: &str = "absences";

/// What stands for a name where the planner's pools have room and no single person has.
const UNNAMED: &str = "whoever is free";

/// Checks every law on one answer.
pub fn keep(planned: &Planned) {
    let unnamed = planned.answer.clock.iter().filter(|line| line.who.as_deref() == Some(UNNAMED)).count();
    assert_eq!(unnamed, 0, "acts are left to nobody");
    keeps_the_rules_of_the_format(planned);
    nobody_is_in_two_places(planned);
    everyone_works_in_their_hours(planned);
    careful_work_is_done_in_careful_hours(planned);
    nothing_is_used_that_is_not_there(planned);
    every_process_is_cleared_and_held_in_full(planned);
    worth_is_the_sum_of_its_parts(planned);
}

fn keeps_the_rules_of_the_format(Planned { answer, .. }: &Planned) {
    let breaches = dayplan::check(&answer.problem, &answer.plan);
    assert!(breaches.is_empty(), "{breaches:?}");
    let last = answer.clock.iter().map(|line| line.to).max();
    assert_eq!(answer.finish, last, "the finish is the end of the last act");
    assert!(answer.clock.iter().all(|line| answer.starts <= line.from && line.to <= answer.ends));
}

fn nobody_is_in_two_places(planned: &Planned) {
    for person in &planned.day.people {
        let lines = |attention: LineAttention| {
            let own = lines_of(planned, person).filter(move |line| line.attention == attention);
            own.collect::<Vec<_>>()
        };
        let hands = lines(LineAttention::Hands);
        for pair in hands.windows(2) {
            assert!(pair[0].to <= pair[1].from, "{} does both {:?} and {:?}", person.name, pair[0], pair[1]);
        }
        let eyes = lines(LineAttention::Eyes);
        for line in &eyes {
            let at_once = eyes.iter().filter(|other| other.from <= line.from && line.from < other.to).count();
            assert!(at_once <= EYES_EACH, "{} watches {at_once} things at {}", person.name, line.from);
        }
    }
}

fn lines_of<'a>(planned: &'a Planned, person: &'a Person) -> impl Iterator<Item = &'a ClockLine> {
    planned.answer.clock.iter().filter(|line| line.who.as_deref() == Some(&person.name))
}

fn everyone_works_in_their_hours(planned: &Planned) {
    for line in &planned.answer.clock {
        match (&line.who, line.attention) {
            (None, LineAttention::Alone) => {}
            // Counted before.
            (Some(who), _) if who == UNNAMED => {}
            (Some(who), LineAttention::Hands | LineAttention::Eyes) => {
                let person = planned.day.people.iter().find(|person| person.name == *who);
                let person = person.unwrap_or_else(|| panic!("nobody is called {who}: {line:?}"));
                let within = |span: &Span| span.from.0 <= line.from && line.to <= span.to.0;
                assert!(person.hours.iter().any(within), "{who} is not there: {line:?}");
                let disturbs = |rest: &Span| {
                    let late = line.to.saturating_sub(rest.from.0);
                    let finishes_first =
                        line.from < rest.from.0 && late <= BREAK_MAY_SLIP && line.to < rest.to.0;
                    rest.from.0 < line.to && line.from < rest.to.0 && !finishes_first
                };
                let works = line.attention == LineAttention::Hands;
                assert!(!(works && person.breaks.iter().any(disturbs)), "{who} has a break: {line:?}");
            }
            _ => panic!("an act without the right person: {line:?}"),
        }
    }
}

fn careful_work_is_done_in_careful_hours(planned: &Planned) {
    let mut checked = 0;
    for (project, step, from) in steps(planned) {
        let careful = step.needs.keys().any(|pool| pool.starts_with("careful-"));
        if !careful || project == ABSENCES {
            continue;
        }
        let from = planned.answer.starts + from;
        let line = planned.answer.clock.iter().find(|line| {
            line.project == project
                && (line.from, line.to) == (from, from + step.minutes)
                && line.who.is_some()
        });
        let line = line.unwrap_or_else(|| panic!("{project}: {} is not on the clock", step.id));
        if line.who.as_deref() == Some(UNNAMED) {
            continue;
        }
        let person = planned.day.people.iter().find(|person| Some(&person.name) == line.who.as_ref());
        let person = person.expect("everyone on the clock is in the day file");
        let in_time = person.careful_until.is_none_or(|until| ClockTime(line.to) <= until);
        assert!(person.may_do_careful && in_time, "{} may not: {line:?}", person.name);
        checked += 1;
    }
    let canned = planned.answer.makes.iter().any(|make| make.process.is_some());
    assert!(checked > 0 || !canned, "hot jars are careful work");
}

/// Every chosen step with its project and start.
fn steps(planned: &Planned) -> impl Iterator<Item = (&str, &Step, u32)> {
    choices(planned).flat_map(|(project, choice, starts)| {
        choice.steps.iter().map(move |step| (project, step, starts[&step.id]))
    })
}

/// Every chosen option with its project and starts.
fn choices(planned: &Planned) -> impl Iterator<Item = (&str, &Choice, &BTreeMap<String, u32>)> {
    planned.answer.plan.chosen.iter().map(|chosen| {
        let project = planned.answer.problem.projects.iter().find(|project| project.id == chosen.project);
        let options = &project.expect("the plan chooses among the projects").options;
        let choice = options.iter().find(|choice| choice.id == chosen.option);
        (chosen.project.as_str(), choice.expect("the plan chooses an option"), &chosen.starts)
    })
}

fn nothing_is_used_that_is_not_there(planned: &Planned) {
    let mut used: BTreeMap<&str, u64> = BTreeMap::new();
    for (_, choice, _) in choices(planned) {
        for (line, amount) in &choice.consumes {
            *used.entry(line).or_default() += u64::from(*amount);
        }
    }
    let of = |line: &str| used.get(line).copied().unwrap_or(0);
    for (at, basket) in planned.day.baskets.iter().enumerate() {
        let grams = of(&format!("basket-{}-grams", at + 1));
        assert!(grams as f64 <= basket.net.as_grams(), "{grams} g of {}", basket.entered);
    }
    for jars in &planned.day.jars {
        let line = format!("jar-{}-{}", jars.size.as_str(), jars.mouth.as_str());
        assert!(of(&line) <= u64::from(jars.count), "{} {line}", of(&line));
    }
    for lids in &planned.day.lids {
        let line = format!("lid-{}", lids.mouth.as_str());
        assert!(of(&line) <= u64::from(lids.count), "{} {line}", of(&line));
    }
    let filled: u32 = canned(planned).filter_map(|make| make.containers).map(|[_, _, most]| most).sum();
    let jars: u32 = planned.day.jars.iter().map(|jars| jars.count).sum();
    let lids: u32 = planned.day.lids.iter().map(|lids| lids.count).sum();
    assert!(filled <= jars && filled <= lids, "{filled} of {jars} jars and {lids} lids");
}

fn canned(planned: &Planned) -> impl Iterator<Item = &Make> {
    planned.answer.makes.iter().filter(|make| make.process.is_some())
}

fn every_process_is_cleared_and_held_in_full(planned: &Planned) {
    for make in canned(planned) {
        let process = make.process.as_ref().expect("it is canned");
        assert_eq!(make.verdict.as_deref(), Some("tested"), "{}", make.name);
        let loads =
            planned.answer.clock.iter().filter(|line| {
                line.project == make.project && line.act.to_lowercase().starts_with("process ")
            });
        let minutes: Vec<u32> = loads.map(|line| line.to - line.from).collect();
        assert_eq!(minutes, vec![process.minutes; make.batches.len()], "{}", make.name);
        if let (Some(hold), Some(printed)) = (process.hold_psi, process.printed_psi) {
            assert!(hold >= printed, "{}: never below the printed pressure", make.name);
        }
    }
    assert_eq!(planned.answer.clearances.len(), canned(planned).count());
}

fn worth_is_the_sum_of_its_parts(planned: &Planned) {
    for make in &planned.answer.makes {
        let sum: f64 = make.worth_parts.iter().map(|part| part.servings).sum();
        assert!((sum - make.worth).abs() < 1e-6, "{}: {sum} is not {}", make.name, make.worth);
    }
}

#[test]
fn the_demo_day_keeps_every_law() {
    keep(&DEMO);
}

#[test]
fn the_metric_day_keeps_every_law() {
    keep(&METRIC);
}

#[test]
fn the_club_day_keeps_every_law() {
    keep(&CLUB);
}
