//! Filling `index.html`: the file is readable as it is; the build puts the policy, the style and the program in.

use anyhow::{Result, bail};

/// Replaces each `<!-- fill: NAME -->` by its piece. Every piece has its place and every place its piece, or it fails.
pub fn fill(template: &str, pieces: &[(&str, String)]) -> Result<String> {
    let mut page = template.to_owned();
    for (name, piece) in pieces {
        let place = format!("<!-- fill: {name} -->");
        if page.matches(&place).count() != 1 {
            bail!("index.html must have `{place}` exactly once");
        }
        page = page.replace(&place, piece);
    }
    if let Some(at) = page.find("<!-- fill:") {
        let rest: String = page[at..].chars().take(40).collect();
        bail!("index.html has a place that nothing fills: {rest}");
    }
    Ok(page)
}

/// Takes comments out of a style sheet, and blanks where nothing needs them; text in quotes stays as it is. A colon keeps
/// the blank before it: there it parts a selector from the one within it.
pub fn squeeze_style(css: &str) -> String {
    let mut squeezed = String::with_capacity(css.len());
    let mut rest = css;
    while let Some(c) = rest.chars().next() {
        let part = match c {
            '/' if rest.starts_with("/*") => {
                rest = rest.find("*/").map_or("", |end| &rest[end + 2..]);
                continue;
            }
            '"' | '\'' => &rest[..end_of_text(rest, c)],
            _ => &rest[..c.len_utf8()],
        };
        rest = &rest[part.len()..];
        if !c.is_whitespace() {
            if c == '}' && squeezed.ends_with(';') {
                squeezed.pop();
            }
            if matches!(c, '{' | '}' | ';' | ',') && squeezed.ends_with(' ') {
                squeezed.pop();
            }
            squeezed.push_str(part);
        } else if !squeezed.is_empty() && !squeezed.ends_with(['{', '}', ';', ',', ':', ' ']) {
            squeezed.push(' ');
        }
    }
    squeezed.trim_end().to_owned()
}

/// Where a text that begins with this quote ends.
fn end_of_text(css: &str, quote: char) -> usize {
    let mut is_escaped = false;
    for (at, c) in css.char_indices().skip(1) {
        match c {
            _ if is_escaped => is_escaped = false,
            '\\' => is_escaped = true,
            c if c == quote => return at + c.len_utf8(),
            _ => {}
        }
    }
    css.len()
}

/// Takes indents, empty lines and lines of comment out of a script. A comment over several lines begins and ends on lines
/// of its own. A script of this site has no text over several lines that begins like a comment.
pub fn squeeze_script(script: &str) -> String {
    let mut is_comment = false;
    let mut lines = Vec::new();
    for line in script.lines().map(str::trim) {
        if is_comment || line.starts_with("/*") {
            is_comment = !line.contains("*/");
            // What goes on behind a comment is kept with it.
            if !is_comment && !line.ends_with("*/") {
                lines.push(line);
            }
        } else if !(line.is_empty() || line.starts_with("//")) {
            lines.push(line);
        }
    }
    lines.join("\n")
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn every_place_is_filled() {
        let page = fill(
            "<head><!-- fill: style --></head>",
            &[("style", "<link>".into())],
        )
        .unwrap();
        assert_eq!(page, "<head><link></head>");
    }

    #[test]
    fn piece_without_a_place_is_refused() {
        assert!(fill("<head></head>", &[("style", String::new())]).is_err());
    }

    #[test]
    fn place_without_a_piece_is_refused() {
        let error = fill("<!-- fill: boot -->", &[]).unwrap_err().to_string();
        assert!(error.contains("fill: boot"), "{error}");
    }

    #[test]
    fn style_loses_comments_and_indents() {
        let css = "/* why */\n.key, .bow  > a {\n  fill: red; /* metal */\n}\n\n.bow{}\n";
        assert_eq!(squeeze_style(css), ".key,.bow > a{fill:red}.bow{}");
    }

    #[test]
    fn style_keeps_blanks_that_mean_something() {
        for css in [
            ".a :is(b,c) :hover{margin:0 calc(1px + 2em)}",
            "@media (min-width:9em) and (max-width:99em){a b{font:650 1em/1.2 serif}}",
        ] {
            assert_eq!(squeeze_style(css), css);
        }
    }

    #[test]
    fn script_loses_lines_of_comment_and_keeps_its_lines() {
        let script =
            "/**\n * @param {number} a\n */\nfunction f(a) {\n    // why\n    return a;\n}\n";
        assert_eq!(squeeze_script(script), "function f(a) {\nreturn a;\n}");
    }

    #[test]
    fn script_keeps_a_line_that_begins_with_a_star_outside_of_comments() {
        for script in ["const area = width\n* height;", "/* why */ f();\n*/ 2;"] {
            assert_eq!(squeeze_script(script), script);
        }
    }

    #[test]
    fn style_keeps_text_in_quotes() {
        let css = r#"a::after{content:"/* \" */"}"#;
        assert_eq!(squeeze_style(css), css);
    }
}
