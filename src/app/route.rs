//! Addresses of the screens, behind the `#` so that they work from any folder and without a network.

use crate::exchange::link::TAKE;
use crate::rules::term::Term;
use crate::terms;
use gloo::utils::window;
use web_sys::Event;

/// Told when the address changes.
pub(super) const CHANGED: &str = "hashchange";

/// Stands before the slug of a competency in an address of the record.
const COMPETENCY: &str = "competency/";
/// Ends the address of the screen on which something is signed.
const SIGN: &str = "/sign";
/// Ends the address of a set's worksheets, and of the screen on which they are typed in.
const PAPER: &str = "/paper";
const ENTER: &str = "/paper/enter";
/// Stands before the slug of a walk that is not begun.
const NEW_WALK: &str = "new";
/// The same where its ticket is handed out, and before the id of a walk that is handed out.
const GIVE_WALK: &str = "give";
const WALK_OUT: &str = "out";
/// Begins the name of every sign-off.
pub(super) const CREDENTIAL: &str = "urn:uuid:";

#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Route {
    Home,
    Band {
        stage: String,
    },
    Practise,
    Bench,
    Calculation {
        name: String,
    },
    Panel,
    /// Words of the trade in several languages.
    Words,
    /// Checks: what is open, and what may be begun; competencies by their slugs are chosen already.
    Check,
    CheckFor {
        competency: String,
    },
    Sitting {
        attempt: String,
    },
    SittingSheet {
        attempt: String,
    },
    CheckAnswers {
        attempt: String,
    },
    CheckAnswer {
        attempt: String,
        sequence: u64,
    },
    Record,
    Competency {
        slug: String,
    },
    Entry {
        sequence: u64,
    },
    /// The shop sheets of this tablet.
    Sheet,
    /// One of them, by its slug.
    SheetOf {
        slug: String,
    },
    /// Two of them.
    SheetBeside {
        slug: String,
        other: String,
    },
    /// The one that is being edited.
    SheetEdit,
    /// What changes with it.
    SheetChanges,
    /// Today's air.
    Air,
    CardSheet,
    /// Who works on this tablet, and who may sign.
    People,
    /// One apprentice, by shop number.
    Person {
        number: String,
    },
    /// What the shop asks for before somebody is signed off.
    Asked,
    /// The same of one competency.
    AskedOf {
        competency: String,
    },
    /// The apprentices as assessors see them.
    Assess,
    /// One of them.
    AssessPerson {
        number: String,
    },
    /// An observation of one of them at a competency.
    Observe {
        number: String,
        slug: String,
    },
    Menu,
    /// The shop's folder.
    Folder,
    /// Files for other programs.
    Programs,
    /// Everybody, from the results of many tablets.
    Crew,
    /// One of them, by shop number or name.
    CrewPerson {
        key: String,
    },
    /// One answer of somebody, as the card that was seen.
    CrewAnswer {
        device: String,
        sequence: u64,
    },
    /// What the answers say of the cards.
    CrewCards,
    /// Signing somebody off for a competency.
    Sign {
        number: String,
        slug: String,
    },
    /// The sign-off book.
    Book,
    /// A sign-off in it, by its name without what all names begin with.
    SignOff {
        id: String,
    },
    SignOffPaper {
        id: String,
        paper: Paper,
    },
    /// A file of ours that is picked, or a link to one that is pasted.
    Open,
    /// A file of ours that stands whole in the address.
    Take {
        code: String,
    },
    /// A scenario set as worksheets and keys.
    SetPaper {
        id: String,
    },
    /// The answers of its worksheets, typed in.
    PaperEnter {
        id: String,
    },
    /// The scenario sets of this tablet.
    Sets,
    /// Another set is built.
    NewSet,
    /// One of them.
    SetOf {
        id: String,
    },
    /// Its cards, one after another.
    TakeSet {
        id: String,
    },
    TakeSetSheet {
        id: String,
    },
    /// One answer to it.
    SetAnswer {
        id: String,
        sequence: u64,
    },
    /// Jobs to be walked.
    Walks,
    /// One of them before it is begun.
    WalkNew {
        slug: String,
    },
    /// A job ticket of one is handed out.
    WalkGive {
        slug: String,
    },
    /// One that is walked, or was, is handed out.
    WalkOut {
        id: String,
    },
    /// One that is walked, or was.
    WalkOf {
        id: String,
    },
    /// Tasks of spraying a panel.
    Sprays,
    /// One of them, by its slug.
    SprayOf {
        task: String,
    },
    Verify,
    VerifyPaper {
        paper: Paper,
    },
    VerifyAbout,
}

