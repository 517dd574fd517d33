//! Modules put into one classic script, for hosts that serve a module as something else, and for pages
//! that are opened as a file.
//!
//! Every module becomes an asynchronous function that returns what it exports; whoever imports waits for
//! it. That is what modules mean, but for bindings that change after their module has run and for
//! modules that import each other: the page has neither. What is read is what the build writes: a
//! statement of import or export begins its line.

use super::super::asset::Asset;
use crate::Fault;

/// A statement that begins like this, and what declares something that is exported.
const DECLARES: &[&str] = &["async function ", "function ", "class ", "const ", "let "];

/// The modules that the entry reaches, each as `"./name": async () => { … },`, the entry first.
///
/// # Errors
/// When one of them is not there, or is written in a way that is not read here.
pub fn join(entry: &str, assets: &[Asset]) -> Result<Vec<(String, String)>, Fault> {
    let mut names = vec![format!("./{}", entry.trim_start_matches("./"))];
    let mut joined: Vec<(String, String)> = Vec::new();
    while let Some(name) = names.get(joined.len()).cloned() {
        let asset = assets.iter().find(|asset| name.strip_prefix("./") == Some(&asset.path));
        let text = asset.and_then(|asset| core::str::from_utf8(&asset.bytes).ok());
        let text = text.ok_or_else(|| {
            Fault::new(format!("found no script {name} in the page, expected it beside the others"))
                .hint("build the page again")
        })?;
        let module = Module::read(text).map_err(|line| {
            Fault::new(format!("{name}: found `{line}`, which cannot be put into one script"))
                .hint("write it as the other modules do: one statement, names in braces")
        })?;
        for other in module.imports {
            if !names.contains(&other) {
                names.push(other);
            }
        }
        joined.push((name, module.body));
    }
    Ok(joined)
}

/// A module as it is put into one script.
#[derive(Default)]
struct Module {
    body: String,
    /// Which others it waits for, or may ask for.
    imports: Vec<String>,
    /// What is exported, and under which name within.
    exports: Vec<(String, String)>,
}

impl Module {
    /// Reads a module, or returns the line that is not understood.
    fn read(text: &str) -> Result<Self, String> {
        let mut module = Self::default();
        let mut lines = text.lines();
        while let Some(line) = lines.next() {
            let begin = line.trim_start();
            if !begin.starts_with("import ") && !begin.starts_with("export ") {
                module.line(line);
                continue;
            }
            // Names in braces may run over lines.
            let mut statement = begin.to_owned();
            while statement.contains('{') && is_list(&statement) && !statement.contains('}') {
                statement.push(' ');
                statement.push_str(lines.next().ok_or_else(|| begin.to_owned())?.trim());
            }
            let done = match statement.strip_prefix("import ") {
                Some(rest) => module.import(rest),
                None => module.export(&statement["export ".len()..]),
            };
            done.ok_or(statement)?;
        }
        let all = module.exports.iter();
        let all: Vec<_> =
            all.map(|(name, within)| format!("get {name}() {{ return {within}; }}")).collect();
        module.body.push_str(&format!("return {{ {} }};\n", all.join(", ")));
        Ok(module)
    }

    /// A line that neither imports nor exports at once.
    fn line(&mut self, line: &str) {
        let mut rest = line;
        while let Some(at) = rest.find("import(") {
            let (before, after) = rest.split_at(at);
            self.body.push_str(before);
            let whole = !before.ends_with(|it: char| it.is_alphanumeric() || "_$.".contains(it));
            self.body.push_str(if whole { "take(" } else { "import(" });
            rest = &after["import(".len()..];
            if let Some(name) = quoted(rest).filter(|_| whole && is_kept(rest)) {
                self.imports.push(name.to_owned());
            }
        }
        self.body.push_str(&rest.replace("import.meta.url", "document.baseURI"));
        self.body.push('\n');
    }

    /// What stands behind the word: `d, { a, b as c } from "./x"`.
    fn import(&mut self, rest: &str) -> Option<()> {
        let (what, from) = match rest.rsplit_once("from ") {
            Some((what, from)) => (what.trim(), from),
            None => ("", rest),
        };
        let name = quoted(from)?;
        self.imports.push(name.to_owned());
        let mut left = what;
        if left.is_empty() {
            self.body.push_str(&format!("await take(\"{name}\");\n"));
        }
        while !left.is_empty() {
            let (one, rest) = clause(left)?;
            left = rest;
            let bound = match (one.strip_prefix("* as "), one.strip_prefix('{')) {
                (Some(all), _) => all.to_owned(),
                (None, Some(names)) => {
                    format!("{{ {} }}", names.strip_suffix('}')?.replace(" as ", ": "))
                }
                (None, None) => format!("{{ default: {one} }}"),
            };
            self.body.push_str(&format!("const {bound} = await take(\"{name}\");\n"));
        }
        Some(())
    }

