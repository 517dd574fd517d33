//! Cases for many attempts.

use engine::cases::{self, NoCase};
use engine::chart::{Address, Case};

/// So many drawn cases are kept (ours): a class sits few, and memory does not grow with the rest.
const KEPT: usize = 512;

/// Draws cases, each once while it is kept.
#[derive(Debug, Default)]
pub struct Drawer(Vec<(Address, Case)>);

impl Drawer {
    /// The case of an address.
    ///
    /// # Errors
    /// Where there is none.
    pub fn draw(&mut self, address: Address) -> Result<Case, NoCase> {
        if self.0.len() >= KEPT {
            self.0.clear();
        }
        if let Some((_, case)) = self.0.iter().find(|(known, _)| *known == address) {
            return Ok(case.clone());
        }
        let case = cases::at(address)?;
        self.0.push((address, case.clone()));
        Ok(case)
    }
}