terms! {
    /// What of a sign-off is printed.
    Paper {
        /// One page that says what the holder may do, until when, and by whom.
        Certificate = "certificate",
        /// The criteria one by one, with the evidence.
        Checklist = "checklist",
    }
}

/// A name as it stands in an address (RFC 3986): it may be anything that somebody typed.
fn encoded(name: &str) -> String {
    js_sys::encode_uri_component(name).into()
}

/// The name of an address; what is no such text stands as it is.
fn decoded(text: &str) -> String {
    js_sys::decode_uri_component(text).map_or_else(|_| text.to_owned(), String::from)
}

impl Route {
    /// The screen that an address asks for; home where it asks for none that there is.
    fn read(address: &str) -> Self {
        let path = address.trim_start_matches(['#', '/']);
        match path.split_once('/').unwrap_or((path, "")) {
            ("band", stage) => Self::Band { stage: stage.to_owned() },
            ("practise", "") => Self::Practise,
            ("practise", "sheet") => Self::CardSheet,
            ("sheet", "") => Self::Sheet,
            ("sheet", "edit") => Self::SheetEdit,
            ("sheet", "changes") => Self::SheetChanges,
            ("sheet", rest) => Self::read_sheet(rest),
            ("air", "") => Self::Air,
            ("bench", "") => Self::Bench,
            ("bench", name) => Self::Calculation { name: name.to_owned() },
            ("panel", "") => Self::Panel,
            ("words", "") => Self::Words,
            ("check", "") => Self::Check,
            ("check", rest) => Self::read_check(rest),
            ("record", "") => Self::Record,
            ("record", rest) if rest.starts_with(COMPETENCY) => {
                Self::Competency { slug: rest.trim_start_matches(COMPETENCY).to_owned() }
            }
            ("record", sequence) => sequence.parse().map_or(Self::Home, |sequence| Self::Entry { sequence }),
            ("people", "") => Self::People,
            ("people", number) => Self::Person { number: number.to_owned() },
            ("asked", "") => Self::Asked,
            ("asked", competency) => Self::AskedOf { competency: competency.to_owned() },
            ("assess", "") => Self::Assess,
            ("assess", rest) if rest.ends_with(SIGN) => Self::signing(rest),
            ("assess", rest) => Self::assessed(rest),
            ("menu", "") => Self::Menu,
            ("folder", "") => Self::Folder,
            ("programs", "") => Self::Programs,
            ("crew", "") => Self::Crew,
            ("crew", "cards") => Self::CrewCards,
            ("crew", rest) => Self::in_crew(rest),
            ("book", "") => Self::Book,
            ("book", rest) => Self::in_book(rest),
            ("open", "") => Self::Open,
            ("take", code) => Self::Take { code: code.to_owned() },
            ("sets", rest) if rest.ends_with(PAPER) => {
                Self::SetPaper { id: rest.trim_end_matches(PAPER).to_owned() }
            }
            ("sets", rest) if rest.ends_with(ENTER) => {
                Self::PaperEnter { id: rest.trim_end_matches(ENTER).to_owned() }
            }
            ("sets", "") => Self::Sets,
            ("sets", "new") => Self::NewSet,
            ("sets", rest) => Self::of_set(rest),
            ("walk", "") => Self::Walks,
            ("walk", rest) => Self::of_walk(rest),
            ("spray", "") => Self::Sprays,
            ("spray", task) => Self::SprayOf { task: task.to_owned() },
            ("verify", "") => Self::Verify,
            ("verify", "about") => Self::VerifyAbout,
            ("verify", paper) => {
                Paper::from_slug(paper).map_or(Self::Verify, |paper| Self::VerifyPaper { paper })
            }
            _ => Self::Home,
        }
    }

    /// A shop sheet, or two beside each other.
    fn read_sheet(rest: &str) -> Self {
        match rest.split_once('/') {
            Some((slug, other)) => Self::SheetBeside { slug: slug.to_owned(), other: other.to_owned() },
            None => Self::SheetOf { slug: rest.to_owned() },
        }
    }

