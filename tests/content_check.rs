//! What the content check refuses: each mistake with its file, its line and what is allowed.

use std::path::Path;
use stepboard::card::deal;
use stepboard::content::load::{self, FileKind, Problem, Source};
use stepboard::content::{Content, World};

fn shipped() -> Vec<Source> {
    load::sources(&Path::new(env!("CARGO_MANIFEST_DIR")).join("content")).expect("content can be read")
}

fn source(path: &str, text: &str) -> Source {
    Source { path: path.into(), text: text.to_owned() }
}

#[track_caller]
fn edited(path: &str, from: &str, to: &str) -> Vec<Problem> {
    let mut sources = shipped();
    let file = sources.iter_mut().find(|source| source.path == Path::new(path)).expect("the file ships");
    assert!(file.text.contains(from), "`{from}` stands in {path}");
    file.text = file.text.replacen(from, to, 1);
    load::load(&sources).expect_err("the mistake must be found")
}

/// One mistake: the file, what stands there, what is written instead, what is said.
#[track_caller]
fn refused(path: &str, from: &str, to: &str, says: &[&str]) {
    let sources = shipped();
    let file = sources.iter().find(|source| source.path == Path::new(path)).expect("the file ships");
    let line = 1 + file.text[..file.text.find(from).expect("it stands there")].matches('\n').count();
    // A replacement may begin with lines that stay as they are.
    let line = line + from.lines().zip(to.lines()).take_while(|(a, b)| a == b).count();
    let problems = edited(path, from, to);
    let found = problems.iter().find(|p| p.file == Path::new(path) && p.line == line);
    let found = found.unwrap_or_else(|| panic!("no problem at {path}:{line} in {problems:?}"));
    for part in says {
        assert!(found.message.contains(part), "`{part}` is not in `{found}`");
    }
}

#[track_caller]
fn with(extra: Source, says: &str) {
    let path = extra.path.clone();
    let mut sources = shipped();
    sources.retain(|source| source.path != path);
    sources.push(extra);
    let problems = load::load(&sources).expect_err("the file must be refused");
    let found = problems.iter().find(|p| p.file == path);
    let found = found.unwrap_or_else(|| panic!("{} is not named in {problems:?}", path.display()));
    assert!(found.message.contains(says), "`{says}` is not in `{found}`");
}

#[test]
fn files_that_do_not_belong_are_refused() {
    for path in
        ["notes.md", "wood.toml", "woods/one.toml", "facts/air.toml.orig", "text/en.toml", "sets/a/b.toml"]
    {
        with(source(path, "a = 1"), "no content belongs here; allowed: settings.toml, woods.toml");
    }
}

#[test]
fn empty_files_and_lists_without_entries_are_refused_and_bring_nothing_else() {
    with(source("woods.toml", " \n"), "the file is empty");
    with(source("woods.toml", "# none\n"), "at least one [[wood]] entry");
    with(source("facts/air.toml", ""), "the file is empty");
    with(source("text/en/app.toml", ""), "the file is empty");
    with(source("sheets/3-shellac.toml", ""), "the file is empty");
    for (path, text) in
        [("woods.toml", ""), ("sheets/3-shellac.toml", "slug ="), ("facts/air.toml", "[[fact]]\nkey = 1")]
    {
        let mut sources = shipped();
        sources.retain(|source| source.path != Path::new(path));
        sources.push(source(path, text));
        let problems = load::load(&sources).expect_err("refused");
        assert_eq!(problems.len(), 1, "only the file itself: {problems:?}");
    }
}

#[test]
fn what_is_missing_is_named_by_file() {
    for gone in
        ["woods.toml", "settings.toml", "tickets.toml", "sheets", "sets", "families", "text/en/app.toml"]
    {
        let mut sources = shipped();
        sources.retain(|source| !source.path.starts_with(gone));
        let problems = load::load(&sources).expect_err("refused");
        assert_eq!(problems.len(), 1, "{gone}: {problems:?}");
        assert_eq!(problems[0].file, Path::new(gone));
    }
    let problems = edited("settings.toml", "key = \"gap-spray\"", "key = \"gap-retarder\"");
    assert!(problems.iter().all(|p| p.file == Path::new("settings.toml")), "{problems:?}");
    assert!(problems.iter().any(|p| p.message == "setting `gap-spray` is missing"), "{problems:?}");
}

