//! Checking a picture: from the chooser to a copy that is safe to share, with good and bad files.

use self_check_tests::given::{self, Kind, Picture};
use self_check_tests::{Look, Page, Result, Scheme, journey};
use serde_json::json;

use crate::walking::{arrive, heading, open_all, to_the_examples_result};

const TITLE: &str = "Check a picture";

async fn at_the_page(page: &Page) -> Result<()> {
    page.open_at("#/picture").await?;
    arrive(page, TITLE).await
}

/// Gives the page a picture and waits until it can be marked.
async fn opened(page: &Page, picture: &Picture) -> Result<()> {
    page.choose_file_in("picture-file", picture.path()).await?;
    page.wait_for_text("Mark the two ends of the blade").await
}

/// Sets both marks where the key of a drawn picture has its ends.
async fn marked(page: &Page, picture: &Picture) -> Result<()> {
    for (mark, end) in [(0.3, 0.5), (0.7, 0.5)].into_iter().zip(picture.ends()) {
        page.drag_on(".stage-over", mark, end).await?;
    }
    Ok(())
}

async fn checked(page: &Page, picture: &Picture) -> Result<()> {
    opened(page, picture).await?;
    marked(page, picture).await?;
    page.click("radio", "Five cuts, many small steps").await?;
    page.click("button", "Check this picture").await?;
    page.wait_for_text("What makes it safer").await
}

async fn band(page: &Page) -> Result<String> {
    let text = page
        .run("return document.querySelector('#picture-outcome').textContent;")
        .await?;
    Ok(text.as_str().unwrap_or_default().to_owned())
}

/// No figure that would tell how well a key can be read, nor how to read it better.
async fn says_no_more_than_bands(page: &Page) -> Result<()> {
    let text = page.visible_text().await?.to_lowercase();
    for word in [
        "pixel",
        "bits",
        "keys left",
        "sharper",
        "closer",
        "contrast",
        "per mm",
    ] {
        assert!(!text.contains(word), "{word}: {text}");
    }
    Ok(())
}

#[test]
fn clear_picture_of_a_key_is_readable_and_its_copy_is_clean() -> Result<()> {
    let picture = Picture::new(Kind::Clear)?.with_notes(&[
        "-EXIF:GPSLatitude=51.4772",
        "-EXIF:GPSLatitudeRef=N",
        "-EXIF:GPSLongitude=0.0014",
        "-EXIF:GPSLongitudeRef=W",
        "-EXIF:Model=A camera",
    ])?;
    journey(Look::DESKTOP, async |page| {
        at_the_page(page).await?;
        page.save_files_in(picture.folder()).await?;
        page.wait_for_text("Do not photograph your key for this")
            .await?;
        checked(page, &picture).await?;
        assert_eq!(band(page).await?, "Readable");
        if picture.has_notes() {
            page.wait_for_text("Yes, to the very house").await?;
            page.wait_for_text("the worst case").await?;
        }
        says_no_more_than_bands(page).await?;
        for (format, name) in [("JPEG", "picture.jpg"), ("PNG", "picture.png")] {
            page.click("radio", format).await?;
            page.click("button", "Make the copy").await?;
            page.wait_for_text("The covered part is one plain colour")
                .await?;
            page.click("link", "Save the copy").await?;
            let saved = picture.folder().join(name);
            page.wait_until("the copy is saved", async || Ok(saved.exists()))
                .await?;
            given::must_hold_no_notes(&saved)?;
            picture.must_be_covered(&saved)?;
        }
        Ok(())
    })
}

#[test]
fn tiny_small_and_empty_pictures_are_not_called_readable() -> Result<()> {
    for (kind, wanted) in [
        (Kind::Tiny, "Not readable"),
        (Kind::Few, "Partly readable"),
        (Kind::Small, "It cannot be told"),
        (Kind::Plain, "It cannot be told"),
    ] {
        let picture = Picture::new(kind)?;
        journey(Look::DESKTOP, async |page| {
            at_the_page(page).await?;
            checked(page, &picture).await?;
            assert_eq!(band(page).await?, wanted, "{kind:?}");
            says_no_more_than_bands(page).await
        })?;
    }
    Ok(())
}

#[test]
fn turned_greyscale_animated_deep_and_printed_pictures_are_taken() -> Result<()> {
    for kind in [
        Kind::Turned,
        Kind::Grey,
        Kind::Animated,
        Kind::SixteenBit,
        Kind::FourColours,
    ] {
        let picture = Picture::new(kind)?;
        journey(Look::PHONE, async |page| {
            at_the_page(page).await?;
            checked(page, &picture).await?;
            assert_eq!(band(page).await?, "Readable", "{kind:?}");
            if kind == Kind::Animated {
                page.wait_for_text("This picture moves").await?;
            }
            Ok(())
        })?;
    }
    Ok(())
}

