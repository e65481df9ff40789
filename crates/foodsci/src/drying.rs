//! Drying: what it should weigh when it is done, how wet it is now, how long it takes about.

use measure::{Area, Diffusivity, Film, Length, Mass, MassFlow, Percent, Power, Span, SpecificEnergy, Temp};

use crate::conduction::{Biot, Fourier, Modes, Shape};
use crate::limits::kitchen::{HALF_SIZE_M, MASS_KG, POWER_W};
use crate::limits::{Limits, ModelError, limits, require_above, require_below};
use crate::root::find_root;
use crate::steam::find_heat_of_evaporation;

const WET_SHARE: Limits = limits("moisture", " %", 0.0, 99.0, "a share of the whole weight");

/// Water for each kilogram of dry matter; above 1 for anything fresh.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct DryBasis(pub f64);

impl DryBasis {
    /// From the share of water in the whole: `w / (1 - w)`.
    ///
    /// # Errors
    ///
    /// Outside 0 to 99 %.
    pub fn of_wet(moisture: Percent) -> Result<Self, ModelError> {
        let share = WET_SHARE.check(moisture.as_percent())? / 100.0;
        Ok(Self(share / (1.0 - share)))
    }

    /// The number, when it is one that food can have.
    fn check(self) -> Result<f64, ModelError> {
        const WATER: Limits = limits("moisture", " kg/kg dry", 0.0, 100.0, "food, on its dry matter");
        WATER.check(self.0)
    }

    /// As the share of water in the whole: `X / (1 + X)`.
    #[must_use]
    pub fn wet(self) -> Percent {
        Percent::fraction(self.0 / (1.0 + self.0))
    }
}

/// What a load weighs when it has dried to a moisture: `m1 (1 - w1) / (1 - w2)`, exact.
///
/// Arguments: the weight of the prepared load, its moisture and the moisture wanted, both shares of the whole weight. Limited by
/// the published moisture of the fresh food, which is right within 2 % of its weight.
///
/// # Errors
///
/// When the end is wetter than the start.
///
/// # Examples
///
/// ```
/// use foodsci::drying::find_dried_mass;
/// use measure::{Mass, Percent};
///
/// let [fresh, dried] = [94.0, 10.0].map(Percent::of_hundred);
/// let weighs = find_dried_mass(Mass::grams(1000.0), fresh, dried).unwrap();
/// assert!((weighs.as_grams() - 66.67).abs() < 0.01);
/// ```
pub fn find_dried_mass(load: Mass, moisture: Percent, wanted: Percent) -> Result<Mass, ModelError> {
    MASS_KG.check(load.as_kilograms())?;
    let before = WET_SHARE.check(moisture.as_percent())?;
    let after = WET_SHARE.check(wanted.as_percent())?;
    require_below(("moisture at the end", after), ("moisture at the start", before + 1e-9), " %")?;
    Ok(load * ((100.0 - before) / (100.0 - after)))
}

/// The moisture of a load now, from what it weighs now: `1 - m1 (1 - w1) / m`.
///
/// # Errors
///
/// When it weighs more than at the start, or less than its dry matter.
pub fn find_moisture_now(load: Mass, moisture: Percent, weighs: Mass) -> Result<Percent, ModelError> {
    MASS_KG.check(load.as_kilograms())?;
    let before = WET_SHARE.check(moisture.as_percent())? / 100.0;
    let now = MASS_KG.check(weighs.as_kilograms())?;
    let dry = load.as_kilograms() * (1.0 - before);
    require_above(("weight at the start", load.as_grams()), ("weight now", weighs.as_grams() - 1e-6), " g")?;
    require_above(("weight now", now * 1000.0), ("weight of its dry matter", dry * 1000.0), " g")?;
    Ok(Percent::fraction(1.0 - dry / now))
}

/// Time in which the surface stays wet: `t = (Ls / A) (X1 - X2) / Rc`, Rc in kg/(m² h).
///
/// # Source
///
/// C. J. Geankoplis, Transport Processes and Unit Operations, 3rd ed., 1993, equation 9.6-7.
///
/// # Errors
///
/// When the end is wetter than the start, or nothing dries.
pub fn find_wet_time(load: &DryingLoad, from: DryBasis, to: DryBasis) -> Result<Span, ModelError> {
    let (per_area, rate) = load.check()?;
    from.check()?;
    to.check()?;
    require_above(("moisture at the start", from.0), ("moisture at the end", to.0 - 1e-12), " kg/kg")?;
    Ok(Span::hours(per_area * (from.0 - to.0) / rate))
}

