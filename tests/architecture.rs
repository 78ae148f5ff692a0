//! The invariants of DEVELOPERS.md that a test can hold: what may use what, purity, portable mathematics, file sizes.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use stepboard::content::Content;

/// Modules from the ground up: each may use itself and those before it.
const LAYERS: [&str; 17] = [
    "quantity", "rules", "process", "picture", "content", "bench", "judge", "spraying", "card", "record",
    "learn", "signoff", "people", "walk", "exchange", "device", "app",
];
/// No file is longer: one concept a file.
const LINES_MOST: usize = 600;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn files_under(folder: &str, extension: &str) -> Vec<(PathBuf, String)> {
    let mut found = Vec::new();
    let mut folders = vec![root().join(folder)];
    while let Some(next) = folders.pop() {
        for entry in fs::read_dir(&next).expect("a folder of the package") {
            let path = entry.expect("an entry").path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|found| found == extension) {
                let text = fs::read_to_string(&path).expect("text");
                found.push((path.strip_prefix(root()).expect("inside").to_path_buf(), text));
            }
        }
    }
    assert!(!found.is_empty(), "no .{extension} under {folder}");
    found
}

/// Where the code of a module stands; pictures are a package of their own, which uses none of the others.
fn code_of(layer: &str) -> String {
    if layer == "picture" { "src/picture/src".to_owned() } else { format!("src/{layer}") }
}

/// Paths that would slip past a reading of `crate::module`: grouped imports of modules, and climbing out of a module.
const SLIPS: [&str; 3] = ["crate::{", "super::super::super::", "stepboard::"];
/// Grouped imports from the standard library hide what they name.
const GROUPED: &str = "use std::{";

#[test]
fn imports_are_written_so_that_they_can_be_read() {
    for layer in LAYERS {
        for (path, text) in files_under(&code_of(layer), "rs") {
            for slip in SLIPS.into_iter().chain([GROUPED]) {
                assert!(!text.contains(slip), "{} imports by `{slip}`", path.display());
            }
        }
    }
}

/// The modules of the library that a file names as `crate::module`.
fn used(text: &str) -> Vec<&str> {
    text.match_indices("crate::")
        .map(|(at, _)| &text[at + "crate::".len()..])
        .map(|rest| &rest[..rest.find(|c: char| !(c.is_alphanumeric() || c == '_')).unwrap_or(rest.len())])
        .filter(|module| LAYERS.contains(module))
        .collect()
}

#[test]
fn modules_use_only_what_stands_below_them() {
    for (place, layer) in LAYERS.iter().enumerate().filter(|(_, layer)| **layer != "picture") {
        for (path, text) in files_under(&code_of(layer), "rs") {
            for module in used(&text) {
                assert!(LAYERS[..=place].contains(&module), "{} uses `{module}`", path.display());
            }
        }
    }
}

#[test]
fn pictures_stand_on_nothing_of_ours() {
    let manifest =
        fs::read_to_string(root().join("src/picture/Cargo.toml")).expect("the manifest of pictures");
    assert!(!manifest.contains("path ="), "the package of pictures depends on another of ours");
}

/// Everything but the screens and the browser.
fn core() -> impl Iterator<Item = &'static str> {
    LAYERS.into_iter().filter(|layer| !["device", "app"].contains(layer))
}

#[test]
fn the_core_knows_no_clock_file_browser_or_randomness_of_its_own() {
    let forbidden = [
        "std::time",
        "std::fs",
        "std::net",
        "std::thread",
        "std::env",
        "web_sys",
        "js_sys",
        "wasm_bindgen",
        "yew",
        "gloo",
        "SystemTime",
        "Instant::now",
        "getrandom",
        "OsRng",
        "println!",
        "eprintln!",
    ];
    for layer in core() {
        for (path, text) in files_under(&code_of(layer), "rs") {
            // Reading content files is the loader's work; it is not part of the app.
            let loader = path.starts_with("src/content/load");
            for word in forbidden.iter().filter(|word| !(loader && **word == "std::fs")) {
                assert!(!text.contains(word), "{} names `{word}`", path.display());
            }
            let dice = path.ends_with("card/dice.rs");
            assert!(dice || !text.contains("rand::"), "{} draws its own random numbers", path.display());
        }
    }
}

#[test]
fn mathematics_is_portable() {
    let platform = [
        "f64::exp", "f64::ln", "f64::pow", "f64::log", "f64::sin", "f64::cos", "f64::tan", ".sinh(",
        ".cosh(", ".atanh(", ".exp(", ".exp2(", ".exp_m1(", ".ln(", ".ln_1p(", ".log10(", ".log2(", ".powf(",
        ".powi(", ".sin(", ".cos(", ".tan(", ".cbrt(", ".tanh(", ".atan(", ".atan2(",
    ];
    for layer in core() {
        for (path, text) in files_under(&code_of(layer), "rs") {
            for call in platform {
                assert!(!text.contains(call), "{} calls `{call}` of the platform; use libm", path.display());
            }
        }
    }
}

/// The checker that the run is held against; with any of its code in the run the law of both would say nothing.
const CHECKER: [&str; 3] = ["sequence::check", "accepts", "Checked"];

#[test]
fn the_run_has_no_code_of_the_order_checker() {
    for (path, text) in files_under("src/process", "rs") {
        let code = text.lines().filter(|line| !line.trim_start().starts_with("//"));
        for line in code {
            let taken = CHECKER.iter().find(|name| line.contains(*name));
            assert!(taken.is_none(), "{} uses {taken:?} of the checker", path.display());
        }
    }
}

#[test]
fn files_stay_short() {
    for folder in ["src", "tests"] {
        for (path, text) in files_under(folder, "rs") {
            let lines = text.lines().count();
            assert!(lines <= LINES_MOST, "{} has {lines} lines; split it by meaning", path.display());
        }
    }
}

