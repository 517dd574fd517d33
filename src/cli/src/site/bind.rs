//! The module cut in two, and the JavaScript that joins it to the browser.

use core::convert::Infallible;
use std::fs;
use std::path::Path;

use wasm_bindgen_cli_support::Bindgen;
use wasm_encoder::Module;
use wasm_encoder::reencode::{self, Reencode};
use wasm_split_cli_support::{Options, transform};
use wasmparser::{CustomSectionReader, Parser};

use super::asset::Asset;
use super::brief::Brief;
use super::fold::fold;
use super::order::order;
use super::strands::strands;
use crate::{Fault, Why};

/// The first part and its glue, as the bindings step names them.
const MODULE: &str = "app_bg.wasm";
const GLUE: &str = "app.js";
/// The script that loads the later part, as the module names it.
const LATER: &str = "./later.js";
/// The script that hands the later part what it shares with the first; `www` has it.
const SHARED: &str = "./shared.js";
/// The script that lays the later part back from its strands; `www` has it.
const STRANDS: &str = "./strands.js";

/// The module and its glue, `app.js` and `app_bg.wasm`, what is loaded later, and `later.js`, which
/// loads it.
pub fn bind(module: &Path, scratch: &Path) -> Result<Vec<Asset>, Fault> {
    // What an earlier build left there must not slip into this one.
    if scratch.exists() {
        fs::remove_dir_all(scratch).why(|| format!("cannot empty {}", scratch.display()))?;
    }
    let (first, parts) = (scratch.join("first.wasm"), scratch.join("parts"));
    split(module, &first, &parts)?;
    let page = scratch.join("page");
    let mut bindgen = Bindgen::new();
    bindgen
        .input_path(&first)
        .out_name("app")
        .typescript(false)
        // `www/boot.js` and `www/worker.js` name the module, so that its hashed name is in one place.
        .omit_default_module_path(true)
        // The later part shares the table of functions with the first.
        .keep_lld_exports(true)
        .remove_name_section(true)
        .remove_producers_section(true);
    bindgen
        .web(true)
        .and_then(|bindgen| bindgen.generate(&page))
        .map_err(|error| {
            Fault::new(format!("cannot write the bindings of {}", module.display()))
                .because(error.as_ref())
                .hint("wasm-bindgen and wasm-bindgen-cli-support must be one version: Cargo.toml pins both")
        })?;
    let mut assets = Asset::read_folder(&page)?;
    assets.iter_mut().for_each(shorten);
    assets.extend(Asset::read_folder(&parts)?);
    abbreviate(&mut assets)?;
    for asset in assets.iter_mut().filter(|asset| asset.extension() == "wasm") {
        asset.bytes = bare(&asset.bytes, &asset.path)?;
    }
    strand(&mut assets)?;
    Ok(assets)
}

/// Sends what is loaded later as strands, and has its loader lay them back.
fn strand(assets: &mut [Asset]) -> Result<(), Fault> {
    let mut loader = None;
    for asset in assets {
        if LATER.ends_with(&format!("/{}", asset.path)) {
            loader = Some(asset);
        } else if asset.extension() == "wasm" && asset.path != MODULE {
            asset.bytes = strands(&asset.bytes)?;
            asset.path = asset.path.replace(".wasm", ".strands");
        }
    }
    let Some(loader) = loader else { return Ok(()) };
    let script = String::from_utf8_lossy(&loader.bytes);
    let script = script.replace(".wasm\"", ".strands\"");
    let started = script.replace("WebAssembly.instantiateStreaming(", "start(");
    if started == script {
        return Err(Fault::new(format!("found no place in {LATER} that starts a part")).hint(
            "wasm_split_cli_support writes it: the version that Cargo.toml pins is known to",
        ));
    }
    loader.bytes = format!("import {{ start }} from \"{STRANDS}\";\n{started}").into_bytes();
    Ok(())
}

/// Gives module and glue short names for each other's functions.
fn abbreviate(assets: &mut [Asset]) -> Result<(), Fault> {
    let among = |assets: &[Asset], name: &str| {
        assets.iter().position(|asset| asset.path == name).ok_or_else(|| {
            Fault::new(format!("found no {name} among what the bindings step wrote"))
        })
    };
    let (module, glue) = (among(assets, MODULE)?, among(assets, GLUE)?);
    let none = || format!("found no WebAssembly in {MODULE}");
    let mut brief = Brief::of(&assets[module].bytes).why(none)?;
    assets[module].bytes = brief.module(&assets[module].bytes).why(none)?;
    let script = String::from_utf8_lossy(&assets[glue].bytes);
    assets[glue].bytes = brief.glue(&script).into_bytes();
    Ok(())
}