#[test]
fn woods_are_held_to_their_ranges() {
    let file = "woods.toml";
    let radial = shipped()
        .into_iter()
        .find(|source| source.path == Path::new(file))
        .and_then(|source| source.text.lines().find(|line| line.starts_with("movement")).map(str::to_owned))
        .expect("a wood with coefficients");
    for value in ["0.0", "0.01", "-0.001", "nan", "inf"] {
        let wrong = format!("movement = {{ radial = {value}, tangential = 0.002 }}");
        refused(file, &radial, &wrong, &["`radial`", "over 0 and under 0.01"]);
    }
    refused(file, "vessel_um = 160.0", "vessel_um = 9000.0", &["9000", "up to 5000"]);
    refused(file, "source = \"CW;OF;PW;HOA\"", "source = \" \"", &["a source is needed"]);
    refused(file, "slug = \"mahogany\"", "slug = \"Mahogany 1\"", &["`Mahogany 1`", "small letters"]);
}

#[test]
fn every_list_spells_its_names_alike_and_has_each_once() {
    refused("sheets/3-shellac.toml", "slug = \"shellac\"", "slug = \"Shellac\"", &["small letters"]);
    refused("sheets/3-shellac.toml", "slug = \"shellac\"", "slug = \"water-borne\"", &["stands twice"]);
    refused("sets/filling.toml", "slug = \"filling\"", "slug = \"fil_ling\"", &["small letters"]);
    refused("facts/air.toml", "key = \"rh\"", "key = \"r-h\"", &["small letters", "`_`"]);
    refused("cautions.toml", "id = \"c01\"", "id = \"C01\"", &["small letters"]);
    let dust = "gives_away = [\"clean-off\", \"dust-away\"]";
    refused(
        "cautions.toml",
        dust,
        "gives_away = [\"dust-a-way\"]",
        &["`dust-a-way` is no family", "dust-away"],
    );
    refused(
        "cautions.toml",
        dust,
        "gives_away = [\"hardener-guards\"]",
        &["`hardener-guards` do not show `c03`"],
    );
    refused(
        "cautions.toml",
        dust,
        "gives_away = [\"dust-away\", \"dust-away\"]",
        &["`dust-away` stands twice"],
    );
    refused("tickets.toml", "{ slug = \"top\"", "{ slug = \"Top\"", &["small letters"]);
    refused("tickets.toml", "number = 417", "number = 411", &["two tickets"]);
}

#[test]
fn tickets_are_held_to_their_ranges_part_by_part() {
    refused("tickets.toml", "clear_coats = 6", "clear_coats = 0", &["1 to 14"]);
    refused("tickets.toml", "days = 45", "days = 367", &["1 to 366"]);
    let back = "{ slug = \"back\", wood = \"mahogany\", cut = \"flat\", width_mm = 185.0 }";
    refused("tickets.toml", back, &back.replace("185.0", "0.0"), &["over 0 and up to 10000"]);
    refused("tickets.toml", back, &back.replace("mahogany", "mahogony"), &["allowed: mahogany, ", ", …"]);
}

#[test]
fn a_sheet_that_contradicts_itself_is_refused() {
    let content = Content::embedded().expect("checked");
    let wrong = |values: &str, line: usize, says: &str| {
        let text = format!("slug = \"mine\"\ncoating = \"shellac\"\n[values]\n{values}");
        let problems = load::sheet(&source("mine.toml", &text), &content).expect_err("refused");
        let found = problems.iter().find(|p| p.line == line && p.message.contains(says));
        assert!(found.is_some(), "{values}: no `{says}` at line {line} in {problems:?}");
    };
    wrong("recoat-closes = 24\nrecoat-opens-again = 8", 5, "over 24");
    wrong("filler-wipe-from = 20", 4, "filler-wipe-to");
    wrong("clear-coats-from = 9", 4, "clear-coats-to");
    wrong("gap-retarder = 13", 4, "gap-spray");
    wrong("body-distance-from = 254\nbody-distance-to = 210", 5, "at least 254");
    wrong("moisture-from = 8\nmoisture-to = 7", 5, "at least 8");
    wrong("moisture-to = 11\nmoisture-reject = 10", 5, "at least 11");
    wrong("clear-wet = 100\nwet-warn = 90", 5, "at least 100");
    wrong("clear-coats-from = 3.5", 4, "a whole number");
    wrong("stain-first = 0.5", 4, "a whole number");
    wrong("gap-sprey = 12", 4, "allowed: gap-spray, ");
    let same = "slug = \"shellac\"\ncoating = \"shellac\"\n";
    let problems = load::sheet(&source("mine.toml", same), &content).expect_err("other values, same slug");
    assert!(problems[0].line == 1 && problems[0].message.contains("`shellac`"), "{problems:?}");
    let open = "slug = \"mine\"\ncoating = \"shellac\"\n[values]\nrecoat-closes = 24\n";
    assert!(load::sheet(&source("mine.toml", open), &content).is_ok(), "a window that closes for good");
}

