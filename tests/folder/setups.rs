//! How the folder is used: until when a password rests, and when one that was typed may go on being used.

use stepboard::exchange::folder::{Place, Rest, Setup};
use stepboard::record::LocalDate;

fn day(text: &str) -> LocalDate {
    text.parse().expect("a day")
}

fn setup() -> Setup {
    Setup {
        on: true,
        place: Some(Place::new("/shop/").expect("a path")),
        user: "tablet".to_owned(),
        rest: Rest::Day,
        until: Some(day("2027-03-12")),
        password: Some("typed".to_owned()),
        ..Setup::default()
    }
}

#[test]
fn a_password_rests_to_the_end_of_its_day_and_no_longer() {
    let setup = setup();
    assert!(setup.rests(day("2027-03-12")) && !setup.over(day("2027-03-12")));
    assert!(!setup.rests(day("2027-03-13")) && setup.over(day("2027-03-13")));
    let none = Setup { password: None, ..setup.clone() };
    assert!(!none.over(day("2027-03-13")), "nothing is there to let go of");
    for rest in [Rest::Page, Rest::Session] {
        assert!(Setup { rest, ..setup.clone() }.over(day("2027-03-12")), "it rests for no day");
    }
    assert!(Setup { until: None, ..setup }.over(day("2027-03-12")));
}

#[test]
fn it_rests_a_year_at_most() {
    let today = day("2027-03-12");
    for (until, may) in
        [("2027-03-11", false), ("2027-03-12", true), ("2028-03-12", true), ("9999-12-31", false)]
    {
        assert_eq!(Setup::may_rest(day(until), today), may, "{until}");
    }
}

#[test]
fn a_password_that_another_window_let_go_of_is_used_no_longer() {
    let before = setup();
    assert!(before.goes_on(&before));
    let off = Setup { on: false, password: None, ..setup() };
    assert!(!off.goes_on(&before) && !before.goes_on(&off));
    assert!(!Setup { password: None, ..setup() }.goes_on(&before));
    assert!(!Setup { user: "other".to_owned(), ..setup() }.goes_on(&before));
    assert!(!Setup { place: Place::new("/b/").ok(), ..setup() }.goes_on(&before));
    let typed = Setup { rest: Rest::Page, password: None, ..setup() };
    assert!(Setup { hands_in: true, ..typed.clone() }.goes_on(&typed));
}

#[test]
fn it_is_stored_and_read_back() {
    let text = serde_json::to_string(&setup()).expect("text");
    assert_eq!(serde_json::from_str::<Setup>(&text).expect("a setup"), setup());
}