    /// Somebody of the crew, or an answer of theirs.
    fn in_crew(rest: &str) -> Self {
        match rest.split('/').collect::<Vec<_>>().as_slice() {
            ["person", key] => Self::CrewPerson { key: decoded(key) },
            ["answer", device, sequence] => {
                let device = decoded(device);
                sequence.parse().map_or(Self::Crew, |sequence| Self::CrewAnswer { device, sequence })
            }
            _ => Self::Crew,
        }
    }

    /// What is assessed: an apprentice, and at which competency.
    fn assessed(rest: &str) -> Self {
        match rest.split_once('/') {
            Some((number, slug)) => Self::Observe { number: number.to_owned(), slug: slug.to_owned() },
            None => Self::AssessPerson { number: rest.to_owned() },
        }
    }

    /// What follows `check/` in an address: the name of a check and what of it is looked at, or what is to be checked.
    fn read_check(rest: &str) -> Self {
        let (attempt, of_it) = rest.split_once('/').unwrap_or((rest, ""));
        let attempt = attempt.to_owned();
        match (attempt.as_str(), of_it.split_once('/').unwrap_or((of_it, ""))) {
            ("for", (competency, "")) => Self::CheckFor { competency: competency.to_owned() },
            (_, ("", "")) => Self::Sitting { attempt },
            (_, ("sheet", "")) => Self::SittingSheet { attempt },
            (_, ("answers", "")) => Self::CheckAnswers { attempt },
            (_, ("answers", sequence)) => {
                sequence.parse().map_or(Self::Check, |sequence| Self::CheckAnswer { attempt, sequence })
            }
            _ => Self::Check,
        }
    }

    /// What follows `sets/` in an address: a set and what of it is looked at.
    fn of_set(rest: &str) -> Self {
        let (id, of_it) = rest.split_once('/').unwrap_or((rest, ""));
        let id = id.to_owned();
        match of_it.split_once('/').unwrap_or((of_it, "")) {
            ("", "") => Self::SetOf { id },
            ("take", "") => Self::TakeSet { id },
            ("sheet", "") => Self::TakeSetSheet { id },
            ("answers", sequence) => {
                sequence.parse().map_or(Self::Sets, |sequence| Self::SetAnswer { id, sequence })
            }
            _ => Self::Sets,
        }
    }

    /// What follows `walk/` in an address: a walk that is not begun or one of this tablet, and what is done with it.
    fn of_walk(rest: &str) -> Self {
        match rest.split_once('/') {
            Some((NEW_WALK, slug)) => Self::WalkNew { slug: slug.to_owned() },
            Some((GIVE_WALK, slug)) => Self::WalkGive { slug: slug.to_owned() },
            Some((WALK_OUT, id)) => Self::WalkOut { id: id.to_owned() },
            _ => Self::WalkOf { id: rest.to_owned() },
        }
    }

    /// A competency of somebody that is to be signed.
    fn signing(rest: &str) -> Self {
        let named = rest.strip_suffix(SIGN).and_then(|rest| rest.split_once('/'));
        named.map_or(Self::Home, |(number, slug)| Self::Sign {
            number: number.to_owned(),
            slug: slug.to_owned(),
        })
    }

    /// A sign-off of the book, or a paper of it.
    fn in_book(rest: &str) -> Self {
        let (id, paper) = rest.split_once('/').unwrap_or((rest, ""));
        let id = id.to_owned();
        Paper::from_slug(paper)
            .map_or(Self::SignOff { id: id.clone() }, |paper| Self::SignOffPaper { id, paper })
    }

    /// The screen of a sign-off by its whole name.
    pub(super) fn sign_off(name: &str) -> Self {
        Self::SignOff { id: name.strip_prefix(CREDENTIAL).unwrap_or(name).to_owned() }
    }

    /// The screen that the address of the page asks for.
    pub(super) fn now() -> Self {
        Self::read(&window().location().hash().unwrap_or_default())
    }

