//! The native command: the model as a calculator, cards dealt and graded, content checked. JSON on standard output,
//! errors on standard error with exit code 2; a signed file that is not accepted ends with exit code 1.

#![warn(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod args;
mod check;
mod clock;
mod deal;
mod export;
mod face;
mod grade;
mod help;
mod instrument;
mod judge;
mod picture;
mod report;
mod results;
mod show;
mod spray;
mod verify;
mod walk;
mod wire;
mod work;
mod workup;

use args::Args;
use std::io::Write;
use std::process::ExitCode;
use stepboard::content::Content;

/// Exit code for input that cannot be used.
const BAD_INPUT: u8 = 2;

/// Exit code for a signed file that is not accepted.
const REFUSED: u8 = 1;

/// What a sub-command gives: text for standard output, or lines for standard error.
type Output = Result<String, Vec<String>>;

/// Text for standard output, and the exit code.
struct Answer {
    text: String,
    code: ExitCode,
}

impl From<String> for Answer {
    fn from(text: String) -> Self {
        Self { text, code: ExitCode::SUCCESS }
    }
}

fn main() -> ExitCode {
    match run(std::env::args().skip(1).collect()) {
        Ok(answer) => {
            // A reader that has seen enough closes the pipe; that is no error.
            let _ = writeln!(std::io::stdout(), "{}", answer.text);
            answer.code
        }
        Err(lines) => {
            for line in lines {
                eprintln!("stepboard: {line}");
            }
            ExitCode::from(BAD_INPUT)
        }
    }
}

fn run(words: Vec<String>) -> Result<Answer, Vec<String>> {
    let Some((command, rest)) = words.split_first() else { return Ok(help::GENERAL.to_owned().into()) };
    match command.as_str() {
        "--version" | "-V" => return Ok(concat!("stepboard ", env!("CARGO_PKG_VERSION")).to_owned().into()),
        "--help" | "-h" => return Ok(help::GENERAL.to_owned().into()),
        "help" => {
            let page = rest.first().and_then(|name| help::page(name));
            return Ok(page.unwrap_or(help::GENERAL).to_owned().into());
        }
        _ => {}
    }
    let Some(page) = help::page(command) else {
        return Err(vec![format!("`{command}` is no command; allowed: {}", help::COMMANDS.join(", "))]);
    };
    let args = Args::read(rest)?;
    if args.help {
        return Ok(page.to_owned().into());
    }
    let content = Content::embedded().map_err(|error| vec![format!("this build is broken: {error}")])?;
    let output = match command.as_str() {
        "verify" => return verify::run(&content, args),
        "work" => work::run(&content, args),
        "deal" => deal::run(&content, args),
        "grade" => grade::run(&content, args),
        "judge" => judge::run(&content, args),
        "picture" => picture::run(&content, args),
        "export" => export::run(&content, args),
        "report" => report::run(&content, args),
        "walk" => walk::run(&content, args),
        "spray" => spray::run(&content, args),
        _ => check::run(&content, args),
    };
    output.map(Answer::from)
}
