//! The edition in one file: the page with everything inside, to be kept and opened from disk. It asks for nothing.

use anyhow::{Result, ensure};

use crate::dist::{base64, integrity};
use crate::wasm::{Program, Programs};
use crate::{page, policy};

/// Its name, with the version and the build that it is of.
pub fn name(build: &str) -> String {
    format!(
        "house-key-self-check-{}-{build}.html",
        env!("CARGO_PKG_VERSION")
    )
}

/// The page, from the same parts as the site.
pub fn page(
    template: &str,
    style: &str,
    boot: &str,
    programs: &Programs,
    build: &str,
) -> Result<String> {
    let style = format!("\n{style}");
    let script = script(boot, programs);
    ensure!(
        !script.to_lowercase().contains("</script") && !script.contains("<!--"),
        "a script within a page must not hold what ends it"
    );
    ensure!(
        !script.contains('\r') && !style.contains('\r'),
        "the sums of a page's parts hold for lines that end in a line feed alone"
    );
    let pieces = [
        (
            "policy",
            policy::meta(&policy::for_one_file(
                &integrity(script.as_bytes()),
                &integrity(style.as_bytes()),
            )),
        ),
        ("style", format!("<style>{style}</style>")),
        (
            "program",
            format!(
                "{}{}<script data-build=\"{build}\">{script}</script>",
                module("check", &programs.check),
                module("rooms", &programs.rooms)
            ),
        ),
    ];
    page::fill(template, &pieces)
}

/// A program's WebAssembly as text. A browser runs no script of a kind that it does not know.
fn module(name: &str, program: &Program) -> String {
    format!(
        "<script type=\"application/wasm;base64\" id=\"{name}-wasm\">{}</script>\n",
        base64(&program.wasm)
    )
}

/// Both programs and the script that starts them.
fn script(boot: &str, programs: &Programs) -> String {
    format!(
        "globalThis.selfCheckInside = {{\ncheck: {},\nrooms: {},\n{BYTES}\n}};\n{boot}\n",
        program(&programs.check),
        program(&programs.rooms),
    )
}

/// Gives what a module would: the function that starts the program under the name `default`, and what it offers.
fn program(program: &Program) -> String {
    format!(
        "(() => {{\n{}\nreturn Object.assign(wasm_bindgen, {{ default: wasm_bindgen }});\n}})()",
        program.plain_script
    )
}

/// Reads a program's WebAssembly out of the page.
const BYTES: &str = "bytes: (name) => {
const text = document.getElementById(`${name}-wasm`).textContent;
return Uint8Array.from(atob(text), (digit) => digit.charCodeAt(0)).buffer;
}";

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    const TEMPLATE: &str =
        "<head><!-- fill: policy --><!-- fill: style --><!-- fill: program --></head>";

    fn programs(plain_script: &str) -> Programs {
        let program = || Program {
            script: String::new(),
            plain_script: plain_script.to_owned(),
            wasm: b"foobar".to_vec(),
        };
        Programs {
            check: program(),
            rooms: program(),
            optimised: true,
        }
    }

    #[test]
    fn everything_is_inside_and_no_request_is_allowed() {
        let programs = programs("let wasm_bindgen;");
        let page = page(TEMPLATE, "a{color:red}", "start();", &programs, "1").unwrap();
        assert!(page.contains("connect-src 'none'"), "{page}");
        assert!(page.contains("id=\"rooms-wasm\">Zm9vYmFy<"), "{page}");
        assert!(
            !page.contains("src=\"") && !page.contains("href=\""),
            "{page}"
        );
    }

    #[test]
    fn policy_names_the_sums_of_what_is_inside() {
        let page = page(TEMPLATE, "a{}", "start();", &programs(""), "1").unwrap();
        let inside = |open: &str, close: &str| {
            let (_, rest) = page.split_once(open).unwrap();
            integrity(rest.split_once(close).unwrap().0.as_bytes())
        };
        assert!(
            page.contains(&inside("<script data-build=\"1\">", "</script>")),
            "{page}"
        );
        assert!(page.contains(&inside("<style>", "</style>")), "{page}");
    }

    #[test]
    fn script_that_would_end_its_element_is_refused() {
        assert!(page(TEMPLATE, "", "\"</SCRIPT>\"", &programs(""), "1").is_err());
    }
}
