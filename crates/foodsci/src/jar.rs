//! The heat history of one jar: what the slowest point in it goes through while the water around it heats, boils and cools.
//!
//! The jar is a finite cylinder of thick food. The difference between food and surroundings is kept as the strengths of the
//! modes in which it dies away; each mode answers to surroundings that change in straight lines in closed form, so that a
//! history of ten thousand points costs a few milliseconds and no error builds up. Where the film changes (boiling water, then
//! air) the modes change too, and the field is projected from the old ones on the new ones.
//!
//! It explains a printed process and can never make one: it takes the minutes as given and has no wanted end.

use measure::{Conductivity, Diffusivity, Film, Length, Span, Temp};

use crate::conduction::{Biot, Modes, Shape};
use crate::lethality::{Between, Lethal, Reading, add_up_lethality};
use crate::limits::kitchen::{HALF_SIZE_M, TEMP_C};
use crate::limits::{Limits, ModelError, limits, require_above};

/// A jar of thick food; what moves inside heats faster than it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Jar {
    /// From its axis to the glass.
    pub radius: Length,
    /// From bottom to lid, inside.
    pub height: Length,
    /// How fast heat spreads in the food.
    pub diffusivity: Diffusivity,
    /// How well the food conducts.
    pub conducts: Conductivity,
    /// The food's temperature when the lid went on.
    pub filled_at: Temp,
}

/// A stretch of time in which the surroundings run in a straight line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stage {
    /// How long it lasts.
    pub lasts: Span,
    /// The surroundings when it begins.
    pub from: Temp,
    /// The surroundings when it ends.
    pub to: Temp,
    /// The film between jar and surroundings, the glass counted in.
    pub film: Film,
}

/// One point of a history.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HistoryPoint {
    /// When.
    pub at: Span,
    /// The surroundings.
    pub around: Temp,
    /// The slowest point of the food.
    pub centre: Temp,
}

/// Glass and film in series: `1 / (1 / h + d / k)`, with glass of 3 mm and 1.05 W/(m K).
///
/// # Source
///
/// Soda-lime glass 1.0 to 1.1 W/(m K) (a materials data page); the wall of a jar about 3 mm.
#[must_use]
pub fn find_film_through_glass(outside: Film) -> Film {
    const GLASS_M: f64 = 0.003;
    const GLASS_W_MK: f64 = 1.05;
    let outside = outside.as_watts_per_square_metre_kelvin();
    Film::watts_per_square_metre_kelvin(1.0 / (1.0 / outside + GLASS_M / GLASS_W_MK))
}

/// Modes kept of each series; the rest have died before a minute has passed in any jar.
const MODES: usize = 12;

/// What the jar goes through over the stages, in about `points` equal steps of time.
///
/// Arguments: the jar, the stages one after the other, how many points. Valid for thick food that does not move; within 20 % in
/// time of a real jar, worse with floating pieces or air.
///
/// # Source
///
/// The product solution for the finite cylinder and Duhamel's theorem (H. S. Carslaw, J. C. Jaeger, Conduction of Heat in
/// Solids, 2nd ed., 1959, sections 1.14 and 8.4; from memory); checked against finite volumes in the tests.
///
/// # Errors
///
/// When the jar or a stage is none of a kitchen, or fewer than 2 or more than 100,000 points are asked for.
pub fn trace_history(jar: &Jar, stages: &[Stage], points: usize) -> Result<Vec<HistoryPoint>, ModelError> {
    const POINTS: Limits = limits("number of points", "", 2.0, 100_000.0, "a history");
    // Exact: a count of points.
    let points = POINTS.check(points as f64)?;
    let whole: Span = stages.iter().map(|stage| stage.lasts).sum();
    require_above(("length of all stages", whole.as_minutes()), ("nothing", 0.0), " min")?;
    let mut history = Vec::new();
    let mut field: Option<Field> = None;
    let mut passed = Span::ZERO;
    for stage in stages {
        check_stage(stage)?;
        if stage.lasts == Span::ZERO {
            continue;
        }
        let mut here = match field.take() {
            // The same film has the same modes.
            Some(before) if before.film == stage.film => before.enter(stage),
            before => Field::begin(jar, stage, before.as_ref())?,
        };
        if history.is_empty() {
            history.push(HistoryPoint { at: passed, around: stage.from, centre: jar.filled_at });
        }
        let steps = libm::ceil(points * stage.lasts.ratio_to(whole)).max(1.0);
        let step = here.plan_step(stage, steps);
        // Exact: at most a hundred thousand.
        for at in 1..=steps as u32 {
            here.take_step(&step);
            history.push(HistoryPoint {
                at: passed + stage.lasts * (f64::from(at) / steps),
                around: Temp::celsius(here.around),
                centre: Temp::celsius(here.centre()),
            });
        }
        passed = passed + stage.lasts;
        field = Some(here);
    }
    Ok(history)
}

