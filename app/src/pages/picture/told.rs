//! What the file tells beside the picture.

use self_check_core::metadata::PictureFile;
use yew::prelude::*;

use crate::copy::picture as words;

/// Place, time, device and anything else: whether, never which. `is_open` says that the picture itself is there too.
pub fn told(read: &PictureFile, is_open: bool) -> Html {
    let told = &read.metadata;
    let is_whole = read.is_read_whole();
    let yes_or_no = |is_told: bool| {
        if is_told {
            words::YES
        } else {
            words::not_found(is_whole)
        }
    };
    html! {
        <section aria-labelledby="picture-told">
            <h2 id="picture-told" tabindex="-1">{ words::TOLD }</h2>
            <dl class="facts">
                <dt>{ words::PLACE }</dt><dd>{ words::place(told.place, is_whole) }</dd>
                <dt>{ words::TIME }</dt><dd>{ yes_or_no(told.has_time) }</dd>
                <dt>{ words::DEVICE }</dt><dd>{ yes_or_no(told.has_device) }</dd>
                <dt>{ words::OTHERS }</dt><dd>{ yes_or_no(told.has_others) }</dd>
            </dl>
            if let Some(meaning) = words::told_means(told, is_whole) {
                <p>{ meaning }</p>
            }
            if told.has_others {
                <p>{ words::OTHERS_MEAN }</p>
            }
            if read.has_more_behind {
                <p>{ words::MORE_BEHIND }</p>
            } else if !is_whole {
                <p>{ words::UNREAD }</p>
            }
            if is_open && (told.tells_anything() || read.has_more_behind) {
                <p>{ words::LEFT_OUT }</p>
            }
            if is_open && read.breaks_off {
                <p>{ words::BREAKS_OFF }</p>
            }
            if is_open && read.is_animated {
                <p>{ words::ANIMATED }</p>
            }
        </section>
    }
}
