//! Content: what ships is whole, a mistake is named with file, line and what is allowed, and adding an entry of a known
//! kind touches only content.

mod support;

use std::collections::BTreeSet;
use std::path::Path;
use stepboard::bench::{self, Facts};
use stepboard::card::{Answer, deal, families, grade, solve};
use stepboard::content::load::{self, Problem, Source};
use stepboard::content::{Caution, Topic, World};
use stepboard::rules::term::{Stage, Term};
use support::content;

const FAMILIES_LEAST: usize = 45;
const TICKETS_LEAST: usize = 6;
const SHEETS_LEAST: usize = 3;

fn shipped() -> Vec<Source> {
    load::sources(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).expect("content can be read")
}

/// What is wrong after one file was changed.
fn broken(path: &str, from: &str, to: &str) -> Vec<Problem> {
    let mut sources = shipped();
    let source = sources.iter_mut().find(|source| source.path == Path::new(path)).expect("the file ships");
    assert!(source.text.contains(from), "`{from}` stands in {path}");
    source.text = source.text.replacen(from, to, 1);
    load::load(&sources).expect_err("the mistake must be found")
}

#[track_caller]
fn names(problems: &[Problem], path: &str, line_says: &str, says: &[&str]) {
    let sources = shipped();
    let source = sources.iter().find(|source| source.path == Path::new(path)).expect("the file ships");
    let line = 1 + source.text.lines().position(|line| line.contains(line_says)).expect("the line stands");
    let found = problems.iter().find(|p| p.file == Path::new(path) && p.line == line);
    let found = found.unwrap_or_else(|| panic!("no problem at {path}:{line} in {problems:?}"));
    for part in says {
        assert!(found.message.contains(part), "`{part}` is not in `{found}`");
    }
}

#[test]
fn an_unknown_wood_on_a_ticket_is_named_with_its_line() {
    let problems = broken("tickets.toml", "wood = \"koa\"", "wood = \"koaa\"");
    names(&problems, "tickets.toml", "wood = \"koa\"", &["`koaa`", "content/woods.toml"]);
}

#[test]
fn a_sheet_value_below_its_floor_is_named_with_its_range() {
    let problems =
        broken("sheets/2-water-borne.toml", "buff-wait-instrument = 168.0", "buff-wait-instrument = 24.0");
    names(&problems, "sheets/2-water-borne.toml", "buff-wait-instrument", &["24", "72", "8760"]);
}

#[test]
fn a_misspelt_setting_is_named() {
    let problems = broken("sheets/3-shellac.toml", "humidity-limit", "humidity-limits");
    names(
        &problems,
        "sheets/3-shellac.toml",
        "humidity-limit",
        &["`humidity-limits`", "content/settings.toml"],
    );
}

#[test]
fn an_unknown_term_or_key_is_named_with_what_is_allowed() {
    let problems = broken("woods.toml", "porosity = \"ring\"", "porosity = \"rings\"");
    names(&problems, "woods.toml", "porosity = \"ring\"", &["rings", "semi-ring", "diffuse"]);
    let problems = broken("woods.toml", "botanical = ", "botanic = ");
    names(&problems, "woods.toml", "botanical = ", &["botanic"]);
}

#[test]
fn a_missing_text_and_a_missing_fact_are_named() {
    let problems = broken("text/en/fill.toml", "ask = ", "asks = ");
    assert!(problems.iter().any(|p| p.message.contains(".ask` is missing")), "{problems:?}");
    let problems = broken("families/fill.toml", "fact = \"look\"", "fact = \"looks\"");
    assert!(problems.iter().any(|p| p.line > 0 && p.message.contains("`looks` is no fact")), "{problems:?}");
}

#[test]
fn a_new_wood_is_asked_about_without_any_code() {
    let mut sources = shipped();
    let woods = sources.iter_mut().find(|source| source.path == Path::new("woods.toml")).expect("woods");
    woods.text.push_str(
        "\n[[wood]]\nslug = \"testwood\"\nname = \"Testwood\"\nbotanical = \"Lignum probans\"\nhardwood = true\n\
         porosity = \"diffuse\"\npores = \"large\"\nfiller = \"yes\"\nfiller_provenance = \"practice\"\nsource = \"-\"\n",
    );
    let content = load::load(&sources).expect("a new wood needs nothing else");
    let world = World { content: &content, sheet: &content.sheets[0] };
    let card = (0..2_000)
        .map(|seed| deal(&world, "wants-filler", seed).expect("a card"))
        .find(|card| {
            let told = solve(card, &world).is_some_and(|solution| solution.right != Answer::NotEnough);
            told && card.options.contains(&Answer::term("testwood"))
                && card.facts.maybe_slug("look") == Some("level-gloss")
        })
        .expect("the new wood is dealt");
    let Answer::Terms(right) = solve(&card, &world).expect("a question").right else { panic!("terms") };
    assert!(right.iter().any(|slug| slug == "testwood"), "an open-pored wood wants filler");
    assert!(grade(&card, &world, &Answer::Terms(right)).is_some_and(|graded| graded.slip.is_none()));
}

