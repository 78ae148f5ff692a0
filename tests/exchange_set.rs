//! Scenario sets that travel: read, named, dealt, warned of, judged.

mod support;

use std::collections::BTreeSet;
use stepboard::card::{Answer, Kind, Mark, families, solve};
use stepboard::content::{Content, Hard, PassRule, Purpose, Task, World};
use stepboard::exchange::set::{
    Asker, CountsNot, NotComputed, OwnCard, SET, Set, SetCard, Validity, Warning, Withdrawal, cards,
    cards_on_paper, counts_for, counts_not, warnings,
};
use stepboard::exchange::{CarriedSheet, Refused};
use stepboard::learn::check::COMPETENCIES_MOST;
use stepboard::record::{LocalDate, SheetName};
use stepboard::rules::term::{Severity, Stage, Term};
use support::content;

fn own_card() -> OwnCard {
    OwnCard {
        tag: NotComputed::NotComputed,
        question: "Where does the key of the paint store hang?".to_owned(),
        options: ["At the door", "In the office", "In the booth"].map(str::to_owned).to_vec(),
        right: vec![2],
        why: "It is signed out in the office.".to_owned(),
    }
}

fn set(content: &Content, task: Task) -> Set {
    Set {
        title: "Monday".to_owned(),
        note: String::new(),
        by: "Ines 12".to_owned(),
        at: "2027-03-12T08:00:00Z".to_owned(),
        sheet: CarriedSheet::Ships(SheetName::of(content.sheet("nitrocellulose").expect("ships"))),
        task,
        from: None,
        until: None,
        own_cards: Vec::new(),
    }
}

fn of_stages(count: u32, stages: &[Stage]) -> Task {
    Task { count, stages: stages.to_vec(), ..Task::default() }
}

/// Families of the cards in order; the shop's own are left out.
fn dealt(content: &Content, set: &Set, person: &str, attempt: &str) -> Vec<(String, u32)> {
    let sheet = set.sheet_of(content).expect("known");
    let world = World { content, sheet: &sheet };
    let named = |card| match card {
        SetCard::Computed(card) => Some((card.family, card.seed)),
        SetCard::Own(..) => None,
    };
    cards(set, &set.id(), &world, person, attempt).into_iter().filter_map(named).collect()
}

#[test]
fn a_set_is_read_as_it_was_written_and_named_by_what_is_in_it() {
    let content = content();
    let set = Set { own_cards: vec![own_card()], ..set(&content, of_stages(8, &[Stage::Fill])) };
    let text = set.write().expect("writes");
    let read = Set::read(text.as_bytes(), &content).expect("reads");
    assert_eq!(read, set);
    assert_eq!(read.id(), set.id());
    let id = set.id();
    let digits = id.strip_prefix("set-").expect("begins so");
    assert!(digits.len() == 32 && digits.bytes().all(|digit| digit.is_ascii_hexdigit()), "{id}");
    // Laid out on one line it is the same set; another note makes another.
    let value: serde_json::Value = serde_json::from_str(&text).expect("JSON");
    assert_eq!(Set::read(value.to_string().as_bytes(), &content).expect("reads").id(), id);
    assert_ne!(Set { note: "Take your time".to_owned(), ..set }.id(), id);
}

