//! Exit codes, and which stream says what.

use std::fs;

use super::tool::{folder, wallwise};

#[test]
fn help_is_a_result_and_an_unknown_command_is_talk() {
    let help = wallwise(&["--help"]);
    assert_eq!((help.code, help.talk.as_str()), (Some(0), ""));
    assert!(help.out.contains("never clinical advice"), "{}", help.out);
    assert!(help.out.contains("0 done, 1 findings, 2 could not run"), "{}", help.out);

    let unknown = wallwise(&["srve"]);
    assert_eq!((unknown.code, unknown.out.as_str()), (Some(2), ""));
    assert!(unknown.talk.starts_with("error: unrecognized subcommand 'srve'"), "{}", unknown.talk);
    assert!(unknown.talk.contains("'serve'"), "{}", unknown.talk);
}

#[test]
fn no_command_at_all_is_answered_with_the_commands() {
    let bare = wallwise(&[]);
    assert_eq!((bare.code, bare.out.as_str()), (Some(2), ""));
    assert!(bare.talk.starts_with("error: found no command, expected one"), "{}", bare.talk);
    assert!(bare.talk.contains("\n  serve "), "{}", bare.talk);
}

#[test]
fn a_build_into_somebody_s_folder_is_refused_before_anything_is_compiled() {
    let folder = folder("foreign");
    fs::write(folder.join("thesis.txt"), "years of work").expect("the folder can be written");
    let refused = wallwise(&["build", "--out", folder.to_str().expect("a plain path")]);
    assert_eq!((refused.code, refused.out.as_str()), (Some(2), ""));
    assert!(refused.talk.contains("not an earlier build"), "{}", refused.talk);
    assert!(refused.talk.contains("hint: pick an empty folder"), "{}", refused.talk);
    assert!(folder.join("thesis.txt").exists());
}