/// Time from the critical moisture on, in which the rate falls in a straight line to nothing at rest:
/// `t = (Ls / (A Rc)) (Xc - Xe) ln((X1 - Xe) / (X2 - Xe))`.
///
/// # Source
///
/// C. J. Geankoplis, Transport Processes and Unit Operations, 3rd ed., 1993, equation 9.7-8.
///
/// # Errors
///
/// When the moistures do not fall from the critical one towards rest.
pub fn find_falling_time(
    load: &DryingLoad,
    critical: DryBasis,
    (from, to): (DryBasis, DryBasis),
    rest: DryBasis,
) -> Result<Span, ModelError> {
    let (per_area, rate) = load.check()?;
    for moisture in [critical, from, to, rest] {
        moisture.check()?;
    }
    require_above(("critical moisture", critical.0), ("moisture at the start", from.0 - 1e-12), " kg/kg")?;
    require_above(("moisture at the start", from.0), ("moisture at the end", to.0 - 1e-12), " kg/kg")?;
    require_above(("moisture at the end", to.0), ("moisture at rest", rest.0), " kg/kg")?;
    let ln = libm::log((from.0 - rest.0) / (to.0 - rest.0));
    Ok(Span::hours(per_area / rate * (critical.0 - rest.0) * ln))
}

/// Dry matter spread on a surface that loses water at a rate while it is wet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DryingLoad {
    /// The dry matter.
    pub dry: Mass,
    /// The surface it is spread on.
    pub surface: Area,
    /// What the wet surface loses from each square metre.
    pub wet_rate: WetRate,
}

/// Kilograms of water from a square metre in an hour.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct WetRate(pub f64);

impl DryingLoad {
    /// Dry matter on a square metre, and the rate.
    fn check(&self) -> Result<(f64, f64), ModelError> {
        const RATE: Limits = limits("rate of drying", " kg/(m2 h)", 1e-4, 100.0, "dryers");
        const SURFACE: Limits = limits("surface", " m2", 1e-4, 1e4, "dryers");
        let surface = SURFACE.check(self.surface.as_square_metres())?;
        Ok((MASS_KG.check(self.dry.as_kilograms())? / surface, RATE.check(self.wet_rate.0)?))
    }
}

/// What a wet surface loses in moving air: `h (T - Tw) / λ`.
///
/// # Source
///
/// C. J. Geankoplis, Transport Processes and Unit Operations, 3rd ed., 1993, equation 9.6-14.
///
/// # Errors
///
/// When the air is not warmer than its wet bulb.
pub fn find_wet_rate(
    film: Film,
    air: Temp,
    wet_bulb: Temp,
    latent: SpecificEnergy,
) -> Result<WetRate, ModelError> {
    const FILM: Limits = limits("film of the air", " W/(m2 K)", 1.0, 500.0, "air over trays");
    const LATENT: Limits = limits("heat of evaporation", " J/kg", 1.9e6, 2.6e6, "water below 200 °C");
    let film = FILM.check(film.as_watts_per_square_metre_kelvin())?;
    let latent = LATENT.check(latent.as_joules_per_kilogram())?;
    require_above(("temperature of the air", air.as_celsius()), ("wet bulb", wet_bulb.as_celsius()), " °C")?;
    Ok(WetRate(film * (air - wet_bulb).as_kelvins() / latent * 3600.0))
}

/// The film of air blowing along trays: `h = 0.0204 G^0.8`, G the mass flow in kg/(m² h).
///
/// # Source
///
/// C. J. Geankoplis, Transport Processes and Unit Operations, 3rd ed., 1993, equation 9.6-9.
///
/// # Errors
///
/// Outside 2450 to 29,300 kg/(m² h), the range of the equation.
pub fn find_tray_film(air_flow: AirFlow) -> Result<Film, ModelError> {
    const FLOW: Limits =
        limits("flow of the air", " kg/(m2 h)", 2450.0, 29_300.0, "Geankoplis, equation 9.6-9");
    Ok(Film::watts_per_square_metre_kelvin(0.0204 * libm::pow(FLOW.check(air_flow.0)?, 0.8)))
}

