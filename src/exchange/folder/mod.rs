//! A folder that the shop already has: files of ours in a WebDAV folder (RFC 4918), each named by its content.
//!
//! This is the protocol alone, as a state machine. It knows no network and no clock: [`Folder::next`] says what to ask of the
//! server and [`Folder::heard`] is told what came of it; moments are told in milliseconds since 1970, and the luck that
//! keeps many tablets from coming back all at once is told too. Whoever carries the requests may stop at any point and go on
//! from what was stored last: everything that is asked may be asked twice.
//!
//! Nothing is ever overwritten (`If-None-Match: *`) or deleted, and what comes is checked against its name before anything
//! reads it.

mod aside;
mod ask;
mod basic;
mod doing;
mod filed;
mod fresh;
mod heard;
mod listing;
mod machine;
mod make;
mod name;
mod outbox;
mod parts;
mod pause;
mod place;
mod setup;
mod stop;
mod told;
mod without;

pub use aside::Aside;
pub use ask::{Answer, Ask, Heard, Method};
pub use basic::basic;
pub use filed::{Filed, Refusal, State};
pub use fresh::{finished, fresh};
pub use listing::{Entry, NoListing, listing};
pub use machine::{Folder, News, Shelves, Step};
pub use name::{Name, Sort};
pub use outbox::Outbox;
pub use parts::{Part, parts};
pub use pause::Pause;
pub use place::Place;
pub use setup::{Rest, Setup};
pub use stop::Stop;
pub use without::{Without, without};
