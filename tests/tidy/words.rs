//! What no file may say.

use super::files::{File, all, assert_none, rust};

/// Functions of std whose last bits differ between targets; `libm` has each of them.
const UNSTEADY: &[&str] = &[
    "acos", "acosh", "asin", "asinh", "atan", "atan2", "atanh", "cbrt", "cos", "cosh", "exp",
    "exp2", "exp_m1", "hypot", "ln", "ln_1p", "log", "log10", "log2", "powf", "powi", "sin",
    "sin_cos", "sinh", "tan", "tanh",
];

#[test]
fn every_module_begins_by_saying_what_it_is() {
    // A `tests.rs` belongs to the module beside it, as an inline `mod tests` does.
    let silent = rust()
        .into_iter()
        .filter(|file| !file.path.ends_with("/tests.rs") && !file.text.starts_with("//! "));
    let silent: Vec<String> = silent.map(|file| file.path).collect();
    assert_none(&silent, "found modules that do not begin with `//!`");
}

#[test]
fn nothing_is_left_for_later_and_no_test_is_left_out() {
    // Put together here, so that this file does not hold what it looks for.
    let words = [
        concat!("TO", "DO"),
        concat!("FIX", "ME"),
        concat!("XX", "X"),
        concat!("#[ig", "nore"),
        concat!("test.sk", "ip("),
        concat!("test.to", "do("),
        concat!("@unittest.sk", "ip"),
    ];
    let written = all().into_iter().filter(|file| !file.path.ends_with("-lock.json"));
    assert_none(&lines_with(written, |line| words.iter().any(|word| line.contains(word))), "found");
}

#[test]
fn no_path_of_anybody_s_machine_is_written_down() {
    let places = [concat!("/ro", "ot/"), concat!("/ho", "me/"), concat!("/wo", "rk/")];
    let quoted = |line: &str, place: &str| {
        line.match_indices(place)
            .any(|(at, _)| !line[..at].ends_with(|c: char| c.is_alphanumeric() || c == '.'))
    };
    let faults =
        lines_with(all().into_iter(), |line| places.iter().any(|place| quoted(line, place)));
    assert_none(&faults, "found paths of a machine, expected relative ones");
}

#[test]
fn names_of_tests_are_sentences() {
    let prefix = concat!("fn te", "st_");
    let faults = lines_with(rust().into_iter(), |line| line.trim_start().starts_with(prefix));
    assert_none(&faults, "found names that say `test`, expected what is true when the test passes");
}

#[test]
fn views_style_by_class_alone() {
    // The policy forbids `style` attributes, so a browser would drop them without a sound.
    let views = all().into_iter().filter(|file| {
        file.is("src/app/src/", ".rs") || file.is("www/", ".html") || file.is("www/", ".svg")
    });
    let faults = lines_with(views, |line| {
        let attribute = |(at, _): (usize, &str)| line[..at].ends_with([' ', '"', '{']) || at == 0;
        line.match_indices("style=").any(attribute) || line.contains("<style")
    });
    assert_none(&faults, "found inline styles, expected a class and a line in the style sheet");
}

#[test]
fn pages_hold_no_script_of_their_own() {
    let pages = all().into_iter().filter(|file| file.is("www/", ".html"));
    let faults = lines_with(pages, |line| {
        line.contains("<script") && !line.contains("src=") || line.contains(" onclick=")
    });
    assert_none(&faults, "found inline scripts, expected a file");
}

#[test]
fn engine_and_learning_take_their_mathematics_from_libm() {
    // Clippy says so too, but not inside macros, and not where somebody switched it off.
    let pure = |file: &File| {
        ["src/engine/src/", "src/learning/src/"].iter().any(|folder| file.is(folder, ".rs"))
    };
    let faults = lines_with(rust().into_iter().filter(pure), |line| {
        let code = line.split("//").next().unwrap_or(line);
        UNSTEADY.iter().any(|name| {
            [format!(".{name}("), format!("f64::{name}"), format!("f32::{name}")].iter().any(
                |call| {
                    code.match_indices(call.as_str()).any(|(at, found)| {
                        let after = &code[at + found.len()..];
                        found.ends_with('(')
                            || !after.starts_with(|c: char| c.is_alphanumeric() || c == '_')
                    })
                },
            )
        })
    });
    assert_none(&faults, "found functions whose last bits differ between targets, expected libm's");
}

/// Every line that `wrong` objects to, with its place.
fn lines_with(files: impl Iterator<Item = File>, wrong: impl Fn(&str) -> bool) -> Vec<String> {
    files
        .flat_map(|file| {
            let lines = file.text.lines().enumerate();
            let wrong = lines.filter(|(_, line)| wrong(line));
            let place = |(number, line): (usize, &str)| {
                format!("{}:{}: {}", file.path, number + 1, line.trim())
            };
            wrong.map(place).collect::<Vec<_>>()
        })
        .collect()
}
