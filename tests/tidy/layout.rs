//! Where things may lie.

use std::fs;

use super::files::{all, assert_none, root};

/// All that the top level holds beside dotfiles and what is made.
const TOP: &[&str] = &[
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "LICENSE-APACHE",
    "LICENSE-MIT",
    "README.md",
    "scenarios",
    "src",
    "target",
    "tests",
    "www",
];

#[test]
fn the_top_level_holds_only_what_belongs_there() {
    let strangers: Vec<String> = fs::read_dir(root())
        .expect("the root can be read")
        .map(|entry| entry.expect("the entry can be read").file_name())
        .map(|name| name.to_string_lossy().into_owned())
        .filter(|name| !name.starts_with('.') && !TOP.contains(&name.as_str()))
        .collect();
    assert_none(&strangers, "found at the top level, expected a folder below it");
}

#[test]
fn lock_files_name_no_host_that_packages_come_from() {
    // Cargo's own lock file always names its registry; the others need not.
    let faults: Vec<String> = all()
        .into_iter()
        .filter(|file| file.path.ends_with("-lock.json") || file.path.ends_with("requirements.txt"))
        .flat_map(|file| {
            let line = |line: &str| line.contains("\"resolved\"") || line.contains("--index-url");
            let host = file.text.lines().filter(|text| line(text)).count();
            (host > 0).then(|| format!("{}: {host} lines", file.path))
        })
        .collect();
    assert_none(&faults, "found hosts in lock files, expected names, versions and hashes alone");
}

#[test]
fn every_member_takes_the_workspace_s_lints() {
    // They forbid `unsafe`; a member without them would be free of that.
    let free: Vec<String> = all()
        .into_iter()
        .filter(|file| file.path.ends_with("/Cargo.toml"))
        .filter(|file| !file.text.contains("[lints]\nworkspace = true"))
        .map(|file| file.path)
        .collect();
    assert_none(&free, "found members that do not take the workspace's lints");
}
