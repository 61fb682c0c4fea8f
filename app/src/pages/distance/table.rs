//! The same numbers as in the chart, in a table.

use yew::prelude::*;

use super::chart::Curve;
use super::fewest_tries;
use crate::copy::{self, numbers, site};

/// Distances of the rows, in metres.
const ROWS: [f64; 9] = [0.3, 1.0, 3.0, 10.0, 30.0, 60.0, 100.0, 300.0, 1_000.0];

/// A row for each distance, a column for each scene of the chart.
pub fn table(lines: &[Curve]) -> Html {
    html! {
        <div class="table-scroll" tabindex="0" role="region" aria-label={site::DISTANCE_TABLE}>
            <table class="table">
                <caption>{ site::DISTANCE_TABLE }</caption>
                <thead>
                    <tr>
                        <th scope="col">{ site::DISTANCE_COLUMN }</th>
                        { for lines.iter().map(|line| html! { <th scope="col">{ copy::scene(line.scene) }</th> }) }
                    </tr>
                </thead>
                <tbody>{ for ROWS.into_iter().map(|metres| row(lines, metres)) }</tbody>
            </table>
        </div>
    }
}

fn row(lines: &[Curve], metres: f64) -> Html {
    let cells = lines.iter().filter_map(|line| {
        let tries = fewest_tries(line.scene, metres)?;
        Some(html! { <td>{ numbers::about_keys(tries) }</td> })
    });
    html! { <tr><th scope="row">{ copy::distance(metres) }</th>{ for cells }</tr> }
}