#[test]
fn what_is_not_allowed_is_refused_with_its_place() {
    let content = content();
    let good = Set { own_cards: vec![own_card()], ..set(&content, of_stages(8, &[Stage::Fill])) };
    let refused = |change: &dyn Fn(&mut serde_json::Value)| {
        let mut value = serde_json::from_str(&good.write().expect("writes")).expect("JSON");
        change(&mut value);
        match Set::read(value.to_string().as_bytes(), &content).expect_err("refused") {
            Refused::Value { place, .. } => place,
            other => other.slug().to_owned(),
        }
    };
    let day = |year| LocalDate::new(year, 3, 12).expect("a day").to_string();
    assert_eq!(refused(&|set| set["title"] = "".into()), "title");
    assert_eq!(refused(&|set| set["title"] = "x".repeat(61).into()), "title");
    assert_eq!(refused(&|set| set["note"] = "a\u{202e}b".into()), "note");
    assert_eq!(refused(&|set| set["at"] = "yesterday".into()), "at");
    assert_eq!(refused(&|set| set["sheet"]["ships"]["hash"] = "0".into()), "sheet.ships.hash");
    assert_eq!(refused(&|set| set["sheet"]["ships"]["slug"] = "paste".into()), "sheet.ships.slug");
    assert_eq!(refused(&|set| set["task"]["count"] = 60.into()), "task.count");
    assert_eq!(refused(&|set| set["task"]["stages"] = serde_json::json!([])), "task.stages");
    assert_eq!(
        refused(&|set| set["task"]["families"] = serde_json::json!(["wants-filer"])),
        "task.families.0"
    );
    let twice = serde_json::json!(["mask-worn", "mask-worn"]);
    assert_eq!(refused(&|set| set["task"]["competencies"] = twice.clone()), "task.competencies.1");
    let pass = serde_json::json!({ "least": 10, "safety": false });
    assert_eq!(refused(&|set| set["task"]["pass"] = pass.clone()), "task.pass.least");
    assert_eq!(refused(&|set| set["own_cards"][0]["right"] = serde_json::json!([4])), "own_cards.0.right");
    assert_eq!(
        refused(&|set| set["own_cards"][0]["options"] = serde_json::json!(["one"])),
        "own_cards.0.options"
    );
    assert_eq!(refused(&|set| set["own_cards"][0]["why"] = "".into()), "own_cards.0.why");
    let turned = |set: &mut serde_json::Value| {
        (set["from"], set["until"]) = (day(2027).into(), day(2026).into());
    };
    assert_eq!(refused(&turned), "until");
    // What is unknown is of another form, wherever it stands.
    assert_eq!(refused(&|set| set["extra"] = 1.into()), "form");
    assert_eq!(refused(&|set| set["task"]["extra"] = 1.into()), "form");
    assert_eq!(refused(&|set| set["sheet"]["ships"]["extra"] = 1.into()), "form");
    assert_eq!(refused(&|set| set["own_cards"][0]["extra"] = 1.into()), "form");
    assert_eq!(refused(&|set| set["own_cards"][0]["tag"] = "computed".into()), "form");
    assert_eq!(refused(&|set| set["version"] = 2.into()), "other-version");
    assert_eq!(refused(&|set| set["note"] = "x".repeat(SET.most).into()), "too-large");
}

#[test]
fn a_set_deals_the_same_again_and_other_cards_to_others_unless_all_get_the_same() {
    let content = content();
    let own = set(&content, of_stages(10, &[Stage::Fill, Stage::Sand]));
    assert_eq!(dealt(&content, &own, "Ana", "1").len(), 10);
    assert_eq!(dealt(&content, &own, "Ana", "1"), dealt(&content, &own, "Ana", "1"));
    assert_ne!(dealt(&content, &own, "Ana", "1"), dealt(&content, &own, "Ana", "2"));
    assert_ne!(dealt(&content, &own, "Ana", "1"), dealt(&content, &own, "Ben", "1"));
    let same = Set { task: Task { same_seed: Some(7), ..own.task.clone() }, ..own.clone() };
    assert_eq!(dealt(&content, &same, "Ana", "1"), dealt(&content, &same, "Ben", "2"));
}

#[test]
fn cards_are_spread_over_families_and_stages_before_one_comes_again() {
    let content = content();
    let stages = [Stage::Fill, Stage::Stain, Stage::Cure];
    let set = set(&content, of_stages(12, &stages));
    let dealt = dealt(&content, &set, "Ana", "1");
    let families: BTreeSet<&str> = dealt.iter().map(|(family, _)| family.as_str()).collect();
    assert_eq!(families.len(), 12, "there are more families than cards");
    for stage in stages {
        let of_stage = |id: &&&str| content.family(id).is_some_and(|family| family.stage == stage);
        assert_eq!(families.iter().filter(of_stage).count(), 4, "{stage:?}");
    }
}

