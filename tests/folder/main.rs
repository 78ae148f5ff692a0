//! Files that go to a WebDAV folder and come from it: the protocol by itself, and over real HTTP against two real servers
//! with faults injected between.

mod drive;
mod handed;
mod http;
mod listing;
mod machine;
mod names;
mod pauses;
mod proxy;
mod real;
mod results;
mod server;
mod setups;
#[path = "../support/mod.rs"]
mod support;
