//! A history as rows of characters: temperature from left to right, minutes from top to bottom.
//!
//! The band is shaded, its middle a dot. There is no line to reach and no mark at any minute.

use kitchen::reckon::HistoryLine;

/// Characters from the coldest to the hottest.
const WIDE: usize = 40;
/// Rows at most; a long history is told at every second or third of its minutes.
const ROWS: usize = 44;

/// The rows of a chart: the minute and the picture beside it.
pub(super) fn draw(lines: &[HistoryLine]) -> Vec<(String, String)> {
    // The counter is far colder than the jar: what lies below the band is told in figures only.
    let coldest = lines.iter().map(|line| line.centre_low).fold(f64::INFINITY, f64::min);
    let hottest =
        lines.iter().map(|line| line.centre_high.max(line.around_celsius)).fold(f64::NEG_INFINITY, f64::max);
    let (low, high) = (floor_to_ten(coldest), floor_to_ten(hottest) + 10.0);
    // Never out of range: shares between 0 and 1 of a width.
    let place = |celsius: f64| {
        (((celsius - low) / (high - low)).clamp(0.0, 1.0) * (WIDE - 1) as f64).round() as usize
    };
    let every = lines.len().div_ceil(ROWS).max(1);
    let mut rows = vec![(
        "min".to_owned(),
        format!(
            "{:<20}{:>20}  around  middle",
            format!("{} F", fahrenheit(low)),
            format!("{} F", fahrenheit(high))
        ),
    )];
    for line in lines.iter().step_by(every) {
        let mut picture = vec![' '; WIDE];
        for shaded in &mut picture[place(line.centre_low)..=place(line.centre_high)] {
            *shaded = '░';
        }
        if line.around_celsius >= low {
            picture[place(line.around_celsius)] = '·';
        }
        picture[place(line.centre)] = '█';
        let picture: String = picture.into_iter().collect();
        rows.push((
            line.minute.to_string(),
            format!("{picture}  {:>4} F  {:>4} F", fahrenheit(line.around_celsius), fahrenheit(line.centre)),
        ));
    }
    rows
}

/// Down to the ten below.
fn floor_to_ten(celsius: f64) -> f64 {
    (celsius / 10.0).floor() * 10.0
}

fn fahrenheit(celsius: f64) -> i64 {
    // Never truncates: temperatures of a kitchen.
    (celsius * 1.8 + 32.0).round() as i64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_chart_has_its_band_its_middle_and_nothing_else() {
        let line = |minute, centre: f64| HistoryLine {
            minute,
            around_celsius: 99.0,
            centre_low: centre - 4.0,
            centre,
            centre_high: centre + 4.0,
            counted_low: 0.0,
            counted: 0.0,
            counted_high: 0.0,
        };
        let rows = draw(&[line(-5, 60.0), line(0, 70.0), line(40, 95.0)]);
        assert_eq!(rows.len(), 4);
        for (_, picture) in &rows[1..] {
            let drawn: Vec<char> = picture.chars().take(WIDE).filter(|c| *c != ' ').collect();
            assert!(drawn.iter().all(|c| matches!(c, '░' | '█' | '·')), "{picture}");
            assert_eq!(drawn.iter().filter(|c| **c == '█').count(), 1);
            assert!(picture.chars().count() <= 60, "{picture}");
        }
        let of = |at: usize| rows[at].1.chars().position(|c| c == '█');
        assert!(of(1) < of(2) && of(2) < of(3));
    }

    #[test]
    fn a_long_history_fits_a_page() {
        let line = |minute| HistoryLine {
            minute,
            around_celsius: 99.0,
            centre_low: 60.0,
            centre: 61.0,
            centre_high: 62.0,
            counted_low: 0.0,
            counted: 0.0,
            counted_high: 0.0,
        };
        assert!(draw(&(0..500).map(line).collect::<Vec<_>>()).len() <= ROWS + 1);
    }
}
