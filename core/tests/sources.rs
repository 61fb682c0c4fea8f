//! Every source is used, and every id is its own.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use self_check_core::sources::{ALL, regional};

fn rust_files(folder: &Path, found: &mut Vec<PathBuf>) -> std::io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            rust_files(&path, found)?;
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            found.push(path);
        }
    }
    Ok(())
}

/// The name of the static that declares `id`.
fn declared_name<'a>(declarations: &'a str, id: &str) -> Option<&'a str> {
    let mark = format!(" = \"{id}\",");
    let line = declarations.lines().find(|line| line.contains(&mark))?;
    line.split_whitespace().next()
}

#[test]
fn sources_are_each_used_outside_their_own_list() -> std::io::Result<()> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut files = Vec::new();
    rust_files(&root.join("src"), &mut files)?;
    rust_files(&root.join("../app/src"), &mut files)?;
    let (lists, users): (Vec<_>, Vec<_>) = files.into_iter().partition(|path| {
        path.starts_with(root.join("src/sources")) || path.ends_with("src/sources.rs")
    });
    let declarations = lists
        .iter()
        .map(fs::read_to_string)
        .collect::<Result<String, _>>()?;
    let uses = users
        .iter()
        .map(fs::read_to_string)
        .collect::<Result<String, _>>()?;
    // A source that is only spoken of in a comment is not used.
    let uses: String = uses
        .lines()
        .filter(|line| !line.trim_start().starts_with("//"))
        .flat_map(|line| [line, "\n"])
        .collect();
    let words: BTreeSet<&str> = uses
        .split(|c: char| !(c.is_alphanumeric() || c == '_'))
        .collect();
    let unused: Vec<&str> = ALL
        .iter()
        .chain(regional::ALL)
        .filter(|source| {
            declared_name(&declarations, source.id).is_none_or(|name| !words.contains(name))
        })
        .map(|source| source.id)
        .collect();
    assert_eq!(unused, [""; 0]);
    Ok(())
}

#[test]
fn sources_each_have_an_id_of_their_own() {
    let ids: BTreeSet<&str> = ALL
        .iter()
        .chain(regional::ALL)
        .map(|source| source.id)
        .collect();
    assert_eq!(ids.len(), ALL.len() + regional::ALL.len());
}
