//! What is not made, and the limit that stands in its way, in words.

use std::collections::BTreeMap;

use super::{Planned, words};
use crate::answer::NotMade;
use crate::plan::candidates::{Candidate, Considered};
use crate::plan::{basket_of_stock, project_id};

/// What was shown to the planner and not chosen, each with its binding limit; then what could not be tried.
pub(super) fn not_made(planned: &Planned<'_>) -> Vec<NotMade> {
    let left = stock_left(planned);
    let mut lines: Vec<NotMade> = planned
        .shown
        .iter()
        .filter(|considered| !planned.is_chosen(&project_id(considered)))
        .map(|considered| NotMade {
            name: words::name_of(considered.formula),
            why: binding_limit(planned, considered, &left),
        })
        .collect();
    lines.extend(
        planned
            .aside
            .iter()
            .filter(|aside| planned.is_wished(&aside.formula))
            .map(|aside| NotMade { name: aside.name.clone(), why: aside.why.clone() }),
    );
    lines
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
        return "nothing here fits it".to_owned();
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
    format!(
        "the day is full: it takes {} of hands, and the plan leaves no stretch for it that is worth more",
        words::length(smallest.hand_minutes())
    )
    .replace(
        "the plan leaves no",
        if planned.plan.chosen.is_empty() { "there is no" } else { "the plan leaves no" },
    )
}

fn lacking_words(planned: &Planned<'_>, lacking: &[(String, u32, u32)]) -> String {
    let said: Vec<String> = lacking
        .iter()
        .map(|(line, needs, rest)| match basket_of_stock(line) {
            Some(basket) => {
                let users = planned.users_of(line);
                let produce = &planned.day.baskets[basket].entered;
                if users.is_empty() {
                    format!("there is too little of the {produce}")
                } else {
                    format!("the {produce} go into {}", words::and_list(&users))
                }
            }
            None => format!("it needs {needs} {} and {rest} are left", stock_words(line)),
        })
        .collect();
    words::and_list(&said)
}

/// A stock line as a cook would say it.
pub(super) fn stock_words(line: &str) -> String {
    match line {
        "freezer-bag" => "freezer bags".to_owned(),
        "freezer-ml" => "ml of freezer room".to_owned(),
        "dryer-tray" => "dryer trays".to_owned(),
        "crock" => "crocks".to_owned(),
        _ => {
            if let Some(mouth) = line.strip_prefix("lid-") {
                return format!("{mouth}-mouth lids");
            }
            let Some(jar) = line.strip_prefix("jar-") else { return line.to_owned() };
            match jar.rsplit_once('-') {
                Some((size, mouth)) => format!("{mouth}-mouth {size} jars"),
                None => format!("{jar} jars"),
            }
        }
    }
}
