//! The copy that is safe to share: areas painted over, coded anew, and read again to see what came out.

use js_sys::Uint8Array;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, HtmlCanvasElement, Url};

use super::Area;
use super::decode::{Decoded, MOST_SEEN, Working, breathe, context_of, new_canvas};
use crate::browser::pause::keep_frames_coming;

/// What the copy is saved as.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum CopyFormat {
    /// Smaller.
    #[default]
    Jpeg,
    /// Without loss.
    Png,
}

impl CopyFormat {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Jpeg, Self::Png];

    const fn media_type(self) -> &'static str {
        match self {
            Self::Jpeg => "image/jpeg",
            Self::Png => "image/png",
        }
    }

    /// The name under which the browser saves it: it tells nothing.
    pub const fn file_name(self) -> &'static str {
        match self {
            Self::Jpeg => "picture.jpg",
            Self::Png => "picture.png",
        }
    }
}

/// A finished copy.
pub struct SafeCopy {
    /// Its bytes, as they will be saved.
    pub bytes: Vec<u8>,
    /// The copy decoded again, as large as it is shown.
    pub shown: HtmlCanvasElement,
    /// How many areas were looked at, and how many of them are one colour throughout.
    pub areas: usize,
    /// See `areas`.
    pub plain_areas: usize,
    /// What it is saved as.
    pub format: CopyFormat,
    address: String,
}

impl SafeCopy {
    /// Paints over `areas`, codes the result, has `bare` take out of its bytes
    /// what no viewer needs (browsers add a profile that names them), and reads it again. Areas are
    /// painted somewhat larger than they are, up to the squares in which JPEG codes colours, so that
    /// nothing beside them shines into them.
    ///
    /// `goes_on` is told how far it is; where it says no, nothing comes of it.
    pub async fn make(
        working: &Working,
        areas: &[Area],
        format: CopyFormat,
        bare: impl FnOnce(&[u8]) -> Option<Vec<u8>>,
        goes_on: impl Fn(f64) -> bool,
    ) -> Result<Option<Self>, JsValue> {
        breathe().await;
        let canvas = working.copied().await?;
        let context = context_of(&canvas)?;
        context.set_fill_style_str("#000");
        for area in areas {
            let [left, top, width, height] = painted(*area).map(f64::from);
            context.fill_rect(left, top, width, height);
        }
        breathe().await;
        let blob = coded(&canvas, format).await?;
        let bytes = bare(&bytes_of(&blob).await?).ok_or(JsValue::NULL)?;
        let blob = blob_of(&bytes, format)?;
        let bytes = bytes_of(&blob).await?;
        let decoded = Decoded::of(&blob).await?;
        let mut plain_areas = 0;
        for area in areas {
            if !goes_on(0.4) {
                return Ok(None);
            }
            plain_areas += usize::from(is_plain(&decoded, *area).await?);
        }
        let again = decoded.working(MOST_SEEN, |share| goes_on(0.5 + 0.5 * share));
        let Some(again) = again.await else {
            return if goes_on(1.0) {
                Err(JsValue::NULL)
            } else {
                Ok(None)
            };
        };
        drop(decoded);
        breathe().await;
        Ok(Some(Self {
            bytes,
            shown: again.seen,
            areas: areas.len(),
            plain_areas,
            format,
            address: Url::create_object_url_with_blob(&blob)?,
        }))
    }

    /// Where a link finds the copy; within this page alone, for as long as the copy is kept.
    pub fn address(&self) -> &str {
        &self.address
    }
}

impl Drop for SafeCopy {
    fn drop(&mut self) {
        let _ = Url::revoke_object_url(&self.address);
    }
}

/// An area with a rim, out to whole squares.
fn painted(area: Area) -> [u32; 4] {
    let down = |from: u32| from.saturating_sub(RIM) / SQUARE * SQUARE;
    let up = |to: u32| (to + RIM).div_ceil(SQUARE) * SQUARE;
    let (left, top) = (down(area.left), down(area.top));
    [
        left,
        top,
        up(area.left + area.width) - left,
        up(area.top + area.height) - top,
    ]
}

