//! What failed, as each runner says it: told once more at the end, where a long run is read.

/// The most lines that are told of one suite.
const MOST: usize = 40;

/// Of cargo's runner: the names, and the panics with the line after them.
pub fn of_cargo(text: &str) -> Vec<String> {
    let lines: Vec<&str> = text.lines().collect();
    let mut faults = Vec::new();
    for (at, line) in lines.iter().enumerate() {
        if line.starts_with("test ") && line.ends_with("FAILED") {
            faults.push((*line).to_owned());
        } else if line.contains("' panicked at ") || line.contains(") panicked at ") {
            faults.push(format!("{line} {}", lines.get(at + 1).unwrap_or(&"")));
        }
    }
    cut(faults)
}

/// Of the compiler, clippy, rustfmt and rustdoc: each error with the line that says where.
pub fn of_compiler(text: &str) -> Vec<String> {
    let lines: Vec<&str> = text.lines().collect();
    let mut faults = Vec::new();
    for (at, line) in lines.iter().enumerate() {
        if line.starts_with("error") || line.starts_with("Diff in ") {
            faults.push(format!("{line} {}", lines.get(at + 1).unwrap_or(&"").trim()));
        }
    }
    cut(faults)
}

/// Of node's runner: all that it says again under its own heading.
pub fn of_node(text: &str) -> Vec<String> {
    let failing = text.split_once("failing tests:").map_or("", |(_, failing)| failing);
    let said = failing.lines().filter(|line| !line.trim().is_empty());
    cut(said.map(str::to_owned).collect())
}

/// Of Python's unittest: each heading, and the last line of what follows.
pub fn of_unittest(text: &str) -> Vec<String> {
    let mut faults: Vec<String> = Vec::new();
    let rule = |line: &str| line.len() > 20 && line.chars().all(|mark| mark == '=' || mark == '-');
    let mut open = false;
    for line in text.lines().filter(|line| !line.trim().is_empty() && !rule(line)) {
        if line.starts_with("FAIL: ") || line.starts_with("ERROR: ") {
            faults.extend([line.to_owned(), String::new()]);
            open = true;
        } else if line.starts_with("Ran ") {
            open = false;
        } else if let (true, Some(last)) = (open, faults.last_mut()) {
            line.clone_into(last);
        }
    }
    cut(faults)
}

fn cut(mut lines: Vec<String>) -> Vec<String> {
    lines.truncate(MOST);
    for line in &mut lines {
        if let Some((end, _)) = line.char_indices().nth(300) {
            line.truncate(end);
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_failed_test_of_each_runner_is_told_with_what_it_said() {
        let cargo = "test a ... ok\ntest b::c ... FAILED\n\
            thread 'b::c' panicked at src/b.rs:3:5:\nleft is not right\n";
        let told = of_cargo(cargo);
        assert_eq!(told.len(), 2);
        assert!(told[1].ends_with("left is not right"), "{told:?}");
        let rustdoc = "warning: x\nerror: unresolved link to `ours`\n  --> src/a.rs:10:75\n   |\n";
        assert_eq!(of_compiler(rustdoc), ["error: unresolved link to `ours` --> src/a.rs:10:75"]);
        let node = "✖ early\nℹ fail 1\n✖ failing tests:\n\n✖ it stands (3 ms)\n  Error: no\n";
        assert_eq!(of_node(node), ["✖ it stands (3 ms)", "  Error: no"]);
        let python = "==========================\nFAIL: test_it (check.It)\n\
            --------------------------\nTraceback:\nAssertionError: 741 is not 700\n\n\
            --------------------------\nRan 2 tests in 1 s\n\nFAILED (failures=1)\n";
        assert_eq!(
            of_unittest(python),
            ["FAIL: test_it (check.It)", "AssertionError: 741 is not 700"]
        );
    }

    #[test]
    fn where_nothing_failed_nothing_is_told_and_a_flood_is_cut() {
        assert!(of_cargo("test a ... ok\n").is_empty() && of_compiler("Finished\n").is_empty());
        assert!(of_node("ℹ pass 3\nℹ fail 0\n").is_empty());
        assert!(of_unittest("Ran 2 tests in 1 s\n\nOK\n").is_empty());
        let flood = format!("failing tests:\n{}", "x\n".repeat(900));
        assert_eq!(of_node(&flood).len(), MOST);
    }
}
