//! The rule in small: how far one has come, one tick for each page.

use yew::prelude::*;

use super::path::{Point, polyline, strokes};
use super::view::image;

/// The progress rule: pages done, this one included, and pages there are. The words beside it say
/// both.
pub fn progress_rule(done: usize, total: usize) -> Html {
    let total = total.max(1);
    let done = done.min(total);
    let content = html! {
        <svg width="100%" height="100%" viewBox="0 0 1000 100" preserveAspectRatio="none" overflow="visible">
            <path class="progress-all" d={polyline(&[(0.0, 100.0), (1000.0, 100.0)])} />
            <path class="progress-all" d={strokes(ticks(done..total + 1, total))} />
            <path class="progress-done" d={polyline(&[(0.0, 100.0), (x(done, total), 100.0)])} />
            <path class="progress-done" d={strokes(ticks(0..done + 1, total))} />
        </svg>
    };
    image("progress", None, None, content)
}

/// Every fifth tick is long, as on a measuring rule.
fn ticks(range: std::ops::Range<usize>, total: usize) -> Vec<(Point, Point)> {
    range
        .map(|tick| {
            let top = if tick % 5 == 0 { 10.0 } else { 50.0 };
            ((x(tick, total), top), (x(tick, total), 100.0))
        })
        .collect()
}

fn x(tick: usize, total: usize) -> f64 {
    1000.0 * tick as f64 / total as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_run_from_end_to_end() {
        let all = ticks(0..14, 13);
        assert_eq!(all[0].0.0, 0.0);
        assert_eq!(all[13].0.0, 1000.0);
        assert_eq!(all.iter().filter(|tick| tick.0.1 == 10.0).count(), 3); // 0, 5, 10
    }
}