#[test]
fn easy_tells_everything_and_hard_asks_for_answers_that_are_made() {
    let content = content();
    let sheet = content.sheet("nitrocellulose").expect("ships");
    let world = World { content: &content, sheet };
    let all = [Stage::Room, Stage::Sand, Stage::Fill, Stage::Clear];
    let kinds = |hard| {
        let set = set(&content, Task { hard, ..of_stages(20, &all) });
        let mut picked = 0;
        for card in cards(&set, "set-1", &world, "Ana", "1") {
            let SetCard::Computed(card) = card else { panic!("no own cards") };
            picked += u32::from(families::find(&card.family).expect("known").kind() == Kind::ChooseOne);
            let told = solve(&card, &world).expect("known").right != Answer::NotEnough;
            assert!(hard != Hard::Easy || told, "{} {}", card.family, card.seed);
        }
        picked
    };
    let (easy, usual, hard) = (kinds(Hard::Easy), kinds(Hard::Usual), kinds(Hard::Made));
    assert!(easy > usual && usual > hard && hard == 0, "{easy} {usual} {hard}");
}

#[test]
fn only_the_tickets_named_are_dealt() {
    let content = content();
    let ticket = content.tickets.iter().find(|ticket| ticket.sheet == "nitrocellulose").expect("one");
    let sheet = content.sheet("nitrocellulose").expect("ships");
    let world = World { content: &content, sheet };
    let task = Task { tickets: vec![ticket.slug.clone()], ..of_stages(40, Stage::ALL) };
    let set = set(&content, task);
    let mut on_ticket = 0;
    for card in cards(&set, "set-1", &world, "Ana", "1") {
        let SetCard::Computed(card) = card else { continue };
        if let Some(fact) = card.facts.0.get("ticket") {
            assert_eq!(serde_json::to_value(fact).expect("JSON"), serde_json::json!(ticket.slug));
            on_ticket += 1;
        }
    }
    assert!(on_ticket > 0);
}

/// A check counts for a competency only where nothing was picked by what is known: see the decision in DEVELOPERS.md.
#[test]
fn a_set_counts_only_where_all_families_are_drawn_from_by_chance() {
    let content = content();
    let check = Task {
        count: 12,
        competencies: vec!["pores-filled".to_owned()],
        purpose: Purpose::Check,
        ..Task::default()
    };
    let counted = |task: Task| -> Vec<String> {
        counts_for(&set(&content, task), &content).iter().map(|one| one.slug.clone()).collect()
    };
    assert_eq!(counted(check.clone()), ["pores-filled"]);
    // Where it counts for nothing, it says why.
    let for_nothing = |task: Task, why: &[CountsNot]| {
        assert_eq!(counts_not(&set(&content, task.clone()), &content), why);
        assert!(counted(task).is_empty());
    };
    assert!(counts_not(&set(&content, check.clone()), &content).is_empty());
    for_nothing(Task { purpose: Purpose::Practise, ..check.clone() }, &[CountsNot::Practice]);
    for_nothing(Task { same_seed: Some(1), ..check.clone() }, &[CountsNot::SameCards]);
    for_nothing(Task { hard: Hard::Easy, ..check.clone() }, &[CountsNot::Easy]);
    let ticket = content.tickets.first().expect("one").slug.clone();
    for_nothing(Task { tickets: vec![ticket], ..check.clone() }, &[CountsNot::Tickets]);
    let mut families: Vec<String> = content.evidence_for("pores-filled").map(|one| one.id.clone()).collect();
    let whole = Task { competencies: Vec::new(), families: families.clone(), ..check.clone() };
    assert_eq!(counted(whole.clone()), ["pores-filled"]);
    families.pop();
    for_nothing(Task { families: families.clone(), ..whole.clone() }, &[CountsNot::Part]);
    let several = [CountsNot::Practice, CountsNot::Easy, CountsNot::Part];
    for_nothing(Task { purpose: Purpose::Practise, hard: Hard::Easy, families, ..whole }, &several);
}

#[test]
fn a_set_that_bears_on_more_competencies_than_one_check_takes_counts_for_none_and_warns() {
    let content = content();
    let asked = content.competencies.iter().filter(|one| content.evidence_for(&one.slug).next().is_some());
    let slugs: Vec<String> = asked.map(|one| one.slug.clone()).collect();
    // So many are named, and others may be drawn from whole besides.
    let of = |named: usize| {
        let competencies = slugs.iter().take(named).cloned().collect();
        set(&content, Task { count: 12, competencies, purpose: Purpose::Check, ..Task::default() })
    };
    let sheet = content.sheet("nitrocellulose").expect("ships");
    let world = World { content: &content, sheet };
    let warns = |set: &Set| warnings(set, &world).iter().any(|one| one.warning == Warning::TooMany);
    assert!(slugs.len() > COMPETENCIES_MOST);
    assert!(!counts_for(&of(1), &content).is_empty() && !warns(&of(1)));
    let many = of(COMPETENCIES_MOST + 1);
    assert!(counts_for(&many, &content).is_empty() && warns(&many));
    assert_eq!(counts_not(&many, &content), [CountsNot::TooMany]);
}

