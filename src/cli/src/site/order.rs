//! The functions of a module, each beside the one most like it.
//!
//! A compressor spends least on what resembles what it has just seen, and the order of the functions
//! means nothing to who runs them: putting like to like takes a fortieth off what is sent.

use std::collections::BTreeMap;

use wasmparser::{BinaryReaderError, FunctionBody};

use super::functions::{Fallible, Functions};

/// Instructions that are compared at a time.
const RUN: usize = 3;
/// A run that more functions than this have says nothing of any of them.
const COMMON: usize = 1000;

/// The same module with its functions in another order.
///
/// # Errors
/// When it is no module.
pub fn order(module: &[u8]) -> Fallible<Vec<u8>> {
    let all = Functions::of(module)?;
    let mut functions = Vec::with_capacity(all.bodies.len());
    for (body, kind) in all.bodies.iter().zip(&all.types) {
        functions.push(Function {
            kind: *kind,
            length: body.as_bytes().len(),
            runs: runs(module, body)?,
        });
    }
    let order = like_to_like(&functions);
    let mut places = vec![0; order.len()];
    for (place, function) in (0_u32..).zip(&order) {
        places[*function] = place;
    }
    all.placed(module, &order, &places)
}

/// What is compared of a function.
struct Function {
    /// The number of its type.
    kind: u32,
    /// In bytes.
    length: usize,
    /// Its runs of instructions as numbers, each once, in order.
    runs: Vec<u64>,
}

/// The runs of instructions of a body; of one shorter than a run, all of it.
fn runs(module: &[u8], body: &FunctionBody<'_>) -> Result<Vec<u64>, BinaryReaderError> {
    let mut instructions = Vec::new();
    let mut reader = body.get_operators_reader()?;
    let place = |place: u64| usize::try_from(place).unwrap_or(usize::MAX);
    while !reader.eof() {
        let start = reader.original_position();
        reader.read()?;
        let bytes = module.get(place(start)..place(reader.original_position()));
        instructions.push(number(bytes.unwrap_or_default().iter().map(|byte| u64::from(*byte))));
    }
    let run = RUN.min(instructions.len()).max(1);
    let mut runs: Vec<u64> =
        instructions.windows(run).map(|run| number(run.iter().copied())).collect();
    runs.sort_unstable();
    runs.dedup();
    Ok(runs)
}

/// One number for several (FNV-1a, with the high bits folded in): the same on any machine.
fn number(parts: impl Iterator<Item = u64>) -> u64 {
    parts.fold(0xcbf2_9ce4_8422_2325, |number, part| {
        let number = (number ^ part).wrapping_mul(0x0100_0000_01b3);
        number ^ (number >> 29)
    })
}

/// An order of the functions in which each is followed by the one most like it of those left; where
/// none is, by the shortest of the first type left.
fn like_to_like(functions: &[Function]) -> Vec<usize> {
    let mut with_run: BTreeMap<u64, Vec<usize>> = BTreeMap::new();
    for (index, function) in functions.iter().enumerate() {
        for run in &function.runs {
            with_run.entry(*run).or_default().push(index);
        }
    }
    with_run.retain(|_, functions| (2..=COMMON).contains(&functions.len()));
    let mut plain: Vec<usize> = (0..functions.len()).collect();
    plain.sort_by_key(|index| (functions[*index].kind, functions[*index].length));
    let mut plain = plain.into_iter();
    let mut left = vec![true; functions.len()];
    let mut order: Vec<usize> = Vec::with_capacity(functions.len());
    let mut last = None;
    while let Some(next) = last
        .and_then(|last| most_alike(functions, &with_run, &left, last))
        .or_else(|| plain.find(|index| left[*index]))
    {
        left[next] = false;
        order.push(next);
        last = Some(next);
    }
    order
}

