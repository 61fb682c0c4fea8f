//! Files saved and opened, against another program of the same standard, and files of every wrong kind.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use self_check_tests::{Look, Page, Result, journey};

use super::{PAGE, holds, wait_to_hold, with_a_home};

const PASSPHRASE: &str = "brass hinge under a quiet lamp";

/// An empty folder for one journey.
fn folder(name: &str) -> Result<PathBuf> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    if folder.exists() {
        std::fs::remove_dir_all(&folder)?;
    }
    std::fs::create_dir_all(&folder)?;
    Ok(folder)
}

/// Locks or opens with the other program.
fn other_program(act: &str, passphrase: &str, input: &[u8]) -> Result<Option<Vec<u8>>> {
    let module = std::env::var("SELF_CHECK_AGE").map_err(
        |_| "SELF_CHECK_AGE is not set: run the journeys by `cargo xtask test journeys`",
    )?;
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/journeys/age.mjs");
    let mut program = Command::new("node")
        .arg(script)
        .args([&*module, act, passphrase])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()?;
    let mut stdin = program.stdin.take().ok_or("no way in")?;
    stdin.write_all(input)?;
    drop(stdin);
    let output = program.wait_with_output()?;
    Ok(output.status.success().then_some(output.stdout))
}

async fn type_into(page: &Page, name: &str, text: &str) -> Result<()> {
    page.click("textbox", name).await?;
    page.run("document.activeElement.value = '';").await?;
    page.type_text(text).await
}

async fn save_locked(page: &Page, first: &str, second: &str) -> Result<()> {
    type_into(page, "Passphrase", first).await?;
    type_into(page, "The same once more", second).await?;
    page.click("button", "Save a locked file").await
}

#[test]
fn locked_file_opens_in_another_program_and_here() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        let folder = folder("locked")?;
        page.save_files_in(&folder).await?;
        let home = with_a_home(page).await?;
        save_locked(page, "too short", "too short").await?;
        page.wait_for_text("Make the passphrase longer").await?;
        assert_eq!(page.focused().await?.name, "Passphrase");
        save_locked(page, PASSPHRASE, "another one altogether").await?;
        page.wait_for_text("The two passphrases differ").await?;
        assert!(
            std::fs::read_dir(&folder)?.next().is_none(),
            "nothing was saved"
        );
        save_locked(page, PASSPHRASE, PASSPHRASE).await?;
        page.wait_for_text("The browser has the file").await?;
        let left = page
            .run("return [...document.querySelectorAll('main input[type=password]')].map(f => f.value).join('');")
            .await?;
        assert_eq!(left, "", "no passphrase stays on the page");
        let file = page.saved_file(&folder, "self-check.age").await?;
        assert!(file.starts_with(b"age-encryption.org/v1\n-> scrypt "));
        let record =
            other_program("open", PASSPHRASE, &file)?.ok_or("the file does not open elsewhere")?;
        assert!(record.starts_with(br#"{"version":1,"record":"keys-and-doors""#));
        assert_eq!(
            other_program("open", "another one altogether", &file)?,
            None
        );

        page.open_at(PAGE).await?;
        page.choose_file(&folder.join("self-check.age")).await?;
        page.wait_for_text("This file is locked").await?;
        page.wait_until("the field for the passphrase has the focus", async || {
            Ok(page.focused_id().await? == "file-passphrase")
        })
        .await?;
        page.must_be_accessible().await?;
        page.type_text("another one altogether").await?;
        page.press("Enter").await?;
        page.wait_for_text("This passphrase does not open the file")
            .await?;
        page.run("document.getElementById('file-passphrase').value = '';")
            .await?;
        page.run("document.getElementById('file-passphrase').focus();")
            .await?;
        page.type_text(PASSPHRASE).await?;
        page.press("Enter").await?;
        wait_to_hold(page, &home).await?;
        page.wait_for_text("The file is open").await
    })
}

