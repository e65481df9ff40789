//! One jar in one kitchen: everything a history is traced from, with what is not known as ranges.

use almanac::{Almanac, JarInside, JarSize, Process, RangeOf};
use foodsci::atmosphere::{find_boiling_point, find_canner_steam_temp};
use foodsci::band::Spread;
use foodsci::jar::{Jar, Stage, find_film_through_glass};
use foodsci::lethality::Lethal;
use measure::{Altitude, Conductivity, Diffusivity, Film, Length, Span, Temp, TempDifference};

use super::super::answer::SourceLine;
use super::super::spread::numbers;
use super::WhyError;

/// The question, typed.
pub(super) struct Asked {
    pub(super) question: String,
    pub(super) altitude: Altitude,
    pub(super) filled_at: Option<Temp>,
    pub(super) is_hot: bool,
    pub(super) is_pressure: bool,
}

/// A jar, a canner, and a printed process.
#[derive(Debug, Clone)]
pub(super) struct Kitchen {
    pub(super) question: String,
    pub(super) minutes: u32,
    pub(super) rest: Span,
    pub(super) psi: Option<f64>,
    pub(super) is_pressure: bool,
    pub(super) height: Length,
    pub(super) boils_at: Temp,
    pub(super) holds_at: Temp,
    pub(super) filled_at: Temp,
    pub(super) filled_below_pack: bool,
    pub(super) jar: JarSize,
    pub(super) diameter: Length,
    pub(super) inside_height: Length,
    /// The same figures of the other jars on file.
    pub(super) others: Vec<(JarSize, Length, Length)>,
    pub(super) unknown: Vec<Spread>,
    pub(super) taken: Vec<String>,
    pub(super) sources: Vec<SourceLine>,
}

/// What is drawn for one history, in the order of [`Kitchen::unknown`].
#[derive(Debug, Clone, Copy)]
pub(super) struct Drawn {
    diffusivity: f64,
    conductivity: f64,
    film_outside: f64,
    film_air: f64,
    come_up_min: f64,
    fill_error: f64,
    size: f64,
}

impl Drawn {
    pub(super) fn of(draw: &[f64]) -> Self {
        Self {
            diffusivity: draw[0],
            conductivity: draw[1],
            film_outside: draw[2],
            film_air: draw[3],
            come_up_min: draw[4],
            fill_error: draw[5],
            size: draw[6],
        }
    }

    /// How long the canner takes until the printed minutes begin.
    pub(super) fn come_up(&self) -> Span {
        Span::minutes(self.come_up_min)
    }
}

/// Food as the canning directions fill it: hot pack near the boil, raw pack warm from its boiling liquid (180 °F and 140 °F are
/// the temperatures of the water in the canner that the same directions print).
const HOT_PACK: Temp = Temp::fahrenheit(180.0);
const RAW_PACK: Temp = Temp::fahrenheit(140.0);
/// How far a fill is off the temperature that was meant.
const FILL_ERROR_K: f64 = 4.0;
/// How far the inside of a jar is off the measures on file.
const SIZE_ERROR: f64 = 0.04;
/// Minutes from jars in to the full boil in boiling-water canners that began at 180 °F: 4.3 to 21 (IAFP 2013, paper 4056,
/// abstract); the likeliest is ours.
const COME_UP_MIN: Spread = Spread { low: 4.3, likely: 11.0, high: 21.0 };
/// Minutes of venting as printed, and of rising to pressure, a guess of ours.
const VENT_MIN: f64 = 10.0;
const RISE_MIN: f64 = 6.0;
/// Minutes of falling from pressure with the burner off, a guess of ours.
const FALL_MIN: f64 = 35.0;
/// Minutes drawn of the cooling on the counter.
const COOL_MIN: f64 = 60.0;
const ROOM: Temp = Temp::celsius(21.0);

