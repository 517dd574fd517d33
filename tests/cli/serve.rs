//! `wallwise serve`, spoken to over the wire.

use std::fs;
use std::path::PathBuf;

use super::tool::{Served, folder, wallwise};

/// A folder with a page, a hashed script, its compressed copy, and a secret beside the folder.
fn site(name: &str) -> PathBuf {
    let around = folder(name);
    fs::write(around.join("secret.txt"), "secret").expect("written");
    let site = around.join("site");
    fs::create_dir(&site).expect("made");
    for (name, text) in [
        ("index.html", "<!doctype html><title>page</title>"),
        ("app-0123456789abcdef.js", "export const plain = 1;"),
        ("app-0123456789abcdef.js.br", "compressed"),
        ("app_bg-0123456789abcdef.wasm", "\0asm"),
        (".hidden", "secret"),
    ] {
        fs::write(site.join(name), text).expect("written");
    }
    site
}

#[test]
fn a_port_that_is_taken_is_said_with_a_way_out() {
    let site = site("taken");
    let served = Served::start(&site);
    let port = served.port().to_string();
    let second = wallwise(&["serve", "--port", &port]);
    assert_eq!((second.code, second.out.as_str()), (Some(2), ""));
    assert!(
        second.talk.starts_with(&format!("error: port {port} is taken by another program")),
        "{}",
        second.talk
    );
    assert!(second.talk.contains("wallwise serve --port "), "{}", second.talk);
}

#[test]
fn a_folder_without_a_page_is_said_with_a_way_out() {
    let empty = folder("empty");
    let empty = empty.to_str().expect("a plain path");
    let refused = wallwise(&["serve", "--no-build", "--port", "0", "--folder", empty]);
    assert_eq!(refused.code, Some(2));
    assert!(refused.talk.contains("found no index.html"), "{}", refused.talk);
    assert!(refused.talk.contains("hint: leave out `--no-build`"), "{}", refused.talk);
}

#[test]
fn the_entry_comes_with_the_strict_headers_and_is_asked_for_anew() {
    let served = Served::start(&site("entry"));
    let answer = served.ask("GET", "/", "");
    assert!(answer.starts_with("HTTP/1.1 200 OK\r\n"), "{answer}");
    for header in [
        "Content-Type: text/html; charset=utf-8",
        "Cache-Control: no-cache",
        "X-Content-Type-Options: nosniff",
        "Referrer-Policy: no-referrer",
        "object-src 'none'; frame-ancestors 'self'",
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval';",
    ] {
        assert!(answer.contains(header), "expected {header} in {answer}");
    }
    assert!(answer.ends_with("<title>page</title>"), "{answer}");
}

#[test]
fn hashed_files_are_kept_for_ever_and_sent_compressed_to_whoever_reads_that() {
    let served = Served::start(&site("hashed"));
    let path = "/app-0123456789abcdef.js";
    let plain = served.ask("GET", path, "");
    assert!(plain.contains("Cache-Control: public, max-age=31536000, immutable"), "{plain}");
    assert!(plain.contains("Content-Type: text/javascript"), "{plain}");
    assert!(!plain.contains("Content-Encoding") && plain.ends_with("plain = 1;"), "{plain}");

    let small = served.ask("GET", path, "Accept-Encoding: gzip, br\r\n");
    assert!(small.contains("Content-Encoding: br\r\n"), "{small}");
    assert!(small.contains("Content-Type: text/javascript"), "{small}");
    assert!(small.ends_with("\r\n\r\ncompressed"), "{small}");

    let module = served.ask("GET", "/app_bg-0123456789abcdef.wasm", "");
    assert!(module.contains("Content-Type: application/wasm\r\n"), "{module}");
}

#[test]
fn nothing_outside_the_folder_is_ever_sent() {
    let site = site("outside");
    #[cfg(unix)]
    std::os::unix::fs::symlink(site.join("../secret.txt"), site.join("link.txt")).expect("linked");
    let served = Served::start(&site);
    for path in [
        "/../secret.txt",
        "/%2e%2e/secret.txt",
        "/..%2fsecret.txt",
        "/%2e%2e%5csecret.txt",
        "/a/../../secret.txt",
        "//etc/passwd",
        "/.hidden",
        "/link.txt",
        "/%00",
    ] {
        let answer = served.ask("GET", path, "");
        assert!(answer.starts_with("HTTP/1.1 404 Not Found\r\n"), "{path}: {answer}");
        assert!(!answer.contains("secret"), "{path}: {answer}");
    }
}

#[test]
fn a_head_is_answered_without_a_body_and_other_methods_are_refused() {
    let served = Served::start(&site("methods"));
    let head = served.ask("HEAD", "/index.html", "");
    assert!(head.starts_with("HTTP/1.1 200 OK\r\n") && head.ends_with("\r\n\r\n"), "{head}");
    assert!(head.contains("Content-Length: 34\r\n"), "{head}");
    let post = served.ask("POST", "/", "Content-Length: 3\r\n");
    assert!(post.starts_with("HTTP/1.1 405 Method Not Allowed\r\n"), "{post}");
    assert!(post.contains("Allow: GET, HEAD\r\n"), "{post}");
}

#[test]
fn one_connection_carries_many_requests() {
    let served = Served::start(&site("many"));
    let requests = "GET / HTTP/1.1\r\nHost: here\r\n\r\nHEAD / HTTP/1.1\r\nHost: here\r\n\r\n\
                    GET /none HTTP/1.1\r\nHost: here\r\nConnection: close\r\n\r\n";
    let answers = served.send(requests.as_bytes());
    let heads: Vec<_> = answers.matches("HTTP/1.1 ").collect();
    assert_eq!(heads.len(), 3, "{answers}");
    assert!(answers.ends_with("no such file\n"), "{answers}");
}

#[test]
fn what_is_no_request_is_refused_and_the_server_lives_on() {
    let served = Served::start(&site("nonsense"));
    let nonsense = served.send(b"\x16\x03\x01 hello\r\n\r\n");
    assert!(nonsense.starts_with("HTTP/1.1 400 "), "{nonsense}");
    let endless = format!("GET / HTTP/1.1\r\nX: {}", "x".repeat(40_000));
    let endless = served.send(endless.as_bytes());
    assert!(endless.starts_with("HTTP/1.1 431 "), "{endless}");
    assert!(served.ask("GET", "/", "").starts_with("HTTP/1.1 200 "));
}
