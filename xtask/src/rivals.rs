//! Two pages that the site is measured against: the least that yew can be, and three questions by a general library for
//! questionnaires.

use std::path::Path;

use anyhow::{Context, Result};

use crate::dist::Files;
use crate::project::WASM;
use crate::toolchain::WasmTarget;
use crate::{node, run, wasm};

/// What the browser asks for before it counts a page's memory.
const ISOLATED: &str =
    "/*\n  Cross-Origin-Opener-Policy: same-origin\n  Cross-Origin-Embedder-Policy: require-corp\n";

/// A page of yew that says hello, made small as the site is.
pub fn hello(target: &WasmTarget) -> Result<Files> {
    let mut cargo = target.cargo("build");
    cargo.args([
        "--release",
        "--package",
        "self-check-app",
        "--example",
        "hello",
    ]);
    run::shown("Compiling the bare page", &mut cargo)?;
    let folder = target.target_dir().join(WASM).join("release/examples");
    let program = wasm::program(&folder.join("hello.wasm"), node::wasm_opt().as_deref())?;
    let page = "<!DOCTYPE html><title>Hello</title><body><script type=\"module\">import init from \
                './hello.js'; init({ module_or_path: 'hello.wasm' });</script>";
    Ok(site([
        ("index.html", page.into()),
        ("hello.js", program.script.into_bytes()),
        ("hello.wasm", program.wasm),
    ]))
}

/// Three questions, one a page, with what the library gives by itself; but its style without the fonts, which it would
/// fetch from elsewhere.
pub fn survey() -> Result<Files> {
    let [core, view] = node::survey()?;
    let file = |folder: &Path, name: &str| {
        let path = folder.join(name);
        std::fs::read(&path).with_context(|| format!("cannot read {}", path.display()))
    };
    Ok(site([
        ("index.html", SURVEY.into()),
        ("core.js", file(&core, "survey.core.min.js")?),
        ("core.css", file(&core, "survey-core.fontless.min.css")?),
        ("view.js", file(&view, "survey-js-ui.min.js")?),
    ]))
}

const SURVEY: &str = r#"<!DOCTYPE html><title>Three questions</title><link rel="stylesheet" href="core.css">
<script src="core.js"></script><script src="view.js"></script><body><div id="survey"></div><script>
const page = (name, choices) => ({ elements: [{ type: "radiogroup", name, title: name, choices }] });
const model = new Survey.Model({ pages: [
  page("What brings you here?", ["A key is missing", "I have just moved in", "Someone had my key", "A number is on it", "Something else"]),
  page("What does the key open?", ["The door of my house", "The door of my flat", "A shed", "A mailbox", "I am not sure"]),
  page("Who decides about this lock?", ["I do", "A landlord", "A manager", "I am not sure"]),
] });
SurveyUI.renderSurvey(model, document.getElementById("survey"));
</script>"#;

fn site<const N: usize>(files: [(&str, Vec<u8>); N]) -> Files {
    let headers = (self_check_site::HEADERS, ISOLATED.as_bytes().to_vec());
    let files = files.into_iter().chain([headers]);
    files
        .map(|(name, content)| (name.to_owned(), content))
        .collect()
}
