//! Loads what is stored, then draws the screens round it.

use super::hooks::{
    Around, Keeper, is_short, use_idle, use_keeper, use_kept_air, use_kept_crew, use_kept_folder,
    use_kept_front, use_kept_keys, use_kept_people, use_kept_sets, use_kept_sheets, use_kept_signed,
    use_kept_stricter, use_kept_walks, use_kept_watching, use_route,
};
use super::pages;
use super::route::Route;
use super::state::{ContentContext, Everything, Light, LockContext, Settings, Shared};
use crate::content::{Content, ENGLISH};
use crate::device::{Loaded, Slices, Store, page, rest};
use crate::learn::Front;
use crate::record::Journal;
use crate::rules::term::Term;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Starts the app on the element with the id `app`, or on the body where there is none.
pub fn start() {
    let content = match Content::embedded() {
        Ok(content) => content,
        Err(error) => {
            web_sys::console::error_1(&error.to_string().into());
            return;
        }
    };
    page::tell_when_broken(&content);
    spawn_local(async move {
        let store = Store::open().await.unwrap_or_default();
        let mut loaded: Loaded<Settings> = store.load().await.unwrap_or_default();
        let front = loaded.front.take().map(Shared::new);
        let journal = match loaded.next {
            Some(Journal::FIRST) => Some(Journal::default()),
            // Nobody would see of a short one that it was not there yet.
            next if is_short(next) => Some(store.journal(&mut Slices::begin()).await.unwrap_or_default()),
            _ => None,
        };
        if Route::now() != Route::Home {
            // Other screens are not in the part of the program that comes first.
            rest::there().await;
        }
        let first = Settings::new(page::random_name(), first_language(&content));
        if loaded.settings.is_none() {
            // Not stored, the device gets another name next time; answers keep the one they were given under.
            let (store, first) = (store.clone(), first.clone());
            spawn_local(async move { drop(store.put_settings(&first).await) });
        }
        let start = Rc::new(Start {
            content: ContentContext(Rc::new(content)),
            store,
            loaded,
            journal,
            front,
            first,
        });
        let place =
            gloo::utils::document().get_element_by_id("app").unwrap_or_else(|| gloo::utils::body().into());
        yew::Renderer::<Root>::with_root_and_props(place, RootProps { start }).render();
    });
}

/// The language that the browser speaks where there are messages in it, else English.
fn first_language(content: &Content) -> String {
    let browser = page::browser_language();
    let known = content.texts.keys().find(|ours| page::is_of_language(&browser, ours));
    known.map_or(ENGLISH, String::as_str).to_owned()
}

/// The tablet was left alone: five minutes, our own choice.
const LEFT_ALONE_MS: u32 = 5 * 60 * 1000;

struct Start {
    content: ContentContext,
    store: Store,
    loaded: Loaded<Settings>,
    /// Where it was read already.
    journal: Option<Journal>,
    /// What the first screen shows of one that is still to be read.
    front: Option<Shared<Front>>,
    first: Settings,
}

#[derive(Properties)]
struct RootProps {
    start: Rc<Start>,
}

impl PartialEq for RootProps {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.start, &other.start)
    }
}