/// Kilograms of air through a square metre in an hour.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct AirFlow(pub f64);

/// How long a slice dries when water must come out through it: the series of a slab that dries from both faces.
///
/// `(X - Xe) / (X1 - Xe) = Σ ...` on the average of the slice. Arguments: effective diffusivity in m²/s, whole thickness in m,
/// moistures on dry basis. Published diffusivities of one food spread by 3 to 10, so that only a range means anything.
///
/// # Source
///
/// C. J. Geankoplis, Transport Processes and Unit Operations, 3rd ed., 1993, section 9.9.
///
/// # Errors
///
/// When the moistures do not fall towards rest, or the slice is none of a dryer.
pub fn find_slice_time(
    diffusivity: Diffusivity,
    thickness: Length,
    (from, to): (DryBasis, DryBasis),
    rest: DryBasis,
) -> Result<Span, ModelError> {
    const D: Limits = limits("diffusivity of water", " m2/s", 1e-12, 1e-7, "published drying studies");
    let spread = D.check(diffusivity.as_square_metres_per_second())?;
    let half = HALF_SIZE_M.check(thickness.as_metres() / 2.0)?;
    for moisture in [from, to, rest] {
        moisture.check()?;
    }
    require_above(("moisture at the start", from.0), ("moisture at the end", to.0), " kg/kg")?;
    require_above(("moisture at the end", to.0), ("moisture at rest", rest.0), " kg/kg")?;
    let left = (to.0 - rest.0) / (from.0 - rest.0);
    let modes = Modes::find(Shape::Slab, Biot::INFINITE, 200)?;
    let fourier = find_root(0.0, 20.0, |number| modes.average(Fourier::new(number)) - left).ok_or(
        ModelError::Never {
            what: "such a drying",
            because: "the end lies too near to the start or to rest",
            hint: "ask for a moisture between the two",
        },
    )?;
    Ok(Span::seconds(fourier * half * half / spread))
}

/// The most water a dryer can drive off: its heater over the heat that water takes, a third to a half of it in practice.
///
/// # Source
///
/// Heat balance with [`find_heat_of_evaporation`]; 1.45 kg/h for each kW with the air warmed along.
///
/// # Errors
///
/// When the heater is none of a household.
pub fn find_dryer_bound(heater: Power) -> Result<MassFlow, ModelError> {
    let watts = POWER_W.check(heater.as_watts())?;
    require_above(("power of the heater", watts), ("nothing", 0.0), " W")?;
    let latent = find_heat_of_evaporation(Temp::celsius(30.0))?.as_joules_per_kilogram();
    Ok(MassFlow::kilograms_per_hour(watts * 3600.0 / latent))
}

/// The share of a dryer's heat that drives off water in practice: a planning range of ours.
pub const DRYER_SHARE: (Percent, Percent) = (Percent::of_hundred(30.0), Percent::of_hundred(50.0));

/// Water to drive off for a drying.
///
/// # Errors
///
/// As [`find_dried_mass`].
pub fn find_water_to_dry(load: Mass, moisture: Percent, wanted: Percent) -> Result<Mass, ModelError> {
    Ok(load - find_dried_mass(load, moisture, wanted)?)
}

/// Air that a continuous dryer needs: the balance of heat over solid and air in counterflow.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CounterflowDryer {
    /// Dry matter an hour.
    pub dry: MassFlow,
    /// Its moisture coming in and going out.
    pub moisture: (DryBasis, DryBasis),
    /// The temperature of the solid coming in and going out.
    pub solid: (Temp, Temp),
    /// The temperature of the air coming in and going out.
    pub air: (Temp, Temp),
    /// The water in the air coming in.
    pub humidity_in: crate::air::HumidityRatio,
    /// What the dry matter takes for each degree.
    pub specific: measure::SpecificHeat,
}

