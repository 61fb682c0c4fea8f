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

/// Takes comments, indents and empty lines out of a style sheet, and nothing else; text in quotes stays as it is.
pub fn squeeze_style(css: &str) -> String {
    let mut without_comments = String::with_capacity(css.len());
    let mut quote = None;
    let mut rest = css;
    while let Some(c) = rest.chars().next() {
        if quote.is_none() && rest.starts_with("/*") {
            rest = rest.find("*/").map_or("", |end| &rest[end + 2..]);
            continue;
        }
        let escaped = quote.is_some() && c == '\\';
        let width = c.len_utf8()
            + if escaped {
                rest[1..].chars().next().map_or(0, char::len_utf8)
            } else {
                0
            };
        match quote {
            None if c == '"' || c == '\'' => quote = Some(c),
            Some(open) if c == open => quote = None,
            _ => {}
        }
        without_comments.push_str(&rest[..width]);
        rest = &rest[width..];
    }
    let lines: Vec<&str> = without_comments
        .lines()
        .map(str::trim)
        .filter(|line| !line.is_empty())
        .collect();
    lines.join("\n")
}

/// A script without the lines that hold a comment alone, and without indentation. One that holds a text of several
/// lines is left as it is: in there a blank counts.
pub fn squeeze_script(script: &str) -> String {
    let has_long_text = |line: &str| line.matches('`').count() % 2 == 1;
    if script.lines().any(has_long_text) {
        return script.to_owned();
    }
    let lines = script.lines().map(str::trim);
    let lines: Vec<&str> = lines
        .filter(|line| !line.is_empty() && !line.starts_with("//"))
        .collect();
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
        let css = "/* why */\n.key {\n  fill: red; /* metal */\n}\n\n.bow{}\n";
        assert_eq!(squeeze_style(css), ".key {\nfill: red;\n}\n.bow{}");
    }

    #[test]
    fn script_loses_its_comments_and_keeps_its_lines() {
        let script = "// What it is.\n\n(() => {\n  // Why.\n  go(\"//a\"); // here\n})();\n";
        assert_eq!(
            squeeze_script(script),
            "(() => {\ngo(\"//a\"); // here\n})();"
        );
    }

    #[test]
    fn script_with_a_text_of_several_lines_is_left_alone() {
        let script = "say(`one\n  two`);\n  // Why.\n";
        assert_eq!(squeeze_script(script), script);
    }

    #[test]
    fn style_keeps_text_in_quotes() {
        let css = r#"a::after{content:"/* \" */"}"#;
        assert_eq!(squeeze_style(css), css);
    }
}
