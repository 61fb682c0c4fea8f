//! Points and the path data made of them. Lengths are in the drawing's own unit: millimetres for
//! keys, a grid of 48 for small scenes, thousandths for scales.

use self_check_core::order::sort_few;

/// A point: across, then down.
pub type Point = (f64, f64);

/// A closed outline through `points`.
pub fn polygon(points: &[Point]) -> String {
    let mut d = polyline(points);
    d.push('Z');
    d
}

/// An open line through `points`.
pub fn polyline(points: &[Point]) -> String {
    let mut d = String::new();
    for (index, &point) in points.iter().enumerate() {
        d.push(if index == 0 { 'M' } else { 'L' });
        push_point(&mut d, point);
    }
    d
}

/// Separate straight strokes.
pub fn strokes(pairs: impl IntoIterator<Item = (Point, Point)>) -> String {
    let mut d = String::new();
    for (from, to) in pairs {
        d.push('M');
        push_point(&mut d, from);
        d.push('L');
        push_point(&mut d, to);
    }
    d
}

/// A circle as a path.
pub fn circle(centre: Point, radius: f64) -> String {
    let mut d = String::from("M");
    push_point(&mut d, (centre.0 - radius, centre.1));
    for turn in [2.0, -2.0] {
        d.push('a');
        push_point(&mut d, (radius, radius));
        d.push_str(" 0 1 0 ");
        push_point(&mut d, (turn * radius, 0.0));
    }
    d.push('Z');
    d
}

/// A rectangle as a path, from its upper left corner.
pub fn rectangle(corner: Point, width: f64, height: f64) -> String {
    let (x, y) = corner;
    polygon(&[
        (x, y),
        (x + width, y),
        (x + width, y + height),
        (x, y + height),
    ])
}

/// Shading: parallel strokes rising at 45° through the inside of `outline`, `gap` apart across the
/// page. Every stroke begins and ends on the outline.
pub fn hatch(outline: &[Point], gap: f64) -> Vec<(Point, Point)> {
    // On a stroke the sum of the coordinates is constant.
    let sums = outline.iter().map(|&(x, y)| x + y);
    let (low, high) = sums.fold((f64::MAX, f64::MIN), |(low, high), sum| {
        (low.min(sum), high.max(sum))
    });
    let mut drawn = Vec::new();
    let mut sum = low + gap / 2.0;
    while sum < high {
        let mut crossings = crossings_at(outline, sum);
        sort_few(&mut crossings, |crossing| crossing.0);
        drawn.extend(crossings.chunks_exact(2).map(|pair| (pair[0], pair[1])));
        sum += gap;
    }
    drawn
}

/// `value` as short as path data allows: hundredths at most, no needless zeros.
pub fn push_number(d: &mut String, value: f64) {
    let hundredths = (value * 100.0).round() as i64;
    if hundredths < 0 {
        d.push('-');
    }
    let hundredths = hundredths.unsigned_abs();
    let (whole, rest) = (hundredths / 100, hundredths % 100);
    if whole > 0 || rest == 0 {
        d.push_str(&whole.to_string());
    }
    if rest > 0 {
        d.push('.');
        d.push(digit(rest / 10));
        if rest % 10 > 0 {
            d.push(digit(rest % 10));
        }
    }
}

/// `value` alone, as [`push_number`] writes it.
pub fn number(value: f64) -> String {
    let mut d = String::new();
    push_number(&mut d, value);
    d
}

fn push_point(d: &mut String, (x, y): Point) {
    push_number(d, x);
    d.push(' ');
    push_number(d, y);
}

fn digit(value: u64) -> char {
    char::from(b'0' + (value % 10) as u8)
}

fn crossings_at(outline: &[Point], sum: f64) -> Vec<Point> {
    let ends = outline.iter().cycle().skip(1);
    outline
        .iter()
        .zip(ends)
        .filter_map(|(&from, &to)| {
            let (a, b) = (from.0 + from.1 - sum, to.0 + to.1 - sum);
            // Half-open, so that a corner counts once.
            ((a < 0.0) != (b < 0.0)).then(|| {
                let share = a / (a - b);
                (
                    from.0 + share * (to.0 - from.0),
                    from.1 + share * (to.1 - from.1),
                )
            })
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_written_short_and_round_to_hundredths() {
        for (value, written) in [
            (0.0, "0"),
            (-0.001, "0"),
            (5.867, "5.87"),
            (-0.5, "-.5"),
            (12.0, "12"),
            (3.05, "3.05"),
            (-10.1, "-10.1"),
        ] {
            assert_eq!(number(value), written);
        }
    }

    #[test]
    fn polygon_closes_and_polyline_stays_open() {
        let corners = [(0.0, 0.0), (4.0, 0.0), (4.0, 2.5)];
        assert_eq!(polygon(&corners), "M0 0L4 0L4 2.5Z");
        assert_eq!(polyline(&corners), "M0 0L4 0L4 2.5");
    }

    #[test]
    fn hatch_stays_inside_its_outline() {
        // Not convex: strokes must skip the notch.
        let outline = [(0.0, 0.0), (10.0, 0.0), (10.0, 6.0), (5.0, 2.0), (0.0, 6.0)];
        let drawn = hatch(&outline, 1.0);
        assert!(drawn.len() > 10);
        for (from, to) in drawn {
            assert!((from.0 + from.1 - to.0 - to.1).abs() < 1e-9, "not at 45°");
            let middle_x = (from.0 + to.0) / 2.0;
            let middle_y = (from.1 + to.1) / 2.0;
            let floor = 2.0 + 0.8 * (middle_x - 5.0).abs();
            assert!(middle_y >= 0.0 && middle_y <= floor + 1e-9);
        }
    }

    #[test]
    fn circle_returns_to_where_it_began() {
        assert_eq!(
            circle((5.0, 5.0), 2.0),
            "M3 5a2 2 0 1 0 4 0a2 2 0 1 0 -4 0Z"
        );
    }
}