#[test]
fn warnings_say_what_to_look_at_again() {
    let content = content();
    let sheet = content.sheet("nitrocellulose").expect("ships");
    let world = World { content: &content, sheet };
    let of =
        |set: &Set| -> BTreeSet<Warning> { warnings(set, &world).iter().map(|one| one.warning).collect() };
    let one = set(&content, of_stages(4, &[Stage::Fill]));
    assert_eq!(of(&one), BTreeSet::from([Warning::OneStage]));
    let two = set(&content, of_stages(4, &[Stage::Fill, Stage::Stain]));
    assert_eq!(of(&two), BTreeSet::new());
    let with_own = Set { own_cards: vec![own_card()], ..two.clone() };
    assert_eq!(of(&with_own), BTreeSet::from([Warning::FewOptions]));
    let room = set(&content, of_stages(4, &[Stage::Fill, Stage::Room]));
    assert_eq!(of(&room), BTreeSet::from([Warning::SafetyMissing]));
    let safety = |family: &&stepboard::content::FamilyInfo| {
        family.stage == Stage::Room && family.severity == Severity::Safety
    };
    let missing = warnings(&room, &world).into_iter().find(|one| one.warning == Warning::SafetyMissing);
    let all = content.families.iter().filter(safety).count();
    // Two of the four cards are of the room, and families about safety go first.
    assert_eq!(missing.expect("missing").families.len(), all - 2);
    let long = set(&content, of_stages(60, &[Stage::Fill, Stage::Stain]));
    assert_eq!(of(&long), BTreeSet::from([Warning::Long, Warning::FewFamilies]));
}

/// Faces are sprayed at a tablet and not on paper: a set of nothing else has an empty worksheet, and says so.
#[test]
fn a_set_of_faces_alone_warns_that_it_has_no_paper() {
    let content = content();
    let sheet = content.sheet("nitrocellulose").expect("ships");
    let world = World { content: &content, sheet };
    let of = |families: &[&str]| {
        let families = families.iter().map(|one| (*one).to_owned()).collect();
        set(&content, Task { families, ..of_stages(1, &[]) })
    };
    let warns = |set: &Set| warnings(set, &world).iter().any(|one| one.warning == Warning::AllSprayed);
    let paper = |set: &Set| cards_on_paper(set, "id", &world, "code").len();
    let faces = of(&["spray-clear", "spray-sealer"]);
    assert!(warns(&faces) && paper(&faces) == 0);
    let mixed = of(&["spray-clear", "coats-today"]);
    assert!(!warns(&mixed) && paper(&mixed) == 1);
    let with_own = Set { own_cards: vec![own_card()], ..faces };
    assert!(!warns(&with_own) && paper(&with_own) == 1);
}

#[test]
fn a_card_of_the_shops_own_is_graded_by_comparing() {
    let card = own_card();
    card.check().expect("good");
    assert_eq!(card.grade(&Answer::term("option-2")), Mark::Right);
    assert_eq!(card.grade(&Answer::term("option-1")), Mark::Wrong);
    assert_eq!(card.grade(&Answer::NotEnough), Mark::Wrong);
    let all = OwnCard { right: vec![1, 3], ..card };
    let terms = |of: &[&str]| Answer::Terms(of.iter().map(|term| (*term).to_owned()).collect());
    assert_eq!(all.grade(&terms(&["option-3", "option-1"])), Mark::Right);
    assert_eq!(all.grade(&terms(&["option-1"])), Mark::Wrong);
    assert_eq!(all.said(&terms(&["option-3", "option-1"])), ["At the door", "In the booth"]);
}

#[test]
fn a_touch_picks_one_alone_or_picks_and_lets_go() {
    let one = own_card();
    assert_eq!((one.pick(&[], 1), one.pick(&[1], 2), one.pick(&[2], 2)), (vec![1], vec![2], vec![2]));
    let all = OwnCard { right: vec![1, 3], ..own_card() };
    assert_eq!((all.pick(&[1], 3), all.pick(&[1, 3], 1), all.pick(&[3], 3)), (vec![1, 3], vec![3], vec![]));
}

