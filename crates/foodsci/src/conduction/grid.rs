//! The finite cylinder in finite volumes: the same jar worked out a second way, to check the series by.
//!
//! Half the height and the whole radius are cut into rings of equal width. Each step is taken half along the radius and
//! half along the height (Peaceman and Rachford's alternating directions), so that every step is a row of three-term
//! equations. Second order in the width of a ring and in the step of time; heat is neither made nor lost.

use measure::{Conductivity, Diffusivity, Film, Heat, Length, Span, Temp};

use crate::limits::kitchen::{HALF_SIZE_M, TEMP_C};
use crate::limits::{Limits, ModelError, limits};

/// How fine the cylinder is cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Grid {
    /// Rings from the centre to the wall.
    pub rings: usize,
    /// Layers from the middle to an end.
    pub layers: usize,
}

/// A cylinder on a grid, with the temperature of each ring.
#[derive(Debug, Clone, PartialEq)]
pub struct GridCylinder {
    grid: Grid,
    ring_width: f64,
    layer_height: f64,
    diffusivity: f64,
    conductivity: f64,
    /// Layer by layer from the middle, each from the centre to the wall, in °C.
    temps: Vec<f64>,
    taken_up: f64,
}

impl GridCylinder {
    /// A cylinder at one temperature.
    ///
    /// # Errors
    ///
    /// When a size is none a kitchen has, the grid has fewer than 2 or more than 400 cells a side, or the temperature is
    /// none of a kitchen.
    pub fn new(
        radius: Length,
        height: Length,
        (diffusivity, conducts): (Diffusivity, Conductivity),
        start: Temp,
        grid: Grid,
    ) -> Result<Self, ModelError> {
        const CELLS: Limits = limits("number of rings or layers", "", 2.0, 400.0, "the grid");
        let r = HALF_SIZE_M.check(radius.as_metres())?;
        let h = HALF_SIZE_M.check(height.as_metres() / 2.0)?;
        let start = TEMP_C.check(start.as_celsius())?;
        // Exact: counts far below 2^52.
        let (rings, layers) = (CELLS.check(grid.rings as f64)?, CELLS.check(grid.layers as f64)?);
        Ok(Self {
            grid,
            ring_width: r / rings,
            layer_height: h / layers,
            diffusivity: diffusivity.as_square_metres_per_second(),
            conductivity: conducts.as_watts_per_metre_kelvin(),
            temps: vec![start; grid.rings * grid.layers],
            taken_up: 0.0,
        })
    }

    /// Lets time pass in `steps` equal steps in surroundings that keep their temperature.
    ///
    /// # Errors
    ///
    /// When the temperature around is none of a kitchen.
    pub fn pass(&mut self, span: Span, steps: usize, around: Temp, film: Film) -> Result<(), ModelError> {
        let around = TEMP_C.check(around.as_celsius())?;
        // Exact: a count of steps far below 2^52.
        let step = span.as_seconds() / steps.max(1) as f64;
        for _ in 0..steps.max(1) {
            self.take_step(step, around, film.as_watts_per_square_metre_kelvin());
        }
        Ok(())
    }

    /// The temperature at the centre, from the two cells on either axis nearest to it.
    #[must_use]
    pub fn centre(&self) -> Temp {
        // A temperature runs level through the centre: from two cells at half and one and a half widths, `(9 a - b) / 8`.
        let ring = |layer: usize| (9.0 * self.at(layer, 0) - self.at(layer, 1)) / 8.0;
        Temp::celsius((9.0 * ring(0) - ring(1)) / 8.0)
    }

    /// The heat that came in through wall and ends since the start, both halves together.
    #[must_use]
    pub fn heat_taken_up(&self) -> Heat {
        Heat::joules(2.0 * self.taken_up)
    }

    /// The heat the body holds above a temperature.
    #[must_use]
    pub fn heat_above(&self, base: Temp) -> Heat {
        let base = base.as_celsius();
        let per_degree = self.conductivity / self.diffusivity;
        let half: f64 = (0..self.grid.layers)
            .flat_map(|layer| (0..self.grid.rings).map(move |ring| (layer, ring)))
            .map(|(layer, ring)| per_degree * self.cell_volume(ring) * (self.at(layer, ring) - base))
            .sum();
        Heat::joules(2.0 * half)
    }

    fn at(&self, layer: usize, ring: usize) -> f64 {
        self.temps[layer * self.grid.rings + ring]
    }

