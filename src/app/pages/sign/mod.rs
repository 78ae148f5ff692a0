//! Signing somebody off: what bars it, or exactly what will be signed; then the signature, and the record in the book.

mod act;
mod barred;
mod done;
mod draft;
mod until;

pub(in crate::app) use act::broken_words;

use self::draft::{Typed, drafted};
use crate::app::hooks::{use_backing, use_book, use_keys_held, use_people, use_signed};
use crate::app::parts::{Field, Frame, Picture, Unlock, icon, says, typed_into};
use crate::app::route::Route;
use crate::app::state::{Keep, Shop, use_shop};
use crate::device::{clock, page};
use crate::learn::mastery::Call;
use crate::people::{Signing, Source};
use crate::record::Placed;
use crate::signoff::Draft;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub(in crate::app) struct SignProps {
    pub(in crate::app) number: String,
    pub(in crate::app) slug: String,
}

#[component]
pub(in crate::app) fn Sign(props: &SignProps) -> Html {
    let shop = use_shop();
    let (people, keys, signed) = (use_people(), use_keys_held(), use_signed());
    let kept = use_book();
    let (journal, catch_up) = (kept.book.journal.clone(), kept.catch_up);
    let knowledge = use_backing(&props.number);
    let (reason, until) = (use_state(String::new), use_state(String::new));
    let (trouble, name) = (use_state(AttrValue::default), use_state(|| None::<String>));
    let member = people.crew.member(&props.number);
    let competency = shop.content().competency(&props.slug);
    let book = signed.book().cloned();
    // The moment stays the same while it is read, or what is shown would not be what is signed.
    let elsewhere = knowledge.as_ref().as_ref().map(Vec::len);
    let known = (keys.open.clone(), signed.stored.clone(), journal.next_sequence(), elsewhere);
    let now = use_memo(known.clone(), |_| clock::today().zip(clock::when()));
    let typed = Typed { reason: (*reason).clone(), until: (*until).clone() };
    let placed = Placed::of(knowledge.as_deref().unwrap_or(journal.events()));
    let source = now.as_ref().as_ref().map(|(today, now)| Source {
        content: shop.content(),
        journal: &journal,
        knowledge: &placed,
        book: book.as_deref(),
        today: *today,
        now,
    });
    let behind = member.zip(competency).zip(source);
    let behind =
        behind.map(|((member, competency), source)| (Signing::of(&source, member, competency), source));
    let draft = use_memo((known, typed.clone(), shop.clone()), |_| {
        let (open, book, (signing, source)) = (keys.open.as_ref()?, book.as_deref()?, behind.as_ref()?);
        Some(drafted(&shop, signing, source, &typed, (book, open)))
    });
    let title = shop.say_with(
        "sign-off.title",
        &[("competency", shop.text(&format!("competency.{}", props.slug)).to_string())],
    );
    let note =
        member.map_or_else(|| props.number.clone(), |member| format!("{} ({})", member.name, member.number));
    let on_sign = {
        let ready = draft.as_ref().as_ref().and_then(|draft| draft.as_ref().ok().cloned());
        let (shop, open, book, add) = (shop.clone(), keys.open.clone(), book.clone(), signed.add.clone());
        let replaces = behind.as_ref().and_then(|(signing, _)| signing.replaces.clone());
        let (trouble, name, seen) = (trouble.clone(), name.clone(), journal.next_sequence());
        Callback::from(move |_: MouseEvent| {
            let (Some(draft), Some(open), Some(book)) = (ready.clone(), open.clone(), book.clone()) else {
                return;
            };
            let (shop, add, replaces) = (shop.clone(), add.clone(), replaces.clone());
            let (trouble, name) = (trouble.clone(), name.clone());
            // What another window has stored meanwhile may bar it.
            catch_up.emit(Callback::from(move |stored: Option<u64>| {
                if stored.is_none_or(|next| next > seen) {
                    return trouble.set(shop.say("sign-off.more-came"));
                }
                match act::signed(&shop, &draft, &open, &book, replaces.clone()) {
                    Err(why) => trouble.set(shop.say_with("sign-off.failed", &[("why", why)])),
                    Ok(what) => add.emit(Keep { what, done: stored_or_told(&shop, &draft, &trouble, &name) }),
                }
            }));
        })
    };
    let body = match (&*name, &behind, draft.as_ref()) {
        (Some(id), ..) => done::done(&shop, book.as_deref(), id),
        (None, None, _) => {
            html! { <p key="nobody" class="kraft">{ shop.say(if now.is_none() { "sign-off.no-clock" } else { "sign-off.nobody" }) }</p> }
        }
        (None, Some(_), None) if book.is_none() => html! {
            <p key="no-book" class="kraft">{ shop.say("sign-off.no-book") }{ " " }<a class="text-link" href={Route::People.address()}>{ shop.say("sign-off.people") }</a></p>
        },
        (None, Some(_), None) => html! { <p key="locked" class="lead">{ shop.say("sign-off.locked") }</p> },
        (None, Some((signing, source)), Some(Err(not))) => html! {
            <>{ barred::barred(&shop, signing, source, not) }{ asked(&shop, signing, &reason) }</>
        },
        (None, Some((signing, source)), Some(Ok(draft))) => html! {
            <>{ asked(&shop, signing, &reason) }{ until::field(&shop, signing, source, &until) }{ shown(&shop, signing, draft) }</>
        },
    };
    let may = name.is_none() && matches!(draft.as_ref(), Some(Ok(_)));
    let who = keys.open.as_ref().map(|open| open.person.name.clone()).unwrap_or_default();
    let action = html! {
        <button type="button" class="next-step" hidden={!may} onclick={on_sign}>{ icon(Picture::Pencil) }{ shop.say_with("sign-off.go", &[("name", who)]) }</button>
    };
    html! {
        <Frame class="sheet sign-off" {title} {note} back={Some(back(props))} cautions={shop.cautions_for(&[])} {action}>
            <div key="unlock" hidden={name.is_some() || book.is_none()}><Unlock /></div>
            <p key="trouble" class="kraft wrong" role="alert" hidden={trouble.is_empty() || name.is_some()}>{ (*trouble).clone() }</p>
            <div key="body" class="outcome" aria-live="polite">{ body }</div>
        </Frame>
    }
}

