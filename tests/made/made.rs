//! Files that tests outside of Rust read, made from a seed. `made crowd FOLDER PEOPLE ANSWERS` writes journals of many
//! people, with `voided` behind it such in which something was found wrong; `made files FOLDER` one file of each format of
//! ours.

#![allow(dead_code, reason = "of what tests share a part is used")]

mod crowd;
mod files;
#[path = "../hostile/mod.rs"]
mod hostile;
#[path = "../support/log.rs"]
mod log;
#[path = "voided.rs"]
mod voided;
#[path = "../support/watch.rs"]
mod watch;

use std::path::Path;
use stepboard::content::Content;

/// Any number, so that the files are the same ones each time.
const SEED: u64 = 20_270_301;

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let content = Content::embedded().expect("the build script checked it");
    let number = |text: &str| text.parse().expect("a whole number");
    match words.as_slice() {
        ["crowd", folder, people, answers] => {
            crowd::write(&content, Path::new(folder), number(people), number(answers), SEED);
        }
        ["crowd", folder, people, answers, "voided"] => {
            crowd::write(&content, Path::new(folder), number(people), number(answers), SEED);
            voided::write(Path::new(folder));
        }
        ["files", folder] => files::write_all(&content, Path::new(folder)),
        _ => panic!("made crowd FOLDER PEOPLE ANSWERS, or made files FOLDER"),
    }
}