#[test]
fn enough_of_everything_ships() {
    let content = content();
    assert_eq!(content.woods.len(), 54, "the woods of the reference table");
    assert!(content.sheets.len() >= SHEETS_LEAST, "{} sheets", content.sheets.len());
    assert!(content.tickets.len() >= TICKETS_LEAST, "{} tickets", content.tickets.len());
    assert!(content.families.len() >= FAMILIES_LEAST, "{} families", content.families.len());
    let mixed = content.tickets.iter().any(|ticket| {
        let needs: BTreeSet<_> = ticket
            .parts
            .iter()
            .filter_map(|part| content.wood(&part.wood))
            .map(|wood| format!("{:?}", wood.pores))
            .collect();
        needs.contains("Large") && (needs.contains("Small") || needs.contains("None"))
    });
    assert!(mixed, "one ticket has an open-grained body and a closed-grained top");
    for topic in Topic::ALL {
        assert!(content.families.iter().any(|family| family.topic == *topic), "no family about {topic:?}");
    }
    for stage in Stage::ALL {
        assert!(content.families.iter().any(|family| family.stage == *stage), "no family on band {stage:?}");
    }
    let kinds: BTreeSet<String> =
        families::all().iter().map(|question| format!("{:?}", question.kind())).collect();
    assert_eq!(kinds.len(), 7, "all seven kinds of answer: {kinds:?}");
}

#[test]
fn every_family_has_a_short_title_of_its_own() {
    let content = content();
    let mut titles = BTreeSet::new();
    for family in &content.families {
        let title = content.texts("en").find(&format!("card.{}.title", family.id));
        let title = title.unwrap_or_else(|| panic!("{} has no title in titles.toml", family.id));
        assert!((2..=4).contains(&title.split_whitespace().count()), "two to four words: {title}");
        assert!(titles.insert(title), "the title of two families: {title}");
    }
}

#[test]
fn every_stage_shows_cautions_and_the_closing_line_is_always_there() {
    let content = content();
    for family in &content.families {
        assert!(!family.cautions.is_empty(), "{} shows no cautions", family.id);
    }
    let all: Vec<&str> = content
        .cautions
        .iter()
        .filter(|caution| caution.stages.contains(&stepboard::content::CautionStage::All))
        .map(|caution| caution.id.as_str())
        .collect();
    assert!(all.contains(&"c30") && all.contains(&"c01"));
}

/// What answers a card is not read below it, in a check below no card at all; that this is training stands below each.
#[test]
fn no_caution_that_answers_a_card_stands_below_it_while_it_is_asked() {
    let content = content();
    let dust = content.family("dust-away").expect("taking up dust");
    let ids = |cautions: Vec<&Caution>| cautions.iter().map(|one| one.id.clone()).collect::<Vec<_>>();
    let after = ids(content.cautions_for(&dust.cautions));
    let asked = ids(content.cautions_asked(&[dust], false));
    assert!(after.contains(&"c03".to_owned()) && !asked.contains(&"c03".to_owned()), "{asked:?}");
    assert!(asked.contains(&"c28".to_owned()), "what answers another family stands there: {asked:?}");
    assert!(!ids(content.cautions_asked(&[dust], true)).contains(&"c28".to_owned()));
    for family in &content.families {
        for in_check in [false, true] {
            let asked = content.cautions_asked(&[family], in_check);
            assert!(asked.iter().any(|one| one.id == "c01"), "{}", family.id);
            assert!(!asked.iter().any(|one| one.gives_away.contains(&family.id)), "{}", family.id);
        }
    }
}

#[test]
fn look_alikes_that_their_probe_does_not_tell_apart_are_named() {
    let problems = broken("lookalikes.toml", "probes = [\"came\"]", "probes = [\"palm\"]");
    names(
        &problems,
        "lookalikes.toml",
        "probes = [\"came\"]",
        &["`palm` does not tell `fish-eye` from `solvent-pop`"],
    );
    let problems = broken("lookalikes.toml", "b = \"solvent-pop\"", "b = \"fish-eye\"");
    names(&problems, "lookalikes.toml", "b = \"solvent-pop\"", &["two faults are wanted"]);
    let problems = broken("lookalikes.toml", "a = \"fish-eye\"", "a = \"fish-eyes\"");
    names(&problems, "lookalikes.toml", "a = \"fish-eye\"", &["`fish-eyes` is no fault", "fish-eye"]);
    let problems = broken("lookalikes.toml", "b = \"pore-pinhole\"", "b = \"solvent-pop\"");
    assert!(problems.iter().any(|p| p.message.contains("each pair once")), "{problems:?}");
    let problems = broken("lookalikes.toml", "probes = [\"came\"]", "probes = []");
    names(&problems, "lookalikes.toml", "probes = [\"came\"]", &["needs a probe that decides"]);
}

