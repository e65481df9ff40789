//! Freezing: what a freezer must take away, how long a bag takes, and how long a freezer stays cold without power.

use measure::{
    Conductivity, Density, Film, Heat, HeatCapacity, HeatLoss, Length, Mass, Percent, Power, Span,
    SpecificEnergy, SpecificHeat, Temp,
};

use crate::limits::kitchen::{MASS_KG, SHARE, TEMP_C};
use crate::limits::{Limits, ModelError, limits, require_above, require_below};

/// What a food does between warm and frozen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Freezes {
    /// Where ice begins to form.
    pub at: Temp,
    /// What it takes for each degree above that.
    pub above: SpecificHeat,
    /// What it takes for each degree below.
    pub below: SpecificHeat,
    /// What the freezing itself takes.
    pub latent: SpecificEnergy,
}

/// The latent heat of a food from its water: `334 kJ/kg × share of water`.
///
/// # Source
///
/// ASHRAE Handbook, Refrigeration, Thermal properties of foods, equation of the latent heat; equal to its table 3 within
/// 1.2 kJ/kg.
///
/// # Errors
///
/// Outside 0 to 100 %.
pub fn find_latent_heat(water: Percent) -> Result<SpecificEnergy, ModelError> {
    Ok(SpecificEnergy::kilojoules_per_kilogram(334.0 * SHARE.check(water.as_fraction())?))
}

/// The heat that must leave a mass of food to bring it from warm to frozen: `c1 (T1 - Tf) + L + c2 (Tf - T2)` for each
/// kilogram.
///
/// # Errors
///
/// When it does not start above and end below its freezing point.
pub fn find_freezing_load(food: &Freezes, mass: Mass, from: Temp, to: Temp) -> Result<Heat, ModelError> {
    MASS_KG.check(mass.as_kilograms())?;
    for temp in [food.at, from, to] {
        TEMP_C.check(temp.as_celsius())?;
    }
    let freezes = food.at.as_celsius();
    require_above(
        ("temperature at the start", from.as_celsius()),
        ("freezing point", freezes - 1e-9),
        " °C",
    )?;
    require_below(("temperature at the end", to.as_celsius()), ("freezing point", freezes + 1e-9), " °C")?;
    Ok(mass * food.above * (from - food.at) + mass * food.latent + mass * food.below * (food.at - to))
}

/// How much food a freezer takes in a time: `P t / q`.
///
/// # Errors
///
/// When the cooling power is none of a household freezer.
pub fn find_freezer_takes(
    cooling: Power,
    time: Span,
    food: &Freezes,
    from: Temp,
    to: Temp,
) -> Result<Mass, ModelError> {
    const COOLING_W: Limits = limits("cooling power left for food", " W", 0.0, 1000.0, "household freezers");
    const HOURS: Limits = limits("time", " h", 0.0, 240.0, "ten days");
    COOLING_W.check(cooling.as_watts())?;
    HOURS.check(time.as_hours())?;
    let each = find_freezing_load(food, Mass::kilograms(1.0), from, to)?;
    Ok(Mass::kilograms((cooling * time).ratio_to(each)))
}

/// The body that freezes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FrozenShape {
    /// A flat bag or box: frozen from both faces.
    Slab,
    /// Long and round.
    Cylinder,
    /// A ball, a berry.
    Sphere,
}

impl FrozenShape {
    /// Plank's P and R for the whole thickness or diameter.
    const fn plank(self) -> (f64, f64) {
        match self {
            Self::Slab => (1.0 / 2.0, 1.0 / 8.0),
            Self::Cylinder => (1.0 / 4.0, 1.0 / 16.0),
            Self::Sphere => (1.0 / 6.0, 1.0 / 24.0),
        }
    }

    /// How many times faster than a slab it freezes.
    const fn pham(self) -> f64 {
        match self {
            Self::Slab => 1.0,
            Self::Cylinder => 2.0,
            Self::Sphere => 3.0,
        }
    }
}

