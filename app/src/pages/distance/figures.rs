//! Everything the numbers rest on, each figure with its source.

use self_check_core::assumptions::{Assumption, Figure};
use self_check_core::sight::Scene;
use yew::prelude::*;

use super::FAMILY;
use crate::copy::{self, site};
use crate::ui::source_line;

/// The figures of the scene, those of the key, and what the model takes for granted.
fn listed(scene: Scene) -> impl Iterator<Item = (&'static str, Figure)> {
    let of_scene = scene.figures().into_iter();
    let of_scene = of_scene.map(|(property, figure)| (copy::property(property), figure));
    let of_key = FAMILY.geometry().figures().into_iter();
    let of_key = of_key.map(|(dimension, figure)| (copy::dimension(dimension), figure));
    let of_model = Assumption::ALL
        .into_iter()
        .filter(|assumption| assumption.is_of_sight())
        .map(|assumption| (copy::assumption(assumption), assumption.figure()));
    of_scene.chain(of_key).chain(of_model)
}

/// All figures on which the numbers of a scene rest, in a table.
pub fn figures(scene: Scene) -> Html {
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
                    <tbody>{ for listed(scene).map(|(name, figure)| row(name, figure)) }</tbody>
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

#[cfg(test)]
mod tests {
    use self_check_core::sources::TRADE_KEY_DIMENSIONS;

    use super::*;

    #[test]
    fn figures_of_the_key_are_listed_with_their_source() {
        let of_key: Vec<f64> = listed(Scene::LongLens)
            .filter(|(_, figure)| *figure.source == TRADE_KEY_DIMENSIONS)
            .map(|(_, figure)| figure.value)
            .collect();
        assert_eq!(of_key, [5.0, 10.0, 0.381, 3.967, 0.79, 7.0]);
    }

    #[test]
    fn nothing_is_listed_that_this_page_does_not_use() {
        let names: Vec<&str> = listed(Scene::LongLens).map(|(name, _)| name).collect();
        for assumption in Assumption::ALL {
            let listed = names.contains(&copy::assumption(assumption));
            assert_eq!(listed, assumption.is_of_sight(), "{assumption:?}");
        }
        assert!(!names.contains(&copy::assumption(Assumption::CaliperError)));
        assert!(!names.contains(&copy::assumption(Assumption::PocketfulOfKeys)));
        assert!(names.contains(&copy::assumption(Assumption::Identification)));
    }
}