/// Of the functions left, the one that has the largest share of its runs and of this one's in common
/// with it; the first of several.
fn most_alike(
    functions: &[Function],
    with_run: &BTreeMap<u64, Vec<usize>>,
    left: &[bool],
    this: usize,
) -> Option<usize> {
    let mut common = vec![0_u64; functions.len()];
    for run in &functions[this].runs {
        for other in with_run.get(run).into_iter().flatten() {
            common[*other] += 1;
        }
    }
    let all = |other: usize| {
        (functions[this].runs.len() + functions[other].runs.len()) as u64 - common[other]
    };
    (0..functions.len()).filter(|other| left[*other] && common[*other] > 0).reduce(|best, other| {
        if common[other] * all(best) > common[best] * all(other) { other } else { best }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_encoder::{
        CodeSection, EntityType, ExportKind, ExportSection, Function as Body, FunctionSection,
        ImportSection, Module, TypeSection, ValType,
    };
    use wasmparser::{Operator, Parser, Payload};

    /// Four functions behind one from elsewhere, exported as "a" to "d". Each begins with a number of
    /// its own, its place; "a" is like "c" and "b" like "d", and each calls the next, "d" the import.
    fn module() -> Vec<u8> {
        let (mut types, mut imports) = (TypeSection::new(), ImportSection::new());
        types.ty().function([], []);
        types.ty().function([ValType::I32], []);
        imports.import("elsewhere", "f", EntityType::Function(0));
        let (mut functions, mut exports, mut code) =
            (FunctionSection::new(), ExportSection::new(), CodeSection::new());
        for (place, name) in (0..4).zip(["a", "b", "c", "d"]) {
            functions.function(place % 2);
            exports.export(name, ExportKind::Func, place + 1);
            let mut body = Body::new([]);
            let mut steps = body.instructions();
            steps.i32_const(place.cast_signed()).drop();
            if place % 2 == 0 {
                steps.nop().nop().nop();
            } else {
                steps.local_get(0).i32_clz().drop();
            }
            steps.call((place + 2) % 5).end();
            code.function(&body);
        }
        let mut module = Module::new();
        module.section(&types).section(&imports).section(&functions).section(&exports);
        module.section(&code);
        module.finish()
    }

    /// Of a function: its own number, its type, and what it calls.
    type Told = (i32, u32, u32);

    /// What is told of each function in turn, and where each export is.
    fn read(module: &[u8]) -> (Vec<Told>, Vec<(String, u32)>) {
        let read = Functions::of(module).unwrap();
        let told = read.bodies.iter().zip(&read.types).map(|(body, kind)| {
            let (mut own, mut calls) = (-1, u32::MAX);
            for step in body.get_operators_reader().unwrap() {
                match step.unwrap() {
                    Operator::I32Const { value } => own = value,
                    Operator::Call { function_index } => calls = function_index,
                    _ => {}
                }
            }
            (own, *kind, calls)
        });
        let mut exports = Vec::new();
        for payload in Parser::new(0).parse_all(module) {
            if let Payload::ExportSection(section) = payload.unwrap() {
                let section = section.into_iter().map(Result::unwrap);
                exports.extend(section.map(|export| (export.name.to_owned(), export.index)));
            }
        }
        (told.collect(), exports)
    }

    #[test]
    fn like_functions_come_to_stand_together_and_every_call_and_export_follows_them() {
        let (told, exports) = read(&order(&module()).unwrap());
        let own: Vec<i32> = told.iter().map(|(own, ..)| *own).collect();
        assert_eq!(own, [0, 2, 1, 3]);
        let at = |function: u32| own[usize::try_from(function).unwrap() - 1];
        for (own, kind, calls) in told.clone() {
            assert_eq!(kind, u32::try_from(own % 2).unwrap(), "the type of {own}");
            match own {
                3 => assert_eq!(calls, 0, "{own} calls what is elsewhere"),
                _ => assert_eq!(at(calls), own + 1, "what {own} calls"),
            }
        }
        let named: Vec<_> = exports.iter().map(|(name, at_)| (name.as_str(), at(*at_))).collect();
        assert_eq!(named, [("a", 0), ("b", 1), ("c", 2), ("d", 3)]);
    }

    #[test]
    fn ordering_what_is_ordered_changes_nothing_further() {
        let once = order(&module()).unwrap();
        assert_eq!(order(&once).unwrap(), once);
    }

    #[test]
    fn what_is_no_module_is_refused() {
        order(b"no module").unwrap_err();
    }
}