    fn cell_volume(&self, ring: usize) -> f64 {
        // Exact: a count of rings below 400.
        let middle = (ring as f64 + 0.5) * self.ring_width;
        2.0 * std::f64::consts::PI * middle * self.ring_width * self.layer_height
    }

    /// Exchange of a cell with its neighbours across the radius, in 1/s: inward, outward, and with the surroundings.
    fn across(&self, ring: usize, film: f64) -> (f64, f64, f64) {
        // Exact: a count of rings below 400.
        let (n, last) = (ring as f64, ring + 1 == self.grid.rings);
        let share = self.diffusivity / (self.ring_width * self.ring_width * (n + 0.5));
        let inward = share * n;
        if !last {
            return (inward, share * (n + 1.0), 0.0);
        }
        let through = self.conductivity / (self.conductivity / film + self.ring_width / 2.0);
        (
            inward,
            0.0,
            self.diffusivity * through / self.conductivity * (n + 1.0) / ((n + 0.5) * self.ring_width),
        )
    }

    /// Exchange of a cell with its neighbours along the height: toward the middle, toward the end, with the surroundings.
    fn along(&self, layer: usize, film: f64) -> (f64, f64, f64) {
        let share = self.diffusivity / (self.layer_height * self.layer_height);
        let toward_middle = if layer == 0 { 0.0 } else { share };
        if layer + 1 < self.grid.layers {
            return (toward_middle, share, 0.0);
        }
        let through = self.conductivity / (self.conductivity / film + self.layer_height / 2.0);
        (toward_middle, 0.0, self.diffusivity * through / self.conductivity / self.layer_height)
    }

    fn take_step(&mut self, step: f64, around: f64, film: f64) {
        let half = step / 2.0;
        let (rings, layers) = (self.grid.rings, self.grid.layers);
        let per_degree = self.conductivity / self.diffusivity;
        // First half: the exchange along the height as it stands, that across the radius as it will be.
        self.taken_up += half * self.end_inflow(around, film) * per_degree;
        let mut next = vec![0.0; self.temps.len()];
        for layer in 0..layers {
            let row = (0..rings).map(|ring| {
                let (inward, outward, free) = self.across(ring, film);
                let known = self.at(layer, ring) + half * self.along_flow(layer, ring, around, film);
                Row::new(half, (inward, outward, free), known, around)
            });
            for (ring, temp) in solve(row.collect()).into_iter().enumerate() {
                next[layer * rings + ring] = temp;
            }
        }
        self.temps = next;
        let through_wall = self.wall_inflow(around, film);
        self.taken_up += 2.0 * half * through_wall * per_degree;
        // Second half: the other way round.
        let mut next = vec![0.0; self.temps.len()];
        for ring in 0..rings {
            let row = (0..layers).map(|layer| {
                let (middle, end, free) = self.along(layer, film);
                let known = self.at(layer, ring) + half * self.across_flow(layer, ring, around, film);
                Row::new(half, (middle, end, free), known, around)
            });
            for (layer, temp) in solve(row.collect()).into_iter().enumerate() {
                next[layer * rings + ring] = temp;
            }
        }
        self.temps = next;
        self.taken_up += half * self.end_inflow(around, film) * per_degree;
    }

    fn along_flow(&self, layer: usize, ring: usize, around: f64, film: f64) -> f64 {
        let (middle, end, free) = self.along(layer, film);
        let here = self.at(layer, ring);
        let from_middle = if layer > 0 { middle * (self.at(layer - 1, ring) - here) } else { 0.0 };
        let from_end = if end > 0.0 { end * (self.at(layer + 1, ring) - here) } else { 0.0 };
        from_middle + from_end + free * (around - here)
    }

    fn across_flow(&self, layer: usize, ring: usize, around: f64, film: f64) -> f64 {
        let (inward, outward, free) = self.across(ring, film);
        let here = self.at(layer, ring);
        let from_inside = if ring > 0 { inward * (self.at(layer, ring - 1) - here) } else { 0.0 };
        let from_outside = if outward > 0.0 { outward * (self.at(layer, ring + 1) - here) } else { 0.0 };
        from_inside + from_outside + free * (around - here)
    }

    /// Degrees times volume that come in through the end in a second.
    fn end_inflow(&self, around: f64, film: f64) -> f64 {
        let last = self.grid.layers - 1;
        let (_, _, free) = self.along(last, film);
        (0..self.grid.rings).map(|ring| free * (around - self.at(last, ring)) * self.cell_volume(ring)).sum()
    }

