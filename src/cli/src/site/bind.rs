//! The JavaScript that joins the page's module to the browser.

use std::fs;
use std::path::Path;

use wasm_bindgen_cli_support::Bindgen;

use super::asset::Asset;
use crate::{Fault, Why};

/// The module and its glue, `app.js` and `app_bg.wasm`, with whatever scripts the glue imports.
pub fn bind(module: &Path, scratch: &Path) -> Result<Vec<Asset>, Fault> {
    // What an earlier build left there must not slip into this one.
    if scratch.exists() {
        fs::remove_dir_all(scratch).why(|| format!("cannot empty {}", scratch.display()))?;
    }
    let mut bindgen = Bindgen::new();
    bindgen
        .input_path(module)
        .out_name("app")
        .typescript(false)
        // `www/boot.js` and `www/worker.js` name the module, so that its hashed name is in one place.
        .omit_default_module_path(true)
        .remove_name_section(true)
        .remove_producers_section(true);
    bindgen
        .web(true)
        .and_then(|bindgen| bindgen.generate(scratch))
        .map_err(|error| {
            Fault::new(format!("cannot write the bindings of {}", module.display()))
                .because(error.as_ref())
                .hint("wasm-bindgen and wasm-bindgen-cli-support must be one version: Cargo.toml pins both")
        })?;
    Asset::read_folder(scratch)
}
