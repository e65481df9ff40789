//! Writes the hand-written day of the tests as a page, to look at it: `cargo run -p paper --example day_sheet > day.html`.

#[path = "../tests/it/sample.rs"]
mod sample;

fn main() {
    print!("{}", paper::render_day_sheet(&sample::sample_day()));
}