    /// Degrees times volume that come in through the wall in a second.
    fn wall_inflow(&self, around: f64, film: f64) -> f64 {
        let last = self.grid.rings - 1;
        let (_, _, free) = self.across(last, film);
        (0..self.grid.layers)
            .map(|layer| free * (around - self.at(layer, last)) * self.cell_volume(last))
            .sum()
    }
}

/// One equation of three terms: `before x[i-1] + here x[i] + after x[i+1] = known`.
struct Row {
    before: f64,
    here: f64,
    after: f64,
    known: f64,
}

impl Row {
    fn new(half: f64, (before, after, free): (f64, f64, f64), known: f64, around: f64) -> Self {
        Self {
            before: -half * before,
            here: 1.0 + half * (before + after + free),
            after: -half * after,
            known: known + half * free * around,
        }
    }
}

/// Solves a row of three-term equations by elimination; stable because each `here` outweighs its neighbours.
fn solve(mut rows: Vec<Row>) -> Vec<f64> {
    for at in 1..rows.len() {
        let factor = rows[at].before / rows[at - 1].here;
        rows[at].here -= factor * rows[at - 1].after;
        rows[at].known -= factor * rows[at - 1].known;
    }
    let mut found = vec![0.0; rows.len()];
    for at in (0..rows.len()).rev() {
        let after = found.get(at + 1).copied().unwrap_or(0.0);
        found[at] = (rows[at].known - rows[at].after * after) / rows[at].here;
    }
    found
}

#[cfg(test)]
mod tests {
    use super::super::FiniteCylinder;
    use super::*;

    const RADIUS: Length = Length::millimetres(38.0);
    const HEIGHT: Length = Length::millimetres(110.0);
    const SPREADS: Diffusivity = Diffusivity::square_metres_per_second(1.5e-7);
    const CONDUCTS: Conductivity = Conductivity::watts_per_metre_kelvin(0.55);
    const FILM: Film = Film::watts_per_square_metre_kelvin(100.0);
    const START: Temp = Temp::celsius(60.0);
    const AROUND: Temp = Temp::celsius(100.0);

    fn heat_for(minutes: f64, cells: usize) -> GridCylinder {
        let grid = Grid { rings: cells, layers: cells };
        let mut jar = GridCylinder::new(RADIUS, HEIGHT, (SPREADS, CONDUCTS), START, grid).unwrap();
        jar.pass(Span::minutes(minutes), 4 * cells, AROUND, FILM).unwrap();
        jar
    }

    #[test]
    fn grid_and_series_agree() {
        let series = FiniteCylinder::new(RADIUS, HEIGHT, SPREADS, (FILM, CONDUCTS), 60).unwrap();
        for minutes in [15.0, 30.0, 60.0, 120.0] {
            let exact = series.find_centre_temp(START, AROUND, Span::minutes(minutes)).unwrap();
            let grid = heat_for(minutes, 60).centre();
            assert!((grid - exact).as_kelvins().abs() < 0.02, "{minutes} min: {grid:?} against {exact:?}");
        }
    }

    /// Halving the width of the rings and the step quarters the error: second order.
    #[test]
    fn the_error_falls_with_the_square_of_the_width() {
        let series = FiniteCylinder::new(RADIUS, HEIGHT, SPREADS, (FILM, CONDUCTS), 60).unwrap();
        let exact = series.find_centre_temp(START, AROUND, Span::minutes(40.0)).unwrap();
        let error = |cells| (heat_for(40.0, cells).centre() - exact).as_kelvins();
        for (coarse, fine) in [(10, 20), (20, 40), (40, 80)] {
            let order = libm::log2((error(coarse) / error(fine)).abs());
            assert!((1.8..2.3).contains(&order), "{coarse} to {fine} rings: order {order}");
        }
    }

    #[test]
    fn heat_is_neither_made_nor_lost() {
        let jar = heat_for(50.0, 24);
        let held = jar.heat_above(START).as_joules();
        assert!((jar.heat_taken_up().as_joules() / held - 1.0).abs() < 1e-11);
    }

    #[test]
    fn at_rest_nothing_moves() {
        let mut jar =
            GridCylinder::new(RADIUS, HEIGHT, (SPREADS, CONDUCTS), AROUND, Grid { rings: 8, layers: 8 })
                .unwrap();
        jar.pass(Span::hours(1.0), 10, AROUND, FILM).unwrap();
        assert!((jar.centre() - AROUND).as_kelvins().abs() < 1e-12);
        let tiny = Grid { rings: 1, layers: 8 };
        assert!(GridCylinder::new(RADIUS, HEIGHT, (SPREADS, CONDUCTS), AROUND, tiny).is_err());
    }
}
