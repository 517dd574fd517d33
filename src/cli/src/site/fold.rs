//! Functions that do the same, once.
//!
//! The compiler writes one function for each type that a piece of code is used with, and many of them
//! come out alike to the byte: whoever names one can just as well name the other.

use std::collections::BTreeMap;

use super::functions::{Fallible, Functions};

/// The module with one function for all that are alike; callers that differed only in which of them
/// they call become alike in turn.
///
/// # Errors
/// When it is no module.
pub fn fold(module: &[u8]) -> Fallible<Vec<u8>> {
    let mut folded = module.to_vec();
    loop {
        let functions = Functions::of(&folded)?;
        let mut first: BTreeMap<(u32, &[u8]), u32> = BTreeMap::new();
        let (mut kept, mut places) = (Vec::new(), Vec::with_capacity(functions.bodies.len()));
        let mut next = 0;
        for (index, (body, kind)) in functions.bodies.iter().zip(&functions.types).enumerate() {
            let place = *first.entry((*kind, body.as_bytes())).or_insert(next);
            if place == next {
                kept.push(index);
                next += 1;
            }
            places.push(place);
        }
        let all = functions.bodies.len();
        let again = functions.placed(&folded, &kept, &places)?;
        if kept.len() == all {
            return Ok(again);
        }
        folded = again;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_encoder::{
        CodeSection, ExportKind, ExportSection, Function, FunctionSection, Module, TypeSection,
        ValType,
    };
    use wasmparser::{Operator, Parser, Payload};

    /// Six functions, exported as "a" to "f": "a" and "b" do the same, "c" does so for another type,
    /// "d" calls "a", "e" calls "b", "f" calls "c".
    fn module() -> Vec<u8> {
        let (mut types, mut functions) = (TypeSection::new(), FunctionSection::new());
        types.ty().function([], []);
        types.ty().function([ValType::I32], []);
        let (mut exports, mut code) = (ExportSection::new(), CodeSection::new());
        for (place, name) in (0..6_u32).zip(["a", "b", "c", "d", "e", "f"]) {
            functions.function(u32::from(place == 2));
            exports.export(name, ExportKind::Func, place);
            let mut body = Function::new([]);
            match place {
                0..3 => body.instructions().nop().end(),
                5 => body.instructions().i32_const(0).call(2).end(),
                _ => body.instructions().call(place - 3).end(),
            };
            code.function(&body);
        }
        let mut module = Module::new();
        module.section(&types).section(&functions).section(&exports).section(&code);
        module.finish()
    }

    #[test]
    fn what_does_the_same_is_one_and_so_are_its_callers() {
        let folded = fold(&module()).unwrap();
        wasmparser::validate(&folded).unwrap();
        let functions = Functions::of(&folded).unwrap();
        assert_eq!(functions.types, [0, 1, 0, 0], "a, c, d, f");
        let mut places = Vec::new();
        for payload in Parser::new(0).parse_all(&folded) {
            if let Payload::ExportSection(section) = payload.unwrap() {
                places.extend(section.into_iter().map(|export| export.unwrap().index));
            }
        }
        assert_eq!(places, [0, 0, 1, 2, 2, 3]);
        let calls: Vec<u32> = functions
            .bodies
            .iter()
            .flat_map(|body| body.get_operators_reader().unwrap().into_iter())
            .filter_map(|step| match step.unwrap() {
                Operator::Call { function_index } => Some(function_index),
                _ => None,
            })
            .collect();
        assert_eq!(calls, [0, 1], "d calls a, f calls c");
    }

    #[test]
    fn where_nothing_is_alike_nothing_changes() {
        let once = fold(&module()).unwrap();
        assert_eq!(fold(&once).unwrap(), once);
        fold(b"no module").unwrap_err();
    }
}
