//! Having the browser decode a picture, and reading from it in small pieces.

use std::cell::Cell;

use gloo::timers::future::TimeoutFuture;
use gloo::utils::{document, window};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    Blob, CanvasRenderingContext2d, HtmlCanvasElement, ImageBitmap, ImageBitmapOptions,
    ImageOrientation,
};

use super::Area;

/// A picture as the browser decoded it, at full size and turned as its file asks. It takes four bytes
/// a pixel, so it is kept for one piece of work and then given back.
pub struct Decoded(ImageBitmap);

/// A copy small enough to keep: what is shown, marked and covered.
#[derive(Clone, PartialEq)]
pub struct Working {
    /// The copy.
    pub canvas: HtmlCanvasElement,
    /// The copy again, no larger than it is seen on the page; the same canvas where it is small already.
    pub seen: HtmlCanvasElement,
    /// Pixels across the copy.
    pub width: u32,
    /// Pixels down the copy.
    pub height: u32,
    /// Pixels across the picture itself.
    pub full_width: u32,
    /// Pixels down the picture itself.
    pub full_height: u32,
}

impl Decoded {
    /// Decodes a picture; errs where the browser cannot.
    pub async fn of(blob: &Blob) -> Result<Self, JsValue> {
        let options = ImageBitmapOptions::new();
        options.set_image_orientation(ImageOrientation::FromImage);
        let promise =
            window().create_image_bitmap_with_blob_and_image_bitmap_options(blob, &options)?;
        let bitmap: ImageBitmap = JsFuture::from(promise).await?.dyn_into()?;
        breathe().await;
        Ok(Self(bitmap))
    }

    /// Pixels across.
    pub fn width(&self) -> u32 {
        self.0.width()
    }

    /// Pixels down.
    pub fn height(&self) -> u32 {
        self.0.height()
    }

    /// A copy of at most `most` pixels on its longer side, drawn in strips. It stands on white, as a
    /// picture with clear parts would on most pages. `goes_on` is asked before each strip; where it
    /// says no, nothing comes of it.
    pub async fn working(&self, most: u32, goes_on: impl Fn(f64) -> bool) -> Option<Working> {
        let (full_width, full_height) = (self.width(), self.height());
        let (shrink, (width, height)) = shrunk(full_width, full_height, most);
        let canvas = new_canvas(width, height).ok()?;
        let context = context_of(&canvas).ok()?;
        laid_out(&context).await;
        context.set_fill_style_str("#fff");
        let rows = rows_at_once(full_width, shrink);
        let scale = f64::from(full_height) / f64::from(height);
        let mut halves = Vec::new();
        let mut top = 0;
        work_begins();
        while top < height {
            if !goes_on(f64::from(top) / f64::from(height)) {
                return None;
            }
            let rows = rows.min(height - top);
            let strip = (f64::from(top) * scale, f64::from(rows) * scale);
            let place = (f64::from(top), f64::from(rows));
            context.fill_rect(0.0, place.0, width.into(), place.1);
            self.draw_strip(&context, &mut halves, strip, (f64::from(width), place))
                .ok()?;
            drawn_now(&context, top).ok()?;
            top += rows;
            if has_worked_long() {
                breathe().await;
                work_begins();
            }
        }
        breathe().await;
        let seen = match shrunk(width, height, MOST_SEEN) {
            (_, size) if size == (width, height) => canvas.clone(),
            (_, size) => redrawn(&canvas, size).await.ok()?,
        };
        Some(Working {
            canvas,
            seen,
            width,
            height,
            full_width,
            full_height,
        })
    }

    /// Draws a strip of the picture, from a row on and so many rows high, onto `context`, so wide, from
    /// a row on and so many rows high.
    ///
    /// Drawing at half the size makes each pixel of four; drawing at less would leave pixels out, and
    /// the browser's own remedy works on the whole picture at once. So the strip is halved until little
    /// is left to do. `halves` are used again for each strip.
    fn draw_strip(
        &self,
        context: &CanvasRenderingContext2d,
        halves: &mut Vec<HtmlCanvasElement>,
        (from, high): (f64, f64),
        (wide, (to, rows)): (f64, (f64, f64)),
    ) -> Result<(), JsValue> {
        let full = f64::from(self.width());
        let halvings = (full / wide).log2().floor().max(0.0) as usize;
        for halving in 0..halvings {
            let part = 0.5_f64.powi(halving as i32 + 1);
            let (width, height) = ((full * part).ceil(), (high * part).ceil());
            if halves.len() == halving {
                halves.push(new_canvas(1, 1)?);
            }
            let canvas = &halves[halving];
            canvas.set_width(width as u32);
            canvas.set_height(height as u32);
            let half = context_of(canvas)?;
            match halving.checked_sub(1).and_then(|finer| halves.get(finer)) {
                None => half
                    .draw_image_with_image_bitmap_and_sw_and_sh_and_dx_and_dy_and_dw_and_dh(
                        &self.0, 0.0, from, full, high, 0.0, 0.0, width, height,
                    )?,
                Some(finer) => half.draw_image_with_html_canvas_element_and_dw_and_dh(
                    finer, 0.0, 0.0, width, height,
                )?,
            }
        }
        match halvings.checked_sub(1).and_then(|last| halves.get(last)) {
            None => context.draw_image_with_image_bitmap_and_sw_and_sh_and_dx_and_dy_and_dw_and_dh(
                &self.0, 0.0, from, full, high, 0.0, to, wide, rows,
            ),
            Some(last) => {
                context.draw_image_with_html_canvas_element_and_dw_and_dh(last, 0.0, to, wide, rows)
            }
        }
    }

