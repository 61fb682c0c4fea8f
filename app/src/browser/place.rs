//! Where on a picture a pointer is.

use web_sys::Element;
use yew::prelude::*;

/// The place that `event` points to on the element that `node` holds, which shows something `width`
/// wide and `height` high; places beside it count as its nearest edge.
pub fn place_on(
    node: &NodeRef,
    event: &PointerEvent,
    width: f64,
    height: f64,
) -> Option<(f64, f64)> {
    let frame = node.cast::<Element>()?.get_bounding_client_rect();
    let along = |from: f64, start: f64, length: f64| ((from - start) / length).clamp(0.0, 1.0);
    (frame.width() > 0.0 && frame.height() > 0.0).then(|| {
        let x = along(f64::from(event.client_x()), frame.left(), frame.width());
        let y = along(f64::from(event.client_y()), frame.top(), frame.height());
        (x * width, y * height)
    })
}

/// Has all that this pointer does go to the element that `node` holds, also beyond its edge.
pub fn hold_pointer(node: &NodeRef, event: &PointerEvent) {
    if let Some(element) = node.cast::<Element>() {
        let _ = element.set_pointer_capture(event.pointer_id());
    }
}
