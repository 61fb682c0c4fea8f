//! Who could read a key from where: everyday scenes, a distance, and how many keys are left to try.

mod chart;
mod figures;
mod recorded;
mod table;

use std::rc::Rc;

use self_check_core::grades::GRADES;
use self_check_core::key::{Family, FamilyChoice};
use self_check_core::sight::{PixelDensity, Scene, View};
use self_check_core::sources::{JOHNSON, NATURE_OF_BURGLARY, OPTICAL_DECODING};
use self_check_core::units::Metres;
use yew::prelude::*;

use crate::browser;
use crate::copy::{self, site};
use crate::drawing::{DistanceChart, Plot};
use crate::route::Route;
use crate::ui::{source_line, use_page};
use chart::{at_distance, curves, plot};
use figures::figures;
use recorded::Recorded;
use table::table;

/// The family of the demonstration key, which the page is about.
const FAMILY: Family = Family::TenDepthFiveCuts;

/// The nearest and farthest distance of the slider, in metres: from there even the longest lens leaves
/// thousands of keys.
const NEAREST: f64 = 0.3;
const FARTHEST: f64 = 1_000.0;
/// Steps of the slider, even on a logarithmic scale.
const STEPS: u32 = 176;

/// The page.
#[component]
pub fn Distance() -> Html {
    use_page(site::DISTANCE.to_owned());
    let chosen = use_state(|| Scene::PhoneAtNextTable);
    let step = use_state(|| step_of(Scene::PhoneAtNextTable.usual_distance().get()));
    let metres = distance_of(*step);
    let tries = tries(*chosen, metres);
    let of_scene = use_memo(*chosen, |&chosen| OfScene::of(chosen));
    html! {
        <article class="distance">
            <h1 tabindex="-1">{ site::DISTANCE }</h1>
            <p class="lede">{ site::DISTANCE_LEDE }</p>
            <div class="prose">
                <p>{ site::DISTANCE_PEOPLE }</p>
                <p class="src">{ source_line(&NATURE_OF_BURGLARY) }</p>
                <p class="src">{ source_line(&OPTICAL_DECODING) }</p>
            </div>
            { scenes(&chosen, &step) }
            { slider(&step, metres, tries.as_deref()) }
            <div class="seen-and-recorded">
                { seen(*chosen, metres, tries.as_deref()) }
                <Recorded scene={*chosen} {metres} />
            </div>
            <figure class="plate chart-figure">
                <DistanceChart
                    title={site::DISTANCE_CHART}
                    desc={site::DISTANCE_CHART_DESC}
                    plot={Rc::clone(&of_scene.plot)}
                    you={at_distance(metres)}
                />
                <figcaption>
                    { site::DISTANCE_CAPTION }{ " " }
                    <span class="src">{ source_line(GRADES[0].source) }{ "." }</span>
                </figcaption>
            </figure>
            { of_scene.table.clone() }
            { of_scene.figures.clone() }
            <p class="row">
                <a class="plain" href={Route::Learn}>{ site::ALL_PAGES }</a>
            </p>
        </article>
    }
}

/// What stays as it is while the slider moves.
#[derive(PartialEq)]
struct OfScene {
    plot: Rc<Plot>,
    table: Html,
    figures: Html,
}

impl OfScene {
    fn of(scene: Scene) -> Self {
        let lines = curves(scene);
        Self {
            table: table(&lines),
            figures: figures(scene),
            plot: Rc::new(plot(&lines)),
        }
    }
}

/// The fewest and the most tries for an even chance that a view leaves, over both kinds of observer.
fn tries_of(view: &View) -> (f64, f64) {
    let range = view.range(FamilyChoice::Known(FAMILY));
    let tries = [range.fewest, range.most].map(|end| end.reading.tries_even_chance.get());
    (tries[0], tries[1])
}

/// The fewest tries for an even chance that the scene leaves at this distance.
fn fewest_tries(scene: Scene, metres: f64) -> Option<f64> {
    let distance = Metres::new(metres).ok()?;
    Some(tries_of(&scene.camera().view(distance)).0)
}

