//! What lies in the served folder, and nothing beyond it.

use std::fs;
use std::path::{Path, PathBuf};

use super::request::Request;
use super::response::Response;
use crate::site::HASH_DIGITS;
use crate::{Fault, Why};

const ENTRY: &str = "index.html";

/// A folder with a page in it.
#[derive(Debug)]
pub struct Folder {
    /// Without symbolic links, so that a file's true place can be compared with it.
    root: PathBuf,
}

impl Folder {
    /// Opens a folder that a build has filled.
    pub fn open(folder: &Path) -> Result<Self, Fault> {
        if !folder.join(ENTRY).is_file() {
            return Err(Fault::new(format!(
                "found no {ENTRY} in {}, expected a folder that `wallwise build` has filled",
                folder.display()
            ))
            .hint("leave out `--no-build`, or run `wallwise build` first"));
        }
        let root = folder.canonicalize().why(|| format!("cannot open {}", folder.display()))?;
        Ok(Self { root })
    }

    /// The answer to one request.
    pub fn answer(&self, request: &Request) -> Response {
        if !matches!(request.method.as_str(), "GET" | "HEAD") {
            return Response::plain(405, "only GET and HEAD are answered here");
        }
        let Some(place) = self.find(&request.path) else {
            return Response::plain(404, "no such file");
        };
        let compressed =
            request.brotli.then(|| beside(&place)).and_then(|path| fs::read(path).ok());
        let brotli = compressed.is_some();
        match compressed.map_or_else(|| fs::read(&place), Ok) {
            Ok(bytes) => {
                let name = place.file_name().and_then(|name| name.to_str()).unwrap_or_default();
                Response::file(kind(name), bytes, brotli, is_hashed(name))
            }
            Err(_) => Response::plain(404, "no such file"),
        }
    }

    /// The file at a path, if it truly lies inside the folder.
    fn find(&self, path: &str) -> Option<PathBuf> {
        let mut place = self.root.clone();
        let parts = path.strip_prefix('/')?;
        for part in parts.strip_suffix('/').unwrap_or(parts).split('/') {
            // No way up, no hidden file, no other system's separator or drive.
            if part.starts_with('.') || part.contains(['\\', ':', '\0']) {
                return None;
            }
            place.push(part);
        }
        if path.ends_with('/') {
            place.push(ENTRY);
        }
        // A link may point anywhere, so where the file truly is decides.
        let place = place.canonicalize().ok()?;
        (place.starts_with(&self.root) && place.is_file()).then_some(place)
    }
}

/// The compressed file beside a file.
fn beside(place: &Path) -> PathBuf {
    let mut name = place.as_os_str().to_owned();
    name.push(".br");
    PathBuf::from(name)
}

/// Whether a name stands for its content, so that it may be kept for ever.
fn is_hashed(name: &str) -> bool {
    let stem = name.rsplit_once('.').map_or(name, |(stem, _)| stem);
    stem.rsplit_once('-').is_some_and(|(_, hash)| {
        hash.len() == HASH_DIGITS && hash.bytes().all(|digit| digit.is_ascii_hexdigit())
    })
}

/// The media type that a name promises.
fn kind(name: &str) -> &'static str {
    match name.rsplit_once('.').map_or("", |(_, extension)| extension) {
        "html" => "text/html; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        "wasm" => "application/wasm",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "woff2" => "font/woff2",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_names_that_end_in_a_hash_may_be_kept_for_ever() {
        assert!(is_hashed("app-0123456789abcdef.js"));
        assert!(is_hashed("app_bg-0123456789abcdef.wasm"));
        let fixed = ["index.html", "manifest.webmanifest", "sw.js"];
        for name in fixed.into_iter().chain(["app-0123.js", "app-0123456789abcdeg.js", ""]) {
            assert!(!is_hashed(name), "{name}");
        }
    }
}
