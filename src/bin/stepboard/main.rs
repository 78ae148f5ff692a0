//! The native command: the model as a calculator, cards dealt and graded, content checked. JSON on standard output,
//! errors on standard error with exit code 2.

#![warn(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod args;
mod check;
mod deal;
mod grade;
mod help;
mod judge;
mod picture;
mod show;
mod wire;
mod work;
mod workup;

use args::Args;
use std::io::Write;
use std::process::ExitCode;
use stepboard::content::Content;

/// Exit code for input that cannot be used.
const BAD_INPUT: u8 = 2;

/// What a sub-command gives: text for standard output, or lines for standard error.
type Output = Result<String, Vec<String>>;

fn main() -> ExitCode {
    match run(std::env::args().skip(1).collect()) {
        Ok(text) => {
            // A reader that has seen enough closes the pipe; that is no error.
            let _ = writeln!(std::io::stdout(), "{text}");
            ExitCode::SUCCESS
        }
        Err(lines) => {
            for line in lines {
                eprintln!("stepboard: {line}");
            }
            ExitCode::from(BAD_INPUT)
        }
    }
}

fn run(words: Vec<String>) -> Output {
    let Some((command, rest)) = words.split_first() else { return Ok(help::GENERAL.to_owned()) };
    match command.as_str() {
        "--version" | "-V" => return Ok(concat!("stepboard ", env!("CARGO_PKG_VERSION")).to_owned()),
        "--help" | "-h" => return Ok(help::GENERAL.to_owned()),
        "help" => {
            let page = rest.first().and_then(|name| help::page(name));
            return Ok(page.unwrap_or(help::GENERAL).to_owned());
        }
        _ => {}
    }
    let Some(page) = help::page(command) else {
        return Err(vec![format!("`{command}` is no command; allowed: {}", help::COMMANDS.join(", "))]);
    };
    let args = Args::read(rest)?;
    if args.help {
        return Ok(page.to_owned());
    }
    let content = Content::embedded().map_err(|error| vec![format!("this build is broken: {error}")])?;
    match command.as_str() {
        "work" => work::run(&content, args),
        "deal" => deal::run(&content, args),
        "grade" => grade::run(&content, args),
        "judge" => judge::run(&content, args),
        "picture" => picture::run(&content, args),
        _ => check::run(&content, args),
    }
}
