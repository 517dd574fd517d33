//! The tables of a report as CSV files.

use crate::{Fault, Why};
use learning::class::Report;
use learning::class::tables::TABLES;
use std::fs;
use std::path::Path;

/// Writes them; what is there under the same names is written over.
pub fn write(folder: &Path, report: &Report) -> Result<(), Fault> {
    fs::create_dir_all(folder).why(|| format!("cannot make {}", folder.display()))?;
    for (name, table) in TABLES {
        let path = folder.join(name).with_extension("csv");
        fs::write(&path, table(report).text())
            .why(|| format!("cannot write {}", path.display()))?;
    }
    Ok(())
}
