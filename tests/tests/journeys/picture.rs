//! Checking a picture: from the chooser to a copy that is safe to share, with good and bad files.

use std::path::Path;

use self_check_tests::given::{self, Kind, Picture};
use self_check_tests::{Look, Page, Result, journey};
use serde_json::json;

use crate::looking::look;
use crate::walking::{arrive, heading, to_the_examples_result};

const TITLE: &str = "Check a picture";

pub async fn at_the_page(page: &Page) -> Result<()> {
    page.open_at("#/picture").await?;
    arrive(page, TITLE).await
}

/// Gives the page a picture and waits until it can be marked.
async fn opened(page: &Page, picture: &Picture) -> Result<()> {
    opened_file(page, picture.path()).await
}

async fn opened_file(page: &Page, path: &Path) -> Result<()> {
    page.choose_file_in("picture-file", path).await?;
    page.wait_for_text("Mark the two ends of the blade").await?;
    // The page moves to its new part: a press before that would land beside the picture.
    page.wait_until("the heading has the focus", async || {
        Ok(page.focused_id().await? == "picture-told")
    })
    .await
}

/// Sets both marks where the key of a drawn picture has its ends.
async fn marked(page: &Page, picture: &Picture) -> Result<()> {
    for (mark, end) in [(0.3, 0.5), (0.7, 0.5)].into_iter().zip(picture.ends()) {
        page.drag_on(".stage-over", mark, end).await?;
    }
    Ok(())
}

pub async fn checked(page: &Page, picture: &Picture) -> Result<()> {
    opened(page, picture).await?;
    check_as_marked(page, picture).await
}

async fn check_as_marked(page: &Page, picture: &Picture) -> Result<()> {
    marked(page, picture).await?;
    page.click("radio", "Round, also where it sits in a knob")
        .await?;
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
        // Its own copy shows no key to this page either.
        for name in ["picture.jpg", "picture.png"] {
            page.click("button", "Check another picture").await?;
            opened_file(page, &picture.folder().join(name)).await?;
            check_as_marked(page, &picture).await?;
            assert_eq!(band(page).await?, "No blade to be seen", "{name}");
            page.wait_for_text("no key was found there").await?;
        }
        Ok(())
    })
}

/// A strip along the blade leaves its cuts bare; marks taken for each other cover the bow all the same.
#[test]
fn half_a_cover_is_no_cover() -> Result<()> {
    const STAGE: &str = "[aria-labelledby='picture-copy'] .stage-over";
    let picture = Picture::new(Kind::Clear)?;
    let [(ax, ay), (bx, by)] = picture.ends();
    journey(Look::PHONE, async |page| {
        at_the_page(page).await?;
        opened(page, &picture).await?;
        page.drag_on(".stage-over", (0.3, 0.5), (bx, by)).await?;
        page.drag_on(".stage-over", (0.7, 0.5), (ax, ay)).await?;
        page.click("button", "Check this picture").await?;
        page.wait_for_text("A cover lies where you marked the key")
            .await?;
        let reach = "const cover = document.querySelector('.cover-box'); \
            return ['x', 'width'].map(name => Number(cover.getAttribute(name)));";
        let swapped = page.run(reach).await?;
        page.drag_on(".stage-over", (bx, by), (0.5, 0.05)).await?;
        page.drag_on(".stage-over", (ax, ay), (bx, by)).await?;
        page.drag_on(".stage-over", (0.5, 0.05), (ax, ay)).await?;
        page.click("button", "Check this picture").await?;
        page.wait_for_text("A cover lies where you marked the key")
            .await?;
        assert_eq!(page.run(reach).await?, swapped);
        page.click("button", "Remove cover 1").await?;
        page.wait_for_text("Nothing is covered").await?;
        page.click("button", "Make the copy").await?;
        page.wait_for_text("Nothing is covered").await?;
        page.drag_on(STAGE, (0.01, ay - 0.01), (0.99, ay + 0.01))
            .await?;
        page.wait_until("what was wrong is no longer said", async || {
            Ok(!page.visible_text().await?.contains("Nothing is covered"))
        })
        .await?;
        page.wait_for_text("The key is not wholly covered").await?;
        page.drag_on(STAGE, (0.01, 0.05), (0.99, 0.95)).await?;
        page.wait_for_text("A cover lies where you marked the key")
            .await
    })
}