#[test]
fn what_a_fault_cannot_show_and_a_cause_without_words_are_named() {
    let problems = broken("faults.toml", "mark = [\"pits\"]", "mark = [\"pit\"]");
    names(&problems, "faults.toml", "mark = [\"pits\"]", &["`pit` does not answer `mark`", "pits"]);
    let problems = broken("faults.toml", "mark = [\"pits\"]", "marks = [\"pits\"]");
    names(&problems, "faults.toml", "mark = [\"pits\"]", &["`marks` is no probe", "mark"]);
    let problems = broken("faults.toml", "mark = [\"pits\"]", "mark = []");
    names(&problems, "faults.toml", "mark = [\"pits\"]", &["one answer or more"]);
    let problems =
        broken("faults.toml", "palm = [\"palm-smooth\"]", "palm = [\"palm-smooth\", \"palm-gritty\"]");
    names(&problems, "faults.toml", "palm = [\"palm-smooth\"]", &["not all of them"]);
    let problems = broken("faults.toml", "causes = [\"silicone-on-it\", ", "causes = [\"silicone-on-its\", ");
    assert!(
        problems.iter().any(|p| p.message.contains("`cause.silicone-on-its` is missing")),
        "{problems:?}"
    );
    let problems = broken("faults.toml", "causes = [\"silicone-on-it\", ", "causes = [\"oil-in-air\", ");
    assert!(problems.iter().any(|p| p.message.contains("`oil-in-air` stands twice")), "{problems:?}");
    let problems = broken("faults.toml", "read = [\"mark\", \"came\"]", "read = [\"mark\", \"palm\"]");
    names(&problems, "faults.toml", "read = [\"mark\", \"came\"]", &["`palm` is not in seen"]);
    let problems = broken("facts/fault.toml", "probe = { minutes = 1.0 }", "probe = { minutes = 0.0 }");
    assert!(problems.iter().any(|p| p.line > 0 && p.message.contains("minutes over 0")), "{problems:?}");
    let problems =
        broken("facts/fault.toml", "terms = [\"palm-smooth\", \"palm-gritty\"]", "terms = [\"palm-smooth\"]");
    assert!(problems.iter().any(|p| p.message.contains("at least two answers")), "{problems:?}");
}

/// A fault, the probe that shows it and its look-alike: entries and their words, no code.
#[test]
fn a_new_fault_is_diagnosed_without_any_code() {
    let nibs = "[fault.seen]\nmark = [\"specks\"]\n";
    let mut sources = shipped();
    for source in &mut sources {
        source.text.push_str(match source.path.to_str().expect("a plain name") {
            "faults.toml" => {
                "\n[[fault]]\nid = \"moth-mark\"\nseverity = 2\nmade = [\"clear\"]\nshows = \"clear\"\n\
                 met = \"rare\"\ncauses = [\"moth-in-room\"]\nrework = [\"again\"]\nsource = \"-\"\n\
                 [fault.seen]\nmark = [\"specks\"]\nwings = [\"wings-there\"]\n"
            }
            "facts/fault.toml" => {
                "\n[[fact]]\nkey = \"wings\"\nterms = [\"wings-there\", \"wings-none\"]\nprobe = { minutes = 1.0 }\n"
            }
            "lookalikes.toml" => {
                "\n[[pair]]\nid = \"la-99\"\na = \"moth-mark\"\nb = \"dust-nib\"\nprobes = [\"wings\"]\n\
                 provenance = \"practice\"\nsource = \"-\"\n"
            }
            _ => continue,
        });
        source.text = source.text.replacen(nibs, &format!("{nibs}wings = [\"wings-none\"]\n"), 1);
    }
    let words = "[fault]\nmoth-mark = \"Moth\"\n\"moth-mark.looks\" = \"A moth.\"\n\"moth-mark.now\" = \"Wait.\"\n\
                 \"moth-mark.fix\" = \"Pick it.\"\n\"moth-mark.prevent\" = \"A net.\"\n[cause]\n\
                 moth-in-room = \"A moth\"\n[fact]\nwings = \"Wings\"\n[probe]\nwings = \"Look for wings\"\n\
                 [term]\nwings-there = \"Wings\"\nwings-none = \"None\"\n";
    sources.push(Source { path: "text/en/moth.toml".into(), text: words.to_owned() });
    let content = load::load(&sources).expect("entries and words are enough");
    let world = World { content: &content, sheet: &content.sheets[0] };
    let diagnose = bench::calculations().into_iter().find(|one| one.name == "diagnose").expect("it is there");
    let mut facts = Facts::default();
    for (key, answer) in [("mark", "specks"), ("wings", "wings-there")] {
        facts.read(&content, key, answer).expect("a known answer");
    }
    let found = (diagnose.run)(&facts, &world).expect("an answer").answer;
    assert_eq!(found.terms["fault"], "moth-mark");
    assert_eq!(found.words[0].1, "fault.moth-mark.now");
}
