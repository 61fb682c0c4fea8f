//! What the file tells beside the picture.

use self_check_core::metadata::PictureFile;
use yew::prelude::*;

use crate::copy::picture as words;

/// Place, time and device: whether, never which. `is_open` says that the picture itself is there too.
pub fn told(read: &PictureFile, is_open: bool) -> Html {
    let told = &read.metadata;
    let yes_or_no = |is_told: bool| if is_told { words::YES } else { words::NO };
    html! {
        <section aria-labelledby="picture-told">
            <h2 id="picture-told">{ words::TOLD }</h2>
            <dl class="facts">
                <dt>{ words::PLACE }</dt><dd>{ words::place(told.place) }</dd>
                <dt>{ words::TIME }</dt><dd>{ yes_or_no(told.has_time) }</dd>
                <dt>{ words::DEVICE }</dt><dd>{ yes_or_no(told.has_device) }</dd>
            </dl>
            <p>{ words::told_means(told) }</p>
            if told.has_unread {
                <p>{ words::UNREAD }</p>
            }
            if is_open && told.tells_anything() {
                <p>{ words::LEFT_OUT }</p>
            }
            if read.breaks_off {
                <p>{ words::BREAKS_OFF }</p>
            }
            if read.is_animated {
                <p>{ words::ANIMATED }</p>
            }
        </section>
    }
}
