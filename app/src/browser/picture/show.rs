//! Showing a copy of a picture, whole or a little of it enlarged.

use web_sys::HtmlCanvasElement;
use yew::prelude::*;

use super::decode::context_of;

/// Draws `picture` onto the canvas that `node` holds, which takes its size. To be given a picture as large
/// as it is seen: this is drawn all at once, and once more when the browser next shows the page.
pub fn show(node: &NodeRef, picture: &HtmlCanvasElement) {
    let Some(canvas) = node.cast::<HtmlCanvasElement>() else {
        return;
    };
    canvas.set_width(picture.width());
    canvas.set_height(picture.height());
    if let Ok(context) = context_of(&canvas) {
        let _ = context.draw_image_with_html_canvas_element(picture, 0.0, 0.0);
    }
}

/// Draws the surroundings of a place, `reach` pixels to each side, so that they fill the canvas that
/// `node` holds, `side` pixels wide and high.
pub fn show_enlarged(
    node: &NodeRef,
    picture: &HtmlCanvasElement,
    (x, y): (f64, f64),
    reach: f64,
    side: u32,
) {
    let Some(canvas) = node.cast::<HtmlCanvasElement>() else {
        return;
    };
    canvas.set_width(side);
    canvas.set_height(side);
    if let Ok(context) = context_of(&canvas) {
        context.set_image_smoothing_enabled(false);
        let _ = context
            .draw_image_with_html_canvas_element_and_sw_and_sh_and_dx_and_dy_and_dw_and_dh(
                picture,
                x - reach,
                y - reach,
                2.0 * reach,
                2.0 * reach,
                0.0,
                0.0,
                side.into(),
                side.into(),
            );
    }
}
