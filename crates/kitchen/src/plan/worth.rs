//! What a make is worth, in servings for the winter, with its parts named.
//!
//! worth = servings x liking + servings towards an unmet target x 1/2 - servings beyond a target x 1/2
//!         + saved kilograms x urgency - work of the evening before.
//! Every factor is ours (a first guess) and is told as such; the parts add up to the whole.

use measure::{Mass, Volume};

use crate::answer::WorthPart;
use crate::day::{Liking, Waits};

/// Servings taken off for an hour of work the evening before: about what an hour of the day brings.
const EVENING_HOUR: f64 = 15.0;

/// Half a serving more for each serving that fills a target, half a serving less beyond it.
const TARGET_WEIGHT: f64 = 0.5;

/// The planner's unit: whole tenths of a serving.
const VALUE_PER_SERVING: f64 = 10.0;

/// How the servings of a make are counted.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Serving {
    /// By the room in its jars.
    OfJars {
        /// Likely jars.
        containers: u32,
        /// What one holds.
        each: Volume,
        /// What one serving takes.
        serving: Volume,
    },
    /// By the weight of its produce.
    OfProduce {
        /// All of it, prepared.
        produce: Mass,
        /// What one serving takes of it.
        serving: Mass,
    },
    /// No serving size is on file.
    None,
}

impl Serving {
    /// How many.
    pub(crate) fn count(self) -> f64 {
        match self {
            Self::OfJars { containers, each, serving } => f64::from(containers) * each.ratio_to(serving),
            Self::OfProduce { produce, serving } => produce.ratio_to(serving),
            Self::None => 0.0,
        }
    }

    fn how(self) -> String {
        match self {
            Self::OfJars { containers, each, serving } => format!(
                "{containers} jars of {:.0} ml at {:.0} ml a serving",
                each.as_millilitres(),
                serving.as_millilitres()
            ),
            Self::OfProduce { produce, serving } => {
                format!("{:.0} g at {:.0} g a serving", produce.as_grams(), serving.as_grams())
            }
            Self::None => "no serving size is on file".to_owned(),
        }
    }
}

/// What decides the worth of a make.
#[derive(Debug, Clone)]
pub(crate) struct WorthInputs {
    /// Its servings.
    pub(crate) servings: Serving,
    /// How well it is liked.
    pub(crate) liking: Liking,
    /// How much a target still wants; `None` without a target.
    pub(crate) wanted: Option<Volume>,
    /// Minutes of work the evening before, which the day's plan does not see.
    pub(crate) evening_minutes: u32,
    /// Produce it uses, with how long each will wait.
    pub(crate) saves: Vec<(String, Mass, Waits)>,
}

/// A worth and its parts.
#[derive(Debug, Clone)]
pub(crate) struct Worth {
    pub(crate) servings: f64,
    pub(crate) parts: Vec<WorthPart>,
}

impl Worth {
    /// The worth as the planner's whole number.
    pub(crate) fn value(&self) -> u32 {
        // Never overflows: a make is worth a few thousand servings at the most.
        libm::round((self.servings * VALUE_PER_SERVING).clamp(0.0, 100_000.0)) as u32
    }
}

/// Adds up the worth of a make.
pub(crate) fn weigh_worth(inputs: &WorthInputs) -> Worth {
    let plain = inputs.servings.count();
    let mut parts =
        vec![WorthPart { part: "servings".to_owned(), servings: plain, how: inputs.servings.how() }];
    let liked = plain * (liking_factor(inputs.liking) - 1.0);
    if inputs.liking != Liking::Well {
        parts.push(WorthPart {
            part: "liking".to_owned(),
            servings: liked,
            how: liking_words(inputs.liking).to_owned(),
        });
    }
    parts.extend(inputs.wanted.and_then(|wanted| target_part(inputs, wanted)));
    for (produce, mass, waits) in &inputs.saves {
        let per_kg = urgency_per_kg(*waits);
        if per_kg > 0.0 && *mass > Mass::ZERO {
            parts.push(WorthPart {
                part: format!("saves {produce}"),
                servings: mass.as_kilograms() * per_kg,
                how: format!(
                    "{:.1} kg that will wait {} x {per_kg}",
                    mass.as_kilograms(),
                    waits_words(*waits)
                ),
            });
        }
    }
    if inputs.evening_minutes > 0 {
        parts.push(WorthPart {
            part: "evening before".to_owned(),
            servings: -EVENING_HOUR * f64::from(inputs.evening_minutes) / 60.0,
            how: format!("{} minutes of work the evening before", inputs.evening_minutes),
        });
    }
    if inputs.liking == Liking::NotEaten {
        // What nobody eats is worth nothing, whatever it saves.
        let so_far: f64 = parts.iter().map(|part| part.servings).sum();
        parts.push(WorthPart {
            part: "not eaten".to_owned(),
            servings: -so_far,
            how: "nobody eats it".to_owned(),
        });
    }
    Worth { servings: parts.iter().map(|part| part.servings).sum(), parts }
}

