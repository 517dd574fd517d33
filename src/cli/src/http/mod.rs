//! A small HTTP/1.1 server of one folder, on this machine only.
//!
//! It answers `GET` and `HEAD`, a thread for each connection, with limits on everything that a
//! client chooses: the size of a request, the time it takes to send, the number of connections.

mod folder;
mod request;
mod response;

use std::io::{self, BufReader, Read, Write};
use std::net::{Ipv4Addr, Shutdown, TcpListener, TcpStream};
use std::path::Path;
use std::sync::Arc;
use std::thread;
use std::time::Duration;

use crate::{Fault, Why};
use folder::Folder;
use request::{Request, Trouble};
use response::Response;

/// How long a client may take to send a request, or leave a connection idle.
const PATIENCE: Duration = Duration::from_secs(15);
/// Connections at once; a browser opens six.
const CONNECTIONS: usize = 64;
/// Requests on one connection before it is closed.
const REQUESTS: usize = 1000;

/// A folder and the port it is served on.
#[derive(Debug)]
pub struct Server {
    listener: TcpListener,
    folder: Arc<Folder>,
    port: u16,
}

impl Server {
    /// Takes `port` of this machine, or any free one for 0.
    pub fn claim(port: u16) -> Result<TcpListener, Fault> {
        TcpListener::bind((Ipv4Addr::LOCALHOST, port)).map_err(|error| {
            let what = match error.kind() {
                io::ErrorKind::AddrInUse => format!("port {port} is taken by another program"),
                _ => format!("cannot listen on port {port} of 127.0.0.1"),
            };
            let next = port.checked_add(1).unwrap_or(8642);
            Fault::new(what)
                .because(&error)
                .hint(format!("pick another: `wallwise serve --port {next}`"))
                .hint("or let the system pick a free one: `wallwise serve --port 0`")
        })
    }

    /// Serves `folder` on the port that `listener` holds.
    pub fn new(listener: TcpListener, folder: &Path) -> Result<Self, Fault> {
        let address = listener.local_addr().why(|| "cannot tell the server's port".to_owned())?;
        let folder = Arc::new(Folder::open(folder)?);
        Ok(Self { listener, folder, port: address.port() })
    }

    /// Where a browser finds it.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}/", self.port)
    }

    /// Answers until the process ends.
    pub fn run(&self) -> ! {
        loop {
            match self.listener.accept() {
                Ok((stream, _)) => self.take(stream),
                // Out of handles, or a client that was gone at once: neither ends the server.
                Err(_) => thread::sleep(Duration::from_millis(20)),
            }
        }
    }

    fn take(&self, mut stream: TcpStream) {
        // Each thread holds a share of the folder, so the shares count the connections.
        if Arc::strong_count(&self.folder) > CONNECTIONS {
            let _ = stream.set_write_timeout(Some(PATIENCE));
            let _ = Response::plain(503, "busy").last().write(&mut stream, false);
            return;
        }
        let folder = Arc::clone(&self.folder);
        // A connection that gets no thread is dropped, and the client tries again.
        let _ = thread::Builder::new().spawn(move || {
            // A client that breaks off has nobody left to tell.
            let _ = converse(&folder, stream);
        });
    }
}

/// Answers the requests of one connection.
fn converse(folder: &Folder, mut stream: TcpStream) -> io::Result<()> {
    stream.set_nodelay(true)?;
    stream.set_write_timeout(Some(PATIENCE))?;
    let mut reader = BufReader::new(stream.try_clone()?);
    for number in 1..=REQUESTS {
        let (response, head_only, last) = match Request::read(&mut reader, PATIENCE) {
            Ok(request) => {
                (folder.answer(&request), request.head_only(), request.last || number == REQUESTS)
            }
            Err(Trouble::Gone) => return Ok(()),
            // Where the next request would begin is no longer known.
            Err(Trouble::Refused(status, why)) => (Response::plain(status, why), false, true),
        };
        let response = if last { response.last() } else { response };
        response.write(&mut stream, head_only)?;
        stream.flush()?;
        if last {
            break;
        }
    }
    part(&stream)
}

/// Ends a connection so that the answer arrives: closing on unread bytes would tear it down at once.
fn part(mut stream: &TcpStream) -> io::Result<()> {
    stream.shutdown(Shutdown::Write)?;
    stream.set_read_timeout(Some(Duration::from_millis(200)))?;
    let mut unread = [0; 4096];
    for _ in 0..64 {
        if stream.read(&mut unread)? == 0 {
            break;
        }
    }
    Ok(())
}
