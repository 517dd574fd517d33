//! `imsmanifest.xml`: what a host reads of a package, in both editions of SCORM.
//!
//! One organisation, one item, one resource that lists every file but the manifest itself, which a
//! package does not list.
//!
//! **The mark to reach.** A host that finds one in the manifest compares marks by itself, and then sets
//! the status by its own comparison: the older edition's *mastery score* does so always, the newer
//! one's measure where it is *satisfied by measure*. Such a host passes a learner who did something
//! unsafe and has the mark. So the set's own line is written as [`Mastery::Content`]: in the newer
//! edition as a measure that satisfies nothing by itself, in the older one not at all, and the room
//! tells the host what came of it. [`Mastery::Host`] is there for those who want the host to decide.

use super::name::{self, BadName};
use super::scorm::Edition;
use core::fmt;
use std::fmt::Write as _;

/// The name of the manifest.
pub const NAME: &str = "imsmanifest.xml";
/// No title or identifier is longer, characters.
const LONGEST: usize = 200;

/// What a manifest says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Package<'a> {
    /// What the package is told apart by: a letter, then letters, digits, dots and hyphens.
    pub identifier: &'a str,
    /// For people.
    pub title: &'a str,
    /// Every file of the package but the manifest, by its path with `/` between the parts.
    pub files: &'a [&'a str],
    /// Which of them opens it.
    pub opens: &'a str,
    /// The mark to reach.
    pub mastery: Mastery,
}

/// Who holds a mark against the mark to reach, 0 to 100.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mastery {
    /// There is none.
    None,
    /// The room, which holds unsafe acts against their own line as well.
    Content(u8),
    /// The host, which knows of no unsafe act.
    Host(u8),
}

/// What makes a manifest impossible.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unlisted {
    /// A name of a file.
    Name(BadName),
    /// Something else.
    Part {
        /// What part.
        part: &'static str,
        /// As it came, shortened.
        found: String,
        /// What is expected.
        expected: &'static str,
    },
}

impl fmt::Display for Unlisted {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Name(why) => why.fmt(f),
            Self::Part { part, found, expected } => {
                write!(
                    f,
                    "{part}: found \"{found}\", expected {expected}; change it and build again"
                )
            }
        }
    }
}

impl core::error::Error for Unlisted {}

/// The manifest of a package.
///
/// # Errors
/// [`Unlisted`] with the first thing that cannot stand in one.
pub fn manifest(package: &Package<'_>, edition: Edition) -> Result<String, Unlisted> {
    check(package)?;
    let Package { identifier, title, files, opens, mastery } = package;
    let title = escaped(title);
    let (schema, spaces, kind) = match edition {
        Edition::Older => ("1.2", OLDER, "scormtype"),
        Edition::Newer => ("2004 4th Edition", NEWER, "scormType"),
    };
    let mut text = format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<manifest identifier=\"{identifier}\" version=\"1.0\" {spaces}>\n <metadata><schema>ADL SCORM</schema><schemaversion>{schema}</schemaversion></metadata>\n <organizations default=\"org-1\">\n  <organization identifier=\"org-1\">\n   <title>{title}</title>\n   <item identifier=\"item-1\" identifierref=\"res-1\">\n    <title>{title}</title>\n"
    );
    text.push_str(&mastered(*mastery, edition));
    let _ = write!(
        text,
        "   </item>\n  </organization>\n </organizations>\n <resources>\n  <resource identifier=\"res-1\" type=\"webcontent\" adlcp:{kind}=\"sco\" href=\"{opens}\">\n"
    );
    for file in *files {
        let _ = writeln!(text, "   <file href=\"{file}\"/>");
    }
    text.push_str("  </resource>\n </resources>\n</manifest>\n");
    Ok(text)
}

const OLDER: &str = "xmlns=\"http://www.imsproject.org/xsd/imscp_rootv1p1p2\" xmlns:adlcp=\"http://www.adlnet.org/xsd/adlcp_rootv1p2\" xmlns:xsi=\"http://www.w3.org/2001/XMLSchema-instance\" xsi:schemaLocation=\"http://www.imsproject.org/xsd/imscp_rootv1p1p2 imscp_rootv1p1p2.xsd http://www.adlnet.org/xsd/adlcp_rootv1p2 adlcp_rootv1p2.xsd\"";
const NEWER: &str = "xmlns=\"http://www.imsglobal.org/xsd/imscp_v1p1\" xmlns:adlcp=\"http://www.adlnet.org/xsd/adlcp_v1p3\" xmlns:adlseq=\"http://www.adlnet.org/xsd/adlseq_v1p3\" xmlns:adlnav=\"http://www.adlnet.org/xsd/adlnav_v1p3\" xmlns:imsss=\"http://www.imsglobal.org/xsd/imsss\" xmlns:xsi=\"http://www.w3.org/2001/XMLSchema-instance\" xsi:schemaLocation=\"http://www.imsglobal.org/xsd/imscp_v1p1 imscp_v1p1.xsd http://www.adlnet.org/xsd/adlcp_v1p3 adlcp_v1p3.xsd http://www.adlnet.org/xsd/adlseq_v1p3 adlseq_v1p3.xsd http://www.adlnet.org/xsd/adlnav_v1p3 adlnav_v1p3.xsd http://www.imsglobal.org/xsd/imsss imsss_v1p0.xsd\"";

