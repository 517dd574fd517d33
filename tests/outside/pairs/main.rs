//! Writes export folders of varied (site, plan) pairs for the outside checks:
//! `export-pairs DIR COUNT`, from seed 1 on.

use std::io::Write;
use std::path::Path;
use std::process::ExitCode;

mod varied;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let read = |place: usize| arguments.get(place).and_then(|text| text.parse::<u64>().ok());
    let (Some(folder), Some(count)) = (arguments.first(), read(1)) else {
        let _ = writeln!(std::io::stderr(), "usage: export-pairs DIR COUNT");
        return ExitCode::from(2);
    };
    match write(Path::new(folder), count) {
        Ok(files) => {
            let _ = writeln!(std::io::stdout(), "{count} pairs, {files} files in {folder}");
            ExitCode::SUCCESS
        }
        Err(fault) => {
            let _ = writeln!(std::io::stderr(), "could not write to {folder}: {fault}");
            ExitCode::from(2)
        }
    }
}

fn write(folder: &Path, count: u64) -> std::io::Result<usize> {
    let mut files = 0;
    for seed in 1..=count {
        let (case, plan) = varied::pair(seed);
        let into = folder.join(format!("{seed:05}"));
        std::fs::create_dir_all(&into)?;
        let export = engine::solids::export(&case, Some(&plan));
        for (name, bytes) in &export.meshes {
            std::fs::write(into.join(name), bytes)?;
        }
        let recipe = serde_json::to_vec_pretty(&export.recipe)?;
        std::fs::write(into.join("recipe.json"), recipe)?;
        files += export.meshes.len() + 1;
    }
    Ok(files)
}
