//! Reading what people write: amounts, heights, temperatures, times.
//!
//! One function per kind of quantity, all with the same habits. Numbers may be decimals with point or comma,
//! fractions, mixed numbers or words (`number.rs` says what a comma means); units may be abbreviated, in any
//! case, with or without a space before them; several parts add up (`2 lb 3 oz`). Nothing is guessed: a
//! number without a unit, a comma that can be read two ways, or anything left over behind the amount is an
//! error that names the text, the column, and what could be written instead. No text makes a reader panic.

mod air;
mod amount;
mod count;
mod cursor;
mod error;
mod length;
mod mass;
mod number;
mod percent;
mod power;
mod pressure;
mod sum;
mod temp;
mod time;
mod volume;

pub use air::read_air_pressure;
pub use amount::{Amount, read_amount};
pub use count::read_count;
pub use error::{Expected, ReadError};
pub use length::{read_altitude, read_length};
pub use mass::read_mass;
pub use number::read_fraction;
pub use percent::read_percent;
pub use power::read_power;
pub use pressure::read_pressure;
pub use temp::read_temp;
pub use time::{read_clock, read_minutes};
pub use volume::read_volume;
