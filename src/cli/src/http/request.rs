//! A request, as far as a server of files needs to understand it.

use std::io::{self, BufRead, BufReader, Read};
use std::net::TcpStream;
use std::time::{Duration, Instant};

/// The most that a request line and its headers may take together.
const MOST_BYTES: usize = 16 * 1024;

/// What was asked.
#[derive(Debug, PartialEq, Eq)]
pub struct Request {
    pub method: String,
    /// The path, decoded, without its query.
    pub path: String,
    /// Whether the client can read brotli.
    pub brotli: bool,
    /// Whether the connection ends with the answer.
    pub last: bool,
}

/// Why there is no request to answer.
#[derive(Debug, PartialEq, Eq)]
pub enum Trouble {
    /// The client left, or was silent for too long.
    Gone,
    /// A status and a reason to send before closing.
    Refused(u16, &'static str),
}

impl Request {
    /// Reads one request, giving up after `patience`.
    pub fn read(reader: &mut BufReader<TcpStream>, patience: Duration) -> Result<Self, Trouble> {
        let deadline = Instant::now() + patience;
        let mut head = Vec::new();
        while !head.ends_with(b"\r\n\r\n") && !head.ends_with(b"\n\n") {
            // Each read gets only the time that is left: a client may not drip bytes for ever.
            let left = deadline.saturating_duration_since(Instant::now());
            if left.is_zero() || reader.get_ref().set_read_timeout(Some(left)).is_err() {
                return Err(Trouble::Gone);
            }
            read_some(reader, &mut head)?;
            if head.len() > MOST_BYTES {
                return Err(Trouble::Refused(431, "request head too large"));
            }
        }
        Self::parse(&head)
    }

    /// Whether only the head of the answer is wanted.
    pub fn head_only(&self) -> bool {
        self.method == "HEAD"
    }

    fn parse(head: &[u8]) -> Result<Self, Trouble> {
        let bad = |why| Trouble::Refused(400, why);
        let head = std::str::from_utf8(head).map_err(|_| bad("request head is not text"))?;
        let mut lines = head.lines();
        let words: Vec<&str> = lines.next().unwrap_or_default().split(' ').collect();
        let &[method, target, version] = words.as_slice() else {
            return Err(bad("request line is not METHOD TARGET VERSION"));
        };
        if !matches!(version, "HTTP/1.1" | "HTTP/1.0") {
            return Err(Trouble::Refused(505, "only HTTP/1.1 is spoken here"));
        }
        let path = target.split(['?', '#']).next().unwrap_or_default();
        let path = decode(path).filter(|path| path.starts_with('/'));
        let mut request = Self {
            method: method.to_owned(),
            path: path.ok_or(bad("target is not a path"))?,
            brotli: false,
            last: version == "HTTP/1.0",
        };
        for line in lines.take_while(|line| !line.is_empty()) {
            let (name, value) = line.split_once(':').ok_or(bad("header has no colon"))?;
            request.note(&name.to_ascii_lowercase(), value.trim());
        }
        Ok(request)
    }

    fn note(&mut self, name: &str, value: &str) {
        match name {
            "accept-encoding" => self.brotli |= accepts_brotli(value),
            // Nothing here takes a body, so nothing reads one: what follows it is not a request.
            "content-length" => self.last |= value != "0",
            "transfer-encoding" => self.last = true,
            "connection" => {
                let close = |option: &str| option.trim().eq_ignore_ascii_case("close");
                self.last |= value.split(',').any(close);
            }
            _ => {}
        }
    }
}

/// Takes what has arrived, up to the end of a line.
fn read_some(reader: &mut BufReader<TcpStream>, head: &mut Vec<u8>) -> Result<(), Trouble> {
    let room = (MOST_BYTES + 1 - head.len().min(MOST_BYTES)) as u64;
    match reader.by_ref().take(room).read_until(b'\n', head) {
        Ok(0) => Err(Trouble::Gone),
        Ok(_) => Ok(()),
        Err(error) if error.kind() == io::ErrorKind::Interrupted => Ok(()),
        Err(_) => Err(Trouble::Gone),
    }
}

/// Turns `%20` and its like into what they stand for. Nothing for a text that is not well formed.
fn decode(path: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(path.len());
    let mut rest = path.as_bytes();
    while let [first, after @ ..] = rest {
        if *first == b'%' {
            let digits = std::str::from_utf8(after.get(..2)?).ok()?;
            if !digits.bytes().all(|digit| digit.is_ascii_hexdigit()) {
                return None;
            }
            bytes.push(u8::from_str_radix(digits, 16).ok()?);
            rest = &after[2..];
        } else {
            bytes.push(*first);
            rest = after;
        }
    }
    String::from_utf8(bytes).ok()
}

/// Whether an `Accept-Encoding` names brotli and does not rule it out with `q=0`.
fn accepts_brotli(value: &str) -> bool {
    value.split(',').any(|part| {
        let mut words = part.split(';').map(str::trim);
        let named = words.next().is_some_and(|name| name.eq_ignore_ascii_case("br"));
        let weight = words.find_map(|word| word.strip_prefix("q="));
        named && weight.and_then(|weight| weight.parse::<f32>().ok()) != Some(0.0)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parse(head: &str) -> Result<Request, Trouble> {
        Request::parse(head.as_bytes())
    }

    #[test]
    fn a_request_is_read_with_what_it_says_about_encoding_and_closing() {
        let request =
            parse("GET /a%20b.js?x=1 HTTP/1.1\r\nHost: here\r\nAccept-Encoding: gzip, br\r\n\r\n");
        let expected = Request {
            method: "GET".to_owned(),
            path: "/a b.js".to_owned(),
            brotli: true,
            last: false,
        };
        assert_eq!(request, Ok(expected));
        let closing = parse("HEAD / HTTP/1.1\r\nconnection: Close\r\n\r\n").unwrap();
        assert!(closing.last && closing.head_only() && !closing.brotli);
        assert!(parse("GET / HTTP/1.0\r\n\r\n").unwrap().last);
        assert!(parse("GET / HTTP/1.1\r\nContent-Length: 4\r\n\r\n").unwrap().last);
    }

    #[test]
    fn a_request_that_cannot_be_understood_is_refused() {
        for bad in [
            "GET /\r\n\r\n",
            "GET http://elsewhere/ HTTP/1.1\r\n\r\n",
            "GET /%zz HTTP/1.1\r\n\r\n",
            "GET /%+1 HTTP/1.1\r\n\r\n",
            "GET /%f HTTP/1.1\r\n\r\n",
            "GET /%ff HTTP/1.1\r\n\r\n",
            "GET / HTTP/1.1\r\nnonsense\r\n\r\n",
            "\r\n\r\n",
        ] {
            assert!(matches!(parse(bad), Err(Trouble::Refused(400, _))), "{bad:?}");
        }
        assert!(matches!(parse("PRI * HTTP/2.0\r\n\r\n"), Err(Trouble::Refused(505, _))));
    }

    #[test]
    fn brotli_is_sent_only_to_whoever_accepts_it() {
        assert!(accepts_brotli("gzip, deflate, br, zstd"));
        assert!(accepts_brotli("br;q=0.5"));
        assert!(!accepts_brotli("br;q=0"));
        assert!(!accepts_brotli("gzip, bread"));
    }
}