#[test]
fn terms_need_words_and_wrong_names_are_told_what_is_near() {
    refused(
        "facts/air.toml",
        "\"fast-thinner\", \"with",
        "\"fastest-thinner\", \"with",
        &["`term.fastest-thinner`"],
    );
    refused(
        "sets/filling.toml",
        "stages = [\"fill\"]",
        "families = [\"wants-filer\"]",
        &["allowed: wants-filler, "],
    );
    refused("families/fill.toml", "fact = \"look\"", "fact = \"looks\"", &["allowed: look, "]);
}

#[test]
fn a_file_is_checked_as_what_its_own_keys_say() {
    let content = Content::embedded().expect("checked");
    let sources = shipped();
    for one in &sources {
        let text = one.path.starts_with("text");
        let schema = one.path.starts_with("schema");
        let checked = load::file(one, &content, &sources);
        match checked {
            Ok(kind) => {
                assert!(!text && !schema, "{} is a {kind:?}", one.path.display());
                assert_eq!(kind == FileKind::Set, one.path.starts_with("sets"), "{}", one.path.display());
                assert_eq!(kind == FileKind::Sheet, one.path.starts_with("sheets"), "{}", one.path.display());
            }
            Err(problems) => assert!(text || schema, "{problems:?}"),
        }
    }
    let woods = sources.iter().find(|source| source.path == Path::new("woods.toml")).expect("woods");
    let mine = source("shop/woods.toml", &woods.text.replacen("slug = \"koa\"", "slug = \"koaa\"", 1));
    let problems = load::file(&mine, &content, &sources).expect_err("a ticket names koa");
    assert!(problems.iter().any(|p| p.file == Path::new("content/tickets.toml")), "{problems:?}");
    let mine = source("shop/woods.toml", &woods.text.replacen("vessel_um = 160.0", "vessel_um = 0.0", 1));
    let problems = load::file(&mine, &content, &sources).expect_err("refused");
    assert!(problems.iter().all(|p| p.file == mine.path && p.line > 0), "{problems:?}");
    let problems = load::file(&source("x.toml", "a = 1"), &content, &sources).expect_err("unknown");
    assert!(problems[0].message.contains("coating") && problems[0].message.contains("wood"), "{problems:?}");
    assert!(load::file(&source("x.toml", "a = "), &content, &sources).is_err_and(|p| p[0].line == 1));
}

#[test]
fn a_wood_that_cannot_be_drawn_is_refused() {
    let file = "looks.toml";
    refused(file, "ring = 3.8", "ring = 0.0", &["white-ash", "`ring`", "0.05 to 300"]);
}

#[test]
fn a_competency_that_a_family_cannot_give_evidence_for_is_refused() {
    let from = "competencies = [\"mix-measured\"]";
    let file = "families/mix.toml";
    refused(file, from, "competencies = [\"mix-measure\"]", &["`mix-measure`", "allowed: mix-measured,"]);
    refused(file, from, "competencies = [\"mix-measured\", \"mix-measured\"]", &["stands twice"]);
    let four = "competencies = [\"mix-measured\", \"two-part\", \"stain-even\", \"plan-kept\"]";
    refused(file, from, four, &["one to 3", "not 4"]);
    let file = "competencies.toml";
    refused(file, "profile = \"safety\"", "profile = \"safe\"", &["`safe`", "safety", "ordinary"]);
    refused(file, "slug = \"mask-worn\"", "slug = \"room-safe\"", &["`room-safe` stands twice"]);
}

