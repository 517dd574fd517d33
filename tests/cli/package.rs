//! `wallwise package`, on a page that stands for a built one.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use super::tool::{folder, path, shipped, wallwise};

/// A page of two modules, a part and the list of sets, as the build names them.
fn site(folder: &Path) -> PathBuf {
    let site = folder.join("site");
    fs::create_dir_all(site.join("icons")).expect("made");
    let entry = "<!doctype html>\n<html data-hands-in lang=\"en\" data-version=\"1\">\n<link rel=\"stylesheet\" href=\"./style-1.css\">\n<script type=\"module\" src=\"./boot-1.js\"></script>\n<div id=\"room\"></div>\n</html>\n";
    for (name, text) in [
        ("index.html", entry),
        ("style-1.css", "p { margin: 0; }"),
        (
            "boot-1.js",
            "const sets = new URL(\"./sets-1.json\", import.meta.url);\nimport { later } from \"./app-1.js\";\nlater(sets);\n",
        ),
        (
            "app-1.js",
            "export const later = () => fetch(new URL(\"./app_bg-1.wasm\", import.meta.url));\n",
        ),
        ("app_bg-1.wasm", "\0asm"),
        ("app_bg-1.wasm.br", "smaller"),
        ("sets-1.json", "[]"),
        ("icons/icon-1.svg", "<svg/>"),
        ("sw.js", "const FILES = [];"),
        ("site.json", "{}"),
    ] {
        fs::write(site.join(name), text).expect("written");
    }
    site
}

/// A set of one drawn case.
fn set(folder: &Path, name: &str, expect: &str) -> PathBuf {
    let file = folder.join(name);
    let text = format!(
        "format = 1\nkind = \"set\"\ntitle = \"Walls & gaps\"\naim = \"Hand out a set.\"\nlevel = \"student\"\nmode = \"assessment\"\n\n[[case]]\nseed = 7\n\n{expect}"
    );
    fs::write(&file, text).expect("written");
    file
}

/// The names in an archive, by its directory, and all of it as text.
fn names(archive: &[u8]) -> Vec<String> {
    let starts: Vec<usize> =
        (0..archive.len()).filter(|at| archive[*at..].starts_with(b"PK\x01\x02")).collect();
    let name = |at: &usize| {
        let length = usize::from(u16::from_le_bytes([archive[at + 28], archive[at + 29]]));
        String::from_utf8(archive[at + 46..at + 46 + length].to_vec()).expect("a plain name")
    };
    starts.iter().map(name).collect()
}

fn packed(folder: &Path, set: &Path, more: &[&str]) -> Vec<u8> {
    let (site, out) = (site(folder), folder.join("out.zip"));
    let mut arguments = vec!["package", path(set), "--site", path(&site), "--out", path(&out)];
    arguments.extend(more);
    let ran = wallwise(&arguments);
    assert_eq!((ran.code, ran.talk.as_str()), (Some(0), ""), "{}", ran.out);
    assert_eq!(ran.out, format!("{}\n", out.display()));
    fs::read(out).expect("the package is there")
}

#[test]
fn a_manifest_lists_exactly_the_files_of_its_package_and_the_same_again_is_the_same_bytes() {
    let folder = folder("package");
    let set = set(&folder, "two-walls.set.toml", "");
    for (edition, says) in [("1.2", "<schemaversion>1.2<"), ("2004", "2004 4th Edition")] {
        let archive = packed(&folder, &set, &["--edition", edition, "--pass", "60"]);
        assert!(archive == packed(&folder, &set, &["--edition", edition, "--pass", "60"]));
        let all = names(&archive);
        let text = String::from_utf8_lossy(&archive);
        let listed = text.split("<file href=\"").skip(1).filter_map(|rest| rest.split('"').next());
        let mut listed: BTreeSet<&str> = listed.collect();
        listed.insert("imsmanifest.xml");
        assert_eq!(listed, all.iter().map(String::as_str).collect::<BTreeSet<_>>());
        assert_eq!(all.first().map(String::as_str), Some("imsmanifest.xml"));
        assert!(text.contains(says) && text.contains("<title>Walls &amp; gaps</title>"));
        assert!(text.contains("data-package=\"two-walls\"") && text.contains("data-assessment"));
        assert!(text.contains("data-pass=\"60\"") && !text.contains("data-version"));
    }
}

#[test]
fn a_set_that_does_not_do_what_it_says_is_not_packed() {
    let folder = folder("package-refused");
    let expect = "[[case.expect]]\nplan = \"proof\"\nword = \"unsafe\"\n";
    let (site, out) = (site(&folder), folder.join("out.zip"));
    let pack =
        |set: &Path| wallwise(&["package", path(set), "--site", path(&site), "--out", path(&out)]);
    let ran = pack(&set(&folder, "wrong.set.toml", expect));
    assert_eq!(ran.code, Some(1), "{}", ran.talk);
    assert!(ran.out.contains("expected the word \"unsafe\", found \"sound\""), "{}", ran.out);
    let ran = pack(&set(&folder, "broken.set.toml", "colour = 3\n"));
    assert_eq!(ran.code, Some(2), "{}", ran.out);
    assert!(ran.talk.contains("colour"), "{}", ran.talk);
    let ran = pack(&set(&folder, "two walls.set.toml", ""));
    assert_eq!(ran.code, Some(2), "{}", ran.out);
    assert!(ran.talk.contains("rename the file"), "{}", ran.talk);
    let ran = pack(&set(&folder, "forms.set.toml", ""));
    assert_eq!(ran.code, Some(0), "{}", ran.talk);
    fs::remove_file(&out).expect("it was packed");
    let text = fs::read_to_string(folder.join("forms.set.toml")).expect("the set");
    let text = text.replace("[[case]]", "forms = true\n\n[[case]]");
    fs::write(folder.join("forms.set.toml"), text).expect("written");
    let ran = pack(&folder.join("forms.set.toml"));
    assert_eq!(ran.code, Some(2), "{}", ran.out);
    assert!(ran.talk.contains("forms = true") && ran.talk.contains("by link"), "{}", ran.talk);
    let text = fs::read_to_string(folder.join("forms.set.toml")).expect("the set");
    let text = text.replace("forms = true\n", "").replace("\"assessment\"", "\"worked\"");
    fs::write(folder.join("worked.set.toml"), text).expect("written");
    let ran = pack(&folder.join("worked.set.toml"));
    assert_eq!(ran.code, Some(2), "{}", ran.out);
    assert!(ran.talk.contains("nobody's answer") && ran.talk.contains("by link"), "{}", ran.talk);
    assert!(!out.exists());
}

#[test]
fn a_folder_that_is_no_page_is_said_with_a_way_out() {
    let folder = folder("package-no-page");
    let set = shipped("1-the-intact-wall.set.toml");
    let ran = wallwise(&["package", path(&set), "--site", path(&folder)]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""));
    assert!(ran.talk.contains("found no index.html"), "{}", ran.talk);
}

#[test]
fn the_ordinary_room_is_not_packed_because_it_hands_nothing_in() {
    let folder = folder("package-room");
    let set = shipped("1-the-intact-wall.set.toml");
    let site = site(&folder);
    let entry = fs::read_to_string(site.join("index.html")).expect("the entry");
    fs::write(site.join("index.html"), entry.replace(" data-hands-in", "")).expect("written");
    let out = folder.join("out.zip");
    let ran = wallwise(&["package", path(&set), "--site", path(&site), "--out", path(&out)]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""));
    assert!(ran.talk.contains("the ordinary room") && ran.talk.contains("--for-packages"));
    assert!(!out.exists());
}