#[component]
fn Root(props: &RootProps) -> Html {
    let start = &props.start;
    let Keeper { settings, book, desk } =
        use_keeper(&start.store, &start.content, &start.loaded, start.journal.as_ref(), &start.first);
    // Before anything is drawn, since dates are written in it.
    page::set_language(settings.now.speaks());
    let people = use_kept_people(&start.store, &start.loaded);
    let keys = use_kept_keys(&start.store, &start.loaded);
    let signed = use_kept_signed(&start.store, &start.loaded);
    let stricter = use_kept_stricter(&start.store, &start.loaded);
    let air = use_kept_air(&start.store, &start.loaded);
    let sheets = use_kept_sheets(&start.store, &start.loaded.sheets);
    let known = (start.content.clone(), Rc::clone(&stricter.asked), Rc::clone(&sheets.editions));
    let content = use_memo(known, |(content, asked, editions)| {
        let mut content = content.clone();
        if !asked.is_empty() {
            content = ContentContext(Rc::new(content.0.asked_by_shop(asked)));
        }
        if editions.iter().next().is_some() {
            content = ContentContext(Rc::new(content.0.with_own_sheets(editions.iter())));
        }
        content
    });
    let sets = use_kept_sets(&start.store, &start.content, &sheets);
    let walks = use_kept_walks(&start.store);
    let watching = use_kept_watching(&start.store, &start.loaded);
    let crew = use_kept_crew(&Around {
        store: &start.store,
        content: &content,
        settings: &settings.now,
        book: &book,
        people: &people,
        signed: &signed,
    });
    let asks_pin = people.crew.of_journal(&settings.now.person).is_some_and(|one| one.pin.is_some());
    // Whoever has a PIN types it again after the page was loaded anew, or was left alone.
    let locked = use_state(|| asks_pin);
    let on_idle = use_callback((asks_pin, keys.set_open.clone()), {
        let locked = locked.setter();
        move |(), (asks_pin, set_open)| {
            set_open.emit(None);
            if *asks_pin {
                locked.set(true);
            }
        }
    });
    use_idle(LEFT_ALONE_MS, on_idle);
    let on_lock = use_callback(keys.set_open.clone(), {
        let locked = locked.setter();
        move |lock: bool, set_open| {
            if lock {
                set_open.emit(None);
            }
            locked.set(lock);
        }
    });
    let lock = LockContext { locked: *locked, set: on_lock };
    let device = &settings.now.device;
    // Of a journal that is still being read nothing is handed in.
    let rests = *locked || !book.book.read;
    let folder = use_kept_folder(&start.store, &start.content, (&book, &people), device, rests);
    use_kept_front(&start.store, &content, &settings.now, &book);
    let route = use_route();
    let front = start.front.clone().filter(|front| !book.book.read && front.is_of(&settings.now.person));
    // Cards are for whoever learns: an assessor's key does not stay open in their hands.
    let cards = matches!(
        route,
        Route::Practise
            | Route::Sitting { .. }
            | Route::SittingSheet { .. }
            | Route::TakeSet { .. }
            | Route::TakeSetSheet { .. }
            | Route::WalkOf { .. }
            | Route::SprayOf { .. }
    );
    use_effect_with((cards, keys.set_open.clone()), |(cards, set_open)| {
        if *cards {
            set_open.emit(None);
        }
    });
    use_effect_with(Rc::clone(&settings.now), |settings| {
        let light = Some(settings.light).filter(|light| *light != Light::Auto);
        page::mark_root("light", light.map(Term::slug));
        page::mark_root("hand", settings.left_hand.then_some("left"));
    });
    let shown = if lock.locked {
        html! { <pages::Who key="who" /> }
    } else if let Some(front) = front.filter(|_| route == Route::Home) {
        html! { <pages::Home key="home" front={Some(front)} /> }
    } else if !book.book.read {
        html! { <pages::Reading key="reading" /> }
    } else {
        screen(route, desk.draft.as_ref().map(|draft| draft.card.sheet.slug.clone()))
    };
    let shown = provided(Everything::of(start.store.clone()), shown);
    let shown = provided(watching, shown);
    let shown = provided(walks, shown);
    let shown = provided(sets, shown);
    let shown = provided(folder, shown);
    let shown = provided(crew, shown);
    let shown = provided(lock, shown);
    let shown = provided(air, shown);
    let shown = provided(sheets, shown);
    let shown = provided(stricter, shown);
    let shown = provided(signed, shown);
    let shown = provided(keys, shown);
    let shown = provided(people, shown);
    let shown = provided(desk, shown);
    let shown = provided(book, shown);
    let shown = provided(settings, shown);
    provided((*content).clone(), shown)
}