/// Cuts the module where the page's sources say so: what is needed first, and the rest.
fn split(module: &Path, first: &Path, parts: &Path) -> Result<(), Fault> {
    let bytes = fs::read(module).why(|| format!("cannot read {}", module.display()))?;
    fs::create_dir_all(parts).why(|| format!("cannot make {}", parts.display()))?;
    let mut options = Options::new(&bytes);
    options.output_dir = parts;
    options.main_out_path = first;
    options.link_name = LATER;
    options.main_module = SHARED;
    transform(options).map_err(|error| {
        Fault::new(format!("cannot split {}", module.display()))
            .because(error.as_ref())
            .hint("wasm_split_helpers and wasm_split_cli_support go together: Cargo.toml pins both")
    })?;
    Ok(())
}

/// Drops what only a reader needs, and writes every number anew.
struct Bare;

impl Reencode for Bare {
    type Error = Infallible;

    fn parse_custom_section(
        &mut self,
        _: &mut Module,
        _: CustomSectionReader<'_>,
    ) -> Result<(), reencode::Error<Infallible>> {
        Ok(())
    }
}

/// The module without names and the like, its numbers in as few bytes as they need, as the linker
/// leaves room in each that the split might change, and its functions each once and like to like.
fn bare(module: &[u8], path: &str) -> Result<Vec<u8>, Fault> {
    let mut kept = Module::new();
    Bare.parse_core_module(&mut kept, Parser::new(0), module)
        .and_then(|()| fold(&kept.finish()))
        .and_then(|folded| order(&folded))
        .map_err(|error| Fault::new(format!("found no WebAssembly in {path}")).because(&error))
}

/// Takes out of a script what only a reader needs; leaves any other file.
pub fn shorten(asset: &mut Asset) {
    if asset.extension() != "js" {
        return;
    }
    if let Ok(text) = core::str::from_utf8(&asset.bytes) {
        asset.bytes = terse(text).into_bytes();
    }
}

/// A script without indents, empty lines and lines of comment: everybody's first visit carries it. No
/// text in the glue, which is generated, nor in a script of `www` runs over lines.
fn terse(script: &str) -> String {
    let mut kept = String::with_capacity(script.len());
    let mut in_comment = false;
    for line in script.lines().map(str::trim) {
        in_comment |= line.starts_with("/*");
        if !in_comment && !line.is_empty() && !line.starts_with("//") {
            kept.push_str(line);
            kept.push('\n');
        }
        in_comment &= !line.ends_with("*/");
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_encoder::{CustomSection, MemorySection, MemoryType};

    #[test]
    fn the_glue_loses_what_only_a_reader_needs() {
        let script = "/**\n * Says.\n * @param {number} a\n */\nexport function f(a) {\n\n    // Why.\n    return a\n        * 2;\n}\n/* one */\nf(1);\n";
        assert_eq!(terse(script), "export function f(a) {\nreturn a\n* 2;\n}\nf(1);\n");
    }

    #[test]
    fn a_part_loses_its_names_and_the_room_in_its_numbers_and_keeps_the_rest() {
        let mut memory = MemorySection::new();
        memory.memory(MemoryType {
            minimum: 1,
            maximum: None,
            memory64: false,
            shared: false,
            page_size_log2: None,
        });
        let mut plain = Module::new();
        plain.section(&memory);
        let mut named = Module::new();
        named
            .section(&memory)
            .section(&CustomSection { name: "name".into(), data: (&[0_u8]).into() });
        let plain = plain.finish();
        assert_eq!(bare(&named.finish(), "part.wasm").unwrap(), plain);
        // One page in five bytes, as a linker leaves it: it comes back in one.
        let room = b"\0asm\x01\0\0\0\x05\x07\x01\0\x81\x80\x80\x80\0";
        assert_eq!(bare(room, "part.wasm").unwrap(), plain);
        let fault = bare(b"no module", "part.wasm").unwrap_err().to_string();
        assert!(fault.contains("part.wasm"), "{fault}");
    }
}
