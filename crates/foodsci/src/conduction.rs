//! Heat, or salt, spreading into a solid: the classical series for slabs, cylinders and spheres, the finite cylinder as a
//! product of two of them, and the same cylinder in finite volumes to check it.
//!
//! A jar of thick food is a finite cylinder. What moves inside (juice, fruit in syrup) heats faster than anything here.

mod cylinder;
mod grid;
mod modes;

pub use cylinder::{FiniteCylinder, HeatingLag, find_slowest_heating};
pub use grid::{Grid, GridCylinder};
pub use modes::{Modes, Shape};

use measure::{Conductivity, Diffusivity, Film, Length, Span};

use crate::limits::{Limits, ModelError, limits};

const BIOT: Limits = limits("Biot number", "", 1e-4, f64::INFINITY, "the series of conduction");

/// How freely heat enters against how slowly it goes on inside: `h L / k`.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Biot(f64);

impl Biot {
    /// The surface takes the temperature of its surroundings at once.
    pub const INFINITE: Self = Self(f64::INFINITY);

    /// From the number.
    ///
    /// # Errors
    ///
    /// Below 0.0001, where nothing but the surface counts, or when it is no number.
    pub fn new(number: f64) -> Result<Self, ModelError> {
        BIOT.check(number).map(Self)
    }

    /// From the film outside, half the size, and the conductivity inside.
    ///
    /// # Errors
    ///
    /// As [`Biot::new`].
    pub fn of(film: Film, half_size: Length, conducts: Conductivity) -> Result<Self, ModelError> {
        Self::new(
            film.as_watts_per_square_metre_kelvin() * half_size.as_metres()
                / conducts.as_watts_per_metre_kelvin(),
        )
    }

    /// The number.
    #[must_use]
    pub const fn number(self) -> f64 {
        self.0
    }
}

/// Time counted in the time that a difference needs to spread across: `α t / L²`.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Fourier(f64);

impl Fourier {
    /// From the number.
    #[must_use]
    pub const fn new(number: f64) -> Self {
        Self(number)
    }

    /// From the diffusivity, the time and half the size.
    #[must_use]
    pub fn of(diffusivity: Diffusivity, time: Span, half_size: Length) -> Self {
        let metres = half_size.as_metres();
        Self(diffusivity.as_square_metres_per_second() * time.as_seconds() / (metres * metres))
    }

    /// The number.
    #[must_use]
    pub const fn number(self) -> f64 {
        self.0
    }
}
