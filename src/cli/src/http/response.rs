//! An answer, with the headers that every answer carries.

use std::fmt::Write as _;
use std::io::{self, Write};

/// What the page may load: its own files and nothing else. No inline script, no inline style, no
/// `eval`; WebAssembly is compiled, not evaluated. `www/index.html` says the same for hosts that
/// send no headers, but for `frame-ancestors`, which only a header can say.
pub const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; \
connect-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; \
manifest-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; object-src 'none'";

/// An answer to be sent.
#[derive(Debug)]
pub struct Response {
    status: u16,
    kind: &'static str,
    body: Vec<u8>,
    brotli: bool,
    /// Whether it never changes under this address.
    for_ever: bool,
    last: bool,
}

impl Response {
    /// A file of the folder.
    pub fn file(kind: &'static str, body: Vec<u8>, brotli: bool, for_ever: bool) -> Self {
        Self { status: 200, kind, body, brotli, for_ever, last: false }
    }

    /// A line of text.
    pub fn plain(status: u16, text: &str) -> Self {
        let body = format!("{text}\n").into_bytes();
        let kind = "text/plain; charset=utf-8";
        Self { status, kind, body, brotli: false, for_ever: false, last: false }
    }

    /// The same answer, after which the connection closes.
    pub fn last(mut self) -> Self {
        self.last = true;
        self
    }

    /// Sends it, without the body if only the head was asked for.
    pub fn write(&self, stream: &mut impl Write, head_only: bool) -> io::Result<()> {
        let mut bytes = self.head().into_bytes();
        if !head_only {
            bytes.extend_from_slice(&self.body);
        }
        stream.write_all(&bytes)
    }

    fn head(&self) -> String {
        let mut head = format!("HTTP/1.1 {} {}\r\n", self.status, reason(self.status));
        let mut say = |name: &str, value: &str| {
            // Writing to a string cannot fail.
            let _ = write!(head, "{name}: {value}\r\n");
        };
        say("Content-Type", self.kind);
        say("Content-Length", &self.body.len().to_string());
        say("Content-Security-Policy", &format!("{POLICY}; frame-ancestors 'self'"));
        say("X-Content-Type-Options", "nosniff");
        say("Referrer-Policy", "no-referrer");
        say("Permissions-Policy", "camera=(), microphone=(), geolocation=()");
        say("Vary", "Accept-Encoding");
        let keep = if self.for_ever { "public, max-age=31536000, immutable" } else { "no-cache" };
        say("Cache-Control", keep);
        if self.brotli {
            say("Content-Encoding", "br");
        }
        if self.status == 405 {
            say("Allow", "GET, HEAD");
        }
        say("Connection", if self.last { "close" } else { "keep-alive" });
        head.push_str("\r\n");
        head
    }
}

fn reason(status: u16) -> &'static str {
    match status {
        200 => "OK",
        400 => "Bad Request",
        404 => "Not Found",
        405 => "Method Not Allowed",
        431 => "Request Header Fields Too Large",
        503 => "Service Unavailable",
        505 => "HTTP Version Not Supported",
        _ => "Error",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_page_states_the_same_policy_as_the_server() {
        let page = include_str!("../../../../www/index.html");
        assert!(page.contains(&format!(r#"content="{POLICY}""#)), "expected {POLICY}");
    }
}
