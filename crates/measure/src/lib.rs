//! Amounts, units and kitchen fractions: what they are, how people write them, and roundings whose
//! direction stands in their name.
//!
//! Knows nothing of food. Every physical quantity that crosses a public function of the workspace is one of
//! the types here, made and read by unit, so that a pound can never be taken for a pint.

mod fraction;
mod quantity;
mod read;

pub use fraction::Fraction;
pub use quantity::{Altitude, Length, Mass, Minutes, Percent, Pressure, Temp, Volume};
pub use read::{
    Amount, Expected, ReadError, read_altitude, read_amount, read_clock, read_count, read_fraction,
    read_length, read_mass, read_minutes, read_percent, read_pressure, read_temp, read_volume,
};