    /// What a link to the screen holds.
    pub(super) fn address(&self) -> String {
        match self {
            Self::Home => "#/".to_owned(),
            Self::Band { stage } => format!("#/band/{stage}"),
            Self::Practise => "#/practise".to_owned(),
            Self::CardSheet => "#/practise/sheet".to_owned(),
            Self::Sheet => "#/sheet".to_owned(),
            Self::SheetOf { slug } => format!("#/sheet/{slug}"),
            Self::SheetBeside { slug, other } => format!("#/sheet/{slug}/{other}"),
            Self::SheetEdit => "#/sheet/edit".to_owned(),
            Self::SheetChanges => "#/sheet/changes".to_owned(),
            Self::Air => "#/air".to_owned(),
            Self::Bench => "#/bench".to_owned(),
            Self::Calculation { name } => format!("#/bench/{name}"),
            Self::Panel => "#/panel".to_owned(),
            Self::Words => "#/words".to_owned(),
            Self::Check => "#/check".to_owned(),
            Self::CheckFor { competency } => format!("#/check/for/{competency}"),
            Self::Sitting { attempt } => format!("#/check/{attempt}"),
            Self::SittingSheet { attempt } => format!("#/check/{attempt}/sheet"),
            Self::CheckAnswers { attempt } => format!("#/check/{attempt}/answers"),
            Self::CheckAnswer { attempt, sequence } => format!("#/check/{attempt}/answers/{sequence}"),
            Self::Record => "#/record".to_owned(),
            Self::Competency { slug } => format!("#/record/{COMPETENCY}{slug}"),
            Self::Entry { sequence } => format!("#/record/{sequence}"),
            Self::People => "#/people".to_owned(),
            Self::Person { number } => format!("#/people/{number}"),
            Self::Asked => "#/asked".to_owned(),
            Self::AskedOf { competency } => format!("#/asked/{competency}"),
            Self::Assess => "#/assess".to_owned(),
            Self::AssessPerson { number } => format!("#/assess/{number}"),
            Self::Observe { number, slug } => format!("#/assess/{number}/{slug}"),
            Self::Menu => "#/menu".to_owned(),
            Self::Folder => "#/folder".to_owned(),
            Self::Programs => "#/programs".to_owned(),
            Self::Crew => "#/crew".to_owned(),
            Self::CrewPerson { key } => format!("#/crew/person/{}", encoded(key)),
            Self::CrewAnswer { device, sequence } => {
                format!("#/crew/answer/{}/{sequence}", encoded(device))
            }
            Self::CrewCards => "#/crew/cards".to_owned(),
            Self::Sign { number, slug } => format!("#/assess/{number}/{slug}{SIGN}"),
            Self::Book => "#/book".to_owned(),
            Self::SignOff { id } => format!("#/book/{id}"),
            Self::SignOffPaper { id, paper } => format!("#/book/{id}/{}", paper.slug()),
            Self::Open => "#/open".to_owned(),
            Self::Take { code } => format!("{TAKE}{code}"),
            Self::SetPaper { id } => format!("#/sets/{id}{PAPER}"),
            Self::PaperEnter { id } => format!("#/sets/{id}{ENTER}"),
            Self::Sets => "#/sets".to_owned(),
            Self::NewSet => "#/sets/new".to_owned(),
            Self::SetOf { id } => format!("#/sets/{id}"),
            Self::TakeSet { id } => format!("#/sets/{id}/take"),
            Self::TakeSetSheet { id } => format!("#/sets/{id}/sheet"),
            Self::SetAnswer { id, sequence } => format!("#/sets/{id}/answers/{sequence}"),
            Self::Walks => "#/walk".to_owned(),
            Self::WalkNew { slug } => format!("#/walk/{NEW_WALK}/{slug}"),
            Self::WalkGive { slug } => format!("#/walk/{GIVE_WALK}/{slug}"),
            Self::WalkOut { id } => format!("#/walk/{WALK_OUT}/{id}"),
            Self::WalkOf { id } => format!("#/walk/{id}"),
            Self::Sprays => "#/spray".to_owned(),
            Self::SprayOf { task } => format!("#/spray/{task}"),
            Self::Verify => "#/verify".to_owned(),
            Self::VerifyPaper { paper } => format!("#/verify/{}", paper.slug()),
            Self::VerifyAbout => "#/verify/about".to_owned(),
        }
    }

    /// Goes there without a way back to where one is: that place cannot be shown.
    pub(super) fn go_instead(&self) {
        // Only an address that is none is refused.
        let _ = window().location().replace(&self.address());
    }

    /// Goes to the screen at once. The browser tells of a new address only later, when what was changed together with
    /// it has been drawn already; so it is told here too.
    pub(super) fn go(&self) {
        // Neither can fail: the address is a plain one, and so is the name of the event.
        let _ = window().location().set_hash(&self.address());
        if let Ok(event) = Event::new(CHANGED) {
            let _ = window().dispatch_event(&event);
        }
    }
}
