//! Why the day is what it is: what each make left out would cost, and what one thing more would bring.

use std::collections::BTreeMap;

use dayplan::{Budget, Forced, Relief, find_help, force_in};
use serde::Serialize;

use crate::plan::pools::{EYES_EACH, Pool};
use crate::plan::{ABSENCES, stock_words};
use crate::saved::SavedDay;
use crate::tell::words::{and_list, length};

/// Work on each question, in the planner's counted steps.
const EACH_WORK: u64 = 1_500_000;
/// Makes left out that are asked about, those of most worth first.
const MOST_LEFT_OUT: usize = 8;
/// A dozen of jars, lids or bags.
const DOZEN: u32 = 12;
/// Half an hour.
const HALF_HOUR: u32 = 30;

/// Why a day is what it is.
#[derive(Debug, Clone, Serialize)]
pub struct DayExplained {
    /// `day-explained/1`.
    pub format: &'static str,
    /// The date in words.
    pub date_in_words: String,
    /// What is left out, and what forcing it in would come to; those of most worth first.
    pub left_out: Vec<LeftOut>,
    /// What would help, that which brings most first; what brings nothing is not named.
    pub helps: Vec<Help>,
    /// What was tried and brings nothing, in words.
    pub no_help: Vec<String>,
}

/// A make that is left out.
#[derive(Debug, Clone, Serialize)]
pub struct LeftOut {
    /// What.
    pub name: String,
    /// Servings that the day would be worth less with it; `None` where it cannot be done or was not settled.
    pub costs: Option<f64>,
    /// The answer in a sentence.
    pub words: String,
}

/// One thing more, and what it would bring.
#[derive(Debug, Clone, Serialize)]
pub struct Help {
    /// What: "one more burner".
    pub what: String,
    /// Servings more.
    pub gain: f64,
    /// The answer in a sentence.
    pub words: String,
}

/// Explains a kept day.
#[must_use]
pub fn explain_day(saved: &SavedDay) -> DayExplained {
    let (helps, no_help) = weigh_reliefs(saved);
    DayExplained {
        format: "day-explained/1",
        date_in_words: saved.date_in_words.clone(),
        left_out: left_out(saved),
        helps,
        no_help,
    }
}

fn left_out(saved: &SavedDay) -> Vec<LeftOut> {
    let is_chosen = |id: &str| saved.plan.chosen.iter().any(|chosen| chosen.project == id);
    let mut projects: Vec<(u32, &str)> = saved
        .problem
        .projects
        .iter()
        .filter(|project| !is_chosen(&project.id) && !project.options.is_empty())
        .map(|project| (project.options.iter().map(|o| o.value).max().unwrap_or(0), project.id.as_str()))
        .collect();
    projects.sort_by_key(|(worth, id)| (std::cmp::Reverse(*worth), *id));
    projects
        .into_iter()
        .take(MOST_LEFT_OUT)
        .map(|(_, id)| {
            let forced = force_in(&saved.problem, &saved.plan, id, Budget::work(EACH_WORK));
            word_forced(saved, id, &forced)
        })
        .collect()
}

fn word_forced(saved: &SavedDay, project: &str, forced: &Forced) -> LeftOut {
    let name = saved.name_of(project);
    let named = |ids: &[String]| and_list(&ids.iter().map(|id| saved.name_of(id)).collect::<Vec<_>>());
    let (costs, words) = match forced {
        Forced::Cost { worth, instead_of, changed, settled } => {
            let mut words = if *worth == 0 {
                "it could be made for the same worth".to_owned()
            } else {
                let most = if *settled { "" } else { "at most " };
                format!("making it costs {most}{} servings in all", servings(*worth))
            };
            if !instead_of.is_empty() {
                words += &format!("; {} would be left out for it", named(instead_of));
            }
            if !changed.is_empty() {
                words += &format!("; {} would be made in another size or way", named(changed));
            }
            (Some(f64::from(*worth) / TENTHS), words)
        }
        Forced::Clash(because) => {
            let facts: Vec<String> =
                because.iter().filter_map(|fact| word_fact(saved, project, fact)).collect();
            let words = match facts.as_slice() {
                [] => "it cannot be made today at all".to_owned(),
                facts => format!("it cannot be made today: {}", facts.join("; ")),
            };
            (None, words)
        }
        Forced::Unsettled => (None, "whether it fits was not settled in the work allowed".to_owned()),
    };
    LeftOut { name, costs, words }
}