fn check_stage(stage: &Stage) -> Result<(), ModelError> {
    const STAGE_H: Limits = limits("length of a stage", " h", 0.0, 48.0, "a day in the kitchen and a night");
    const FILM: Limits = limits("film around the jar", " W/(m2 K)", 1.0, 1e5, "air to boiling water");
    STAGE_H.check(stage.lasts.as_hours())?;
    FILM.check(stage.film.as_watts_per_square_metre_kelvin())?;
    TEMP_C.check(stage.from.as_celsius())?;
    TEMP_C.check(stage.to.as_celsius()).map(|_| ())
}

/// The difference between food and surroundings as strengths of modes.
struct Field {
    film: Film,
    across: Vec<f64>,
    along: Vec<f64>,
    across_weights: Vec<f64>,
    along_weights: Vec<f64>,
    /// 1/s for each pair of modes.
    rates: Vec<f64>,
    strengths: Vec<f64>,
    around: f64,
}

/// What one step of time does to each pair of modes: `c -> c keeps - gives`.
struct Step {
    keeps: Vec<f64>,
    gives: Vec<f64>,
    rise: f64,
}

impl Field {
    fn begin(jar: &Jar, stage: &Stage, before: Option<&Self>) -> Result<Self, ModelError> {
        let radius = HALF_SIZE_M.check(jar.radius.as_metres())?;
        let half = HALF_SIZE_M.check(jar.height.as_metres() / 2.0)?;
        const SPREADS: Limits = limits("diffusivity", " m2/s", 5e-8, 1e-6, "foods");
        let spreads = SPREADS.check(jar.diffusivity.as_square_metres_per_second())?;
        let start = TEMP_C.check(jar.filled_at.as_celsius())?;
        let across = Modes::find(Shape::Cylinder, Biot::of(stage.film, jar.radius, jar.conducts)?, MODES)?;
        let along = Modes::find(Shape::Slab, Biot::of(stage.film, jar.height * 0.5, jar.conducts)?, MODES)?;
        let around = stage.from.as_celsius();
        let rates = pairs(across.roots(), along.roots(), |mu, nu| {
            spreads * (mu * mu / (radius * radius) + nu * nu / (half * half))
        });
        let one = pairs(across.centre_weights(), along.centre_weights(), |a, b| a * b);
        let strengths = match before {
            None => one.iter().map(|weight| weight * (start - around)).collect(),
            Some(field) => {
                let moved = field.project(across.roots(), along.roots());
                // The food keeps its temperature when the surroundings jump.
                moved.iter().zip(&one).map(|(c, weight)| c + weight * (field.around - around)).collect()
            }
        };
        Ok(Self {
            film: stage.film,
            across: across.roots().to_vec(),
            along: along.roots().to_vec(),
            across_weights: across.centre_weights().to_vec(),
            along_weights: along.centre_weights().to_vec(),
            rates,
            strengths,
            around,
        })
    }

    /// Goes on in surroundings that may have jumped; the food keeps its temperature.
    fn enter(mut self, stage: &Stage) -> Self {
        let jump = self.around - stage.from.as_celsius();
        let one = pairs(&self.across_weights, &self.along_weights, |a, b| a * b);
        for (strength, weight) in self.strengths.iter_mut().zip(&one) {
            *strength += weight * jump;
        }
        self.around = stage.from.as_celsius();
        self
    }

    fn plan_step(&self, stage: &Stage, steps: f64) -> Step {
        let seconds = stage.lasts.as_seconds() / steps;
        let rise = (stage.to - stage.from).as_kelvins() / steps;
        let one = pairs(&self.across_weights, &self.along_weights, |a, b| a * b);
        let keeps: Vec<f64> = self.rates.iter().map(|rate| libm::exp(-rate * seconds)).collect();
        let gives = self
            .rates
            .iter()
            .zip(&one)
            .map(|(rate, weight)| weight * rise / seconds * -libm::expm1(-rate * seconds) / rate)
            .collect();
        Step { keeps, gives, rise }
    }

