//! A part of the module as strands: the same bytes in another order, alike beside alike.
//!
//! Between one instruction and the next lie numbers of every kind: places in memory, functions, labels,
//! locals. Sorted into strands of one kind each they compress by a tenth more. `www/strands.js` lays them
//! back where they were before the browser compiles the part. Only what is loaded later is sent so: the
//! first part is compiled while it arrives.
//!
//! Form: for each strand its length (LEB128) and then, after all lengths, the strands. The first holds the
//! sections as they are, with nothing but its size and its count of functions where the code was. How
//! long a function is and how an address is aligned is not sent: it follows from the rest.

use crate::Fault;

/// What a strand is of. The numbers are the order in the file, and `www/strands.js` has them too.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[repr(usize)]
enum Strand {
    Sections,
    Locals,
    Instructions,
    Types,
    Labels,
    Functions,
    Gets,
    Sets,
    Tees,
    Globals,
    Loads,
    Stores,
    Short,
    Long,
    Fixed,
    Rest,
}

/// How many kinds of strand there are.
const STRANDS: usize = Strand::Rest as usize + 1;

/// The section of a module that holds what its functions do.
const CODE: u8 = 10;
/// The instruction that closes a block or a function.
const END: u8 = 0x0b;
/// The instruction that reads a local, and how many locals it reads so often that instruction and number
/// are sent as one byte, from a byte on that no plain module begins an instruction with.
const GET: u8 = 0x20;
const FEW: u8 = 4;
const SHORT_GET: u8 = 0xd3;
/// How each access to memory is aligned by nature, as a power of two, from `i32.load` on.
const ALIGNED: &[u8] = &[2, 3, 2, 3, 0, 0, 1, 1, 0, 0, 1, 1, 2, 2, 2, 3, 2, 3, 0, 1, 0, 1, 2];
/// The first access to memory, and the first that writes.
const LOAD: u8 = 0x28;
const STORE: u8 = 0x36;

/// Puts a module into strands.
///
/// # Errors
/// With the place and what was found there when it is no module or holds what a strand cannot.
pub fn strands(module: &[u8]) -> Result<Vec<u8>, Fault> {
    let mut walk = Walk { module, at: 0, strands: Default::default() };
    walk.module()?;
    let mut whole = Vec::with_capacity(module.len());
    for strand in &walk.strands {
        write_number(&mut whole, strand.len());
    }
    walk.strands.iter().for_each(|strand| whole.extend_from_slice(strand));
    Ok(whole)
}

/// Walks over a module and puts what it passes into the strands.
struct Walk<'a> {
    module: &'a [u8],
    at: usize,
    strands: [Vec<u8>; STRANDS],
}

impl Walk<'_> {
    fn module(&mut self) -> Result<(), Fault> {
        self.bytes(8, Strand::Sections)?;
        while self.at < self.module.len() {
            let section = self.byte(Strand::Sections)?;
            let length = self.number(Strand::Sections)?;
            if section != CODE {
                self.bytes(length, Strand::Sections)?;
                continue;
            }
            for _ in 0..self.number(Strand::Sections)? {
                self.function()?;
            }
        }
        Ok(())
    }

    fn function(&mut self) -> Result<(), Fault> {
        let length = self.passed()?;
        let end = self.at + length;
        for _ in 0..self.number(Strand::Locals)? {
            self.number(Strand::Locals)?;
            self.byte(Strand::Locals)?;
        }
        let mut open = 1;
        while open > 0 {
            match self.instruction()? {
                0x02..=0x04 => open += 1,
                END => open -= 1,
                _ => {}
            }
        }
        if self.at == end { Ok(()) } else { Err(self.strange("the end of a function elsewhere")) }
    }

    /// One instruction, and what it is.
    fn instruction(&mut self) -> Result<u8, Fault> {
        if let Some(&[GET, local @ ..FEW]) = self.module.get(self.at..self.at + 2) {
            self.strands[Strand::Instructions as usize].push(SHORT_GET + local);
            self.at += 2;
            return Ok(GET);
        }
        let code = self.byte(Strand::Instructions)?;
        match code {
            0x00 | 0x01 | 0x05 | END | 0x0f | 0x1a | 0x1b | 0x45..=0xc4 | 0xd1 => {}
            0x02..=0x04 => self.numbers(1, Strand::Types)?,
            0x0c | 0x0d => self.numbers(1, Strand::Labels)?,
            0x0e => {
                let labels = self.number(Strand::Rest)?;
                self.numbers(labels + 1, Strand::Rest)?;
            }
            0x10 => self.numbers(1, Strand::Functions)?,
            GET => self.numbers(1, Strand::Gets)?,
            0x21 => self.numbers(1, Strand::Sets)?,
            0x22 => self.numbers(1, Strand::Tees)?,
            0x23..=0x26 => self.numbers(1, Strand::Globals)?,
            LOAD..=0x3e => self.access(code)?,
            0x41 => self.numbers(1, Strand::Short)?,
            0x42 => self.numbers(1, Strand::Long)?,
            0x43 => self.bytes(4, Strand::Fixed)?,
            0x44 => self.bytes(8, Strand::Fixed)?,
            0x11 => self.numbers(2, Strand::Rest)?,
            0x3f | 0x40 | 0xd0 | 0xd2 => self.numbers(1, Strand::Rest)?,
            0xfc => match self.byte(Strand::Instructions)? {
                0..=7 => {}
                8 | 10 | 12 | 14 => self.numbers(2, Strand::Rest)?,
                9 | 11 | 13 | 15..=17 => self.numbers(1, Strand::Rest)?,
                _ => return Err(self.strange("an instruction of another kind")),
            },
            _ => return Err(self.strange("an instruction of another kind")),
        }
        Ok(code)
    }

    /// Where in memory an instruction reads or writes.
    fn access(&mut self, code: u8) -> Result<(), Fault> {
        let aligned = ALIGNED.get(usize::from(code - LOAD)).map(|log| usize::from(*log));
        if aligned != Some(self.passed()?) {
            return Err(self.strange("an address that is not aligned by nature"));
        }
        self.numbers(1, if code < STORE { Strand::Loads } else { Strand::Stores })
    }

    fn numbers(&mut self, count: usize, strand: Strand) -> Result<(), Fault> {
        (0..count).try_for_each(|_| self.number(strand).map(drop))
    }

    /// A number in LEB128, copied; what it says where it has no sign.
    fn number(&mut self, strand: Strand) -> Result<usize, Fault> {
        let from = self.at;
        let number = self.passed()?;
        self.strands[strand as usize].extend_from_slice(&self.module[from..self.at]);
        Ok(number)
    }

    /// A number in LEB128 that goes into no strand.
    fn passed(&mut self) -> Result<usize, Fault> {
        let mut number = 0;
        for place in 0..10 {
            let byte = *self.module.get(self.at).ok_or_else(|| self.strange("the end"))?;
            self.at += 1;
            number |= usize::from(byte & 0x7f) << (7 * place).min(usize::BITS - 8);
            if byte < 0x80 {
                return Ok(number);
            }
        }
        Err(self.strange("a number without an end"))
    }

    fn byte(&mut self, strand: Strand) -> Result<u8, Fault> {
        self.bytes(1, strand)?;
        Ok(self.module[self.at - 1])
    }

    fn bytes(&mut self, count: usize, strand: Strand) -> Result<(), Fault> {
        let end = self.at.checked_add(count);
        let bytes = end.and_then(|end| self.module.get(self.at..end));
        let bytes = bytes.ok_or_else(|| self.strange("the end"))?;
        self.strands[strand as usize].extend_from_slice(bytes);
        self.at += count;
        Ok(())
    }

    fn strange(&self, found: &str) -> Fault {
        Fault::new(format!(
            "found {found} at byte {} of the later part, expected the instructions of a plain module",
            self.at
        ))
        .hint("build the page without further target features: `www/strands.js` has to know what it lays back")
    }
}

