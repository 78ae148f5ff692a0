//! What an answer means.

use super::doing::Doing;
use super::machine::Folder;
use super::{Answer, Aside, Entry, Heard, Method, Name, News, Pause, Refusal, Shelves, Stop, listing};

const OK: u16 = 200;
const CREATED: u16 = 201;
const NO_CONTENT: u16 = 204;
const MULTI_STATUS: u16 = 207;
const UNAUTHORIZED: u16 = 401;
const FORBIDDEN: u16 = 403;
const NOT_FOUND: u16 = 404;
const METHOD_NOT_ALLOWED: u16 = 405;
const TIMEOUT: u16 = 408;
const CONFLICT: u16 = 409;
const PRECONDITION_FAILED: u16 = 412;
const CONTENT_TOO_LARGE: u16 = 413;
const LOCKED: u16 = 423;
const TOO_EARLY: u16 = 425;
const TOO_MANY: u16 = 429;
const NOT_IMPLEMENTED: u16 = 501;
const NO_SUCH_VERSION: u16 = 505;
const NO_ROOM: u16 = 507;

impl Folder {
    /// Takes what came of the last [`Folder::next`]; `luck` is any number, another one on each tablet and each time.
    pub fn heard(&mut self, now: u64, luck: u64, heard: Heard, shelves: &impl Shelves) -> Vec<News> {
        let doing = std::mem::take(&mut self.doing);
        let answer = match heard {
            Heard::Answer(answer) => answer,
            Heard::Cut => return self.later(doing, now, luck, None),
            Heard::TooLong => return vec![self.too_long(doing)],
        };
        let after = answer.retry_after.as_deref();
        match (answer.status, &doing) {
            (UNAUTHORIZED, _) => vec![self.stop(doing, Stop::Unknown)],
            // One file that may not be read holds up none of the others.
            (FORBIDDEN, Doing::Fetching(entry)) => {
                vec![self.set_aside(entry.name.clone(), Aside::NotGiven(FORBIDDEN))]
            }
            (FORBIDDEN, _) => vec![self.stop(doing, Stop::Forbidden)],
            (NO_ROOM, _) => vec![self.stop(doing, Stop::Full)],
            (300..=399, _) => vec![self.stop(doing, Stop::Moved(answer.status))],
            (LOCKED, Doing::Putting(name)) => {
                self.outbox.later(name, now, luck, after);
                Vec::new()
            }
            (NOT_IMPLEMENTED | NO_SUCH_VERSION, _) => {
                vec![self.stop(doing, Stop::NoWebdav(answer.status))]
            }
            (LOCKED | TIMEOUT | TOO_EARLY | TOO_MANY | 500..=599, _) => self.later(doing, now, luck, after),
            _ => self.done(doing, now, answer, shelves).into_iter().collect(),
        }
    }

    /// The server did something, or will never do it.
    fn done(&mut self, doing: Doing, now: u64, answer: Answer, shelves: &impl Shelves) -> Option<News> {
        self.pause = Pause::default();
        match doing {
            Doing::Nothing => None,
            Doing::Marking => self.mark_done(answer.status),
            Doing::Putting(name) => self.put_done(name, now, answer.status),
            Doing::Looking(name) => Some(self.look_done(name, now, &answer)),
            Doing::Making(outwards) => self.make_done(outwards, answer.status),
            Doing::Listing => self.list_done(now, &answer, shelves),
            Doing::Fetching(entry) => Some(self.fetch_done(entry, answer)),
        }
    }

    fn mark_done(&mut self, status: u16) -> Option<News> {
        match status {
            PRECONDITION_FAILED => {
                self.proven = true;
                Some(News::Proven)
            }
            OK | CREATED | NO_CONTENT if self.marked => Some(self.stop(Doing::Marking, Stop::Overwrites)),
            OK | CREATED | NO_CONTENT => {
                self.marked = true;
                None
            }
            CONFLICT | NOT_FOUND => self.no_folder(Doing::Marking, status),
            METHOD_NOT_ALLOWED => Some(self.stop(Doing::Marking, Stop::NoWebdav(status))),
            _ => Some(self.odd(Doing::Marking, Method::Put, status)),
        }
    }

    fn put_done(&mut self, name: Name, now: u64, status: u16) -> Option<News> {
        match status {
            CREATED | NO_CONTENT => Some(self.arrived(name, now)),
            OK | PRECONDITION_FAILED => {
                self.look_at = Some(name);
                None
            }
            CONFLICT | NOT_FOUND => self.no_folder(Doing::Putting(name), status),
            METHOD_NOT_ALLOWED => Some(self.stop(Doing::Putting(name), Stop::NoWebdav(status))),
            CONTENT_TOO_LARGE => Some(self.refuse(name, Refusal::TooLarge)),
            _ => Some(self.refuse(name, Refusal::Status(status))),
        }
    }

