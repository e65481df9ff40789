//! Says what a plan means: makes, clock, what is missing, what is left, what is refused and why.
//!
//! Everything here reads the plan and the candidates; nothing decides.

mod clock;
mod fetch;
mod makes;
mod not_made;
mod refusals;
mod remains;
mod why;
pub(crate) mod words;

use std::collections::BTreeMap;

use almanac::Almanac;
use dayplan::{Plan, Problem, Proved};
use jiff::civil::Date;

use crate::answer::DayAnswer;
use crate::day::{Day, Span};
use crate::plan::candidates::{Candidate, Considered, SetAside};
use crate::plan::roster::Roster;
use crate::plan::{ABSENCES, errand_id, project_id, real_finish};
use crate::ranges::{RANGES_FORMAT, RangeLine};

/// A planned day with everything it was planned from.
pub(crate) struct Planned<'a> {
    pub(crate) almanac: &'a Almanac,
    pub(crate) day: &'a Day,
    pub(crate) span: Span,
    /// The formulas the planner was shown.
    pub(crate) shown: Vec<Considered<'a>>,
    /// Formulas that could be made and were not shown.
    pub(crate) unshown: Vec<Considered<'a>>,
    /// Formulas that cannot be made today.
    pub(crate) aside: Vec<SetAside>,
    pub(crate) problem: Problem,
    pub(crate) plan: Plan,
    /// Who does what.
    pub(crate) roster: Roster,
}

impl Planned<'_> {
    /// The candidate behind a chosen option.
    pub(crate) fn candidate(&self, project: &str, option: &str) -> Option<&Candidate> {
        self.considered(project)?.options.iter().find(|candidate| candidate.id == option)
    }

    /// The formula behind a project.
    pub(crate) fn considered(&self, project: &str) -> Option<&Considered<'_>> {
        self.shown.iter().find(|considered| project_id(considered) == project)
    }

    /// Whether a project is in the plan.
    pub(crate) fn is_chosen(&self, project: &str) -> bool {
        self.plan.chosen.iter().any(|chosen| chosen.project == project)
    }

    /// The candidates that are made, in the order of the plan.
    pub(crate) fn chosen(&self) -> impl Iterator<Item = &Candidate> {
        self.plan.chosen.iter().filter_map(|chosen| self.candidate(&chosen.project, &chosen.option))
    }

    /// The makes with their project ids, in the order of the plan.
    pub(crate) fn chosen_makes(&self) -> impl Iterator<Item = (&Considered<'_>, &Candidate)> {
        self.plan.chosen.iter().filter_map(|chosen| {
            Some((self.considered(&chosen.project)?, self.candidate(&chosen.project, &chosen.option)?))
        })
    }

    /// A project's name as one would say it.
    pub(crate) fn name_of(&self, project: &str) -> String {
        if let Some(considered) = self.considered(project) {
            return words::name_of(considered.formula);
        }
        let errand = self.day.errands.iter().find(|errand| errand_id(errand) == project);
        errand.map_or_else(|| project.to_owned(), |errand| errand.name.clone())
    }

    /// The makes that take of a stock line.
    pub(crate) fn users_of(&self, line: &str) -> Vec<String> {
        self.chosen_makes()
            .filter(|(_, candidate)| candidate.consumes.contains_key(line))
            .map(|(considered, _)| words::name_of(considered.formula))
            .collect()
    }

    /// Whether a formula is not to be made today.
    pub(crate) fn is_not_today(&self, formula: &str) -> bool {
        use crate::day::{Wish, WishFor};
        let named = |what: &WishFor| matches!(what, WishFor::Formula(id) if id.as_str() == formula);
        self.day.wishes.iter().any(|wish| matches!(wish, Wish::NotToday(what) if named(what)))
    }

    /// Whether a wish asks for a formula by name.
    pub(crate) fn is_wished(&self, formula: &str) -> bool {
        use crate::day::{Wish, WishFor};
        self.day.wishes.iter().any(|wish| {
            let (Wish::Must(what) | Wish::Target { what, .. } | Wish::Like { what, .. }) = wish else {
                return false;
            };
            matches!(what, WishFor::Formula(id) if id.as_str() == formula)
        })
    }
}

