//! Stands between client and server and does what networks and servers do at their worst, by lot from a seed.

use crate::http::{Connection, Message};
use std::collections::BTreeMap;
use std::io::{BufReader, Result, Write};
use std::net::{SocketAddr, TcpListener, TcpStream};
use std::sync::{Arc, Mutex};
use std::thread;
use std::time::Duration;

/// Numbers by lot: splitmix64.
#[derive(Debug, Clone)]
pub(crate) struct Dice(u64);

impl Dice {
    pub(crate) fn new(seed: u64) -> Self {
        Self(seed)
    }

    pub(crate) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let z = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    pub(crate) fn one_in(&mut self, many: u64) -> bool {
        self.next().is_multiple_of(many)
    }
}

/// What goes wrong with a request.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Fault {
    /// The connection is cut before the server hears anything.
    CutBefore,
    /// The server gets half of what was sent.
    CutInside,
    /// The server does it, and its answer is lost.
    AnswerLost,
    /// The server does it, and half of its answer comes.
    AnswerHalf,
    /// It takes a while.
    Slow,
    /// The server says this instead of doing it.
    Says(u16),
}

const FAULTS: [Fault; 15] = [
    Fault::CutBefore,
    Fault::CutInside,
    Fault::AnswerLost,
    Fault::AnswerHalf,
    Fault::Slow,
    Fault::Says(401),
    Fault::Says(403),
    Fault::Says(408),
    Fault::Says(409),
    Fault::Says(423),
    Fault::Says(429),
    Fault::Says(500),
    Fault::Says(502),
    Fault::Says(503),
    Fault::Says(507),
];
/// One request in so many goes wrong.
const FAULTY_ONE_IN: u64 = 6;
const SLOW: Duration = Duration::from_millis(3);

/// What went through.
#[derive(Debug, Default)]
pub(crate) struct Seen {
    /// How often the server said that it made a file, by path.
    pub(crate) made: BTreeMap<String, u32>,
    /// How often each fault was done.
    pub(crate) faults: BTreeMap<Fault, u32>,
    /// Methods that were asked.
    pub(crate) methods: BTreeMap<String, u32>,
}

/// Opens the way to a server; gives its own address and what is seen on it.
pub(crate) fn between(server: SocketAddr, seed: u64) -> (SocketAddr, Arc<Mutex<Seen>>) {
    let listener = TcpListener::bind("127.0.0.1:0").expect("a free port");
    let address = listener.local_addr().expect("its address");
    let seen = Arc::new(Mutex::new(Seen::default()));
    let (shared, mut dice) = (Arc::clone(&seen), Dice::new(seed));
    thread::spawn(move || {
        for stream in listener.incoming().flatten() {
            let (seen, dice) = (Arc::clone(&shared), Dice::new(dice.next()));
            // A connection that breaks ends; the client opens another one.
            thread::spawn(move || serve(stream, server, dice, &seen));
        }
    });
    (address, seen)
}

fn serve(stream: TcpStream, server: SocketAddr, mut dice: Dice, seen: &Mutex<Seen>) -> Result<()> {
    stream.set_nodelay(true)?;
    let mut client = BufReader::new(stream);
    let mut upstream = None;
    while let Some(request) = Message::request(&mut client)? {
        let fault = dice
            .one_in(FAULTY_ONE_IN)
            .then(|| FAULTS[usize::try_from(dice.next() % FAULTS.len() as u64).unwrap_or(0)]);
        note(seen, &request, fault);
        let half = |bytes: &[u8]| bytes[..bytes.len() / 2].to_vec();
        match fault {
            Some(Fault::CutBefore) => return Ok(()),
            Some(Fault::CutInside) => return Connection::open(server)?.send(&half(&request.bytes())),
            Some(Fault::Says(status)) => {
                client.get_mut().write_all(&says(status, &mut dice).bytes())?;
                continue;
            }
            Some(Fault::Slow) => thread::sleep(SLOW),
            Some(Fault::AnswerLost | Fault::AnswerHalf) | None => {}
        }
        let mut connection = match upstream.take() {
            Some(connection) => connection,
            None => Connection::open(server)?,
        };
        let answer = connection.exchange(&request)?;
        let path = request.line.split(' ').nth(1).unwrap_or_default().to_owned();
        if request.line.starts_with("PUT ") && (200..300).contains(&answer.status()) {
            *seen.lock().expect("seen").made.entry(path).or_default() += 1;
        }
        match fault {
            Some(Fault::AnswerLost) => return Ok(()),
            Some(Fault::AnswerHalf) => return client.get_mut().write_all(&half(&answer.bytes())),
            _ => client.get_mut().write_all(&answer.bytes())?,
        }
        if answer.closes() {
            return Ok(());
        }
        upstream = Some(connection);
    }
    Ok(())
}

fn note(seen: &Mutex<Seen>, request: &Message, fault: Option<Fault>) {
    let mut seen = seen.lock().expect("seen");
    let method = request.line.split(' ').next().unwrap_or_default().to_owned();
    *seen.methods.entry(method).or_default() += 1;
    if let Some(fault) = fault {
        *seen.faults.entry(fault).or_default() += 1;
    }
}

fn says(status: u16, dice: &mut Dice) -> Message {
    let mut fields = vec![("content-length".to_owned(), "0".to_owned())];
    if matches!(status, 429 | 503) && dice.one_in(2) {
        fields.push(("retry-after".to_owned(), "3".to_owned()));
    }
    Message { line: format!("HTTP/1.1 {status} Injected"), fields, body: Vec::new() }
}
