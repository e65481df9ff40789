//! A printed table of one figure against another, read between its points by straight lines and never beyond its ends.
//!
//! Only for properties of substances, which change smoothly. Nothing that keeps a jar is ever read this way.

/// The value between the two points around `x`; `None` outside the table.
pub(crate) fn read_curve(points: &[(f64, f64)], x: f64) -> Option<f64> {
    let after = points.iter().position(|(at, _)| *at >= x)?;
    let (x1, y1) = points[after];
    if x1 == x {
        return Some(y1);
    }
    let (x0, y0) = *points.get(after.checked_sub(1)?)?;
    Some(y0 + (y1 - y0) * (x - x0) / (x1 - x0))
}

/// The other way round, for a curve that only rises or only falls.
pub(crate) fn read_curve_backwards(points: &[(f64, f64)], y: f64) -> Option<f64> {
    points.windows(2).find_map(|pair| {
        let ((x0, y0), (x1, y1)) = (pair[0], pair[1]);
        let inside = if y0 <= y1 { (y0..=y1).contains(&y) } else { (y1..=y0).contains(&y) };
        inside.then(|| if y1 == y0 { x0 } else { x0 + (x1 - x0) * (y - y0) / (y1 - y0) })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const LINE: [(f64, f64); 3] = [(0.0, 10.0), (1.0, 20.0), (3.0, 0.0)];

    #[test]
    fn a_curve_is_read_between_its_points_and_not_beyond() {
        assert_eq!(read_curve(&LINE, 0.0), Some(10.0));
        assert_eq!(read_curve(&LINE, 0.5), Some(15.0));
        assert_eq!(read_curve(&LINE, 2.0), Some(10.0));
        assert_eq!(read_curve(&LINE, 3.1), None);
        assert_eq!(read_curve(&LINE, -0.1), None);
        assert_eq!(read_curve(&LINE, f64::NAN), None);
        assert_eq!(read_curve_backwards(&LINE, 15.0), Some(0.5));
        assert_eq!(read_curve_backwards(&LINE, 30.0), None);
    }
}
