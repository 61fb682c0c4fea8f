//! Checking a picture: from the chooser to a copy that is safe to share, with good and bad files.

use self_check_tests::{Look, Page, Result, Scheme, journey};

use crate::walking::{arrive, heading, open_all};
use pictures::{Kind, Picture};

#[path = "pictures.rs"]
mod pictures;

const TITLE: &str = "Check a picture";

async fn at_the_page(page: &Page) -> Result<()> {
    page.open_at("#/picture").await?;
    arrive(page, TITLE).await
}

/// Gives the page a picture and waits until it can be marked.
async fn opened(page: &Page, picture: &Picture) -> Result<()> {
    page.choose_file("picture-file", picture.path()).await?;
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
        page.allow_downloads(picture.folder()).await?;
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
            pictures::must_hold_no_notes(&saved)?;
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
fn turned_greyscale_animated_and_deep_pictures_are_taken() -> Result<()> {
    for kind in [Kind::Turned, Kind::Grey, Kind::Animated, Kind::SixteenBit] {
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
        page.choose_file("picture-file", picture.path()).await?;
        page.click("button", "Cancel").await?;
        page.wait_for_text("Stopped.").await?;
        checked(page, &picture).await?;
        assert_eq!(band(page).await?, "Readable");
        Ok(())
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
            ("huge.png", pictures::huge_png(), "too large to open"),
            ("torn.png", pictures::torn_png(), "cannot open this picture"),
        ] {
            let path = good.folder().join(name);
            std::fs::write(&path, bytes)?;
            page.choose_file("picture-file", &path).await?;
            page.wait_for_text(wanted).await?;
            assert_eq!(page.focused_id().await?, "picture-trouble", "{name}");
        }
        let broken = good.broken_notes()?;
        opened(page, &broken).await?;
        page.wait_for_text("could not be read").await?;
        page.click("button", "Check this picture").await?;
        page.wait_for_text("Move both marks").await?;
        marked(page, &broken).await?;
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
        page.click("link", "Learn").await?;
        arrive(page, "Learn").await?;
        page.back().await?;
        arrive(page, TITLE).await?;
        assert_eq!(
            page.all("slider").await?.len(),
            0,
            "{}",
            heading(page).await?
        );
        let canvases = page
            .run("return document.querySelectorAll('canvas').length;")
            .await?;
        assert_eq!(canvases, 0);
        Ok(())
    })
}
