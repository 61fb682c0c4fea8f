//! The demonstration key as the scene's camera would record it from this distance: drawn by the
//! model's own pixel, blur and noise.

use self_check_core::demonstration::DemonstrationPattern;
use self_check_core::sight::Scene;
use self_check_core::units::Metres;
use yew::prelude::*;

use crate::browser;
use crate::copy::site;

/// What is recorded.
#[derive(Properties, PartialEq)]
pub struct RecordedProps {
    /// By which camera.
    pub scene: Scene,
    /// From how far, in metres.
    pub metres: f64,
}

/// The picture. The sentence beside it says what it is worth, so it is named but not described.
#[component]
pub fn Recorded(props: &RecordedProps) -> Html {
    let canvas = use_node_ref();
    {
        let canvas = canvas.clone();
        use_effect_with((props.scene, props.metres), move |&(scene, metres)| {
            if let Ok(distance) = Metres::new(metres) {
                let view = scene.camera().view(distance);
                let picture = DemonstrationPattern::DEMONSTRATION.picture(&view);
                browser::paint_grey(&canvas, picture.width, picture.height, &picture.shades);
            }
        });
    }
    html! {
        <figure class="plate recorded">
            <canvas ref={canvas} role="img" aria-label={site::DISTANCE_PICTURE} />
            <figcaption>{ site::DISTANCE_PICTURE_CAPTION }</figcaption>
        </figure>
    }
}