    fn look_done(&mut self, name: Name, now: u64, answer: &Answer) -> News {
        match answer.status {
            OK if name.fits(&answer.body) => self.arrived(name, now),
            OK => self.refuse(name, Refusal::Other),
            status => self.refuse(name, Refusal::Status(status)),
        }
    }

    fn make_done(&mut self, outwards: usize, status: u16) -> Option<News> {
        match status {
            // 405: a folder is there already (RFC 4918, section 9.3.1).
            OK | CREATED | NO_CONTENT | METHOD_NOT_ALLOWED => self.make.made(outwards),
            CONFLICT | NOT_FOUND if self.make.outwards(outwards, self.place.outwards().len()) => {}
            _ => return Some(self.stop(Doing::Nothing, Stop::NoFolder(status))),
        }
        None
    }

    fn list_done(&mut self, now: u64, answer: &Answer, shelves: &impl Shelves) -> Option<News> {
        match answer.status {
            MULTI_STATUS => {}
            NOT_FOUND | CONFLICT => return self.no_folder(Doing::Listing, answer.status),
            OK | METHOD_NOT_ALLOWED => {
                return Some(self.stop(Doing::Listing, Stop::NoWebdav(answer.status)));
            }
            status => return Some(self.odd(Doing::Listing, Method::Propfind, status)),
        }
        match listing(&answer.body) {
            Ok(entries) => {
                self.looked = Some(now);
                self.wanted = entries.into_iter().filter(|entry| self.wants(&entry.name, shelves)).collect();
                Some(News::Looked(self.wanted.len()))
            }
            Err(error) => Some(self.stop(Doing::Listing, Stop::Listing(error.to_string()))),
        }
    }

    fn fetch_done(&mut self, Entry { name, .. }: Entry, answer: Answer) -> News {
        if answer.status != OK {
            return self.set_aside(name, Aside::NotGiven(answer.status));
        }
        match String::from_utf8(answer.body) {
            Ok(text) if name.fits(text.as_bytes()) => News::Come(name, text),
            _ => self.set_aside(name, Aside::NotItsName),
        }
    }

    fn too_long(&mut self, doing: Doing) -> News {
        match doing {
            Doing::Fetching(entry) => self.set_aside(entry.name, Aside::TooLarge),
            // What is longer than any file of ours is another one.
            Doing::Looking(name) => self.refuse(name, Refusal::Other),
            Doing::Listing => self.stop(doing, Stop::Listing("longer than 32 MiB".to_owned())),
            Doing::Nothing | Doing::Marking | Doing::Putting(_) | Doing::Making(_) => {
                self.odd(doing, Method::Put, 0)
            }
        }
    }

    fn no_folder(&mut self, doing: Doing, status: u16) -> Option<News> {
        if self.make.begin() {
            self.put_back(doing);
            return None;
        }
        Some(self.stop(doing, Stop::NoFolder(status)))
    }

    fn later(&mut self, doing: Doing, now: u64, luck: u64, after: Option<&str>) -> Vec<News> {
        self.put_back(doing);
        self.pause = self.pause.longer(now, luck, after);
        Vec::new()
    }

    fn odd(&mut self, doing: Doing, method: Method, status: u16) -> News {
        self.stop(doing, Stop::Odd { method: method.as_str().to_owned(), status })
    }

    fn stop(&mut self, doing: Doing, why: Stop) -> News {
        self.put_back(doing);
        self.stopped = Some(why.clone());
        News::Stopped(why)
    }

    /// What came to nothing is done again.
    fn put_back(&mut self, doing: Doing) {
        match doing {
            Doing::Putting(name) | Doing::Looking(name) => self.outbox.back(&name),
            Doing::Fetching(entry) => self.wanted.push_back(entry),
            Doing::Listing => self.look = true,
            Doing::Nothing | Doing::Marking | Doing::Making(_) => {}
        }
    }

    fn arrived(&mut self, name: Name, now: u64) -> News {
        self.make = Default::default();
        self.outbox.arrived(&name, now);
        News::Arrived(name)
    }

    fn refuse(&mut self, name: Name, why: Refusal) -> News {
        self.outbox.refused(&name, why);
        News::Refused(name, why)
    }
}