fn target_part(inputs: &WorthInputs, wanted: Volume) -> Option<WorthPart> {
    let Serving::OfJars { containers, each, serving } = inputs.servings else { return None };
    let made = each * f64::from(containers);
    let towards = made.min(wanted);
    let beyond = made - towards;
    Some(WorthPart {
        part: "target".to_owned(),
        servings: TARGET_WEIGHT * (towards.ratio_to(serving) - beyond.ratio_to(serving)),
        how: format!(
            "{:.1} of the {:.1} quarts still wanted, {:.1} beyond",
            towards.as_quarts(),
            wanted.as_quarts(),
            beyond.as_quarts()
        ),
    })
}

fn liking_factor(liking: Liking) -> f64 {
    match liking {
        Liking::NotEaten => 0.0,
        Liking::Little => 0.5,
        Liking::Well => 1.0,
        Liking::Much => 1.5,
    }
}

fn liking_words(liking: Liking) -> &'static str {
    match liking {
        Liking::NotEaten => "nobody eats it",
        Liking::Little => "liked a little",
        Liking::Well => "liked well",
        Liking::Much => "liked much",
    }
}

/// Servings added for each kilogram saved from being lost.
fn urgency_per_kg(waits: Waits) -> f64 {
    match waits {
        Waits::Today => 6.0,
        Waits::Tomorrow => 4.0,
        Waits::Days => 2.0,
        Waits::Week => 0.0,
    }
}

/// How long produce will wait, in words.
pub(crate) fn waits_words(waits: Waits) -> &'static str {
    match waits {
        Waits::Today => "only today",
        Waits::Tomorrow => "until tomorrow",
        Waits::Days => "a few days",
        Waits::Week => "a week",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn jars(containers: u32, cups: f64) -> Serving {
        Serving::OfJars { containers, each: Volume::quarts(1.0), serving: Volume::cups(cups) }
    }

    fn inputs() -> WorthInputs {
        WorthInputs {
            servings: jars(7, 0.5),
            liking: Liking::Well,
            wanted: None,
            evening_minutes: 0,
            saves: vec![],
        }
    }

    fn worth(change: impl FnOnce(&mut WorthInputs)) -> f64 {
        let mut inputs = inputs();
        change(&mut inputs);
        let worth = weigh_worth(&inputs);
        let sum: f64 = worth.parts.iter().map(|part| part.servings).sum();
        assert!((sum - worth.servings).abs() < 1e-9, "the parts add up to the whole");
        worth.servings
    }

    #[test]
    fn seven_quarts_are_fifty_six_half_cups() {
        assert!((worth(|_| {}) - 56.0).abs() < 1e-9);
    }

    #[test]
    fn each_part_moves_the_worth() {
        let plain = worth(|_| {});
        assert!(worth(|i| i.liking = Liking::Much) > plain);
        assert!(worth(|i| i.liking = Liking::Little) < plain);
        assert!(worth(|i| i.evening_minutes = 60) < plain);
        let wants = |quarts| worth(move |i| i.wanted = Some(Volume::quarts(quarts)));
        assert!(wants(7.0) > wants(5.0));
        assert!(wants(0.0) < plain);
        assert!(worth(|i| i.servings = jars(8, 0.5)) > plain);
        assert!(worth(|i| i.servings = jars(7, 1.0)) < plain);
        let frozen = Serving::OfProduce { produce: Mass::kilograms(1.0), serving: Mass::grams(100.0) };
        assert!((worth(move |i| i.servings = frozen) - 10.0).abs() < 1e-9);
        let saved = |waits| worth(move |i| i.saves = vec![("pears".into(), Mass::kilograms(5.0), waits)]);
        assert!(saved(Waits::Today) > saved(Waits::Tomorrow));
        assert!(saved(Waits::Tomorrow) > saved(Waits::Days));
        assert!((saved(Waits::Week) - plain).abs() < 1e-9);
    }

    #[test]
    fn what_nobody_eats_is_worth_nothing_even_when_it_saves_produce() {
        let nothing = worth(|i| {
            i.liking = Liking::NotEaten;
            i.saves = vec![("chard".into(), Mass::kilograms(5.0), Waits::Today)];
        });
        assert!(nothing.abs() < 1e-9);
    }
}