/// One of the facts that a make clashes with, in words.
fn word_fact(saved: &SavedDay, asked: &str, fact: &str) -> Option<String> {
    let (kind, id) = fact.split_once(':')?;
    match kind {
        "must" if id == asked => None,
        "must" if id == ABSENCES => Some("the hours at which people are away or rest".to_owned()),
        "must" => Some(format!("{} must be done", saved.name_of(id))),
        "stock" => {
            let there = saved.problem.stock.get(id)?;
            Some(match id.strip_prefix("basket-") {
                Some(_) => "there is too little of the produce".to_owned(),
                None => format!("there are {there} {}", stock_words(id)),
            })
        }
        "resource" => {
            let resource = saved.problem.resources.iter().find(|resource| resource.id == id)?;
            Some(format!("{} {} in the hours given", resource.capacity, counted(id, resource.capacity)))
        }
        _ => None,
    }
}

/// Worth is stated to the planner in tenths of a serving.
const TENTHS: f64 = 10.0;

fn servings(worth: u32) -> String {
    format!("{}.{}", worth / 10, worth % 10)
}

/// One thing more of everything there is: what it is called, and what it changes.
fn reliefs(saved: &SavedDay) -> Vec<(String, Relief)> {
    let mut reliefs = Vec::new();
    let pools: BTreeMap<String, u32> = Pool::ALL
        .iter()
        .map(|pool| {
            let units = if matches!(pool, Pool::Eyes | Pool::CarefulEyes) { EYES_EACH } else { 1 };
            (pool.id().to_owned(), units)
        })
        .collect();
    reliefs.push(("one more person".to_owned(), Relief { units: pools, ..Relief::default() }));
    let longer = Relief { minutes: HALF_HOUR, ..Relief::default() };
    reliefs.push((format!("{} more at the end of the day", length(HALF_HOUR)), longer));
    for resource in &saved.problem.resources {
        let is_pool = Pool::ALL.iter().any(|pool| pool.id() == resource.id);
        // A strong burner is one of the burners.
        if is_pool || resource.id == "burner" {
            continue;
        }
        let mut units = BTreeMap::from([(resource.id.clone(), 1)]);
        if resource.id == "strong-burner" {
            units.insert("burner".to_owned(), 1);
        }
        let what = format!("one more {}", counted(&resource.id, 1));
        reliefs.push((what, Relief { units, ..Relief::default() }));
    }
    for line in saved.problem.stock.keys() {
        if ["jar-", "lid-", "freezer-bag"].iter().any(|start| line.starts_with(start)) {
            let mut stock = BTreeMap::from([(line.clone(), DOZEN)]);
            // Jars come with their lids.
            if let Some(mouth) = line.strip_prefix("jar-").and_then(|jar| jar.rsplit_once('-')) {
                stock.insert(format!("lid-{}", mouth.1), DOZEN);
            }
            let with_lids = if stock.len() > 1 { " with lids" } else { "" };
            let what = format!("a dozen {}{with_lids}", stock_words(line));
            reliefs.push((what, Relief { stock, ..Relief::default() }));
        }
    }
    reliefs
}

fn weigh_reliefs(saved: &SavedDay) -> (Vec<Help>, Vec<String>) {
    let (names, reliefs): (Vec<String>, Vec<Relief>) = reliefs(saved).into_iter().unzip();
    let helped = find_help(&saved.problem, &saved.plan, &reliefs, Budget::work(EACH_WORK));
    let (gains, none): (Vec<_>, Vec<_>) = helped.into_iter().partition(|helped| helped.gain > 0);
    let helps = gains.into_iter().map(|helped| {
        let least = if helped.settled { "" } else { "at least " };
        let mut words = format!("{least}{} servings more", servings(helped.gain));
        if !helped.adds.is_empty() {
            let names: Vec<String> = helped.adds.iter().map(|id| saved.name_of(id)).collect();
            words += &format!("; then {} could be made", and_list(&names));
        }
        Help { what: names[helped.relief].clone(), gain: f64::from(helped.gain) / TENTHS, words }
    });
    (helps.collect(), none.into_iter().map(|helped| names[helped.relief].clone()).collect())
}

/// A resource as one counts it.
fn counted(id: &str, count: u32) -> String {
    let (one, many) = match id {
        "hands" => ("pair of hands", "pairs of hands"),
        "careful-hands" => ("pair of hands for careful work", "pairs of hands for careful work"),
        "eyes" => ("thing that can be watched", "things that can be watched"),
        "careful-eyes" => ("careful thing that can be watched", "careful things that can be watched"),
        "kettle" => ("big pot", "big pots"),
        "strong-burner" => ("burner strong enough for a canner", "burners strong enough for a canner"),
        other => {
            let name = other
                .strip_prefix("canner-")
                .map_or_else(|| other.replace('-', " "), |canner| format!("canner like the {canner}"));
            return if count == 1 { name } else { format!("{name}s") };
        }
    };
    if count == 1 { one.to_owned() } else { many.to_owned() }
}
