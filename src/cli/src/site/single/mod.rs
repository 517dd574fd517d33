//! The page as two files: an entry, and one classic script that holds everything else, its bytes in base
//! 64. No module, nothing fetched, no worker: it runs where a host serves scripts as something else or
//! forbids every request, and opened as a file.

mod join;

use super::asset::{Asset, base64};
use crate::{Fault, Why};
use std::path::Path;

/// The entry of the page, and the script of the single-file build.
pub const ENTRY: &str = "index.html";
const SCRIPT: &str = "room.js";
/// Where the entry of the page names its script.
const MODULE: &str = "<script type=\"module\" src=\"./";
/// What the page may do: run this script, and the WebAssembly in it.
const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'none'; object-src 'none'";
/// What the script begins with: bytes by their addresses, answered to whoever fetches them.
const HEAD: &str = "(() => {\n\"use strict\";\nconst parts = {};\nconst part = (name, type, text) => { parts[new URL(name, document.baseURI).href] = { type, text }; };\nconst far = globalThis.fetch;\nglobalThis.fetch = async (what, how) => {\nconst found = parts[new URL(what.url ?? what, document.baseURI).href];\nif (!found) return far(what, how);\nconst bytes = Uint8Array.from(atob(found.text), (letter) => letter.charCodeAt(0));\nreturn new Response(bytes, { headers: { \"content-type\": found.type } });\n};\nconst style = (text) => {\nconst sheet = new CSSStyleSheet();\nsheet.replaceSync(text);\ndocument.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];\n};\nconst taken = {};\nconst take = (name) => taken[name] ??= modules[name]?.() ?? Promise.reject(new Error(`found no ${name} in this file`));\n";

/// The files of a page that was built into a folder.
///
/// # Errors
/// When there is none.
pub fn read(folder: &Path) -> Result<Vec<Asset>, Fault> {
    let mut assets = Asset::read_folder(folder)?;
    assets.retain(|asset| asset.extension() != "br");
    if assets.iter().all(|asset| asset.path != ENTRY) {
        return Err(Fault::new(format!("found no {ENTRY} in {}", folder.display()))
            .hint("`wallwise build --for-packages --out DIR` builds the page there"));
    }
    Ok(assets)
}

/// The two files. `sets` takes the place of the shipped sets; `says` are attributes of the entry, each
/// with its value.
///
/// # Errors
/// When the page is not as the build leaves it.
pub fn single(
    assets: &[Asset],
    sets: &Asset,
    says: &[(&str, String)],
) -> Result<[Asset; 2], Fault> {
    let entry = assets.iter().find(|asset| asset.path == ENTRY);
    let entry = entry.and_then(|asset| core::str::from_utf8(&asset.bytes).ok());
    let entry = entry.ok_or_else(|| Fault::new(format!("found no text in {ENTRY}")))?;
    let boot = entry.split_once(MODULE).and_then(|(_, rest)| rest.split('"').next());
    let boot = boot.ok_or_else(|| {
        Fault::new(format!(
            "found no `{MODULE}` in {ENTRY}, expected the script that starts the page"
        ))
        .hint("build the page again")
    })?;
    let modules = join::join(boot, assets)?;
    let mut script = HEAD.to_owned();
    for sheet in assets.iter().filter(|asset| asset.extension() == "css") {
        if entry.contains(&format!("\"./{}\"", sheet.path)) {
            let text = String::from_utf8_lossy(&sheet.bytes);
            let text =
                serde_json::to_string(&text).why(|| format!("cannot write {}", sheet.path))?;
            script.push_str(&format!("style({text});\n"));
        }
    }
    let mut has_sets = false;
    let named = |asset: &&Asset| {
        let name = format!("\"./{}\"", asset.path);
        asset.extension() != "js" && modules.iter().any(|(_, body)| body.contains(&name))
    };
    for asset in assets.iter().filter(named) {
        let stem = sets.path.split('.').next().unwrap_or_default();
        let is_sets = asset.path.starts_with(stem) && asset.extension() == sets.extension();
        has_sets |= is_sets;
        let bytes = base64(if is_sets { &sets.bytes } else { &asset.bytes });
        let kind = kind(asset.extension());
        script.push_str(&format!("part(\"./{}\", \"{kind}\", \"{bytes}\");\n", asset.path));
    }
    if !has_sets {
        return Err(Fault::new("found no list of sets in the page").hint("build the page again"));
    }
    script.push_str("const modules = {\n");
    for (name, body) in &modules {
        script.push_str(&format!("\"{name}\": async () => {{\n{body}}},\n"));
    }
    script.push_str(&format!("}};\ntake(\"./{boot}\");\n}})();\n"));
    let script = Asset { path: SCRIPT.to_owned(), bytes: script.into_bytes() };
    let entry = Asset { path: ENTRY.to_owned(), bytes: page(entry, says).into_bytes() };
    Ok([entry, script])
}

