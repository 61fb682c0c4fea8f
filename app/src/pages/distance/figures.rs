//! Everything the numbers rest on, each figure with its source.

use self_check_core::assumptions::{Assumption, Figure};
use self_check_core::sight::Scene;
use yew::prelude::*;

use crate::copy::{self, site};
use crate::ui::source_line;

/// The figures of the scene, and what the model takes for granted.
pub fn figures(scene: Scene) -> Html {
    let of_scene = scene
        .figures()
        .into_iter()
        .map(|(property, figure)| row(copy::property(property), figure));
    let of_model = Assumption::ALL
        .into_iter()
        .map(|assumption| row(copy::assumption(assumption), assumption.figure()));
    html! {
        <details>
            <summary>{ site::DISTANCE_ASSUMES }</summary>
            <p>{ site::DISTANCE_CAVEATS }</p>
            <div class="table-scroll" tabindex="0" role="region" aria-label={site::DISTANCE_ASSUMES}>
                <table class="table">
                    <thead>
                        <tr>
                            <th scope="col">{ site::DISTANCE_FIGURE }</th>
                            <th scope="col">{ site::DISTANCE_VALUE }</th>
                            <th scope="col">{ site::DISTANCE_SOURCE }</th>
                        </tr>
                    </thead>
                    <tbody>{ for of_scene }{ for of_model }</tbody>
                </table>
            </div>
        </details>
    }
}

fn row(name: &'static str, figure: Figure) -> Html {
    html! {
        <tr>
            <th scope="row">{ name }</th>
            <td>{ copy::figure_with_unit(figure.value, figure.unit) }</td>
            <td>{ source_line(figure.source) }</td>
        </tr>
    }
}