#[test]
fn a_set_opens_closes_and_is_withdrawn_by_who_made_it() {
    let content = content();
    let day = |day| LocalDate::new(2027, 3, day);
    let set = Set { from: day(10), until: day(12), ..set(&content, of_stages(4, &[Stage::Fill])) };
    assert_eq!(Validity::of(&set, false, day(9)), Validity::NotYet);
    assert_eq!(Validity::of(&set, false, day(10)), Validity::Open);
    assert_eq!(Validity::of(&set, false, day(12)), Validity::Open);
    assert_eq!(Validity::of(&set, false, day(13)), Validity::Over);
    assert_eq!(Validity::of(&set, true, day(11)), Validity::Withdrawn);
    let withdrawal = Withdrawal {
        set: set.id(),
        by: set.by.clone(),
        at: "2027-03-11T08:00:00Z".to_owned(),
        reason: String::new(),
    };
    let text = withdrawal.write().expect("writes");
    let read = Withdrawal::read(text.as_bytes()).expect("reads");
    assert!(read.withdraws(&set.id(), &set));
    assert!(!Withdrawal { by: "Ben 7".to_owned(), ..read.clone() }.withdraws(&set.id(), &set));
    assert!(!read.withdraws("set-0", &set));
}

#[test]
fn a_check_that_asks_all_the_same_keeps_its_answers_back_until_it_is_handed_in_or_a_key_is_open() {
    let content = content();
    let asks = |purpose, same_seed, own_cards: Vec<OwnCard>| Set {
        own_cards,
        task: Task { purpose, same_seed, ..of_stages(4, &[Stage::Fill]) },
        ..set(&content, Task::default())
    };
    let same = asks(Purpose::Check, Some(7), Vec::new());
    let own = asks(Purpose::Check, None, vec![own_card()]);
    let others = asks(Purpose::Check, None, Vec::new());
    let practice = asks(Purpose::Practise, Some(7), vec![own_card()]);
    // Whoever closes it is told the answers to the cards of everybody.
    assert!(same.is_done_once() && ![&own, &others, &practice].iter().any(|set| set.is_done_once()));
    for nth in 0..8 {
        let asker = Asker { taken: nth & 1 == 1, handed_in: nth & 2 == 2, signs: nth & 4 == 4 };
        let back = asker == Asker { taken: true, handed_in: false, signs: false };
        assert_eq!((same.keeps_back(asker), own.keeps_back(asker)), (back, back), "{asker:?}");
        // Cards of a seed of their own, or told at once, give nothing away.
        assert!(!others.keeps_back(asker) && !practice.keeps_back(asker), "{asker:?}");
    }
}

#[test]
fn ready_made_sets_deal_what_they_ask_for_on_their_sheets() {
    let content = content();
    assert!(content.sets.len() >= 3);
    for ships in &content.sets {
        let set = Set::ready(&content, ships).expect("its sheet ships");
        assert_eq!(dealt(&content, &set, "Ana", "1").len(), usize::try_from(ships.task.count).expect("few"));
        assert_ne!(set.title, ships.slug, "it has a title");
    }
    let mask = content.sets.iter().find(|one| one.slug == "mask-and-booth").expect("ships");
    assert_eq!(mask.task.pass, Some(PassRule { right: 10, safety: true }));
    let set = Set::ready(&content, mask).expect("its sheet ships");
    let counts: Vec<&str> = counts_for(&set, &content).iter().map(|one| one.slug.as_str()).collect();
    assert_eq!(counts, ["mask-worn", "booth-run"]);
}

/// 5 of 6 cards are 83 in a hundred; of 7 the nearest is 6 (86), of 12 it is 10 (83).
#[test]
fn a_pass_rule_wants_the_same_share_of_other_cards() {
    let rule = |right| PassRule { right, safety: true };
    for (right, before, after, then) in
        [(5, 6, 7, 6), (6, 7, 6, 5), (5, 6, 12, 10), (6, 6, 9, 9), (1, 10, 3, 1), (1, 1, 0, 1)]
    {
        assert_eq!(rule(right).of_cards(before, after), rule(then), "{right} of {before}, then of {after}");
    }
    assert_eq!(rule(u32::MAX).of_cards(1, u32::MAX), rule(u32::MAX));
}