impl Kitchen {
    pub(super) fn set_up(
        almanac: &Almanac,
        process: &Process,
        inside: &JarInside,
        asked: Asked,
    ) -> Result<Self, WhyError> {
        let height = Length::feet(f64::from(asked.altitude.as_feet()));
        let boils_at = find_boiling_point(height)?;
        let holds_at = match process.pressure() {
            Some(pressure) => find_canner_steam_temp(height, pressure)?,
            None => boils_at,
        };
        let meant = if asked.is_hot { HOT_PACK } else { RAW_PACK };
        let mut taken = vec![format!(
            "a jar of {:.0} mm inside and food {:.0} mm deep; measure your own",
            inside.diameter.as_millimetres(),
            inside.height.as_millimetres()
        )];
        if asked.filled_at.is_none() {
            taken.push(format!("food filled at {:.0} F", meant.as_fahrenheit()));
        }
        if asked.is_pressure {
            taken.push("10 minutes of venting as printed, 6 to pressure, 35 to fall again".to_owned());
        }
        let filled_at = asked.filled_at.unwrap_or(meant);
        let range = |of| almanac.planning_range(of);
        let [puree, food, water, air] = [
            RangeOf::DiffusivityPuree,
            RangeOf::ConductivityFood,
            RangeOf::FilmJarInBoilingWater,
            RangeOf::FilmJarInAir,
        ]
        .map(range);
        let film = |of: &almanac::PlanningRange| {
            numbers(of.as_film().expect("the row is a film"), Film::as_watts_per_square_metre_kelvin)
        };
        let unknown = vec![
            numbers(
                puree.as_diffusivity().expect("the row is a diffusivity"),
                Diffusivity::as_square_metres_per_second,
            ),
            numbers(
                food.as_conductivity().expect("the row is a conductivity"),
                Conductivity::as_watts_per_metre_kelvin,
            ),
            film(water),
            film(air),
            COME_UP_MIN,
            Spread::between(-FILL_ERROR_K, FILL_ERROR_K),
            Spread::between(1.0 - SIZE_ERROR, 1.0 + SIZE_ERROR),
        ];
        let cited = [process.citation(), &inside.citation, &puree.citation, &water.citation];
        let mut sources: Vec<SourceLine> = Vec::new();
        for citation in cited {
            let line = SourceLine::of(citation);
            if !sources.contains(&line) {
                sources.push(line);
            }
        }
        let others = JarSize::ALL
            .iter()
            .filter(|jar| **jar != inside.jar)
            .filter_map(|jar| almanac.jar_inside(*jar))
            .map(|other| (other.jar, other.diameter, other.height))
            .collect();
        Ok(Self {
            question: asked.question,
            minutes: process.minutes().0,
            rest: process.rest().map_or(Span::ZERO, Span::from),
            psi: process.pressure().map(measure::Pressure::as_psi),
            is_pressure: asked.is_pressure,
            height,
            boils_at,
            holds_at,
            filled_at,
            filled_below_pack: (meant - filled_at).as_kelvins() > FILL_ERROR_K,
            jar: inside.jar,
            diameter: inside.diameter,
            inside_height: inside.height,
            others,
            unknown,
            taken,
            sources,
        })
    }

    /// The likeliest of everything.
    pub(super) fn likeliest(&self) -> Drawn {
        Drawn::of(&self.unknown.iter().map(|spread| spread.likely).collect::<Vec<_>>())
    }

    /// The reference that this kind of process is counted by.
    pub(super) fn lethal(&self) -> Lethal {
        if self.is_pressure { Lethal::SPORES } else { Lethal::ACID_FOOD }
    }

    pub(super) fn jar(&self, drawn: &Drawn) -> Jar {
        Jar {
            radius: self.diameter * (0.5 * drawn.size),
            height: self.inside_height * drawn.size,
            diffusivity: Diffusivity::square_metres_per_second(drawn.diffusivity),
            conducts: Conductivity::watts_per_metre_kelvin(drawn.conductivity),
            filled_at: self.filled_at + TempDifference::kelvins(drawn.fill_error),
        }
    }

    /// The stages before the printed minutes begin.
    pub(super) fn stages_before(&self, drawn: &Drawn) -> Vec<Stage> {
        let film = self.film(drawn);
        // The water begins no colder than the food that goes into it, and no hotter than the directions have it.
        let water = if self.filled_at < HOT_PACK { self.filled_at } else { HOT_PACK };
        let mut stages = vec![Stage { lasts: drawn.come_up(), from: water, to: self.boils_at, film }];
        if self.is_pressure {
            let boiling = self.boils_at;
            stages.push(Stage { lasts: Span::minutes(VENT_MIN), from: boiling, to: boiling, film });
            stages.push(Stage { lasts: Span::minutes(RISE_MIN), from: boiling, to: self.holds_at, film });
        }
        stages
    }

    /// The printed minutes.
    pub(super) fn hold(&self, drawn: &Drawn) -> Stage {
        Stage {
            lasts: Span::minutes(f64::from(self.minutes)),
            from: self.holds_at,
            to: self.holds_at,
            film: self.film(drawn),
        }
    }

    /// What comes after: the fall from pressure, the rest in the canner, the counter.
    pub(super) fn stages_after(&self, drawn: &Drawn) -> Vec<Stage> {
        let film = self.film(drawn);
        let mut stages = Vec::new();
        if self.is_pressure {
            stages.push(Stage {
                lasts: Span::minutes(FALL_MIN),
                from: self.holds_at,
                to: self.boils_at,
                film,
            });
        }
        let rested = self.boils_at - TempDifference::kelvins(self.rest.as_minutes() * 0.5);
        stages.push(Stage { lasts: self.rest, from: self.boils_at, to: rested, film });
        stages.push(Stage {
            lasts: Span::minutes(COOL_MIN),
            from: ROOM,
            to: ROOM,
            film: Film::watts_per_square_metre_kelvin(drawn.film_air),
        });
        stages
    }

    fn film(&self, drawn: &Drawn) -> Film {
        find_film_through_glass(Film::watts_per_square_metre_kelvin(drawn.film_outside))
    }
}