#[test]
fn a_competency_that_cannot_be_shown_is_refused() {
    let file = "competencies.toml";
    refused(file, "band = \"room\"", "band = \"rooms\"", &["`rooms`", "room", "sand"]);
    refused(
        file,
        "needs = [\"room-safe\"]",
        "needs = [\"room-save\"]",
        &["`room-save`", "allowed: room-safe,"],
    );
    let twice = "needs = [\"room-safe\", \"room-safe\"]";
    refused(file, "needs = [\"room-safe\"]", twice, &["`room-safe` stands twice"]);
    refused(file, "needs = [\"eye-on\"]", "needs = [\"put-right\"]", &["`fault-found` comes before itself"]);
    refused(
        file,
        "needs_knowledge = [\"wood-ready\"]",
        "needs_knowledge = [\"levelled\"]",
        &["comes before itself"],
    );
    refused(file, "\"fit-test\"", "\"fit-tests\"", &["`fit-tests`", "medical-clearance"]);
    refused(file, "days = 2", "days = 3", &["`room-safe`", "3", "1 to 2 separate days"]);
    refused(file, "demonstrations = 2", "demonstrations = 0", &["1 to 10 demonstrations"]);
    refused(file, "expires_months = 12", "expires_months = 25", &["25", "1 to 24 months"]);
    refused(file, "id = \"room-safe-2\"", "id = \"room-safe-1\"", &["`room-safe-1` stands twice"]);
    refused(file, "id = \"room-safe-2\"", "id = \"mask-worn-9\"", &["`mask-worn-9`", "room-safe-1, -2"]);
    refused(
        file,
        "id = \"room-safe-2\"",
        "id = \"room-safe-9\"",
        &["text `criterion.room-safe-9` is missing"],
    );
    let problems = edited("text/en/competencies.toml", "[may]\nroom-safe", "[may]\nroom-save");
    assert!(
        problems.iter().any(|one| one.message.contains("text `may.room-safe` is missing")),
        "{problems:?}"
    );
}

#[test]
fn a_solvent_with_a_wrong_figure_is_refused() {
    refused("solvents.toml", "gravity = 0.791", "gravity = 79.1", &["79.1", "0.5 to 2"]);
    refused("solvents.toml", "pel = 1000.0, rel = 250.0", "pel = 0.0, rel = 250.0", &["a limit is over 0"]);
    refused("solvents.toml", "limits = { rel_mg = 350.0", "limits = { rel_mg = 0.0", &["a limit is over 0"]);
    refused("solvents.toml", "slug = \"acetone\"", "slug = \"litres\"", &["`litres` is a fact"]);
    refused("solvents.toml", "slug = \"toluene\"", "slug = \"acetone\"", &["`acetone` stands twice"]);
}

#[test]
fn a_new_solvent_is_a_key_and_a_term_without_any_code() {
    let mut sources = shipped();
    let file = |sources: &mut Vec<Source>, path: &str, more: &str| {
        let file = sources.iter_mut().find(|source| source.path == Path::new(path)).expect("the file ships");
        file.text.push_str(more);
    };
    let entry = "\n[[solvent]]\nslug = \"testol\"\ncas = \"0-0-0\"\nlel = [{ percent = 1.0, source = \"-\", provenance = \"practice\" }]\n\
                 limits_provenance = \"memory\"\nsource = \"-\"\n";
    file(&mut sources, "solvents.toml", entry);
    file(&mut sources, "text/en/solvents.toml", "testol = \"Testol\"\n");
    let content = load::load(&sources).expect("a new solvent needs nothing else");
    assert!(content.solvent("testol").is_some() && content.fact("testol").is_some());
    assert!(content.fact("solvent").is_some_and(|fact| fact.slugs(&content).contains(&"testol")));
}

#[test]
fn a_new_look_alike_is_asked_about_without_any_code() {
    let mut sources = shipped();
    let file = sources
        .iter_mut()
        .find(|source| source.path == Path::new("lookalikes.toml"))
        .expect("the file ships");
    let told = "\n[[pair]]\nid = \"la-new\"\na = \"blush\"\nb = \"dust-nib\"\nprobes = [\"mark\"]\n\
                provenance = \"practice\"\nsource = \"-\"\n";
    file.text.push_str(told);
    let asks = |content: &Content| {
        let world = World { content, sheet: &content.sheets[0] };
        let about = |seed| {
            let card = deal(&world, "look-alike-probe", seed).expect("it deals");
            let mut pair = [card.facts.slug("one_fault"), card.facts.slug("other_fault")]
                .map(|slug| slug.expect("it is told").to_owned());
            pair.sort_unstable();
            pair
        };
        (0..400).any(|seed| about(seed) == ["blush", "dust-nib"])
    };
    assert!(!asks(&load::load(&shipped()).expect("it ships")), "the pair is new");
    assert!(asks(&load::load(&sources).expect("a new pair needs nothing else")));
}

