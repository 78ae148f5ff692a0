//! The sign-off book: who may sign, what is signed, and whether a signed file is to be believed, all of it offline.
//!
//! A sign-off is a W3C Verifiable Credential 2.0 in the vocabulary of Open Badges 3.0, secured by a Data Integrity proof
//! of the suite `eddsa-jcs-2022` (W3C Recommendation of 15 May 2025): Ed25519 over two SHA-256 hashes of canonical JSON.
//! It is no certified badge: that programme takes other suites only.
//!
//! The standard leaves open what a shop must know; [`verify`] closes it: the file is its own canonical form, the contexts
//! are the known ones, the issuer is the key, and the key stands on a trust list that the shop's root key has signed.
//!
//! A signature shows which key and which passphrase signed, and not who held them. Dates are told by the device that
//! signs: only the order of the book ([`Book`]) says what came first.
//!
//! Nothing here reads a clock or draws a random number: times, and random bytes from a secure source, are handed in.

mod barred;
mod book;
mod canonical;
mod chain;
mod code;
mod credential;
mod draft;
mod evidence;
mod fault;
mod key;
mod person;
mod proof;
mod record;
mod request;
mod shape;
mod standing;
mod stretch;
mod trust;
mod verdict;
mod watched;
mod when;
mod why;
mod words;
mod wrap;

pub use barred::{Barred, NotSigned};
pub use book::{Book, Entry};
pub use canonical::{BYTES_MOST, DEPTH_MOST, Hash, LIST_BYTES_MOST, canonical, hash, read, read_canonical};
pub use code::{Code, grouped};
pub use credential::{Achievement, Assessor, CONTEXTS, Credential, credential_id};
pub use draft::Draft;
pub use evidence::{Criterion, Evidence, Genre, Knowledge};
pub use fault::{Broken, Fault};
pub use key::{PublicKey, SecretKey};
pub use person::{Person, Role, ShopNumber};
pub use proof::{CRYPTOSUITE, Proven, check, sign, to_sign};
pub use record::{Act, Record};
pub use request::{Demonstration, Request, Told, Wording};
pub use standing::{SOON_DAYS, Standing};
pub use stretch::{KEY, SALT, stretched};
pub use trust::{TrustList, Withdrawal};
pub use verdict::{Verdict, verify};
pub use watched::Watched;
pub use when::When;
pub use why::{Refusal, Why};
pub use words::fit_name;
pub use wrap::{Locked, PASSPHRASE_LEAST, WrappedKey};