/// A list that folds, so that what a scene leaves stands right below it.
fn scenes(chosen: &UseStateHandle<Scene>, step: &UseStateHandle<u32>) -> Html {
    let onchange = {
        let (chosen, step) = (chosen.clone(), step.clone());
        Callback::from(move |event: Event| {
            let scene = browser::place_in_list(&event).and_then(|place| Scene::ALL.get(place));
            if let Some(&scene) = scene {
                chosen.set(scene);
                step.set(step_of(scene.usual_distance().get()));
            }
        })
    };
    html! {
        <p class="field">
            <label for="scene"><b>{ site::DISTANCE_SCENE }</b></label>
            <select id="scene" {onchange} autocomplete="off">
                { for Scene::ALL.into_iter().map(|scene| html! {
                    <option key={scene.id()} selected={**chosen == scene}>{ copy::scene(scene) }</option>
                }) }
            </select>
        </p>
    }
}

/// The slider says where it stands and what that leaves, so that nobody has to look for it.
fn slider(step: &UseStateHandle<u32>, metres: f64, tries: Option<&str>) -> Html {
    let oninput = {
        let step = step.clone();
        Callback::from(move |event: InputEvent| {
            if let Some(value) = browser::slider_value(&event) {
                step.set(value.clamp(0.0, f64::from(STEPS)) as u32);
            }
        })
    };
    let said = match tries {
        Some(tries) => copy::distance_and_tries(metres, tries),
        None => copy::distance(metres),
    };
    html! {
        <div class="slider-row">
            <p class="slider-label">
                <label for="distance">{ site::DISTANCE_SLIDER }</label>{ " " }
                <b aria-hidden="true">{ copy::distance(metres) }</b>
            </p>
            <input id="distance" class="slider" type="range" min="0" max={STEPS.to_string()} step="1"
                value={step.to_string()} aria-valuetext={said} {oninput} autocomplete="off" />
        </div>
    }
}

/// How many keys are left to try, in words.
fn tries(scene: Scene, metres: f64) -> Option<String> {
    let distance = Metres::new(metres).ok()?;
    let (fewest, most) = tries_of(&scene.camera().view(distance));
    Some(copy::tries_left(fewest, most))
}

fn seen(scene: Scene, metres: f64, tries: Option<&str>) -> Html {
    let Some(tries) = tries else {
        return html! {};
    };
    let keys = FAMILY.keys().get();
    html! {
        <div class="seen">
            <p class="lede">{ copy::seen_from(copy::scene(scene), metres, tries, keys) }</p>
            <p>{ copy::number_legible(&scene.legibility()) }</p>
            <p class="src">{ source_line(&JOHNSON) }</p>
            if scene == Scene::SurveillanceCamera {
                { planned() }
            }
        </div>
    }
}

/// What a camera leaves that is planned so that it can be told by its pictures who somebody is.
fn planned() -> Html {
    let camera = Scene::SurveillanceCamera.camera();
    let distance = camera.distance_of(PixelDensity::Identify.ground_sample());
    let (fewest, most) = tries_of(&camera.view(distance));
    let tries = copy::tries_left(fewest, most);
    html! {
        <>
            <p>{ copy::planned_to_identify(distance.get(), &tries) }</p>
            <p class="src">{ source_line(PixelDensity::Identify.source()) }</p>
        </>
    }
}

fn distance_of(step: u32) -> f64 {
    let share = f64::from(step) / f64::from(STEPS);
    NEAREST * (FARTHEST / NEAREST).powf(share)
}

fn step_of(metres: f64) -> u32 {
    let share = (metres / NEAREST).ln() / (FARTHEST / NEAREST).ln();
    (share.clamp(0.0, 1.0) * f64::from(STEPS)).round() as u32
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slider_runs_from_nearest_to_farthest_and_back() {
        assert!((distance_of(0) - NEAREST).abs() < 1e-12);
        assert!((distance_of(STEPS) - FARTHEST).abs() < 1e-9);
        for step in 0..=STEPS {
            assert_eq!(step_of(distance_of(step)), step);
        }
    }
}
