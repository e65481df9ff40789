//! Times of the heavier models, and the order in which the finite volumes converge.
//!
//! `cargo bench -p foodsci` prints them with the budgets; run as a test it only sees that everything still answers.

use std::hint::black_box;
use std::time::{Duration, Instant};

use foodsci::band::{Spread, draw_inputs, find_band};
use foodsci::conduction::{FiniteCylinder, Grid, GridCylinder};
use foodsci::jar::{Jar, Stage, trace_history};
use measure::{Conductivity, Diffusivity, Film, Length, Span, Temp};

const WATER: Film = Film::watts_per_square_metre_kelvin(260.0);
const AIR: Film = Film::watts_per_square_metre_kelvin(10.0);
const CONDUCTS: Conductivity = Conductivity::watts_per_metre_kelvin(0.55);
const START: Temp = Temp::celsius(60.0);
const BOIL: Temp = Temp::celsius(100.0);

fn jar(diffusivity: f64) -> Jar {
    Jar {
        radius: Length::millimetres(43.5),
        height: Length::millimetres(150.0),
        diffusivity: Diffusivity::square_metres_per_second(diffusivity),
        conducts: CONDUCTS,
        filled_at: START,
    }
}

fn stages() -> [Stage; 3] {
    let stage = |minutes, from, to, film| Stage {
        lasts: Span::minutes(minutes),
        from: Temp::celsius(from),
        to: Temp::celsius(to),
        film,
    };
    [stage(15.0, 82.0, 100.0, WATER), stage(45.0, 100.0, 100.0, WATER), stage(60.0, 21.0, 21.0, AIR)]
}

fn end_of(diffusivity: f64, points: usize) -> f64 {
    let history = trace_history(&jar(diffusivity), &stages(), points).expect("a jar in a canner");
    history.last().map_or(f64::NAN, |point| point.centre.as_celsius())
}

/// The quickest of a few runs.
fn time(runs: u32, mut work: impl FnMut()) -> Duration {
    (0..runs)
        .map(|_| {
            let began = Instant::now();
            work();
            began.elapsed()
        })
        .min()
        .unwrap_or_default()
}

fn tell(what: &str, took: Duration, budget: Duration) {
    let mark = if took <= budget { "within" } else { "OVER" };
    println!("{what:<44} {took:>12.3?}  {mark} {budget:?}");
}

fn main() {
    // As a test one run is enough to see that it still answers.
    let runs = if std::env::args().any(|word| word == "--bench") { 15 } else { 1 };
    tell(
        "history of a jar, 10,000 points",
        time(runs, || {
            black_box(end_of(black_box(1.5e-7), 10_000));
        }),
        Duration::from_millis(5),
    );
    let spread = [Spread { low: 1.3e-7, likely: 1.5e-7, high: 1.7e-7 }];
    tell(
        "band of a thousand histories, 160 points each",
        time(runs, || {
            let ends = draw_inputs(&spread, 1000, 7).iter().map(|draw| end_of(draw[0], 160)).collect();
            black_box(find_band(ends));
        }),
        Duration::from_millis(300),
    );
    tell_order();
}

/// Halving the width of a ring and the step of time divides the error by four where the method is of second order.
fn tell_order() {
    let (radius, height) = (Length::millimetres(43.5), Length::millimetres(150.0));
    let spreads = Diffusivity::square_metres_per_second(1.5e-7);
    let film = Film::watts_per_square_metre_kelvin(100.0);
    let exact = FiniteCylinder::new(radius, height, spreads, (film, CONDUCTS), 60)
        .and_then(|can| can.find_centre_temp(START, BOIL, Span::minutes(45.0)))
        .expect("a jar in a canner");
    let error = |cells: usize| {
        let grid = Grid { rings: cells, layers: cells };
        let mut cut =
            GridCylinder::new(radius, height, (spreads, CONDUCTS), START, grid).expect("a jar in a canner");
        cut.pass(Span::minutes(45.0), 4 * cells, BOIL, film).expect("boiling water");
        (cut.centre() - exact).as_kelvins().abs()
    };
    let mut coarse = error(10);
    for cells in [20, 40, 80] {
        let fine = error(cells);
        println!("{cells:>3} rings: error {fine:.2e} K, order {:.2}", libm::log2(coarse / fine));
        coarse = fine;
    }
}
