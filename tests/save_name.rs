//! Names of files that people save.
//!
//! What no system takes in a name: Microsoft Learn, "Naming files, paths, and namespaces" (the characters `<>:"/\|?*`, control
//! characters, a space or a full stop at the end); POSIX.1-2017, 3.170, excludes the slash and the null.

use stepboard::exchange::save_name;
use stepboard::record::LocalDate;

const REFUSED: &str = "<>:\"/\\|?*\0";

#[test]
fn a_name_tells_what_whose_and_when() {
    let day = LocalDate::new(2027, 3, 12);
    for (about, name) in [
        ("Bo 17", "stepboard-results-Bo-17-2027-03-12.json"),
        ("17", "stepboard-results-17-2027-03-12.json"),
        ("Zoë Ångström", "stepboard-results-Zoë-Ångström-2027-03-12.json"),
        ("", "stepboard-results-2027-03-12.json"),
        ("../..\\a:b. ", "stepboard-results-a-b-2027-03-12.json"),
        ("..", "stepboard-results-2027-03-12.json"),
    ] {
        assert_eq!(save_name("stepboard-results", about, day, "json"), name);
    }
    assert_eq!(
        save_name("stepboard-set", "Monday, spray side", None, "json"),
        "stepboard-set-Monday-spray-side.json"
    );
}

#[test]
fn whatever_it_is_called_the_name_is_short_and_taken_everywhere() {
    let all: String = (0..=0x2FFF_u32).filter_map(char::from_u32).collect();
    let long = "Winter ".repeat(40);
    for about in [all.as_str(), REFUSED, long.as_str(), "\u{202e}moc", "a\nb\tc"] {
        let name = save_name("stepboard-set", about, None, "json");
        assert!(name.chars().count() <= 51, "{name}");
        assert!(
            !name.contains(|one: char| one.is_control() || one.is_whitespace() || REFUSED.contains(one)),
            "{name}"
        );
        assert!(!name.contains('\u{202e}') && !name.contains("--") && name.ends_with(".json"), "{name}");
    }
}
