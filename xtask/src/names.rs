//! The names by which a program's JavaScript and its WebAssembly call each other. The bindings generator makes them long
//! and unlike each other, which no compression can help; the optimiser makes them short and tells which became which.

use anyhow::{Context, Result, bail};
use serde_json::Value;

/// Long names with the short ones in their place.
pub struct Names {
    /// What the module takes from the script: where from, name, short name.
    imports: Vec<[String; 3]>,
    /// What the script takes from the module: name, short name.
    exports: Vec<[String; 2]>,
}

impl Names {
    /// Reads what the optimiser tells.
    pub fn read(told: &str) -> Result<Self> {
        let told: Value = serde_json::from_str(told).context("the optimiser told no names")?;
        Ok(Self {
            imports: serde_json::from_value(told["imports"].clone())?,
            exports: serde_json::from_value(told["exports"].clone())?,
        })
    }

    /// The script with the short names. Each import has its place in the script exactly once, or it fails.
    pub fn put_into(&self, script: &str) -> Result<String> {
        let mut places = 0;
        let lines: Vec<String> = script
            .lines()
            .map(|line| {
                let line = self
                    .import_at(line)
                    .inspect(|_| places += 1)
                    .unwrap_or(line.to_owned());
                self.exports_in(&line)
            })
            .collect();
        let mut script = lines.join("\n");
        let mut modules: Vec<&str> = self.imports.iter().map(|[module, ..]| &**module).collect();
        modules.dedup();
        let [module] = modules[..] else {
            bail!("the module takes what it needs from {modules:?}, not from one script");
        };
        let quoted = format!("\"{module}\"");
        if places != self.imports.len() || script.matches(&quoted).count() != 1 {
            bail!(
                "{places} of {} names were found in the script: it is not laid out as it used to be",
                self.imports.len()
            );
        }
        script = script.replace(&quoted, &format!("\"{SHORT_MODULE}\""));
        Ok(script)
    }

    /// The line with the short name of the import it defines, if it defines one: `name: function(…`.
    fn import_at(&self, line: &str) -> Option<String> {
        let (name, rest) = line.split_once(": ")?;
        let [_, _, short] = self.imports.iter().find(|[_, long, _]| long == name)?;
        Some(format!("{short}: {rest}"))
    }

    /// The line with short names in all calls of the module: `wasm.name(…`.
    fn exports_in(&self, line: &str) -> String {
        const CALL: &str = "wasm.";
        let mut parts = line.split(CALL);
        let mut shortened = parts.next().unwrap_or_default().to_owned();
        for part in parts {
            let end = part
                .find(|c: char| !is_part_of_a_name(c))
                .unwrap_or(part.len());
            let (name, rest) = part.split_at(end);
            let export = self.exports.iter().find(|[long, _]| long == name);
            shortened.extend([CALL, export.map_or(name, |[_, short]| short), rest]);
        }
        shortened
    }
}

/// What the optimiser calls the one script that a module takes its imports from.
const SHORT_MODULE: &str = "a";

fn is_part_of_a_name(c: char) -> bool {
    c.is_ascii_alphanumeric() || c == '_' || c == '$'
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    const TOLD: &str = r#"{ "imports": [["./p_bg.js", "__wbg_now_1f", "$"], ["./p_bg.js", "__wbg_now_1f2", "b"]],
        "exports": [["memory", "c"], ["__wbindgen_free", "d"]] }"#;

    const SCRIPT: &str = "__wbg_now_1f: function() {\nreturn wasm.memory.buffer;\n},\n__wbg_now_1f2: function(a) {\n\
        wasm.__wbindgen_free(a, wasm.memory);\n},\n\"./p_bg.js\": import0,";

    #[test]
    fn both_sides_get_the_same_short_names() {
        let short = Names::read(TOLD).unwrap().put_into(SCRIPT).unwrap();
        assert_eq!(
            short,
            "$: function() {\nreturn wasm.c.buffer;\n},\nb: function(a) {\nwasm.d(a, wasm.c);\n},\n\"a\": import0,"
        );
    }

    #[test]
    fn name_without_a_place_in_the_script_is_refused() {
        let script = SCRIPT.replace("__wbg_now_1f2", "__wbg_then_2e");
        assert!(Names::read(TOLD).unwrap().put_into(&script).is_err());
    }

    #[test]
    fn silence_is_refused() {
        assert!(Names::read("").is_err());
    }
}
