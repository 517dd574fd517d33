//! How long a file and a function may be.

use super::files::{File, assert_none, rust};

/// The longest file, and the longest of the kinds that must stay shorter still.
const FILE: usize = 499;
const RULE: usize = 150;
const COMPONENT: usize = 120;
/// The longest function.
const FUNCTION: usize = 60;
/// Files that were longer when the limit came, at the length that they had. A number here may only
/// fall; a file that fits its limit leaves the list.
const LONG_FILES: &[(&str, usize)] = &[("src/engine/src/plan/choices.rs", 517)];
/// Functions that were longer, by file and name, on the same terms.
const LONG_FUNCTIONS: &[(&str, usize)] = &[("src/engine/src/chart/fact.rs: shown_by", 62)];

#[test]
fn files_are_short() {
    let faults = rust().into_iter().filter_map(|file| {
        judge(&file.path, file.text.lines().count(), limit(&file.path), LONG_FILES)
    });
    assert_none(&faults.collect::<Vec<_>>(), "found files of the wrong length");
}

#[test]
fn functions_are_short() {
    let faults = rust().into_iter().flat_map(|file| {
        let named = functions(&file.text).into_iter().map(move |(name, lines)| {
            judge(&format!("{}: {name}", file.path), lines, FUNCTION, LONG_FUNCTIONS)
        });
        named.flatten().collect::<Vec<_>>()
    });
    assert_none(&faults.collect::<Vec<_>>(), "found functions of the wrong length");
}

#[test]
fn no_exception_outlives_its_file() {
    let rust = rust();
    let gone = |name: &str| {
        let path = name.split(": ").next().unwrap_or(name);
        !rust.iter().any(|file: &File| file.path == path)
    };
    let faults: Vec<String> = LONG_FILES
        .iter()
        .chain(LONG_FUNCTIONS)
        .filter(|(name, _)| gone(name))
        .map(|(name, _)| (*name).to_owned())
        .collect();
    assert_none(&faults, "found exceptions for files that are gone, expected none");
}

/// The longest that a file may be. A rule lies in its family's folder; what lies beside the folders
/// is what rules are made of.
fn limit(path: &str) -> usize {
    let component = ["components/", "pages/"].map(|folder| format!("src/app/src/{folder}"));
    match path.strip_prefix("src/engine/src/rules/") {
        // A family's list of its rules is no rule.
        Some(rest) if rest.contains('/') && !rest.ends_with("/mod.rs") => RULE,
        _ if component.iter().any(|folder| path.starts_with(folder)) => COMPONENT,
        _ => FILE,
    }
}

/// The fault of a length, against its limit or its exception.
fn judge(name: &str, lines: usize, limit: usize, known: &[(&str, usize)]) -> Option<String> {
    match known.iter().find(|(exception, _)| *exception == name) {
        Some(_) if lines <= limit => Some(format!("{name}: fits now, so strike it off the list")),
        Some((_, most)) if lines > *most => Some(format!("{name}: {lines} lines, had {most}")),
        None if lines > limit => Some(format!("{name}: {lines} lines, expected at most {limit}")),
        _ => None,
    }
}

/// Name and length of every function with a body of several lines. rustfmt puts the closing brace
/// of a function under the first letter of its first line, so its place tells where it ends.
fn functions(text: &str) -> Vec<(String, usize)> {
    let lines: Vec<&str> = text.lines().collect();
    let mut found = Vec::new();
    for (start, line) in lines.iter().enumerate() {
        let Some(name) = function_name(line) else { continue };
        let indent = &line[..line.len() - line.trim_start().len()];
        let close = format!("{indent}}}");
        let bodiless = |line: &&str| {
            line.starts_with(indent)
                && !line[indent.len()..].starts_with(' ')
                && line.ends_with(';')
        };
        let end = lines[start..].iter().position(|line| *line == close || bodiless(line));
        let one_line = line.ends_with('}');
        if let (Some(length), false) = (end, one_line) {
            found.push((name.to_owned(), length + 1));
        }
    }
    found
}

/// The name that a line declares a function by, if it does.
fn function_name(line: &str) -> Option<&str> {
    let mut words = line.trim_start().split(' ');
    let mut word = words.next()?;
    while word.starts_with("pub") || ["const", "async", "extern", "\"C\""].contains(&word) {
        word = words.next()?;
    }
    let rest = (word == "fn").then(|| words.next())??;
    rest.split(['(', '<']).next()
}

#[test]
fn the_measuring_of_functions_finds_their_ends() {
    let text = "fn one() {\n    if x {\n    }\n}\n\nimpl T {\n    pub(super) const fn two(\n        \
                x: u8,\n    ) -> u8 {\n        x\n    }\n    fn three();\n    fn four() {}\n}\n";
    let expected = [("one".to_owned(), 4), ("two".to_owned(), 5), ("three".to_owned(), 1)];
    assert_eq!(functions(text), expected);
}

#[test]
fn an_exception_may_shrink_but_not_grow_and_goes_when_it_fits() {
    let known = [("long.rs", 520)];
    let judge = |lines| judge("long.rs", lines, 499, &known);
    assert_eq!(judge(510), None);
    assert!(judge(521).is_some_and(|fault| fault.contains("had 520")));
    assert!(judge(499).is_some_and(|fault| fault.contains("strike it off")));
}