/// A package in a freezer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Package {
    /// Its shape.
    pub shape: FrozenShape,
    /// Its whole thickness or diameter.
    pub thickness: Length,
    /// Its density.
    pub density: Density,
    /// How well it conducts when frozen.
    pub conducts: Conductivity,
    /// The film of cold air around it.
    pub film: Film,
    /// The cold air.
    pub air: Temp,
}

impl Package {
    fn check(&self) -> Result<(), ModelError> {
        const THICK_M: Limits = limits("thickness", " m", 0.002, 0.6, "packages for a freezer");
        const FILM: Limits = limits("film of cold air", " W/(m2 K)", 2.0, 1000.0, "still air to plates");
        const AIR_C: Limits = limits("temperature of the freezer", " °C", -60.0, -2.0, "freezers");
        const DENSITY: Limits = limits("density", " kg/m3", 100.0, 1500.0, "food");
        const CONDUCTS: Limits = limits("conductivity", " W/(m K)", 0.2, 3.0, "frozen food");
        THICK_M.check(self.thickness.as_metres())?;
        FILM.check(self.film.as_watts_per_square_metre_kelvin())?;
        AIR_C.check(self.air.as_celsius())?;
        DENSITY.check(self.density.as_kilograms_per_cubic_metre())?;
        CONDUCTS.check(self.conducts.as_watts_per_metre_kelvin()).map(|_| ())
    }
}

/// The time of the freezing itself by Plank: `ρ L / (Tf - Ta) (P a / h + R a² / k)`.
///
/// It counts neither cooling before nor below, and is 20 to 40 % short of the whole; kept as a cross-check.
///
/// # Source
///
/// R. Plank, 1913, as in C. J. Geankoplis, Transport Processes and Unit Operations, 3rd ed., 1993, equation 5.5-21.
///
/// # Errors
///
/// When the air is not colder than the freezing point, or the package none of a freezer.
pub fn find_plank_time(
    package: &Package,
    latent: SpecificEnergy,
    freezes_at: Temp,
) -> Result<Span, ModelError> {
    package.check()?;
    require_below(
        ("temperature of the freezer", package.air.as_celsius()),
        ("freezing point", freezes_at.as_celsius()),
        " °C",
    )?;
    let (p, r) = package.shape.plank();
    let a = package.thickness.as_metres();
    let per_degree = package.density.as_kilograms_per_cubic_metre() * latent.as_joules_per_kilogram()
        / (freezes_at - package.air).as_kelvins();
    Ok(Span::seconds(
        per_degree
            * (p * a / package.film.as_watts_per_square_metre_kelvin()
                + r * a * a / package.conducts.as_watts_per_metre_kelvin()),
    ))
}

/// The time until the centre is at an end temperature, by Pham's simplified method.
///
/// `T3 = 1.8 + 0.263 Tc + 0.105 Ta`; `t = d / (E h) (ΔH1 / ΔT1 + ΔH2 / ΔT2) (1 + Bi / 2)`, d half the thickness. Published for h 10
/// to 500 W/(m² K) and air of -15 to -40 °C; within 9 % of a numerical solution at h 6 to 10.
///
/// # Source
///
/// Q. T. Pham, Simplified equation for predicting the freezing time of foodstuffs, Journal of Food Technology 21, 1986
/// (from memory); anchors in the tests.
///
/// # Errors
///
/// When the package is none of a freezer, the food does not start above freezing, or the end is colder than the air.
pub fn find_pham_time(
    package: &Package,
    food: &Freezes,
    from: Temp,
    centre: Temp,
) -> Result<Span, ModelError> {
    const END_C: Limits =
        limits("temperature of the centre at the end", " °C", -30.0, -5.0, "Pham's equation");
    package.check()?;
    TEMP_C.check(from.as_celsius())?;
    let end = END_C.check(centre.as_celsius())?;
    let air = package.air.as_celsius();
    require_below(("temperature of the freezer", air), ("temperature of the centre at the end", end), " °C")?;
    require_above(
        ("temperature at the start", from.as_celsius()),
        ("freezing point", food.at.as_celsius()),
        " °C",
    )?;
    let start = from.as_celsius();
    let middle = 1.8 + 0.263 * end + 0.105 * air;
    let density = package.density.as_kilograms_per_cubic_metre();
    let cooling = density * food.above.as_joules_per_kilogram_kelvin() * (start - middle);
    let freezing = density
        * (food.latent.as_joules_per_kilogram()
            + food.below.as_joules_per_kilogram_kelvin() * (middle - end));
    let (first, second) = ((start + middle) / 2.0 - air, middle - air);
    let half = package.thickness.as_metres() / 2.0;
    let film = package.film.as_watts_per_square_metre_kelvin();
    let biot = film * half / package.conducts.as_watts_per_metre_kelvin();
    Ok(Span::seconds(
        half / (package.shape.pham() * film) * (cooling / first + freezing / second) * (1.0 + biot / 2.0),
    ))
}

