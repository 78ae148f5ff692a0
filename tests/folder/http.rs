//! Just enough of HTTP/1.1 (RFC 9112) for tests: one connection that is kept, bodies by length or in chunks.

use std::io::{BufRead, BufReader, Error, ErrorKind, Result, Write};
use std::net::{SocketAddr, TcpStream};
use std::time::Duration;
use stepboard::exchange::folder::{Answer, Ask, Heard};

const TIMEOUT: Duration = Duration::from_secs(60);

/// A request or an answer: its first line, its header fields in small letters, its body.
#[derive(Debug, Clone, Default)]
pub(crate) struct Message {
    pub(crate) line: String,
    pub(crate) fields: Vec<(String, String)>,
    pub(crate) body: Vec<u8>,
}

fn broken(what: &str) -> Error {
    Error::new(ErrorKind::InvalidData, what.to_owned())
}

fn line(from: &mut impl BufRead) -> Result<String> {
    let mut line = String::new();
    if from.read_line(&mut line)? == 0 || !line.ends_with('\n') {
        return Err(broken("cut"));
    }
    Ok(line.trim_end().to_owned())
}

impl Message {
    pub(crate) fn field(&self, name: &str) -> Option<&str> {
        self.fields.iter().find(|(field, _)| field == name).map(|(_, value)| value.as_str())
    }

    pub(crate) fn closes(&self) -> bool {
        self.field("connection").is_some_and(|value| value.eq_ignore_ascii_case("close"))
    }

    pub(crate) fn status(&self) -> u16 {
        self.line.split(' ').nth(1).and_then(|word| word.parse().ok()).unwrap_or(0)
    }

    /// Reads a request; `None` where the other side has closed.
    pub(crate) fn request(from: &mut impl BufRead) -> Result<Option<Self>> {
        if from.fill_buf()?.is_empty() {
            return Ok(None);
        }
        let mut message = Self::head(from)?;
        message.read_body(from)?;
        Ok(Some(message))
    }

    /// Reads an answer.
    pub(crate) fn answer(from: &mut impl BufRead) -> Result<Self> {
        loop {
            let mut message = Self::head(from)?;
            match message.status() {
                100..=199 => continue,
                204 | 304 => {}
                _ => message.read_body(from)?,
            }
            return Ok(message);
        }
    }

    fn head(from: &mut impl BufRead) -> Result<Self> {
        let mut message = Self { line: line(from)?, ..Self::default() };
        loop {
            let field = line(from)?;
            if field.is_empty() {
                return Ok(message);
            }
            let (name, value) = field.split_once(':').ok_or_else(|| broken("no field"))?;
            message.fields.push((name.to_ascii_lowercase(), value.trim().to_owned()));
        }
    }

    fn read_body(&mut self, from: &mut impl BufRead) -> Result<()> {
        if self.field("transfer-encoding") == Some("chunked") {
            loop {
                let size = usize::from_str_radix(&line(from)?, 16).map_err(|_| broken("no chunk"))?;
                let mut chunk = vec![0; size];
                from.read_exact(&mut chunk)?;
                self.body.extend(chunk);
                line(from)?;
                if size == 0 {
                    break;
                }
            }
            self.fields.retain(|(name, _)| name != "transfer-encoding");
            self.fields.push(("content-length".to_owned(), self.body.len().to_string()));
        } else if let Some(length) = self.field("content-length") {
            self.body = vec![0; length.parse().map_err(|_| broken("no length"))?];
            from.read_exact(&mut self.body)?;
        } else if self.closes() && !self.line.ends_with("HTTP/1.1") {
            from.read_to_end(&mut self.body)?;
        }
        Ok(())
    }

    /// The message as it goes over the wire.
    pub(crate) fn bytes(&self) -> Vec<u8> {
        let fields: String = self.fields.iter().map(|(name, value)| format!("{name}: {value}\r\n")).collect();
        let mut bytes = format!("{}\r\n{fields}\r\n", self.line).into_bytes();
        bytes.extend(&self.body);
        bytes
    }
}

/// A connection that is kept as long as both sides want.
#[derive(Debug)]
pub(crate) struct Connection(BufReader<TcpStream>);

impl Connection {
    pub(crate) fn open(to: SocketAddr) -> Result<Self> {
        let stream = TcpStream::connect(to)?;
        stream.set_nodelay(true)?;
        stream.set_read_timeout(Some(TIMEOUT))?;
        Ok(Self(BufReader::new(stream)))
    }

    pub(crate) fn send(&mut self, bytes: &[u8]) -> Result<()> {
        self.0.get_mut().write_all(bytes)
    }

    pub(crate) fn exchange(&mut self, request: &Message) -> Result<Message> {
        self.send(&request.bytes())?;
        Message::answer(&mut self.0)
    }
}

/// Carries what the folder asks.
#[derive(Debug)]
pub(crate) struct Client {
    to: SocketAddr,
    authorization: String,
    connection: Option<Connection>,
}

impl Client {
    pub(crate) fn new(to: SocketAddr, authorization: String) -> Self {
        Self { to, authorization, connection: None }
    }

    pub(crate) fn carry(&mut self, ask: &Ask) -> Heard {
        let fields: Vec<(&str, &str)> = ask.fields.clone();
        match self.ask(ask.method.as_str(), &ask.path, &fields, ask.body.as_deref()) {
            Ok(answer) if ask.most > 0 && answer.body.len() > ask.most => Heard::TooLong,
            Ok(answer) => Heard::Answer(Answer {
                status: answer.status(),
                retry_after: answer.field("retry-after").map(str::to_owned),
                body: if ask.most > 0 { answer.body } else { Vec::new() },
            }),
            Err(_) => Heard::Cut,
        }
    }

    pub(crate) fn ask(
        &mut self,
        method: &str,
        path: &str,
        fields: &[(&str, &str)],
        body: Option<&str>,
    ) -> Result<Message> {
        let own = |(name, value): &(&str, &str)| ((*name).to_owned(), (*value).to_owned());
        let mut request = Message { line: format!("{method} {path} HTTP/1.1"), ..Message::default() };
        request.fields = fields.iter().map(own).collect();
        request.fields.push(("Host".to_owned(), self.to.to_string()));
        request.fields.push(("Authorization".to_owned(), self.authorization.clone()));
        let body = body.unwrap_or_default();
        if method != "GET" {
            request.fields.push(("Content-Length".to_owned(), body.len().to_string()));
        }
        request.body = body.as_bytes().to_vec();
        let mut connection = match self.connection.take() {
            Some(connection) => connection,
            None => Connection::open(self.to)?,
        };
        let answer = connection.exchange(&request)?;
        if !answer.closes() {
            self.connection = Some(connection);
        }
        Ok(answer)
    }
}
