//! Takes the pictures for the documentation from the finished site: `cargo xtask screenshots`.

#[path = "pictures/shots.rs"]
mod shots;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use self_check_tests::given::{Kind, Picture};
use self_check_tests::{Page, Result, journey};
use shots::{SHOTS, Shot, Step};

fn main() -> ExitCode {
    let folder = PathBuf::from(
        std::env::args()
            .nth(1)
            .unwrap_or_else(|| "docs/pictures".into()),
    );
    let mut failed = 0;
    for shot in SHOTS {
        match take(shot, &folder) {
            Ok(()) => println!("   {}", folder.join(shot.file).display()),
            Err(error) => {
                failed += 1;
                eprintln!("   {} was not taken: {error}", shot.file);
            }
        }
    }
    println!("{} pictures taken, {failed} failed", SHOTS.len() - failed);
    if failed == 0 {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}

fn take(shot: &Shot, folder: &Path) -> Result<()> {
    let given = Picture::new(Kind::Clear)?;
    journey(shot.look, async |page| {
        page.open().await?;
        for step in shot.steps {
            act(page, step, &given).await?;
        }
        // The pointer would otherwise colour what it happens to lie on.
        let away = serde_json::json!({ "type": "mouseMoved", "x": 0, "y": 0 });
        page.cdp("Input.dispatchMouseEvent", away).await?;
        let picture = if shot.whole {
            page.whole_picture().await?
        } else {
            page.window_picture().await?
        };
        std::fs::create_dir_all(folder)?;
        Ok(std::fs::write(folder.join(shot.file), picture)?)
    })
}

async fn act(page: &Page, step: &Step, given: &Picture) -> Result<()> {
    match step {
        Step::Click(role, name) => page.click(role, name).await,
        Step::See(text) => page.wait_for_text(text).await,
        Step::Open(fragment) => page.open_at(fragment).await,
        Step::Give => give(page, given).await,
    }
}

async fn give(page: &Page, picture: &Picture) -> Result<()> {
    page.choose_file_in("picture-file", picture.path()).await?;
    page.wait_for_text("Mark the two ends of the blade").await?;
    for (mark, end) in [(0.3, 0.5), (0.7, 0.5)].into_iter().zip(picture.ends()) {
        page.drag_on(".stage-over", mark, end).await?;
    }
    Ok(())
}