/// The share of a food's water that is still liquid below its freezing point: `Tf / T`.
///
/// # Source
///
/// Raoult's law for food (ASHRAE Handbook, Refrigeration, Thermal properties of foods), bound water left out.
///
/// # Errors
///
/// When it is not below its freezing point, or that is not below zero.
pub fn find_unfrozen_share(freezes_at: Temp, at: Temp) -> Result<Percent, ModelError> {
    const FREEZES_C: Limits = limits("freezing point", " °C", -10.0, -0.05, "foods");
    const AT_C: Limits = limits("temperature", " °C", -60.0, 0.0, "frozen food");
    let freezes = FREEZES_C.check(freezes_at.as_celsius())?;
    let here = AT_C.check(at.as_celsius())?;
    require_below(("temperature", here), ("freezing point", freezes + 1e-12), " °C")?;
    Ok(Percent::fraction(freezes / here))
}

/// A freezer without power.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outage {
    /// What is in it.
    pub load: Mass,
    /// What that food does.
    pub food: Freezes,
    /// The heat that leaks in for each degree.
    pub leak: HeatLoss,
    /// The room.
    pub room: Temp,
}

/// How long a closed freezer keeps its load below a temperature: the latent heat of what thaws on the way is its store of cold.
///
/// The enthalpy of the load, with the water that is liquid at each temperature by [`find_unfrozen_share`], against the heat
/// that leaks in; added up in steps of a twentieth of a degree. A planning figure within a factor of two: a full freezer
/// with its door shut. It says nothing of what may be eaten; the thermometer and the published table do.
///
/// # Source
///
/// Heat balance of one lump.
///
/// # Errors
///
/// When start and end do not lie between the freezer and the room, or nothing is in it.
pub fn find_outage_time(outage: &Outage, from: Temp, to: Temp) -> Result<Span, ModelError> {
    const LEAK: Limits = limits("leak of the freezer", " W/K", 0.1, 10.0, "household freezers");
    const STEP_K: f64 = 0.05;
    MASS_KG.check(outage.load.as_kilograms())?;
    let leak = LEAK.check(outage.leak.as_watts_per_kelvin())?;
    let [start, end, room] = [from, to, outage.room].map(|temp| TEMP_C.check(temp.as_celsius()));
    let (start, end, room) = (start?, end?, room?);
    require_above(("load of the freezer", outage.load.as_kilograms()), ("nothing", 0.0), " kg")?;
    require_above(("temperature at the end", end), ("temperature at the start", start), " °C")?;
    require_above(("temperature of the room", room), ("temperature at the end", end), " °C")?;
    let steps = libm::ceil((end - start) / STEP_K).max(1.0);
    let rise = (end - start) / steps;
    let mut seconds = 0.0;
    // Exact: at most a few thousand steps.
    for at in 0..steps as u32 {
        let low = start + rise * f64::from(at);
        let taken = enthalpy(&outage.food, low + rise) - enthalpy(&outage.food, low);
        seconds += taken * outage.load.as_kilograms() / (leak * (room - low - rise / 2.0));
    }
    Ok(Span::seconds(seconds))
}

/// Joules in a kilogram above frozen through at absolute cold: ice that is left melts as `Tf / T`.
fn enthalpy(food: &Freezes, celsius: f64) -> f64 {
    let freezes = food.at.as_celsius();
    let latent = food.latent.as_joules_per_kilogram();
    if celsius >= freezes {
        latent + food.above.as_joules_per_kilogram_kelvin() * (celsius - freezes)
    } else {
        latent * freezes / celsius + food.below.as_joules_per_kilogram_kelvin() * (celsius - freezes)
    }
}

