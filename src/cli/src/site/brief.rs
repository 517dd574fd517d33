//! What module and glue call each other's functions by, in a letter or two.
//!
//! The bindings name each function of the browser for what it does and a hash. Nobody reads the names,
//! and hashes do not compress.

use core::convert::Infallible;
use std::collections::BTreeMap;

use wasm_encoder::reencode::{Error, Reencode};
use wasm_encoder::{ImportSection, Module};
use wasmparser::{BinaryReaderError, Imports, Parser, Payload};

/// The module of imports that the glue fills.
const GLUE: &str = "./app_bg.js";
/// What the names of the bindings begin with.
const BINDING: &str = "__wbg_";

type Fallible<T> = Result<T, Error<Infallible>>;

/// The short name of each function that a module takes from its glue, by its long one.
#[derive(Debug)]
pub struct Brief(BTreeMap<String, String>);

impl Brief {
    /// For the imports of a module.
    ///
    /// # Errors
    /// When it is no module.
    pub fn of(module: &[u8]) -> Result<Self, BinaryReaderError> {
        let mut names = BTreeMap::new();
        for payload in Parser::new(0).parse_all(module) {
            let Payload::ImportSection(section) = payload? else { continue };
            for import in section.into_imports() {
                let import = import?;
                if import.module == GLUE && import.name.starts_with(BINDING) {
                    let next = letters(names.len());
                    names.entry(import.name.to_owned()).or_insert(next);
                }
            }
        }
        Ok(Self(names))
    }

    /// The module with the short names.
    ///
    /// # Errors
    /// When it is no module.
    pub fn module(&mut self, module: &[u8]) -> Fallible<Vec<u8>> {
        let mut brief = Module::new();
        self.parse_core_module(&mut brief, Parser::new(0), module)?;
        Ok(brief.finish())
    }

    /// The glue with the short names: each stands there once, as the key of its function.
    pub fn glue(&self, script: &str) -> String {
        let mut brief = String::with_capacity(script.len());
        for line in script.lines() {
            let key = line.split_once(':').and_then(|(key, rest)| Some((self.0.get(key)?, rest)));
            match key {
                Some((short, rest)) => brief.extend([short, ":", rest]),
                None => brief.push_str(line),
            }
            brief.push('\n');
        }
        brief
    }
}

impl Reencode for Brief {
    type Error = Infallible;

    fn parse_imports(&mut self, section: &mut ImportSection, imports: Imports<'_>) -> Fallible<()> {
        let Imports::Single(at, mut import) = imports else {
            return wasm_encoder::reencode::utils::parse_imports(self, section, imports);
        };
        let short = self.0.get(import.name).filter(|_| import.module == GLUE).cloned();
        if let Some(short) = &short {
            import.name = short;
        }
        wasm_encoder::reencode::utils::parse_imports(self, section, Imports::Single(at, import))
    }
}

/// *a* to *z*, *aa* and so on.
fn letters(number: usize) -> String {
    let last = char::from(b'a' + u8::try_from(number % 26).unwrap_or(0));
    let before = if number < 26 { String::new() } else { letters(number / 26 - 1) };
    before + &last.to_string()
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_encoder::{EntityType, TypeSection};

    fn module(names: [(&str, &str); 3]) -> Vec<u8> {
        let (mut types, mut imports) = (TypeSection::new(), ImportSection::new());
        types.ty().function([], []);
        for (from, name) in names {
            imports.import(from, name, EntityType::Function(0));
        }
        let mut module = Module::new();
        module.section(&types).section(&imports);
        module.finish()
    }

    #[test]
    fn module_and_glue_take_the_same_short_names_and_the_rest_stays() {
        let long =
            module([(GLUE, "__wbg_log_12"), ("./later.js", "__wbg_log_12"), (GLUE, "other")]);
        let mut brief = Brief::of(&long).unwrap();
        let short = module([(GLUE, "a"), ("./later.js", "__wbg_log_12"), (GLUE, "other")]);
        assert_eq!(brief.module(&long).unwrap(), short);
        let script =
            "const import0 = {\n__wbg_log_12: function(a) {\n__wbg_log_123: 1,\nother: f\n";
        let told = "const import0 = {\na: function(a) {\n__wbg_log_123: 1,\nother: f\n";
        assert_eq!(brief.glue(script), told);
        Brief::of(b"no module").unwrap_err();
    }

    #[test]
    fn no_two_numbers_share_their_letters() {
        let all: Vec<String> = (0..2000).map(letters).collect();
        assert_eq!((all[0].as_str(), all[25].as_str(), all[26].as_str()), ("a", "z", "aa"));
        assert_eq!((all[701].as_str(), all[702].as_str()), ("zz", "aaa"));
        let mut once = all.clone();
        once.sort();
        once.dedup();
        assert_eq!(once.len(), all.len());
    }
}