/// The mark to reach as an edition says it, and, in the newer one, that the room sets the status.
fn mastered(mastery: Mastery, edition: Edition) -> String {
    let (mark, by_measure) = match (mastery, edition) {
        (Mastery::Host(mark), Edition::Older) => {
            return format!("    <adlcp:masteryscore>{mark}</adlcp:masteryscore>\n");
        }
        (_, Edition::Older) => return String::new(),
        (Mastery::None, Edition::Newer) => (None, false),
        (Mastery::Content(mark), Edition::Newer) => (Some(mark), false),
        (Mastery::Host(mark), Edition::Newer) => (Some(mark), true),
    };
    let measure = mark.map_or_else(String::new, |mark| {
        let (whole, part) = (mark / 100, mark % 100);
        format!("<imsss:minNormalizedMeasure>{whole}.{part:02}</imsss:minNormalizedMeasure>")
    });
    format!(
        "    <imsss:sequencing>\n     <imsss:objectives><imsss:primaryObjective objectiveID=\"primary\" satisfiedByMeasure=\"{by_measure}\">{measure}</imsss:primaryObjective></imsss:objectives>\n     <imsss:deliveryControls completionSetByContent=\"true\" objectiveSetByContent=\"true\"/>\n    </imsss:sequencing>\n"
    )
}

fn check(package: &Package<'_>) -> Result<(), Unlisted> {
    let wrong = |part, found: &str, expected| {
        Err(Unlisted::Part { part, found: found.chars().take(60).collect(), expected })
    };
    let Package { identifier, title, files, opens, mastery } = package;
    let fits = |byte: u8| byte.is_ascii_alphanumeric() || b".-".contains(&byte);
    let begins = identifier.bytes().next().is_some_and(|byte| byte.is_ascii_alphabetic());
    if !begins || identifier.len() > LONGEST || !identifier.bytes().all(fits) {
        const EXPECTED: &str = "a letter, then letters, digits, dots and hyphens, 200 at most";
        return wrong("the package's identifier", identifier, EXPECTED);
    }
    if title.trim().is_empty() || title.chars().count() > LONGEST || !title.chars().all(is_plain) {
        const EXPECTED: &str = "one line of text, 200 characters at most";
        return wrong("the package's title", title, EXPECTED);
    }
    name::check(files.iter().copied().chain([NAME])).map_err(Unlisted::Name)?;
    if !files.contains(opens) {
        return wrong("the file that opens the package", opens, "one of the files of the package");
    }
    match mastery {
        Mastery::Content(mark) | Mastery::Host(mark) if *mark > 100 => {
            wrong("the mark to reach", &mark.to_string(), "a whole number from 0 to 100")
        }
        _ => Ok(()),
    }
}

/// Whether XML holds the character, and no screen is thrown by it.
fn is_plain(letter: char) -> bool {
    !letter.is_control() && !matches!(letter, '\u{FFFE}' | '\u{FFFF}')
}

/// Text as XML holds it.
fn escaped(text: &str) -> String {
    let mut all = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => all.push_str("&amp;"),
            '<' => all.push_str("&lt;"),
            '>' => all.push_str("&gt;"),
            '"' => all.push_str("&quot;"),
            other => all.push(other),
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    const FILES: &[&str] = &["index.html", "pkg/app.js"];
    const PLAIN: Package<'_> = Package {
        identifier: "set.a-first-set",
        title: "Walls <& \"gaps\">",
        files: FILES,
        opens: "index.html",
        mastery: Mastery::Content(65),
    };

    #[test]
    fn a_manifest_lists_every_file_and_escapes_its_title() {
        for edition in [Edition::Older, Edition::Newer] {
            let text = manifest(&PLAIN, edition).unwrap();
            assert!(FILES.iter().all(|file| text.contains(&format!("<file href=\"{file}\"/>"))));
            assert_eq!(
                text.matches("<title>Walls &lt;&amp; &quot;gaps&quot;&gt;</title>").count(),
                2
            );
            assert_eq!(text.matches("<file ").count(), FILES.len());
        }
    }

    #[test]
    fn only_who_asks_for_it_lets_the_host_decide_by_the_mark_alone() {
        let of = |mastery, edition| manifest(&Package { mastery, ..PLAIN }, edition).unwrap();
        let newer = |mastery| of(mastery, Edition::Newer);
        assert!(!of(Mastery::Content(65), Edition::Older).contains("mastery"));
        assert!(of(Mastery::Host(65), Edition::Older).contains("<adlcp:masteryscore>65<"));
        assert!(
            newer(Mastery::Content(65))
                .contains("satisfiedByMeasure=\"false\"><imsss:minNormalizedMeasure>0.65<")
        );
        assert!(
            newer(Mastery::Host(100))
                .contains("satisfiedByMeasure=\"true\"><imsss:minNormalizedMeasure>1.00<")
        );
        assert!(!newer(Mastery::None).contains("minNormalizedMeasure"));
    }

    #[test]
    fn what_a_host_would_stumble_over_is_refused() {
        let long = "x".repeat(201);
        for (package, part) in [
            (Package { identifier: "1set", ..PLAIN }, "identifier"),
            (Package { identifier: "a set", ..PLAIN }, "identifier"),
            (Package { title: " ", ..PLAIN }, "title"),
            (Package { title: "two\nlines", ..PLAIN }, "title"),
            (Package { title: &long, ..PLAIN }, "title"),
            (Package { files: &["index.html", "../secret"], ..PLAIN }, "../secret"),
            (Package { files: &["index.html", "imsmanifest.xml"], ..PLAIN }, "imsmanifest.xml"),
            (Package { opens: "start.html", ..PLAIN }, "start.html"),
            (Package { mastery: Mastery::Host(101), ..PLAIN }, "101"),
        ] {
            let says = manifest(&package, Edition::Older).unwrap_err().to_string();
            assert!(says.contains(part) && says.contains("expected"), "{says}");
        }
    }
}
