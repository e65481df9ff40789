//! The modes in which a difference dies away in a slab, a cylinder or a sphere.

use std::f64::consts::PI;

use super::{Biot, Fourier};
use crate::limits::{Limits, ModelError, limits};
use crate::root::find_root;

/// A body that is the same in every direction but one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shape {
    /// Between two faces; its half-thickness counts.
    Slab,
    /// Without ends; its radius counts.
    Cylinder,
    /// Its radius counts.
    Sphere,
}

const TERMS: Limits = limits("number of terms", "", 1.0, 1000.0, "the series of conduction");

/// The roots of a shape at a Biot number, with the weight of each mode at the centre and on the average.
#[derive(Debug, Clone, PartialEq)]
pub struct Modes {
    shape: Shape,
    roots: Vec<f64>,
    centre: Vec<f64>,
    average: Vec<f64>,
}

impl Modes {
    /// Finds the first `terms` modes.
    ///
    /// Slab `λ tan λ = Bi`, cylinder `λ J1(λ) = Bi J0(λ)`, sphere `1 - λ cot λ = Bi`; each root lies alone between two
    /// known numbers and is bisected there.
    ///
    /// # Source
    ///
    /// J. Crank, The Mathematics of Diffusion, 1975, chapters 4 to 6 (from memory); values checked in the tests.
    ///
    /// # Errors
    ///
    /// When no terms, or more than a thousand, are asked for.
    ///
    /// # Examples
    ///
    /// ```
    /// use foodsci::conduction::{Biot, Fourier, Modes, Shape};
    ///
    /// let slab = Modes::find(Shape::Slab, Biot::new(2.0).unwrap(), 50).unwrap();
    /// assert!((slab.centre(Fourier::new(0.5)) - 0.659_618_4).abs() < 1e-6);
    /// ```
    pub fn find(shape: Shape, biot: Biot, terms: usize) -> Result<Self, ModelError> {
        // Exact: a count of terms below a thousand.
        TERMS.check(terms as f64)?;
        let roots: Vec<f64> = (0..terms).map(|n| find_nth_root(shape, biot.number(), n)).collect();
        let centre: Vec<f64> = roots.iter().map(|root| weigh_centre(shape, *root)).collect();
        let average =
            roots.iter().zip(&centre).map(|(root, weight)| weight * average_of(shape, *root)).collect();
        Ok(Self { shape, roots, centre, average })
    }

    /// The roots λ.
    #[must_use]
    pub fn roots(&self) -> &[f64] {
        &self.roots
    }

    /// The weight of each mode at the centre.
    #[must_use]
    pub fn centre_weights(&self) -> &[f64] {
        &self.centre
    }

    /// The share of the first difference that is left at the centre.
    #[must_use]
    pub fn centre(&self, fourier: Fourier) -> f64 {
        sum(&self.roots, &self.centre, fourier)
    }

    /// The share of the first difference that is left on the average.
    #[must_use]
    pub fn average(&self, fourier: Fourier) -> f64 {
        sum(&self.roots, &self.average, fourier)
    }

    /// The share of the first difference that is left at a place: 0 is the centre, 1 the surface.
    #[must_use]
    pub fn at(&self, fourier: Fourier, place: f64) -> f64 {
        self.roots
            .iter()
            .zip(&self.centre)
            .map(|(root, weight)| {
                weight * profile(self.shape, *root, place) * libm::exp(-root * root * fourier.number())
            })
            .sum()
    }
}

fn sum(roots: &[f64], weights: &[f64], fourier: Fourier) -> f64 {
    // From the last to the first, so that the small terms are added before the large ones.
    roots
        .iter()
        .zip(weights)
        .rev()
        .map(|(root, weight)| weight * libm::exp(-root * root * fourier.number()))
        .sum()
}

/// How a mode runs from the centre outward; 1 at the centre.
pub(super) fn profile(shape: Shape, root: f64, place: f64) -> f64 {
    let x = root * place;
    match shape {
        Shape::Slab => libm::cos(x),
        Shape::Cylinder => libm::j0(x),
        Shape::Sphere if x == 0.0 => 1.0,
        Shape::Sphere => libm::sin(x) / x,
    }
}

fn find_nth_root(shape: Shape, biot: f64, n: usize) -> f64 {
    // Exact: a count of terms below a thousand.
    let whole = n as f64;
    let (low, high) = match shape {
        Shape::Slab => (whole * PI, (whole + 0.5) * PI),
        Shape::Cylinder => (zero_of_j1(n), zero_of_j0(n + 1)),
        Shape::Sphere => (whole * PI, (whole + 1.0) * PI),
    };
    if biot.is_infinite() {
        return high;
    }
    // A hair above zero, where every function of the first bracket still has its sign.
    let low = if low == 0.0 { 1e-9 } else { low };
    let function = |x: f64| match shape {
        Shape::Slab => x * libm::sin(x) - biot * libm::cos(x),
        Shape::Cylinder => x * libm::j1(x) - biot * libm::j0(x),
        Shape::Sphere => x * libm::cos(x) + (biot - 1.0) * libm::sin(x),
    };
    find_root(low, high, function).expect("the function has opposite signs at the ends of its bracket")
}