/// Whether an area is one colour throughout, in the copy as it was read again.
async fn is_plain(decoded: &Decoded, area: Area) -> Result<bool, JsValue> {
    let width = area.width.min(decoded.width().saturating_sub(area.left));
    let height = area.height.min(decoded.height().saturating_sub(area.top));
    if width == 0 || height == 0 {
        return Ok(false);
    }
    let canvas = new_canvas(1, 1)?;
    let rows = (BYTES_AT_ONCE / (4 * width)).max(1);
    let mut first = None;
    let mut row = 0;
    while row < height {
        let rows = rows.min(height - row);
        let part = Area {
            left: area.left,
            top: area.top + row,
            width,
            height: rows,
        };
        let colours = decoded.colours(&canvas, part)?;
        let colour = *first.get_or_insert_with(|| {
            let mut colour = [0; 4];
            colour
                .iter_mut()
                .zip(&colours)
                .for_each(|(slot, value)| *slot = *value);
            colour
        });
        if colours.chunks_exact(4).any(|pixel| pixel != colour) {
            return Ok(false);
        }
        row += rows;
        breathe().await;
    }
    Ok(true)
}

async fn bytes_of(blob: &Blob) -> Result<Vec<u8>, JsValue> {
    let buffer = JsFuture::from(blob.array_buffer()).await?;
    Ok(Uint8Array::new(&buffer).to_vec())
}

fn blob_of(bytes: &[u8], format: CopyFormat) -> Result<Blob, JsValue> {
    let options = BlobPropertyBag::new();
    options.set_type(format.media_type());
    let parts = js_sys::Array::of1(&Uint8Array::from(bytes));
    Blob::new_with_u8_array_sequence_and_options(&parts, &options)
}

async fn coded(canvas: &HtmlCanvasElement, format: CopyFormat) -> Result<Blob, JsValue> {
    let (sender, receiver) = js_promise();
    let deliver = Closure::once_into_js(move |blob: JsValue| sender(blob));
    canvas.to_blob_with_type_and_encoder_options(
        deliver.unchecked_ref(),
        format.media_type(),
        &JPEG_QUALITY.into(),
    )?;
    let frames = keep_frames_coming();
    let blob = JsFuture::from(receiver).await;
    drop(frames);
    breathe().await;
    blob?.dyn_into()
}

/// A promise, and what fulfils it.
fn js_promise() -> (impl FnOnce(JsValue), js_sys::Promise) {
    let resolver: Rc<Cell<Option<js_sys::Function>>> = Rc::default();
    let promise = {
        let resolver = Rc::clone(&resolver);
        js_sys::Promise::new(&mut move |resolve, _| resolver.set(Some(resolve)))
    };
    let fulfil = move |value: JsValue| {
        if let Some(resolve) = resolver.take() {
            let _ = resolve.call1(&JsValue::NULL, &value);
        }
    };
    (fulfil, promise)
}

/// JPEG codes colours in squares of 16 pixels where it halves their detail; beside a square it takes
/// the neighbour's colour into account over two pixels.
const SQUARE: u32 = 16;
const RIM: u32 = 4;

const JPEG_QUALITY: f64 = 0.9;
const BYTES_AT_ONCE: u32 = 1 << 20;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn painted_area_holds_the_area_with_its_rim_and_ends_on_squares() {
        for (left, top, width, height) in [
            (0, 0, 1, 1),
            (3, 40, 100, 7),
            (16, 16, 16, 16),
            (95, 13, 31, 64),
        ] {
            let [x, y, w, h] = painted(Area {
                left,
                top,
                width,
                height,
            });
            assert!(x <= left.saturating_sub(RIM) && y <= top.saturating_sub(RIM));
            assert!(x + w >= left + width + RIM && y + h >= top + height + RIM);
            assert!([x, y, w, h].iter().all(|value| value % SQUARE == 0));
        }
    }
}
