//! Text at twice its size, by the reader's own setting in the browser: nothing is cut off, nothing runs off the side,
//! no column becomes too thin to read.

use self_check_tests::{Look, Page, Result, journey};

use crate::looking::on_each_kind_of_page;
use crate::walking::heading;

/// Whatever cannot be read: what ends beyond the window, what is cut off by its own box, and what is squeezed into a
/// column thinner than two letters. Wide tables scroll inside their own frame, which is theirs to do.
const CANNOT_BE_READ: &str = "
    const wide = document.documentElement.clientWidth;
    const inFlow = e => !e.closest('.table-scroll, .visually-hidden, .skip');
    const name = e => `${e.tagName} ${e.className.baseVal ?? e.className}: ${e.textContent.trim().slice(0, 40)}`;
    return [...document.querySelectorAll('body *')].filter(inFlow).flatMap(e => {
        const box = e.getBoundingClientRect();
        if (!box.width && !box.height && !e.textContent.trim()) return [];
        const style = getComputedStyle(e);
        const size = parseFloat(style.fontSize);
        const holds = e.textContent.trim() && !e.closest('svg') && e.checkVisibility();
        const cut = style.overflow !== 'visible' && e.clientWidth
            && (e.scrollWidth > e.clientWidth + 1 || e.scrollHeight > e.clientHeight + 1);
        if (box.right > wide + 1 || box.left < -1) return ['beyond the side: ' + name(e)];
        if (holds && cut) return ['cut off: ' + name(e)];
        if (holds && box.width < 2 * size && box.height > 4 * size) return ['squeezed: ' + name(e)];
        return [];
    }).join('\\n');";

#[test]
fn text_at_twice_its_size_is_all_there() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.set_text_size(32).await?;
        on_each_kind_of_page(page, can_be_read).await
    })
}

/// On a computer, and on a phone.
async fn can_be_read(page: &Page) -> Result<()> {
    let size = page
        .run("return getComputedStyle(document.documentElement).fontSize;")
        .await?;
    assert_eq!(size, "32px", "the setting is heard");
    for look in [Look::DESKTOP, Look::PHONE] {
        page.set_look(look).await?;
        let heading = heading(page).await?;
        let lost = page.run(CANNOT_BE_READ).await?;
        assert_eq!(lost, "", "at “{heading}”, {} wide", look.width);
        assert!(page.fits_its_width().await?, "“{heading}” at {look:?}");
    }
    page.set_look(Look::DESKTOP).await
}

#[test]
fn squeezed_text_is_noticed() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        page.open().await?;
        assert_eq!(page.run(CANNOT_BE_READ).await?, "");
        page.run("document.querySelector('main .lede').style.width = '1rem';")
            .await?;
        let lost = page.run(CANNOT_BE_READ).await?;
        assert!(
            lost.as_str().unwrap_or_default().contains("squeezed"),
            "{lost}"
        );
        Ok(())
    })
}
