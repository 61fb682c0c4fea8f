//! Painting a grey picture that the page has computed.

use wasm_bindgen::{Clamped, JsCast};
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement, ImageData};
use yew::prelude::*;

/// Paints `shades`, row by row from the top, 0 for black and 255 for white, onto the canvas that
/// `node` holds, which takes the picture's size. A browser without a canvas shows nothing.
pub fn paint_grey(node: &NodeRef, width: usize, height: usize, shades: &[u8]) {
    let Some(canvas) = node.cast::<HtmlCanvasElement>() else {
        return;
    };
    let (Ok(columns), Ok(rows)) = (u32::try_from(width), u32::try_from(height)) else {
        return;
    };
    canvas.set_width(columns);
    canvas.set_height(rows);
    let pixels: Vec<u8> = shades
        .iter()
        .flat_map(|&shade| [shade, shade, shade, u8::MAX])
        .collect();
    let image = ImageData::new_with_u8_clamped_array_and_sh(Clamped(&pixels), columns, rows);
    let context = canvas
        .get_context("2d")
        .ok()
        .flatten()
        .and_then(|context| context.dyn_into::<CanvasRenderingContext2d>().ok());
    if let (Ok(image), Some(context)) = (image, context) {
        let _ = context.put_image_data(&image, 0.0, 0.0);
    }
}