/// Shows what was signed once it is stored, or says that it was not.
fn stored_or_told(
    shop: &Shop,
    draft: &Draft,
    trouble: &UseStateHandle<AttrValue>,
    name: &UseStateHandle<Option<String>>,
) -> Callback<bool> {
    let (trouble, name, id) = (trouble.clone(), name.clone(), draft.credential().id.clone());
    let not_stored = shop.say("sign-off.not-stored");
    Callback::from(move |stored| match stored {
        true => {
            name.set(Some(id.clone()));
            page::once_drawn(|| page::bring("signed"));
        }
        false => trouble.set(not_stored.clone()),
    })
}

fn back(props: &SignProps) -> Route {
    Route::Observe { number: props.number.clone(), slug: props.slug.clone() }
}

/// Asks for the reason where the cards do not suffice and a reason may make up for it.
fn asked(shop: &Shop, signing: &Signing<'_>, reason: &UseStateHandle<String>) -> Html {
    use crate::content::Profile;
    let ready = &signing.ready;
    let wanted =
        ready.evidence.state.call != Call::Sufficient && ready.competency.profile == Profile::Ordinary;
    let told = signing.knowledge(shop.texts()).narrative;
    html! {
        <section key="reason" class="kraft form" hidden={!wanted}>
            <h2>{ shop.say("sign-off.only-reason") }</h2>
            <p>{ shop.say_with("sign-off.only-reason-why", &[("told", told)]) }</p>
            <Field id="reason" label={shop.say("sign-off.reason")} value={(**reason).clone()} on_input={typed_into(reason)} hint={shop.say("sign-off.reason-hint")} />
        </section>
    }
}

/// Exactly what will be signed, in words and as bytes.
fn shown(shop: &Shop, signing: &Signing<'_>, draft: &Draft) -> Html {
    let (Ok(text), Ok(hash)) = (draft.text(), draft.hash()) else { return Html::default() };
    html! {
        <section key="will" class="form">
            <h2>{ shop.say("sign-off.will") }</h2>
            <p>{ shop.say("sign-off.will-why") }</p>
            <p class="kraft" hidden={signing.replaces.is_none()}>{ shop.say("sign-off.replaces") }</p>
            { says(shop, draft.credential(), hash) }
            <details class="seen bytes">
                <summary>{ shop.say("sign-off.bytes") }</summary>
                <p class="digits raw">{ text }</p>
                <p>{ shop.say("sign-off.hash") }{ ": " }<span class="digits">{ hash.to_string() }</span></p>
            </details>
        </section>
    }
}