#[test]
fn picture_of_48_megapixels_is_checked_and_can_be_stopped() -> Result<()> {
    let picture = Picture::new(Kind::Large)?;
    journey(Look::DESKTOP, async |page| {
        at_the_page(page).await?;
        page.choose_file_in("picture-file", picture.path()).await?;
        page.click("button", "Cancel").await?;
        page.wait_for_text("Stopped.").await?;
        checked(page, &picture).await?;
        assert_eq!(band(page).await?, "Readable");
        page.click("button", "Make the copy").await?;
        page.wait_for_text("The covered part is one plain colour")
            .await
    })
}

#[test]
fn bad_files_are_told_and_leave_the_page_usable() -> Result<()> {
    let good = Picture::new(Kind::Clear)?;
    journey(Look::DESKTOP, async |page| {
        at_the_page(page).await?;
        for (name, bytes, wanted) in [
            ("empty.jpg", Vec::new(), "This file is empty"),
            ("letter.jpg", b"Dear neighbour".to_vec(), "not a picture"),
            ("cut.jpg", good.bytes()?[..40].to_vec(), "breaks off"),
            ("huge.png", given::huge_png(), "too large to open"),
            ("torn.png", given::torn_png(), "cannot open this picture"),
        ] {
            let path = good.folder().join(name);
            std::fs::write(&path, bytes)?;
            page.choose_file_in("picture-file", &path).await?;
            page.wait_for_text(wanted).await?;
            assert_eq!(page.focused_id().await?, "picture-trouble", "{name}");
        }
        let whole = good.bytes()?;
        let half = good.folder().join("half.jpg");
        std::fs::write(&half, &whole[..whole.len() / 2])?;
        page.choose_file_in("picture-file", &half).await?;
        page.wait_for_text("This file breaks off").await?;
        let broken = good.broken_notes()?;
        opened(page, &broken).await?;
        page.wait_for_text("could not be read").await?;
        page.click("button", "Check this picture").await?;
        page.wait_for_text("Move both marks").await?;
        for from in [(0.3, 0.5), (0.7, 0.5)] {
            page.drag_on(".stage-over", from, (0.5, 0.8)).await?;
        }
        page.click("button", "Check this picture").await?;
        page.wait_for_text("Both marks are on one point").await?;
        let [(ax, ay), (bx, by)] = broken.ends();
        page.drag_on(".stage-over", (0.5, 0.8), (ax, ay)).await?;
        page.drag_on(".stage-over", (0.5, 0.8), (bx, by)).await?;
        page.click("button", "Check this picture").await?;
        page.wait_for_text("What makes it safer").await
    })
}

#[test]
fn marks_and_covers_move_by_keys_alone() -> Result<()> {
    let picture = Picture::new(Kind::Clear)?;
    journey(Look::DESKTOP, async |page| {
        at_the_page(page).await?;
        opened(page, &picture).await?;
        let place = async |name: &str| {
            page.text_at(&format!("[aria-label^='{name}']"), "aria-valuetext")
                .await
        };
        for (name, key) in [
            ("A, the shoulder", "ArrowLeft"),
            ("B, the tip", "ArrowRight"),
        ] {
            let before = place(name).await?;
            page.tab_to("slider", name).await?;
            page.press(&format!("Shift+{key}")).await?;
            page.press(key).await?;
            page.wait_until("the mark has moved", async || {
                Ok(place(name).await? != before)
            })
            .await?;
        }
        page.tab_to("button", "Check this picture").await?;
        page.press("Enter").await?;
        page.wait_for_text("Make a copy that is safe to share")
            .await?;
        page.tab_to("slider", "Cover 1").await?;
        let before = place("Cover 1").await?;
        page.press("ArrowRight").await?;
        page.wait_until("the cover has moved", async || {
            Ok(place("Cover 1").await? != before)
        })
        .await?;
        page.press("Delete").await?;
        page.wait_until("no cover is left", async || {
            Ok(page.all("slider").await?.len() == 2)
        })
        .await?;
        page.tab_to("button", "Make the copy").await?;
        page.press("Enter").await?;
        page.wait_for_text("Nothing is covered").await
    })
}

#[test]
fn page_is_accessible_with_a_picture_and_drops_it_on_leaving() -> Result<()> {
    let picture = Picture::new(Kind::Clear)?;
    journey(Look::DESKTOP, async |page| {
        at_the_page(page).await?;
        checked(page, &picture).await?;
        page.click("button", "Make the copy").await?;
        page.wait_for_text("A second look").await?;
        open_all(page).await?;
        let dark = Look {
            scheme: Scheme::Dark,
            ..Look::DESKTOP
        };
        for look in [dark, Look::NARROW, Look::DESKTOP] {
            page.set_look(look).await?;
            page.must_be_accessible().await?;
            assert!(page.fits_its_width().await?, "{look:?}");
        }
        Ok(())
    })
}

/// Whichever of the two programs shows the next page; the picture's own stays in memory behind the first's.
#[test]
fn picture_is_dropped_on_leaving() -> Result<()> {
    let picture = Picture::new(Kind::Clear)?;
    journey(Look::DESKTOP, async |page| {
        at_the_page(page).await?;
        page.run("window.room = document.querySelector('.room .room');")
            .await?;
        for (link, next) in [
            ("Learn", "Learn"),
            ("House Key Self-Check", "How private is your key?"),
        ] {
            checked(page, &picture).await?;
            assert_ne!(canvases(page).await?, 0);
            page.click("link", link).await?;
            arrive(page, next).await?;
            page.wait_until("nothing is left of the picture", async || {
                Ok(canvases(page).await? == 0)
            })
            .await?;
            page.back().await?;
            arrive(page, TITLE).await?;
            assert_eq!(
                page.all("slider").await?.len(),
                0,
                "{}",
                heading(page).await?
            );
            assert!(!page.visible_text().await?.contains("What the file tells"));
        }
        Ok(())
    })
}