/// Pictures as people have them, and pictures of next to nothing: every band, with and without doubt.
#[test]
fn every_band_is_reached_and_says_where_it_is_not_sure() -> Result<()> {
    for (kind, wanted) in [
        (Kind::OutOfFocus, "Probably readable"),
        (Kind::Few, "At most partly readable"),
        (Kind::Slight, "Probably not readable"),
        (Kind::Tiny, "Not readable"),
        (Kind::Fog, "It cannot be told"),
        (Kind::Small, "It cannot be told"),
        (Kind::Plain, "No blade to be seen"),
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

/// One message, in the box at the top and beside the field that the box leads to.
async fn says_one_thing(page: &Page, message: &str, field: &str) -> Result<()> {
    page.wait_for_text(message).await?;
    page.wait_until("the box has the focus", async || {
        Ok(page.focused_id().await? == "error-summary")
    })
    .await?;
    let title = page.title().await?;
    assert!(title.starts_with("Error: "), "{title}");
    let told = page
        .run(
            "return [...document.querySelectorAll('.error-summary a, .picture .error')]
                .map((part) => part.textContent);",
        )
        .await?;
    let told: Vec<&str> = told.as_array().map_or(Vec::new(), |told| {
        told.iter().filter_map(|text| text.as_str()).collect()
    });
    let [at_the_top, beside] = told[..] else {
        return Err(format!("{message}: {told:?}").into());
    };
    assert_eq!(at_the_top, beside);
    assert!(at_the_top.contains(message), "{at_the_top}");
    page.click("link", at_the_top).await?;
    assert_eq!(page.focused_id().await?, field, "{message}");
    let described = page
        .text_at(&format!("#{field}"), "aria-describedby")
        .await?;
    assert!(described.contains("picture-error"), "{described}");
    assert!(
        beside_the_focus(page).await?,
        "{message}: the message is out of sight"
    );
    Ok(())
}

/// Whether the message and the field that has the focus are in sight together.
async fn beside_the_focus(page: &Page) -> Result<bool> {
    let both = "const seen = (element) => {
            const { top, bottom } = element.getBoundingClientRect();
            return top < innerHeight && bottom > 0;
        };
        return seen(document.getElementById('picture-error')) && seen(document.activeElement);";
    Ok(page.run(both).await? == true)
}

#[test]
fn bad_files_are_told_once_and_leave_the_page_usable() -> Result<()> {
    let good = Picture::new(Kind::Clear)?;
    let whole = good.bytes()?;
    for look in [Look::DESKTOP, Look::PHONE] {
        journey(look, async |page| {
            at_the_page(page).await?;
            for (name, bytes, wanted) in [
                ("empty.jpg", Vec::new(), "This file is empty"),
                ("letter.jpg", b"Dear neighbour".to_vec(), "not a picture"),
                ("cut.jpg", whole[..40].to_vec(), "breaks off"),
                ("huge.png", given::huge_png(), "too large to open"),
                ("torn.png", given::torn_png(), "breaks off"),
                ("bare.heic", given::bare_heic(), "cannot open this picture"),
            ] {
                let path = good.folder().join(name);
                std::fs::write(&path, bytes)?;
                page.choose_file_in("picture-file", &path).await?;
                says_one_thing(page, wanted, "picture-file").await?;
                let text = page.visible_text().await?;
                // The phone's file is whole; it holds no picture that a browser could open.
                let is_broken = name.ends_with("png");
                assert!(
                    !(is_broken && text.contains("nothing of the kind")),
                    "{name}: {text}"
                );
                assert_eq!(
                    is_broken,
                    text.contains("Not found in what could be read"),
                    "{name}: {text}"
                );
            }
            opened(page, &good).await
        })?;
    }
    Ok(())
}

/// Neither says that there are no notes: what was not read may hold some.
#[test]
fn files_that_were_not_read_whole_say_so() -> Result<()> {
    let good = Picture::new(Kind::Clear)?;
    let whole = good.bytes()?;
    let half = good.folder().join("half.jpg");
    std::fs::write(&half, &whole[..whole.len() / 2])?;
    let broken = good.broken_notes()?;
    journey(Look::PHONE, async |page| {
        at_the_page(page).await?;
        page.choose_file_in("picture-file", &half).await?;
        says_one_thing(page, "This file breaks off", "picture-file").await?;
        page.wait_for_text("Not found in what could be read")
            .await?;
        let text = page.visible_text().await?;
        assert!(!text.contains("nothing of the kind"), "{text}");
        opened(page, &broken).await?;
        page.wait_for_text("Not found in what could be read")
            .await?;
        let text = page.visible_text().await?;
        assert!(!text.contains("nothing of the kind"), "{text}");
        assert!(!text.contains("There is a problem"), "{text}");
        Ok(())
    })
}

#[test]
fn marks_that_cannot_be_are_told_beside_the_picture() -> Result<()> {
    let picture = Picture::new(Kind::Clear)?;
    for look in [Look::DESKTOP, Look::PHONE] {
        journey(look, async |page| {
            at_the_page(page).await?;
            opened(page, &picture).await?;
            page.click("button", "Check this picture").await?;
            says_one_thing(page, "Move both marks", "picture-mark-0").await?;
            page.drag_on(".stage-over", (0.3, 0.5), (0.5, 0.8)).await?;
            page.click("button", "Check this picture").await?;
            says_one_thing(page, "Move both marks", "picture-mark-1").await?;
            page.drag_on(".stage-over", (0.7, 0.5), (0.5, 0.8)).await?;
            page.click("button", "Check this picture").await?;
            says_one_thing(page, "Both marks are on one point", "picture-mark-0").await?;
            // A mark pulled out of the picture stays at its edge.
            let [(ax, ay), (bx, by)] = picture.ends();
            page.drag_on(".stage-over", (0.5, 0.8), (-0.05, ay)).await?;
            assert_eq!(
                place(page, "A, the shoulder").await?,
                "0 % from the left, 50 % from the top"
            );
            page.drag_on(".stage-over", (0.0, ay), (ax, ay)).await?;
            page.drag_on(".stage-over", (0.5, 0.8), (bx, by)).await?;
            page.click("button", "Check this picture").await?;
            page.wait_for_text("What makes it safer").await?;
            covers_move_by_single_presses(page).await?;
            page.click("button", "Remove cover 1").await?;
            page.click("button", "Make the copy").await?;
            says_one_thing(page, "Nothing is covered", "picture-add-cover").await
        })?;
    }
    Ok(())
}

/// Each button takes back what its neighbour did.
async fn covers_move_by_single_presses(page: &Page) -> Result<()> {
    page.run("document.querySelector('.presses').open = true")
        .await?;
    let cover = "Cover 1";
    // It reaches from edge to edge and has to be narrower before it can go to either side.
    page.click("button", "Narrower: cover 1").await?;
    for (moved, one, other) in [
        (cover, "Up", "Down"),
        (cover, "Right", "Left"),
        (cover, "Narrower", "Wider"),
        (cover, "Flatter", "Taller"),
    ] {
        let before = exact_place(page, moved).await?;
        page.click("button", &format!("{one}: cover 1")).await?;
        page.wait_until(one, async || Ok(exact_place(page, moved).await? != before))
            .await?;
        page.click("button", &format!("{other}: cover 1")).await?;
        page.wait_until(
            other,
            async || Ok(exact_place(page, moved).await? == before),
        )
        .await?;
    }
    Ok(())
}

/// Where a mark, a cover or a corner is, in the words that a screen reader gets, to whole per cent.
async fn place(page: &Page, name: &str) -> Result<String> {
    let exact = exact_place(page, name).await?;
    let words = exact.split(' ').map(|word| match word.parse::<f64>() {
        Ok(number) => format!("{number:.0}"),
        Err(_) => word.to_owned(),
    });
    Ok(words.collect::<Vec<_>>().join(" "))
}

async fn exact_place(page: &Page, name: &str) -> Result<String> {
    page.text_at(&format!("[aria-label^='{name}']"), "aria-valuetext")
        .await
}

/// How many pixels of the picture lie to the left of a mark.
async fn across(page: &Page, name: &str) -> Result<f64> {
    let value = page
        .text_at(&format!("[aria-label^='{name}']"), "aria-valuenow")
        .await?;
    Ok(value.parse()?)
}

async fn place_after(page: &Page, name: &str, key: &str, wanted: &str) -> Result<()> {
    page.press(key).await?;
    let what = format!("{name} is at {wanted} after {key}");
    let is_there = async || Ok(place(page, name).await?.starts_with(wanted));
    page.wait_until(&what, is_there).await
}

/// The picture is 1200 pixels wide and 900 high.
#[test]
fn marks_and_covers_move_by_keys_alone() -> Result<()> {
    let picture = Picture::new(Kind::Clear)?;
    journey(Look::DESKTOP, async |page| {
        at_the_page(page).await?;
        opened(page, &picture).await?;
        for (name, keys) in [
            (
                "A, the shoulder",
                [
                    ("Home", "0 % from the left, 50 % from the top"),
                    ("PageUp", "0 % from the left, 0 % from the top"),
                    ("Shift+ArrowRight", "4 % from the left, 0 % from the top"),
                    ("Shift+ArrowDown", "4 % from the left, 5 % from the top"),
                ],
            ),
            (
                "B, the tip",
                [
                    ("PageDown", "70 % from the left, 100 % from the top"),
                    ("End", "100 % from the left, 100 % from the top"),
                    ("Shift+ArrowUp", "100 % from the left, 95 % from the top"),
                    ("Shift+ArrowLeft", "96 % from the left, 95 % from the top"),
                ],
            ),
        ] {
            page.tab_to("slider", name).await?;
            let keys_told = page.focused_describedby().await?;
            assert!(keys_told.contains("arrow keys"), "{keys_told}");
            for (key, wanted) in keys {
                place_after(page, name, key, wanted).await?;
            }
            let before = across(page, name).await?;
            page.press("ArrowLeft").await?;
            let wanted = before - 1.0;
            page.wait_until("the mark has moved a little", async || {
                Ok(across(page, name).await? == wanted)
            })
            .await?;
        }
        page.tab_to("button", "Check this picture").await?;
        page.press("Enter").await?;
        page.wait_for_text("Make a copy that is safe to share")
            .await?;
        page.tab_to("button", "Add a cover").await?;
        page.press("Enter").await?;
        page.wait_until("the new cover has the focus", async || {
            Ok(page.focused_id().await? == "picture-cover-1")
        })
        .await?;
        assert!(is_in_sight(page).await?);
        let keys_told = page.focused_describedby().await?;
        assert!(keys_told.contains("Delete"), "{keys_told}");
        for (key, wanted) in [
            ("Home", "0 % from the left"),
            ("PageUp", "0 % from the left, 0 % from the top"),
            ("Shift+ArrowRight", "5 % from the left, 0 % from the top"),
        ] {
            page.press(key).await?;
            page.wait_until(key, async || {
                Ok(place(page, "Cover 2").await?.starts_with(wanted))
            })
            .await?;
        }
        page.press("Tab").await?;
        let corner = "Corner of cover 2";
        for (key, wanted) in [
            ("End", "100 % from the left, 20 % from the top"),
            ("PageDown", "100 % from the left, 100 % from the top"),
            ("Shift+ArrowLeft", "95 % from the left, 100 % from the top"),
        ] {
            place_after(page, corner, key, wanted).await?;
        }
        assert_eq!(
            place(page, "Cover 2").await?,
            "5 % from the left, 0 % from the top, 90 % wide, 100 % high"
        );
        for left in [1, 0] {
            page.tab_to("slider", "Cover 1").await?;
            page.press("Delete").await?;
            page.wait_until("a cover less is there", async || {
                Ok(page.run(COVERS).await? == left)
            })
            .await?;
        }
        page.tab_to("button", "Make the copy").await?;
        page.press("Enter").await?;
        page.wait_for_text("Nothing is covered").await
    })
}

const COVERS: &str = "return document.querySelectorAll('.cover').length;";

/// Whether all of what has the focus is inside the window.
async fn is_in_sight(page: &Page) -> Result<bool> {
    let seen = "const { top, bottom, height } = document.activeElement.getBoundingClientRect();
        return height > 0 && top >= 0 && bottom <= innerHeight;";
    Ok(page.run(seen).await? == true)
}

#[test]
fn page_is_accessible_with_a_picture_and_drops_it_on_leaving() -> Result<()> {
    let picture = Picture::new(Kind::Clear)?;
    journey(Look::DESKTOP, async |page| {
        at_the_page(page).await?;
        checked(page, &picture).await?;
        page.click("button", "Make the copy").await?;
        page.wait_for_text("A second look").await?;
        look(page).await
    })
}

/// Whichever of the two programs shows the next page; the picture's own stays in memory behind the first's.
#[test]
fn picture_is_dropped_on_leaving() -> Result<()> {
    let picture = Picture::new(Kind::Clear)?;
    journey(Look::DESKTOP, async |page| {
        for (before, next) in [("#/learn", "Learn"), ("#/", "How private is your key?")] {
            page.open_at(before).await?;
            arrive(page, next).await?;
            page.run("location.hash = '#/picture';").await?;
            arrive(page, TITLE).await?;
            page.run(
                "window.room = document.querySelector('.room .room');
                 window.revoked = [];
                 const revoke = URL.revokeObjectURL.bind(URL);
                 URL.revokeObjectURL = (address) => { window.revoked.push(address); revoke(address); };",
            )
            .await?;
            for leaves_by_back in [false, true] {
                checked(page, &picture).await?;
                page.click("button", "Make the copy").await?;
                page.wait_for_text("A second look").await?;
                assert_ne!(canvases(page).await?, 0);
                let copy = page.text_at("a[download]", "href").await?;
                assert!(!is_revoked(page, &copy).await?);
                if leaves_by_back {
                    page.back().await?;
                } else if next == "Learn" {
                    page.click("link", next).await?;
                } else {
                    page.click("link", "House Key Self-Check").await?;
                }
                page.wait_until("nothing is left of the picture", async || {
                    Ok(canvases(page).await? == 0)
                })
                .await?;
                assert!(is_revoked(page, &copy).await?, "the copy is still there");
                // What is pasted elsewhere is not taken in behind the reader's back.
                paste(page, &picture).await?;
                if leaves_by_back {
                    page.forward().await?;
                } else {
                    page.back().await?;
                }
                arrive(page, TITLE).await?;
                let sliders = page.all("slider").await?.len();
                assert_eq!(sliders, 0, "{}", heading(page).await?);
                let text = page.visible_text().await?;
                assert!(!text.contains("What the file tells"), "{text}");
            }
        }
        Ok(())
    })
}

/// Whether the browser was told to let go of what it has at an address of this page's own.
async fn is_revoked(page: &Page, address: &str) -> Result<bool> {
    let asked = format!("return window.revoked.includes('{address}');");
    Ok(page.run(&asked).await? == true)
}

/// How many parts of a picture the second program holds, in the page or out of it.
async fn canvases(page: &Page) -> Result<serde_json::Value> {
    page.run("return window.room.querySelectorAll('canvas').length;")
        .await
}

/// Hands a file to the page as an event would: `held` in the script is the file, in the hands of a drop or of a paste.
async fn hand_over(page: &Page, picture: &Picture, event: &str) -> Result<()> {
    page.run(
        "const field = document.createElement('input');
         field.type = 'file'; field.id = 'held'; document.body.append(field);",
    )
    .await?;
    page.choose_file_in("held", picture.path()).await?;
    page.run(&format!(
        "const field = document.getElementById('held');
         const held = new DataTransfer(); held.items.add(field.files[0]); {event}; field.remove();"
    ))
    .await?;
    Ok(())
}

async fn paste(page: &Page, picture: &Picture) -> Result<()> {
    let event = "document.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData: held, bubbles: true }))";
    hand_over(page, picture, event).await
}

async fn drop_on_the_page(page: &Page, picture: &Picture) -> Result<()> {
    let event = "document.querySelector('.picture').dispatchEvent(
        new DragEvent('drop', { dataTransfer: held, bubbles: true, cancelable: true }))";
    hand_over(page, picture, event).await
}

#[test]
fn picture_can_be_dropped_on_the_page_and_pasted() -> Result<()> {
    let picture = Picture::new(Kind::Clear)?;
    journey(Look::DESKTOP, async |page| {
        at_the_page(page).await?;
        drop_on_the_page(page, &picture).await?;
        page.wait_for_text("Mark the two ends of the blade").await?;
        at_the_page(page).await?;
        paste(page, &picture).await?;
        page.wait_for_text("Mark the two ends of the blade").await
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
            assert_eq!(place(page, name).await?, wanted, "{name}");
        }
        // The loupe goes with the finger, and is there again for whoever comes by keyboard.
        let loupes = async |count: u64| {
            let shown = page.run("return document.querySelectorAll('.loupe canvas').length;");
            Ok(shown.await? == count)
        };
        page.wait_until("the loupe is gone", async || loupes(0).await)
            .await?;
        page.tab_to("slider", "A, the shoulder").await?;
        page.wait_until("the loupe is there", async || loupes(1).await)
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
            Ok(page.run(COVERS).await? == 1)
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