impl CounterflowDryer {
    /// The dry air it needs, no heat being lost.
    ///
    /// Water: `G H2 + L X1 = G H1 + L X2`; heat: `G H'G2 + L H'S1 = G H'G1 + L H'S2`, with `H'G = (1.005 + 1.88 H) t + 2501 H` and
    /// `H'S = (c + 4.187 X) t`.
    ///
    /// # Source
    ///
    /// C. J. Geankoplis, Transport Processes and Unit Operations, 3rd ed., 1993, section 9.10.
    ///
    /// # Errors
    ///
    /// When the air leaves hotter than it comes, or the balance has no answer.
    pub fn find_air(&self) -> Result<MassFlow, ModelError> {
        let (air_in, air_out) = (self.air.0.as_celsius(), self.air.1.as_celsius());
        require_above(("temperature of the air coming in", air_in), ("going out", air_out), " °C")?;
        let (wet, dry) = (self.moisture.0.0, self.moisture.1.0);
        require_above(("moisture coming in", wet), ("going out", dry), " kg/kg")?;
        let flow = self.dry.as_kilograms_per_hour();
        let specific = self.specific.as_kilojoules_per_kilogram_kelvin();
        let solid = |moisture: f64, temp: Temp| (specific + 4.187 * moisture) * temp.as_celsius();
        let humidity = self.humidity_in.0;
        let air_heat = |humidity: f64, celsius: f64| (1.005 + 1.88 * humidity) * celsius + 2501.0 * humidity;
        // The water taken up leaves with the outgoing air: its enthalpy is linear in it.
        let taken = flow * (wet - dry);
        let per_water = 1.88 * air_out + 2501.0;
        let gain = flow * (solid(dry, self.solid.1) - solid(wet, self.solid.0)) + taken * per_water;
        let gives = air_heat(humidity, air_in) - air_heat(humidity, air_out);
        require_above(("heat that the air gives", gives), ("nothing", 0.0), " kJ/kg")?;
        Ok(MassFlow::kilograms_per_hour(gain / gives))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn weight_and_moisture_undo_each_other() {
        let (load, fresh) = (Mass::grams(1500.0), Percent::of_hundred(92.0));
        for wanted in [5.0, 12.0, 20.0, 60.0] {
            let wanted = Percent::of_hundred(wanted);
            let weighs = find_dried_mass(load, fresh, wanted).unwrap();
            let back = find_moisture_now(load, fresh, weighs).unwrap();
            assert!((back - wanted).as_percent().abs() < 1e-9);
            let off = find_water_to_dry(load, fresh, wanted).unwrap();
            assert!((off + weighs - load).as_grams().abs() < 1e-9);
        }
        assert!(find_dried_mass(load, Percent::of_hundred(10.0), Percent::of_hundred(20.0)).is_err());
        assert!(find_moisture_now(load, fresh, Mass::grams(100.0)).is_err());
        assert!(find_moisture_now(load, fresh, Mass::grams(1600.0)).is_err());
    }

    #[test]
    fn wet_and_dry_basis_undo_each_other() {
        for percent in [0.0, 10.0, 50.0, 94.0] {
            let wet = Percent::of_hundred(percent);
            assert!((DryBasis::of_wet(wet).unwrap().wet() - wet).as_percent().abs() < 1e-12);
        }
        assert!(DryBasis::of_wet(Percent::of_hundred(100.0)).is_err());
    }

    #[test]
    fn thicker_slices_take_longer_by_the_square_and_drier_ends_longer() {
        let of = |mm, to| {
            find_slice_time(
                Diffusivity::square_metres_per_second(5e-10),
                Length::millimetres(mm),
                (DryBasis(10.0), DryBasis(to)),
                DryBasis(0.05),
            )
            .unwrap()
        };
        assert!((of(8.0, 0.2).ratio_to(of(4.0, 0.2)) - 4.0).abs() < 1e-9);
        assert!(of(4.0, 0.1) > of(4.0, 0.2));
    }

    #[test]
    fn a_small_dryer_cannot_dry_a_bushel_by_morning() {
        let most = find_dryer_bound(Power::watts(500.0)).unwrap();
        assert!((most.as_kilograms_per_hour() - 0.74).abs() < 0.01);
        assert!(find_dryer_bound(Power::watts(f64::NAN)).is_err());
    }
}
