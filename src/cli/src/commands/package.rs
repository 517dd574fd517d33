//! `wallwise package`: a set and the page as one file that a learning management system takes.

use super::set;
use crate::site::{self, Page, Workspace};
use crate::{Fault, Status, Streams, Why};
use engine::scenario::{Mode, Set};
use learning::handing::manifest::{self, Mastery, Package};
use learning::handing::outcome::hash_of;
use learning::handing::scorm::Edition;
use learning::handing::zip::{Entry, zip};
use std::fs;
use std::path::{Path, PathBuf};

#[derive(Debug, clap::Args)]
pub struct Args {
    /// The set file
    set: PathBuf,
    /// Edition of SCORM that the host speaks
    #[arg(long, value_name = "EDITION", default_value = "1.2", value_parser = ["1.2", "2004"])]
    edition: String,
    /// The mark that passes the set, 0 to 100; without it the host is told that it was completed
    #[arg(long, value_name = "MARK", value_parser = clap::value_parser!(u8).range(0..=100))]
    pass: Option<u8>,
    /// Folder that `wallwise build --for-packages` made; without it that page is built
    #[arg(long, value_name = "DIR")]
    site: Option<PathBuf>,
    /// File to write [default: the set's name and .zip, in the current folder]
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
}

/// Checks the set, packs it, and prints the file.
pub fn run(args: Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    let name = set::name_of(&args.set)?;
    let checked = set::read(&args.set)?;
    let findings = set::findings(&checked, &args.set);
    if !findings.is_empty() {
        streams.print(&format!("{}\n", findings.join("\n")))?;
        streams.say("the set does not do what it says: nothing was packed");
        return Ok(Status::Findings);
    }
    can_be_packed(&checked, &args.set)?;
    let sets = site::of_one_set(name, &args.set)?.asset;
    let folder = match args.site {
        Some(folder) => folder,
        None => {
            let workspace = Workspace::find()?;
            let folder = workspace.package_site();
            site::build(&workspace, Page::Packaged, &folder, streams)?;
            folder
        }
    };
    let mut says = vec![
        ("data-package", name.to_owned()),
        ("data-edition", args.edition.clone()),
        ("data-hash", hash_of(&String::from_utf8_lossy(&sets.bytes))),
    ];
    says.extend((checked.mode == Mode::Assessment).then(|| ("data-assessment", String::new())));
    says.extend(args.pass.map(|pass| ("data-pass", pass.to_string())));
    let page = site::read(&folder)?;
    site::hands_in(&page, &folder)?;
    let files = site::single(&page, &sets, &says)?;
    let edition = if args.edition == "1.2" { Edition::Older } else { Edition::Newer };
    let names = files.each_ref().map(|file| file.path.as_str());
    let package = Package {
        identifier: &format!("wallwise.{name}"),
        title: &checked.title,
        files: &names,
        opens: site::ENTRY,
        mastery: args.pass.map_or(Mastery::None, Mastery::Content),
    };
    let manifest = manifest::manifest(&package, edition)
        .why(|| format!("cannot describe {}", args.set.display()))?;
    let mut entries = vec![Entry { name: manifest::NAME, bytes: manifest.as_bytes() }];
    entries.extend(files.iter().map(|file| Entry { name: &file.path, bytes: &file.bytes }));
    let bytes = zip(&entries).why(|| "cannot pack the page".to_owned())?;
    let out = args.out.unwrap_or_else(|| PathBuf::from(format!("{name}.zip")));
    fs::write(&out, &bytes).why(|| format!("cannot write {}", out.display()))?;
    streams.print(&format!("{}\n", out.display()))?;
    Ok(Status::Done)
}

/// That learners of a host do one and the same set, and do it.
fn can_be_packed(checked: &Set, file: &Path) -> Result<(), Fault> {
    if checked.forms {
        return Err(Fault::new(format!(
            "{}: found forms = true, expected a set whose cases are the same for everybody",
            file.display()
        ))
        .hint("hand such a set out by link, or leave out that line: the package then has the cases that the set names"));
    }
    if checked.mode == Mode::Worked {
        return Err(Fault::new(format!(
            "{}: found mode = \"worked\", expected a set that learners do: what is shown is nobody's answer, and a host would wait for one",
            file.display()
        ))
        .hint("hand such a set out by link, or set mode = \"study\""));
    }
    Ok(())
}