/// How many parts of a picture the second program holds, in the page or out of it.
async fn canvases(page: &Page) -> Result<serde_json::Value> {
    page.run("return window.room.querySelectorAll('canvas').length;")
        .await
}

#[test]
fn picture_can_be_dropped_on_the_page_and_pasted() -> Result<()> {
    let picture = Picture::new(Kind::Clear)?;
    journey(Look::DESKTOP, async |page| {
        for event in [
            "document.querySelector('.picture').dispatchEvent(
                new DragEvent('drop', { dataTransfer: held, bubbles: true, cancelable: true }))",
            "document.dispatchEvent(new ClipboardEvent('paste', { clipboardData: held, bubbles: true }))",
        ] {
            at_the_page(page).await?;
            page.run(
                "const field = document.createElement('input');
                 field.type = 'file'; field.id = 'held'; document.body.append(field);",
            )
            .await?;
            page.choose_file_in("held", picture.path()).await?;
            page.run(&format!(
                "const held = new DataTransfer();
                 held.items.add(document.getElementById('held').files[0]); {event};"
            ))
            .await?;
            page.wait_for_text("Mark the two ends of the blade").await?;
        }
        Ok(())
    })
}

#[test]
fn marks_are_set_by_touch_first_one_then_the_other() -> Result<()> {
    let picture = Picture::new(Kind::Clear)?;
    journey(Look::PHONE, async |page| {
        at_the_page(page).await?;
        page.cdp(
            "Emulation.setTouchEmulationEnabled",
            json!({ "enabled": true }),
        )
        .await?;
        opened(page, &picture).await?;
        // Both presses are nearer to the first mark than to the second.
        for (from, to) in [((0.1, 0.2), (0.05, 0.25)), ((0.3, 0.25), (0.32, 0.3))] {
            page.touch_on(".stage-over", from, to).await?;
        }
        for (name, wanted) in [
            ("A, the shoulder", "5 % from the left, 25 % from the top"),
            ("B, the tip", "32 % from the left, 30 % from the top"),
        ] {
            let place = page
                .text_at(&format!("[aria-label^='{name}']"), "aria-valuetext")
                .await?;
            assert_eq!(place, wanted, "{name}");
        }
        page.wait_until("the loupe is there", async || {
            Ok(page
                .run("return document.querySelectorAll('.loupe canvas').length;")
                .await?
                == 1)
        })
        .await
    })
}

#[test]
fn covers_are_drawn_moved_and_sized_by_pointer() -> Result<()> {
    const STAGE: &str = "[aria-labelledby='picture-copy'] .stage-over";
    let picture = Picture::new(Kind::Clear)?;
    journey(Look::DESKTOP, async |page| {
        at_the_page(page).await?;
        page.save_files_in(picture.folder()).await?;
        checked(page, &picture).await?;
        // Drawn, moved by a tenth of the picture, and pulled out to its lower edge.
        page.drag_on(STAGE, (0.05, 0.9), (0.15, 0.94)).await?;
        page.drag_on(STAGE, (0.08, 0.92), (0.18, 0.92)).await?;
        page.drag_on(STAGE, (0.25, 0.94), (0.4, 0.98)).await?;
        page.click("radio", "PNG").await?;
        page.click("button", "Make the copy").await?;
        page.wait_for_text("All 2 covered parts are one plain colour")
            .await?;
        page.click("link", "Save the copy").await?;
        let saved = picture.folder().join("picture.png");
        page.wait_until("the copy is saved", async || Ok(saved.exists()))
            .await?;
        picture.must_be_covered(&saved)?;
        given::must_be_plain(&saved, (0.15, 0.9), (0.39, 0.97))?;
        // Marked anew, the key is covered where it is now, and the other cover stays.
        page.drag_on(".stage-over", picture.ends()[0], (0.25, 0.45))
            .await?;
        page.click("button", "Check this picture").await?;
        page.wait_for_text("What makes it safer").await?;
        page.click("button", "Remove cover 2").await?;
        page.wait_until("one cover is left", async || {
            Ok(page
                .run("return document.querySelectorAll('.cover').length;")
                .await?
                == 1)
        })
        .await
    })
}

#[test]
fn result_leads_to_the_picture_page_where_a_picture_was_shared() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        to_the_examples_result(page).await?;
        page.click("link", TITLE).await?;
        arrive(page, TITLE).await?;
        page.back().await?;
        page.wait_for_text("Take it along").await?;
        page.click("link", "Learn").await?;
        arrive(page, "Learn").await?;
        page.click("link", TITLE).await?;
        arrive(page, TITLE).await
    })
}
