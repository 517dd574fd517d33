//! The functions of a module, and the module with them at other places.

use core::convert::Infallible;

use wasm_encoder::reencode::{Error, Reencode, utils};
use wasm_encoder::{CodeSection, FunctionSection, Module};
use wasmparser::{
    BinaryReaderError, CodeSectionReader, FunctionBody, FunctionSectionReader, MemArg, Parser,
    Payload, TypeRef,
};

pub type Fallible<T> = Result<T, Error<Infallible>>;

/// The functions that a module has itself.
#[derive(Debug)]
pub struct Functions<'a> {
    /// How many it takes from elsewhere; these are numbered first.
    imported: u32,
    /// The number of each one's type.
    pub types: Vec<u32>,
    /// What each does.
    pub bodies: Vec<FunctionBody<'a>>,
}

impl<'a> Functions<'a> {
    /// Of a module.
    ///
    /// # Errors
    /// When it is no module.
    pub fn of(module: &'a [u8]) -> Result<Self, BinaryReaderError> {
        let (mut imported, mut types, mut bodies) = (0, Vec::new(), Vec::new());
        for payload in Parser::new(0).parse_all(module) {
            match payload? {
                Payload::ImportSection(section) => {
                    for import in section.into_imports() {
                        let is_function =
                            matches!(import?.ty, TypeRef::Func(_) | TypeRef::FuncExact(_));
                        imported += u32::from(is_function);
                    }
                }
                Payload::FunctionSection(section) => {
                    types = section.into_iter().collect::<Result<_, _>>()?;
                }
                Payload::CodeSectionEntry(body) => bodies.push(body),
                _ => {}
            }
        }
        Ok(Self { imported, types, bodies })
    }

    /// The module with only the functions of `order`, in that order; whoever named one, at its old
    /// number, now names the one at its place in `places`.
    ///
    /// # Errors
    /// When it is no module.
    pub fn placed(&self, module: &[u8], order: &[usize], places: &[u32]) -> Fallible<Vec<u8>> {
        let mut placed = Module::new();
        let mut places = Places { functions: self, order, places };
        places.parse_core_module(&mut placed, Parser::new(0), module)?;
        Ok(placed.finish())
    }
}

struct Places<'a> {
    functions: &'a Functions<'a>,
    /// Which function comes at each place.
    order: &'a [usize],
    /// At which place each function is found.
    places: &'a [u32],
}

impl Reencode for Places<'_> {
    type Error = Infallible;

    fn function_index(&mut self, function: u32) -> Fallible<u32> {
        let imported = self.functions.imported;
        let own = function.checked_sub(imported).and_then(|own| usize::try_from(own).ok());
        let place = own.and_then(|own| self.places.get(own));
        Ok(place.map_or(function, |place| imported + place))
    }

    /// How far an address is aligned is a hint that changes nothing: always the same one costs nothing
    /// to send, and functions that differed in it alone become alike.
    fn mem_arg(&mut self, arg: MemArg) -> Fallible<wasm_encoder::MemArg> {
        utils::mem_arg(self, MemArg { align: arg.max_align, ..arg })
    }

    fn parse_function_section(
        &mut self,
        functions: &mut FunctionSection,
        _: FunctionSectionReader<'_>,
    ) -> Fallible<()> {
        for function in self.order {
            functions.function(self.functions.types[*function]);
        }
        Ok(())
    }

    fn parse_code_section(
        &mut self,
        code: &mut CodeSection,
        _: CodeSectionReader<'_>,
    ) -> Fallible<()> {
        for function in self.order {
            self.parse_function_body(code, self.functions.bodies[*function].clone())?;
        }
        Ok(())
    }
}