/// Puts the whole answer together.
pub(crate) fn tell(planned: Planned<'_>) -> DayAnswer {
    let finish = real_finish(&planned.problem, &planned.plan).map(|minute| planned.span.from.0 + minute);
    let clock = clock::clock_lines(&planned);
    DayAnswer {
        format: "day-answer/1",
        date: planned.day.date.to_string(),
        date_in_words: date_in_words(planned.day.date),
        altitude_ft: planned.day.altitude.map(measure::Altitude::as_feet),
        people: planned.day.people.iter().map(|person| person.name.clone()).collect(),
        starts: planned.span.from.0,
        ends: planned.span.to.0,
        finish,
        margin_min: finish.map(|finish| planned.span.to.0.saturating_sub(finish)),
        proof: proof_words(&planned.plan).to_owned(),
        clash: clash_words(&planned),
        makes: makes::makes(&planned),
        not_made: not_made::not_made(&planned),
        to_fetch: fetch::to_fetch(&planned),
        left_over: remains::left_over(&planned),
        evening_before: makes::evening_before(&planned),
        later: remains::later(&planned, &clock),
        refusals: refusals::refusals(&planned),
        cautions: refusals::cautions(&planned),
        filled_in: filled_in(&planned),
        why: why::whys(&planned, &clock),
        clearances: planned.chosen().filter_map(|candidate| candidate.clearance.clone()).collect(),
        clock,
        names: names_of(&planned),
        staff: crate::staff::write_staff(&planned.day.people, planned.span, &planned.roster),
        ranges: ranges_of(&planned),
        problem: planned.problem,
        plan: planned.plan,
    }
}

/// How long the planned steps may really take.
fn ranges_of(planned: &Planned<'_>) -> crate::ranges::RangesDocument {
    let lines = planned.chosen_makes().flat_map(|(considered, candidate)| {
        let project = project_id(considered);
        candidate.work.steps.iter().filter_map(move |step| {
            let spread = step.spread?;
            let (project, step) = (project.clone(), step.id.clone());
            Some(RangeLine { project, step, low: spread.low, typical: spread.typical, high: spread.high })
        })
    });
    crate::ranges::RangesDocument { format: RANGES_FORMAT.to_owned(), steps: lines.collect() }
}

/// What each project is called.
fn names_of(planned: &Planned<'_>) -> BTreeMap<String, String> {
    let projects = planned.problem.projects.iter().map(|project| &project.id);
    let named = projects.map(|id| {
        let name = if id == ABSENCES { "away or at rest".to_owned() } else { planned.name_of(id) };
        (id.clone(), name)
    });
    named.collect()
}

/// What the day file left to us, and what the planner takes for granted.
fn filled_in(planned: &Planned<'_>) -> Vec<String> {
    let mut lines = planned.day.filled_in.clone();
    let kept = (planned.span.to.0 - planned.span.from.0).saturating_sub(planned.problem.horizon);
    if kept > 0 {
        lines.push(format!("the last {kept} minutes of the day are kept free"));
    }
    lines.push(
        "hand work is timed by first guesses, at the pace of a slow day rather than a quick one".to_owned(),
    );
    lines
}

/// "Saturday 29 August 2026".
pub(crate) fn date_in_words(date: Date) -> String {
    const DAYS: [&str; 7] = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];
    const MONTHS: [&str; 12] = [
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
        "December",
    ];
    let at = |number: i8| usize::try_from(number).unwrap_or_default();
    let weekday = DAYS[at(date.weekday().to_monday_zero_offset()) % 7];
    let month = MONTHS[(at(date.month()) + 11) % 12];
    format!("{weekday} {} {month} {}", date.day(), date.year())
}

/// How far the plan is proved, in words.
fn proof_words(plan: &Plan) -> &'static str {
    match plan.proved {
        Proved::Optimal => "proved: under these figures nothing worth more fits, and it cannot end earlier",
        Proved::Value => {
            "proved: under these figures nothing worth more fits; it may be able to end a little earlier"
        }
        Proved::No => "a good plan; whether a better one exists was not settled in the work allowed",
        Proved::Infeasible => "there is no plan: what must be done does not fit",
        Proved::Unknown => "no plan was found in the work allowed",
    }
}

/// The facts that clash, where there is no plan.
fn clash_words(planned: &Planned<'_>) -> Vec<String> {
    planned
        .plan
        .because
        .iter()
        .filter_map(|fact| {
            let (kind, id) = fact.split_once(':')?;
            match kind {
                "must" if id == ABSENCES => Some("the hours at which people are away or rest".to_owned()),
                "must" => Some(format!("{} must be done", planned.name_of(id))),
                "stock" => {
                    let there = planned.problem.stock.get(id).copied().unwrap_or(0);
                    Some(match crate::plan::basket_of_stock(id) {
                        Some(basket) => {
                            format!("there are only so many {}", planned.day.baskets[basket].entered)
                        }
                        None => format!("there are {there} {}", crate::plan::stock_words(id)),
                    })
                }
                "resource" => {
                    let of = planned.problem.resources.iter().find(|resource| resource.id == id)?;
                    Some(resource_words(of))
                }
                _ => None,
            }
        })
        .collect()
}

/// A resource as a limit, in words.
fn resource_words(resource: &dayplan::Resource) -> String {
    let name = match resource.id.as_str() {
        "hands" => "pairs of hands",
        "careful-hands" => "pairs of hands for careful work",
        "eyes" => "things that can be watched",
        "careful-eyes" => "careful things that can be watched",
        "kettle" => "big pots",
        other => other,
    };
    let name = name.replace('-', " ");
    match resource.capacity {
        0 => format!("there are no {name}"),
        most => format!("at most {most} {name} at any one time, in the hours given"),
    }
}
