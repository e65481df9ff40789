//! Amounts, units and kitchen fractions: what they are, how people write them, and roundings whose
//! direction stands in their name.
//!
//! Knows nothing of food. Every physical quantity that crosses a public function of the workspace is one of
//! the types here, made and read by unit, so that a pound can never be taken for a pint.
//!
//! - [`Mass`], [`Volume`], [`Length`] and their kin are what a thing *is*; [`Measured`] and [`Weighed`] are
//!   how a cook says it, in an exact [`Fraction`] of a unit.
//! - The `read_` functions take what a person wrote; the `write_` functions print what can be read back.
//! - [`round_up_to`] and its sisters round to a step; [`kitchen_measures_around`] and
//!   [`scale_steps_around`] give the two nearest amounts that can be measured.

mod fraction;
mod heat;
mod matter;
mod quantity;
mod read;
mod round;
mod steps;
mod unit;
mod write;

pub use fraction::Fraction;
pub use heat::{
    Conductivity, Diffusivity, Film, Heat, HeatCapacity, HeatLoss, Power, SpecificEnergy, SpecificHeat,
    TempDifference,
};
pub use matter::{AirPressure, Area, Density, MassFlow, Span};
pub use quantity::{Altitude, Length, Mass, Minutes, Percent, Pressure, Temp, Volume};
pub use read::{
    Amount, Expected, ReadError, read_air_pressure, read_altitude, read_amount, read_clock, read_count,
    read_fraction, read_length, read_mass, read_minutes, read_percent, read_power, read_pressure, read_temp,
    read_volume,
};
pub use round::{Stepwise, round_down_to, round_nearest_to, round_up_to};
pub use steps::{KitchenSteps, kitchen_measures_around, scale_steps_around};
pub use unit::{MassUnit, Measured, VolumeUnit, Weighed};
pub use write::{
    write_altitude, write_clock, write_length_in, write_length_mm, write_mass_metric, write_mass_us,
    write_minutes, write_percent, write_pressure, write_temp_celsius, write_temp_fahrenheit,
    write_volume_metric, write_volume_us,
};
