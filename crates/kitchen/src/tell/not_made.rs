//! What is not made, and the limit that stands in its way, in words.

use std::collections::BTreeMap;

use super::{Planned, words};
use crate::answer::NotMade;
use crate::day::{ClockTime, Span};
use crate::plan::candidates::{Candidate, Considered};
use crate::plan::pools::{Pool, can_serve};
use crate::plan::{basket_of_stock, errand_id, project_id, stock_words};
use almanac::Attention;

/// What was shown to the planner and not chosen, and what was wished and could not be tried, each with its binding
/// limit; those of most worth first. Nothing where there is no plan: then the clash says it all.
pub(super) fn not_made(planned: &Planned<'_>) -> Vec<NotMade> {
    if planned.plan.chosen.is_empty() && !planned.plan.because.is_empty() {
        return vec![];
    }
    let left = stock_left(planned);
    let mut lines: Vec<NotMade> = planned
        .shown
        .iter()
        .filter(|considered| !planned.is_chosen(&project_id(considered)))
        .map(|considered| NotMade {
            name: words::name_of(considered.formula),
            why: binding_limit(planned, considered, &left),
            worth: most_worth(considered),
        })
        .collect();
    lines.extend(planned.shown.iter().filter_map(|considered| {
        let missed = considered.missed.as_ref()?;
        let wished =
            planned.is_chosen(&project_id(considered)) || planned.is_wished(considered.formula.id.as_str());
        wished.then(|| NotMade {
            name: if missed.way.is_empty() {
                format!("more of {}", words::name_of(considered.formula))
            } else {
                format!("{}, {}", words::name_of(considered.formula), missed.way)
            },
            why: missed.why.clone(),
            worth: most_worth(considered),
        })
    }));
    lines.extend(
        planned.aside.iter().filter(|aside| planned.is_wished(&aside.formula)).map(|aside| NotMade {
            name: aside.name.clone(),
            why: aside.why.clone(),
            worth: 0.0,
        }),
    );
    lines.extend(
        planned.aside.iter().filter(|aside| planned.is_not_today(&aside.formula)).map(|aside| NotMade {
            name: aside.name.clone(),
            why: aside.why.clone(),
            worth: 0.0,
        }),
    );
    lines.extend(baskets_without_a_make(planned));
    lines.sort_by(|a, b| b.worth.total_cmp(&a.worth).then_with(|| a.name.cmp(&b.name)));
    lines
}

/// Baskets that no make could be planned from, each with the first reason why.
fn baskets_without_a_make(planned: &Planned<'_>) -> Vec<NotMade> {
    let could_be_used = |basket: usize| {
        let mut all = planned.shown.iter().chain(&planned.unshown).flat_map(|considered| &considered.options);
        all.any(|option| option.uses.iter().any(|(at, _)| *at == basket))
    };
    let reason = |basket: usize| {
        let mut asides = planned.aside.iter().filter(|aside| aside.baskets.contains(&basket));
        asides.next().map_or_else(
            || "no formula on file is made of it".to_owned(),
            |aside| format!("{}: {}", aside.name, aside.why),
        )
    };
    (0..planned.day.baskets.len())
        .filter(|&basket| !could_be_used(basket))
        .map(|basket| NotMade {
            name: planned.day.baskets[basket].entered.clone(),
            why: reason(basket),
            worth: 0.0,
        })
        .collect()
}

/// The worth of the best way to make it.
fn most_worth(considered: &Considered<'_>) -> f64 {
    considered.options.iter().map(|option| option.worth.servings).fold(0.0, f64::max)
}

/// The stock that the plan leaves.
fn stock_left(planned: &Planned<'_>) -> BTreeMap<String, u32> {
    let mut left = planned.problem.stock.clone();
    for candidate in planned.chosen() {
        for (line, amount) in &candidate.consumes {
            if let Some(rest) = left.get_mut(line) {
                *rest = rest.saturating_sub(*amount);
            }
        }
    }
    left
}

/// The limit that rules out the smallest way to make it.
fn binding_limit(planned: &Planned<'_>, considered: &Considered<'_>, left: &BTreeMap<String, u32>) -> String {
    let Some(smallest) = considered.options.iter().min_by_key(|option| option.hand_minutes()) else {
        return "one of its steps finds nobody who may do it and is free".to_owned();
    };
    let short = |option: &Candidate| -> Vec<(String, u32, u32)> {
        option
            .consumes
            .iter()
            .filter_map(|(line, &needs)| {
                let rest = *left.get(line)?;
                (needs > rest).then(|| (line.clone(), needs, rest))
            })
            .collect()
    };
    let least_short = considered.options.iter().min_by_key(|option| short(option).len()).unwrap_or(smallest);
    let lacking = short(least_short);
    if lacking.is_empty() { full_day(planned, smallest) } else { lacking_words(planned, &lacking) }
}

fn full_day(planned: &Planned<'_>, smallest: &Candidate) -> String {
    let (takes, free) = (smallest.hand_minutes(), free_hand_minutes(planned));
    if takes > free {
        format!(
            "the day is full: it takes {} of hands, and {} are free, in pieces",
            words::length(takes),
            words::length(free)
        )
    } else {
        format!(
            "it takes {} of hands, and the pots, canners and pairs of hands are not free together for it",
            words::length(takes)
        )
    }
}

/// Hand minutes that the plan leaves free, over all people.
fn free_hand_minutes(planned: &Planned<'_>) -> u32 {
    let at = |minute: u32| {
        let span = Span { from: ClockTime(minute), to: ClockTime(minute + 1) };
        planned.day.people.iter().filter(|person| can_serve(person, Pool::Hands, span)).count()
    };
    let there: usize = (planned.span.from.0..planned.span.to.0).map(at).sum();
    let errands = planned.day.errands.iter().filter(|errand| planned.is_chosen(&errand_id(errand)));
    let errand_minutes: u32 = errands
        .flat_map(|errand| &errand.steps)
        .filter(|step| step.away || step.attention == Attention::Hands)
        .map(|step| step.minutes.0)
        .sum();
    let used = planned.chosen().map(Candidate::hand_minutes).sum::<u32>() + errand_minutes;
    u32::try_from(there).unwrap_or(u32::MAX).saturating_sub(used)
}

/// The one lack that says most: the produce if it is gone, else the first of jars, lids, bags and trays.
fn lacking_words(planned: &Planned<'_>, lacking: &[(String, u32, u32)]) -> String {
    let gone = lacking.iter().find_map(|(line, _, _)| Some((line, basket_of_stock(line)?)));
    if let Some((line, basket)) = gone {
        let users = planned.users_of(line);
        let produce = &planned.day.baskets[basket].entered;
        return if users.is_empty() {
            format!("there is too little of the {produce}")
        } else {
            format!("what there is of {produce} goes into {}", words::and_list(&users))
        };
    }
    lacking.first().map_or_else(String::new, |(line, needs, rest)| {
        format!("it needs {needs} {}, and the plan leaves {rest}", stock_words(line))
    })
}