/// What stands inside sees the context.
fn provided<T: Clone + PartialEq + 'static>(context: T, inside: Html) -> Html {
    html! { <ContextProvider<T> {context}>{ inside }</ContextProvider<T>> }
}

/// Every screen is one keyed element, so that one replaces the other whole. `on_desk` is the sheet of the card that lies there.
fn screen(route: Route, on_desk: Option<String>) -> Html {
    match route {
        Route::Home => html! { <pages::Home key="home" front={None::<Shared<Front>>} /> },
        Route::Band { stage } => {
            html! { <pages::Band key={format!("band-{stage}")} stage={stage.clone()} /> }
        }
        Route::Practise => html! { <pages::Practise key="practise" /> },
        Route::Bench => html! { <pages::Bench key="bench" /> },
        Route::Calculation { name } => {
            html! { <pages::Calculation key={format!("bench-{name}")} name={name.clone()} /> }
        }
        Route::Panel => html! { <pages::Panel key="panel" /> },
        Route::Words => html! { <pages::Words key="words" /> },
        Route::Check => html! { <pages::Check key="check" /> },
        Route::CheckFor { competency } => {
            html! { <pages::Check key={format!("check-{competency}")} competency={competency.clone()} /> }
        }
        // One screen: looking at the sheet leaves no check.
        Route::Sitting { attempt } => {
            html! { <pages::Sitting key={format!("sitting-{attempt}")} attempt={attempt.clone()} sheet=false /> }
        }
        Route::SittingSheet { attempt } => {
            html! { <pages::Sitting key={format!("sitting-{attempt}")} attempt={attempt.clone()} sheet=true /> }
        }
        Route::CheckAnswers { attempt } => {
            html! { <pages::CheckAnswers key={format!("answers-{attempt}")} attempt={attempt.clone()} /> }
        }
        Route::CheckAnswer { attempt, sequence } => {
            html! { <pages::Entry key={format!("entry-{sequence}")} {sequence} {attempt} /> }
        }
        Route::Record => html! { <pages::Record key="record" /> },
        Route::Competency { slug } => {
            html! { <pages::Competency key={format!("competency-{slug}")} slug={slug.clone()} /> }
        }
        Route::Entry { sequence } => html! { <pages::Entry key={format!("entry-{sequence}")} {sequence} /> },
        Route::Sheet => html! { <pages::Sheets key="sheets" /> },
        Route::SheetOf { slug } => {
            html! { <pages::SheetOf key={format!("sheet-{slug}")} slug={slug.clone()} /> }
        }
        Route::SheetBeside { slug, other } => html! {
            <pages::Beside key={format!("sheet-{slug}-{other}")} slug={slug.clone()} other={other.clone()} />
        },
        Route::SheetEdit => html! { <pages::SheetEdit key="sheet-edit" /> },
        Route::SheetChanges => html! { <pages::SheetChanges key="sheet-changes" /> },
        Route::Air => html! { <pages::Air key="air" /> },
        Route::CardSheet => {
            html! { <pages::ShopSheet key="card-sheet" back={Route::Practise} sheet={on_desk} /> }
        }
        Route::People => html! { <pages::People key="people" /> },
        Route::Person { number } => {
            html! { <pages::Person key={format!("person-{number}")} number={number.clone()} /> }
        }
        Route::Asked => html! { <pages::Asked key="asked" /> },
        Route::AskedOf { competency } => {
            html! { <pages::AskedOf key={format!("asked-{competency}")} competency={competency.clone()} /> }
        }
        Route::Assess => html! { <pages::Assess key="assess" /> },
        Route::AssessPerson { number } => {
            html! { <pages::AssessPerson key={format!("assess-{number}")} number={number.clone()} /> }
        }
        Route::Observe { number, slug } => html! {
            <pages::Observe key={format!("observe-{number}-{slug}")} number={number.clone()} slug={slug.clone()} />
        },
        Route::Folder => html! { <pages::Folder key="folder" /> },
        Route::Programs => html! { <pages::Programs key="programs" /> },
        Route::Crew => html! { <pages::Crew key="crew" /> },
        Route::CrewPerson { key } => {
            html! { <pages::CrewPerson key={format!("crew-{key}")} person={key.clone()} /> }
        }
        Route::CrewAnswer { device, sequence } => {
            html! { <pages::CrewAnswer key={format!("crew-{device}-{sequence}")} device={device.clone()} {sequence} /> }
        }
        Route::CrewCards => html! { <pages::CrewCards key="crew-cards" /> },
        Route::Menu => html! { <pages::Menu key="menu" /> },
        Route::Sign { number, slug } => {
            html! { <pages::Sign key={format!("sign-{number}-{slug}")} number={number.clone()} slug={slug.clone()} /> }
        }
        Route::Book => html! { <pages::SignOffBook key="book" /> },
        Route::SignOff { id } => {
            html! { <pages::SignOff key={format!("sign-off-{id}")} id={id.clone()} paper={None} /> }
        }
        Route::SignOffPaper { id, paper } => {
            html! { <pages::SignOff key={format!("sign-off-{id}")} id={id.clone()} paper={Some(paper)} /> }
        }
        Route::Open => html! { <pages::Open key="open" code={None::<String>} /> },
        Route::Take { code } => {
            html! { <pages::Open key={format!("take-{code}")} code={Some(code.clone())} /> }
        }
        Route::SetPaper { id } => html! { <pages::SetPaper key={format!("paper-{id}")} id={id.clone()} /> },
        Route::PaperEnter { id } => {
            html! { <pages::PaperEnter key={format!("enter-{id}")} id={id.clone()} /> }
        }
        Route::Sets => html! { <pages::Sets key="sets" /> },
        Route::NewSet => html! { <pages::NewSet key="new-set" /> },
        Route::SetOf { id } => html! { <pages::SetPage key={format!("set-{id}")} id={id.clone()} /> },
        // One screen: looking at the sheet leaves no set.
        Route::TakeSet { id } => {
            html! { <pages::TakeSet key={format!("take-set-{id}")} id={id.clone()} sheet=false /> }
        }
        Route::TakeSetSheet { id } => {
            html! { <pages::TakeSet key={format!("take-set-{id}")} id={id.clone()} sheet=true /> }
        }
        Route::SetAnswer { id, sequence } => {
            html! { <pages::Entry key={format!("entry-{sequence}")} {sequence} set={id.clone()} /> }
        }
        Route::Walks => html! { <pages::Walks key="walks" /> },
        Route::WalkNew { slug } => {
            html! { <pages::WalkStart key={format!("walk-new-{slug}")} slug={slug.clone()} /> }
        }
        Route::WalkOut { id } => html! { <pages::WalkOut key={format!("walk-out-{id}")} id={id.clone()} /> },
        Route::WalkGive { slug } => {
            html! { <pages::WalkGive key={format!("walk-give-{slug}")} slug={slug.clone()} /> }
        }
        Route::WalkOf { id } => html! { <pages::WalkPage key={format!("walk-{id}")} id={id.clone()} /> },
        Route::Sprays => html! { <pages::Sprays key="sprays" /> },
        Route::SprayOf { task } => {
            html! { <pages::SprayPage key={format!("spray-{task}")} task={task.clone()} /> }
        }
        // One screen, so that its files stay picked while a paper of it is looked at.
        Route::Verify => html! { <pages::Verify key="verify" paper={None} /> },
        Route::VerifyPaper { paper } => html! { <pages::Verify key="verify" paper={Some(paper)} /> },
        Route::VerifyAbout => html! { <pages::VerifyAbout key="verify-about" /> },
    }
}
