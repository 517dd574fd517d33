//! Names of files in a package: what every host, archive and browser takes alike.

use core::fmt;

/// No name is longer, characters.
const LONGEST: usize = 200;

/// A name that not every host takes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BadName {
    /// As it came, shortened.
    pub found: String,
    /// What is wrong with it.
    pub why: &'static str,
}

impl fmt::Display for BadName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "found the file name \"{}\": {}; expected parts of letters, digits, dots, hyphens and underscores with / between them, such as pkg/app.js: rename the file",
            self.found, self.why
        )
    }
}

impl core::error::Error for BadName {}

/// Whether these names may stand in one package.
///
/// # Errors
/// [`BadName`] with the first that may not.
pub fn check<'a>(names: impl Iterator<Item = &'a str>) -> Result<(), BadName> {
    let mut seen: Vec<String> = Vec::new();
    for name in names {
        let bad = |why| Err(BadName { found: name.chars().take(60).collect(), why });
        let allowed = |byte: u8| byte.is_ascii_alphanumeric() || b"._-/".contains(&byte);
        if name.is_empty() || name.len() > LONGEST {
            return bad("it is empty or longer than 200 characters");
        }
        if !name.bytes().all(allowed) {
            return bad("it holds another character");
        }
        if name.split('/').any(|part| part.is_empty() || part.bytes().all(|byte| byte == b'.')) {
            return bad("a part of it is empty or nothing but dots");
        }
        // Some hosts unpack where capitals do not tell names apart.
        let small = name.to_ascii_lowercase();
        if seen.contains(&small) {
            return bad("another file has it, but for capitals");
        }
        seen.push(small);
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_names_that_every_host_takes_pass() {
        assert!(
            check(["index.html", "pkg/app-1.js", "pkg/app_bg.wasm", ".well/a"].into_iter()).is_ok()
        );
        for wrong in
            ["", "/a", "a/", "a//b", "../a", "a/./b", "a b", "ä.js", "a\\b", "c:a", "a?b", "a&b"]
        {
            assert!(check([wrong].into_iter()).is_err(), "{wrong}");
        }
        let long = "a".repeat(201);
        assert!(check([long.as_str()].into_iter()).is_err());
        let says = check(["a.js", "A.js"].into_iter()).unwrap_err().to_string();
        assert!(says.contains("A.js") && says.contains("rename"), "{says}");
    }
}