    /// The colours of a part, four bytes a pixel, from left to right and top to bottom. `canvas` is
    /// used and used again, so that parts of one size need one canvas.
    pub fn colours(&self, canvas: &HtmlCanvasElement, part: Area) -> Result<Vec<u8>, JsValue> {
        if (canvas.width(), canvas.height()) != (part.width, part.height) {
            canvas.set_width(part.width);
            canvas.set_height(part.height);
        }
        let context = context_of(canvas)?;
        context.set_fill_style_str("#fff");
        let Area {
            left,
            top,
            width,
            height,
        } = part;
        let [left, top, width, height] = [left, top, width, height].map(f64::from);
        context.fill_rect(0.0, 0.0, width, height);
        context.draw_image_with_image_bitmap_and_sw_and_sh_and_dx_and_dy_and_dw_and_dh(
            &self.0, left, top, width, height, 0.0, 0.0, width, height,
        )?;
        let data = context.get_image_data(0.0, 0.0, width, height)?;
        Ok(data.data().0)
    }
}

impl Working {
    /// Another canvas with the same on it.
    pub async fn copied(&self) -> Result<HtmlCanvasElement, JsValue> {
        redrawn(&self.canvas, (self.width, self.height)).await
    }
}

/// Another canvas with the same on it, so wide and high, drawn in strips.
async fn redrawn(
    picture: &HtmlCanvasElement,
    (width, height): (u32, u32),
) -> Result<HtmlCanvasElement, JsValue> {
    let canvas = new_canvas(width, height)?;
    let context = context_of(&canvas)?;
    laid_out(&context).await;
    let wide = f64::from(picture.width());
    let scale = f64::from(picture.height()) / f64::from(height);
    let rows_at_once = rows_at_once(picture.width(), 1.0 / scale);
    let mut top = 0;
    while top < height {
        let rows = rows_at_once.min(height - top);
        let (to, high) = (f64::from(top), f64::from(rows));
        context.draw_image_with_html_canvas_element_and_sw_and_sh_and_dx_and_dy_and_dw_and_dh(
            picture,
            0.0,
            to * scale,
            wide,
            high * scale,
            0.0,
            to,
            width.into(),
            high,
        )?;
        drawn_now(&context, top)?;
        top += rows;
        breathe().await;
    }
    Ok(canvas)
}

/// Has the browser lay out the memory of a new canvas, which it puts off until something is drawn. For a large
/// one it is the longest of all steps and cannot be had in pieces, so it is done by itself.
async fn laid_out(context: &CanvasRenderingContext2d) {
    breathe().await;
    context.fill_rect(0.0, 0.0, 1.0, 1.0);
    breathe().await;
}

/// Drawing is put off until somebody looks; a pixel of the row is looked at, so that it is done now.
fn drawn_now(context: &CanvasRenderingContext2d, row: u32) -> Result<(), JsValue> {
    context.get_image_data(0.0, row.into(), 1.0, 1.0).map(drop)
}

/// How many rows of a picture that shrinks so much are drawn at once, from rows so wide.
fn rows_at_once(wide: u32, shrink: f64) -> u32 {
    (PIXELS_AT_ONCE / f64::from(wide) * shrink).floor().max(1.0) as u32
}

/// By how much a picture shrinks so that its longer side has at most `most` pixels, and its size then.
fn shrunk(width: u32, height: u32, most: u32) -> (f64, (u32, u32)) {
    let shrink = (f64::from(most) / f64::from(width.max(height))).min(1.0);
    let side = |full: u32| ((f64::from(full) * shrink).round() as u32).max(1);
    (shrink, (side(width), side(height)))
}

/// The decoded picture is given back as soon as nobody holds it. For a large one that is a step by itself.
impl Drop for Decoded {
    fn drop(&mut self) {
        self.0.close();
    }
}

/// Lets the page answer its reader before work goes on.
pub async fn breathe() {
    TimeoutFuture::new(0).await;
}

thread_local! {
    static BEGAN_MS: Cell<f64> = const { Cell::new(0.0) };
}

/// A stretch of work begins, in which the page does not answer its reader.
pub fn work_begins() {
    BEGAN_MS.set(now_ms());
}

/// Whether it has gone on for so long that the page should answer.
pub fn has_worked_long() -> bool {
    now_ms() - BEGAN_MS.get() > LONGEST_STRETCH_MS
}

fn now_ms() -> f64 {
    window().performance().map_or(0.0, |clock| clock.now())
}

/// A canvas to read parts through.
pub fn spare_canvas() -> Result<HtmlCanvasElement, JsValue> {
    new_canvas(1, 1)
}

pub fn new_canvas(width: u32, height: u32) -> Result<HtmlCanvasElement, JsValue> {
    let canvas: HtmlCanvasElement = document().create_element("canvas")?.dyn_into()?;
    canvas.set_width(width);
    canvas.set_height(height);
    Ok(canvas)
}

/// A canvas that is read from again and again keeps its pixels where they can be read.
pub fn context_of(canvas: &HtmlCanvasElement) -> Result<CanvasRenderingContext2d, JsValue> {
    let options = js_sys::Object::new();
    js_sys::Reflect::set(&options, &"willReadFrequently".into(), &true.into())?;
    let context = canvas.get_context_with_context_options("2d", &options)?;
    Ok(context.ok_or(JsValue::NULL)?.dyn_into()?)
}

/// A strip of so many pixels is drawn in a few milliseconds.
const PIXELS_AT_ONCE: f64 = 100_000.0;

/// The longer side of a picture in a column of text, on a fine screen.
pub const MOST_SEEN: u32 = 1024;

/// Far below what a reader feels, also where one piece more is begun at its end.
const LONGEST_STRETCH_MS: f64 = 8.0;