#[test]
fn file_locked_by_another_program_opens_here() -> Result<()> {
    journey(Look::PHONE, async |page| {
        let folder = folder("theirs")?;
        page.save_files_in(&folder).await?;
        let home = with_a_home(page).await?;
        page.run("document.querySelectorAll('.keep details').forEach(d => d.open = true);")
            .await?;
        page.click("button", "Save without a lock").await?;
        let record = page.saved_file(&folder, "self-check.json").await?;
        // The other program works twice as hard as this page and fills 256 MiB.
        let locked =
            other_program("lock", PASSPHRASE, &record)?.ok_or("the other program fails")?;
        assert!(locked.starts_with(b"age-encryption.org/v1\n-> scrypt "));
        std::fs::write(folder.join("theirs.age"), locked)?;
        page.open_at(PAGE).await?;
        page.choose_file(&folder.join("theirs.age")).await?;
        page.wait_for_text("This file is locked").await?;
        has_the_focus(page, "file-passphrase").await?;
        page.click("button", "Leave it closed").await?;
        page.wait_for_text("Nothing was changed.").await?;
        has_the_focus(page, "keep-open").await?;
        page.run("document.getElementById('keep-file').value = '';")
            .await?;
        page.choose_file(&folder.join("theirs.age")).await?;
        has_the_focus(page, "file-passphrase").await?;
        page.type_text(PASSPHRASE).await?;
        page.press("Enter").await?;
        wait_to_hold(page, &home).await
    })
}

#[test]
fn file_replaces_what_is_on_the_page_only_after_a_question() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        let folder = folder("plain")?;
        page.save_files_in(&folder).await?;
        let home = with_a_home(page).await?;
        page.run("document.querySelectorAll('.keep details').forEach(d => d.open = true);")
            .await?;
        page.wait_for_text("Anyone who comes by the file can read")
            .await?;
        page.click("button", "Save without a lock").await?;
        page.saved_file(&folder, "self-check.json").await?;
        let more = super::with_a_shed_more(page).await?;
        page.choose_file(&folder.join("self-check.json")).await?;
        page.wait_for_text("Replace what is on this page?").await?;
        assert_eq!(holds(page).await?, more);
        has_the_focus(page, "keep-replaces").await?;
        page.must_be_accessible().await?;
        page.click("button", "Leave it as it is").await?;
        page.wait_for_text("Nothing was changed.").await?;
        has_the_focus(page, "keep-open").await?;
        assert_eq!(holds(page).await?, more);
        page.choose_file(&folder.join("self-check.json")).await?;
        has_the_focus(page, "keep-replaces").await?;
        page.click("button", "Replace it").await?;
        wait_to_hold(page, &home).await?;
        has_the_focus(page, "keep-open").await?;
        // What happened is read out from one place.
        let said = page
            .run("return [...document.querySelectorAll('[role=status], [role=alert]')].filter(place => place.textContent.includes('The file is open')).length;")
            .await?;
        assert_eq!(said, 1);

        // The example asks too, and gives its place to the panel of one's own home.
        page.open_at(PAGE).await?;
        page.click("button", "Try it with an example").await?;
        page.wait_for_text("These keys belong to an invented home")
            .await?;
        page.click("button", "Edit key: shed").await?;
        has_the_focus(page, "form-title").await?;
        page.choose_file(&folder.join("self-check.json")).await?;
        has_the_focus(page, "keep-replaces").await?;
        page.click("button", "Replace it").await?;
        wait_to_hold(page, &home).await?;
        has_the_focus(page, "keep-open").await?;
        let forms = page
            .run("return document.querySelectorAll('.sheet-form').length;")
            .await?;
        assert_eq!(forms, 0, "no form of the other home stays open");
        Ok(())
    })
}

async fn has_the_focus(page: &Page, id: &str) -> Result<()> {
    page.wait_until(&format!("{id} has the focus"), async || {
        Ok(page.focused_id().await? == id)
    })
    .await
}

