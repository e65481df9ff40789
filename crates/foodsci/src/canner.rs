//! A canner or kettle on a burner: what it takes to heat, how long until it boils, what a wide load does to a small flame.

use measure::{Heat, HeatCapacity, HeatLoss, Mass, Percent, Power, Span, SpecificHeat, Temp};

use crate::limits::kitchen::{MASS_KG, POWER_W, TEMP_C};
use crate::limits::{Limits, ModelError, limits, require_above};

const PASSED_ON: Limits =
    limits("share of the burner's heat that arrives", "", 0.05, 1.0, "household burners");
const LOSS_W_K: Limits = limits("loss to the room", " W/K", 0.0, 60.0, "household pots");

/// The specific heat of water at 25 °C (IAPWS-95).
pub const WATER: SpecificHeat = SpecificHeat::joules_per_kilogram_kelvin(4181.0);
/// The specific heat of jar glass: the middle of 720 to 800 J/(kg K) for soda-lime glass (a materials data page).
pub const GLASS: SpecificHeat = SpecificHeat::joules_per_kilogram_kelvin(760.0);
/// The specific heat of an enamelled steel canner (J. P. Holman, Heat Transfer, example 4.1).
pub const ENAMELLED_STEEL: SpecificHeat = SpecificHeat::joules_per_kilogram_kelvin(460.0);
/// The specific heat of aluminium (J. P. Holman, Heat Transfer, example 4.10).
pub const ALUMINIUM: SpecificHeat = SpecificHeat::joules_per_kilogram_kelvin(896.0);

/// One thing that is heated along.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Heated {
    /// How much of it.
    pub mass: Mass,
    /// What it takes for each degree.
    pub specific: SpecificHeat,
}

/// What everything in the canner takes for each degree.
///
/// # Errors
///
/// When a mass is none a kitchen holds, or a specific heat none of matter.
pub fn add_up_capacity(things: &[Heated]) -> Result<HeatCapacity, ModelError> {
    const SPECIFIC: Limits = limits("specific heat", " J/(kg K)", 100.0, 5000.0, "foods, water and metals");
    let mut whole = HeatCapacity::ZERO;
    for thing in things {
        MASS_KG.check(thing.mass.as_kilograms())?;
        SPECIFIC.check(thing.specific.as_joules_per_kilogram_kelvin())?;
        whole = whole + thing.mass * thing.specific;
    }
    require_above(("heat capacity of it all", whole.as_joules_per_kelvin()), ("nothing", 0.0), " J/K")?;
    Ok(whole)
}

/// Water from its boiling density on; the specific heat of a food from its solids.
///
/// `c = 4.19 - 2.30 s - 0.628 s³` kJ/(kg K), s the share of solids. Argument: the share of water in percent.
///
/// # Source
///
/// ASHRAE Handbook, Refrigeration, Thermal properties of foods, equation for unfrozen food; within 0.12 of its table 3.
///
/// # Errors
///
/// Outside 0 to 100 %.
pub fn find_specific_heat(water: Percent) -> Result<SpecificHeat, ModelError> {
    const WATER_SHARE: Limits = limits("share of water", "", 0.0, 1.0, "a share of a whole");
    let solids = 1.0 - WATER_SHARE.check(water.as_fraction())?;
    Ok(SpecificHeat::kilojoules_per_kilogram_kelvin(4.19 - 2.30 * solids - 0.628 * solids * solids * solids))
}

/// A burner under a pot in a room.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Burner {
    /// What it is rated at.
    pub power: Power,
    /// The share that arrives in the pot.
    pub passed_on: Percent,
    /// What the pot loses for each degree above the room.
    pub loss: HeatLoss,
    /// The room.
    pub room: Temp,
}

impl Burner {
    /// The heat that arrives in the pot.
    #[must_use]
    pub fn arrives(&self) -> Power {
        self.power * self.passed_on.as_fraction()
    }

    /// What is left of it in a pot at a temperature.
    ///
    /// # Errors
    ///
    /// When power, share, loss or temperature are none of a kitchen.
    pub fn left_at(&self, pot: Temp) -> Result<Power, ModelError> {
        POWER_W.check(self.power.as_watts())?;
        PASSED_ON.check(self.passed_on.as_fraction())?;
        LOSS_W_K.check(self.loss.as_watts_per_kelvin())?;
        let above = TEMP_C.check(pot.as_celsius())? - TEMP_C.check(self.room.as_celsius())?;
        Ok(self.arrives() - Power::watts(self.loss.as_watts_per_kelvin() * above))
    }
}

/// How long until the whole load comes from one temperature to another.
///
/// `t = C / (hA) ln((ηP - hA (T1 - Ta)) / (ηP - hA (T2 - Ta)))`, and `C (T2 - T1) / ηP` where nothing is lost. Arguments: heat
/// capacity in J/K, burner, temperatures. Within 10 % once the share that arrives was learned from one timed boil of known
/// water, within 35 % before.
///
/// # Source
///
/// Heat balance of one lump; times from bare burners in IAFP 2013, paper 4056, come-up times of canners (abstract).
///
/// # Errors
///
/// When the burner cannot get there: its losses at the end are all it gives.
pub fn find_heating_time(
    capacity: HeatCapacity,
    burner: &Burner,
    from: Temp,
    to: Temp,
) -> Result<Span, ModelError> {
    require_above(("temperature at the end", to.as_celsius()), ("at the start", from.as_celsius()), " °C")?;
    let (early, late) = (burner.left_at(from)?.as_watts(), burner.left_at(to)?.as_watts());
    if late <= 0.0 {
        return Err(ModelError::Never {
            what: "boiling",
            because: "the pot loses all that this burner gives before it gets there",
            hint: "put the lid on, take a stronger burner, or heat less at once",
        });
    }
    let joules_per_kelvin = capacity.as_joules_per_kelvin();
    let loss = burner.loss.as_watts_per_kelvin();
    let seconds = if loss * (to - from).as_kelvins() < 1e-6 * early {
        joules_per_kelvin * (to - from).as_kelvins() / early
    } else {
        joules_per_kelvin / loss * libm::log(early / late)
    };
    Ok(Span::seconds(seconds))
}

