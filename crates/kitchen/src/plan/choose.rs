//! Which candidates the planner is shown.
//!
//! A basket of tomatoes can become twenty things. The planner is shown, for each basket, the few that bring most
//! for the work and the few that bring most at all, every must, and everything a wish speaks well of; the rest is
//! told as "also possible".

use std::collections::BTreeSet;

use measure::Volume;

use super::candidates::{Candidate, Considered};
use super::likes;
use crate::day::{Day, Liking, Wish, WishFor};

/// Kept for each basket by worth for the work, and by worth alone.
const BY_WORK: usize = 2;
const BY_WORTH: usize = 2;

/// Minutes added to the work of each candidate, so that a handful of herbs does not outrank a bushel.
const STARTING_COST: f64 = 30.0;

/// Parts the candidates into those the planner is shown and those it is not.
pub(crate) fn choose<'a>(
    day: &Day,
    mut all: Vec<Considered<'a>>,
) -> (Vec<Considered<'a>>, Vec<Considered<'a>>) {
    all.retain(|considered| {
        considered.must || considered.options.iter().any(|option| option.worth.value() > 0)
    });
    let mut kept: BTreeSet<usize> = BTreeSet::new();
    for basket in 0..day.baskets.len() {
        let of_basket: Vec<usize> = (0..all.len()).filter(|&at| uses_most(&all[at], basket)).collect();
        kept.extend(best_by(&all, &of_basket, BY_WORK, worth_for_work));
        kept.extend(best_by(&all, &of_basket, BY_WORTH, worth_alone));
    }
    kept.extend((0..all.len()).filter(|&at| all[at].must || is_wished(day, &all[at])));
    let mut shown = Vec::new();
    let mut rest = Vec::new();
    for (at, considered) in all.into_iter().enumerate() {
        if kept.contains(&at) { shown.push(considered) } else { rest.push(considered) }
    }
    (shown, rest)
}

/// Produce of which something must be made and nothing is: the formula that brings most of it becomes a must. `false`
/// when there is nothing to mark.
pub(crate) fn mark_missing_musts(day: &Day, shown: &mut [Considered<'_>], chosen: &BTreeSet<String>) -> bool {
    let mut marked = false;
    for wish in &day.wishes {
        let Wish::Must(WishFor::Produce(produce)) = wish else { continue };
        let takes = |considered: &Considered<'_>| {
            considered
                .options
                .iter()
                .any(|option| option.uses.iter().any(|(basket, _)| day.baskets[*basket].produce == *produce))
        };
        let of_it: Vec<usize> = (0..shown.len()).filter(|&at| takes(&shown[at])).collect();
        if of_it.iter().any(|&at| shown[at].must || chosen.contains(shown[at].formula.id.as_str())) {
            continue;
        }
        let best = of_it.into_iter().max_by(|&a, &b| {
            top(&shown[a], worth_alone).total_cmp(&top(&shown[b], worth_alone)).then(b.cmp(&a))
        });
        if let Some(best) = best {
            shown[best].must = true;
            marked = true;
        }
    }
    marked
}

/// Whether most of what a candidate uses comes from a basket.
fn uses_most(considered: &Considered<'_>, basket: usize) -> bool {
    considered.options.iter().any(|option| {
        option
            .uses
            .iter()
            .max_by(|a, b| a.1.as_grams().total_cmp(&b.1.as_grams()))
            .is_some_and(|(at, _)| *at == basket)
    })
}

/// Whether a wish speaks well of a candidate.
fn is_wished(day: &Day, considered: &Considered<'_>) -> bool {
    likes::wanted_of(day, considered.formula).is_some_and(|wanted| wanted > Volume::ZERO)
        || likes::liking_of(day, considered.formula) == Liking::Much
}

fn worth_for_work(option: &Candidate) -> f64 {
    f64::from(option.worth.value()) / (f64::from(option.hand_minutes()) + STARTING_COST)
}

fn worth_alone(option: &Candidate) -> f64 {
    f64::from(option.worth.value())
}

fn top(considered: &Considered<'_>, score: impl Fn(&Candidate) -> f64) -> f64 {
    considered.options.iter().map(score).fold(0.0, f64::max)
}

/// The best few by a score, the earlier of equals first.
fn best_by(
    all: &[Considered<'_>],
    among: &[usize],
    few: usize,
    score: impl Fn(&Candidate) -> f64 + Copy,
) -> Vec<usize> {
    let mut order = among.to_vec();
    order.sort_by(|&a, &b| top(&all[b], score).total_cmp(&top(&all[a], score)).then(a.cmp(&b)));
    order.truncate(few);
    order
}