/// What a part is served as.
fn kind(extension: &str) -> &'static str {
    match extension {
        "wasm" => "application/wasm",
        "json" => "application/json",
        "txt" => "text/plain",
        _ => "application/octet-stream",
    }
}

/// The entry with the one script, and without what it held of other files.
fn page(entry: &str, says: &[(&str, String)]) -> String {
    let mut page = String::new();
    for line in entry.lines() {
        let begin = line.trim_start();
        if begin.starts_with("<link ") {
            continue;
        }
        if begin.starts_with("<html") {
            let says: String =
                says.iter().map(|(name, value)| format!(" {name}=\"{value}\"")).collect();
            page.push_str(&format!("<html lang=\"en\"{says}>"));
        } else if begin.starts_with("<meta http-equiv=\"Content-Security-Policy\"") {
            page.push_str(&format!(
                "    <meta http-equiv=\"Content-Security-Policy\" content=\"{POLICY}\">"
            ));
        } else if begin.starts_with(MODULE) {
            // An icon of nothing: no host is asked for one.
            page.push_str(&format!("    <link rel=\"icon\" href=\"data:,\">\n    <script defer src=\"./{SCRIPT}\"></script>"));
        } else {
            page.push_str(line);
        }
        page.push('\n');
    }
    page
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asset(path: &str, text: &str) -> Asset {
        Asset { path: path.to_owned(), bytes: text.as_bytes().to_vec() }
    }

    fn site() -> Vec<Asset> {
        let entry = "<!doctype html>\n<html lang=\"en\" data-version=\"1\">\n<meta http-equiv=\"Content-Security-Policy\" content=\"connect-src 'self'\">\n<link rel=\"stylesheet\" href=\"./style-1.css\">\n<link rel=\"modulepreload\" href=\"./app-1.js\">\n<script type=\"module\" src=\"./boot-1.js\"></script>\n<div id=\"room\"></div>\n";
        vec![
            asset("index.html", entry),
            asset("style-1.css", "p { content: \"\\\"\"; }"),
            asset("other-1.css", "b {}"),
            asset(
                "boot-1.js",
                "const a = new URL(\"./sets-1.json\", import.meta.url);\nimport \"./app-1.js\";",
            ),
            asset("app-1.js", "fetch(new URL(\"./later-1.parts\", import.meta.url));"),
            asset("sets-1.json", "[1]"),
            asset("later-1.parts", "abc"),
            asset("sw.js", "const FILES = [\"./later-1.parts\"];"),
        ]
    }

    #[test]
    fn all_that_the_page_needs_stands_in_two_files() {
        let sets = asset("sets.json", "[2]");
        let [entry, script] =
            single(&site(), &sets, &[("data-package", "a-set".to_owned())]).unwrap();
        let [entry, script] = [entry, script].map(|it| String::from_utf8(it.bytes).unwrap());
        assert!(entry.contains("<html lang=\"en\" data-package=\"a-set\">"), "{entry}");
        assert!(entry.contains("src=\"./room.js\"") && entry.contains("id=\"room\""));
        assert!(
            !entry.contains("stylesheet")
                && !entry.contains("module")
                && !entry.contains("connect-src")
        );
        // By Python's base64: "[2]" and "abc".
        assert!(script.contains("part(\"./sets-1.json\", \"application/json\", \"WzJd\");"));
        assert!(
            script.contains("part(\"./later-1.parts\", \"application/octet-stream\", \"YWJj\");")
        );
        assert!(script.contains("style(\"p { content: \\\"\\\\\\\"\\\"; }\");"), "{script}");
        assert!(!script.contains("b {}") && !script.contains("FILES"));
        assert!(!script.contains("import ") && !script.contains("import.meta"));
    }

    #[test]
    fn a_page_without_sets_or_without_a_script_is_refused() {
        let sets = asset("sets.json", "[2]");
        let mut without = site();
        without.retain(|asset| asset.path != "sets-1.json");
        assert!(single(&without, &sets, &[]).unwrap_err().to_string().contains("sets"));
        without[0].bytes = b"<html>".to_vec();
        assert!(single(&without, &sets, &[]).unwrap_err().to_string().contains("script"));
    }
}