#[test]
fn the_native_library_links_no_web_crate() {
    let output = Command::new(env!("CARGO"))
        .args(["tree", "--offline", "--edges", "normal", "--prefix", "none", "--no-default-features"])
        .current_dir(root())
        .output()
        .expect("cargo tree runs");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let tree = String::from_utf8_lossy(&output.stdout).into_owned();
    assert!(tree.contains("serde"), "the tree is read");
    for name in ["yew", "web-sys", "js-sys", "wasm-bindgen", "getrandom", "gloo"] {
        let linked = tree.lines().any(|line| line.split(' ').next() == Some(name));
        assert!(!linked, "`{name}` is linked without the web feature");
    }
}

/// Strings in the call `marker"…"`.
fn quoted<'a>(text: &'a str, marker: &str) -> Vec<&'a str> {
    text.match_indices(marker).filter_map(|(at, _)| text[at + marker.len()..].split('"').next()).collect()
}

#[test]
fn every_rule_that_is_named_is_explained_and_every_explained_rule_is_named() {
    let content = Content::embedded().expect("content");
    let mut all = String::new();
    for layer in ["rules", "process", "bench", "judge", "card", "walk", "spraying"] {
        for (path, text) in files_under(&code_of(layer), "rs") {
            for marker in ["Ruling::by(\"", "RuleId(\"", ".and(\""] {
                for id in quoted(&text, marker) {
                    assert!(
                        content.rule(id).is_some(),
                        "{}: rule `{id}` is not in content/rules",
                        path.display()
                    );
                }
            }
            all.push_str(&text);
        }
    }
    for rule in &content.rules {
        assert!(
            all.contains(&format!("\"{}\"", rule.id)),
            "rule `{}` is explained but never decides",
            rule.id
        );
    }
}

#[test]
fn screens_compute_nothing_about_finishing() {
    let allowed = ["term", "verdict", "sheet"];
    for (path, text) in files_under("src/app", "rs") {
        for (at, _) in text.match_indices("crate::rules::") {
            let rest = &text[at + "crate::rules::".len()..];
            let family =
                &rest[..rest.find(|c: char| !(c.is_alphanumeric() || c == '_')).unwrap_or(rest.len())];
            assert!(allowed.contains(&family), "{} asks the rule family `{family}` itself", path.display());
        }
    }
}

/// Beginnings of rule ids that stand in the file of another family.
const BESIDE: [(&str, &str); 6] = [
    ("se-", "sequence"),
    ("sv-", "sequence"),
    ("order.", "sequence"),
    ("shop.", "sequence"),
    ("recoat.", "drying"),
    ("waste.", "hazard"),
];

/// A rule `film.reserve-over-colour` is explained in `content/rules/film.toml` and decided under `src/rules/film`.
#[test]
fn a_rule_is_found_by_its_name() {
    for (path, text) in files_under("content/rules", "toml") {
        let family = path.file_stem().expect("a name").to_string_lossy().into_owned();
        let own = format!("{}.", family.replace('_', "-"));
        for id in quoted(&text, "id = \"") {
            let beside = BESIDE.iter().any(|(start, of)| *of == family && id.starts_with(start));
            assert!(id.starts_with(&own) || beside, "{}: `{id}`", path.display());
        }
        let homes = ["src/rules", "src/process", "src"].map(|home| root().join(home).join(&family));
        let found = homes.iter().any(|home| home.is_dir() || home.with_extension("rs").is_file());
        assert!(found, "{}: no code of that name", path.display());
    }
}

/// The table of questions in DEVELOPERS.md names files that are there.
#[test]
fn the_map_of_rules_names_files_that_are_there() {
    let text = fs::read_to_string(root().join("DEVELOPERS.md")).expect("DEVELOPERS.md");
    let begin = text.find("### Where a rule lives").expect("the table");
    let section = &text[begin..begin + text[begin + 3..].find("\n## ").expect("another section")];
    let named: Vec<&str> = section.split('`').skip(1).step_by(2).collect();
    assert!(named.len() > 60, "{} names", named.len());
    for name in named {
        let places = ["src/rules", "src", "content", "tests", "."].map(|home| root().join(home).join(name));
        assert!(places.iter().any(|place| place.exists()), "`{name}` is not there");
    }
}

/// The boot script makes the stores of the database, the program names them: both must tell the same ones.
#[test]
fn boot_script_and_program_name_the_same_stores() {
    let read = |path: &str| fs::read_to_string(root().join(path)).expect("text");
    let between = |text: &str, start: &str, end: &str| {
        let (_, rest) = text.split_once(start).unwrap_or_else(|| panic!("no `{start}`"));
        rest.split_once(end).unwrap_or_else(|| panic!("no `{end}` behind it")).0.to_owned()
    };
    let made = between(&read("src/device/boot/database.js"), "STORES = [", "]");
    let made = made.split(',').map(|name| name.trim().trim_matches('"').to_owned());
    let program = ["mod", "shelf"].map(|file| read(&format!("src/device/store/{file}.rs"))).concat();
    let listed = between(&program, "const STORES: ", "];");
    let (_, listed) = listed.split_once("= [").expect("a list");
    let named = listed.split(',').map(str::trim).filter(|one| !one.is_empty()).map(|one| {
        let shelf = one.strip_prefix("Shelf::").and_then(|one| one.strip_suffix(".store()"));
        let told =
            shelf.map_or_else(|| format!("const {one}: &str = "), |shelf| format!("Self::{shelf} => "));
        between(&program, &format!("{told}\""), "\"")
    });
    assert_eq!(made.collect::<Vec<_>>(), named.collect::<Vec<_>>());
}