/// Files of every wrong kind, each with what is said of it.
fn wrong_files(folder: &Path, good: &[u8]) -> Result<Vec<(PathBuf, &'static str)>> {
    let text = String::from_utf8(good.to_vec())?;
    let with = |from: &str, to: &str| text.replacen(from, to, 1).into_bytes();
    let deep = [&b"{\"version\":1,\"record\":"[..], &b"[".repeat(100_000)].concat();
    let hard = b"age-encryption.org/v1\n-> scrypt pKi0F8DVvVCgQAYeFFeLzg 30\nMGcYt6YnPBCfN6Ww2O4HeGx94TxnTSaJdpBSW2Y4AVo\n--- 4ZGHfnCwbmHTyrpMeUZQoHe0RCVcRwCdBbZC9MBBR2Y\n0123456789abcdef0123456789abcdef";
    let by_key = b"age-encryption.org/v1\n-> X25519 TEiF0ypqr+bpvcqXNyCVJpL7OuwPdVwPL7KQEbFDOCc\nEmECAEcKN+n/Vs9SbWiV+Hu0r+E8R77DdWYyd83nw7U\n--- Vn+54jqiiUCE+WZcEVY3f1sqHjlu/z1LCQ/T7Xm7qI0\n0123456789abcdef0123456789abcdef";
    let files: Vec<(&str, Vec<u8>, &str)> = vec![
        ("empty.json", Vec::new(), "ends too early"),
        (
            "half.json",
            good[..good.len() / 2].to_vec(),
            "ends too early",
        ),
        ("damaged.json", with("\"doors\":", "\"dours\":"), "damaged"),
        ("picture.json", b"\x89PNG\r\n\x1a\n".to_vec(), "damaged"),
        (
            "foreign.json",
            b"{\"name\":\"something\"}".to_vec(),
            "another program",
        ),
        (
            "later.json",
            with("\"version\":1", "\"version\":9"),
            "another version",
        ),
        (
            "digits.json",
            with("\"decides\":", "\"label\":\"7 4 1 1\",\"decides\":"),
            "a name that this page does not take",
        ),
        (
            "misfit.json",
            with("\"keys\":[{", "\"keys\":[],\"k\":[{"),
            "damaged",
        ),
        ("deep.json", deep, "larger than anything"),
        ("hard.age", hard.to_vec(), "asks for more memory"),
        ("key.age", by_key.to_vec(), "not locked with a passphrase"),
        (
            "text.age",
            b"-----BEGIN AGE ENCRYPTED FILE-----\nYQ==\n".to_vec(),
            "not locked with a passphrase",
        ),
        ("cut.age", hard[..60].to_vec(), "is damaged or cut short"),
    ];
    let mut written = Vec::new();
    for (name, content, told) in files {
        let path = folder.join(name);
        std::fs::write(&path, content)?;
        written.push((path, told));
    }
    // A file of a gigabyte that takes no room on the disk. It must not even be read.
    let huge = folder.join("huge.json");
    std::fs::File::create(&huge)?.set_len(1 << 30)?;
    written.push((huge, "so it was not read"));
    Ok(written)
}

#[test]
fn file_that_is_wrong_is_told_and_leaves_the_page_as_it_is() -> Result<()> {
    journey(Look::DESKTOP, async |page| {
        let folder = folder("wrong")?;
        page.save_files_in(&folder).await?;
        let home = with_a_home(page).await?;
        page.run("document.querySelectorAll('.keep details').forEach(d => d.open = true);")
            .await?;
        page.click("button", "Save without a lock").await?;
        let good = page.saved_file(&folder, "self-check.json").await?;
        let files = wrong_files(&folder, &good)?;
        assert!(files.len() >= 14);
        for (path, told) in files {
            let name = path.display().to_string();
            // What was said of the file before does not count.
            page.run("document.querySelector('[aria-labelledby=keep-open] [role=alert] p')?.setAttribute('data-before', '');")
                .await?;
            page.choose_file(&path).await?;
            page.wait_until(&format!("{name}: the page says {told:?}"), async || {
                let said = page
                    .run("return document.querySelector('[aria-labelledby=keep-open] [role=alert] p:not([data-before])')?.textContent ?? '';")
                    .await?;
                let said = said.as_str().unwrap_or_default();
                Ok(said.contains(told) && said.contains("Nothing was changed"))
            })
            .await?;
            assert_eq!(holds(page).await?, home, "{name}");
            let text = page.visible_text().await?;
            assert!(
                !text.contains("7 4 1 1"),
                "what was refused is not repeated"
            );
        }
        // After all of these, a good one still opens.
        super::with_a_shed_more(page).await?;
        page.choose_file(&folder.join("self-check.json")).await?;
        page.click("button", "Replace it").await?;
        wait_to_hold(page, &home).await
    })
}
