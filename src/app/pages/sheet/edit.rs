//! A shop sheet being edited: every value by group, what is wrong with one beside it, and a bar that counts what differs.

use super::bar::bar;
use super::row::{Row, row};
use crate::app::hooks::use_sheets;
use crate::app::parts::Frame;
use crate::app::route::Route;
use crate::app::state::{Shop, use_shop};
use crate::content::{SettingGroup, SettingInfo};
use crate::device::page;
use crate::exchange::{Barred, SheetDraft};
use crate::rules::sheet::Setting;
use crate::rules::term::Term;
use std::collections::BTreeMap;
use std::rc::Rc;
use yew::prelude::*;

/// What stands in fields that were touched, as it was typed.
pub(super) type Typed = BTreeMap<Setting, String>;

#[component]
pub(in crate::app) fn SheetEdit() -> Html {
    let shop = use_shop();
    let sheets = use_sheets();
    match &sheets.draft {
        Some(draft) => {
            html! { <Editing key="editing" draft={Rc::clone(draft)} edit={sheets.edit.clone()} /> }
        }
        None => none(&shop),
    }
}

/// Nothing is being edited.
pub(super) fn none(shop: &Shop) -> Html {
    html! {
        <Frame key="none" class="sheet own-sheets" title={shop.say("own.title")} back={Some(Route::Sheet)} cautions={shop.cautions_for(&[])}>
            <p class="lead">{ shop.say("own.no-draft") }</p>
        </Frame>
    }
}

#[derive(Properties, PartialEq)]
struct EditingProps {
    draft: Rc<SheetDraft>,
    edit: Callback<Option<SheetDraft>>,
}

#[component]
fn Editing(props: &EditingProps) -> Html {
    let shop = use_shop();
    let typed = use_state(Typed::new);
    // Whether it was asked for what changes.
    let asked = use_state(|| false);
    let draft = &props.draft;
    let on_typed = {
        let (shop, draft, edit, typed) = (shop.clone(), Rc::clone(draft), props.edit.clone(), typed.clone());
        Callback::from(move |(key, text): (Setting, String)| {
            let mut now = (*typed).clone();
            now.insert(key, text.clone());
            typed.set(now);
            let content = shop.content();
            let info = content.setting(key);
            if let Some(value) = info.and_then(|info| {
                info.read(shop.settings.units, draft.value(content, key), &shop.texts().typed(&text))
            }) {
                edit.emit(Some((*draft).clone().with(content, key, value)));
            }
        })
    };
    let back_to = {
        let (shop, draft, edit, typed) = (shop.clone(), Rc::clone(draft), props.edit.clone(), typed.clone());
        Callback::from(move |key: Setting| {
            let mut now = (*typed).clone();
            now.remove(&key);
            typed.set(now);
            let content = shop.content();
            if let Some(from) = draft.from_sheet(content) {
                edit.emit(Some((*draft).clone().with(content, key, from.get(key))));
            }
        })
    };
    let barred = draft.barred(shop.content());
    let unread = unread(&shop, draft, &typed);
    let wrong = barred.len() + unread.len();
    let changed = draft.changed(shop.content());
    let look = {
        let (asked, unchanged) = (asked.setter(), changed.is_empty());
        Callback::from(move |_: MouseEvent| {
            asked.set(true);
            match page::wrong_field().filter(|_| wrong > 0) {
                Some(field) => page::bring(&field),
                None if wrong == 0 && !unchanged => Route::SheetChanges.go(),
                None => {}
            }
        })
    };
    let action = bar(&shop, draft, changed.len(), wrong, *asked, look);
    let rows =
        Rows { shop: &shop, draft, typed: &typed, changed: &changed, barred: &barred, unread: &unread };
    let title = if draft.name.is_empty() { shop.say("own.new") } else { AttrValue::from(draft.name.clone()) };
    html! {
        <Frame key="edit" class="sheet own-edit" {title} back={Some(Route::Sheet)} cautions={shop.cautions_for(&[])} {action}>
            <p key="lead" class="lead">{ shop.say_with("own.edit-lead", &[("name", shop.sheet_name(&draft.from()).to_string())]) }</p>
            { for SettingGroup::ALL.iter().map(|group| rows.group(*group, &on_typed, &back_to)) }
            { drop_it(&shop, &props.edit) }
        </Frame>
    }
}

/// Fields in which no value of theirs can be read.
fn unread(shop: &Shop, draft: &SheetDraft, typed: &Typed) -> Vec<Setting> {
    let reads = |(key, text): &(&Setting, &String)| {
        let now = draft.value(shop.content(), **key);
        shop.content()
            .setting(**key)
            .is_some_and(|info| info.read(shop.settings.units, now, &shop.texts().typed(text)).is_some())
    };
    typed.iter().filter(|one| !reads(one)).map(|(key, _)| *key).collect()
}

/// What the rows are made of.
struct Rows<'a> {
    shop: &'a Shop,
    draft: &'a SheetDraft,
    typed: &'a Typed,
    changed: &'a [Setting],
    barred: &'a [Barred],
    unread: &'a [Setting],
}

impl Rows<'_> {
    /// One group, folded but for the first and those in which something is not allowed.
    fn group(
        &self,
        group: SettingGroup,
        on_typed: &Callback<(Setting, String)>,
        back_to: &Callback<Setting>,
    ) -> Html {
        let infos: Vec<&SettingInfo> =
            self.shop.content().settings.iter().filter(|info| info.group == group).collect();
        let count = |holds: &dyn Fn(Setting) -> bool| infos.iter().filter(|info| holds(info.key)).count();
        let changed = count(&|key| self.changed.contains(&key));
        let wrong = count(&|key| self.wrong(key));
        let named =
            [("n", infos.len().to_string()), ("changed", changed.to_string()), ("wrong", wrong.to_string())];
        let key = match (changed, wrong) {
            (0, 0) => "own.group",
            (_, 0) => "own.group-changed",
            _ => "own.group-wrong",
        };
        let one = |info: &&SettingInfo| {
            let barred = self.barred.iter().find(|one| one.setting == info.key);
            let typed = self.typed.get(&info.key).map(String::as_str);
            let unread = self.unread.contains(&info.key);
            let changed = self.changed.contains(&info.key);
            row(
                self.shop,
                &Row { info, draft: self.draft, typed, changed, barred, unread, on_typed, back_to },
            )
        };
        html! {
            <details key={group.slug()} class="paper own-group" open={group == SettingGroup::Waits}>
                <summary><h2>{ self.shop.text(&format!("setting-group.{}", group.slug())) }</h2><span class="note">{ self.shop.say_with(key, &named) }</span></summary>
                <div class="own-rows">{ for infos.iter().map(one) }</div>
            </details>
        }
    }

    fn wrong(&self, key: Setting) -> bool {
        self.unread.contains(&key) || self.barred.iter().any(|one| one.setting == key)
    }
}

fn drop_it(shop: &Shop, edit: &Callback<Option<SheetDraft>>) -> Html {
    let onclick = edit.reform(|_: MouseEvent| {
        Route::Sheet.go();
        None
    });
    html! { <p key="drop"><button type="button" class="control" {onclick}>{ shop.say("own.drop") }</button></p> }
}
