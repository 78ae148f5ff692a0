//! What cannot be written down, and counts for nothing where it stands all the same.

use super::support::log::date;
use super::support::watch::{APPRENTICE, ILSE, Watch, by};
use super::{ask, levelled};
use stepboard::content::OnFile;
use stepboard::record::{
    Event, Filed, Filing, Judged, NOTE_MOST, Observed, PAPER_DAYS_MOST, Unfit, WORK_MOST, plain,
};
use stepboard::rules::term::Term;

#[test]
fn every_reason_is_named_and_nothing_of_it_counts() {
    let competency = levelled();
    let watch = Watch::new("a", ILSE);
    let case = |change: &dyn Fn(&mut Observed), expected: &[Unfit]| {
        let mut watch = watch.clone();
        let mut one = watch.made(&competency, "o1", 50, &[]);
        change(&mut one);
        assert_eq!(one.unfit(), expected, "{one:?}");
        watch.put(one);
        assert_eq!(ask(&watch.events, &competency).count, u32::from(expected.is_empty()));
    };
    case(&|_| (), &[]);
    case(&|one| one.by = by(APPRENTICE), &[Unfit::OwnWork]);
    case(&|one| one.on = date(51), &[Unfit::DayToCome]);
    // Work goes on after midnight; what is older comes from paper.
    case(&|one| one.on = date(49), &[]);
    case(&|one| one.on = date(48), &[Unfit::EarlierDay]);
    case(&|one| (one.on, one.paper) = (date(48), true), &[]);
    case(&|one| one.paper = true, &[]);
    case(&|one| (one.on, one.paper) = (date(51), true), &[Unfit::DayToCome]);
    case(
        &|one| one.judged.values_mut().for_each(|judged| *judged = Judged::NotSeen),
        &[Unfit::NothingJudged],
    );
    case(&|one| one.judged.clear(), &[Unfit::NothingJudged]);
    case(&|one| one.work.clear(), &[Unfit::WorkMissing]);
    case(&|one| one.work = " ".to_owned(), &[Unfit::WorkMissing, Unfit::WordsUnfit]);
    case(&|one| one.work = "w".repeat(WORK_MOST), &[]);
    case(&|one| one.work = "w".repeat(WORK_MOST + 1), &[Unfit::WordsUnfit]);
    case(&|one| one.note = "ö".repeat(NOTE_MOST), &[]);
    case(&|one| one.note = "ö".repeat(NOTE_MOST + 1), &[Unfit::WordsUnfit]);
    case(&|one| one.note = "two\nlines".to_owned(), &[Unfit::WordsUnfit]);
    case(&|one| one.note = "turned \u{202e}round".to_owned(), &[Unfit::WordsUnfit]);
    // The day of universal time stands in for one that was not told; a clock that tells neither is no clock.
    case(&|one| one.stamp.date = None, &[]);
    case(&|one| (one.stamp.date, one.stamp.at) = (None, "noon".to_owned()), &[Unfit::NoDay]);
}

#[test]
fn paper_is_typed_in_within_a_year() {
    let competency = levelled();
    let watch = Watch::new("a", ILSE);
    for (age, expected) in [(PAPER_DAYS_MOST, vec![]), (PAPER_DAYS_MOST + 1, vec![Unfit::TooOld])] {
        let mut one = watch.made(&competency, "o1", 400, &[]);
        one.paper = true;
        one.on = stepboard::record::LocalDate::of_number(date(400).number() - age).expect("a day");
        assert_eq!(one.unfit(), expected, "{age} days");
    }
}

#[test]
fn nobody_files_for_themselves_or_a_paper_that_ends_before_it_begins() {
    let case = |on: u32, until: u32, number: &str, expected: &[Unfit]| {
        let mut watch = Watch::new("a", ILSE);
        watch.filed(OnFile::FitTest, 50, 90);
        let Some(Event::Filed(filing)) = watch.events.pop() else { panic!("a filing") };
        let filed = Filed { what: OnFile::FitTest, on: date(on), until: date(until) };
        assert_eq!(Filing { filed, by: by(number), ..Filing::clone(&filing) }.unfit(), expected);
    };
    case(20, 51, ILSE, &[]);
    case(51, 90, ILSE, &[Unfit::DayToCome]);
    case(20, 20, ILSE, &[Unfit::EndsBefore]);
    case(20, 51, APPRENTICE, &[Unfit::OwnWork]);
}

#[test]
fn what_is_typed_is_made_plain() {
    assert_eq!(
        plain("  two\n lines,\tand \u{200b}a zero\u{ad}width \u{feff} "),
        "two lines, and a zerowidth"
    );
    assert_eq!(
        (plain("\u{202e}"), plain("Öl, 21 °C – fine")),
        (String::new(), "Öl, 21 °C – fine".to_owned())
    );
}

#[test]
fn every_word_of_it_is_there() {
    use stepboard::learn::observation::{Missing, Worth};
    let texts = super::support::content().texts("en").clone();
    let told = |prefix: &str, slugs: Vec<&'static str>| {
        for slug in slugs {
            assert!(
                texts.find(&format!("app.assess.{prefix}.{slug}")).is_some(),
                "`{prefix}.{slug}` has no text"
            );
        }
    };
    told("unfit", Unfit::ALL.iter().map(|one| one.slug()).collect());
    told("worth", Worth::ALL.iter().map(|one| one.slug()).collect());
    told("missing", Missing::ALL.iter().map(|one| one.slug()).collect());
    told("judged", Judged::ALL.iter().map(|one| one.slug()).collect());
}