/// What a load of food takes for each degree while nothing of it melts.
#[must_use]
pub fn find_load_capacity(load: Mass, food: &Freezes) -> HeatCapacity {
    load * food.below
}

#[cfg(test)]
mod tests {
    use super::*;

    fn beans() -> Freezes {
        Freezes {
            at: Temp::celsius(-0.7),
            above: SpecificHeat::kilojoules_per_kilogram_kelvin(3.99),
            below: SpecificHeat::kilojoules_per_kilogram_kelvin(1.85),
            latent: SpecificEnergy::kilojoules_per_kilogram(302.0),
        }
    }

    fn bag(mm: f64) -> Package {
        Package {
            shape: FrozenShape::Slab,
            thickness: Length::millimetres(mm),
            density: Density::kilograms_per_cubic_metre(600.0),
            conducts: Conductivity::watts_per_metre_kelvin(1.2),
            film: Film::watts_per_square_metre_kelvin(8.0),
            air: Temp::celsius(-20.0),
        }
    }

    const WARM: Temp = Temp::celsius(20.0);
    const HARD: Temp = Temp::celsius(-18.0);

    #[test]
    fn thicker_bags_and_still_air_freeze_slower_and_balls_faster() {
        let of = |package: Package| find_pham_time(&package, &beans(), WARM, HARD).unwrap();
        assert!(of(bag(60.0)) > of(bag(40.0)) && of(bag(40.0)) > of(bag(20.0)));
        let fan = Package { film: Film::watts_per_square_metre_kelvin(15.0), ..bag(40.0) };
        assert!(of(fan) < of(bag(40.0)));
        let ball = Package { shape: FrozenShape::Sphere, ..bag(40.0) };
        assert!((of(bag(40.0)).ratio_to(of(ball)) - 3.0).abs() < 1e-9);
    }

    #[test]
    fn plank_alone_is_short_of_the_whole() {
        let plank = find_plank_time(&bag(40.0), beans().latent, beans().at).unwrap();
        let pham = find_pham_time(&bag(40.0), &beans(), WARM, HARD).unwrap();
        assert!((0.55..0.85).contains(&plank.ratio_to(pham)), "{plank:?} {pham:?}");
    }

    #[test]
    fn what_a_freezer_takes_is_its_power_over_the_load() {
        let night = Span::hours(10.0);
        let takes = find_freezer_takes(Power::watts(60.0), night, &beans(), WARM, HARD).unwrap();
        let load = find_freezing_load(&beans(), takes, WARM, HARD).unwrap();
        assert!((load.ratio_to(Power::watts(60.0) * night) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn an_outage_in_two_parts_is_the_whole() {
        let outage = Outage {
            load: Mass::kilograms(60.0),
            food: beans(),
            leak: HeatLoss::watts_per_kelvin(1.0),
            room: Temp::celsius(22.0),
        };
        let of =
            |from, to| find_outage_time(&outage, Temp::celsius(from), Temp::celsius(to)).unwrap().as_hours();
        assert!((of(-18.0, -5.0) + of(-5.0, -1.0) - of(-18.0, -1.0)).abs() < 0.05);
        let half = Outage { load: Mass::kilograms(30.0), ..outage };
        let halved = find_outage_time(&half, Temp::celsius(-18.0), Temp::celsius(-1.0)).unwrap();
        assert!((halved.as_hours() * 2.0 - of(-18.0, -1.0)).abs() < 1e-6);
        assert!(find_outage_time(&outage, Temp::celsius(-18.0), Temp::celsius(30.0)).is_err());
    }

    #[test]
    fn food_that_is_frozen_already_is_no_load() {
        assert!(find_freezing_load(&beans(), Mass::kilograms(1.0), Temp::celsius(-5.0), HARD).is_err());
        assert!(find_pham_time(&bag(40.0), &beans(), WARM, Temp::celsius(-25.0)).is_err());
        assert!(find_unfrozen_share(Temp::celsius(-1.0), Temp::celsius(-0.5)).is_err());
    }
}
