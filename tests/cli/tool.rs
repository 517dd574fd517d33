//! Running the tool, and folders to run it on.

use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use serde_json::Value;

/// What a finished run said, and its exit code.
#[derive(Debug)]
pub struct Ran {
    pub code: Option<i32>,
    pub out: String,
    pub talk: String,
}

/// Runs the tool to its end.
pub fn wallwise(arguments: &[&str]) -> Ran {
    let output = command(arguments).output().expect("the tool starts");
    Ran {
        code: output.status.code(),
        out: String::from_utf8(output.stdout).expect("results are text"),
        talk: String::from_utf8(output.stderr).expect("talk is text"),
    }
}

/// The result of a run that must end well and in silence.
pub fn done(arguments: &[&str]) -> String {
    let ran = wallwise(arguments);
    assert_eq!((ran.code, ran.talk.as_str()), (Some(0), ""), "{arguments:?}: {}", ran.out);
    ran.out
}

/// The JSON of a run that must end well.
pub fn json(arguments: &[&str]) -> Value {
    serde_json::from_str(&done(arguments)).expect("JSON")
}

/// The JSON of a run, whatever its exit code.
pub fn json_of(ran: &Ran) -> Value {
    serde_json::from_str(&ran.out).unwrap_or_else(|why| panic!("{why}: {}{}", ran.out, ran.talk))
}

/// A path as an argument.
pub fn path(path: &Path) -> &str {
    path.to_str().expect("a plain path")
}

/// A shipped file.
pub fn shipped(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../scenarios").join(name)
}

/// An empty folder that belongs to one test alone.
pub fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("cli").join(name);
    if folder.exists() {
        fs::remove_dir_all(&folder).expect("the folder of an earlier run goes");
    }
    fs::create_dir_all(&folder).expect("the folder can be made");
    folder
}

/// A server that ends with the test.
pub struct Served {
    child: Child,
    port: u16,
}

impl Served {
    /// Serves a folder as it is, on a free port.
    pub fn start(folder: &Path) -> Self {
        let folder = folder.to_str().expect("a plain path");
        let mut child = command(&["serve", "--no-build", "--port", "0", "--folder", folder])
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("the tool starts");
        let mut line = String::new();
        BufReader::new(child.stdout.take().expect("stdout is piped"))
            .read_line(&mut line)
            .expect("the tool prints its address");
        let port = line.trim().trim_end_matches('/').rsplit(':').next();
        let port = port.and_then(|port| port.parse().ok()).expect("the address ends in a port");
        Self { child, port }
    }

    pub fn port(&self) -> u16 {
        self.port
    }

    /// Sends `request` as it stands and reads until the server closes.
    pub fn send(&self, request: &[u8]) -> String {
        let mut stream = TcpStream::connect(("127.0.0.1", self.port)).expect("the server listens");
        stream.set_read_timeout(Some(Duration::from_secs(10))).expect("a timeout can be set");
        stream.write_all(request).expect("the server reads");
        let mut answer = Vec::new();
        stream.read_to_end(&mut answer).expect("the server answers and closes");
        String::from_utf8_lossy(&answer).into_owned()
    }

    /// Asks for a path, with more header lines if any.
    pub fn ask(&self, method: &str, path: &str, headers: &str) -> String {
        let request =
            format!("{method} {path} HTTP/1.1\r\nHost: here\r\nConnection: close\r\n{headers}\r\n");
        self.send(request.as_bytes())
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        // It may have ended by itself, which the test has noticed in its own way.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

fn command(arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_wallwise"));
    command.args(arguments).stdin(Stdio::null());
    command
}