/// The temperature after heating for a time: the inverse of [`find_heating_time`].
///
/// # Errors
///
/// When the burner or a temperature is none of a kitchen.
pub fn find_heated_temp(
    capacity: HeatCapacity,
    burner: &Burner,
    from: Temp,
    time: Span,
) -> Result<Temp, ModelError> {
    let left = burner.left_at(from)?.as_watts();
    let loss = burner.loss.as_watts_per_kelvin();
    let per_second = loss / capacity.as_joules_per_kelvin();
    let x = per_second * time.as_seconds();
    // (1 - e^-x) / x, without losing digits where nothing is lost.
    let share = if x < 1e-9 { 1.0 } else { -libm::expm1(-x) / x };
    let rise = left * time.as_seconds() * share / capacity.as_joules_per_kelvin();
    Ok(from + measure::TempDifference::kelvins(rise))
}

/// The share of a burner's heat that arrives, learned from one timed heating of known water.
///
/// # Errors
///
/// When the water would have had more heat than the burner gave.
pub fn learn_share(
    capacity: HeatCapacity,
    (power, loss, room): (Power, HeatLoss, Temp),
    from: Temp,
    to: Temp,
    time: Span,
) -> Result<Percent, ModelError> {
    POWER_W.check(power.as_watts())?;
    require_above(("time", time.as_seconds()), ("nothing", 0.0), " s")?;
    require_above(("power", power.as_watts()), ("nothing", 0.0), " W")?;
    let share_for = |percent: f64| {
        let burner = Burner { power, passed_on: Percent::fraction(percent), loss, room };
        find_heated_temp(capacity, &burner, from, time).map_or(f64::NAN, |temp| (temp - to).as_kelvins())
    };
    match crate::root::find_root(PASSED_ON.low, PASSED_ON.high, share_for) {
        Some(share) => Ok(Percent::fraction(share)),
        None => Err(ModelError::Never {
            what: "such a heating",
            because: "this burner at full power gives less heat in that time, or many times more",
            hint: "check the litres, the time and the rating of the burner",
        }),
    }
}

/// The heat that a load takes between two temperatures.
#[must_use]
pub fn find_heat(capacity: HeatCapacity, from: Temp, to: Temp) -> Heat {
    capacity * (to - from)
}

/// The most that a burner under a pressure canner may give (Kansas State University, Canning on portable burners, June
/// 2024: more can damage the canner).
pub const MOST_UNDER_PRESSURE_CANNER: Power = Power::btu_per_hour(12_000.0);

#[cfg(test)]
mod tests {
    use super::*;

    fn load() -> HeatCapacity {
        add_up_capacity(&[
            Heated { mass: Mass::kilograms(12.0), specific: WATER },
            Heated {
                mass: Mass::kilograms(6.5),
                specific: find_specific_heat(Percent::of_hundred(90.0)).unwrap(),
            },
            Heated { mass: Mass::kilograms(2.9), specific: GLASS },
            Heated { mass: Mass::kilograms(2.5), specific: ENAMELLED_STEEL },
        ])
        .unwrap()
    }

    fn burner(kilowatts: f64, loss: f64) -> Burner {
        Burner {
            power: Power::kilowatts(kilowatts),
            passed_on: Percent::of_hundred(74.0),
            loss: HeatLoss::watts_per_kelvin(loss),
            room: Temp::celsius(22.0),
        }
    }

    const FROM: Temp = Temp::celsius(60.0);
    const TO: Temp = Temp::celsius(100.0);

    #[test]
    fn time_temperature_and_share_undo_each_other() {
        for loss in [0.0, 5.0, 15.0] {
            let burner = burner(2.4, loss);
            let time = find_heating_time(load(), &burner, FROM, TO).unwrap();
            let back = find_heated_temp(load(), &burner, FROM, time).unwrap();
            assert!((back - TO).as_kelvins().abs() < 1e-6);
            let share =
                learn_share(load(), (burner.power, burner.loss, burner.room), FROM, TO, time).unwrap();
            assert!((share - burner.passed_on).as_percent().abs() < 1e-6);
        }
    }

    #[test]
    fn heat_in_is_heat_held_when_nothing_is_lost() {
        let burner = burner(2.0, 0.0);
        let time = find_heating_time(load(), &burner, FROM, TO).unwrap();
        let given = burner.arrives() * time;
        assert!((given.ratio_to(find_heat(load(), FROM, TO)) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn more_power_is_faster_and_more_load_slower() {
        let of = |kilowatts, load: HeatCapacity| {
            find_heating_time(load, &burner(kilowatts, 6.0), FROM, TO).unwrap()
        };
        assert!(of(2.4, load()) < of(1.8, load()));
        assert!(of(2.4, load() * 1.5) > of(2.4, load()));
    }

    #[test]
    fn a_small_flame_under_an_open_canner_never_boils_it() {
        let error = find_heating_time(load(), &burner(1.0, 20.0), FROM, TO).unwrap_err();
        assert!(matches!(error, ModelError::Never { .. }), "{error}");
        assert!(error.to_string().contains("put the lid on"));
        assert!(find_heating_time(load(), &burner(f64::NAN, 6.0), FROM, TO).is_err());
        assert!(find_heating_time(load(), &burner(2.0, 6.0), TO, FROM).is_err());
    }
}
