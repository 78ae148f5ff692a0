//! Reads and checks `content/` and hands it to the program as one file, and the texts of the files
//! for the command to check others with; stops the build at the first mistake found
//! there, naming file, line and what is allowed.
#![allow(
    dead_code,
    unused_imports,
    unreachable_pub,
    missing_docs,
    reason = "the library's own modules, of which a part is used here"
)]

#[path = "src/content/mod.rs"]
mod content;
#[path = "src/quantity/mod.rs"]
mod quantity;
#[path = "src/rules/mod.rs"]
mod rules;

use std::path::Path;

use stepboard_picture as picture;

fn main() {
    println!("cargo::rerun-if-changed=content");
    println!("cargo::rerun-if-changed=src/content");
    println!("cargo::rerun-if-changed=src/quantity");
    println!("cargo::rerun-if-changed=src/rules");
    if let Err(problems) = write() {
        for problem in problems {
            println!("cargo::error=content/{problem}");
        }
        std::process::exit(1);
    }
}

fn write() -> Result<(), Vec<String>> {
    let sources =
        content::load::sources(Path::new("content")).map_err(|problem| vec![problem.to_string()])?;
    let content = content::load::load(&sources)
        .map_err(|problems| problems.iter().map(ToString::to_string).collect::<Vec<_>>())?;
    let bytes = postcard::to_allocvec(&content).map_err(|error| vec![error.to_string()])?;
    let out = std::env::var("OUT_DIR").map_err(|error| vec![error.to_string()])?;
    let files = postcard::to_allocvec(&sources).map_err(|error| vec![error.to_string()])?;
    let write = |name: &str, bytes: &[u8]| {
        std::fs::write(Path::new(&out).join(name), bytes).map_err(|error| vec![error.to_string()])
    };
    write("content.bin", &bytes)?;
    write("sources.bin", &files)
}