/// The first zeros of J0 and J1, by SciPy 1.17.1; a jar needs no more, and finding them anew was half the work of a history.
const ZEROS_OF_J0: [f64; 12] = [
    2.404_825_557_695_772_4,
    5.520_078_110_286_311,
    8.653_727_912_911_013,
    11.791_534_439_014_281,
    14.930_917_708_487_787,
    18.071_063_967_910_924,
    21.211_636_629_879_26,
    24.352_471_530_749_302,
    27.493_479_132_040_253,
    30.634_606_468_431_976,
    33.775_820_213_573_57,
    36.917_098_353_664_045,
];
const ZEROS_OF_J1: [f64; 12] = [
    3.831_705_970_207_512_5,
    7.015_586_669_815_619,
    10.173_468_135_062_722,
    13.323_691_936_314_223,
    16.470_630_050_877_634,
    19.615_858_510_468_243,
    22.760_084_380_592_772,
    25.903_672_087_618_382,
    29.046_828_534_916_855,
    32.189_679_910_974_405,
    35.332_307_550_083_86,
    38.474_766_234_771_614,
];

/// The nth zero of J0, n from 1; it lies just above (n - 1/4) π.
fn zero_of_j0(n: usize) -> f64 {
    if let Some(zero) = ZEROS_OF_J0.get(n - 1) {
        return *zero;
    }
    // Exact: a count of terms below a thousand.
    let near = (n as f64 - 0.25) * PI;
    find_root(near, near + 0.1, libm::j0).expect("McMahon's expansion brackets the zero")
}

/// The nth zero of J1, counted from 0 at the origin; it lies just below (n + 1/4) π.
fn zero_of_j1(n: usize) -> f64 {
    if n == 0 {
        return 0.0;
    }
    if let Some(zero) = ZEROS_OF_J1.get(n - 1) {
        return *zero;
    }
    // Exact: a count of terms below a thousand.
    let near = (n as f64 + 0.25) * PI;
    find_root(near - 0.11, near, libm::j1).expect("McMahon's expansion brackets the zero")
}

/// The weight of a mode at the centre of a body that starts at one temperature.
fn weigh_centre(shape: Shape, root: f64) -> f64 {
    match shape {
        Shape::Slab => 4.0 * libm::sin(root) / (2.0 * root + libm::sin(2.0 * root)),
        Shape::Cylinder => {
            let (j0, j1) = (libm::j0(root), libm::j1(root));
            2.0 / root * j1 / (j0 * j0 + j1 * j1)
        }
        Shape::Sphere => {
            4.0 * (libm::sin(root) - root * libm::cos(root)) / (2.0 * root - libm::sin(2.0 * root))
        }
    }
}

/// The average of a mode over the body, its centre being 1.
fn average_of(shape: Shape, root: f64) -> f64 {
    match shape {
        Shape::Slab => libm::sin(root) / root,
        Shape::Cylinder => 2.0 * libm::j1(root) / root,
        Shape::Sphere => 3.0 * (libm::sin(root) - root * libm::cos(root)) / (root * root * root),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SHAPES: [Shape; 3] = [Shape::Slab, Shape::Cylinder, Shape::Sphere];

    #[test]
    fn every_root_solves_its_equation_and_they_rise() {
        for shape in SHAPES {
            for biot in [0.01, 0.5, 1.0, 7.0, 300.0] {
                let modes = Modes::find(shape, Biot::new(biot).unwrap(), 100).unwrap();
                assert!(modes.roots().windows(2).all(|pair| pair[1] > pair[0]), "{shape:?} {biot}");
                for x in modes.roots() {
                    let solved = match shape {
                        Shape::Slab => x * libm::tan(*x) / biot,
                        Shape::Cylinder => x * libm::j1(*x) / libm::j0(*x) / biot,
                        Shape::Sphere => (1.0 - x / libm::tan(*x)) / biot,
                    };
                    assert!((solved - 1.0).abs() < 1e-6, "{shape:?} {biot} {x}: {solved}");
                }
            }
        }
    }

    #[test]
    fn the_tabled_zeros_are_zeros_and_the_next_ones_go_on_from_them() {
        for n in 1..=30 {
            assert!(libm::j0(zero_of_j0(n)).abs() < 1e-14, "{n}");
            assert!(libm::j1(zero_of_j1(n)).abs() < 1e-14, "{n}");
            assert!(zero_of_j1(n) > zero_of_j0(n) && zero_of_j0(n + 1) > zero_of_j1(n));
        }
    }

    #[test]
    fn at_the_start_the_whole_difference_is_there() {
        for shape in SHAPES {
            let modes = Modes::find(shape, Biot::new(5.0).unwrap(), 500).unwrap();
            assert!((modes.average(Fourier::new(1e-6)) - 1.0).abs() < 0.01, "{shape:?}");
            assert!((modes.centre(Fourier::new(1e-3)) - 1.0).abs() < 1e-6, "{shape:?}");
        }
    }

    #[test]
    fn the_difference_only_shrinks_and_a_freer_surface_shrinks_it_faster() {
        for shape in SHAPES {
            let mut last = f64::INFINITY;
            for biot in [0.1, 1.0, 10.0, 100.0, f64::INFINITY] {
                let modes = Modes::find(shape, Biot(biot), 60).unwrap();
                let series: Vec<f64> =
                    (1..60).map(|at| modes.centre(Fourier::new(f64::from(at) * 0.05))).collect();
                assert!(series.windows(2).all(|pair| pair[1] < pair[0]), "{shape:?} {biot}");
                assert!(series[20] < last);
                last = series[20];
            }
        }
    }

    #[test]
    fn a_thin_film_makes_the_body_one_lump() {
        // Y = exp(-Bi Fo c), with c the ratio of surface to volume: 1, 2, 3.
        for (shape, ratio) in SHAPES.into_iter().zip([1.0, 2.0, 3.0]) {
            let modes = Modes::find(shape, Biot::new(0.001).unwrap(), 20).unwrap();
            let lump = libm::exp(-0.001 * 300.0 * ratio);
            assert!((modes.centre(Fourier::new(300.0)) - lump).abs() < 1e-3, "{shape:?}");
        }
    }
}