/// Writes a number in LEB128.
fn write_number(bytes: &mut Vec<u8>, mut number: usize) {
    while number >= 0x80 {
        bytes.push((number & 0x7f) as u8 | 0x80);
        number >>= 7;
    }
    bytes.push(number as u8);
}

#[cfg(test)]
mod tests {
    use super::*;

    /// `(func (param i32) (result i32) local.get 0  i32.load offset=8  i32.const -1  i32.add)`.
    const MODULE: &[u8] = b"\0asm\x01\0\0\0\x01\x06\x01\x60\x01\x7f\x01\x7f\x03\x02\x01\0\
        \x0a\x0c\x01\x0a\0\x20\0\x28\x02\x08\x41\x7f\x6a\x0b";

    #[test]
    fn each_kind_of_number_lies_in_its_strand_and_what_follows_from_the_rest_in_none() {
        let whole = strands(MODULE).unwrap();
        let (lengths, rest) = whole.split_at(STRANDS);
        assert_eq!(lengths.iter().map(|length| usize::from(*length)).sum::<usize>(), rest.len());
        let mut rest = rest;
        let mut strand = |which: Strand| {
            let (found, left) = rest.split_at(usize::from(lengths[which as usize]));
            rest = left;
            found
        };
        assert_eq!(strand(Strand::Sections), &MODULE[..23]);
        assert_eq!(strand(Strand::Locals), [0]);
        assert_eq!(strand(Strand::Instructions), [SHORT_GET, 0x28, 0x41, 0x6a, END]);
        assert_eq!(lengths[Strand::Types as usize], 0);
        assert_eq!(lengths[Strand::Gets as usize], 0);
        assert_eq!(
            whole.len(),
            STRANDS + MODULE.len() - 3,
            "a length, a local and an alignment less"
        );
    }

    #[test]
    fn every_kind_of_instruction_lies_where_another_program_put_it() {
        let known: serde_json::Value =
            serde_json::from_str(include_str!("../../../../tests/data/strands.json")).unwrap();
        let hex = |bytes: &[u8]| bytes.iter().map(|byte| format!("{byte:02x}")).collect::<String>();
        let text = known["module"].as_str().unwrap();
        let byte = |at: usize| u8::from_str_radix(&text[at..at + 2], 16).unwrap();
        let module: Vec<u8> = (0..text.len()).step_by(2).map(byte).collect();
        assert_eq!(hex(&strands(&module).unwrap()), known["strands"].as_str().unwrap());
    }

    #[test]
    fn what_a_strand_cannot_hold_is_refused_with_its_place() {
        let with = |at: usize, byte: u8| {
            let mut module = MODULE.to_vec();
            module[at] = byte;
            strands(&module).unwrap_err().to_string()
        };
        assert!(with(28, 0).contains("not aligned by nature at byte 29"), "{}", with(28, 0));
        assert!(with(32, 0xfd).contains("another kind"), "{}", with(32, 0xfd));
        assert!(with(23, 9).contains("elsewhere"), "{}", with(23, 9));
        for end in 0..MODULE.len() {
            // Cut off between two sections it is a shorter module; anywhere else it is refused.
            assert_eq!(strands(&MODULE[..end]).is_ok(), [8, 16, 20].contains(&end), "{end}");
        }
    }

    #[test]
    fn a_length_is_written_as_the_module_writes_its_own() {
        let mut bytes = Vec::new();
        write_number(&mut bytes, 300);
        assert_eq!(bytes, [0xac, 0x02]);
    }
}
