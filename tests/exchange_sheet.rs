//! Shop sheets of the shop's own: what a shop may set and what not, editions, comparing, files.

mod support;

use stepboard::content::{Content, SettingInfo, Units};
use stepboard::exchange::{
    Bar, Editions, OwnSheet, Refused, SHEET, SheetDraft, content_name, differences, write,
};
use stepboard::rules::sheet::Setting;
use stepboard::rules::term::Term;
use support::content;

const BASE: &str = "nitrocellulose";
const AT: &str = "2026-03-02T08:00:00Z";

fn draft(content: &Content, values: &[(Setting, f64)]) -> SheetDraft {
    let none = Editions::default();
    let begun = SheetDraft::of(content, &none, BASE, "Ada (7)").expect("the base ships");
    let named = SheetDraft { name: "Winter".to_owned(), ..begun };
    values.iter().fold(named, |draft, (setting, value)| draft.with(content, *setting, *value))
}

fn edition(content: &Content, values: &[(Setting, f64)]) -> OwnSheet {
    draft(content, values).edition(content, &Editions::default(), AT).expect("allowed")
}

fn refused(content: &Content, values: &[(Setting, f64)]) -> (String, String) {
    match draft(content, values).edition(content, &Editions::default(), AT) {
        Err(Refused::Value { place, allowed, .. }) => (place, allowed),
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_value_at_its_floor_and_at_its_ceiling_is_allowed_and_one_beyond_is_not() {
    let content = content();
    for info in content.settings.iter().filter(|info| !info.is_switch()) {
        let bar = |value: f64| {
            let draft = draft(&content, &[(info.key, value)]);
            let barred = draft.barred(&content);
            barred.into_iter().find(|one| one.setting == info.key).map(|one| one.bar)
        };
        let in_span = |value| !matches!(bar(value), Some(Bar::Floor(_) | Bar::Ceiling(_)));
        assert!(in_span(info.floor) && in_span(info.ceiling), "{}", info.key.slug());
        assert_eq!(bar(info.floor - info.step), Some(Bar::Floor(info.floor)), "{}", info.key.slug());
        assert_eq!(bar(info.ceiling + info.step), Some(Bar::Ceiling(info.ceiling)), "{}", info.key.slug());
    }
}

/// NAVEDTRA 14044: paste filler dries 24 h before finish coats; 29 CFR 1910.107(b)(5)(i): 100 ft/min, which is 0.508 m/s;
/// 29 CFR 1910.94(c)(6)(ii): a quarter of the lower explosive limit; TM 43-0139: no painting below 10 °C.
#[test]
fn published_limits_cannot_be_undercut_and_the_refusal_names_them() {
    let content = content();
    let cases = [
        (Setting::FillerOilWait, 24.0, 23.0, "NAVEDTRA 14044"),
        (Setting::FaceSpeed, 0.508, 0.5, "1910.107"),
        (Setting::VapourShare, 25.0, 26.0, "1910.94"),
        (Setting::ColdStop, 10.0, 9.0, "TM 43-0139"),
    ];
    for (setting, last, beyond, source) in cases {
        assert_eq!(draft(&content, &[(setting, last)]).barred(&content), [], "{}", setting.slug());
        let (place, allowed) = refused(&content, &[(setting, beyond)]);
        assert_eq!(place, format!("values.{}", setting.slug()));
        assert!(allowed.contains(source), "{allowed}");
        assert!(
            content.setting(setting).map(SettingInfo::limit_source).is_some_and(|text| text.contains(source))
        );
    }
}

#[test]
fn values_in_the_wrong_order_are_refused_at_the_one_that_was_changed() {
    let content = content();
    // The filler is wiped from 5 to 10 minutes.
    let high = draft(&content, &[(Setting::FillerWipeTo, 4.0)]).barred(&content);
    let low = draft(&content, &[(Setting::FillerWipeFrom, 11.0)]).barred(&content);
    for (found, setting) in [(high, Setting::FillerWipeTo), (low, Setting::FillerWipeFrom)] {
        let [one] = found.as_slice() else { panic!("{found:?}") };
        assert_eq!(one.setting, setting);
        let Bar::Clash(clash) = one.bar else { panic!("{one:?}") };
        assert_eq!((clash.low, clash.high), (Setting::FillerWipeFrom, Setting::FillerWipeTo));
    }
    assert_eq!(draft(&content, &[(Setting::FillerWipeTo, 5.0)]).barred(&content), []);
    assert_eq!(draft(&content, &[(Setting::WarmCredit, 0.5)]).barred(&content)[0].bar, Bar::Switch);
    assert!(!draft(&content, &[(Setting::ClearWait, f64::NAN)]).barred(&content).is_empty());
}

#[test]
fn an_edition_has_its_values_and_is_named_by_them() {
    let content = content();
    let own = edition(&content, &[(Setting::ClearWait, 2.0), (Setting::HumidityLimit, 60.0)]);
    let sheet = own.sheet(&content).expect("allowed");
    assert_eq!((sheet.get(Setting::ClearWait), sheet.get(Setting::HumidityLimit)), (2.0, 60.0));
    let base = content.sheet(BASE).expect("ships");
    let differ: Vec<Setting> = differences(base, &sheet).iter().map(|one| one.setting).collect();
    assert_eq!(differ, [Setting::ClearWait, Setting::HumidityLimit]);
    assert_eq!(differences(&sheet, &sheet), []);
    assert_eq!((own.slug().as_str(), own.hash.as_str()), (sheet.slug.as_str(), sheet.hash()));
    let shop = content.with_own_sheets([&own]);
    assert_eq!(shop.sheet(&own.slug()), Some(&sheet));
    assert_eq!(shop.sheet_name("en", &own.slug()), "Winter, edition 1");
    assert_eq!(shop.sheet_name("en", BASE), "Nitrocellulose lacquer");
    // A copy of the same values is the same sheet; nothing is there twice.
    assert_eq!(shop.with_own_sheets([&own]).sheets.len(), shop.sheets.len());
    // Set back to the base's value it is no difference.
    let back = draft(&content, &[(Setting::ClearWait, 2.0), (Setting::ClearWait, 1.0)]);
    assert!(back.values.is_empty());
    assert!(refused(&content, &[]).0 == "values");
}

#[test]
fn editions_follow_each_other_and_none_is_made_twice() {
    let content = content();
    let first = edition(&content, &[(Setting::ClearWait, 2.0)]);
    let held = Editions::of([first.clone()]);
    let begun = SheetDraft::of(&content, &held, &first.slug(), "Ada (7)").expect("an edition");
    assert_eq!(begun.value(&content, Setting::ClearWait), 2.0);
    let twice = begun.clone().edition(&content, &held, AT);
    assert!(matches!(twice, Err(Refused::Value { place, .. }) if place == "values"));
    let shop = content.with_own_sheets([&first]);
    assert_eq!(begun.changed(&shop), [], "as the edition that it was begun from");
    let changed = begun.with(&content, Setting::SealWait, 1.5);
    assert_eq!(changed.changed(&shop), [Setting::SealWait]);
    let back = changed.clone().with(&content, Setting::ClearWait, 1.0);
    assert_eq!(
        back.changed(&shop),
        [Setting::SealWait, Setting::ClearWait],
        "the base's value again is a change"
    );
    let second = changed.edition(&content, &held, "2026-04-02T08:00:00Z").expect("allowed");
    assert_eq!((second.edition, second.before.as_deref()), (2, Some(first.hash.as_str())));
    assert_eq!(second.values, [(Setting::SealWait, 1.5), (Setting::ClearWait, 2.0)].into());
    let held = Editions::of([second.clone(), first.clone(), second.clone()]);
    assert_eq!(held.iter().map(|one| one.edition).collect::<Vec<_>>(), [1, 2]);
    assert_eq!(held.line(&second.slug()), [&second, &first]);
    assert!(held.is_newest(&second) && !held.is_newest(&first));
    let other = SheetDraft { name: "Summer".to_owned(), ..changed.with(&content, Setting::SealWait, 3.0) };
    assert_eq!(other.edition(&content, &held, AT).expect("a copy of another name").edition, 1);
}

/// A line that leads back to itself ends.
#[test]
fn a_file_that_names_itself_as_what_it_came_from_ends() {
    let own = edition(&content(), &[(Setting::ClearWait, 2.0)]);
    let round = OwnSheet { before: Some(own.hash.clone()), ..own };
    assert_eq!(Editions::of([round.clone()]).line(&round.slug()), [&round]);
}

#[test]
fn a_file_comes_back_as_it_was_and_one_that_was_changed_is_refused() {
    let content = content();
    let own = edition(&content, &[(Setting::ClearWait, 2.0), (Setting::FilmReserve, 45.5)]);
    let text = own.text().expect("written");
    assert_eq!(OwnSheet::read(text.as_bytes(), &content), Ok(own.clone()));
    assert!(content_name(SHEET, text.as_bytes()).starts_with("stepboard-sheet-"));
    let place = |own: &OwnSheet| match OwnSheet::read(write(own, SHEET).expect("JSON").as_bytes(), &content) {
        Err(Refused::Value { place, .. }) => place,
        other => panic!("{other:?}"),
    };
    let values = |setting, value| OwnSheet { values: [(setting, value)].into(), ..own.clone() };
    assert_eq!(place(&values(Setting::ClearWait, 3.0)), "hash");
    assert_eq!(place(&values(Setting::ClearWait, 0.1)), "values.clear-wait");
    assert_eq!(place(&OwnSheet { base: own.slug(), ..own.clone() }), "base");
    assert_eq!(place(&OwnSheet { base_hash: "00".to_owned(), ..own.clone() }), "base_hash");
    assert_eq!(place(&OwnSheet { name: String::new(), ..own.clone() }), "name");
    assert_eq!(place(&OwnSheet { note: "x".repeat(201), ..own.clone() }), "note");
    assert_eq!(place(&OwnSheet { edition: 0, ..own.clone() }), "edition");
    let unknown = text.replace("\"film-reserve\"", "\"no-such-value\"");
    assert!(matches!(OwnSheet::read(unknown.as_bytes(), &content), Err(Refused::Form { .. })));
}

/// 8 in are 203.2 mm, 50 °F are 10 °C, 90 minutes are 1.5 h, by definition of the units.
#[test]
fn a_value_is_typed_in_the_persons_unit_and_what_is_shown_is_kept() {
    let content = content();
    let info = |key| content.setting(key).expect("every setting");
    let read = |key, units, typed: &str| info(key).read(units, info(key).default, typed);
    assert_eq!(read(Setting::BodyDistanceFrom, Units::US, "8"), Some(203.2));
    assert_eq!(read(Setting::ColdStop, Units::US, "50"), Some(10.0));
    assert_eq!(read(Setting::ClearWait, Units::METRIC, "90 min"), Some(1.5));
    assert_eq!(read(Setting::ClearWait, Units::METRIC, "1,5"), Some(1.5));
    assert_eq!(read(Setting::LastGrit, Units::METRIC, "P320"), Some(320.0));
    for bad in ["", "soon", "3 mm"] {
        assert_eq!(read(Setting::ClearWait, Units::METRIC, bad), None, "{bad}");
    }
    // Whoever types the rounded figure that is shown means the value behind it, so that a floor can be typed.
    for info in content.settings.iter().filter(|info| !info.is_switch()) {
        for units in [Units::METRIC, Units::US] {
            for value in [info.default, info.floor, info.ceiling] {
                let typed = info.shown(units, value).figure();
                assert_eq!(info.read(units, value, &typed), Some(value), "{} {typed}", info.key.slug());
            }
        }
    }
}