    /// What stands behind the word.
    fn export(&mut self, rest: &str) -> Option<()> {
        if let Some(names) = rest.strip_prefix('{') {
            let (names, after) = names.split_once('}')?;
            for name in names.split(',').map(str::trim).filter(|name| !name.is_empty()) {
                let (within, name) = name.split_once(" as ").unwrap_or((name, name));
                self.exports.push((name.to_owned(), within.to_owned()));
            }
            return after.trim().trim_matches(';').is_empty().then_some(());
        }
        if let Some(value) = rest.strip_prefix("default ") {
            self.exports.push(("default".to_owned(), "$default".to_owned()));
            self.line(&format!("const $default = {value}"));
            return Some(());
        }
        let declared = DECLARES.iter().find_map(|word| rest.strip_prefix(word))?;
        let end = declared.find(|it: char| !it.is_alphanumeric() && !"_$".contains(it))?;
        let name = declared.get(..end).filter(|name| !name.is_empty())?;
        self.exports.push((name.to_owned(), name.to_owned()));
        self.line(rest);
        Some(())
    }
}

/// Whether a statement is one of names in braces, and no declaration.
fn is_list(statement: &str) -> bool {
    statement.starts_with("import ") || statement.starts_with("export {")
}

/// The first of several things that are imported at once, and the rest.
fn clause(what: &str) -> Option<(&str, &str)> {
    let end = if what.starts_with('{') {
        what.find('}')? + 1
    } else {
        what.find(',').unwrap_or(what.len())
    };
    let (one, rest) = what.split_at(end);
    Some((one.trim(), rest.trim_start().trim_start_matches(',').trim_start()))
}

/// What a text begins with, in quotes.
fn quoted(text: &str) -> Option<&str> {
    let text = text.trim_start();
    let quote = text.chars().next().filter(|it| "\"'".contains(*it))?;
    text[1..].split_once(quote).map(|(name, _)| name)
}

/// Whether what is asked for later belongs into one script: a package keeps nothing offline, and what
/// would stays out. Whoever asks for it all the same is told that it is not there.
fn is_kept(quoted: &str) -> bool {
    !quoted.trim_start_matches(['"', '\'']).starts_with("./offline")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asset(path: &str, text: &str) -> Asset {
        Asset { path: path.to_owned(), bytes: text.as_bytes().to_vec() }
    }

    fn body(text: &str) -> String {
        Module::read(text).map(|module| module.body).unwrap_or_else(|line| panic!("{line}"))
    }

    #[test]
    fn each_way_to_import_becomes_a_way_to_wait() {
        let wait = |text: &str| body(text).lines().next().unwrap().to_owned();
        assert_eq!(wait("import \"./x.js\";"), "await take(\"./x.js\");");
        assert_eq!(wait("import * as n from './x.js'"), "const n = await take(\"./x.js\");");
        assert_eq!(
            wait("import { a, b as c } from \"./x.js\";"),
            "const {  a, b: c  } = await take(\"./x.js\");"
        );
        let both = body("import d, * as n from \"./x.js\";\nd(n);");
        assert!(
            both.starts_with("const { default: d } = await take(\"./x.js\");\nconst n = await")
        );
        let over_lines = body("import {\n  a,\n  b,\n} from \"./x.js\";\n");
        assert!(over_lines.contains("a, b,  } = await take"), "{over_lines}");
        assert_eq!(
            wait("const { a } = await import(\"./x.js\"); reimport(\"./y.js\");"),
            "const { a } = await take(\"./x.js\"); reimport(\"./y.js\");"
        );
    }

    #[test]
    fn what_is_exported_is_returned_under_its_name() {
        let text = "export function f(a) {\nreturn a;\n}\nexport const g = async () => {\n};\nfunction h() {}\nexport { h, f as default };\n";
        let told = body(text);
        assert!(!told.contains("export"), "{told}");
        let end = told.lines().last().unwrap();
        assert_eq!(
            end,
            "return { get f() { return f; }, get g() { return g; }, get h() { return h; }, get default() { return f; } };"
        );
        assert!(body("export default 3;").starts_with("const $default = 3;\n"));
    }

    #[test]
    fn an_address_beside_the_module_is_one_beside_the_page() {
        let told = body("fetch(new URL(\"./a.bin\", import.meta.url));");
        assert!(told.starts_with("fetch(new URL(\"./a.bin\", document.baseURI));"));
    }

    #[test]
    fn all_that_the_entry_reaches_is_joined_once_and_what_keeps_it_offline_is_not() {
        let assets = [
            asset("boot.js", "await import(\"./a.js\");\nimport(\"./offline-1.js\");"),
            asset("a.js", "import { b } from \"./b.js\";\nimport \"./c.js\";"),
            asset("b.js", "import \"./c.js\";\nexport const b = 1;"),
            asset("c.js", ""),
            asset("worker.js", ""),
        ];
        let names: Vec<String> =
            join("boot.js", &assets).unwrap().into_iter().map(|(name, _)| name).collect();
        assert_eq!(names, ["./boot.js", "./a.js", "./b.js", "./c.js"]);
        let fault = join("boot.js", &assets[..1]).unwrap_err().to_string();
        assert!(fault.contains("./a.js"), "{fault}");
    }

    #[test]
    fn what_is_not_read_is_refused_by_its_line() {
        for line in ["export * from \"./x.js\";", "export const { a } = b;", "import x;"] {
            let fault = join("a.js", &[asset("a.js", line)]).unwrap_err().to_string();
            assert!(fault.contains("a.js") && fault.contains(line), "{fault}");
        }
    }
}