    fn take_step(&mut self, step: &Step) {
        for (strength, (keeps, gives)) in self.strengths.iter_mut().zip(step.keeps.iter().zip(&step.gives)) {
            *strength = *strength * keeps - gives;
        }
        self.around += step.rise;
    }

    /// Every mode is 1 at the centre.
    fn centre(&self) -> f64 {
        self.around + self.strengths.iter().sum::<f64>()
    }

    /// The strengths of the same field in the modes of another film.
    fn project(&self, across: &[f64], along: &[f64]) -> Vec<f64> {
        let bessel = |roots: &[f64]| -> Vec<(f64, f64, f64)> {
            roots.iter().map(|root| (*root, libm::j0(*root), libm::j1(*root))).collect()
        };
        let radial: Vec<f64> = pairs(&bessel(across), &bessel(&self.across), overlap_of_cylinders);
        let axial: Vec<f64> = pairs(along, &self.along, overlap_of_slabs);
        let n = MODES;
        let mut half = vec![0.0; n * n];
        for new in 0..n {
            for old in 0..n {
                half[new * n + old] =
                    (0..n).map(|other| radial[new * n + other] * self.strengths[other * n + old]).sum();
            }
        }
        let mut moved = vec![0.0; n * n];
        for row in 0..n {
            for new in 0..n {
                moved[row * n + new] = (0..n).map(|old| half[row * n + old] * axial[new * n + old]).sum();
            }
        }
        moved
    }
}

/// Every mode of the one with every mode of the other.
fn pairs<T: Copy>(first: &[T], second: &[T], join: impl Fn(T, T) -> f64) -> Vec<f64> {
    let mut joined = Vec::with_capacity(first.len() * second.len());
    for a in first {
        joined.extend(second.iter().map(|b| join(*a, *b)));
    }
    joined
}

/// `∫ r J0(a r) J0(b r) dr / ∫ r J0(a r)² dr` from 0 to 1; each root comes with its J0 and J1.
fn overlap_of_cylinders((a, a0, a1): (f64, f64, f64), (b, b0, b1): (f64, f64, f64)) -> f64 {
    let norm = (a0 * a0 + a1 * a1) / 2.0;
    if (a - b).abs() < 1e-9 {
        return 1.0;
    }
    (a * a1 * b0 - b * a0 * b1) / (a * a - b * b) / norm
}

/// `∫ cos(a x) cos(b x) dx / ∫ cos(a x)² dx` from 0 to 1.
fn overlap_of_slabs(a: f64, b: f64) -> f64 {
    let norm = 0.5 + libm::sin(2.0 * a) / (4.0 * a);
    if (a - b).abs() < 1e-9 {
        return 1.0;
    }
    (libm::sin(a - b) / (a - b) + libm::sin(a + b) / (a + b)) / 2.0 / norm
}

