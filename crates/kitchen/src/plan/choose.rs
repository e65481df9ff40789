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
const BY_WORK: usize = 3;
const BY_WORTH: usize = 2;

/// Minutes added to the work of each candidate, so that a handful of herbs does not outrank a bushel.
const STARTING_COST: f64 = 30.0;

/// Parts the candidates into those the planner is shown and those it is not.
pub(crate) fn choose<'a>(
    day: &Day,
    mut all: Vec<Considered<'a>>,
) -> (Vec<Considered<'a>>, Vec<Considered<'a>>) {
    mark_produce_musts(day, &mut all);
    all.retain(|considered| {
        considered.must || considered.options.iter().any(|option| option.worth.value() > 0)
    });
    let mut kept: BTreeSet<usize> = BTreeSet::new();
    for basket in 0..day.baskets.len() {
        let of_basket: Vec<usize> = (0..all.len()).filter(|&at| uses_most(&all[at], basket)).collect();
        kept.extend(best_by(&all, &of_basket, BY_WORK, worth_for_work));
        kept.extend(best_by(&all, &of_basket, BY_WORTH, |option| f64::from(option.worth.value())));
    }
    kept.extend((0..all.len()).filter(|&at| all[at].must || is_wished(day, &all[at])));
    let mut shown = Vec::new();
    let mut rest = Vec::new();
    for (at, considered) in all.into_iter().enumerate() {
        if kept.contains(&at) { shown.push(considered) } else { rest.push(considered) }
    }
    (shown, rest)
}

/// Turns a wish for something of a produce into a must for the formula that brings most for the work.
fn mark_produce_musts(day: &Day, all: &mut [Considered<'_>]) {
    for wish in &day.wishes {
        let Wish::Must(WishFor::Produce(produce)) = wish else { continue };
        let best = (0..all.len())
            .filter(|&at| {
                all[at].options.iter().any(|option| {
                    option.uses.first().is_some_and(|(basket, _)| day.baskets[*basket].produce == *produce)
                })
            })
            .max_by(|&a, &b| top(&all[a], worth_for_work).total_cmp(&top(&all[b], worth_for_work)));
        if let Some(best) = best {
            all[best].must = true;
        }
    }
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