#[test]
fn spray_tasks_are_held_to_what_there_is() {
    let task = "sprays/1-sealer-panel.toml";
    refused(task, "difficulty = 1", "difficulty = 4", &["`difficulty` is 4", "1 to 3"]);
    refused(task, "sheet = \"nitrocellulose\"", "sheet = \"nitro\"", &["no shop sheet", "nitrocellulose"]);
    refused(task, "layers = 1", "layers = 7", &["7 layers", "1 to 6"]);
    refused(task, "from = 0.5", "from = 0.95", &["must rise"]);
    refused(task, "fan_mm = 200.0", "fan_mm = 2.0", &["2 is too little", "5 and more"]);
    refused(task, "[200.0, 0.0]", "[2000.0, 0.0]", &["[2000, 0] lies outside", "-1000 to 1000 mm"]);
    // Told where the second of the two stands.
    refused(
        "sprays/2-clear-panel.toml",
        "slug = \"clear-panel\"",
        "slug = \"sealer-panel\"",
        &["stands twice"],
    );
    told(
        task,
        "[film]\nlayers = 1\ncrossing = false\nfrom = 0.5\nto = 0.9\n",
        "",
        &["one of [film] and [shade]"],
    );
    let shade = "sprays/6-shaded-edge.toml";
    told(shade, "mirrored = true", "mirrored = false", &["`mirrored` outline"]);
    refused(shade, "depth = 1.5", "depth = 0.0", &["`depth` is 0", "8 wet coats"]);
    refused(shade, "coat_absorbance = 0.2", "coat_absorbance = 0.0", &["over 0"]);
    told(shade, "[40.0, 4.0]", "[-40.0, 4.0]", &["x is 0 or more"]);
}

/// One mistake that is told where what it belongs to begins.
#[track_caller]
fn told(path: &str, from: &str, to: &str, says: &[&str]) {
    let problems = edited(path, from, to);
    let all = |one: &&Problem| says.iter().all(|part| one.message.contains(part));
    let found = problems.iter().find(|one| one.file == Path::new(path) && all(one));
    assert!(found.is_some(), "{says:?} is not in {problems:?}");
}

#[test]
fn walks_tools_and_mends_are_held_to_what_there_is() {
    let walk = "walks/shaded-lute.toml";
    refused(walk, "difficulty = 2", "difficulty = 4", &["`difficulty` is 4", "1 to 3"]);
    refused(walk, "number = 502", "number = 411", &["content/tickets.toml"]);
    refused(walk, "number = 502", "number = 503", &["two tickets"]);
    refused(walk, "sheet = \"nitrocellulose\"", "sheet = \"nitro\"", &["no shop sheet", "nitrocellulose"]);
    refused(walk, "wood = \"mahogany\"", "wood = \"mahogony\"", &["allowed: mahogany"]);
    refused(walk, "days = 30", "days = 0", &["1 to 366"]);
    told(walk, "slug = \"sides\"\narea", "slug = \"side\"\narea", &["top, back, sides, in this order"]);
    refused(walk, "area_m2 = 0.14", "area_m2 = 0.0", &["over 0"]);
    refused(
        walk,
        "outline = \"lute\"",
        "outline = \"lute\"\nstain = \"soluble-dye\"",
        &["leave `stain` out"],
    );
    refused(walk, "hour = 13.0", "hour = 24.0", &["0 to under 24"]);
    refused(walk, "day = 5", "day = 2", &["rise in time"]);
    told("walks/rush-box.toml", "stain = \"soluble-dye\"\n", "", &["names its `stain`", "water-dye"]);
    let hand = "at_hand.toml";
    refused(hand, "start = 180.0", "start = 181.0", &["a start among its values"]);
    told(hand, "\"pack-work\"", "\"polish-wax\"", &["`pack-work` is nowhere at hand"]);
    told(hand, "slug = \"vacuumed\"", "slug = \"wiped-across\"", &["stands twice"]);
    let faults = "faults.toml";
    refused(
        faults,
        "rework = [{ do = \"scuff-film\" }]",
        "rework = []",
        &["raised-grain", "at least one step"],
    );
    refused(
        faults,
        "rework = [{ do = \"scuff-film\" }]",
        "rework = [\"scuf\"]",
        &["strip", "again", "recoat"],
    );
}