/// The lethality at the centre up to each point of a history.
///
/// # Errors
///
/// As [`add_up_lethality`].
pub fn add_up_history(history: &[HistoryPoint], lethal: &Lethal) -> Result<Vec<Span>, ModelError> {
    let mut sums = vec![Span::ZERO];
    let mut sum = Span::ZERO;
    for pair in history.windows(2) {
        let readings = [pair[0], pair[1]].map(|point| Reading { at: point.at, temp: point.centre });
        sum = sum + add_up_lethality(&readings, lethal, Between::LinearTemperature)?;
        sums.push(sum);
    }
    Ok(sums)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::conduction::{FiniteCylinder, Grid, GridCylinder};

    fn pint() -> Jar {
        Jar {
            radius: Length::millimetres(38.0),
            height: Length::millimetres(110.0),
            diffusivity: Diffusivity::square_metres_per_second(1.5e-7),
            conducts: Conductivity::watts_per_metre_kelvin(0.55),
            filled_at: Temp::celsius(70.0),
        }
    }

    const WATER: Film = Film::watts_per_square_metre_kelvin(260.0);
    const AIR: Film = Film::watts_per_square_metre_kelvin(10.0);

    fn stage(minutes: f64, from: f64, to: f64, film: Film) -> Stage {
        Stage { lasts: Span::minutes(minutes), from: Temp::celsius(from), to: Temp::celsius(to), film }
    }

    fn in_the_canner() -> [Stage; 3] {
        [stage(20.0, 75.0, 100.0, WATER), stage(35.0, 100.0, 100.0, WATER), stage(60.0, 22.0, 22.0, AIR)]
    }

    #[test]
    fn in_water_that_keeps_its_temperature_it_is_the_series() {
        let jar = pint();
        let series =
            FiniteCylinder::new(jar.radius, jar.height, jar.diffusivity, (WATER, jar.conducts), 60).unwrap();
        let history = trace_history(&jar, &[stage(60.0, 100.0, 100.0, WATER)], 60).unwrap();
        for point in history.iter().skip(5) {
            let exact = series.find_centre_temp(jar.filled_at, Temp::celsius(100.0), point.at).unwrap();
            assert!((point.centre - exact).as_kelvins().abs() < 1e-6, "{point:?}");
        }
    }

    #[test]
    fn through_water_and_air_it_agrees_with_finite_volumes() {
        let jar = pint();
        let history = trace_history(&jar, &in_the_canner(), 1150).unwrap();
        let grid = Grid { rings: 40, layers: 40 };
        let mut cut =
            GridCylinder::new(jar.radius, jar.height, (jar.diffusivity, jar.conducts), jar.filled_at, grid)
                .unwrap();
        let mut passed = 0.0;
        for stage in in_the_canner() {
            let parts = stage.lasts.as_minutes() as usize;
            for part in 0..parts {
                let middle = (part as f64 + 0.5) / parts as f64;
                let around = stage.from + (stage.to - stage.from) * middle;
                cut.pass(stage.lasts * (1.0 / parts as f64), 6, around, stage.film).unwrap();
                passed += 1.0;
                let at = history.iter().find(|point| (point.at.as_minutes() - passed).abs() < 1e-6).unwrap();
                assert!((at.centre - cut.centre()).as_kelvins().abs() < 0.1, "{passed} min: {at:?}");
            }
        }
    }

    #[test]
    fn how_finely_a_history_is_cut_changes_no_point() {
        let coarse = trace_history(&pint(), &in_the_canner(), 115).unwrap();
        let fine = trace_history(&pint(), &in_the_canner(), 11_500).unwrap();
        let (coarse, fine) = (coarse.last().unwrap(), fine.last().unwrap());
        assert!((coarse.centre - fine.centre).as_kelvins().abs() < 1e-9);
    }

    #[test]
    fn a_jar_and_water_at_one_temperature_stay_so() {
        let jar = Jar { filled_at: Temp::celsius(90.0), ..pint() };
        let history = trace_history(&jar, &[stage(30.0, 90.0, 90.0, WATER)], 30).unwrap();
        assert!(history.iter().all(|point| (point.centre - jar.filled_at).as_kelvins().abs() < 1e-9));
    }

    #[test]
    fn a_quart_lags_a_pint_and_a_lost_boil_costs() {
        let quart = Jar { radius: Length::millimetres(46.0), height: Length::millimetres(150.0), ..pint() };
        let end = |jar: &Jar, stages: &[Stage]| {
            let history = trace_history(jar, stages, 500).unwrap();
            add_up_history(&history, &Lethal::ACID_FOOD).unwrap().last().copied().unwrap()
        };
        let all = in_the_canner();
        assert!(end(&quart, &all) < end(&pint(), &all));
        let lost = [
            all[0],
            stage(15.0, 100.0, 100.0, WATER),
            stage(10.0, 92.0, 92.0, WATER),
            stage(10.0, 100.0, 100.0, WATER),
            all[2],
        ];
        assert!(end(&pint(), &lost) < end(&pint(), &all));
    }

    #[test]
    fn what_is_no_jar_is_refused() {
        let thin = Jar { radius: Length::ZERO, ..pint() };
        assert!(trace_history(&thin, &in_the_canner(), 100).is_err());
        assert!(trace_history(&pint(), &[], 100).is_err());
        assert!(trace_history(&pint(), &in_the_canner(), 1).is_err());
        let none = Jar { filled_at: Temp::celsius(f64::NAN), ..pint() };
        assert!(trace_history(&none, &in_the_canner(), 100).is_err());
    }
}
